"""Surface gaps between bent tubes, pipes, boxes and planes, with movement, flanges, and a part taken out past them.

Metres, vehicle axes (rearward, right, up). The answer is a pair: ``gap`` is reached by the two points given, and no
gap is under ``low``. Tubes count as round over their ends (half a sphere more than the cut end): on the safe side.
"""

from __future__ import annotations

from math import inf, sqrt

from gaugeblock.calc.bounded import curve_pair, curve_to_solid
from gaugeblock.calc.path import Line, Path, add, dot, norm, subtract, unit

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from gaugeblock.calc.path import Vector

    Solid: TypeAlias = "Box | Cylinder"

TOLERANCE = 1e-5  # m between ``gap`` and ``low``
_MANY = 100  # pairs; more are quicker all at once, with numpy's time to load
AXES = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


class Moves:
    """How far a part may move from where it stands, by direction, m: never negative. Parts of one ``group`` move
    together.
    """

    __slots__ = ("group", "high", "low")

    def __init__(
        self,
        *,
        forward: float = 0.0,
        rearward: float = 0.0,
        left: float = 0.0,
        right: float = 0.0,
        down: float = 0.0,
        up: float = 0.0,
        group: str = "",
    ) -> None:
        if min(forward, rearward, left, right, down, up) < 0:
            raise ValueError("a movement is not negative: name its direction")
        self.low = (-forward, -left, -down)
        self.high = (rearward, right, up)
        self.group = group


STILL = Moves()


class Tube:
    """A round body along a path: a tube, line or pipe. ``collars`` are (place along, length, radius): flanges,
    clamps.
    """

    __slots__ = ("collars", "moves", "name", "path", "radius")

    def __init__(
        self,
        name: str,
        path: Path,
        radius: float,
        collars: Sequence[tuple[float, float, float]] = (),
        moves: Moves = STILL,
    ) -> None:
        self.name = name
        self.path = path
        self.radius = radius
        self.collars = tuple(collars)
        self.moves = moves

    def solids(self) -> list[Cylinder]:
        """The collars as cylinders in space."""
        return [
            Cylinder(self.path.at(place), self.path.heading(place), length / 2, radius)
            for place, length, radius in self.collars
        ]


def straight_pipe(name: str, start: Vector, end: Vector, radius: float, moves: Moves = STILL) -> Tube:
    """A pipe that runs straight from point to point."""
    run = subtract(end, start)
    return Tube(name, Path([Line(start, unit(run), norm(run))]), radius, (), moves)


def _outside(*over: float) -> float:
    """Distance of a point from a solid whose sides it is ``over``, each square to the others; negative inside."""
    return sqrt(sum(max(o, 0.0) ** 2 for o in over)) + min(max(over), 0.0)


class Cylinder:
    """A flat-ended round solid: a flange or clamp."""

    __slots__ = ("axis", "centre", "half", "radius")

    def __init__(self, centre: Vector, axis: Vector, half: float, radius: float) -> None:
        self.centre = centre
        self.axis = unit(axis)
        self.half = half
        self.radius = radius

    def signed(self, point: Vector) -> float:
        """Signed distance of a point from it, negative inside."""
        v = subtract(point, self.centre)
        along = dot(v, self.axis)
        across = sqrt(max(0.0, dot(v, v) - along * along))
        return _outside(across - self.radius, abs(along) - self.half)

    def support(self, way: Vector) -> float:
        """How far it reaches in a unit direction."""
        along = dot(self.axis, way)
        return dot(self.centre, way) + abs(along) * self.half + self.radius * sqrt(max(0.0, 1 - along * along))

    def nearest(self, point: Vector) -> Vector:
        """Its point nearest to a point."""
        v = subtract(point, self.centre)
        along = dot(v, self.axis)
        across = add(v, self.axis, -along)
        size = norm(across)
        out = add(self.centre, self.axis, max(-self.half, min(self.half, along)))
        return add(out, across, min(1.0, self.radius / size) if size else 0.0)

    def grown(self, low: Vector, high: Vector) -> Cylinder:
        """The cylinder round every place it may move to: larger than what it sweeps, so gaps come out small, never
        large.
        """
        middle = tuple((a + b) / 2 for a, b in zip(low, high, strict=True))
        half = [(b - a) / 2 for a, b in zip(low, high, strict=True)]
        along = sum(abs(a) * h for a, h in zip(self.axis, half, strict=True))
        across = sum((h * sqrt(max(0.0, 1 - a * a))) for a, h in zip(self.axis, half, strict=True))
        return Cylinder(
            add(self.centre, (middle[0], middle[1], middle[2])), self.axis, self.half + along, self.radius + across
        )


class Box:
    """A box: middle, half sizes along its axes (vehicle axes unless given)."""

    __slots__ = ("axes", "centre", "half", "moves", "name")

    def __init__(
        self, name: str, centre: Vector, half: Vector, axes: tuple[Vector, Vector, Vector] = AXES, moves: Moves = STILL
    ) -> None:
        self.name = name
        self.centre = centre
        self.half = half
        self.axes = (unit(axes[0]), unit(axes[1]), unit(axes[2]))
        self.moves = moves
        if max(abs(dot(self.axes[i], self.axes[j])) for i, j in ((0, 1), (0, 2), (1, 2))) > 1e-9:
            raise ValueError(f"{name}: the axes of a box are square to each other")

    def signed(self, point: Vector) -> float:
        """Signed distance of a point from it, negative inside."""
        v = subtract(point, self.centre)
        return _outside(*(abs(dot(v, axis)) - half for axis, half in zip(self.axes, self.half, strict=True)))

    def support(self, way: Vector) -> float:
        """How far it reaches in a unit direction."""
        return dot(self.centre, way) + sum(h * abs(dot(a, way)) for a, h in zip(self.axes, self.half, strict=True))

    def nearest(self, point: Vector) -> Vector:
        """Its point nearest to a point."""
        v, out = subtract(point, self.centre), self.centre
        for axis, half in zip(self.axes, self.half, strict=True):
            out = add(out, axis, max(-half, min(half, dot(v, axis))))
        return out

    def grown(self, low: Vector, high: Vector) -> Box:
        """The box round every place it may move to: exact along its own axes, larger when it stands askew to them."""
        shift = (low[0] / 2 + high[0] / 2, low[1] / 2 + high[1] / 2, low[2] / 2 + high[2] / 2)
        half = [
            size + sum(abs(axis[k]) * (high[k] - low[k]) / 2 for k in range(3))
            for axis, size in zip(self.axes, self.half, strict=True)
        ]
        return Box(self.name, add(self.centre, shift), (half[0], half[1], half[2]), self.axes)


class Plane:
    """Everything behind a plane: the road, a floor, a wall. ``normal`` points to the free side."""

    __slots__ = ("moves", "name", "normal", "point")

    def __init__(self, name: str, point: Vector, normal: Vector, moves: Moves = STILL) -> None:
        self.name = name
        self.point = point
        self.normal = unit(normal)
        self.moves = moves

    def signed(self, point: Vector) -> float:
        """Signed distance of a point from it, negative behind it."""
        return dot(subtract(point, self.point), self.normal)

    def grown(self, low: Vector, high: Vector) -> Plane:
        """The plane at its nearest to the free side."""
        rise = sum(max(n * a, n * b) for n, a, b in zip(self.normal, low, high, strict=True))
        return Plane(self.name, add(self.point, self.normal, rise), self.normal)


class Gap:
    """Least surface gap of two bodies: reached (``gap``), bounded (``low``), the place, and what made it.

    ``at`` lies on the first body's centre line or collar. Overlap is negative; how deep is not told.
    """

    __slots__ = ("at", "first", "gap", "low", "second", "what")

    def __init__(self, first: str, second: str, gap: float, low: float, at: Vector, what: str) -> None:
        self.first = first
        self.second = second
        self.gap = gap
        self.low = low
        self.at = at
        self.what = what


def _relative(a: Moves, b: Moves) -> tuple[Vector, Vector]:
    """The box that b may move in against a."""
    if a.group and a.group == b.group:
        return (0.0, 0.0, 0.0), (0.0, 0.0, 0.0)
    low = (b.low[0] - a.high[0], b.low[1] - a.high[1], b.low[2] - a.high[2])
    return low, (b.high[0] - a.low[0], b.high[1] - a.low[1], b.high[2] - a.low[2])


def _solid_gap(a: Solid, b: Solid) -> tuple[float, float, Vector]:
    """Gap of two convex solids: points nearest to each other in turn; bounded below by the plane between them."""
    p = a.centre
    high, low = inf, -inf
    for _ in range(400):
        q = b.nearest(p)
        p = a.nearest(q)
        z = subtract(q, p)
        size = norm(z)
        high = min(high, size)
        if size < 1e-12:
            return 0.0, 0.0, p
        way = (z[0] / size, z[1] / size, z[2] / size)
        back = (-way[0], -way[1], -way[2])
        low = max(low, -b.support(back) - a.support(way))
        if high - low < TOLERANCE:
            break
    return high, max(0.0, low), p


def _curve_and_solid(
    tube: Tube,
    name: str,
    solid: Box | Cylinder | Plane,
    what: str,
    tolerance: float,
    best: Gap | None = None,
    travel: Vector | None = None,
) -> Gap:
    """The gap of a tube from a solid (that may move along ``travel``), or ``best`` where that is not over it."""
    ceiling = inf if best is None else best.gap
    gap, at = curve_to_solid(tube.path, tube.radius, solid.signed, tolerance, travel, ceiling)
    if best is not None and (at is None or gap - tolerance >= best.low):
        return best
    return Gap(tube.name, name, gap, gap - tolerance, at or tube.path.at(0.0), what)


def tube_gaps(
    tubes: Sequence[Tube], tolerance: float = TOLERANCE, pairs: Sequence[tuple[int, int]] | None = None
) -> list[Gap]:
    """Least surface gap of every two tubes (or of the ``pairs`` of them that are named) under their movements,
    collars counted; collars move as cylinders round
    their movement, a little on the safe side. 50 tubes of five bends take well under a second."""
    if pairs is None:
        pairs = [(i, j) for i in range(len(tubes)) for j in range(i + 1, len(tubes))]
    boxes = [_relative(tubes[i].moves, tubes[j].moves) for i, j in pairs]
    found = _pairs([(t.path, t.radius) for t in tubes], pairs, tolerance, boxes)
    out = []
    for (i, j), box, (gap, at, _) in zip(pairs, boxes, found, strict=True):
        a, b = tubes[i], tubes[j]
        best = Gap(a.name, b.name, gap, gap - tolerance, at, "tube to tube")
        if a.collars or b.collars:
            best = _collar_gap(a, b, box, tolerance, best)
        out.append(best)
    return out


def _pairs(
    curves: Sequence[tuple[Path, float]],
    pairs: Sequence[tuple[int, int]],
    tolerance: float,
    boxes: Sequence[tuple[Vector, Vector]],
) -> list[tuple[float, Vector, Vector]]:
    """Few pairs one by one; many all at once where numpy is there. Both hold to the tolerance."""
    if len(pairs) > _MANY:
        try:
            from gaugeblock.calc.nearest import curve_pairs
        except ImportError:
            pass
        else:
            return curve_pairs(curves, pairs, tolerance, boxes)
    return [curve_pair(curves[i], curves[j], tolerance, box) for (i, j), box in zip(pairs, boxes, strict=True)]


def _collar_gap(a: Tube, b: Tube, box: tuple[Vector, Vector], tolerance: float, best: Gap) -> Gap:
    """The least gap of two tubes with their collars, where ``best`` is that of the tubes alone."""
    low, high = box
    back = ((-high[0], -high[1], -high[2]), (-low[0], -low[1], -low[2]))
    of_a, of_b = [c.grown(*back) for c in a.solids()], [c.grown(low, high) for c in b.solids()]
    for tube, collars, what in ((b, of_a, "collar to tube"), (a, of_b, "tube to collar")):
        for collar in collars:
            best = _curve_and_solid(tube, a.name, collar, what, tolerance, best)
    for c in a.solids():
        for d in of_b:
            gap, least, at = _solid_gap(c, d)
            if least < best.low:
                best = Gap(a.name, b.name, gap, least, at, "collar to collar")
    best.first, best.second = a.name, b.name
    return best


def obstacle_gaps(tubes: Sequence[Tube], obstacles: Sequence[Box | Plane], tolerance: float = TOLERANCE) -> list[Gap]:
    """Least surface gap of every tube from every box and plane, under their movements, collars counted.

    A box that stands askew to the vehicle grows to the box round its movement: on the safe side.
    """
    out = []
    for tube in tubes:
        for obstacle in obstacles:
            grown = obstacle.grown(*_relative(tube.moves, obstacle.moves))
            best = _curve_and_solid(tube, obstacle.name, grown, "tube", tolerance)
            for collar in tube.solids():
                if isinstance(grown, Plane):
                    down = (-grown.normal[0], -grown.normal[1], -grown.normal[2])
                    gap = least = -collar.support(down) - dot(grown.point, grown.normal)
                    at = collar.centre
                else:
                    gap, least, at = _solid_gap(collar, grown)
                if least < best.low:
                    best = Gap(tube.name, obstacle.name, gap, least, at, "collar")
            out.append(best)
    return out


def taken_out(part: Box, travel: Vector, tubes: Sequence[Tube], tolerance: float = 1e-4) -> list[Gap]:
    """Least gap of every tube from a box that is taken out along a straight line, from where it stands to its end.

    The tubes stand still. Collars are met as cylinders, against the box at 0, 1, ... of 200 steps with half a step
    taken off the gap, which bounds it.
    """
    out = []
    for tube in tubes:
        best = _curve_and_solid(tube, part.name, part, "tube", tolerance, travel=travel)
        half_step = norm(travel) / 400
        for collar in tube.solids():
            for k in range(201):
                moved = Box(part.name, add(part.centre, travel, k / 200), part.half, part.axes)
                gap, least, spot = _solid_gap(collar, moved)
                if least - half_step < best.low:
                    best = Gap(tube.name, part.name, gap, least - half_step, spot, "collar")
        out.append(best)
    return out
