"""Two drawings of a line beside heat: temperature against gap with the limits in it, and the section to scale."""

from __future__ import annotations

from math import asin, ceil, cos, floor, log10, pi, sin

from gaugeblock.drawing.svg import CENTRE, HIDDEN, MEDIUM, TEXT, THICK, THIN, Page, text_width

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    Point: TypeAlias = tuple[float, float, float, float]  # gap, low, likely, high

_GREY = "#ddd"
# Half the width of a sheet, and the width of a phone: what is printed is as large as it is drawn.
_WIDTH, _HEIGHT = 88.0, 78.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 17.0, 3.0, 3.0, 25.0


def ticks(low: float, high: float, wanted: int = 6) -> tuple[float, ...]:
    """Round numbers from at or under ``low`` to at or over ``high``, about ``wanted`` of them.

    >>> ticks(38, 171)
    (0.0, 50.0, 100.0, 150.0, 200.0)
    """
    rough = (high - low) / max(wanted - 1, 1) or 1.0
    unit = 10.0 ** floor(log10(rough))
    step = next(m * unit for m in (1.0, 2.0, 2.5, 5.0, 10.0) if m * unit >= rough * (1 - 1e-9))
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    return tuple(round(i * step, 10) for i in range(first, last + 1))


class Mark:
    """A level or a place to draw in: its number and what it says."""

    __slots__ = ("value", "words")

    def __init__(self, value: float, words: str) -> None:
        self.value = value
        self.words = words


def temperature_against_gap(
    points: Sequence[Point],
    limits: Sequence[Mark],
    gaps: Sequence[Mark],
    title: str,
    gap_unit: str,
    temperature_unit: str,
) -> str:
    """SVG of the band low to high and the likely line over the gap, the limits across and the gaps upright.

    ``points`` rise in gap, at least two; all temperatures in one unit and all gaps in one. ValueError for fewer.
    """
    if len(points) < 2:
        raise ValueError("a plot needs at least two points")
    page = Page(_WIDTH, _HEIGHT, title)
    temperatures = [t for p in points for t in p[1:]] + [m.value for m in limits]
    head = 0.06 * (max(temperatures) - min(temperatures)) if limits else 0.0  # room for the words over a limit
    rows = ticks(min(temperatures), max(temperatures) + head)
    columns = ticks(0.0, points[-1][0])
    wide, tall = _WIDTH - _LEFT - _RIGHT, _HEIGHT - _TOP - _BOTTOM

    def x(gap: float) -> float:
        return _LEFT + wide * gap / columns[-1]

    def y(temperature: float) -> float:
        return _TOP + tall * (rows[-1] - temperature) / (rows[-1] - rows[0])

    page.area(
        [(x(g), y(high)) for g, _, _, high in points] + [(x(g), y(low)) for g, low, _, _ in reversed(points)], _GREY
    )
    for value in rows:
        page.line((_LEFT, y(value)), (_LEFT + wide, y(value)), THIN, "0.4 1.2")
        page.text((_LEFT - 1.5, y(value) + 1.1), f"{value:g}", TEXT, "end")
    for value in columns:
        page.line((x(value), _TOP + tall), (x(value), _TOP + tall + 1.5), THIN)
        page.text((x(value), _TOP + tall + 5.4), f"{value:g}", TEXT, "middle")
    page.rectangle(_LEFT, _TOP, wide, tall, MEDIUM)
    page.text((_LEFT + wide / 2, _HEIGHT - 12.0), f"gap, surface to surface, {gap_unit}", TEXT, "middle")
    degrees = temperature_unit.replace("deg", "\u00b0")
    page.text((4.0, _TOP + tall / 2), f"line, {degrees}", TEXT, "middle", turn=-90)
    page.polyline([(x(p[0]), y(p[3])) for p in points], THIN)
    page.polyline([(x(p[0]), y(p[1])) for p in points], THIN)
    page.polyline([(x(p[0]), y(p[2])) for p in points], THICK)
    for mark in limits:
        page.line((_LEFT, y(mark.value)), (_LEFT + wide, y(mark.value)), MEDIUM, HIDDEN)
        page.text((_LEFT + wide - 1.5, y(mark.value) - 1.2), mark.words, TEXT, "end", bold=True, clear=True)
    curves = [(x(g), y(high), y(low)) for g, low, _, high in points]
    taken = [(_LEFT, _LEFT + wide, y(m.value) - TEXT - 1.2, y(m.value) + 0.5) for m in limits]
    for mark in [m for m in gaps if m.value <= columns[-1]]:
        at, room = x(mark.value), text_width(mark.words, TEXT)
        page.line((at, _TOP), (at, _TOP + tall), MEDIUM, CENTRE)
        right = at + 1.2 + room > _LEFT + wide
        ends = (at - 1.2 - room, at - 1.2) if right else (at + 1.2, at + 1.2 + room)
        base = _free(ends, [_TOP + tall - 3.0 - 5.0 * n for n in range(int(tall / 5.0))], curves, taken)
        taken.append((*ends, base - TEXT, base + 1.0))
        page.text((ends[1 if right else 0], base), mark.words, TEXT, "end" if right else "start", clear=True)
    page.rectangle(1.0, _HEIGHT - 9.4, 5.0, 3.2, THIN, fill=_GREY)
    page.text((7.5, _HEIGHT - 6.6), "low to high of the inputs; thick line: likely", TEXT)
    page.text(
        (1.0, _HEIGHT - 1.6),
        "An estimate: measure on the car.",
        TEXT,
    )
    return page.svg()


def _free(
    ends: tuple[float, float],
    bases: Sequence[float],
    curves: Sequence[tuple[float, float, float]],
    taken: Sequence[tuple[float, float, float, float]],
) -> float:
    """The first base line on which words from ``ends`` to ``ends`` lie on no curve and on no other words; the first of
    all where none is free. ``curves`` are place, top and bottom of what is drawn, ``taken`` the boxes of words.
    """
    left, right = ends
    near = [n for n, (place, _, _) in enumerate(curves) if left <= place <= right]
    first, last = (min(near) - 1, max(near) + 1) if near else (0, len(curves) - 1)
    beside = curves[max(first, 0) : last + 1]
    drawn = [(left, right, min(top for _, top, _ in beside), max(bottom for _, _, bottom in beside)), *taken]
    for base in bases:
        above, below = base - TEXT, base + 1.0
        if not any(a < right and left < b and top < below and above < bottom for a, b, top, bottom in drawn):
            return base
    return bases[0]


def section(
    hot_diameter: float,
    line_diameter: float,
    gap: float,
    shield: str,
    words: tuple[str, str, str],
    title: str,
    unit_mm: float = 1.0,
    sleeve: float = 0.0,
) -> str:
    """SVG section of hot part, shield and line to scale; ``words`` are the sizes of hot part, line and gap as printed.

    Lengths are in any one unit of ``unit_mm`` millimetres; ``shield`` is ``none``, ``flat open``, ``curved open`` or
    ``closed``, drawn as the estimate takes it: midway; ``sleeve`` is its thickness over the line. The scale is the
    largest of 2:1, 1:1, 1:2 ... that fits.
    """
    outer = line_diameter + 2 * sleeve
    whole = (hot_diameter + gap + outer) * unit_mm
    tall = {"flat open": 2.0 * hot_diameter, "curved open": hot_diameter + gap, "closed": hot_diameter + gap}
    tallest = tall.get(shield, hot_diameter) * unit_mm
    if shield == "closed":
        whole += gap * unit_mm / 2
    scale = next((s for s in (2.0, 1.0, 0.5, 0.2, 0.1, 0.05) if whole * s <= 62 and tallest * s <= 62), 0.02)
    s = scale * unit_mm
    height = max(tallest * scale + 50, 66.0)
    page = Page(_WIDTH, height, title)
    said = f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"
    page.text((_WIDTH - 2.0, 5.0), f"scale {said}", TEXT, "end")
    middle = 10.0 + (height - 40.0) / 2
    hot_r, line_r, outer_r = hot_diameter / 2 * s, line_diameter / 2 * s, outer / 2 * s
    left = (_WIDTH - (hot_diameter + gap + outer) * s) / 2
    hot = (left + hot_r, middle)
    line = (left + (hot_diameter + gap) * s + outer_r, middle)
    page.line((hot[0] - hot_r - 6, middle), (line[0] + outer_r + 6, middle), THIN, CENTRE)
    _hot_part(page, hot, hot_r)
    if sleeve > 0:
        page.circle(line, max(outer_r, 0.5), MEDIUM, fill="#ddd")
    page.circle(line, max(line_r, 0.3), THICK, fill="#fff")
    _shield(page, shield, hot, hot_r, gap * s)
    hot_words, line_words, gap_words = words
    page.text((hot[0], middle + 1.2), f"hot {hot_words}", TEXT, "middle", clear=True)
    said = f"line {line_words}" + (" in its sleeve" if sleeve > 0 else "")
    spot = min(line[0] + outer_r + 2.0, _WIDTH - 2.0 - text_width(said, TEXT))
    page.text((spot, middle - outer_r - 2.0), said, TEXT, clear=True)
    below = middle + max(tallest * scale / 2, hot_r) + 8.0
    ends = (hot[0] + hot_r, middle), (line[0] - outer_r, middle)
    said_gap = f"gap {gap_words}"
    page.dimension(*ends, "", off=below, direction="across", size=TEXT)
    half = text_width(said_gap, TEXT) / 2
    spot = min(max((ends[0][0] + ends[1][0]) / 2, half + 1.0), _WIDTH - half - 1.0)
    page.text((spot, below + 5.0), said_gap, TEXT, "middle")
    page.text((1.0, height - 6.6), "As the estimate takes it: the real part", TEXT)
    page.text((1.0, height - 1.6), "may be bent, dented or nearer elsewhere.", TEXT)
    return page.svg()


def _hot_part(page: Page, middle: tuple[float, float], radius: float) -> None:
    """A circle, hatched: this one is hot."""
    page.circle(middle, radius, THICK, fill="#fff")
    for i in range(-6, 7):
        across = radius * i / 7 * 1.2
        if abs(across) < radius:
            turn = asin(across / radius)
            turns = (turn - pi / 4, pi - turn - pi / 4)
            ends = [(middle[0] + radius * cos(a), middle[1] + radius * sin(a)) for a in turns]
            page.line(ends[0], ends[1], THIN)


def _shield(page: Page, shield: str, hot: tuple[float, float], hot_radius: float, gap: float) -> None:
    """The shield midway in the gap, where there is one."""
    radius, middle = hot_radius + gap / 2, hot[1]
    if shield == "flat open":
        place, half = hot[0] + radius, 2.0 * hot_radius
        page.line((place, middle - half), (place, middle + half), THICK)
        page.text((place + 1.5, middle - half + 3.0), "shield", TEXT, clear=True)
    elif shield in ("curved open", "closed"):
        step = (pi / 2 if shield == "curved open" else pi) / 48
        turns = [step * i for i in range(-48, 49)]
        page.polyline([(hot[0] + radius * cos(t), middle + radius * sin(t)) for t in turns], THICK)
        page.text((hot[0] + radius * 0.75, middle - radius * 0.75 - 1.0), "shield", TEXT, clear=True)
