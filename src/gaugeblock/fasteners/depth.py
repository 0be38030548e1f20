"""Engagement: how much thread a bolt needs in the metal that it goes into."""

from __future__ import annotations

from functools import wraps

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import INFORM, STOP, Bound, Check, at_least
from gaugeblock.answer.decision import Candidate, none, stop, use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.engagement import ends, is_stop, minimums, needed
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure

TABLE = "fasteners/engagement"
VERB, CHECK = "ENGAGE", "length of engagement"


def _topic() -> Topic:
    from gaugeblock.fasteners.thread_ask import ENGAGEMENT

    return ENGAGEMENT


def metals(data: Refdata) -> list[str]:
    """The metals that a rule of the tables is for."""
    return list(dict.fromkeys(row["into"] for row in data.table(TABLE).rows if not row.standing))


@opens(_topic, "thread")
def engagement(thread: str, *, into: str | None = None, have: str | None = None, data: Refdata | None = None) -> Sheet:
    """The least length of thread that a bolt needs in a tapped metal, by the rules of manuals and handbooks.

    ``thread`` ``3/8-16`` or ``M8``; ``into`` the metal: ``aluminium``, ``cast iron``, ``steel``; ``have`` how much is
    engaged, ``5/8 in``, which is then judged.

    Returns a Sheet; its decision is ``none`` for a metal that no rule of the tables is for. Raises Ambiguous with the
    metals when none is named, LookupMiss for what is no thread or no metal.

    >>> round(engagement("3/8-16", into="aluminium").decision.figure.typical, 4)
    0.75
    """
    data = data or refdata()
    found = keys.thread(thread, data)
    asked = {"thread": thread, "into": into, "have": have}
    if into is None:
        raise Ambiguous(found.cell, "into", "the metal was not said", metals(data), "name one of these")
    metal = data.words("fasteners", "into").get(into.casefold()) or canonical(data, TABLE, "into", into)
    rules = minimums(metal, data)
    title = f"thread of {found.cell} into {metal}"
    if not rules:
        do = f"No rule for {metal} was found. Ask the maker of the part, or of its insert."
        return Sheet(title, asked, data, [], [], [], decision=none(VERB, do))
    diameter = lookup.look_up("fasteners/threads", "major_diameter", data=data, thread=found.cell)
    key = Keys(thread=found.cell)
    by_length = {needed(rule, found, diameter, key, data): rule for rule in rules}
    _, least = ends(by_length, data)
    others = [figure for figure in by_length if figure is not least]
    rule = by_length[least]
    title += f" ({rule.typical:g} diameters, {rule.source or 'habit'})"
    said = [Caution(f"The rule as printed: {rule.conditions}.", "damage", (rule.id,), rule.source)]
    figures = [least, *others, rule]
    if have is None:
        return Sheet(title, asked, data, figures, [], said, decision=use(VERB, least))
    check = _judged(have, least, is_stop(rule, data), data)
    shown = [*figures, check.actual.figure] if check.actual is not None and check.actual.figure is not None else figures
    decision = use(VERB, least, check.reason)
    if check.stops:
        decision = stop(VERB, [Candidate(least, "required")], [CHECK], check.reason)
    return Sheet(title, asked, data, shown, [check], said, decision=decision)


def of_grade(answer: Callable[..., Sheet]) -> Callable[..., Sheet]:
    """The answer as a line asks it, which may name the grade of the bolt: no rule hangs on it, and it is said."""

    @wraps(answer)
    def asked(*args: object, grade: str | None = None, **options: object) -> Sheet:
        sheet = answer(*args, **options)
        if grade is None:
            return sheet
        text = (
            f"The rule names no grade of bolt. Ask the torque of {grade} with the length that is engaged, and whether"
            " the thread strips is judged."
        )
        return sheet.replace(cautions=(*sheet.cautions, Caution(text, "damage")))

    return asked


def _judged(have: str, least: Figure, may_stop: bool, data: Refdata) -> Check:
    """Whether as much thread is engaged as a rule asks."""
    typed = stated(read_positive(have, "length", "have"), "length_of_engagement", "have", data)
    number = units.from_base(base(typed), least.unit)
    needed, actual = Bound(least.typical, least.unit, "min", least), Bound(number, least.unit, figure=typed)
    enough = number >= least.typical * (1 - 1e-9)
    reason = f"{have} is engaged, {'which is enough' if enough else 'which is too little'} by this rule."
    return at_least(CHECK, actual, needed, reason, bears=STOP if may_stop else INFORM)


def by_diameters(into: str, *, data: Refdata) -> Sheet:
    """The least length of thread in a metal by its rules, in diameters of the bolt, whatever the thread."""
    metal = data.words("fasteners", "into").get(into.casefold()) or canonical(data, TABLE, "into", into)
    rules = minimums(metal, data)
    title = f"thread of a bolt into {metal}, in diameters"
    asked: dict[str, str | None] = {"into": into}
    if not rules:
        do = f"No rule for {metal} was found. Ask the maker of the part, or of its insert."
        return Sheet(title, asked, data, [], [], [], decision=none(VERB, do))
    stops = [rule for rule in rules if is_stop(rule, data)]
    least = stops[-1] if stops else rules[0]
    others = [rule for rule in rules if rule is not least]
    care = f"The rule as printed: {least.conditions}."
    said = [Caution(care, "damage", (least.id,), least.source)]
    return Sheet(title, asked, data, [least, *others], [], said, decision=use("DIAMETERS", least))
