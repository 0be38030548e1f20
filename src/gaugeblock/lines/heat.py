"""Lines beside heat: what a line material, hose class, fluid or fuel stands, and whether a temperature is within it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import INFORM, NOT_OK
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import stated
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.answer.unpublished import maker_of, nobody
from gaugeblock.errors import InputError
from gaugeblock.lines import cautions as line_cautions
from gaugeblock.lines.found import of_stop
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.warmth.item import OPEN_STATES, item_of
from gaugeblock.warmth.verdict import beside, judge, left, low_end, no_limit

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.check import Check
    from gaugeblock.figure import Figure
    from gaugeblock.warmth.item import Item

VERB = "KEEP UNDER"
_NO_DURATION = "duration not printed"
MOST = 3  # choices of a state that stand as candidates
NO_MORE = "the maker of the part states no more"
TOO_HOT = "It is too hot by a figure from memory."
KEEP = "keep it under this"
AGAIN = "a second reading, by crayon, paint or thermocouple, is under it too"
_SAME = 0.02  # as figures that disagree are told


def _heat_topic() -> Topic:
    from gaugeblock.lines.ask import HEAT

    return HEAT


@opens(_heat_topic, "item")
def heat(
    item: str,
    *,
    klass: str | None = None,
    state: str | None = None,
    at: str | None = None,
    fact: str | None = None,
    pressure: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a line material, hose class, fluid or fuel stands, and whether a temperature is within it.

    Parameters are text as people write them: ``item`` ``DOT 4``, ``PTFE``, ``SAE J30 R9``, ``gasoline``; ``klass`` the
    hose class (``SAE J2260``); ``state`` ``wet``, ``continuous``, ``3 % water``; ``at`` a temperature to judge
    (``120 degC``); ``fact`` what else is asked of it: ``working pressure``, ``burst pressure``, ``ignition`` or ``flash
    point``; ``pressure`` that shall be in it (``60 psi``), put against its working pressure.

    Returns a Sheet: the limit that governs first, then all else that is published for heat and pressure. Its decision
    is
    the limit to keep under; with ``at`` it stops where that is passed. A state that was not named is asked, with what
    comes of each. Nobody's limit is an answer too.

    Raises LookupMiss with the nearest items, Ambiguous with the classes the answer depends on.

    >>> heat("DOT 4", state="wet").decision.figure.text
    '155'
    """
    data = data or refdata()
    asked = {"item": item, "class": klass, "state": state, "at": at}
    asked |= {key: typed for key, typed in (("fact", fact), ("pressure", pressure)) if typed is not None}
    for key, typed in asked.items():
        if typed is not None and not isinstance(typed, str):
            raise InputError(str(typed)[:60], key, "text is wanted", (), 'write it in quotes, "120 degC"')
    given = None if at is None else stated_temperature(at, data)
    named, who = maker_of(item, "lines", "item", data)
    if named:
        near = data.words("lines", "related item").get(named, "")
        what = "limit of heat" if fact is None and pressure is None else fact or "working pressure"
        return nobody(named, who, "KEEP UNDER", what, asked, data, near)
    found = item_of(item, klass, state, data)
    if fact is not None or pressure is not None:
        from gaugeblock.lines.bears import WORKING, told

        if at is not None:
            why = "a temperature to judge and another fact of it are two questions"
            raise InputError(at, "at", why, (), "ask one at a time")
        return told(found, fact or WORKING, pressure, asked, data)
    if found.open_key:
        choices = found.alternatives()
        if found.open_key != "state" or not 0 < len(choices) <= MOST:
            raise found.must_name()
        return _open_state(found, choices, asked, given)
    checks = [] if given is None else judge(found, given)
    governs = found.limit.key["state"] if found.limit is not None else ""
    state_said = found.state or (governs if governs not in OPEN_STATES else "")
    decision, questions = _decision(found, given, checks)
    return Sheet(
        ", ".join(p for p in (found.cell, found.klass, state_said) if p),
        asked,
        data,
        [_with_state(f, found.state) for f in found.figures],
        checks,
        line_cautions.cautions_of(found),
        decision=decision,
        questions=questions,
    )


def _with_state(figure: Figure, asked: str | None) -> Figure:
    """The figure with the state it is for among its conditions, where that is not what was asked."""
    state = figure.key["state"]
    if state in (asked, *OPEN_STATES):
        return figure
    return figure.replace(conditions="; ".join(p for p in (state, figure.conditions) if p))


def stated_temperature(at: str, data: Refdata, where: str = "--at") -> Figure:
    """A temperature as the user states it, as a Figure."""
    measure = units.parse_measure(at, "temperature", where)
    return stated(measure, "temperature", where.lstrip("-"), data)


def maker_question(found: Item, checks: Sequence[str] = ()) -> Question:
    """What must be asked of whoever made it."""
    if found.cell.startswith("brake fluid"):
        text = "Read the class of the brake fluid off its bottle: DOT 3, DOT 4, DOT 5 or DOT 5.1."
        return Question(FILL_IN, text, "fluid", tuple(checks))
    is_line = found.table == "lines/materials"
    what = "the highest temperature it stands in use" + ("" if is_line else ", or the least at which it may boil")
    return Question(
        ASK_MAKER,
        f"Ask the maker of the {found.said}: {what}.",
        "line_limit" if is_line else "fluid_limit",
        tuple(checks),
    )


def _decision(found: Item, at: Figure | None, checks: list[Check]) -> tuple[Decision, tuple[Question, ...]]:
    limit = found.limit
    names = [c.name for c in checks]
    if limit is None:
        question = maker_question(found, [c.name for c in checks if c.asks])
        boils = found.informs
        hot = ""
        if boils is not None and at is not None and low_end(boils, at.unit) < at.typical:
            hot = f" At {at.text} {at.unit} part of it boils in an open vessel."
        return none(VERB, f"{sentence(no_limit(found))}{hot} {question.text}"), (question,)
    stops = [c for c in checks if c.stops]
    if stops:
        return _stopped(stops, limit, found.data), ()
    other = lower_others(found)
    if other:
        figures = [min(other, key=lambda f: low_end(f, limit.unit)), limit]
        candidates = [Candidate(f, f"by {f.source or 'habit'}, {f.locator}", _outcome(f, at)) for f in figures]
        question = maker_question(found, [c.name for c in checks if c.asks])
        return ask(VERB, candidates, names, f"Sources disagree. {question.text}"), (question,)
    open_ones = [c for c in checks if c.asks]
    if limit.evidence.basis == "common practice":
        question = maker_question(found, [c.name for c in open_ones])
        candidate = Candidate(limit, "the maker of the part states no less", _outcome(limit, at))
        return ask(VERB, [candidate], names, f"This is a shop habit. {question.text}"), (question,)
    if any(c.result == NOT_OK for c in open_ones):  # by a limit that nobody read in its own text
        question = maker_question(found, [c.name for c in open_ones])
        candidate = Candidate(limit, NO_MORE, _outcome(limit, at))
        return ask(VERB, [candidate], [c.name for c in open_ones], f"{TOO_HOT} {question.text}"), (question,)
    if open_ones:
        text = f"Read the temperature again, by crayon, paint or thermocouple: {open_ones[0].reason}."
        question = Question(MEASURE, text, "temperature", tuple(c.name for c in open_ones))
        return ask(VERB, [Candidate(limit, AGAIN, _outcome(limit, at))], [c.name for c in open_ones], text), (question,)
    return use(VERB, limit, _said(found, limit, at), names), ()


def lower_others(found: Item) -> list[Figure]:
    """Living figures that put the limit of an item lower than the one that governs, by more than sources differ by
    rounding.
    """
    limit = found.limit
    if limit is None:
        return []
    end = low_end(limit, limit.unit)
    return [f for f in found.stricter(limit) if low_end(f, limit.unit) < end - _SAME * abs(end)]


def _stopped(stops: Sequence[Check], limit: Figure, data: Refdata) -> Decision:
    required = stops[0].required
    figure = required.figure if required is not None and required.figure is not None else limit
    unit = stops[0].required.unit if stops[0].required is not None else limit.unit
    do = f"Keep it under {beside(limit, unit, data)}, or take what stands more."
    if figure.quantity == "temperature_minimum":
        do = f"Keep it over {beside(figure, unit, data)}, or take what stands the cold."
    return stop(VERB, of_stop(stops[0]), [c.name for c in stops], do)


def _said(found: Item, limit: Figure, at: Figure | None) -> str:
    """What is said beside a limit to use."""
    said = "" if at is None else f"{left(limit, at)} at {at.text} {at.unit}."
    if at is not None and is_cold(at) and all(f.quantity != "temperature_minimum" for f in found.figures):
        said = f"That is no limit of cold: how cold {found.said} may get is not on record."
    if limit.quantity == "storage_temperature_maximum":
        return f"{said} That is in storage; ask the maker what it stands in use.".strip()
    if _NO_DURATION in limit.conditions:
        return f"{said} For how long is not printed: stay well under it where it is hot for hours.".strip()
    return said


def sentence(text: str) -> str:
    """Text with a capital and a full stop."""
    return f"{capital(text)}."


def is_cold(at: Figure) -> bool:
    """Whether a temperature is below freezing: room to a limit of heat says nothing there."""
    return units.to_base(low_end(at, at.unit), at.unit) < units.to_base(0.0, "degC")


def _outcome(limit: Figure, at: Figure | None) -> str:
    """What comes of a limit at a temperature."""
    if at is None:
        return KEEP
    if is_cold(at):
        return "how cold it may get is not on record"
    return "stop: it is too hot" if at.typical > low_end(limit, at.unit) * (1 + 1e-9) else left(limit, at)


def when_words(choice: str) -> str:
    """The condition that makes a class or state the one."""
    return _WHEN.get(choice, choice)


_WHEN = {
    "wet": "the fluid has been in use, or nobody knows how old it is",
    "dry": "the fluid is new, from a sealed can",
    "continuous": "it is that hot for long",
    "intermittent": "it is that hot for a short while only",
    "peak": "it is that hot for a short while only",
}


def state_question(found: Item, key: str, checks: Sequence[str] = ()) -> Question:
    """Which of the states or classes it is."""
    if "wet" in found.choices:
        text = f"Is the {found.cell} new from a sealed can (dry), or has it been in use (wet)?"
    elif found.open_key == "class":
        text = f"Read the class off the {found.cell}: {', '.join(found.choices[:6])}."
    else:
        text = f"Which holds for the {found.cell}: {' or '.join(found.choices[:6])}?"
    return Question(FILL_IN, text, key, tuple(checks))


def _open_state(
    found: Item, choices: Sequence[tuple[str, Item]], asked: dict[str, str | None], at: Figure | None
) -> Sheet:
    """The sheet of an item whose state nobody named: each of its states with what comes of it."""
    limits = [(choice, item, item.limit) for choice, item in choices if item.limit is not None]
    checks = [] if at is None else [judge(item, at, case=choice)[0] for choice, item, _ in limits]
    candidates = [Candidate(f, when_words(c), _outcome(f, at)) for c, _, f in limits]
    key = "state" if found.table == "lines/materials" else "fluid_state"
    question = state_question(found, key, list(dict.fromkeys(c.name for c in checks)))
    names = list(dict.fromkeys(c.name for c in checks))
    decision = ask(VERB, candidates, names, question.text)
    if checks and all(c.stops for c in checks):
        highest = beside(limits[-1][2], at.unit, found.data) if at is not None else ""
        decision = stop(
            VERB, candidates[:1], names, f"It is too hot in every state: keep it under {highest} at the most."
        )
    else:
        checks = [c.replace(bears=INFORM) for c in checks]  # the state is asked, with what comes of each
    figures = [f.replace(conditions="; ".join(p for p in (c, f.conditions) if p)) for c, _, f in limits]
    cautions = line_cautions.cautions_of(choices[0][1])
    questions = () if decision.kind == "stop" else (question,)
    return Sheet(found.said, asked, found.data, figures, checks, cautions, decision=decision, questions=questions)
