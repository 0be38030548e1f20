"""What stands beside a question: a second question, a choice, two values of one option, a number without its unit."""

from __future__ import annotations

import random

import pytest

from ask.test_nothing_dropped import lines
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.plain.answer import answer, read_or_answered
from gaugeblock.plain.beside import parted
from gaugeblock.plain.chatter import CHATTER, OF_A_THING, PLACE, PLAIN, STORY, TURNING
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import Reading
from gaugeblock.tables.load import refdata

DATA = refdata()


def table(line: str) -> Table:
    found = answer(line).found
    assert isinstance(found, Table), line
    return found


def sheet(line: str) -> Sheet:
    found = answer(line).found
    assert isinstance(found, Sheet), line
    return found


@pytest.mark.parametrize(
    ("line", "key", "values"),
    [
        ("3/8-16 dry grade 5 or grade 8", "grade", ["SAE J429 5", "SAE J429 8"]),
        ("3/8-16 grade 5 dry or oiled", "condition", ["dry", "oiled"]),
        ("tap drill for M10x1.25 and what for M10x1.5", "thread", ["M10x1.25", "M10x1.5"]),
        ("rpm at 75 with 3.31 gears and 26 in tire", "speed", ["75 mph", "75 km/h"]),
        ("tap drill and clearance hole for m8", "fit", ["clearance, normal", "tap drill"]),
        ("tap drill m8, and what size clearance hole", "fit", ["clearance, normal", "tap drill"]),
        ("neoprene 250 degrees", "at", ["250 degF", "250 degC"]),
    ],
)
def test_two_values_are_put_side_by_side(line: str, key: str, values: list[str]) -> None:
    found = table(line)
    assert list(dict.fromkeys(row.key[key] for row in found.lines)) == values


@pytest.mark.parametrize("line", ["3/8-16 grade 5 dry oiled", "3/8-16 grade 5 dry and not dry", "3/8-16 grade 5 or"])
def test_two_values_without_a_choice_are_refused(line: str) -> None:
    with pytest.raises(InputError):
        answer(line)


@pytest.mark.parametrize(
    ("line", "first", "rest"),
    [
        ("tensile stress area of 1/2-20 and what washer goes with it", "1/2-20", "and what washer goes with it"),
        ("how thick is 20 gauge stainless sheet or do i want a heavier one", "20 gauge", "or do i want a heavier one"),
    ],
)
def test_what_is_not_answered_is_told_word_for_word(line: str, first: str, rest: str) -> None:
    got = answer(line)
    assert first in got.read_as
    assert got.read_as.endswith(f"not answered: {rest}")


@pytest.mark.parametrize(
    "line", ["3/8-16 grade 5 dry and what if it is oiled", "3/8-16 grade 5 dry and is it not lubed"]
)
def test_a_second_question_with_a_condition_of_the_first_is_not_passed_over(line: str) -> None:
    try:
        got = answer(line)
    except InputError:
        return
    assert isinstance(got.found, Table)
    assert "oiled" in got.read_as


def test_a_second_question_that_can_be_answered_is_answered_too() -> None:
    got = answer("tap drill for 1/4-28 and how many threads per inch does a 1/2 fine bolt have")
    assert len(got.more) == 1
    assert "1/2 UNF" in got.more[0].read_as
    assert got.as_dict()["more"]


def test_what_a_second_question_says_of_the_same_thing_is_said_of_both() -> None:
    got = answer("torque 3/8-16 grade 8 dry and how deep in aluminum")
    assert isinstance(got.found, Sheet)
    assert got.found.decision == sheet("torque 3/8-16 grade 8 dry into aluminum").decision
    (deep,) = got.more
    assert isinstance(deep.found, Sheet)
    assert deep.found.decision == sheet("how deep 3/8-16 in aluminum").decision


def test_a_part_without_a_figure_brings_the_plain_bolt_of_its_thread() -> None:
    got = answer("how tight motor mount bolts 7/16-14 grade 5 dry")
    assert isinstance(got.found, Sheet)
    assert got.found.decision.kind == "none"
    (bolt,) = got.more
    assert isinstance(bolt.found, Sheet)
    assert bolt.found.decision.figure == sheet("7/16-14 grade 5 dry").decision.figure
    assert bolt.read_as.endswith("a plain bolt of this thread, not this part")
    assert answer("lug nuts 1/2-20 grade 5").more == ()


def test_a_place_behind_a_part_is_its_name() -> None:
    found = read_or_answered("torque of the drain plug on my old axle", DATA)
    assert isinstance(found, Reading)
    assert found.values["part"] == "axle drain plug"


@pytest.mark.parametrize(
    ("line", "value"),
    [("3/8-16 grade 5 no wait grade 8 dry", "SAE J429 8"), ("3/8-16 grade 8 scratch that grade 5 dry", "SAE J429 5")],
)
def test_who_takes_a_value_back_gets_the_other(line: str, value: str) -> None:
    assert value in sheet(line).title


@pytest.mark.parametrize(
    ("line", "same"),
    [
        ("how deep should a 3/8 bolt screw into aluminium so the threads will not strip", "engagement 3/8 aluminium"),
        ("1 3/4 oh ninety five wall dom on a 6 inch die", "1 3/4 .095 wall dom on a 6 inch die"),
        ("how tall is a two seventy five sixty r fifteen", "275/60r15 height"),
        ("an-6 thread size", "37 single flare 3/8 tube thread"),
        ("2x2 1/8 wall square weight", "2x2x1/8 box weight"),
        ("m10 8.8 dry torque coarse", "m10 coarse 8.8 dry torque"),
    ],
)
def test_another_way_to_say_it_is_the_same_question(line: str, same: str) -> None:
    def read_as(line: str) -> dict[str, str]:
        got = read_or_answered(line, DATA)
        assert isinstance(got, Reading), line
        return {k: v for k, v in got.values.items() if k != "flare"}

    assert read_as(line) == read_as(same)


def test_the_lists_of_words_are_apart() -> None:
    assert not (PLACE | STORY) & (CHATTER | TURNING | OF_A_THING)
    assert not PLAIN & TURNING


@pytest.mark.parametrize("word", ["most", "small", "lists", "old", "thin"])
def test_a_word_of_everyday_speech_is_no_slip_of_the_keys(word: str) -> None:
    try:
        got = read_or_answered(f"dot 4 boiling point {word}", DATA)
    except InputError:
        return
    if isinstance(got, Answer):  # it stands if the word changes nothing
        assert got.read_as.endswith(f"not understood: {word}")
    else:
        assert got.mended == ()


def test_a_line_is_parted_before_its_next_question() -> None:
    words = ("tap", "drill", "for", "1/4-28", "and", "what", "for", "1/4-20")
    assert (words[:4], words[4:]) in list(parted(words))


# Words that change a figure, or may: none of them is another name of what a question says.
CHANGING = ("titanium", "brass", "cracked", "painted", "cadmium plated", "bronze", "rusty", "without an insert")
JOINED = (" {}", " and {}", " or {}", " and what if it is {}", " but {}", " and is it {}", " so it stays {}")


@pytest.mark.parametrize("phrase", CHANGING)
@pytest.mark.parametrize("joined", JOINED)
def test_a_word_that_changes_a_figure_is_refused_told_or_changes_the_answer(phrase: str, joined: str) -> None:
    drawn = random.Random(phrase + joined)
    for line in drawn.sample(lines(), 6):
        try:
            before = answer(line)
            after = answer(line + joined.format(phrase))
        except GaugeblockError:
            continue
        if not isinstance(before.found, Sheet) or not isinstance(after.found, Sheet):
            continue
        told = " ".join(one.read_as for one in (after, *after.more))
        is_same = before.found.decision == after.found.decision
        assert not is_same or any(word in told for word in phrase.split() if len(word) > 4), line
