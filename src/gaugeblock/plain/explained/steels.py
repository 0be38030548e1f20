"""What is told of steels, of their hardness and of fits that hangs on no table; how it is read is in ``reading``."""

from __future__ import annotations

_SHAFTS = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|shafts?|axles?"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?"
_LOAD = r"[0-9.]+ ?(?:lbf?|pounds?|foot|ft|n[-.*]?m|newton|hp|ksi|mpa)"
_GRADE = r"4340|4140|4130|300m|1541|1045|1050|1018|1020|1026|1144|8620|9310|17-4|en ?[0-9]{1,2}[a-z]?"
STEELS: tuple[tuple[str, tuple[str, ...], tuple[str, ...], str, str, str], ...] = (
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
        "steel and twist",
        "For the angle say size, length and torque: `gaugeblock ask twist of a 32 mm shaft 900 mm long under 1000 Nm`.",
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
        "propeller shaft steel",
        "What one yields at: `gaugeblock ask 1026 cold drawn`; whether yours whips: say tube, wall, length and speed.",
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
        "hardness by a file",
        "Have the part tested, then ask `gaugeblock ask 55 HRC`.",
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
        "gear teeth, hardness",
        "No table here has it. What was measured on carburized bars of a gear steel: `gaugeblock ask 8620`.",
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
        "one shaft steel in place of another",
        "Ask each as you have it: `gaugeblock ask 4340 40 HRC 2 inch shaft 3000 lb ft`.",
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
        "press fit, force",
        "No answer here works it out. Measure shaft and bore for the interference first; the maker of the part or a"
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
        "shrink fit, heat",
        "How much steel grows is told by length, here the bore: `gaugeblock ask growth of 60 mm of steel at 160 degC`.",
    ),
    (
        "limits and fits",
        ("h6", "h7", "h8", "h9"),
        (r"h[6-9](?: ?/ ?| )[a-z]{1,2}[5-9]",),
        r"h[47] (?:bulbs?|lamps?|headl\w*)",
        "fits in an H7 hole",
        "No table here has limits and fits: a book of ISO 286 has them by size.",
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
        "bearing loose in its housing",
        "No table here has limits and fits: the bearing's maker prints the bore for his outer ring.",
    ),
    (
        "17-4 stainless in a condition that is not on record",
        ("h900", "h 900", "h925", "h1025", "h1100"),
        (r"h ?-?(?:900|925|1025|1100)", r"17-4(?: ?ph)?|630|stainless|steel"),
        r"hrc|rockwell",
        "17-4 stainless, ageing",
        "The tables have it aged at H1075 and double aged at H1150 alone: `gaugeblock ask 17-4`. Of the other"
        " conditions the mill certificate, or the standard that the bar is sold to, has the least yield.",
    ),
)
