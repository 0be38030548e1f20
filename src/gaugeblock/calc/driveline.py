"""Shafts in torsion, joints, splines and gearing. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape. Angles are in rad.
"""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_PI = 3.141592653589793
_SQRT3 = 1.7320508075688772


# Torsion


def polar_second_moment(diameter_m: T, bore_m: T = 0.0) -> T:
    """Polar second moment of a round section, m^4: pi/32 (D^4 - d^4); bore 0 when solid.

    Source: elementary mechanics. Example: a teaching program prints 613,592 mm^4 for a 50 mm shaft (MECM620).

    >>> round(polar_second_moment(0.050) * 1e12)
    613592
    """
    return _PI / 32 * (diameter_m**4 - bore_m**4)


def torsional_section_modulus(diameter_m: T, bore_m: T = 0.0) -> T:
    """Polar second moment over the outer radius, m^3; pi D^3/16 when solid.

    Source: Mott, Machine Elements in Mechanical Design, 4th ed., Eq. 12-21.
    """
    return polar_second_moment(diameter_m, bore_m) / (diameter_m / 2)


def torsional_shear_stress(torque_nm: T, diameter_m: T, bore_m: T = 0.0) -> T:
    """Shear stress at the surface in Pa: T r / J. Range: elastic, away from notches and ends.

    Source: elementary mechanics. Example: Singer, problem 304: 15 kip ft on a 4 in shaft give 14.32 ksi.

    >>> round(torsional_shear_stress(15000 * 1.3558179483314004, 4 * 0.0254) / 6894757.293168361, 2)
    14.32
    """
    return torque_nm / torsional_section_modulus(diameter_m, bore_m)


def torque_from_shear_stress(stress_pa: T, diameter_m: T, bore_m: T = 0.0) -> T:
    """Torque in N m that gives a shear stress at the surface. Inverse of ``torsional_shear_stress``."""
    return stress_pa * torsional_section_modulus(diameter_m, bore_m)


def angle_of_twist(torque_nm: T, length_m: T, shear_modulus_pa: T, diameter_m: T, bore_m: T = 0.0) -> T:
    """Twist over a length in rad: T L / (G J). Range: elastic, round section, one diameter.

    Source: a university course text (BROWN). Example: Singer, problem 304: 3 ft of the same shaft, 1.23 degrees.

    >>> from math import degrees
    >>> twist = angle_of_twist(15000 * 1.3558179483314004, 0.9144, 12e6 * 6894.757293168361, 4 * 0.0254)
    >>> round(degrees(twist), 2)
    1.23
    """
    return torque_nm * length_m / (shear_modulus_pa * polar_second_moment(diameter_m, bore_m))


def torsional_yield_distortion_energy(yield_pa: T) -> T:
    """Torsional yield in Pa from tensile yield by distortion energy: Sy / sqrt 3 (0.577 Sy). Range: ductile steel.

    Source: Mott, Machine Elements in Mechanical Design, 4th ed., p. 547.

    >>> round(torsional_yield_distortion_energy(1.0), 3)
    0.577
    """
    return yield_pa / _SQRT3


def torsional_yield_axle_practice(yield_pa: T) -> T:
    """Torsional yield in Pa by the rule of a paper on induction hardened axle shafts: 0.6 Sy.

    Source: Fett, p. 1 and its Fig. 1 table: 1614 MPa tensile yield stands beside 966 MPa.

    >>> round(torsional_yield_axle_practice(1614)), round(torsional_yield_axle_practice(1152))
    (968, 691)
    """
    return 0.6 * yield_pa


def yield_factor(torsional_yield_pa: T, stress_pa: T) -> T:
    """How many times the torque could grow before the surface yields: torsional yield over stress."""
    return torsional_yield_pa / stress_pa


def shaft_diameter_bending_torsion(
    design_factor: T, concentration: T, moment_nm: T, endurance_pa: T, torque_nm: T, yield_pa: T
) -> T:
    """Diameter in m of a solid shaft in reversed bending and steady torque.

    D^3 = (32 n / pi) sqrt((Kt M / sn)^2 + 0.75 (T / sy)^2).
    Source: Mott, Machine Elements in Mechanical Design, 4th ed., Eq. 12-24 (its last line from memory).
    """
    bending = concentration * moment_nm / endurance_pa
    twisting = torque_nm / yield_pa
    return (32 * design_factor / _PI * (bending**2 + 0.75 * twisting**2) ** 0.5) ** (1 / 3)


# Universal joints


def joint_speed_ratio(angle_rad: T, turned_rad: T) -> T:
    """Output over input speed of one cardan joint at a turned angle: cos b / (1 - sin^2 b cos^2 th).

    Source: a worked solution (UJOINT); greatest 1/cos b, least cos b.

    >>> from math import acos
    >>> round(1200 * joint_speed_ratio(acos(0.9592), 0.0))
    1251
    """
    ns = namespace.of(angle_rad, turned_rad)
    return ns.cos(angle_rad) / (1 - ns.sin(angle_rad) ** 2 * ns.cos(turned_rad) ** 2)


def joint_speed_swing(angle_rad: T) -> T:
    """Peak to peak speed swing of one joint as a share of the mean: sin^2 b / cos b. Range: under a quarter turn."""
    ns = namespace.of(angle_rad)
    return ns.sin(angle_rad) ** 2 / ns.cos(angle_rad)


def pair_speed_swing(first_rad: T, second_rad: T) -> T:
    """Swing left by two joints in phase, in one plane: |cos b2/cos b1 - cos b1/cos b2|; 0 at equal angles."""
    ns = namespace.of(first_rad, second_rad)
    share = ns.cos(second_rad) / ns.cos(first_rad)
    return abs(share - 1 / share)


def pair_speed_swing_wrong_phase(first_rad: T, second_rad: T) -> T:
    """Swing of two joints a quarter turn out of phase: 1/(cos b1 cos b2) - cos b1 cos b2; about twice one joint's."""
    ns = namespace.of(first_rad, second_rad)
    share = ns.cos(first_rad) * ns.cos(second_rad)
    return 1 / share - share


def true_joint_angle(side_rad: T, top_rad: T) -> T:
    """Working angle in rad from its side and top views: atan sqrt(tan^2 side + tan^2 top)."""
    ns = namespace.of(side_rad, top_rad)
    arctan = ns.arctan if ns.__name__ == "numpy" else ns.atan
    return arctan((ns.tan(side_rad) ** 2 + ns.tan(top_rad) ** 2) ** 0.5)


def shaft_line_angle(side_1_rad: T, top_1_rad: T, side_2_rad: T, top_2_rad: T) -> T:
    """Angle in rad between two shafts by their slopes in the side and the top view: the joint between them works at it.

    Each shaft points along (1, tan top, tan side). Range: slopes under a quarter turn.

    >>> from math import degrees, radians
    >>> round(degrees(shaft_line_angle(0.0, 0.0, radians(3), radians(4))), 4)
    4.9942
    """
    ns = namespace.of(side_1_rad, top_1_rad, side_2_rad, top_2_rad)
    s1, t1, s2, t2 = (ns.tan(a) for a in (side_1_rad, top_1_rad, side_2_rad, top_2_rad))
    # by the cross product: acos of the dot product loses small angles
    cross = ((t1 * s2 - s1 * t2) ** 2 + (s1 - s2) ** 2 + (t2 - t1) ** 2) ** 0.5
    arctan2 = ns.arctan2 if ns.__name__ == "numpy" else ns.atan2
    return arctan2(cross, 1 + t1 * t2 + s1 * s2)


def joint_plane_angle(first: tuple[T, T], second: tuple[T, T], third: tuple[T, T]) -> T:
    """Angle in rad, 0 to a quarter turn, between the planes in which the two joints of a shaft are bent.

    Each shaft is its slopes (side, top) in rad. 0 where either joint runs straight: it has no plane.
    """
    ns = namespace.of(*first, *second, *third)
    i, p, o = ((1.0, ns.tan(top), ns.tan(side)) for side, top in (first, second, third))
    a, b = _cross(i, p), _cross(p, o)
    length = (sum(x * x for x in a) * sum(x * x for x in b)) ** 0.5
    along = abs(sum(x * y for x, y in zip(a, b, strict=True)))
    over = sum(x * x for x in _cross(a, b)) ** 0.5
    if ns.__name__ == "numpy":
        return ns.where(length > 0, ns.arctan2(over, along), 0.0)
    return ns.atan2(over, along) if length > 0 else 0.0


def _cross(a: tuple[T, T, T], b: tuple[T, T, T]) -> tuple[T, T, T]:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


_STEPS = 720  # of half a turn: the swing repeats twice a turn, and is found to 1e-5 of itself


def pair_speed_swing_in_planes(first_rad: T, second_rad: T, planes_rad: T, offset_rad: T = 0.0) -> T:
    """Swing left by two joints whose planes stand apart, yokes of the shaft in line but for ``offset_rad``.

    The ratios of the two joints multiply: tan of the turned angle behind the first is tan th / cos b1, and the
    second is
    driven a quarter turn, less the angle between the planes, on. Greatest less least over a turn, by steps.
    """
    ns = namespace.of(first_rad, second_rad, planes_rad, offset_rad)
    is_array = ns.__name__ == "numpy"
    arctan2, most, least = (ns.arctan2, ns.maximum, ns.minimum) if is_array else (ns.atan2, max, min)
    c1, c2 = ns.cos(first_rad), ns.cos(second_rad)
    high: T = None
    low: T = None
    for k in range(_STEPS):
        turned = _PI * k / _STEPS
        behind = arctan2(ns.sin(turned), c1 * ns.cos(turned))
        ratio = joint_speed_ratio(first_rad, turned)
        ratio = ratio * c2 / (1 - (1 - c2 * c2) * ns.sin(behind - planes_rad + offset_rad) ** 2)
        high = ratio if high is None else most(high, ratio)
        low = ratio if low is None else least(low, ratio)
    return high - low


# Involute splines, 30 degree pressure angle. Lengths in m; pitch in teeth per m of pitch diameter.


def spline_pitch_diameter(teeth: T, pitch_per_m: T) -> T:
    """Pitch diameter in m: N / P. Source: ANSI B92.1 basic dimension equations, as reprinted."""
    return teeth / pitch_per_m


def spline_diameter(teeth: T, pitch_per_m: T, addend: T) -> T:
    """A diameter in m that stands so many teeth over (plus) or under (minus) the pitch diameter: (N + a) / P.

    ANSI B92.1, 30 degrees, as reprinted: a is 1 (major, external), -1 (minor, internal); major, internal 1.35 flat
    root side fit, 1.8 fillet root, 1 major diameter fit; minor, external -1.35 flat, -1.8 fillet root to 12/24 pitch,
    -2 from 16/32.

    >>> round(spline_diameter(28, 24 / 0.0254, 1) / 0.0254, 4)
    1.2083
    """
    return (teeth + addend) / pitch_per_m


def spline_form_clearance(pitch_diameter_m: T) -> T:
    """Radial form clearance in m: 0.001 D, at least 0.002 in, at most 0.010 in. Source: ANSI B92.1 as reprinted."""
    ns = namespace.of(pitch_diameter_m)
    low, high = 0.002 * 0.0254, 0.010 * 0.0254
    if ns.__name__ == "numpy":
        return ns.clip(0.001 * pitch_diameter_m, low, high)
    return min(max(0.001 * pitch_diameter_m, low), high)


def spline_shear_under_roots(torque_nm: T, root_m: T, bore_m: T = 0.0, application: T = 1.0, life: T = 1.0) -> T:
    """Shear stress under the spline roots in Pa: 16 T Dre Ka / (pi (Dre^4 - Dh^4) Kf).

    Source: Machinery's Handbook, splines, p. 2172 Eq. 1 and 2 (quoted).
    """
    return torsional_shear_stress(torque_nm, root_m, bore_m) * application / life


def spline_tooth_shear(
    torque_nm: T,
    pitch_diameter_m: T,
    teeth: T,
    length_m: T,
    thickness_m: T,
    application: T = 1.0,
    distribution: T = 1.0,
    life: T = 1.0,
) -> T:
    """Shear stress at the pitch diameter in Pa, half the teeth carrying: 4 T Ka Km / (D N Le t Kf).

    Source: Machinery's Handbook 27, p. 2173 (quoted).
    """
    return 4 * torque_nm * application * distribution / (pitch_diameter_m * teeth * length_m * thickness_m * life)


def spline_side_pressure(
    torque_nm: T, pitch_diameter_m: T, teeth: T, length_m: T, depth_m: T, distribution: T = 1.0
) -> T:
    """Compression on the tooth sides in Pa: 2 T Km / (D N Le h). Source: Machinery's Handbook 25, p. 2059 (from
    memory).
    """
    return 2 * torque_nm * distribution / (pitch_diameter_m * teeth * length_m * depth_m)


def spline_side_allowable_flexible(allowable_pa: T, wear_life: T, application: T = 1.0) -> T:
    """Pressure in Pa that the tooth sides of a spline that rocks may bear: Sc Lw / Ka. Source: Dudley (quoted).

    >>> spline_side_allowable_flexible(4000.0, 2.0, 2.0)
    4000.0
    """
    return allowable_pa * wear_life / application


def spline_side_allowable_fixed(allowable_pa: T, fatigue_life: T, application: T = 1.0) -> T:
    """The same of a spline that cannot rock: 9 Sc Lf / Ka. Source: Dudley (quoted).

    >>> spline_side_allowable_fixed(4000.0, 0.5, 2.0)
    9000.0
    """
    return 9 * allowable_pa * fatigue_life / application


# Gearing


def axle_torque(
    engine_nm: T, gear_ratio: T, axle_ratio: T, transfer_ratio: T = 1.0, share: T = 0.5, converter_ratio: T = 1.0
) -> T:
    """Torque in N m on one axle shaft from the engine's: T i1 i2 i3 times the share that goes to this shaft.

    Half when an open differential splits it; 1 when a locked one can send all of it to one wheel. No losses counted.
    """
    return engine_nm * converter_ratio * gear_ratio * transfer_ratio * axle_ratio * share


def traction_torque(wheel_load_n: T, friction: T, tire_radius_m: T) -> T:
    """Torque in N m at which a wheel spins: W mu r. The shaft below it never sees more than this, shock apart."""
    return wheel_load_n * friction * tire_radius_m


def revolutions_per_mile(tire_diameter_m: T) -> T:
    """Turns of a free tire in a mile: 1609.344 / (pi D). A loaded radial turns about 3 % more.

    Example: an article prints 810.6 for 24.88 in (TIREART).

    >>> round(revolutions_per_mile(24.88 * 0.0254), 1)
    810.6
    """
    return 1609.344 / (_PI * tire_diameter_m)


def tyre_diameter(section_width_m: T, aspect: T, rim_m: T) -> T:
    """Outside diameter in m of a new tyre, free of load, by its code: two heights and the rim.

    >>> round(tyre_diameter(0.215, 0.65, 15 * 0.0254) / 0.0254, 2)
    26.0
    """
    return 2 * section_width_m * aspect + rim_m


def engine_speed(
    revolutions_rad_per_m: T, speed_m_per_s: T, axle_ratio: T, gear_ratio: T = 1.0, transfer: T = 1.0
) -> T:
    """Engine speed in rad/s at a road speed, nothing slipping.

    Example: the trade's 336 rule: 60 mph, 3.89 and a 29 in tyre give 2,704 rpm; its exact constant is 336.13.

    >>> from math import pi
    >>> turns = revolutions_per_mile(29 * 0.0254) * 2 * pi / 1609.344
    >>> round(engine_speed(turns, 60 * 0.44704, 3.89) * 30 / pi)
    2705
    """
    return revolutions_rad_per_m * speed_m_per_s * axle_ratio * gear_ratio * transfer


def carbon_equivalent(
    carbon: T, manganese: T, chromium: T = 0.0, molybdenum: T = 0.0, vanadium: T = 0.0, nickel: T = 0.0, copper: T = 0.0
) -> T:
    """Carbon equivalent in mass percent: C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15.

    Source: the formula of the welding institutes (IIWCE, from memory). Preheat is usual above about 0.45.

    >>> round(carbon_equivalent(0.515, 0.75), 2)
    0.64
    """
    return carbon + manganese / 6 + (chromium + molybdenum + vanadium) / 5 + (nickel + copper) / 15
