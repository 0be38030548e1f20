"""From a stick to marks on a straight tube: cut length, start-of-bend marks, angles to set, grips, seam, rounding.

Metres and radians. Positions along the tube are measured on the blank, which has trim beyond each finished end.
"""

from __future__ import annotations

from itertools import pairwise
from math import floor, pi, sin

from gaugeblock.calc.path import START, Arc, Bend, Line, Path, Stick, cross, norm, path, subtract
from gaugeblock.calc.tubes import springback_sheet, springback_tube

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Pose


class Die:
    """A bending die: centre-line radius, how far its mark stands before the tangent point, the straight it grips.

    ``mark_offset`` is positive when the mark on the tube goes before the start of the bend, on the side of the grip.
    ``between`` is the straight needed between two bends, as ``grip`` when it is None. ``tests`` are (set, got) angles.
    """

    __slots__ = ("between", "grip", "mark_offset", "radius", "tests")

    def __init__(
        self,
        radius: float,
        mark_offset: float = 0.0,
        grip: float = 0.0,
        between: float | None = None,
        tests: Sequence[tuple[float, float]] = (),
    ) -> None:
        self.radius = radius
        self.mark_offset = mark_offset
        self.grip = grip
        self.between = grip if between is None else between
        self.tests = tuple(tests)


class Mark:
    """A start-of-bend mark: its bend, exact and rounded position from the datum, and what is set there.

    ``position`` is negative on the start's side of the datum; ``goes`` is 1 when the bend lies beyond the mark towards
    the far end of the tube, -1 towards its start. ``line`` is where the inside of the bend lies round the tube,
    clockwise from that of the first bend as seen from the start; ``turn`` is the step from the bend before.
    """

    __slots__ = ("angle", "arc", "goes", "line", "number", "position", "radius", "rounded", "tangent", "turn")

    def __init__(
        self,
        *,
        number: int,
        position: float,
        rounded: float,
        goes: int,
        tangent: float,
        angle: float,
        turn: float,
        line: float,
        radius: float,
    ) -> None:
        self.number = number
        self.position = position
        self.rounded = rounded
        self.goes = goes
        self.tangent = tangent
        self.angle = angle
        self.turn = turn
        self.line = line
        self.radius = radius
        self.arc = radius * angle


class Layout:
    """Marks of one tube: where the blank's ends and the bends lie from the datum, exact and rounded, and the order."""

    __slots__ = (
        "cut_length",
        "datum",
        "end",
        "end_rounded",
        "marks",
        "order",
        "start",
        "start_rounded",
        "stick",
        "trim_end",
        "trim_start",
    )

    def __init__(
        self,
        *,
        stick: Stick,
        datum: float,
        trims: tuple[float, float],
        start: tuple[float, float],
        end: tuple[float, float],
        marks: Sequence[Mark],
        order: Sequence[int],
    ) -> None:
        self.stick = stick
        self.datum = datum
        self.trim_start, self.trim_end = trims
        self.start, self.start_rounded = start
        self.end, self.end_rounded = end
        self.marks = tuple(marks)
        self.order = tuple(order)
        self.cut_length = stick.developed_length + trims[0] + trims[1]


def round_to(value: float, step: float | None) -> float:
    """The nearest whole step, halves up; the value itself without a step. A float within 1e-9 of a step is that
    step.
    """
    if not step:
        return value
    return floor(value / step + 0.5 + 1e-9) * step


def lay_out(
    stick: Stick,
    die: Die,
    *,
    trims: tuple[float, float] = (0.0, 0.0),
    datum: str | float = "start",
    step: float | None = None,
) -> Layout:
    """The marks of a stick from ``datum``: "start" or "end" (the blank's cut ends), "centre", or a place along the
    tube.

    From an end every bend goes away from it. From the centre, or a place in metres from the finished start, bends go
    outward both ways: the mark of each is at its tangent nearer the datum, and a bend over the datum goes to the far
    end. Every mark is rounded from its own exact place, so errors never add up: each is half a step at most.
    """
    if min(trims) < 0:
        raise ValueError("a trim is not negative")
    length = stick.developed_length
    inward = -1 if datum == "end" else 1
    if isinstance(datum, str):
        places = {"start": -trims[0], "end": length + trims[1], "centre": length / 2}
        if datum not in places:
            raise ValueError("a datum is start, end, centre or a place along the tube")
        zero = places[datum]
        outward = datum == "centre"
    else:
        if not 0 <= datum <= length:
            raise ValueError("the datum lies off the tube")
        zero, outward = datum, True
    marks = []
    for number, (b, (first, last), line) in enumerate(zip(stick.bends, stick.tangents, stick.lines, strict=True), 1):
        goes = (-1 if last <= zero + 1e-12 and b.angle > 0 else 1) if outward else inward
        exact = (first - die.mark_offset if goes > 0 else last + die.mark_offset) - zero
        marks.append(
            Mark(
                number=number,
                position=exact,
                rounded=round_to(exact, step),
                goes=goes,
                tangent=first if goes > 0 else last,
                angle=b.angle,
                turn=b.turn if number > 1 else 0.0,
                line=line,
                radius=b.radius,
            )
        )
    order = sorted(marks, key=lambda m: (-m.goes, m.goes * m.position) if outward else m.goes * m.position)
    start, end = -trims[0] - zero, length + trims[1] - zero
    cut = round_to(end - start, step)  # the blank has one length, wherever its marks are from
    first = -cut if datum == "end" else round_to(start, step)
    return Layout(
        stick=stick,
        datum=zero,
        trims=trims,
        start=(start, first),
        end=(end, first + cut),
        marks=marks,
        order=[m.number for m in order],
    )


def as_marked(
    layout: Layout, die: Die, angles: Sequence[float] | None = None, turns: Sequence[float] | None = None
) -> Stick:
    """The stick that comes off the rounded marks (and rounded angles and turns, when given): for its effect on the
    shape.

    ValueError when rounding leaves a straight under nothing.
    """
    bends, at = [], layout.start_rounded + layout.trim_start
    for i, mark in enumerate(layout.marks):
        angle = mark.angle if angles is None else angles[i]
        turn = mark.turn if turns is None else turns[i]
        arc = mark.radius * angle
        first = mark.rounded + die.mark_offset if mark.goes > 0 else mark.rounded - die.mark_offset - arc
        if first < at - 1e-9:
            raise ValueError(f"rounded marks leave no straight before bend {mark.number}")
        bends.append(Bend(first - at, turn, angle, mark.radius))
        at = first + arc
    return Stick(bends, layout.end_rounded - layout.trim_end - at)


def shape_shift(stick: Stick, other: Stick, pose: Pose = START) -> float:
    """Greatest distance between the two shapes at their tangents and ends, m, both held by their first straight."""
    one, two = path(stick, pose), path(other, pose)
    return max(norm(subtract(a, b)) for a, b in zip(_joints(one), _joints(two), strict=True))


def _joints(line: Path) -> list[tuple[float, float, float]]:
    return [part.at(0.0) for part in line.parts] + [line.parts[-1].at(line.parts[-1].length)]


def rounding_bound(
    stick: Stick, step: float, angle_step: float = 0.0, turn_step: float = 0.0, *, outward: bool = False
) -> float:
    """No point of the finished tube is further off than this, m, when marks, angles and turns are rounded to steps.

    ``outward`` when marks go out from the centre: then both ends of the blank are off, the far one by two half steps.
    A mark out by e moves what follows by e |u1 - u2| = 2 e sin(A/2), an end by e. An angle out by d swings what
    follows by d times its distance from the centre of the bend, and the next straight takes up R d. A turn out by
    t swings it by t times its distance from the straight's line. The moves are isometries, so they add at most.
    """
    e, d, t = step / 2, angle_step / 2, turn_step / 2
    line = path(stick)
    total = (3 if outward else 2) * e
    for i, part in enumerate(line.parts):
        rest = line.parts[i:]
        if isinstance(part, Arc):
            total += 2 * e * (sin((part.angle + d) / 2) if part.angle + d < pi else 1.0)
            total += d * (max(_reach(p, part.centre, None) for p in rest) + part.radius)
        elif i and t:
            total += t * max(_reach(p, part.at(0.0), part.heading(0.0)) for p in rest)
    return total


def _reach(part: Line | Arc, point: tuple[float, float, float], axis: tuple[float, float, float] | None) -> float:
    """Farthest a part lies from a point, or from the line through it; an arc by its centre and radius."""

    def off(q: tuple[float, float, float]) -> float:
        v = subtract(q, point)
        return norm(v) if axis is None else norm(cross(axis, v))

    if isinstance(part, Arc):
        return off(part.centre) + part.radius
    return max(off(part.at(0.0)), off(part.at(part.length)))


class OutsideTestsError(ValueError):
    """The wanted angle lies outside the test bends: the lowest and highest angle got there, rad."""

    def __init__(self, angle: float, lowest: float, highest: float) -> None:
        super().__init__(
            f"{angle * 180 / pi:.2f} deg lies outside the test bends, which gave {lowest * 180 / pi:.2f}"
            f" to {highest * 180 / pi:.2f} deg: bend one more test piece"
        )
        self.lowest = lowest
        self.highest = highest


def set_angle(angle: float, tests: Sequence[tuple[float, float]]) -> float:
    """Angle to set for a wanted angle, rad, by straight lines between test bends (set, got). Never past the tests.

    ValueError when the tests do not rise together; OutsideTestsError past them. One test serves its own angle only.

    >>> from math import degrees, radians
    >>> tests = [(radians(48), radians(45)), (radians(95), radians(90))]
    >>> round(degrees(set_angle(radians(60), tests)), 3)
    63.667
    """
    rows = sorted((got, put) for put, got in tests)
    if not rows:
        raise ValueError("no test bends")
    for (got_1, set_1), (got_2, set_2) in pairwise(rows):
        if not (got_2 > got_1 and set_2 > set_1):
            raise ValueError("of two test bends, the one set further got further")
    slack = 1e-9
    if not rows[0][0] - slack <= angle <= rows[-1][0] + slack:
        raise OutsideTestsError(angle, rows[0][0], rows[-1][0])
    for (got_1, set_1), (got_2, set_2) in pairwise(rows):
        if angle <= got_2:
            return set_1 + (set_2 - set_1) * (angle - got_1) / (got_2 - got_1)
    return rows[-1][1]


def set_angle_in_proportion(angle: float, test: tuple[float, float]) -> float:
    """Angle to set for a wanted angle, rad, by one test bend (set, got) of the same stock on the same die.

    The centre line keeps its length, so the angle set is the angle wanted over the ratio of the two radii, which is
    that of the test. ValueError where the test kept nothing.

    >>> from math import degrees, radians
    >>> round(degrees(set_angle_in_proportion(radians(90), (radians(47), radians(45)))), 3)
    94.0
    """
    put, got = test
    if got <= 0:
        raise ValueError("the test bend kept no angle")
    return angle * put / got


def set_angle_estimate(
    angle: float, *, radius: float, od: float, wall: float, yields: tuple[float, float], modulus: float
) -> tuple[float, float]:
    """Lowest and highest estimate of the angle to set, rad, over both springback formulas and the band of yield, Pa.

    The sheet formula is taken at the tube's diameter, the other is that of a fully plastic round tube (calc.tubes).
    ValueError where the radius is elastic. The centre line keeps its length, so the angle set is the angle wanted
    over the springback ratio. An estimate:
    hardening is left out, and a test bend of the same lot comes first.
    """
    ratios = []
    for y in yields:
        if radius * y / (modulus * od) >= 0.5:
            raise ValueError("the tube would spring back whole: the radius is elastic")
        ratios += [springback_sheet(radius, od, y, modulus), springback_tube(radius, od, od - 2 * wall, y, modulus)]
    if min(ratios) <= 0:
        raise ValueError("the tube would spring back whole: the radius is elastic")
    return angle / max(ratios), angle / min(ratios)


class Grip:
    """One straight against what the die grips: ``number`` from 1, where it is, how long with trim, what is needed."""

    __slots__ = ("available", "needed", "number", "where")

    def __init__(self, number: int, where: str, available: float, needed: float) -> None:
        self.number = number
        self.where = where
        self.available = available
        self.needed = needed

    @property
    def short(self) -> float:
        """How much is missing, m; 0 when it is enough."""
        missing = self.needed - self.available
        return missing if missing > 1e-9 else 0.0


def grips(stick: Stick, die: Die, trims: tuple[float, float] = (0.0, 0.0)) -> list[Grip]:
    """Every straight against the die's grip; at the ends the trim counts, for the tube is cut back after bending.

    A missing piece at an end can be had by more trim there; one between bends cannot.
    """
    if not stick.bends:
        return []
    straights = stick.straights
    last = len(straights)
    out = [Grip(1, "start", straights[0] + trims[0], die.grip)]
    out += [Grip(n, "between", s, die.between) for n, s in enumerate(straights[1:-1], 2)]
    return [*out, Grip(last, "end", straights[-1] + trims[1], die.grip)]


def seam_line(lines: Sequence[float]) -> tuple[float, float]:
    """Where to put the weld seam round the tube, rad from the first bend's inside, and how far it is from any bend's
    inside or outside line at the least: pi/2 (the neutral line) for a flat tube, less when bends lie in several planes.

    >>> seam_line([0.0, 3.141592653589793])[0] == 3.141592653589793 / 2
    True
    """
    hand = next((x % pi for x in lines if 1e-9 < x % pi < pi - 1e-9), 0.0)
    if hand > pi / 2 + 1e-9:  # of places alike the mirrored tube takes the mirrored one
        at, clear = seam_line([-x for x in lines])
        return -at % pi, clear
    half = sorted({round(x % pi, 12) % round(pi, 12) for x in lines} or {0.0})
    gaps = [(b - a, a) for a, b in zip(half, [*half[1:], half[0] + pi], strict=True)]
    gap, after = max(gaps, key=lambda g: (round(g[0], 9), -g[1]))
    return (after + gap / 2) % pi, gap / 2
