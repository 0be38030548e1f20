"""A finished tube in two views with what it must clear, and the list that a bending shop reads."""

from __future__ import annotations

from math import atan2, cos, hypot, inf, pi, sin

from gaugeblock.calc.chords import chords
from gaugeblock.calc.path import Arc, Line, cross, dot, norm, square_to, subtract, unit
from gaugeblock.drawing import legend as legends
from gaugeblock.drawing import svg
from gaugeblock.drawing.lengths import degrees_text, inches
from gaugeblock.drawing.obstacle import (
    Obstacle,
    Pipe,
    View,
    draw_gap,
    draw_obstacle,
    draw_pipe,
    letter_of,
    pipe_letter,
)
from gaugeblock.drawing.stick_drawing import HEIGHT, WIDTH, turned

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.drawing.lengths import Reads

    Flat: TypeAlias = tuple[float, float]

LETTERS = "ABCDEFGH"
TABLE = 192.0  # mm: the list of bends stands to the right of this


class Frame:
    """The page of a drawing: its size, the room that the views have in it, and where the first one's name stands,
    mm.
    """

    __slots__ = ("height", "top", "views", "width")

    def __init__(self, width: float = WIDTH, height: float = HEIGHT, views: float = TABLE, top: float = 27.0) -> None:
        self.width, self.height, self.views, self.top = width, height, views, top


def _extent(points: Sequence[Flat], margin: float) -> tuple[float, float, float, float]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs) - margin, max(xs) + margin, min(ys) - margin, max(ys) + margin


def finished(
    line: Path,
    od: float,
    *,
    title: str,
    right: Vector = (0.0, 1.0, 0.0),
    up: Vector = (0.0, 0.0, 1.0),
    names: tuple[str, str] = ("FROM THE REAR", "FROM ABOVE"),
    reads: Reads | None = None,
    turns: Sequence[float] = (),
    obstacles: Sequence[Obstacle] = (),
    pipes: Sequence[Pipe] = (),
    notes: Sequence[str] = (),
    frame: Frame | None = None,
) -> str:
    """The finished tube in two views square to each other, dimensioned, as SVG.

    ``right`` and ``up`` are the unit axes of the first view: the plane of a flat tube, for its true shape. Straights,
    bends, over-all width and rise are dimensioned there, and the gap from each obstacle at its nearest; ``pipes`` run
    askew: a piece of each is drawn where it is nearest, and its gap is told. ``turns`` are the stick's, for the
    list of straights, turns and bends. In a ``frame`` of another size the views stand alone, without title and list.
    """
    reads = reads or inches(32, decimals=False)
    is_alone = frame is not None
    frame = frame or Frame()
    page = svg.Page(frame.width, frame.height, title)
    ahead = cross(right, up)
    first, second = View(right, up), View(right, (-ahead[0], -ahead[1], -ahead[2]))
    points = chords(line, od / 400)
    scale, first_low = _stand(frame, first, second, points, od, obstacles, pipes)
    said = f"tube {reads(od)} outside; lengths on the centre line; not to scale: work to the figures"
    if not is_alone:
        page.fit((10, 12), title, 5.5, WIDTH - 20, bold=True)
        page.text((10, 18), said, 3.5)
    edge = 0.5 if is_alone else 10.0
    page.text((edge, frame.top), names[0], 3.5, bold=True)
    page.text((edge, first_low + 32), names[1], 3.5, bold=True)
    for view in (first, second):
        over = [o for o in obstacles if view is second and _stands_over(o, first, points)]
        for o in (o for o in obstacles if o not in over):
            draw_obstacle(page, view, o, flat=view is first)
        toward = ahead if view is first else up
        nearer = [p for p in pipes if dot(subtract(p.near, p.tube_near), toward) > 0]
        for pipe in (p for p in pipes if p not in nearer):
            draw_pipe(page, view, pipe)
        _draw_tube(page, [view.on_page(view.flat(p)) for p in points], od * scale)
        for o in over:
            draw_obstacle(page, view, o, flat=False)
        for pipe in nearer:
            draw_pipe(page, view, pipe)
    taken = [first.on_page(first.flat(p)) for p in points]
    gaps = [draw_gap(page, first, o, points, od, reads) for o in obstacles]
    for letter, o in zip(LETTERS, obstacles, strict=False):
        letter_of(page, first, o, letter, taken)
    for letter, pipe in zip(LETTERS[len(obstacles) :], pipes, strict=False):
        pipe_letter(page, first, pipe, letter, taken)
    _over_all(page, first, line, od, reads)
    _dimension(page, first, line, od, reads, taken)
    if is_alone:
        return page.svg()
    low = _bend_table(page, line, turns, reads)
    cleared = [(o.name, o.gap or g) for o, g in zip(obstacles, gaps, strict=True)]
    _clear_table(page, low, [*cleared, *((p.name, p.gap) for p in pipes)])
    notes = [line for note in notes for line in svg.wrapped(note, svg.TEXT, WIDTH - 20)]
    signs = [(legends.BEND, "bend, numbered from the START"), (legends.POINT, "bend begins or ends")]
    signs += [(legends.LETTER, "must clear; arrows show the gap")] if cleared or pipes else []
    signs += [(legends.ROUND, "pipe, cut across")] if any(o.round for o in obstacles) else []
    legends.legend(page, 10, HEIGHT - 5 - 4.6 * len(notes), signs, WIDTH - 20)
    for i, note in enumerate(notes):
        page.fit((10, HEIGHT - 4 - 4.6 * (len(notes) - 1 - i)), note, 3.5, WIDTH - 20)
    return page.svg()


def _stand(
    frame: Frame,
    first: View,
    second: View,
    points: Sequence[Vector],
    od: float,
    obstacles: Sequence[Obstacle],
    pipes: Sequence[Pipe],
) -> Flat:
    """Both views on the page at one scale; that scale, and the foot of the first."""
    shapes = [first.flat(p) for p in points]
    tops = [second.flat(p) for p in points]
    for o in obstacles:
        x, y = first.flat(o.middle)
        shapes += [(x - o.half[0], y - o.half[1]), (x + o.half[0], y + o.half[1])]
        u, v = second.flat(o.middle)
        tops += [(u - o.half[0], v - o.across), (u + o.half[0], v + o.across)]
    for pipe in pipes:
        for view, held in ((first, shapes), (second, tops)):
            x, y = view.flat(pipe.near)
            held += [(x - pipe.radius, y - pipe.radius), (x + pipe.radius, y + pipe.radius)]
    x0, x1, y0, y1 = _extent(shapes, od / 2)
    _, _, v0, v1 = _extent(tops, od / 2)
    room, high = frame.views - 46, frame.height - frame.top - 85
    scale = min(room / (x1 - x0), high / (y1 - y0 + v1 - v0))
    first_low = frame.top + 25 + (y1 - y0) * scale
    for view, low, level in ((first, first_low, y0), (second, first_low + 36 + (v1 - v0) * scale, v0)):
        view.scale = scale
        view.left = (frame.views - (x1 - x0) * scale) / 2 - x0 * scale
        view.low = low + level * scale
    return scale, first_low


def _stands_over(o: Obstacle, view: View, points: Sequence[Vector]) -> bool:
    """Whether an obstacle hides the tube from above: higher than the tube where they cross."""
    x, y = view.flat(o.middle)
    near = [v for u, v in map(view.flat, points) if abs(u - x) <= o.half[0]] or [v for _, v in map(view.flat, points)]
    return y > sum(near) / len(near)


def _clear_table(page: svg.Page, y: float, rows: Sequence[tuple[str, str]]) -> None:
    """What the tube must clear, by letter, with its gap."""
    if not rows:
        return
    y += 9.0
    page.text((TABLE, y), "MUST CLEAR", 3.5, bold=True)
    for letter, (name, gap) in zip(LETTERS, rows, strict=False):
        y += 6.4
        page.circle((TABLE + 3, y - 1.2), 2.6, svg.MEDIUM)
        page.text((TABLE + 3, y), letter, 3.5, "middle", bold=True)
        page.fit((TABLE + 8, y), name, 3.5, WIDTH - TABLE - 14, bold=True)
        for part in gap.split("; "):
            if part:
                y += 4.4
                page.fit((TABLE + 8, y), part, 3.5, WIDTH - TABLE - 14)


def _bend_table(page: svg.Page, line: Path, turns: Sequence[float], reads: Reads) -> float:
    """Straights, turns and bends in order from the start, as a bending shop reads them; where the list ends."""
    page.text((TABLE, 27), "FROM THE START", 3.5, bold=True)
    y, number = 33.0, 0
    for part in line.parts:
        if isinstance(part, Arc):
            number += 1
            turn = turns[number - 1] if number <= len(turns) else 0.0
            page.circle((TABLE + 3, y - 1.2), 2.6, svg.MEDIUM)
            page.text((TABLE + 3, y), str(number), 3.5, "middle", bold=True)
            page.text((TABLE + 8, y), f"{degrees_text(part.angle)}, R {reads(part.radius)}", 3.5, bold=True)
            if number > 1:
                y += 4.6
                page.fit((TABLE + 8, y), turned(turn), 3.5, WIDTH - TABLE - 14)
        else:
            page.text((TABLE + 8, y), f"straight {reads(part.length)}", 3.5)
        y += 5.6 if len(line.parts) < 16 else 4.9
    page.text((TABLE, y + 1), f"along the centre line {reads(line.length)}", 3.5)
    return y + 1


def _draw_tube(page: svg.Page, points: Sequence[Flat], wide: float) -> None:
    """Both edges of a tube, its ends and its centre line: a black band with a white one in it."""
    page.polyline(points, wide)
    inner = max(wide - 2 * svg.THICK * 0.7, wide * 0.3)
    page.polyline(points, inner, white=True)
    for (x, y), (u, v) in ((points[0], points[1]), (points[-1], points[-2])):
        size = hypot(u - x, v - y)
        if size < 1e-6:  # it runs straight at the eye
            page.circle((x, y), wide / 2, svg.THICK * 0.7, fill="#fff")
            continue
        nx, ny = -(v - y) / size * wide / 2, (u - x) / size * wide / 2
        page.line((x + nx, y + ny), (x - nx, y - ny), svg.THICK * 0.7)
    page.polyline(points, svg.THIN, svg.CENTRE)


def _outward(view: View, part: Arc) -> Flat:
    """Unit direction on the page from a bend's middle to its outside."""
    at, centre = view.on_page(view.flat(part.at(part.length / 2))), view.on_page(view.flat(part.centre))
    size = hypot(at[0] - centre[0], at[1] - centre[1]) or 1.0
    return ((at[0] - centre[0]) / size, (at[1] - centre[1]) / size)


def _free_spot(middle: Flat, way: Flat, wide: float, taken: Sequence[Flat]) -> Flat:
    """A place for a bubble near a bend: outward from it, or as near to outward as is free."""
    best, room = middle, -inf
    for far in (7.0, 11.0, 16.0, 22.0):
        for spin in (0.0, 0.6, -0.6, 1.2, -1.2, 2.0, -2.0, pi):
            c, s = cos(spin), sin(spin)
            spot = (
                middle[0] + (c * way[0] - s * way[1]) * (wide + far),
                middle[1] + (s * way[0] + c * way[1]) * (wide + far),
            )
            free = min((hypot(spot[0] - x, spot[1] - y) for x, y in taken), default=inf)
            if free > wide + 5.0:
                return spot
            if free > room:
                best, room = spot, free
    return best


def _dimension(page: svg.Page, view: View, line: Path, od: float, reads: Reads, taken: list[Flat]) -> None:
    wide = od * view.scale / 2
    arcs = [p for p in line.parts if isinstance(p, Arc) and p.angle > 0]
    number = 0
    for part in line.parts:
        a, b = (view.on_page(view.flat(part.at(x))) for x in (0.0, part.length))
        if isinstance(part, Line):
            words = reads(part.length)
            if len(arcs) < 7 and hypot(b[0] - a[0], b[1] - a[1]) > svg.text_width(words, 3.5) + 2:
                turn = atan2(b[1] - a[1], b[0] - a[0])
                flip = pi if cos(turn) < -1e-6 else 0.0
                nx, ny = sin(turn + flip), -cos(turn + flip)
                middle = ((a[0] + b[0]) / 2 + nx * (wide + 1.6), (a[1] + b[1]) / 2 + ny * (wide + 1.6))
                page.text(middle, words, 3.5, "middle", turn=(turn + flip) * 180 / pi, clear=True)
        elif part.angle > 0:
            number += 1
            middle = view.on_page(view.flat(part.at(part.length / 2)))
            spot = _free_spot(middle, _outward(view, part), wide, taken)
            size = hypot(spot[0] - middle[0], spot[1] - middle[1]) or 1.0
            ox, oy = (spot[0] - middle[0]) / size, (spot[1] - middle[1]) / size
            page.line(
                (middle[0] + ox * wide, middle[1] + oy * wide), (spot[0] - ox * 3.4, spot[1] - oy * 3.4), svg.THIN
            )
            page.circle(spot, 3.4, svg.MEDIUM, fill="#fff")
            page.text((spot[0], spot[1] + 1.4), str(number), 4, "middle", bold=True)
            taken += [spot, (spot[0] + 3, spot[1]), (spot[0] - 3, spot[1])]
            if len(arcs) < 7:
                side = 1 if ox >= 0 else -1
                words = degrees_text(part.angle)
                page.text((spot[0] + side * 4.6, spot[1] + 1.2), words, 3.5, "start" if side > 0 else "end", clear=True)
                taken += [(spot[0] + side * x, spot[1]) for x in (8.0, 13.0)]
            for q in (a, b):
                page.circle(q, 0.5, svg.THIN, fill="#000")


def _over_all(page: svg.Page, view: View, line: Path, od: float, reads: Reads) -> None:
    """Width and rise over all; drawn before the labels, which stand clear of its lines."""
    wide = od * view.scale / 2
    drawn = [view.on_page(view.flat(p)) for p in chords(line, od / 50)]
    low, left, right = max(p[1] for p in drawn), min(p[0] for p in drawn), max(p[0] for p in drawn)
    ends = [view.flat(line.parts[0].at(0.0)), view.flat(line.parts[-1].at(line.parts[-1].length))]
    a, b = sorted((view.on_page(e) for e in ends), key=lambda p: p[0])
    page.dimension(a, b, reads(abs(ends[1][0] - ends[0][0])), off=low + wide + 19, direction="across", size=3.6)
    top = max((view.flat(p) for p in chords(line, od / 200)), key=lambda p: p[1])
    said: set[str] = set()
    for end, off in ((a, left - 11), (b, right + 11)):
        height = top[1] - (view.low - end[1]) / view.scale
        if height > od / 4 and reads(height) not in said:  # a dimension stands once
            said.add(reads(height))
            page.dimension(end, view.on_page(top), reads(height), off=off, direction="upright", size=3.6)


def true_plane(line: Path) -> tuple[Vector, Vector]:
    """Right and up of the view that shows a flat tube in its true shape: right from end to end, up to its first
    bend.
    """
    start, end = line.parts[0].at(0.0), line.parts[-1].at(line.parts[-1].length)
    run = subtract(end, start)
    right = unit(run) if norm(run) > 1e-9 else line.heading(0.0)
    arc = next((p for p in line.parts if isinstance(p, Arc) and p.angle > 0), None)
    if arc is None:
        return right, square_to(right)
    up = unit(cross(cross(arc.out, arc.ahead), right))
    return (right, up) if dot(up, arc.out) < 0 else (right, (-up[0], -up[1], -up[2]))
