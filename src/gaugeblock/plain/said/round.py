"""What is told round a question and changes nothing: a purpose, a thing that bears no mark -> nothing."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_PARTS = {"eighth": "1/8", "quarter": "1/4", "half": "1/2", "three eighths": "3/8"}


def _pipe(match: re.Match[str]) -> str:
    """``an eighth npt`` is 1/8 npt."""
    return f"{_PARTS.get(match[1], '3/4')} {match[2]}"


# What is done so that nothing bad comes of it changes nothing: so that it neither knocks nor scorches.
_BAD = (
    r"(?:knocks?|rattles?|hits?|rubs?|touch(?:es)?|scorch(?:es)?|burns?|melts?|cooks?|boils?|chafes?|sags?|squeaks?"
    r"|shakes?|catch(?:es)?|clonks?|bangs?|clouts?|fouls?)"
)
_PURPOSE = (
    r"\bso (?:that )?(?:it|they|she|he|the \w+|nothing) (?:doesn't|doesnt|does not|don't|dont|do not|won't|wont|will"
    r" not"
    rf"|neither) {_BAD}(?: nor {_BAD})?(?: (?:when|as|if) (?:she|it|he|the car) \w+)?(?: on \w+)?"
)
_UNMARKED = (
    r"\b(?:and )?(?:there(?:'s| is) )?nothing (?:is |was )?(?:stamped|marked|printed|cast)"
    r"(?: (?:on|in) (?:it|them|the \w+))?"
)
# Is 8 mm fuel pipe enough or do i go up to 10: the second size is told as the first.
_GO_UP = (
    r"^(.*?)\b([0-9./]+(?: [0-9]/[0-9]+)?) ?(mm|inch|in)? ?(?:\w+ )??((?:fuel|petrol) (?:lines?|hoses?|pipes?"
    r"|tubes?))\b(.*?)"
    r"\bor (?:do|should|must|shall|would) (?:i|we)(?: have to| need to| want to| better)? (?:go|step|move|jump"
    r"|need|use)"
    r"(?: up| down)?(?: to)?(?: an?| the)? ([0-9./]+)(?: ?(mm|inch|in))?\b"
)


def _or_size(match: re.Match[str]) -> str:
    """The line with both sizes of a fuel line side by side."""
    before, first, unit, line, between, second, own = match.groups()
    own = own or unit
    sizes = [f"{size} {said}".strip() for size, said in ((first, unit or ""), (second, own or ""))]
    return f"{before}{sizes[0]} {line} or {sizes[1]} {line}{between}"


# From 70 to 770 degrees f: the first has the unit of the second.
_UNIT = r"(?:deg(?:rees?)? ?(?:f|c)|fahrenheit|celsius|centigrade|degf|degc|[fc]|rpm)"
_ROUND_NUMBER = (
    r"(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|eighteen) (?:hundred|thousand)"
)
_SPAN = rf"\b(from|between) (-?[0-9.]+|{_ROUND_NUMBER}) (to|and) ((?:-?[0-9.]+|{_ROUND_NUMBER}) ?({_UNIT}))\b"
_METAL = r"(?:stainless|mild|carbon|304|316|321|409|alumini?um|copper|titanium)(?: steel)?"
_LETTERS = ("hrc", "hrb", "awg", "swg", "bwg", "clr", "cfm", "gph", "lph")
# A piece that a line must have; the pattern; what is written for it.
SAID_ROUND: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (cue, _PURPOSE, "")
        for cue in ("doesn't", "doesnt", "does not", "neither", "don't", "dont", "do not", "won't", "wont", "will not")
    ),
    (
        "hand",
        r"\bsecond[- ]?hand (?=winch|engine|motor|trailer|truck|ute|car\b|van|gearbox|welder|compressor|radiator|fan"
        r"|pump)",
        "",
    ),
    *((f"{cent}-line", rf"\b{cent}-line\b", f"{cent} line") for cent in ("centre", "center")),
    ("up to", rf"(?<=[0-9]) up to (?=-?[0-9.]+ ?{_UNIT}\b)", " to "),
    (
        "grow",
        rf"\b(grow[a-z]*) (?:of )?(-?[0-9.]+) to (-?[0-9.]+ ?({_UNIT}))\b",
        r"\1 from \2 \4 to \3",
    ),
    (
        "an inch ",
        r"(?<!half )(?<!quarter )(?<!eighth )(?<!of )(?<!to )(?<!per )\ban inch (?=off\b|from\b|away\b|clear\b"
        r"|apart\b)",
        "1 inch ",
    ),
    ("fuel ", _GO_UP, _or_size),
    (
        "which ",
        rf"^(?=.*\bwhich (?:one |of them )?(?:moves|grows|expands|gets|stretches) (?:the )?(?:more|most"
        rf"|longer))(.*?{_METAL})"
        r" (?:and|but)? ?not ",
        r"\1 or ",
    ),
    (
        "ifferent",
        rf"\b(?:and|or) (?:is|would|does|will) ({_METAL})(?: (?:be|grow|move|get))? (?:any |much |very"
        rf" )?different(?:ly)?\b",
        r"or \1",
    ),
    *((cue, _SPAN, r"\1 \2 \5 \3 \4") for cue in ("from", "between")),
    *((" ".join(word), rf"\b{' '.join(word)}\b", word) for word in _LETTERS),
    ("of an inch", r"(?<=[0-9]/[0-9]) of an inch\b", " inch"),
    ("of an inch", r"(?<=[0-9]/1[06]) of an inch\b", " inch"),
    ("of an inch", r"\b(halves|quarters?|eighths?|sixteenths?) of an inch\b", r"\1 inch"),
    *(
        (cue, r"\bwithout (?:choking|strangling|restricting|robbing)(?: it| her| the engine)?\b", "")
        for cue in ("chok", "strangl", "restrict", "robb")
    ),
    ("level", r"\b(?:(?:down )?here )?at sea level\b", ""),
    *((cue, r"\ball the way (?:back|to the (?:back|rear))\b", "") for cue in ("way back", "way to")),
    (" an ", r"\bsize ([0-9]+) an\b", r"an-\1"),
    (
        "drain plug",
        r"^(?!.*\b(?:gear ?box(?:es)?|transmissions?|trans|axle|diff(?:erential)?|radiator|rad|transfer|tank|block"
        r"|cooler"
        r"|mower|hub"
        r"|final drive|pump|compressor|valve|military)\b)(.*?)(?<!oil )(?<!sump )(?<!pan )\bdrain plug\b",
        r"\1oil drain plug",
    ),
    ("stamped", _UNMARKED, ""),
    ("marked", _UNMARKED, ""),
    ("printed", _UNMARKED, ""),
    ("cast", _UNMARKED, ""),
    ("sh", r"\bsh(?:ud|oud|uld|ld)\b", "should"),
    ("=", r" ?= ?", " is "),
    ("or not", r"(?<=[a-z0-9]) or not$", ""),
    ("weigh", r"\b(?:and )?(?:the |my |this |that )?[a-z]+ weighs? (?:a|half a|about a) ton(?:ne)?\b", ""),
    (
        "at ",
        r"(?<=[0-9]) ?(mm|cm|m|in|inch(?:es)?|ft|feet|psi|bar|nm|n|lbs?|kg|amps?|a|watts?|w|rpm|deg|degrees|c|f|hp)"
        r" at (?:the )?(?:very )?most\b",
        r" \1",
    ),
    ("yes or no", r"\byes or no\b", ""),
    *(
        (
            cue,
            r"\b(?:till|until|before) (?:it|she|he|they|the (?:car|engine|truck|van|bike|thing))(?: just)?"
            r" (?:wo(?:n'?t|nt)|will not|can'?t|cannot|does(?:n'?t|nt)|fails to|refuses to|won't even)"
            r" (?:crank|start|fire|turn over|go)(?: (?:over|up|it|her))?\b",
            "until it is flat",
        )
        for cue in ("crank", "start", "fire", "turn over", " go")
    ),
    (
        "into",
        r"\b((?:pipe|line|tube|banjo|union)(?: (?:nuts?|bolts?|unions?))?)((?: be| go(?:es)?| going)?) (?:in )?into"
        r" (?:an? |the |my )?"
        r"(?:wheel cylinder|master(?: cylinder)?|cal?liper|slave(?: cylinder)?|brake hose|junction block)s?\b",
        r"\1\2",
    ),
    ("wet", r"\bwet(?: boiling point)? of (?:dot ?)?5\.1 (?:vs|versus|and|or) (?:dot ?)?5\b", "wet dot 5.1 vs dot 5"),
    (
        "water in it",
        r"\bafter (?:it'?s |it has |it )?(?:had )?(?:an? )?(?:few|couple of|some|[0-9]+|two"
        r"|three) years(?: of)? water in it",
        "and wet",
    ),
    ("pa", r"\bpa ?1[12] (?=nylon)", ""),
    ("lock nut", r"\block nuts?\b", "locknut"),
    ("dial", r"\bdial(?:l?ed)(?: in)?\b", "set"),
    ("drag", r",? ?\bdo i (?:have to |need to )?add (?:on )?(?:the |its )?drag(?: on)?\b", ""),
    (
        "drop",
        r"\b(0?\.[0-9]+|[1-3]) ?v(?:olts?)? drop,? (?:at |on )?(6|12|24) ?v(?:olts?)?\b",
        r"\2 volts \1 volts drop",
    ),
    (
        "drop",
        r"\b(6|12|24) ?v(?:olts?)? drop\b",
        r"\1 volt system voltage drop",
    ),  # of a system, and none that anybody allows
    ("drop", r"\bdrop(?: (?:at|on|in|from))? (6|12|24) ?v(?:olts?)?\b", r"drop \1 volt system"),
    *(
        (cue, rf"\b(?:an? )?(eighth|quarter|half|three eighths|three quarters?)(?: inch)? ({cue})", _pipe)
        for cue in ("npt", "bsp")
    ),
    (
        "npt",
        r"\b(?:torque|tighten(?:ing)?(?: torque)?|how tight)(?: (?:for|on|of|an?|is|to|do|i|the))* "
        r"([0-9]+/[0-9]+)(?: in(?:ch)?)? ?npt(?: (?:fitting|plug|adapt[eo]r)s?)?\b",
        r"torque of a taper pipe thread fitting \1 in",
    ),
    (
        "npt",
        r"^(?!.*\b(?:sender|sensor|switch|plug|valve|bleeder)\b)(.*?)"
        r"\b([0-9]+/[0-9]+)(?: in(?:ch)?)? ?npt(?: (?:fitting|plug|adapt[eo]r)s?)? (?:torque|how tight)\b",
        r"\1torque of a taper pipe thread fitting \2 in",
    ),
    ("impact", r"\bimpact (?=(?:gun|wrench|driver|socket)s?\b)", ""),  # a tool of the story
    ("piece", r"\b(two|2|three|3) piece\b", r"\1-piece"),  # a shaft of two pieces is no whole one
    ("lash", r"(?<!back)(?<!-)\blash\b", "backlash"),
    ("or not", r",? ?\b(?:is )?(?:that|it) (?:is )?(?:ok|okay|enough|safe)? ?or not\b", ""),
    (
        "or is",
        r",? ?\bor is (?:that|it) (?:an? )?(?:no[- ]?no|no|bad|silly|wrong|stupid|rubbish)(?: idea| thing)?$",
        "",
    ),
    ("-degree", r"(?<=[a-z0-9])-degrees?\b", " degree"),
    ("sloppy", r"\bnot (?:too |a |an |so )*sloppy(?: (?:one|fit))?", "close fit"),
    (
        "shield",
        r"\bif (?:i|we) (?:don'?t|do not) (?:put|fit|use|have|run)(?: on| in| up)? (?:an? |any )?shield",
        "no shield",
    ),
    (
        "more than",
        r"\b(?:so )?(?:that )?(?:i |we |it )?(?:don'?t|do not|doesn'?t|not to|won'?t) (?:want to )?(?:lose"
        r"|drop)(?: any)? more"
        r" than",
        "drop",
    ),
    ("50 50", r"\b50 50(?= (?:mix |of )*(?:coolant|antifreeze|anti-freeze|glycol|mix|water))", "50/50"),
    ("re us", r"\bre us(?=e|ing)", "reus"),
    ("thru", r"\bthru\b", "through"),
    (
        "through",
        r"\b((?:bolts?|studs?|screws?|pins?)(?: (?:to|that|which|will|can|just|should))*) (?:drops?|falls?|slides?"
        r"|slips?"
        r"|goes|go|fits?|pass(?:es)?|pokes?|pushes)"
        r"(?: (?:right|easily|freely|straight|nicely))? through(?: (?:it|easily|freely|nicely))?(?= |$)(?! the)",
        r"\1 clearance",
    ),
    (
        "no good",
        r"\b(is|are|will|would) (that|it|this|they|those)(?: be)? no good\b(?! (?:dry|with|in|at|on))",
        r"\1 \2 ok",
    ),
    ("wot", r"\bwot\b", "what"),
    *(
        (cue, rf"\b{cue} (?:right|on|accurate|true)(?= (?:with|on|at|for|when)\b)", "right")
        for cue in ("dead", "spot", "bang")
    ),
    ("summat", r"\bsummat\b", "something"),
    ("slathered", r"\bslathered (?:it|them|em|the (?:bolts|threads)) in\b", "with"),
    ("8.8s", r"\b8\.8s\b", "8.8"),
    ("tester", r"\btester (?:reads|says|shows)\b", "now"),
    ("us ", r"(?<=[0-9] )us (?=gals?\b|gallons?\b|quarts?\b|pints?\b)", ""),  # the gallon of every answer
    ("clocks", r"\b(?<=backlash )clocks\b", "is"),
    *(
        (f"{of} anti", rf"\b({of}) anti-?s(?:ie|ei)z(?:e|ing)?\b", r"\1 anti-seize")
        for of in ("copper", "nickel", "moly")
    ),
    (
        "hard",
        r"\bhow hard (?:do|should|can|must) (?:i|you|we) (?:pull|go|do|nip|turn|crank|wind)(?: (?:it|them|on it|up))*"
        r"(?: before (?:something|it|they) (?:gives?|goes|go|lets? go))?(?= |$)",
        "how tight",
    ),
    ("silicone", r"\bsilicone (?=(?:heater|coolant|rad(?:iator)?) hose (?:clip|clamp))", ""),
    ("hose", r"\b(clip|clamp)s? on (?:an? |the )?silicone (?=(?:heater|coolant|rad(?:iator)?) hose)", r"\1 on "),
)
