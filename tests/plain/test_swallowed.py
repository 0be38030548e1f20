"""No pattern of an option takes in a word that it does not name: such a word would be dropped unread."""

from __future__ import annotations

import re

import pytest

from gaugeblock import domains
from gaugeblock.answer.asking import Shaped, Topic

LOOKED_AT = re.compile(r"\(\?<?[=!](?:[^()]|\([^()]*\))*\)")  # what is only looked at is read for itself
ANY_WORD = re.compile(r"(?:^|[ (|:])(?:\[[^\]]*a-z[^\]]*\]|\\w|\\S|\[\^[^\]]*\]|\.)(?:[+*]|\{)")
TOPICS: list[Topic] = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
PATTERNS = sorted(
    {
        (topic.noun, key, reader._pattern)
        for topic in TOPICS
        for key, readers in topic.slots.items()
        for reader in readers
        if isinstance(reader, Shaped)
    }
)


def swallows(pattern: str) -> bool:
    return ANY_WORD.search(LOOKED_AT.sub("", pattern)) is not None


def test_patterns_are_seen() -> None:
    assert len(PATTERNS) > 300
    assert all(map(swallows, (r"of [a-z]+ it", r"(?:\w+ )?sits", "(?: [a-z]+){0,8}? back")))
    assert not any(map(swallows, (r"rectang\w+", r"(?P<n>[1-9])(?= (?:[a-z]+ )?fans?)")))


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.noun)
def test_the_own_words_of_a_topic_are_named(topic: Topic) -> None:
    assert not swallows(topic.signals), topic.noun


@pytest.mark.parametrize(("noun", "key", "pattern"), PATTERNS)
def test_a_pattern_takes_in_only_words_that_it_names(noun: str, key: str, pattern: str) -> None:
    assert not swallows(pattern), (noun, key)
