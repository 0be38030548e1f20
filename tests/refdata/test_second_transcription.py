"""The safety tables were entered twice, by two readers; here the two are compared cell by cell."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import pytest

from gaugeblock.tables.catalogue import keys_of, refdata_folder
from refdata.second_reading import FOLDER, TWICE, Cells, differences, living, place_of, second_rows


def refdata_rows(table: str) -> list[Cells]:
    with open(Path(refdata_folder()) / f"{table}.csv", newline="", encoding="utf-8") as handle:
        return [{**row, "line": str(line)} for line, row in enumerate(csv.DictReader(handle), 2)]


@pytest.mark.parametrize("table", TWICE)
def test_each_cell_read_twice_is_the_same(table: str) -> None:
    first: dict[tuple[str, ...], list[Cells]] = {}
    for row in living(refdata_rows(table)):
        first.setdefault(place_of(table, row), []).append(row)
    faults = []
    for number, second in enumerate(second_rows(table), 2):
        found = first.get(place_of(table, second), [])
        where = f"second reading, line {number}: {' | '.join(place_of(table, second))}"
        if len(found) != 1:
            faults.append(f"{where}: {len(found)} living rows in refdata/{table}.csv, not 1")
            continue
        faults += [
            f"{where}: {column} {second[column]!r}, but refdata/{table}.csv:{found[0]['line']} has {found[0][column]!r}"
            for column in differences(second, found[0])
        ]
    assert not faults, "\n" + "\n".join(faults)


@pytest.mark.parametrize("table", TWICE)
def test_as_large_a_share_as_ever_was_read_twice(table: str) -> None:
    twice = {place_of(table, r) for r in second_rows(table)}
    rows = living(refdata_rows(table))
    covered = sum(place_of(table, r) in twice for r in rows)
    assert Fraction(covered, len(rows)) >= Fraction(*TWICE[table]), (
        f"{covered} of {len(rows)} living rows of {table} were read twice; add the new ones to {FOLDER.name}/"
    )


@pytest.mark.parametrize("table", TWICE)
def test_the_second_reading_is_well_formed(table: str) -> None:
    rows = second_rows(table)
    assert len(rows) >= TWICE[table][0]
    assert len({place_of(table, r) for r in rows}) == len(rows)
    assert list(rows[0]) == [k.name for k in keys_of(table)] + [
        "quantity",
        "value",
        "low",
        "high",
        "unit",
        "source",
        "checked",
    ]
    assert all(r["value"] or r["low"] or r["high"] for r in rows)


def test_a_figure_written_with_another_zero_is_the_same_and_another_figure_is_not() -> None:
    row = {"value": "0.9", "low": "", "high": "", "unit": "1", "checked": "quoted"}
    assert differences(row, row | {"value": "0.90"}) == []
    assert differences(row, row | {"value": "0.91"}) == ["value"]
    assert differences(row, row | {"value": "", "low": "0.9"}) == ["value", "low"]
    assert differences(row, row | {"unit": "%"}) == ["unit"]
    assert differences(row, row | {"checked": "primary"}) == ["checked"]
    assert differences(row | {"checked": ""}, row | {"checked": "primary"}) == []
