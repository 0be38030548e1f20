"""Contact patterns on the drive side of a ring gear tooth, and what each asks to be moved."""

from __future__ import annotations

from math import cos, pi, sin

from gaugeblock.drawing.svg import LEAST, MEDIUM, THIN, Page, wrapped

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

_WIDE, _TALL, _ACROSS = 42.0, 40.0, 3
_TOE, _HEEL, _TOP = 9.0, 14.0, 9.0


class Pattern:
    """One picture: its name, the place of the patch on the tooth (0 to 1 toe to heel, root to top), what to move."""

    __slots__ = ("along", "do", "name", "up")

    def __init__(self, name: str, along: float, up: float, do: str) -> None:
        self.name = name
        self.along = along
        self.up = up
        self.do = do


def contact_patterns(patterns: Sequence[Pattern]) -> str:
    """SVG of the patterns, three across; the toe is the inner end of the tooth, on the left."""
    down = -(-len(patterns) // _ACROSS)
    page = Page(_WIDE * _ACROSS, _TALL * down + 2.0, "contact patterns")
    for n, pattern in enumerate(patterns):
        _tooth(page, _WIDE * (n % _ACROSS) + 2.0, _TALL * (n // _ACROSS), pattern)
    return page.svg()


def _tooth(page: Page, x: float, y: float, pattern: Pattern) -> None:
    length = _WIDE - 8.0
    low = y + _TOP + _HEEL
    page.text((x, y + 5.5), pattern.name, LEAST, bold=True)
    toe, heel = (x, low - _TOE), (x + length, low - _HEEL)
    page.polyline([(x, low), toe, heel, (x + length, low), (x, low)], MEDIUM)
    middle_x = x + length * pattern.along
    height = _TOE + (_HEEL - _TOE) * pattern.along
    middle = (middle_x, low - height * pattern.up)
    wide, tall = length * 0.17, height * 0.2
    ring = [(middle[0] + wide * cos(2 * pi * k / 36), middle[1] + tall * sin(2 * pi * k / 36)) for k in range(36)]
    page.area(ring, "#777")
    page.polyline([*ring, ring[0]], THIN)
    page.text((x, low + 4.0), "toe", LEAST)
    page.text((x + length, low + 4.0), "heel", LEAST, "end")
    for n, line in enumerate(wrapped(pattern.do, LEAST, _WIDE - 5.0)):
        page.text((x, low + 8.2 + 3.8 * n), line, LEAST)
