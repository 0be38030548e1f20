"""Refdata: the CSV tables of one data release, read on demand. The only code that opens refdata."""

from __future__ import annotations

from _thread import RLock  # threading itself takes longer to load
from operator import itemgetter
from types import MappingProxyType

from gaugeblock.errors import DataError, InputError, LookupMiss, Offers
from gaugeblock.figure import Figure, Rule
from gaugeblock.tables import closed
from gaugeblock.tables.catalogue import LISTS, OPTIONS, ROW_COLUMNS, TABLES, columns_of, refdata_folder
from gaugeblock.tables.lines import Lines as Lines
from gaugeblock.tables.lines import is_decimal as is_decimal
from gaugeblock.tables.lines import read_lines as read_lines
from gaugeblock.tables.lines import version_key as version_key
from gaugeblock.tables.row import Row as Row
from gaugeblock.tables.row import Table as Table
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence
    from typing import NoReturn

    from gaugeblock.tables.part import Part

_WORDS_KEPT = 2000


class Refdata:
    """All tables of one data release. Reads each file once, when it is first needed."""

    def __init__(self, folder: str | None = None, release: str | None = None) -> None:
        self.folder = folder or refdata_folder()
        self._is_own = folder is None
        releases = tuple(Keys(zip(LISTS["releases"], c, strict=True)) for c in self._read("releases"))
        if not releases:
            raise DataError("releases.csv", "refdata", "no release", (), "add one")
        self.releases = releases
        versions = [r["version"] for r in releases]
        if release is not None and release not in versions:
            raise InputError(release, "--data-release", "no such data release", versions[::-1], "name one of these")
        self.release = release or versions[-1]
        self._at = version_key(self.release)
        self._frozen = self._last_closed() if self._is_own else None
        self._lives: dict[tuple[str, str], bool] = {}
        self._tables: dict[str, Table] = {}
        self._rows: dict[str, dict[int, Row]] = {}  # by line, those that were asked for alone
        self._parts: dict[str, Part] = {}  # of tables that are not open yet
        self._lists: dict[str, Lines] = {}
        self._words: dict[tuple[str, str], dict[str, str]] = {}
        self._with: dict[str, tuple[tuple[str, ...], ...]] = {}  # by a word that stands in them
        self._rules: dict[str, Rule] = {}
        self._statements: dict[str, tuple[dict[str, str], ...]] = {}
        self._quantities: dict[str, dict[str, str]] = {}
        self._weights: dict[str, tuple[int, int]] = {}  # of sources, and their editions, as rows are ranked
        self._memo: dict[object, object] = {}
        self._sole: dict[Row, Figure] = {}  # of rows that answered alone

        self.opened: Mapping[str, Table] = MappingProxyType(self._tables)  # whole, by name
        self._lock = RLock()  # of what threads may make at once and must have as one thing; last: now it is frozen

    def __setattr__(self, name: str, value: object) -> None:
        if "_lock" in self.__dict__:
            raise AttributeError(f"Refdata is frozen: {name} cannot be changed; open another with refdata(release)")
        super().__setattr__(name, value)

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"Refdata is frozen: {name} cannot be deleted")

    def __repr__(self) -> str:
        return f"<Refdata {self.release}>"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Refdata) and (self.folder, self.release) == (other.folder, other.release)

    def __hash__(self) -> int:
        return hash((self.folder, self.release))

    def __reduce__(self) -> tuple[object, ...]:
        return _opened, (self.folder, self.release)

    def __deepcopy__(self, memo: object) -> Refdata:
        return self

    def _last_closed(self) -> str | None:
        """The newest release that the program carries the digests of, up to this one."""
        carried = closed.carried()
        carried.check_list(self.releases)
        upto = [v for v in carried.whole if version_key(v) <= self._at]
        return max(upto, key=version_key) if upto else None

    def _verify(self, name: str, rows: Callable[[], list[list[str]]]) -> None:
        if self._frozen is not None:
            closed.verify(self._frozen, name, self.path(name), rows)

    @property
    def is_draft(self) -> bool:
        """Whether this release is still open: it has no digest yet."""
        return not next(r for r in self.releases if r["version"] == self.release)["sha256"]

    def path(self, name: str) -> str:
        """Where a file stands, named without its ending."""
        return closed.path_of(self.folder, name)

    def _read(self, name: str) -> list[list[str]]:
        columns = columns_of(name) if name in TABLES else LISTS[name.rsplit("/", 1)[-1]]
        return read_lines(self.path(name), name, columns)

    def lines(self, name: str) -> Lines:
        """The text of a list, read once."""
        got = self._lists.get(name)
        if got is None:
            got = Lines(self.path(name), name, LISTS[name])
            if "since" in LISTS[name]:  # what no release covers has no digest
                self._verify(name, got.all)
            self._lists[name] = got
        return got

    def lives(self, since: str, until: str) -> bool:
        """Whether [since, until) holds this release."""
        got = self._lives.get((since, until))
        if got is None:
            got = version_key(since) <= self._at and (not until or self._at < version_key(until))
            self._lives[since, until] = got
        return got

    def verify_table(self, name: str) -> None:
        """DataError when the rows of a table that live in a closed release are not those that were released."""
        self._verify(name, lambda: self._read(name))

    def living(self, name: str) -> Sequence[tuple[int, Sequence[str]]]:
        """The cells of the living lines of a table, or of the rules of a domain, each with the number of its line."""
        if name in self._tables:
            return [(row.line, row.values) for row in self._tables[name].rows]
        columns = columns_of(name) if name in TABLES else LISTS["rules"]
        span_of = itemgetter(columns.index("since"), columns.index("until"))
        lines = self._read(name)
        self._verify(name, lambda: lines)
        alive = {span for span in set(map(span_of, lines)) if self.lives(*span)}
        return [line for line in enumerate(lines, 2) if span_of(line[1]) in alive]

    def row(self, name: str, line: int, cells: Sequence[str]) -> Row:
        """The row of one living line of a table; a row is one thing, however it was read first."""
        rows = self._rows.get(name)
        got = None if rows is None else rows.get(line)
        if got is None:
            columns = columns_of(name)
            made = Row(name, line, columns, cells, tuple(cells[: len(columns) - len(ROW_COLUMNS)]))
            with self._lock:
                rows = self._rows.get(name)
                if rows is None:
                    opened = self._tables.get(name)
                    rows = self._rows[name] = {row.line: row for row in opened.rows} if opened is not None else {}
                got = rows.setdefault(line, made)
        return got

    def table(self, name: str) -> Table:
        """The living rows of ``domain/table``."""
        got = self._tables.get(name)
        if got is None:
            columns = columns_of(name)
            width = len(columns) - len(ROW_COLUMNS)
            rows = [Row(name, line, columns, cells, tuple(cells[:width])) for line, cells in self.living(name)]
            with self._lock:
                got = self._tables.get(name)
                if got is None:
                    got = self._tables[name] = self._joined(name, rows, width)
        return got

    def _joined(self, name: str, rows: list[Row], width: int) -> Table:
        """A table of rows, those that were asked for alone among them."""
        self._parts.pop(name, None)
        if known := self._rows.pop(name, None):
            rows = [known.get(row.line, row) for row in rows]
        by_quantity: dict[str, list[Row]] = {}
        for row in rows:
            by_quantity.setdefault(row.values[width], []).append(row)
        return Table(name, tuple(rows), by_quantity)

    def listing(self, name: str) -> dict[str, dict[str, str]]:
        """Sources, quantities or formulas of this release, by their first column."""
        return {entry[LISTS[name][0]]: entry for entry in self._living(name, self.lines(name).all())}

    def _living(self, name: str, lines: list[list[str]]) -> list[dict[str, str]]:
        entries: list[dict[str, str]] = [Keys(zip(LISTS[name], cells, strict=True)) for cells in lines]
        return [e for e in entries if self.lives(e["since"], e["until"])]

    def entry(self, name: str, id: str) -> dict[str, str] | None:
        """One line of sources, quantities or formulas; None when it is not listed."""
        memo = ("entry", name, id)
        if memo not in self._memo:
            found = self._living(name, self.lines(name).of(id))
            self._memo[memo] = found[-1] if found else None
        return self._memo[memo]  # type: ignore[return-value]

    def unreleased(self, name: str, id: str) -> list[dict[str, str]]:
        """The lines of a list without lifetimes whose first cell is ``id``."""
        return [Keys(zip(LISTS[name], cells, strict=True)) for cells in self.lines(name).of(id)]

    def _definition(self, name: str, id: str) -> dict[str, str] | None:
        """A line of quantities or formulas: that of this release, else the first that a later one has.

        The program works with what it knows to work out; an earlier release is of figures.
        """
        got = self.entry(name, id)
        if got is not None:
            return got
        return min(self.unreleased(name, id), key=lambda row: version_key(row["since"]), default=None)

    def statements(self, domain: str) -> tuple[dict[str, str], ...]:
        """The living rules without a number of one domain, with their line."""
        got = self._statements.get(domain)
        if got is None:
            lines = self.living(f"{domain}/rules")
            got = self._statements[domain] = tuple([statement(line, cells) for line, cells in lines])
        return got

    def quantity(self, name: str) -> dict[str, str]:
        """The definition of a quantity; DataError when refdata does not define it."""
        got = self._quantities.get(name)
        if got is None:
            got = self._definition("quantities", name)
            if got is None:
                raise DataError(name, "quantities.csv", "this quantity is not defined", (), "add a row for it")
            self._quantities[name] = got
        return got

    def source(self, id: str) -> dict[str, str]:
        """A publication by its id; DataError when it is not listed."""
        got = self.entry("sources", id)
        if got is None:
            raise DataError(id, "sources.csv", "this source is not listed", (), "add a row for it")
        return got

    def rule(self, name: str) -> Rule:
        """A named formula as the Rule of a derived figure."""
        got = self._rules.get(name)
        if got is None:
            row = self._definition("formulas", name)
            if row is None:
                raise DataError(name, "formulas.csv", "this formula is not listed", (), "add a row for it")
            got = self._rules[name] = Rule(
                name, row["expression"], row["basis"], row["checked"], row["source"], row["locator"]
            )
        return got

    def words(self, domain: str, column: str) -> dict[str, str]:
        """What people type for a key column -> its cell, by case-folded word."""
        found = self._words.get((domain, column))
        if found is None:
            entries = self.lines("words").column_of(domain, LISTS["words"].index("column"), column)
            alive = {span for span in {(cells[4], cells[5]) for cells in entries} if self.lives(*span)}
            found = self._words[domain, column] = Keys(
                {cells[1].casefold(): cells[3] for cells in entries if (cells[4], cells[5]) in alive}
            )
        return found

    def words_with(self, word: str = "") -> tuple[tuple[str, ...], ...]:
        """The living lines of words.csv in which a word stands; without one all of them."""
        got = self._with.get(word)
        if got is None:
            lines = self.lines("words")
            found = lines.holding(word) if word else lines.all()
            if len(self._with) > _WORDS_KEPT:
                self._with.clear()
            got = self._with[word] = tuple([tuple(cells) for cells in found if self.lives(cells[4], cells[5])])
        return got

    def figures_made(self) -> list[tuple[Row, Figure]]:
        """The rows that look-ups have read so far, with their Figures."""
        made = [(k, v) for k, v in self._memo.items() if isinstance(k, Row) and isinstance(v, Figure)]
        return [*made, *self._sole.items()]

    def read_so_far(self) -> dict[str, list[tuple[str, ...]]]:
        """The cells of the living rows of each table that was read."""
        return {name: [row.values for row in table.rows] for name, table in self._tables.items()}

    def all_tables(self) -> list[Table]:
        """Every table of every domain, in catalogue order."""
        return [self.table(name) for name in TABLES]


_OPEN: dict[str | None, Refdata] = {}


def refdata(release: str | None = None) -> Refdata:
    """The tables of a ``release`` (the newest when none is named), opened once a process; InputError for no release."""
    got = _OPEN.get(release)
    if got is None:
        got = _OPEN.setdefault(release, Refdata(release=release))
    return got


def statement(line: int, cells: Sequence[str]) -> dict[str, str]:
    """A rule without a number, from a line of a domain's rules."""
    return Keys(zip((*LISTS["rules"], "line"), (*cells, str(line)), strict=True))


def _opened(folder: str, release: str) -> Refdata:
    """The tables that a pickled Refdata stood for: the ones open here, else opened again."""
    mine = refdata(release) if folder == refdata_folder() else None
    return mine if mine is not None else Refdata(folder, release)


def canonical(data: Refdata, table: str, column: str, typed: str) -> str:
    """The key cell that ``typed`` means: the cell itself, another case of it, or a listed word; LookupMiss with the
    nearest.
    """
    text = " ".join(typed.split())
    folded = text.casefold()
    if column == columns_of(table)[0] and table not in data.opened:
        from gaugeblock.tables.part import first_cell

        cell = first_cell(data, table, folded, lambda: data.words(table.split("/", 1)[0], column).get(folded))
        if cell is not None:
            return cell
    cells = data.table(table).column(column)
    if folded in cells:
        return cells[folded]
    if not cells:
        why = f"data release {data.release} has no figures in {table}"
        raise LookupMiss(
            typed, f"{table} {column}", why, [r["version"] for r in data.releases][::-1], "use a later data release"
        )
    words = data.words(table.split("/", 1)[0], column)
    cell = words.get(folded)
    if cell is not None:
        return cell

    def near() -> Offers:
        from gaugeblock.tables.near import of_kind, offers

        own = sorted(c for c in cells.values() if c not in ("any", "not stated"))
        pool = {**{w: c for w, c in words.items() if c in own}, **{c: c for c in own}}
        return offers(text, pool, of_kind(text, own), column=f"{table.split('/', 1)[0]} {column}", data=data)

    why = "not a key of this table"
    raise LookupMiss(typed, f"{table} {column}", why, near, "use one of these, or ask the maker")


def option(typed: str, column: str, why: str, do: str = "use one of these", data: Refdata | None = None) -> str:
    """One of the few words of an option that is no key of a table: as typed, or by a word that is listed for it.

    ``column`` is the option with its domain, ``driveline phasing``. InputError with what is near, never the opposite.
    """
    choices, folded = OPTIONS[column], " ".join(typed.split()).casefold()
    domain, _, name = column.partition(" ")
    if folded in choices:
        return folded
    data = data or refdata()
    said = {c: c for c in choices} | data.words(domain, name)
    if folded in said:
        return said[folded]
    from gaugeblock.tables.near import offers

    raise InputError(typed[:60], name, why, offers(typed, said, choices, column=column, data=data), do)
