"""Of a long pattern the part that a line can begin to match: it matches there what the whole one does."""

from __future__ import annotations

import random
import re
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import domains
from gaugeblock.answer.asking import END, Shaped, Topic, amount
from gaugeblock.answer.patterns import alternatives, first_letters, part_for
from gaugeblock.answer.phrases import spoken
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

TOPICS: list[Topic] = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
PATTERNS = sorted(
    {r._pattern for t in TOPICS for readers in t.slots.values() for r in readers if isinstance(r, Shaped)}
)
QUESTIONS = [
    question["ask"]
    for path in sorted((Path(__file__).parents[1] / "ask").glob("*questions.toml"))
    for question in tomllib.loads(path.read_text(encoding="utf-8"))["question"]
]
WORDS = sorted(
    {w for t in TOPICS for w in re.findall(r"[a-z]+", t.signals) if len(w) > 1} | {"3/8", "m8", "90", "u-bolt"}
)


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.noun)
@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=7))
def test_a_part_matches_what_the_whole_matches(topic: Topic, words: list[str]) -> None:
    text = " ".join(words)
    part = part_for(topic.signals, text)
    whole = re.compile(f"(?:{topic.signals}){END}")
    some = re.compile(f"(?:{part}){END}") if part else None
    at = 0
    for word in words:
        found, other = whole.match(text, at), some.match(text, at) if some else None
        assert (found and found[0]) == (other and other[0]), text[at:]
        at += len(word) + 1


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.noun)
def test_the_alternatives_are_all_of_the_pattern(topic: Topic) -> None:
    found = alternatives(topic.signals)
    assert "|".join(found) == topic.signals
    for one in found:
        re.compile(one)


def test_a_line_that_begins_nothing_has_no_part() -> None:
    assert part_for("bolts?|nuts?", "a shaft") == ""
    assert part_for("(?:big |small )?bolts?|nuts?", "a big shaft") == "(?:big |small )?bolts?"
    assert part_for("(?:big |small )?bolts?|nuts?", "a bigger shaft") == ""
    assert part_for(r"\bbolts?|nuts?", "a shaft") == r"\bbolts?"  # its begin cannot be told
    assert part_for("(?:ab){2}c|nuts?", "a shaft") == "(?:ab){2}c"


def test_no_pattern_matches_where_its_first_letters_say_that_it_cannot_begin() -> None:
    rests = set()
    for line in random.Random(5).sample(QUESTIONS, 400):
        words = words_of(line)
        rests |= {" ".join(words[at : at + 14]) for at in range(len(words))}
    begun, passed = 0, 0
    for pattern in PATTERNS:
        letters, made = first_letters(pattern), re.compile(f"(?:{pattern}){END}")
        for rest in rests:
            may = letters is None or rest[:1] in letters
            passed += not may
            if made.match(rest):
                begun += 1
                assert may, (pattern, rest)
    assert begun > 5000
    assert passed > 0.7 * len(PATTERNS) * len(rests)  # else it saves nothing


@pytest.mark.parametrize(
    ("pattern", "letters"),
    [
        ("bolts?|nuts?", "bn"),
        ("(?:cap |set )?screws?", "css"),
        ("(?:an? )*(?P<n>[0-9a]+(?:/[0-9]+)?) in", "a0123456789"),
        (r"(?!bolts)b?\.[0-9]", "b."),
        (r"(?<![^ ])(?=x)[x-z]{2,3}", "xyz"),
        ("a{0,2}b", "ab"),
        ("a{,2}b", "ab"),
        ("a{2}b", "a"),
        ("a+0b", "a"),
        ("a??b+?", "ab"),
        (r"\$?[.-]?[1-3]", "$.-123"),
        ("[a-]b", "a-"),
    ],
)
def test_the_letters_with_which_a_pattern_begins(pattern: str, letters: str) -> None:
    assert first_letters(pattern) == set(letters)


@pytest.mark.parametrize("pattern", [r"\w+", ".", "[^a]", r"[\w.]", "a?", "(?:a|b?)", "", r"(?P<a>x)?(?P=a)", r"\d"])
def test_what_cannot_be_told_or_can_be_nothing_has_no_letters(pattern: str) -> None:
    assert first_letters(pattern) is None


def test_a_phrase_is_read_with_its_hyphen_and_without() -> None:
    phrases = spoken({"anti-seize": "anti-seize", "dry (clean)": "dry", "four wheel": "4", "bush": "bush"})
    read = ("anti-seize", "anti seize", "antiseize", "dry clean", "4 wheel", "four wheels", "bushes")
    assert {p: phrases.get(p) for p in read} == {
        "anti-seize": "anti-seize",
        "anti seize": "anti-seize",
        "antiseize": "anti-seize",
        "dry clean": "dry",
        "4 wheel": "4",
        "four wheels": "4",
        "bushes": "bush",
    }


@pytest.mark.parametrize(
    ("line", "value"), [("24 volts", "24 V"), ("6 v", "6 V"), ("3 volts", ""), ("500 mv", ""), ("12", "")]
)
def test_an_amount_is_no_less_than_its_least(line: str, value: str) -> None:
    """Three volts are lost, and no system's voltage; a bare number is none either."""
    reader = amount("voltage", least=5)
    hits = list(reader.take(words_of(line), 0, refdata()))
    assert [hit.value for hit in hits] == ([value] if value else [])
