"""Find: all words of a text, over every table and every rule, grouped by key with the governing figure first."""

from __future__ import annotations

from operator import itemgetter

from gaugeblock import lookup
from gaugeblock.errors import InputError
from gaugeblock.found import Found
from gaugeblock.tables.catalogue import DOMAINS, TABLES, columns_of, keys_of
from gaugeblock.tables.lines import read_text
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

SHOWN = 20
_SEARCHED = ("conditions", "note", "source", "basis")
# Services of a car that a shop builds; what is printed for others stands behind.
_OTHERS = ("aircraft", "boat", "marine", "industrial", "railway")
_OWN = ("any", "vehicle", "one vehicle", "vehicle safety cage")
_LONGEST = 200


class Entry:
    """One key of one table with its rows (or one rule): ``all`` is what is searched, in lower case.

    ``named`` are the table's name, the key, other words for it and its quantities, ``rest`` what else stands there,
    each
    padded; they, the ``label`` and whether it is of another service than a road vehicle's are worked out for what is
    found alone.
    """

    __slots__ = ("_raw", "all", "key", "rows", "rule", "table")

    def __init__(
        self, table: str, key: tuple[str, ...], raw: tuple[str, ...], rows: list[Row], rule: dict[str, str] | None
    ) -> None:
        self.table = table
        self.key = key
        self.rows = rows
        self.rule = rule
        self._raw = raw
        self.all = "|".join(raw).casefold()

    @property
    def named(self) -> list[str]:
        """Table, key, other words, quantities."""
        return [plain(text) for text in self._raw[:-1]]

    @property
    def rest(self) -> str:
        """Conditions, notes and sources."""
        return plain(self._raw[-1])

    @property
    def label(self) -> str:
        """What a person is told."""
        if self.rule is not None:
            return f"{self.table.split('/', 1)[0]} rule, {self.rule['topic']}, {self.rule['subject']}"
        return lookup.figure_label(self.rows[0])

    @property
    def is_other(self) -> bool:
        """Whether it is of another service than a road vehicle's."""
        cells = self.rule or (self.rows[0].cells if self.rows else {})
        service = cells.get("service", "any")
        return service not in _OWN or any(cell.split(" ", 1)[0] in _OTHERS for cell in self.key)


_MARKS = str.maketrans(dict.fromkeys("|,;:()_=\"'", " "))


def plain(text: str) -> str:
    """Lower case, punctuation that is not part of a size as blanks, padded with a blank at both ends."""
    return f" {' '.join(text.translate(_MARKS).casefold().split())} "


def find(text: str, *, data: Refdata | None = None, whole: bool = False, named: bool = False) -> Found:
    """Every key and rule that has all words of ``text``: whole words first, key before quantity before the rest.

    At most 20 keys, then how many more; with ``whole`` every one; with ``named`` those alone whose key, other names or
    quantities have each word whole. Nothing found is an empty answer with the nearest keys.
    InputError for a text without a word, or of over 200 characters.
    """
    data = data or refdata()
    words = plain(text).split() if len(text) <= _LONGEST else []
    if not words:
        raise InputError(text[:40] or "(blank)", "find", "no words, or too many", (), "give one to a few words")
    entries = [entry for shelf in _shelves(data) if shelf.may_hold(words) for entry in shelf.that_may_hold(words)]
    for word in sorted(words, key=len, reverse=True):
        entries = [entry for entry in entries if word in entry.all]
    if named:
        entries = [entry for entry in entries if all(_place(entry.named, word) is not None for word in words)]
    hits = [(_score(entry, words), i, entry) for i, entry in enumerate(entries)]
    hits.sort(key=lambda h: h[:2])
    shown = hits if whole else hits[:SHOWN]
    groups = [(entry, _figures(entry, words, data)) for _, _, entry in shown]
    near = _nearest(text, words, data) if not (hits or named) else []
    return Found(text, groups, len(hits) - len(shown), near, data)


def rules(data: Refdata) -> Iterator[Entry]:
    """Every rule of every domain."""
    for shelf in _shelves(data):
        if shelf.name.endswith("/rules"):
            yield from shelf.entries


def is_there(words: list[str], data: Refdata) -> bool:
    """Whether some key or rule has all these words, whole or begun."""
    wanted = [word for text in words for word in plain(text).split()]
    held = (e for shelf in _shelves(data) if wanted and shelf.may_hold(wanted) for e in shelf.entries)
    return any(all(f" {word}" in f" {plain(e.all)}" for word in wanted) for e in held if wanted[0] in e.all)


def _score(entry: Entry, words: list[str]) -> tuple[int, bool, int, int]:
    """Words not found whole; a road vehicle's own first; where the words stand (the table's name, key, another word
    for it, quantity, rest), a cell that is just that first; then whether the key has them side by side.
    """
    pieces, places = 0, 0
    named = entry.named
    for word in words:
        place = _place(named, word)
        if place is None:
            place = len(named)
            pieces += _place([entry.rest], word) is None
        places += place
    text = " ".join(words)
    side = 0 if any(text == cell.casefold() for cell in entry.key) else 1 if text in named[1] else 2
    return pieces, entry.is_other, places - (side == 0) * len(words), side


def _place(texts: list[str], word: str) -> int | None:
    """Which of the texts is the first to have a word whole, or its plural."""
    wholes = (f" {word} ", f" {word}s ")
    return next((n for n, text in enumerate(texts) if wholes[0] in text or wholes[1] in text), None)


def _figures(entry: Entry, words: list[str], data: Refdata) -> list[Figure]:
    """The figure that governs each quantity of a key, those first that are called by most of the words."""
    by_quantity: dict[str, list[Row]] = {}
    for row in entry.rows:
        by_quantity.setdefault(row.cells["quantity"], []).append(row)

    def called(quantity: str) -> int:
        names = plain(f"{quantity.replace('_', ' ')} {data.quantity(quantity)['words']}")
        return sum(_place([names], word) is not None for word in words)

    return [lookup.govern_rows(by_quantity[q], data) for q in sorted(by_quantity, key=called, reverse=True)]


class Shelf:
    """A table, or the rules of a domain: its whole text, in which words are sought first, and its entries."""

    __slots__ = ("_data", "_entries", "_home", "_is_asked", "_text", "name")

    def __init__(self, name: str, data: Refdata) -> None:
        self.name = name
        self._data = data
        self._home = _home(name).casefold()
        self._text = read_text(data.path(name), name).casefold()
        self._entries: list[Entry] | None = None
        self._is_asked = False

    def may_hold(self, words: list[str]) -> bool:
        """Whether each word stands in its text, or is another word for a cell or a quantity that stands there."""
        return all(word in self._text or word in self._home or self._is_called(word) for word in words)

    def _is_called(self, word: str) -> bool:
        return any(True for _ in self._called(word))

    def _called(self, word: str) -> Iterator[str]:
        """The cells in its text that people call by this word."""
        domain, _, table = self.name.partition("/")
        names = () if table == "rules" else [key.name for key in keys_of(self.name)]
        for at, column, cell in _called(word, self._data):
            if at in ("", domain) and (column in names or not column) and cell in self._text:
                yield cell

    def that_may_hold(self, words: list[str]) -> list[Entry]:
        """The entries in which the words may stand; of a table that is asked first, no others are made."""
        if self._entries is not None or self._is_asked or self.name.endswith("/rules"):
            return self.entries
        self._is_asked = True
        left = [word for word in words if word not in self._home]
        # a quote inside a cell is written twice
        sought = [{word, *(c.replace('""', '"') for c in self._called(word))} for word in left]
        return _keys_of(self.name, self._data, sought)

    @property
    def entries(self) -> list[Entry]:
        """One a key or rule, made when they are first asked."""
        if self._entries is None:
            make = _rules_of if self.name.endswith("/rules") else _keys_of
            self._entries = make(self.name, self._data)
        return self._entries


def _home(name: str) -> str:
    return name.replace("/", " ").replace("_", " ")


def _shelves(data: Refdata) -> list[Shelf]:
    got = data.memo.get("shelves")
    if got is None:
        got = data.memo["shelves"] = [Shelf(name, data) for name in (*TABLES, *(f"{d}/rules" for d in DOMAINS))]
    return got  # type: ignore[return-value]


def _called(word: str, data: Refdata) -> list[tuple[str, str, str]]:
    """The cells (domain, column, cell) that people call by a text with this word; quantities have a cell alone."""
    memo = ("called", word)
    got = data.memo.get(memo)
    if got is None:
        # a quote inside a cell is written twice
        cells = data.lines("words").holding(word)
        found = [(at, column, cell.casefold().replace('"', '""')) for at, _, column, cell, *_ in cells]
        found += [("", "", line[0].casefold()) for line in data.lines("quantities").holding(word)]
        got = data.memo[memo] = found
    return got  # type: ignore[return-value]


def _holding(groups: Iterable[list[Row]], sought: list[set[str]]) -> list[list[Row]]:
    """Those groups of rows in whose text one of each set of texts stands."""
    kept = [("\n".join(["\n".join(r.values) for r in rows]).casefold(), rows) for rows in groups]
    for texts in sought:
        kept = [(text, rows) for text, rows in kept if any(map(text.__contains__, texts))]
    return [rows for _, rows in kept]


def _keys_of(name: str, data: Refdata, sought: list[set[str]] | None = None) -> list[Entry]:
    """The entries of a table, one a key; only those whose rows have one of each set of texts."""
    table = data.table(name)
    groups: dict[tuple[str, ...], list[Row]] = {}
    for row in table.rows:
        groups.setdefault(row.key, []).append(row)
    kept = list(groups.values()) if sought is None else _holding(groups.values(), sought)
    if not kept:
        return []
    said: dict[tuple[str, str], list[str]] = {}
    narrows: dict[str, dict[str, str]] = {}  # a word of two columns means both: chromoly is a steel, and 4130
    for column in table.names:
        for word, cell in data.words(name.split("/", 1)[0], column).items():
            said.setdefault((column, cell), []).append(word)
            narrows.setdefault(word, {})[column] = cell
    narrows = {word: cells for word, cells in narrows.items() if len(cells) > 1}
    words_of = {q: data.quantity(q)["words"] for q in table.by_quantity}
    columns = columns_of(name)
    at, searched = columns.index("quantity"), itemgetter(*map(columns.index, _SEARCHED))
    out = []
    for rows in kept:
        at_key = dict(zip(table.names, rows[0].key, strict=True))
        aliases = [
            w
            for asked in at_key.items()
            for w in said.get(asked, ())
            if w not in narrows or all(at_key[c] in (cell, "any") for c, cell in narrows[w].items())
        ]
        about = " ".join(
            f"{q.replace('_', ' ')} {q} {words_of[q]}" for q in dict.fromkeys([r.values[at] for r in rows])
        )
        rest = " ".join([cell for r in rows for cell in searched(r.values)])
        raw = (_home(name), " ".join(rows[0].key), " ".join(aliases), about, rest)
        out.append(Entry(name, rows[0].key, raw, rows, None))
    return out


def _rules_of(name: str, data: Refdata) -> list[Entry]:
    """The entries of the rules of a domain."""
    out = []
    for rule in data.statements(name.removesuffix("/rules")):
        about = f"{rule['topic']} {rule['subject']}"
        rest = f"{rule['jurisdiction']} {rule['source']} {rule['note']}"
        out.append(Entry(name, (), (_home(name), about, "", rule["statement"], rest), [], rule))
    return out


def _nearest(text: str, words: list[str], data: Refdata) -> list[str]:
    cells = {
        cell: cell for table in data.all_tables() for key in table.keys for cell in table.column(key.name).values()
    }
    shelves = _shelves(data)
    unknown = [
        word
        for word in words
        if not any(word in entry.all for shelf in shelves if shelf.may_hold([word]) for entry in shelf.entries)
    ]
    # words that are known say nothing of a misspelling
    from gaugeblock.tables.near import nearest

    found = nearest(text, cells) if len(unknown) == len(words) else []
    for word in unknown:
        found += [n for n in nearest(word, cells, 3) if n not in found]
    return found[:5]


def sources(words: list[str], *, data: Refdata | None = None) -> list[dict[str, str]]:
    """The publications whose id or title has all the words, each with how many living figures rest on it."""
    data = data or refdata()
    counts: dict[str, int] = {}
    for table in data.all_tables():
        for row in table.rows:
            counts[row.cells["source"]] = counts.get(row.cells["source"], 0) + 1
    wanted = [w.casefold() for w in words]
    out = []
    for id, listed in data.listing("sources").items():
        text = f"{id} {listed['title']} {listed['publisher']}".casefold()
        if all(w in text for w in wanted):
            out.append({**listed, "rows": str(counts.get(id, 0))})
    return out
