"""What is told of shafts, joints, axles and tyres that hangs on no table; how it is read is in ``reading``."""

from __future__ import annotations

_SHAFTS = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|shafts?|axles?"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?"
_WHEELS = r"tyres?|tires?|wheels?"
_RATIO = r"ratios?|diffs?|differential|gears?|rear end|axle|back end"
_LOAD = r"[0-9.]+ ?(?:lbf?|pounds?|foot|ft|n[-.*]?m|newton|hp|ksi|mpa)"
_DEEP = r"pinion depth|depth|pinion height"
GEARS: tuple[tuple[str, tuple[str, ...], tuple[str, ...], str, str, str], ...] = (
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
        "larger tyres, load on a shaft",
        "Say these three: `gaugeblock ask axle 1500 lb on the wheel, 31 inch tyre, grip 1`.",
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
        "differential, share of each side",
        "What each sees of your engine: `gaugeblock ask axle 400 lb-ft engine, 3.0 first, 4.10 diff, open`.",
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
        "one axle shaft breaks",
        "",
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
        "propeller shaft in two pieces",
        "Say tube, wall and speed, and the longest that is safe is told: `gaugeblock ask longest 3 inch .083 steel"
        " driveshaft at 5000 rpm`.",
    ),
    (
        "how true a propeller shaft runs",
        ("how true", "true enough", "run-out", "runout", "run out", "straight", "how bent"),
        (
            r"(?:how|dead) (?:true|straight)|run[- ]?out|how bent|true enough|straight enough",
            rf"{_PROP}",
        ),
        r"[0-9.]+ ?(?:deg|rpm|revs)|angles?|flange",
        "propeller shaft run-out",
        "No table here has how much it may be: the maker of the shaft, or the shop that balances it, has.",
    ),
    (
        "a double cardan joint",
        ("double cardan", "double-cardan"),
        (r"double[- ]cardan", rf"{_PROP}|pinion|transfer|gear ?box|joint|angles?"),
        _LOAD,
        "double cardan joint, pinion angle",
        "The greatest angle of the double joint is its maker's figure.",
    ),
    (
        "the angles of the joints of a half shaft",
        ("cv", "constant", "plung", "tripod"),
        (
            r"cvs?|cv[- ]joints?|constant[- ]velocity(?: joints?)?|plung(?:e|ing)(?: (?:joint|inner))?|tripods?",
            r"angles?|degrees|droop|plunge|plunging|bend",
        ),
        rf"{_LOAD}|max(?:imum)?|greatest|boots?|grease|{_PROP}|rpm|revs|torque|length",
        "half shaft joints, angles",
        "No table here has these: their maker has them. Of a joint in a propeller shaft one vehicle's is on record:"
        " `gaugeblock find constant velocity joint`.",
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
        "axle ratio by turning",
        "Count ten turns of the wheel, and say it: `gaugeblock ask one wheel held, 10 turns of the other, 20.5 turns"
        " of the prop, what ratio`.",
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
        "axle set-up, order",
        "The axle maker's manual has its order, and it governs. Ask each step by itself: `gaugeblock ask pinion"
        " bearing preload, new bearings`.",
    ),
    (
        "pinion depth without its tool",
        ("depth", "pinion height"),
        (_DEEP, r"tool|gauge|jig|first go|starting point|start with|begin|near enough"),
        r"bolt|thread|tap",
        "pinion depth without its tool",
        "The shim by both marks: `gaugeblock ask old shim 0.031 in, old mark -1, new mark +2`.",
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
        "ring gear bolts, thread locker",
        "The axle maker says whether his take thread locker, and his figure governs their torque.",
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
        "clutch hub splines",
        "",
    ),
    (
        "power take-off shafts",
        ("pto", "power take"),
        (r"pto|power take[- ]?off", r"splines?|splined|stub"),
        r"torque|carry|strong",
        "power take-off stubs",
        "The tractor's maker stamps or prints the speed.",
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
        "backlash, which way",
        "With both figures the amount is told: `gaugeblock ask backlash 0.014 want 0.008 what shim`.",
    ),
    (
        "tyres without a profile in their size",
        ("fifteen", "sixteen", "r15", "r16", "-15", "-16", "r20", " 16", " 15", " 20"),
        (
            r"(?:[5-9]|1[0-2])\.?(?:00|25|50) ?[-xr]? ?(?:1[2-9]|20|fifteens?|sixteens?|twenties)s?",
            r"tyres?|tires?|tall|height|high|diameter|aspect|sidewall|metric",
        ),
        r"rpm|revs|mph|km/h|speedo\w*|ratio of|torque|pressure",
        "tyre size without a profile",
        "The height of a metric size: `gaugeblock ask 235/85R16 tall`.",
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
        "backlash that varies",
        "The axle maker prints how far it may vary; those on record: `gaugeblock find backlash variation ring gear`.",
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
        "taper roller wheel bearings, setting",
        "The maker of the hub has both figures. End play on record, all of heavy vehicles: `gaugeblock find wheel"
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
        "speedometer correction factor",
        "As 70 true over 65 shown is 1.077: it reads 7.7 in a hundred low.",
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
        "speedometer driven gear, teeth",
        "The turns of a tyre: `gaugeblock ask 28 inch tyre, turns a mile`. With the driven gear that is fitted and"
        " what it shows, `gaugeblock gearing --help` has --driven-gear.",
    ),
)
