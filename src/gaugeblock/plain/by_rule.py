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
# The same of the subjects of bolts and wrenches.
_OF_BOLTS = (
    *("crow", "nyl", "red or", "blue or", "ng washer", "split washer", "lock washer", "lockwasher", "star washer"),
    *("recheck", "re-check", "retorq", "re-torq", "retight", "re-tight", "over the wheel", "over the lug"),
    *(
        "check the wheel",
        "check wheel",
        "seiz",
        "gall",
        "stretch",
        "tty",
        "to-yield",
        "to yield",
        "goes below",
        "go below",
    ),
    *("in its place", "in their place", "a2-", "a4-", "stainless", "use it", "big torque", "the big", "of its range"),
    *("of the range", "closer", "closest", "accura", "scatter", "proof", "spanner", "which socket", "what socket"),
    *("which wrench", "what wrench", "wrench what", "wrench which", "flats", "snap", "break", "yield", "jam nut"),
    *("thin nut", "thin jam", "half nut", "castle", "cotter", "split pin"),
)


def subject_of(question: str, words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The rules that say all of what a line is about; InputError for a line that is refused by name."""
    line = " ".join(words)
    told: Found | None = None
    if any(cue in line for cue in _CUES):
        from gaugeblock.plain.by_name import refused_by_name
        from gaugeblock.plain.subjects import told_by_subject

        refused_by_name(question, words)
        told = told_by_subject(words, data)
    if told is None and any(cue in line for cue in _OF_BOLTS):
        from gaugeblock.plain.bolt_subjects import told_of_bolts

        told = told_of_bolts(question, words, data)
    return None if told is None else Answer(f"a look through the rules for: {told.asked}", told)


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
    """A thread that was identified; with it the rule of the series that it was taken for, where rules alone have it:
    BSF, or what stands on an old British machine.
    """
    series = "bsf" if "bsf" in reading.values.get("guess", "") else ""
    if not series and "origin" in reading.values and "diameter" in reading.values:
        from gaugeblock import units

        across = units.parse_measure(reading.values["diameter"], "length", "diameter").to("mm")
        series = "ba" if across <= _MOST_BA_MM else "bsf"
    if not series:
        return got
    of = ("threads", "per", "inch") if series == "bsf" else ("tap", "drill")
    rules = rules_of(("british", series, *of), data)
    return got if rules is None else got.replace(more=(*got.more, rules))


_MOST_BA_MM = 6.1  # 0BA, the thickest
