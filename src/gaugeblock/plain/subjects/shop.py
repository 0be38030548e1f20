"""What a shop asks in passing that rules alone have: the threads of usual parts, what melts when, what lasts."""

from __future__ import annotations

import re

from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

# A part, and the rule that has the threads met on it.
_THREADED = (
    (r"spark ?plugs?|(?<!drain )(?<!sump )plugs?(?= (?:hole|thread))", "threads of spark plugs"),
    (r"(?:o2|oxygen|lambda) (?:sensors?|bungs?|boss(?:es)?)", "threads of oxygen sensors"),
    (r"(?:wheel|lug) (?:nuts?|studs?|bolts?)|lugs?", "threads of wheel fasteners"),
    (r"(?:oil )?(?:drain|sump) plugs?", "threads of oil drain plugs"),
    (
        r"(?:(?:oil|water|coolant|temp(?:erature)?|pressure) )+(?:senders?|sensors?|switch(?:es)?|sending units?)",
        "threads of senders",
    ),
    (r"(?:brake )?(?:bleed(?:er)?s?|bleed(?:er)? (?:screws?|nipples?|valves?))", "threads of brake bleeders"),
    (r"banjo (?:bolts?|fittings?)|banjos?", "brake hose banjo bolt"),
)
_PART = "|".join(part for part, _ in _THREADED)
_HOW_TIGHT = (
    r"torque|tight\w*|lbs?|lbf|nm|dry|clean|oil(?:ed|y)|greas\w*|anti-?seize|strip\w*|insert|repair\w*|damag\w*"
)
_METALS = r"alumini?um|alloy|brass|copper|bronze|zinc|lead|solder|tin|steel|iron|metals?"


def _of_threads(line: str, _data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rules of the parts that are named."""
    return tuple(rule for part, rule in _THREADED if re.search(rf"\b(?:{part})\b", line)), []


def _of_pressure(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """What a hard stop makes in the lines."""
    return (), shelved("line pressure hard stop", "lines/brakes", ("line pressure",), data)


_SUBJECTS = (
    Subject(
        "the thread of a usual part",
        (
            _PART,
            r"(?:what|which)(?: size)?(?: of)? threads?|threads?(?: size| pitch)?(?= *$)|threads?(?= (?:of|on|in|for)"
            r" (?:the |an? |my )?"
            rf"(?:{_PART}))|threads? (?:size|pitch)",
        ),
        (),
        unless=rf"{_HOW_TIGHT}|[0-9/]+[-x][0-9]+|m[0-9]+x?[0-9.]*|how many turns|drill|tap|sealant|tape",
        forbids=True,
        shown=_of_threads,
    ),
    Subject(
        "coarse or fine thread",
        (
            r"(?:fine|coarse)(?: threads?)? (?:or|vs|versus) (?:an? )?(?:fine|coarse)",
            r"threads?|bolts?|screws?|studs?|into|in",
        ),
        ("coarse or fine thread",),
        unless=r"[0-9/]+[-x][0-9]+|m[0-9]+|torque|tight\w*|drill|pitch|tpi",
    ),
    Subject(
        "whether the nut or the bolt is turned",
        (
            r"torque|tighten|turn|pull",
            r"nuts? or (?:the )?(?:bolts?|heads?)|(?:bolts?|bolt heads?|heads?) or (?:the )?nuts?",
        ),
        ("nut or bolt head turned",),
    ),
    Subject(
        "how long threadlocker takes",
        (
            r"thread ?lock(?:er|ing)?(?: compound| fluid| liquid)?|locking compound",
            r"cur(?:e|es|ed|ing)|set|sets|dry|dries|go off|how long|wait",
        ),
        ("threadlocker, time to cure",),
        unless=r"torque|m[0-9]+|heat\w*|temp\w*|remov\w*|undo",
    ),
    Subject(
        "the grade of bolts in brakes, steering and suspension",
        (
            r"(?:what|which) (?:grade|class|strength|kind|bolts?)|grade|class|how strong",
            r"bolts?|screws?|studs?|hardware|fasteners?",
            r"brakes?|cal?lipers?|suspension|steering|wishbones?|control arms?|driveshafts?|drive shafts?|prop ?shafts?"
            r"|ball joints?|(?:seat ?)?belts?|shocks?|u-joints?",
        ),
        (
            "grade of bolts in brakes, steering and suspension",
            "master cylinder, booster, caliper and brake control fasteners",
        ),
        unless=r"torque|tight\w*|[0-9]+|shear|load|stainless|weld\w*",
    ),
    Subject(
        "inch and metric grades that are alike",
        (
            r"equivalent|equal(?:s)?|same as|compare[sd]?|nearest|closest|metric|conver\w*",
            r"gr(?:ade)? ?[258]|8\.8|10\.9|12\.9|5\.8|class",
            r"metric|inch|imperial|sae|gr(?:ade)? ?[258].*(?:8\.8|10\.9|12\.9|5\.8)|(?:8\.8|10\.9|12\.9"
            r"|5\.8).*gr(?:ade)? ?[258]",
        ),
        ("inch and metric grades alike", "inch grade numbers"),
        unless=r"torque|tight\w*|m ?[0-9]+(?:x|\b)|[0-9]+/[0-9]+|stronger|better|yield|tensile|mark\w*",
        forbids=True,
    ),
    Subject(
        "how a centre-line radius is measured",
        (r"clr|cent(?:re|er)[- ]?line radius", r"measur\w*|find|work out|tell|what is|how"),
        ("centre-line radius, how to measure",),
        unless=r"[0-9]|least|min\w*|wall",
    ),
    Subject(
        "a tube that kinks",
        (
            r"kink(?:s|ed|ing)?|wrinkl(?:e|es|ed|ing)|collaps\w*",
            r"tub(?:e|es|ing)|pipes?|bend\w*",
            r"stop|avoid|prevent|keep|why|without|how|keeps",
        ),
        ("tube that kinks",),
        unless=r"[0-9]|hose|exhaust",
    ),
    Subject(
        "the plate of mounts and gussets",
        (
            r"plates?|gussets?|brackets?|tabs?",
            r"thick(?:ness)?|gauge|how (?:thick|heavy)",
            r"mounts?|mounting|gussets?|brackets?|suspension|engine|gearbox|shackles?|tabs?",
        ),
        ("plate of mounts and gussets",),
        unless=r"[0-9]|torque|weigh\w*|bend\w*|weld\w*",
    ),
    Subject(
        "how far apart bolt holes stand",
        (
            r"(?:bolts?|holes?) (?:spacing|apart|distance|pattern)|how far apart\b.*\b(?:bolts?|holes?)"
            r"|between (?:bolt )?holes",
        ),
        ("bolt hole, distance from the edge",),
        unless=r"[0-9]|torque|clips?|hangers?|pcd|wheel|flange|stud pattern",
    ),
    Subject(
        "where metals melt",
        (_METALS, r"melt(?:s|ed|ing)?(?: point| temp\w*)?"),
        ("melting points of metals",),
        unless=r"fuses?|insulation|wires?|hoses?|torque|nylon|plastic|rubber|shield\w*",
        forbids=True,
    ),
    Subject(
        "how long a fuel hose lasts",
        (
            r"how (?:long|often|old)|life|lifespan|when (?:do|should|must)|years?",
            r"fuel (?:hoses?|lines?)|petrol hoses?",
            r"last(?:s|ing)?|renew\w*|replac\w*|chang\w*|life|lifespan|good for|old",
        ),
        ("life of a fuel hose",),
        unless=r"temp\w*|hot|heat|pressure|psi|bar|feet|ft|inch(?:es)?|metres?",
    ),
    Subject(
        "how hot an engine bay is",
        (
            r"engine bay|under (?:the |a )?(?:bonnet|hood)|under-?(?:bonnet|hood)",
            r"how hot|temp(?:erature)?s?|heat",
            r"get|gets|is|run|typical\w*|temp(?:erature)?s?|air",
        ),
        ("heat of an engine bay",),
        unless=r"hoses?|lines?|wires?|cables?|nylon|rubber|stand\w*|fuse|relay|shield\w*|paint|sensor",
    ),
    Subject(
        "the metal of an exhaust",
        (
            r"exhausts?|mufflers?|silencers?|tail ?pipes?",
            r"(?<![0-9])(?:304|409)(?![0-9])|stainless|alumini[sz]ed|mild steel|grades?",
            r"or|vs|versus|better|best|which|what|last(?:s|ing)?|life|good|grade|worth|years?|rust\w*|difference",
        ),
        (),
        unless=r"torque|grow\w*|expan\w*|length|weld\w*|wall|gauge|wrap\w*|temp\w*|hot|degrees|deg[cf]|bolts?|nuts?"
        r"|weigh"
        r"|weight|size|diameter|stand\w*|magnet\w*|emissiv\w*",
        shown=lambda line, _: (
            ("304 and 409 in an exhaust",) if re.search("304|409|grade", line) else ("life of an exhaust",),
            [],
        ),
    ),
    Subject(
        "how much antifreeze in the mix",
        (
            r"coolants?|anti-?freeze",
            r"mix(?:ture)?(?: ratio)?|ratio",
            r"ratio|what|which|how much|best|right|usual|mix",
        ),
        ("coolant, half and half",),
        unless=r"colou?rs?|green|orange|pink|red|blue|yellow|with|and|together|brands?|different|freez\\w*|boil\\w*"
        r"|minus"
        r"|degrees|deg[cf]|litres?|liters?|quarts?|gallons?|old|new|kinds?|types?",
    ),
    Subject(
        "the pressure in brake lines",
        (
            r"(?:line |brake |hydraulic )*pressure(?: psi)?|psi|bar",
            r"brakes?|brake lines?|cal?lipers?",
            r"what|pressure psi|normal|usual|typical\w*|see|sees|how (?:much|many|high)|average|should",
        ),
        (),
        unless=r"[0-9]|residual|bleed\w*|burst|test\w*|pedal|master|bore|wanted|need|hoses?|rated|working|gauges?"
        r"|drums?"
        r"|pipe|tubes?|copper|steel|nickel|stand\w*|booster|servo|vacuum|plates?",
        shown=_of_pressure,
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line asks in passing; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
