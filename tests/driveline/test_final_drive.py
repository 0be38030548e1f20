"""The axle ratio for an engine speed: with it the vehicle goes at the road speed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, finaldrive, roadspeed
from gaugeblock.answer.decision import NONE, USE


@given(st.integers(1500, 5000), st.integers(30, 120), st.integers(22, 34), st.floats(0.6, 1.6))
def test_with_the_ratio_it_goes_at_the_speed(rpm: int, mph: int, inches: int, gear: float) -> None:
    sheet = finaldrive(f"{rpm} rpm", speed=f"{mph} mph", tyre=f"{inches} in", gear=f"{gear:.2f}")
    if not sheet.decision.figures:
        assert sheet.decision.kind == NONE
        return
    ratio = sheet.decision.figure.typical
    assert sheet.decision.kind == USE
    fast = roadspeed(f"{ratio:.9f}", f"{inches} in", f"{rpm} rpm", gear=f"{gear:.2f}").decision.figure.typical
    assert fast == pytest.approx(mph, rel=1e-6)


def test_what_no_car_has_is_questioned() -> None:
    assert finaldrive("9000 rpm", speed="10 mph", tyre="25 in").decision.kind == NONE
    assert finaldrive("2500 rpm", speed="900 mph", tyre="25 in").decision.kind == NONE


@pytest.mark.parametrize(
    ("line", "options"),
    [
        (
            "want 2500 rpm at 110 kmh 640mm tyre dia top gear 0.82 which final drive",
            {"speed": "110 km/h", "tyre": "640 mm", "gear": "0.82"},
        ),
        (
            "which diff would have me at 2500 rpm doing seventy mph on 195/70-14 with direct top",
            {"speed": "70 mph", "tyre": "195/70R14"},
        ),
    ],
)
def test_it_is_asked_in_plain_words(line: str, options: dict[str, str]) -> None:
    assert ask(line).decision == finaldrive("2500 rpm", **options).decision
