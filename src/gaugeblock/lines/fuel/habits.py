"""The answer ``fuel_habit``: what filter and what pressure shops give a carburettor or an injection."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous
from gaugeblock.lines.fuel.demand import SUPPLY
from gaugeblock.lines.fuel.keys import CARBURETTOR, INJECTION, SYSTEMS
from gaugeblock.lines.given import choice_of
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure

FILTER, PRESSURE = "filter", "pressure"
SUBJECTS = {FILTER: ("fuel filter", "micron", "microns"), PRESSURE: ("fuel pressure", "psi")}
# subject, system -> the rows: subject of the table, case, quantity, the condition that is printed; the safer first.
_ROWS = {
    (FILTER, INJECTION): (
        ("filter", "after the pump, injection", "filter_rating_maximum", "after the pump"),
        ("filter", "before the pump", "filter_rating", "before the pump"),
    ),
    (FILTER, CARBURETTOR): (
        ("filter", "after the pump, carburettor", "filter_rating_maximum", "after the pump"),
        ("filter", "before the pump", "filter_rating", "before the pump"),
    ),
    (PRESSURE, INJECTION): (("injection, port", "any", "fuel_pressure", "port injection"),),
    (PRESSURE, CARBURETTOR): (
        ("vintage carburettor", "any", "fuel_pressure_maximum", "vintage, at the most"),
        ("four-barrel carburettor", "any", "fuel_pressure", "four-barrel"),
    ),
}
_ASKED = {
    FILTER: "Which filter does the maker of pump and injectors or carburettor ask for, and what flow is it made for?",
    PRESSURE: "What pressure does the maker of the carburettor or the injection ask for?",
}
_DO = {
    FILTER: "Ask the maker of the pump: a filter ahead of it that is too fine starves it.",
    PRESSURE: "Ask the maker of carburettor or injection, and read it on a gauge at the engine.",
}


def _habit_topic() -> Topic:
    from gaugeblock.lines.fuel.ask import HABIT

    return HABIT


@opens(_habit_topic, "subject")
def fuel_habit(subject: str, *, system: str | None = None, data: Refdata | None = None) -> Sheet:
    """What filter and what pressure shops give a carburettor or an injection.

    ``subject`` is ``filter`` or ``pressure``; ``system`` ``carburettor`` or ``injection``.

    Returns a Sheet of candidates: habit alone, so the makers are asked.

    Raises InputError for a subject or a system that there is not, Ambiguous where the system was not said.

    >>> fuel_habit("filter", system="injection").decision.figures[0].text
    '10'
    """
    data = data or refdata()
    named = choice_of(subject, "subject", SUBJECTS) or ""
    which = choice_of(system, "system", SYSTEMS)
    if which is None:
        raise Ambiguous(named, SUPPLY, "carburettor or injection changes it", tuple(SYSTEMS), "name the system")
    found = [(_row(*row[:3], data=data), row[3]) for row in _ROWS[named, which]]
    check = Check(f"fuel {named}", CANNOT_TELL, "habit, and the makers of the parts govern", subject=named, bears=ASK)
    candidates = [Candidate(figure, said) for figure, said in found]
    decision = ask(f"FUEL {named.upper()}", candidates, (check.name,), _DO[named])
    questions = [Question(ASK_MAKER, _ASKED[named], named, (check.name,))]
    asked = {"subject": subject, "system": system}
    title = f"fuel {named}, {which}"
    return Sheet(title, asked, data, [f for f, _ in found], [check], [], decision=decision, questions=questions)


def _row(subject: str, case: str, quantity: str, *, data: Refdata) -> Figure:
    return look_up(SUPPLY, quantity, data=data, subject=subject, case=case, service="vehicle")
