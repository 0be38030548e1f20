"""Of a long pattern the part that a line can begin to match: it matches there what the whole one does."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import domains
from gaugeblock.answer.asking import END, Topic
from gaugeblock.answer.patterns import alternatives, part_for

TOPICS: list[Topic] = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
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
