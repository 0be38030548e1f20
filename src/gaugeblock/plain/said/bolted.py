"""How bolts, threads and spanners are told in a hurry or with a story round them -> as one would have typed them: four
half inch bolts, ten thirty two, what grade nobody knows.
"""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_COUNT = r"(?:two|three|four|five|six|eight|ten|twelve|sixteen)"
_SIZE = (
    r"(?:half|(?<!three )quarter|(?:three|five|seven) eighths?|(?:five|seven|nine) sixteenths?|three quarters?)"
    r"(?: inch| in)?"
)
COUNTED = _SIZE.replace("(?<!three )quarter", "quarter")
# What hangs on how many there are.
_IN_ALL = (
    r"(?!.*\b(?:total|together|altogether|combined|pair|between|in all|holds?|carry|carries|lift|loads?|weight"
    r"|shear|stand|bear)\b)"
)
# A screw by its number, said as people say it: ten thirty two.
_NUMBERED = {
    "four forty": "#4-40",
    "six thirty two": "#6-32",
    "eight thirty two": "#8-32",
    "ten twenty four": "#10-24",
    "ten thirty two": "#10-32",
    "twelve twenty four": "#12-24",
}
_OF_ONE = {"eight": "8", "twelve": "12", "fourteen": "14"}
SAID_NUMBER = (
    r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]{3,4}teen"
    r"|(?:twen|thir|for|fif|six|seven|eigh|nine)ty|hundred|[0-9][0-9.]*)"
)
FRACTION = r"[0-9]{1,2}/(?:8|16|32|4|2)"
_OF_SERIES = r"(?: ?(?:un[cf]|fine|coarse))"
_OF_TPI = r"(?:[ -](?:sixteen|eighteen|thirteen|fourteen|eleven|twenty(?:[ -](?:four|eight))?|1[1-8]|2[048]))"
_METRIC = r"m ?[0-9]+(?: ?x ?[0-9.]+)?(?: (?:fine|coarse))?"
_PART = rf"(?:{FRACTION}|{COUNTED})"
_OWN_THREAD = rf"(?:{_METRIC}|{_PART}(?:{_OF_TPI}{_OF_SERIES}?|{_OF_SERIES}))"  # and nothing else of that size
_ANY_THREAD = rf"(?:{_OWN_THREAD}|{_PART})"
_A_CLASS = r"(?:[0-9]+\.[89]|(?:eight point|eight) eight|(?:ten|twelve)(?: point)? nine)"
# Of a bolt, and of nothing else that has a grade or marks.
_OF_BOLTS = r"^(?=.*\b(?:bolts?|studs?|screws?|capscrews?)\b)(.*?)\b"
_NOT_KNOWN = (
    r"(?:(?:i |we )?(?:do not|don't|dont) know|(?:i am |i'm |im )?not sure|(?:i have |i've |i have got |i've got "
    r"|got )?no (?:idea|clue)"
    r"|unsure)(?: (?:of|about|on))?(?: (?:what|which))?(?: (?:the|its|their))? (?:grade|strength class)"
    r"(?: (?:it is|they are|it's|they're|theyre|is it|of (?:bolt|steel)|(?:the|these|those) (?:bolts?|studs?) (?:is"
    r"|are)))?"
    r"|(?:the )?(?:grade|strength class)(?: is| are)? (?:unknown|not known|not marked|anybody's guess)"
)
_HIDDEN = r"(?:gunked|rusted|rusty|corroded|painted|worn|chewed|mucky|filthy|covered|caked|pitted|greasy|dirty)"
_UNREAD = (
    rf"(?:(?:and )?(?:the |its |their )?heads?(?:'s| is| are)? (?:all |too |so |that )?{_HIDDEN}(?: up| over|"
    r" away)?(?: so| and| that)? )?"
    r"(?:i |we |you )?(?:can't|cant|cannot|can not|couldn't|couldnt|could not) (?:read|see|make out|tell|find)"
    r"(?: (?:the|any|its|their|what|off))* (?:marks?|markings?|heads?|lines?|numbers?|letters?)"
    r"(?: (?:on|off) (?:the |its |their )?heads?)?(?: (?:at all|any ?more|anymore|now))?"
)
_TORQUE_OF = r"^(?=.*\b(?:torques?|torqued|tight\w*|how hard|do(?:ing)? (?:them|it|these|those) up|nip(?:ped)?)\b)"
_BRAKE_PIPE = r"brake (?:pipe|line|tube|tubing)s?"

# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    (
        " mill",
        rf"\b({SAID_NUMBER}|and a (?:half|quarter)) mill\b(?! (?:cert|scale|bar|finish|turn|work|end|cutter))",
        r"\1 mm",
    ),
    *(
        (
            said,
            rf"^(?=.*\b(?:screws?|tap|taps|tapping|tapped|threads?|threaded|machine|un[cf]|clearance|bolts?|nuts?)\b)"
            rf"(.*?)(?<!ty )(?<!hundred )\b(?:number |no )?{said}\b",
            rf"\1{thread}",
        )
        for said, thread in _NUMBERED.items()
    ),
    *((said, rf"\b(?:number|no\.?) {said}\b", thread) for said, thread in _NUMBERED.items()),
    *(
        (  # one inch eight is 1-8
            cue,
            r"(?<!ty )(?<!and )(?<!hundred )(?<![0-9/.-] )\b(?:an?|one|1) inch[ -](eight|twelve|fourteen|8|12|14)"
            r"(?= (?:tpi|un[cfs]|grade|g[258]|bolts?|studs?|nuts?|taps?|threads?|threaded)\b)",
            lambda m: f"1-{_OF_ONE.get(m[1], m[1])}",
        )
        for cue in ("inch eight", "inch twelve", "inch fourteen", "inch 8", "inch 12", "inch 14")
    ),
    *(  # how many there are of a bolt whose size is a part of an inch
        (
            f"{count} ",
            rf"(?<!ty )(?<!hundred )\b{count} (?={_SIZE} (?:(?:un[cf]|coarse|fine|grade \w+) )*(?:bolts|studs"
            r"|screws)\b)"
            rf"{_IN_ALL}",
            "",
        )
        for count in ("two", "four", "six", "eight", "ten", "twelve", "sixteen")
    ),
    *(  # the series, told behind the bolt and apart from its size
        (
            f"{series} ",
            rf"\b({COUNTED}|m ?[0-9]+|[0-9]+/[0-9]+(?: in\w*)?)(?! (?:un[cf]|coarse|fine)\b)((?:"
            rf" +[a-z0-9.'-]+){{1,16}}?) +(?:and |but )?"
            rf"(?:they|it|threads?|bolts?|studs?)(?: are|'re| is|'s) (?:all |a )?({told})"
            r"(?=$| +(?:and|so|what|how|dry|oiled|clean|into|in|with|but)\b)",
            r"\1 \3\2",
        )
        for series, told in (("coarse", "coarse(?: thread(?:ed)?| pitch)?"), ("fine", "fine (?:thread(?:ed)?|pitch)"))
    ),
    (
        " off",
        rf"^(?=.*\b(?:bolts?|studs?|screws?|nuts?|torque)\b){_IN_ALL}(.*?)(?<!ty )\b(?:{_COUNT}|[2-9]|1[0-9]) off\b"
        r"(?=$| (?:steel|them|in|into|on|going|at|dry|oiled|clean|with|and|what|whats|how|through|m ?[0-9]"
        r"|[0-9]+/[0-9]))",
        r"\1",
    ),
    *(  # the nuts of a brake pipe that was named
        (
            f"{one} {verb}",
            rf"{_TORQUE_OF}(.*?\b{_BRAKE_PIPE}\b.*?)\b(?:the |my |its |their )?{one} {verb}\b",
            r"\1 brake line nuts",
        )
        for one, verb in (
            *(("nuts", "are"), ("nut", "is"), ("unions", "are"), ("union", "is")),
            *(("fittings", "are"), ("fitting", "is")),
        )
    ),
    (
        "doing ",
        r"\b(?:figure|torque|number|setting|spec|value)(?: (?:is|should i use|do i use))? (?:for|when) doing"
        r" (?:(?:it|them|these|those|this|that|(?:the|my) (?:nuts?|bolts?|unions?|fittings?)) up|up (?:the|my|these)"
        r" (?=nut"
        r"|bolt|union|fitting))",
        "torque ",
    ),
    (
        "first ",
        rf"\b(?:the |my )?first (?:{_COUNT}|one|few|couple)(?: i (?:did|made))? (?:leaked|wept|weeped|dripped"
        r"|seeped)\b",
        "",
    ),
    (
        " rounded",
        r"\b(?:and )?(?:the )?(?:second|third|fourth|fifth|other|last|next)(?: one)? i rounded(?: off)?\b",
        "",
    ),
    *(  # some of the holes that are asked about
        (f"{count} of the ", rf"\b{count} of the (?=(?:[a-z0-9.]+ ){{0,4}}(?:holes|threads)\b)", "the ")
        for count in ("one", "two", "three", "four", "some", "couple")
    ),
    *(  # what a deeper thread is for
        (
            cue,
            r"\bso (?:that )?(?:i|it|they|you|we|the threads?) (?:don't|dont|do not|doesn't|doesnt|does not|won't|wont)"
            r" (?:pull|rip|strip|tear)s?(?: (?:it|them|the threads?))?(?: (?:right )?out)?"
            r"(?: (?:when|as|while) (?:i|we|you|it) (?:torque|tighten|do|nip)s?(?: (?:it|them))?(?: (?:up|down))?)?",
            "",
        )
        for cue in ("pull", "rip", "strip", "tear")
    ),
    *((f"a{kind}", rf"\ba{kind}[ -]?(?:70|seventy)\b", f"a{kind}-70") for kind in (2, 4)),
    *((f"a{kind}", rf"\ba{kind}[ -]?(?:80|eighty)\b", f"a{kind}-80") for kind in (2, 4)),
    *(  # the grade says that it is stainless
        (
            cue,
            r"\bstainless(?: steel)? (?=(?:(?:m ?[0-9.x]+|[0-9/-]+|bolts?|screws?|studs?) ){0,3}a[24]-[78]0\b)"
            r"|(?<=a[24]-[78]0 )stainless(?: steel)?\b(?=.*\banti)",
            "",
        )
        for cue in ("a2-", "a4-")
    ),
    (
        "bearing cap",
        r"(?<!main )(?<!rod )(?<!end )\b(?:diff |differential |axle )?bearing caps? (bolts?|studs?|screws?)"
        r"(?: (?:on|in|of|for|from) (?:the |my |an? )?(?:rear |front )?(?:diff(?:erential)?|axle)(?: housing|"
        r" case)?\b)?",
        r"bearing cap \1",
    ),
    (  # how old a thing is whose bolts are tightened
        " year",
        r"^(?=.*\b(?:torques?|torqued|tight\w*|bolts?|nuts?|studs?|plugs?)\b)(?!.*\bhoses?\b)(.*?)\b"
        rf"(?:{SAID_NUMBER}(?:[ -]{SAID_NUMBER})?)[ -]years?[ -]old\b",
        r"\1",
    ),
    *(
        (
            cue,
            rf"\b(?:which|what)(?: (?:one|thread))?(?: is|'s)?(?: the)? {cue}(?: threads?| pitch)?(?: +of)?"
            rf" +(?:an? |the )?({one})(?: (?:or|vs|versus|and))+ (?:an? |the )?({other})(?= *$)",
            r"pitch \1 vs \2",
        )
        for cue in ("finer", "coarser")
        for one, other in ((_OWN_THREAD, _ANY_THREAD), (_ANY_THREAD, _OWN_THREAD))
    ),
    *(
        (
            cue,
            rf"\b({one})(?: (?:or|vs|versus|and))+ (?:an? |the )?({other}) +(?:which|what)(?: (?:one"
            rf"|thread))?(?: is|'s)?(?: the)? {cue}(?: threads?| pitch)?(?= *$)",
            r"pitch \1 vs \2",
        )
        for cue in ("finer", "coarser")
        for one, other in ((_OWN_THREAD, _ANY_THREAD), (_ANY_THREAD, _OWN_THREAD))
    ),
    *(
        (f"{part} u", rf"(?<!and a )(?<!and )(?<!three )(?<!ty )\b{part} (?=un[cf]\b)", f"{shown} ")
        for part, shown in (("half", "1/2"), ("quarter", "1/4"))
    ),
    ("one inch", r"\bthreads? (?:in|over|to|per) one inch\b", "threads to the inch"),
    ("last job", r"\b(?:one |the )?last job (?:tonight|today|of the (?:day|night))\b", ""),
    *(  # a size in millimetres, and apart from it the series or the pitch
        (
            f" {kind} ",
            rf"\b({SAID_NUMBER}) ?(?:mm|mil|millimet(?:re|er)s?) ((?:grade |class )?{_A_CLASS}) {kind}(?:"
            r" thread(?:ed)?)?"
            r" (?=(?:bolt|stud|screw|capscrew)s?\b)",
            rf"\1 mm {kind} \2 ",
        )
        for kind in ("coarse", "fine")
    ),
    (
        " pitch",
        rf"(?<![0-9./x-])\b({SAID_NUMBER}) ?(?:mm|mil|millimet(?:re|er)s?)(?: bolts?| studs?| screws?| threads?)?"
        r" (?:fine|coarse)(?: thread)? ([0-3](?:\.[0-9]{1,2})?|(?:one|two) point (?:two five|seven five|five))"
        r" (?:mm )?pitch\b",
        r"m\1 by \2",
    ),
    *(
        (
            f"{kind} pitch",
            rf"\b{kind} pitch (?:on|for|of) (?:an? |the |my )?({_METRIC}|{_PART})(?= |$)",
            rf"pitch of \1 {kind}",
        )
        for kind in ("fine", "coarse")
    ),
    (  # dry is what it is, where nothing else is on it
        "zinc",
        r"\b(zinc[- ]plated\b(?!.*\b(?:oil\w*|greas\w*|lub\w*|anti\w*|wax\w*|moly|seize)\b)"
        r"(?: +(?!dry\b)[a-z0-9./-]+){1,10}?) +dry\b",
        r"\1",
    ),
    *(
        (cue, rf"\b(?:(?:ally|alloy|alumini?um) )?{cue}(?: wheels?| rims?)\b", "alloy wheels")
        for cue in ("mag", "mags")
    ),
    (
        "mags",
        r"^(?=.*\b(?:lug|wheel)s? ?(?:nuts?|bolts?)\b)(.*?)\b(?:(?:ally|alloy|alumini?um) )?mags\b",
        r"\1alloy wheels",
    ),
    *(
        (
            f"{kind} ",
            rf"\b(?:the )?(?:nearest |closest |near enough )?{kind} (?:drill|bit)(?: bit| size)?"
            r"(?= (?:for|will|would|to|do|before|can)\b|$)",
            "drill in inches",
        )
        for kind in ("imperial", "fractional")
    ),
    (
        "only ",
        r"\b(?:(?:because|cause|cos|as|since|but) )?(?:i've|ive|i have|i|we've|weve|we) only (?:got )?(?:have )?"
        r"(?:imperial|fractional|inch) (?:drills?|bits?|drill bits?)\b",
        "in inches",
    ),
    *(  # of a bolt nobody knows how strong it is
        (
            cue,
            rf"{_OF_BOLTS}(?:(?:and|but|so|or|because|cos) )*{_NOT_KNOWN}",
            r"\1 unknown grade ",
        )
        for cue in ("grade", "strength class")
    ),
    *(
        (cue, rf"{_OF_BOLTS}{_UNREAD}", r"\1 unknown grade ")
        for cue in (" marks", " markings", " heads", " head ", " numbers", " lines")
    ),
    *(  # two threads, of which it is asked whether one goes in the other
        (
            cue,
            rf"\b(?:does|do|will|would|can|could|is|are) (?:an? |the |my )?({one})"
            rf"(?: (?:bolts?|nuts?|studs?|screws?|threads?|ones?|the|exactly|basically|really))*"
            rf" {said} (?:an? |the |my )?({other})(?: (?:bolts?|nuts?|holes?|threads?|studs?|ones?|tapped hole))*(?="
            r" |$)",
            r"pitch \1 vs \2",
        )
        for cue, said in (
            ("go in", r"go in(?:to)?"),
            ("goes in", r"goes in(?:to)?"),
            ("fit", r"fit(?:s)?(?: (?:in(?:to)?|on(?:to)?))?"),
            ("screw in", r"screw in(?:to)?"),
            ("screws in", r"screws in(?:to)?"),
            ("same", r"(?:the )?same(?: (?:thread|pitch|size|thing))?(?: as)?"),
            ("interchang", r"interchang\w+(?: with)?"),
        )
        for one, other in ((_OWN_THREAD, _ANY_THREAD), (_ANY_THREAD, _OWN_THREAD))
    ),
    *(  # a spanner of the other kind
        (
            cue,
            rf"\bis (?:an? )?({FRACTION})(?: ?(?:in|inch|af|a/f))? {cue}(?: enough)?(?: (?:to|as))?"
            r" (?:an? )?([0-9]+) ?(?:mm|mil)\b",
            r"is \1 inch the same as \2 mm",
        )
        for cue in ("close", "near", "the same size")
    ),
    *(
        (
            cue,
            rf"\bis (?:an? )?([0-9]+) ?(?:mm|mil) {cue}(?: enough)?(?: (?:to|as))?"
            rf" (?:an? )?({FRACTION})(?: ?(?:in|inch|af|a/f))?\b",
            r"is \2 inch the same as \1 mm",
        )
        for cue in ("close", "near", "the same size")
    ),
    *(
        (
            cue,
            rf"\b(?:what(?:'s|s| is)? )?(?:the |is the )?{cue} (?:imperial|af|a/f|inch|american)"
            r"(?: (?:spanner|socket|wrench|size|one|equivalent))* (?:to|for|of) (?:an? )?([0-9]+) ?(?:mm|mil)"
            r"(?: (?:spanner|socket|wrench))?(?= *$)",
            r"\1 mm in inches",
        )
        for cue in ("nearest", "closest")
    ),
    (
        "equivalent",
        r"\b(?:what(?:'s|s| is)? )?(?:the )?(?:imperial|inch|american) (?:equivalent|size) (?:of|to|for) (?:an? )?"
        r"(m ?[0-9]+)(?: (?:bolt|thread|screw|stud))?(?= *$)",
        r"\1 major diameter in inches",
    ),
    (
        "only ",
        r"\b(?:(?:because|cause|cos|as|since) )?i(?:'ve| have|ve)? only (?:got |have )?(?:got )?"
        r"(?:sockets?|spanners?|drills?|bits?|taps?|keys?) (?:that go(?:es)? )?(?:up to|down to) (?:an?"
        r" )?(?:[a-z]+teen|twelve|ten|[0-9/.]+)(?: ?(?:mm|mil|inch))?",
        "",
    ),
    (
        "can i use",
        r"\bcan i use (?:an? |the |my )?([0-9]+) ?(?:mm|mil)(?: (?:spanner|socket|wrench))? on (?:an? |the |my )?"
        rf"({COUNTED}|{FRACTION})"
        r"(?: inch| in)? (nut|bolt|bolt head|hex)\b",
        r"\1 mm spanner on \2 inch \3",
    ),
    *(
        (  # M10 fine 1.25 is M10x1.25
            cue,
            r"\b(m ?[0-9]{1,2}) (?:fine|coarse)(?: pitch)? (0?\.[0-9]+|[1-3](?:\.[0-9]{1,2})?|4(?:\.[05])?)"
            r"(?![0-9./])(?! ?(?:mm|in|inch|x|by|or|and)\b)",
            r"\1x\2",
        )
        for cue in (" fine ", " coarse ")
    ),
    (  # a wire insert by any of its names
        "coil",
        r"^(?=.*(?:\bm ?[0-9]|[0-9]/[0-9]|\bthreads?\b|\bdrill|\btap|\bholes?\b|eighth|sixteenth))"
        r"(.*?)\b(?!coils?\b)[a-z]{1,5}-?coils?\b",
        r"\1thread insert",
    ),
)
