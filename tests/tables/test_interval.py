"""Intervals in key cells: the grammar, what they hold, and when two overlap."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.interval import Interval, parse_interval

INCH = Fraction(254, 10000)


def interval(cell: str) -> Interval:
    got = parse_interval(cell)
    assert got is not None
    return got


def test_any_is_no_interval() -> None:
    assert parse_interval("any") is None


@pytest.mark.parametrize(
    ("cell", "inside", "outside"),
    [
        ("0.375 in", ["3/8"], ["0.374", "0.376"]),
        ("1/4 to 3/4 in", ["1/4", "1/2", "3/4"], ["0.249", "0.751"]),
        ("over 3/4 to 1 1/2 in", ["0.751", "1.5"], ["3/4", "1.501"]),
        ("to 5/8 in", ["5/8", "0", "0.1"], ["0.626"]),
        ("over 5/8 in", ["0.626", "100"], ["5/8", "0.1"]),
    ],
)
def test_what_an_interval_holds(cell: str, inside: list[str], outside: list[str]) -> None:
    def sizes(texts: list[str]) -> list[Fraction]:
        return [Fraction(t) * INCH for t in texts]

    assert all(interval(cell).holds(size) for size in sizes(inside))
    assert not any(interval(cell).holds(size) for size in sizes(outside))


@pytest.mark.parametrize(
    "cell",
    [
        "",
        "in",
        "to in",
        "over in",
        "3/4 to 1/4 in",
        "over 1 to 1 in",
        "1/4-3/4 in",
        "0,25 in",
        "1/4 to 3/4 inch",
        "1/4 In",
        "1/4  to 3/4 in",
        "1/4 in ",
        "8-Mar",
        "under 1/4 in",
        "1/4 to",
        "1/0 in",
    ],
)
def test_another_notation_is_refused(cell: str) -> None:
    with pytest.raises(GaugeblockError):
        parse_interval(cell)


@pytest.mark.parametrize(
    ("a", "b", "overlap"),
    [
        ("1/4 to 3/4 in", "over 3/4 to 1 in", False),
        ("1/4 to 3/4 in", "3/4 to 1 in", True),
        ("1/4 to 3/4 in", "0.5 in", True),
        ("to 16 mm", "over 16 mm", False),
        ("to 16 mm", "over 15 mm", True),
        ("1 in", "25.4 mm", True),
        ("to 1 in", "over 25.4 mm", False),
        ("to 1 in", "to 100 degF", False),
    ],
)
def test_when_two_overlap(a: str, b: str, overlap: bool) -> None:
    assert interval(a).overlaps(interval(b)) is overlap
    assert interval(b).overlaps(interval(a)) is overlap


ends = st.tuples(st.integers(0, 40), st.integers(0, 40)).map(sorted).filter(lambda p: p[0] < p[1])
cells = st.tuples(st.sampled_from(["", "over "]), ends).map(lambda p: f"{p[0]}{p[1][0]} to {p[1][1]} mm")


@given(cells, cells)
def test_two_overlap_just_when_some_size_lies_in_both(a: str, b: str) -> None:
    quarters = [Fraction(n, 4) / 1000 for n in range(-4, 200)]
    shared = any(interval(a).holds(size) and interval(b).holds(size) for size in quarters)
    assert interval(a).overlaps(interval(b)) is shared
