"""What a tube must clear, drawn in a view: its outline, its letter, and the gap at its nearest."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, ceil, cos, hypot, inf, pi, sin

from gaugeblock.calc.path import dot
from gaugeblock.drawing import svg

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from gaugeblock.calc.path import Vector
    from gaugeblock.drawing.lengths import Reads

    Flat: TypeAlias = tuple[float, float]


class Obstacle:
    """What the tube must clear: a round pipe or a box, its middle and half sizes along the two axes of the first view
    and across it, m; ``gap`` is what to say of its gap, measured in the view when it is blank."""

    __slots__ = ("across", "gap", "half", "middle", "name", "round")

    def __init__(
        self, name: str, middle: Vector, half: Flat, across: float, *, round: bool = False, gap: str = ""
    ) -> None:
        self.gap = gap
        self.name = name
        self.middle = middle
        self.half = half
        self.across = across
        self.round = round


class Pipe:
    """A round thing that runs askew past the tube: points along the piece that is drawn, the one nearest to the
    tube and
    the tube's own there, m; ``gap`` is what to say of its gap."""

    __slots__ = ("gap", "name", "near", "points", "radius", "tube_near")

    def __init__(
        self, name: str, points: Sequence[Vector], radius: float, near: Vector, tube_near: Vector, gap: str = ""
    ) -> None:
        self.name = name
        self.points = points
        self.radius = radius
        self.near = near
        self.tube_near = tube_near
        self.gap = gap


class View:
    """One view: what lies to the right and up in it, and where it stands on the page."""

    __slots__ = ("left", "low", "right", "scale", "top", "up")

    def __init__(self, right: Vector, up: Vector) -> None:
        self.right = right
        self.up = up
        self.scale, self.left, self.low, self.top = 1.0, 0.0, 0.0, 0.0

    def flat(self, point: Vector) -> Flat:
        """A point in the view, m, y up."""
        return (dot(point, self.right), dot(point, self.up))

    def on_page(self, point: Flat) -> Flat:
        """A flat point on the page, mm."""
        return (self.left + point[0] * self.scale, self.low - point[1] * self.scale)


def letter_of(page: svg.Page, view: View, o: Obstacle, letter: str, taken: list[Flat]) -> None:
    """The letter of an obstacle, in its middle, or beside it when it is small."""
    x, y = view.on_page(view.flat(o.middle))
    small = min(o.half) * view.scale
    spot = (x, y)
    if small <= 4.4:
        a, b = o.half[0] * view.scale + 5.0, o.half[1] * view.scale + 5.0
        tries = [(x + a, y), (x - a, y), (x, y + b), (x, y - b), (x + a, y + b), (x - a, y + b)]
        spot = max(tries, key=lambda t: min((min(hypot(t[0] - p[0], t[1] - p[1]) for p in taken), 9.0)))
    page.circle(spot, 3.4, svg.MEDIUM, fill="#fff")
    page.text((spot[0], spot[1] + 1.5), letter, 4.2, "middle", bold=True)
    taken += [(spot[0] + d, spot[1]) for d in (-4.0, 0.0, 4.0)]


def draw_obstacle(page: svg.Page, view: View, o: Obstacle, *, flat: bool) -> None:
    x, y = view.flat(o.middle)
    tall = o.half[1] if flat else o.across
    a, b = view.on_page((x - o.half[0], y + tall)), view.on_page((x + o.half[0], y - tall))
    if o.round and flat:
        page.circle(view.on_page((x, y)), o.half[0] * view.scale, svg.MEDIUM)
        _hatch(page, view.on_page((x, y)), o.half[0] * view.scale)
    else:
        page.rectangle(a[0], a[1], b[0] - a[0], b[1] - a[1], svg.MEDIUM)
        if o.round:
            page.line(((a[0] + b[0]) / 2, a[1] - 3), ((a[0] + b[0]) / 2, b[1] + 3), svg.THIN, svg.CENTRE)
        else:
            page.line(a, b, svg.THIN)
            page.line((a[0], b[1]), (b[0], a[1]), svg.THIN)


def draw_pipe(page: svg.Page, view: View, pipe: Pipe) -> None:
    """A piece of a pipe that runs askew, broken off at both ends."""
    points = [view.on_page(view.flat(p)) for p in pipe.points]
    wide = 2 * pipe.radius * view.scale
    if max(hypot(x - points[0][0], y - points[0][1]) for x, y in points) < wide / 4:  # it runs at the eye
        page.circle(points[0], wide / 2, svg.MEDIUM, fill="#fff")
        return
    page.polyline(points, wide)
    page.polyline(points, max(wide - 2 * svg.MEDIUM, wide * 0.3), white=True)
    page.polyline(points, svg.THIN, svg.CENTRE)


def pipe_letter(page: svg.Page, view: View, pipe: Pipe, letter: str, taken: list[Flat]) -> None:
    """The letter of a pipe on its piece, where it is farthest from the tube and what is lettered already."""
    places = [view.on_page(view.flat(p)) for p in pipe.points]
    spot = max(places, key=lambda q: min((hypot(q[0] - x, q[1] - y) for x, y in taken), default=0.0))
    page.circle(spot, 3.4, svg.MEDIUM, fill="#fff")
    page.text((spot[0], spot[1] + 1.5), letter, 4.2, "middle", bold=True)
    taken += [(spot[0] + d, spot[1]) for d in (-4.0, 0.0, 4.0)]


def _hatch(page: svg.Page, centre: Flat, radius: float) -> None:
    count = max(2, ceil(radius / 1.5))
    for i in range(-count + 1, count):
        d = i * radius / count
        half = (radius * radius - d * d) ** 0.5
        c = 0.5**0.5
        page.line(
            (centre[0] + c * (d - half), centre[1] + c * (d + half)),
            (centre[0] + c * (d + half), centre[1] + c * (d - half)),
            svg.THIN,
        )


def draw_gap(page: svg.Page, view: View, o: Obstacle, points: Sequence[Vector], od: float, reads: Reads) -> str:
    """Arrows at the gap in the view, at its nearest: from the obstacle's edge to the tube's; and its words."""
    x, y = view.flat(o.middle)
    best, place, edge = inf, (0.0, 0.0), (0.0, 0.0)
    flat = [view.flat(p) for p in points]
    for a, b in pairwise(flat):
        for k in range(9):
            q = (a[0] + (b[0] - a[0]) * k / 8, a[1] + (b[1] - a[1]) * k / 8)
            if o.round:
                size = hypot(q[0] - x, q[1] - y) or 1.0
                e = (x + (q[0] - x) / size * o.half[0], y + (q[1] - y) / size * o.half[0])
            else:
                e = (
                    min(max(q[0], x - o.half[0]), x + o.half[0]),
                    min(max(q[1], y - o.half[1]), y + o.half[1]),
                )
            far = hypot(q[0] - e[0], q[1] - e[1])
            # of places as near as each other the one over the middle is shown
            if far < best - 1e-6 or (far < best + 1e-6 and abs(q[0] - x) < abs(place[0] - x)):
                best, place, edge = min(best, far), q, e
    if best <= od / 2:
        return "TOUCHES in this view"
    skin = tuple(e + (q - e) * (best - od / 2) / best for e, q in zip(edge, place, strict=True))
    a, b = view.on_page(edge), view.on_page((skin[0], skin[1]))
    way = atan2(b[1] - a[1], b[0] - a[0])
    inside = hypot(b[0] - a[0], b[1] - a[1]) > 6.0
    for tip, side in ((a, pi), (b, 0.0)):
        turn = way + side if inside else way + side + pi
        page.arrow(tip, turn, 2.0)
    if inside:
        page.line(a, b, svg.THIN)
    else:
        page.line(a, (a[0] - 5 * cos(way), a[1] - 5 * sin(way)), svg.THIN)
        page.line(b, (b[0] + 5 * cos(way), b[1] + 5 * sin(way)), svg.THIN)
    return f"gap {reads(best - od / 2)}"
