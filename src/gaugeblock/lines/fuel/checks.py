"""The checks of one fuel supply: pump, lines, pressure, filter, vent."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Bound, Check, at_least, at_most
from gaugeblock.answer.printing import number_only, printed
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.lines.fuel.demand import SUPPLY
from gaugeblock.lines.fuel.keys import CARBURETTOR, INJECTION, Supply
from gaugeblock.lookup import look_up

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.lines.fuel.demand import Demand
    from gaugeblock.lines.fuel.pipe import Pipe
    from gaugeblock.tables.load import Refdata

CONSUMPTION = "specific fuel consumption"
KIND = "fuel"
WHICH = "Which fuel does the engine run on? Alcohol takes far more of it than gasoline."
_BURNS = "What does this engine burn at full load, by its maker or on the dynamometer (lb/(hp*h), g/(kW*h))"


def checks_of(
    of: Supply, ways: Sequence[Demand], pipes: Sequence[Pipe], data: Refdata
) -> tuple[list[Check], list[Question]]:
    """What the supply keeps, and what is open."""
    checks: list[Check] = []
    questions: list[Question] = []
    if not of.given.has("consumption") and not of.given.has("injector"):
        said = "what the engine burns is a habit figure"
        checks.append(Check(CONSUMPTION, CANNOT_TELL, said, subject="consumption", bears=ASK))
        asks = f"{_BURNS}?" if of.boost is not None else f"{_BURNS}, and is it boosted?"
        questions.append(Question(FILL_IN, asks, "consumption", (CONSUMPTION,)))
    if of.is_assumed:
        known = of.given.has("consumption") or of.given.has("injector")
        said = f"which fuel it runs on is not given; {of.fuel} is reckoned"
        checks.append(Check(KIND, CANNOT_TELL, said, subject="fuel", bears=INFORM if known else ASK))
        if not known:
            questions.append(Question(FILL_IN, WHICH, "fuel", (KIND,)))
    made_of = (
        _pump(of, ways, data),
        _duty(of, data),
        _pressure(of, data),
        _rated(of, data),
        _filter(of, data),
        _filter_flow(of, ways, data),
    )
    for made in made_of:
        if made is not None:
            checks.append(made)
            if made.asks:
                questions.append(_question(made))
    checks += [_loss(of, pipe, data) for pipe in pipes]
    need = number_only(ways[0].needed, data)
    said = f"the vent lets in as much as is burnt, {need}; no general size for cars was found"
    checks.append(Check("tank vent", CANNOT_TELL, said, subject="vent", bears=INFORM))
    return checks, questions


def _question(check: Check) -> Question:
    text = {
        "pump": "What does the pump deliver at its pressure, by its maker's curve, with the voltage at its plug?",
        "pressure": "What pressure does the carburettor's or the injection's maker ask for?",
        "filter": "Which filter does the maker of pump or injectors ask for?",
        "filter_flow": "What flow is the filter made for, and what flow goes through it?",
        "rated": "What pressure can the pump make against a closed line, by its maker?",
        "duty": "Which duty does the maker of the engine management allow?",
    }[check.subject]
    key = {"rated": "pressure"}.get(check.subject, check.subject)
    return Question(ASK_MAKER, text, key, (check.name,))


def _in(figure: Figure, number: float, unit: str, side: str = "") -> Bound:
    return Bound(units.in_unit(number, figure.unit, unit), unit, side, figure)


def _pump(of: Supply, ways: Sequence[Demand], data: Refdata) -> Check | None:
    pump, needed = of.given.figure("pump", data), ways[0].needed
    if pump is None:
        return None
    said = f"{number_only(pump, data)} delivered, {number_only(needed, data)} needed"
    bounds = _in(pump, pump.typical, pump.unit), _in(needed, needed.typical, pump.unit, "min")
    return at_least("pump", *bounds, said, subject="pump")


def _pressure(of: Supply, data: Refdata) -> Check | None:
    own = of.given.figure("pressure", data)
    if own is None or of.system is None:
        return None
    case = {CARBURETTOR: "four-barrel carburettor", INJECTION: "injection, port"}[of.system]
    habit = look_up(SUPPLY, "fuel_pressure", data=data, subject=case, case="any", service="vehicle")
    most = habit.high if habit.high is not None else habit.typical
    said = f"{number_only(own, data)} given; habit for a {case} is {printed(habit, data)}"
    bounds = _in(own, own.typical, own.unit), _in(habit, most, own.unit, "max")
    return at_most("pressure", *bounds, said, subject="pressure", bears=ASK)


def _duty(of: Supply, data: Refdata) -> Check | None:
    if not of.given.has("injector"):
        return None
    habit = look_up(SUPPLY, "duty_maximum", data=data, subject="injectors", case="duty", service="vehicle")
    own = of.given.figure("duty", data)
    if own is None:
        said = f"reckoned open all the time; shops let them work to {number_only(habit, data)} (from memory)"
        return Check("injector duty", CANNOT_TELL, said, subject="duty", bears=INFORM)
    most = habit.high if habit.high is not None else habit.typical
    said = f"{number_only(own, data)} given; shops let injectors work to {number_only(habit, data)}"
    bounds = _in(own, own.typical, "%"), _in(habit, most, "%", "max")
    return at_most("injector duty", *bounds, said, subject="duty", bears=ASK)


def _rated(of: Supply, data: Refdata) -> Check | None:
    rated, own = of.given.figure("rated", data), of.given.figure("pressure", data)
    if rated is None:
        return None
    name = "pressure against rating"
    if own is None:
        return Check(name, CANNOT_TELL, "the pressure is not given", subject="rated", bears=ASK)
    said = f"{number_only(own, data)} in the line, {number_only(rated, data)} rated"
    bounds = _in(own, own.typical, rated.unit), _in(rated, rated.typical, rated.unit, "max")
    return at_most(name, *bounds, said, subject="rated")


def _filter_flow(of: Supply, ways: Sequence[Demand], data: Refdata) -> Check | None:
    own = of.given.figure("filter_flow", data)
    if own is None:
        return None
    through = of.given.figure("pump", data) or ways[0].needed
    said = f"made for {number_only(own, data)}, {number_only(through, data)} goes through it"
    bounds = _in(own, own.typical, own.unit), _in(through, through.typical, own.unit, "min")
    return at_least("filter flow", *bounds, said, subject="filter_flow")


def _filter(of: Supply, data: Refdata) -> Check | None:
    own = of.given.figure("filter", data)
    if own is None or of.system is None:
        return None
    case = f"after the pump, {of.system}"
    habit = look_up(SUPPLY, "filter_rating_maximum", data=data, subject="filter", case=case, service="vehicle")
    said = f"{number_only(own, data)} fitted; habit {case} is {number_only(habit, data)} or finer"
    bounds = _in(own, own.typical, "um"), _in(habit, habit.typical, "um", "max")
    return at_most("filter", *bounds, said, subject="filter", bears=ASK)


def _loss(of: Supply, pipe: Pipe, data: Refdata) -> Check:
    name = f"{pipe.name} line"
    key = "loss" if pipe.name == "feed" else "return_loss"
    speed = number_only(pipe.speed, data)
    if pipe.loss is None:
        said = f"{speed} in it; its length, or the viscosity of the fuel, is not given"
        return Check(name, CANNOT_TELL, said, subject=name, bears=INFORM)
    lost = number_only(pipe.loss, data)
    own = of.given.figure(key, data)
    if own is None:
        said = f"{lost} lost at {speed}; what it may lose is not given"
        return Check(name, CANNOT_TELL, said, actual=_in(pipe.loss, pipe.loss.typical, pipe.loss.unit), bears=INFORM)
    said = f"{lost} of {number_only(own, data)} lost, at {speed}"
    bounds = _in(pipe.loss, pipe.loss.typical, own.unit), _in(own, own.typical, own.unit, "max")
    return at_most(name, *bounds, said, subject=name)
