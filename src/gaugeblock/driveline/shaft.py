"""A shaft in torsion: stress, factor on torsional yield, torque at yield and twist. Every missing input says so."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.parts import asked_measure, base, derived
from gaugeblock.driveline.steels import TABLE, Steel
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

CHECK = "shaft stress within torsional yield"
# Under this share of the table's strength a measured hardness says that the shaft is not what it is taken for.
SOFT = 0.9
CASED = ("induction hardened", "carburized")


class Shaft:
    """Diameter, bore, length and torque as they were typed; ``None`` where one was not given."""

    __slots__ = ("bore", "diameter", "length", "torque")

    def __init__(self, shaft: str | None, bore: str | None, length: str | None, torque: str | None) -> None:
        self.diameter = (
            asked_measure(shaft, "length", "shaft_diameter", "shaft diameter") if shaft is not None else None
        )
        self.bore = asked_measure(bore, "length", "shaft_bore", "bore") if bore is not None else None
        self.length = asked_measure(length, "length", "shaft_length", "length") if length is not None else None
        self.torque = asked_measure(torque, "torque", "shaft_torque", "torque") if torque is not None else None
        if self.diameter is not None and self.bore is not None and base(self.bore) >= base(self.diameter):
            raise InputError(bore or "", "bore", "not smaller than the shaft", (), "give bore and outside diameter")

    @property
    def asked(self) -> bool:
        """Whether anything of a shaft was given."""
        return any(f is not None for f in (self.diameter, self.bore, self.length, self.torque))


class Answer:
    """What the shaft adds to the sheet."""

    __slots__ = ("cautions", "checks", "figures", "first")

    def __init__(self) -> None:
        self.first: list[Figure] = []
        self.figures: list[Figure] = []
        self.checks: list[Check] = []
        self.cautions: list[Caution] = []


def answer(
    shaft: Shaft, steel: Steel, torsional: Figure | None, strict: Figure | None, hard: Figure | None, data: Refdata
) -> Answer:
    """Figures and checks of a shaft.

    ``torsional`` is the governing torsional yield by distortion energy; ``strict`` the same from the lowest living
    yield as specific as the governing one; ``hard`` the torsional yield at the hardness measured on this very shaft,
    which governs where it is the lower.
    """
    out = Answer()
    table = torsional
    if torsional is not None and hard is not None and base(hard) < base(torsional):
        torsional = hard
    if shaft.diameter is None:
        out.checks.append(Check(CHECK, CANNOT_TELL, "the shaft's diameter is not given"))
        return out
    d, bore = base(shaft.diameter), base(shaft.bore) if shaft.bore is not None else 0.0
    sizes = (shaft.diameter,) if shaft.bore is None else (shaft.diameter, shaft.bore)
    text = shaft.diameter.text + (f"x{shaft.bore.text}" if shaft.bore is not None else "")
    key = {**steel.key, "shaft": f"{text} {shaft.diameter.unit}"}
    unit = "MPa" if torsional is not None and torsional.unit == "MPa" else "ksi"
    if torsional is not None:
        torque_unit = (
            shaft.torque.unit if shaft.torque is not None else "N*m" if shaft.diameter.unit == "mm" else "lbf*ft"
        )
        at_yield = calc.torque_from_shear_stress(base(torsional), d, bore)
        out.figures.append(
            derived(
                "torque_at_torsional_yield",
                "torque_at_torsional_yield",
                at_yield,
                torque_unit,
                key,
                (torsional, *sizes),
                data,
            )
        )
    if shaft.torque is None:
        out.checks.append(Check(CHECK, CANNOT_TELL, "the torque asked of the shaft is not given"))
        return out
    key = {**key, "torque": f"{shaft.torque.text} {shaft.torque.unit}"}
    stress = derived(
        "torsional_shear_stress", "shaft_shear_stress", calc.torsional_shear_stress(base(shaft.torque), d, bore), unit, key,
        (shaft.torque, *sizes), data, "at the surface of the plain shaft",
    )  # fmt: skip
    out.figures.insert(0, stress)
    _twist(out, shaft, steel, key, sizes, data)
    if torsional is None:
        out.checks.append(
            Check(CHECK, CANNOT_TELL, "no yield strength is published for this steel, treatment and temper")
        )
        return out
    factor = derived(
        "torsional_yield_factor",
        "torsional_yield_factor",
        calc.yield_factor(base(torsional), base(stress)),
        "1",
        key,
        (torsional, stress),
        data,
    )
    out.first.append(factor)
    out.checks.append(_check(steel, stress, table or torsional, strict, hard, factor, data))
    return out


def _check(
    steel: Steel,
    stress: Figure,
    torsional: Figure,
    strict: Figure | None,
    hard: Figure | None,
    factor: Figure,
    data: Refdata,
) -> Check:
    """Not ok past the torsional yield; ok only on strength that a source states as least, or that this shaft's hardness bears out."""
    source = torsional.inputs[0]
    typical = source.quantity.endswith("_typical")
    is_softer = hard is not None and base(hard) < base(torsional)
    governs = hard if hard is not None and is_softer else torsional
    limit = units.from_base(base(governs), stress.unit)
    required, actual = Bound(limit, stress.unit, "max", governs), Bound(stress.typical, stress.unit, "", stress)
    room = (limit - stress.typical) / limit if limit else None
    word = "typical" if typical else "stated least"
    limit_text, factor_text = number_only(governs, data, stress.unit), number_only(factor, data)
    what = "torsional yield by the hardness measured on this shaft" if is_softer else f"{word} torsional yield"
    ends = f"{number_only(stress, data)} against {what} {limit_text}, factor {factor_text}"
    section = source.key["section"]

    def say(result: str, reason: str) -> Check:
        return Check(CHECK, result, reason, required, actual, room)

    if stress.typical > limit * (1 + 1e-9):
        if not is_softer and not steel.covers(section) and not steel.beyond(section):
            return say(
                CANNOT_TELL,
                f"{ends}: past it, but the figure is for section {section}; a smaller bar may be stronger, and none is published",
            )
        return say(NOT_OK, f"{ends}: the surface yields")
    if steel.treatment in CASED:
        return say(
            CANNOT_TELL,
            f"{ends}, but that is the case: compare stress and strength at the case-core junction; case depth and core hardness of this shaft are not known",
        )
    if is_softer and base(governs) < SOFT * base(torsional):
        return say(
            CANNOT_TELL,
            f"{ends}; the table's {number_only(torsional, data, stress.unit)} is not borne out: find out why it is softer before it carries anything",
        )
    if not steel.covers(section):
        return say(
            CANNOT_TELL,
            f"{ends}, but the strength is published for section {section}, not for this diameter; strength falls as the section grows",
        )
    if strict is not None and stress.typical > units.from_base(base(strict), stress.unit) * (1 + 1e-9):
        return say(
            CANNOT_TELL,
            f"{ends}, but another source of the same keys gives only {units.significant(strict.typical)} {strict.unit}",
        )
    if typical and hard is None:
        return say(
            CANNOT_TELL,
            f"{ends}, but typical is not guaranteed: the shaft maker's certificate or a hardness test of this shaft decides",
        )
    if typical:
        return say(OK, f"{ends}; the hardness measured on this shaft bears it out")
    memory = "; the strength is from memory" if source.checked == "memory" else ""
    return say(OK, ends + memory)


def _twist(
    out: Answer, shaft: Shaft, steel: Steel, key: dict[str, str], sizes: tuple[Figure, ...], data: Refdata
) -> None:
    """Twist over the length, with the steel's own shear modulus, else the one published for low alloy steel, said as assumed."""
    if shaft.length is None or shaft.torque is None or shaft.diameter is None:
        return
    at = {"treatment": "any", "temper": "any", "section": "any", "specimen": "any"}
    modulus = lookup.look_up_or_none(TABLE, "shear_modulus", data=data, steel=steel.grade, **at)
    said = ""
    if modulus is None:
        modulus = lookup.look_up(TABLE, "shear_modulus", data=data, steel="low alloy steel", **at)
        said = f"shear modulus assumed: that of low alloy steel, {modulus.text} {modulus.unit}"
        own = f"that of low alloy steel, {modulus.text} {modulus.unit}, is assumed"
        text = f"No shear modulus was found for {steel.grade}: {own}. Among steels it varies by a few percent."
        out.cautions.append(Caution(text, "note", (modulus.id,), modulus.source))
    bore = base(shaft.bore) if shaft.bore is not None else 0.0
    twist = calc.angle_of_twist(base(shaft.torque), base(shaft.length), base(modulus), base(shaft.diameter), bore)
    key = {**key, "length": f"{shaft.length.text} {shaft.length.unit}"}
    out.figures.insert(
        1,
        derived(
            "angle_of_twist",
            "shaft_twist",
            twist,
            "deg",
            key,
            (shaft.torque, shaft.length, modulus, *sizes),
            data,
            said,
        ),
    )
