"""The centre line of a bent tube: apex points, the stick (straight, turn, bend), and the path of lines and arcs.

Metres and radians. Vehicle axes are (rearward, right, up) from a datum that the user states: a right-handed frame.
A turn is positive clockwise as seen looking along the tube from its start. Nothing here rounds or prints.
"""

from __future__ import annotations

from itertools import pairwise
from math import acos, atan2, cos, hypot, inf, pi, sin, tan

from gaugeblock.calc.tubes import bend_gain, setback

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from typing import Any, TypeAlias

    Vector: TypeAlias = tuple[float, float, float]
    T: TypeAlias = Any  # a float, or a numpy array of any shape

STRAIGHT_ANGLE = 1e-12  # rad; below it a bend has no plane of its own
FOLD_ANGLE = pi - 1e-7  # rad; above it two legs lie on each other and have no apex to measure from


def add(a: Vector, b: Vector, scale: float = 1.0) -> Vector:
    """a + scale b."""
    return (a[0] + scale * b[0], a[1] + scale * b[1], a[2] + scale * b[2])


def subtract(a: Vector, b: Vector) -> Vector:
    """a - b."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def dot(a: Vector, b: Vector) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """Vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def norm(a: Vector) -> float:
    """Length of a vector."""
    return hypot(a[0], a[1], a[2])


def unit(a: Vector) -> Vector:
    """The vector at length 1. ValueError for a vector of no length."""
    size = norm(a)
    if size == 0.0:
        raise ValueError("a vector of no length has no direction")
    return (a[0] / size, a[1] / size, a[2] / size)


def rotated(a: Vector, axis: Vector, angle: float) -> Vector:
    """``a`` turned about the unit ``axis``, right-handed."""
    c, s = cos(angle), sin(angle)
    k = dot(axis, a) * (1 - c)
    x = cross(axis, a)
    return (a[0] * c + x[0] * s + axis[0] * k, a[1] * c + x[1] * s + axis[1] * k, a[2] * c + x[2] * s + axis[2] * k)


def square_to(direction: Vector) -> Vector:
    """A unit vector square to ``direction``: the one nearest to up, or to right for a tube that runs up."""
    near = (0.0, 0.0, 1.0) if abs(direction[2]) < 0.9 else (0.0, 1.0, 0.0)
    return unit(cross(direction, cross(near, direction)))


class Bend:
    """One bend of a stick: the straight before it, the turn since the bend before, its angle, its centre-line
    radius.
    """

    __slots__ = ("angle", "radius", "straight", "turn")

    def __init__(self, straight: float, turn: float, angle: float, radius: float) -> None:
        self.straight = straight
        self.turn = turn
        self.angle = angle
        self.radius = radius

    def __repr__(self) -> str:
        return f"Bend({self.straight!r}, {self.turn!r}, {self.angle!r}, {self.radius!r})"

    @property
    def arc(self) -> float:
        """Developed length of the bend, m: radius times angle (HT14119, bend allowance)."""
        return self.radius * self.angle


class Stick:
    """A tube as it is bent: bends in order and the straight after the last. The turn of the first bend is zero."""

    __slots__ = ("bends", "end")

    def __init__(self, bends: Iterable[Bend], end: float) -> None:
        self.bends = tuple(bends)
        self.end = end

    @property
    def developed_length(self) -> float:
        """Length of the centre line from end to end, m."""
        return sum(b.straight + b.arc for b in self.bends) + self.end

    @property
    def straights(self) -> tuple[float, ...]:
        """The straights in order, the one after the last bend included."""
        return (*(b.straight for b in self.bends), self.end)

    @property
    def tangents(self) -> tuple[tuple[float, float], ...]:
        """Where each bend starts and ends along the centre line from the start, m."""
        out: list[tuple[float, float]] = []
        at = 0.0
        for b in self.bends:
            at += b.straight
            out.append((at, at + b.arc))
            at += b.arc
        return tuple(out)

    @property
    def lines(self) -> tuple[float, ...]:
        """Where the inside of each bend lies round the straight tube, rad from the first bend, clockwise from the
        start.
        """
        out: list[float] = []
        at = 0.0
        for b in self.bends:
            at += b.turn if out else 0.0
            out.append(at)
        return tuple(out)

    def mirrored(self) -> Stick:
        """The stick of the mirrored tube: every turn the other way."""
        return Stick((Bend(b.straight, -b.turn, b.angle, b.radius) for b in self.bends), self.end)

    def reversed(self) -> Stick:
        """The stick of the same tube read from its other end; a turn keeps its hand."""
        straights = self.straights[::-1]
        back = self.bends[::-1]
        turns = (0.0, *(b.turn for b in back[:-1]))
        return Stick(
            (Bend(s, t, b.angle, b.radius) for s, t, b in zip(straights, turns, back, strict=False)), straights[-1]
        )


class Pose:
    """Where a tube starts: its end point, its direction, and the axis of its first bend (square to the direction)."""

    __slots__ = ("direction", "normal", "origin")

    def __init__(self, origin: Vector, direction: Vector, normal: Vector) -> None:
        self.origin = origin
        self.direction = direction
        self.normal = normal


START = Pose((0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0))  # runs to the right, the first bend goes up


class Line:
    """A straight part of a path."""

    __slots__ = ("direction", "length", "start")

    def __init__(self, start: Vector, direction: Vector, length: float) -> None:
        self.start = start
        self.direction = direction
        self.length = length

    def at(self, along: float) -> Vector:
        """The point ``along`` metres from the start."""
        return add(self.start, self.direction, along)

    def heading(self, _along: float) -> Vector:
        """The direction at a place."""
        return self.direction


class Arc:
    """A circular part of a path: centre, unit vector to its start, direction at its start, radius, angle."""

    __slots__ = ("ahead", "angle", "centre", "out", "radius")

    def __init__(self, centre: Vector, out: Vector, ahead: Vector, radius: float, angle: float) -> None:
        self.centre = centre
        self.out = out
        self.ahead = ahead
        self.radius = radius
        self.angle = angle

    @property
    def length(self) -> float:
        """Developed length, m."""
        return self.radius * self.angle

    def at(self, along: float) -> Vector:
        """The point ``along`` metres from the start of the arc."""
        a = along / self.radius if self.radius else 0.0
        return add(add(self.centre, self.out, self.radius * cos(a)), self.ahead, self.radius * sin(a))

    def heading(self, along: float) -> Vector:
        """The direction at a place."""
        a = along / self.radius if self.radius else 0.0
        return add((-sin(a) * self.out[0], -sin(a) * self.out[1], -sin(a) * self.out[2]), self.ahead, cos(a))


class Path:
    """A tube's centre line in space: lines and arcs in order."""

    __slots__ = ("parts",)

    def __init__(self, parts: Iterable[Line | Arc]) -> None:
        self.parts = tuple(parts)

    @property
    def length(self) -> float:
        """Length along the centre line, m."""
        return sum(p.length for p in self.parts)

    def _part(self, along: float) -> tuple[Line | Arc, float]:
        for part in self.parts[:-1]:
            if along <= part.length:
                return part, along
            along -= part.length
        return self.parts[-1], along

    def at(self, along: float) -> Vector:
        """The point at ``along`` metres from the start."""
        part, rest = self._part(along)
        return part.at(rest)

    def heading(self, along: float) -> Vector:
        """The unit direction at ``along`` metres from the start."""
        part, rest = self._part(along)
        return part.heading(rest)

    def on_plane(self, point: Vector, normal: Vector) -> tuple[float, ...]:
        """Where along the path it passes through a plane, m from the start; a part that lies in the plane is left
        out.
        """
        n, found, before = unit(normal), [], 0.0
        for part in self.parts:
            if isinstance(part, Line):
                slope, height = dot(part.direction, n), dot(subtract(part.start, point), n)
                places = [-height / slope] if slope else []
            else:
                x, y = part.radius * dot(part.out, n), part.radius * dot(part.ahead, n)
                size, level = hypot(x, y), dot(subtract(part.centre, point), n)
                places = []
                if size > abs(level):
                    middle, half = atan2(y, x), acos(-level / size)
                    places = sorted(((middle + sign * half) % (2 * pi)) * part.radius for sign in (-1, 1))
            slack = 1e-12
            found += [before + p for p in places if -slack <= p <= part.length + slack]
            before += part.length
        return tuple(p for i, p in enumerate(found) if not i or p - found[i - 1] > 1e-9)


def path(stick: Stick, pose: Pose = START) -> Path:
    """The centre line of a stick in space, from its pose."""
    at, ahead, axis = pose.origin, unit(pose.direction), unit(pose.normal)
    parts: list[Line | Arc] = []
    for number, b in enumerate(stick.bends):
        if number:
            axis = rotated(axis, ahead, b.turn)
        parts.append(Line(at, ahead, b.straight))
        at = add(at, ahead, b.straight)
        inward = cross(axis, ahead)
        centre = add(at, inward, b.radius)
        arc = Arc(centre, (-inward[0], -inward[1], -inward[2]), ahead, b.radius, b.angle)
        parts.append(arc)
        at, ahead = arc.at(arc.length), rotated(ahead, axis, b.angle)
    parts.append(Line(at, ahead, stick.end))
    return Path(parts)


def cut_length(apex_lengths_m: Sequence[T], angles_rad: Sequence[T], radii_m: Sequence[T]) -> T:
    """Developed length from apex-to-apex lengths, m: their sum less the gain of each bend. Entries: float or (n,)."""
    total = sum(apex_lengths_m[1:], apex_lengths_m[0])
    for angle, radius in zip(angles_rad, radii_m, strict=True):
        total = total - bend_gain(radius, angle)
    return total


def straights_between(apex_lengths_m: Sequence[T], angles_rad: Sequence[T], radii_m: Sequence[T]) -> list[T]:
    """The straights left between tangents, m, from apex-to-apex lengths; negative where the arcs do not fit."""
    back = [0.0, *(setback(r, a) for r, a in zip(radii_m, angles_rad, strict=True)), 0.0]
    return [length - back[i] - back[i + 1] for i, length in enumerate(apex_lengths_m)]


class TooTightError(ValueError):
    """The arcs do not fit between two apexes: which straight, how short, the largest radius that would fit."""

    def __init__(self, number: int, straight: float, needed: float, largest_radius: float) -> None:
        fit = "no radius" if largest_radius <= 0 else f"a centre-line radius of {largest_radius * 1000:.2f} mm or less"
        super().__init__(
            f"straight {number} would be {straight * 1000:.2f} mm, {needed * 1000:.2f} mm is needed; {fit} would fit"
        )
        self.number = number
        self.straight = straight
        self.needed = needed
        self.largest_radius = largest_radius


def largest_radius(apex_lengths_m: Sequence[float], angles_rad: Sequence[float], needed_m: float = 0.0) -> float:
    """Largest one radius for all bends that leaves ``needed_m`` of straight everywhere, m; inf without bends."""
    half = [0.0, *(tan(a / 2) for a in angles_rad), 0.0]
    room = (
        (length - needed_m) / (half[i] + half[i + 1])
        for i, length in enumerate(apex_lengths_m)
        if half[i] + half[i + 1] > 0
    )
    return min(room, default=inf)


def _radii(radius: float | Sequence[float], count: int) -> list[float]:
    if isinstance(radius, (int, float)):
        return [float(radius)] * count
    if len(radius) != count:
        raise ValueError(f"{len(radius)} radii for {count} bends")
    return list(radius)


def from_points(
    points: Sequence[Vector], radius: float | Sequence[float], needed: float = 0.0, normal: Vector | None = None
) -> tuple[Stick, Pose]:
    """Stick and pose of the tube through apex points (ends included), tangents placed so that the arcs fit.

    ``radius`` is one for all bends or one each; ``needed`` the straight that must be left. ``normal`` is the bend axis
    kept while the points run straight. TooTightError when a straight would be shorter; ValueError for two equal
    points and
    for a leg folded back on itself, which has no apex.

    >>> stick, _ = from_points([(0, 0, 0), (0, 12, 0), (0, 12, 12)], 3)
    >>> round(stick.developed_length, 3), round(stick.bends[0].straight, 3)
    (22.712, 9.0)
    """
    if len(points) < 2:
        raise ValueError("a tube needs two points at least")
    legs = [subtract(b, a) for a, b in pairwise(points)]
    lengths = [norm(leg) for leg in legs]
    for i, length in enumerate(lengths):
        if not 0.0 < length < inf:
            raise ValueError(f"points {i + 1} and {i + 2} are the same, or not numbers")
    ahead = [(v[0] / s, v[1] / s, v[2] / s) for v, s in zip(legs, lengths, strict=True)]
    radii = _radii(radius, len(points) - 2)
    angles, turns = [], []
    first: Vector | None = None
    axis = normal
    for i, (u, v) in enumerate(pairwise(ahead)):
        n = cross(u, v)
        size = norm(n)
        angle = atan2(size, dot(u, v))
        if angle > FOLD_ANGLE:
            raise ValueError(
                f"at point {i + 2} the tube folds back on itself: give a U bend as straights, turn and angle"
            )
        turn = 0.0
        if angle <= STRAIGHT_ANGLE:
            angle = 0.0
        else:
            n = (n[0] / size, n[1] / size, n[2] / size)
            if first is None or axis is None:
                first = n
            else:
                turn = atan2(dot(cross(axis, n), u), dot(axis, n))
            axis = n  # square to the next leg too: it needs no carrying along
        angles.append(angle)
        turns.append(turn)
    straights = straights_between(lengths, angles, radii)
    for i, (straight, length) in enumerate(zip(straights, lengths, strict=True)):
        if straight < needed - 1e-12 * max(1.0, length):
            raise TooTightError(i + 1, straight, needed, largest_radius(lengths, angles, needed))
    stick = Stick((Bend(*b) for b in zip(straights, turns, angles, radii, strict=False)), straights[-1])
    return stick, Pose(points[0], ahead[0], first or normal or square_to(ahead[0]))


def to_points(stick: Stick, pose: Pose = START) -> tuple[Vector, ...]:
    """Apex points of a stick, ends included. ValueError for a bend too near pi to have an apex."""
    at, ahead, axis = pose.origin, unit(pose.direction), unit(pose.normal)
    points = [at]
    carried = 0.0
    for number, b in enumerate(stick.bends):
        if b.angle > FOLD_ANGLE:
            raise ValueError(f"bend {number + 1} is a U: it has no apex")
        if number:
            axis = rotated(axis, ahead, b.turn)
        back = setback(b.radius, b.angle)
        at = add(at, ahead, carried + b.straight + back)
        points.append(at)
        ahead = unit(rotated(ahead, axis, b.angle))
        carried = back
    points.append(add(at, ahead, carried + stick.end))
    return tuple(points)
