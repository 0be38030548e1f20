"""Involute splines: sizes from the standard's equations, and shear under the roots."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, Bound, Check, at_most
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.parts import asked_measure, base, derived, rule_cautions
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, canonical, refdata

ROOTS = ("flat root", "fillet root")
FITS = ("side fit", "major diameter fit")
_PITCH = re.compile(r"(?P<pitch>[0-9]+(?:\.[0-9]+)?)/(?P<stub>[0-9]+(?:\.[0-9]+)?)", re.ASCII)
_FEWEST = 6  # the standard's tables begin at 6 teeth (from memory)
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
        "pitch": pitch, "teeth": teeth, "pressure_angle": pressure_angle, "root": root, "fit": fit, "torque": torque, "bore": bore,
        "material": material, "source": source, "load": load, "cycles": cycles,
    }  # fmt: skip
    cell = data.words("driveline", "pitch").get(" ".join(pitch.split()).casefold(), pitch.strip())
    count = _teeth(teeth)
    if cell == "parallel side":
        return _straight(cell, count, asked, data)
    _known(pressure_angle, root, fit, data)
    made = _Spline(cell, count, root, fit, data)
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
        stress, check = _shear(made, torque, bore, (material, source, load, cycles), data)
        figures.append(stress)
        checks.append(check)
        cautions += rule_cautions(data, "splined shaft", "stress checks", "root finish and cold") + rule_cautions(
            data, "induction hardening", "case depth"
        )
    return Sheet(f"spline {cell}, {count} teeth, 30 deg, {root}, {fit}", asked, data, figures, checks, cautions)


class _Spline:
    """One spline: its asked figures, and each size by its own rule."""

    def __init__(self, cell: str, count: int, root: str, fit: str, data: Refdata) -> None:
        match = _PITCH.fullmatch(cell)
        if match is None or Fraction(match["stub"]) != 2 * Fraction(match["pitch"]) or not Fraction(match["pitch"]):
            raise InputError(
                cell,
                "pitch",
                "not a spline pitch: the second number is twice the first",
                ("24/48", "16/32", "12/24"),
                "write it as 24/48",
            )
        self.per_inch = float(Fraction(match["pitch"]))
        if self.per_inch < 2.5 or 12 < self.per_inch < 16:
            raise InputError(
                cell,
                "pitch",
                "outside the pitches the equations were printed for",
                ("12/24", "16/32", "24/48"),
                "ask the maker",
            )
        self.data = data
        self.count = count
        self.root = root
        self.fit = fit
        self.key = {"pitch": cell, "teeth": str(count), "root": root, "fit": fit}
        self.pitch = Figure(
            f"asked:pitch:{cell}", "spline_pitch", self.per_inch, "1/in", basis="measured", checked="primary", source="as asked",
            locator="pitch", text=match["pitch"],
        )  # fmt: skip
        self.teeth = Figure(
            f"asked:teeth:{count}", "spline_teeth", float(count), "teeth", basis="measured", checked="primary", source="as asked",
            locator="teeth", text=str(count),
        )  # fmt: skip
        self.diameter = self._made(
            "spline_pitch_diameter", "spline_pitch_diameter", calc.spline_pitch_diameter(count, self.per_m)
        )
        self.minor_external = self._sized("spline_minor_diameter_external", *self._minor())

    @property
    def per_m(self) -> float:
        """Teeth to one metre of pitch diameter."""
        return self.per_inch / 0.0254

    def _made(
        self, rule: str, quantity: str, value_m: float, inputs: tuple[Figure, ...] = (), conditions: str = ""
    ) -> Figure:
        return derived(
            rule, quantity, value_m, "in", self.key, inputs or (self.teeth, self.pitch), self.data, conditions
        )

    def _sized(self, quantity: str, rule: str, addend: float) -> Figure:
        return self._made(rule, quantity, calc.spline_diameter(self.count, self.per_m, addend))

    def _minor(self) -> tuple[str, float]:
        if self.per_inch >= 16:
            return "spline_minor_diameter_external_fine", -2.0
        return (
            ("spline_minor_diameter_external_flat", -1.35)
            if self.root == "flat root"
            else ("spline_minor_diameter_external_fillet", -1.8)
        )

    def _major(self) -> tuple[str, float]:
        if self.fit == "major diameter fit":
            return "spline_major_diameter_internal_flat_major", 1.0
        return (
            ("spline_major_diameter_internal_flat_side", 1.35)
            if self.root == "flat root"
            else ("spline_major_diameter_internal_fillet", 1.8)
        )

    def figures(self) -> list[Figure]:
        """All sizes, the one a shop measures first first."""
        d = base(self.diameter)
        clearance = calc.spline_form_clearance(d)
        cleared = self._made("spline_form_clearance", "spline_form_clearance", clearance, (self.diameter,))
        inputs = (self.teeth, self.pitch, cleared)
        form_external = calc.spline_diameter(self.count, self.per_m, -1.0) - 2 * clearance
        out = [
            self._sized("spline_major_diameter_external", "spline_major_diameter_external", 1.0),
            self.minor_external,
            self.diameter,
            self._made("spline_base_diameter", "spline_base_diameter", d * 0.8660254037844386, (self.diameter,)),
            self._sized("spline_major_diameter_internal", *self._major()),
            self._sized("spline_minor_diameter_internal", "spline_minor_diameter_internal", -1.0),
            self._made("spline_form_diameter_external", "spline_form_diameter_external", form_external, inputs),
        ]
        if self.fit == "side fit":
            form_internal = calc.spline_diameter(self.count, self.per_m, 1.0) + 2 * clearance
            out.append(
                self._made("spline_form_diameter_internal", "spline_form_diameter_internal", form_internal, inputs)
            )
        tooth = 3.141592653589793 / self.per_m
        out.append(self._made("spline_circular_pitch", "spline_circular_pitch", tooth, (self.pitch,)))
        out.append(self._made("spline_space_width_effective_minimum", "spline_space_width", tooth / 2, (self.pitch,)))
        return out


def _teeth(typed: str) -> int:
    text = typed.strip()
    if not (text.isascii() and text.isdigit() and len(text) <= 3) or int(text) < _FEWEST:
        raise InputError(typed, "teeth", f"not a whole number of teeth from {_FEWEST} up", (), "count the teeth")
    return int(text)


def _known(pressure_angle: str, root: str, fit: str, data: Refdata) -> None:
    angle = data.words("driveline", "pressure_angle").get(" ".join(pressure_angle.split()).casefold(), pressure_angle)
    if units.parse_measure(angle, "angle", "pressure angle").to("deg") != 30.0:
        raise InputError(
            pressure_angle,
            "pressure angle",
            "the equations that were read are for 30 degrees",
            ("30 deg",),
            "ask the maker for the standard's other form",
        )
    if root not in ROOTS:
        raise InputError(root, "root", "not a root form", ROOTS, "use one of these")
    if fit not in FITS:
        raise InputError(fit, "fit", "not a fit", FITS, "use one of these")
    if root == "fillet root" and fit == "major diameter fit":
        raise InputError(
            f"{root}, {fit}",
            "fit",
            "the equations that were read have no fillet root major diameter fit",
            ("side fit",),
            "ask for the side fit",
        )


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
    made: _Spline, torque: str, bore: str | None, judged: tuple[str | None, ...], data: Refdata
) -> tuple[Figure, Check]:
    """Shear under the roots, and whether a published allowable bears it; what is missing answers ``cannot tell``."""
    twist = asked_measure(torque, "torque", "shaft_torque", "torque")
    hole = asked_measure(bore, "length", "shaft_bore", "bore") if bore is not None else None
    inside = base(hole) if hole is not None else 0.0
    if inside >= base(made.minor_external):
        raise InputError(bore or "", "bore", "not smaller than the spline's root", (), "give the bore under the spline")
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
        return derived(rule, "spline_shear_stress", value, "psi", key, (*inputs, *more), data, said)

    if material is None or source is None or load is None or cycles is None:
        return stress(1.0, 1.0, (), "no factors"), Check(CHECK, CANNOT_TELL, f"not given: {', '.join(missing)}")
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
