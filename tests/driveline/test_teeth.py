"""The ratio of a ring gear and its pinion, and whether every tooth meets every other."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from gaugeblock import InputError, gearing, ratio
from gaugeblock.answer.decision import NONE


@given(st.integers(30, 60), st.integers(7, 20))
def test_a_ratio_is_the_rings_teeth_over_the_pinions_and_hunts_where_they_share_none(ring: int, pinion: int) -> None:
    assume(1.5 <= ring / pinion <= 8)  # what an axle may have; else it is questioned
    figure = ratio(f"{ring}/{pinion}").decision.figures[0]
    assert figure.typical == pytest.approx(ring / pinion)
    assert figure.conditions.startswith("hunting") == (math.gcd(ring, pinion) == 1)


def test_the_engine_turns_by_the_same_ratio() -> None:
    assert gearing("41/11", tyre="28 in").figure("axle_ratio") == ratio("41/11").decision.figures[0]


def test_gears_of_as_many_teeth_are_no_axle() -> None:
    sheet = ratio("30/30")
    assert sheet.decision.kind == NONE
    assert "makes 1, which is no usual axle ratio" in sheet.decision.do


@pytest.mark.parametrize("teeth", ["", "3.73", "11/41", "41/0", "41", "41/11/3"])
def test_what_is_no_pair_of_tooth_counts_is_refused(teeth: str) -> None:
    with pytest.raises(InputError):
        ratio(teeth)
