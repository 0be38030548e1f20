"""The answer ``handbrake``: the pull of a hand brake's cables, and whether the lever has way enough."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK as ASKS
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Bound, Check, at_most
from gaugeblock.answer.decision import ASK, Candidate, Decision, ask, decided, none
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.lines.given import Given, count_of, doubtful, lacking, stopped
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

VERB = "CABLE PULL"
LIMITS = "lines/limits"
MEASURES = {
    "force": ("force", "lever_force"),
    "ratio": ("ratio", "lever_ratio"),
    "travel": ("length", "cable_travel_needed"),
    "lever": ("length", "lever_travel_whole"),
    "rated": ("force", "cable_load_maximum"),
}
ALL = (*MEASURES, "cables")
_NEEDS = {
    "ratio": "What is the lever ratio? Way of the grip over way of the cable, measured.",
    "force": "With what force is the grip pulled?",
}


def handbrake(
    *,
    force: str | None = None,
    ratio: str | None = None,
    cables: str | None = None,
    travel: str | None = None,
    lever: str | None = None,
    rated: str | None = None,
    slope: str | None = None,
    weight: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The pull of a hand brake's cables, and whether the lever has way enough.

    Parameters are text as people write them: ``force`` of the hand at the grip (``300 N``); ``ratio`` way of the grip
    over way of the cable; how many ``cables`` share the pull behind a free equaliser; the ``travel`` that the brake
    takes of its cable; the whole way of the ``lever`` at the grip; ``rated`` the pull that a cable stands, by its
    maker; a ``slope`` (``1 in 5``, ``20 %``) on which it shall hold a ``weight``: what that hangs on is asked.

    Returns a Sheet: the pull of one cable. Friction, slack and stretch are left out.

    Raises InputError or UnitError for what cannot be read.

    >>> round(handbrake(force="300 N", ratio="6", cables="2").decision.figures[0].typical)
    900
    """
    data = data or refdata()
    asked = {"force": force, "ratio": ratio, "cables": cables, "travel": travel, "lever": lever, "rated": rated}
    _read_hold(slope, weight)
    if slope and not (force or ratio):
        return _hold(slope, weight, data)
    sheet = judged(Given(asked, MEASURES), count_of(cables, "cables"), asked, data)
    return _on_slope(sheet, slope or "", weight or "") if slope or weight else sheet


def _read_hold(slope: str | None, weight: str | None) -> None:
    """InputError for a slope or a weight that cannot be read."""
    if slope and not re.fullmatch(r"1 in [0-9.]+|[0-9.]+ ?%", slope.strip()):
        raise InputError(slope, "slope", "not a slope", (), "write it as 1 in 5 or 20 %")
    if weight and not re.fullmatch(r"[0-9.]+ ?tonnes?", weight.strip()):
        read_positive(weight, "mass", "weight")


def judged(of: Given, cables: Measure | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``handbrake``, of what was read."""
    title = ", ".join(["hand brake", *(f"{k} {m.text.removesuffix(' 1')}" for k, m in of.measures.items())])
    given, doubts = of.figures(data), of.doubts(data)
    if doubts:
        return doubtful(title, VERB, doubts, asked, given, data)
    needs = {k: said for k, said in _NEEDS.items() if not of.has(k)}
    if needs:
        return lacking(title, VERB, needs, asked, given, data)
    pull, way = _pull(of, cables, data), _way(of, data)
    checks, questions = _checks(of, way, data)
    rated = of.figure("rated", data)
    if rated is not None:
        said = f"{number_only(pull, data)} of pull, {number_only(rated, data)} rated by the cable's maker"
        bounds = (
            Bound(units.in_unit(pull.typical, pull.unit, rated.unit), rated.unit, "", pull),
            Bound(rated.typical, rated.unit, "max", rated),
        )
        checks.append(at_most("pull against rating", *bounds, said, subject="rated"))
    limits = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    figures = list({f.id: f for f in (pull, *([way] if way is not None else []), *given, *limits)}.values())
    text = "A lever that is past its middle pulls no better: check where the catch holds it, and try it on a slope."
    decision = _decision(pull, way, checks, data)
    return Sheet(title, asked, data, figures, checks, [Caution(text, "injury")], decision=decision, questions=questions)


def _pull(of: Given, cables: Measure | None, data: Refdata) -> Figure:
    force, ratio = of.sure("force", data), of.sure("ratio", data)
    count = None if cables is None else stated(cables, "cable_count", "cables", data)
    newtons = base(force) * base(ratio) / (base(count) if count is not None else 1.0)
    number = units.from_base(newtons, force.unit)
    inputs = (force, ratio) if count is None else (force, ratio, count)
    key = {"force": force.text, "ratio": ratio.text, "cables": cables.number if cables is not None else "1"}
    return derived("cable_force_of_lever", "cable_force", number, force.unit, inputs, data, key=key)


def _way(of: Given, data: Refdata) -> Figure | None:
    travel, ratio = of.figure("travel", data), of.sure("ratio", data)
    if travel is None:
        return None
    number = units.from_base(base(travel) * base(ratio), travel.unit)
    key = {"travel": travel.text, "ratio": ratio.text}
    return derived("lever_travel_of_cable", "lever_travel", number, travel.unit, (travel, ratio), data, key=key)


def _rule(quantity: str, subject: str, data: Refdata) -> Figure:
    return look_up(LIMITS, quantity, data=data, jurisdiction="US federal", subject=subject, service="vehicle")


def _checks(of: Given, way: Figure | None, data: Refdata) -> tuple[list[Check], list[Question]]:
    most = _rule("control_force_maximum", "parking brake control, hand", data)
    force = of.sure("force", data)
    said = f"{number_only(force, data)} by hand, {number_only(most, data)} at most in the federal test"
    bounds = Bound(units.in_unit(force.typical, force.unit, "N"), "N", "", force), Bound(most.typical, "N", "max", most)
    checks = [at_most("force of the hand", *bounds, said, subject="force", bears=ASKS)]
    questions = []
    if checks[0].asks:
        questions.append(Question(FILL_IN, "Who can pull that hard, and hold it? Give a force that is.", "force"))
    lever = of.figure("lever", data)
    if way is None or lever is None:
        said = "the way that the brake takes of its cable, and that of the lever, are not both given"
        checks.append(Check("way of the lever", CANNOT_TELL, said, bears=INFORM))
        key = "travel" if way is None else "lever"
        text = "How far does the cable move from slack to hard on?" if way is None else "How far does the grip move?"
        questions.append(Question(MEASURE, text, key, ("way of the lever",)))
    else:
        said = f"{number_only(way, data)} of {number_only(lever, data)} taken, slack and stretch left out"
        there = units.in_unit(way.typical, way.unit, lever.unit)
        bound = Bound(there, lever.unit, "", way), Bound(lever.typical, lever.unit, "max", lever)
        checks.append(at_most("way of the lever", *bound, said, subject="lever"))
    grade, time = _rule("grade_hold", "parking brake", data), _rule("hold_time", "parking brake hold test", data)
    said = f"it must hold {number_only(grade, data)} for {number_only(time, data)}, both ways, laden (federal test)"
    required = Bound(grade.typical, "%", "min", grade)
    checks.append(Check("hold on a slope", CANNOT_TELL, said, required, subject="slope", bears=INFORM))
    return checks, questions


def _shared(pull: Figure) -> str:
    """What the number is: the pull of each cable, or of all together where it is not known how many share it."""
    if any(f.quantity == "cable_count" for f in pull.inputs):
        return "Each cable pulls with it."
    return "One cable pulls with it; two behind a free equaliser pull with half of it each."


def _decision(pull: Figure, way: Figure | None, checks: list[Check], data: Refdata) -> Decision:
    stops = [c for c in checks if c.stops]
    slope = next(c for c in checks if c.name == "hold on a slope")
    said = f"{_shared(pull)} Then try the brake: {slope.reason}."
    if stops:
        return stopped(VERB, stops)
    decision = decided(VERB, pull, checks, said)
    if decision.kind != ASK:
        return decision
    first = next(c for c in checks if c.asks)
    taken = f"the grip moves {number_only(way, data)}" if way is not None else _shared(pull)
    return ask(VERB, [Candidate(pull, "with that hand", taken)], decision.because, f"{first.reason}.")


def _on_slope(sheet: Sheet, slope: str, weight: str) -> Sheet:
    """The pull of the cable where it is asked whether the brake holds, which hangs on the brake itself."""
    if sheet.decision.figure is None:
        return sheet
    where = f"a slope of {slope}" if slope else "a slope"
    load = f" with {weight}" if weight else ""
    text = (
        f"Whether it holds on {where}{load} hangs on the gain of the brake and on the tyre: what force at the tyre"
        f" comes of"
        " each newton in the cable, by its arms, shoes, drum and the tyre's radius? Try it on that slope, both"
        " ways, laden."
    )
    why = "what the brake makes of its cable was not said"
    check = Check("hold on this slope", CANNOT_TELL, why, subject="slope", bears=ASKS)
    question = Question(MEASURE, text, "gain", (check.name,))
    candidate = Candidate(sheet.decision.figure, "the pull of the cable alone", _shared(sheet.decision.figure))
    decision = ask(VERB, [candidate], (check.name,), text)
    return sheet.replace(checks=(*sheet.checks, check), decision=decision, questions=(question, *sheet.questions))


def _hold(slope: str, weight: str | None, data: Refdata) -> Sheet:
    """What a hand brake must hold on a slope, where neither hand nor lever was told: what it hangs on."""
    grade, time = _rule("grade_hold", "parking brake", data), _rule("hold_time", "parking brake hold test", data)
    text = (
        "At the ground the braked wheels must hold the weight times the rise over the way along the slope; of one"
        " wheel that is its share, and times the radius of its tyre the torque. What hand and lever make of it hangs"
        f" on the brake's own gain. The federal test asks {number_only(grade, data)} for {number_only(time, data)},"
        " both ways, laden. Try it on that slope."
    )
    question = Question(MEASURE, "What force at the tyre comes of each newton in the cable?", "gain")
    asked = {"slope": slope, "weight": weight}
    title = f"hand brake on a slope of {slope}" + (f", {weight}" if weight else "")
    return Sheet(title, asked, data, [grade, time], [], [], decision=none("HOLDS", text), questions=[question])
