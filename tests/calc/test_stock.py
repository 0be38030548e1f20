"""Cutting lists: every piece cut once, within the stock; least where it says so, by trying every plan."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.calc import stock


def _fewest(sizes, room):
    """Brute force: fewest bars over all ways to part the pieces (set partitions)."""
    best = len(sizes)

    def part(i, bars):
        nonlocal best
        if len(bars) > best or (len(bars) == best and i < len(sizes)):
            return
        if i == len(sizes):
            best = min(best, len(bars))
            return
        for b in range(len(bars)):
            if bars[b] + sizes[i] <= room + 1e-9:
                part(i + 1, [*bars[:b], bars[b] + sizes[i], *bars[b + 1 :]])
        part(i + 1, [*bars, sizes[i]])

    part(0, [])
    return best


@given(st.lists(st.floats(0.3, 6.0), min_size=1, max_size=8), st.floats(0.0, 0.01))
@settings(max_examples=150, deadline=None)
def test_a_plan_holds_every_piece_once_and_is_least(sizes, kerf):
    pieces = [(f"tube {i}", s) for i, s in enumerate(sizes)]
    got = stock.cut_list(pieces, 6.0, kerf)
    assert sorted(p for bar in got.bars for p in bar.pieces) == sorted(pieces)
    for bar in got.bars:
        used = sum(s for _, s in bar.pieces) + kerf * (len(bar.pieces) - 1)
        assert used <= 6.0 + 1e-6
        assert bar.offcut == pytest.approx(max(0.0, 6.0 - used - kerf), abs=1e-9)
    fewest = _fewest([s + kerf for s in sizes], 6.0 + kerf)
    assert got.optimal
    assert len(got.bars) == fewest


@given(st.lists(st.floats(0.3, 6.0), min_size=1, max_size=8))
@settings(deadline=None)
def test_the_lower_bound_is_never_over_the_fewest(sizes):
    assert stock.least_bars(sizes, 6.0) <= _fewest(sizes, 6.0)


def test_a_better_plan_than_fullest_first_is_found():
    # fullest first takes 3 bars of 10 here, 5 + 4, 4 + 3 + 2 and 2; 2 do, 5 + 3 + 2 and 4 + 4 + 2, by the search
    sizes = [5.0, 4.0, 4.0, 3.0, 2.0, 2.0]
    got = stock.cut_list([(str(i), s) for i, s in enumerate(sizes)], 10.0)
    assert (len(got.bars), got.optimal) == (2, True)
    assert sorted(s for bar in got.bars for _, s in bar.pieces) == sorted(sizes)
    assert "no plan needs fewer" in got.says


def test_the_kerf_is_counted_between_pieces_and_not_after_the_last():
    assert len(stock.cut_list([("a", 3.0), ("b", 3.0)], 6.0, 0.0).bars) == 1
    assert len(stock.cut_list([("a", 3.0), ("b", 3.0)], 6.0, 0.002).bars) == 2
    assert len(stock.cut_list([("a", 3.0), ("b", 2.998)], 6.0, 0.002).bars) == 1
    assert stock.cut_list([("whole", 6.0)], 6.0, 0.002).bars[0].offcut == 0.0


def test_offcuts_are_named():
    got = stock.cut_list([("a", 4.0), ("b", 4.0)], 6.0, 0.002, name="1-3/4 x .120 offcut")
    assert [bar.offcut_name for bar in got.bars] == ["1-3/4 x .120 offcut 1", "1-3/4 x .120 offcut 2"]
    assert [bar.offcut for bar in got.bars] == pytest.approx([1.998, 1.998])
    assert [bar.length for bar in got.bars] == [6.0, 6.0]


def test_pieces_that_do_not_fit_and_lengths_of_nothing_are_refused():
    with pytest.raises(stock.TooLongError, match="hoop"):
        stock.cut_list([("hoop", 6.1)], 6.0)
    with pytest.raises(ValueError, match="over nothing"):
        stock.cut_list([("a", 0.0)], 6.0)
    assert stock.cut_list([], 6.0).bars == ()


def test_a_plan_that_is_not_proved_least_says_so(monkeypatch):
    monkeypatch.setattr(stock, "SEARCH", 10)
    rng = random.Random(3)
    for _ in range(200):
        sizes = [rng.uniform(1.0, 4.0) for _ in range(14)]
        got = stock.cut_list([(str(i), s) for i, s in enumerate(sizes)], 6.0)
        if not got.optimal:
            assert got.least < len(got.bars)
            assert "not ruled out" in got.says
            return
    pytest.fail("every plan was proved least in ten tries")
