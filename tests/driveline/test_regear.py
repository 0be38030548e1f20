"""The axle ratio for other tyres: by the turns of the tyres, and back through the engine's speed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import gearing, regear
from gaugeblock.answer.decision import NONE
from gaugeblock.errors import GaugeblockError


def test_by_the_diameters() -> None:
    """35 in over 31 in is 12.9 % more to a turn, and so much more must the ratio be."""
    assert regear("3.73", "31 in", "35 in").decision.figure.typical == pytest.approx(3.73 * 35 / 31, rel=1e-9)


@given(st.sampled_from(["2.73", "3.55", "4.10", "5.13"]), st.integers(24, 36), st.integers(24, 36))
def test_the_engine_turns_as_it_did(ratio: str, was: int, tyre: int) -> None:
    """The answer ``gearing`` works from ratio, tyre and speed alone: with both pairs the engine turns alike."""
    wanted = regear(ratio, f"{was} in", f"{tyre} in").decision.figure.typical
    before = gearing(ratio, tyre=f"{was} in", speed="60 mph").decision.figure.typical
    after = gearing(f"{wanted:.9f}", tyre=f"{tyre} in", speed="60 mph").decision.figure.typical
    assert after == pytest.approx(before, rel=1e-6)


def test_the_same_tyre_keeps_the_ratio() -> None:
    assert regear("3.73", "225/70R15", "225/70R15").decision.figure.typical == pytest.approx(3.73)


def test_what_no_car_has_is_questioned_and_what_cannot_be_read_refused() -> None:
    assert regear("3.73", "31 in", "99 in").decision.kind == NONE
    assert regear("37.3", "31 in", "35 in").decision.kind == NONE
    for typed in (("0", "31 in", "35 in"), ("3.73", "round", "35 in"), ("3.73 ft", "31 in", "35 in")):
        with pytest.raises(GaugeblockError):
            regear(*typed)
