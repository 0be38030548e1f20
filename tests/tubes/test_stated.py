"""What is stated of a tube's own metal, a test bend in proportion, and the figures that follow."""

from __future__ import annotations

from math import pi, radians, sin, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.answer.check import NOT_OK, OK
from gaugeblock.answer.decision import NONE, STOP
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, UnitError
from gaugeblock.figure import Figure
from gaugeblock.tubes.bend.sheet import bend
from gaugeblock.tubes.plan.plan import plan
from gaugeblock.tubes.section import section

TUBE = {"od": "1-3/4 in", "wall": ".120 in", "material": "1020 DOM as drawn"}
BEND = {**TUBE, "method": "rotary draw", "radius": "5-1/2 in"}
SHAPE = {"offset": {"rise": "6 in", "angle": "30 deg", "before": "8 in", "after": "8 in"}}
DIE = {"start_mark": "1-1/4 in", "grip": "3 in"}
LOAD = {"mass": "900 kg", "at": "centre", "bump_factor": "3", "feet": "pinned", "yield_share": "50 %"}
SPAN = {"kick_up": {"flat": "12 in", "rise": "5 in", "angle": "45 deg", "foot": "8 in"}, "load": LOAD}


def bent(**more: str) -> Sheet:
    return bend(**{**BEND, "angle": "90 deg", **more})


def all_of(sheet: Sheet, quantity: str) -> list[Figure]:
    return [f for f in sheet.figures if f.quantity == quantity]


def of(sheet: Sheet, quantity: str) -> Figure:
    return all_of(sheet, quantity)[0]


# --- strengths and modulus --------------------------------------------------------------------------------------------


def test_a_yield_strength_of_its_own_moves_the_springback_and_stands_beside_the_tables() -> None:
    own, table = bent(yield_strength="40 ksi by tensile test on 2026-11-20"), bent()
    stated, has = all_of(own, "yield_strength")
    assert (stated.trust, stated.source) == ("SHOP", "tensile test, 2026-11-20")
    assert has.basis == "published"
    assert (of(own, "springback_angle").low or 0) < (of(table, "springback_angle").low or 0)


def test_the_tables_own_values_stated_give_the_tables_own_answer() -> None:
    table = bent()
    weak, strong, stiff = (
        next(i for f in table.figures for i in f.walk() if i.quantity == q)
        for q in ("yield_strength", "tensile_strength", "modulus")
    )
    same = {f.quantity: f"{f.least:.9g} {f.unit}" for f in (weak, strong, stiff)}
    own = bent(**same)
    for one, other in zip(all_of(own, "springback_angle"), all_of(table, "springback_angle"), strict=True):
        assert (one.low, one.high) == (pytest.approx(other.low), pytest.approx(other.high))
    assert own.decision.kind == table.decision.kind


def test_a_stated_strength_judges_the_load_and_can_stop() -> None:
    def share(strength: str | None) -> tuple[str, float]:
        metal = {"yield_strength": strength} if strength else {}
        sheet = plan({**BEND, "name": "bar", **SPAN, **metal}, die=DIE)
        check = next(c for c in sheet.checks if c.name.startswith("carries its load"))
        return check.result, of(sheet, "yield_share").typical

    (table, by_table), (weak, by_weak), (strong, by_strong) = share(None), share("30 ksi"), share("170 ksi")
    assert by_weak == pytest.approx(2 * by_table)
    assert by_strong == pytest.approx(by_table * 60 / 170)
    assert (weak, table) == (NOT_OK, NOT_OK)
    assert strong in (OK, NOT_OK)
    sheet = plan({**BEND, "name": "bar", **SPAN, "yield_strength": "30 ksi"}, die=DIE)
    assert sheet.decision.kind == STOP
    assert "yield strength given" in next(c.reason for c in sheet.checks if c.name.startswith("carries its load"))


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"yield_strength": "6 ksi"}, "far from what the tables have"),
        ({"yield_strength": "4 ksi"}, "not plausible"),
        ({"modulus": "29 ksi"}, "Did you mean 29 Msi?"),
        ({"yield_strength": "80 ksi", "tensile_strength": "70 ksi"}, "one of the two is wrong"),
    ],
)
def test_the_implausible_is_questioned_and_nothing_is_bent_by_it(more: dict[str, str], said: str) -> None:
    sheet = bent(**more)
    assert sheet.decision.kind == NONE
    assert said in sheet.decision.do.replace("\N{NO-BREAK SPACE}", " ")
    planned = plan({**BEND, "name": "bar", **SHAPE, **more}, die=DIE)
    assert planned.decision.kind == NONE
    assert said in " ".join(c.reason for c in planned.checks)


@pytest.mark.parametrize(
    ("more", "error"),
    [
        ({"yield_strength": "62"}, UnitError),
        ({"yield_strength": "62 ksi by tester"}, InputError),
        ({"test": "45 deg set, 47 deg got"}, InputError),
        ({"test": "a bit more"}, InputError),
    ],
)
def test_what_cannot_be_read_is_refused(more: dict[str, str], error: type[Exception]) -> None:
    with pytest.raises(error):
        bent(**more)


# --- a test bend in proportion ----------------------------------------------------------------------------------------


@given(st.floats(5, 170), st.floats(10, 120), st.floats(0, 0.1))
@settings(max_examples=30, deadline=None)
def test_one_test_bend_serves_every_angle_in_proportion(wanted: float, got: float, back: float) -> None:
    put = got * (1 + back)
    test = f"{put:.6f} deg set, {got:.6f} deg got"
    sheet = bend(**{**BEND, "angle": f"{wanted:.6f} deg", "test": test})
    figure = of(sheet, "bend_angle_set")
    assert base(figure) == pytest.approx(radians(wanted) * put / got, rel=1e-5)
    assert not all_of(sheet, "springback_angle")
    assert not [c for c in sheet.cautions if c.text.startswith("Springback belongs")]


def test_one_test_bend_of_the_job_serves_every_bend_and_a_second_goes_between() -> None:
    tests = [{"pulled": "47 deg", "released": "45 deg"}]
    one = plan({**BEND, "name": "bar", **SHAPE}, die={**DIE, "test_bends": tests})
    assert [round(f.typical, 3) for f in all_of(one, "bend_angle_set")] == [31.333, 31.333]
    assert next(c.reason for c in one.checks if c.name == "angle to set").endswith("measure the first bend")
    tests.append({"pulled": "21 deg", "released": "20 deg"})
    two = plan({**BEND, "name": "bar", **SHAPE}, die={**DIE, "test_bends": tests})
    assert [round(f.typical, 3) for f in all_of(two, "bend_angle_set")] == [31.4, 31.4]


# --- arcs, apexes, smallest rise --------------------------------------------------------------------------------------


@given(st.floats(1, 180), st.floats(2.6, 20))
@settings(max_examples=30, deadline=None)
def test_inner_and_outer_arc_lie_round_the_arc_at_the_centre_line(angle: float, radius: float) -> None:
    sheet = bend(**{**BEND, "radius": f"{radius:.6f} in", "angle": f"{angle:.6f} deg"})
    inner, middle, outer = (of(sheet, q).typical for q in ("inner_arc", "developed_length", "outer_arc"))
    assert (inner + outer) / 2 == pytest.approx(middle, rel=1e-6)
    assert outer - inner == pytest.approx(1.75 * radians(angle), rel=1e-5)


def test_apexes_lie_where_the_legs_meet() -> None:
    sheet = plan({**BEND, "name": "bar", **SHAPE}, die=DIE)
    first, second = (f.typical for f in all_of(sheet, "apex_place"))
    assert first == pytest.approx(8 + 5.5 * tan(radians(15)), abs=1e-6)
    assert second - first == pytest.approx(6 / sin(radians(30)), abs=1e-6)


@given(st.floats(10, 80), st.floats(2, 8), st.floats(0, 4))
@settings(max_examples=30, deadline=None)
def test_the_smallest_rise_is_made_and_less_is_not(angle: float, radius: float, grip: float) -> None:
    die = {"start_mark": "1 in", "between": f"{grip:.6f} in"} if grip > 0.01 else {"start_mark": "1 in"}

    def at(rise: float) -> Sheet:
        shape = {"rise": f"{rise:.6f} in", "angle": f"{angle:.6f} deg", "before": "20 in", "after": "20 in"}
        return plan({**BEND, "name": "bar", "radius": f"{radius:.6f} in", "offset": shape}, die=die)

    least = of(at(60), "rise_minimum").typical
    assert at(least * 1.001).decision.kind != STOP
    assert at(least * 0.999).decision.kind == STOP


# --- section ----------------------------------------------------------------------------------------------------------


@given(st.floats(0.5, 3), st.floats(0.03, 0.2))
@settings(max_examples=40, deadline=None)
def test_section_modulus_is_the_second_moment_over_the_outer_radius(od: float, wall: float) -> None:
    od, wall = round(od, 4), round(wall, 4)
    sheet = section(od=f"{od} in", wall=f"{wall} in", material="1020 DOM as drawn", length="1 m")
    second, stiff, area = (base(of(sheet, q)) for q in ("second_moment", "section_modulus", "section_area"))
    assert stiff == pytest.approx(2 * second / (od * 0.0254), rel=1e-5)
    assert area == pytest.approx(pi * (od - wall) * wall * 0.0254**2, rel=1e-5)
    assert base(of(sheet, "tube_mass")) == pytest.approx(area * base(of(sheet, "density")), rel=1e-9)


def test_a_stated_yield_strength_gives_the_bending_it_takes() -> None:
    sheet = section(**TUBE, yield_strength="62 ksi")
    made = of(sheet, "moment_at_yield")
    assert base(made) == pytest.approx(units.to_base(62, "ksi") * base(of(sheet, "section_modulus")))
    assert [f.basis for f in all_of(sheet, "yield_strength")] == ["stated", "published"]


def test_a_wall_that_no_tube_has_is_asked_about() -> None:
    sheet = section(od="1-3/4 in", wall=".001 in")
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == (NONE, ["wall"])
    assert section(od="1-3/4 in", wall=".120 in").questions == ()


@pytest.mark.parametrize(
    ("od", "said"), [("6 in", "Did you mean 0.05 in?"), ("4 in", "Did you mean 0.05 in?"), ("6.1 in", "Read it again.")]
)
def test_a_wall_too_thin_for_its_tube_is_asked_with_its_point_one_place_on_where_that_is_a_tube(
    od: str, said: str
) -> None:
    """A tube of 6 in has a wall of a 120th at least, 0.05 in."""
    sheet = section(od=od, wall=".005 in")
    assert "is hardly a tube" in sheet.decision.do
    assert said in sheet.decision.do.replace("\N{NO-BREAK SPACE}", " ")


def test_the_twist_of_a_piece_by_its_shear_modulus() -> None:
    sheet = section(od="44.5 mm", wall="3 mm", torque="200 N*m", length="1 m", shear_modulus="80 GPa")
    second = base(of(sheet, "second_moment"))
    assert base(of(sheet, "tube_twist")) == pytest.approx(200 / (80e9 * 2 * second))
    open_one = section(od="44.5 mm", wall="3 mm", torque="200 N*m", length="1 m")
    assert {q.key for q in open_one.questions} == {"shear_modulus"}
    odd = section(od="44.5 mm", wall="3 mm", torque="200 N*m", length="1 m", shear_modulus="80 MPa")
    assert "Did you mean 80 GPa?" in odd.decision.do.replace("\N{NO-BREAK SPACE}", " ")


# --- the same of a tube of a job --------------------------------------------------------------------------------------

PIECE = {"length": "30 in", "torque": "200 lbf*ft"}


def test_a_planned_tube_has_the_section_that_the_bench_gives_and_weighs_what_is_cut() -> None:
    made = plan({**BEND, "name": "bar", **SHAPE}, die=DIE)
    alone = section(**TUBE, length="1 m")
    for quantity in ("section_area", "second_moment", "section_modulus", "moment_at_yield"):
        assert of(made, quantity).typical == of(alone, quantity).typical
    per = base(of(alone, "mass_per_length"))
    assert base(of(made, "tube_mass")) == pytest.approx(per * base(of(made, "cut_length")), rel=1e-9)


def test_a_stated_shear_modulus_twists_a_piece_of_a_planned_tube_as_at_the_bench() -> None:
    shear = "11.5 Msi by torsion test on 2026-11-20"
    made = plan({**BEND, "name": "bar", **SHAPE, "section": PIECE, "shear_modulus": shear}, die=DIE)
    alone = section(**TUBE, **PIECE, shear_modulus=shear)
    assert of(made, "tube_twist").typical == of(alone, "tube_twist").typical
    assert (of(made, "shear_modulus").trust, of(made, "shear_modulus").source) == ("SHOP", "torsion test, 2026-11-20")
    assert made.decision.figures == plan({**BEND, "name": "bar", **SHAPE}, die=DIE).decision.figures


def test_what_the_twist_of_a_planned_tube_lacks_is_asked_by_its_own_keys() -> None:
    lacks = plan({**BEND, "name": "bar", **SHAPE, "section": {"torque": "200 lbf*ft"}}, die=DIE)
    assert {"section.length", "shear_modulus"} <= {q.key for q in lacks.questions}


@pytest.mark.parametrize(
    ("shear", "meant"), [("11.5 ksi", "Did you mean 11.5 Msi?"), ("5 Msi", "hardly that of a metal")]
)
def test_a_doubtful_shear_modulus_is_asked_and_nothing_is_twisted_by_it(shear: str, meant: str) -> None:
    made = plan({**BEND, "name": "bar", **SHAPE, "section": PIECE, "shear_modulus": shear}, die=DIE)
    assert made.decision.kind == "ask"
    assert meant in made.decision.do.replace("\N{NO-BREAK SPACE}", " ")
    assert not all_of(made, "tube_twist")
