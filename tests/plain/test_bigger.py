"""Two measures side by side: each in the unit of the other, by the inch of 25.4 mm and the degree of 5/9."""

from __future__ import annotations

import pytest

from gaugeblock.plain.bigger import bigger
from gaugeblock.plain.convert import Conversion
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata


def told(line: str) -> list[float] | None:
    got = bigger(words_of(line), refdata())
    if got is None:
        return None
    both = [got.found, got.more[0].found]
    return [float(one.exact) for one in both if isinstance(one, Conversion)]


@pytest.mark.parametrize(
    ("line", "first", "second"),
    [
        ("which is bigger, 19 mm or three-quarter inch, and will one spanner do both", 19 / 25.4, 19.05),
        ("is 8mm the same as 5/16", 8 / 25.4, 7.9375),
        ("3/8 or 10mm which is bigger", 9.525, 10 / 25.4),
        ("is m8 bigger than 5/16", 8 / 25.4, 7.9375),
        ("which is hotter 250 f or 120 c", (250 - 32) / 1.8, 248),
        ("manual says 180 lb in, is that more or less than 20 nm", 180 * 0.112984829, 20 / 0.112984829),
        ("the book says 35 foot pounds is that more than 50 nm", 35 * 1.3558179483, 50 / 1.3558179483),
        ("is 3 mm thicker or thinner than 1/8", 3 / 25.4, 3.175),
        ("which is heavier 5 kg or 12 lb", 5 / 0.45359237, 12 * 0.45359237),
    ],
)
def test_each_in_the_unit_of_the_other(line: str, first: float, second: float) -> None:
    assert told(line) == [pytest.approx(first, 1e-8), pytest.approx(second, 1e-8)]


@pytest.mark.parametrize(
    "line",
    [
        "which is bigger 3/8 or 1/2",  # one unit: nothing to convert
        "which is bigger 10 mm or 20 psi",
        "which is stiffer 1.5 x .120 or 1.75 x .095",
        "is m8x1.25 bigger than 5/16-18",
        "is 3/8 grade 8 more than 10 mm 8.8 at 40 nm",
    ],
)
def test_what_is_no_such_question(line: str) -> None:
    assert told(line) is None
