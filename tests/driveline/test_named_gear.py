"""A gear by its name alone is no direct gear: its ratio is asked, and with it the answer is that of the option."""

from __future__ import annotations

import pytest

from gaugeblock import ask, finaldrive, gearing, roadspeed
from gaugeblock.book.completing import understood, words_of
from gaugeblock.book.settle import comparable
from gaugeblock.driveline.ask.named_gear import NAMED_GEAR
from gaugeblock.errors import Ambiguous
from gaugeblock.tables.load import refdata

_GEARS = ["overdrive", "first", "2nd", "third gear", "5th", "sixth"]
_SAID = [
    "rpm at 70 mph 3.73 axle 28 inch tyre in {}",
    "road speed at 2500 rpm 3.73 axle 28 inch tyre in {}",
    "which axle ratio for 2500 rpm at 70 mph 28 inch tyre in {}",
    "what ratio for 28 inch tyre 70 mph 2000 rpm {}",
]


@pytest.mark.parametrize("gear", _GEARS)
@pytest.mark.parametrize("said", _SAID)
def test_a_named_gear_asks_its_ratio(gear: str, said: str) -> None:
    with pytest.raises(Ambiguous, match="ratio of"):
        ask(said.format(gear))


@pytest.mark.parametrize("gear", ["0.7 overdrive", "overdrive 0.7", "0.7 5th gear", "sixth which is 0.7"])
def test_a_gear_with_its_ratio_is_the_option(gear: str) -> None:
    turns = ask(f"rpm at 70 mph 3.73 axle 28 inch tyre in {gear}")
    assert (
        turns.as_dict()["decision"] == gearing("3.73", tyre="28 in", speed="70 mph", gears="0.7").as_dict()["decision"]
    )
    assert turns.as_dict()["decision"] != gearing("3.73", tyre="28 in", speed="70 mph").as_dict()["decision"]


def test_the_other_two_take_it_too() -> None:
    speed = ask("road speed at 2500 rpm 3.73 axle 28 inch tyre 0.7 overdrive")
    want = roadspeed("3.73", tyre="28 in", engine_speed="2500 rpm", gear="0.7")
    assert speed.as_dict()["decision"] == want.as_dict()["decision"]
    ratio = ask("which axle ratio for 2500 rpm at 70 mph 28 inch tyre 0.7 overdrive")
    want = finaldrive("2500 rpm", speed="70 mph", tyre="28 in", gear="0.7")
    assert ratio.as_dict()["decision"] == want.as_dict()["decision"]


def test_a_page_may_compare_a_line_with_a_named_gear() -> None:
    reading = understood(words_of("rpm at 60 mph 3.73 axle 28 inch tyre 0.7 overdrive in fifth"), refdata())
    assert reading.values[NAMED_GEAR] == "fifth"
    assert [one["key"] for one in comparable(reading, refdata())] == ["tyre"]
