"""What a sheet weighs: by the pounds a square foot that define the standard gauges of steel sheet, and by geometry."""

from __future__ import annotations

import pytest

from gaugeblock import sheet
from gaugeblock.answer.decision import NONE
from gaugeblock.answer.making import base
from gaugeblock.errors import GaugeblockError

# The manufacturers' standard gauge is a weight: ounces to the square foot (Machinery's Handbook, sheet gauges).
OUNCES = {"11": 80, "14": 50, "16": 40, "18": 32, "20": 24}


@pytest.mark.parametrize("gauge", OUNCES)
def test_steel_weighs_what_its_gauge_is_defined_by(gauge: str) -> None:
    """The definition's 41.82 lb to the square foot an inch thick is 2.5 % over the density of steel."""
    pounds = sheet("4 ft x 8 ft", f"{gauge} ga").decision.figure.typical
    assert pounds == pytest.approx(OUNCES[gauge] / 16 * 32, rel=0.03)


def test_one_piece_in_any_unit_weighs_the_same() -> None:
    inches = sheet("24 in x 36 in", "0.25 in", "304")
    metric = sheet("609.6 x 914.4 mm", "6.35 mm", "304")
    assert base(inches.decision.figure) == pytest.approx(base(metric.decision.figure))
    assert metric.decision.figure.unit == "kg"


def test_aluminium_weighs_a_third() -> None:
    steel, light = (sheet("4 ft x 8 ft", "0.125 in", metal).decision.figure for metal in ("mild steel", "5052"))
    assert 2.8 < base(steel) / base(light) < 3.0


def test_what_is_no_sheet_is_questioned_or_refused() -> None:
    assert sheet("4000 ft x 8 ft", "14 ga").decision.kind == NONE
    for typed in (("4 ft", "14 ga"), ("4 ft x 8 ft", "99 ga"), ("4 ft x 0 ft", "14 ga"), ("4 ft x 8 ft", "1 lb")):
        with pytest.raises(GaugeblockError):
            sheet(*typed)
