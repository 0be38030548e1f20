"""The straight stick with its marks, and the table that is worked from at the die."""

from __future__ import annotations

from itertools import pairwise
from math import cos, pi, sin

from gaugeblock.drawing import svg
from gaugeblock.drawing.legend import BEND, CLOCK, ORDER, TRIM, WAY, ZONE, legend
from gaugeblock.drawing.lengths import degrees_text, inches

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import TypeAlias

    from gaugeblock.calc.stick import Layout, Mark
    from gaugeblock.drawing.lengths import Reads

    Flat: TypeAlias = tuple[float, float]

WIDTH, HEIGHT = 259.0, 190.0  # prints on Letter and A4, landscape
CLOCKWISE, COUNTER = "clockwise", "counter-clockwise"


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
    page.fit((10, 12), title, 5.5, WIDTH - 20, bold=True)
    page.text((10, 20), f"CUT {reads(layout.cut_length)}", 6, bold=True)
    ends = (("START", layout.trim_start), ("END", layout.trim_end))
    trims = ", ".join(f"{w} {reads(t)}" for w, t in ends if t > 0) or "none"
    if layout.trim_start > 0 and abs(layout.trim_start - layout.trim_end) < 1e-9:
        trims = f"{reads(layout.trim_start)} at each end"
    page.fit((112, 20), f"tube {reads(od)}; includes trim: {trims}", 3.5, WIDTH - 122)
    left, right, mid, half = 17.0, WIDTH - 17.0, 55.0, 6.5
    scale = (right - left) / layout.cut_length

    def x_of(position: float) -> float:
        return left + (position - layout.start) * scale

    page.rectangle(left, mid - half, right - left, 2 * half, svg.THICK)
    page.line((left, mid), (right, mid), svg.THIN, svg.CENTRE)
    page.text((left - 2.5, mid), "START", 3.6, "middle", turn=-90, bold=True, clear=True)
    page.text((right + 5.2, mid), "END", 3.6, "middle", turn=-90, bold=True, clear=True)
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
    page.text((zero, mid + half + 9.5), f"MEASURE FROM HERE: {datum}", 3.5, anchor, bold=True)
    _numbered(page, layout, set_to, x_of, mid, half)
    foot = ["Clockwise is as seen looking along the tube from its START, whichever end is in the die."]
    if seam is not None:
        foot.append(f"Weld seam: {degrees_text(seam, '1')} {CLOCKWISE} from the inside of bend 1.")
    foot += [line for note in notes for line in svg.wrapped(note, svg.TEXT, WIDTH - 20)]
    signs = [
        (BEND, "bend, numbered from the START"),
        (ORDER, "order of bending"),
        (ZONE, "where the tube bends"),
        (WAY, "way that the bend goes from its mark"),
        *([(TRIM, "trim: cut off after bending")] if layout.trim_start > 0 or layout.trim_end > 0 else []),
        (CLOCK, "where the inside of the bend lies, seen from the START"),
    ]
    low = HEIGHT - 6.0 - 4.8 * len(foot)
    tall = legend(page, 10, low, signs, WIDTH - 20)
    _table(page, layout, set_to, reads, (81.0, low - tall - 1.0))
    for i, note in enumerate(foot):
        page.fit((10, HEIGHT - 4 - 4.8 * (len(foot) - 1 - i)), note, 3.5, WIDTH - 20)
    return page.svg()


def _numbered(
    page: svg.Page, layout: Layout, set_to: Sequence[str], x_of: Callable[[float], float], mid: float, half: float
) -> None:
    """The marks over the tube with what to set and how to turn; spread where they stand close; the way that each
    bend goes.
    """
    at = sorted(((x_of(m.rounded), m) for m in layout.marks), key=lambda row: row[0])
    if not at:
        return
    has_labels = len(at) <= 7
    apart = 31.0 if has_labels else 8.4
    first, last = (24.0, WIDTH - 24.0) if has_labels else (16.0, WIDTH - 16.0)
    spots = _spread([x for x, _ in at], apart, first, last)
    by_number = {m.number: m for m in layout.marks}
    before = {n: by_number[b] for b, n in pairwise(layout.order)}
    for (x, m), spot in zip(at, spots, strict=True):
        page.line((x, mid - half - 1), (x, mid + half + 1), svg.THICK)
        page.polyline([(x, mid - half - 1), (spot, mid - half - 5.5)], svg.THIN)
        page.circle((spot, mid - half - 9.2), 3.7, svg.MEDIUM, fill="#fff")
        page.text((spot, mid - half - 7.6), str(m.number), 4.6, "middle", bold=True)
        if has_labels:
            words = f"set {set_to[m.number - 1]}"
            words = words if svg.text_width(words, 3.5, True) < apart else "set: table"
            page.text((spot, mid - half - 18.2), words, 3.5, "middle", bold=True)
            earlier = before.get(m.number)
            page.text((spot, mid - half - 14.2), _short_turn(m, earlier), 3.5, "middle")
            page.text((spot + 4.8, mid - half - 7.9), ordinal(layout.order.index(m.number) + 1), 3.5, bold=True)
        page.line((x, mid), (x + m.goes * 6, mid), svg.MEDIUM)
        page.arrow((x + m.goes * 7.5, mid), 0.0 if m.goes > 0 else pi, 3.0)


def _spread(places: Sequence[float], apart: float, first: float, last: float) -> list[float]:
    """Places moved as little as need be to stand ``apart`` between ``first`` and ``last``, in their order."""
    groups: list[tuple[float, int]] = []  # middle and count of those that stand together
    for x in places:
        groups.append((x, 1))
        while len(groups) > 1:
            (a, n), (b, m) = groups[-2:]
            if b - a >= (n + m) / 2 * apart - 1e-9:
                break
            groups[-2:] = [((a * n + b * m) / (n + m), n + m)]
    out: list[float] = []
    for middle, count in groups:
        half = (count - 1) / 2 * apart
        kept = min(max(middle, first + half), last - half) if 2 * half <= last - first else (first + last) / 2
        out += [kept + (i - (count - 1) / 2) * apart for i in range(count)]
    for i in range(1, len(out)):
        out[i] = max(out[i], out[i - 1] + apart)
    over = max(0.0, out[-1] - last)
    return [x - over for x in out]


def ordinal(number: int) -> str:
    """A place in an order: 1st, 2nd, 11th.

    >>> [ordinal(n) for n in (1, 2, 3, 4, 11, 21)]
    ['1st', '2nd', '3rd', '4th', '11th', '21st']
    """
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _short_turn(mark: Mark, before: Mark | None) -> str:
    if before is None:
        return "start here"
    turn = (mark.line - before.line + pi) % (2 * pi) - pi
    if abs(turn) < 0.004:
        return "no turn"
    if abs(abs(turn) - pi) < 0.004:
        return "turn 180 deg"
    return f"turn {degrees_text(abs(turn))} {'cw' if turn > 0 else 'ccw'}"


def _table(page: svg.Page, layout: Layout, set_to: Sequence[str], reads: Reads, place: Flat) -> None:
    """The rows to work from, between two heights of the page."""
    top, foot = place
    columns = (
        (10, "DO"),
        (26, "BEND"),
        (44, "MARK AT"),
        (118, "BEND TOWARD"),
        (147, "SET"),
        (183, "TURN THE TUBE FIRST"),
    )
    for x, head in columns:
        page.text((x, top), head, 3.5, bold=True)
    page.text((WIDTH - 10, top), "INSIDE", 3.5, "end", bold=True)
    by_number = {m.number: m for m in layout.marks}
    room = foot - top - 5
    step = min(15.0, room / max(1, len(layout.order)))
    size = min(6.0, max(svg.LEAST, step * 0.46))
    before: Mark | None = None
    for row, n in enumerate(layout.order):
        m, y = by_number[n], top + 4 + step * (row + 0.62)
        page.line((10, top + 3 + step * row), (WIDTH - 10, top + 3 + step * row), svg.THIN)
        page.text((10, y), ordinal(row + 1), size, bold=True)
        page.circle((31, y - size * 0.36), size * 0.75, svg.MEDIUM)
        page.text((31, y), str(n), size, "middle", bold=True)
        side = (
            "" if layout.start >= -1e-9 or layout.end <= 1e-9 else " towards START" if m.rounded < 0 else " towards END"
        )
        page.fit((44, y), reads(abs(m.position)) + side, size * (0.8 if side else 1.0), 72, bold=True)
        page.fit((118, y), "to END" if m.goes > 0 else "to START", size * 0.75, 28)
        page.fit((147, y), set_to[n - 1], size, 34, bold=True)
        words = turn_words(m, before)
        for k, part in enumerate(words):
            page.fit((183, y + (k - (len(words) - 1) / 2) * size * 0.8), part, min(size * 0.66, 3.9), 54)
        _clock(page, (WIDTH - 17, y - size * 0.36), step * 0.32, m.line)
        before = m


def turn_words(mark: Mark, before: Mark | None) -> list[str]:
    """How far to turn the tube's line from the bend made before, as seen from the start."""
    if before is None:
        return ["start here"]
    turn = turned(mark.line - before.line)
    return [turn] if mark.goes == before.goes else ["swap ends in the die;", turn]


def turned(angle: float) -> str:
    """A turn in words, the short way round, clockwise as seen from the start."""
    turn = (angle + pi) % (2 * pi) - pi
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
