"""What a size code says: two heights and the rim, its turns a mile, its width."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import InputError, gearing, tyre
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.driveline.ask.tyres import _open_rim
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import refdata


@given(st.integers(185, 305), st.integers(50, 80), st.integers(14, 18))
def test_a_tyre_is_two_heights_and_its_rim_and_rolls_its_circumference(width: int, aspect: int, rim: int) -> None:
    sheet = tyre(f"{width}/{aspect}R{rim}")
    across = 2 * width * aspect / 100 + 25.4 * rim
    assert sheet.figure("tyre_diameter").typical == pytest.approx(across / 25.4)
    assert sheet.figure("tyre_revolutions").typical == pytest.approx(1609344 / (math.pi * across))
    assert sheet.decision.kind == USE


def test_an_engine_turns_by_the_same_tyre() -> None:
    asked = gearing("3.73", tyre="225/60R15", speed="60 mph")
    assert asked.figure("tyre_diameter") == tyre("225/60R15").figure("tyre_diameter")


def test_the_overall_size_of_an_off_road_code_is_its_diameter_and_no_width() -> None:
    assert base(tyre("31x10.50R15").decision.figures[0]) == pytest.approx(31 * 0.0254)
    assert tyre("31x10.50R15", fact="width").decision.kind == NONE
    assert tyre("205/55R16", fact="width").decision.figures[0].typical == 205


def test_a_tyre_that_no_car_has_is_questioned() -> None:
    sheet = tyre("205/55R61")
    assert sheet.decision.kind == NONE
    assert sheet.questions[0].key == "size"


@pytest.mark.parametrize("size", ["", "blue", "-28 in", "0 in"])
def test_what_is_no_size_is_refused(size: str) -> None:
    with pytest.raises(GaugeblockError):
        tyre(size)


def test_only_what_a_size_says_is_a_fact() -> None:
    with pytest.raises(InputError):
        tyre("205/55R16", fact="grip")


@pytest.mark.parametrize("size", ["205/55R16", "31x10.50R15", "28 in"])
def test_the_way_round_a_tyre_times_its_turns_is_a_mile(size: str) -> None:
    round_it = tyre(size, fact="circumference").decision.figure
    turns = tyre(size, fact="revolutions").decision.figure
    assert round_it is not None
    assert turns is not None
    assert base(round_it) * turns.typical == pytest.approx(1609.344, rel=1e-6)


@pytest.mark.parametrize(("like", "rim"), [("205/65R15", "16"), ("235/75R15", "17"), ("185/60R14", "15")])
def test_of_the_tyres_for_another_rim_the_nearest_in_height_comes_first(like: str, rim: str) -> None:
    """By the geometry of the code alone: twice the section's height and the rim."""

    def height(size: str) -> float:
        wide, profile, across = (float(n) for n in re.findall("[0-9]+", size))
        return 2 * wide * profile / 100 + across * 25.4

    wide = int(like[:3])
    every = [f"{w}/{p}R{rim}" for w in (wide - 10, wide, wide + 10) for p in range(30, 90, 5)]
    found = [row["size"] for row in _open_rim({"like": like, "rim": rim}, refdata())[1]]
    assert found[0] == like
    assert found[1] == min(every, key=lambda size: abs(height(size) - height(like)))
    assert set(found[1:]) == {size for size in every if abs(height(size) / height(like) - 1) <= 0.03}


def test_a_tyre_named_in_inches_is_as_high_as_it_is_called() -> None:
    """31x10.50R15 stands 31 in; 10.50 in is nearest to a section of 265 mm."""
    found = [row["size"] for row in _open_rim({"like": "31X10.50R15", "rim": "17"}, refdata())[1]]
    high = 31 * 25.4
    every = [(w, p) for w in (255, 265, 275) for p in range(30, 90, 5)]
    wide, profile = min(every, key=lambda one: abs(2 * one[0] * one[1] / 100 + 17 * 25.4 - high))
    assert found[1] == f"{wide}/{profile}R17"
    assert len(found) - 1 == sum(abs((2 * w * p / 100 + 17 * 25.4) / high - 1) <= 0.03 for w, p in every)
