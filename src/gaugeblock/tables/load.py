"""Refdata: the CSV tables of one data release, read on demand. The only code that opens refdata."""

from __future__ import annotations

import csv
import os

from gaugeblock.errors import DataError, InputError, LookupMiss
from gaugeblock.figure import Figure, Rule
from gaugeblock.tables.catalogue import DOMAINS, LISTS, ROW_COLUMNS, TABLES, columns_of, keys_of

# Where the standing stands, counted from the end of a row of figures.
_STANDING = ROW_COLUMNS.index("standing") - len(ROW_COLUMNS)


def refdata_folder() -> str:
    """The folder of refdata: inside the installed package, else beside ``src`` in a checkout."""
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    for folder in (os.path.join(package, "_refdata"), os.path.join(package, "..", "..", "refdata")):
        if os.path.isfile(os.path.join(folder, "releases.csv")):
            return os.path.normpath(folder)
    raise DataError(
        "refdata", "installation", "the tables are not there", (), "install gaugeblock again, or run in a checkout"
    )


def version_key(text: str) -> tuple[int, int, int]:
    """``0.2.0`` as comparable numbers; DataError when it is not a release number."""
    parts = text.split(".")
    if len(parts) != 3 or not all(p.isascii() and p.isdigit() and len(p) <= 6 for p in parts):
        raise DataError(text, "release number", "not a release number", (), "write it as 0.2.0")
    return int(parts[0]), int(parts[1]), int(parts[2])


def is_decimal(text: str) -> bool:
    """Plain decimal text: ``12``, ``-0.5``; no exponent, no comma, no bare point."""
    whole, point, part = text.removeprefix("-").partition(".")
    return text.isascii() and whole.isdigit() and (part.isdigit() if point else not part)


def read_lines(path: str, name: str, columns: tuple[str, ...], only: str = "") -> list[tuple[int, list[str]]]:
    """The rows of one CSV file with their line numbers; DataError names file, line and fault.

    With ``only``, just the lines that begin with that text are split (their line numbers are then not known: 0).
    """
    try:
        with open(path, newline="", encoding="utf-8") as handle:
            if only:
                head = handle.readline()
                reader = csv.reader([head, *(line for line in handle if line.startswith(only))], strict=True)
                out = [(0, cells) for cells in reader]
            else:
                reader = csv.reader(handle, strict=True)
                out = []
                start = 1
                for cells in reader:
                    out.append((start, cells))
                    start = reader.line_num + 1
    except FileNotFoundError:
        raise DataError(f"{name}.csv", "refdata", "the file is missing", (), "restore it") from None
    except (csv.Error, UnicodeDecodeError) as error:
        do = "correct the file, then run validate"
        raise DataError(f"{name}.csv", "refdata", f"cannot be read: {error}", (), do) from None
    if not out or tuple(out[0][1]) != columns:
        do = f"write: {','.join(columns)}"
        raise DataError(f"{name}.csv", "line 1", "the header is not that of the catalogue", (), do)
    width = len(columns)
    for line, cells in out[1:]:
        if len(cells) != width:
            why = f"{len(cells)} fields, not {width}"
            raise DataError(f"{name}.csv", f"line {line}", why, (), "give every column, blank ones too")
    return out[1:]


class Row:
    """One row of a table of figures: its cells by column, where it stands, and its key cells in order."""

    __slots__ = ("_columns", "_values", "cells", "key", "line", "standing", "table")

    cells: dict[str, str]

    def __init__(
        self, table: str, line: int, columns: tuple[str, ...], values: list[str], key: tuple[str, ...]
    ) -> None:
        self.table = table
        self.line = line
        self.key = key
        self.standing = values[_STANDING]
        self._columns = columns
        self._values = values

    def __getattr__(self, name: str) -> dict[str, str]:
        # ``cells`` are made when first asked, since a look-up needs few of a table's rows
        if name != "cells":
            raise AttributeError(name)
        self.cells = made = dict(zip(self._columns, self._values, strict=True))
        return made

    def number(self, column: str) -> float | None:
        """The decimal in ``value``, ``low`` or ``high``; None when blank; DataError when it is not a decimal."""
        text = self.cells[column]
        if not text:
            return None
        if not is_decimal(text):
            raise DataError(
                f"{self.table}.csv", f"line {self.line}, column {column}", f"{text!r} is not a decimal number", (),
                "write it with a point and no unit",
            )  # fmt: skip
        return float(text)


class Table:
    """The rows of one table that live in one release, by quantity."""

    __slots__ = ("by_quantity", "cells_of", "keys", "name", "rows")

    def __init__(self, name: str, rows: list[Row], by_quantity: dict[str, list[Row]]) -> None:
        self.name = name
        self.keys = keys_of(name)
        self.rows = rows
        self.by_quantity = by_quantity
        self.cells_of: dict[str, dict[str, str]] = {}

    def column(self, name: str) -> dict[str, str]:
        """The distinct cells of a key column, each by its case-folded spelling."""
        got = self.cells_of.get(name)
        if got is None:
            at = next(i for i, k in enumerate(self.keys) if k.name == name)
            distinct = dict.fromkeys(row.key[at] for row in self.rows)
            got = self.cells_of[name] = {cell.casefold(): cell for cell in distinct}
        return got


class Refdata:
    """All tables of one data release. Reads each file once, when it is first needed."""

    def __init__(self, folder: str | None = None, release: str | None = None) -> None:
        self.folder = folder or refdata_folder()
        releases = [dict(zip(LISTS["releases"], c, strict=True)) for _, c in self._read("releases")]
        if not releases:
            raise DataError("releases.csv", "refdata", "no release", (), "add one")
        self.releases = releases
        versions = [r["version"] for r in releases]
        if release is not None and release not in versions:
            raise InputError(release, "--data-release", "no such data release", versions[::-1], "name one of these")
        self.release = release or versions[-1]
        self._at = version_key(self.release)
        self._lives: dict[tuple[str, str], bool] = {}
        self._tables: dict[str, Table] = {}
        self._lists: dict[str, dict[str, list[str]]] = {}
        self._words: dict[str, dict[str, dict[str, str]]] = {}
        self._rules: dict[str, Rule] = {}
        self.memo: dict[object, object] = {}

    @property
    def is_draft(self) -> bool:
        """Whether this release is still open: it has no digest yet."""
        return not next(r for r in self.releases if r["version"] == self.release)["sha256"]

    def _read(self, name: str, table: bool = False, only: str = "") -> list[tuple[int, list[str]]]:
        columns = columns_of(name) if table else LISTS[name.rsplit("/", 1)[-1]]
        return read_lines(os.path.join(self.folder, *name.split("/")) + ".csv", name, columns, only)

    def lives(self, since: str, until: str) -> bool:
        """Whether [since, until) holds this release."""
        got = self._lives.get((since, until))
        if got is None:
            got = version_key(since) <= self._at and (not until or self._at < version_key(until))
            self._lives[since, until] = got
        return got

    def table(self, name: str) -> Table:
        """The living rows of ``domain/table``."""
        got = self._tables.get(name)
        if got is None:
            columns = columns_of(name)
            width = len(keys_of(name))
            since, until = columns.index("since"), columns.index("until")
            quantity = columns.index("quantity")
            rows = []
            by_quantity: dict[str, list[Row]] = {}
            for line, cells in self._read(name, table=True):
                if self.lives(cells[since], cells[until]):
                    row = Row(name, line, columns, cells, tuple(cells[:width]))
                    rows.append(row)
                    by_quantity.setdefault(cells[quantity], []).append(row)
            got = self._tables[name] = Table(name, rows, by_quantity)
        return got

    def listing(self, name: str) -> dict[str, dict[str, str]]:
        """Sources, quantities or formulas of this release, by their first column."""
        columns = LISTS[name]
        return {id: dict(zip(columns, values, strict=True)) for id, values in self._entries(name).items()}

    def _entries(self, name: str) -> dict[str, list[str]]:
        got = self._lists.get(name)
        if got is None:
            columns = LISTS[name]
            since, until = columns.index("since"), columns.index("until")
            got = self._lists[name] = {c[0]: c for _, c in self._read(name) if self.lives(c[since], c[until])}
        return got

    def entry(self, name: str, id: str) -> dict[str, str] | None:
        """One line of sources, quantities or formulas; None when it is not listed."""
        memo = ("entry", name, id)
        if memo not in self.memo:
            values = self._entries(name).get(id)
            self.memo[memo] = None if values is None else dict(zip(LISTS[name], values, strict=True))
        return self.memo[memo]  # type: ignore[return-value]

    def statements(self, domain: str) -> list[dict[str, str]]:
        """The living rules without a number of one domain, with their line."""
        name = f"{domain}/rules"
        out = []
        for line, cells in self._read(name):
            row = dict(zip(LISTS["rules"], cells, strict=True))
            if self.lives(row["since"], row["until"]):
                row["line"] = str(line)
                out.append(row)
        return out

    def quantity(self, name: str) -> dict[str, str]:
        """The definition of a quantity; DataError when refdata does not define it."""
        got = self.entry("quantities", name)
        if got is None:
            raise DataError(name, "quantities.csv", "this quantity is not defined", (), "add a row for it")
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
            row = self.entry("formulas", name)
            if row is None:
                raise DataError(name, "formulas.csv", "this formula is not listed", (), "add a row for it")
            got = self._rules[name] = Rule(
                name, row["expression"], row["basis"], row["checked"], row["source"], row["locator"]
            )
        return got

    def words(self, domain: str, column: str) -> dict[str, str]:
        """What people type for a key column -> its cell, by case-folded word."""
        found = self._words.get(domain)
        if found is None:
            found = self._words[domain] = {}
            for _, (_, word, at, cell, since, until, _) in self._read("words", only=f"{domain},"):
                if self.lives(since, until):
                    found.setdefault(at, {})[word.casefold()] = cell
        return found.get(column, {})

    def figures_made(self) -> list[tuple[Row, Figure]]:
        """The rows that look-ups have read so far, with their Figures."""
        return [(k, v) for k, v in self.memo.items() if isinstance(k, Row) and isinstance(v, Figure)]

    def all_tables(self) -> list[Table]:
        """Every table of every domain, in catalogue order."""
        return [self.table(name) for name in TABLES]

    def all_statements(self) -> list[tuple[str, dict[str, str]]]:
        """Every rule without a number, with its domain."""
        return [(d, s) for d in DOMAINS for s in self.statements(d)]


_OPEN: dict[str | None, Refdata] = {}


def refdata(release: str | None = None) -> Refdata:
    """The tables of a release (the newest when none is named), opened once a process."""
    got = _OPEN.get(release)
    if got is None:
        got = _OPEN[release] = Refdata(release=release)
    return got


def nearest(text: str, choices: list[str] | dict[str, str], count: int = 5) -> list[str]:
    """The choices that look most like ``text``, best first."""
    from difflib import get_close_matches

    folded: dict[str, str] = {}
    for choice in choices:
        folded.setdefault(choice.casefold(), choice)
    found = [folded[m] for m in get_close_matches(text.casefold(), folded, n=count, cutoff=0.45)]
    if len(found) < count:
        wanted = text.casefold().replace("-", " ").replace(",", " ").split()
        more = [c for f, c in folded.items() if c not in found and any(f.startswith(w) for w in wanted)]
        found += more[: count - len(found)]
    return found


def canonical(data: Refdata, table: str, column: str, typed: str) -> str:
    """The key cell that ``typed`` means: the cell itself, another case of it, or a listed word; LookupMiss with the nearest."""
    text = " ".join(typed.split())
    folded = text.casefold()
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

    def near() -> list[str]:
        pool = {**{w: w for w in words}, **{c: c for c in cells.values()}}
        return list(dict.fromkeys(words.get(n, n) for n in nearest(text, pool, 8))) or sorted(cells.values())

    why = "not a key of this table"
    raise LookupMiss(typed, f"{table} {column}", why, near, "use one of these, or ask the maker")
