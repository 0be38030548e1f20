"""Laws over all questions: no number of a line is lost, and no word that an option knows is taken for the topic's
own.
"""

from __future__ import annotations

import random
import re
import tomllib
from functools import cache
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.answer.asking import Topic
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import read_or_answered
from gaugeblock.plain.chatter import CHATTER, PLACE, STORY, TURNING
from gaugeblock.plain.given import Answer
from gaugeblock.plain.passing import is_in_passing
from gaugeblock.plain.reading import Reading, read
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

HERE = Path(__file__).resolve().parent
NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?|\.[0-9]+")
# A number of the line that stands in another form in the reading: three weeks are 21 days, three months 90, six lines
# are grade 8, 50 kilos 490 N, 817M40 is EN24, the 1930s were before the war; or says no more of
# an answer: the size of an axle whose maker is asked, the width of a tyre whose height turns, a carburettor's barrels.
OTHERWISE = re.compile(
    r"\b(?:v ?(?:4|6|8|10|12)|o2)\b|[0-9]+ (?:weeks?|months?)|[0-9.]+ (?:thou|(?:radial )?lines?|dashes)|6 lines on"
    r" head|(?<![0-9.])0?[0-9]{2,3}(?= wall| dom| 4130)|(?<![0-9.])0[0-9]{2}(?![0-9./])"
    r"|8\.8 in rear|8\.8 inch ring|9 inch ring|8 1/2 inch(?:es)? (?:across|diff)|(?<![0-9])50 (?:kilos|kg)"
    r"|900 millibar|2448(?= pitch)|(?<=in )mm2|(?<=what )mm2"
    r"|\b5 speed|\b3 55 gears|(?<=4\.1 to )1\b"
    r"|\b(?:080m40|605m36|709m40|817m40)t?\b|\b19[0-3]0s\b|each side only has 1/2"
    r"|\b[1-6](?:st|nd|rd|th)\b|(?<=the )big 1\b|(?<=the )(?:big|little) 1\b|\b2 axle shafts"
    r"|\b[23] (?:legs|lengths|bits|pieces)\b|1/4 of its|springs back 3 degrees"
    r"|(?<=[23][0-9]x)[0-9]{1,2}\.50?|\b2 joints\b|comes back 3 degrees|\b[124] barrel|(?<=litre )6\b"
    r"|(?<=spec )6 to 10|(?<=for it is )6 to 10|(?<=want it at )8\b"
)
MIXED = re.compile(r"\b([0-9]+) ([0-9])/([0-9])\b")  # 87 1/2 deg are told as 87.5
TOPICS = [topic for wing in domains.WINGS if wing.hints for topic in wing.module("ask").TOPICS]
SPLICED = ["400 n", ".008", "0.25 in", "37", "m7", "3/16", "8.8", "21 mm", "91 deg", "55 %", "13 psi", "303", "9 amps"]
# Words that say of an option what goes without saying.
USUAL = {
    ("torque", "service"): ("vehicle",),
    ("bend", "service"): ("vehicle", "car", "cars"),
    ("torque", "into"): ("steel",),
    ("heat", "beside"): ("truck",),  # an exhaust wrap is on the exhaust of something
}
SHORT = 9  # words of a line that another is put behind


@cache
def lines() -> list[str]:
    found: list[str] = []
    for path in sorted(HERE.glob("*questions.toml")):
        found += [q["ask"] for q in tomllib.loads(path.read_text(encoding="utf-8"))["question"]]
    return found


def reading(line: str) -> Reading | None:
    """How a line is read by one answer; None where it is refused, or answered without one."""
    try:
        found = read_or_answered(line, refdata())
    except GaugeblockError:
        return None
    return None if isinstance(found, Answer) else found


def lost(line: str, got: Reading) -> list[float]:
    """The numbers of a line that stand nowhere in its reading."""
    denied = [said for said in got.aside if said.startswith(("not ", "no ", "without ", "instead of ", "rather than "))]
    passing = [said for said in got.aside if is_in_passing(said)]  # a price, an hour, a year
    told = [float(n) for n in NUMBER.findall(" ".join([*got.values.values(), *got.said.values(), *denied, *passing]))]
    if any(key in got.values for key in ("backlash", "as_left", "wanted")):  # eight is 0.008 in
        told += [round(1000 * n, 3) for n in told]
    typed = OTHERWISE.sub(" ", " ".join(words_of(line)))
    for found in MIXED.finditer(typed):
        whole = int(found[1]) + int(found[2]) / int(found[3])
        typed = typed.replace(found[0], f"{whole:g}") if whole in told else typed
    left = [float(n) for n in NUMBER.findall(typed) if float(n) not in told]
    is_summed = any("together" in said for said in got.said.values()) and sum(left) in told  # 100 W and 180 W
    return [] if is_summed else left


def test_no_number_of_any_question_is_lost() -> None:
    read_whole = [(line, got) for line in lines() if (got := reading(line)) is not None]
    assert len(read_whole) > 400
    assert [(line, lost(line, got)) for line, got in read_whole if lost(line, got)] == []


@pytest.mark.parametrize("number", SPLICED)
def test_a_number_put_into_a_question_is_read_or_refused(number: str) -> None:
    drawn = random.Random(number)
    for line in drawn.sample(lines(), 40):
        words = line.split()
        at = drawn.randint(0, len(words))
        spliced = " ".join([*words[:at], number, *words[at:]])
        got = reading(spliced)
        if got is not None:
            assert not [n for n in lost(spliced, got) if n in map(float, NUMBER.findall(number))], spliced


@pytest.mark.parametrize("topic", TOPICS, ids=[f"{n}-{t.noun}" for n, t in enumerate(TOPICS)])
def test_what_an_option_knows_its_topic_never_drops(topic: Topic) -> None:
    data, drawn = refdata(), random.Random(topic.noun)
    whole = [
        (words, got)
        for line in lines()
        if len(words := words_of(line)) <= SHORT and (got := read(words, topic, data)).is_whole
    ]
    for key, readers in topic.slots.items():
        free = [one for one in whole if key not in one[1].values]
        phrases = sorted({p for reader in readers for p, cell in reader.phrases(data).items() if cell})
        for phrase in drawn.sample(phrases, min(40, len(phrases))) if free else ():
            words, before = drawn.choice(free)
            if {w.rstrip("s") for w in phrase.split()} <= {w.rstrip("s") for w in words}:
                continue  # said already
            after = read((*words, *phrase.split()), topic, data)
            is_dropped = after.is_whole and key not in after.values and after.values == before.values
            usual = USUAL.get((topic.noun, key), ())
            is_dropped = is_dropped and not _is_said_already(words, phrase, topic, before)
            assert not is_dropped or phrase.startswith(usual), f"{' '.join(words)} + {phrase}"


def _is_said_already(words: tuple[str, ...], phrase: str, topic: Topic, before: Reading) -> bool:
    """Whether a phrase means for another option what was read: an inverted flare is the double flare that was said; or
    with the word before it: dry steel is dry.
    """
    line = (*words, *phrase.split())
    return any(
        hit.value == before.values.get(key) and at + hit.count == len(line)
        for key, readers in topic.slots.items()
        for reader in readers
        for at in (len(words), len(words) - 1)
        for hit in reader.take(line, at, refdata())
    )


def test_a_word_that_is_left_out_is_said_and_is_of_no_vocabulary_that_changes_a_figure() -> None:
    found = read_or_answered("2x2x1/8 box weight for the roadster", refdata())
    assert isinstance(found, Reading)
    assert found.aside == ("roadster",)
    changing = re.compile(
        "condition|lubricant|surface|material|into|insert|grade|treatment|temper|state|wear|service|seat"
    )
    words = {
        word
        for word in PLACE | STORY
        for line in refdata().lines("words").holding(word)
        if _means(line, word, changing)
    }
    assert not words
    assert not (PLACE | STORY) & (CHATTER | TURNING)


def _means(line: list[str], word: str, columns: re.Pattern[str]) -> bool:
    return line[1] == word and columns.search(line[2]) is not None


@pytest.mark.parametrize("line", ["transmission pan bolt torque", "bumper bolt m8 8.8 dry torque"])
def test_beside_a_part_no_word_is_left_out(line: str) -> None:
    got = reading(line)
    assert got is None or not ("part" in got.topic.slots and got.aside)
