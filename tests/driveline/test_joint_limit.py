"""The greatest usual angle of a joint: what is printed, linear between, and as the answer ``joint`` judges by it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import joint, joint_limit
from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.errors import GaugeblockError


@pytest.mark.parametrize(
    ("speed", "most"),
    # A maker of joints' table by driveshaft speed, as a page prints it (UJMTAB, table by speed).
    [(5000, 3.2), (4500, 3.7), (4000, 4.2), (3500, 5.0), (3000, 5.8), (2500, 7.0), (2000, 8.7), (1500, 11.5)],
)
def test_what_is_printed(speed: int, most: float) -> None:
    assert joint_limit(f"{speed} rpm").decision.figure.typical == pytest.approx(most)


def test_between_two_speeds_it_is_linear() -> None:
    assert joint_limit("3250 rpm").decision.figure.typical == pytest.approx((5.0 + 5.8) / 2)


@given(st.integers(1500, 5000), st.sampled_from([-0.2, 0.2]))
def test_a_joint_bent_more_is_doubted_and_one_bent_less_is_not(speed: int, more: float) -> None:
    """The answer ``joint`` judges an angle at a speed: on either side of this limit it says otherwise."""
    limit = joint_limit(f"{speed} rpm").decision.figure.typical
    angle = f"{limit + more:.3f} deg"
    judged = joint(angle, angle, phasing="in phase", speed=f"{speed} rpm")
    assert (judged.decision.kind in (STOP, ASK)) == (more > 0)


def test_what_no_shaft_turns_is_questioned_or_refused() -> None:
    assert joint_limit("90000 rpm").decision.kind == NONE
    faster = joint_limit("6500 rpm")
    assert (faster.decision.kind, faster.figures, len(faster.questions)) == (NONE, (), 1)
    for typed in ("0 rpm", "fast", "3000 mph"):
        with pytest.raises(GaugeblockError):
            joint_limit(typed)
