"""The road speed at a speed of the engine: the way back of ``gearing``."""

from __future__ import annotations

import pytest

from gaugeblock import ask, gearing, roadspeed
from gaugeblock.answer.decision import NONE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError


@pytest.mark.parametrize("ratio", ["2.73", "3.55", "4.56"])
@pytest.mark.parametrize("tyre", ["26 in", "31x10.50R15", "205/55R16"])
@pytest.mark.parametrize("gear", ["1", "0.7", "2.52"])
def test_at_that_speed_the_engine_turns_so(ratio: str, tyre: str, gear: str) -> None:
    speed = roadspeed(ratio, tyre, "3200 rpm", gear=gear).decision.figure
    assert speed is not None
    turns = gearing(ratio, tyre=tyre, speed=f"{speed.typical:.9f} mph", gears=gear).decision.figure
    assert turns is not None
    assert turns.typical == pytest.approx(3200, rel=1e-6)


def test_by_the_rule_of_336() -> None:
    """The trade's rule: mph = rpm x tyre diameter, in / (336 x ratio); its exact constant is 336.13."""
    speed = roadspeed("4.56", "29 in", "6800 rpm").decision.figure
    assert speed is not None
    assert speed.typical == pytest.approx(6800 * 29 / (336.13 * 4.56), rel=1e-4)


def test_what_is_not_likely_is_questioned_and_what_is_no_measure_refused() -> None:
    assert roadspeed("37.3", "29 in", "6800 rpm").decision.kind == NONE
    assert roadspeed("3.73", "29 ft", "6800 rpm").decision.kind == NONE
    assert roadspeed("3.73", "29 in", "680000 rpm").decision.kind == NONE
    with pytest.raises(InputError):
        roadspeed("3.73", "29 in", "fast")


@pytest.mark.parametrize(
    ("line", "gear"),
    [
        ("how fast at 6800 rpm with 4.56 gears and 29 inch tyres", "1"),
        ("how fast at 6800 with 4.56 gear 29 in tyre", "1"),
        ("top speed 4.56 axle 29 in tyres 6800 rpm", "1"),
        ("what mph at 6800 rpm 4.56 gears 29 in tire 0.7 overdrive", "0.7"),
        ("4.56 gears 29 inch slick hits 6800 in top one to one how fast", "1"),
    ],
)
def test_it_is_asked_in_plain_words(line: str, gear: str) -> None:
    got, wanted = ask(line), roadspeed("4.56", "29 in", "6800 rpm", gear=gear)
    assert isinstance(got, Sheet)
    assert got.decision.figure == wanted.decision.figure


def test_with_a_road_speed_the_engine_is_asked_for() -> None:
    assert ask("rpm at 70 mph 3.73 28 in tire") == gearing("3.73", tyre="28 in", speed="70 mph")
