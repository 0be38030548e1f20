"""What is told of shafts, joints, axles and tyres that hangs on no table; how it is read is in ``reading``."""

from __future__ import annotations

_SHAFTS = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|shafts?|axles?"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?"
_WHEELS = r"tyres?|tires?|wheels?"
_RATIO = r"ratios?|diffs?|differential|gears?|rear end|axle|back end"
_LOAD = r"[0-9.]+ ?(?:lbf?|pounds?|foot|ft|n[-.*]?m|newton|hp|ksi|mpa)"
_DEEP = r"pinion depth|depth|pinion height"
GEARS: tuple[tuple[str, tuple[str, ...], tuple[str, ...], str, str], ...] = (
    (
        "what larger tyres do to a shaft",
        (
            "bigger ",
            "larger ",
            "taller ",
            "big ",
            "huge ",
            "oversize ",
            "inch tyres",
            "inch tires",
            "3s ",
            "5s ",
            "7s ",
        ),
        (
            rf"(?:bigger|larger|taller|big|huge|oversize) (?:{_WHEELS})|[34][0-9](?: ?inch)? (?:tyres?|tires?)"
            rf"|[34][0-9]s",
            r"break(?:s|ing)?|snap(?:s|ping)?|kill(?:s|ing)?|hurts?|damage|strain|shear(?:s|ing)?|twist(?:s"
            r"|ing)?|stress\w*|hard(?:er)? on"
            r"|load(?:s|ing)?|strength",
            rf"{_SHAFTS}|diffs?|ujs?|u-joints?|cvs?",
        ),
        rf"{_LOAD}|ratios?|speedo\w*",
        "A larger tyre loads the shaft more: the torque that it can send back is the weight on it times its grip"
        " times its loaded radius, so that torque grows as the radius does. A heavier wheel strikes harder too. Say"
        " these three: `gaugeblock ask axle 1500 lb on the wheel, 31 inch tyre, grip 1`.",
    ),
    (
        "what a differential sends to each side",
        ("open diff", "spool", "locker", "lsd", "limited slip", "locked diff"),
        (
            r"(?:open|locked|welded) diff(?:erential)?|spool|lockers?|lsd|limited slip",
            rf"(?:one|1|single|either|each) (?:{_SHAFTS}|side|wheel)|unevenly|all of it|torque|power",
            r"whole(?: lot)?|all|everything|ever|share[sd]?|split(?:s|ting)?|evenly",
        ),
        rf"{_LOAD}|turn(?:s|ed)?|ratio",
        "An open differential shares the torque evenly but for its own friction: neither shaft sees more than the"
        " other, and the wheel with the least grip sets how much. Only a locker, a spool or a limited slip can send"
        " one shaft more. What each sees of your engine: `gaugeblock ask axle 400 lb-ft engine, 3.0 first, 4.10 diff,"
        " open`.",
    ),
    (
        "why one shaft breaks and the other does not",
        ("one side", "same side", "longer", "shorter", "short ", "long one", "long axle", "long shaft"),
        (
            r"snap(?:s|ping|ped)?|break(?:s|ing)?|broke(?:n)?|shear(?:s|ing|ed)?|twist(?:s|ing|ed)?",
            rf"{_SHAFTS}",
            r"(?:one|same|short|left|right|long)(?:er)? side|longer|shorter|(?:long|short) (?:one|axle|shaft"
            r"|half ?shaft)",
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
        " later. Say tube, wall and speed, and the longest that is safe is told: `gaugeblock ask longest 3 inch .083"
        " steel driveshaft at 5000 rpm`. Longer than that it is made in two, with a centre bearing.",
    ),
    (
        "how true a propeller shaft runs",
        ("how true", "true enough", "run-out", "runout", "run out", "straight", "how bent"),
        (
            r"(?:how|dead) (?:true|straight)|run[- ]?out|how bent|true enough|straight enough",
            rf"{_PROP}",
        ),
        r"[0-9.]+ ?(?:deg|rpm|revs)|angles?|flange",
        "The maker of the shaft, or the shop that balances it, has its run-out; no table here has it. Measure it with"
        " a dial gauge in the middle and near both ends, clear of welds and weights, and have it balanced after.",
    ),
    (
        "a double cardan joint",
        ("double cardan", "double-cardan"),
        (r"double[- ]cardan", rf"{_PROP}|pinion|transfer|gear ?box|joint|angles?"),
        _LOAD,
        "With a double cardan joint at the gearbox end the pinion points straight along the shaft, so that the single"
        " joint at the pinion stands near nought when it pulls. By common practice it is set a degree or two low at"
        " rest, by what the axle winds up. The greatest angle of the double joint is its maker's figure.",
    ),
    (
        "the angles of the joints of a half shaft",
        ("cv", "constant", "plung", "tripod"),
        (
            r"cvs?|cv[- ]joints?|constant[- ]velocity(?: joints?)?|plung(?:e|ing)(?: (?:joint|inner))?|tripods?",
            r"angles?|degrees|droop|plunge|plunging|bend",
        ),
        rf"{_LOAD}|max(?:imum)?|greatest|boots?|grease|{_PROP}|rpm|revs|torque|length",
        "No table here has the angles of half shaft joints: their maker has them. A fixed outer joint bends much"
        " further than a plunging inner one, and neither stands its greatest angle for long. Measure both at full"
        " droop and at full lock, and hold them against the maker's figures. Of a joint in a propeller shaft one"
        " vehicle's is on record: `gaugeblock find constant velocity joint`.",
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
        " the turns of the shaft for one turn of that wheel are half the ratio, so double them. Count ten turns of"
        " the wheel, and say it: `gaugeblock ask one wheel held, 10 turns of the other, 20.5 turns of the prop, what"
        " ratio`.",
    ),
    (
        "the order in which an axle is set up",
        ("order", "sequence", "step by step", "what steps"),
        (
            r"order|sequence|step by step|what steps",
            r"set(?:ting|s)?(?: it)?(?: up)?|set-?up|build(?:ing)?|assembl\w+|shim(?:ming)?",
            r"crown ?wheels?(?: and pinions?)?|ring gears?|ring and pinions?|pinions?|diffs?|differential|third"
            r" member",
        ),
        r"[0-9]|torque|tight\w*",
        "The axle maker's manual has its order. By common practice: the pinion depth by its shim, the preload of the"
        " pinion bearings, then the backlash and the preload of the side bearings together, then the contact pattern;"
        " and all of it again until it holds. Only then the crush sleeve or the nut for good. Ask each step by"
        " itself: `gaugeblock ask pinion bearing preload, new bearings`.",
    ),
    (
        "pinion depth without its tool",
        ("depth", "pinion height"),
        (_DEEP, r"tool|gauge|jig|first go|starting point|start with|begin|near enough"),
        r"bolt|thread|tap",
        "Begin with the shim that was in, changed by the marks on both pinions where these are the axle maker's own:"
        " `gaugeblock ask old shim 0.031 in, old mark -1, new mark +2`. Set the backlash, then read the contact"
        " pattern: near the root of the teeth the pinion is too deep, near their tops not deep enough. Which way a"
        " shim moves the pinion hangs on where it sits: the axle maker says it.",
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
        " By common practice new bolts go in clean and dry with the strong, red kind, tightened crosswise in steps.",
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
        "A clutch hub fits only the input shaft with its own count and form of splines: of one diameter a coarse"
        " spline and a fine one do not go together. Count the splines of the input shaft and measure over them, and"
        " order the plate by both.",
    ),
    (
        "power take-off shafts",
        ("pto", "power take"),
        (r"pto|power take[- ]?off", r"splines?|splined|stub"),
        r"torque|carry|strong",
        "No table here has them; the tractor's maker stamps or prints the speed. By common practice a stub of 1-3/8"
        " in with 6 splines is for 540 rpm, one of 1-3/8 in with 21 splines for 1,000 rpm, and one of 1-3/4 in with"
        " 20 splines for 1,000 rpm too.",
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
    (
        "backlash that varies round the ring gear",
        ("varies", "variation", "uneven", "differs", "vary"),
        (
            r"backlash",
            r"var(?:y|ies|iation)|uneven|differs",
            r"round|ring|crown ?wheel|turns?|teeth|thou|mm|how much|in",
        ),
        r"shims?",
        "The axle maker prints how far it may vary; those on record: `gaugeblock find backlash variation ring gear`."
        " Where it varies more look first for dirt or a burr under the ring gear, for bolts pulled unevenly and for"
        " run-out of the case; no shim takes it out.",
    ),
    (
        "how taper roller wheel bearings are set",
        ("hub", "wheel bearing", "taper", "stub axle"),
        (
            r"hubs?|wheel bearings?|stub axles?|trailers?",
            r"nut|adjust\w*|set|setting|tight\w*",
            r"back(?:ed|ing)?(?: it| them| the nut)? off|taper(?:ed)?(?: roll\w+)?|rollers?|end ?(?:float|play)"
            r"|finish"
            r"|preload",
        ),
        r"driveshaft|cv|sealed|cartridge|[0-9.]+ ?(?:nm|lb|lbf|ft)|left-hand|m[0-9]{2}",
        "The maker of the hub has both figures. By common practice the nut is tightened while the hub turns, until it"
        " drags and the rollers are seated, then backed off, run up by finger and locked at the next slot back: a"
        " trace of end play, never preload. End play on record, all of heavy vehicles: `gaugeblock find wheel"
        " bearings end play`.",
    ),
    (
        "a speedometer against a satellite",
        ("gps", "satnav", "sat nav"),
        (
            r"gps|sat ?nav",
            r"speedo\w*|dash|clock|dial|needle|it|car",
            r"shows?|says?|reads?|slow|fast|out|off|correct\w*|error|different",
        ),
        r"tyres?|tires?|ratio|gears?",
        "Take both at one steady speed and divide the true one by the one that is shown: that is the factor for a"
        " correction box. What it is over 1 is the part by which the speedometer reads low; under 1 it reads high. As"
        " 70 true over 65 shown is 1.077, 7.7 in a hundred low.",
    ),
    (
        "the teeth of a speedometer gear",
        ("driven gear", "speedo gear", "speedometer gear", "tooth drive", "drive gear"),
        (
            r"driven gear|speedo(?:meter)? gears?|(?:tooth )?drive(?: gear)?",
            r"teeth|tooth",
            r"tyres?|tires?|how many|which|what",
        ),
        r"ring|pinion|crown ?wheel",
        "The driven gear turns once for each turn that the cable makes, by common practice 1,000 to the mile, which"
        " the maker of the speedometer has. Its teeth are the teeth of the drive gear times the axle ratio times the"
        " turns of the tyre in a mile, over that number. The turns of a tyre: `gaugeblock ask 28 inch tyre, turns a"
        " mile`. With the driven gear that is fitted and what it shows, `gaugeblock gearing --help` has"
        " --driven-gear.",
    ),
)
