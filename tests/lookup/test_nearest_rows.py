"""Which row is nearest to what was asked: the first keys weigh most, whatever the later ones have."""

from __future__ import annotations

from itertools import product

import pytest

from gaugeblock.lookup import _agreement
from gaugeblock.tables.load import refdata

KEYS = refdata().table("fasteners/friction").keys
WANT = ("a", "b", "c")
# What a cell may be to what is asked: another, left open, the same; better from one to the next.
CELLS = (("x", "any", "a"), ("x", "any", "b"), ("x", "any", "c"))


class _Row:
    def __init__(self, key: tuple[str, ...]) -> None:
        self.key = key


def test_a_row_that_is_nearer_in_an_earlier_key_is_nearer() -> None:
    every = list(product(range(3), repeat=3))
    scores = {
        way: _agreement(_Row(tuple(CELLS[i][n] for i, n in enumerate(way))), list(zip(KEYS, WANT, strict=True)))  # type: ignore[arg-type]
        for way in every
    }
    assert sorted(every, key=scores.__getitem__) == sorted(every)
    assert len({*scores.values()}) == len(every)


@pytest.mark.parametrize("open_key", range(3))
def test_what_was_not_asked_counts_nothing(open_key: int) -> None:
    asked = [(key, None if n == open_key else want) for n, (key, want) in enumerate(zip(KEYS, WANT, strict=True))]
    one, other = (
        _agreement(_Row(tuple(cell if n == open_key else "any" for n in range(3))), asked)  # type: ignore[arg-type]
        for cell in ("x", "any")
    )
    assert one == other
