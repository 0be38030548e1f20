"""The arc cuts the corner: apexes moved outward so that a gap which sharp corners would have is there again.

For shapes of apex points. The apex nearest to where the gap is short (two where both are as near), with the next one
where that does not do, goes out along the bisector of its corner; the ends stay. Things are taken together, so that
their order changes nothing, and a mirrored job gives the mirrored tube. What was read off a bent rod, or is given as
straights and bends, has its arcs in it already and stays.
"""

from __future__ import annotations

from itertools import pairwise
from math import cos

from gaugeblock.answer.making import base
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.calc.path import Path
from gaugeblock.tubes.plan.around import SLACK, gaps_of
from gaugeblock.tubes.plan.corner import sharp_line
from gaugeblock.tubes.plan.shape import Regained

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from gaugeblock.calc.path import Vector
    from gaugeblock.tubes.plan.around import Around, Thing
    from gaugeblock.tubes.plan.shape import Shape

    Ways = Mapping[int, float]  # apex -> how far out it goes

SHAPES = ("single", "offset", "kick_up", "saddle", "points")
_FAR = 4.0  # an apex goes out by so many times what its own arc cuts off, at the most
_MOST = 4  # apexes are moved for one thing
_ROUNDS = 12  # in which several groups of apexes find their places beside each other
_ALIKE = 1e-7  # m: two apexes are as near


def regained(shape: Shape, around: Around, *, radius: float, step: float) -> Shape:
    """The shape with apexes moved until each gap wanted that sharp corners would keep is kept by the arcs too.

    Where no place within reach brings the gap back, the apexes stay and the sheet's check says what is missing.
    """
    if shape.kind not in SHAPES or shape.points is None or len(shape.points) < 3:
        return shape
    corner = _Corners(shape, around, radius)
    short = corner.short(step)
    groups = _merged([(corner.group(s), [s]) for s in short])
    ways = corner.places([(apexes, things) for apexes, things in groups if apexes])
    if not ways:
        return shape
    points = corner.moved(ways)
    stick, pose = paths.from_points(points, radius, 0.0, shape.pose.normal)
    told = []
    leaves = list(shape.leaves)
    for apexes, things in groups:
        places = sorted(i for i in apexes if ways.get(i))
        for s in things if places else ():
            asked = s.thing.asked
            if asked is None:
                continue
            numbers = [i + 1 for i in places]
            to = [points[i] for i in places]
            far = max(ways[i] for i in places)
            told.append(Regained(numbers, far, to, s.thing.body.name, s.sharp.gap, s.bent.gap, asked))
            leaves += [f for f in (*s.thing.leaves, asked) if f not in leaves]
    return shape.replace(points=points, stick=stick, pose=pose, leaves=tuple(leaves), regained=tuple(told))


class _Short:
    """A thing whose gap the arcs take away: its gaps with sharp corners and bent."""

    __slots__ = ("bent", "sharp", "thing")

    def __init__(self, thing: Thing, sharp: calc.Gap, bent: calc.Gap) -> None:
        self.thing = thing
        self.sharp = sharp
        self.bent = bent


Groups = list[tuple[frozenset[int], list[_Short]]]


class _Corners:
    """The corners of a shape, and the gaps that it has with some of them moved out."""

    def __init__(self, shape: Shape, around: Around, radius: float) -> None:
        self.points: tuple[Vector, ...] = shape.points or ()
        self.normal = shape.pose.normal
        self.around = around
        self.radius = radius
        self.angles = {i: b.angle for i, b in enumerate(shape.stick.bends, 1) if b.angle > 0}
        ahead = [paths.unit(paths.subtract(b, a)) for a, b in pairwise(self.points)]
        self.out = {i: paths.unit(paths.subtract(ahead[i - 1], ahead[i])) for i in self.angles}

    def short(self, step: float) -> list[_Short]:
        """What the arcs take the gap from, that sharp corners would keep."""
        wanted = [t for t in self.around.things if t.asked is not None]
        bent, sharp = (
            _along(self.around.tube, self._line({}) or Path(())),
            _along(self.around.tube, sharp_line(self.points)),
        )
        gaps = gaps_of([(tube, t.body) for t in wanted for tube in (sharp, bent)])
        out = []
        for thing, before, after in zip(wanted, gaps[::2], gaps[1::2], strict=True):
            asked = base(thing.asked) if thing.asked is not None else 0.0
            if after.low < asked - SLACK <= before.gap and before.gap - after.gap > step / 2:
                out.append(_Short(thing, before, after))
        return out

    def moved(self, ways: Ways) -> tuple[Vector, ...]:
        """The apex points with some moved out."""
        return tuple(paths.add(p, self.out[i], ways[i]) if ways.get(i) else p for i, p in enumerate(self.points))

    def group(self, short: _Short) -> frozenset[int]:
        """The apexes that bring the gap of one thing back, the nearest first; none where no place within reach does."""
        apexes: frozenset[int] = frozenset()
        at = short.bent.at
        while len(apexes) < min(len(self.angles), _MOST):
            apexes |= self._nearest(at, apexes)
            if self._way(apexes, [short], {}) is not None:
                return apexes
            # what is short now lies at another corner: that one goes out too
            least = self._gaps([short], dict.fromkeys(apexes, self._cut(apexes)))
            if least is None:
                break
            at = least[0].at
        return frozenset()

    def _nearest(self, at: Vector, but: frozenset[int]) -> frozenset[int]:
        far = {i: paths.norm(paths.subtract(self.points[i], at)) for i in self.angles if i not in but}
        nearest = min(far.values())
        return frozenset(i for i, d in far.items() if d <= nearest + _ALIKE)

    def places(self, groups: Groups) -> Ways:
        """How far each apex goes out, for all groups together; nothing where they do not come to rest."""
        ways: dict[int, float] = {}
        for _ in range(_ROUNDS):
            found: dict[int, float] = {}
            for apexes, things in groups:
                others = {i: w for i, w in ways.items() if i not in apexes}
                way = self._way(apexes, things, others)
                if way is None:
                    return {}
                found |= dict.fromkeys(apexes, way)
            settled = all(abs(found[i] - ways.get(i, 0.0)) <= 2 * calc.TOLERANCE for i in found)
            ways = found
            if settled or len(groups) < 2:
                break
        return ways if self._holds([s for _, things in groups for s in things], ways) else {}

    def _way(self, apexes: frozenset[int], things: Sequence[_Short], others: Ways) -> float | None:
        """How far a group must go out, the others where they are; None where it reaches nothing."""
        cut = self._cut(apexes)

        def reaches(way: float) -> bool:
            return self._holds(things, {**others, **dict.fromkeys(apexes, way)})

        if others and reaches(0.0):
            return 0.0
        low, high = 0.0, cut
        while not reaches(high) and high < _FAR * cut:
            low, high = high, 2 * high
        if not reaches(high):
            return None
        while high - low > calc.TOLERANCE:
            middle = (low + high) / 2
            low, high = (low, middle) if reaches(middle) else (middle, high)
        return high

    def _cut(self, apexes: Iterable[int]) -> float:
        """The most that an arc of these apexes cuts off its corner."""
        return max(self.radius * (1 / cos(self.angles[i] / 2) - 1) for i in apexes)

    def _holds(self, things: Sequence[_Short], ways: Ways) -> bool:
        gaps = self._gaps(things, ways)
        if gaps is None:
            return False
        wanted = (s.thing.asked for s in things)
        return all(asked is None or g.low >= base(asked) for asked, g in zip(wanted, gaps, strict=True))

    def _gaps(self, things: Sequence[_Short], ways: Ways) -> list[calc.Gap] | None:
        """The gaps with apexes moved out; None where the shape cannot be bent so."""
        line = self._line(ways)
        if line is None:
            return None
        tube = _along(self.around.tube, line)
        return gaps_of([(tube, s.thing.body) for s in things])

    def _line(self, ways: Ways) -> Path | None:
        try:
            return paths.path(*paths.from_points(self.moved(ways), self.radius, 0.0, self.normal))
        except ValueError:
            return None


def _merged(groups: Groups) -> Groups:
    """Groups that share an apex made one, whatever their order."""
    out: Groups = []
    for apexes, things in groups:
        if not apexes:
            continue
        shared = [g for g in out if g[0] & apexes]
        out = [g for g in out if not g[0] & apexes]
        out.append((apexes.union(*(g[0] for g in shared)), [t for g in shared for t in g[1]] + things))
    return out


def _along(tube: calc.Tube, line: Path) -> calc.Tube:
    """The tube on another path; a collar that would lie off a shorter one stands at its end."""
    collars = [(min(at, line.length), long, radius) for at, long, radius in tube.collars]
    return calc.Tube(tube.name, line, tube.radius, collars, tube.moves)
