"""The bend sheet: which minimum governs, what only informs, and that nothing missing is guessed."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.answer.check import Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.text import render
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss, UnitError
from gaugeblock.tubes.bend.sheet import bend
from gaugeblock.tubes.plan.plan import work_out
from gaugeblock.units import fraction_text

COMMON = {"od": "1 3/4 in", "wall": ".120 in", "material": "1020 DOM", "method": "rotary draw"}
GOVERNING = "radius against the governing minimum"


def check(sheet: Sheet, name: str = GOVERNING) -> Check:
    return next(c for c in sheet.checks if c.name == name)


def cautions(sheet: Sheet) -> str:
    return "\n".join(c.text for c in sheet.cautions)


# ---------------------------------------------------------------- which minimum governs


def test_the_cage_rule_stands_first_beside_a_steel_tube_and_only_informs() -> None:
    tight = bend(**COMMON, radius="4 in")  # under 3 x OD, over the habit of this wall
    first = tight.figures[0]
    assert (first.quantity, first.text, first.key["service"]) == ("bend_ratio_minimum", "3", "vehicle safety cage")
    assert check(tight).result == "cannot tell"  # another habit asks 3 x OD; the cage rule itself judges nothing here
    assert "service vehicle safety cage" not in check(tight).reason
    assert "does not meet it" in cautions(tight)
    assert "service: vehicle safety cage" in render(tight)


def test_the_cage_rule_governs_a_cage() -> None:
    assert check(bend(**COMMON, radius="4 in", service="cage")).result == "not ok"
    assert check(bend(**COMMON, radius="5 1/4 in", service="vehicle safety cage")).result == "ok"


def test_the_least_radius_of_the_rule_follows_the_od() -> None:
    sheet = bend(od="38 mm", wall="2.5 mm", material="steel", method="mandrel", service="cage")
    radius = sheet.figure("bend_radius_minimum")
    assert (radius.typical, radius.unit) == (114.0, "mm")
    assert [i.quantity for i in radius.inputs] == ["bend_ratio_minimum", "tube_od"]


def test_a_habit_passes_and_asks_and_never_fails() -> None:
    under = bend(**COMMON, radius="3.89 in")
    assert (check(under).result, under.decision.kind) == ("cannot tell", "ask")
    assert check(bend(**COMMON, radius="5.3 in")).result == "ok"


def test_an_ok_is_not_said_where_another_living_habit_asks_more() -> None:
    between = check(bend(**COMMON, radius="3.9 in"))
    assert between.result == "cannot tell"
    assert "5.3" in between.reason or "5.25" in between.reason


@pytest.mark.parametrize(
    ("radius", "result"),
    [("2.9 in", "cannot tell"), ("3 in", "cannot tell"), ("5.9 in", "cannot tell"), ("6 in", "ok")],
)
def test_inside_the_spread_of_a_habit_nobody_can_tell(radius: str, result: str) -> None:
    sheet = bend(od="3 in", wall=".065 in", material="304", method="mandrel", radius=radius)  # 1 to 2 x OD
    assert check(sheet).result == result


def test_a_wall_outside_the_list_is_not_extrapolated() -> None:
    thin = bend(**{**COMMON, "wall": ".049 in"}, radius="7 in")
    assert check(thin).result == "cannot tell"
    assert "outside the walls listed" in check(thin).reason
    # a radius that no listed wall can take is not for a thinner one either
    assert check(bend(**{**COMMON, "wall": ".049 in"}, radius="2 in")).result == "cannot tell"


def test_no_row_of_another_metal_is_borrowed() -> None:
    sheet = bend(od="1 1/2 in", wall=".065 in", material="304", method="rotary draw", radius="6 in")
    assert check(sheet).result == "cannot tell"
    assert "no published source" in check(sheet).reason
    assert not any("minimum" in f.quantity for f in sheet.figures)


def test_other_services_inform_and_never_judge() -> None:
    sheet = bend(od="1 in", wall=".065 in", material="steel", method="rotary draw", radius="2.3 in")
    assert "aircraft rigid line 3.5 in" in cautions(sheet)
    assert check(sheet).result != "not ok" or "aircraft" not in check(sheet).reason
    asked = bend(od="1 in", wall=".065 in", material="steel", method="rotary draw", radius="3.4 in", service="aircraft")
    assert asked.figures[0].key["service"] == "aircraft"
    assert check(asked).result == "not ok"


@pytest.mark.parametrize(("radius", "result"), [("3.9 in", "not ok"), ("4.5 in", "cannot tell"), ("5 in", "ok")])
def test_a_rule_that_does_not_say_what_it_measures_to_may_mean_either(radius: str, result: str) -> None:
    # 2 x diameter for piping: 4 in to the centre line, or to the inside, which is 5 in to the centre line
    sheet = bend(od="2 in", wall=".154 in", material="steel", method="power bender", radius=radius, service="piping")
    assert check(sheet).result == result


# ---------------------------------------------------------------- radius, strain, walls


def test_an_inside_radius_is_turned_into_the_centre_line_exactly() -> None:
    for typed in (
        {"radius": "4 3/8 in", "measured_to": "inside"},
        {"radius": "4 3/8 in inside"},
        {"radius": "4-3/8 in inside radius"},
    ):
        sheet = bend(**COMMON, service="cage", **typed)
        assert sheet.figure("centre_line_radius").typical == 5.25
        assert check(sheet).result == "ok"
    assert check(bend(**COMMON, service="cage", radius="4 11/32 in inside")).result == "not ok"


def test_said_twice_and_differently_is_refused() -> None:
    with pytest.raises(InputError):
        bend(**COMMON, radius="5 in inside", measured_to="centre line")


def test_strain_is_information_and_never_a_check() -> None:
    sheet = bend(**COMMON, radius="5 1/2 in")
    assert sheet.worst == "ok"
    assert "15.9 %; 5 to 10 % elongation is guaranteed" in cautions(sheet)
    assert "your own test bend does" in cautions(sheet)
    assert not any("strain" in c.name for c in sheet.checks)


def test_the_condition_narrows_the_elongation_to_its_own_row() -> None:
    elongation = bend(**COMMON, condition="as drawn").figure("elongation")
    assert (elongation.text, elongation.source) == ("5", "A513")
    apart = bend(
        od="1 3/4 in", wall=".120 in", material="1020", product="DOM", condition="as drawn", method="rotary draw"
    )
    assert apart.figure("elongation").id == elongation.id


def test_an_unnamed_grade_has_no_elongation() -> None:
    sheet = bend(**{**COMMON, "material": "mild steel"}, radius="5 1/2 in")
    assert not any(f.quantity == "elongation" for f in sheet.figures)
    assert "the grade is not named" in cautions(sheet)


def test_the_least_wall_of_as_welded_tube_is_told() -> None:
    sheet = bend(od="1 1/4 in", wall=".065 in", material="1020 ERW", method="rotary draw")
    assert sheet.figure("wall_least").typical == pytest.approx(0.055, abs=1e-12)
    assert "0.065 in may arrive at 0.055" in cautions(sheet)


def test_springback_is_a_range_and_needs_a_strength() -> None:
    got = [f for f in bend(**COMMON, radius="5 1/2 in", angle="90 deg").figures if f.quantity == "springback_angle"]
    assert [f.rule.name for f in got if f.rule] == ["springback_radius_sheet", "springback_tube_plastic"]
    assert all(f.value is None and f.low is not None and f.high is not None and 0 < f.low < f.high < 5 for f in got)
    bare = bend(**{**COMMON, "material": "steel"}, radius="5 1/2 in", angle="90 deg")
    assert [f.quantity for f in bare.figures if f.quantity in ("springback_angle", "developed_length")] == [
        "developed_length"
    ]


def test_the_diameter_ratio_judges_a_cage_only() -> None:
    name = "minor over major diameter at the bend"
    assert check(bend(**COMMON, service="cage"), name).result == "cannot tell"
    assert check(bend(**COMMON, service="cage", diameters="1.80 x 1.63 in"), name).result == "ok"
    assert check(bend(**COMMON, service="cage", diameters="1.62 x 1.81 in"), name).result == "not ok"
    vehicle = bend(**COMMON, diameters="1.62 in x 1.81 in")
    assert [c.name for c in vehicle.checks] == [GOVERNING]
    assert vehicle.figure("minor_to_major_ratio").typical == pytest.approx(1.62 / 1.81)
    assert vehicle.figure("minor_to_major_ratio_minimum").key["service"] == "vehicle safety cage"


# ---------------------------------------------------------------- cautions


@pytest.mark.parametrize("of_the_car", ["stands under the frame", "Battery off"])
def test_a_bend_says_nothing_of_work_on_the_car_and_a_plan_does(of_the_car: str) -> None:
    assert of_the_car not in cautions(bend(**COMMON))
    plan = work_out(
        {
            **COMMON,
            "radius": "5-1/2 in",
            "name": "hoop",
            "bends": [{"straight": "9 in", "angle": "45 deg"}],
            "end": "9 in",
        }
    )
    assert of_the_car in cautions(plan.sheet)


def test_cautions_belong_to_the_tube_and_the_method() -> None:
    assert "As-drawn 1020 DOM guarantees only 5 %" in cautions(bend(**COMMON))
    assert "As-drawn 1020 DOM" not in cautions(bend(**{**COMMON, "material": "4130 normalized"}))
    assert "two guarantees" in cautions(bend(**{**COMMON, "material": "4130 normalized"}))
    assert "press or ram bender flattens" in cautions(bend(**{**COMMON, "method": "press"}))
    assert "Pipe is named by nominal bore" in cautions(bend(**{**COMMON, "od": "1 1/2 in"}))
    assert "Pipe is named by nominal bore" in cautions(bend(**{**COMMON, "od": "1.9 in"}))
    assert "Pipe is named by nominal bore" not in cautions(bend(**COMMON))


# ---------------------------------------------------------------- refusals


@pytest.mark.parametrize(
    ("change", "error", "says"),
    [
        ({"od": "3.5"}, UnitError, "3.5 in"),
        ({"od": "1 1/2 pipe"}, InputError, "1.9 in"),
        ({"od": "1 1/2 sch 40"}, InputError, "1.9 in"),
        ({"od": "0 in"}, InputError, "more than zero"),
        ({"wall": "1 in"}, InputError, "no bore is left"),
        ({"wall": "11 ga"}, Ambiguous, "BWG (Stubs) (0.120 in)"),
        ({"method": "bending brake"}, LookupMiss, "nearest"),
        ({"material": "unobtainium"}, LookupMiss, "nearest"),
        ({"material": "4130 304"}, InputError, "family is both"),
        ({"service": "aircraf"}, LookupMiss, "aircraft"),
        ({"radius": "0.8 in"}, InputError, "more than half the OD"),
        ({"radius": "5 furlongs"}, UnitError, "in"),
        ({"radius": "5 in", "measured_to": "outside"}, InputError, "inside"),
        ({"radius": "5 in", "angle": "0 deg"}, InputError, "over 0"),
        ({"radius": "5 in", "angle": "90"}, UnitError, "90 deg"),
        ({"diameters": "1.8 in"}, InputError, "1.80 x 1.70 in"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_to_write(
    change: dict[str, str], error: type[GaugeblockError], says: str
) -> None:
    with pytest.raises(error) as caught:
        bend(**{**COMMON, **change})
    assert says in str(caught.value)


def test_a_missing_radius_is_no_default() -> None:
    sheet = bend(**COMMON)
    assert check(sheet).result == "cannot tell"
    assert "not given" in check(sheet).reason
    assert not any(f.quantity in ("bend_ratio", "outer_fibre_strain", "outer_wall") for f in sheet.figures)


def test_a_gauge_with_its_system_is_a_wall() -> None:
    assert bend(**{**COMMON, "wall": "11 BWG"}).figure("wall_factor").typical == pytest.approx(1.75 / 0.12)


# ---------------------------------------------------------------- the sheet as a whole


@settings(max_examples=40, deadline=None)
@given(
    st.integers(8, 40),
    st.integers(40, 250),
    st.integers(11, 120),
    st.sampled_from(["steel", "1020 DOM", "304", "6061", "4130 normalized"]),
)
def test_units_change_no_verdict_and_every_figure_has_its_place(
    sixteenths: int, wall: int, tenths: int, metal: str
) -> None:
    od = sixteenths / 16
    if 2 * wall / 1000 >= od:
        return
    typed = {"material": metal, "method": "rotary draw", "angle": "45 deg"}
    inch = bend(
        od=f"{fraction_text(Fraction(sixteenths, 16))} in",
        wall=f"{wall / 1000:.3f} in",
        radius=f"{od * tenths / 10:.6f} in",
        **typed,
    )
    metric = bend(
        od=f"{od * 25.4:.6f} mm",
        wall=f"{wall * 0.0254:.6f} mm",
        radius=f"{float(f'{od * tenths / 10:.6f}') * 25.4:.7f} mm",
        **typed,
    )
    assert [c.result for c in inch.checks] == [c.result for c in metric.checks]
    ids = [f.id for f in inch.figures]
    assert len(ids) == len(set(ids))
    for figure in inch.figures:
        assert figure.source or figure.rule or figure.basis == "common practice"
        assert figure.evidence.id
    by_quantity = {f.quantity: f for f in metric.figures}
    for quantity in ("bend_ratio", "wall_factor", "outer_fibre_strain"):
        assert by_quantity[quantity].typical == pytest.approx(inch.figure(quantity).typical, rel=1e-6)


def test_json_has_every_key_and_prints_no_nan() -> None:
    out = bend(**COMMON, radius="5 1/2 in", angle="90 deg").as_dict()
    text = json.dumps(out, allow_nan=False)
    assert set(out) == {"asked", "data_release", "decision", "figures", "checks", "questions", "cautions"}
    assert '"vehicle safety cage"' in text


@pytest.mark.parametrize(
    ("od", "wall", "read"),
    [("1.75", "0.120", "1.75 in x 0.120 in"), ("44.5", "3", "44.5 mm x 3 mm"), ("1 3/4", ".120", "1 3/4 in x .120 in")],
)
def test_a_bare_number_is_read_in_the_unit_in_which_such_a_tube_exists(od: str, wall: str, read: str) -> None:
    sheet = bend(od=od, wall=wall, material="1020 DOM", method="rotary draw", radius="5 1/2 in")
    assert sheet.title.startswith(read)
    assert f"od = {od} is read as {read.split(' x ', maxsplit=1)[0]}." in cautions(sheet)
    assert sheet.decision.kind == "use"
