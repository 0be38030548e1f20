"""A finished tube in two views with what it must clear, and the straight stick with its marks."""

from __future__ import annotations

from math import atan2, ceil, cos, hypot, inf, pi, sin

from gaugeblock.calc.path import Arc, Line, chords, cross, dot, subtract
from gaugeblock.drawing import svg
from gaugeblock.drawing.lengths import degrees_text, inches

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.calc.stick import Layout, Mark
    from gaugeblock.drawing.lengths import Reads

    Flat: TypeAlias = tuple[float, float]

WIDTH, HEIGHT = 259.0, 190.0  # prints on Letter and A4, landscape
CLOCKWISE, COUNTER = "clockwise", "counter-clockwise"


class Obstacle:
    """What the tube must clear: a round pipe or a box, its middle and half sizes along the two axes of the first view
    and across it, m."""

    __slots__ = ("across", "half", "middle", "name", "round")

    def __init__(self, name: str, middle: Vector, half: Flat, across: float, *, round: bool = False) -> None:
        self.name = name
        self.middle = middle
        self.half = half
        self.across = across
        self.round = round


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
    obstacles: Sequence[Obstacle] = (),
    notes: Sequence[str] = (),
) -> str:
    """The finished tube in two views square to each other, dimensioned, as SVG.

    ``right`` and ``up`` are the unit axes of the first view: the plane of a flat tube, for its true shape. Straights,
    bends, over-all width and rise are dimensioned there, and the gap from each obstacle at its nearest.
    """
    reads = reads or inches(32, decimals=False)
    page = svg.Page(WIDTH, HEIGHT, title)
    ahead = cross(right, up)
    first, second = View(right, up), View(right, (-ahead[0], -ahead[1], -ahead[2]))
    points = chords(line, od / 400)
    shapes = [first.flat(p) for p in points]
    tops = [second.flat(p) for p in points]
    for o in obstacles:
        x, y = first.flat(o.middle)
        shapes += [(x - o.half[0], y - o.half[1]), (x + o.half[0], y + o.half[1])]
        u, v = second.flat(o.middle)
        tops += [(u - o.half[0], v - o.across), (u + o.half[0], v + o.across)]
    x0, x1, y0, y1 = _extent(shapes, od / 2)
    _, _, v0, v1 = _extent(tops, od / 2)
    room, high = WIDTH - 64, HEIGHT - 103
    scale = min(room / (x1 - x0), high / (y1 - y0 + v1 - v0))
    for view, low, end in ((first, y0, 45 + (y1 - y0) * scale), (second, v0, 0.0)):
        view.scale = scale
        view.left = (WIDTH - (x1 - x0) * scale) / 2 - x0 * scale + 6
        view.low = end + low * scale
    first_low = 45 + (y1 - y0) * scale
    second.low = first_low + 27 + (v1 - v0) * scale + v0 * scale
    page.text((10, 12), title, 5.5, bold=True)
    page.text((10, 18), f"tube {reads(od)} outside; lengths on the centre line; not to scale: work to the figures", 3.2)
    page.text((10, 27), names[0], 3.5, bold=True)
    page.text((10, first_low + 25), names[1], 3.5, bold=True)
    for view in (first, second):
        for o in obstacles:
            _draw_obstacle(page, view, o, flat=view is first)
    for view in (first, second):
        _draw_tube(page, [view.on_page(view.flat(p)) for p in points], od * scale)
    _dimension(page, first, line, od, reads)
    for o in obstacles:
        _draw_gap(page, first, o, points, od, reads)
    for i, note in enumerate(notes):
        page.text((10, HEIGHT - 4 - 4.6 * (len(notes) - 1 - i)), note, 3.2)
    return page.svg()


def _draw_tube(page: svg.Page, points: Sequence[Flat], wide: float) -> None:
    """Both edges of a tube, its ends and its centre line: a black band with a white one in it."""
    page.polyline(points, wide)
    inner = max(wide - 2 * svg.THICK * 0.7, wide * 0.3)
    page.polyline(points, inner, white=True)
    for (x, y), (u, v) in ((points[0], points[1]), (points[-1], points[-2])):
        size = hypot(u - x, v - y) or 1.0
        nx, ny = -(v - y) / size * wide / 2, (u - x) / size * wide / 2
        page.line((x + nx, y + ny), (x - nx, y - ny), svg.THICK * 0.7)
    page.polyline(points, svg.THIN, svg.CENTRE)


def _draw_obstacle(page: svg.Page, view: View, o: Obstacle, *, flat: bool) -> None:
    x, y = view.flat(o.middle)
    tall = o.half[1] if flat else o.across
    a, b = view.on_page((x - o.half[0], y + tall)), view.on_page((x + o.half[0], y - tall))
    if o.round and flat:
        page.circle(view.on_page((x, y)), o.half[0] * view.scale, svg.MEDIUM)
        _hatch(page, view.on_page((x, y)), o.half[0] * view.scale)
        page.text(view.on_page((x, y - o.half[0] - 0.0)), o.name, 3.2, "middle", clear=False) if False else None
    else:
        page.rectangle(a[0], a[1], b[0] - a[0], b[1] - a[1], svg.MEDIUM)
        page.line(a, b, svg.THIN)
        page.line((a[0], b[1]), (b[0], a[1]), svg.THIN)
    if flat:
        page.text((view.on_page((x, y))[0], b[1] + 4.5), o.name, 3.2, "middle", clear=True)


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


def _outward(view: View, part: Arc) -> Flat:
    """Unit direction on the page from a bend's middle to its outside."""
    at, centre = view.on_page(view.flat(part.at(part.length / 2))), view.on_page(view.flat(part.centre))
    size = hypot(at[0] - centre[0], at[1] - centre[1]) or 1.0
    return ((at[0] - centre[0]) / size, (at[1] - centre[1]) / size)


def _dimension(page: svg.Page, view: View, line: Path, od: float, reads: Reads) -> None:
    wide = od * view.scale / 2
    number = 0
    for part in line.parts:
        a, b = (view.on_page(view.flat(part.at(x))) for x in (0.0, part.length))
        if isinstance(part, Line):
            long = hypot(b[0] - a[0], b[1] - a[1])
            words = reads(part.length)
            if long > svg.text_width(words, 3.2) + 2:
                turn = atan2(b[1] - a[1], b[0] - a[0])
                flip = pi if cos(turn) < -1e-6 else 0.0
                nx, ny = sin(turn + flip), -cos(turn + flip)
                middle = ((a[0] + b[0]) / 2 + nx * (wide + 1.6), (a[1] + b[1]) / 2 + ny * (wide + 1.6))
                page.text(middle, words, 3.2, "middle", turn=(turn + flip) * 180 / pi, clear=True)
        elif part.angle > 0:
            number += 1
            middle = view.on_page(view.flat(part.at(part.length / 2)))
            ox, oy = _outward(view, part)
            spot = (middle[0] + ox * (wide + 7), middle[1] + oy * (wide + 7))
            page.line(
                (middle[0] + ox * wide, middle[1] + oy * wide), (spot[0] - ox * 3.4, spot[1] - oy * 3.4), svg.THIN
            )
            page.circle(spot, 3.4, svg.MEDIUM, fill="#fff")
            page.text((spot[0], spot[1] + 1.4), str(number), 4, "middle", bold=True)
            words = f"{degrees_text(part.angle)}  R {reads(part.radius)}"
            side = 1 if ox >= 0 else -1
            page.text((spot[0] + side * 4.6, spot[1] + 1.2), words, 3.2, "start" if side > 0 else "end", clear=True)
        for q in (a, b) if isinstance(part, Arc) else ():
            page.circle(q, 0.5, svg.THIN, fill="#000")
    ends = [view.flat(line.parts[0].at(0.0)), view.flat(line.parts[-1].at(line.parts[-1].length))]
    low = max(view.on_page(view.flat(p))[1] for p in chords(line, od / 50)) + wide + 11
    a, b = sorted((view.on_page(e) for e in ends), key=lambda p: p[0])
    page.dimension(a, b, reads(abs(ends[1][0] - ends[0][0])), off=low, direction="across", size=3.6)
    top = max((view.flat(p) for p in chords(line, od / 200)), key=lambda p: p[1])
    for end, off in ((a, a[0] - 9), (b, b[0] + 9)):
        height = top[1] - (view.low - end[1]) / view.scale
        if height > od / 4:
            page.dimension(
                end, (view.on_page(top)[0], view.on_page(top)[1]), reads(height), off=off, direction="upright", size=3.6
            )


def _draw_gap(page: svg.Page, view: View, o: Obstacle, points: Sequence[Vector], od: float, reads: Reads) -> None:
    """The gap in the view, at its nearest: from the obstacle's edge to the tube's."""
    x, y = view.flat(o.middle)
    best, place, edge = inf, (0.0, 0.0), (0.0, 0.0)
    flat = [view.flat(p) for p in points]
    for a, b in zip(flat, flat[1:], strict=False):  # noqa: RUF007
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
        return
    skin = tuple(e + (q - e) * (best - od / 2) / best for e, q in zip(edge, place, strict=True))
    a, b = view.on_page(edge), view.on_page((skin[0], skin[1]))
    way = atan2(b[1] - a[1], b[0] - a[0])
    page.arrow(a, way, 2.2)
    page.line(a, (a[0] - 7 * cos(way), a[1] - 7 * sin(way)), svg.THIN)
    page.arrow(b, way + pi, 2.2)
    page.line(b, (b[0] + (od * view.scale + 6) * cos(way), b[1] + (od * view.scale + 6) * sin(way)), svg.THIN)
    at = (b[0] + (od * view.scale + 9) * cos(way), b[1] + (od * view.scale + 9) * sin(way))
    page.text((at[0], at[1]), f"gap {reads(best - od / 2)}", 3.6, "middle", bold=True, clear=True)


def stick(
    layout: Layout,
    od: float,
    *,
    title: str,
    set_to: Sequence[str],
    reads: Reads | None = None,
    datum: str = "START END",
    seam: float | None = None,
    notes: Sequence[str] = (),
) -> str:
    """The blank with its marks, and a table to work from: where, which way the bend goes, what to set, how to turn.

    ``set_to`` is the text of the angle to set for each bend; ``datum`` what the marks are measured from. Rows stand in
    the order of bending. The clocks show the tube from its start, the dot where the inside of the bend lies.
    """
    reads = reads or inches(32)
    page = svg.Page(WIDTH, HEIGHT, title)
    page.text((10, 12), title, 5.5, bold=True)
    page.text((10, 20), f"CUT {reads(layout.cut_rounded)}", 6, bold=True)
    trims = ", ".join(
        f"{reads(t)} trim at the {w}" for t, w in ((layout.trim_start, "start"), (layout.trim_end, "end")) if t > 0
    )
    page.text((112, 20), f"tube {reads(od)}; {trims + ' in it' if trims else 'no trim in it'}", 3.4)
    left, right, mid, half = 14.0, WIDTH - 14.0, 47.0, 6.5
    scale = (right - left) / layout.cut_length

    def x_of(position: float) -> float:
        return left + (position - layout.start) * scale

    page.rectangle(left, mid - half, right - left, 2 * half, svg.THICK)
    page.line((left - 5, mid), (right + 5, mid), svg.THIN, svg.CENTRE)
    page.text((left, mid - half - 2), "START", 3.4, bold=True)
    page.text((right, mid - half - 2), "END", 3.4, "end", bold=True)
    for trim, edge, way in ((layout.trim_start, left, 1), (layout.trim_end, right, -1)):
        if trim > 0:
            x = edge + way * trim * scale
            page.line((x, mid - half), (x, mid + half), svg.MEDIUM, svg.HIDDEN)
    for mark in layout.marks:
        start = x_of(mark.tangent - layout.datum)
        end = start + mark.goes * mark.arc * scale
        page.rectangle(min(start, end), mid - half + 0.6, abs(end - start), 2 * half - 1.2, svg.THIN, fill="#ddd")
    zero = x_of(0.0)
    page.line((zero, mid - half - 6), (zero, mid + half + 6), svg.MEDIUM, svg.CENTRE)
    page.area([(zero, mid + half + 1), (zero - 2.2, mid + half + 5), (zero + 2.2, mid + half + 5)])
    anchor = "start" if zero < left + 30 else "end" if zero > right - 30 else "middle"
    page.text((zero, mid + half + 9), f"MEASURE FROM HERE: {datum}", 3.4, anchor, bold=True)
    _numbered(page, layout.marks, x_of, mid, half)
    _table(page, layout, set_to, reads, 66.0)
    foot = [
        *([f"Weld seam: {degrees_text(seam, '1')} {CLOCKWISE} from the inside of bend 1."] if seam is not None else []),
        *notes,
    ]
    for i, note in enumerate(foot):
        page.text((10, HEIGHT - 4 - 4.8 * (len(foot) - 1 - i)), note, 3.4)
    return page.svg()


def _numbered(page: svg.Page, marks: Sequence[Mark], x_of: object, mid: float, half: float) -> None:
    """The marks over the tube, their numbers spread where they stand close, with the way that each bend goes."""
    at = sorted(((x_of(m.rounded), m) for m in marks), key=lambda row: row[0])  # type: ignore[operator]
    spots: list[float] = []
    for x, _ in at:
        spots.append(max(x, spots[-1] + 8.4) if spots else x)
    shift = max(0.0, (spots[-1] if spots else 0.0) - (WIDTH - 16))
    for i in range(len(spots) - 1, -1, -1):
        limit = WIDTH - 16 if i == len(spots) - 1 else spots[i + 1] - 8.4
        spots[i] = min(spots[i], limit) if shift else spots[i]
    for (x, m), spot in zip(at, spots, strict=True):
        page.line((x, mid - half - 1), (x, mid + half + 1), svg.THICK)
        page.polyline([(x, mid - half - 1), (spot, mid - half - 5.5)], svg.THIN)
        page.circle((spot, mid - half - 9.2), 3.7, svg.MEDIUM, fill="#fff")
        page.text((spot, mid - half - 7.6), str(m.number), 4.6, "middle", bold=True)
        page.line((x, mid), (x + m.goes * 6, mid), svg.MEDIUM)
        page.arrow((x + m.goes * 7.5, mid), 0.0 if m.goes > 0 else pi, 3.0)


def _table(page: svg.Page, layout: Layout, set_to: Sequence[str], reads: Reads, top: float) -> None:
    columns = ((10, "MARK"), (30, "FROM THE DATUM"), (108, "BEND GOES"), (142, "SET"), (186, "TURN FIRST"))
    for x, head in columns:
        page.text((x, top), head, 3.2, bold=True)
    by_number = {m.number: m for m in layout.marks}
    room = HEIGHT - 18 - top
    step = min(15.0, room / max(1, len(layout.order)))
    size = min(6.0, step * 0.46)
    before: Mark | None = None
    for row, n in enumerate(layout.order):
        m, y = by_number[n], top + 4 + step * (row + 0.62)
        page.line((10, top + 3 + step * row), (WIDTH - 10, top + 3 + step * row), svg.THIN)
        page.circle((15, y - size * 0.36), size * 0.75, svg.MEDIUM)
        page.text((15, y), str(n), size, "middle", bold=True)
        side = "" if layout.start >= -1e-9 or layout.end <= 1e-9 else " left" if m.rounded < 0 else " right"
        page.text((30, y), reads(abs(m.rounded)) + side, size, bold=True)
        page.text((108, y), "to END" if m.goes > 0 else "to START", size * 0.8)
        page.text((142, y), set_to[n - 1], size, bold=True)
        page.text((186, y), _turn_words(m, before), min(size * 0.72, 3.9))
        _clock(page, (WIDTH - 17, y - size * 0.36), step * 0.42, m.line)
        before = m


def _turn_words(mark: Mark, before: Mark | None) -> str:
    """How far to turn the tube's mark from the bend made before, as seen from the start."""
    if before is None:
        return "first bend: line at 0"
    turn = (mark.line - before.line + pi) % (2 * pi) - pi
    if abs(turn) < 0.004:
        return "no turn"
    if abs(abs(turn) - pi) < 0.004:
        return "half a turn, 180 deg"
    return f"{degrees_text(abs(turn))} {CLOCKWISE if turn > 0 else COUNTER}"


def _clock(page: svg.Page, centre: Flat, radius: float, line: float) -> None:
    page.circle(centre, radius, svg.MEDIUM)
    x, y = centre[0] + radius * sin(line), centre[1] - radius * cos(line)
    page.line(centre, (x, y), svg.MEDIUM)
    page.circle((x, y), 1.1, svg.THIN, fill="#000")


def true_plane(line: Path) -> tuple[Vector, Vector]:
    """Right and up of the view that shows a flat tube in its true shape: right from end to end, up to its first bend."""
    from gaugeblock.calc.path import add, norm, unit

    start, end = line.parts[0].at(0.0), line.parts[-1].at(line.parts[-1].length)
    run = subtract(end, start)
    right = unit(run) if norm(run) > 1e-9 else line.heading(0.0)
    arc = next((p for p in line.parts if isinstance(p, Arc) and p.angle > 0), None)
    if arc is None:
        from gaugeblock.calc.path import square_to

        return right, square_to(right)
    across = unit(cross(arc.out, arc.ahead))
    up = unit(cross(across, right))
    return (right, up) if dot(add(up, right, 0.0), line.heading(arc.length)) >= 0 else (right, (-up[0], -up[1], -up[2]))
