"""A number of so many digits is a length where its unit is said; bare it may be the number of a steel."""

from __future__ import annotations

import pytest

from gaugeblock.answer.asking import amount
from gaugeblock.answer.said_units import millimetres as in_millimetres
from gaugeblock.tables.load import refdata


@pytest.mark.parametrize(
    ("words", "found"),
    [("4340 mm", ["4340 mm"]), ("4340", []), ("434", ["434 in"]), ("4130 in", ["4130 in"]), (".120", [".120 in"])],
)
def test_a_steels_number_is_no_length(words: str, found: list[str]) -> None:
    hits = amount("length", bare="in").take(tuple(words.split()), 0, refdata())
    assert [hit.value for hit in hits] == found


@pytest.mark.parametrize(
    ("number", "unit", "millimetres"),
    [
        ("3/4", "in", 19.05),
        ("1-3/4", "in", 44.45),
        ("1 3/4", "in", 44.45),
        (".5", "in", 12.7),
        ("12", "mm", 12),
        ("2", "ft", 609.6),
        ("1.5", "m", 1500),
        ("3", "cm", 30),
        ("-2", "mm", 2),
        ("2/0", "in", 0),
    ],
)
def test_a_length_as_it_is_typed_in_millimetres(number: str, unit: str, millimetres: float) -> None:
    assert in_millimetres(number, unit) == pytest.approx(millimetres)
