"""A shaft in torsion: stress, factor on torsional yield, torque at yield and twist. Every missing input says so."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, stated, stated_known
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline import cause as cause_of
from gaugeblock.driveline.cause import Cause
from gaugeblock.driveline.steels import TABLE, Steel
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.known import Known
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
    """What a shaft adds to the sheet.

    ``factor`` on yield and torque at yield ``capacity`` (None where they cannot be worked out), ``stricter`` the
    factor by
    a source that gives less, all figures, checks and cautions, and the ``causes`` that leave it open.
    """

    __slots__ = ("capacity", "causes", "cautions", "checks", "factor", "figures", "stricter")

    factor: Figure | None
    capacity: Figure | None
    stricter: Figure | None
    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]
    causes: tuple[Cause, ...]

    def __init__(
        self,
        factor: Figure | None = None,
        capacity: Figure | None = None,
        stricter: Figure | None = None,
        figures: tuple[Figure, ...] = (),
        checks: tuple[Check, ...] = (),
        cautions: tuple[Caution, ...] = (),
        causes: tuple[Cause, ...] = (),
    ) -> None:
        put(self, "factor", factor)
        put(self, "capacity", capacity)
        put(self, "stricter", stricter)
        put(self, "figures", figures)
        put(self, "checks", checks)
        put(self, "cautions", cautions)
        put(self, "causes", causes)


class _Given(Value):
    """The sizes and the torque of a shaft as figures."""

    __slots__ = ("bore", "diameter", "length", "sizes", "torque")

    def __init__(self, shaft: Shaft, data: Refdata, **known: Figure | None) -> None:
        for name, quantity, where in (
            ("diameter", "shaft_diameter", "shaft diameter"),
            ("bore", "shaft_bore", "bore"),
            ("length", "shaft_length", "length"),
            ("torque", "shaft_torque", "torque"),
        ):
            measure = getattr(shaft, name)
            put(self, name, None if measure is None else stated(measure, quantity, where, data))
        for name, figure in known.items():
            if figure is not None:
                put(self, name, figure)
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


def torsion(shaft: Shaft, steel: Steel, strength: Strength, data: Refdata, **known: Figure | None) -> Torsion:
    """Figures and checks of a shaft of which at least one size or the torque was given; ``known`` holds its ``torque``
    or ``diameter`` where they were worked out.
    """
    given = _Given(shaft, data, **known)
    governs = strength.governing
    if given.diameter is None:
        cause = cause_of.diameter_missing()
        return Torsion(checks=(_open(cause),), causes=(cause,))
    text = (given.diameter.text or units.significant(given.diameter.typical, 6)) + (
        f"x{given.bore.text}" if given.bore is not None else ""
    )
    key = {**steel.key, "shaft": f"{text} {given.diameter.unit}"}
    capacity = _capacity(given, governs, key, data) if governs is not None else None
    capacities = (capacity,) if capacity is not None else ()
    if given.torque is None:
        cause = cause_of.torque_missing()
        causes = (cause, *_unproven(steel, strength)) if governs is not None else (cause,)
        return Torsion(None, capacity, figures=capacities, checks=(_open(cause),), causes=causes)
    key = {**key, "torque": torque_text(given.torque)}
    unit = "MPa" if governs is not None and governs.unit == "MPa" else "ksi"
    stress = stress_of(given.torque, given.diameter, given.bore, unit, key, data)
    twist, cautions = _twist(given, steel, key, data, shaft.shear_modulus)
    figures = (stress, *twist, *capacities)
    if governs is None:
        cause = cause_of.no_yield()
        return Torsion(None, None, None, figures, (_open(cause),), cautions, (cause,))
    factor = factor_of(governs, stress, key, data)
    open_by = _cause(steel, stress, strength, data)
    check = _check(open_by, stress, strength, factor, data)
    is_lower = strength.strict is not None and base(strength.strict) < base(governs)
    stricter = factor_of(strength.strict, stress, key, data, "by the lowest source") if is_lower else None  # type: ignore[arg-type]
    causes = (open_by,) if open_by is not None else ()
    return Torsion(factor, capacity, stricter, figures, (check,), cautions, causes)


def torque_text(torque: Figure) -> str:
    """A torque in a key: as typed, else to six digits."""
    return f"{torque.text or units.significant(torque.typical, 6)} {torque.unit}"


def stress_of(
    torque: Figure, diameter: Figure, bore: Figure | None, unit: str, key: dict[str, str], data: Refdata
) -> Figure:
    """Shear stress at the surface of a plain shaft."""
    hole = base(bore) if bore is not None else 0.0
    return derived(
        "torsional_shear_stress",
        "shaft_shear_stress",
        units.from_base(calc.torsional_shear_stress(base(torque), base(diameter), hole), unit),
        unit,
        (torque, diameter) if bore is None else (torque, diameter, bore),
        data,
        key=key,
        conditions=f"at the surface {diameter.conditions or 'of the plain shaft'}",
    )


def factor_of(torsional: Figure, stress: Figure, key: dict[str, str], data: Refdata, about: str = "") -> Figure:
    """How many times the torque could grow before the surface yields."""
    value = calc.yield_factor(base(torsional), base(stress))
    made_of = (torsional, stress)
    return derived(
        "torsional_yield_factor",
        "torsional_yield_factor",
        value,
        "1",
        made_of,
        data,
        about=about,
        key=key,
        conditions=about,
    )


def _capacity(given: _Given, torsional: Figure, key: dict[str, str], data: Refdata) -> Figure:
    assert given.diameter is not None
    unit = given.torque.unit if given.torque is not None else "N*m" if given.diameter.unit == "mm" else "lbf*ft"
    torque = calc.torque_from_shear_stress(base(torsional), base(given.diameter), given.hole)
    name = "torque_at_torsional_yield"
    return derived(name, name, units.from_base(torque, unit), unit, (torsional, *given.sizes), data, key=key)


def _open(cause: Cause) -> Check:
    return Check(CHECK, CANNOT_TELL, cause.why, subject="shaft stress", bears=ASK)


def _check(cause: Cause | None, stress: Figure, strength: Strength, factor: Figure, data: Refdata) -> Check:
    """Not ok past the torsional yield; ok only on strength that a source states as least, or that this shaft's
    hardness bears out.
    """
    table, governs = strength.table, strength.governing
    assert table is not None
    assert governs is not None
    limit = units.from_base(base(governs), stress.unit)
    required, actual = Bound(limit, stress.unit, "max", governs), Bound(stress.typical, stress.unit, "", stress)
    room = (limit - stress.typical) / limit if limit else None
    word = "typical" if is_typical(table) else "stated least"
    what = "torsional yield by the hardness measured on this shaft" if strength.is_softer else f"{word} torsional yield"
    reason = (
        f"{number_only(stress, data)} against {what} {number_only(governs, data, stress.unit)}, "
        f"factor {number_only(factor, data)}"
    )
    bears = STOP
    if cause is None:
        result = OK
        reason += "; the hardness measured on this shaft bears it out" if is_typical(table) else ""
    else:
        result = NOT_OK if cause.fails else CANNOT_TELL
        bears = ASK if _weak(table) and not strength.is_softer else STOP
        reason += f"; {cause.why}"
    return Check(CHECK, result, reason, required, actual, room, subject="shaft stress", bears=bears)


def is_typical(torsional: Figure) -> bool:
    """Whether a torsional yield comes from a typical yield strength."""
    return torsional.quantity.endswith("_typical")


def origin_of(torsional: Figure) -> Figure:
    """The strength that a torsional yield was made of; itself where a table of hardness has it."""
    return torsional.inputs[0] if torsional.inputs else torsional


def _weak(torsional: Figure) -> str:
    """Why a strength does not decide, in a word; blank for a least one that a publication, certificate or the user
    states.
    """
    source = origin_of(torsional)
    if is_typical(torsional):
        return "typical"
    return "usual" if source.basis == "common practice" else "recalled" if source.checked == "memory" else ""


def _cause(steel: Steel, stress: Figure, strength: Strength, data: Refdata) -> Cause | None:
    """Why the shaft is not passed; None when it is."""
    table, governs = strength.table, strength.governing
    assert table is not None
    assert governs is not None
    section = origin_of(table).key.get("section", "any")
    if stress.typical > units.from_base(base(governs), stress.unit) * (1 + 1e-9):
        if not strength.is_softer and not steel.covers(section) and not steel.beyond(section):
            return cause_of.smaller_section(section)
        word = _weak(table)
        return cause_of.may_yield(word) if word and not strength.is_softer else cause_of.yields()
    found = _unproven(steel, strength, stress.unit, data)
    if found:
        return found[0]
    strict = strength.strict
    if strict is not None and stress.typical > units.from_base(base(strict), stress.unit) * (1 + 1e-9):
        return cause_of.stricter(f"{units.significant(strict.typical)} {strict.unit}")
    return None


def _unproven(steel: Steel, strength: Strength, unit: str = "ksi", data: Refdata | None = None) -> tuple[Cause, ...]:
    """What leaves the strength itself open, whatever the torque."""
    table, governs = strength.table, strength.governing
    assert table is not None
    assert governs is not None
    source = origin_of(table)
    section = source.key.get("section", "any")
    if strength.is_softer and base(governs) < SOFT * base(table):
        number = (
            number_only(table, data, unit) if data is not None else f"{units.significant(table.typical)} {table.unit}"
        )
        return (cause_of.softer(number),)
    if steel.treatment in CASED and source.basis not in ("maker", "stated"):
        return (cause_of.case_unknown(),)
    if not steel.covers(section):
        return (cause_of.other_section(section),)
    if is_typical(table):
        return () if strength.hard is not None else (cause_of.typical(),)
    if source.basis == "common practice":
        return (cause_of.recalled("a habit of the trade"),)
    return (cause_of.recalled("from memory"),) if source.checked == "memory" else ()


def _twist(
    given: _Given, steel: Steel, key: dict[str, str], data: Refdata, own: Known | None
) -> tuple[tuple[Figure, ...], tuple[Caution, ...]]:
    """Twist over the length; () where one of the sizes is not known."""
    if given.length is None or given.torque is None or given.diameter is None:
        return (), ()
    modulus, cautions, said = modulus_of(steel, data, own)
    key = {**key, "length": f"{given.length.text} {given.length.unit}"}
    made = twist_of(given.torque, given.length, modulus, (given.diameter, given.bore), key, said, data)
    beside = () if own is None else (modulus, modulus_of(steel, data)[0])
    return (made, *beside), cautions


# The keys of what is taken for a steel whose own modulus nobody printed.
LOW_ALLOY = {"steel": "low alloy steel", "treatment": "any", "temper": "any", "section": "any", "specimen": "any"}


def modulus_of(steel: Steel, data: Refdata, own: Known | None = None) -> tuple[Figure, tuple[Caution, ...], str]:
    """The shear modulus as given, of the steel itself, else the one published for low alloy steel; what is said of
    it.
    """
    if own is not None:
        return stated_known(own, "shear_modulus", "shear modulus", data), (), ""
    modulus = lookup.look_up_or_none(TABLE, "shear_modulus", data=data, **{**LOW_ALLOY, "steel": steel.grade})
    if modulus is not None:
        return modulus, (), ""
    modulus = lookup.look_up(TABLE, "shear_modulus", data=data, **LOW_ALLOY)
    said = f"shear modulus assumed: that of low alloy steel, {modulus.text} {modulus.unit}"
    usual = f"that of low alloy steel, {modulus.text} {modulus.unit}, is assumed"
    text = f"No shear modulus was found for {steel.grade}: {usual}. Among steels it varies by a few percent."
    return modulus, (Caution(text, "note", (modulus.id,), modulus.source),), said


def twist_of(
    torque: Figure,
    length: Figure,
    modulus: Figure,
    sizes: tuple[Figure, Figure | None],
    key: dict[str, str],
    conditions: str,
    data: Refdata,
) -> Figure:
    """Twist over a length of one diameter and bore."""
    diameter, bore = sizes
    hole = base(bore) if bore is not None else 0.0
    twist = calc.angle_of_twist(base(torque), base(length), base(modulus), base(diameter), hole)
    inputs = (torque, length, modulus, diameter, *(() if bore is None else (bore,)))
    number = units.from_base(twist, "deg")
    return derived("angle_of_twist", "shaft_twist", number, "deg", inputs, data, key=key, conditions=conditions)
