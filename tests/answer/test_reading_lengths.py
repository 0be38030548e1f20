"""A number of so many digits is a length where its unit is said; bare it may be the number of a steel."""

from __future__ import annotations

import pytest

from gaugeblock.answer.asking import amount
from gaugeblock.tables.load import refdata


@pytest.mark.parametrize(
    ("words", "found"),
    [("4340 mm", ["4340 mm"]), ("4340", []), ("434", ["434 in"]), ("4130 in", ["4130 in"]), (".120", [".120 in"])],
)
def test_a_steels_number_is_no_length(words: str, found: list[str]) -> None:
    hits = amount("length", bare="in").take(tuple(words.split()), 0, refdata())
    assert [hit.value for hit in hits] == found
