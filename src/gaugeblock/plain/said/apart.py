"""A part told apart from its bolts, a state told as a doing -> as one would have typed it."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_BOLTS = r"(?:bolts?|screws?|cap ?screws?)"
_THE = r"(?:the |my |his |these |those |them |some |new |old |little |wee )*"
_SEE = r"(?:cannot|can't|cant|couldn't|could not|don't|dont|do not)"
_SIZES = {"six": "6", "eight": "8", "ten": "10", "twelve": "12", "fourteen": "14", "sixteen": "16"}
# Bolts of a part that is named before them: what stands between is kept.
_HEADERS = (
    r"\b(?:put|putting|bolt|bolted|bolting|did|doing|got|hung|hanging) (?:up )?(?:the |my |his )?headers? (?:back )?"
    r"(?:on|up|in)?(?: again)?(?: with| and| using| they are| they're| theyre| its| it's)*"
    rf" ({_THE}(?:[0-9][0-9/ x.-]*|m ?[0-9]+[x0-9. ]*|[a-z]+"
    rf" (?:eighths?|sixteenths?)|coarse|fine|inch|in|mm| )*){_BOLTS}\b"
)
# A piece that a line must have; the pattern; what is written for it.
SAID_APART: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    (
        "rough",
        r"\b(?:a |the |some |just )?rough(?:ly)?(?= (?:tensile|strength|number|figure|idea|guess|size|weight|length"
        r"|torque|hardness|what|how|which))",
        "",
    ),
    (" u ", r"\b(for|of|make|making|bend|bending|need|want) (?:me )?an? u (?=with|of|at|on|in)", r"\1 a 180 deg bend "),
    ("rough", r"(?:,| )+roughly *$", ""),
    ("number will do", r"\b(?:a |the )?number will do\b", ""),
    ("inner ", r"\binner (?=(?:wings?|fenders?|guards?|arch(?:es)?)\b)", ""),
    (" via ", r"\bvia\b", "through"),
    (
        "strap",
        rf"^(?=.*\bu-joint)(?!.*\bu-joint straps?\b)(.*?)\bstraps?\b(?: kind of)?(?: {_BOLTS})?",
        r"\1u-joint strap bolts",
    ),
    (
        "u-joint strap bolts",
        r"(?<=u-joint strap bolts)(.*?)(?:(?:over|on|of|at|in) )?\b(?:the )?(?:rear |front )?u-joint(?: caps?)?\b",
        r"\1",
    ),
    (
        "u-joint strap bolts",
        r"^(?=.*u-joint strap bolts)(.*?)\b(?:(?:over|on|of|at|in) )?(?:the )?(?:rear |front )?u-joint(?: caps?)?\b"
        r"(?! strap)",
        r"\1",
    ),
    ("u-joint strap bolts", rf"(?<=u-joint strap bolts)(.*?)\b{_THE}(?:strap )?(?:{_BOLTS}|straps)\b", r"\1"),
    (
        "u-joint strap bolts",
        r"(?<=u-joint strap bolts)(.*?)\b(?:on|into|to|in) the (?:pinion |diff |rear )?yoke\b",
        r"\1",
    ),
    ("hang on", r"^(?:oh |ok |right |hey )?hang on\b", ""),
    ("fluid", r"(?<!dot )(?<!dot)\b(5\.1|five point one)(?= (?:brake )?fluid)", "dot 5.1"),
    ("angel", r"\bangel\b", "angle"),
    *(
        (
            cue,
            r"\b(?:steel|iron|alloy|ally|alumini?um) (bracket|plate|tab|flange|mount|panel)(?=s? (?:on ?)?to )",
            r"\1",
        )
        for cue in ("bracket", " plate", " tab", "flange", " mount", "panel")
    ),
    (
        "metric ",
        r"\bmetric (six|eight|ten|twelve|fourteen|sixteen|[0-9]{1,2})(?= (?:bolt|nut|stud|screw|thread|by|x"
        r"|with|coarse|fine|in|into|dry)|$)",
        lambda m: f"m{_SIZES.get(m[1], m[1])}",
    ),
    *(
        (cue, r"\bkilogram(?:me)?s?[ -]met(?:re|er)s?\b", "kg-m")
        for cue in ("kilogram m", "kilograms m", "kilogram-m", "kilograms-m", "kilogramme")
    ),
    ("pound", r"\bpounds? feet\b", "pound feet"),
    ("headers", _HEADERS, r"header bolts \1"),
    ("header ", _HEADERS, r"header bolts \1"),
    *(
        (
            cue,
            r"\b(alloy|alumini?um|ally|steel|brass|stainless)( (?:flare |jic |hose )?(?:fitting|nut|end)s?)"
            r" (?:on|in|into|to|onto) (?:an? |the )?(?:\1 )?(?:adapt[eo]rs?|unions?)\b",
            r"\1\2",
        )
        for cue in ("adapt", "union")
    ),
    (
        "wheels",
        r"(?<!lug )(?<!wheel )\b(nuts|studs)"
        r" (?:(?:that |which )?(?:go|are|fit|sit) )?(?:on|for) (?:the |my |his )?((?:alloy|steel"
        r"|ally) )?wheels\b",
        r"wheel nuts \2wheels",
    ),
    *(
        (cue, rf"^(?=.*\b{pan}\b)(?!.*\b(?:spark|drain|fill\w*|level|{pan}) plug)(.*?)\bplug\b", r"\1oil drain plug")
        for cue, pan in (("sump", "sump"), ("oil pan", "oil pan"))
    ),
    *(
        (
            cue,
            rf"\b(?:i |we )?{_SEE} see any (?:marks?|markings|lines)(?: on (?:the |its |their )?heads?)?\b",
            "no marks",
        )
        for cue in (" mark", " lines")
    ),
    (
        "marks",
        r"\b(?:(?:some|a) [a-z]+ )?(?:has )?(?:ground|filed|sanded|worn|rubbed) the marks off(?: (?:the |its "
        r"|their )?heads?)?\b",
        "no marks",
    ),
    (
        "silicone",
        r"\b(?:the |my |his )?(coolant|heater|radiator|rad|water) hoses?\b(?! clamp)(.*?)\b(?:(?:going|gone"
        r"|went|in|of|made"
        r" of|is|are|it is|its|to) )+silicone\b(?: hoses?)?",
        r"silicone coolant hose\2",
    ),
    ("hose silicone", r"\b(?:coolant|heater|radiator|rad|water) hoses? silicone\b", "silicone coolant hose"),
    ("hoses silicone", r"\b(?:coolant|heater|radiator|rad|water) hoses? silicone\b", "silicone coolant hose"),
    ("alloy ", r"\balloy (?=(?:allen|socket|cap) )", ""),
    *(
        (
            cue,
            r"\b(?:(?:so |and |but )?(?:my |his |the |some |a )?[a-z]+ )?(?:stripped|sheared|snapped|broke"
            r"|rounded|cross ?threaded)"
            r" (?:out |off )?the (?:last|old|other|first) (?:one|bolt|plug|nut|stud)\b(?: off| out| in)?(?:"
            r" (?:so|and))?",
            "",
        )
        for cue in ("stripped", "sheared", "snapped", "broke", "rounded", "threaded")
    ),
    *(  # after its name: anti-seize copper
        (f"{end} copper", r"\b(anti-?s(?:ei|ie)z(?:e|ing)|never-?seez) copper\b", r"copper \1")
        for end in ("seize", "sieze", "seez", "seizing", "siezing")
    ),
    ("copper washers", r"\b(?:fresh |new )?copper washers(?: (?:on )?both sides)?\b", "copper washers"),
    (
        " dry",
        r"\b(?:and |but )?(?:the |my |this |that )(?:chart|table|book|manual|sheet|poster|spec|list|wall)(?:"
        r" (?:on|in|at|over|here|i|we|the|my|his|have|wall|shop|door|bench))*"
        r" (?:only )?(?:says|gives|shows|lists|is|are) (?:it |them |that |for )?dry(?: (?:figures?|numbers?|only"
        r"|torques?|values?))?\b",
        "",
    ),
    *(
        (
            cue,
            r"\bbefore (?:i|we|it|you) (?:need|needs|have|has|got|want|must)(?: to)? (?:put |fit |use |have "
            r"|add |run )?(?:an? |the )?(?:heat )?(?:shield(?:ing)?|sleev(?:e|ing)|wrap)(?: on (?:it|them)|"
            r" (?:over|round|around) (?:it|them))?\b",
            "",
        )
        for cue in ("shield", "sleev", "wrap")
    ),
    (
        "cable",
        r"\b(?:number|no\.?|size|#) ?(0000|000|00|0|one|two|three|four|six|eight|ten|[1-9]0?|1[0-8])(?= (?:\w+"
        r" )?(?:cable|wire)\b)",
        r"\1 gauge",
    ),
    (
        "wire",
        r"\b(?:number|no\.?|#) ?(0000|000|00|0|one|two|three|four|six|eight|ten|twelve|fourteen|sixteen"
        r"|eighteen|[1-9]0?|1[0-8])(?= (?:\w+ )?(?:cable|wire)\b)",
        r"\1 gauge",
    ),
    *(
        (
            cue,
            r"(?<![0-9./x-])\b(?:(?:after|in|for|about|only|every|in about|just) )*(?:an?|one|two|three|four"
            r"|five|six|seven"
            r"|eight|ten|twelve|twenty|[0-9]+)"
            rf" {cue.strip()}\b(?: (?:ago|back|now|running|before|later))?",
            "",
        )
        for cue in (
            " laps",
            " blokes",
            " lads",
            " mates",
            " kids",
            " customers",
        )
    ),
    (
        " no slip",
        r"\b(?:with |and )?no slip(?:page)?\b(?! (?:joint|yoke))",
        "",
    ),
    (
        "turn",
        r"^(?=.*\bspark plugs?\b)(.*)\bhow (?:much|far|many)(?: of an?| do i| should i| to| of)* turns?\b(?! down)",
        r"\1spark plug turns",
    ),
)
