"""Whirling of a shaft: how it scales, and two ways to the same speed."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.calc import whirl

lengths = st.floats(0.5, 2.5)
sizes = st.floats(0.03, 0.15)


def test_a_tube_whirls_faster_than_a_bar_of_its_outside_diameter() -> None:
    solid = whirl.critical_speed(1.2, 200e9, 7850.0, 0.0762)
    tube = whirl.critical_speed(1.2, 200e9, 7850.0, 0.0762, 0.07)
    assert solid < tube < solid * 2**0.5


@given(lengths)
def test_critical_speed_falls_with_the_square_of_length(length: float) -> None:
    assert whirl.critical_speed(length, 200e9, 7850.0, 0.07) == pytest.approx(
        4 * whirl.critical_speed(2 * length, 200e9, 7850.0, 0.07)
    )


@settings(max_examples=40, deadline=None)
@given(lengths, sizes, st.floats(0.03, 0.45), st.sampled_from([(200e9, 7850.0), (68.9e9, 2700.0)]))
def test_the_sag_of_a_frame_gives_the_same_speed(
    length: float, od: float, share: float, metal: tuple[float, float]
) -> None:
    """Rayleigh's quotient lies above the exact first mode, and for the sag of a uniform beam by less than 0.2 %."""
    modulus, density = metal
    exact = whirl.critical_speed(length, modulus, density, od, od * (1 - 2 * share))
    sagging = whirl.whirl_by_frame(length, modulus, density, od, od * share)
    assert exact < sagging < exact * 1.002


def test_arrays_answer_as_scalars_do() -> None:
    arguments = (1.1, 205e9, 7850.0, 0.076, 0.07)
    arrays = whirl.critical_speed(*(np.full(3, a) for a in arguments))
    assert arrays == pytest.approx(np.full(3, whirl.critical_speed(*arguments)), rel=1e-12)
