"""A small SVG page: lines, text, dimensions with arrowheads; black on white, in millimetres, no script, no request.

x runs right and y down, as SVG has it. Sizes of text are cap-and-descender heights in mm. Same calls, same bytes.
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, degrees, hypot, pi, sin

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    Flat: TypeAlias = tuple[float, float]

THIN, MEDIUM, THICK = 0.18, 0.35, 0.7  # mm; thin stays visible on a shop printer
TEXT = 3.5  # mm
LEAST = 3.5  # mm: no text is smaller in print; its capitals are 2.5 mm high
WIDE = 0.56  # mean width of a letter as a share of its size
CENTRE = "6 1.2 1.2 1.2"
HIDDEN = "2.4 1.2"


@lru_cache(maxsize=8192)  # one coordinate stands in many lines
def number(value: float) -> str:
    """A coordinate at a thousandth of a millimetre, without idle zeros."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def escaped(text: str) -> str:
    """Text that may stand in SVG."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def text_width(text: str, size: float, bold: bool = False) -> float:
    """About how wide a text is, mm; a little more than the usual sans faces take."""
    return len(text) * size * (WIDE + (0.05 if bold else 0.0))


def wrapped(words: str, size: float, room: float) -> list[str]:
    """A text in lines that fit ``room`` mm; a word that is longer stays whole."""
    lines: list[str] = []
    for word in words.split(" "):
        if lines and text_width(f"{lines[-1]} {word}", size) <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


class Page:
    """One drawing being made, ``width`` by ``height`` mm."""

    def __init__(self, width: float, height: float, title: str) -> None:
        self.width = width
        self.height = height
        self.title = title
        self._items: list[str] = []

    def _add(self, item: str) -> None:
        self._items.append(item)

    def line(self, a: Flat, b: Flat, weight: float = MEDIUM, dash: str = "") -> None:
        """A straight line."""
        self.polyline([a, b], weight, dash)

    def polyline(
        self,
        points: Sequence[Flat],
        weight: float = MEDIUM,
        dash: str = "",
        *,
        closed: bool = False,
        white: bool = False,
    ) -> None:
        """A line through points; ``white`` clears what lies under it."""
        way = "M" + " L".join(f"{number(x)} {number(y)}" for x, y in points) + ("Z" if closed else "")
        dashed = f' stroke-dasharray="{dash}"' if dash else ""
        colour = "#fff" if white else "#000"
        self._add(
            f'<path d="{way}" fill="none" stroke="{colour}" stroke-width="{number(weight)}"'
            f' stroke-linejoin="round"{dashed}/>'
        )

    def area(self, points: Sequence[Flat], fill: str = "#000") -> None:
        """A filled shape: black, or ``#fff`` to clear a place."""
        way = "M" + " L".join(f"{number(x)} {number(y)}" for x, y in points) + "Z"
        self._add(f'<path d="{way}" fill="{fill}" stroke="none"/>')

    def rectangle(
        self, x: float, y: float, width: float, height: float, weight: float = MEDIUM, *, fill: str = "none"
    ) -> None:
        """A rectangle by its top left corner."""
        self._add(
            f'<rect x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
            f' fill="{fill}" stroke="#000" stroke-width="{number(weight)}"/>'
        )

    def circle(
        self, centre: Flat, radius: float, weight: float = MEDIUM, *, fill: str = "none", dash: str = ""
    ) -> None:
        """A circle."""
        dashed = f' stroke-dasharray="{dash}"' if dash else ""
        self._add(
            f'<circle cx="{number(centre[0])}" cy="{number(centre[1])}" r="{number(radius)}" fill="{fill}"'
            f' stroke="#000" stroke-width="{number(weight)}"{dashed}/>'
        )

    def text(
        self,
        at: Flat,
        words: str,
        size: float = TEXT,
        anchor: str = "start",
        *,
        turn: float = 0.0,
        bold: bool = False,
        clear: bool = False,
    ) -> None:
        """Text on its base line; ``anchor`` start, middle or end; ``turn`` in degrees; ``clear`` puts white behind
        it.
        """
        x, y = at
        if clear:
            self._clear(at, words, size, anchor, turn, bold)
        spun = f' transform="rotate({number(turn)} {number(x)} {number(y)})"' if turn else ""
        weight = ' font-weight="bold"' if bold else ""
        self._add(
            f'<text x="{number(x)}" y="{number(y)}" font-size="{number(size)}"'
            f' text-anchor="{anchor}"{weight}{spun}>{escaped(words)}</text>'
        )

    def fit(self, at: Flat, words: str, size: float, room: float, anchor: str = "start", *, bold: bool = False) -> None:
        """Text made smaller where it would be wider than ``room`` mm, and cut where it would be too small to read."""
        size = max(LEAST, min(size, room / max(text_width(words, 1.0, bold), 1e-9)))
        most = int(room / text_width("x", size, bold) + 1e-9)
        self.text(at, words if len(words) <= most else words[: max(most - 2, 1)] + "..", size, anchor, bold=bold)

    def _clear(self, at: Flat, words: str, size: float, anchor: str, turn: float, bold: bool) -> None:
        wide = text_width(words, size, bold)
        left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[anchor]
        c, s = cos(turn * pi / 180), sin(turn * pi / 180)
        corners = ((left, 0.25 * size), (left + wide, 0.25 * size), (left + wide, -0.85 * size), (left, -0.85 * size))
        self.area([(at[0] + c * x - s * y, at[1] + s * x + c * y) for x, y in corners], "#fff")

    def nested(self, body: str, x: float, y: float, width: float, height: float, size: Flat) -> None:
        """Another page's inside, fitted into a place."""
        self._add(
            f'<svg x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
            f' viewBox="0 0 {number(size[0])} {number(size[1])}">\n{body}\n</svg>'
        )

    def arrow(self, tip: Flat, way: float, size: float = 2.6) -> None:
        """A filled arrowhead at ``tip`` that points along ``way`` (radians, y down)."""
        back = [(tip[0] - size * cos(way + d), tip[1] - size * sin(way + d)) for d in (-0.18, 0.18)]
        self.area([tip, *back])

    def dimension(
        self, a: Flat, b: Flat, words: str, *, off: float = 8.0, size: float = TEXT, direction: str = "along"
    ) -> None:
        """A dimension between two points, ``off`` mm aside (to the left of a to b for a positive one, y down).

        ``direction`` "along" measures the distance itself, "across" its horizontal part, "upright" its vertical part;
        then ``off`` is the place of the dimension line: its own y, or its own x. Too short for arrows inside: outside.
        """
        if direction == "across":
            c, d = (a[0], off), (b[0], off)
        elif direction == "upright":
            c, d = (off, a[1]), (off, b[1])
        else:
            long = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
            nx, ny = (b[1] - a[1]) / long, -(b[0] - a[0]) / long
            c, d = (a[0] + nx * off, a[1] + ny * off), (b[0] + nx * off, b[1] + ny * off)
        for point, foot in ((a, c), (b, d)):
            gap = hypot(foot[0] - point[0], foot[1] - point[1])
            if gap > 1.5:
                ux, uy = (foot[0] - point[0]) / gap, (foot[1] - point[1]) / gap
                self.line((point[0] + ux, point[1] + uy), (foot[0] + 1.2 * ux, foot[1] + 1.2 * uy), THIN)
        way = atan2(d[1] - c[1], d[0] - c[0])
        span = hypot(d[0] - c[0], d[1] - c[1])
        if span > 7.0:
            self.line(c, d, THIN)
            self.arrow(d, way)
            self.arrow(c, way + pi)
        else:
            ux, uy = cos(way), sin(way)
            self.line((c[0] - 6 * ux, c[1] - 6 * uy), (d[0] + 6 * ux, d[1] + 6 * uy), THIN)
            self.arrow(c, way)
            self.arrow(d, way + pi)
        turn = degrees(way)
        turn = turn - 180 if turn > 89.99 else turn + 180 if turn < -90.01 else turn
        middle = ((c[0] + d[0]) / 2, (c[1] + d[1]) / 2)
        lift = 1.0
        t = turn * pi / 180
        if direction == "across" and span <= text_width(words, size) + 7:
            self.text((d[0] + 7.5, middle[1] + size * 0.35), words, size, "start", clear=True)
        else:
            self.text(
                (middle[0] + lift * sin(t), middle[1] - lift * cos(t)), words, size, "middle", turn=turn, clear=True
            )

    def svg(self) -> str:
        """The page as SVG text, at its true size in millimetres."""
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(self.width)}mm" height="{number(self.height)}mm"'
            f' viewBox="0 0 {number(self.width)} {number(self.height)}" role="img"'
            ' font-family="Liberation Sans, Arial, Helvetica, sans-serif" fill="#000">\n'
            f"<title>{escaped(self.title)}</title>\n"
            f'<rect width="{number(self.width)}" height="{number(self.height)}" fill="#fff"/>\n'
            + "\n".join(self._items)
            + "\n</svg>\n"
        )
