"""Formulas of which no figure is made yet: each gives a number, that of the program's own function where there is
one.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import printed
from gaugeblock.answer.worked import formula
from gaugeblock.calc import cope, driveline, fasteners, heat, line_parts, shapes, tubes
from gaugeblock.tables.load import refdata
from laws import corpus
from laws.test_law5 import EXPRESSIONS

if TYPE_CHECKING:
    from collections.abc import Callable

DATA = refdata()
INCH = 0.0254

# A sound size of each unit, and of the symbols that need another.
SIZES = {"m": 0.05, "in": 0.5, "mm": 10.0, "Pa": 3e8, "psi": 4e4, "rad": 0.5, "deg": 45.0, "K": 400.0, "m**4": 1e-8}
OWN = {
    "Ra": 1e5,
    "Re": 2e3,
    "inside_diameter": 0.03,
    "d": 0.02,
    "P": 2.0,
    "Es": 0.4,
    "En": 0.4,
    "Ds": 0.49,
    "Kn": 0.4,
    "branch_radius": 0.02,
    "offset": 0.01,
    "t": 0.7,
    "bend_ratio": 3.0,
    "stock_length": 6.0,
    "A": 0.02,
    "Ta": 250.0,
    "T2": 40.0,
    "q": 0.5,
    "o": 0.25,
    "S2": 4e8,
}


def sample(rule: str) -> dict[str, float | tuple[float, ...]]:
    """A sound number for each symbol of a rule."""
    out: dict[str, float | tuple[float, ...]] = {}
    for symbol in formula(rule, DATA).symbols:
        number = symbol.where.number
        size = OWN.get(symbol.name, SIZES.get(symbol.unit, 1.0)) if number is None else number
        out[symbol.name] = (size, size) if symbol.where.many else size
    return out


@pytest.mark.parametrize("rule", [r for r in EXPRESSIONS if r not in corpus.figures()])
def test_a_formula_gives_a_number(rule: str) -> None:
    expression = formula(rule, DATA).expression
    assert expression is not None
    assert math.isfinite(expression.value(sample(rule)))


# rule, its symbols in the order of the function, the function; all in the units of the rule
FUNCTIONS: list[tuple[str, str, Callable[..., float]]] = [
    ("angle_of_twist", "T L G D d", driveline.angle_of_twist),
    (
        "bend_allowance_sheet",
        "inside_radius thickness angle",
        lambda r, t, a: tubes.bend_allowance_sheet(r, t, math.radians(a)),
    ),
    ("bend_gain", "centre_line_radius angle", tubes.bend_gain),
    ("beam_simple_centre", "force length modulus second_moment", printed.simple_beam_deflection),
    (
        "cantilever",
        "force length modulus second_moment",
        lambda f, n, e, i: f / printed.cantilever_tip_force(1.0, n, e, i),
    ),
    ("carbon_equivalent", "C Mn Cr Mo V Ni Cu", driveline.carbon_equivalent),
    ("centre_line_from_inside", "inside_radius outside_diameter", tubes.centre_line_radius),
    ("cope_inclined", "header_radius branch_radius angle offset t", cope.cope_depth),
    (
        "corner_cost",
        "thing gap outside_diameter angle radius",
        lambda t, g, o, a, r: shapes.corner_cost(t / 2 + g + o / 2, a, r),
    ),
    ("cross_flow_cylinder", "Re Pr", heat.nusselt_forced),
    ("elastic_bend_thickness", "yield_strength radius modulus", tubes.elastic_bend_thickness),
    ("euler_column", "modulus second_moment length", tubes.euler_load),
    ("extrados_stress_index", "bend_ratio", printed.extrados_index),
    ("fatigue_stress_concentration", "Kt q", printed.fatigue_concentration),
    ("inner_wall_thickened", "wall outside_diameter centre_line_radius", tubes.inner_wall_thickened),
    ("intrados_stress_index", "bend_ratio", tubes.intrados_index),
    ("mitre_template", "radius mitre s", lambda r, m, s: cope.mitre_depth(r, m, s / r)),
    ("natural_convection_horizontal_cylinder", "Ra Pr", heat.nusselt_natural),
    ("offset_distance", "offset angle", tubes.offset_distance),
    ("offset_shrink", "offset angle", tubes.offset_shrink),
    ("offset_smallest_rise", "angle centre_line_radius straight_needed", shapes.smallest_rise),
    ("offset_straight_between", "offset angle centre_line_radius", shapes.offset_straight),
    ("polar_second_moment", "D d", driveline.polar_second_moment),
    ("polar_second_moment_solid", "a", lambda a: driveline.polar_second_moment(2 * a)),
    (
        "radiation_one_shield",
        "T1 T2 e1 e2 e31 e32",
        lambda a, b, e, f, g, h: heat.radiation(a, b, printed.planes_factor_shielded(e, f, g, h)),
    ),
    ("radiation_parallel_planes", "T1 T2 e1 e2", lambda a, b, e, f: heat.radiation(a, b, heat.planes_factor(e, f))),
    ("radiation_to_surroundings", "Ts Tsur e A", heat.radiation),
    ("rayleigh_cylinder", "Ts Ta D nu Pr", lambda s, a, d, n, p: heat.rayleigh(s - a, (s + a) / 2, d, n, p, 9.80665)),
    ("revolutions_per_mile", "D", lambda d: driveline.revolutions_per_mile(d * INCH)),
    ("rolling_offset", "rise roll", tubes.rolling_offset),
    ("setback_sheet", "inside_radius thickness angle", tubes.setback_sheet),
    ("setback_tube", "centre_line_radius angle", tubes.setback),
    ("shaft_diameter_bending_torsion", "n Kt M s_n T s_y", driveline.shaft_diameter_bending_torsion),
    ("shield_temperature", "q T1 e1 e31", heat.shield_temperature),
    ("spline_tooth_shear_pitch", "T D N Le t Ka Km Kf", driveline.spline_tooth_shear),
    ("spline_side_compression", "T D N Le h Km", driveline.spline_side_pressure),
    ("tensile_stress_area_metric", "d P", lambda d, p: fasteners.stress_area_metric(d / 1000, p / 1000) * 1e6),
    ("tensile_stress_area_unified", "d n", lambda d, n: fasteners.stress_area_unified(d * INCH, INCH / n) / INCH**2),
    ("thermal_stress_fixed_ends", "E dL L", printed.stress_if_held),
    ("thin_wall_burst", "tensile_strength wall outside_diameter", printed.barlow_pressure),
    ("torsional_section_modulus_solid", "D", driveline.torsional_section_modulus),
    ("tube_area", "outside_diameter inside_diameter", tubes.area),
    ("tube_plastic_modulus", "outside_diameter inside_diameter", tubes.plastic_modulus),
    ("tube_second_moment", "outside_diameter inside_diameter", tubes.second_moment),
    ("universal_joint_speed_ratio", "b th", driveline.joint_speed_ratio),
    ("view_factor_equal_cylinders", "r s", lambda r, s: heat.view_factor_cylinders(r, r, s)),
    ("view_factor_unequal_cylinders", "r1 r2 s", heat.view_factor_cylinders),
    ("voltage_drop_single_run", "R L I", line_parts.voltage_drop),
    ("voltage_drop_two_wire", "R L I", lambda r, n, i: line_parts.voltage_drop(r, n, i, 2)),
    ("wall_for_pressure", "p S D N", line_parts.wall_for_pressure),
    ("wrench_adapter_at_angle", "TA L A a", fasteners.adapter_setting),
    ("wrench_adapter_in_line", "TA L A", fasteners.adapter_setting),
    ("wrench_adapter_shortening", "TA L A", lambda t, n, a: fasteners.adapter_setting(t, n, a, math.pi)),
]


@pytest.mark.parametrize(("rule", "symbols", "own"), FUNCTIONS, ids=[f[0] for f in FUNCTIONS])
@given(st.lists(st.floats(0.8, 1.25), min_size=9, max_size=9))
def test_a_formula_gives_what_the_function_of_the_program_gives(
    rule: str, symbols: str, own: Callable[..., float], factors: list[float]
) -> None:
    names = symbols.split()
    numbers = {n: float(v) * f for (n, v), f in zip(sample(rule).items(), factors, strict=False)}  # type: ignore[arg-type]
    numbers |= {s.name: s.where.number for s in formula(rule, DATA).symbols if s.where.number is not None}
    expression = formula(rule, DATA).expression
    assert expression is not None
    try:
        wanted = own(*(numbers[n] for n in names))
    except ValueError:
        return
    assert expression.value(numbers) == pytest.approx(wanted, rel=1e-9)
