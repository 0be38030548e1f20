"""Validate: every fault of refdata at once - file, line, column, rule, what was found, what to do.

In order: the bytes of each file, the schemas, keys, references and lifetimes, the digests of closed releases, physics.
A row that a step could not read is left out of the steps after it; all other rows go on.
"""

from __future__ import annotations

import os
from functools import cache
from itertools import combinations, pairwise
from math import inf
from typing import TYPE_CHECKING

from gaugeblock.errors import InputError
from gaugeblock.tables.catalogue import DOMAINS, LISTS, OPTIONS, TABLES, keys_of, refdata_folder
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.formulas import formula_faults
from gaugeblock.tables.frozen import carried_faults, digest_faults
from gaugeblock.tables.interval import is_interval, parse_interval
from gaugeblock.tables.limits import Ranges, range_faults
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import LIST_KEYS, read_raw
from gaugeblock.tables.releases import released_files

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from gaugeblock.tables.physics import Rule
    from gaugeblock.tables.schema import Schema


# The lists that no release covers.
UNRELEASED = ("releases", "ranges", "expressions", "symbols")


class Refused:
    """Rows that a step could not read, by file and line."""

    def __init__(self) -> None:
        self.places: set[tuple[str, int]] = set()

    def add(self, faults: Iterable[Fault]) -> list[Fault]:
        """Remember the places of some faults, and give the faults back."""
        kept = list(faults)
        self.places.update((f.file, f.line) for f in kept)
        return kept

    def __contains__(self, place: tuple[str, int]) -> bool:
        return place in self.places


class Checked:
    """What ``check`` found: the faults, and how much was looked at."""

    __slots__ = ("faults", "releases", "rows", "tables")

    def __init__(self, faults: list[Fault], rows: int, tables: int, releases: int) -> None:
        self.faults = faults
        self.rows = rows
        self.tables = tables
        self.releases = releases


def check(folder: str | None, rules: Sequence[Rule]) -> Checked:
    """All faults of the tables in ``folder`` (the project's own when None) by ``rules`` of the domains too, and the
    counts.
    """
    if folder is not None and not os.path.isdir(folder):
        raise InputError(folder, "validate", "no such folder", (), "name a folder with tables in it")
    folder = folder or refdata_folder()
    faults: list[Fault] = []
    read: dict[str, list[Row]] = {}
    for name, columns in {**released_files(), **{n: LISTS[n] for n in UNRELEASED}}.items():
        read[name] = read_raw(folder, name, columns, faults)
    releases, ranges, expressions, symbols = (read.pop(n) for n in UNRELEASED)
    versions = {v: i for i, v in enumerate(sorted({r.cells["version"] for r in releases}, key=_version_order))}
    refused = Refused()
    faults += refused.add(_schema_faults(read, releases, versions))
    faults += refused.add(range_faults(read["quantities"], ranges))
    faults += formula_faults(read["formulas"], expressions, symbols, read["quantities"])
    tables = {name: [r for r in read[name] if (f"{name}.csv", r.line) not in refused] for name in TABLES}
    lists = {name: rows for name, rows in read.items() if name not in TABLES}
    faults += _key_faults(tables, versions)
    faults += _list_faults(lists, releases, versions)
    faults += _reference_faults(tables, lists, versions)
    faults += digest_faults(read, releases, versions)
    faults += carried_faults(folder, releases)
    from gaugeblock.tables.physics import physics_faults

    faults += physics_faults(tables, rules, Ranges(read["quantities"], ranges))
    unique = sorted(set(faults), key=lambda f: f.parts)
    rows = sum(len(read[name]) for name in TABLES)
    return Checked(unique, rows, len(TABLES), len(releases))


def report(checked: Checked) -> str:
    """One line a fault, then the counts."""
    if not checked.faults:
        return f"{checked.rows} rows in {checked.tables} tables, {checked.releases} releases: no fault"
    return "\n".join([*map(str, checked.faults), f"{checked.rows} rows, {len(checked.faults)} faults"])


# The schemas


def _schema_faults(read: Mapping[str, list[Row]], releases: list[Row], versions: Mapping[str, int]) -> list[Fault]:
    from gaugeblock.tables import schema
    from gaugeblock.tables.catalogue import ROW_COLUMNS

    def run(made: Schema, rows: list[Row], columns: Sequence[str], cells: Iterable[Sequence[str]]) -> list[Fault]:
        return schema.faults_of(made, columns, list(cells), [(f"{r.table}.csv", r.line) for r in rows])

    sources = {r.cells["id"] for r in read["sources"]}
    dimensions = {r.cells["quantity"]: r.cells["dimension"] for r in read["quantities"]}
    figures = [r for name in TABLES for r in read[name]]
    shared = (r.values[-len(ROW_COLUMNS) :] for r in figures)
    faults = run(schema.shared_schema(dimensions, sources, versions), figures, ROW_COLUMNS, shared)
    for name in TABLES:
        rows = read[name]
        faults += run(schema.key_schema(name), rows, [k.name for k in keys_of(name)], (r.key for r in rows))
    rules = [r for domain in DOMAINS for r in read[f"{domain}/rules"]]
    lists = {"releases": releases, "rules": rules} | {
        n: read[n] for n in ("sources", "quantities", "formulas", "words")
    }
    for name, rows in lists.items():
        faults += run(schema.list_schema(name, sources, versions), rows, LISTS[name], (r.values for r in rows))
    return faults


# Keys


def _version_order(version: str) -> tuple[int, ...]:
    parts = version.split(".")
    return tuple(int(p) for p in parts) if all(p.isdigit() for p in parts) else (-1,)


def _meet(a: Row, b: Row, versions: Mapping[str, int]) -> bool:
    """Whether some release holds both rows."""
    last = len(versions)
    ends = [versions.get(r.cells["until"], last) for r in (a, b)]
    return max(versions.get(r.cells["since"], 0) for r in (a, b)) < min(ends)


def _key_faults(tables: Mapping[str, list[Row]], versions: Mapping[str, int]) -> list[Fault]:
    faults = []
    for name, rows in tables.items():
        intervals = [k.name for k in keys_of(name) if k.match == "interval"]
        fixed = [at for at, k in enumerate(keys_of(name)) if k.match != "interval"]
        groups: dict[tuple[str, ...], list[Row]] = {}
        for row in rows:
            c = row.cells
            place = c["source"] or f"{c['basis']} {c['locator']}"
            groups.setdefault((*(row.key[at] for at in fixed), c["quantity"], place, c["standing"]), []).append(row)
        for group in groups.values():
            for a, b in combinations(group, 2) if len(group) > 1 else ():
                same = a.key == b.key
                if not same and not (intervals and all(_overlap(a.cells[k], b.cells[k]) for k in intervals)):
                    continue
                if not _meet(a, b, versions):
                    continue
                if same:
                    faults.append(_twice(a, b))
                else:
                    column = next(k for k in intervals if a.cells[k] != b.cells[k])
                    found = f"{b.cells[column]!r}, which overlaps {a.cells[column]!r} of line {a.line}"
                    faults.append(
                        Fault(
                            f"{name}.csv",
                            b.line,
                            column,
                            "overlapping_range",
                            found,
                            "ranges of one source do not overlap; write over where the lower end is left out",
                        )
                    )
    return faults


def _twice(a: Row, b: Row) -> Fault:
    same = all(a.cells[c] == b.cells[c] for c in a.cells if c not in ("since", "until"))
    if same:
        return Fault(f"{b.table}.csv", b.line, "", "duplicate_row", f"line {a.line} again", "take one of the two out")
    found = f"the key, quantity and source of line {a.line}"
    return Fault(
        f"{b.table}.csv",
        b.line,
        "",
        "duplicate_key",
        found,
        "merge the two, close one, or put what tells them apart in a key column",
    )


def _overlap(a: str, b: str) -> bool:
    one, other = parse_interval(a), parse_interval(b)
    if one is None or other is None:
        return one is other
    (low, high), (low_b, high_b) = _ends(a), _ends(b)
    if high < low_b or high_b < low:
        return False  # well apart, as most are: no fractions needed
    return one.overlaps(other)


@cache
def _ends(cell: str) -> tuple[float, float]:
    """The ends of an interval as floats, a hair apart from the exact ones to the outer side."""
    interval = parse_interval(cell)
    low = -inf if interval is None or interval.low is None else float(interval.low)
    high = inf if interval is None or interval.high is None else float(interval.high)
    return low - 1e-9 * abs(low) if low > -inf else low, high + 1e-9 * abs(high) if high < inf else high


def _list_faults(lists: Mapping[str, list[Row]], releases: list[Row], versions: Mapping[str, int]) -> list[Fault]:
    faults = []
    for name, rows in lists.items():
        seen: dict[tuple[str, ...], list[Row]] = {}
        for row in rows:
            for earlier in seen.setdefault(tuple(k.casefold() for k in row.key), []):
                if _meet(earlier, row, versions):
                    column = LIST_KEYS[name.rsplit("/", 1)[-1]][-1]
                    faults.append(
                        Fault(
                            f"{name}.csv",
                            row.line,
                            column,
                            "duplicate_entry",
                            f"the entry of line {earlier.line} again",
                            "take one out, or close it",
                        )
                    )
            seen[tuple(k.casefold() for k in row.key)].append(row)
    titles: dict[str, Row] = {}
    for row in lists["sources"]:
        first = titles.setdefault(row.cells["id"], row)
        if first.cells["title"] != row.cells["title"]:
            found = f"another title than line {first.line}"
            faults.append(
                Fault("sources.csv", row.line, "title", "two_titles", found, "give each publication an id of its own")
            )
    for earlier, later in pairwise(releases):
        if _version_order(earlier.cells["version"]) >= _version_order(later.cells["version"]):
            faults.append(
                Fault(
                    "releases.csv",
                    later.line,
                    "version",
                    "versions_rise",
                    repr(later.cells["version"]),
                    "write releases in rising order",
                )
            )
        if not earlier.cells["sha256"]:
            faults.append(
                Fault(
                    "releases.csv",
                    earlier.line,
                    "sha256",
                    "open_release",
                    "an open release before the last",
                    "close it first",
                )
            )
    if not releases:
        faults.append(Fault("releases.csv", 0, "", "no_release", "no release", "add a row"))
    return faults


# References and lifetimes


def _reference_faults(
    tables: Mapping[str, list[Row]], lists: Mapping[str, list[Row]], versions: Mapping[str, int]
) -> list[Fault]:
    faults = []
    listed: dict[str, dict[str, list[Row]]] = {"source": {}, "quantity": {}}
    for column, name in (("source", "sources"), ("quantity", "quantities")):
        for entry in lists[name]:
            listed[column].setdefault(entry.key[0], []).append(entry)
    last = len(versions)

    def covered(row: Row, column: str) -> bool:
        since, until = versions.get(row.cells["since"], 0), versions.get(row.cells["until"], last)
        spans = [
            (versions.get(e.cells["since"], 0), versions.get(e.cells["until"], last))
            for e in listed[column].get(row.cells[column], [])
        ]
        return not spans or all(any(a <= at < b for a, b in spans) for at in range(since, until))

    known: dict[tuple[str, str, str, str], bool] = {}
    rules = [r for domain in DOMAINS for r in lists[f"{domain}/rules"]]
    for row in [*(r for rows in tables.values() for r in rows), *lists["formulas"], *rules]:
        for column in ("source", "quantity"):
            if not row.cells.get(column):
                continue
            memo = (column, row.cells[column], row.cells["since"], row.cells["until"])
            if memo not in known:
                known[memo] = covered(row, column)
            if not known[memo]:
                found = f"{row.cells[column]!r}, which does not live as long as this row"
                faults.append(
                    Fault(
                        f"{row.table}.csv",
                        row.line,
                        column,
                        "outlived_reference",
                        found,
                        "close the row too, or keep the entry open",
                    )
                )
    return faults + _word_faults(tables, lists["words"])


# A word may also say what it is near to, or the opposite of, in a key column, or of what kind a cell is.
# Or who has the figure of a thing that exists and that no table has.
KIND, MAKER, RELATIONS = "kind of ", "maker of ", ("related ", "opposite ")


def _relation(column: str) -> tuple[str, str]:
    """What a word says of a key column (blank: that it means a cell of it), and the column."""
    for relation in (KIND, MAKER, *RELATIONS):
        if column.startswith(relation):
            return relation, column.removeprefix(relation)
    return "", column


def _word_faults(tables: Mapping[str, list[Row]], words: list[Row]) -> list[Fault]:
    """A word fills a key column of its domain, with a cell that the domain has.

    The cell may stand in another column, or be a word of another column: a ``condition`` that is typed is looked up
    by the surface and the lubricant that it stands for.
    """
    columns: dict[str, set[str]] = {}
    cells: dict[str, set[str]] = {}
    for name, rows in tables.items():
        for domain in (name.split("/", 1)[0], "any"):
            columns.setdefault(domain, set()).update(k.name for k in keys_of(name))
            cells.setdefault(domain, set()).update(cell for r in rows for cell in r.key)
    also = {(w.cells["domain"], w.cells["word"].casefold()) for w in words if w.cells["column"] != "condition"}
    faults = []
    for word in words:
        c = word.cells
        if c["domain"] not in columns:
            continue
        relation, column = _relation(c["column"])
        if relation in (KIND, MAKER) and column in columns[c["domain"]]:
            continue  # the cell is a kind or somebody, not a key
        choices = OPTIONS.get(f"{c['domain']} {column}", ())
        if c["cell"] in choices:
            continue
        if column not in columns[c["domain"]]:
            do = "name a key column of a table of the domain"
            faults.append(Fault("words.csv", word.line, "column", "unknown_column", repr(c["column"]), do))
        elif c["cell"] in cells[c["domain"]] or is_interval(c["cell"]):
            continue
        elif column != "condition" or (c["domain"], c["cell"].casefold()) not in also:
            do = "a word means a cell that some row of the domain has"
            faults.append(Fault("words.csv", word.line, "cell", "unknown_cell", repr(c["cell"]), do))
    return faults
