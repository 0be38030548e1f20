"""Every answer of the corpus decides what it decided and tells the numbers it told, until a change is meant."""

from __future__ import annotations

import pytest

from laws.as_told import corpus, kept, told

KEPT = kept()


@pytest.mark.parametrize("line", KEPT)
def test_an_answer_is_as_it_was_last_read(line: str) -> None:
    assert told(line) == KEPT[line], "where it was meant: scripts/bless, and read the difference"


def test_every_line_of_the_corpus_is_kept() -> None:
    assert list(KEPT) == corpus(), "scripts/bless"
