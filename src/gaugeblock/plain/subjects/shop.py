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
        unless=r"torque|grow\w*|expan\w*|length|weld\w*|wall|gauge|wrap\w*|temp\w*|hot|degrees|deg[cf]|bolts?|nuts?|weigh"
        r"|weight|size|diameter|stand\w*|magnet\w*",
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
        unless=r"colou?rs?|green|orange|pink|red|blue|yellow|with|and|together|brands?|different|freez\\w*|boil\\w*|minus"
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
        unless=r"[0-9]|residual|bleed\w*|burst|test\w*|pedal|master|bore|wanted|need|hoses?|rated|working|gauges?|drums?"
        r"|pipe|tubes?|copper|steel|nickel|stand\w*|booster|servo|vacuum|plates?",
        shown=_of_pressure,
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line asks in passing; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
