"""Clips, and how much the exhaust beside a line grows."""

from __future__ import annotations

import pytest

from gaugeblock.lines.route import route
from lines.line_sheets import BESIDE, check_of


def test_clips_have_count_and_places():
    sheet = route("brake", length="1 m")
    assert sheet.figure("support_count").value == 3
    assert "250, 500, 750 mm from one end" in check_of(sheet, "clips").reason
    assert check_of(route("brake"), "clips").result == "cannot tell"
    assert check_of(route("coolant", length="1 m"), "clips").result == "cannot tell"


def test_an_exhaust_of_a_coefficient_of_its_own_grows_from_twenty_degrees():
    """12e-6 by 100 in by 500 K."""
    given = {**BESIDE, "hot_temperature": "520 degC"}
    sheet = route("brake", **given, anchors="100 in", expansion="12 um/(m*K)")
    assert sheet.figure("thermal_growth").value == pytest.approx(0.6, rel=1e-9)
    assert sheet.figure("slip_needed").value == pytest.approx(0.6, rel=1e-9)
    cold = route("brake", **given, anchors="100 in", expansion="12 um/(m*K)", cold_end="120 degC")
    assert cold.figure("thermal_growth").value == pytest.approx(0.48, rel=1e-9)


def test_exhaust_growth_asks_for_slip():
    sheet = route(
        "brake", **{**BESIDE, "hot_temperature": "700 degF"}, anchors="100 ft", exhaust_material="carbon steel"
    )
    assert sheet.figure("thermal_growth").value == pytest.approx(5.63, rel=1e-9)
    assert check_of(sheet, "exhaust growth").result == "cannot tell"
