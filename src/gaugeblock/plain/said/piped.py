"""Walls, welds, bends and lines as they are told beside each other -> as they are typed: by one twenty, as welded."""

from __future__ import annotations

import re

from gaugeblock.plain.said.tubing import SPOKEN_WALLS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

# Of a line with one of these a number behind a size is no wall.
_NO_TUBE = (
    r"\b(?:sheets?|plates?|bars?|angles?|bolts?|nuts?|studs?|screws?|threads?|taps?|wires?|cables?|board|timber|ply)\b"
)
_AN_INCH_SIZE = (
    r"((?:half|quarters?|eighths?|sixteenths?|\binch(?:es)?|[0-9]/[0-9]+|(?<![0-9./x-])[1-3]\.[0-9]+"
    r"|(?<=\btwo)|(?<=\bthree))(?: ?(?:inch(?:es)?|in|\"))?(?: (?:od|outside))?)"
)
_WALL = "|".join(SPOKEN_WALLS)
_MADE_OF = (
    r"(?:dom|cds|erw|hrew|crew|4130|chrome? ?moly|cro ?mo|t45|tub(?:e|es|ing)|seamless|mild|1020|304|stainless|steel"
    r"|ally|alumini?um)\b"
)


def _by_wall(match: re.Match[str]) -> str:
    """``inch and a half by one twenty`` is a tube with a wall of .120."""
    if re.search(_NO_TUBE, match.string) is not None:
        return match[0]
    return f"{match[1]} x {SPOKEN_WALLS[match[2]]}"


_WELDED = (
    r"(?:after|once|when|if)(?: (?:it'?s|it is|it has been|it gets|i(?:'ve| have)?|i|you(?:'ve| have)?|we(?:'ve| have)?"
    r"|being|having been|been|the))*(?: (?:tig|mig))? ?weld(?:ing|ed)?\b(?: (?:it|up))*"
)
_BESIDE_A_WELD = (
    r"(?:in|at|near(?: to)?|beside|next to|by|close to|right at|around)(?: (?:the|a|its?))* (?:welds?|haz"
    r"|heat[ -]affected(?: zone)?)\b(?! (?:tee|neck|on|in|bung|nut|ring))"
)
_OF_STRENGTH = r"^(?=.*\b(?:strength|strong|yields?|tensile|uts)\b)"


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (
            f"{by} {said}",
            rf"{_AN_INCH_SIZE} (?:by|x) ({_WALL})(?= *$| (?!thou|mm|inch|in\b|long|by|x|feet|foot|ft|deg))",
            _by_wall,
        )
        for said in SPOKEN_WALLS
        for by in ("by", "x")
    ),
    *((f" {said} ", rf"{_AN_INCH_SIZE} ({_WALL})(?= (?:wall )?{_MADE_OF})", _by_wall) for said in SPOKEN_WALLS),
    (
        "same ",
        rf"\b(?:(?:in|with|of|at|using) )?(?:the )?same (?:od|o\.d|outside(?: diameter)?|diameter|size)(?: tube)?(?: but)?"
        rf" (?:by|x|in|with|at) (?:a )?(0?\.[0-9]+|{_WALL})(?= |$)",
        lambda m: f"x {SPOKEN_WALLS.get(m[1], m[1])}",
    ),
    *(
        (cue, rf"{_OF_STRENGTH}(.*?)\b(?:{_WELDED}|{_BESIDE_A_WELD})", r"\1welded")
        for cue in ("weld", "haz", "affected")
    ),
    (
        "weld",
        rf"\b(?:drops?|falls?|goes|comes|is left|gets?)(?: (?:down|back))*(?: to)? {_WELDED}",
        "strength welded",
    ),
    ("mtr", r"(?<=[0-9]) ?mtrs?\b", " m"),
)
