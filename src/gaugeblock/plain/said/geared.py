"""How steels, shafts, joints and gears are said aloud -> as they are typed."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_STEELS = {
    "four one three": "4130",
    "four one four": "4140",
    "four three four": "4340",
    "eight six two": "8620",
    "nine three one": "9310",
}
_NUMBER = r"(?:[0-9.]+|[a-z]+ty|ten|fifteen|eighteen|hundred)"
_FEW = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|[0-9]{1,2})"
_OF_STEEL = r"steels?|shafts?|half ?shafts?|axles?|splines?|bars?|4340|4140"
_OF_SHAFT = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|prop|tail ?shafts?|shafts?"


def _steel(match: re.Match[str]) -> str:
    """``four one three oh`` is 4130."""
    return _STEELS[match[1].replace("-", " ")]


_MARKS = {"nought": "0", "zero": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}


def _mark(match: re.Match[str]) -> str:
    """``plus two`` is +2, as a pinion is marked."""
    return f"{match[1]}{'+' if match[2] == 'plus' else '-'}{_MARKS.get(match[3], match[3])}"


def _tube(match: re.Match[str]) -> str:
    """``3x.083x54`` is 3 x .083, 54 in long, of a shaft."""
    return f"{match[1]}{match[2]} x {match[3]}{f' {match[4]} in long' if match[4] else ''}"


_ONES = {w: str(n) for n, w in enumerate(["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"], 1)}
_TENS = {
    w: str(n) for n, w in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)
}
_TEENS = {"ten": "10", "fifteen": "15"}
_WIDTHS = {"ten": "10", "eleven": "11", "twelve": "12", "thirteen": "13"}  # of a tyre without a profile, and its rims
_RIMS = {"fifteen": "15", "sixteen": "16", "seventeen": "17", "eighteen": "18", "twenty": "20"}
_ONE, _TEN = "|".join(_ONES), "|".join(_TENS)
_OF_SPEED = r"(?=.*\b(?:speedo\w*|needle|clock|tyres?|tires?|diffs?|gears?|revs|rpm|axle)\b)"
_CUES_OF_SPEED = tuple(f"one {tens}" for tens in (*_TEENS, *_TENS))
_OF_JOINT = r"(?=.*\b(?:angles?|degrees?|deg|tail ?shaft|prop\w*|drive ?shafts?|joints?|gear ?box|pinion|yokes?)\b)"


_COUNTING = rf"(?:an?|hundred|and|{_ONE}|{_TEN}|ten|eleven|twelve|[a-z]+teen)"


_OF_TEETH = (
    r"(?:(?:diff|axle|rear end|final drive) )?(?:ratio|diff|axle|cwp|crown ?wheel|rear end|final drive"
    r"|ring and pinion)\b"
)


def _of_teeth(match: re.Match[str]) -> str:
    """``41 11 diff`` and ``11 41 diff`` are 41/11, where an axle has such a ratio."""
    few, many = sorted((int(match[1]), int(match[2])))
    return f"{many}/{few}" if 2 * few <= many <= 7.5 * few else match[0]


_BIG_TEENS = {
    "seven": "7",
    "eight": "8",
    "nine": "9",
    "ten": "10",
    "eleven": "11",
    "twelve": "12",
    "thirteen": "13",
    "fourteen": "14",
    "fifteen": "15",
}


def _said_teeth(match: re.Match[str]) -> str:
    """``forty three twelve diff`` is 43/12, where an axle has such a ratio."""
    many, few = int(f"{_TENS[match[1]]}{_ONES.get(match[2], '0')}"), int(_BIG_TEENS[match[3]])
    return f"{many}/{few}" if 2 * few <= many <= 7.5 * few else match[0]


def _gear(match: re.Match[str]) -> str:
    """``two eighty four first`` is a first gear of 2.84."""
    return f"{_ONES[match[1]]}.{_TENS[match[2]]}{_ONES.get(match[3], '0')}"


def _thousands(match: re.Match[str]) -> str:
    """``revs to five and a half thou`` is 5500 rpm, of what turns."""
    led = "at " if match[1].startswith("rev") else match[1]
    return f"{led}{_ONES[match[2]]}{'500' if match[3] else '000'} rpm"


def _over_hundred(match: re.Match[str]) -> str:
    """``shows one ten`` is 110, as a speed is said."""
    return f"{match[1]}1{_TEENS.get(match[2]) or f'{_TENS[match[2]]}{_ONES.get(match[3], 0)}'}"


def _hundreds(match: re.Match[str]) -> str:
    """``vickers four fifty`` is 450, a hardness."""
    return f"{match[1]}{_ONES[match[2]]}{_TENS[match[3]]}{_ONES.get(match[4], 0)}"


def _by_digits(match: re.Match[str]) -> str:
    """``diff three seven three`` is 3.73."""
    return f"{match[1]}{_ONES[match[2]]}.{_ONES[match[3]]}{_ONES[match[4]]}"


def _one(several: str) -> str:
    """``sixes`` is 6."""
    return _ONES[several.removesuffix("s").replace("sixe", "six")]


def _plural(match: re.Match[str]) -> str:
    """``the three fifty fives`` are gears of 3.55."""
    return f"{match[1]}{_ONES[match[2]]}.{_TENS[match[3]]}{_one(match[4])} gears"


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(  # EN24T is EN24 in the condition T
        (cue, r"\b(en ?(?:8|16|19|24)|817m40|709m40|605m36|080m40)([q-z])\b", r"\1 condition \2")
        for cue in ("en8", "en16", "en19", "en24", "en 8", "en 16", "en 19", "en 24", "m40", "m36")
    ),
    (  # the two views of one joint
        "compound",
        r"^(?=.*\bcompound\b)(.*?)\b([0-9][0-9.]*) ?(?:deg(?:rees?|s)?|\u00b0)? ?(?:and|by|x|with) ([0-9][0-9.]*)"
        r" ?(?:deg(?:rees?|s)?|\u00b0)?(?= |$)(?! ?(?:deg\w* )?(?:side|plan|down|up|top|in\b|on\b|from))",
        r"\1\2 deg plan \3 deg side",
    ),
    *(
        (
            cue,
            r"\b(?:do(?:es)? )?(?:per|for every|for each|every) (?:thousand|1000|1,000|1k)(?: (?:revs?|rpm"
            r"|revolutions))?\b",
            "at 1000 rpm",
        )
        for cue in (" thou", " 1000", " 1,000", " 1k")
    ),
    *((f"{steel} {oh}", rf"\b({steel}) {oh}\b", _steel) for steel in _STEELS for oh in ("oh", "zero")),
    *(
        (cue, rf"^(?=.*\b(?:{_OF_STEEL})\b)(.*?)\b(?:three hundred|300) m\b(?! (?:long|away|between))", r"\1 300m")
        for cue in ("three hundred m", "300 m")
    ),
    *((cue, r"\b(?:an? |one )?met(?:re|er) and an? half\b", "1.5 m") for cue in ("metre and", "meter and")),
    ("uni", r"\bunis?[- ]?(?=joints?\b)", "u-"),
    ("uni", rf"^{_OF_JOINT}(.*?)(?<!at )(?<!from )(?<!in )\bunis?\b", r"\1u-joint"),
    (
        "and half",
        rf"\b({_ONE}|ten|eleven|twelve) and half\b(?! (?:an?|the|of|inch|way)\b)",
        r"\1 and a half",
    ),
    *(
        (
            cue,
            rf"^{_OF_SPEED}(.*?\b(?:shows?|says?|said|reads?|showing|reading|doing|at|on) (?:about |around )?)"
            rf"one ({'|'.join((*_TEENS, *_TENS))})(?: ({_ONE}))?(?= |$)(?! (?:to one|inch|thou|point|and|gears?|diff))",
            _over_hundred,
        )
        for cue in _CUES_OF_SPEED
    ),
    *(
        (
            cue,
            rf"\b((?:vickers|brinell|hv|bhn|hb)(?: (?:of|is|about|reads?|reading|says))* )({_ONE}) ({_TEN})"
            rf"(?:[ -]({_ONE}))?(?= |$)(?! (?:point|hundred))",
            _hundreds,
        )
        for cue in ("vickers ", "brinell ", "hv ", "bhn ", "hb ")
    ),
    *(
        (
            cue,
            rf"\b((?:diff(?:erential)?|axle|rear end|final drive)(?: (?:is|of|ratio|has|at|an?))* )(two|three|four"
            rf"|five)"
            rf" ({_ONE}) ({_ONE})(?= |$)(?! (?:to|inch|mm|point|hundred|rpm|teeth|tooth|turns?|times))",
            _by_digits,
        )
        for cue in ("diff", "axle", "rear end", "final drive")
    ),
    *(
        (
            cue,
            rf"^(?=.*\b(?:tyres?|tires?|gears?|diff|ratio|axle)\b)(.*?)\b(two|three|four|five) ({_TEN})"
            r"[ -]((?:three|four|five|seven|eight|nine)s|sixes)\b",
            _plural,
        )
        for cue in ("threes", "fours", "fives", "sixes", "sevens", "eights", "nines")
    ),
    *(
        (
            cue,
            r"^(?=.*\b(?:tyres?|tires?)\b)(.*?)\btwenty[ -]((?:four|five|seven|eight|nine)s|sixes)\b",
            lambda m: f"{m[1]}2{_one(m[2])} inch tyres",
        )
        for cue in ("fours", "fives", "sixes", "sevens", "eights", "nines")
    ),
    (
        " k ",
        rf"^{_OF_SPEED}(.*?(?<![\w./])(?:doing|do|at|on) (?:[3-9][0-9]|1[0-9][0-9]|2[0-4][0-9])) k(?= |$)",
        r"\1 km/h",
    ),
    (" k ", rf"^{_OF_SPEED}(.*?\b(?:doing|do|at|on) (?:{_COUNTING}[ -])+)k(?= |$)(?! factor)", r"\1km/h"),
    *(
        (cue, rf"(?<![\w./-]){teeth}(?= {_OF_TEETH})(?!.*\b(?:inch|in|mm) (?:hole|bolt|tube|wall))", _of_teeth)
        for cue in (" ratio", " diff", " axle", " cwp", " crown", " rear end", " final drive", "ring and")
        for teeth in (r"([3-6][0-9]) ([7-9]|1[0-9])", r"([7-9]|1[0-9]) ([3-6][0-9])")
    ),
    *(
        (
            cue,
            rf"(?<!hundred )(?<!point )\b(thirty|forty|fifty)(?:[ -]({_ONE}))?(?: (?:by|to|over|and))?"
            rf" ({'|'.join(_BIG_TEENS)})(?= {_OF_TEETH})(?!.*\b(?:inch|in|mm) (?:hole|bolt|tube|wall))",
            _said_teeth,
        )
        for cue in (" ratio", " diff", " axle", " cwp", " crown", " rear end", " final drive", "ring and")
    ),
    *(
        (
            cue,
            rf"(?<!ty )(?<!hundred )(?<!point )\b(one|two|three|four) ({_TEN})(?:[ -]({_ONE}))?(?= (?:first|second"
            rf"|third|low|1st"
            r"|2nd|3rd)(?: gear)?\b)",
            _gear,
        )
        for cue in (" first", " second", " third", " 1st", " 2nd", " 3rd", " low gear")
    ),
    *(
        (
            cue,
            rf"\b((?:revs?|revved|revving|rpm|redline|spins?|spinning|turns|turning)(?: (?:it|her|them|up|is|at|to|of"
            rf"|out))* )"
            rf"({_ONE})( and an? half)? thou(?:sand)?(?= |$)(?! (?:of|in|inch|shim|rpm|revs|[a-z]+ hundred))",
            _thousands,
        )
        for cue in (" thou",)
    ),
    *(
        (  # three and a half grand is 3500 rpm, where an engine or a shaft turns
            "grand",
            rf"^(?=.*\b(?:tyres?|tires?|diffs?|gears?|axle|ratio|top|fifth|fourth|{_OF_SHAFT})\b)(?!.*\b(?:paid"
            rf"|cost|quid|price|worth)\b)"
            rf"(.*?)\b{pattern} grand\b",
            shown,
        )
        for pattern, shown in (
            (rf"({_ONE}) and an? half", r"\1\2 thousand five hundred rpm"),
            (r"([1-9])\.([0-9])", r"\1\g<2>\g<3>00 rpm"),
            (rf"({_ONE}|ten)", r"\1\2 thousand rpm"),
            (r"([1-9])", r"\g<1>\g<2>000 rpm"),
        )
    ),
    *(
        (  # thirty three twelve fifty fifteen is 33x12.5R15
            cue,
            rf"\b(twenty|thirty|forty)(?:[ -]({_ONE}))? (ten|eleven|twelve|thirteen) fifty"
            r" (fifteen|sixteen|seventeen|eighteen|twenty)s?\b",
            lambda m: f"{_TENS[m[1]]}{_ONES.get(m[2], '0')}x{_WIDTHS[m[3]]}.50r{_RIMS[m[4]]}",
        )
        for cue in ("ten fifty", "eleven fifty", "twelve fifty", "thirteen fifty")
    ),
    *(
        (
            cue,
            r"(?<![\w./x-])([2-4][0-9]) ?[/ -] ?((?:[89]|1[0-5])\.50?)(?: ?[/-]| ) ?(1[4-9]|2[0-4])(?= |$)",
            r"\1x\2r\3",
        )
        for cue in (".50 ", ".5 ", ".50-", ".50/", ".5-", ".5/")
    ),
    *(
        (  # 76x1.6 of a shaft
            cue,
            rf"^(?=.*\b(?:{_OF_SHAFT})\b)(.*?)(?<![\w./-])((?:[3-9][0-9]|1[0-5][0-9])(?:\.[0-9]{{1,2}})?)x"
            r"([1-5](?:\.[0-9]{1,2})?)(?:mm)?(?![\w./])",
            r"\1\2 mm x \3 mm",
        )
        for cue in ("prop", "shaft")
    ),
    (
        "rpm ",
        r"(?<![0-9]{3} )(?<![0-9]{3}rpm )\brpm ([1-9][0-9]{2,4})(?= |$)(?! ?(?:rpm|revs|mph|kph|km|k\b|mm|lbs?"
        r"|pounds|nm|ft))",
        r"at \1 rpm",
    ),
    (  # two tyres, and what the clock makes of it
        "speedo",
        r"^(?=.*\bspeedo)(.*?)(?<!from )(?<!was )\b([1-3][0-9]5/[2-9][05](?:/|r| ?r)[12][0-9]) (?:vs?"
        r"|versus|to|against)"
        r" ([1-3][0-9]5/[2-9][05](?:/|r| ?r)[12][0-9])\b",
        r"\1from \2 to \3",
    ),
    ("third being", r"\bthird being\b", "third is"),
    ("clicks", rf"^(?=.*\b(?:tyres?|tires?|diffs?|gears?|revs|rpm|top)\b)(.*?\b{_NUMBER}) clicks\b", r"\1 km/h"),
    *(
        (
            cue,
            (
                rf"^(?=.*\b(?:{_OF_SHAFT})\b)(.*?)(?<![\w./-])([1-6](?:\.[0-9]+)?)x(0?\.[0-9]{{2,3}})"
                r"(?:x([0-9]{2}))?(?![\w.])"
            ),
            _tube,
        )
        for cue in ("x.", "x0.")
    ),
    (
        " set",
        r"\b(?:doesn't|does not|won't|will not|don't|can't) (?:take|put|leave|get|give)(?: it)? an? (?:permanent"
        r" )?set"
        r"(?: in(?:to)? (?:it|them))?\b",
        "",
    ),
    *(
        (
            cue,
            r"\b(?:so |and )?(?:that )?(?:it|they) (?:doesn't|doesnt|don't|won't|wont|will not|does not)"
            r" (?:whirl|whip|shake|vibrate|buzz)(?=(?: (?:at|under|up to))? [0-9])",
            "",
        )
        for cue in ("n't ", "nt whirl", "nt whip", "nt vib", " not ")
    ),
    ("n't twist", r"\bso (?:that )?it (?:doesn't|won't) twist(?: up| off)?\b", ""),
    ("worth", r"\bor (?:isn't|is|ain't) it (?:not )?(?:really )?worth (?:it|bothering|the bother|the trouble)\b", ""),
    ("seal", r"\bseals? in or without(?: it)?\b", "seal fitted or out"),
    (
        "how much ",
        r"\bhow much (stronger|weaker|harder)(?:'s| is| are)?(?: the)? (?:drawn|rolled|second|other|first)(?: one)?\b",
        r"how much \1",
    ),
    (
        "cert",
        r"\b(?:the |my |his )?(?:mill )?cert(?:ificate)?s? (?:only |just )?(?:says?|reads?)(?: only| just)?\b",
        "",
    ),
    ("nothing about", r"\b(?:and |but )?nothing about (?:its |the )?(?:strength|tensile|yield|hardness)\b", ""),
    ("i count on", r"\bwhat (?:can|may|should) i count on(?: for)?\b", "what is"),
    ("weld", r"\bbefore (?:anybody|anyone|somebody|we|i|they|he) welds? (?:it|on it|them)\b", ""),
    ("thin wall", r"\bthin[- ]wall(?:ed)?(?= *(?:and|what|tub|$))", ""),
    ("cheapo", r"\bcheapo\b", "cheap"),
    ("call that what", r"\bcall that what\b", "what is that"),
    ("or out", r"\bin or out(?: then)?(?= *$)", "in range"),
    *(
        (cue, r"\bor is it (?:near|close|about|nearly)?(?: enough)?(?: the)? same\b(?: thing)?", "")
        for cue in ("or is it",)
    ),
    *(
        (
            cue,
            rf"^(?=.*\bpinions?\b)(?=.*\b(?:shims?|mark\w*|etched|stamped)\b)(.*?)\b(plus|minus)"
            rf" ({'|'.join(_MARKS)}|[0-9]{{1,2}})"
            r"\b(?! (?:adds|means|takes))",
            _mark,
        )
        for cue in ("plus ", "minus ", "plus ", "minus ")  # one of each, in either order
    ),
    (" thou", rf"(?<![0-9./])\b({_FEW}) to ({_FEW}) thou(?:s|sandths?)?\b", r"\1 thou to \2 thou"),
    ("ing a ", r"\bwithout (?:it )?(?:taking|getting) a (?:permanent )?set\b", ""),
)
