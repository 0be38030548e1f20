"""Turns of speech -> what a person would have typed, before a line is parted into words."""

from __future__ import annotations

import re

from gaugeblock.plain.said.apart import SAID_APART
from gaugeblock.plain.said.beside import SAID_BESIDE
from gaugeblock.plain.said.round import SAID_ROUND
from gaugeblock.plain.seldom import FIRST, LAST, said, sayings_of, seldom_said

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.plain.seldom import Sayings

# What stands where somebody takes back what he said.
CORRECTED = "no-wait"
_PARTS = {"half": 2, "quarter": 4, "quarters": 4, "eighth": 8, "eighths": 8}
_DIGITS = {"oh": "0", "zero": "0", "one": "1", "three": "3", "five": "5", "six": "6", "eight": "8", "nine": "9"}


def _inch_and(match: re.Match[str]) -> str:
    """``an inch and three quarters`` is 1 3/4 in."""
    return f"1 {3 if match[1] else 1}/{_PARTS[match[2]]} in"


def _thousandths(match: re.Match[str]) -> str:
    """``oh nine five`` is .095, as a wall is said."""
    return f".0{''.join(_DIGITS[w] for w in match.groups())}"


def _dash(match: re.Match[str]) -> str:
    """``dash six`` is -6, as a tube is sized by sixteenths."""
    return f"-{_CLASSES.get(match[1], match[1])}"


def _by_part(match: re.Match[str]) -> str:
    """``by eighth`` is by 1/8."""
    return f"by 1/{_PARTS.get(match[1], 16)}"


def _class(match: re.Match[str]) -> str:
    """``ten nine`` is the class 10.9 of a bolt."""
    return f"{_CLASSES[match[1]]}.{_CLASSES[match[2]]}"


def _hundredths(match: re.Match[str]) -> str:
    """``oh ninety five`` is .095, as a wall is said."""
    return f".0{_TENS[match[1]]}{_DIGITS_SAID.get(match[2] or '', '0')}"


_TENS = {
    w: str(n) for n, w in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)
}
_DIGITS_SAID = {"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "eight": "8"}


def _an(match: re.Match[str]) -> str:
    """``an-6`` is a flare of 37 degrees on a tube of six sixteenths."""
    from fractions import Fraction

    return f"{match[1]}an flare {Fraction(int(match[2] or match[3]), 16)} in"


def _over_hundred(match: re.Match[str]) -> str:
    """``one twenty wall`` is .120."""
    return f".1{_TENS[match[1]]}{_DIGITS_SAID.get(match[2] or '', '0')}"


_CARS = (
    r"(?:cast|cars?\b|trucks?\b|manifold|engine|block|gearbox|axle|frame|chassis|pick-?ups?\b|vans?\b|wagons?\b"
    r"|sedans?\b|coupes?\b|six\b|beast|heap|girl|lady|thing|project|can\b|junk|ride\b|hot"
    r" ?rods?\b|school|man\b|buddy|mate\b|v-?[68]\b"
    r"|brackets?\b|body\b|shell\b|farm\b|ute\b|roadster|convertible|sports car|bus\b|motor\b|lump)"
)
# The series of a thread, said apart from its size.
_SERIES = (
    r"^(.*?)(\bm ?[0-9]+\b|\b[0-9]+ ?mm\b|\b[0-9]/[0-9]+\b"
    r"|\b(?:half|quarter|three quarters?|(?:three|five|seven) eighths?|(?:five|seven|nine) sixteenths?)(?: inch)?\b)"
    r"(?! ?(?:x|-|by) ?[0-9]|(?: in\w*| thread| inch)? (?:fine|coarse|un[cf]))"
    r"((?:(?! m ?[0-9]| (?:vs|as|than|and|or) (?:an? )?(?:[0-9]+/[0-9]|half|three|five|seven)).)*?) (?<!is )(?<!be )"
    r"(?<!are )(?<!it )(?<!'s )(?<!looks )(?<!seems )(?<!feels )(?<!was )(?<!were )(coarse|fine)"
    r"(?: (?:thread(?:ed)?|pitch))?(?= *$| bolt| nut| stud| screw)"
)
_OF_SEVERAL = [f"{n}{end}" for n in range(10) for end in ("s", "'s")]
_CLASSES = {"four": "4", "six": "6", "eight": "8", "ten": "10", "twelve": "12", "nine": "9"}
# "14 thou and i want 8": the second has the unit of the first.
_SAME_THOU = (
    r"\b([0-9]+ ?thou(?:sandths?)?\b.*?)\b((?:want|wants|wanted|need|needs|should be|spec is|down to|get)(?: it"
    r"| to be| at| down to)*)"
    r" ([0-9]{1,2})(?= |$)(?! ?(?:thou|in|inch|mm|deg|ft|lb|nm|x|by|/|:|to [0-9]|- ?[0-9]))"
)
# A piece that a line must have, for no pattern is made in vain; the pattern; what is written for it. In this order.
_SAYINGS: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *((" ".join(unit), rf"\b{' '.join(unit)}\b", unit) for unit in ("psi", "ksi", "rpm", "mph", "kph", "awg", "npt")),
    (
        "break ",
        r"\bbreak (?=(?:calipers?|pads?|lines?|pipes?|hoses?|fluid|pedals?|dis[ck]s?|drums?|shoes?|cylinders?|rotors?"
        r"|boosters?|servo|master|bleeders?|tubes?)\b)",
        "brake ",
    ),
    *(
        (cue, r"\b(?:four|4|all|two|2|front|rear)[- ]?wheel[- ]?drive\b", "truck")
        for cue in ("wheel drive", "wheel-drive", "wheeldrive")
    ),
    (
        "lead",
        r"\b(?:positive|negative|live|earth|battery|jump|starter|supply|feed) leads?\b(?! (?:time|acid))",
        "cable",
    ),
    *SAID_ROUND,
    ("life of me", r"\bfor the life of me\b", ""),
    (
        " times",
        r"\b((?:bled|tried|asked|told|read|looked|checked|tightened|re-?tightened|snapped|broke(?:n)?|failed|blown|blew"
        r"|cracked|done|did|had|fixed|replaced|changed|adjusted|measured|set|stripped|shimmed|been|rebuilt|leaked)"
        r"(?: (?:it|them|this|that|one|the [a-z]+))?) (?:about |some |like )?"
        r"(?:two|three|four|five|six|ten|a dozen|a hundred|[2-9]) times\b(?! (?:the |as |a |its? |that|dia\w*|wider"
        r"|faster))",
        r"\1",
    ),
    (
        "nineteen ",
        r"\bnineteen (?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)"
        rf"(?:[ -](?:one|two|three|four|five|six|seven|eight|nine))? (?={_CARS})",
        "",
    ),
    ("19", rf"(?<![0-9./x-])\b19[2-9][0-9] (?={_CARS})", ""),
    (
        "ring and pinion",
        r"^(?=.*\bpinion (?:bearings? )?preload)(.*?)\b(?:an? |the |my |this )?(?:new )?ring and pinion\b",
        r"\1the axle",
    ),
    (" to me", r"\b(?:which |that |it )?(?:feels|seems|looks) (?:a bit |too )?(?:tight|loose) to me\b", ""),
    ("third member", r"\bthird member\b", "axle"),
    ("saw", r"\bhole ?saws?\b", "saw"),
    *(
        (cue, r"\bon (?:hot|cold|warm|wet|rainy) (?:days?|nights?|mornings?)\b", "")
        for cue in (" day", " night", " morning")
    ),
    (" loose", r"\b(?:came|come|comes|coming|worked|works|shook|rattled|keeps coming) loose\b(?: again)?", ""),
    (
        "no ",
        r"\b(?:with )?no (?:head )?(?:marks?|markings)(?: (?:on|at) (?:the |its |their )?heads?)?(?: at all)?(?= |$)",
        "no marks",
    ),
    *(
        (
            cue,
            r"\b(?:went and )?stripped (?:out )?(?:an? |the |my |his |one )?(?=.*\b(?:insert|coil)s?\b)",
            "",
        )
        for cue in ("stripped",)
    ),
    ("treater", r"\bheat[- ]treaters?\b", "shop"),
    ("strip", r"\b(?:at|down|on|for) the (?:drag[- ]?)?strip\b", "at the track"),
    ("strip", r"\b(?:drag[- ]?)?strip (?=(?:car|truck|motor|engine)s?\b)", ""),
    *(
        (
            cue,
            r"\b(?:coming|due|leaving|leaves|back|picking (?:it|her|him) up|collecting|shuts?|closes?|knocking off)"
            r" (?:at|by|before|around|about) (?:one|two|three|four|five|six|seven|eight|nine|ten|[1-9]|1[0-2])\b"
            r"(?= (?:so|and|but|what|how|which|where|can|do|does)\b|$)",
            "",
        )
        for cue in (" at ", " by ", " before ", " around ", " about ")
    ),
    ("w/o", r"\bw/o\b", "without"),
    ("-seat", r"\b(gasket|taper|tapered|flat|conical)-seat", r"\1 seat"),
    ("slick", r"\bslicks?\b", "tyre"),
    ("cab", r"\b(?:double|twin|crew|single)[ -]cab\b", "pickup"),
    ("the pair", r"\b(?:for|between) the pair(?: of them)?\b", "in total"),
    ("old ", rf"\b(?:rusty )?old (?:diesel|petrol) (?={_CARS})", ""),
    (" or so", r"\bor so\b", ""),
    ("fitting ", r"^(?:i'm |im |i am |we're |just )?fitting (?=an? |the |my |our |new |some |[0-9])", ""),
    ("tail", r"\btail ?shaft", "driveshaft"),
    (" no ", r"\b(taper(?:ed)? seat)(?: with)? no (?:washer|gasket|crush washer)\b", r"\1"),
    *(
        (
            cue,
            r"\b(?:building|making|fabbing|fabricating|doing|welding up) an?"
            r" (?:chassis|frame|roll ?cage|cage|buggy)\b(?: and\b)?",
            "",
        )
        for cue in ("chassis", "frame", "cage", "buggy")
    ),
    ("towbar", r"\btowbar\b", "tow bar"),
    (
        "tow bar",
        r"\b(?:(?:bolting|mounting|putting|fitting)(?: up)? )?(?:an? |the |my )?tow bar\b(?! bolt)(?: on| up)?"
        r"(?=.*\bbolts?\b)",
        "tow bar bolt",
    ),
    (" or thereabouts", r"\bor thereabouts\b", ""),
    ("the crank", r"\b(?:at|on|off) the crank\b(?! (?:bolt|pulley|nut|damper|snout))", ""),
    ("flywheel", r"\bat the flywheel\b(?! bolt)", ""),
    ("drawn", r"\bdrawn(?: back)? (?=(?:at|to) )", "tempered "),
    ("drew", r"\bdrew (?:it |them )?(?:back )?(?=(?:at|to) )", "tempered "),
    ("one-piece", r"\bone-piece\b", "one piece"),
    ("thou", _SAME_THOU, r"\1 \2 \3 thou"),
    ("oxidi", r"\boxidi[sz]ed\b", "oxidised"),
    *((cue, r"\b(lit(?:re|er)s?) an hour\b", "litres per hour") for cue in ("litre", "liter")),
    ("kilogram", r"\bkilogram[ -]?(?=centi)", "kg"),
    ("kg", r"\bkg[- ]?(?:centimet(?:re|er)s?|cms?)\b", "kg-cm"),
    ("w/", r"\bw/ ?(?=[a-z0-9])", "with "),
    ("w ", r"\bw (?=oil|lube|greas|anti|moly|wax|paste|insert|lock|water|the |an? )", "with "),
    ("inch and a", r"(?<![0-9/] )\binch and an? (half|quarter|eighth|sixteenth)\b", r"1 and a \1 inch"),
    *((cue, r"\b(grade|gr|class) ?([0-9]{1,2}(?:\.[0-9])?)'?s\b", r"\1 \2") for cue in _OF_SEVERAL),
    (" / ", r"(?<=[a-z])/(?=[a-z])(?<!\bw/)", " / "),
    ("millimet", r"millimet(?:re|er)s?\b", "mm"),
    ("n.m", r"\bn\.m\b", "nm"),
    ("part num", r"\bpart numbers?\b", "part-number"),
    ("n m", r"\bn m\b", "nm"),
    ("mild ", r"\bmild (?=tub(?:e|es|ing)\b|sheet|plate)", "mild steel "),
    ("shaft", r"\bd[ -]shaft", "driveshaft"),
    ("by one", r"\b(m ?(?:[0-9]+|six|eight|ten|twelve|fourteen)) by one\b(?! point)", r"\1 by 1"),
    ("pitch", r"\b(m ?[0-9]+(?: ?x ?| by | )[0-9](?:\.[0-9]+)?) ?(?:mm )?pitch\b", r"\1"),
    ("18", r"\b(?:stainless (?:steel )?)?18[-/]8(?: stainless)?(?: steel)?(?= |$)", "stainless"),
    (
        "ifference in",
        r"^.*\bdifference in (\w+) between (?:an? |the )?(.+?) and (?:an? |the )?(.+)$",
        r"\1 \2 vs \1 \3",
    ),
    ("ifference", r"^.*\bdifference between (?:an? |the )?(.+?) and (?:an? |the )?(.+)$", r"\1 vs \2"),
    ("alum", r"\balu(?:mnium|minuim|mnum|minim|munim)\b", "aluminum"),
    ("one thirty", r"\bfour one thirty\b", "4130"),
    ("one forty", r"\bfour one forty\b", "4140"),
    ("three forty", r"\bfour three forty\b", "4340"),
    ("u joint", r"\bu joint", "u-joint"),
    ("cross member", r"\bcross member", "crossmember"),
    ("dash ", r"\bdash (four|six|eight|ten|twelve|[0-9]+)\b", _dash),
    (" by ", r"\bby (?:an? )?(eighth|quarter|half|sixteenth)\b", _by_part),
    ("galvanised", r"\bgalvanised\b", "galvanized"),
    ("i mean", r"^(?:[a-z]+ ){1,3}(?:no|sorry|wait)[, ]+i mean(?:t)?\b", ""),
    ("old ", rf"\b(?:old|rusty old) (?={_CARS})", ""),
    (" to it", r"\bor (?:close|near|next) to it\b", ""),
    ("steel in", r"\bsteel (?=(?:in|into|going into|in to) (?:an? |the |my )?al(?:um|loy|ly))", ""),
    ("square m", r"\bsquare (?:mm|mils?)\b", "mm2"),
    ("outside", r"\b(in|inch|inches|mm) outside\b(?! dia)", r"\1 od"),
    ("mm2", r"(?<=[0-9])mm2\b", " mm2"),
    ("copper slip", r"\bcopper slip\b", "copper grease"),
    ("eights", r"\b(one|three|five|seven) eights\b", r"\1 eighths"),
    (" nine", r"\b(ten|twelve) (nine)\b(?! (?:and|teen|hundred|thousand|point))", _class),
    (" eight", r"\b(eight) (eight)\b(?! (?:and|hundred|thousand|point))", _class),
    ("out ", r"\bwithout (?:it |them |the tube )?(?:kinking|collapsing|crushing|wrinkling|flattening|buckling)\b", ""),
    (
        "oh ",
        r"\b(?:point )?oh (twenty|thirty|forty|fifty|sixty|eighty|ninety)[ -]?(two|three|five|six|eight)?(?= |$)",
        _hundredths,
    ),
    ("set of", r"\ban? set of\b", ""),
    ("thread", r"\b(inch|in|[0-9]/[0-9]+|mm) (studs?|bolts?|screws?|nuts?) (fine|coarse) threads?\b", r"\1 \3 \2"),
    ("nothing ", r"\bnothing (?:silly|flash|daft|mad|loud|crazy|fancy|special|serious|exotic|wild|much|too \w+)\b", ""),
    (
        "no ",
        (
            r"\b(?:with |(?:it )?(?:came|comes) with )?no"
            r" (?:paperwork|papers|manual|book|idea|clue|rush|hurry|info\w*|docs?)\b"
        ),
        "",
    ),
    (" not", r"\bbut maybe not\b", ""),
    ("of boost", r"\b(?:pounds?|lbs?) of boost\b", "psi boost"),
    *(
        (
            f" {n}",
            rf"\b(petrol|diesel|injected|carburet+ed|turbo|boosted) {n}\b"
            r"(?! (?:hundred|thousand|inch|mm|point|an?d?|injectors?|[a-z0-9]+ (?:cc|lbs?|pounds?)))",
            r"\1",
        )
        for n in ("four", "six", "eight")
    ),
    *(
        (
            cue,
            r"\b(?:no|without(?: an?)?) (?:turbo|blower|supercharger)\b(?! (?:oil|bolt|nut|flange|drain|feed))",
            "no boost",
        )
        for cue in ("turbo", "blower", "supercharger")
    ),
    ("-and-", r"\binch-and-(?:an?-)?(half|quarter|three-quarters?)", lambda m: f"inch and {m[1].replace('-', ' ')}"),
    ("mm", r"(?<![0-9./x-])\b([0-9.]+) ?x ?([0-9.]+) ?mm\b(?! ?x)", r"\1 mm x \2 mm"),
    (" by ", r"(?<![0-9./x-])\b([0-9.]+) by ([0-9.]+) mm\b", r"\1 mm x \2 mm"),
    (" six", r"\b(?:(?:an? |the |my )?(?:old|straight|inline|slant|flat) six|six[- ]cylinder)\b", ""),
    ("wheel stud", r"^(?=.*\b(?:torque|tight|foot|ft|lbs?|nm|newton))(.*?)\bwheel studs?\b", r"\1wheel nut"),
    ("alloys", r"\balloys\b", "alloy wheels"),
    (
        " of the ",
        r"\b(?:one|two|three|four|a couple|half|some|most) of (?:the|my|them|those) (?=(?:studs|bolts|nuts|screws)\b)",
        "the ",
    ),
    (
        " first ",
        r"\b(my|our|his|her) first (?=(?:rear |back )?(?:axle|diff|build|car|engine|time|one|go|crown"
        r"|gearbox|exhaust)\b)",
        r"\1 ",
    ),
    ("cast al", r"\bcast al(?:loy|ly|umini?um)\b", "aluminium"),
    (
        "engine",
        r"\b(?:on|off|out of|from|in) (?:this|my|the) (?:new |old |later |other )?engine\b(?! (?:bay|mount|block"
        r"|bolts?|oil"
        r"|nuts?|studs?|brackets?|speed|side|torque|room|compartment|to|plate|crane))",
        "",
    ),
    ("left", r"\bleft[ -]?hand(?:ed)?(?: threads?)?\b(?! (?:side|drive|door|wheel))", "left-hand"),
    (
        "thread",
        r"^(?=.*\bthreads?\b)(.*?)(?:\ban ?-? ?([0-9]+)(?! (?:to the|tpi|threads? (?:per|to|an|on)\b|per))"
        r"|(?<![^ ])-([0-9]+) ?an)\b",
        _an,
    ),
    (" wall", r"\bone (twenty|thirty|eighty)(?:[ -](five|four|eight))?(?= wall)", _over_hundred),
    (" wall", r"(?<![0-9a-z./-])(0[2-9][0-9]|[1-3][0-9]{2})(?= (?:thick )?wall\b)", r".\1"),
    (" 0", r"(?<= by) 0([2-9][0-9])(?= (?:dom|cds|erw|tube|tubing|steel|chromoly|4130)\b)", r" .0\1"),
    (
        "wait",
        (
            r"\b(?:no wait|wait no|wait(?= (?:it|that|they) (?:was|were)\b))(?: (?:it|that|they|its|it's|i)"
            r" (?:was|were|is|are|meant?))?\b"
        ),
        CORRECTED,
    ),
    ("scratch that", r"\bscratch that\b", CORRECTED),
    ("coarse", _SERIES, r"\1\2 \4\3"),
    (" fine", _SERIES, r"\1\2 \4\3"),
    ("lug", r"(?<![0-9.x/-])\b(?:four|five|six|eight|[4568])[- ]lug\b(?! nut)", ""),
    (
        "wheel ",
        r"(?<![0-9.x/-])\b(?:all )?(?:four|five|six|eight|[4-8]) (?=(?:wheel|lug) (?:nuts?|studs?|bolts?)\b)",
        "",
    ),
    ("silicone ", r"\bsilicone (vacuum|boost|turbo|intake|air|fuel|oil|breather) hoses?\b", r"silicone-\1-hose"),
    ("tempered ", r"\btempered (?:to|at) (\w+(?:[ -]\w+)?) (?=rockwell|hrc|rc\b)", r"\1 "),
    ("band clamp", r"^(?=.*\b(?:hoses?|worm|radiator)\b)(.*)\bband clamps?\b", r"\1hose clamp"),
    ("small block", r"\bsmall block\b", "engine"),
    ("big block", r"\bbig block\b", "engine"),
    (
        "new ",
        (
            r"\b(?:brand )?new"
            r" (?=(?:brake|fuel|coolant|vacuum|heater|clutch|steel)?"
            r" ?(?:wires?|wiring|lines?|hoses?)\b|bender|dies?\b|tool|engine|motor|exhaust|headers?\b|wheels?\b"
            r"|tyres?\b|tires?\b|to me)"
        ),
        "",
    ),
    (
        "too ",
        r"\b(?:(?:is|are) (?:that|it|this|they) )?(?:a bit |way |much |any )?too"
        r" (?:thin|small|big|short|heavy|weak|narrow|wide|steep)\b(?: for(?= it\b| that\b| this\b))?",
        "",
    ),
    ("mandrel", r"\b(?:with)?(?:no|out) (?:an? |the |my |using an? )?mandrel\b", "rotary draw"),
    ("overdrive", r"\b(?:no|without|not in) (?:an? )?overdrive\b", "direct"),
    ("dot", r"\b(?:put|pour|add) (dot ?[345](?:\.1)?) (?:in |in)?(?:with|to|into|on top of)\b", r"mix \1 with"),
    ("dot", r"\bdot ?([345](?:\.1)?|three|four|five(?: point one)?) in\b", r"dot \1 into"),
    ("fifty", r"\bfifty[ /-]fifty\b", "50/50"),
    ("inch and", r"\b(?:an |one |1 )?inch and (?:an? |one )?(three )?(quarters?|half|eighths?)\b", _inch_and),
    ("oh ", r"\b(?:point )?oh (six|eight|nine|one) (five|three|zero|oh)\b(?= |$)", _thousandths),
    ("zero ", r"\bzero (six|eight|nine|one) (five|three|zero|oh)\b(?= |$)", _thousandths),
    # "40 mm by 2": the second has the unit of the first
    ("mm", r"(?<![0-9./-])([0-9.]+) ?mm (?:by|x) ([0-9.]+)(?= |$)(?! ?m)", r"\1 mm x \2 mm"),
)
_MARKS = str.maketrans(dict.fromkeys(",;:!?()[]", " "))
# Between two numbers that are said one after the other, of which neither is part of the other: ninety, twenty inches.
PARTED = "\x02"
_ONE_AFTER_ANOTHER = r"(?<=(?:ty|en|ne|wo|ee|ur|ve|ix|ht|ed|nd)),(?= (?:a |one|tw|thr|fo|fi|si|se|ei|ni|te|el))"


def written(text: str) -> str:
    """A line in lower case as it would have been typed: its marks off, its sayings in digits and units."""
    if "," in text:
        text = re.sub(r"(?<=[0-9]),(?=[0-9]{3}\b)", "", text)  # 1,500
        text = re.sub(_ONE_AFTER_ANOTHER, f" {PARTED}", text)
    if "instead" in text:
        text = re.sub(r"\binstead(?= ?[,.;?!]| *$)", "", text)  # of nothing that is named
    if ":1" in text:
        text = re.sub(r"(?<=[0-9]) ?: ?(?=1(?![0-9./]))", " to ", text)  # 6:1
    text = _without_marks(text)
    text = seldom_said(text, FIRST)
    for sayings in (_SAYINGS, SAID_APART):
        text = said(text, sayings)
    return said(seldom_said(text, LAST), SAID_BESIDE)


def every() -> Sayings:
    """All sayings in their order."""
    first, last = ([one for name in modules for one in sayings_of(name)] for modules in (FIRST, LAST))
    return (*first, *_SAYINGS, *SAID_APART, *last, *SAID_BESIDE)


def _without_marks(text: str) -> str:
    """Without the marks between words; a point inside a number stays."""
    text = text.translate(_MARKS)
    if "." not in text:
        return text
    return " ".join([word.rstrip(".") for word in text.split(" ")])
