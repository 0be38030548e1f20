"""What is told of steels, of their hardness and of fits that hangs on no table; how it is read is in ``reading``."""

from __future__ import annotations

_SHAFTS = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|shafts?|axles?"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?"
_LOAD = r"[0-9.]+ ?(?:lbf?|pounds?|foot|ft|n[-.*]?m|newton|hp|ksi|mpa)"
_GRADE = r"4340|4140|4130|300m|1541|1045|1050|1018|1020|1026|1144|8620|9310|17-4|en ?[0-9]{1,2}[a-z]?"
STEELS: tuple[tuple[str, tuple[str, ...], tuple[str, ...], str, str], ...] = (
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
        "By common practice drawn-over-mandrel or good welded low-carbon tube, 1020 or 1026: that it is straight,"
        " even in its wall and easy to weld counts for more than strength. What one yields at: `gaugeblock ask 1026"
        " cold drawn`; whether yours whips: say tube, wall, length and speed.",
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
        "A file tells harder or softer than itself and no more: a good new one is by common practice about as hard as"
        " a bearing, some 60 HRC or over, so that what it skates off is about as hard, and what it bites is softer."
        " It is no measurement: have the part tested, then `gaugeblock ask 55 HRC`.",
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
            rf"(?:{_GRADE})(.*)(?<![\w.])(?:{_GRADE})",
            r"in place of|instead of|pay for|worth|enough|substitut\w*|do for|stand in for",
            rf"{_SHAFTS}|bars?|crawler|drag",
        ),
        rf"{_LOAD}|hrc|rockwell|hb|brinell|temper\w*",
        "Hardness tells more than the name: two steels at one hardness yield about alike, and none is stiffer. In a"
        " thick shaft a leaner steel such as 4140 does not harden through to its centre as 4340 does. Diameter counts"
        " most: the torque goes with its cube, so that one size up by common practice gains more than a dearer steel."
        " Ask each as you have it: `gaugeblock ask 4340 40 HRC 2 inch shaft 3000 lb ft`.",
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
        "No answer here works it out: the force goes with the interference, the length of the fit, the outside"
        " diameter of the hub and the oil between them. Measure shaft and bore for the interference first. The maker"
        " of the part or a book of limits and fits has the rest.",
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
        "It has to grow by the interference and as much again as you need to slip it on. How much steel grows is told"
        " by length, here the bore: `gaugeblock ask growth of 60 mm of steel at 160 degC`. Stay under the heat at"
        " which the part was tempered, which its maker has: for a case-hardened gear it is low. Cooling the shaft"
        " saves heat.",
    ),
    (
        "limits and fits",
        ("h6", "h7", "h8", "h9"),
        (r"h[6-9](?: ?/ ?| )[a-z]{1,2}[5-9]",),
        r"h[47] (?:bulbs?|lamps?|headl\w*)",
        "No table here has limits and fits: a book of ISO 286 has them by size. Of fits in an H7 hole by common"
        " practice g6 slides, k6 taps on, p6 is a light press for location, and s6 is a heavy one that is pressed or"
        " shrunk for good.",
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
        "No table here has limits and fits: the bearing's maker prints the bore for his outer ring, closer in light"
        " alloy than in iron, for alloy grows about twice as much as the ring and lets go of it when hot. A worn"
        " alloy bore is bored out and sleeved, then bored to that fit.",
    ),
    (
        "17-4 stainless in a condition that is not on record",
        ("h900", "h 900", "h925", "h1025", "h1100"),
        (r"h ?-?(?:900|925|1025|1100)", r"17-4(?: ?ph)?|630|stainless|steel"),
        r"hrc|rockwell",
        "The tables have 17-4 aged at H1075 and double aged at H1150 alone: `gaugeblock ask 17-4`. Of the other"
        " conditions the mill certificate, or the standard that the bar is sold to, has the least yield. The hotter"
        " it is aged the less it bears and the tougher it is.",
    ),
)
