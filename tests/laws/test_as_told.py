"""Every answer of the corpus decides what it decided and tells the numbers it told, until a change is meant."""

from __future__ import annotations

import pytest

from laws.as_told import corpus, holes, kept, told

KEPT = kept()


@pytest.mark.parametrize("line", KEPT)
def test_an_answer_is_as_it_was_last_read(line: str) -> None:
    assert told(line) == KEPT[line], f"{line}: where it was meant, scripts/bless, and read the difference"


def test_every_line_of_the_corpus_is_kept() -> None:
    assert list(KEPT) == corpus(), "scripts/bless"


def test_no_answer_that_is_kept_has_a_hole() -> None:
    assert [line for told_ in KEPT.values() for line in told_ if line.startswith("  hole ")] == []


def test_a_hole_is_seen() -> None:
    broken = "None of it. Take None, and and 1 items ,of 3 source; ; 1 is nan. It is the the end : 12 items, 1 item."
    found = [line.removeprefix("  hole ") for line in holes(broken)]
    assert found == ["None", "and and", "1 items", " ,", "3 source", " ;", "nan", "the the", " :"]
