"""A line that a rule answers: every word of it stands in the rule, and nothing that turns another is passed over."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

import gaugeblock
from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.found import Found
from gaugeblock.plain.answer import answer
from gaugeblock.plain.ruled import MOST

QUESTIONS = tomllib.loads((Path(__file__).parent / "rules_questions.toml").read_text(encoding="utf-8"))["question"]
RULED = [q["ask"] for q in QUESTIONS if "rules" in q]


@pytest.mark.parametrize("line", RULED)
def test_a_rule_is_shown_whole_with_who_says_it(line: str) -> None:
    found = gaugeblock.ask(line)
    assert isinstance(found, Found)
    rules = [entry.rule for entry, _ in found.groups]
    assert 0 < len(rules) <= MOST
    text = " ".join(found.text(80, whole=True).split())
    assert all(rule is not None for rule in rules)
    assert rules[0] is not None
    if len(rules) <= 4:
        assert rules[0]["statement"] in text
        assert any(f"{mark}." in text.casefold() for mark in ("from memory", "read", "quoted", "was found"))


@pytest.mark.parametrize("line", RULED)
@pytest.mark.parametrize("word", ["purple", "not", "titanium", "without"])
def test_a_word_that_no_rule_has_or_that_turns_another_is_refused_or_told(line: str, word: str) -> None:
    try:
        got = answer(f"{line} {word}")
    except InputError:
        return
    assert word not in ("not", "without")
    told = (got.read_as.partition(said)[2] for said in ("not in them: ", "not understood: ", "looked at: "))
    assert any(word in re.findall(r"[\w-]+", named) for named in told)


@pytest.mark.parametrize("line", ["1 inch bar", "1 3/4 pipe", "3 inch relay", "relay"])
def test_numbers_and_one_word_alone_are_no_question_of_a_rule(line: str) -> None:
    with pytest.raises(GaugeblockError):
        gaugeblock.ask(line)
