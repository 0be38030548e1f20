"""How high a text stands on paper: its words wrapped by the widths of the page's typeface."""

from __future__ import annotations

from functools import lru_cache

# Advance widths in thousandths of the size, of the sans serif that the pages name (Liberation Sans, which has those of
# the usual sans serif of printers). Signs that are not listed are taken as wide as a digit.
_WIDTHS = {
    278: " !,./:;I[\\]ft\u00b7\u00a0",
    222: "ijl\u2019",
    191: "'",
    333: "()-r`",
    355: '"',
    389: "*",
    469: "^",
    500: "Jcksvxyz",
    584: "+<=>~",
    556: "#$0123456789?L_abdeghnopqu",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1015: "@",
    400: "\u00b0",
}
_WIDTH = {sign: width for width, signs in _WIDTHS.items() for sign in signs}
_DIGIT = 556
_BOLD = 1.07
# Pairs of letters that stand closer make a line about so much shorter.
_KERNED = 0.985
_MM = 25.4 / 72


@lru_cache(maxsize=4096)  # the same words stand on many cards
def width(text: str, points: float, bold: bool = False) -> float:
    """The width of a text in mm."""
    total = sum([_WIDTH.get(sign, _DIGIT) for sign in text])
    return total / 1000 * points * _MM * _KERNED * (_BOLD if bold else 1.0)


def height(text: str, points: float, leading: float, room: float, bold: bool = False) -> float:
    """The height in mm of a text that wraps in ``room`` mm; 0 for none."""
    if not text:
        return 0.0
    lines, used = 1, 0.0
    space = width(" ", points, bold)
    for word in text.split(" "):
        wide = width(word, points, bold)
        if used and used + space + wide > room:
            lines += 1
            used = wide
        else:
            used += wide + (space if used else 0.0)
    return lines * points * leading * _MM
