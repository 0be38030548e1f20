"""What the rules say of a line, as its Answer: of all its words, of the first of two questions, of most of it; and who
has what no table is about.
"""

from __future__ import annotations

from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata


# One of these pieces stands in every line of a subject, so that no pattern of one is made in vain.
_PIECES = """
nitrile nbr buna epdm fkm fpm fluor silicone chang clip clamp braid o2 oxygen lambda band hot temp glow dot mix top weld
washer sleeve spacer slip whit bsw bsf 0ba 1ba 2ba 3ba 4ba 5ba 6ba 7ba 8ba 9ba
torch flame heat red wrap hose r0 r1 r2 r3 r4 r5 r6 r7 r8 r9 primar coolant freeze brak tank drum
"""
_CUES = tuple(_PIECES.split())
# The same of what is explained; of these a line has a thing too.
_OF_EXPLAINED = (
    *(" 15", " 16", " 20", " spin", " tag", " ton", "-15", "-16", "2-piece", "3s ", "5s ", "7s ", "8620"),
    *("9310", "best steel", "best tub", "big ", "bigger ", "carrier bearing", "center bearing"),
    *("centre bearing", "clutch", "constant", "core", "cover", "cv", "depth", "differs", "do for"),
    *("double cardan", "double-cardan", "drive gear", "driven gear", "en 36", "en36", "enough", "fifteen"),
    *("file", "find", "flex", "gps", "h 900", "h1025", "h1100", "h6", "h7", "h8", "h9", "halve"),
    *("hanger bearing", "heat a ", "heat my ", "heat the ", "heating ", "how bent", "how true", "hub"),
    *("huge ", "in place of", "inch tires", "inch tyres", "instead of", "interference", "larger "),
    *("limited slip", "locked diff", "locker", "locking", "long axle", "long one", "long shaft", "longer"),
    *("lsd", "one side", "open diff", "order", "oven", "oversize ", "pay for", "pinion height", "plung"),
    *("power take", "press", "pto", "r15", "r16", "r20", "run out", "run-out", "runout", "same side"),
    *("sat nav", "satnav", "sequence", "short ", "shorter", "shrink", "shrunk", "sixteen", "skin"),
    *("speedo gear", "speedometer gear", "spool", "spread", "spring", "spun", "stand in for", "steady b"),
    *("step by step", "stiff", "straight", "stub axle", "substitut", "taller ", "taper", "teeth"),
    *("thread lock", "threadlock", "tonnage", "tooth drive", "tripod", "twist", "two-piece", "uneven"),
    *("variation", "varies", "vary", "warm ", "what material", "what steel", "what steps", "what tub"),
    *("what way", "wheel bearing", "which material", "which side", "which steel", "which tub", "which way"),
    *("wind", "worth"),
)
# The same of what rules say of axles and joints.
_OF_GEARED = (
    *("pattern", "marking", "contact", "phase", "phasing", "clocked", "line up", "lined up", "lining up", "in line"),
    *("crush", "collapsible", "quarter turn", "cord", "string", "rope", "spring balance", "scale", "seal"),
    *(
        "gears",
        "gear set",
        "gearset",
        "old r",
        "used r",
        "same r",
        "old crown",
        "same crown",
        "yoke",
        "slip",
        "0 deg",
        "zero",
        "no angle",
        "no working",
        "nought",
        "straight",
    ),
)
_THINGS = (
    *("shaft", "axle", "prop", "diff", "pinion", "gear", "spline", "ring", "tyre", "tire", "crown", "joint", "lash"),
    *(
        "file",
        "hous",
        "ratio",
        "cv",
        "wheel",
        "r16",
        "r15",
        "hub",
        "press",
        "collar",
        "h7",
        "h6",
        "h8",
        "crawler",
        "bearing",
        "dash",
        "gps",
        "17-4",
        "630",
        "tall",
    ),
)


def subject_of(question: str, words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that say all of what a line is about; InputError for a line that is refused by name."""
    line = " ".join(words)
    geared = _of_gears(words, line, data)
    if geared is not None or not any(cue in line for cue in _CUES):
        return geared
    from gaugeblock.plain.by_name import refused_by_name
    from gaugeblock.plain.subjects import told_by_subject

    refused_by_name(question, words)
    told = told_by_subject(words, data)
    return None if told is None else _of_rules(told)


def _of_rules(told: Found) -> Answer:
    return Answer(f"a look through the rules for: {told.asked}", told)


def _of_gears(words: tuple[str, ...], line: str, data: Refdata) -> Answer | None:
    """What rules say of axles and joints, or what is told of them that hangs on no table."""
    if any(cue in line for cue in _OF_GEARED):
        from gaugeblock.plain.subjects import told_by_subject
        from gaugeblock.plain.subjects_geared import GEARED

        rules = told_by_subject(words, data, GEARED)
        if rules is not None:
            return _of_rules(rules)
    if not any(cue in line for cue in _OF_EXPLAINED) or not any(thing in line for thing in _THINGS):
        return None
    from gaugeblock.plain.explained.reading import explained

    found = explained(words, data)
    return None if found is None else Answer(f"a question of {found[0].title}{found[1]}", found[0])


def rules_of(words: tuple[str, ...], data: Refdata, *, whole: bool = False) -> Answer | None:
    """The rules that have every word of a line; unless it has to be ``whole``, all but a place or a doing."""
    from gaugeblock.plain.ruled import ruled

    rules = ruled(words, data, whole=whole)
    return None if rules is None else Answer(f"a look through the rules for: {rules.asked}", rules)


def asked_for(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that answer a line which asks for no figure."""
    if "where" not in words and words[1:2] not in (("i",), ("you",), ("we",), ("it",)):
        return None  # without opening the rules
    from gaugeblock.plain.ruled import asks_no_figure

    return rules_of(words, data) if asks_no_figure(words) else None


def first_of_two(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that answer the first of two questions."""
    from gaugeblock.plain.beside import questions

    for head, rest in questions(words):
        rules = rules_of(head, data)
        if rules is not None:
            return rules.replace(read_as=f"{rules.read_as}; not answered: {' '.join(rest)}")
    return None


def nearly(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that have most of a line."""
    from gaugeblock.plain.ruled import nearest

    rules = nearest(words, data)
    return None if rules is None else Answer(f"a look through the rules for: {rules.asked}", rules)


def outside_of(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """Who has what is asked, where it is of a subject that no table is about; of some a rule says something."""
    from gaugeblock.plain.outside import by_rule, not_looked_at, outside

    found = outside(words, data)
    if found is None:
        return None
    sheet, known = found
    about = by_rule(words, sheet.title)
    rules = rules_of(about, data) if about else None
    if rules is not None:
        more = not_looked_at(words, " ".join((known, *about)))
        return rules.replace(read_as=f"{rules.read_as}{more}")
    return Answer(f"a question of {sheet.title}{not_looked_at(words, known)}", sheet)


def with_guess(reading: Reading, got: Answer, data: Refdata) -> Answer:
    """A thread that was identified; with it the rule of the series that it was taken for, where rules alone have it."""
    if "bsf" not in reading.values.get("guess", ""):
        return got
    rules = rules_of(("british", "bsf", "threads", "per", "inch"), data)
    return got if rules is None else got.replace(more=(*got.more, rules))
