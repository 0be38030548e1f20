"""Hangers of a run: what holds it is its weight, wherever it is measured from and from whichever end."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.calc import exhaust
from gaugeblock.calc.exhaust import G

# places on a grid: loads fall on supports, on ends and between, and the ends hang over
supports = st.lists(st.integers(4, 26), min_size=2, max_size=6, unique=True)
masses = st.dictionaries(st.integers(0, 30), st.floats(0.0, 20.0), max_size=5)


@given(supports, masses, st.floats(0.0, 6.0), st.integers(-40, 40))
def test_the_supports_carry_the_weight_and_nothing_turns(at, hung, per, shift):
    ends, places = (0.0, 3.0), [x / 10 for x in at]
    loads = {x / 10: m for x, m in hung.items()}
    got = exhaust.hanger_loads(ends, per, loads, places)
    assert len(got) == len(at)
    total = per * 3.0 + sum(loads.values())
    assert sum(got) == pytest.approx(total * G, abs=1e-6)
    turning = sum(f * x for f, x in zip(got, sorted(places), strict=True))
    assert turning == pytest.approx((per * 3.0 * 1.5 + sum(m * x for x, m in loads.items())) * G, abs=1e-6)
    moved = exhaust.hanger_loads(
        (shift, 3.0 + shift), per, {x + shift: m for x, m in loads.items()}, [x + shift for x in places]
    )
    assert moved == pytest.approx(got, abs=1e-6)
    back = exhaust.hanger_loads((-3.0, 0.0), per, {-x: m for x, m in loads.items()}, [-x for x in places])
    assert back[::-1] == pytest.approx(got, abs=1e-6)


def test_what_hangs_over_is_borne_by_the_ends():
    """Two supports at 1 and 2 of a run from 0 to 4: statics alone."""
    first, last = exhaust.hanger_loads((0.0, 4.0), 2.0, {0.5: 1.0, 3.0: 4.0}, [1.0, 2.0])
    assert last == pytest.approx((8.0 * (2.0 - 1.0) + 1.0 * (0.5 - 1.0) + 4.0 * (3.0 - 1.0)) * G)
    assert first == pytest.approx(13.0 * G - last)
    with pytest.raises(ValueError, match="swings"):
        exhaust.hanger_loads((0.0, 4.0), 2.0, {}, [1.0, 1.0])


def test_a_mass_over_a_support_hangs_on_that_support_alone():
    for place in (0.0, 1.0, 2.0, 3.0):
        got = exhaust.hanger_loads((0.0, 3.0), 0.0, {place: 5.0}, [0.0, 1.0, 2.0, 3.0])
        assert got == pytest.approx([5.0 * G * (x == place) for x in (0.0, 1.0, 2.0, 3.0)], abs=1e-9)


def test_four_even_spans_under_an_even_weight():
    """The table of continuous beams: 11/28, 32/28, 26/28, 32/28, 11/28 of a span's weight."""
    got = exhaust.hanger_loads((0.0, 4.0), 7.0, {}, [0.0, 1.0, 2.0, 3.0, 4.0])
    assert got == pytest.approx([7.0 * G * n / 28 for n in (11, 32, 26, 32, 11)])
