"""How bolts are told by the people who turn them -> what they would have typed: eight-eights, blue locker, kg-m."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_NUMBER = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty|oh|point)"
_CLASS = r"(?:[0-9]+\.[89]|(?:eight point|eight) eight|(?:ten point|ten|twelve point|twelve) nine|grade \w+|gr ?[0-9])"

_OF_GRADE = r"(?:a[24]-[78]0|8\.8|10\.9|12\.9|grade [258]|gr ?[258])"


def _nines(match: re.Match[str]) -> str:
    """``ten-nines`` are of the class 10.9."""
    return f"{10 if match[1] == 'ten' else 12}.9"


_PITCHES = {
    "one point two five": "1.25",
    "one and a quarter": "1.25",
    "one point seven five": "1.75",
    "one and three quarters": "1.75",
    "one and three quarter": "1.75",
    "one point five": "1.5",
    "one and a half": "1.5",
    "nought point eight": "0.8",
    "zero point eight": "0.8",
    "point eight": "0.8",
}
_SAID_PITCH = rf"(?:[0-3]?\.[0-9]{{1,2}}|[1-3]|{'|'.join(_PITCHES)})"
_OF_A_BOLT = r"bolts?|studs?|(?:cap ?)?screws?|nuts?"
_TIGHT = r"torque|tight|tighten|newton met(?:re|er)s?|nm|(?:foot|ft) ?(?:pounds?|lbs?)"


def _apart(match: re.Match[str]) -> str:
    """``m12 10.9 zinc plated, 1.75 pitch`` is M12x1.75."""
    before, size, between, pitch, other = match.groups()
    thread = f"m{size.strip('m ')}x"
    more = f" or {thread}{_PITCHES.get(other, other)}" if other.strip() not in ("", "pitch") else ""
    return f"{before}{thread}{_PITCHES.get(pitch, pitch)}{more}{between}"


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (
            cue,
            r"^(?:so |ok |hey )*(?:what(?:'s|s| is| size is)?|how (?:big|many (?:mm|inches)) is|convert)? ?(?:an? )?"
            r"(m ?[0-9]+(?:x[0-9.]+)?|#[0-9]+(?:-[0-9]+)?|[0-9]+/[0-9]+-[0-9]+)(?: (?:bolt|thread|screw|stud))?"
            r" (?:in|to) (inch(?:es)?|mm|millimet(?:re|er)s?|metric|imperial)\b *$",
            lambda m: f"{m[1]} major diameter in {'mm' if m[2][0] == 'm' else 'inches'}",
        )
        for cue in (f"{one} {unit}" for one in ("in", "to") for unit in ("inch", "mm", "metric", "imperial", "millim"))
    ),
    (" - ", rf" - (?=[a-z])(?!{_NUMBER}\b)", " "),
    *(
        (  # M10, one and a half: its pitch
            cue,
            rf"\b(m ?(?:5|6|8|1[0-9]|2[0-4]|[67]))((?: (?:bolts?|nuts?|studs?|screws?|holes?"
            rf"|threads?))?)(?: (?:by|x|at|with|is|its|an?))*"
            rf" {said}(?: (?:mm|mil))?( pitch)?\b(?! ?(?:inch|in|mm|mil|turns?|diameters?|dia|times|long|deep"
            rf"|thick|d|of)\b)",
            rf"\1x{pitch}\2",
        )
        for cue, said, pitch in (
            ("and a half", "one and a half", "1.5"),
            ("and half", "one and half", "1.5"),
            ("and a quarter", "one and a quarter", "1.25"),
            ("and three quarter", "one and three quarters?", "1.75"),
            ("two and a half", "two and a half", "2.5"),
        )
    ),
    *(
        (" pitch", rf"\bone and an? {part}(?: mm| mil)? pitch\b", rf"{pitch} mm pitch")
        for part, pitch in (("half", "1.5"), ("quarter", "1.25"))
    ),
    (
        " pitch",
        r"\b(m ?[0-9]+) (?:by |x )?((?:one|two|three|zero|nought)(?: point (?:two five|seven five|five|zero|oh))?"
        r"|(?:point|zero point|nought point) (?:seven five|seven|eight|five)|[0-3](?:\.[0-9]{1,2})?) pitch\b",
        r"\1 by \2",
    ),
    (
        "tapped ",
        r"\b(m ?[0-9]{1,2})( (?:holes?|bores?|nuts?|boss(?:es)?))? (?:is |are |was )?tapped"
        r"(?: (?:at|to|out to|with an?))* ([0-3]?\.[0-9]{1,2})\b(?! ?(?:mm|in|inch)? (?:deep|wall|thick))",
        lambda m: f"{m[2] or ''} {m[1]}x{m[3]}",
    ),
    ("hot side", r"\b((?:exhaust|headers?|manifold|turbo)\b.*?) +(?:on )?(?:the )?hot side\b", r"\1"),
    *(  # a second question, whatever the first was
        (
            cue,
            rf"\b({_TIGHT})\b(.*?) +(?:and |then |also |plus )*(?:when (?:do i |to |should i |must i )?{cue}(?: (?:it"
            rf"|them))?|{cue}(?: (?:it|them))? when)(?= *$)",
            rf"\1\2 and when do i {cue}",
        )
        for cue in ("retorque", "re-torque", "retighten", "re-tighten")
    ),
    (
        "on the wall",
        r"\b(?:the |my |our |an? )?(?:chart|poster|table|sheet|card)(?: (?:that's|thats|which is))? on the wall"
        r" (?:says|said|has|shows|gives|reads|reckons)(?: it's| its)?\b(?= (?:about |around )?(?:[0-9]|an? hundred"
        r"|[a-z]+(?:ty|teen|hundred)\b))",
        "",
    ),
    ("half an inch", r"\bhalf an inch\b", "1/2 inch"),
    ("eight-eight", r"\beight-eights?\b", "8.8"),
    ("eights", r"\beight(?: point | )eights\b", "8.8"),
    *((f"{one}s", rf"\b{one.replace('.', '[.]')}s\b", one) for one in ("10.9", "12.9")),
    ("-nine", r"\b(ten|twelve)-nines?\b", _nines),
    ("nines", r"\b(ten|twelve)(?: point | )nines\b", _nines),
    *((f"m{n}s", rf"\bm{n}s\b", f"m{n}") for n in (5, 6, 8, 10, 12, 14, 16, 20)),
    ("locker", r"\b(?:(blue|red) )?(?<!thread)(?<!thread )locker(?= (?:on|in|to) )", r"\1 threadlocker"),
    ("locker", r"\b(blue|red) locker\b", r"\1 threadlocker"),
    *(
        (cue, r"\b(?:the )?(?:opposite|other) way (?:round|around)(?: (?:to|from) (?:the )?(?:usual|normal))\b", "")
        for cue in ("way round", "way around")
    ),
    (
        "wet or dry",
        r"\b(?:and |but )?(?:it |that )?(?:does not|doesn't|doesnt|never) (?:say|state|mention)(?:s|ed)?"
        r"(?: (?:if|whether)(?: it is| it's)?)? wet or dry\b",
        "",
    ),
    *(
        (
            cue,
            r"^(?=.*\b(?:torque\w*|tight\w*|bolts?|nuts?|studs?|screws?|nm|grade|class|m[0-9]+|[0-9]+/[0-9]+-[0-9]+)\b)"
            r"(?!.*\b(?:fluid|boil|dot)\b)"
            r"(.*?)\b(?:wet or dry|dry or wet)\b",
            r"\1dry or oiled",
        )
        for cue in ("wet or dry", "dry or wet")
    ),
    (
        "still ",
        r"\b(?:do|should|can|must) (?:i|we) still (?:pull|use|go to|do|run|give it|torque to) (?:the |it to the )?"
        r"(?:full|whole|same) (?:whack|amount|figure|torque|number|lot"
        r"|(?:one )?(?:ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred)(?: five)?|[0-9]+)\b",
        "",
    ),
    (
        "no room",
        r"\b(?:(?:because|cause|as|since) )?(?:there's|there is|theres|i have|i've|i've got|got) no room"
        r"(?: (?:to (?:swing|turn|move|pull)|in there))?\b(?! (?:for|to))",
        "",
    ),
    (
        "no ",
        r"\b(?:(?:i've|i have|we've|we have|have|got|i've got) )?no (?:letter|number|metric|inch"
        r"|fractional) (?:drills?|bits?)"
        r"(?: (?:here|left|to hand|in the box))?(?: so\b)?",
        "",
    ),
    ("metric ", r"\bmetric (bit|drill)(?: bit| size)?(?= (?:for|will|would|to|do|ahead|before|can)\b|$)", r"\1 in mm"),
    (
        "not the",
        r"\bnot the (?:coarse|fine) (?:one|thread|pitch)\b(?=.*\bpitch\b)",
        "",
    ),
    (
        " pitch",
        r"\b(m ?[0-9]+) (holes?|bolts?|nuts?|studs?|threads?) +(?:(?:the|with|of|an?|in) +)*"
        r"((?:one|two|[0-9])(?: point (?:two five|seven five|five|two|zero|oh)|\.[0-9]+)?) pitch\b",
        r"\1 by \3 \2",
    ),
    (
        " pitch",
        r"\b(m ?[0-9]+)\b(?! ?(?:x|by|-) ?[0-9])(?! (?:holes?"
        r"|bolts?) )((?: [a-z][a-z-]*){1,5}?) (?:the )?([0-3]\.[0-9]{1,2})"
        r" pitch\b",
        r"\1x\3\2",
    ),
    (
        "get in",
        r"\b(?:i )?(?:can't|cant|cannot) get in (?:there )?(?:with|for) (?:an? |the |my )?(?:pitch |thread )?gauge\b",
        "",
    ),
    *(
        (f"{kind} ", rf"\b{kind} (?:thread )?(?:on|for|of) (?:an? |the |my )?(m ?[0-9]+)\b", rf"\1 {kind}")
        for kind in ("fine", "coarse")
    ),
    ("not npt", r"\bnot npt\b(?=.*\b(?:british|bsp))", ""),
    (
        "british ",
        r"\bbritish (?:standard )?(?:pipe )?(taper|parallel|straight)(?:ed)?(?: pipe)?(?: (?:one|thread|tap|fitting"
        r"|kind))?\b"
        r"(?= |$)",
        r"bsp \1",
    ),
    (
        "no torque wrench",
        r"\b(?:(?:i've|ive|i have|with|got|have) )*no torque wrench(?: (?:handy|here|with me|to hand|available))?\b",
        "",
    ),
    *(
        (cue, rf"\b(?:clutch )?{cue} (?:on)?to (?:the |my )?flywheel\b(?: bolts?)?", "pressure plate bolts")
        for cue in ("pressure plate", "clutch cover")
    ),
    ("nylo", r"\bnylo(?:c|ck|k)s?(?: (?:lock ?)?nuts?)?(?= |$)", "nylon locknut"),
    ("how hard", r"\bhow hard$", "how tight"),
    *(
        (
            f" m{n}",
            rf"(?<![0-9./x-])\b(?:two|three|four|five|six|eight|ten|twelve|[2-9]|1[02]) (?=m{n}\b)"
            r"(?!.*\b(?:total|together|altogether|combined|pair|between|in all)\b)",
            "",
        )
        for n in (5, 6, 8, 10, 12, 14, 16, 20)
    ),
    *(
        (
            f"{kind} nut",
            rf"(?<!brake )(?<!fuel )(?<!flare )\b{kind} nuts?\b(?=.*\bbrake (?:pipe|line|tube))",
            "brake line nuts",
        )
        for kind in ("line", "tube", "pipe")
    ),
    (
        "clamp",
        r"\bclamp(?:ing)?(?: load| force)? (?:of|on|for|from|in) (?=.*\b(?:at|to|with) [0-9.]+ ?(?:nm|n m|newton|ft"
        r"|foot|lb|in))",
        "what clamp ",
    ),
    *(
        (
            cue,
            rf"(?<!and )(?<!but )(?<!about )\b(?:(?:can i |could i |should i )?(?:use|put|fit) )?(?:an? "
            rf"|the )?({_OF_GRADE})"
            rf"(?: (?:bolts?|screws?"
            rf"|ones?))?"
            rf"(?: in)? {cue} (?:an? |the |my )?({_OF_GRADE})(?: (?:bolts?|screws?|ones?))?(?= |$)",
            r"\1 vs \2",
        )
        for cue in ("instead of", "in place of", "rather than", "to replace")
    ),
    *(
        (
            cue,
            rf"\b(?:is it true (?:that )?)?(?:is |are )?(?:an? )?({_OF_GRADE})(?: bolts?)? (?:is |are )?(?:really "
            rf"|any )?(?:the )?"
            rf"{cue}(?: to)? (?:an? )?({_OF_GRADE})(?= |$)",
            r"\1 vs \2",
        )
        for cue in (
            "same as",
            "equal",
            "equivalent",
            "as strong as",
            "stronger than",
            "better than",
            "weaker than",
            "beats",
        )
    ),
    (
        "brittle",
        r"(?:'|\bbe|\b)cause (?:(?:the|it|its|it's|an?|is) )*(?:(?:grade )?(?:[258]|five|eight|8\.8|10\.9"
        r"|12\.9) )?(?:is )?"
        r"(?:too |more |so )?brittle\b",
        "",
    ),
    *(
        (
            cue,
            rf"\b(?:can i |could i |should i )?(?:swap(?:ping)?|replac(?:e|ing)) (?:an? |the |my )?({_OF_GRADE})"
            rf"(?: (?:bolts?|screws?|ones?))? (?:for|with) (?:an? |the )?({_OF_GRADE})(?: (?:bolts?|screws?"
            rf"|ones?))?(?= |$)",
            r"\1 vs \2",
        )
        for cue in ("swap", "replac")
    ),
    *(
        (cue, rf"\b{cue}(?:two|both|the two|2) (?=(?:steel )?(?:flanges|plates|brackets|tabs)\b)", cue)
        for cue in ("through ", "between ")
    ),
    *(
        (
            f"{count} ",
            rf"(?<![0-9./x-])\b{count} (?=[0-9]+/[0-9]+(?:-[0-9]{{2}}| (?:unc|unf|coarse|fine))\b)"
            r"(?!.*\b(?:total|together|altogether|combined|pair|between|in all)\b)",
            "",
        )
        for count in ("two", "three", "four", "five", "six", "eight", "ten", "twelve")
    ),
    ("unmarked", r"\bunmarked (?:heads? )?(bolts?|screws?|studs?)(?: heads?)?\b", r"no marks \1"),
    (
        "unmarked",
        r"\bunmarked(?= (?:[0-9/]+(?:-[0-9]+)? |m[0-9]+ |inch |hex |steel )*(?:bolts?|screws?|studs?|heads?)\b)",
        "no marks",
    ),
    *(  # the pitch, or one of two, told anywhere behind the size
        (
            " pitch",
            rf"^((?:(?!\bm ?[0-9]|[0-9]-[0-9]).)*?)(?<![./0-9x-])\b(m ?[0-9]{{1,2}}|[0-9]{{1,2}} ?mm"
            rf"(?=(?: +(?!across|od)[a-z0-9.]+){{0,4}} +(?:{_OF_A_BOLT})\b))\b(?! ?(?:x|by|-) ?[0-9]|\.)"
            r"((?:(?!\bm ?[0-9]).)*?)"
            rf" +(?:(?:the|with|its|an?|and|in|of|at|is|are|it's) +)*(?<!or )(?<!not )(?<!vs ){said}(?= |$)",
            _apart,
        )
        for said in (
            rf"({_SAID_PITCH}) or ({_SAID_PITCH})(?: ?mm)? pitch",
            rf"({_SAID_PITCH})(?: ?mm)?( pitch)(?! (?:or|vs|versus|gauge)\b)",
            rf"(?:thread )?pitch(?: (?:of|is))? ({_SAID_PITCH})()(?! ?(?:or|x|by)\b)",
        )
    ),
    (
        " pitch",
        rf"(?<![0-9./x-])\b({_SAID_PITCH})(?: ?mm)? pitch (m ?[0-9]{{1,2}})\b(?! ?(?:x|by|-) ?[0-9]|\.)",
        lambda m: f"{m[2]}x{_PITCHES.get(m[1], m[1])}",
    ),
    (  # of a bolt in inches so many threads to the inch
        " pitch",
        r"^(?!.*\b(?:splin\w*|teeth|tooth|gears?)\b)((?:(?!\bm ?[0-9]|[0-9]-[0-9]).)*?)(?<![./0-9x-])\b"
        r"([1-9]/(?:4|8|16))(?![0-9/-])((?: (?:in|inch))?(?: +(?!x\b|by\b)[a-z][a-z-]*){0,4})"
        r" (1[1-46-8]|2[048]|32) pitch\b",
        r"\1\2-\4\3",
    ),
    ("pommy", r"\bpommy\b", "british"),
    ("line", r"\bso (?:that )?(?:it|they|everything|things)(?: all)? lines? up\b", ""),
    ("opening", r"\bopening for (?=(?:an? |the )?(?:m ?[0-9]|[0-9]+/[0-9]))", "hole for "),
    ("set", rf"\b({_CLASS}) ?set ?screws?\b", r"\1 bolts"),
)
