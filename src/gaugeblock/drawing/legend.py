"""What the signs of a drawing mean, in a row under it: each sign as it is drawn, with its words."""

from __future__ import annotations

from math import pi, sin

from gaugeblock.drawing import svg

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

ROW = 6.4  # mm between two rows
# Signs that a drawing may have; each is drawn in a box 8 mm wide.
BEND, LETTER, ORDER, ZONE, WAY, TRIM, POINT, ROUND, CLOCK, SEAM = (
    "bend",
    "letter",
    "order",
    "zone",
    "way",
    "trim",
    "point",
    "round",
    "clock",
    "seam",
)
_BUBBLES = {BEND: "1", LETTER: "A", SEAM: "S"}
_BOX, _GAP = 8.6, 5.0


def rows_of(entries: Sequence[tuple[str, str]], room: float) -> list[list[tuple[str, str]]]:
    """The entries (sign, words) in rows no wider than ``room`` mm."""
    rows: list[list[tuple[str, str]]] = [[]]
    used = 0.0
    for sign, words in entries:
        wide = _width(words)
        if rows[-1] and used + wide > room:
            rows.append([])
            used = 0.0
        rows[-1].append((sign, words))
        used += wide
    return rows


def legend(page: svg.Page, x: float, foot: float, entries: Sequence[tuple[str, str]], room: float) -> float:
    """Draw the entries with the last row's base line at ``foot``; the height that they take, mm."""
    rows = rows_of(entries, room)
    for n, row in enumerate(rows):
        at, y = x, foot - ROW * (len(rows) - 1 - n)
        for sign, words in row:
            _sign(page, sign, at + 3.6, y - 1.2)
            page.text((at + _BOX, y), words, svg.TEXT)
            at += _width(words)
    return ROW * len(rows)


def _width(words: str) -> float:
    return _BOX + svg.text_width(words, svg.TEXT) + _GAP


def _sign(page: svg.Page, sign: str, x: float, y: float) -> None:
    if sign in _BUBBLES:
        page.circle((x, y), 2.6, svg.MEDIUM, fill="#fff")
        page.text((x, y + 1.25), _BUBBLES[sign], svg.TEXT, "middle", bold=True)
    elif sign == ORDER:
        page.text((x + 3, y + 1.25), "1st", svg.TEXT, "end", bold=True)
    elif sign == ZONE:
        page.rectangle(x - 3.6, y - 2, 7, 4, svg.THIN, fill="#ddd")
    elif sign == WAY:
        page.line((x - 3.6, y), (x + 2, y), svg.MEDIUM)
        page.arrow((x + 3.6, y), 0.0, 3.0)
    elif sign == TRIM:
        page.line((x, y - 2.4), (x, y + 2.4), svg.MEDIUM, svg.HIDDEN)
    elif sign == POINT:
        page.circle((x + 1.5, y), 0.5, svg.THIN, fill="#000")
    elif sign == ROUND:
        page.circle((x, y), 2.4, svg.MEDIUM)
        for across in (-1.2, 0.0, 1.2):
            half = (2.4**2 - across**2) ** 0.5 * sin(pi / 4)
            shift = across * sin(pi / 4)
            page.line((x - half + shift, y + half + shift), (x + half + shift, y - half + shift), svg.THIN)
    elif sign == CLOCK:
        page.circle((x, y), 2.4, svg.MEDIUM)
        page.line((x, y), (x, y - 2.4), svg.MEDIUM)
        page.circle((x, y - 2.4), 0.9, svg.THIN, fill="#000")
