"""A long story round a question: what only tells it is left out and said; what the answer may hang on never is."""

from __future__ import annotations

import random

import pytest

from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import answer
from gaugeblock.plain.doubtful import NAME
from gaugeblock.plain.given import Answer
from gaugeblock.plain.passing import in_passing, is_in_passing

# Each with a number that its answer must have, and what is to be left out.
TOLD = (
    (
        "what should i pull these seven sixteenths coarse grade eight bolts down to they hold the gearbox crossmember"
        " to the chassis steel to steel dry they came in a jam jar from my uncles shed with no box and i have a beam"
        " wrench i paid forty quid for",
        70,
        ("jam", "jar", "beam", "40 quid"),
    ),
    (
        "how fast can i spin a steel propshaft before it whips its three inch by eighty three thou wall sixty inches"
        " between the joint centres one piece because i couldnt face making a centre bearing mount and the other one"
        " went for scrap for twelve bucks",
        3750,
        ("couldnt face", "scrap", "12 bucks"),
    ),
    (
        "snapped the left axle shaft leaving a car park which was embarrassing the next one is thirty millimetre solid"
        " at the thinnest bit steel with a yield of seven hundred megapascals at what torque does it start to twist"
        " for good",
        2142,
        ("embarrassing", "park"),
    ),
)
# What moves a torque, a propeller shaft, a shaft that twists.
MOVES = {
    0: (
        "stainless",
        "galvanised",
        "waxed",
        "m12",
        "3/4 in",
        "into aluminium",
        "not dry",
        "never dry",
        "instead of dry",
    ),
    1: ("aluminium", "2500 rpm", "90 in long", "not steel", "carbon"),
    2: ("hollow", "splined", "notched", "45 mm", "keyed"),
}


def told(line: str) -> Answer | None:
    try:
        return answer(line)
    except GaugeblockError:
        return None


def left_out(got: Answer) -> str:
    return got.read_as.partition("left out")[2].partition("; not understood")[0]


@pytest.mark.parametrize(("line", "number", "aside"), TOLD)
def test_a_story_is_answered_by_its_question_and_what_it_tells_is_said(
    line: str, number: float, aside: tuple[str, ...]
) -> None:
    got = told(line)
    assert got is not None
    assert isinstance(got.found, Sheet)
    assert got.found.decision.figure is not None
    assert got.found.decision.figure.typical == pytest.approx(number, rel=0.01)
    assert NAME not in got.found.decision.because, "nothing of it is asked about"
    assert all(one in left_out(got) for one in aside)


@pytest.mark.parametrize(("which", "phrase"), [(n, phrase) for n, phrases in MOVES.items() for phrase in phrases])
def test_what_may_move_the_answer_is_read_asked_about_or_refused(which: int, phrase: str) -> None:
    drawn = random.Random(f"{which}{phrase}")
    words = TOLD[which][0].split()
    plain = told(TOLD[which][0])
    assert plain is not None
    for at in drawn.sample(range(len(words) + 1), 5):
        got = told(" ".join([*words[:at], phrase, *words[at:]]))
        if got is None:
            continue
        is_told_apart = got.read_as.partition("; left out")[0] != plain.read_as.partition("; left out")[0]
        is_asked = isinstance(got.found, Sheet) and NAME in got.found.decision.because
        assert is_told_apart or is_asked, (at, got.read_as)
        assert phrase not in left_out(got)


TWICE = (
    "my mate gave me a box of m10 10.9 bolts and some of them are dry and some are oiled so what torque do i use on"
    " each when i put the subframe back"
)


def test_two_values_that_a_story_tells_of_one_option_stand_side_by_side() -> None:
    got = told(TWICE)
    assert got is not None
    assert isinstance(got.found, Table)
    shown = {line.key["condition"]: line.sheet.decision.figure for line in got.found.lines}
    single = {one: told(f"m10 10.9 {one} torque") for one in ("dry", "oiled")}
    for condition, alone in single.items():
        assert alone is not None
        assert isinstance(alone.found, Sheet)
        assert shown[condition] == alone.found.decision.figure
    assert "subframe" in left_out(got)


@pytest.mark.parametrize(
    "phrase", ["stainless", "galvanised", "m12", "into aluminium", "8.8", "never", "with a nylon insert"]
)
def test_what_may_move_one_of_two_values_is_read_or_refused(phrase: str) -> None:
    words = TWICE.split()
    for at in random.Random(phrase).sample(range(len(words) + 1), 6):
        got = told(" ".join([*words[:at], phrase, *words[at:]]))
        if got is not None:
            assert phrase not in left_out(got)
            assert got.read_as.partition("; left out")[0] != "torque: M10, ISO 898-1 10.9, dry and oiled", got.read_as


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("paid 40 quid", ["paid", "40-quid"]),
        ("back by 6 oclock", ["back", "by", "6-oclock"]),
        ("since 9 this morning", ["since", "9-this-morning"]),
        ("half past 9 it was", ["9-half-past", "it", "was"]),
        ("10.5 mm past half 3/8", ["10.5", "mm", "past", "half", "3/8"]),
        ("quoted 900 for a yoke", ["quoted", "price-900", "for", "a", "yoke"]),
        ("asked 8 mm for it", ["asked", "8", "mm", "for", "it"]),
        ("a load of 2000 pounds", ["a", "load", "of", "2000", "pounds"]),
        ("torque for 1960 newtons", ["torque", "for", "1960", "newtons"]),
        ("from half to 10 mm", ["from", "half", "to", "10", "mm"]),
        ("on a 72 pickup", ["on", "a", "year-72", "pickup"]),
        ("the 3 car trailer", ["the", "3", "car", "trailer"]),
        ("bought in 1998 new", ["bought", "in", "year-1998", "new"]),
        ("1.25 in 2000 lb ft", ["1.25", "in", "2000", "lb", "ft"]),
        ("plate in 2024", ["plate", "in", "2024"]),
        ("this morning 8 mm", ["this", "morning", "8", "mm"]),
    ],
)
def test_a_price_an_hour_and_a_year_are_one_word_and_a_measure_is_none(line: str, words: list[str]) -> None:
    assert in_passing(line.split()) == words
    assert [is_in_passing(word) for word in words] == ["-" in word for word in words]


def test_a_price_is_never_a_size() -> None:
    got = told("m10 10.9 oiled, paid 8 quid for them")
    assert got is not None
    assert got.read_as == "torque: M10, ISO 898-1 10.9, oiled; left out: paid, 8 quid"
