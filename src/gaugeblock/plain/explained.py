"""What a shop asks of shafts, gears and axles that hangs on no table: how it is, and what to ask instead.

Nothing here is a figure. A line is of such a subject where it has every one of its patterns and none of ``unless``.
"""

from __future__ import annotations

import re

from gaugeblock.answer.decision import none
from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.outside import not_looked_at

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_SHAFTS = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|shafts?|axles?"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?"
_WHEELS = r"tyres?|tires?|wheels?"
_RATIO = r"ratios?|diffs?|differential|gears?|rear end|axle|back end"
_LOAD = r"[0-9.]+ ?(?:lbf?|pounds?|foot|ft|n[-.*]?m|newton|hp|ksi|mpa)"
_GRADE = r"4340|4140|4130|300m|1541|1045|1050|1018|1020|1026|1144|8620|9310|17-4|en ?[0-9]{1,2}[a-z]?"
_DEEP = r"pinion depth|depth|pinion height"
# How a subject is called; a piece that its lines have, one of several; its patterns; what it must not have; what is
# told of it.
_EXPLAINED: tuple[tuple[str, tuple[str, ...], tuple[str, ...], str, str], ...] = (
    (
        "whether another steel twists less",
        ("wind", "twist", "spring", "stiff", "flex"),
        (
            r"(?:dearer|better|stronger|harder|tougher|expensive|other|different|posh|fancy|higher grade)"
            r"(?: \w+)? (?:steels?|alloys?|grades?)|hardening|(?:harder|stronger|better) (?:shaft|axle)",
            rf"{_SHAFTS}|{_PROP}",
            r"wind(?:s|ing)?(?: ?-?up)?|twist(?:s|ing)?|spring(?:s|y)?|stiff(?:er|ness)?|flex(?:es)?",
        ),
        rf"{_LOAD}|wind tunnel",
        "A better steel twists no less: all steels are about equally stiff in torsion, soft or hard. It yields later,"
        " that is all. Only a thicker or a shorter shaft twists less. For the angle say size, length and torque:"
        " `gaugeblock ask twist of a 32 mm shaft 900 mm long under 1000 Nm`.",
    ),
    (
        "what larger tyres do to a shaft",
        ("bigger ", "larger ", "taller ", "big ", "huge ", "oversize "),
        (
            rf"(?:bigger|larger|taller|big|huge|oversize) (?:{_WHEELS})",
            r"break(?:s|ing)?|snap(?:s|ping)?|kill(?:s|ing)?|shear(?:s|ing)?|twist(?:s|ing)?|stress\w*|hard(?:er)? on"
            r"|load(?:s|ing)?|strength",
            rf"{_SHAFTS}|diffs?|ujs?|u-joints?|cvs?",
        ),
        rf"{_LOAD}|ratios?|speedo\w*",
        "A larger tyre loads the shaft more: the torque that it can send back is the weight on it times its grip times"
        " its loaded radius, so that torque grows as the radius does. A heavier wheel strikes harder too. Say these"
        " three: `gaugeblock ask axle 1500 lb on the wheel, 31 inch tyre, grip 1`.",
    ),
    (
        "what an open differential sends to each side",
        ("open diff",),
        (
            r"open diff(?:erential)?",
            rf"(?:one|1|single|either|each) (?:{_SHAFTS}|side|wheel)|unevenly|all of it",
            r"whole(?: lot)?|all|full|everything|more|most|ever|share[sd]?|split|even(?:ly)?|how much",
        ),
        rf"{_LOAD}|turn(?:s|ed)?|ratio",
        "An open differential shares the torque evenly but for its own friction: neither shaft sees more than the"
        " other, and the wheel with the least grip sets how much. Only a locker, a spool or a limited slip can send"
        " one shaft more. What each sees of your engine: `gaugeblock ask axle 400 lb-ft engine, 3.0 first, 4.10 diff,"
        " open`.",
    ),
    (
        "why one shaft breaks and the other does not",
        ("one side", "same side", "longer", "shorter", "short side", "short one", "long one"),
        (
            r"snap(?:s|ping|ped)?|break(?:s|ing)?|broke(?:n)?|shear(?:s|ing|ed)?|twist(?:s|ing|ed)?",
            rf"{_SHAFTS}",
            r"(?:one|same|short|left|right|long)(?:er)? side|longer|shorter|long one|short one",
        ),
        rf"{_LOAD}|bolts?|studs?",
        "The length changes nothing of the torque at which a shaft yields: its steel and its least diameter do. But a"
        " longer shaft twists further and takes a shock more softly, so that the short one sees the higher peak. Look"
        " for a bent housing and for a notch too, and test the hardness of both shafts.",
    ),
    (
        "when one propeller shaft is too long",
        ("centre bearing", "center bearing", "two-piece", "2-piece", "carrier bearing", "hanger bearing", "steady b"),
        (
            r"(?:cent(?:re|er)|carrier|hanger|steady) (?:support )?bearings?|two[- ]piece|2-piece",
            rf"{_PROP}|shaft",
            r"single|one[- ]piece|1-piece|when|enough|need|instead|must|have to",
        ),
        rf"{_LOAD}|[0-9.]+ ?(?:rpm|revs)|angles?|torque|preload",
        "One piece is too long where its fastest speed comes near the speed at which it whips; a larger tube whips"
        " later. Say tube, wall and speed, and the longest that is safe is told:"
        " `gaugeblock ask longest 3 inch .083 steel driveshaft at 5000 rpm`. Longer than that it is made in two, with a"
        " centre bearing.",
    ),
    (
        "how true a propeller shaft runs",
        ("how true", "true enough", "run-out", "runout", "run out", "straight", "how bent"),
        (
            r"(?:how|dead) (?:true|straight)|run[- ]?out|how bent|true enough|straight enough",
            rf"{_PROP}",
        ),
        r"[0-9.]+ ?(?:deg|rpm|revs)|angles?|flange",
        "The maker of the shaft, or the shop that balances it, has its run-out; no table here has it. Measure it with a"
        " dial gauge in the middle and near both ends, clear of welds and weights, and have it balanced after.",
    ),
    (
        "a double cardan joint",
        ("double cardan", "double-cardan"),
        (r"double[- ]cardan", rf"{_PROP}|pinion|transfer|gear ?box|joint|angles?"),
        _LOAD,
        "With a double cardan joint at the gearbox end the pinion points straight along the shaft, so that the single"
        " joint at the pinion stands near nought when it pulls. Commonly it is set a degree or two low at rest, by what"
        " the axle winds up. The greatest angle of the double joint is its maker's figure.",
    ),
    (
        "the angles of the joints of a half shaft",
        ("cv", "constant", "plung", "tripod"),
        (
            r"cvs?|cv[- ]joints?|constant[- ]velocity(?: joints?)?|plung(?:e|ing)(?: (?:joint|inner))?|tripods?",
            r"angles?|degrees|droop|plunge|plunging|bend",
        ),
        rf"{_LOAD}|boots?|grease|{_PROP}|rpm|revs|torque|length",
        "No table here has the angles of half shaft joints: their maker has them. A fixed outer joint bends much"
        " further than a plunging inner one, and neither stands its greatest angle for long. Measure both at full droop"
        " and at full lock, and hold them against the maker's figures.",
    ),
    (
        "how to find the ratio of an axle",
        (" tag", "cover", "find", "halve"),
        (
            rf"(?:find|tell|work out|check|know|count)(?: \w+){{0,4}} (?:{_RATIO})|double or halve|double it or halve",
            r"tags?|cover|without|apart|count(?:ing)?|how|turn(?:s|ing)?|held|chocked|halve",
            rf"{_RATIO}|wheels?|chocked",
        ),
        r"[0-9]|mph|km/h|speedo\w*|tyres?|tires?|teeth|tooth|rpm|revs|torque|steel|tight",
        "Turn it by hand and count, gearbox in neutral. With both wheels up and turning together, the turns of the"
        " shaft for one turn of them are the ratio. With an open differential hold one wheel and turn the other: then"
        " the turns of the shaft for one turn of that wheel are half the ratio, so double them. Count ten turns of the"
        " wheel, and say it: `gaugeblock ask one wheel held, 10 turns of the other, 20.5 turns of the prop, what"
        " ratio`.",
    ),
    (
        "the order in which an axle is set up",
        ("order", "sequence", "step by step", "what steps"),
        (
            r"order|sequence|step by step|what steps",
            r"set(?:ting|s)?(?: it)?(?: up)?|set-?up|build(?:ing)?|assembl\w+|shim(?:ming)?",
            r"crown ?wheels?(?: and pinions?)?|ring gears?|ring and pinions?|pinions?|diffs?|differential|third member",
        ),
        r"[0-9]|torque|tight\w*",
        "The axle maker's manual has its order. Commonly: the pinion depth by its shim, the preload of the pinion"
        " bearings, then the backlash and the preload of the side bearings together, then the contact pattern; and all"
        " of it again until it holds. Only then the crush sleeve or the nut for good. Ask each step by itself:"
        " `gaugeblock ask pinion bearing preload, new bearings`.",
    ),
    (
        "pinion depth without its tool",
        ("depth", "pinion height"),
        (_DEEP, r"tool|gauge|jig|first go|starting point|start with|begin|near enough"),
        r"bolt|thread|tap",
        "Begin with the shim that was in, changed by the marks on both pinions where these are the axle maker's own:"
        " `gaugeblock ask old shim 0.031 in, old mark -1, new mark +2`. Set the backlash, then read the contact pattern:"
        " near the root of the teeth the pinion is too deep, near their tops not deep enough. Which way a shim moves"
        " the pinion hangs on where it sits: the axle maker says it.",
    ),
    (
        "how far an axle housing is spread",
        ("spread",),
        (r"spread(?:s|ing|er)?", r"housings?|carrier|diffs?|differential|axle(?: casing| case)?|banjo"),
        r"bolt|load|torque|weight",
        "The axle maker prints how far his housing may be spread; no table here has it. Spread it by dial gauge and no"
        " further than the carrier needs to drop in: one that is spread too far stays bent.",
    ),
    (
        "thread locker on the bolts of a ring gear",
        ("locker", "locking", "threadlock", "thread lock"),
        (
            r"(?:red |blue |thread ?)?lock(?:er|ing)?(?: compound| fluid| liquid)?|thread-?lock\w*",
            r"(?:ring(?: gear)?|crown ?wheel)(?: bolts?)?",
            r"bolts?|screws?",
        ),
        r"[0-9]|torque|tight\w*|left|open|wire",
        "The axle maker says whether his ring gear bolts take thread locker, and his figure governs their torque."
        " Commonly new bolts go in clean and dry with the strong, red kind, tightened crosswise in steps.",
    ),
    (
        "the steel of a propeller shaft",
        (
            "which steel",
            "what steel",
            "which tub",
            "what tub",
            "which material",
            "what material",
            "best steel",
            "best tub",
        ),
        (r"(?:which|what|best|right) (?:steel|tub(?:e|ing)|material|grade)", rf"(?:{_PROP})(?: tub(?:e|ing))?"),
        r"[0-9]|angles?|size|diameter|thick\w*|length|wall|torque",
        "Commonly drawn-over-mandrel or good welded low-carbon tube, 1020 or 1026: that it is straight, even in its wall"
        " and easy to weld counts for more than strength. What one yields at: `gaugeblock ask 1026 cold drawn`; whether"
        " yours whips: say tube, wall, length and speed.",
    ),
    (
        "a clutch hub and its splines",
        ("clutch",),
        (
            r"clutch(?:es)?(?: (?:hub|plate|disc|disk))?",
            r"spl?ines?|splined",
            r"interchang\w*|swap\w*|fits?|same|instead|interfere|work",
        ),
        r"torque|tight\w*",
        "A clutch hub fits only the input shaft with its own count and form of splines: of one diameter a coarse spline"
        " and a fine one do not go together. Count the splines of the input shaft and measure over them, and order the"
        " plate by both.",
    ),
    (
        "power take-off shafts",
        ("pto", "power take"),
        (r"pto|power take[- ]?off", r"splines?|splined|stub"),
        r"torque|carry|strong",
        "No table here has them; the tractor's maker stamps or prints the speed. Commonly a stub of 1-3/8 in with 6"
        " splines is for 540 rpm, one of 1-3/8 in with 21 splines for 1,000 rpm, and one of 1-3/4 in with 20 splines for"
        " 1,000 rpm too.",
    ),
    (
        "which way the backlash goes",
        ("which way", "what way", "which side"),
        (
            r"backlash",
            r"(?:which|what) (?:way|side)",
            r"not enough|too (?:little|small|tight|close|much|big|large|loose|wide)|more|less|up|down|increase|reduce"
            r"|add|open|close|tighten",
        ),
        r"[0-9]|pattern|toe|heel|root|bolts?",
        "Too little backlash: the ring gear goes away from the pinion. Take shim from the ring gear's side and put as"
        " much on the other, so that the preload stays. Too much: the other way round. With adjusting nuts let"
        " one out and turn the other in by as many slots. With both figures the amount is told:"
        " `gaugeblock ask backlash 0.014 want 0.008 what shim`.",
    ),
    (
        "a hardness test by file",
        ("file",),
        (
            r"files?",
            r"skat(?:es?|ing|ed)|slid(?:es?|ing)|slip(?:s|ping)?|bites?|biting|cuts?|cutting|digs?|takes?",
            r"hard\w*|hrc|rockwell|case",
        ),
        r"file test(?:er)? [0-9]|[0-9]+ ?hrc",
        "A file tells harder or softer than itself and no more: a good new one is commonly about as hard as a bearing,"
        " some 60 HRC or over, so that what it skates off is about as hard, and what it bites is softer. It is no"
        " measurement: have the part tested, then `gaugeblock ask 55 HRC`.",
    ),
    (
        "how hard the teeth of a gear are",
        ("core", "skin", "teeth"),
        (
            r"core|skin|case(?: and core)?|surface|teeth",
            r"how hard|hardness|rockwell|hrc",
            r"ring gears?|ring(?: and pinion)?|pinions?|crown ?wheels?|gears?|teeth",
        ),
        r"[0-9]|bolts?|torque|shafts?|axles?",
        "The maker of the gears has the hardness of their case and of their core, and the depth of the case; no table"
        " here has it. What was measured on carburized bars of a gear steel: `gaugeblock ask 8620`.",
    ),
    (
        "one shaft steel in place of another",
        ("in place of", "instead of", "pay for", "worth", "enough", "substitut", "do for", "stand in for"),
        (
            rf"(?:{_GRADE}).*(?<![\w.])(?:{_GRADE})",
            r"in place of|instead of|pay for|worth|enough|substitut\w*|do for|stand in for",
            rf"{_SHAFTS}|bars?|crawler|drag",
        ),
        rf"{_LOAD}|hrc|rockwell|hb|brinell|temper\w*",
        "Hardness tells more than the name: two steels at one hardness yield about alike, and none is stiffer. In a thick"
        " shaft a leaner steel such as 4140 does not harden through to its centre as 4340 does. Diameter counts most:"
        " the torque goes with its cube, so that one size up commonly gains more than a dearer steel. Ask each as you"
        " have it: `gaugeblock ask 4340 40 HRC 2 inch shaft 3000 lb ft`.",
    ),
    (
        "which steel for gears",
        ("8620", "9310", "en36", "en 36"),
        (r"8620|9310|en ?36[ac]?", r"gears?|pinions?|crown ?wheels?", r"or|vs|versus|better|which|than|should"),
        rf"{_LOAD}|hrc|case depth",
        "The gear maker chooses it. Both are case-hardened: commonly the nickel steel, 9310, has the tougher core and costs"
        " more, and 8620 is the ordinary gear steel. Of 9310 the tables have nothing; what was measured on bars of 8620:"
        " `gaugeblock ask 8620`.",
    ),
    (
        "heating a bearing to fit it",
        ("heating ", "heat a ", "heat the ", "heat my ", "oven", "warm "),
        (
            r"heat(?:ing|ed)?|oven|warm(?:ing|ed)?|torch",
            r"bearings?",
            r"fit|on|press|onto|slide|seat|drop|past|over|hot|harm|much",
        ),
        r"exhaust|shield|wrap|oil temp\w*|running|runs|housing",
        "The bearing's maker has its limit. Commonly it is heated to 110 or 120 degC, 230 to 250 degF, and no more: evenly"
        " in hot oil, an oven or on an induction heater, never by a flame. Hotter, its steel may soften and change size,"
        " and its grease, seals and plastic cage go first.",
    ),
    (
        "the force of a press fit",
        ("tonnage", " ton", "press"),
        (
            r"press(?:ing)?",
            r"tonnage|tons?|tonnes?|how much force|(?:what|which|how big an?) press",
            r"hubs?|bearings?|bush\w*|collars?|gears?|pins?|rings?|fit|shaft",
        ),
        r"bend\w*|dies?|brake|tubes?",
        "No answer here works it out: the force goes with the interference, the length of the fit, the outside diameter of"
        " the hub and the oil between them. Measure shaft and bore for the interference first. The maker of the part or a"
        " book of limits and fits has the rest.",
    ),
    (
        "a part that is shrunk on a shaft",
        ("interference", "shrink", "shrunk"),
        (
            r"interference|shrink\w*|shrunk",
            r"heat\w*|hot|oven|temp\w*|warm\w*|freez\w*|drop\w*",
            r"gears?|hubs?|collars?|rings?|bush\w*|shafts?|bearings?|flywheel",
        ),
        r"wrap|tube sleeve|heat-?shrink|wire|cable",
        "It has to grow by the interference and as much again as you need to slip it on. How much steel grows is told by"
        " length, here the bore: `gaugeblock ask growth of 60 mm of steel at 160 degC`. Stay under the heat at which the"
        " part was tempered, which its maker has: for a case-hardened gear it is low. Cooling the shaft saves heat.",
    ),
    (
        "limits and fits",
        ("h6", "h7", "h8", "h9"),
        (r"h[6-9](?: ?/ ?| )[a-z]{1,2}[5-9]",),
        r"h[47] (?:bulbs?|lamps?|headl\w*)",
        "No table here has limits and fits: a book of ISO 286 has them by size. Of fits in an H7 hole commonly g6 slides,"
        " k6 taps on, p6 is a light press for location, and s6 is a heavy one that is pressed or shrunk for good.",
    ),
    (
        "a bearing that spins in its housing",
        (" spin", "spun"),
        (
            r"bearings?",
            r"spin(?:s|ning)?|spun",
            r"bores?|housings?|case|casing|seat|outer",
        ),
        r"rpm|whip\w*|prop\w*",
        "No table here has limits and fits: the bearing's maker prints the bore for his outer ring, closer in light alloy"
        " than in iron, for alloy grows about twice as much as the ring and lets go of it when hot. A worn alloy bore is"
        " bored out and sleeved, then bored to that fit.",
    ),
    (
        "tyres without a profile in their size",
        ("fifteen", "sixteen", "r15", "r16", "-15", "-16", "r20", " 16", " 15", " 20"),
        (
            r"(?:[5-9]|1[0-2])\.?(?:00|25|50) ?[-xr]? ?(?:1[2-9]|20|fifteens?|sixteens?|twenties)s?",
            r"tyres?|tires?|tall|height|high|diameter|aspect|sidewall|metric",
        ),
        r"rpm|revs|mph|km/h|speedo\w*|ratio of|torque|pressure",
        "A size such as 7.00R16 names width and rim and no profile: the tyre's maker has its height, and the makers"
        " differ. Measure one on the vehicle, or take the maker's figure. The height of a metric size:"
        " `gaugeblock ask 235/85R16 tall`.",
    ),
)
CUES = frozenset(cue for _, cues, *_ in _EXPLAINED for cue in cues)


def explained(words: tuple[str, ...], data: Refdata) -> tuple[Sheet, str] | None:
    """The Sheet of a subject that is explained, and what of the line was not looked at; None where it is of none."""
    line = " ".join(words)
    for name, cues, patterns, unless, told in _EXPLAINED:
        if not any(cue in line for cue in cues):
            continue
        known = _all_of(patterns, line)
        if known and not (unless and re.search(_whole(unless), line)):
            sheet = Sheet(name, {"words": line}, data, [], [], (), decision=none("", told))
            return sheet, not_looked_at(words, known)
    return None


def _all_of(patterns: tuple[str, ...], line: str) -> str:
    """What the patterns find in a line; blank where one finds nothing."""
    found = []
    for pattern in patterns:
        here = [match[0] for match in re.finditer(_whole(pattern), line)]
        if not here:
            return ""
        found += here
    return " ".join(found)


def _whole(pattern: str) -> str:
    return rf"(?<![\w.])(?:{pattern})(?![\w.])"
