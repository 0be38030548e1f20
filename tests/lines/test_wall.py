"""The wall of a line against the pressure in it."""

from __future__ import annotations

import pytest

from gaugeblock.lines.route import route
from lines.line_sheets import check_of


def test_wall_against_pressure_needs_a_stated_factor():
    tube = {"material": "brazed double-wall steel tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "2000 psi"}
    assert check_of(route("brake", **tube), "wall against pressure").result == "cannot tell"
    assert check_of(route("brake", **tube, factor="3"), "wall against pressure").result == "ok"
    assert check_of(route("brake", **tube, factor_on_yield="3"), "wall against pressure").result == "ok"
    assert check_of(route("brake", **tube, factor_on_yield="5"), "wall against pressure").result == "not ok"
    assert check_of(route("brake", **{**tube, "pressure": "9000 psi"}), "wall against pressure").result == "not ok"


@pytest.mark.parametrize(
    ("factor", "result", "key"),
    [("3", "ok", None), ("8", "cannot tell", "factor_on_burst"), ("40", "not ok", "wall")],
)
def test_an_older_jobs_factor_asks_what_it_is_on_where_that_makes_a_difference(factor, result, key):
    tube = {"material": "brake tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "1200 psi", "factor": factor}
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", **tube, tensile_strength="50 ksi")
    assert check_of(sheet, "wall against pressure").result == result
    assert key is None or key in [q.key for q in sheet.questions]


def test_a_wall_that_bursts_under_the_peak_stops():
    tube = {"material": "brake tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "6000 psi"}
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", **tube, tensile_strength="10 ksi")
    assert sheet.decision.kind == "stop"
