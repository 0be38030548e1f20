"""A gauge as copper and a metric wire as a gauge: by the standard's own rule, and never more copper than there is."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import wire_size
from gaugeblock.answer.decision import NONE
from gaugeblock.answer.making import base
from gaugeblock.errors import GaugeblockError, LookupMiss
from gaugeblock.tables.load import refdata
from gaugeblock.wiring.conductor import _COLUMNS

SIZES = ["18 AWG", "14 AWG", "10 AWG", "6 AWG", "2 AWG", "1/0", "4/0"]


@pytest.mark.parametrize("size", SIZES)
def test_a_gauge_holds_the_copper_of_astm_b258(size: str) -> None:
    """ASTM B258: number 36 is 0.005 in thick, and each of the 39 steps to 4/0 the same ratio; cable within 4 %."""
    name = size.removesuffix(" AWG")
    number = 1 - int(name[0]) if "/" in name else int(name)
    inches = 0.005 * 92 ** ((36 - number) / 39)
    area = math.pi / 4 * (inches * 0.0254) ** 2
    assert base(wire_size(size).decision.figures[0]) == pytest.approx(area, rel=0.04)


@given(st.sampled_from([1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95]))
def test_the_gauge_of_a_metric_wire_has_no_more_copper(area: float) -> None:
    sheet = wire_size(f"{area} mm2")
    assert base(sheet.figure("conductor_area")) <= area * 1e-6 * 1.04


@pytest.mark.parametrize("size", ["13 AWG", "5 AWG", "3 AWG"])
def test_a_gauge_that_the_tables_lack_is_not_given_anothers_copper(size: str) -> None:
    with pytest.raises(LookupMiss):
        wire_size(size)


def test_a_wire_that_no_car_has_is_questioned_and_what_is_none_refused() -> None:
    assert wire_size("4000 mm2").decision.kind == NONE
    for typed in ("", "thick", "6 mm", "-2 mm2"):
        with pytest.raises(GaugeblockError):
            wire_size(typed)


def test_the_columns_of_insulation_are_those_of_the_tables() -> None:
    cells = {row["condition"] for row in refdata().table("wiring/wire").rows}
    printed = {int(cell.split()[0]) for cell in cells if cell.endswith(" degC insulation")}
    assert set(_COLUMNS) == printed
