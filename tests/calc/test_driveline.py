"""Properties of the driveline formulas: limits, inverses, symmetry, arrays as scalars."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.calc import driveline as calc

sizes = st.floats(0.005, 0.2)
torques = st.floats(1.0, 1e5)
angles = st.floats(0.0, math.radians(45))


@given(sizes, torques)
def test_stress_and_torque_are_inverses(diameter: float, torque: float) -> None:
    stress = calc.torsional_shear_stress(torque, diameter)
    assert calc.torque_from_shear_stress(stress, diameter) == pytest.approx(torque)


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


def test_a_tube_whirls_faster_than_a_bar_of_its_outside_diameter() -> None:
    solid = calc.critical_speed(1.2, 200e9, 7850.0, 0.0762)
    tube = calc.critical_speed(1.2, 200e9, 7850.0, 0.0762, 0.07)
    assert solid < tube < solid * 2**0.5


@given(st.floats(0.5, 2.5))
def test_critical_speed_falls_with_the_square_of_length(length: float) -> None:
    assert calc.critical_speed(length, 200e9, 7850.0, 0.07) == pytest.approx(
        4 * calc.critical_speed(2 * length, 200e9, 7850.0, 0.07)
    )


def test_bending_and_torsion_each_alone() -> None:
    alone = calc.shaft_diameter_bending_torsion(2.0, 1.0, 0.0, 200e6, 1000.0, 400e6)
    assert calc.torsional_shear_stress(1000.0, alone) == pytest.approx(400e6 / 2.0 / 3**0.5)
    bent = calc.shaft_diameter_bending_torsion(2.0, 1.5, 300.0, 200e6, 0.0, 400e6)
    assert 1.5 * 300.0 / (math.pi * bent**3 / 32) == pytest.approx(100e6)


@given(st.integers(6, 100), st.sampled_from([2.5, 8, 12, 24, 32]))
def test_spline_diameters_stand_in_order(teeth: int, pitch: float) -> None:
    per_m = pitch / 0.0254
    sizes_m = [calc.spline_diameter(teeth, per_m, addend) for addend in (-1.8, -1.35, -1.0, 0.0, 1.0, 1.35, 1.8)]
    assert sizes_m == sorted(sizes_m)
    assert sizes_m[3] == pytest.approx(calc.spline_pitch_diameter(teeth, per_m))


@pytest.mark.parametrize(("diameter_in", "clearance_in"), [(1.0, 0.002), (5.0, 0.005), (20.0, 0.010)])
def test_form_clearance_has_a_floor_and_a_ceiling(diameter_in: float, clearance_in: float) -> None:
    assert calc.spline_form_clearance(diameter_in * 0.0254) == pytest.approx(clearance_in * 0.0254)


def test_spline_shears_scale_with_their_factors() -> None:
    plain = calc.spline_shear_under_roots(2000.0, 0.035)
    assert plain == calc.torsional_shear_stress(2000.0, 0.035)
    assert calc.spline_shear_under_roots(2000.0, 0.035, 0.0, 2.8, 0.5) == pytest.approx(plain * 5.6)
    tooth = calc.spline_tooth_shear(2000.0, 0.037, 35, 0.04, 0.0017)
    assert calc.spline_tooth_shear(2000.0, 0.037, 35, 0.08, 0.0017) == pytest.approx(tooth / 2)
    assert calc.spline_side_pressure(2000.0, 0.037, 35, 0.04, 0.0017) == pytest.approx(tooth / 2)


def test_an_open_differential_halves_the_axle_torque() -> None:
    assert calc.axle_torque(400.0, 3.0, 4.1, 2.0) == pytest.approx(400 * 3 * 4.1 * 2 / 2)
    assert calc.axle_torque(400.0, 3.0, 4.1, 2.0, share=1.0) == pytest.approx(400 * 3 * 4.1 * 2)
    assert calc.traction_torque(5000.0, 0.9, 0.35) == pytest.approx(1575.0)


def test_backlash_moves_with_the_shim_by_the_ratio_measured() -> None:
    assert calc.backlash_after_shim(0.011, -0.005, 0.8) == pytest.approx(0.007)


def test_carbon_equivalent_of_alloying_elements() -> None:
    assert calc.carbon_equivalent(0.40, 0.0) == 0.40
    assert calc.carbon_equivalent(0.40, 0.6, 1.0, 0.25, 0.25, 1.5, 0.3) == pytest.approx(0.4 + 0.1 + 0.3 + 0.12)


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        (calc.polar_second_moment, (0.03, 0.01)),
        (calc.torsional_shear_stress, (1500.0, 0.03, 0.01)),
        (calc.angle_of_twist, (1500.0, 0.8, 80e9, 0.03, 0.0)),
        (calc.critical_speed, (1.1, 205e9, 7850.0, 0.076, 0.07)),
        (calc.joint_speed_ratio, (0.2, 0.7)),
        (calc.joint_speed_swing, (0.2,)),
        (calc.pair_speed_swing, (0.2, 0.15)),
        (calc.pair_speed_swing_wrong_phase, (0.2, 0.15)),
        (calc.true_joint_angle, (0.1, 0.05)),
        (calc.spline_form_clearance, (0.04,)),
        (calc.spline_diameter, (35.0, 945.0, 1.0)),
        (calc.critical_speed_central_mass, (0.6, 200e9, 7.854e-9, 1.0)),
        (calc.fatigue_concentration, (1.9, 0.9)),
        (calc.revolutions_per_mile, (0.63,)),
    ],
)
def test_arrays_answer_as_scalars_do(function: object, arguments: tuple[float, ...]) -> None:
    assert callable(function)
    scalar = function(*arguments)
    arrays = function(*(np.full(3, a) for a in arguments))
    assert arrays.shape == (3,)
    assert arrays == pytest.approx(np.full(3, scalar), rel=1e-12)
