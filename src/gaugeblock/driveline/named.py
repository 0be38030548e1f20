"""Which strength of a steel is asked by its name: that one stands first, and no other in its place."""

from __future__ import annotations

from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline import keys
    from gaugeblock.driveline.steel import Material
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

FACTS = YIELD, _, HARDNESS, TORSIONAL = ("yield", "tensile", "hardness", "torsional yield")
# How the strengths are called that may be asked by name.
_CALLED = {
    YIELD: ("yield_strength", "yield_strength_typical", "lower_yield_strength_typical"),
    "tensile": ("tensile_strength", "tensile_strength_typical"),
}


def strength_of(of: Material, wanted: str | None) -> Figure | None:
    """The strength that is asked by its name, and no other in its place; where none is named the yield, or what else is
    on record.
    """
    if wanted == TORSIONAL:
        own = of.torsional or [f for f in of.figures if f.quantity.startswith("torsional_yield")]
        return own[0] if own else None
    if wanted is not None:
        named = (f for f in (*of.strengths, *of.figures) if f.quantity in _CALLED[wanted])
        return next(named, None)
    by_hardness = (f for f in of.figures if f.quantity == "tensile_strength_typical")
    return of.strengths[0] if of.strengths else next(by_hardness, None)


def hardness_of(of: Material, data: Refdata) -> tuple[Figure, ...]:
    """How hard a steel is by its table, else by the conversion of the tensile strength that its table has."""
    from gaugeblock.driveline import hardness as tables

    own = tables.hardness_of(of.table, data)
    tensile = next((f for f in of.strengths if "tensile" in f.quantity), None)
    return own or (() if tensile is None else tuple(tables.from_strength(tensile, data)))


def asked_for(fact: str | None, shaft: keys.Shaft) -> str | None:
    """Which strength is asked, if one is.

    InputError for none of them, or beside a shaft, which is judged by its yield.
    """
    if fact is None:
        return None
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a steel is called so", FACTS, "ask for one of these")
    if fact not in (YIELD, TORSIONAL) and shaft.is_asked:
        raise InputError(fact, "fact", "a shaft is judged by its yield", (YIELD,), "leave the shaft or the fact out")
    return fact
