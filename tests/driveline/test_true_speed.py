"""A speedometer with other tyres: as the turns of a mile, and back again."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import gearing, true_speed
from gaugeblock.answer.decision import NONE
from gaugeblock.errors import GaugeblockError


def test_by_the_diameters() -> None:
    """33 in over 31 in is 6.45 % more to a turn."""
    assert true_speed("33 in", "31 in", "100 km/h").decision.figure.typical == pytest.approx(100 * 33 / 31, rel=1e-6)


@given(st.integers(24, 36), st.integers(24, 36), st.integers(20, 150))
def test_what_gearing_shows_at_the_true_speed_is_what_was_shown(tyre: int, was: int, shown: int) -> None:
    """The other answer starts from the true speed: both agree."""
    true = true_speed(f"{tyre} in", f"{was} in", f"{shown} mph").decision.figure.typical
    other = gearing("3.73", tyre=f"{tyre} in", was_tyre=f"{was} in", speed=f"{true} mph")
    assert other.figure("speedometer_reading").typical == pytest.approx(shown, rel=1e-6)


def test_the_same_tyre_leaves_it_right() -> None:
    decision = true_speed("225/70R15", "225/70R15", "60 mph").decision
    assert decision.figure.typical == pytest.approx(60)
    assert decision.do == "The speedometer stays right."


def test_what_no_car_has_is_questioned_and_what_cannot_be_read_refused() -> None:
    assert true_speed("99 in", "31 in", "60 mph").decision.kind == NONE
    assert true_speed("33 in", "31 in", "6000 mph").decision.kind == NONE
    for typed in (("33 in", "31 in", "0 mph"), ("round", "31 in", "60 mph"), ("33 in", "31 in", "60 lb")):
        with pytest.raises(GaugeblockError):
            true_speed(*typed)


@pytest.mark.parametrize(("now", "was"), [("33 in", "31 in"), ("195/50R15", "195/65R15"), ("28 in", "28 in")])
def test_a_speedometer_without_a_shown_speed_is_off_by_the_turns_of_its_tyres(now: str, was: str) -> None:
    off = true_speed(now, was).decision.figure
    shown = true_speed(now, was, "60 mph").decision.figure
    assert off is not None
    assert shown is not None
    assert off.quantity == "speedometer_ratio"
    assert off.typical * shown.typical == pytest.approx(60)
    assert ("stays right" in true_speed(now, was).decision.do) is (now == was)


def test_a_speedometer_reads_high_on_smaller_tyres() -> None:
    assert "too high" in true_speed("195/50R15", "195/65R15").decision.do
    assert "too low" in true_speed("33 in", "31 in").decision.do


@pytest.mark.parametrize(
    ("tyre", "was", "words"),
    [("33 in", "31 in", ("faster", "covers more")), ("29 in", "31 in", ("slower", "covers less"))],
)
def test_a_larger_tyre_goes_faster_than_the_speedometer_shows(tyre: str, was: str, words: tuple[str, str]) -> None:
    said = true_speed(tyre, was, "60 mph").decision.do
    assert all(word in said for word in words), said
    shown = true_speed(tyre, was, None).decision.do
    way = ("low", "counts less") if words[0] == "faster" else ("high", "counts more")
    assert all(word in shown for word in way), shown
