"""A story round a question: its words are left out and said; none that may change the figure ever is."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import answer, read_or_answered
from gaugeblock.plain.chatter import CHATTER, PLACE, PLAIN, STORY, TURNING
from gaugeblock.plain.english import english_file, is_english
from gaugeblock.plain.everyday import is_everyday
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import Reading
from gaugeblock.plain.round_words import ASKED, BY_KIND, CHANGING, PLACES, QUALITY, ROUND
from gaugeblock.plain.understand import PLAIN_BOLT
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

WORDS = Path(english_file()).read_text(encoding="ascii").split()
# Told at length, each with a place where a word of the story may stand.
STORIES = (
    "my mate has a {} on the bench and wants to know how tight a 3/8-16 grade 8 bolt goes when it is oiled",
    "so the {} is going back together on saturday and i need the tap drill for 7/16-20 before the boss comes back",
    "we were by the {} when he asked what a 1.75 x .120 dom tube weighs per foot and we all forgot it",
    "the {} came off again so what does 50/50 glycol with a 15 psi cap boil at in this old truck",
    "there is a {} in the way and my fan draws 25 amps at 12 volts over 12 feet so what wire do i run to it",
)


def read(line: str) -> Reading | None:
    """How a line is read; None where it is refused or answered another way."""
    try:
        got = read_or_answered(line, refdata())
    except GaugeblockError:
        return None
    return None if isinstance(got, Answer) else got


def test_the_list_is_in_order_and_has_no_word_of_another() -> None:
    assert sorted(set(WORDS)) == WORDS
    assert not set(WORDS) & (CHANGING | TURNING | CHATTER | PLAIN)
    assert not any(map(is_everyday, WORDS))
    assert not (ROUND | PLACES) & (CHANGING | ASKED | TURNING)


@pytest.mark.parametrize("word", ["stainles", "galvinised", "antisieze", "torgue", "tempertaure", "bsf", "gxl", "m8"])
def test_a_slip_or_an_abbreviation_is_no_word_of_the_language(word: str) -> None:
    assert not is_english(word)


@pytest.mark.parametrize("story", STORIES, ids=range(len(STORIES)))
def test_a_word_of_the_story_changes_nothing_and_is_said(story: str) -> None:
    plain = read(story.format("car"))
    assert plain is not None
    for word in ("windmill", "wheelbarrow", "cathedral", "orchard", "gearbox", "four-poster"):
        told = read(story.format(word))
        if told is None:  # some answer knows it
            assert word == "gearbox"
            continue
        assert (told.topic, told.values) == (plain.topic, plain.values), word
        assert word in told.aside


@pytest.mark.parametrize("story", STORIES, ids=range(len(STORIES)))
def test_what_may_change_a_figure_is_never_left_out(story: str) -> None:
    drawn = random.Random(story)
    for word in drawn.sample([w for w in sorted((CHANGING | ASKED) - PLACE - STORY) if not is_everyday(w)], 25):
        told = read(story.format(word))
        assert told is None or word not in told.aside or _kind(word) in told.topic.unmoved, word


def _kind(word: str) -> str:
    """The kind of a word that may change a figure; blank for one with which a figure is asked."""
    return next((kind for kind, words in BY_KIND.items() if word in words), "")


def test_each_word_is_of_one_kind_and_each_topic_names_kinds() -> None:
    assert sum(map(len, BY_KIND.values())) == len(CHANGING)
    every = [topic for wing in domains.WINGS if wing.hints for topic in wing.module("ask").TOPICS]
    assert all(topic.unmoved <= {*BY_KIND, QUALITY} for topic in every)
    assert any(topic.unmoved for topic in every)
    # what nobody can say of a bolt, a hose or a steel without changing its figure
    assert not any(t.unmoved for t in every if {"condition", "klass", "part"} & t.slots.keys())


@pytest.mark.parametrize(
    ("line", "left", "kept"),
    [
        (
            "how much does a 304 {} pipe six foot long grow at 600 f when it runs from the header to the box",
            "welded",
            "brass",
        ),
        (
            "i have to do a {} 90 degree bend on a 4.5 inch radius so how much tube does the bend use",
            "chrome",
            "inside",
        ),
        ("what thread is the tube nut on a {} fuel line of 3/8 tube with the 37 degree flare", "polished", "twin"),
        (
            "truck with 3.73 gears and 28 inch tyres on the {} trail at 20 mph so what does the engine turn",
            "rough",
            "low",
        ),
        (
            "{} car with 3.73 gears and 28 inch tyres on the motorway at 70 mph so what does the engine turn",
            "race",
            "worn",
        ),
    ],
)
def test_a_word_is_left_out_where_its_kind_cannot_move_the_answer(line: str, left: str, kept: str) -> None:
    told = read(line.format(left))
    assert told is not None
    assert left in told.aside
    other = read(line.format(kept))
    assert other is None or kept not in other.aside


@pytest.mark.parametrize("story", STORIES, ids=range(len(STORIES)))
def test_no_number_is_left_out_of_a_story(story: str) -> None:
    for number in ("37", "4.5", "3/16", "700", "m10"):
        told = read(story.format(number))
        assert told is None or number not in told.aside, number


@pytest.mark.parametrize(
    "line",
    [
        "fuel pressure for lemonade 300 hp",
        "damp bolt 3/8-16 gr 5",
        "3/8-16 grade 5 dry torque to yield",
        "i have a british car from long ago on the bench so what is the tap drill for a 5/16 bsf hole in it",
    ],
)
def test_a_short_line_a_named_bolt_or_another_standard_is_refused(line: str) -> None:
    assert read(line) is None


def test_a_word_meant_as_it_stands_is_no_slip() -> None:
    found = answer(
        "the tag fell off my grain truck axle and i counted 41 teeth on the crown wheel and 11 on the pinion"
    )
    assert '"fell"' not in found.read_as
    assert "fell" in found.read_as


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("mower blade bolts 5/8-11 grade 8 oiled", "mower blade bolt"),
        (
            "the mower blade bolts on the farm are 5/8-11 grade 8 and oiled and the boss asks how tight",
            "mower blade bolt",
        ),
        ("caliper bolts m12x1.5 10.9", "caliper bolt"),
    ],
)
def test_a_part_that_no_table_has_gets_no_number_and_the_plain_bolt_is_named(line: str, name: str) -> None:
    got = answer(line)
    assert isinstance(got.found, Sheet)
    assert (got.found.title, got.found.decision.kind, got.found.figures) == (name, "none", ())
    assert len(got.more) == 1
    assert got.more[0].read_as.endswith(PLAIN_BOLT)


@pytest.mark.parametrize(
    ("story", "other"),
    [
        ("there is a carb on the bench so what pump does a 350 hp petrol engine need on {} without boost", "injection"),
        ("my mate says the 3/8-16 grade 8 bolt in his shed is dry and has {} on it so how tight does it go", "oil"),
        ("we were by the lathe when he asked what dot 4 boils at when it is wet and {} out of the tin", "fresh"),
    ],
)
def test_another_value_of_an_option_is_never_left_out(story: str, other: str) -> None:
    told = read(story.format(other))
    assert told is None or other not in told.aside


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("dot 4 wet out of a can", "wet"),
        ("31x10.5 tyres", "31x10.5"),
        ("drum brakes on 2 wheels", "2"),
        ("we lifted it four inches and it shakes", "lifted"),
        ("m8 8.8 and worried about stripping the aluminium", "aluminium"),
        ("4340 and do not harden it", "not"),
        ("which hose won't melt at 400 f", "won't"),
        ("3/8-16 grade 5 before i oil the bolts", "oil"),
        ("a length of 48 in", "length"),
        ("4140 it's dead hard", "hard"),
        ("m8 8.8 without an insert", "without"),
        ("spark plug without a washer", "without"),
        ("which boot won't crack at 250 f", "won't"),
        ("a bolt that won't turn", "won't"),
        ("3/8-16 grade 5 and i do not want to oil it", "not"),
        ("alloy head m8", "alloy"),
        ("steel plate 1/4 in", "steel"),
        ("2 lamps of 55 watt", "2"),
        ("number 4 bolts", "4"),
        ("the copper washers are used", "used"),
        ("the chart says oiled", "oiled"),
        ("i cannot see any oil on it", "cannot"),
        ("4x4 1/4 wall square tube weight per foot", "4x4"),
        ("a torque that won't strip the aluminium", "aluminium"),
        ("m6 without stripping the alloy", "alloy"),
        ("how tight a grade 8 goes in", "8"),
        ("a 3/8 goes into steel", "3/8"),
        ("lead acid battery 60 amp hours", "lead"),
        ("break in oil for a new engine", "break"),
        ("a strip of 16 gauge sheet", "strip"),
        ("it is coming at 4 inches of travel", "4"),
        ("back at 4 psi", "4"),
        ("shuts at 180 degrees", "180"),
        ("turbo flange bolts m8 with no lube", "no"),
        ("no turbo oil feed line", "no"),
        ("heat treat it to 800 f", "heat"),
        ("4 wheel nuts", "wheel"),
        ("3 times the diameter deep", "3"),
        ("no marks on the head of the m10", "m10"),
        ("a loose fit clearance hole", "loose"),
        ("stripped hole m8 in alloy", "stripped"),
        ("hot coolant all day", "hot"),
        ("a saw cut in 1/4 plate", "saw"),
        ("five times as long", "5"),
        ("1955 lb on the wheel", "1955"),
        ("19 mm socket head bolt", "19"),
        ("ring and pinion backlash", "ring"),
        ("the joint feels tight at 3 deg", "tight"),
        ("grade eight goes in dry", "8"),
        ("a loom of 4 wires together", "4"),
        ("2 pipes together", "2"),
        ("the stop light fuse lasts 6 laps of 30 minutes", "30"),
        ("the 4x4 box 1/4 wall", "4x4"),
    ],
)
def test_no_saying_takes_away_what_may_change_a_figure(line: str, kept: str) -> None:
    assert kept in words_of(line)


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("how far should i keep a rubber fuel hose from the header", "exhaust gap"),
        ("400 lb ft first gear 3.0 and a 4.10 axle how much torque does an axle shaft see", "axle shaft"),
        ("4 gauge cable 20 ft to the starter 200 amps how many volts lost", "voltage drop"),
        ("number four cable 20 ft to the starter 200 amps how many volts lost", "voltage drop"),
        ("top speed 3.55 axle 205/55r16 6000 rpm", "road speed"),
        ("weeps at the sump plug so what torque for an m14x1.5 plug into an aluminium pan with a new washer", "torque"),
    ],
)
def test_what_was_once_read_as_another_thing(line: str, asked: str) -> None:
    told = read(line)
    assert told is not None
    assert told.topic.noun == asked
    assert "4 deg" not in str(told.values)
    assert told.values.get("diameter") is None


def test_a_count_of_things_is_no_measure_without_its_unit() -> None:
    line = "two cooling fans pull 25 amps each on one relay what size fuse at 12 volts"
    assert read(line) is None
    with pytest.raises(GaugeblockError) as refused:
        answer(line)
    assert "2 ft" not in str(refused.value)


@pytest.mark.parametrize(
    ("told", "typed"),
    [
        ("the straps over the u joint caps with 1/4-28 bolts how tight", "u-joint strap bolts with 1/4-28 how tight"),
        ("put the headers on with 3/8 coarse bolts", "header bolts 3/8 coarse"),
        ("alloy sump with a 14 mm plug", "alloy sump with a 14 mm oil drain plug"),
        ("m12x1.5 nuts for alloy wheels", "m12x1.5 wheel nuts alloy wheels"),
        ("3/8-16 bolts and i cannot see any marks on the heads", "3/8-16 bolts and unknown grade"),
        ("metric ten bolt", "m10 bolt"),
        ("number four cable", "4 gauge cable"),
        ("two fans pull 25 amps together", "fans pull 25 amps together"),
    ],
)
def test_a_turn_of_speech_is_what_one_would_have_typed(told: str, typed: str) -> None:
    assert [w for w in words_of(told) if w != "the"] == [w for w in words_of(typed) if w != "the"]
