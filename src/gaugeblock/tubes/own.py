"""What the user knows of his own tube's metal, in place of the tables: strengths and modulus; what of it is odd."""

from __future__ import annotations

from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import base_of, did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.known import parse_known
from gaugeblock.tubes.bend.bent import OWN, Own
from gaugeblock.tubes.doubt import Doubt

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.figure import Figure
    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata

_EXAMPLES = {"modulus": "29 Msi", "shear_modulus": "11.5 Msi"}
_UNITS = {"modulus": ("Msi", "GPa"), "shear_modulus": ("Msi", "GPa")}
_STRESSES = ("ksi", "psi", "MPa")
# Three times the tables' own value, or a third of it, is another metal or another unit.
_FAR = 3.0
# Of every metal that tubes are made of the modulus of elasticity is from 2.4 to 2.8 times the shear modulus.
_OVER_SHEAR = (2.0, 3.2)


def read_stress(text: str, where: str) -> Known:
    """A strength or a modulus as typed: a number, a range, with what it was measured."""
    return parse_known(text, "stress", where.replace("_", " "), _EXAMPLES.get(where, "70 ksi"))


def read_own(given: Mapping[str, str | None]) -> Own:
    """The Own of options as text; InputError or UnitError names the one that is wrong."""
    return Own(**{name: read_stress(text, name) for name in OWN if (text := given.get(name))})


def doubts_of_own(own: Own, tables: Mapping[str, Figure | None], data: Refdata) -> list[Doubt]:
    """What is stated and is not plausible: outside its quantity's range, far from the tables, or yield over tensile."""
    found = []
    for name in OWN:
        known = getattr(own, name)
        if known is not None:
            doubt = doubt_of_stress(name, known, tables.get(name), data)
            found += [] if doubt is None else [doubt]
    weak, strong = own.yield_strength, own.tensile_strength
    if weak is not None and strong is not None and base_of(weak.typical) > base_of(strong.typical) * (1 + 1e-9):
        said = f"yield_strength = {weak} is over tensile_strength = {strong}: one of the two is wrong. Read both again."
        found.append(Doubt("yield_strength", said))
    return found or _beside_modulus(own, tables.get("modulus"))


def _beside_modulus(own: Own, table: Figure | None) -> list[Doubt]:
    """A shear modulus that no metal has beside this modulus of elasticity."""
    shear = own.shear_modulus
    if shear is None or (own.modulus is None and table is None):
        return []
    said = str(own.modulus) if own.modulus is not None else f"{table.typical:.3g} {table.unit}" if table else ""
    whole = base_of(own.modulus.typical) if own.modulus is not None else base(table) if table else 0.0
    low, high = (whole / most for most in reversed(_OVER_SHEAR))
    if low <= base_of(shear.typical) <= high:
        return []
    others = other_readings(shear.typical, low, high, _UNITS["shear_modulus"])
    text = f"shear_modulus = {shear} is hardly that of a metal whose modulus of elasticity is {said}"
    return [Doubt("shear_modulus", did_you_mean(text, others))]


def doubt_of_stress(name: str, known: Known, table: Figure | None, data: Refdata) -> Doubt | None:
    """What is doubtful of one strength or modulus."""
    for measure in dict.fromkeys((known.typical, known.ends.low, known.ends.high)):
        span = plausible_range(name, data)
        if span is not None and not is_plausible(measure, name, data):
            others = other_readings(measure, *span, _UNITS.get(name, _STRESSES))
            return Doubt(name, did_you_mean(f"{name} = {measure} is not plausible", others))
    if table is None:
        return None
    has = base(table)
    if has / _FAR <= base_of(known.typical) <= has * _FAR:
        return None
    others = other_readings(known.typical, has / 2, has * 2, _UNITS.get(name, _STRESSES))
    said = f"{name} = {known} is far from what the tables have, {table.typical:.3g} {table.unit}"
    return Doubt(name, did_you_mean(said, others))
