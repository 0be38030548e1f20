"""Tube formulas: inverses, limits, directions, and that arrays answer as scalars do."""

from __future__ import annotations

import inspect
import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from gaugeblock.calc import tubes as calc

OD = st.floats(0.003, 0.2)
SHARE = st.floats(0.01, 0.45)  # wall over OD
RATIO = st.floats(0.6, 50.0)  # bend ratio
ANGLE = st.floats(0.01, 3.0)


@given(OD, SHARE, RATIO)
def test_the_outer_wall_thins_and_the_inner_wall_thickens(od: float, share: float, ratio: float) -> None:
    wall = share * od
    outer = calc.outer_wall_thinned(wall, od, ratio * od)
    inner = calc.inner_wall_thickened(wall, od, ratio * od)
    assert outer < wall < inner
    # constant volume: the wall times its stretched length is the wall times the centre-line length
    assert math.isclose(outer * (1 + calc.outer_fibre_strain(od, ratio * od)), wall, rel_tol=1e-12)
    assert math.isclose(inner * (1 - calc.outer_fibre_strain(od, ratio * od)), wall, rel_tol=1e-12)


@given(OD, RATIO, RATIO)
def test_a_larger_radius_strains_less(od: float, a: float, b: float) -> None:
    assume(a < b)
    assert calc.outer_fibre_strain(od, a * od) > calc.outer_fibre_strain(od, b * od)


@given(OD, RATIO)
def test_strain_is_half_over_the_bend_ratio(od: float, ratio: float) -> None:
    assert math.isclose(calc.outer_fibre_strain(od, ratio * od), 0.5 / ratio, rel_tol=1e-12)


@given(RATIO, ANGLE)
def test_the_arc_is_shorter_than_its_corner(radius: float, angle: float) -> None:
    assert calc.bend_gain(radius, angle) > 0
    two_halves = 2 * calc.developed_length(radius, angle / 2)
    assert math.isclose(two_halves, calc.developed_length(radius, angle), rel_tol=1e-12)


def test_the_gain_of_a_right_angle_is_the_known_share() -> None:
    assert round(calc.bend_gain(1.0, math.pi / 2), 4) == 0.4292


@given(OD, SHARE)
def test_a_tube_is_a_round_bar_less_its_bore(od: float, share: float) -> None:
    bore = calc.bore(od, share * od)
    for of in (calc.area, calc.second_moment, calc.polar_second_moment, calc.plastic_modulus):
        assert math.isclose(of(od, bore), of(od, 0.0) - of(bore, 0.0), rel_tol=1e-9)
    assert calc.section_modulus(od, bore) < calc.plastic_modulus(od, bore) < 1.7 * calc.section_modulus(od, bore)


@given(OD, st.floats(0.1, 10))
def test_section_properties_scale_with_their_powers(od: float, k: float) -> None:
    bore = 0.8 * od
    for of, power in ((calc.area, 2), (calc.second_moment, 4), (calc.section_modulus, 3), (calc.plastic_modulus, 3)):
        assert math.isclose(of(k * od, k * bore), k**power * of(od, bore), rel_tol=1e-9)


@given(OD, st.floats(0.01, 0.2), st.floats(1.0, 10.0), st.floats(1e8, 6e8))
def test_springback_lies_between_none_and_all_and_grows_with_strength(
    od: float, share: float, ratio: float, strength: float
) -> None:
    modulus, bore = 200e9, calc.bore(od, share * od)
    for weak, strong in (
        (
            calc.springback_sheet(ratio * od, od, strength, modulus),
            calc.springback_sheet(ratio * od, od, 1.2 * strength, modulus),
        ),
        (
            calc.springback_tube(ratio * od, od, bore, strength, modulus),
            calc.springback_tube(ratio * od, od, bore, 1.2 * strength, modulus),
        ),
    ):
        assert 0 < strong < weak < 1
        assert 0 < calc.springback_angle(1.0, weak) < calc.springback_angle(1.0, strong) < 1


def test_a_section_at_the_elastic_limit_springs_back_wholly() -> None:
    depth = calc.elastic_bend_thickness(250e6, 2.0, 200e9)
    assert calc.springback_sheet(2.0, depth, 250e6, 200e9) == pytest.approx(0.0, abs=1e-12)


_POSITIVE = [0.0254, 0.0381, 0.0445]


@pytest.mark.parametrize(
    "name",
    sorted(n for n, f in inspect.getmembers(calc, inspect.isfunction) if f.__module__ == calc.__name__),
)
def test_arrays_answer_as_scalars_do(name: str) -> None:
    function = getattr(calc, name)
    count = len(inspect.signature(function).parameters)
    rows = [[v * (1 + 0.3 * i) / (1 + i) for i in range(count)] for v in _POSITIVE]
    arrays = function(*(np.array(column) for column in zip(*rows, strict=True)))
    assert arrays.shape == (3,)
    np.testing.assert_allclose(arrays, [function(*row) for row in rows], rtol=1e-12)
