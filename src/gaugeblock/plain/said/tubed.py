"""Numbers of tubes, boxes and sheets as a shop says them -> as they are typed: one sixty, an eighth wall."""

from __future__ import annotations

import re

from gaugeblock.plain.said.tubing import SPOKEN_WALLS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

_ONES = {w: str(n) for n, w in enumerate(["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"], 1)}
_PART_OF = {"quarter": "4", "eighth": "8", "sixteenth": "16"}
_OF_TWENTY = {
    w: str(n) for n, w in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)
}
_TEENS = {
    w: str(n)
    for n, w in enumerate(
        ["ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"],
        10,
    )
}


def _past(before: str) -> str:
    """A pattern of ``one sixty``; of what must stand before it where it may be one thing of sixty."""
    return (
        rf"(?P<before>{before})?(?<!two )(?<!three )(?<!four )(?<!five )(?<!six )(?<!seven )(?<!eight )(?<!nine )"
        r"(?<!ten )"
        rf"(?<!oh )(?<!point )(?<!and )(?<!ty )(?<!een )\bone (?:(?P<teen>{'|'.join(_TEENS)})"
        rf"|(?P<ten>{'|'.join(_OF_TWENTY)})"
        r"(?:[ -](?P<one>one|two|three|four|five|six|seven|eight|nine))?)\b"
    )


_OWN = r"\b(?:an?|the|my|our|this|that|his) "
_PAST = _past(rf"^|{_OWN}|\b(?:of|is|with|in|on|by|x|at|to|from|about|say|wide|long|for|section|box|tube|rhs|shs) ")
_BOLTED = (
    r"(?! ?(?:bolts?|studs?|nuts?|screws?|holes?|drills?|spanners?|sockets?|taps?|threads?|pins?|washers?|wires?"
    r"|cables?|squared?|rods?|shafts?)\b)"
)
_MM = r"(?: ?(?:mm|mils?|millimet(?:re|er)s?))"
_COUNTED_TUBES = (
    r"(?:tub(?:e|es|ing)|pipes?|box(?:es)?|bars?|rails?|angles?|plates?|sheets?|dies?|formers?|hoops?|hoses?)"
)


def _past_hundred(match: re.Match[str]) -> str:
    """``one sixty radius`` is 160; ``one sixty mm tube`` may be one of 60: it stays one word, which nothing reads."""
    if "sure" not in match.groupdict() and match["before"] is None:
        return match[0].replace("one ", "one-")
    low = _TEENS[match["teen"]] if match["teen"] else _OF_TWENTY[match["ten"]] + _ONES.get(match["one"] or "", "0")
    return f"{match['before'] or ''}1{low}"


_A_SHEET = (
    r"(?:(?:[0-9.]+|[a-z]+(?: point [a-z]+)*) ?(?:mm|mil|millimet(?:re|er)s?|gauge|ga)"
    r" (?:mild steel|stainless steel|stainless|steel|alumini?um|ally))(?: sheet| plate)?"
)


_COUNTS = (
    "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|sixteen|eighteen|twenty|thirty|forty"
    "|fifty|sixty|seventy|eighty|ninety|hundred|half|quarter|quarters|eighth|eighths|sixteenth|sixteenths|point|oh"
    "|and|an|a|m|x"
)

# A part of an inch that stands by itself: not the one of five and a quarter.
_NO_COUNT = (
    r"(?<!and )(?<!and a )(?<!an )(?<!one )(?<!two )(?<!three )(?<!four )(?<!five )(?<!six )(?<!seven )(?<!eight )"
    r"(?<!nine )(?<!ten )(?<!een )(?<!ty )(?<!lve )(?<!inch )(?<![0-9] )"
)


_DIGIT = {"zero": "0", "oh": "0", **_ONES}


def _by_digits(match: re.Match[str]) -> str:
    """``one seven five`` is 1.75 in."""
    return f"{_ONES[match[1]]}.{''.join(_DIGIT[word] for word in match[2].split())} in "


def _wall_by_digits(match: re.Match[str]) -> str:
    """``by one three four`` is a wall of .134."""
    return f"{match[1]} .1{''.join(_DIGIT[word] for word in match[2].split())}"


def _or_not(match: re.Match[str]) -> str:
    """``kinks or not`` asks whether it kinks."""
    return match[0].removesuffix(" or not").replace("yes", "")


def _part(match: re.Match[str]) -> str:
    """``eighth wall`` is a wall of 1/8 in."""
    return f"{ {'three ': 3, 'five ': 5}.get(match[1] or '', 1) }/{_PART_OF[match[2]]} inch"


_COUNT = r"two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[2-9]|[1-9][0-9]"
_PARTED = "\x02"  # one number after another, as in plain/sayings.py
# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(  # a wall in thousandths, as tube is called by it; a millimetre is never ninety five
        (
            " wall",
            rf"(?<!oh )(?<!point )(?<!hundred )(?<!and )(?<!one )(?<!two )(?<![0-9.] )\b{said.replace(' ', '[ -]')}"
            r"(?: thou)?(?= (?:thick )?wall\b)",
            number,
        )
        for said, number in SPOKEN_WALLS.items()
        if not said.startswith(("one ", "two "))  # which other sayings read
    ),
    (
        " wall",
        r"(?<!and )(?<!an )(?<!one )(?<!three )(?<!five )(?<!seven )\b(three |five )?(eighth|quarter|sixteenth)s?"
        r"(?= wall\b)",
        _part,
    ),
    (
        " rad",
        r"((?:[0-9] ?|\b)(?:mm|mil|millimet(?:re|er)|inch|in|\")) rad\b"
        r"(?! (?:hoses?|cap|fan|core|outlet|inlet|mount\w*|support|tank|shroud|pipes?|stat|neck))",
        r"\1 radius",
    ),
    (
        " rad",
        r"\b(inside|internal|inner|outside|outer|external|corner|cent(?:re|er)(?:[- ]?line)?) rad\b",
        r"\1 radius",
    ),
    *(
        (
            f"one {piece}",
            pattern,
            _past_hundred,
        )
        for piece in ("ten", "eleven", "twe", "thir", "fort", "fourt", "fift", "sixt", "seven", "eight", "ninet")
        for pattern in (
            rf"{_PAST}(?={_MM}? ?(?:clr|cent(?:re|er)[ -]?line|cent(?:re|er) rad|(?:bend "
            r"|inside )?rad(?:ius)?\b))(?P<sure>)",
            rf"{_past(_OWN)}(?={_MM}?(?: (?:od|round))? {_COUNTED_TUBES}\b)",
            rf"{_PAST}(?={_MM}\b{_BOLTED})(?P<sure>)",
            rf"{_PAST}(?= ?(?:x|by) (?:(?:an?|one|two) )?(?:[0-9]|[a-z]+ty\b|[a-z]+teen\b|ten\b"
            r"|hundred\b)(?!.*\b(?:bolts?|studs?|thread)\b))",
        )
    ),
    ("vee", r"\bvee[- ]?(?=(?:eight|six|four|twelve|ten|twin)\b|[0-9])", "v "),
    *(
        (  # the mass of two sheets
            cue,
            rf"^(?=.*\b(?:weigh|weighs|weight|heavier|lighter)\b)(.*?)\b({_A_SHEET}) (?:and|vs|versus|against"
            rf"|than) (?={_A_SHEET})",
            r"\1\2 or ",
        )
        for cue in (" alum", " stainless", " ally")
    ),
    *((cue, r"\b(?:one|1|a) met(?:re|er) (?=(?:x|by) )", "1 m ") for cue in ("etre by", "etre x", "eter by", "eter x")),
    *(
        (  # the bender is named, or there is none: what is not on it says no more
            "mandrel",
            pattern,
            r"\1",
        )
        for pattern in (
            r"^(?=.*\b(?:hand|lever|press|ram|muffler shop) bend)(.*?)\b(?:(?:and |but )?(?:i |we )?(?:have |have got"
            r" |got |ve got )|with )?(?:no|without)(?: an?| any| the)? mandrel\b",
            r"^(?=.*\b(?:pie|slices?|segments?|lobster|mit(?:er|re)))(.*?)\b(?:(?:there(?:'s| is)|we have|i have|i've"
            r" got|got|with) )?(?:no|without an?) mandrel(?: (?:bender|bends?))?(?: (?:here|to be had|round here"
            r"|around here|in the shop|in town|locally|on hand|handy))*\b",
        )
    ),
    (
        "minus ",
        r"\bminus (three|four|six|eight|ten|twelve|sixteen|[0-9]+) (?=(?:an|jic)\b)",
        r"dash \1 ",
    ),
    *(
        (cue, r"\binch (?:n|'n'?|n') (?:an? )?(?=half|quarter|three|eighth)", "inch and a ")
        for cue in ("inch n ", "inch 'n", "inch n'")
    ),
    *(
        (  # onto inch three quarter; headers of inch seven eighths
            cue,
            rf"(^|\b(?!(?:{_COUNTS})\b)[a-z]+  ?)(?:an? )?inch (?=(?:three )?quarters?\b|half\b"
            r"|(?:one |an )?eighth\b|(?:three|five|seven) eighths?\b)(?!half (?:inch|in)\b)",
            r"\1inch and ",
        )
        for cue in (
            "inch half",
            "inch quarter",
            "inch three",
            "inch five",
            "inch seven",
            "inch one eighth",
            "inch eighth",
        )
    ),
    *(
        (  # a quarter inside radius
            f"{piece}{tail}",
            rf"{_NO_COUNT}\b(three )?(eighth|quarter|sixteenth)s?"
            r"(?= (?:inside |internal |inner |bend )?radius\b)",
            _part,
        )
        for piece in ("eighth", "eighths", "quarter", "sixteenth", "sixteenths")
        for tail in (" inside", " internal", " inner", " bend", " rad")
    ),
    *(
        (cue, r"\b(4130|sae 4130|aisi 4130)[ -]?n\b(?! ?(?:m|/))", r"\1 normalized")
        for cue in ("4130n", "4130 n ", "4130-n")
    ),
    *(
        (  # 1.5 x 120 dom: a wall in thousandths
            f" {wall}",
            r"^(?=.*\b(?:dom|cds|erw|4130|chro-?mo\w*|tub(?:e|es|ing)|clr|bend|notch\w*|cope)\b)(.*?)(?<![0-9./x-])"
            rf"\b([1-3](?:\.[0-9]+|[ -][0-9]/[0-9]+)?(?: ?(?:in|inch|\"))?) ?(x|by) 0?{wall}\b"
            r"(?! ?(?:mm|x|by|in|deg|long|[0-9.]))",
            rf"\1\2 \3 .{wall}",
        )
        for wall in ("120", "134", "156", "188")
    ),
    *(
        (  # one seven five by one three four, digit by digit
            f" {cue}",
            rf"(?<!ty )\b(one|two) (?:point )?({cue}) (?=(?:inch |od )?(?:by|x)"
            r" (?:oh|zero|nought|point|one (?:two|three|five|eight)|0?\.)\b)",
            _by_digits,
        )
        for cue in ("seven five", "two five", "six two five", "three seven five", "eight seven five")
    ),
    *(
        (f"one {cue}", rf"\b(by|x) one ({cue})\b(?! (?:mm|inch|hundred))", _wall_by_digits)
        for cue in ("three four", "two zero", "two oh", "five six", "eight eight")
    ),
    ("@", r" ?@ ?(?=[0-9])", " at "),
    ("zorst", r"(?<![a-z])'?zorst\b", "exhaust"),
    (
        "or not",
        r"\b(?:yes|kinks?|fits?|fitting|legal|allowed|enough|good|ok|okay|safe|will it|does it|is it|true"
        r"|strong) or not\b"
        r"(?= *$|  )",
        _or_not,
    ),
    *(
        (  # two inch and a half is one size
            cue,
            rf"(?<!ty )(?<!ty-)(?<!oh )(?<!nt )(?<!red )(?<![0-9./-])\b({_COUNT}) inch(?:es)? and an?"
            r" (half|quarter|eighth|sixteenth)\b",
            r"\1 and a \2 inch",
        )
        for cue in ("inch and a", "inches and a")
    ),
    (  # a quarter inch and three eighths are two
        "inch and ",
        rf"\b((?:half|quarters?|eighths?|sixteenths?|[0-9]/[0-9]+|{_COUNT}) inch and )"
        r"(?=one|three|five|seven|half|quarter)",
        rf"\1{_PARTED} ",
    ),
)
