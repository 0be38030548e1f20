"""How thick a shaft has to be for a torque, where nobody said how thick it is."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.decision import NONE, Candidate, ask
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import axles as calc

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.carrying import Outcome
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.driveline.torsion import Strength
    from gaugeblock.tables.load import Refdata

VERB = "AT LEAST"
_WHEN = "a solid shaft that is to be made of it"
_THEN = "its surface just yields there: make it thicker by what your factor asks"


def with_slimmest(end: Outcome, shaft: Shaft, strength: Strength, data: Refdata) -> Outcome:
    """The outcome of a shaft whose torque and steel are known and whose diameter is not: the least that would do."""
    governs = strength.governing or strength.hard
    if shaft.torque is None or shaft.diameter is not None or shaft.bore is not None or governs is None:
        return end
    if end.decision.kind != NONE or end.checks:
        return end
    torque = stated(shaft.torque, "shaft_torque", "torque", data)
    unit = "mm" if torque.unit == "N*m" else "in"
    number = units.from_base(calc.least_diameter(base(torque), base(governs)), unit)
    name, said = "shaft_diameter_least", "at which the surface just yields"
    key = {"torque": torque.text, "strength": governs.id}
    least = derived(name, name, number, unit, (torque, governs), data, key=key, conditions=said)
    do = f"{end.decision.do} Where it is still to be made, this is the thinnest that does not yield."
    names = tuple(dict.fromkeys(name for q in end.questions for name in q.checks))
    return end.replace(decision=ask(VERB, [Candidate(least, _WHEN, _THEN)], names, do))
