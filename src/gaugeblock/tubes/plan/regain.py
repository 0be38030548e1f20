"""The arc cuts the corner: apexes moved outward so that a gap which sharp corners would have is there again.

For shapes of apex points. The apex nearest to where the gap is short, with the next one where that does not do, goes
out along the bisector of its corner; the ends stay. What was read off a bent rod, or is given as straights and bends, has its arcs in it already and stays.
"""

from __future__ import annotations

from itertools import pairwise
from math import cos

from gaugeblock import units
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.calc.path import Line, Path
from gaugeblock.tubes.plan.keys import Regained
from gaugeblock.tubes.plan.space import SLACK, gap_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from gaugeblock.calc.path import Vector
    from gaugeblock.tubes.plan.keys import Shape
    from gaugeblock.tubes.plan.space import Thing

SHAPES = ("single", "offset", "kick_up", "saddle", "points")
_FAR = 4.0  # an apex goes out by so many times what its own arc cuts off, at the most
_MOST = 3  # apexes are moved for one thing


def regain(shape: Shape, tube: calc.Tube, things: Sequence[Thing], *, radius: float, step: float) -> list[Regained]:
    """Move apexes of ``shape`` until each gap asked that sharp corners would keep is kept by the arcs too.

    ``tube`` gives radius, collars and movement. Where no place within reach brings the gap back, the apexes stay and the
    sheet's check says what is missing.
    """
    if shape.kind not in SHAPES or shape.points is None or len(shape.points) < 3:
        return []
    out: list[Regained] = []
    for thing in things:
        points = shape.points
        found = _moved(points, shape, tube, thing, radius, step)
        if found is not None:
            new = dict(zip((n - 1 for n in found.apexes), found.places, strict=True))
            shape.points = tuple(new.get(i, p) for i, p in enumerate(points))
            shape.stick, shape.pose = paths.from_points(shape.points, radius, 0.0, shape.pose.normal)
            out.append(found)
    return out


def _moved(
    points: tuple[Vector, ...], shape: Shape, tube: calc.Tube, thing: Thing, radius: float, step: float
) -> Regained | None:
    if thing.asked is None or shape.stick is None:
        return None
    asked = units.to_base(thing.asked.typical, thing.asked.unit)
    bent = gap_of(_along(tube, shape.line()), thing.body)
    legs = [Line(a, paths.unit(v), paths.norm(v)) for a, v in ((a, paths.subtract(b, a)) for a, b in pairwise(points))]
    sharp = gap_of(_along(tube, Path(legs)), thing.body)
    if bent.low >= asked - SLACK or sharp.gap < asked - SLACK or sharp.gap - bent.gap <= step / 2:
        return None
    corners = {
        i: shape.stick.bends[i - 1].angle for i in range(1, len(points) - 1) if shape.stick.bends[i - 1].angle > 0
    }

    def places(way: float) -> list[Vector]:
        """The moved apexes out by ``way`` along the bisectors of their corners."""
        return [
            paths.add(points[i], paths.unit(paths.subtract(legs[i - 1].direction, legs[i].direction)), way)
            for i in moving
        ]

    def gap(way: float) -> calc.Gap | None:
        """The gap with the apexes out by ``way``; None where the shape cannot be bent so."""
        new = dict(zip(moving, places(way), strict=True))
        try:
            stick, pose = paths.from_points(
                [new.get(i, p) for i, p in enumerate(points)], radius, 0.0, shape.pose.normal
            )
        except ValueError:
            return None
        return gap_of(_along(tube, paths.path(stick, pose)), thing.body)

    def reaches(way: float) -> bool:
        got = gap(way)
        return got is not None and got.low >= asked

    moving: list[int] = []
    at = bent.at
    while len(moving) < min(len(corners), _MOST):
        moving.append(min((i for i in corners if i not in moving), key=_from(points, at)))
        cut = max(radius * (1 / cos(corners[i] / 2) - 1) for i in moving)
        low, high = 0.0, cut
        while not reaches(high) and high < _FAR * cut:
            low, high = high, 2 * high
        if reaches(high):
            while high - low > calc.TOLERANCE:
                middle = (low + high) / 2
                low, high = (low, middle) if reaches(middle) else (middle, high)
            return Regained(
                [i + 1 for i in moving], high, places(high), thing.body.name, (sharp.gap, bent.gap), thing.asked
            )
        # what is short now lies at another corner: that one goes out too
        least = gap(cut)
        if least is None:
            break
        at = least.at
    return None


def _from(points: Sequence[Vector], at: Vector) -> Callable[[int], float]:
    """How far each point lies from a place."""
    return lambda i: paths.norm(paths.subtract(points[i], at))


def _along(tube: calc.Tube, line: Path) -> calc.Tube:
    """The tube on another path; a collar that would lie off a shorter one stands at its end."""
    collars = [(min(at, line.length), long, radius) for at, long, radius in tube.collars]
    return calc.Tube(tube.name, line, tube.radius, collars, tube.moves)
