"""Least distances of many pairs of curves at once, with a bound: ``bounded`` over arrays, where numpy is there.

Every arc is held between chords: a chord of an arc of radius R and angle a strays from it by R (1 - cos(a/2)) and no
more. A distance between chords, less their strays, is never over the true one; a distance between points of the arcs
is never under it. Pieces whose lower bound reaches the best distance found are halved, the others dropped, until no
piece can hold a distance more than the tolerance under the best. So: best - tolerance <= true least <= best.
"""

from __future__ import annotations

import numpy as np

from gaugeblock.calc.path import Arc, Path

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import Any, TypeAlias

    from gaugeblock.calc.path import Vector

    Array: TypeAlias = Any  # a numpy array

GRID, ROUNDS = 32, 8  # brackets shrink to 2e-10 of the piece


class Pieces:
    """Pieces of many curves as growing arrays: owner, surface radius, ends, stray of the chord, and the arc itself."""

    def __init__(self, curves: Sequence[tuple[Path, float]]) -> None:
        rows = []
        for owner, (line, radius) in enumerate(curves):
            for part in line.parts:
                if isinstance(part, Arc):
                    if part.length > 0:
                        rows.append((owner, radius, part.centre, part.out, part.ahead, part.radius, 0.0, part.angle))
                else:
                    rows.append((owner, radius, part.start, part.direction, (0.0, 0.0, 0.0), 0.0, 0.0, part.length))
        self.owner = np.array([r[0] for r in rows])
        self.radius = np.array([r[1] for r in rows])
        self.origin, self.first, self.second = (np.array([r[i] for r in rows], dtype=float) for i in (2, 3, 4))
        self.bend, self.low, self.high = (np.array([r[i] for r in rows], dtype=float) for i in (5, 6, 7))
        self.children = np.full(len(rows), -1)
        self._ends()
        while (big := np.flatnonzero((self.bend > 0) & (self.high - self.low > 0.8) & (self.children < 0))).size:
            self.split(big)
        self.leaves = np.flatnonzero(self.children < 0)

    def _ends(self) -> None:
        every = np.arange(len(self.owner))
        self.start, self.end = self.at(every, self.low), self.at(every, self.high)
        self.stray = self.bend * (1 - np.cos((self.high - self.low) / 2))

    def at(self, index: Array, where: Array) -> Array:
        """Points of the curves themselves: ``where`` is a length on a line, an angle on an arc."""
        r = self.bend[index]
        on_arc = r > 0
        x = np.where(on_arc, r * np.cos(where), where)
        y = np.where(on_arc, r * np.sin(where), 0.0)
        return self.origin[index] + x[..., None] * self.first[index] + y[..., None] * self.second[index]

    def along(self, index: Array, share: Array) -> Array:
        """The point of each piece at a share of its length."""
        return self.at(index, self.low[index] + share * (self.high[index] - self.low[index]))

    def split(self, index: Array) -> None:
        """Halve pieces; ``children`` names the first half, the second follows it."""
        index = index[self.children[index] < 0]
        if not index.size:
            return
        self.children[index] = len(self.owner) + 2 * np.arange(index.size)
        middle = (self.low[index] + self.high[index]) / 2
        for name in ("owner", "radius", "origin", "first", "second", "bend"):
            old = getattr(self, name)
            setattr(self, name, np.concatenate([old, np.repeat(old[index], 2, axis=0)]))
        low, high = np.stack([self.low[index], middle], 1).ravel(), np.stack([middle, self.high[index]], 1).ravel()
        self.low, self.high = np.concatenate([self.low, low]), np.concatenate([self.high, high])
        self.children = np.concatenate([self.children, np.full(low.size, -1)])
        self._ends()


def segments(p0: Array, p1: Array, q0: Array, q1: Array) -> tuple[Array, Array, Array]:
    """Least distances of segments p from segments q, and the shares along both; exact, parallel ones too."""
    u, v, w = p1 - p0, q1 - q0, p0 - q0
    a, b, c = (u * u).sum(-1), (u * v).sum(-1), (v * v).sum(-1)
    d, e = (u * w).sum(-1), (v * w).sum(-1)
    det = a * c - b * b
    safe_a, safe_c = np.where(a > 0, a, 1.0), np.where(c > 0, c, 1.0)
    slanted = det > 1e-14 * safe_a * safe_c
    whole = np.where(slanted, det, 1.0)
    s0 = np.where(slanted, _share((b * e - c * d) / whole), 0.0)
    # the inner crossing (kept on its segments), and the four ends each against the other segment
    tries = [
        (s0, _share((b * s0 + e) / safe_c)),
        (np.zeros_like(a), _share(e / safe_c)),
        (np.ones_like(a), _share((b + e) / safe_c)),
        (_share(-d / safe_a), np.zeros_like(a)),
        (_share((b - d) / safe_a), np.ones_like(a)),
    ]
    best, best_s, best_t = np.full(a.shape, np.inf), np.zeros_like(a), np.zeros_like(a)
    for s, t in tries:
        z = w + s[..., None] * u - t[..., None] * v
        dist = (z * z).sum(-1)
        nearer = dist < best
        best, best_s, best_t = np.where(nearer, dist, best), np.where(nearer, s, best_s), np.where(nearer, t, best_t)
    return np.sqrt(best), best_s, best_t


def _share(x: Array) -> Array:
    """``x`` kept in [0, 1]; np.clip does the same at several times the cost of a small array."""
    return np.minimum(np.maximum(x, 0.0), 1.0)


def least_of(f: Callable[[Array], Array], shape: tuple[int, ...]) -> tuple[Array, Array]:
    """Least values of convex functions of a share in [0, 1], all at once, and where.

    Each round looks at a grid over what is left and keeps the two steps round its least point: that is where the
    least of a convex function lies. ``f`` takes shares with the grid as a first axis more than ``shape``.
    """
    low, width, value = np.zeros(shape), np.ones(shape), np.zeros(shape)
    grid = (np.arange(GRID + 1) / GRID).reshape(-1, *[1] * len(shape))
    for _ in range(ROUNDS):
        shares = low + width * grid
        found = f(shares)
        at = found.argmin(0)[None]
        value, where = np.take_along_axis(found, at, 0)[0], np.take_along_axis(shares, at, 0)[0]
        first, last = np.maximum(at[0] - 1, 0), np.minimum(at[0] + 1, GRID)
        low, width = low + width * first / GRID, width * (last - first) / GRID
    return value, where


def curve_pairs(
    curves: Sequence[tuple[Path, float]],
    pairs: Sequence[tuple[int, int]],
    tolerance: float,
    moves: Sequence[tuple[Sequence[float], Sequence[float]] | None] | None = None,
) -> list[tuple[float, Vector, Vector]]:
    """Least surface gaps of pairs of round curves, with the two centre-line points; all pairs at once.

    ``moves`` gives each pair the box (low, high) that the second may move in against the first.
    """
    if not pairs:
        return []
    pieces = Pieces(curves)
    by_owner = [np.flatnonzero(pieces.owner[pieces.leaves] == o) for o in range(len(curves))]
    group, one, two = [], [], []
    for number, (a, b) in enumerate(pairs):
        x, y = np.meshgrid(pieces.leaves[by_owner[a]], pieces.leaves[by_owner[b]], indexing="ij")
        one.append(x.ravel())
        two.append(y.ravel())
        group.append(np.full(x.size, number))
    g, i, j = np.concatenate(group), np.concatenate(one), np.concatenate(two)
    low, high = np.zeros((len(pairs), 3)), np.zeros((len(pairs), 3))
    for number, box in enumerate(moves or ()):
        if box is not None:
            low[number], high[number] = box
    reach = np.sqrt((np.maximum(np.abs(low), np.abs(high)) ** 2).sum(-1))
    best = np.full(len(pairs), np.inf)
    at_a, at_b = np.zeros((len(pairs), 3)), np.zeros((len(pairs), 3))
    while g.size:
        # spheres round the pieces first: cheap, and most pairs of pieces go
        half = np.linalg.norm(pieces.end - pieces.start, axis=1) / 2 + pieces.stray
        middle = (pieces.start + pieces.end) / 2
        apart = np.linalg.norm(middle[i] - middle[j], axis=1) - pieces.radius[i] - pieces.radius[j]
        ceiling = best.copy()
        np.minimum.at(ceiling, g, apart + pieces.stray[i] + pieces.stray[j])
        keep = apart - half[i] - half[j] - reach[g] < ceiling[g]
        g, i, j = g[keep], i[keep], j[keep]
        held, s, t = segments(pieces.start[i], pieces.end[i], pieces.start[j], pieces.end[j])
        skins = pieces.radius[i] + pieces.radius[j]
        p, q = pieces.along(i, s), pieces.along(j, t)
        moving = np.flatnonzero(reach[g] > 0)
        if moving.size:
            box, a, b = (low[g[moving]], high[g[moving]]), i[moving], j[moving]
            held[moving], p[moving], q[moving] = _moved(pieces, (a, b), box, best[g[moving]] + skins[moving], tolerance)
        exact = np.linalg.norm(p - q - np.clip(p - q, low[g], high[g]), axis=1) - skins
        order = np.argsort(exact, kind="stable")[::-1]
        nearer = order[exact[order] < best[g[order]]]
        best[g[nearer]], at_a[g[nearer]], at_b[g[nearer]] = exact[nearer], p[nearer], q[nearer]
        stray = pieces.stray[i] + pieces.stray[j]
        lower = held - skins - stray
        open_ = (lower < best[g] - tolerance) & (stray > 0)
        g, i, j = g[open_], i[open_], j[open_]
        first = pieces.stray[i] >= pieces.stray[j]
        both = _refined(pieces, i, j, first)
        g = np.concatenate([g, g])
        i, j = both
    return [(float(best[n]), tuple(at_a[n].tolist()), tuple(at_b[n].tolist())) for n in range(len(pairs))]


def _refined(pieces: Pieces, i: Array, j: Array, first: Array) -> tuple[Array, Array]:
    """Each pair of pieces twice, with the halves of the piece that strays more."""
    pieces.split(np.flatnonzero(np.bincount(np.where(first, i, j))))
    child = pieces.children[np.where(first, i, j)]
    return (
        np.concatenate([np.where(first, child, i), np.where(first, child + 1, i)]),
        np.concatenate([np.where(first, j, child), np.where(first, j, child + 1)]),
    )


def _moved(
    pieces: Pieces, pair: tuple[Array, Array], box: tuple[Array, Array], best: Array, tolerance: float
) -> tuple[Array, Array, Array]:
    """Lower bounds of the distances of chords when the second may move inside a box, and near points of the curves.

    The second is moved, in turn, as near as the box lets the nearest points come. At each stand the two chords lie on
    either side of two planes square to the line between them; those planes can come nearer by the box's reach in
    that direction and no more. What that leaves open below the best so far is settled by search.
    """
    i, j = pair
    low, high = box
    p0, p1, q0, q1 = pieces.start[i], pieces.end[i], pieces.start[j], pieces.end[j]
    move, bound, least = np.clip(0.0, low, high), np.zeros(len(i)), np.full(len(i), np.inf)
    best_s, best_t = np.zeros(len(i)), np.zeros(len(i))
    for _ in range(8):
        apart, s, t = segments(p0, p1, q0 + move, q1 + move)
        z = q0 + t[:, None] * (q1 - q0) - p0 - s[:, None] * (p1 - p0)
        way = (z + move) / np.where(apart > 0, apart, 1.0)[:, None]
        nearest = np.minimum(way * (low - move), way * (high - move)).sum(-1)
        bound = np.maximum(bound, apart + nearest)
        stood, move = move, np.clip(-z, low, high)
        now = np.linalg.norm(z + move, axis=1)
        best_s, best_t = np.where(now < least, s, best_s), np.where(now < least, t, best_t)
        least = np.minimum(least, now)
        if (move == stood).all():
            break  # the next stand would be this one again
    stray = pieces.stray[i] + pieces.stray[j]
    rest = np.flatnonzero(
        (least - bound > tolerance / 2) & (bound - stray < best - tolerance) & (stray < 10 * tolerance)
    )
    if rest.size:
        p, u, q, v = p0[rest], (p1 - p0)[rest], q0[rest], (q1 - q0)[rest]

        def inner(s: Array) -> tuple[Array, Array]:
            at = p + s[..., None] * u - q
            return least_of(lambda t: _off_box(at - t[..., None] * v, low[rest], high[rest]), s.shape)

        bound[rest], best_s[rest] = least_of(lambda x: inner(x)[0], rest.shape)
        best_t[rest] = inner(best_s[rest])[1]
    return bound, pieces.along(i, best_s), pieces.along(j, best_t)


def _off_box(points: Array, low: Array, high: Array) -> Array:
    z = points - np.clip(points, low, high)
    return np.sqrt((z * z).sum(-1))
