"""The side view of a propeller shaft: the lines of gearbox, shaft and pinion with their slopes and working angles."""

from __future__ import annotations

from itertools import pairwise
from math import tan

from gaugeblock.drawing.svg import CENTRE, HIDDEN, LEAST, MEDIUM, THICK, THIN, Page

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    Flat: TypeAlias = tuple[float, float]

WIDTH = 128.0
_LEFT, _STUB, _TOP, _FOOT = 4.0, 22.0, 19.0, 9.0
_DASHES = (CENTRE, HIDDEN)


def side_view(
    slopes: Sequence[float],
    named: Sequence[str],
    angles: Sequence[str],
    lengths: Sequence[str],
    others: Sequence[tuple[str, Sequence[float]]] = (),
) -> str:
    """SVG of the shaft from the gearbox (left) to the axle, every slope true, in rad, down to the rear positive.

    ``named`` says what each line is and its slope, ``angles`` the working angle of each joint, ``lengths`` the
    length of each shaft between two joints ("" where it is not known); ``others`` are further states, dashed.
    ValueError for fewer than three lines.
    """
    if len(slopes) < 3 or len(named) != len(slopes) or len(angles) != len(slopes) - 1:
        raise ValueError("a shaft has a line before its first joint and one after its last")
    ways = [_points(slopes), *(_points(other) for _, other in others)]
    high = min(y for way in ways for _, y in way)
    low = max(y for way in ways for _, y in way)
    legend = 5.0 if others else 0.0
    page = Page(WIDTH, _TOP + low - high + 24.0 + _FOOT + legend, "side view of the propeller shaft")
    down = _TOP - high
    for (_, _), way, dash in zip(others, ways[1:], _DASHES, strict=False):
        page.polyline([(x, y + down) for x, y in way], MEDIUM, dash)
    way = [(x, y + down) for x, y in ways[0]]
    page.polyline(way, THICK)
    for (x, y), said in zip(way[1:-1], angles, strict=True):
        page.circle((x, y), 2.2, MEDIUM, fill="#fff")
        page.text((x, y - 5), said, LEAST, "middle", bold=True, clear=True)
    under = low + down + 7.0
    for (a, b), said in zip(pairwise(way), named, strict=True):
        for n, word in enumerate(said.split("|")):
            page.text(((a[0] + b[0]) / 2, under + 4.2 * n), word, LEAST, "middle", clear=True)
    for (a, b), said in zip(pairwise(way[1:-1]), lengths, strict=True):
        if said:
            page.dimension(a, b, said, off=under + 13.5, direction="across", size=LEAST)
    page.text((_LEFT, 4.5), "gearbox", LEAST)
    page.text((WIDTH - 4, 4.5), "axle", LEAST, "end")
    for n, ((said, _), dash) in enumerate(zip(others, _DASHES, strict=False)):
        x, y = _LEFT + 50 * n, page.height - 3.0
        page.line((x, y - 1.2), (x + 12, y - 1.2), MEDIUM, dash)
        page.text((x + 14, y), said, LEAST)
    page.line((_LEFT, 7), (WIDTH - 4, 7), THIN)
    return page.svg()


def _points(slopes: Sequence[float]) -> list[Flat]:
    """The corners of the lines, the first joint at height zero."""
    spans = len(slopes) - 2
    inner = (WIDTH - 2 * (_LEFT + _STUB)) / spans
    runs = [_STUB, *[inner] * spans, _STUB]
    x, y = _LEFT, -_STUB * tan(slopes[0])
    out = [(x, y)]
    for run, slope in zip(runs, slopes, strict=True):
        x, y = x + run, y + run * tan(slope)
        out.append((x, y))
    return out
