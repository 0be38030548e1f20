"""Turns of speech of brakes, hoses, coolant and fuel -> as one would have typed them."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_LENGTH = r"([0-9]+(?:\.[0-9]+)?(?: [0-9]+/[0-9]+)?)(?: ?(mm|cm|in|inch(?:es)?|\"))?"


def _at_both(match: re.Match[str]) -> str:
    """``365 at full droop and lock`` is the way at either."""
    length = f"{match[1]} {match[2] or ''}".strip()
    return f"{length} at full droop {length} at full lock"


def _lever(match: re.Match[str]) -> str:
    """``11 inches pivot to pad, pushrod 2 inches from the pivot`` is a pedal of 5.5 to 1."""
    long, short = (_inches(match[at], match[at + 1]) for at in (1, 3))
    return f"pedal ratio {long / short:.4g}" if short else match[0]


def _inches(number: str, unit: str | None) -> float:
    whole, _, part = number.partition(" ")
    top, _, bottom = (part or whole).partition("/")
    size = float(top) / float(bottom or 1) + (float(whole) if part else 0)
    return size / {"mm": 25.4, "cm": 2.54}.get(unit or "in", 1)


_CYLINDER = r"(?:clutch )?(?:master|slave)(?: cylinder)?"
_OF_IT = r"[0-9./]+(?: [0-9]/[0-9]+)?(?: ?(?:mm|in|inch|\"))?"
_PARTS = {"half": "0.5", "three quarters": "0.75"}
_TENS = {"thirty": 30, "forty": 40, "sixty": 60, "seventy": 70}


def _of_a_mm(match: re.Match[str]) -> str:
    """``half a mil`` is 0.5 mm."""
    return f"{_PARTS.get(match[1], '0.25')} "


def _two_parts(match: re.Match[str]) -> str:
    """``sixty forty`` is a mixture of 60/40, where both make a whole."""
    first, second = _TENS[match[1]], _TENS[match[2]]
    return f"{first}/{second}" if first + second == 100 else match[0]


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (cue, r"\b(half|(?:a |one )?quarter|three quarters) (?:of )?an? (?=(?:mil|mm|millimet(?:re|er))\b)", _of_a_mm)
        for cue in ("a mil", "a mm")
    ),
    (  # where it runs is told, and how hot it may be is asked
        "how hot ",
        r"\b(?:that |which )?(?:passes|runs|goes|sits|is)(?: (?:very|too|right|quite))? (?:close|near|next)(?: to)?"
        r" (?:the|my|our) (?:headers?|exhaust|manifold|downpipe|turbo)\b(?=.*\bhow hot [a-z ]{0,30}"
        r"\b(?:can|may|could|does) )",
        "",
    ),
    (
        " wrong",
        r"\b(?:and |but )?(?:i(?:'ve| have)?|ive|we) (?:an? |got an? |do )?(?:feeling|hunch|think|reckon|say|guess)"
        r" (?:that )?(?:he|she|they)(?:'?s| is|'?re| are) (?:dead |just |both )?wrong\b",
        "",
    ),
    *((cue, r"\bof an? (?=(?:mil|mm|millimet(?:re|er))\b)", "") for cue in ("of a mil", "of a mm")),
    *(
        (
            cue,
            r"\b(sixty|forty|seventy|thirty)[ /-](forty|sixty|thirty|seventy)(?=(?: [a-z]+){0,3} (?:anti-?freeze"
            r"|coolant|glycol|mix|water)\b)",
            _two_parts,
        )
        for cue in ("ty forty", "ty sixty", "ty thirty", "ty seventy", "ty-forty", "ty/forty", "ty/sixty", "ty-sixty")
    ),
    *(
        (cue, r"\b(?:two|2) (?=(?:[0-9]+/[0-9]+|[0-9.]+)[a-z\" ]{0,8} ?(?:masters|master cylinders)\b)", "twin ")
        for cue in ("masters", "master cylinders")
    ),
    (
        "droop",
        rf"\b{_LENGTH}(?: at| of)?(?: full)? droop (?:and|with|plus|on|at)(?: (?:full|steering|the))* lock\b",
        _at_both,
    ),
    ("lock", rf"\b{_LENGTH}(?: at| of)?(?: full)? lock (?:and|with|plus|at)(?: full)? droop\b", _at_both),
    (
        "pivot",
        rf"\b{_LENGTH}(?: from)?(?: the)? pivot to (?:the )?(?:pad|foot|centre of the pad|center of the pad)(?: +and)?"
        rf"(?: +the)? +(?:push ?rod|rod|clevis)(?: is| at)? {_LENGTH}(?: (?:down|up|below|above|away|from"
        rf"|off))*(?: the)? pivot\b",
        _lever,
    ),
    (  # what two lengths of a pedal come to
        "pivot",
        r"^(?=.*\b(?:pads?|foot|push ?rod|rod|clevis)\b)(.*?)\b(?:what(?:'s|s| is)?|find|work out|get|calculate)"
        r"(?: (?:the|my|its|pedal|a|lever))* ratio(?: (?:is|have|do|does))?(?: (?:that|it|this|i|got|have|come to"
        r"|make))*(?= *$|  )",
        r"\1pedal ratio",
    ),
    (
        "pedal ",
        r"\b((?:brake |clutch )?pedal) (?:(?:is|of|at|it's|its|with) )*([1-9][0-9]?(?:\.[0-9]+)?)(?: ?(?:in|inch|\"))?"
        r" over ([1-9](?:\.[0-9]+)?)(?: ?(?:in|inch|\"))?(?= |$)(?! ?(?:psi|bar|lbs?|mm|cm)\b)",
        r"\1 ratio \2 over \3",
    ),
    *((cue, rf"\b{cue}(?= *$)", "") for cue in ("yes/no", "y/n", "yes or no")),
    (" in bump", r"(?<=[0-9]) in (?=bump\b)", " at "),
    (" in full bump", r"(?<=[0-9]) in (?=full bump\b)", " at "),
    (" in droop", r"(?<=[0-9]) in (?=droop\b)", " at "),
    (
        "ylene",
        r"\b(propylene|ethylene)(?: glycol)?(?: in| went in)? (?:instead of|in place of|rather than)(?: the)?"
        r" (propylene|ethylene)\b",
        r"\1 vs \2",
    ),
    *(
        (
            cue,
            r"\b(?:and |so )?(?:that|it|this|they) (?:isn't|isnt|is not|aint|ain't|won't|wont|will not|aren't)"
            r" (?:(?:going to|gonna|ever|really) )*(?:do|be enough|be any good|cut it|be up to it)"
            r"(?: +(?:is it|will it|are they|is that))?(?= *$)",
            "",
        )
        for cue in (" isn't ", " isnt ", " is not ", "ain", " won't ", " wont ", " will not ", " aren't ")
    ),
    (
        "before it ",
        r"\bbefore it (?:cooks|kills|ruins|hardens|melts|burns|wrecks|eats) (?:the |its |my )?(?:seals|clutches"
        r"|clutch packs|box"
        r"|gearbox|trans(?:mission)?)\b",
        "",
    ),
    ("hills", r"\bup (?:long |steep |big |the )*hills\b(?: in (?:the )?(?:summer|heat))?", ""),
    (
        "silicone ",
        r"\bsilicone (or|vs|versus|against) (epdm|rubber) (?:radiator|rad|coolant|heater|water) hoses?\b",
        r"silicone coolant hose \1 \2 hose",
    ),
    (
        "not metric",
        r"\b(?:is|are|it's|its|they're|theyre) not metric\b(?=.*(?:per inch|tpi|sixteenth|eighth|[0-9]/[0-9]))",
        "",
    ),
    (  # a second question, whatever the first was
        " is it going to ",
        r"(?<!and) is it going to (?=(?:boil|cook|melt|burn)\b)",
        " and is it going to ",
    ),
    (" mill ", r"(?<=[a-z0-9]) mill(?= (?:wall|thick|bore|od|diameter|pitch|master|tube|pipe|gap|hole|bolt)\b)", " mm"),
    ("eighths twenty four", r"\bthree eighths twenty four\b", "3/8-24"),
    *(  # what an engine makes at its crank is its power
        (cue, r"(?<=[0-9]) (?:crank|flywheel|engine|brake) (?=(?:hp|horse(?:power|s)?|kw|kilowatts?)\b)", " ")
        for cue in ("crank h", "flywheel h", "engine h", "brake h", "crank k", "flywheel k", "engine k")
    ),
    *(
        (  # maker says 35 thou, i set 40: of plugs the second has the unit of the first
            cue,
            r"^(?=.*\bplugs?\b)(?!.*\b(?:timing|deg\w*|torque)\b)(.*\bthou\b.*\b(?:set|gapped)(?: (?:it|them"
            r"|mine|at|to))*"
            r" [2-9][0-9])(?= *$|  | (?:and|is|will|ok|does|but)\b)",
            r"\1 thou",
        )
        for cue in ("i set ", "set them ", "set mine ", "gapped ")
    ),
    *(
        (cue, pattern, shown)
        for cue in ("slave travel", "slave movement", "slave throw")
        for pattern, shown in (
            (  # a mark says which number is whose: slave travel: 5/8 master, 7/8 slave, 30 mm stroke
                rf"\b(slave (?:travel|movement|throw))  (?={_OF_IT} {_CYLINDER}  {_OF_IT} {_CYLINDER} "
                rf" ?{_OF_IT} stroke\b)",
                r"\1 with ",
            ),
            (  # slave travel 5/8, master 7/8, slave 30 mm, stroke?
                rf"\b(slave (?:travel|movement|throw)) (?={_OF_IT}  {_CYLINDER} {_OF_IT}  {_CYLINDER} {_OF_IT}  )",
                r"\1 is ",
            ),
        )
    ),
    ("ten by one", r"\bten by one\b(?! point)", "m10x1"),
    ("same size", r"\b(same size(?: [a-z]+){0,5}?) or (?:smaller|bigger|larger)(?= *$)", r"\1"),
    (
        "mushroom",
        r"\bmushroom(?:ed)?(?:[ -](?:shaped?|type|style|headed))?(?: (?:end|flare|head|tip))?\b",
        "bubble flare",
    ),
    *(  # silicone fluid, by its number
        (cue, r"\bdot ?5 +(?:and )?not (?:dot ?)?5\.1\b", "dot 5") for cue in ("not 5.1", "not dot 5.1", "not dot5.1")
    ),
)
