"""The size of a bolt and its series, told apart from one another or in turn -> as one would have typed them."""

from __future__ import annotations

from gaugeblock.plain.said.bolted import COUNTED, FRACTION, SAID_NUMBER

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

# Threads an inch, said in words; the longest first.
_TPI_SAID = {
    "twenty eight": "28",
    "twenty four": "24",
    "thirty two": "32",
    "twenty": "20",
    "eighteen": "18",
    "sixteen": "16",
    "fourteen": "14",
    "thirteen": "13",
    "twelve": "12",
    "eleven": "11",
}

_THREAD = r"(?: (?:one|thread(?:ed)?|pitch|ones|series))?"

# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (  # three eighths ... twenty four threads an inch, of a bolt that is tightened or a hole that is drilled
            cue,
            rf"^(?=.*\b(?:torques?|tight\w*|foot pounds?|ft ?lbs?|lb ?ft|nm|dry|oiled|drill|tap|tapping|clearance)\b)"
            rf"(?!.*\b(?:measures?|mikes?|mics?|across|caliper|calipers|what is it|identify)\b)"
            rf"(.*?(?<![\w./-])(?:{FRACTION}|{COUNTED}))(?! ?(?:-|un[cf]|[0-9]|coarse|fine|npt|bsp|m[0-9]))"
            rf"((?: +(?!(?:and|or|to|by|half|an?)\b)(?:(?:with|its|it's|the|has|is) )*[a-z][a-z'-]*){{0,9}}?) +"
            rf"({'|'.join(_TPI_SAID)}|[1-4][0-9]) ?(?:tpi|threads? (?:an|per|to an|to the) inch)\b",
            lambda m: f"{m[1].removesuffix(' inch').removesuffix(' in')}-{_TPI_SAID.get(m[3], m[3])}{m[2]}",
        )
        for cue in ("tpi", "an inch", "per inch", "to the inch")
    ),
    *(  # not the coarse one
        (f"{denied}{one}", rf"{before}\b{denied}{one}{_THREAD}\b{behind}", shown)
        for one, other in (("coarse", "fine"), ("fine", "coarse"))
        for before, behind, shown in (
            ("", rf"  ?(?:but )?(?:the )?{other}\b", other),
            (rf"^(?=.*\b{other}\b)(.*?)", "", r"\1"),
            ("", r"(?!.*\bpitch\b)", other),
        )
        for denied in ("not the ", "not ", "not a ")
    ),
    *(  # fine 5/8-18, coarse 3/8
        (
            f"{kind} ",
            rf"(?<!and )(?<!or )\b{kind}{_THREAD}(?: \x02)? +((?:{FRACTION}|{COUNTED})(?: inch)?"
            rf"(?:[ -](?:[1-4][0-9]|{'|'.join(_TPI_SAID)}))?)(?! ?(?:fine|coarse|un[cf]|mm|inch|in|deg|degrees|tube"
            rf"|od|wall|thick|x|by|-)\b)(?![.0-9x/-])(?! (?:[0-9]|{'|'.join(_TPI_SAID)}))",
            rf"\1 {kind}",
        )
        for kind in ("fine", "coarse")
    ),
    *(  # fine m10
        (
            f"{kind} ",
            rf"(?<!and )(?<!or )\b{kind}(?: thread(?:ed)?| pitch)? (m ?[0-9]{{1,2}})\b(?! ?(?:x|by|fine|coarse"
            rf"|mm)\b)(?![.0-9x/])",
            rf"\1 {kind}",
        )
        for kind in ("fine", "coarse")
    ),
    (  # where one was found says nothing of it
        "found ",
        r"\b(?:i |i've |we )?found (?:an? |this |some |these )?(?:(?:old|odd|loose|nice|spare) )?(bolts?|studs?"
        r"|capscrews?) "
        r"(?:in|on|at|under|from) (?:the |my |an? )?(?:bottom of (?:the |my )?)?(?:box|bin|drawer|tin|bucket|jar"
        r"|parts box|shed"
        r"|floor|bench|toolbox|scrap|scrap bin)\b",
        r"\1",
    ),
    *(  # 7/16 in cast iron is no length
        (
            cue,
            rf"\b((?:for|on|of) (?:an? |the |my )?(?:{FRACTION}|{COUNTED.removesuffix('(?: inch| in)?')})"
            r"(?: inch)?(?: (?:bolts?|studs?|screws?|thread))?) in (?=(?:cast iron|iron|ally|ali|alloy"
            r"|alumini?um|steel"
            r"|mild steel|brass)\b)",
            r"\1 into ",
        )
        for cue in (
            " in iron",
            " in cast",
            " in al",
            " in mild",
            " in steel",
            " in brass",
        )
    ),
    (  # how far a stud goes in
        "stick",
        rf"\b(studs?|bolts?|screws?) sticks? ({SAID_NUMBER} ?(?:mm|mil|inch)) (?:in|into) (?=(?:the |an? )?(?:cast"
        rf" iron|iron"
        r"|ally|ali|alloy|alumini?um|steel|mild steel|brass)\b)",
        r"\1 \2 of thread in ",
    ),
    *(  # the series, told behind the grade
        (
            f"{series} thread",
            rf"(?<![\w./-])({COUNTED}|{FRACTION}(?: in\w*)?|m ?[0-9]+)(?! ?(?:un[cf]|coarse|fine|x|by|-|[0-9.]))"
            rf"((?: +(?!and |or |to |not |inch |in )[a-z0-9.]+){{1,4}}?) +{series} thread(?:ed)?(?= |$)",
            rf"\1 {series}\2",
        )
        for series in ("fine", "coarse")
    ),
    *(  # a torque, as it is said short
        (
            " newtons",
            rf"^(?=.*(?:\b(?:bolts?|studs?|nuts?|torque\w*|tight\w*|grade)\b|\bm ?[0-9]|[0-9]\.[89]))(?!.*\b(?:pedal"
            rf"|lever|foot|force"
            rf"|pull|clamp\w*|squeeze|hand ?brake|brakes?)\b)(.*?(?:[0-9]|\b{SAID_NUMBER})) newtons(?! ?(?:met|of))",
            r"\1 nm",
        )
        for _ in "1"
    ),
    (  # the bolt head, is the nut the same
        "same",
        r"\b(bolt|screw|stud|head)s?  ?(?:and )?(?:is|are) (?:the |its |their )?nuts? (?:of )?(?:the )?same"
        r"(?: size)?\b",
        r"\1 and nut",
    ),
    ("wheel speed", r"\bwheel speed sensors?\b", "speed sensor"),
)
