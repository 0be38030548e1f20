"""Formulas as a book prints them, by which no answer of the program works: tests check other ways with them."""

from __future__ import annotations


def fatigue_concentration(concentration: float, notch_sensitivity: float) -> float:
    """Fatigue stress concentration factor: 1 + q (Kt - 1); q from 0 to 1.

    Source: Shigley's Mechanical Engineering Design, Eq. 6-32; its problem 7-2 has Kt 1.9, q 0.90.

    >>> round(fatigue_concentration(1.9, 0.90), 2)
    1.81
    """
    return 1 + notch_sensitivity * (concentration - 1)


def extrados_index(bend_ratio_: float) -> float:
    """Pressure design index of the outside of a bend: (4k + 1)/(4k + 2). Source as ``intrados_index``."""
    return (4 * bend_ratio_ + 1) / (4 * bend_ratio_ + 2)


def barlow_pressure(stress_pa: float, wall_m: float, outside_diameter_m: float) -> float:
    """Pressure, Pa, at a hoop stress by Barlow's formula: 2 S t / OD. Thin wall, straight, sound; no safety factor."""
    return 2 * stress_pa * wall_m / outside_diameter_m


def simple_beam_deflection(force_n: float, span_m: float, modulus_pa: float, second_moment_m4: float) -> float:
    """Deflection under a force at the middle of a simply supported beam, m: F L^3 / (48 E I). Small deflection."""
    return force_n * span_m**3 / (48 * modulus_pa * second_moment_m4)


def cantilever_tip_force(deflection_m: float, length_m: float, modulus_pa: float, second_moment_m4: float) -> float:
    """Force at the tip of a cantilever that deflects it so far, N: 3 E I d / L^3."""
    return 3 * modulus_pa * second_moment_m4 * deflection_m / length_m**3


def planes_factor_shielded(
    emissivity: float, other_emissivity: float, shield_emissivity: float, shield_other: float
) -> float:
    """Grey factor of two planes with one shield between; the shield's two sides may differ.

    >>> round(planes_factor_shielded(0.3, 0.8, 0.04, 0.04), 5)
    0.01902
    """
    return 1.0 / (1.0 / emissivity + 1.0 / other_emissivity - 1.0 + 1.0 / shield_emissivity + 1.0 / shield_other - 1.0)


def stress_if_held(modulus_pa: float, growth_m: float, length_m: float) -> float:
    """Stress in Pa of a straight part held at both ends: E dL / L. Range: elastic, no buckling.

    >>> round(stress_if_held(29e6, 0.312, 300))
    30160
    """
    return modulus_pa * growth_m / length_m
