"""The one-line diagram of a circuit: battery, fuse, relay, load, and the way back."""

from __future__ import annotations

from gaugeblock.drawing.svg import HIDDEN, LEAST, MEDIUM, THICK, THIN, Page

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

_WIDTH, _HEIGHT = 120.0, 46.0
_LEFT, _RIGHT = 14.0, 106.0
_LINE, _BACK = 18.0, 38.0


class Part:
    """A part on the line: its ``kind`` (battery, fuse, relay, load, starter) and what it says."""

    __slots__ = ("kind", "words")

    def __init__(self, kind: str, words: str) -> None:
        self.kind = kind
        self.words = words


def diagram(parts: Sequence[Part], wire: Sequence[str], back: str, is_body: bool) -> str:
    """SVG of the parts in a row with the ``wire`` said on the line; back by a wire, or dashed through the body.

    The first part is the battery and the last the load; the fuse stands close to the battery. ValueError for fewer
    than two parts.
    """
    if len(parts) < 2:
        raise ValueError("a diagram needs a battery and a load")
    page = Page(_WIDTH, _HEIGHT, "one-line diagram")
    page.line((_LEFT, _LINE), (_RIGHT, _LINE), THICK)
    page.line((_LEFT, _BACK), (_RIGHT, _BACK), MEDIUM, HIDDEN if is_body else "")
    for x in (_LEFT, _RIGHT):
        page.line((x, _LINE), (x, _BACK), MEDIUM)
    places = [_LEFT, *(_LEFT + 18 + 22 * n for n in range(len(parts) - 2)), _RIGHT]
    for part, x in zip(parts, places, strict=True):
        _DRAWN[part.kind](page, x)
        if part.kind in ("battery", "load", "starter"):
            page.text((x, _LINE - 5), part.words, LEAST, "middle")
            page.text((x, _LINE - 9), part.kind, LEAST, "middle")
        else:
            page.text((x, _LINE + 7), part.words, LEAST, "middle")
            page.text((x, _LINE + 11), part.kind, LEAST, "middle")
    middle = (places[-2] + _RIGHT) / 2 if len(parts) > 2 else (_LEFT + _RIGHT) / 2
    for n, words in enumerate(reversed(wire)):
        page.text((middle, _LINE - 2 - 3.6 * n), words, LEAST, "middle", clear=True)
    said = f"back through the {back}" if is_body else f"back by {back}"
    page.text(((_LEFT + _RIGHT) / 2, _BACK - 2), said, LEAST, "middle")
    if is_body:
        for x in (_LEFT, _RIGHT):
            _earth(page, x)
    return page.svg()


def _battery(page: Page, x: float) -> None:
    y = (_LINE + _BACK) / 2
    page.area([(x - 1, y - 1.5), (x + 1, y - 1.5), (x + 1, y + 1.5), (x - 1, y + 1.5)], "#fff")
    page.line((x - 4, y - 1.5), (x + 4, y - 1.5), MEDIUM)
    page.line((x - 2, y + 1.5), (x + 2, y + 1.5), THICK)
    page.text((x - 5, y - 2), "+", LEAST, "middle")


def _fuse(page: Page, x: float) -> None:
    page.rectangle(x - 5, _LINE - 1.8, 10, 3.6, MEDIUM, fill="#fff")
    page.line((x - 5, _LINE), (x + 5, _LINE), THIN)


def _relay(page: Page, x: float) -> None:
    page.rectangle(x - 5, _LINE - 3, 10, 6, MEDIUM, fill="#fff")
    page.line((x - 5, _LINE), (x - 2, _LINE), MEDIUM)
    page.line((x - 2, _LINE), (x + 2, _LINE - 2), MEDIUM)
    page.line((x + 2, _LINE), (x + 5, _LINE), MEDIUM)


def _load(page: Page, x: float) -> None:
    page.circle((x, (_LINE + _BACK) / 2), 4, MEDIUM, fill="#fff")


def _earth(page: Page, x: float) -> None:
    for n, half in enumerate((3.0, 2.0, 1.0)):
        page.line((x - half, _BACK + 1 + 1.2 * n), (x + half, _BACK + 1 + 1.2 * n), MEDIUM)


_DRAWN = {
    "battery": _battery,
    "fuse": _fuse,
    "relay": _relay,
    "load": _load,
    "starter": _load,
}
