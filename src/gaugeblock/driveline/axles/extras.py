"""What stands beside the factor of an axle shaft: share of yield, smallest diameter, fillet, lasting, preheat."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import axles as sizing
from gaugeblock.driveline.axles.form import concentration
from gaugeblock.driveline.torsion import stress_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.axles.form import Body, Form
    from gaugeblock.driveline.steel import Material
    from gaugeblock.driveline.torsion import Torsion
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

FILLET, LASTS = "stress in the fillet", "screening for fatigue"


class Extras(Value):
    """Figures and checks that change nothing that is decided."""

    __slots__ = ("checks", "figures")

    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]

    def __init__(self, figures: tuple[Figure, ...] = (), checks: tuple[Check, ...] = ()) -> None:
        put(self, "figures", figures)
        put(self, "checks", checks)


def extras(found: Torsion, torque: Figure, body: Body, form: Form, of: Material, data: Refdata) -> Extras:
    """At the most torque that can reach the shaft."""
    governs = of.strength.governing
    stress = next((f for f in found.figures if f.quantity == "shaft_shear_stress"), None)
    if governs is None or stress is None or body.diameter is None:
        return Extras()
    out = [_share(stress, governs, data), _least(torque, stress, governs, body, data)]
    beside, plain = stress, body.diameter
    if form.fillet is not None and body.plain is not None:
        bore = next((f for f in stress.inputs if f.quantity == "shaft_bore"), None)
        plain = body.plain
        key = {**stress.key, "shaft": f"{plain.text} {plain.unit}"}
        beside = stress if plain is body.diameter else stress_of(torque, plain, bore, stress.unit, key, data)
    notch = concentration(form, beside, plain, data)
    checks = []
    if notch is not None:
        out += [*notch, *(() if beside is stress else (beside,))]
        checks.append(_fillet(notch, governs, data))
    lasting = _lasting(beside, governs, plain, notch, of, data)
    if lasting:
        out += lasting
        checks.append(_lasts(lasting[0], data))
    return Extras(tuple(out), tuple(checks))


def _share(stress: Figure, governs: Figure, data: Refdata) -> Figure:
    share = 100 * base(stress) / base(governs)
    name = "shaft_yield_share"
    return derived(name, name, share, "%", (stress, governs), data, key=stress.key)


def _least(torque: Figure, stress: Figure, governs: Figure, body: Body, data: Refdata) -> Figure:
    bore = next((f for f in stress.inputs if f.quantity == "shaft_bore"), None)
    size = sizing.least_diameter(base(torque), base(governs), base(bore) if bore is not None else 0.0)
    unit = "mm" if body.diameter is not None and body.diameter.unit == "mm" else "in"
    inputs = (torque, governs) if bore is None else (torque, governs, bore)
    number = units.from_base(size, unit)
    name, said = "shaft_diameter_least", "at which the surface just yields"
    return derived(name, name, number, unit, inputs, data, key=stress.key, conditions=said)


def _fillet(notch: tuple[Figure, Figure], governs: Figure, data: Refdata) -> Check:
    factor, peak = notch
    limit = units.from_base(base(governs), peak.unit)
    over = peak.typical > limit * (1 + 1e-9)
    said = "; sound steel gives there and holds, a hard surface may crack" if over else ""
    reason = (
        f"{number_only(peak, data)} by a factor of {number_only(factor, data)}, torsional yield"
        f" {number_only(governs, data, peak.unit)}{said}"
    )
    required, actual = Bound(limit, peak.unit, "max", governs), Bound(peak.typical, peak.unit, "", peak)
    room = (limit - peak.typical) / limit
    result = NOT_OK if over else OK
    return Check(FILLET, result, reason, required, actual, room, subject="shaft stress", case="fillet", bears=INFORM)


_SOFT, _HARD = 50.0, 250.0  # ksi, of the notch sensitivity's range
_THIN, _THICK = 0.11, 2.0  # in, of the size factor's range


def _lasting(
    stress: Figure,
    governs: Figure,
    diameter: Figure,
    notch: tuple[Figure, Figure] | None,
    of: Material,
    data: Refdata,
) -> list[Figure]:
    """Factor against fatigue, endurance strength and notch sensitivity; [] outside the range of the rules."""
    tensile = next((f for f in of.strengths if f.quantity.startswith("tensile")), None)
    size = units.from_base(base(diameter), "in")
    if tensile is None or not _THIN <= size <= _THICK:
        return []
    strong = units.from_base(base(tensile), "ksi")
    if not _SOFT <= strong <= _HARD:
        return []
    key = stress.key
    endurance = derived(
        "shear_endurance_shaft",
        "shear_endurance_strength",
        sizing.shear_endurance(strong, size),
        "ksi",
        (tensile, diameter),
        data,
        key=key,
        conditions="machined surface, estimated",
    )
    inputs: tuple[Figure, ...] = (stress, endurance, governs)
    more: list[Figure] = []
    kt, q = 1.0, 0.0
    if notch is not None:
        kt = notch[0].typical
        fillet = next(f for f in notch[0].inputs if f.quantity == "fillet_radius")
        q = sizing.notch_sensitivity_torsion(strong, units.from_base(base(fillet), "in"))
        name, at = "notch_sensitivity_torsion", {**key, "fillet": fillet.text}
        felt = derived(name, "notch_sensitivity", q, "1", (tensile, fillet), data, key=at)
        inputs = (*inputs, notch[0], felt)
        more = [felt]
    value = sizing.fatigue_factor(base(stress), base(endurance), base(governs), kt, q)
    place = "fillet" if notch is not None else "plain surface"
    said = f"torque put on and taken off, at the {place}"
    name = "fatigue_factor_soderberg"
    factor = derived(name, "fatigue_factor", value, "1", inputs, data, key=key, conditions=f"{said}; screening only")
    return [factor, endurance, *more]


def _lasts(factor: Figure, data: Refdata) -> Check:
    # Without end no axle sees its greatest torque: a screening that fails is no verdict.
    result = OK if factor.typical >= 1 else CANNOT_TELL
    word = "it bears" if factor.typical >= 1 else "it does not bear"
    said = f"{word} the full torque put on and taken off without end"
    reason = f"factor {number_only(factor, data)} by the Soderberg line: {said}; a screening, no guarantee"
    bound, actual = Bound(1.0, "1", "min"), Bound(factor.typical, "1", "", factor)
    return Check(LASTS, result, reason, bound, actual, factor.typical - 1, subject="fatigue", bears=INFORM)
