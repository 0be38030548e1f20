"""Damages the safety tables one figure at a time and asks who sees it: the second reading, or the rules of
``validate``.

The digests of closed releases are left out on purpose: they notice any change at all, once a release is closed. What is
asked here is which slips are seen while a table is still being written. Tables are read once and damaged in memory.
Run as a program (``scripts/mutate tables``) it tries every damage; the test-suite tries a fixed sample.
"""

from __future__ import annotations

import argparse
import itertools
import random
import sys
from collections import Counter
from decimal import Decimal
from typing import TYPE_CHECKING

from gaugeblock import domains, units
from gaugeblock.tables import physics, schema, validate
from gaugeblock.tables.catalogue import LISTS, ROW_COLUMNS, TABLES, columns_of, refdata_folder
from gaugeblock.tables.facts import NUMBERS, Facts
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import read_raw
from refdata.second_reading import MEASURED, differences, place_of, second_rows

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from gaugeblock.tables.fault import Fault

KINDS = (
    "ten times",
    "a tenth",
    "next row's number",
    "low for high",
    "another unit",
    "row left out",
    "row entered twice",
)
# The line that the second copy of a row gets: below all others.
BELOW = 1_000_000


class Mutation:
    """One damage: ``rows`` take the place of the rows of their lines; ``left_out`` is gone."""

    __slots__ = ("detail", "kind", "left_out", "row", "rows", "twice")

    def __init__(self, kind: str, row: Row, detail: str, rows: tuple[Row, ...] = ()) -> None:
        self.kind = kind
        self.row = row
        self.detail = detail
        self.rows = rows
        self.left_out = kind == "row left out"
        self.twice = kind == "row entered twice"

    def __str__(self) -> str:
        cells = self.row.cells
        return (
            f"{self.kind}: refdata/{self.row.table}.csv:{self.row.line}: {' | '.join(self.row.key)}: "
            f"{cells['quantity']} ({cells['source'] or cells['basis']}): {self.detail}"
        )


def _changed(row: Row, line: int | None = None, **cells: str) -> Row:
    new = row.cells | cells
    return Row(row.table, row.line if line is None else line, tuple(new), list(new.values()), row.key)


def _shown(cells: dict[str, str]) -> str:
    return " ".join(f"{c} {cells[c]}" for c in (*NUMBERS, "unit") if cells[c])


def mutations_of(rows: list[Row]) -> Iterator[Mutation]:
    """Every damage of the living rows of one table, in their order."""
    rows = [r for r in rows if not r.cells["until"]]
    for row, below in itertools.zip_longest(rows, rows[1:]):
        cells = row.cells
        numbers = [c for c in NUMBERS if cells[c]]
        for column in numbers:
            number = Decimal(cells[column])
            for kind, factor in (("ten times", Decimal(10)), ("a tenth", Decimal("0.1"))):
                text = format(number * factor, "f")
                if number:
                    yield Mutation(kind, row, f"{column} {cells[column]} as {text}", (_changed(row, **{column: text}),))
            if below is not None and below.cells[column] and Decimal(below.cells[column]) != number:
                pair = (
                    _changed(row, **{column: below.cells[column]}),
                    _changed(below, **{column: cells[column]}),
                )
                yield Mutation(
                    "next row's number", row, f"{column} {cells[column]} and {below.cells[column]} exchanged", pair
                )
        if cells["low"] and cells["high"] and Decimal(cells["low"]) != Decimal(cells["high"]):
            swapped = _changed(row, low=cells["high"], high=cells["low"])
            yield Mutation("low for high", row, f"{cells['low']} to {cells['high']} exchanged", (swapped,))
        for unit in units.spellings(units.dimension(cells["unit"])):
            if unit != cells["unit"]:
                yield Mutation("another unit", row, f"{_shown(cells)} as {unit}", (_changed(row, unit=unit),))
        yield Mutation("row left out", row, _shown(cells))
        yield Mutation("row entered twice", row, _shown(cells), (_changed(row, BELOW),))


class Bench:
    """Refdata and the second reading, read once, and the faults that are there before any damage."""

    def __init__(self) -> None:
        folder = refdata_folder()
        faults: list[Fault] = []
        self.tables = {name: read_raw(folder, name, columns_of(name), faults) for name in TABLES}
        lists = {name: read_raw(folder, name, LISTS[name], faults) for name in LISTS if name != "rules"}
        versions = [r.cells["version"] for r in lists["releases"]]
        self.versions = {v: i for i, v in enumerate(versions)}
        self.words = lists["words"]
        dimensions = {r.cells["quantity"]: r.cells["dimension"] for r in lists["quantities"]}
        self.shared = schema.shared_schema(dimensions, {r.cells["id"] for r in lists["sources"]}, self.versions)
        self.second = {name: {place_of(name, r): r for r in second_rows(name)} for name in MEASURED}
        self.facts: dict[str, Facts] = {}
        self.before: dict[str, set[tuple[str, int, str, str]]] = {}

    def all_mutations(self) -> list[Mutation]:
        """Every damage of every safety table."""
        return [m for name in MEASURED for m in mutations_of(self.tables[name])]

    # The second reading

    def second_sees(self, mutation: Mutation) -> bool:
        """Whether a row of the second reading has lost its row, has two, or differs from it."""
        table = mutation.row.table
        second = self.second[table]
        if mutation.left_out or mutation.twice:
            return place_of(table, mutation.row.cells) in second
        return any(
            place in second and bool(differences(second[place], row.cells))
            for row in mutation.rows
            for place in (place_of(table, row.cells),)
        )

    def why_unseen(self, mutation: Mutation) -> str:
        """Why nobody sees a damage: what stands against a second reading of its row."""
        cells = mutation.row.cells
        if cells["basis"] == "common practice":
            return "a habit, which no document has"
        if cells["checked"] == "memory":
            return "from memory"
        if place_of(mutation.row.table, cells) not in self.second[mutation.row.table]:
            return "read once"
        return "read twice, and the slip is in both"

    # The rules of validate

    def schemas_see(self, mutations: list[Mutation]) -> list[bool]:
        """Whether the schema of the columns that every row has refuses a damaged row; all damages at once."""
        owners = [n for n, m in enumerate(mutations) for _ in m.rows]
        if not owners:
            return [False] * len(mutations)
        cells = [[r.cells[c] for c in ROW_COLUMNS] for m in mutations for r in m.rows]
        places = [("", owner) for owner in owners]
        found = {f.line for f in schema.faults_of(self.shared, ROW_COLUMNS, cells, places)}
        return [n in found for n in range(len(mutations))]

    def _kin(self, table: str) -> list[str]:
        # A torque is judged by its thread, its grade and its like; the tables of the other domains by themselves.
        return [t for t in TABLES if t.startswith("fasteners/")] if table.startswith("fasteners/") else [table]

    def _facts(self, group: str) -> Facts:
        got = self.facts.get(group)
        if got is None:
            got = self.facts[group] = Facts({t: self.tables[t] for t in self._kin(group)})
            self.before[group] = {_name(f) for rule in (*physics.RULES, *domains.physics()) for f in rule(got)}
        return got

    def physics_sees(self, mutation: Mutation) -> bool:
        """Whether a physics rule finds a fault that was not there before."""
        table = mutation.row.table
        base = self._facts(table)
        new = {row.line: row for row in mutation.rows}
        facts = Facts({})
        facts.tables = dict(base.tables)
        if mutation.left_out:
            rows = [r for r in base.tables[table] if r.line != mutation.row.line]
        else:
            rows = [new.get(r.line, r) for r in base.tables[table]]
            rows += [r for r in mutation.rows if r.line == BELOW]
        facts.tables[table] = [r for r in rows if not r.cells["standing"]]
        facts._numbers = dict(base._numbers)
        before = self.before[table]
        return any(_name(fault) not in before for rule in (*physics.RULES, *domains.physics()) for fault in rule(facts))

    def keys_see(self, mutation: Mutation) -> bool:
        """Whether a row entered twice, or a word that means nothing any more, is found."""
        table = mutation.row.table
        if mutation.twice:
            return bool(validate._key_faults({table: [mutation.row, *mutation.rows]}, self.versions))
        if mutation.left_out:
            rest = [r for r in self.tables[table] if r is not mutation.row]
            return bool(validate._word_faults(self.tables | {table: rest}, self.words))
        return False

    # All of it

    def seen_by(self, mutations: list[Mutation], rules_alone: bool = False) -> list[str]:
        """Who sees each damage first: the second reading, a schema, a key rule, a physics rule, or nobody (blank)."""
        out = []
        for mutation, refused in zip(mutations, self.schemas_see(mutations), strict=True):
            if not rules_alone and self.second_sees(mutation):
                out.append("second reading")
            elif refused:
                out.append("schema")
            elif self.keys_see(mutation):
                out.append("keys")
            else:
                out.append("physics" if self.physics_sees(mutation) else "")
        return out


def _name(fault: Fault) -> tuple[str, int, str, str]:
    return fault.file, fault.line, fault.column, fault.rule


def sample(mutations: list[Mutation], count: int, seed: int) -> list[Mutation]:
    """A fixed sample with as many of each kind, as far as there are so many."""
    chance = random.Random(seed)
    each = count // len(KINDS)
    return [
        m
        for kind in KINDS
        for of_kind in ([m for m in mutations if m.kind == kind],)
        for m in chance.sample(of_kind, min(each, len(of_kind)))
    ]


def report(mutations: list[Mutation], seen: list[str]) -> Iterator[str]:
    """The share seen by kind, and by table."""
    yield "share seen, by kind of damage (second reading / schema / keys / physics / nobody):"
    yield from _lines(mutations, seen, lambda m: m.kind)
    yield "by table:"
    yield from _lines(mutations, seen, lambda m: m.row.table)


def _lines(mutations: list[Mutation], seen: list[str], key: Callable[[Mutation], str]) -> Iterator[str]:
    groups: dict[str, Counter[str]] = {}
    for mutation, who in zip(mutations, seen, strict=True):
        groups.setdefault(key(mutation), Counter())[who] += 1
    groups["all"] = Counter(seen)
    for name, by in groups.items():
        total = by.total()
        parts = " / ".join(str(by[who]) for who in ("second reading", "schema", "keys", "physics", ""))
        yield f"  {name:22s} {total - by['']:6d} of {total:6d}  {1 - by[''] / total:7.2%}  ({parts})"


def main(arguments: Iterable[str] | None = None) -> int:
    """Try every damage; print the shares and each damage that nobody sees."""
    parser = argparse.ArgumentParser(prog="scripts/mutate", description=__doc__.split("\n", 1)[0])
    parser.add_argument("--rules-alone", action="store_true", help="leave the second reading out")
    parser.add_argument("--table", choices=MEASURED, help="this table only")
    parser.add_argument("--count", type=int, help="a sample of so many instead of all")
    parser.add_argument("--quiet", action="store_true", help="do not name each damage that nobody sees")
    options = parser.parse_args(None if arguments is None else list(arguments))
    bench = Bench()
    mutations = [m for m in bench.all_mutations() if options.table in (None, m.row.table)]
    if options.count:
        mutations = sample(mutations, options.count, 1)
    seen = bench.seen_by(mutations, options.rules_alone)
    if not options.quiet:
        for mutation, who in zip(mutations, seen, strict=True):
            if not who:
                print(f"not seen ({bench.why_unseen(mutation)}): {mutation}")
    print("\n".join(report(mutations, seen)))
    unseen = [m for m, who in zip(mutations, seen, strict=True) if not who]
    for reason, count in Counter(bench.why_unseen(m) for m in unseen).most_common():
        print(f"  nobody, for its row is {reason}: {count}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
