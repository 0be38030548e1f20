"""The checks of one circuit: stroke, pedal, booster, and the balance that no arithmetic settles."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Bound, Check, at_most
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.lines.brakes import hose
from gaugeblock.lines.brakes.keys import SLAVE
from gaugeblock.lookup import look_up
from gaugeblock.units import in_unit

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.brakes.keys import Circuit
    from gaugeblock.lines.brakes.working import Worked
    from gaugeblock.tables.load import Refdata

LIMITS = "lines/limits"
# What the balance hangs on, front and rear, before and after.
SHEET = "bores, pistons, drum or disc diameters, linings, tyre radii, the valve in the line, and the load on each axle"


def checks_of(of: Circuit, worked: Worked, data: Refdata) -> tuple[list[Check], list[Question]]:
    """What the sizes keep, and what is open."""
    checks: list[Check] = []
    questions: list[Question] = []
    made_of = (
        _rated(of, worked, data),
        _stroke(of, worked, data),
        _pedal(worked, data),
        _booster(of, worked, data),
        _balance(of, worked),
    )
    for made in made_of:
        for check, question in made:
            checks.append(check)
            if question is not None:
                questions.append(question)
    hoses, asked = hose.checks_of(of.given, data)
    return [*checks, *hoses], [*questions, *asked]


def _bound(figure: Figure, unit: str) -> Bound:
    return Bound(in_unit(figure.typical, figure.unit, unit), unit, "", figure)


def _rated(of: Circuit, worked: Worked, data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "pressure against rating"
    own = of.given.figure("rated", data)
    pressure = worked.pressure
    if own is not None:
        said = f"{number_only(pressure, data)} with that foot, {number_only(own, data)} rated"
        return [(at_most(name, _bound(pressure, own.unit), _bound(own, own.unit), said, subject="rated"), None)]
    if of.kind == SLAVE:
        return []
    proof = look_up(
        "lines/materials", "proof_pressure_minimum", data=data, item="hydraulic brake hose", state="proof test"
    )
    said = (
        f"{number_only(pressure, data)} with that foot; a brake hose by the federal rule is proved at"
        f" {number_only(proof, data)}"
    )
    unit = pressure.unit
    if pressure.typical <= in_unit(proof.typical, proof.unit, unit):
        return [(Check(name, CANNOT_TELL, said, subject="rated", bears=INFORM), None)]
    text = "Measure the pedal ratio and the booster again. "
    text += "What pressure does the weakest hose or tube stand, by its maker?"
    said = f"{said}, and this is more"
    return [(Check(name, CANNOT_TELL, said, subject="rated", bears=ASK), Question(FILL_IN, text, "rated", (name,)))]


def _stroke(of: Circuit, worked: Worked, data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "stroke of the master cylinder"
    own = of.given.figure("stroke", data)
    if worked.stroke is None:
        said = "what the pistons take is not known"
        open_ones = [k for k in ("bore", "travel") if not of.given.has(k)]
        open_ones += [k for k in ("pistons", "wheels") if getattr(of, k) is None]
        text = f"How far does each piston move until the brake is hard on? {_travel(of, data)}"
        if of.kind == SLAVE:
            text = "How far must the slave's piston push until the clutch is free? Measure it at the fork."
        key = open_ones[0] if open_ones else "travel"
        asks = text if key == "travel" else f"Give the {', '.join(open_ones)}: it shows whether the stroke is enough."
        kind = MEASURE if key == "travel" else FILL_IN
        return [(Check(name, CANNOT_TELL, said, bears=INFORM), Question(kind, asks, key, (name,)))]
    if own is None:
        said = f"{number_only(worked.stroke, data)} are taken, what the cylinder has is not given"
        text = "What stroke has the master cylinder for this circuit? Half of it or so is one circuit of a tandem."
        return [(Check(name, CANNOT_TELL, said, bears=INFORM), Question(MEASURE, text, "stroke", (name,)))]
    said = f"{number_only(worked.stroke, data)} of {number_only(own, data)} stroke taken, before anything gives way"
    return [(at_most(name, _bound(worked.stroke, own.unit), _bound(own, own.unit), said, subject="stroke"), None)]


def _travel(of: Circuit, data: Refdata) -> str:
    case = "drum" if of.kind == "drum" else "disc"
    row = look_up("lines/brakes", "piston_travel_typical", data=data, subject="piston travel", case=case)
    return f"Shops reckon {number_only(row, data)} (HABIT, from memory)."


def _pedal(worked: Worked, data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "pedal travel"
    if worked.share is None:
        if worked.pedal is None:
            return []
        said = f"{number_only(worked.pedal, data)} of pedal are taken, what it has is not given"
        text = "How far can the pedal go from rest to the floor?"
        return [(Check(name, CANNOT_TELL, said, bears=INFORM), Question(MEASURE, text, "pedal", (name,)))]
    limit = look_up(
        LIMITS,
        "pedal_travel_maximum",
        data=data,
        jurisdiction="Canada Quebec",
        subject="hydraulic brake hold test",
        service="vehicle",
    )
    said = f"{number_only(worked.share, data)} of the pedal taken at the least, {number_only(limit, data)} allowed"
    more = {"subject": "pedal", "case": "Canada Quebec"}
    return [(at_most(name, _bound(worked.share, "%"), _bound(limit, "%"), said, **more), None)]


def _booster(of: Circuit, worked: Worked, data: Refdata) -> list[tuple[Check, Question | None]]:
    if worked.unassisted is None:
        if of.kind == SLAVE or of.given.has("assist"):
            return []
        bears = ASK if of.given.has("rated") else INFORM
        said = "whether the pedal has a booster is not given, and it multiplies the pressure"
        text = "Has the pedal a booster? Give the force out of it over the force in, or 1 where there is none."
        check = Check("booster", CANNOT_TELL, said, subject="booster", bears=bears)
        return [(check, Question(FILL_IN, text, "assist", ("booster",)) if bears == ASK else None)]
    said = f"{number_only(worked.unassisted, data)} is left when the booster fails"
    bound = _bound(worked.unassisted, worked.unassisted.unit)
    return [(Check("without the booster", CANNOT_TELL, said, actual=bound, subject="booster", bears=INFORM), None)]


def _balance(of: Circuit, worked: Worked) -> list[tuple[Check, Question | None]]:
    name = "front to rear balance"
    if of.balance is not None:
        return [(Check(name, CANNOT_TELL, f"as recorded: {of.balance}", subject="balance", bears=INFORM), None)]
    if worked.change is None or worked.change.typical == 1:
        return []
    ratio = worked.change.typical
    more = "more" if ratio > 1 else "less"
    percent = abs(ratio - 1) * 100
    said = f"These brakes push {percent:.0f} % {more} than before at the same pressure: the balance is another"
    text = f"Write down, front and rear, before and after: {SHEET}. Then who tried the balance, and when?"
    check = Check(name, CANNOT_TELL, said, subject="balance", bears=ASK)
    return [(check, Question(FILL_IN, text, "balance", (name,)))]
