"""What is asked of axles and joints that rules alone say: the contact pattern, the crush sleeve, the yokes in phase."""

from __future__ import annotations

import re

from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

# Where a pattern lies -> the rules that say what moves it.
_LIES = (
    (r"toe", ("pattern too far to the toe", "toe bearing on both sides", "toe contact")),
    (r"heel", ("pattern too far to the heel", "heel bearing on both sides")),
    (
        r"low|root|deep|bottom|flank",
        ("low pattern, pattern near the root", "low on gear, high on pinion", "flank contact, backlash too tight"),
    ),
    (
        r"high|shallow|tops?|tips?|face",
        (
            "high pattern, pattern near the tooth top",
            "high on gear, low on pinion",
            "face contact, backlash too large",
        ),
    ),
)
_PATTERN = r"(?:contact )?patterns?|marking(?: compound| blue)?|tooth contact"
_PROP = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|props?|gear ?box|transmission|trans"


def _of_a_pattern(line: str, _data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rules of where a pattern lies; that of used gears where they are."""
    wanted = [rule for lies, rules in _LIES if re.search(rf"\b(?:{lies})\b", line) for rule in rules]
    used = ("used gears",) if re.search(r"\b(?:used|old|worn)\b", line) else ()
    return (*wanted[:6], *used), []


def _of_gear_steels(line: str, _data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rules of the steels that are named."""
    named = [one for one in ("8620", "9310", "EN36") if re.search(rf"\b{one[:2]} ?{one[2:]}".casefold(), line)]
    return tuple(f"{one}, used for" for one in named), []


_SUBJECTS = (
    Subject(
        "contact pattern: read drive and coast side both, and change one thing at a time",
        (
            _PATTERN,
            "|".join(lies for lies, _ in _LIES),
            r"gears?|tooth|teeth|pinion|ring|shims?|drive|coast|lash|backlash"
            r"|diff|toe|heel|axle|pattern|crown ?wheel|marking",
        ),
        (),
        unless=r"bolts?|threads?|tyres?|tires?|camber|torque|welds?|inserts?",
        forbids=True,
        shown=_of_a_pattern,
    ),
    Subject(
        "yokes of a shaft, how nearly in line",
        (
            r"yokes?|phas(?:ed|ing)|clocking",
            r"tolerances?|how (?:near|close|far out|accurate|exact|much)(?:ly)?|within|degrees?|spline out|limit",
            r"phas(?:ed|ing)|in line|yokes?|clock\w*|out",
        ),
        ("yokes in line, how nearly", "phasing"),
        unless=r"slip|bump|droop|seal|torque|[0-9.]+ ?(?:deg|mm|in\b)|flex",
    ),
    Subject(
        "end play of front wheel bearings",
        (
            r"front (?:wheel |hub |taper )*(?:bearings?|hubs?)|(?:taper roller"
            r"|taper) (?:front )?(?:wheel )?(?:bearings?|hubs?)(?=.*front|.*hub)",
            r"end ?-?(?:play|float)|play|float|how many thou|how much (?:play|slack|float)|clearance|lash",
        ),
        ("end play of front wheel bearings",),
        unless=r"rear|axle|pinion|carrier|diff\w*|crank\w*|torque|nm|lb",
        forbids=True,
    ),
    Subject(
        "yokes of a shaft, in phase or out of it",
        (
            r"yokes?|joints?|u-joints?|ujs?|uj's",
            r"phase[sd]?|phasing|clocked|quarter turn out|(?:lin(?:e|ed|ing) up|in line)(?= .*(?:yokes?|joints?)|$)"
            r"|which way",
            r"phasing|which way|what happens|matter|need|must|have to|should|why|wrong|aren't|isn't|not|out|bad|ok|okay"
            r"|vibrat\w*",
        ),
        ("cancellation", "phasing"),
        unless=r"[0-9.]+ ?deg|[3-9]|[0-9]{2,}|exhaust|flex|torque",
        forbids=True,
    ),
    Subject(
        "universal joint that stands straight",
        (
            r"(?:0|zero|no|nought)(?: working)? ?(?:deg(?:rees?)?|angle)|(?:dead |perfectly )straight",
            r"u-?joints?|ujs?|uj's|universal joints?|cardan|prop(?:shaft)?|drive ?shaft",
        ),
        ("working angles",),
        unless=r"[1-9][0-9.]* ?(?:deg\w*|rpm)|run-?out",
    ),
    Subject(
        "crush sleeve, past its preload",
        (
            r"(?:crush|collapsible) (?:sleeve|spacer|tube|collar)s?",
            r"back(?:ed|ing)?(?: \w+){0,3} off|overshot|over ?shoot|over ?tight\w*|too (?:tight|far|much|stiff)"
            r"|past|loosen\w*"
            r"|slacken\w*|undo|ease",
            r"nut|preload|sleeve|spacer|it|tight\w*",
        ),
        ("crush sleeve",),
        unless=r"washers?|nm|lbs?|lbf",
    ),
    Subject(
        "turning torque of pinion bearings by a cord: the pull times the radius at which it pulls",
        (
            r"(?:cord|string|rope)(?: (?:round|around|wrapped|wound))*|spring (?:balance|scale)s?|(?:fish|pull)"
            r" scales?",
            r"preload|turning torque|drag|bearings?|pinion",
        ),
        ("drag torque", "new and used bearings"),
        unless=r"door|brakes?|pedal|clutch",
        forbids=True,
    ),
    Subject(
        "preload, with the oil seal in or without",
        (
            r"preload|turning torque|drag torque",
            r"(?:oil )?seals?",
            r"(?:in|with|fitted|before|after|on|out)\b.*\b(?:or|versus|vs)\b|without|matter|count",
        ),
        ("drag torque",),
        unless=r"[0-9]",
    ),
    Subject(
        "backlash of used gears",
        (
            r"(?:old|used|same|original|existing|worn|its own) (?:ring and pinion|ring gear|gears?|gear ?set"
            r"|crown ?wheel(?:"
            r" and pinion)?|cwp)",
            r"backlash",
            r"should|leave|alone|chase|reset|ok|okay|back|spec|change|what|again|new",
        ),
        ("used gears",),
        unless=r"shims?|which way|want|tyres?|tires?",
        forbids=True,
    ),
    Subject(
        "how long a propeller shaft is made, and how far in its slip yoke stands",
        (
            r"slip[- ]?(?:yoke|joint|spline)s?|yokes?",
            rf"{_PROP}",
            r"measur\w+|how (?:long|much|far)|where to where|leave|length|clearance|bottom(?:s|ed|ing)?",
        ),
        ("slip yoke, how far in", "travel"),
        unless=r"[0-9]|exhaust|angles?|torque|phase|bolts?|thick\w*",
    ),
    Subject(
        "how far in the slip of a propeller shaft stands",
        (
            rf"(?:{_PROP})(?: \w+)? slip|slip (?:on|in|of) (?:the |my )?(?:{_PROP})",
            r"how (?:much|far)|what",
            r"left|leave|bump|droop|in|out|clearance|gap|travel",
        ),
        ("slip yoke, how far in", "travel"),
        unless=r"[0-9]|exhaust|angles?|torque|phase|bolts?|thick\w*|diff|splines? (?:count|size|pitch)",
        forbids=True,
    ),
    Subject(
        "how far a slip yoke stands out",
        (
            r"slip[- ]?(?:yokes?|splines?)|yokes? .*(?:plunge|slip)",
            r"how (?:much|far)|what (?:gap|clearance|plunge)",
            r"leave|left|plunge|out|clearance|gap|travel|pulled|stick(?:s|ing)?|set",
        ),
        ("slip yoke, how far in", "travel"),
        unless=r"exhaust|angles?|torque|phase|bolts?|thick\w*|muffler|silencer|splines? (?:count|size|pitch)|droop",
        forbids=True,
    ),
    Subject(
        "how far an axle housing is spread",
        (r"spread(?:s|ing|er)?", r"housings?|carrier|diffs?|differential|axle(?: casing| case)?|banjo"),
        ("spreading an axle housing",),
        unless=r"bolt|load|torque|weight",
        forbids=True,
    ),
    Subject(
        "heating a bearing to fit it",
        (
            r"heat(?:ing|ed)?|oven|warm(?:ing|ed)?|torch",
            r"bearings?",
            r"fit|on|press|onto|slide|seat|drop|past|over|hot|harm|much",
        ),
        ("heating a bearing to fit it",),
        unless=r"exhaust|shield|wrap|oil temp\w*|running|runs|housing",
        forbids=True,
    ),
    Subject(
        "which steel for gears",
        (
            r"8620|9310|en ?36[ac]?",
            r"gears?|pinions?|crown ?wheels?|used|use",
            r"or|vs|versus|better|which|than|should|for",
        ),
        (),
        unless=r"hrc|case depth|[0-9.]+ ?(?:lbf?|ft|hp|ksi|mpa)",
        forbids=True,
        shown=_of_gear_steels,
    ),
    Subject(
        "a splined shaft, its weakest place",
        (
            r"splin\w*",
            r"axles?|shafts?|half ?shafts?",
            r"which|what|where|is it|or",
            r"weak\w*|governs?|carr(?:y|ies)|breaks?|snaps?|fails?|lets go|thinnest|critical",
            r"roots?|bottoms?|body|minor|major|weak\w*|thinnest|diameter|place|point|part|bit|end|where",
        ),
        ("stress in the spline", "stress checks"),
        unless=r"[1-9][0-9]{3}|hrc|rockwell|en ?[0-9]+t?|nm|newton|lbs?|lbf|foot pounds?|ksi|mpa|bolts?",
        forbids=True,
    ),
    Subject(
        "1018 as the steel of an axle",
        (r"1018|1020|mild steel", r"axles?|half ?shafts?", r"out of|of|from|make|made|mak\w+|use|worth|ok|okay|good"),
        ("1018 and 1045, used for",),
        unless=r"tubes?|tubing|housing|welds?|wall|[0-9.]+ ?(?:lbf?|ft|hp|ksi|mpa|nm)|hrc",
        forbids=True,
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line on axles, joints and their steels is about; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
