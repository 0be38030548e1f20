"""The rules of hexagons notice a damaged figure, and none of the rows as they stand."""

from __future__ import annotations

import pytest

from gaugeblock.fasteners.hexagon_physics import RULES, diameter_m
from gaugeblock.tables.catalogue import columns_of, refdata_folder
from gaugeblock.tables.facts import Facts
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import read_raw

TABLE = "fasteners/hexagons"


def rows() -> list[Row]:
    faults: list[Fault] = []
    found = [
        Row(row.table, row.line, tuple(row.cells), list(row.cells.values()), row.key)
        for row in read_raw(refdata_folder(), TABLE, columns_of(TABLE), faults)
    ]
    assert not faults
    return found


def noticed(changes: dict[tuple[str, str, str], str]) -> set[str]:
    """The rules that find a fault where rows by size, head and standard have other values."""
    made = []
    for row in rows():
        cells = dict(row.cells)
        key = (cells["size"], cells["head"], cells["standard"])
        cells["value"] = changes.get(key, cells["value"])
        made.append(Row(row.table, row.line, tuple(cells), list(cells.values()), row.key))
    facts = Facts({TABLE: made})
    return {fault.rule for rule in RULES for fault in rule(facts)}


def test_the_rows_as_they_stand_obey_every_rule() -> None:
    assert noticed({}) == set()


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({("M12", "hexagon bolt", "ISO 4014"): "81"}, "hexagon_suits_its_thread"),
        ({("M8", "socket head cap screw", "ISO 4762"): "8"}, "hexagon_suits_its_thread"),
        ({("M10", "flange bolt", "ISO 4162"): "17"}, "hexagon_suits_its_thread"),
        ({("M12", "flange bolt", "EN 1665"): "21"}, "hexagon_suits_its_thread"),
        ({("M18", "hexagon bolt", "ISO 4014"): "34"}, "hexagon_rises_with_its_thread"),
        ({("7/16 in", "hexagon nut", "ASME B18.2.2"): "0.5625"}, "nut_is_no_smaller_than_its_bolt"),
    ],
)
def test_a_damaged_width_is_noticed(changes: dict[tuple[str, str, str], str], rule: str) -> None:
    assert rule in noticed(changes)


@pytest.mark.parametrize(
    ("size", "metres"),
    [("M10", 0.010), ("14 mm", 0.014), ("3/8 in", 0.009525), ("1 1/8 in", 0.028575), ("#10", 0.004826)],
)
def test_a_size_is_read(size: str, metres: float) -> None:
    assert diameter_m(size) == pytest.approx(metres)
