"""The sizes of a 30 degree involute spline, each by its own rule of the standard."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import driveline as calc
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, option
from gaugeblock.units import Measure

_PITCH = re.compile(r"(?P<pitch>[0-9]+(?:\.[0-9]+)?)/(?P<stub>[0-9]+(?:\.[0-9]+)?)", re.ASCII)
_FEWEST = 6  # the standard's tables begin at 6 teeth (from memory)
_MOST_DIGITS = 3


class Sizes:
    """One spline: what was asked of it, and each size by its own rule."""

    def __init__(self, cell: str, count: int, root: str, fit: str, data: Refdata) -> None:
        self.per_inch = per_inch_of(cell)
        self.data = data
        self.count = count
        self.root = root
        self.fit = fit
        self.key = {"pitch": cell, "teeth": str(count), "root": root, "fit": fit}
        per_inch = Measure(Fraction(cell.partition("/")[0]), "1/in", f"{cell.partition('/')[0]} 1/in")
        self.pitch = stated(per_inch, "spline_pitch", "pitch", data)
        self.teeth = stated(Measure(Fraction(count), "teeth", f"{count} teeth"), "spline_teeth", "teeth", data)
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
        number = units.from_base(value_m, "in")
        made_of = inputs or (self.teeth, self.pitch)
        return derived(rule, quantity, number, "in", made_of, self.data, key=self.key, conditions=conditions)

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

    @property
    def space_width(self) -> Figure:
        """Least effective space width of the hub, and basic tooth thickness of the shaft, on the pitch circle."""
        half = 3.141592653589793 / self.per_m / 2
        return self._made("spline_space_width_effective_minimum", "spline_space_width", half, (self.pitch,))

    @property
    def contact_depth(self) -> Figure:
        """Height on which the teeth bear."""
        outside = self._sized("spline_major_diameter_external", "spline_major_diameter_external", 1.0)
        inside = self._sized("spline_minor_diameter_internal", "spline_minor_diameter_internal", -1.0)
        depth = (base(outside) - base(inside)) / 2
        return self._made("spline_contact_depth", "spline_contact_depth", depth, (outside, inside))

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
        out.append(self.space_width)
        return out


def per_inch_of(cell: str) -> float:
    """The teeth to one inch of pitch diameter that a pitch means, ``24/48``; InputError for one that is none."""
    match = _PITCH.fullmatch(cell)
    if match is None or Fraction(match["stub"]) != 2 * Fraction(match["pitch"]) or not Fraction(match["pitch"]):
        raise InputError(
            cell,
            "pitch",
            "not a spline pitch: the second number is twice the first",
            ("24/48", "16/32", "12/24"),
            "write it as 24/48",
        )
    per_inch = float(Fraction(match["pitch"]))
    if per_inch < 2.5 or 12 < per_inch < 16:
        raise InputError(
            cell,
            "pitch",
            "outside the pitches the equations were printed for",
            ("12/24", "16/32", "24/48"),
            "ask the maker",
        )
    return per_inch


def teeth_of(typed: str) -> int:
    text = typed.strip()
    count = units.whole_number(text)
    if count is None or len(text) > _MOST_DIGITS or count < _FEWEST:
        raise InputError(typed, "teeth", f"not a whole number of teeth from {_FEWEST} up", (), "count the teeth")
    return count


THE_ANGLE = "30 deg"


def check_form(pressure_angle: str, root: str, fit: str, data: Refdata) -> tuple[str, str]:
    """The root form and the fit that were meant; InputError for a form that the equations are not of."""
    angle = data.words("driveline", "pressure_angle").get(" ".join(pressure_angle.split()).casefold(), pressure_angle)
    if angle != THE_ANGLE and units.parse_measure(angle, "angle", "pressure angle").to("deg") != 30.0:
        raise InputError(
            pressure_angle,
            "pressure angle",
            "the equations that were read are for 30 degrees",
            (THE_ANGLE,),
            "ask the maker for the standard's other form",
        )
    root = option(root, "driveline root", "not a root form", data=data)
    fit = option(fit, "driveline fit", "not a fit", data=data)
    if root == "fillet root" and fit == "major diameter fit":
        raise InputError(
            f"{root}, {fit}",
            "fit",
            "the equations that were read have no fillet root major diameter fit",
            ("side fit",),
            "ask for the side fit",
        )
    return root, fit
