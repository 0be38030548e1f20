"""The form of an axle shaft beside its plain body: steps, a spline at its end, a fillet under a shoulder or flange."""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import axles as sizing
from gaugeblock.driveline.torsion import modulus_of, torque_text, twist_of
from gaugeblock.errors import InputError
from gaugeblock.listed import items
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.caution import Caution
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.driveline.splines.sizes import Sizes
    from gaugeblock.driveline.steels import Steel
    from gaugeblock.figure import Figure
    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata

    Part = tuple[Measure, Measure]

_MOST_PARTS = 12
# h/r of the chart that the formula is fitted to.
_LEAST, _MOST = 0.25, 4.0


class Form(Value):
    """What was given of a shaft's form; None or () where it is plain.

    ``parts`` diameter and length of each step, ``pitch`` and ``teeth`` of a spline with its ``root``, ``fillet`` radius
    under a ``shoulder`` of that diameter, and the steel's own ``shear_modulus``.
    """

    __slots__ = ("fillet", "parts", "pitch", "root", "shear_modulus", "shoulder", "teeth")

    parts: tuple[Part, ...]
    pitch: str | None
    teeth: str | None
    root: str | None
    fillet: Measure | None
    shoulder: Measure | None
    shear_modulus: Known | None

    def __init__(
        self,
        parts: tuple[Part, ...] = (),
        pitch: str | None = None,
        teeth: str | None = None,
        root: str | None = None,
        fillet: Measure | None = None,
        shoulder: Measure | None = None,
        shear_modulus: Known | None = None,
    ) -> None:
        if len(parts) > _MOST_PARTS:
            raise InputError("parts", "parts", f"more than {_MOST_PARTS} steps", (), "put like ones together")
        for name, value in zip(
            ("parts", "pitch", "teeth", "root", "fillet", "shoulder", "shear_modulus"),
            (parts, pitch, teeth, root, fillet, shoulder, shear_modulus),
            strict=True,
        ):
            put(self, name, value)

    def lacks(self) -> list[str]:
        """The other half of what was half given."""
        out = []
        if (self.pitch is None) != (self.teeth is None):
            out.append("spline" if self.pitch is None else "teeth")
        if (self.fillet is None) != (self.shoulder is None):
            out.append("fillet" if self.fillet is None else "shoulder")
        return out


def parts_of(typed: str | Sequence[str] | None) -> tuple[Part, ...]:
    """``1-1/2 in x 4 in, 1-1/4 in x 22 in``: diameter and length of each step; () where none was given."""
    if typed is None:
        return ()
    out = []
    for text in items(typed, "parts") if isinstance(typed, str) else typed:
        diameter, cross, length = text.partition(" x ")
        if not cross:
            raise InputError(text.strip(), "parts", "not a diameter and a length", (), "write it as 1-1/4 in x 22 in")
        out.append((read_positive(diameter, "length", "parts"), read_positive(length, "length", "parts")))
    return tuple(out)


class Body(Value):
    """The section of a shaft that governs: its ``diameter`` as a figure, the ``shaft`` judged there, the ``plain``
    diameter of the body, and the ``figures`` behind it.
    """

    __slots__ = ("diameter", "figures", "plain", "shaft")

    shaft: Shaft
    diameter: Figure | None
    plain: Figure | None
    figures: tuple[Figure, ...]

    def __init__(
        self, shaft: Shaft, diameter: Figure | None, plain: Figure | None, figures: tuple[Figure, ...] = ()
    ) -> None:
        put(self, "shaft", shaft)
        put(self, "diameter", diameter)
        put(self, "plain", plain)
        put(self, "figures", figures)


def body_of(shaft: Shaft, form: Form, data: Refdata) -> Body:
    """The smallest section: of the body, its steps, and the root of its spline."""
    plain = shaft.diameter
    if form.parts:
        thin = min((d for d, _ in form.parts), key=lambda d: d.to("m"))
        if plain is not None and plain.to("m") != thin.to("m"):
            why = f"the thinnest of the steps is {thin.text}"
            raise InputError(plain.text, "diameter", why, (), "give the steps alone, or the diameter alone")
        plain = thin
    own = None if plain is None else stated(plain, "shaft_diameter", "shaft diameter", data)
    if form.pitch is None or form.teeth is None:
        return Body(shaft.replace(diameter=plain, length=None), own, own)
    sizes = _spline(form, data)
    root = sizes.minor_external
    if own is not None and base(own) <= base(root):
        return Body(shaft.replace(diameter=plain, length=None), own, own, (root,))
    inputs = (root,) if own is None else (own, root)
    unit = own.unit if own is not None else "in"
    number = units.from_base(base(root), unit)
    key = {**sizes.key, **({} if own is None else {"shaft": f"{own.text} {own.unit}"})}
    name, where = "shaft_diameter_smallest", "under the spline roots"
    thinnest = derived(name, "shaft_diameter", number, unit, inputs, data, key=key, conditions=where)
    measure = Measure(Fraction(number), unit, f"{units.significant(number, 6)} {unit}")
    return Body(shaft.replace(diameter=measure, length=None), thinnest, own, (thinnest, root))


def governs(body: Body, data: Refdata) -> str:
    """Where the shaft is judged, as a sentence, where that is not the diameter that was given for it."""
    if body.diameter is None or body.diameter.basis != "derived":
        return ""
    root = number_only(body.diameter, data)
    than = f", which is thinner than the shaft, {body.plain.text} {body.plain.unit}" if body.plain is not None else ""
    return f"The root of its spline governs: {root}{than}."


def _spline(form: Form, data: Refdata) -> Sizes:
    from gaugeblock.driveline.splines.sizes import THE_ANGLE, Sizes, check_form, teeth_of

    root, _ = check_form(THE_ANGLE, form.root or "flat root", "side fit", data)
    return Sizes(form.pitch or "", teeth_of(form.teeth or ""), root, "side fit", data)


def doubt_of_shear(form: Form, data: Refdata) -> dict[str, str]:
    """What is doubtful of a shear modulus that is stated, under its key."""
    if form.shear_modulus is None or is_plausible(form.shear_modulus.typical, "shear_modulus", data):
        return {}
    measure, span = form.shear_modulus.typical, plausible_range("shear_modulus", data) or (0.0, 0.0)
    said = f"{measure.text} is no usual shear modulus"
    return {"shear_modulus": did_you_mean(said, other_readings(measure, *span, ("Msi", "GPa")))}


def twists_of(
    shaft: Shaft, form: Form, torque: Figure, steel: Steel, data: Refdata
) -> tuple[tuple[Figure, ...], tuple[Caution, ...]]:
    """Twist of each step and of them all; of a plain shaft over its length. () where no length was given."""
    parts = form.parts or ((shaft.diameter, shaft.length),)
    if any(d is None or n is None for d, n in parts):
        return (), ()
    modulus, cautions, said = modulus_of(steel, data, form.shear_modulus)
    bore = None if shaft.bore is None else stated(shaft.bore, "shaft_bore", "bore", data)
    out = []
    for number, (diameter, length) in enumerate(parts, 1):
        assert diameter is not None
        assert length is not None
        name = f"step {number}, " if len(parts) > 1 else ""
        sizes = (
            stated(diameter, "shaft_diameter", f"{name}shaft diameter", data),
            stated(length, "shaft_length", f"{name}length", data),
        )
        key = {**steel.key, "shaft": diameter.text, "part": str(number), "torque": torque_text(torque)}
        about = f"{name}{diameter.text}" if name else ""
        conditions = "; ".join(t for t in (about, said) if t)
        out.append(twist_of(torque, sizes[1], modulus, (sizes[0], bore), key, conditions, data))
    beside = () if form.shear_modulus is None else (modulus, modulus_of(steel, data)[0])
    if len(out) == 1:
        return (*out, *beside), cautions
    total = sum(f.typical for f in out)
    key = {**steel.key, "shaft": ", ".join(d.text for d, _ in form.parts), "torque": torque_text(torque)}
    whole = derived(
        "shaft_twist_of_steps", "shaft_twist", total, "deg", tuple(out), data, key=key, conditions="all steps together"
    )
    return (whole, *out, *beside), cautions


def concentration(form: Form, stress: Figure, diameter: Figure, data: Refdata) -> tuple[Figure, Figure] | None:
    """Factor of the fillet and the peak stress in it; None where none was given or it lies outside the chart."""
    if form.fillet is None or form.shoulder is None:
        return None
    small, large, radius = base(diameter), form.shoulder.to("m"), form.fillet.to("m")
    if large <= small:
        why = "not larger than the shaft beside it"
        raise InputError(form.shoulder.text, "shoulder", why, (), "give the diameter of the shoulder or flange")
    if not _LEAST <= (large - small) / 2 / radius <= _MOST:
        return None
    shoulder = stated(form.shoulder, "shoulder_diameter", "shoulder", data)
    fillet = stated(form.fillet, "fillet_radius", "fillet", data)
    key = {**stress.key, "fillet": f"{form.fillet.text} under {form.shoulder.text}"}
    factor = derived(
        "fillet_concentration_torsion",
        "stress_concentration_factor",
        sizing.fillet_concentration_torsion(large, small, radius),
        "1",
        (shoulder, diameter, fillet),
        data,
        key=key,
        conditions="of the fillet in torsion",
    )
    peak = derived(
        "peak_shear_stress",
        "shaft_peak_stress",
        factor.typical * stress.typical,
        stress.unit,
        (factor, stress),
        data,
        key=key,
        conditions="at the surface of the fillet",
    )
    return factor, peak
