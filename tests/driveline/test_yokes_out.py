"""Yokes that are so many degrees out of line: what they leave of the swing of one joint."""

from __future__ import annotations

from math import radians, sin

import pytest

from gaugeblock import ask, joint
from gaugeblock.answer.decision import ASK, STOP, USE
from gaugeblock.errors import GaugeblockError


@pytest.mark.parametrize("angle", ["3 deg", "4 deg", "7 deg"])
@pytest.mark.parametrize("out", [5, 15, 30, 60, 90])
def test_two_equal_joints_leave_twice_the_sine_of_it(angle: str, out: int) -> None:
    """Two swings of one size, twice as far apart in phase as the yokes in angle: 2 sin(out) of one, by their sum."""
    one = joint(angle).figures[0].typical
    left = joint(angle, angle, yokes_out=f"{out} deg").decision
    assert left.kind == STOP
    assert left.figures[0].typical == pytest.approx(2 * one * sin(radians(out)), rel=2e-3)


def test_a_quarter_turn_is_the_wrong_phase() -> None:
    out = joint("4 deg", "3 deg", yokes_out="90 deg").decision.figures[0]
    wrong = joint("4 deg", "3 deg", phasing="wrong phase").decision.figures[0]
    assert out.typical == pytest.approx(wrong.typical)


def test_as_near_as_shops_set_them_is_in_line() -> None:
    assert joint("4 deg", "4 deg", yokes_out="1 deg", speed="3000 rpm").decision.kind in (USE, ASK)


@pytest.mark.parametrize("options", [{"yokes_out": "100 deg"}, {"yokes_out": "10 deg", "phasing": "in phase"}])
def test_what_cannot_be_is_refused(options: dict[str, str]) -> None:
    with pytest.raises(GaugeblockError):
        joint("4 deg", "4 deg", **options)


def test_out_of_line_is_no_angle_of_a_joint() -> None:
    assert ask("prop yokes 10 degrees out of line both joints at 3 degrees") == joint(
        "3 deg", "3 deg", yokes_out="10 deg"
    )
    two_views = ask("joint angle when it is 2 degrees sideways and 3 degrees down")
    assert two_views == joint("3 deg", top="2 deg")
    assert two_views.decision.candidates[0].figure.typical == pytest.approx(3.604, abs=1e-3)  # 13**0.5
