"""Tube bending: radii, strain, walls, lengths, springback, section properties, pressure. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape. Angles are in radians.
"""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_PI = 3.141592653589793


def centre_line_radius(inside_radius_m: T, outside_diameter_m: T) -> T:
    """Radius to the centre line, m, from the radius to the inside of the bend: inside + OD/2."""
    return inside_radius_m + outside_diameter_m / 2


def outer_fibre_strain(outside_diameter_m: T, centre_line_radius_m: T) -> T:
    """Stretch of the outermost fibre as a ratio: (OD/2) / R, the neutral axis taken at the centre line.

    >>> round(outer_fibre_strain(1.75, 5.5), 3)
    0.159
    """
    return outside_diameter_m / 2 / centre_line_radius_m


def outer_wall_thinned(wall_m: T, outside_diameter_m: T, centre_line_radius_m: T) -> T:
    """Predicted wall at the outside of the bend, m: t R / (R + OD/2).

    Constant volume, the whole stretch taken by the wall, no axial boost: the thinner bound.
    """
    return wall_m * centre_line_radius_m / (centre_line_radius_m + outside_diameter_m / 2)


def inner_wall_thickened(wall_m: T, outside_diameter_m: T, centre_line_radius_m: T) -> T:
    """Predicted wall at the inside of the bend, m: t / (1 - OD/(2 R)); the whole shortening taken by the wall."""
    return wall_m / (1 - outside_diameter_m / (2 * centre_line_radius_m))


def intrados_index(bend_ratio_: T) -> T:
    """Pressure design index of the inside of a bend: (4k - 1)/(4k - 2), k the bend ratio.

    Source: ASME B31.1 para. 102.4.5 as used in a worksheet to the 2018 edition.

    >>> round(intrados_index(152.4 / 114.3), 2)
    1.3
    """
    return (4 * bend_ratio_ - 1) / (4 * bend_ratio_ - 2)


def developed_length(centre_line_radius_m: T, angle_rad: T) -> T:
    """Arc length of a bend at the centre line, m: R times the angle.

    Source: NAVEDTRA 14119, bend allowance text near Fig. 13-49 (its Example 2 is a 180 degree U-bolt).

    >>> round(developed_length(1.25, 3.14), 3)
    3.925
    """
    return centre_line_radius_m * angle_rad


def setback(centre_line_radius_m: T, angle_rad: T) -> T:
    """Tangent point to the crossing of the centre lines, m: R tan(angle/2). Below 180 degrees; never for a U bend."""
    ns = namespace.of(centre_line_radius_m, angle_rad)
    return centre_line_radius_m * ns.tan(angle_rad / 2)


def bend_gain(centre_line_radius_m: T, angle_rad: T) -> T:
    """How much shorter the arc is than the sharp corner, m: 2 R tan(angle/2) - R angle."""
    return 2 * setback(centre_line_radius_m, angle_rad) - developed_length(centre_line_radius_m, angle_rad)


def beam_centre_load(stress_pa: T, section_modulus_m3: T, span_m: T) -> T:
    """Load in the middle of a beam on two supports that brings its outside to a stress, N: 4 stress W / L.

    Source: elementary beam theory, moment F L / 4.
    """
    return 4 * stress_pa * section_modulus_m3 / span_m


def beam_centre_stress(force_n: T, section_modulus_m3: T, span_m: T) -> T:
    """Greatest bending stress of a beam on two supports under a load in its middle, Pa: F L / (4 W)."""
    return force_n * span_m / (4 * section_modulus_m3)


def beam_centre_sag(force_n: T, span_m: T, modulus_pa: T, second_moment_m4: T) -> T:
    """How far the middle of a beam on two supports goes down under a load there, m: F L^3 / (48 E I)."""
    return force_n * span_m**3 / (48 * modulus_pa * second_moment_m4)


def setback_sheet(inside_radius_m: T, thickness_m: T, angle_rad: T) -> T:
    """Mould-line setback of sheet, m: tan(angle/2) (R + t). Source: AMT Airframe handbook, ch. 4, step 2."""
    ns = namespace.of(inside_radius_m, thickness_m, angle_rad)
    return ns.tan(angle_rad / 2) * (inside_radius_m + thickness_m)


def bend_allowance_sheet(inside_radius_m: T, thickness_m: T, angle_rad: T) -> T:
    """Bend allowance of sheet, m: (0.01743 R + 0.0078 t) a degree. Sheet only, 1 to 180 degrees.

    Source: a sheet metal workbook, 90 degree bends.
    """
    return (0.01743 * inside_radius_m + 0.0078 * thickness_m) * (angle_rad * 180 / _PI)


def bend_allowance_k(inside_radius_m: T, thickness_m: T, k_factor: T, angle_rad: T) -> T:
    """Length of sheet that a bend takes, m: angle (R + K t), along the line K of the thickness from the inside.

    >>> round(bend_allowance_k(3.0, 2.0, 0.5, 1.5), 6)
    6.0
    """
    return angle_rad * (inside_radius_m + k_factor * thickness_m)


def bend_allowance_share(inside_radius_m: T, thickness_m: T, share: T, angle_rad: T) -> T:
    """Length of sheet that a bend takes, m, by what a right angle takes: share t + 1.57 R, other angles in proportion.

    Source: Machinery's Handbook, lengths of straight stock for bends, from memory.
    """
    return angle_rad * (inside_radius_m + 2 / _PI * share * thickness_m)


def elastic_bend_thickness(yield_pa: T, radius_m: T, modulus_pa: T) -> T:
    """Largest thickness or OD, m, that bends to a radius and springs back wholly: 2 Y R / E.

    >>> round(elastic_bend_thickness(36.0, 20.0, 29000.0), 2)
    0.05
    """
    return 2 * yield_pa * radius_m / modulus_pa


def springback_sheet(radius_m: T, depth_m: T, yield_pa: T, modulus_pa: T) -> T:
    """Radius under load over radius let go, as a ratio of 1 or less: 4 x^3 - 3 x + 1, x = R Y / (E depth).

    Range: x below 1/2 (at 1/2 the section is only elastic and opens wholly: 0). A share of the angle,
    1 less this, springs back while the neutral axis keeps its length.
    Source: a manufacturing text's springback section (from memory).

    >>> springback_sheet(1.0, 0.1, 0.05, 1.0)
    0.0
    """
    x = radius_m * yield_pa / (modulus_pa * depth_m)
    return 4 * x**3 - 3 * x + 1


def springback_tube(radius_m: T, outside_diameter_m: T, inside_diameter_m: T, yield_pa: T, modulus_pa: T) -> T:
    """Radius under load over radius let go of a fully plastic round tube, no hardening: 1 - R Y Zp / (E I)."""
    moment = yield_pa * plastic_modulus(outside_diameter_m, inside_diameter_m)
    return 1 - radius_m * moment / (modulus_pa * second_moment(outside_diameter_m, inside_diameter_m))


def springback_angle(angle_rad: T, radius_ratio: T) -> T:
    """Angle that a bend opens, rad, when its radius goes from R to R/ratio at one length of neutral axis."""
    return angle_rad * (1 - radius_ratio)


def bore(outside_diameter_m: T, wall_m: T) -> T:
    """Inside diameter, m: OD - 2 t.

    >>> round(bore(0.625, 0.065), 3)
    0.495
    """
    return outside_diameter_m - 2 * wall_m


def area(outside_diameter_m: T, inside_diameter_m: T) -> T:
    """Metal area of a round tube, m^2: pi/4 (OD^2 - ID^2)."""
    return _PI / 4 * (outside_diameter_m**2 - inside_diameter_m**2)


def second_moment(outside_diameter_m: T, inside_diameter_m: T) -> T:
    """Second moment of area of a round tube about a diameter, m^4: pi/64 (OD^4 - ID^4).

    >>> round(second_moment(20.0, 14.0), 1)
    5968.2
    """
    return _PI / 64 * (outside_diameter_m**4 - inside_diameter_m**4)


def polar_second_moment(outside_diameter_m: T, inside_diameter_m: T) -> T:
    """Polar second moment of a round tube, m^4: twice the second moment."""
    return 2 * second_moment(outside_diameter_m, inside_diameter_m)


def section_modulus(outside_diameter_m: T, inside_diameter_m: T) -> T:
    """Elastic section modulus of a round tube, m^3: 2 I / OD."""
    return 2 * second_moment(outside_diameter_m, inside_diameter_m) / outside_diameter_m


def plastic_modulus(outside_diameter_m: T, inside_diameter_m: T) -> T:
    """Plastic section modulus of a round tube, m^3: (OD^3 - ID^3)/6."""
    return (outside_diameter_m**3 - inside_diameter_m**3) / 6


def mass_per_length(outside_diameter_m: T, inside_diameter_m: T, density_kg_m3: T) -> T:
    """Mass of a metre of tube, kg/m."""
    return density_kg_m3 * area(outside_diameter_m, inside_diameter_m)


def offset_distance(offset_m: T, angle_rad: T) -> T:
    """Distance between the two bends of an offset, m, sharp corners: offset / sin(angle).

    >>> round(offset_distance(1.0, 0.17453292519943295), 2)
    5.76
    """
    ns = namespace.of(offset_m, angle_rad)
    return offset_m / ns.sin(angle_rad)


def offset_shrink(offset_m: T, angle_rad: T) -> T:
    """How much shorter an offset makes the run, m, sharp corners: offset tan(angle/2)."""
    ns = namespace.of(offset_m, angle_rad)
    return offset_m * ns.tan(angle_rad / 2)


def rolling_offset(rise_m: T, roll_m: T) -> T:
    """True offset of a rolling offset, m: the hypotenuse of rise and roll."""
    return (rise_m**2 + roll_m**2) ** 0.5


def euler_load(modulus_pa: T, second_moment_m4: T, length_m: T) -> T:
    """Buckling load of a slender straight pinned column, N: pi^2 E I / L^2."""
    return _PI**2 * modulus_pa * second_moment_m4 / length_m**2


def mitre_slice(line_radius_m: T, mitre_rad: T) -> T:
    """Length of a slice of a bend that is sawn on both faces, on a line at that radius, m: 2 R tan(mitre), mitre from
    square.
    """
    ns = namespace.of(line_radius_m, mitre_rad)
    return 2 * line_radius_m * ns.tan(mitre_rad)


def box_area(height_m: T, width_m: T, wall_m: T) -> T:
    """Metal of a rectangular tube, m**2, its outside corners round by twice the wall and its inside ones by the wall.

    >>> round(box_area(2, 2, 0.116), 2)  # as the steel tables print for 2 x 2 x 1/8 at their design wall
    0.84
    """
    sharp = height_m * width_m - (height_m - 2 * wall_m) * (width_m - 2 * wall_m)
    return sharp - (4 - _PI) * 3 * wall_m**2


def box_second_moment(height_m: T, width_m: T, wall_m: T) -> T:
    """Second moment of area of a rectangular tube across its height, m**4; corners as ``box_area``.

    >>> round(box_second_moment(3, 2, 0.174), 3)
    1.765
    """
    outside = _rounded_second_moment(height_m, width_m, 2 * wall_m)
    return outside - _rounded_second_moment(height_m - 2 * wall_m, width_m - 2 * wall_m, wall_m)


def _rounded_second_moment(height_m: T, width_m: T, radius_m: T) -> T:
    """Of a rectangle with round corners: the sharp one less four corner pieces about the middle."""
    share = 1 - _PI / 4  # of the square on the radius that a round corner lacks
    middle = radius_m / (6 * share)  # from the centre of the round to the centroid of what is lacking
    lacking = share * radius_m**2
    own = radius_m**4 * (1 / 3 - _PI / 16) - lacking * middle**2
    return width_m * height_m**3 / 12 - 4 * (own + lacking * (height_m / 2 - radius_m + middle) ** 2)
