"""Paper at full size to wrap round a tube: the strip that squares a line, cope templates, mitres and pie cuts.

Every page is 259 by 190 mm, which prints whole on Letter and on A4, and carries a check scale in inches and in
millimetres. The strip is as long as the way round the outside of the paper, so its thickness is counted.
"""

from __future__ import annotations

from math import ceil, cos, pi

from gaugeblock.calc.cope import PieCuts, cope, mitre_depth
from gaugeblock.drawing import svg
from gaugeblock.drawing.lengths import degrees_text, inches

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import TypeAlias

    from gaugeblock.drawing.lengths import Reads

    Flat: TypeAlias = tuple[float, float]

WIDTH, HEIGHT = 259.0, 190.0
LEFT, ROOM = 10.0, 228.0  # mm: the longest piece of strip on a page, with its tab
TAB = 10.0
PAPER = 0.0001  # m, thickness of office paper


def _page(title: str, lines: Sequence[str]) -> svg.Page:
    """A page with its title, what to do, and the check scales at its foot."""
    page = svg.Page(WIDTH, HEIGHT, title)
    page.text((LEFT, 10), title, 5, bold=True)
    for i, line in enumerate(lines):
        page.text((LEFT, 16 + 4.4 * i), line, 3.5)
    _scales(page, HEIGHT - 20)
    return page


def _scales(page: svg.Page, y: float) -> None:
    """Check scales: 4 in by eighths and 100 mm; a print at another size shows on a ruler."""
    page.text(
        (LEFT, y - 3),
        "PRINT AT 100 %. Lay a ruler on both scales before you cut; throw the page away if one is out.",
        3.5,
        bold=True,
    )
    page.line((LEFT, y), (LEFT + 101.6, y), svg.MEDIUM)
    for i in range(33):
        page.line(
            (LEFT + i * 3.175, y), (LEFT + i * 3.175, y + (5 if i % 8 == 0 else 3.4 if i % 4 == 0 else 2)), svg.THIN
        )
    for i in range(5):
        page.text((LEFT + i * 25.4, y + 9), f"{i}" + (" in" if i == 4 else ""), 3.5, "middle")
    x = WIDTH - LEFT - 106
    page.line((x, y), (x + 100, y), svg.MEDIUM)
    for i in range(101):
        page.line((x + i, y), (x + i, y + (5 if i % 10 == 0 else 3.4 if i % 5 == 0 else 2)), svg.THIN)
    for i in range(0, 101, 20):
        page.text((x + i, y + 9), f"{i}" + (" mm" if i == 100 else ""), 3.5, "middle")


def round_length(od: float, paper: float = PAPER) -> float:
    """Way round the outside of a tube at the middle of the paper, mm."""
    return pi * (od + paper) * 1000


def _rows(length: float) -> list[Flat]:
    """A strip cut into rows that fit a page: (from, to) in mm."""
    count = max(1, ceil(length / ROOM))
    return [(length * i / count, length * (i + 1) / count) for i in range(count)]


def wrap_strip(
    od: float, lines: Sequence[tuple[str, float]], *, title: str, reads: Reads | None = None, paper: float = PAPER
) -> list[str]:
    """Pages with a strip that squares a line round the tube, with turn lines (name, angle clockwise from the start).

    Lines on top of each other share one place.
    """
    reads = reads or inches(32)
    length = round_length(od, paper)
    at: dict[float, list[str]] = {}
    for name, angle in lines:
        turn = round(angle / (2 * pi) % 1.0 * length, 2)
        at.setdefault(0.0 if length - turn < 0.02 else turn, []).append(name)
    pages = []
    rows = _rows(length)
    tall = 32.0 if len(at) < 5 else 46.0  # many lines need room for their numbers
    for first in range(0, len(rows), 2):
        page = _page(
            title,
            (
                (
                    f"Tube {reads(od)} outside: the strip is {reads(length / 1000)} round. Cut it out along the solid"
                    " lines."
                ),
                (
                    "Wrap it tight, print outwards, the arrow to the START of the tube. When edge A meets edge B and"
                    " the long edges run"
                ),
                (
                    "true, the edge is square round the tube: mark along it. Carry every turn line along the tube with"
                    " a straight edge."
                ),
                (
                    "The scale counts degrees clockwise, seen from the START. A number in a circle is a bend; S is the"
                    " weld seam."
                ),
            ),
        )
        for k, (low, high) in enumerate(rows[first : first + 2]):
            _strip_row(page, low, high, length, at, 44.0 + k * 56.0, tall)
        pages.append(page.svg())
    return pages


def _strip_row(
    page: svg.Page, low: float, high: float, length: float, at: dict[float, list[str]], y: float, tall: float
) -> None:
    def x_of(place: float) -> float:
        return LEFT + place - low

    last = high >= length - 1e-6
    page.rectangle(LEFT, y, high - low, tall, svg.MEDIUM)
    page.polyline(
        [(x_of(high), y), (x_of(high) + TAB, y + 2), (x_of(high) + TAB, y + tall - 2), (x_of(high), y + tall)],
        svg.THIN,
        svg.HIDDEN,
    )
    page.text(
        (x_of(high) + TAB * 0.62, y + tall / 2), "tab under A" if last else "tab under next", 3.5, "middle", turn=-90
    )
    page.text((LEFT + 1.4, y + tall - 1.8), "A" if low == 0 else "next", 4.4, bold=True)
    page.text((x_of(high) - 1.4, y + tall - 1.8), "B" if last else "", 4.4, "end", bold=True)
    for step in range(0, 360, 5):
        place = step / 360 * length
        if low - 1e-9 <= place <= high + 1e-9:
            page.line((x_of(place), y), (x_of(place), y + (2.4 if step % 15 else 4)), svg.THIN)
            if step % 45 == 0 and place < high - 6:
                page.text((x_of(place) + 0.8, y + 6.6), str(step), 3.5)
    shown = [(x_of(p), n) for p, n in at.items() if low - 1e-9 <= p < high - 1e-6 or (last and p == high)]
    for x, _ in shown:
        page.line((x, y), (x, y + tall), svg.THICK)
    ends: list[float] = []  # how far each level is taken
    for x, names in sorted(shown, key=lambda row: row[0]):
        wide = 8.4 * (len(names) - 1)
        spot = x + 5.0 if x + wide + 9.0 < x_of(high) else x - 5.0 - wide
        level = next((n for n, end in enumerate(ends) if spot - 4.2 > end), len(ends))
        ends[level:] = [spot + wide + 4.2, *ends[level + 1 :]]
        middle = y + 12.2 + 8.0 * level if tall > 40 else y + tall / 2 + 2 + 8.0 * level
        page.line((x, middle), (spot + wide if spot < x else spot, middle), svg.THIN)
        for i, name in enumerate(names):
            page.circle((spot + i * 8.4, middle), 3.7, svg.MEDIUM, fill="#fff")
            page.text((spot + i * 8.4, middle + 1.5), name, 4.2, "middle", bold=True)
    # the arrow stands where no turn line runs
    free = [LEFT + 12 + i for i in range(max(1, int(high - low - 60)))]
    spots = [x_of(place) for place in at]
    middle = max(free, key=lambda x: (min(min((abs(x + 15 - q) for q in spots), default=99.0), 20.0), -x))
    page.line((middle, y + tall - 7), (middle, y + tall - 1), svg.MEDIUM)
    page.arrow((middle, y + tall - 0.4), pi / 2, 3)
    page.text((middle + 3, y + tall - 2.4), "START of the tube", 3.5)


def _curve_pages(
    title: str,
    words: Sequence[str],
    od: float,
    depth: Callable[[float], float],
    quarters: Sequence[str],
    paper: float,
    second: Callable[[float], float] | None = None,
) -> list[str]:
    """Pages with an unrolled cut: ``depth`` in m by the angle round the tube; a second curve gives the other side."""
    length = round_length(od, paper)
    count = 360
    heights = [1000 * depth(2 * pi * i / count) for i in range(count + 1)]
    others = [1000 * second(2 * pi * i / count) for i in range(count + 1)] if second else None
    top = max(heights)
    base = min(others) if others else min(heights) - 24.0
    tall = top - base
    if tall > HEIGHT - 66:
        raise ValueError(f"the cut is {tall:.0f} mm deep and does not fit a page")
    rows = _rows(length)
    per_page = max(1, int((HEIGHT - 64) // (tall + 10)))
    pages = []
    for first in range(0, len(rows), per_page):
        page = _page(title, words)
        for k, (low, high) in enumerate(rows[first : first + per_page]):
            y = (44.0 if len(words) > 3 else 40.0) + k * (tall + 10)

            def spot(i: float, z: float, low: float = low, y: float = y) -> Flat:
                return (LEFT + i / count * length - low, y + top - z)

            steps = [
                low / length * count,
                *[i for i in range(count + 1) if low < i / count * length < high],
                high / length * count,
            ]
            curve = [spot(i, _between(heights, i)) for i in steps]
            page.polyline(curve, svg.MEDIUM)
            bottom = [spot(i, _between(others, i) if others else base) for i in steps]
            page.polyline(bottom, svg.MEDIUM)
            page.line(curve[0], bottom[0], svg.MEDIUM)
            page.line(curve[-1], bottom[-1], svg.MEDIUM)
            a, b = curve[-1], bottom[-1]
            page.polyline([a, (a[0] + TAB, a[1] + 2), (b[0] + TAB, b[1] - 2), b], svg.THIN, svg.HIDDEN)
            page.text(((a[0] + b[0]) / 2 + TAB * 0.62, (a[1] + b[1]) / 2), "tab", 3.5, "middle", turn=-90)
            for q in range(5):
                place = q / 4 * count
                if steps[0] - 1e-9 <= place <= steps[-1] + 1e-9:
                    p, r = (
                        spot(place, _between(heights, place)),
                        spot(place, _between(others, place) if others else base),
                    )
                    page.line(p, r, svg.THIN, svg.HIDDEN)
                    end = place >= steps[-1] - 1e-9
                    page.text((p[0] + (-1 if end else 3.4), r[1] - 1.6), quarters[q % 4], 3.5, "start", turn=-90)
        pages.append(page.svg())
    return pages


def _between(values: Sequence[float], place: float) -> float:
    i = min(int(place), len(values) - 2)
    return values[i] + (values[i + 1] - values[i]) * (place - i)


def cope_template(
    *,
    header_od: float,
    od: float,
    wall: float,
    angle: float,
    offset: float = 0.0,
    title: str,
    reads: Reads | None = None,
    paper: float = PAPER,
) -> list[str]:
    """Pages with the cut of a branch tube onto a header, at any angle and offset, the wall allowed for.

    A positive offset sets the branch over to the right, seen on its acute side with the header at the top.
    """
    reads = reads or inches(32)
    points = [z for _, z in cope(header_od=header_od, od=od, wall=wall, angle=angle, offset=offset)]

    def depth(t: float) -> float:
        return -_between(points, t / (2 * pi) * 360)

    hand = "right" if offset > 0 else "left"
    shift = f", axes {reads(abs(offset))} off to the {hand}" if offset else ""
    square = angle > pi / 2 - 1e-6
    away = ("away side", "near side") if offset > 0 else ("near side", "away side")
    sides = away if offset else ("side", "side")
    ends = ("along it", "along it") if square else ("acute side", "obtuse side")
    words = (
        f"Branch {reads(od)}, wall {reads(wall)}, onto a tube of {reads(header_od)} at {degrees_text(angle)}{shift}.",
        (
            "Wrap it round the branch, print outwards, the curve to the end to be cut; mark along the curve, cut square"
            " through the wall."
        ),
        *(
            [
                "Right and left are as seen on the acute side (square: on the 'along it' side at edge A), the other"
                " tube at the top."
            ]
            if offset
            else []
        ),
        (
            f"Lowest point of the curve to the other tube's centre line: {reads(max(points))}; highest:"
            f" {reads(min(points))}."
        ),
    )
    return _curve_pages(title, words, od, depth, (ends[0], sides[0], ends[1], sides[1]), paper)


def mitre_template(
    od: float, turn: float, *, title: str, reads: Reads | None = None, paper: float = PAPER
) -> list[str]:
    """Pages with a mitre cut for a corner of ``turn``: each piece is cut at half of it."""
    reads = reads or inches(32)
    words = (
        (
            f"Tube {reads(od)}; a corner of {degrees_text(turn)}: both pieces cut at {degrees_text(turn / 2, '0.25')}"
            " from square."
        ),
        (
            "Wrap it round the tube, print outwards, the curve to the end to be cut; mark along the curve. Turn one"
            " piece half round."
        ),
        f"Long side to short side: {reads(mitre_depth(od / 2, turn / 2, pi))}.",
    )
    return _curve_pages(
        title,
        words,
        od,
        lambda t: -mitre_depth(od / 2, turn / 2, t),
        ("long side", "side", "short side", "side"),
        paper,
    )


def pie_template(
    od: float, radius: float, angle: float, joints: int, *, title: str, reads: Reads | None = None, paper: float = PAPER
) -> list[str]:
    """Pages with one middle piece of a bend welded from straight pieces, both its cuts on it."""
    reads = reads or inches(32)
    cuts = PieCuts(radius, od, angle, joints)

    def half(t: float) -> float:
        return cuts.end[1] + (cuts.end[2] - cuts.end[1]) * cos(t)

    words = (
        (
            f"Tube {reads(od)}; {degrees_text(angle)} at R {reads(radius)} in {joints} joints: every cut"
            f" {degrees_text(cuts.mitre, '0.25')} from square."
        ),
        (
            f"{joints - 1} pieces as this: outside {reads(cuts.middle[2])}, inside {reads(cuts.middle[0])}, kerf not"
            " counted."
        ),
        (
            f"Wrap it round the tube, print outwards; cut both curves. The two ends take {reads(cuts.end[1])} each of"
            " the bend's centre line."
        ),
    )
    return _curve_pages(title, words, od, half, ("outside", "side", "inside", "side"), paper, lambda t: -half(t))
