"""What a shaft of a steel is judged by: its torsional yields, from the table alone."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.steels import governing
from gaugeblock.driveline.torsion import Strength

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.steels import Steel
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


def torsional_yields(found: Steel, yields: Figure, data: Refdata) -> list[Figure]:
    """Torsional yield by distortion energy, then by the axle paper's rule; typical when the yield is typical."""
    note = "" if "hardened" in found.treatment else "the rule's paper is on induction hardened axle shafts"
    value = calc.torsional_yield_axle_practice(base(yields))
    words = "by the axle shaft rule, 0.6 of yield"
    practice = _made("shear_yield_axle_practice", value, words, found, yields, data)
    return [by_distortion_energy(found, yields, data), practice.replace(note=note) if note else practice]


def by_distortion_energy(found: Steel, yields: Figure, data: Refdata) -> Figure:
    """Torsional yield by distortion energy; typical when the yield is typical."""
    value = calc.torsional_yield_distortion_energy(base(yields))
    words = "by distortion energy, 0.577 of yield"
    return _made("shear_yield_distortion_energy", value, words, found, yields, data)


def _made(rule: str, value: float, conditions: str, found: Steel, yields: Figure, data: Refdata) -> Figure:
    is_typical = yields.quantity.endswith("_typical")
    quantity = "torsional_yield_strength_typical" if is_typical else "torsional_yield_strength"
    number = units.from_base(value, yields.unit)
    return derived(rule, quantity, number, yields.unit, (yields,), data, key=found.key, conditions=conditions)


def strength_of(found: Steel, data: Refdata) -> Strength:
    """What a shaft of a steel is judged by, from the table alone; made once for all sizes that its rows fit alike."""
    memo = ("steel strength", found.grade, found.treatment, found.temper, tuple(r.line for r in found.rows), found.fits)
    made = data._memo.get(memo)
    if made is None:
        made = data._memo[memo] = _strength_of(found, data)
    return made  # type: ignore[return-value]


def _strength_of(found: Steel, data: Refdata) -> Strength:
    yields = governing(found, "yield_strength", "yield_strength_typical")
    if yields is None:
        return Strength()
    return Strength(by_distortion_energy(found, yields, data), strict_yield(found, yields, data))


def strict_yield(found: Steel, yields: Figure, data: Refdata) -> Figure | None:
    """Torsional yield by distortion energy from the lowest living yield of the same specificity, when it is another
    row.
    """
    lowest = min((yields, *lookup.same_specificity(yields)), key=base)
    if lowest.id == yields.id:
        return None
    return by_distortion_energy(found, lowest, data)
