"""A shaft in torsion: stress, factor on torsional yield, torque at yield and twist. Every missing input says so."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.steels import TABLE, Steel
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.tables.load import Refdata

CHECK = "shaft stress within torsional yield"
# Under this share of the table's strength a measured hardness says that the shaft is not what it is taken for.
SOFT = 0.9
CASED = ("induction hardened", "carburized")


class Strength(Value):
    """The torsional yields that a shaft may be judged by.

    ``table`` is the governing one by distortion energy; ``strict`` the same from the lowest living yield as specific as
    the governing one; ``hard`` that of the hardness measured on this very shaft, which governs where it is the lower.
    """

    __slots__ = ("hard", "strict", "table")

    table: Figure | None
    strict: Figure | None
    hard: Figure | None

    def __init__(self, table: Figure | None = None, strict: Figure | None = None, hard: Figure | None = None) -> None:
        put(self, "table", table)
        put(self, "strict", strict)
        put(self, "hard", hard)

    @property
    def is_softer(self) -> bool:
        """Whether the measured hardness is worth less than the table says."""
        return self.hard is not None and self.table is not None and base(self.hard) < base(self.table)

    @property
    def governing(self) -> Figure | None:
        """The lower of table and measured hardness; None where the table has none."""
        return self.hard if self.is_softer else self.table


class Torsion(Value):
    """What a shaft adds to the sheet: the factor on yield (None where it cannot be worked out), figures, checks, cautions."""

    __slots__ = ("cautions", "checks", "factor", "figures")

    factor: Figure | None
    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]

    def __init__(
        self,
        factor: Figure | None,
        figures: tuple[Figure, ...],
        checks: tuple[Check, ...],
        cautions: tuple[Caution, ...] = (),
    ) -> None:
        put(self, "factor", factor)
        put(self, "figures", figures)
        put(self, "checks", checks)
        put(self, "cautions", cautions)


class _Given(Value):
    """The sizes and the torque of a shaft as figures."""

    __slots__ = ("bore", "diameter", "length", "sizes", "torque")

    def __init__(self, shaft: Shaft, data: Refdata) -> None:
        for name, quantity, where in (
            ("diameter", "shaft_diameter", "shaft diameter"),
            ("bore", "shaft_bore", "bore"),
            ("length", "shaft_length", "length"),
            ("torque", "shaft_torque", "torque"),
        ):
            measure = getattr(shaft, name)
            put(self, name, None if measure is None else stated(measure, quantity, where, data))
        put(self, "sizes", tuple(f for f in (self.diameter, self.bore) if f is not None))

    diameter: Figure | None
    bore: Figure | None
    length: Figure | None
    torque: Figure | None
    sizes: tuple[Figure, ...]

    @property
    def hole(self) -> float:
        """The bore in m, 0 for a solid shaft."""
        return base(self.bore) if self.bore is not None else 0.0


def torsion(shaft: Shaft, steel: Steel, strength: Strength, data: Refdata) -> Torsion:
    """Figures and checks of a shaft of which at least one size or the torque was given."""
    given = _Given(shaft, data)
    torsional = strength.governing
    if given.diameter is None:
        return Torsion(None, (), (_open("the shaft's diameter is not given"),))
    d = base(given.diameter)
    text = given.diameter.text + (f"x{given.bore.text}" if given.bore is not None else "")
    key = {**steel.key, "shaft": f"{text} {given.diameter.unit}"}
    capacity: tuple[Figure, ...] = ()
    if torsional is not None:
        unit = given.torque.unit if given.torque is not None else "N*m" if given.diameter.unit == "mm" else "lbf*ft"
        capacity = (
            derived(
                "torque_at_torsional_yield",
                "torque_at_torsional_yield",
                units.from_base(calc.torque_from_shear_stress(base(torsional), d, given.hole), unit),
                unit,
                (torsional, *given.sizes),
                data,
                key=key,
            ),
        )
    if given.torque is None:
        return Torsion(None, capacity, (_open("the torque asked of the shaft is not given"),))
    key = {**key, "torque": f"{given.torque.text} {given.torque.unit}"}
    unit = "MPa" if torsional is not None and torsional.unit == "MPa" else "ksi"
    stress = derived(
        "torsional_shear_stress",
        "shaft_shear_stress",
        units.from_base(calc.torsional_shear_stress(base(given.torque), d, given.hole), unit),
        unit,
        (given.torque, *given.sizes),
        data,
        key=key,
        conditions="at the surface of the plain shaft",
    )
    twist, cautions = _twist(given, steel, key, data)
    figures = (stress, *twist, *capacity)
    if torsional is None:
        why = "no yield strength is published for this steel, treatment and temper"
        return Torsion(None, figures, (_open(why),), cautions)
    factor = derived(
        "torsional_yield_factor",
        "torsional_yield_factor",
        calc.yield_factor(base(torsional), base(stress)),
        "1",
        (torsional, stress),
        data,
        key=key,
    )
    return Torsion(factor, figures, (_check(steel, stress, strength, factor, data),), cautions)


def _open(why: str) -> Check:
    return Check(CHECK, CANNOT_TELL, why, subject="shaft stress", bears=ASK)


def _check(steel: Steel, stress: Figure, strength: Strength, factor: Figure, data: Refdata) -> Check:
    """Not ok past the torsional yield; ok only on strength that a source states as least, or that this shaft's hardness bears out."""
    table, governs = strength.table, strength.governing
    assert table is not None
    assert governs is not None
    source = table.inputs[0]
    typical = source.quantity.endswith("_typical")
    limit = units.from_base(base(governs), stress.unit)
    required, actual = Bound(limit, stress.unit, "max", governs), Bound(stress.typical, stress.unit, "", stress)
    room = (limit - stress.typical) / limit if limit else None
    word = "typical" if typical else "stated least"
    what = "torsional yield by the hardness measured on this shaft" if strength.is_softer else f"{word} torsional yield"
    ends = (
        f"{number_only(stress, data)} against {what} {number_only(governs, data, stress.unit)}, "
        f"factor {number_only(factor, data)}"
    )
    if stress.typical > limit * (1 + 1e-9):
        result, why = _past(steel, source, strength)
    else:
        result, why = _inside(steel, stress, strength, data)
    bears = ASK if typical and not strength.is_softer else STOP
    return Check(CHECK, result, ends + why, required, actual, room, subject="shaft stress", bears=bears)


def _past(steel: Steel, source: Figure, strength: Strength) -> tuple[str, str]:
    section = source.key["section"]
    if not strength.is_softer and not steel.covers(section) and not steel.beyond(section):
        return (
            CANNOT_TELL,
            f": past it, but the figure is for section {section}; a smaller bar may be stronger, and none is published",
        )
    return NOT_OK, ": the surface yields"


def _inside(steel: Steel, stress: Figure, strength: Strength, data: Refdata) -> tuple[str, str]:
    table, governs, strict = strength.table, strength.governing, strength.strict
    assert table is not None
    assert governs is not None
    source = table.inputs[0]
    typical = source.quantity.endswith("_typical")
    section = source.key["section"]
    why = ""
    if steel.treatment in CASED:
        why = (
            ", but that is the case: compare stress and strength at the case-core junction; case depth and core hardness "
            "of this shaft are not known"
        )
    elif strength.is_softer and base(governs) < SOFT * base(table):
        why = (
            f"; the table's {number_only(table, data, stress.unit)} is not borne out: find out why it is softer before it "
            "carries anything"
        )
    elif not steel.covers(section):
        why = (
            f", but the strength is published for section {section}, not for this diameter; strength falls as the "
            "section grows"
        )
    elif strict is not None and stress.typical > units.from_base(base(strict), stress.unit) * (1 + 1e-9):
        why = f", but another source of the same keys gives only {units.significant(strict.typical)} {strict.unit}"
    elif typical and strength.hard is None:
        why = ", but typical is not guaranteed: the shaft maker's certificate or a hardness test of this shaft decides"
    if why:
        return CANNOT_TELL, why
    if typical:
        return OK, "; the hardness measured on this shaft bears it out"
    return OK, "; the strength is from memory" if source.checked == "memory" else ""


def _twist(
    given: _Given, steel: Steel, key: dict[str, str], data: Refdata
) -> tuple[tuple[Figure, ...], tuple[Caution, ...]]:
    """Twist over the length, with the steel's own shear modulus, else the one published for low alloy steel, said as assumed."""
    if given.length is None or given.torque is None or given.diameter is None:
        return (), ()
    at = {"treatment": "any", "temper": "any", "section": "any", "specimen": "any"}
    modulus = lookup.look_up_or_none(TABLE, "shear_modulus", data=data, steel=steel.grade, **at)
    said = ""
    cautions: tuple[Caution, ...] = ()
    if modulus is None:
        modulus = lookup.look_up(TABLE, "shear_modulus", data=data, steel="low alloy steel", **at)
        said = f"shear modulus assumed: that of low alloy steel, {modulus.text} {modulus.unit}"
        own = f"that of low alloy steel, {modulus.text} {modulus.unit}, is assumed"
        text = f"No shear modulus was found for {steel.grade}: {own}. Among steels it varies by a few percent."
        cautions = (Caution(text, "note", (modulus.id,), modulus.source),)
    twist = calc.angle_of_twist(base(given.torque), base(given.length), base(modulus), base(given.diameter), given.hole)
    figure = derived(
        "angle_of_twist",
        "shaft_twist",
        units.from_base(twist, "deg"),
        "deg",
        (given.torque, given.length, modulus, *given.sizes),
        data,
        key={**key, "length": f"{given.length.text} {given.length.unit}"},
        conditions=said,
    )
    return (figure,), cautions
