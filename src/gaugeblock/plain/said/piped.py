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
# Of a hose the number tells no tube.
_AN_TUBE = (
    r"^(?!.*\b(?:hoses?|braid\w*|bolts?|washers?|torque|spanner|wrench)\b)(?=.*\b(?:tub(?:e|es|ing)|pipes?"
    r"|lines?|hardlines?)\b)"
    r"(.*?)(?<![a-z0-9])an-?([0-9]{1,2})\b(?! ?(?:bolt|mm|inch|in\b))"
)


def _of_an(match: re.Match[str]) -> str:
    """``an8`` on a tube is a flare of 37 degrees on one of eight sixteenths."""
    from fractions import Fraction

    return f"{match[1]}an flare {Fraction(int(match[2]), 16)} in"


_OF_STRENGTH = r"^(?=.*\b(?:strength|strong|yields?|tensile|uts)\b)"


_COUNTED = {
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
    "eleven": 11,
    "twelve": 12,
    "thirteen": 13,
    "fourteen": 14,
    "fifteen": 15,
    "sixteen": 16,
    "seventeen": 17,
    "eighteen": 18,
    "nineteen": 19,
    "twenty": 20,
}
_COUNT = rf"(?:[0-9]{{1,2}}|{'|'.join(_COUNTED)})"
_UNDER_A_FOOT = r"(?:1[01]|[0-9]|ten|eleven|one|two|three|four|five|six|seven|eight|nine)"
# A size of tube behind feet is none of their inches: 10 ft 2 in .120 dom, 8 ft 3 inch exhaust.
_OF_A_LENGTH = (
    r"(?= *$| +(?:of|long|length|lengths|each|span|spans|apart|run|runs|gap|high|tall|across|between|from"
    r"|to|what|how|which|with|and"
    r"|at|on|in|is|will|does|can|do|for|overall|total|all|tube to tube|[1-9]|one|two|inch and)\b(?! ?x))"
)
# What tells two tubes apart, each said with its wall.
_OF_TWO_TUBES = r"^(?=.*\b(?:sav(?:e|es|ed|ing)|heavier|lighter|difference|stiffer|stronger)\b)"
_A_TUBE = (
    r"[0-9]+(?:[./ -][0-9]+(?:/[0-9]+)?)?(?: ?(?:in|inch|mm|\"))?(?: (?:od|tube))? ?(?:(?:x|by) ?)?(?:0?\.[0-9]{2,3}"
    r"|[1-6](?:\.[0-9]+)?(?= ?mm| wall))"
)
_BORE = r"(?:slave|master|bore|stroke|piston)"
_MORE = r"(?:and|n|of|thick|long|three|half|quarter|seven|five|eighth|[0-9])\b"
_HUNDREDS = r"one|two|three|four|five|six|seven|eight|nine|a"
_UNDER = rf"twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|{'|'.join(_COUNTED)}"
_FEET = rf"(?<![0-9./x-])\b({_COUNT}) ?(?:ft|foot|feet|')"


def _feet_and_inches(match: re.Match[str]) -> str:
    """``5 ft 6 in`` is one length of 66 in."""
    feet, inches = (_COUNTED.get(match[n]) or int(match[n]) for n in (1, 2))
    part = {"half": 0.5, "1/2": 0.5, "quarter": 0.25, "1/4": 0.25, "three quarters": 0.75, "3/4": 0.75}
    return f"{feet * 12 + inches + part.get(match[3] or '', 0):g} in"


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
        rf"\b(?:(?:in|with|of|at|using) )?(?:the )?same (?:od|o\.d|outside(?: diameter)?|diameter|size)(?:"
        rf" tube)?(?: but)?"
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
    (
        "mouth",
        r"\bbird'?s?[ -]?mouth",
        "fishmouth",
    ),
    (
        " seamless",
        r"\bseamless(?: tube)?(?: +(?:and|so|tube))? +not (?:welded|erw|seamed|seam welded)\b",
        "seamless tube",
    ),
    (" seamless", r"\bseamless\b(?! (?:mild |steel |stainless |carbon )*(?:tub|pipe))", "seamless tube"),
    *(
        (
            cue,
            rf"{_FEET},? *(?:and )?({_UNDER_A_FOOT})(?: (?:and a )?(half|quarter|three quarters|1/2|1/4|3/4))?"
            rf" ?(?:in|inch|inches|\")(?![a-z/]){_OF_A_LENGTH}",
            _feet_and_inches,
        )
        for cue in ("ft ", "foot ", "feet ", "' ")
    ),
    *(
        (cue, rf"\b({_BORE}(?: (?:cylinder|bore))?(?: (?:is|of|was|with))?) an inch\b(?!(?: {_MORE}))", r"\1 1 inch")
        for cue in ("an inch",)
    ),
    ("an inch", rf"\ban inch (?=(?:{_BORE})\b)", "1 inch "),
    *(
        (
            cue,
            r"^(?=.*\b(?:exhausts?|pipes?|duals?|mufflers?|injectors?|fuel pump|pump"
            r"|headers?)\b)(?!.*\b(?:torque|gears?|axle|lbs?|nm)\b)"
            r"(.*?)\b(?:(?:about|around|roughly|maybe|makes?|making|puts? out|putting out|does|doing|got"
            r"|has|good for) )*"
            rf"((?:{_HUNDREDS}) hundred(?: (?:and )?(?:{_UNDER})(?:[ -](?:{_UNDER}))?)?|[1-9][0-9]{{2}})"
            r" (?:at|on) the (?:crank|flywheel|engine|fly|dyno)\b(?! (?:bolt|pulley|nut|damper|snout|housing))",
            r"\1\2 hp ",
        )
        for cue in ("the crank", "the fly", "the engine")
    ),
    *(
        (cue, rf"{_OF_TWO_TUBES}(.*?)\b(?:instead of|in place of|rather than)(?: an?| the)? (?={_A_TUBE})", r"\1vs ")
        for cue in ("instead of", "in place of", "rather than")
    ),
    ("swap", rf"{_OF_TWO_TUBES}(.*?)\bswap(?:ping|ped)?(?: out)? ({_A_TUBE}.*?) for (?={_A_TUBE})", r"\1\2 vs "),
    ("'", rf"(?<![0-9./x-])\b({_COUNT}) ?' ?({_UNDER_A_FOOT})(?: (1/2|1/4|3/4))?\"", _feet_and_inches),
    ("foot ", rf"\b({_COUNT}) foot ({_UNDER_A_FOOT})()(?= (?:long|of)\b)", _feet_and_inches),
    *((f"an{n}", _AN_TUBE, _of_an) for n in (3, 4, 5, 6, 8, 10, 12, 16)),
    *((f"an-{n}", _AN_TUBE, _of_an) for n in (3, 4, 5, 6, 8, 10, 12, 16)),
    (" h1", r"\b3003 (h1[0-9])\b", r"3003-\1"),
    ("mtr", r"(?<=[0-9]) ?mtrs?\b", " m"),
)
