"""A bent tube as a plane frame: reactions, moments, greatest bending stress and deflection under loads in its plane.

Euler-Bernoulli beam elements with stretch, small deflection, straight between the nodes given (a bend is given as
chords). Newtons, metres, pascals; plane axes are (along, up), moments anticlockwise. A screening figure: welds, holes,
out-of-round bends, fatigue, torsion and loads out of the plane are not in it.
"""

from __future__ import annotations

from itertools import pairwise
from math import ceil, hypot

from gaugeblock.calc.tubes import area, second_moment

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from gaugeblock.calc.path import Path, Vector

    Flat: TypeAlias = tuple[float, float]

G = 9.80665  # m/s^2, standard
_WIDTH = 6  # of the band: a chain couples only neighbours
_PARTS, _CLOSE = 12, 1e-9  # an element is looked at in so many parts, then its greatest closed in on
FIXED, PINNED, SLIDING = (True, True, True), (True, True, False), (False, True, False)


class Section:
    """Area (m^2), second moment (m^4) and outer radius (m) of a round tube."""

    __slots__ = ("area", "outer", "second")

    def __init__(self, od: float, wall: float) -> None:
        if not 0 < wall <= od / 2:
            raise ValueError("a wall is over nothing and at most half the diameter")
        self.area = area(od, od - 2 * wall)
        self.second = second_moment(od, od - 2 * wall)
        self.outer = od / 2


class Load:
    """A load at a node: force along, force up, moment."""

    __slots__ = ("along", "moment", "node", "up")

    def __init__(self, node: int, along: float = 0.0, up: float = 0.0, moment: float = 0.0) -> None:
        self.node = node
        self.along = along
        self.up = up
        self.moment = moment


class Answer:
    """What a frame does: displacements and reactions by node, section forces by element, and the worst of them.

    ``moves`` and ``reactions`` are (along, up, turn or moment); ``forces`` are (pull, moment at the first and at the
    second node) of each element, a moment positive when the beam sags; ``moment`` is the greatest in size;
    ``bending_stress`` its stress; ``stress`` the greatest of bending plus pull; ``sag`` the greatest displacement
    anywhere, between nodes too.
    """

    __slots__ = ("bending_stress", "forces", "moment", "moment_node", "moves", "reactions", "sag", "stress")

    def __init__(
        self,
        moves: list[tuple[float, float, float]],
        reactions: dict[int, tuple[float, float, float]],
        forces: list[tuple[float, float, float]],
        section: Section,
        sag: float,
    ) -> None:
        self.moves = moves
        self.reactions = reactions
        self.forces = forces
        ends = [(abs(m), i + k) for i, (_, *both) in enumerate(forces) for k, m in enumerate(both)]
        self.moment, self.moment_node = max(ends, key=lambda row: (row[0], -row[1]))
        self.bending_stress = self.moment * section.outer / section.second
        self.stress = max(
            abs(m) * section.outer / section.second + abs(pull) / section.area for pull, *both in forces for m in both
        )
        self.sag = sag


def solve(
    nodes: Sequence[Flat],
    section: Section,
    modulus: float,
    feet: dict[int, tuple[bool, bool, bool]],
    loads: Sequence[Load],
) -> Answer:
    """A chain of beam elements through the nodes, held at ``feet`` (what is held: along, up, turn), under loads.

    Banded elimination in exact node order: a chain couples only neighbours. ValueError when it is not held.

    >>> section = Section(0.04, 0.003)
    >>> nodes = [(i * 0.1, 0.0) for i in range(11)]
    >>> a = solve(nodes, section, 200e9, {0: PINNED, 10: SLIDING}, [Load(5, up=-1000.0)])
    >>> round(a.moment, 6), round(a.sag / (1000.0 / (48 * 200e9 * section.second)), 9)
    (250.0, 1.0)
    """
    if modulus <= 0 or len(nodes) < 2:
        raise ValueError("a frame needs two nodes and a modulus over nothing")
    if any(a == b for a, b in pairwise(nodes)):
        raise ValueError("two nodes that follow each other are the same")
    if not _holds(nodes, feet):
        raise ValueError("the frame is not held: it can move without bending")
    size, width = 3 * len(nodes), _WIDTH
    matrix, elements = _assembled(nodes, section, modulus)
    force = [0.0] * size
    for load in loads:
        for k, value in enumerate((load.along, load.up, load.moment)):
            force[3 * load.node + k] += value
    held = [3 * node + k for node, fix in feet.items() for k in range(3) if fix[k]]
    stiff, right = [row[:] for row in matrix], list(force)
    for d in held:
        for c in range(max(0, d - width + 1), min(size, d + width)):
            stiff[d][c - d + width - 1] = 0.0
            stiff[c][d - c + width - 1] = 0.0
        stiff[d][width - 1] = 1.0
        right[d] = 0.0
    moved = _eliminate(stiff, right, width)
    reactions = {}
    for node, fix in feet.items():
        out = []
        for k in range(3):
            d = 3 * node + k
            total = sum(
                matrix[d][c - d + width - 1] * moved[c] for c in range(max(0, d - width + 1), min(size, d + width))
            )
            out.append(total - force[d] if fix[k] else 0.0)
        reactions[node] = (out[0], out[1], out[2])
    forces = [_section_forces(section, modulus, e, moved[3 * i : 3 * i + 6]) for i, e in enumerate(elements)]
    moves = [(moved[3 * i], moved[3 * i + 1], moved[3 * i + 2]) for i in range(len(nodes))]
    ends = [(e, moved[3 * i : 3 * i + 6]) for i, e in enumerate(elements)]
    sag = 0.0
    for bound, at in sorted(((_bound(*of), i) for i, of in enumerate(ends)), reverse=True):
        if bound < sag:
            break  # no other element can move so far
        sag = max(sag, _greatest(*ends[at]))
    return Answer(moves, reactions, forces, section, sag)


def _assembled(
    nodes: Sequence[Flat], section: Section, modulus: float
) -> tuple[list[list[float]], list[tuple[float, float, float]]]:
    """The banded stiffness of the chain, row r and column c at [r][c - r + width - 1]; direction and length by
    element.
    """
    matrix = [[0.0] * (2 * _WIDTH - 1) for _ in range(3 * len(nodes))]
    elements = []
    for i, (a, b) in enumerate(pairwise(nodes)):
        x, y = b[0] - a[0], b[1] - a[1]
        length = hypot(x, y)
        stiffness = _turned(_element(section, modulus, length), x / length, y / length)
        elements.append((x / length, y / length, length))
        for p in range(6):
            for q in range(6):
                matrix[3 * i + p][q - p + _WIDTH - 1] += stiffness[p][q]
    return matrix, elements


def _element(section: Section, modulus: float, length: float) -> list[list[float]]:
    """Stiffness of a beam element in its own axes."""
    ea, ei = modulus * section.area / length, modulus * section.second
    a, b, c = 12 * ei / length**3, 6 * ei / length**2, 2 * ei / length
    return [
        [ea, 0, 0, -ea, 0, 0],
        [0, a, b, 0, -a, b],
        [0, b, 2 * c, 0, -b, c],
        [-ea, 0, 0, ea, 0, 0],
        [0, -a, -b, 0, a, -b],
        [0, b, c, 0, -b, 2 * c],
    ]


def _turned(k: list[list[float]], cos: float, sin: float) -> list[list[float]]:
    """An element's stiffness in the frame's axes."""

    def rows(m: list[list[float]]) -> list[list[float]]:
        out = [row[:] for row in m]
        for p in (0, 3):
            out[p] = [cos * a - sin * b for a, b in zip(m[p], m[p + 1], strict=True)]
            out[p + 1] = [sin * a + cos * b for a, b in zip(m[p], m[p + 1], strict=True)]
        return out

    def over(m: list[list[float]]) -> list[list[float]]:
        return [[row[c] for row in m] for c in range(6)]

    return over(rows(over(rows(k))))


def _holds(nodes: Sequence[Flat], feet: dict[int, tuple[bool, bool, bool]]) -> bool:
    """Whether the feet stop the two slides and the turn of the whole: the three motions seen at what is held."""
    x0, y0 = nodes[0]
    size = max(hypot(x - x0, y - y0) for x, y in nodes)
    rows = []
    for node, fix in feet.items():
        x, y = (nodes[node][0] - x0) / size, (nodes[node][1] - y0) / size
        rows += [r for r, held in zip(((1.0, 0.0, -y), (0.0, 1.0, x), (0.0, 0.0, 1.0)), fix, strict=True) if held]
    a, b, c = ([sum(r[i] * r[k] for r in rows) for k in range(3)] for i in range(3))
    crossed = (b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2], b[0] * c[1] - b[1] * c[0])
    return sum(p * q for p, q in zip(a, crossed, strict=True)) > 1e-9


def _eliminate(matrix: list[list[float]], right: list[float], width: int) -> list[float]:
    """Banded elimination of a symmetric positive matrix."""
    size, middle = len(matrix), width - 1
    for d in range(size):
        pivot = matrix[d][middle]
        for r in range(d + 1, min(size, d + width)):
            share = matrix[r][d - r + middle] / pivot
            if share:
                for c in range(d, min(size, d + width)):
                    matrix[r][c - r + middle] -= share * matrix[d][c - d + middle]
                right[r] -= share * right[d]
    for d in range(size - 1, -1, -1):
        known = sum(matrix[d][c - d + middle] * right[c] for c in range(d + 1, min(size, d + width)))
        right[d] = (right[d] - known) / matrix[d][middle]
    return right


def _own_axes(element: tuple[float, float, float], moved: Sequence[float]) -> list[float]:
    """The displacements of both ends in the axes of their element."""
    cos, sin, _ = element
    return [
        cos * moved[0] + sin * moved[1],
        -sin * moved[0] + cos * moved[1],
        moved[2],
        cos * moved[3] + sin * moved[4],
        -sin * moved[3] + cos * moved[4],
        moved[5],
    ]


def _bound(element: tuple[float, float, float], moved: Sequence[float]) -> float:
    """What no point of one element moves beyond: its ends' displacements and, of their turns, 4/27 of its length."""
    u1, v1, t1, u2, v2, t2 = map(abs, _own_axes(element, moved))
    return hypot(max(u1, u2), max(v1, v2) + element[2] * (t1 + t2) * 4 / 27) * (1 + 1e-9)


def _greatest(element: tuple[float, float, float], moved: Sequence[float]) -> float:
    """The greatest displacement along one element: between its nodes a beam bends as a cubic and stretches evenly."""
    u1, v1, t1, u2, v2, t2 = _own_axes(element, moved)
    length = element[2]

    def size(s: float) -> float:
        a, b = 1 - 3 * s**2 + 2 * s**3, 3 * s**2 - 2 * s**3
        c, d = s * (1 - s) ** 2, s**2 * (s - 1)
        return hypot(u1 + (u2 - u1) * s, a * v1 + b * v2 + length * (c * t1 + d * t2))

    best = max(range(_PARTS + 1), key=lambda i: size(i / _PARTS))
    low, high = max(best - 1, 0) / _PARTS, min(best + 1, _PARTS) / _PARTS
    while high - low > _CLOSE:  # the middle third that cannot hold the greatest goes
        one, two = low + (high - low) / 3, high - (high - low) / 3
        low, high = (one, high) if size(one) < size(two) else (low, two)
    return max(size((low + high) / 2), size(best / _PARTS))


def _section_forces(
    section: Section, modulus: float, element: tuple[float, float, float], moved: Sequence[float]
) -> tuple[float, float, float]:
    """Pull, and the sagging moments at both ends of one element."""
    length, own = element[2], _own_axes(element, moved)
    k = _element(section, modulus, length)
    f = [sum(a * b for a, b in zip(row, own, strict=True)) for row in k]
    return f[3], -f[2], f[5]


def nodes_of(
    line: Path, along: Vector, up: Vector, places: Sequence[float] = (), spacing: float = 0.02
) -> tuple[list[Flat], list[int]]:
    """Nodes of a flat path for ``solve``: its tangents, ``places`` along it (for loads and feet), and more between.

    ``along`` and ``up`` are the plane's unit vectors. Returns the nodes and the node number of each place. Straights
    are exact with any spacing; the chords of a bend stray from it by spacing^2 / 8R. A node between that lies within
    spacing / 20 of another is left out (the shape strays by spacing^2 / 800R): the stiffness of an element goes with
    1 / length^3, so that one of 0.1 mm beside one of 300 mm leaves five digits.
    """
    from gaugeblock.calc.path import Arc, dot

    stops, at = {0.0, line.length, *places}, 0.0
    for part in line.parts:
        stops.add(at)
        if isinstance(part, Arc) and part.length > 0:
            count = ceil(part.length / spacing)
            stops.update(at + part.length * i / count for i in range(count))
        at += part.length
    if any(not -1e-9 <= stop <= line.length + 1e-9 for stop in stops):
        raise ValueError("a load or foot lies off the tube")
    merged: list[float] = []
    # loads, feet and ends stand where they are; the rest where there is room: a short element costs digits
    for chosen, room in (((0.0, line.length, *places), 1e-9), (sorted(stops), spacing / 20)):
        for stop in chosen:
            if all(abs(stop - other) > room for other in merged):
                merged.append(stop)
    merged.sort()
    points = [line.at(s) for s in merged]
    numbers = [min(range(len(merged)), key=lambda n: abs(merged[n] - place)) for place in places]
    return [(dot(q, along), dot(q, up)) for q in points], numbers


def steady(value: float) -> float:
    """A result of ``solve`` to the nine digits that are the same on every machine: sines and cosines differ in their
    last digit from one to the next, and the elimination makes more of that.
    """
    return float(f"{value:.9g}")


def torque_couple(torque: float, spacing: float) -> Flat:
    """Up-and-down forces at two mounts ``spacing`` apart that take a torque reaction, N: up at the first, down at
    the second.
    """
    if spacing <= 0:
        raise ValueError("the mounts stand apart")
    return (torque / spacing, -torque / spacing)


def slip_force(preload: float, friction: float, faces: int = 1) -> float:
    """Force at which a slotted, clamped joint slips, N: preload times friction times faces."""
    return preload * friction * faces


def crush_force(od: float, wall: float, yield_strength: float, width: float) -> float:
    """Force across a tube, N, that flattens a length ``width`` of it: four plastic hinges, 4 M / (mean radius).

    M = yield width wall^2 / 4 (plane stress). A bolt through a tube without a sleeve pulls against this, so it cannot
    be tightened to more. Source: elementary plastic analysis of a ring between two flat plates.

    >>> round(crush_force(0.040, 0.002, 300e6, 0.030) / 1000, 2)
    1.89
    """
    radius = (od - wall) / 2
    return 4 * (yield_strength * width * wall**2 / 4) / radius
