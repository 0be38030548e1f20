"""A case-hardened shaft: stress and strength compared where the case ends, not at the surface alone."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.driveline import cause as cause_of
from gaugeblock.driveline import hardness as tables
from gaugeblock.driveline.torsion import CASED, Torsion, factor_of
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.driveline.steels import Steel
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

CHECK = "stress where the case ends"
_RULE = "shaft_stress_below_surface"


def _below(stress: Figure, core: Figure, factor: Figure, data: Refdata) -> Check:
    """The check of the core where the case ends."""
    limit = units.from_base(base(core), stress.unit)
    fails = stress.typical > limit * (1 + 1e-9)
    reason = (
        f"{number_only(stress, data)} where the case ends, {number_only(core, data, stress.unit)} torsional yield by"
        f" the core's hardness, factor {number_only(factor, data)}"
    )
    return Check(
        CHECK,
        NOT_OK if fails else OK,
        reason,
        Bound(limit, stress.unit, "max", core),
        Bound(stress.typical, stress.unit, "", stress),
        (limit - stress.typical) / limit,
        subject="shaft stress",
        case="below the case",
        bears=STOP,
    )


def with_case(shaft: Shaft, steel: Steel, found: Torsion, data: Refdata) -> Torsion:
    """``found`` with the junction of case and core compared, where depth and core hardness are given; else as it was.

    Stress falls in proportion to the radius; the core's torsional yield goes by its hardness (FETT), and by
    distortion energy where that is lower. The lesser factor of surface and junction stands.
    """
    if found.factor is None or steel.treatment not in CASED or shaft.case_depth is None or shaft.core_hardness is None:
        return found
    assert shaft.diameter is not None
    depth, radius = shaft.case_depth.to("m"), shaft.diameter.to("m") / 2
    if depth >= radius - (shaft.bore.to("m") / 2 if shaft.bore is not None else 0.0):
        raise InputError(
            shaft.case_depth.text, "case depth", "deeper than the shaft's wall", (), "give the depth of the case"
        )
    core = next(iter(tables.torsional_yields(shaft.core_hardness, data)), None)
    if core is None or data.entry("formulas", _RULE) is None:
        return found
    surface = found.figures[0]
    given = stated(shaft.case_depth, "effective_case_depth_typical", "case depth", data)
    stress = derived(
        _RULE,
        "shaft_shear_stress",
        surface.typical * (radius - depth) / radius,
        surface.unit,
        (surface, next(f for f in surface.inputs if f.quantity == "shaft_diameter"), given),
        data,
        about="where the case ends",
        key=surface.key,
        conditions="where the case ends",
    )
    factor = factor_of(core, stress, surface.key, data, "where the case ends")
    check = _below(stress, core, factor, data)
    at_surface = (
        f"{number_only(surface, data)} at the surface, factor {number_only(found.factor, data)}; below it see the next"
    )
    known = tuple(c for c in found.causes if c.key != "case_depth")
    settled = found.checks if known else tuple(c.replace(result=OK, reason=at_surface) for c in found.checks)
    # the surface of a case is judged by the hardness measured on it
    if not known and shaft.hardness is None:
        typical = cause_of.typical()
        known, settled = (typical,), found.checks
    if check.result == NOT_OK:
        known = (cause_of.yields(), *known)
    return found.replace(
        factor=min(found.factor, factor, key=lambda f: f.typical),
        figures=(
            *found.figures,
            stress,
            core,
            *([factor] if factor.typical >= found.factor.typical else [found.factor]),
        ),
        checks=(*settled, check),
        causes=known,
    )
