"""What is stated of a bolt and is not plausible: it is asked about, and the answer is worked out without it."""

from __future__ import annotations

import itertools

from gaugeblock import lookup, units
from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import (
    base_of,
    did_you_mean,
    is_plausible,
    other_readings,
    plausible_range,
    run_together,
)
from gaugeblock.fasteners.bolt import STRENGTHS
from gaugeblock.fasteners.doubt import LEAST_SHARE, Doubt

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt, Grip
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

STRESSES = ("ksi", "psi", "MPa")
# A strength under half of what the tables have for the grade, or over half as much again, is asked about: it is another
# bolt, or another unit. So is a preload of over three proof loads; up to there proof itself judges it.
FAR_LOW, FAR_HIGH, MOST_PRELOAD = 0.5, 1.5, 3.0


def without_doubts(bolt: Bolt, draft: Draft) -> Bolt:
    """The bolt without what is stated of it and is not plausible; each is asked about."""
    doubts = [d for d in _of_own(bolt, draft.data) if d.option not in bolt.wish.confirmed]
    for one in doubts:
        draft.check(one.check)
        draft.ask(one.question)
    gone = {d.option for d in doubts}
    gone |= {high for low, high in _disordered(bolt) if low in gone}
    own = bolt.own.replace(**{name: None for name in gone if name != "grip"})
    return bolt.replace(own=own, grip=None if "grip" in gone else bolt.grip)


def _of_own(bolt: Bolt, data: Refdata) -> list[Doubt]:
    own, out = bolt.own, []
    if own.nut_factor is not None:
        out += outside("nut_factor", own.nut_factor, "nut_factor", "nut factor", ("1", "%"), data)
    for name in STRENGTHS:
        known = getattr(own, name)
        if known is not None:
            said = name.replace("_", " ")
            out += outside(name, known, name, f"{said} of a bolt", STRESSES, data) or _far_off(name, known, bolt, data)
    out += _out_of_order(bolt)
    out += _of_preload(bolt, data)
    if bolt.grip is not None:
        out += _of_grip(bolt.grip, data)
    return out


def outside(option: str, known: Known, quantity: str, what: str, among: tuple[str, ...], data: Refdata) -> list[Doubt]:
    """A doubt where an end of what is stated lies outside its quantity's plausible range."""
    span = plausible_range(quantity, data)
    for measure in dict.fromkeys((known.typical, known.ends.low, known.ends.high)):
        if span is not None and not is_plausible(measure, quantity, data):
            said = f"{_text(measure)} is no usual {what}"
            return [Doubt(option, did_you_mean(said, _readings(measure, *span, among)))]
    return []


def _text(measure: Measure) -> str:
    return measure.number if measure.unit == "1" else measure.text


def _readings(measure: Measure, low: float, high: float, among: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(r.removesuffix(" 1") for r in other_readings(measure, low, high, among))


def _far_off(name: str, known: Known, bolt: Bolt, data: Refdata) -> list[Doubt]:
    """A strength far from what the tables have for this grade and size."""
    if bolt.grade is None or bolt.thread is None:
        return []
    standard, grade = bolt.grade
    found = lookup.look_up_or_none(
        "fasteners/grades", name, data=data, standard=standard, grade=grade, size=bolt.thread.size
    )
    if found is None:
        return []
    own, table = base_of(known.typical), base(found)
    if FAR_LOW * table <= own <= FAR_HIGH * table:
        return []
    far = "under half of" if own < table else "over half as much again as"
    has = f"{found.text or units.significant(found.typical, 3)} {found.unit}"
    said = f"{known.typical.text} is {far} what {standard} {grade} has ({has})"
    return [Doubt(name, did_you_mean(said, _readings(known.typical, 0.8 * table, 1.25 * table, STRESSES)))]


def _disordered(bolt: Bolt) -> list[tuple[str, str]]:
    """The strengths that are over the next: proof is no more than yield, and yield no more than tensile strength."""
    named = [(n, known) for n in STRENGTHS if (known := getattr(bolt.own, n)) is not None]
    pairs = itertools.pairwise(named)
    return [(n, m) for (n, low), (m, high) in pairs if base_of(low.typical) > base_of(high.typical) * (1 + 1e-9)]


def _out_of_order(bolt: Bolt) -> list[Doubt]:
    said = "The {} is over the {}: one of the two is wrong. Read both again."
    return [Doubt(low, said.format(low.replace("_", " "), high.replace("_", " "))) for low, high in _disordered(bolt)]


def _of_preload(bolt: Bolt, data: Refdata) -> list[Doubt]:
    wanted = bolt.own.preload
    if wanted is None or bolt.thread is None:
        return []
    measure, dim = wanted.typical, units.dimension(wanted.unit)
    if dim == "ratio":
        if LEAST_SHARE <= base_of(measure) <= MOST_PRELOAD:
            return []
        said = f"{_text(measure)} is no usual share of proof to tighten to"
        return [Doubt("preload", did_you_mean(said, _readings(measure, LEAST_SHARE, 1.0, ("1", "%"))))]
    if dim == "length":
        return outside("preload", wanted, "bolt_stretch_wanted", "stretch of a bolt", ("in", "mm"), data)
    span = _forces(bolt, data)
    if span is None or span[0] <= base_of(measure) <= span[1] * MOST_PRELOAD:
        return []
    far = "small" if base_of(measure) < span[0] else "great"
    low, high = (units.significant(units.from_base(end, measure.unit), 2) for end in span)
    said = f"{measure.text} is a very {far} preload: this bolt takes about {low} to {high} {measure.unit}"
    return [Doubt("preload", did_you_mean(said, _readings(measure, *span, ("lbf", "N", "kN"))))]


def _forces(bolt: Bolt, data: Refdata) -> tuple[float, float] | None:
    """The preloads, in N, between the least share of proof and proof; None where no proof strength is known."""
    from gaugeblock.errors import LookupMiss
    from gaugeblock.fasteners.stated import joint_of_bolt
    from gaugeblock.fasteners.target import proof_load_of

    try:
        found = joint_of_bolt(bolt.replace(own=bolt.own.replace(preload=None)), data)
    except LookupMiss:
        return None
    proof = proof_load_of(found, data) if found is not None else None
    return None if proof is None else (LEAST_SHARE * base(proof), base(proof))


def _of_grip(grip: Grip, data: Refdata) -> list[Doubt]:
    for known in (grip.modulus, grip.bolt_modulus):
        if known is not None:
            found = outside("grip", known, "modulus_of_elasticity", "modulus", ("Msi", "GPa", "ksi", "MPa"), data)
            if found:
                return found
    for measure, quantity, what in (
        (grip.length, "clamped_length", "grip of a bolt"),
        (grip.shank, "shank_in_grip", "shank inside a grip"),
    ):
        span = plausible_range(quantity, data)
        if measure is None or measure.value == 0 or span is None:
            continue
        if run_together(measure) or not is_plausible(measure, quantity, data):
            said = f"{measure.text} is no usual {what}"
            return [Doubt("grip", did_you_mean(said, _readings(measure, *span, ("in", "mm"))))]
    return []
