"""The answer ``spline``: the sizes of a spline, and shear under its roots."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline import keys
from gaugeblock.driveline.splines.sizes import Sizes, check_form, teeth_of
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.units import Measure

CHECK = "shear under the roots within the allowable"


def spline(
    pitch: str,
    teeth: str,
    *,
    pressure_angle: str = "30 deg",
    root: str = "flat root",
    fit: str = "side fit",
    torque: str | None = None,
    bore: str | None = None,
    material: str | None = None,
    source: str | None = None,
    load: str | None = None,
    cycles: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Basic sizes of a 30 degree involute spline from its pitch and tooth count.

    Parameters are text as people write them: ``pitch`` ``24/48``; ``teeth`` ``35``; ``root`` ``flat root`` or
    ``fillet root``; ``fit`` ``side fit`` or ``major diameter fit``. With ``torque`` (and ``bore``) also the shear under
    the roots; with ``material``, ``source`` and ``load`` of the drive and ``cycles`` it is judged.

    Returns a Sheet: the shaft spline's outside diameter first. These are basic sizes, without tolerance or fit.

    Raises InputError for another pressure angle, root or fit than the equations that were read, or a pitch that is none.
    Source: ANSI B92.1 basic dimension equations, as reprinted.

    >>> round(spline("24/48", "28").figure("spline_pitch_diameter").typical, 4)
    1.1667
    """
    data = data or refdata()
    asked = {
        "pitch": pitch,
        "teeth": teeth,
        "pressure_angle": pressure_angle,
        "root": root,
        "fit": fit,
        "torque": torque,
        "bore": bore,
        "material": material,
        "source": source,
        "load": load,
        "cycles": cycles,
    }
    cell = data.words("driveline", "pitch").get(" ".join(pitch.split()).casefold(), pitch.strip())
    count = teeth_of(teeth)
    if cell == "parallel side":
        return _straight(cell, count, asked, data)
    check_form(pressure_angle, root, fit, data)
    made = Sizes(cell, count, root, fit, data)
    figures = made.figures()
    checks: list[Check] = []
    cautions = rule_cautions(data, "splines", "computed dimensions")
    cautions.append(
        Caution(
            "Basic sizes: tolerance, allowance and the size over pins are not in them.",
            "note",
            (figures[0].id,),
            "B921",
        )
    )
    if torque is not None:
        sizes = keys.positive(torque, "torque", "torque"), keys.positive(bore, "length", "bore")
        stress, check = _shear(made, sizes[0], sizes[1], (material, source, load, cycles), data)
        figures.append(stress)
        checks.append(check)
        cautions += rule_cautions(data, "splined shaft", "stress checks", "root finish and cold") + rule_cautions(
            data, "induction hardening", "case depth"
        )
    return Sheet(f"spline {cell}, {count} teeth, 30 deg, {root}, {fit}", asked, data, figures, checks, cautions)


def _straight(cell: str, count: int, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """A straight-sided spline: tooth width over the major diameter, as the table has it."""
    width = lookup.look_up(
        "driveline/splines",
        "tooth_width_to_diameter",
        data=data,
        pitch=cell,
        teeth=str(count),
        pressure_angle="0 deg",
        root="straight",
    )
    return Sheet(
        f"straight-sided spline, {count} teeth",
        asked,
        data,
        [width],
        [],
        rule_cautions(data, "splines", "computed dimensions"),
    )


def _shear(
    made: Sizes, torque: Measure | None, bore: Measure | None, judged: tuple[str | None, ...], data: Refdata
) -> tuple[Figure, Check]:
    """Shear under the roots, and whether a published allowable bears it; what is missing answers ``cannot tell``."""
    assert torque is not None
    twist = stated(torque, "shaft_torque", "torque", data)
    hole = stated(bore, "shaft_bore", "bore", data) if bore is not None else None
    inside = base(hole) if hole is not None else 0.0
    if inside >= base(made.minor_external):
        raise InputError(
            bore.text if bore else "",
            "bore",
            "not smaller than the spline's root",
            (),
            "give the bore under the spline",
        )
    inputs: tuple[Figure, ...] = (twist, made.minor_external) if hole is None else (twist, made.minor_external, hole)
    material, source, load, cycles = judged
    missing = [n for n, v in zip(("material", "source", "load", "cycles"), judged, strict=True) if v is None]
    key = {**made.key, "torque": f"{twist.text} {twist.unit}"}

    def stress(ka: float, kf: float, more: tuple[Figure, ...], said: str) -> Figure:
        value = calc.spline_shear_under_roots(base(twist), base(made.minor_external), inside, ka, kf)
        rule = (
            ("spline_shear_under_roots_solid" if hole is None else "spline_shear_under_roots_hollow")
            if more
            else "spline_shear_under_roots"
        )
        number = units.from_base(value, "psi")
        made_of = (*inputs, *more)
        return derived(rule, "spline_shear_stress", number, "psi", made_of, data, key=key, conditions=said)

    if material is None or source is None or load is None or cycles is None:
        return stress(1.0, 1.0, (), "no factors"), Check(
            CHECK, CANNOT_TELL, f"not given: {', '.join(missing)}", bears=ASK
        )
    table = "driveline/spline_factors"
    ka = lookup.look_up(table, "application_factor", data=data, factor="application factor", case=source, level=load)
    kf = lookup.look_up(
        table, "fatigue_life_factor", data=data, factor="fatigue life factor", case="one direction", level=cycles
    )
    try:
        cell = canonical(data, "driveline/spline_allowables", "material", material)
        allowed = lookup.look_up("driveline/spline_allowables", "allowable_shear_stress", data=data, material=cell)
    except LookupMiss as miss:
        raise LookupMiss(
            material,
            "spline material",
            "no published allowable",
            lookup.choices("driveline/spline_allowables", "material", data=data),
            "use one of these",
        ) from miss
    got = stress(
        ka.typical,
        kf.typical,
        (ka, kf),
        f"application factor {ka.text}, life factor {kf.text}, torque in one direction",
    )
    reason = f"{units.significant(got.typical)} psi against {allowed.text} {allowed.unit} for {cell}, application factor {ka.text}, life factor {kf.text}"
    return got, at_most(
        CHECK, Bound(got.typical, "psi", "", got), Bound(allowed.typical, allowed.unit, "max", allowed), reason
    )
