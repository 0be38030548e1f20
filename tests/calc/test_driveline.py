"""Properties of the driveline formulas: limits, inverses, symmetry, arrays as scalars."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.calc import axles
from gaugeblock.calc import driveline as calc

sizes = st.floats(0.005, 0.2)
torques = st.floats(1.0, 1e5)
angles = st.floats(0.0, math.radians(45))


@given(sizes, torques)
def test_stress_and_torque_are_inverses(diameter: float, torque: float) -> None:
    stress = calc.torsional_shear_stress(torque, diameter)
    assert calc.torque_from_shear_stress(stress, diameter) == pytest.approx(torque)


@given(torques, st.floats(5e7, 9e8), st.floats(0.0, 0.3))
def test_the_least_diameter_stands_at_the_stress_asked_whatever_its_bore(
    torque: float, stress: float, bore: float
) -> None:
    diameter = axles.least_diameter(torque, stress, bore)
    assert diameter > bore
    # J / r of a thin wall loses digits: compare the diameters that stress and torque agree on
    assert diameter * (diameter**4 - bore**4) == pytest.approx(diameter**2 * 16 * torque / (math.pi * stress), rel=1e-6)
    both = axles.least_diameter(np.array([torque, torque]), stress, np.array([bore, 0.0]))
    assert both.tolist() == pytest.approx([diameter, (16 * torque / (math.pi * stress)) ** (1 / 3)])


@pytest.mark.parametrize(
    ("ratio", "high"),
    [(2.0, 1.0), (1.5, 2.0), (1.1, 0.5), (1.25, 4.0)],
)
def test_a_fillet_has_the_peak_of_the_published_polynomials(ratio: float, high: float) -> None:
    """Its four columns, put together by their powers of the root of h / r."""
    d = 0.03
    big = ratio * d
    h = (big - d) / 2
    root, y = high**0.5, 1 - 1 / ratio
    rows = ((0.905, 0.783, -0.075), (-0.437, -1.969, 0.553), (1.557, 1.073, -0.578), (-1.061, 0.171, 0.086))
    peak = sum(c * root**i * y**n for n, row in enumerate(rows) for i, c in enumerate(row))
    assert axles.fillet_concentration_torsion(big, d, h / high) == pytest.approx(peak)


@given(sizes, torques, st.floats(0.0, 0.95))
def test_a_bore_never_lowers_the_stress(diameter: float, torque: float, share: float) -> None:
    solid = calc.torsional_shear_stress(torque, diameter)
    assert calc.torsional_shear_stress(torque, diameter, share * diameter) >= solid * (1 - 1e-12)


@given(sizes, torques)
def test_doubling_the_diameter_divides_the_stress_by_eight(diameter: float, torque: float) -> None:
    assert calc.torsional_shear_stress(torque, diameter) == pytest.approx(
        8 * calc.torsional_shear_stress(torque, 2 * diameter)
    )


@given(sizes, torques, st.floats(0.1, 3.0))
def test_twist_is_stress_times_length_over_modulus_and_radius(diameter: float, torque: float, length: float) -> None:
    stress = calc.torsional_shear_stress(torque, diameter)
    assert calc.angle_of_twist(torque, length, 80e9, diameter) == pytest.approx(stress * length / (80e9 * diameter / 2))


def test_distortion_energy_is_below_the_axle_rule_by_under_four_percent() -> None:
    ratio = calc.torsional_yield_distortion_energy(1.0) / calc.torsional_yield_axle_practice(1.0)
    assert 0.96 < ratio < 0.97


@given(angles)
def test_a_joint_in_line_turns_evenly_and_its_swing_is_greatest_less_least(angle: float) -> None:
    fast, slow = calc.joint_speed_ratio(angle, 0.0), calc.joint_speed_ratio(angle, math.pi / 2)
    assert fast == pytest.approx(1 / math.cos(angle))
    assert slow == pytest.approx(math.cos(angle))
    assert calc.joint_speed_swing(angle) == pytest.approx(fast - slow, abs=1e-12)


@given(angles)
def test_one_turn_in_is_one_turn_out(angle: float) -> None:
    """The mean of output over input, taken over output time, is one: the integral of the ratio over a turn is 2 pi."""
    steps = (np.arange(2000) + 0.5) * 2 * math.pi / 2000
    assert float(np.mean(calc.joint_speed_ratio(angle, steps))) == pytest.approx(1.0, abs=1e-6)


@given(angles, angles)
def test_equal_joints_cancel_in_phase_and_the_order_does_not_matter(first: float, second: float) -> None:
    assert calc.pair_speed_swing(first, first) == 0
    assert calc.pair_speed_swing(first, second) == pytest.approx(calc.pair_speed_swing(second, first), abs=1e-12)


@given(st.floats(math.radians(0.5), math.radians(20)))
def test_wrong_phasing_about_doubles_the_swing_of_one_joint(angle: float) -> None:
    ratio = calc.pair_speed_swing_wrong_phase(angle, angle) / calc.joint_speed_swing(angle)
    assert 2.0 <= ratio < 2.01


def test_a_joint_beside_one_in_line_swings_as_if_alone() -> None:
    angle = math.radians(12)
    alone = calc.joint_speed_swing(angle)
    assert calc.pair_speed_swing(angle, 0.0) == pytest.approx(alone)
    assert calc.pair_speed_swing_wrong_phase(angle, 0.0) == pytest.approx(alone)


@given(angles, angles)
def test_the_true_angle_is_not_less_than_either_view(side: float, top: float) -> None:
    true = calc.true_joint_angle(side, top)
    assert true >= max(side, top) - 1e-12


def test_carbon_equivalent_of_alloying_elements() -> None:
    assert calc.carbon_equivalent(0.40, 0.0) == 0.40
    assert calc.carbon_equivalent(0.40, 0.6, 1.0, 0.25, 0.25, 1.5, 0.3) == pytest.approx(0.4 + 0.1 + 0.3 + 0.12)


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        (calc.polar_second_moment, (0.03, 0.01)),
        (calc.torsional_shear_stress, (1500.0, 0.03, 0.01)),
        (calc.angle_of_twist, (1500.0, 0.8, 80e9, 0.03, 0.0)),
        (calc.joint_speed_ratio, (0.2, 0.7)),
        (calc.joint_speed_swing, (0.2,)),
        (calc.pair_speed_swing, (0.2, 0.15)),
        (calc.pair_speed_swing_wrong_phase, (0.2, 0.15)),
        (calc.true_joint_angle, (0.1, 0.05)),
        (calc.spline_form_clearance, (0.04,)),
        (calc.spline_diameter, (35.0, 945.0, 1.0)),
        (calc.revolutions_per_mile, (0.63,)),
    ],
)
def test_arrays_answer_as_scalars_do(function: object, arguments: tuple[float, ...]) -> None:
    assert callable(function)
    scalar = function(*arguments)
    arrays = function(*(np.full(3, a) for a in arguments))
    assert arrays.shape == (3,)
    assert arrays == pytest.approx(np.full(3, scalar), rel=1e-12)


def test_the_planes_of_two_joints_by_shafts_along_the_edges_of_a_cube() -> None:
    """Shafts along (1, 0, 0), (1, 1, 0) and (1, 0, 1): planes square to (0, 0, 1) and (1, -1, -1)."""
    eighth = math.pi / 4
    got = calc.joint_plane_angle((0.0, 0.0), (0.0, eighth), (eighth, 0.0))
    assert got == pytest.approx(math.acos(3**-0.5), rel=1e-12)
    assert calc.joint_plane_angle((0.0, 0.0), (0.0, eighth), (0.0, -eighth)) == pytest.approx(0.0, abs=1e-12)
    assert calc.joint_plane_angle((0.0, eighth), (0.0, eighth), (eighth, 0.0)) == 0.0


@given(angles, angles, st.floats(0.0, math.pi / 2))
@settings(max_examples=30, deadline=None)
def test_two_joints_in_any_planes_swing_as_two_cardan_joints_turned_one_after_the_other(
    first: float, second: float, apart: float
) -> None:
    """By the angles themselves: the shaft between turns by atan2(sin, cos b cos), and its yoke stands in line."""
    turned = np.linspace(0.0, math.pi, 20001)
    behind = np.unwrap(np.arctan2(np.sin(turned), math.cos(first) * np.cos(turned)))
    at = behind - apart + math.pi / 2
    out = np.unwrap(np.arctan2(np.sin(at), math.cos(second) * np.cos(at)))
    speed = np.gradient(out, turned)[1:-1]
    swing = calc.pair_speed_swing_in_planes(first, second, apart)
    assert swing == pytest.approx(float(speed.max() - speed.min()), rel=2e-3, abs=1e-5)
    many = calc.pair_speed_swing_in_planes(np.array([first, first]), second, np.array([apart, 0.0]), 0.0)
    assert many.tolist() == pytest.approx([swing, calc.pair_speed_swing(first, second)], rel=1e-3, abs=1e-5)
    # a yoke that is offset is planes that stand otherwise
    assert calc.pair_speed_swing_in_planes(first, second, apart, 0.1) == pytest.approx(
        calc.pair_speed_swing_in_planes(first, second, apart - 0.1), abs=1e-12
    )


@given(angles, angles)
def test_joints_a_quarter_turn_out_swing_as_their_planes_do(first: float, second: float) -> None:
    wrong = calc.pair_speed_swing_in_planes(first, second, 0.0, math.pi / 2)
    assert calc.pair_speed_swing_wrong_phase(first, second) == pytest.approx(wrong, rel=1e-3, abs=1e-5)


def test_the_planes_of_many_shafts_are_those_of_each() -> None:
    rows = [(0.0, 0.0, 0.1, 0.2, 0.3, -0.1), (0.1, 0.2, 0.1, 0.2, 0.3, -0.1), (0.1, 0.0, -0.1, 0.3, 0.05, 0.0)]
    alone = [calc.joint_plane_angle((a, b), (c, d), (e, f)) for a, b, c, d, e, f in rows]
    a, b, c, d, e, f = (np.array(column) for column in zip(*rows, strict=True))
    assert calc.joint_plane_angle((a, b), (c, d), (e, f)).tolist() == pytest.approx(alone, abs=1e-12)
    assert alone[1] == 0.0
    assert 0.0 < min(alone[0], alone[2]) <= max(alone) <= math.pi / 2
