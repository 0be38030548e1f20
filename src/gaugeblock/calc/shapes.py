"""Shapes a shop thinks in, as apex points: single bend, offset, kick-up, saddle, template, and what must be cleared.

Metres and radians. A shape is drawn in its own plane (along, up) from the middle of its first end; ``place`` puts it
into vehicle coordinates. Straights are those of the finished tube, tangent to tangent, except where an apex is named.
"""

from __future__ import annotations

from itertools import pairwise
from math import cos, hypot, pi, sin, tan

from gaugeblock.calc import namespace
from gaugeblock.calc.path import START, Bend, Pose, Stick, TooTightError, add, cross, dot, to_points, unit
from gaugeblock.calc.tubes import setback

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any, TypeAlias

    from gaugeblock.calc.path import Vector

    Flat: TypeAlias = tuple[float, float]
    T: TypeAlias = Any  # a float, or a numpy array of any shape


class RiseTooSmallError(TooTightError):
    """The rise is too small for the die: with the smallest rise at this radius, and the largest radius at this rise."""

    def __init__(self, error: TooTightError, smallest_rise: float) -> None:
        super().__init__(error.number, error.straight, error.needed, error.largest_radius)
        self.smallest_rise = smallest_rise
        self.args = (f"{error}; or a rise of {smallest_rise * 1000:.2f} mm or more",)


def place(points: Sequence[Flat], origin: Vector, along: Vector, up: Vector) -> tuple[Vector, ...]:
    """Points of a flat shape in vehicle coordinates: ``along`` is its run, ``up`` is made square to it."""
    run = unit(along)
    lift = unit(add(up, run, -dot(up, run)))
    return tuple(add(add(origin, run, x), lift, y) for x, y in points)


def offset_straight(rise_m: T, angle_rad: T, radius_m: T) -> T:
    """Straight between the two bends of an offset, m: rise / sin(A) - 2 R tan(A/2); negative: too small for the die.

    >>> round(offset_straight(6.0, 3.141592653589793 / 6, 0.0), 9)
    12.0
    """
    return rise_m / namespace.of(rise_m, angle_rad).sin(angle_rad) - 2 * setback(radius_m, angle_rad)


def smallest_rise(angle_rad: T, radius_m: T, straight_m: T) -> T:
    """Smallest rise of an offset that leaves ``straight_m`` between its bends, m: sin(A) (straight + 2 R tan(A/2))."""
    return namespace.of(angle_rad).sin(angle_rad) * (straight_m + 2 * setback(radius_m, angle_rad))


def offset_radius(rise_m: T, angle_rad: T, straight_m: T) -> T:
    """Largest radius of an offset that leaves ``straight_m`` between its bends, m; negative: none does."""
    ns = namespace.of(rise_m, angle_rad)
    return (rise_m / ns.sin(angle_rad) - straight_m) / (2 * ns.tan(angle_rad / 2))


def _angle(angle: float, most: float, what: str) -> None:
    if not 0 < angle <= most * (1 + 1e-12):
        raise ValueError(f"{what} is over 0 and at most {most * 180 / pi:.0f} degrees")


def _legs(rise: float, angle: float, radius: float, needed: float, number: int) -> Flat:
    """Run and rise of one sloped leg, refused when its straight is too short."""
    _angle(angle, pi / 2, "the angle of an offset")
    if not rise > 0:
        raise ValueError("a rise is more than nothing")
    straight = offset_straight(rise, angle, radius)
    if straight < needed - 1e-12:
        tight = TooTightError(number, straight, needed, offset_radius(rise, angle, needed))
        raise RiseTooSmallError(tight, smallest_rise(angle, radius, needed))
    return (0.0 if angle >= pi / 2 else rise / tan(angle), rise)


def single_bend(first: float, second: float, angle: float) -> tuple[Flat, ...]:
    """One bend between two legs measured end to apex."""
    return ((0.0, 0.0), (first, 0.0), (first + second * cos(angle), second * sin(angle)))


def offset(
    rise: float, angle: float, before: float, after: float, *, radius: float, needed: float = 0.0
) -> tuple[Flat, ...]:
    """Two equal bends, opposite ways: centre line ``rise`` higher, straights ``before`` and ``after``.

    RiseTooSmallError when less than ``needed`` straight is left between the bends.
    """
    run, _ = _legs(rise, angle, radius, needed, 2)
    back = setback(radius, angle)
    x = before + back
    return ((0.0, 0.0), (x, 0.0), (x + run, rise), (x + run + back + after, rise))


def kick_up(
    flat: float,
    rise: float,
    angle: float,
    foot: float,
    *,
    radius: float,
    needed: float = 0.0,
    second_rise: float | None = None,
    second_angle: float | None = None,
    second_foot: float | None = None,
) -> tuple[Flat, ...]:
    """Foot, up, flat, down, foot: straights ``flat`` and ``foot``; the second side as the first unless it is given.

    Rises are centre line to centre line, each above its own foot. RiseTooSmallError when a leg leaves less than
    ``needed``.
    """
    rise_2 = rise if second_rise is None else second_rise
    angle_2 = angle if second_angle is None else second_angle
    foot_2 = foot if second_foot is None else second_foot
    run_1, _ = _legs(rise, angle, radius, needed, 2)
    run_2, _ = _legs(rise_2, angle_2, radius, needed, 4)
    back_1, back_2 = setback(radius, angle), setback(radius, angle_2)
    xs = [foot + back_1]
    xs.append(xs[-1] + run_1)
    xs.append(xs[-1] + back_1 + flat + back_2)
    xs.append(xs[-1] + run_2)
    low = rise - rise_2
    return ((0.0, 0.0), (xs[0], 0.0), (xs[1], rise), (xs[2], rise), (xs[3], low), (xs[3] + back_2 + foot_2, low))


def kick_up_flat(
    width: float,
    rise: float,
    angle: float,
    foot: float,
    *,
    radius: float,
    second: tuple[float, float, float] | None = None,
) -> float:
    """The flat that gives a kick-up its overall ``width``; negative: too narrow. ``second`` is (rise, angle, foot)."""
    total = width
    for height, a, end in ((rise, angle, foot), second or (rise, angle, foot)):
        total -= end + 2 * setback(radius, a) + (0.0 if a >= pi / 2 else height / tan(a))
    return total


def saddle(
    rise: float, angle: float, before: float, after: float, *, radius: float, needed: float = 0.0
) -> tuple[Flat, ...]:
    """Three bends over one thing: ``angle`` at the sides, twice that in the middle. The four-bend saddle is
    ``kick_up``.
    """
    _angle(angle, pi / 4, "the side angle of a three-bend saddle")
    if not rise > 0:
        raise ValueError("a rise is more than nothing")
    backs = setback(radius, angle) + setback(radius, 2 * angle)
    straight = rise / sin(angle) - backs
    if straight < needed - 1e-12:
        fit = (rise / sin(angle) - needed) / (tan(angle / 2) + tan(angle))
        raise RiseTooSmallError(TooTightError(2, straight, needed, fit), sin(angle) * (needed + backs))
    x, run = before + setback(radius, angle), rise / tan(angle)
    return (
        (0.0, 0.0),
        (x, 0.0),
        (x + run, rise),
        (x + 2 * run, 0.0),
        (x + 2 * run + setback(radius, angle) + after, 0.0),
    )


def template(
    lengths: Sequence[float], angles: Sequence[float], turns: Sequence[float], pose: Pose = START
) -> tuple[Vector, ...]:
    """Apex points read off a bent rod: apex-to-apex lengths, angles, and the turn before each bend (the first is 0)."""
    if len(angles) != len(lengths) - 1 or len(turns) != len(angles):
        raise ValueError("a template has one angle and one turn a bend, and one length more")
    bends = (Bend(s, t, a, 0.0) for s, t, a in zip(lengths, turns, angles, strict=False))
    return to_points(Stick(bends, lengths[-1]), pose)


class Cleared:
    """A kick-up over what must be cleared: its points, and what the arcs would have cost a sharp-cornered layout.

    ``sharp_points`` clears with sharp corners; bent to the same apexes it has only ``sharp_gap``; ``cost`` is what is
    missing. ``points`` has its top apexes moved out by ``moved`` a side, and the gap asked for is there again.
    ``is_drawn_out`` says that the flat was drawn out to
    the straight that the die needs. ``feet`` are the straights left at the two feet, ``flat`` the straight on top,
    ``rises`` over each foot.
    """

    __slots__ = (
        "cost",
        "feet",
        "flat",
        "is_drawn_out",
        "moved",
        "points",
        "rises",
        "sharp_gap",
        "sharp_points",
    )

    def __init__(
        self,
        *,
        points: tuple[Flat, ...],
        sharp_points: tuple[Flat, ...],
        cost: float,
        sharp_gap: float,
        moved: float,
        feet: Flat,
        flat: float,
        rises: Flat,
        is_drawn_out: bool = False,
    ) -> None:
        self.points = points
        self.sharp_points = sharp_points
        self.cost = cost
        self.sharp_gap = sharp_gap
        self.moved = moved
        self.feet = feet
        self.flat = flat
        self.rises = rises
        self.is_drawn_out = is_drawn_out


class FootTooShortError(ValueError):
    """The kick-up does not land between the feet: which foot, its straight, the place or span that is missing."""

    def __init__(self, foot: int, straight: float, needed: float) -> None:
        super().__init__(
            f"foot {foot} would be {straight * 1000:.2f} mm straight, {needed * 1000:.2f} mm is needed:"
            f" {(needed - straight) * 1000:.2f} mm more span on that side, a steeper angle or a smaller die"
        )
        self.foot = foot
        self.straight = straight
        self.needed = needed


def corner_cost(reach_m: float, angle_rad: float, radius_m: float) -> float:
    """Gap that a bend takes from a sharp corner laid ``reach_m`` off a point inside it, m.

    (R - c)(1/cos(A/2) - 1) when the radius is more than the reach c, nothing otherwise: the arc's centre and the
    point both lie on the bisector of the corner, (R - c)/cos(A/2) apart.

    >>> round(corner_cost(1.0, 3.141592653589793 / 2, 3.0), 4)
    0.8284
    """
    return max(0.0, radius_m - reach_m) * (1 / cos(angle_rad / 2) - 1)


class Beneath:
    """What a kick-up passes over, in m: a box ``width`` wide, or a round pipe, or a rounded slab.

    The box's top is ``height`` above the centre line of the first foot, its middle ``place`` from the first end. With
    ``round_radius`` it is a round pipe with its centre at ``height`` (``width`` 0; a width makes it a rounded slab). It
    may move ``up`` and ``sideways``.
    """

    __slots__ = ("height", "place", "round_radius", "sideways", "up", "width")

    def __init__(
        self,
        *,
        width: float,
        height: float,
        place: float,
        round_radius: float = 0.0,
        up: float = 0.0,
        sideways: float = 0.0,
    ) -> None:
        if min(width, round_radius, up, sideways) < 0:
            raise ValueError("widths and movements are not negative")
        self.width = width
        self.height = height
        self.place = place
        self.round_radius = round_radius
        self.up = up
        self.sideways = sideways


def clear_over(
    thing: Beneath,
    *,
    span: float,
    gap: float,
    od: float,
    angle: float,
    radius: float,
    second_foot_height: float = 0.0,
    needed: float = 0.0,
    foot_needed: float = 0.0,
) -> Cleared:
    """The kick-up that passes over a thing with a gap, its arcs counted. ``span`` is end to end.

    The flat stands gap + od/2 over it. A sharp corner stands off the box corner by that reach c, so its apex is
    c tan(A/2) past the corner; a bend cuts inside it (``corner_cost``). With the apex R tan(A/2) past the corner the
    bend starts right above it, and every point of the tube is c off again. RiseTooSmallError and FootTooShortError
    as above.
    """
    _angle(angle, pi / 2, "the angle of a kick-up")
    if gap < 0 or not (span > 0 and od > 0):
        raise ValueError("a gap is not negative; span and diameter are more than nothing")
    reach = thing.round_radius + gap + od / 2
    place, top = thing.place, thing.height + thing.up + reach
    half = thing.width / 2 + thing.sideways
    rises = (top, top - second_foot_height)
    slope = [_legs(rise, angle, radius, needed, 2 + 2 * i)[0] for i, rise in enumerate(rises)]
    half_angle = tan(angle / 2)

    def points(past: float) -> tuple[Flat, ...]:
        left, right = place - half - past, place + half + past
        low = second_foot_height
        return ((0.0, 0.0), (left - slope[0], 0.0), (left, top), (right, top), (right + slope[1], low), (span, low))

    sharp = points(reach * half_angle)
    past = max(reach, radius) * half_angle
    moved = points(past)
    cost = corner_cost(reach, angle, radius)
    flat = moved[3][0] - moved[2][0] - 2 * radius * half_angle
    is_drawn_out = flat < needed - 1e-12
    if is_drawn_out:  # a narrow thing: the flat is drawn out to what the die needs, which only adds gap
        past += (needed - flat) / 2
        moved, flat = points(past), needed
    feet = (moved[1][0] - radius * half_angle, span - moved[4][0] - radius * half_angle)
    for i, straight in enumerate(feet):
        if straight < foot_needed - 1e-12:
            raise FootTooShortError(i + 1, straight, foot_needed)
    return Cleared(
        points=moved,
        sharp_points=sharp,
        cost=cost,
        sharp_gap=gap - cost,
        moved=past - reach * half_angle,
        feet=feet,
        flat=flat,
        rises=rises,
        is_drawn_out=is_drawn_out,
    )


def plane_normal(points: Sequence[Vector]) -> Vector | None:
    """The unit normal of a flat tube's plane, None for a straight one; ValueError when the points do not lie flat."""
    legs = [unit(add(b, a, -1.0)) for a, b in pairwise(points)]
    normals = [cross(u, v) for u, v in pairwise(legs)]
    longest = max(normals, key=lambda n: hypot(*n), default=(0.0, 0.0, 0.0))
    if hypot(*longest) < 1e-9:
        return None
    n = unit(longest)
    if max(abs(dot(leg, n)) for leg in legs) > 1e-6:
        raise ValueError("the tube does not lie in one plane")
    return n
