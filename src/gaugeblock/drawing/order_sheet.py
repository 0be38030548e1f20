"""One page to send to another shop: what to make, the table it is made from, and the drawing."""

from __future__ import annotations

import re

from gaugeblock.drawing import svg

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

WIDTH, HEIGHT = 190.0, 259.0  # prints on Letter and A4, upright


def order_sheet(
    title: str,
    facts: Sequence[tuple[str, str]],
    rows: Sequence[Sequence[str]],
    drawing: Callable[[float, float], str],
    notes: Sequence[str],
    *,
    order: str = "BEND ONE TUBE",
    hold: tuple[str, Sequence[str]] = ("", ()),
) -> str:
    """The page as SVG. ``facts`` are label and text (blank prints a line to fill in); ``rows`` the head and a row a
    step;
    ``drawing`` makes the finished thing as ``tube_drawing`` does in a room of so many mm. ``hold`` is why it is not to
    be made as it stands, a word and its reasons, which stand over all else.
    """
    page = svg.Page(WIDTH, HEIGHT, f"order: {title}")
    y = _held(page, *hold)
    page.text((0.5, y + 7), f"ORDER: {order}", 3.6, bold=True)
    page.fit((0.5, y + 14), title, 6, WIDTH - 1, bold=True)
    y += 22.0
    half = (len(facts) + 1) // 2
    for i, (label, text) in enumerate(facts):
        x, at = (0.5, y + 6.4 * i) if i < half else (97.0, y + 6.4 * (i - half))
        page.text((x, at), f"{label}:", 3.5)
        if text:
            page.fit((x + 31, at), text, 3.5, 61, bold=True)
        else:
            page.line((x + 31, at + 0.6), (x + 88, at + 0.6), svg.THIN)
    top = y + 6.4 * half + 2
    wide = [18.0, 58.0, 60.0, 53.0]
    step = max(4.6, min(7.4, (103.0 - top + y - 22.0) / len(rows)))
    size = min(4.0, max(svg.LEAST, step * 0.54))
    for n, row in enumerate(rows):
        at, x = top + step * n, 0.5
        page.line((0.5, at - step * 0.72), (WIDTH - 0.5, at - step * 0.72), svg.MEDIUM if n < 2 else svg.THIN)
        for cell, w in zip(row, wide, strict=True):
            page.fit((x, at), cell, size if n else 3.5, w - 2, bold=bool(n))
            x += w
    page.line((0.5, top + step * (len(rows) - 0.72)), (WIDTH - 0.5, top + step * (len(rows) - 0.72)), svg.MEDIUM)
    lines = [line for note in notes for line in svg.wrapped(note, 3.5, WIDTH - 1)]
    foot = HEIGHT - 3 - 4.6 * (len(lines) - 1)
    for i, line in enumerate(lines):
        page.text((0.5, foot + 4.6 * i), line, 3.5)
    room = foot - 6 - (top + step * (len(rows) - 0.5))
    across = WIDTH - 1
    body = drawing_body(drawing(across, room))
    page.nested(body, 0.5, foot - 6 - room, across, room, (across, room))
    return page.svg()


def _held(page: svg.Page, word: str, reasons: Sequence[str]) -> float:
    """The frame over an order that is not to be sent as it stands; how far down it reaches, mm."""
    if not word:
        return 0.0
    lines = [line for reason in reasons for line in svg.wrapped(reason, 3.6, WIDTH - 8)]
    high = 11.0 + 4.7 * len(lines)
    page.rectangle(0.7, 0.7, WIDTH - 1.4, high, svg.THICK)
    page.text((4, 8.2), word, 6.4, bold=True)
    for n, line in enumerate(lines):
        page.text((4, 13.6 + 4.7 * n), line, 3.6, bold=True)
    return high + 1.5


def drawing_body(text: str) -> str:
    """What is inside an SVG page: without its own element and title."""
    return re.sub(r"<title>.*?</title>\n?", "", text[text.index(">") + 1 : text.rindex("</svg>")], count=1).strip()
