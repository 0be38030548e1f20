"""What a line turns round changes nothing where it is of nothing that is asked, or the other of what was said."""

from __future__ import annotations

import pytest

from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.plain.answer import answer
from gaugeblock.plain.given import Answer


def read(line: str) -> Answer | None:
    try:
        return answer(line)
    except GaugeblockError:
        return None


TOLD = "i am putting the bracket back on at home with {} so what torque do i set the m12 8.8 bolts to in the frame {}"


def _left_out(told: Answer) -> str:
    """What an answer says that it left out, without what it asks about."""
    return told.read_as.partition("left out")[2].partition("; not understood")[0]


@pytest.mark.parametrize("said", ["no book", "no manual", "no clue", "no money"])
def test_what_nobody_asks_for_may_be_missing(said: str) -> None:
    told = read(TOLD.format(said, "dry"))
    assert told is not None
    assert "dry" in told.read_as


@pytest.mark.parametrize(
    ("line", "said", "denied"),
    [
        (TOLD.format("no oil", "dry"), "dry", ""),
        (TOLD.format("no zinc", "dry"), "dry", "no zinc"),
        (TOLD.format("plain clean threads and i do not have anti-seize", "dry"), "dry", ""),
        (
            "fella wants a single pipe out the back because he cannot afford duals and the motor is 350 horsepower"
            " what diameter exhaust should he run",
            "one pipe",
            "",
        ),
    ],
)
def test_the_other_value_denied_agrees_with_what_was_said(line: str, said: str, denied: str) -> None:
    told = read(line)
    assert told is not None
    assert said in told.read_as
    assert denied in told.read_as, "what was left out is said"


@pytest.mark.parametrize(
    "line",
    [
        TOLD.format("no washers", "dry"),
        TOLD.format("no insert and not dry", ""),
        TOLD.format("never dry threads", "dry"),  # the value itself is denied
        TOLD.format("no plating that i can see", ""),
        "m10 10.9 no oil",
        "what does the brake fluid boil at if it is not dot 4 and the can has been open for two years on my shelf",
        "how far from the header does the fuel hose stay when there is no shield fitted that i could find anywhere",
    ],
)
def test_what_is_denied_and_may_move_the_answer_is_never_left(line: str) -> None:
    """It is refused, or asked about: the answer stands only if it changes nothing."""
    told = read(line)
    assert (
        told is None
        or "left out" not in told.read_as
        or not any(f"{turn} " in _left_out(told) for turn in ("no", "not", "never", "without"))
    )


@pytest.mark.parametrize(
    ("line", "found", "left"),
    [
        (
            "the gauge at the circuit only reads in bar and he is asking for two point two bar on the left rear so what"
            " is that in p s i",
            "2.2 bar",
            "circuit",
        ),
        (
            "the manual says 45 newton metres and my wrench is in foot pounds so whats that in foot pounds",
            "45 N*m",
            "wrench",
        ),
    ],
)
def test_a_story_that_ends_with_another_unit_is_a_conversion(line: str, found: str, left: str) -> None:
    told = answer(line)
    assert told.found.as_dict()["asked"]["given"] == found  # type: ignore[index]
    assert left in told.read_as


@pytest.mark.parametrize(
    "line",
    [
        "my scale reads 12 stone and the tank is 40 litres, what is that in gallons",  # two numbers
        "the bolt is an m10 10.9 so what is that in foot pounds",
        "the bolt is 40 mm long and the book says foot pounds so what is that in foot pounds",
    ],
)
def test_two_measures_or_none_are_no_conversion(line: str) -> None:
    told = read(line)
    assert told is None or not told.read_as.startswith("a conversion")


def test_a_part_that_was_named_is_called_by_its_last_word() -> None:
    told = answer("the car weeps at the sump plug so what torque for an m14x1.5 plug into an aluminium pan")
    assert "oil drain plug" in told.read_as
    assert "spark" not in told.read_as


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("4140 hardnes drawn at 400F", "hardness"),  # hardens is as near, and says nothing here
        ("205/55r16 overall hight", "height"),
        ("driveshft critical speed 2 metre long 3 inch by .083", "driveshafts"),
    ],
)
def test_of_words_as_near_the_one_that_is_read_is_meant(line: str, meant: str) -> None:
    assert f"as {meant}" in answer(line).read_as


@pytest.mark.parametrize(
    ("line", "same"),
    [
        ("m8 10.9 oiled not dry", "m8 10.9 oiled"),
        ("m10 8.8 oiled not zinc plated", "m10 8.8 oiled"),
        ("3/8-16 grade 8 not grade 5 dry", "3/8-16 grade 8 dry"),
        ("m8 8.8 dry into aluminium not into steel", "m8 8.8 dry into aluminium"),
        ("4130 tube normalised yield not annealed", "4130 tube normalised yield"),
    ],
)
def test_in_a_short_line_too_what_was_said_otherwise_agrees(line: str, same: str) -> None:
    told, plain = answer(line), answer(same)
    assert told.found == plain.found
    assert "not" in told.read_as, "what was left out is said"


@pytest.mark.parametrize(
    "line",
    ["m10 8.8 not zinc plated", "m10 8.8 not plated", "m8 8.8 dry not into aluminium", "4130 yield not normalised"],
)
def test_what_is_open_is_never_denied_away(line: str) -> None:
    with pytest.raises(InputError):
        answer(line)


GRADES = ("8.8", "10.9", "12.9", "grade 5", "grade 8")


@pytest.mark.parametrize("denied", GRADES)
@pytest.mark.parametrize("thread", ["m8", "m10x1.25", "3/8", "7/16-20"])
def test_a_grade_that_is_denied_never_stands_in_the_answer(thread: str, denied: str) -> None:
    """m8 not 8.8: which one it is was not said, and a number right before it is no other value of it."""
    for line in (f"{thread} not {denied}", f"{thread} not {denied} dry", f"dry {thread} bolt, not {denied}"):
        told = read(line)
        named = f"{'SAE J429' if denied.startswith('grade') else 'ISO 898-1'} {denied.removeprefix('grade ')}"
        assert told is None or f"{named}'" not in str(told.found), line


@pytest.mark.parametrize(
    ("line", "denied"),
    [
        ("m12x1.25 not 1.75 tap drill", "not 1.75"),
        ("1.75 x .120 not .095 dom on a 6 inch die", "not .095"),
        ("30r7 hose not 30r9 what temp is it rated", "not 30r9"),
        ("coolant at 1.1 bar cap not psi, 50 mix, where does it boil", "not psi"),
    ],
)
def test_a_number_a_class_or_a_unit_in_place_of_another_is_left_out_and_said(line: str, denied: str) -> None:
    told = read(line)
    assert told is not None
    assert denied in told.read_as
