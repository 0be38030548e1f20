"""How far to pull a bend that springs back, and what to cut for a bend with its legs."""

from __future__ import annotations

import random

import pytest

from gaugeblock import arc, ask, overbend
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError


@pytest.mark.parametrize("seed", range(20))
def test_a_bend_pulled_so_comes_to_what_was_wanted(seed: int) -> None:
    """By the ratio of the test bend, which is that of the radii (KALP, springback section, from memory)."""
    draw = random.Random(seed)
    put, kept, wanted = draw.uniform(20, 120), draw.uniform(0.8, 1.0), draw.uniform(10, 120)
    figure = overbend(f"{wanted:.3f} deg", f"{put:.3f} deg set, {put * kept:.3f} deg got").decision.figure
    assert figure is not None
    assert figure.typical * kept == pytest.approx(wanted, rel=1e-3)


def test_the_test_bend_itself_is_pulled_as_it_was() -> None:
    figure = overbend("45 deg", "47 deg set, 45 deg got").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(47)


@pytest.mark.parametrize("test", ["90 deg set, 40 deg got", "90 deg set, 95 deg got"])
def test_a_test_bend_that_is_none_is_asked_about(test: str) -> None:
    sheet = overbend("45 deg", test)
    assert sheet.decision.kind == "none"
    assert sheet.questions


@pytest.mark.parametrize(
    ("angle", "test"),
    [("45 deg", "90 deg"), ("200 deg", "90 deg set, 87 deg got"), ("0 deg", "90 deg set, 87 deg got")],
)
def test_what_is_no_bend_is_refused(angle: str, test: str) -> None:
    with pytest.raises(GaugeblockError):
        overbend(angle, test)


@pytest.mark.parametrize(
    ("line", "degrees"),
    [
        ("pulled 90 came out 87 want 60", 62.07),
        ("90 springs back 3 where do i stop for 45", 46.55),
        ("my tube pulled to 90 relaxes to 87 degrees, what should I pull it to for a finished 45", 46.55),
        ("overbend 30 degrees, test bend 90 deg gave 86", 31.40),
        (
            "when i pull this chrome moly tube round to ninety on the bender it springs back to about eighty seven so"
            " what should i take the pointer round to for it to finish up at a true ninety",
            93.10,
        ),
    ],
)
def test_it_is_asked_as_people_say_it(line: str, degrees: float) -> None:
    sheet = ask(line)
    assert isinstance(sheet, Sheet)
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical == pytest.approx(degrees, abs=0.01)


def test_the_length_to_cut_is_the_legs_and_the_arc() -> None:
    """NAVEDTRA 14119, bend allowance: straights and developed length along the centre line."""
    bend = arc("6 in", "90 deg").decision.figure
    cut = arc("6 in", "90 deg", legs="20 in, 12 in").decision.figure
    assert bend is not None
    assert cut is not None
    assert cut.typical == pytest.approx(32 + bend.typical)
    mixed = arc("6 in", "90 deg", legs="508 mm, 12 in").decision.figure
    assert mixed is not None
    assert mixed.typical == pytest.approx(cut.typical)


@pytest.mark.parametrize("legs", [", ".join(["1 in"] * 8), "", " , ", "20"])
def test_legs_that_are_none_are_refused(legs: str) -> None:
    with pytest.raises(GaugeblockError):
        arc("6 in", "90 deg", legs=legs)


@pytest.mark.parametrize(
    "line",
    [
        "two straight legs of twenty inches each and a ninety on a six inch centre line radius, how long do i cut it",
        "how long to cut for a 90 on a 6 inch clr with 20 inches each side",
    ],
)
def test_legs_are_asked_as_people_say_them(line: str) -> None:
    sheet = ask(line)
    assert isinstance(sheet, Sheet)
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical == pytest.approx(49.42, abs=0.01)
