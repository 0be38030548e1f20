"""A run of exhaust, drawn: its true shape where it is known, and the run laid straight with all that holds it."""

from __future__ import annotations

from math import pi

from gaugeblock.calc.path import Arc
from gaugeblock.drawing.svg import HIDDEN, LEAST, MEDIUM, THICK, THIN, Page, text_width

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Path
    from gaugeblock.drawing.svg import Flat

_WIDTH, _MARGIN = 170.0, 14.0
_ROW = 5.0
_PIPE = 2.0  # half the width of the pipe on the strip
_SHAPE = 34.0  # height of the true shape
_CHORDS = 12
_SEEN = ("seen from the rear", "seen from the side", "seen from above")
_UPWARD = ("hanger", "fixed", "flex")


class Mark:
    """What stands at a place of the run: its ``kind`` (hanger, fixed, flex, mass, gap), place and words; in metres."""

    __slots__ = ("at", "kind", "length", "words")

    def __init__(self, kind: str, at: float, words: str, length: float = 0.0) -> None:
        self.kind = kind
        self.at = at
        self.words = words
        self.length = length


def drawing(
    name: str, length_m: float, line: Path | None, marks: Sequence[Mark], grows: str, long: str, *, is_placed: bool
) -> str:
    """SVG of a run of ``length_m``: its shape where ``line`` is known, then the strip with its ``marks``.

    ``grows`` is how far the far end moves, ``long`` the length in words. ValueError for a run of no length.
    """
    if length_m <= 0:
        raise ValueError("a run has a length")
    above = _rows([m for m in marks if m.kind in _UPWARD], length_m)
    below = _rows([m for m in marks if m.kind not in _UPWARD], length_m)
    tall = _height(line) if line is not None else 0.0
    top = tall + 2.0 + _ROW * (1 + max(above.values(), default=0)) + 8.0
    height = top + 10.0 + _ROW * (2 + max(below.values(), default=0))
    page = Page(_WIDTH, height, f"{name}, fixed point, hangers, growth and gaps")
    if line is not None:
        _shape(page, line, marks, tall, is_placed)
    _strip(page, top, length_m, line, grows, long)
    words = [(_up(page, mark, _x(mark.at, length_m), top, row, length_m), mark) for mark, row in above.items()]
    words += [(_down(page, mark, _x(mark.at, length_m), top, row), mark) for mark, row in below.items()]
    for at, mark in words:  # over every line, so that none crosses a word
        page.text(at, mark.words, LEAST, clear=True)
    return page.svg()


def _x(at: float, length: float) -> float:
    return _MARGIN + (_WIDTH - 3 * _MARGIN) * at / length


def _left(mark: Mark, length: float) -> float:
    """The left end of a label that is centred on its mark and stays on the page."""
    wide = text_width(mark.words, LEAST)
    return min(max(_x(mark.at, length) - wide / 2, 1.0), _WIDTH - wide - 1.0)


def _rows(marks: Sequence[Mark], length: float) -> dict[Mark, int]:
    """The row of each label, so that none stands on another."""
    taken: list[float] = []
    out = {}
    for mark in sorted(marks, key=lambda m: m.at):
        left = _left(mark, length)
        row = next((n for n, end in enumerate(taken) if end < left), len(taken))
        end = left + text_width(mark.words, LEAST) + 2.0
        taken[row:] = [end, *taken[row + 1 :]]
        out[mark] = row
    return out


def _strip(page: Page, y: float, length: float, line: Path | None, grows: str, long: str) -> None:
    a, b = _x(0.0, length), _x(length, length)
    page.line((a, y - _PIPE), (b, y - _PIPE), THICK)
    page.line((a, y + _PIPE), (b, y + _PIPE), THICK)
    page.line((a, y - _PIPE), (a, y + _PIPE), THICK)
    page.line((a, y), (b, y), THIN, HIDDEN)
    if line is not None:
        along = 0.0
        for part in line.parts:
            if isinstance(part, Arc):
                page.rectangle(
                    _x(along, length),
                    y - _PIPE,
                    _x(along + part.length, length) - _x(along, length),
                    2 * _PIPE,
                    THIN,
                    fill="#ddd",
                )
            along += part.length
    page.text((1.0, y + 1.2), "engine", LEAST)
    if grows:
        page.line((b + 2, y), (b + 12, y), MEDIUM)
        page.arrow((b + 12, y), 0.0)
        page.text((_WIDTH - 1.0, y + 7.0), f"moves {grows}", LEAST, "end", clear=True)
    page.text((1.0, y + 7.0), f"{long} long", LEAST, clear=True)


def _up(page: Page, mark: Mark, x: float, y: float, row: int, length: float) -> Flat:
    """A mark above the strip; where its words stand over it."""
    base = y - 9.0 - _ROW * row
    left = _left(mark, length)
    if mark.kind == "flex":
        end = max(_x(mark.at + mark.length, length), x + 3.0)
        steps = 6
        points = [(x + (end - x) * n / steps, y + (_PIPE if n % 2 else -_PIPE)) for n in range(steps + 1)]
        page.area([(x, y - _PIPE - 0.5), (end, y - _PIPE - 0.5), (end, y + _PIPE + 0.5), (x, y + _PIPE + 0.5)], "#fff")
        page.polyline(points, MEDIUM)
        x = (x + end) / 2
        page.line((x, y - _PIPE - 1.0), (x, base + 1.0), THIN)
    elif mark.kind == "fixed":
        page.area([(x, y - _PIPE), (x - 2.5, y - _PIPE - 4.5), (x + 2.5, y - _PIPE - 4.5)])
        page.line((x, y - _PIPE - 4.5), (x, base + 1.0), THIN)
    else:
        page.line((x, y - _PIPE), (x, y - 8.0), MEDIUM)
        page.circle((x, y - _PIPE), 0.9, MEDIUM, fill="#fff")
        page.line((x - 2.0, y - 8.0), (x + 2.0, y - 8.0), THICK)
        page.line((x, y - 8.0), (x, base + 1.0), THIN)
    return left, base


def _down(page: Page, mark: Mark, x: float, y: float, row: int) -> Flat:
    """A mark below the strip; where its words stand under it."""
    base = y + 13.5 + _ROW * row
    if mark.kind == "mass":
        page.rectangle(x - 3.0, y + _PIPE, 6.0, 3.0, MEDIUM, fill="#fff")
        page.line((x, y + _PIPE + 3.0), (x, base - 3.0), THIN)
    else:
        page.line((x, y + _PIPE + 0.5), (x, base - 3.0), THIN)
        page.arrow((x, y + _PIPE + 0.3), -pi / 2, 2.0)
    wide = text_width(mark.words, LEAST)
    return min(max(x - wide / 2, 1.0), _WIDTH - wide - 1.0), base


class _View:
    """The plane in which a line is largest: its two axes, the one left out, its spans and its scale."""

    __slots__ = ("across", "low", "points", "size", "small", "spans", "up")

    def __init__(self, line: Path) -> None:
        self.points = _points(line)
        self.spans = [max(p[k] for p in self.points) - min(p[k] for p in self.points) for k in range(3)]
        self.small = min(range(3), key=lambda k: (self.spans[k], -k))
        self.across, self.up = (k for k in range(3) if k != self.small)
        self.low = [min(p[k] for p in self.points) for k in (self.across, self.up)]
        room = self.spans[self.across] / (_WIDTH - 4 * _MARGIN)
        self.size = max(room, self.spans[self.up] / (_SHAPE - 11.0), 1e-9)


def _height(line: Path) -> float:
    view = _View(line)
    return view.spans[view.up] / view.size + 11.0


def _shape(page: Page, line: Path, marks: Sequence[Mark], tall: float, is_placed: bool) -> None:
    """The middle line in the plane in which it is largest, with the numbers of its hangers."""
    view = _View(line)

    def at(p: Sequence[float]) -> Flat:
        across, up = p[view.across] - view.low[0], p[view.up] - view.low[1]
        return (2 * _MARGIN + across / view.size, tall - 3.0 - up / view.size)

    page.polyline([at(p) for p in view.points], THICK)
    page.text((1.0, 4.0), _SEEN[view.small] if is_placed else "its shape", LEAST)
    number = 0
    for mark in marks:
        if mark.kind not in ("hanger", "fixed"):
            continue
        number += mark.kind == "hanger"
        x, y = at(line.at(mark.at))
        page.circle((x, y), 1.2, MEDIUM, fill="#000" if mark.kind == "fixed" else "#fff")
        page.text((x, y - 2.5), str(number) if mark.kind == "hanger" else "F", LEAST, "middle", clear=True)


def _points(line: Path) -> list[tuple[float, float, float]]:
    out = [line.at(0.0)]
    for part in line.parts:
        steps = _CHORDS if isinstance(part, Arc) else 1
        out += [part.at(part.length * n / steps) for n in range(1, steps + 1)]
    return out
