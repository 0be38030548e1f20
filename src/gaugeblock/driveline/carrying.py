"""What a shaft comes to: it carries the torque, it does not, or what must be settled first."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import USE, Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.driveline import cause as cause_of
from gaugeblock.known import Known
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.question import Question
    from gaugeblock.driveline.cause import Cause
    from gaugeblock.driveline.keys import Hardness, Shaft
    from gaugeblock.driveline.torsion import Torsion
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

VERB = "CARRIES"
# A torque that a shaft carries so many times over, or this share of, may have been read in another unit.
_FAR = 8.0
# What was typed -> the quantity that it is, and the units that a person may have meant.
_TYPED = {
    "diameter": ("shaft_diameter", ("in", "mm")),
    "bore": ("shaft_bore", ("in", "mm")),
    "length": ("shaft_length", ("in", "mm", "ft")),
    "torque": ("shaft_torque", ("lbf*ft", "N*m", "lbf*in")),
    "yield_strength": ("yield_strength", ("ksi", "MPa")),
    "shear_modulus": ("shear_modulus", ("Msi", "GPa")),
}


class Outcome(Value):
    """What a shaft comes to, the questions behind it, and the checks of what was typed."""

    __slots__ = ("checks", "decision", "questions")

    decision: Decision
    questions: tuple[Question, ...]
    checks: tuple[Check, ...]

    def __init__(
        self, decision: Decision, questions: tuple[Question, ...] = (), checks: tuple[Check, ...] = ()
    ) -> None:
        put(self, "decision", decision)
        put(self, "questions", questions)
        put(self, "checks", checks)


def fact(strength: Figure | None, wanted: str | None = None) -> Outcome:
    """A steel that no shaft was asked of: its strength, that which is ``wanted``."""
    if strength is None:
        verb = "BREAKS AT" if wanted == "tensile" else "YIELDS AT"
        what = f"No {wanted} strength of it is on record: ask" if wanted is not None else "Ask"
        return Outcome(none(verb, f"{what} the maker for the certificate of this steel."))
    verb = "YIELDS AT" if "yield" in strength.quantity else "BREAKS AT"
    verb = "YIELDS, TWISTED, AT" if strength.quantity.startswith("torsional") else verb
    is_typical = strength.quantity.endswith("_typical")
    do = "Typical, not guaranteed: a certificate or a hardness test of the part decides." if is_typical else ""
    return Outcome(use(verb, strength, do))


def hardness_fact(found: Sequence[Figure]) -> Outcome:
    """How hard a steel is by the tables; ``found`` has it first on the scale of the table, then on others."""
    if not found:
        return Outcome(none("HARDNESS", "Measure it on the part: no hardness of this steel and treatment was found."))
    do = "Typical, not guaranteed: measure it on the part, away from a decarburised skin."
    if found[0].basis == "derived":
        do = f"By conversion of the tensile strength: no table has it. {do}"
    for other in found[1:2]:
        do = f"About {other.typical:.0f} {other.unit}{'' if found[0].basis == 'derived' else ' by conversion'}. {do}"
    return Outcome(use("HARDNESS NEAR", found[0], do))


def outcome(shaft: Shaft, found: Torsion, data: Refdata) -> Outcome:
    """The decision of a shaft; a doubtful figure among what was typed is asked about first."""
    doubts = _doubts(shaft, found, data)
    checks = tuple(Check(_name(d.key), CANNOT_TELL, d.why, subject=d.key, bears=ASK) for d in doubts)
    own = [c.name for c in found.checks if c.result != "ok"]
    questions = (
        *(d.question(_name(d.key)) for d in doubts),
        *(c.question(*own) for c in found.causes if not doubts or c.key not in [d.key for d in doubts]),
    )
    if doubts:
        sized = found.capacity is not None and not {"diameter", "bore", "yield_strength"} & {d.key for d in doubts}
        yields = found.capacity if sized else None
        capacity = [Candidate(yields, "whatever the torque", "it yields there")] if yields is not None else []
        names = [c.name for c in checks]
        made = ask(VERB, capacity, names, doubts[0].do) if capacity else none(VERB, doubts[0].do)
        return Outcome(made, questions, checks)
    return Outcome(_decide(found, own, data), questions)


def _name(key: str) -> str:
    return f"{key.replace('_', ' ')} as typed"


def _decide(found: Torsion, open_names: list[str], data: Refdata) -> Decision:
    factor, capacity, causes = found.factor, found.capacity, found.causes
    least = number_only(capacity, data) if capacity is not None else ""
    at = f" It yields at {least}." if least else ""
    if factor is None:
        do = " ".join(dict.fromkeys(c.do for c in causes))
        if capacity is None:
            return none(VERB, do)
        return ask(VERB, [Candidate(capacity, _when(causes), "the surface yields there")], open_names, do)
    if not causes:
        said = f"{number_only(factor, data)} times the torque asked of it.{at}"
        return Decision(USE, VERB, (Candidate(factor, plus="times the torque"),), (), said)
    cause = causes[0]
    point = f" at {least}" if least else ""
    then = f"the surface yields{point}"
    if factor.typical >= 1:
        then = f"carries {number_only(factor, data)} times the torque, yields{point}"
    if any(c.stops for c in found.checks):
        shown = Candidate(factor, "the torque asked of it", "it carries")
        return stop(VERB, [shown], open_names, f"{cause.do}{at}")
    candidates = [Candidate(factor, _when(causes), then)]
    if found.stricter is not None:
        less = number_only(found.stricter, data)
        then = f"carries {less} times the torque" if found.stricter.typical >= 1 else "the surface yields"
        candidates.insert(0, Candidate(found.stricter, "the source that gives least is right", then))
    return ask(VERB, candidates, open_names, cause.do)


def _when(causes: tuple[Cause, ...]) -> str:
    keys = {c.key for c in causes}
    if "case_depth" in keys:
        return "the case is deep enough"
    is_strength = keys & {"hardness", "yield_strength", "diameter"}
    return "this shaft is as strong as the bar of the table" if is_strength else "whatever the torque"


def _odd_hardness(hardness: Hardness, data: Refdata) -> str:
    """The question behind a hardness that no steel has on its scale; blank where it is usual."""
    value, usual = float(hardness.number), []
    for scale in dict.fromkeys((hardness.scale, "HRC", "HB")):
        low, high = plausible_range(f"hardness_{scale.casefold()}", data) or (value, value)
        if low <= value <= high:
            usual.append(f"{hardness.number} {scale}")
    if hardness.text in usual:
        return ""
    return did_you_mean(f"{hardness.text} is no usual hardness of a shaft", tuple(usual))


def _doubts(shaft: Shaft, found: Torsion, data: Refdata) -> list[Cause]:
    """What was typed and is not plausible, each as the question that it raises."""
    out = []
    for key, (quantity, among) in _TYPED.items():
        typed: Measure | Known | None = getattr(shaft, key)
        measure = typed.typical if isinstance(typed, Known) else typed
        if measure is None or is_plausible(measure, quantity, data):
            continue
        span = plausible_range(quantity, data) or (0.0, 0.0)
        said = f"{measure.text} is no usual {quantity.replace('_', ' ')}"
        out.append(cause_of.doubtful(did_you_mean(said, other_readings(measure, *span, among)), key))
    if shaft.hardness is not None and (said := _odd_hardness(shaft.hardness, data)):
        out.append(cause_of.doubtful(said, "hardness"))
    if not out and found.factor is not None and shaft.torque is not None and found.capacity is not None:
        factor, capacity = found.factor.typical, base(found.capacity)
        meant = other_readings(shaft.torque, capacity / _FAR, capacity * 2, _TYPED["torque"][1])
        if not 1 / _FAR <= factor <= _FAR and meant:
            said = f"{shaft.torque.text} on a shaft that yields at {number_only(found.capacity, data)}"
            out.append(cause_of.doubtful(did_you_mean(said, meant), "torque"))
    return out
