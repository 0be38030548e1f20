"""Any words in any order: never a fault, and no word that could change the number is dropped."""

from __future__ import annotations

import contextlib
import io
import json
import re
import tomllib
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugeblock import domains
from gaugeblock.cli import main
from gaugeblock.errors import GaugeblockError
from gaugeblock.found import Found
from gaugeblock.plain.answer import answer
from gaugeblock.plain.chatter import CHATTER, TURNING
from gaugeblock.plain.given import Answer
from gaugeblock.plain.understand import understood
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

DATA = refdata()
TOPICS = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
QUESTIONS = [
    q["ask"]
    for path in sorted(Path(__file__).parent.glob("*questions.toml"))
    for q in tomllib.loads(path.read_text(encoding="utf-8"))["question"]
]
# Columns of which a word says how a thing is, not which thing it is.
HOW = {
    "fasteners": ("condition", "surface", "lubricant", "material", "seat", "nut", "into"),
    "lines": ("state", "class"),
    "driveline": ("treatment", "wear", "phasing", "seating", "differential"),
    "tubes": ("condition", "method", "schedule"),
    "wiring": ("condition",),
}
# Steel and stainless pipe have one table of outsides; hardness and gauge of steel are what was meant anyway; the pipe
# threads of the tables are all taper ones; a foot that presses a pedal bends no tube.
SAY_NO_MORE = set(
    "steel tube tubes tubing pipe pipes hose hoses stainless brake brakes taper tapered press".split()  # noqa: SIM905
)
laws = settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow])


def asked(words: list[str]) -> tuple[int, dict[str, Any]]:
    out, bad = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        code = main(["ask", "--json", "--", *words])
    return code, json.loads(out.getvalue() or bad.getvalue())


@laws
@given(st.sampled_from(QUESTIONS).flatmap(lambda q: st.permutations(q.split())))
def test_any_order_of_a_question_ends_in_an_answer_or_a_refusal(words: list[str]) -> None:
    code, got = asked(words)
    assert code in (0, 1, 2), got
    assert ("error" in got) == (code == 2)


@laws
@given(st.lists(st.sampled_from(sorted({w for q in QUESTIONS for w in q.split()})), min_size=1, max_size=9))
def test_any_words_end_in_an_answer_or_a_refusal(words: list[str]) -> None:
    code, got = asked(words)
    assert code in (0, 1, 2), got


@laws
@given(
    st.sampled_from([q for q in QUESTIONS if len(q.split()) > 3]),
    st.sampled_from(sorted({w for d, cs in HOW.items() for c in cs for w in DATA.words(d, c) if w.isalpha()})),
    st.integers(0, 9),
)
def test_a_word_that_says_how_is_read_told_or_refused(question: str, word: str, at: int) -> None:
    """A condition, a state, a metal or a method that is put into a question stands in what was read, in a rule that is
    shown, or refuses it.
    """
    words = list(words_of(question))
    words.insert(min(at, len(words)), word)
    try:
        got = answer(" ".join(words))
    except GaugeblockError:
        return
    reading = understood(tuple(words), DATA)
    is_signal = any(reading.topic.signal(tuple(words), i) for i in range(len(words)) if word in words[i : i + 4])
    plain = understood(words_of(question), DATA)
    is_read = got.read_as != "" and (reading.values != plain.values or reading.topic is not plain.topic)
    is_told = (
        _is_said(word, {**reading.values, "read as": got.read_as})  # two values of one option stand there, side by side
        or _is_part_of_a_phrase(word, words)
        or word in re.findall(r"[\w-]+", got.read_as)
        or word in _words_of_rules(got)
    )
    assert is_read or is_signal or word in CHATTER or word in question or is_told


def _words_of_rules(got: Answer) -> set[str]:
    """The words of the rules that an answer shows; what none of them has is told as not in them."""
    groups = got.found.groups if isinstance(got.found, Found) else []
    shown = [entry.rule["statement"].casefold() for entry, _ in groups if entry.rule is not None]
    return set(re.findall(r"[\w-]+", " ".join(shown)))


def _is_said(word: str, values: dict[str, str]) -> bool:
    """Whether it means what was said already: ``wet`` beside old brake fluid."""
    meant = {DATA.words(d, c).get(word, "").casefold() for d, cs in HOW.items() for c in cs} | {word}
    told = [value.casefold() for value in values.values()]
    return any(one and (one in value or value in one) for one in meant for value in told)


def _is_part_of_a_phrase(word: str, words: list[str]) -> bool:
    """Whether it and its neighbours are one phrase of a vocabulary: ``dry steel`` is a condition."""
    line = f" {' '.join(words)} "
    phrases = (p for d, cs in HOW.items() for c in cs for p in DATA.words(d, c) if " " in p and word in p.split())
    return any(f" {phrase} " in line for phrase in phrases)


def test_no_word_that_says_how_is_a_word_that_says_no_more() -> None:
    how = {w for d, cs in HOW.items() for c in cs for w in DATA.words(d, c) if w.isalpha()} | TURNING
    for topic in TOPICS:
        assert {w for w in how if topic.signal((w,), 0)} <= SAY_NO_MORE, topic
