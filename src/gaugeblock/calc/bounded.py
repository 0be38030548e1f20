"""Least distance of two curves, or of a curve and a convex solid, with a bound: one pair at a time, in plain Python.

Every arc is held between chords: a chord of an arc of radius R and angle a strays from it by R (1 - cos(a/2)) and no
more. A distance between chords, less their strays, is never over the true one; a distance between points of the arcs
is never under it. The pieces that may be nearest are looked at first, and halved until none can hold a distance more
than the tolerance under the best found. So: best - tolerance <= true least <= best.
"""

from __future__ import annotations

from heapq import heapify, heappop, heappush
from itertools import count
from math import ceil, cos, inf, sqrt

from gaugeblock.calc.path import Arc, add, dot, norm, subtract

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeAlias

    from gaugeblock.calc.path import Line, Path, Vector

    Signed: TypeAlias = Callable[[Vector], float]  # a point -> its signed distance to a convex set

_STILL = (0.0, 0.0, 0.0)
_WIDEST = 0.8  # rad; a wider arc is parted before it is looked at
_GOLDEN, _ROUNDS = (sqrt(5) - 1) / 2, 46  # brackets shrink to 2e-10 of the piece
_STANDS = 60


class Piece:
    """A piece of a curve: its chord with its middle, and how far the curve strays from it."""

    __slots__ = ("end", "half", "high", "low", "middle", "part", "start", "stray")

    def __init__(self, part: Line | Arc, low: float, high: float) -> None:
        self.part, self.low, self.high = part, low, high
        self.start, self.end = part.at(low), part.at(high)
        self.stray = part.radius * (1 - cos((high - low) / part.radius / 2)) if isinstance(part, Arc) else 0.0
        run = subtract(self.end, self.start)
        self.middle = add(self.start, run, 0.5)
        self.half = norm(run) / 2 + self.stray

    def point(self, share: float) -> Vector:
        """The point of the curve itself at a share of the piece."""
        return self.part.at(self.low + share * (self.high - self.low))

    def halves(self) -> tuple[Piece, Piece]:
        """The two halves."""
        middle = (self.low + self.high) / 2
        return Piece(self.part, self.low, middle), Piece(self.part, middle, self.high)


def pieces(line: Path) -> list[Piece]:
    """A path in pieces: its lines whole, its arcs in parts that turn little."""
    out = []
    for part in line.parts:
        if not isinstance(part, Arc):
            out.append(Piece(part, 0.0, part.length))
        elif part.length > 0:
            many = max(1, ceil(part.angle / _WIDEST))
            out += [Piece(part, part.length * i / many, part.length * (i + 1) / many) for i in range(many)]
    return out


def _share(x: float) -> float:
    return 0.0 if x < 0.0 else min(x, 1.0)


def segments(p0: Vector, p1: Vector, q0: Vector, q1: Vector) -> tuple[float, float, float]:
    """Least distance of segment p from segment q, and the shares along both; exact, parallel ones too."""
    u, v, w = subtract(p1, p0), subtract(q1, q0), subtract(p0, q0)
    a, b, c, d, e = dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)
    det = a * c - b * b
    safe_a, safe_c = a or 1.0, c or 1.0
    s0 = _share((b * e - c * d) / det) if det > 1e-14 * safe_a * safe_c else 0.0
    best, best_s, best_t = inf, 0.0, 0.0
    # the inner crossing (kept on its segments), and the four ends each against the other segment
    for s, t in (
        (s0, _share((b * s0 + e) / safe_c)),
        (0.0, _share(e / safe_c)),
        (1.0, _share((b + e) / safe_c)),
        (_share(-d / safe_a), 0.0),
        (_share((b - d) / safe_a), 1.0),
    ):
        z = (w[0] + s * u[0] - t * v[0], w[1] + s * u[1] - t * v[1], w[2] + s * u[2] - t * v[2])
        far = dot(z, z)
        if far < best:
            best, best_s, best_t = far, s, t
    return sqrt(best), best_s, best_t


def least_of(f: Callable[[float], float]) -> tuple[float, float]:
    """Least value of a convex function of a share in [0, 1], and where."""
    low, high = 0.0, 1.0
    a, b = 1 - _GOLDEN, _GOLDEN
    at_a, at_b = f(a), f(b)
    for _ in range(_ROUNDS):
        if at_a <= at_b:
            high, b, at_b = b, a, at_a
            a = high - _GOLDEN * (high - low)
            at_a = f(a)
        else:
            low, a, at_a = a, b, at_b
            b = low + _GOLDEN * (high - low)
            at_b = f(b)
    return min((at_a, a), (at_b, b), (f(0.0), 0.0), (f(1.0), 1.0))


def _kept(z: Vector, low: Vector, high: Vector) -> Vector:
    """The point of a box nearest to a point."""
    return (
        min(max(z[0], low[0]), high[0]),
        min(max(z[1], low[1]), high[1]),
        min(max(z[2], low[2]), high[2]),
    )


def _off(z: Vector, low: Vector, high: Vector) -> float:
    return norm(subtract(z, _kept(z, low, high)))


def curve_pair(
    one: tuple[Path, float], two: tuple[Path, float], tolerance: float, box: tuple[Vector, Vector] = (_STILL, _STILL)
) -> tuple[float, Vector, Vector]:
    """Least surface gap of two round curves (path, radius), m, with the two centre-line points.

    ``box`` (low, high) is what the second may move in against the first.
    """
    low, high = box
    skins = one[1] + two[1]
    reach = sqrt(sum(max(abs(a), abs(b)) ** 2 for a, b in zip(low, high, strict=True)))
    order = count()
    best, at_one, at_two = inf, _STILL, _STILL

    def waits(p: Piece, q: Piece, floor: float = -inf) -> tuple[float, int, bool, Piece, Piece]:
        """Spheres round the pieces: cheap, and most pairs of pieces go."""
        apart = norm(subtract(p.middle, q.middle)) - p.half - q.half - skins - reach
        return max(apart, floor), next(order), False, p, q

    second = pieces(two[0])
    heap = [waits(p, q) for p in pieces(one[0]) for q in second]
    heapify(heap)
    while heap:
        bound, _, is_held, p, q = heappop(heap)
        if bound >= best - tolerance:
            break
        if is_held:
            split, other = (p, q) if p.stray >= q.stray else (q, p)
            for half in split.halves():
                heappush(heap, waits(half, other, bound) if split is p else waits(other, half, bound))
            continue
        held, s, t = _chords(p, q, box, best + skins, tolerance) if reach else segments(p.start, p.end, q.start, q.end)
        x, y = p.point(s), q.point(t)
        exact = _off(subtract(x, y), low, high) - skins
        if exact < best:
            best, at_one, at_two = exact, x, y
        stray = p.stray + q.stray
        if stray:
            heappush(heap, (max(bound, held - skins - stray), next(order), True, p, q))
    return best, at_one, at_two


def _chords(
    p: Piece, q: Piece, box: tuple[Vector, Vector], best: float, tolerance: float
) -> tuple[float, float, float]:
    """Lower bound of the distance of two chords when the second may move inside a box, and the shares of near points.

    The second is moved, in turn, as near as the box lets the nearest points come. At each stand the two chords lie on
    either side of two planes square to the line between them; those planes can come nearer by the box's reach in
    that direction and no more. What that leaves open below the best so far is settled by search.
    """
    low, high = box
    u, v = subtract(p.end, p.start), subtract(q.end, q.start)
    move, bound, least, best_s, best_t = _kept(_STILL, low, high), 0.0, inf, 0.0, 0.0
    for _ in range(_STANDS):
        apart, s, t = segments(p.start, p.end, add(q.start, move), add(q.end, move))
        z = subtract(add(q.start, v, t), add(p.start, u, s))
        if apart > 0:
            way = [(a + b) / apart for a, b in zip(z, move, strict=True)]
            nearest = sum(min(w * (a - m), w * (b - m)) for w, a, b, m in zip(way, low, high, move, strict=True))
            bound = max(bound, apart + nearest)
        stood, move = move, _kept((-z[0], -z[1], -z[2]), low, high)
        now = norm(add(z, move))
        if now < least:
            least, best_s, best_t = now, s, t
        if move == stood or least - bound <= tolerance / 4:
            break
    stray = p.stray + q.stray
    if least - bound > tolerance / 2 and bound - stray < best - tolerance and stray < 10 * tolerance:

        def along(s: float) -> tuple[float, float]:
            z = subtract(add(p.start, u, s), q.start)
            return least_of(lambda t: _off(add(z, v, -t), low, high))

        bound, best_s = least_of(lambda s: along(s)[0])
        best_t = along(best_s)[1]
    return bound, best_s, best_t


def curve_to_solid(
    line: Path,
    radius: float,
    solid: Signed,
    tolerance: float,
    travel: Vector | None = None,
    ceiling: float = inf,
) -> tuple[float, Vector | None]:
    """Least surface gap of a round curve from a convex solid that may move along ``travel``; and the curve's point.

    Where no gap is under ``ceiling`` (another one is known to be smaller) it is that, and there is no point.
    """

    def off(point: Vector) -> float:
        """Least distance of the solid from a point, over its travel."""
        if travel is None:
            return solid(point)
        return least_of(lambda w: solid(add(point, travel, -w)))[0]

    # spheres round the pieces first: a signed distance changes by no more than the way gone
    heap = [(off(p.middle) - p.half, n, p) for n, p in enumerate(pieces(line))]
    heapify(heap)
    order = count(len(heap))
    best: float = ceiling + radius
    where: Vector | None = None
    while heap:
        bound, _, piece = heappop(heap)
        if bound >= best - tolerance:
            break
        held, share = least_of(_along(off, piece))
        point = piece.point(share)
        exact = off(point)
        if exact < best:
            best, where = exact, point
        if piece.stray and held - piece.stray < best - tolerance:
            for half in piece.halves():
                heappush(heap, (max(held - piece.stray, off(half.middle) - half.half), next(order), half))
    return best - radius, where


def _along(off: Signed, piece: Piece) -> Callable[[float], float]:
    run = subtract(piece.end, piece.start)
    return lambda share: off(add(piece.start, run, share))
