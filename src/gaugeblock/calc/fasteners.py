"""Bolted joints: stress area, torque and clamp load, thread shear, wrench adapters. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape.
"""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_PI = 3.141592653589793


def stress_area_unified(major_diameter_m: T, pitch_m: T) -> T:
    """Tensile stress area of a Unified thread, m^2: pi/4 (D - 0.9743 P)^2.

    Source: ASME B1.1 Appendix B as printed in Machinery's Handbook 31, p. 1665 Eq. 9.

    >>> round(stress_area_unified(0.5 * 0.0254, 0.0254 / 13) / 0.0254**2, 4)
    0.1419
    """
    return _PI / 4 * (major_diameter_m - 0.9743 * pitch_m) ** 2


def stress_area_metric(major_diameter_m: T, pitch_m: T) -> T:
    """Tensile stress area of an ISO metric thread, m^2: pi/4 (d - 0.938194 P)^2.

    Source: ISO 898-1 cl. 9.1.6.1 (from memory; the areas of its tables agree).

    >>> round(stress_area_metric(0.010, 0.0015) * 1e6, 1)
    58.0
    """
    return _PI / 4 * (major_diameter_m - 0.938194 * pitch_m) ** 2


def torque_from_preload(nut_factor: T, diameter_m: T, preload_n: T) -> T:
    """Tightening torque in N m for a clamp load: T = K D F.

    Source: Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-27.

    >>> round(torque_from_preload(0.2, 0.75 * 0.0254, 25000 * 4.4482216152605) / 0.1129848290276167)
    3750
    """
    return nut_factor * diameter_m * preload_n


def preload_from_torque(torque_nm: T, nut_factor: T, diameter_m: T) -> T:
    """Clamp load in N that a torque gives: F = T / (K D). Inverse of ``torque_from_preload``."""
    return torque_nm / (nut_factor * diameter_m)


def torque_window(
    low_factor: T, nut_factor: T, high_factor: T, diameter_m: T, preload_n: T, proof_load_n: T
) -> tuple[T, T, T]:
    """Lowest, target and highest setting in N m, from the spread of friction.

    The low end gives the wanted preload when friction is at its lowest. The high end gives it when friction is
    at its highest, but never passes the proof load at the lowest friction; it is not under the target.
    """
    target = torque_from_preload(nut_factor, diameter_m, preload_n)
    low = torque_from_preload(low_factor, diameter_m, preload_n)
    wanted = torque_from_preload(high_factor, diameter_m, preload_n)
    limit = torque_from_preload(low_factor, diameter_m, proof_load_n)
    ns = namespace.of(target, low, wanted, limit)
    if ns.__name__ == "numpy":
        return low, target, ns.maximum(target, ns.minimum(wanted, limit))
    return low, target, max(target, min(wanted, limit))


def torque_from_friction(
    preload_n: T, pitch_m: T, pitch_diameter_m: T, bearing_diameter_m: T, thread_friction: T, bearing_friction: T
) -> T:
    """Tightening torque in N m from pitch and friction coefficients, 60 degree thread.

    T = F/2 [ d2 (tan(lead) + f sec 30)/(1 - f tan(lead) sec 30) + fc dc ].
    Source: Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-24.
    """
    lead = pitch_m / (_PI * pitch_diameter_m)
    sec = 1 / 0.8660254037844387
    thread = pitch_diameter_m * (lead + thread_friction * sec) / (1 - thread_friction * lead * sec)
    return preload_n / 2 * (thread + bearing_friction * bearing_diameter_m)


def adapter_setting(torque_nm: T, wrench_m: T, adapter_m: T, angle_rad: float = 0.0) -> T:
    """Dial setting in N m for a wanted torque through a crow-foot: TW = T L / (L + A cos a).

    ``wrench_m`` is drive centre to grip centre, ``adapter_m`` drive centre to fastener centre; 0 rad points the
    adapter away from the handle, pi/2 is square to it (no correction), pi turns it back.
    Source: TM 1-1500-204-23-9 fig. 8-16 and 8-17; the angle from TM 9-254 para. d(2).

    >>> round(adapter_setting(300.0, 10.0, 4.0))
    214
    """
    from math import cos

    return torque_nm * wrench_m / (wrench_m + adapter_m * cos(angle_rad))


def internal_shear_area(engagement_m: T, pitch_m: T, screw_major_min_m: T, nut_pitch_max_m: T) -> T:
    """Shear area of the tapped thread, m^2: pi Le/P Ds,min [P/2 + 0.57735 (Ds,min - En,max)].

    Source: FED-STD-H28/2B as given in Machinery's Handbook 31, "Thread engagement" (from memory; the areas of a
    published metric table agree).
    """
    return (
        _PI
        * engagement_m
        / pitch_m
        * screw_major_min_m
        * (pitch_m / 2 + 0.57735 * (screw_major_min_m - nut_pitch_max_m))
    )


def external_shear_area(engagement_m: T, pitch_m: T, nut_minor_max_m: T, screw_pitch_min_m: T) -> T:
    """Shear area of the screw thread, m^2: pi Le/P Kn,max [P/2 + 0.57735 (Es,min - Kn,max)]. Source as above."""
    return (
        _PI * engagement_m / pitch_m * nut_minor_max_m * (pitch_m / 2 + 0.57735 * (screw_pitch_min_m - nut_minor_max_m))
    )


class ThreadLimits:
    """Limits of size that thread shear needs, in m."""

    __slots__ = ("nut_minor_max", "nut_pitch_max", "screw_major_min", "screw_pitch_min")

    def __init__(
        self, screw_major_min: float, screw_pitch_min: float, nut_pitch_max: float, nut_minor_max: float
    ) -> None:
        self.screw_major_min = screw_major_min
        self.screw_pitch_min = screw_pitch_min
        self.nut_pitch_max = nut_pitch_max
        self.nut_minor_max = nut_minor_max


def limits_unified(major_diameter_m: float, pitch_m: float) -> ThreadLimits:
    """Class 2A screw and 2B tapped hole, by the tolerance formulas of ASME B1.1 (from memory).

    Range: Unified threads of 1/4 in and up; engagement taken as one diameter.
    """
    d, p = major_diameter_m / 0.0254, pitch_m / 0.0254
    tolerance = 0.0015 * d ** (1 / 3) + 0.0015 * d**0.5 + 0.015 * p ** (2 / 3)
    allowance = 0.3 * tolerance
    pitch_diameter = d - 0.64951905 * p
    return ThreadLimits(
        (d - allowance - 0.06 * p ** (2 / 3)) * 0.0254,
        (pitch_diameter - allowance - tolerance) * 0.0254,
        (pitch_diameter + 1.3 * tolerance) * 0.0254,
        (d - 1.08253175 * p + 0.25 * p - 0.4 * p * p) * 0.0254,
    )


_ISO_STEPS_MM = (0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0)


def limits_metric(major_diameter_m: float, pitch_m: float) -> ThreadLimits:
    """6g screw and 6H tapped hole, by the tolerance formulas of ISO 965-1 (from memory).

    Range: d over 0.99 to 180 mm. ValueError outside it.
    """
    d, p = major_diameter_m * 1000, pitch_m * 1000
    step = next((i for i in range(1, len(_ISO_STEPS_MM)) if d <= _ISO_STEPS_MM[i]), 0)
    if not step or d <= _ISO_STEPS_MM[0]:
        raise ValueError("ISO 965-1 limits cover diameters over 0.99 to 180 mm")
    mean = (_ISO_STEPS_MM[step - 1] * _ISO_STEPS_MM[step]) ** 0.5
    deviation = (15 + 11 * p) / 1000
    major_tolerance = (180 * p ** (2 / 3) - 3.15 / p**0.5) / 1000
    pitch_tolerance = 90 * p**0.4 * mean**0.1 / 1000
    minor_tolerance = (230 * p**0.7 if p >= 1 else 433 * p - 190 * p**1.22) / 1000
    pitch_diameter = d - 0.64951905 * p
    return ThreadLimits(
        (d - deviation - major_tolerance) / 1000,
        (pitch_diameter - deviation - pitch_tolerance) / 1000,
        (pitch_diameter + 1.32 * pitch_tolerance) / 1000,
        (d - 1.08253175 * p + minor_tolerance) / 1000,
    )


def bolt_stiffness(diameter_m: T, stress_area_m2: T, modulus_pa: T, grip_m: T, shank_m: T) -> T:
    """Stiffness of a bolt over its grip, N/m: A At E / (A lt + At ld), A = pi d^2/4, lt = l - ld.

    ``shank_m`` is the plain shank inside the grip, 0 to ``grip_m``; the rest of the grip is thread.
    Source: Shigley's Mechanical Engineering Design, 9th ed., Table 8-7, p. 426.

    >>> area = stress_area_unified(0.5 * 0.0254, 0.0254 / 13)
    >>> round(bolt_stiffness(0.5 * 0.0254, area, 30e6 * 6894.757, 0.845 * 0.0254, 0.0) / 175.1268 / 1e6, 2)
    5.04
    """
    plain = _PI / 4 * diameter_m**2
    return plain * stress_area_m2 * modulus_pa / (plain * (grip_m - shank_m) + stress_area_m2 * shank_m)


def member_stiffness(diameter_m: T, modulus_pa: T, grip_m: T) -> T:
    """Stiffness of what a bolt clamps, N/m: 0.5774 pi E d / (2 ln(5 (0.5774 l + 0.5 d)/(0.5774 l + 2.5 d))).

    Range: parts of one metal, wide beside the bolt, under a washer face of 1.5 diameters.
    Source: Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-22 (quoted).

    >>> round(member_stiffness(0.5 * 0.0254, 30e6 * 6894.757, 1.0 * 0.0254) / 175.1268 / 1e6, 2)
    16.65
    """
    near, far = 0.5774 * grip_m + 0.5 * diameter_m, 0.5774 * grip_m + 2.5 * diameter_m
    return 0.5774 * _PI * modulus_pa * diameter_m / (2 * namespace.of(near, far).log(5 * near / far))


def load_share(bolt_n_m: T, members_n_m: T) -> T:
    """The share of an outside load that the bolt takes while the joint is closed: kb / (kb + km).

    Source: Shigley's Mechanical Engineering Design, 9th ed., Example 8-3, p. 439.

    >>> round(load_share(6.50, 13.8), 3)
    0.32
    """
    return bolt_n_m / (bolt_n_m + members_n_m)


def engagement_for_load(load_n: T, strength_pa: T, shear_area_m2: T, engaged_m: T) -> T:
    """The thread engaged, in m, that bears a load: F L / (0.577 Su As), As the shear area over the length L."""
    return load_n * engaged_m / (0.577 * strength_pa * shear_area_m2)


def tap_depth(pitch: float, share: float) -> float:
    """How much less than the major diameter a tap drill is, in the unit of ``pitch``.

    ``share`` of the full height of a 60 degree thread that is left, 0 to 1; source: tap_drill_for_thread_share.
    """
    return 1.299038 * pitch * share
