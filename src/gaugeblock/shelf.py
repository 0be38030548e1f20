"""Shelf: a table of refdata, or the rules of a domain, as a search sees it: its text, and what stands in it by key."""

from __future__ import annotations

from operator import itemgetter

from gaugeblock.tables.catalogue import DOMAINS, LISTS, ROW_COLUMNS, TABLES, keys_of
from gaugeblock.tables.kin import kin, lines_with, living_at
from gaugeblock.tables.lines import read_text, split
from gaugeblock.tables.load import statement

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from gaugeblock.tables.load import Refdata, Row

# A cell of a key, after its place there; a line of a table, its number and its cells.
Cell = tuple[int, str]
Line = tuple[int, "Sequence[str]"]
# Where a word may stand, in the order of what counts most: the table's name, the key, other words for the key, its
# quantities, what else stands there.
HOME, KEY, NAME, QUANTITY, REST = range(5)
# Columns that every row has, counted from the end of its cells.
_QUANTITY = ROW_COLUMNS.index("quantity") - len(ROW_COLUMNS)
_else_of = itemgetter(*(ROW_COLUMNS.index(c) - len(ROW_COLUMNS) for c in ("conditions", "note", "source", "basis")))
# Services of a car that a shop builds; what is printed for others stands behind.
_OTHERS = ("aircraft", "boat", "marine", "industrial", "railway")
_OWN = ("any", "vehicle", "one vehicle", "vehicle safety cage")
# A letter that is not listed takes longer.
_MARKS = {n: n for n in range(128)} | str.maketrans(dict.fromkeys("|,;:()_=\"'", " "))


def plain(text: str) -> str:
    """Lower case, punctuation that is not part of a size as blanks, padded with a blank at both ends."""
    return f" {' '.join(text.translate(_MARKS).casefold().split())} "


def is_whole(word: str, text: str) -> bool:
    """Whether a plain text has a word whole, or its plural."""
    return f" {word} " in text or f" {word}s " in text


class Names:
    """Other words for the cells of keys. A word of two columns means both: chromoly is a steel, and 4130."""

    __slots__ = ("_said",)

    def __init__(self, words: Iterable[tuple[str, Cell]]) -> None:
        meant: dict[str, dict[int, str]] = {}
        for word, (place, cell) in words:
            meant.setdefault(word, {})[place] = cell
        alike: dict[tuple[Cell, ...], list[str]] = {}
        for word, cells in meant.items():
            alike.setdefault(tuple(cells.items()), []).append(word)
        self._said: dict[Cell, list[tuple[tuple[Cell, ...], str]]] = {}
        for means, said in alike.items():
            for at in means:
                self._said.setdefault(at, []).append((means, plain(" ".join(said))))

    def of(self, key: tuple[str, ...]) -> list[str]:
        """Those of one key, as plain texts."""
        if self._said.keys().isdisjoint(enumerate(key)):
            return []
        return [
            said
            for at in enumerate(key)
            for means, said in self._said.get(at, ())
            if len(means) == 1 or all(key[place] in (cell, "any") for place, cell in means)
        ]


class Sought:
    """A word as it is sought on one shelf: the names and quantities there that have it, in part or whole."""

    __slots__ = ("is_home", "names", "quantities", "whole", "word")

    def __init__(self, word: str, is_home: bool, names: Names, quantities: set[str], whole: set[str]) -> None:
        self.word = word
        self.is_home = is_home
        self.names = names
        self.quantities = quantities
        self.whole = whole


class Entry:
    """One key of one table with the cells of its rows: ``text`` is the key in lower case; what else is searched is
    made when it is asked.
    """

    __slots__ = ("_rest", "_spoken", "is_whole", "key", "lines", "shelf", "text")

    rule: dict[str, str] | None = None

    def __init__(self, shelf: Shelf, key: tuple[str, ...], lines: list[Line], is_whole: bool = True) -> None:
        self.shelf = shelf
        self.key = key
        self.lines = lines
        self.is_whole = is_whole  # has all the lines of its key
        self.text = " ".join(key).casefold()
        self._rest: str | None = None
        self._spoken: str | None = None

    @property
    def spoken(self) -> str:
        """The key as plain text."""
        if self._spoken is None:
            self._spoken = plain(self.text)
        return self._spoken

    @property
    def table(self) -> str:
        """The name of its table, or of its domain's rules."""
        return self.shelf.name

    @property
    def rows(self) -> list[Row]:
        """The rows of the key."""
        return self.shelf.rows(self.lines)

    @property
    def label(self) -> str:
        """What a person is told."""
        return " | ".join(cell for cell in self.key if cell != "any")

    @property
    def is_other(self) -> bool:
        """Whether it is of another service than a road vehicle's."""
        others = self.shelf.others
        return bool(others) and not others.isdisjoint(enumerate(self.key))

    def has(self, sought: Sought) -> bool:
        """Whether a word stands in it; the name of its table is not looked at."""
        word = sought.word
        return word in self.text or self._is_of(sought) or word in self._else() or bool(sought.names.of(self.key))

    def place(self, sought: Sought) -> int | None:
        """The first place that has a word whole, or its plural."""
        word = sought.word
        if sought.is_home:
            return HOME
        if word in self.text and is_whole(word, self.spoken):
            return KEY
        if any(is_whole(word, said) for said in sought.names.of(self.key)):
            return NAME
        if self._is_of(sought, whole=True):
            return QUANTITY
        return REST if word in self._else() and is_whole(word, self.rest) else None

    def _is_of(self, sought: Sought, *, whole: bool = False) -> bool:
        quantities = sought.whole if whole else sought.quantities
        return bool(quantities) and not quantities.isdisjoint([cells[_QUANTITY] for _, cells in self.lines])

    def _else(self) -> str:
        if self._rest is None:
            self._rest = " ".join([cell for _, cells in self.lines for cell in _else_of(cells)]).casefold()
        return self._rest

    @property
    def named(self) -> list[str]:
        """Table, key, other words for it, quantities, each as plain text."""
        shelf = self.shelf
        quantities = dict.fromkeys([cells[_QUANTITY] for _, cells in self.lines])
        said = " ".join(shelf.names.of(self.key)), " ".join(map(shelf.said, quantities))
        return [shelf.home, self.spoken, *map(plain, said)]

    @property
    def rest(self) -> str:
        """Conditions, notes and sources, as plain text."""
        return plain(self._else())


class Ruling(Entry):
    """One rule: its topic and subject stand for a key, its statement for the quantities."""

    __slots__ = ("rule", "statement")

    def __init__(self, shelf: Shelf, line: Line) -> None:
        super().__init__(shelf, (), [line])
        self.rule = rule = statement(*line)
        self.text = f"{rule['topic']} {rule['subject']}".casefold()
        self.statement = rule["statement"].casefold()
        self._rest = f"{rule['jurisdiction']} {rule['source']} {rule['note']}".casefold()

    @property
    def label(self) -> str:
        """What a person is told."""
        rule = self.rule or {}
        return f"{self.table.split('/', 1)[0]} rule, {rule['topic']}, {rule['subject']}"

    @property
    def rows(self) -> list[Row]:
        """None: it has no number."""
        return []

    @property
    def is_other(self) -> bool:
        """Whether it is of another service than a road vehicle's."""
        return self.rule is not None and self.rule["service"] not in _OWN

    def _is_of(self, sought: Sought, *, whole: bool = False) -> bool:
        word = sought.word
        return word in self.statement and (not whole or is_whole(word, plain(self.statement)))

    @property
    def named(self) -> list[str]:
        """Table, topic with subject, no other words, statement, each as plain text."""
        return [self.shelf.home, self.spoken, plain(""), plain(self.statement)]


class Shelf:
    """A table, or the rules of a domain: its whole text, in which words are sought first, and its entries."""

    __slots__ = (
        *("_data", "_entries", "_is_asked", "_keys", "_names", "_places", "_text", "_written"),
        *("home", "name", "others", "quantities"),
    )

    def __init__(self, name: str, data: Refdata) -> None:
        self.name = name
        self.home = plain(name.replace("/", " "))
        self.quantities: set[str] = set()
        self.others: set[Cell] = set()  # cells that are of another service
        self._data = data
        self._written = read_text(data.path(name), name)
        self._text = self._written.casefold()
        self._keys = [key.name for key in keys_of(name)] if name in TABLES else []
        self._is_asked = False
        self._entries: list[Entry] | None = None
        self._names: Names | None = None
        self._places: dict[str, set[int]] = {}

    def may_hold(self, words: Iterable[str]) -> bool:
        """Whether each word stands in its text, or is another word for a cell or a quantity that stands there."""
        text, home = self._text, self.home
        return all(word in text or word in home or any(t in text for t in self._standing_for(word)) for word in words)

    def _standing_for(self, word: str) -> list[str]:
        """What may stand in its text where a word stands in other words for it; not what has the word itself."""
        return [written for *_, written in self._called(word) if word not in written]

    def holding(self, words: Sequence[str]) -> tuple[list[Sought], list[Entry]]:
        """The words as they are sought here, and the entries in which all of them stand."""
        found = self._that_may_hold(words)
        sought = [self._sought(word) for word in words]
        for one in sorted(sought, key=lambda s: len(s.word), reverse=True):
            if one.word not in self.home:
                found = [entry for entry in found if entry.has(one)]
        return sought, found

    def _that_may_hold(self, words: Sequence[str]) -> list[Entry]:
        """The entries in which the words may stand. Of a shelf that is searched for the first time no others are made,
        and of the lines of a key only those that have a word: see ``complete``.
        """
        written = self._written
        is_first, self._is_asked = not self._is_asked and self._entries is None, True
        left = [word for word in words if word not in self.home]
        # where a letter grew in lower case, places are no longer the same
        if not (is_first and left) or self.name in self._data.opened or len(self._text) != len(written):
            return self.entries
        places = [lines_with(self._text, {word, *self._standing_for(word)}) for word in left]
        return self._made(living_at(self._data, self.name, written, set().union(*places) - {0}), is_whole=False)

    def places_of(self, word: str) -> set[int]:
        """The places in its keys where a word is a whole cell."""
        got = self._places.get(word)
        if got is None:
            entries = self._entries
            if entries is not None:
                keys = [list(entry.key) for entry in entries]
            else:
                text = self._text.split("\n")[1:]
                rows = [line for line in text if line.startswith(f"{word},") or f",{word}," in line]
                keys = [row[: len(self._keys)] for row in split(rows)]
            got = self._places[word] = {at for key in keys for at, cell in enumerate(key) if cell.casefold() == word}
        return got

    def complete(self, entries: list[Entry]) -> None:
        """Give some entries all the lines of their keys."""
        written, every = self._written, self._entries
        partly = [entry for entry in entries if not entry.is_whole]
        if not partly or not self._keys:
            return
        if every is not None:  # another thread has made them meanwhile
            groups = {entry.key: entry.lines for entry in every}
        else:
            some = [line for entry in partly for line in entry.lines]
            groups = self._by_key(kin(self._data, self.name, written, some))
        for entry in partly:
            entry.lines, entry.is_whole = groups[entry.key], True

    def _called(self, word: str) -> list[Called]:
        """The cells of its keys that people call by a text with this word, and the quantities."""
        found = called(word, self._data)
        of_domain = [c for c in found.get(self.name.partition("/")[0], ()) if c[0] in self._keys]
        return of_domain + [c for c in found[""] if not c[0]]

    def _sought(self, word: str) -> Sought:
        words = self._called(word)
        names = Names((said, (self._keys.index(column), cell)) for column, cell, said, _ in words if column)
        of_word = {cell for column, cell, *_ in words if not column}
        quantities = {q for q in tuple(self.quantities) if q in of_word or word in q.replace("_", " ")}
        whole = {q for q in quantities if is_whole(word, plain(self.said(q)))}
        return Sought(word, is_whole(word, self.home), names, quantities, whole)

    @property
    def entries(self) -> list[Entry]:
        """One a key or rule, made when they are first asked."""
        entries = self._entries
        if entries is None:
            self._entries = entries = self._made(self._data.living(self.name))
            self._written = ""  # it is not asked again, but by one who has it already
        return entries

    def _made(self, lines: Sequence[Line], is_whole: bool = True) -> list[Entry]:
        if not self._keys:
            return [Ruling(self, line) for line in lines]
        groups = self._by_key(lines)
        self.quantities.update([cells[_QUANTITY] for _, cells in lines])
        for at, cells in enumerate(zip(*groups, strict=True)):
            own = _OWN if self._keys[at] == "service" else ()
            is_other = (cell for cell in set(cells) if (own and cell not in own) or cell.partition(" ")[0] in _OTHERS)
            self.others.update([(at, cell) for cell in is_other])
        return [Entry(self, key, group, is_whole) for key, group in groups.items()]

    def _by_key(self, lines: Sequence[Line]) -> dict[tuple[str, ...], list[Line]]:
        width = len(self._keys)
        groups: dict[tuple[str, ...], list[Line]] = {}
        for line in lines:
            groups.setdefault(tuple(line[1][:width]), []).append(line)
        return groups

    def rows(self, lines: list[Line]) -> list[Row]:
        """The rows of some of its lines."""
        return [self._data.row(self.name, line, cells) for line, cells in lines]

    def said(self, quantity: str) -> str:
        """The name of a quantity, and other words for it."""
        return f"{quantity.replace('_', ' ')} {self._data.quantity(quantity)['words']}"

    @property
    def names(self) -> Names:
        """All other words for the cells of its keys."""
        if self._names is None:
            domain = self.name.partition("/")[0]
            words = (self._data.words(domain, column).items() for column in self._keys)
            self._names = Names((word, (at, cell)) for at, of_column in enumerate(words) for word, cell in of_column)
        return self._names


# A cell that people call by a text: its column, itself, that text, and the cell as a file has it in lower case. A
# quantity has a name alone.
Called = tuple[str, str, str, str]


def called(word: str, data: Refdata) -> dict[str, list[Called]]:
    """The living cells that people call by a text with this word, by their domain; quantities have none."""
    memo = ("called", word)
    got = data._memo.get(memo)
    if got is None:
        found: dict[str, list[Called]] = {"": []}
        for at, said, column, cell, since, until, _ in data.lines("words").holding(word):
            text = said.casefold()
            if word in text and data.lives(since, until):
                written = cell.casefold().replace('"', '""')  # a quote inside a cell is written twice
                found.setdefault(at, []).append((column, cell, text, written))
        words = LISTS["quantities"].index("words")
        lines = [line for line in data.lines("quantities").holding(word) if word in line[words].casefold()]
        found[""] += [("", line[0], "", line[0].casefold()) for line in lines]
        got = data._memo[memo] = found
    return got  # type: ignore[return-value]


def shelves(data: Refdata) -> list[Shelf]:
    """Every table, then the rules of every domain."""
    got = data._memo.get("shelves")
    if got is None:
        got = data._memo["shelves"] = [Shelf(name, data) for name in (*TABLES, *(f"{d}/rules" for d in DOMAINS))]
    return got  # type: ignore[return-value]
