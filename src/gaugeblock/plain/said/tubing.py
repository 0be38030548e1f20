"""Sizes and bends of a tube as a shop says them -> as they are typed: 1.75x.120, forty-fives, a U bend."""

from __future__ import annotations

import re

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

_PARTS = {"eighth": "8", "eighths": "8", "sixteenth": "16", "sixteenths": "16"}
_ONES = {
    w: str(n)
    for n, w in enumerate(["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"])
}
_ONES["oh"] = "0"
_TENS = {
    w: str(n)
    for n, w in enumerate(
        ["ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "hundred"], 1
    )
}
_DIGIT = "|".join(_ONES)
_TEN = "|".join(_TENS)
# Words of a line that is about a tube, and of one that is about a thread.
_TUBE = r"\b(?:tub(?:e|es|ing)|pipes?|bends?|bent|die|box|rhs|shs|chs|wall|cds|dom|erw|cope|notch|kg/m)\b"
_BENT = (
    r"\b(?:tub(?:e|es|ing)|pipes?|die|dies|bend|bends|offset|jog|joggle|radius|dodge|former|step|bars?|hoops?"
    r"|exhausts?|dog ?leg|kick|drops?|brake line|s[- ]bend)\b"
)
_THREAD = r"\b(?:bolts?|nuts?|studs?|threads?|screws?|lugs?|taps?|torque)\b"
_ANGLES = {"fort": "45", "nine": "90", "thir": "30", "sixt": "60"}
_MOST_WALL = 8  # mm, of a tube whose wall is said without its unit
_LEAST_OD = 10  # mm


def _number(text: str) -> float:
    """A number as it is typed: 2, 1/8, 1-3/4."""
    parts = (part.partition("/") for part in text.split("-"))
    return sum(float(top) / float(bottom or 1) for top, _, bottom in parts)


def _three(match: re.Match[str]) -> str:
    """``50x50x3`` is a box and its wall; ``8x1.25x25`` is a bolt, and stays."""
    try:
        first, second, third = (_number(match[n]) for n in (1, 2, 3))
    except (ValueError, ZeroDivisionError):
        return match[0]
    return f"{match[1]} x {match[2]} x {match[3]}" if third < min(first, second) / 2 else match[0]


def _two(match: re.Match[str]) -> str:
    """``38x2`` of a tube is 38 mm with a wall of 2 mm; of a bolt it stays."""
    is_tube = re.search(_TUBE, match.string) is not None and re.search(_THREAD, match.string) is None
    if not is_tube or float(match[1]) < _LEAST_OD or not 0 < float(match[2]) <= _MOST_WALL:
        return match[0]
    return f"{match[1]} mm x {match[2]} mm"


def _inch_and(match: re.Match[str]) -> str:
    """``inch and five eighths`` is 1 5/8 in."""
    return f"1 {_ONES[match[1]]}/{_PARTS[match[2]]} in"


def _bends(match: re.Match[str]) -> str:
    """``two forty-fives`` of a tube are bends of 45; of a car they are tyres, and stay."""
    if re.search(_BENT, match.string) is None or re.search(_THREAD, match.string) is not None:
        return match[0]
    return f"{_ANGLES[match[1][:4]]}s"


def _measured(match: re.Match[str]) -> str:
    """``outside one seven fifty`` is 1.750, as calipers are read aloud."""
    tens = "00" if match[4] == "hundred" else _TENS[match[4]] + _ONES.get(match[5] or "", "0")
    return f"{match[1]} {_ONES[match[2]]}.{_ONES[match[3]]}{tens}"


def _thick(match: re.Match[str]) -> str:
    """``quarter plate`` is 1/4 in thick."""
    top, _, part = match[1].rpartition(" ")
    return f"{3 if top else 1}/{_PART_OF[part.removesuffix('s')]} inch "


_PART_OF = {"half": "2", "quarter": "4", "eighth": "8", "sixteenth": "16"}
# A wall in thousandths, as tube is called by it.
SPOKEN_WALLS = {
    "twenty eight": ".028",
    "thirty five": ".035",
    "forty nine": ".049",
    "sixty five": ".065",
    "eighty three": ".083",
    "ninety five": ".095",
    "one twenty": ".120",
    "one thirty four": ".134",
    "one fifty six": ".156",
    "one eighty eight": ".188",
    "two fifty": ".250",
}
_A_WALL = rf"({'|'.join(SPOKEN_WALLS)}|0?\.[0-9]{{2,3}}|[01][0-9]{{2}})( wall)?"
_FROM = r"\b(?:(?:going|go|drop|dropping|changing|went) )?from (?:an? )?"
_TO = r"(?: (?:down|up))? to (?:an? )?"
_FROM_TO = rf"{_FROM}{_A_WALL}{_TO}{_A_WALL}(?= |$)"


def _two_walls(match: re.Match[str]) -> str:
    """``from one twenty wall to ninety five``: two walls side by side."""
    is_wall = match[2] or match[4] or ("." in match[1] and re.search(_TUBE, match.string))
    if not is_wall or re.search(_THREAD, match.string):
        return match[0]
    first, second = (SPOKEN_WALLS.get(text, text if "." in text else f".{text}") for text in (match[1], match[3]))
    return f"{first} wall or {second} wall"


_GAUGES = [
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "sixteen",
    "eighteen",
    "twenty",
    "twenty two",
    "twenty four",
]
_METAL = r"(?:mild |carbon |bare )?(?:steel|stainless|galv(?:ani[sz]ed)?|alumini?um|ally)(?: steel)?"


def _one_gauge(match: re.Match[str]) -> str:
    """Whether 18 SWG is the same as 18 gauge: what 18 gauge is in every system."""
    first, second = (_NUMBERS.get(text, text) for text in (match[1], match[2]))
    return f"{first} gauge all systems same" if first == second and first.isdigit() else match[0]


_NUMBERS = dict(zip(_GAUGES, ("10", "11", "12", "13", "14", "16", "18", "20", "22", "24"), strict=True))
_GLUED = r"(?<![a-z0-9./-])([0-9][0-9./-]*)x"
# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *((cue, _GLUED + r"(0?\.[0-9]+)(?![0-9./x-])", r"\1 x \2") for cue in ("x.", "x0.")),
    *(
        (f"{digit}x", _GLUED + r"([0-9]+(?:[./-][0-9]+)*)x([0-9]*[./]?[0-9]+)(?![0-9./x-])", _three)
        for digit in range(10)
    ),
    *(
        (f"{digit}x", r"(?<![a-z0-9./-])([0-9]{2,3}(?:\.[0-9])?)x([0-9](?:\.[0-9]+)?)(?: ?mm)?(?![0-9./x-])", _two)
        for digit in range(10)
    ),
    (
        "inch and ",
        r"\b(?:an |one |1 )?inch and (one|three|five|seven)[ -](eighths?|sixteenths?)\b",
        _inch_and,
    ),
    *(
        (
            cue,
            r"\b(forty[ -]fives|(?<=two )(?:nineties|thirties|sixties)|(?<=pair of )(?:nineties|thirties|sixties)"
            r"|(?<=three )(?:nineties|thirties|sixties))\b",
            _bends,
        )
        for cue in ("fives", "ties")
    ),
    *(
        (cue, r"\b(?:an? )?(?:u[- ]|return |hairpin )bend\b", "180 degree bend")
        for cue in ("u-bend", "n bend", "u bend", "pin b")
    ),
    *(
        (cue, r"\b(?:an? )?(?:right[- ]angled? bend|square bend)\b|\b(?<=to )a right angle\b", "90 degree bend")
        for cue in ("right", "square bend")
    ),
    *(
        (
            cue,
            rf"\b(outside|inside)(?: is| of| at)? (one|two|three) ({_DIGIT}) ({_TEN})(?:[ -]({_DIGIT}))?\b"
            r"(?! (?:inch|thou|hundred|point))",
            _measured,
        )
        for cue in (
            "side one",
            "side two",
            "side three",
            "side is",
            "side of",
            "side at",
        )
    ),
    (
        " short",
        r"\b(?:and |but )?(?:i |we )?(?:(?:keep|kept|always|am|was|were) (?:on )?)?(?:coming up|cutting (?:it"
        r"|them|mine)) short"
        r"(?: (?:on|with) (?:the|my) (?:last|first|other) one)?\b",
        "",
    ),
    (
        "left over",
        r"\bleft over(?: (?:from|off|after) (?:the|my|our|another|an?)(?: (?:last|old|other|big))? job)?",
        "",
    ),
    (
        "length of",
        r"\ba (?:short |long |nice )?length of (?=[0-9][0-9./ -]* ?(?:mm|in|inch)? ?(?:cds|dom|erw|chromoly|4130)\b)",
        "",
    ),
    (
        "er than",
        r"\b(stiffer|stronger|heavier|lighter|weaker|bigger|larger|smaller) or (?:stiffer|stronger|heavier"
        r"|lighter|weaker"
        r"|bigger|larger|smaller)(?= than)",
        r"\1",
    ),
    *(
        (
            f" {metal}",
            r"\bbetween (?:mild )?steel and (?:alloy|ally|alumini?um)\b",
            "",
        )
        for metal in ("steel and al",)
    ),
    *(
        (
            cue,
            r"(?<!five )(?<!seven )(?<!nine )\b(quarter|half|eighth|sixteenth|three eighths?|three sixteenths?)"
            r"(?:[ -]inch)?[ -](?=(?:checker "
            r"|chequer )?plate\b)",
            _thick,
        )
        for cue in (" plate", "-plate")
    ),
    ("from ", _FROM_TO, _two_walls),
    (
        "same",
        r"\b(?:isn't|isnt|is not|aren't|arent|are not) (?:the )?same\b(?=.*\b(?:is it|are they|right|yeah)(?: *$"
        r"| (?:and|what)))",
        "same",
    ),
    *(
        (
            cue,
            r"^(?=.*\b(?:gauge|ga|gage)\b)(?=.*\b(?:same|different|differ|differs|vary|varies)\b)(.*?)\b(?:(?:in"
            r"|for|of|between|across)"
            rf" )?(?:both )?{_METAL}(?: (?:and )?{_METAL})+(?: sheet)?\b",
            r"\1all systems",
        )
        for cue in (" stainless", " alum", " galv")
    ),
    (
        " swg",
        r"^(?=.*\bsame\b).*?\b([0-9]{1,2}|[a-z]+)(?: gauge| ga)? swg\b.*?\b([0-9]{1,2}|[a-z]+) (?:gauge|gage|ga)\b.*$",
        _one_gauge,
    ),
    ("not enough", r"\bis (that|it|this|he|she) not (enough)\b(?= *$)", r"is \1 \2"),
    (
        "no room to ",
        r"\b(?:and )?(?:there(?:'s| is) )?no room to (?:shift|move) (?:either|it|them|anything|one or the other)\b",
        "",
    ),
    (
        "turbo",
        r"^(?=.*\b(?:hp|horse\w*|kw|kilowatts?|bhp)\b)(?=.*\b(?:exhaust|single|duals?|pipe|pipes)\b)(.*?)\bturbo"
        r" ?charged\b",
        r"\1turbo",
    ),
    (
        " or ",
        r"\b((?:come|go|pull|bend|stay|take)(?: (?:it|round|around|up|out|clean|cleanly|good|nice))*) or"
        r" (?:(?:will|would|does|is) (?:it|she|that) )?(?:just |only )?(?:going to |gonna )?"
        r"(?:flatten|kink|wrinkle|crush|collapse|fold|buckle|crease|go flat)(?: (?:out|up|on me|over))?\b",
        r"\1",
    ),
    (
        " or ",
        r"\b(too (?:little|small|tight)(?: for [0-9.]+ ?[a-z]+)?) or (?:plenty|enough|too (?:big|much|large)"
        r"|about right)\b",
        r"\1",
    ),
    (
        "boots",
        r"^(?=.*\b(?:cylinders?|spark|long tubes|headers?|primar(?:y|ies))\b)(?!.*\b(?:cv|plug|rubber)"
        r" boots)(.*?)\bboots\b",
        r"\1plug boots",
    ),
    (
        "an inch",
        r"\b(half|quarter|(?:an?|one|three|five|seven) (?:quarters?|eighths?|sixteenths?))(?: of)? an inch\b",
        r"\1 inch",
    ),
    (
        "boot",
        r"(\bboots? (?:stand|take|survive|handle)) (?:next to|beside|near|by|close to) (?:an? |the )?(?:primary|header"
        r"|exhaust)(?: tubes?| pipes?)?\b",
        r"\1",
    ),
    *(
        (
            cue,
            r"\b(?:even )?though (?:the |my )?(?:rubbers|hangers|rubber mounts|mounts) are (?:all )?(?:new|good"
            r"|fine|ok)\b",
            "",
        )
        for cue in ("though ",)
    ),
    (" cylinders", r"\b(?:the )?(?:two|both|three) (?:rear|back|front|middle|end) cylinders\b", "the rear cylinders"),
    ("thinning", r"\bthinning\b(?! (?:coats?|paint|of paint))", "thins"),
    *((cue, r"\bdodg(?:e|ing)(?= .*\bby\b)", "clear") for cue in ("dodge", "dodging")),
    ("curve", r"\bcurve\b(?! (?:spring|fit))", "bend"),
    *(
        (
            cue,
            r"^(?=.*\b(?:cope[sd]?|notch\w*|fish ?mouth|saddle)\b)(.*?)\b(?:meets|meeting|butting(?: up)?(?:"
            r" to)?) (?=(?:its own|another|an?"
            r"|the|one of|itself) )",
            r"\1onto ",
        )
        for cue in ("cope", "notch", "mouth", "saddle")
    ),
    *(
        (cue, r"\b(?:an? |one )?(met(?:re|er)|foot) and a half\b", r"1.5 \1")
        for cue in ("re and a half", "er and a half", "foot and a half")
    ),
    *(
        (
            cue,
            r"\b(?:is (?:that|it|this) enough|will (?:it|that|this) (?:hold|do|cope|take it)|(?:is )?(?:that|it)"
            r" (?:strong|big) enough)"
            r" or (?:should|do|must|would) (?:i|we) (?:have to |need to )?(?:go|use|get) (?:heavier|bigger|thicker)\b",
            "will it hold",
        )
        for cue in ("heavier", "bigger", "thicker")
    ),
    (
        "shield",
        r"^(?=.*\b(?:exhausts?|mufflers?|silencers?|headers?|tail ?pipes?|down ?pipes?|cats?|manifolds?)\b)(.*?)"
        r"\b(?:do|should|must|would|does) (?:i|we|it) (?:need|have to fit|fit|want|put in|use)(?: to fit)? (?:an? )?"
        r"(?:heat[- ]?)?shield(?:ing)?\b",
        r"\1",
    ),
    *(
        (
            cue,
            r"^(?!.*\b(?:awg|gauge|ga|cables?|wires?|hoses?|lines?)\b)(.*?)\b(?:is |are )?(?:one|a single"
            r"|single) ([0-9][0-9./ -]*)(?: ?(?:inch|in|\"))?"
            r"(?: (?:pipe|exhaust))? as (?:good|big|much|free) as (?:a pair of|twin|dual|two) ([0-9][0-9./"
            r" -]*?)(?: ?(?:inch|in|\"))?'?s?"
            r"(?: (?:pipes?|exhausts?))?(?= |$)",
            r"\1 exhaust pipe single \2 inch or dual \3 inch",
        )
        for cue in (" as good as", " as big as", " as much as", " as free as")
    ),
    ("nb", r"(?<![a-z0-9])nb ?([0-9]{1,3})\b", r"dn \1"),
    ("nb", r"(?<![0-9./-])(15|20|25|32|40|50|65|80|90|100) ?(?:mm )?nb\b", r"dn \1"),
)
