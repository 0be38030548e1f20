"""What the driveline sheets do: which figure governs, when a check cannot tell, what is said and what is refused."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import hardness, joint, setup, spline, steel
from gaugeblock.answer.check import Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.text import render
from gaugeblock.driveline.steels import STRENGTHS
from gaugeblock.errors import Ambiguous, InputError, LookupMiss, UnitError
from gaugeblock.tables.load import Refdata, refdata


def only(sheet: Sheet, name: str) -> Check:
    (check,) = [c for c in sheet.checks if c.name == name]
    return check


def shaft(grade: str = "4340", **more: str) -> Sheet:
    asked = {"treatment": "quenched and tempered", "temper": "800 degF", "shaft": "1 in", "torque": "1500 lbf*ft"}
    return steel(grade, **{**asked, **more})  # type: ignore[arg-type]


SHAFT = "shaft stress within torsional yield"
LEFT = "as left within the maker's figure"


def texts(sheet: Sheet) -> str:
    return " ".join(c.text for c in sheet.cautions)


# Steel


def test_both_torsional_yields_are_shown_and_distortion_energy_comes_first() -> None:
    sheet = steel("1541", treatment="cold drawn")
    both = [f for f in sheet.figures if f.quantity == "torsional_yield_strength"]
    assert [f.rule.name for f in both if f.rule] == ["shear_yield_distortion_energy", "shear_yield_axle_practice"]
    assert both[1].typical / both[0].typical == pytest.approx(0.6 * 3**0.5)


def test_typical_yield_makes_a_typical_torsional_yield_and_says_so() -> None:
    sheet = steel("4340", treatment="q&t", temper="800 F")
    assert sheet.figures[0].quantity == "yield_strength_typical"
    assert "torsional_yield_strength" not in {f.quantity for f in sheet.figures}
    assert "Typical, not guaranteed" in texts(sheet)


def test_a_stated_least_governs_over_a_typical_one() -> None:
    assert steel("1040", treatment="hot rolled", section="1 in").figures[0].quantity == "yield_strength"


def test_a_row_that_covers_the_diameter_governs_over_a_least_one_that_does_not() -> None:
    sheet = steel("1040", treatment="hot rolled", shaft="3 in", torque="100 lbf*ft")
    assert sheet.figure("yield_strength_typical").key["section"] == "any"
    with pytest.raises(KeyError):
        sheet.figure("yield_strength")


def test_typical_strength_alone_never_passes_a_shaft() -> None:
    check = only(shaft(torque="10 lbf*ft"), SHAFT)
    assert check.result == "cannot tell"
    assert "typical is not guaranteed" in check.reason


def test_typical_strength_borne_out_by_this_shafts_hardness_passes() -> None:
    assert only(shaft(hardness="43 HRC"), SHAFT).result == "ok"


def test_a_soft_shaft_is_not_passed_on_a_typical_figure() -> None:
    check = only(shaft(hardness="20 HRC", torque="1200 lbf*ft"), SHAFT)
    assert check.result == "not ok"
    assert "hardness measured on this shaft" in check.reason
    assert only(shaft(hardness="30 HRC", torque="500 lbf*ft"), SHAFT).result == "cannot tell"


def test_the_lower_of_table_and_measured_hardness_gives_factor_and_torque() -> None:
    """16 T / (pi d^3) = 632.1 MPa at 1,500 lbf ft on 1 in; 38 HRC is worth 652.6 MPa: 1.032, and 1,548 lbf ft at yield."""
    soft = shaft(shaft="1 in", torque="1500 lbf*ft", hardness="38 HRC")
    assert soft.governing.value == pytest.approx(652.6 / 632.1, rel=1e-3)
    assert soft.figure("torque_at_torsional_yield").value == pytest.approx(1500 * 652.6 / 632.1, rel=1e-3)
    assert "is not treated as named" in texts(soft)
    hard = shaft(shaft="1 in", torque="1500 lbf*ft", hardness="50 HRC")
    table = shaft(shaft="1 in", torque="1500 lbf*ft")
    assert hard.governing.value == table.governing.value


def test_past_the_torsional_yield_is_not_ok_and_the_margin_is_negative() -> None:
    check = only(shaft(torque="3000 lbf*ft"), SHAFT)
    assert check.result == "not ok"
    assert check.margin is not None
    assert check.margin < 0


def test_a_larger_shaft_than_the_bar_tested_cannot_be_told() -> None:
    sheet = shaft(shaft="1-1/4 in", hardness="43 HRC")
    check = only(sheet, SHAFT)
    assert check.result == "cannot tell"
    assert "section 1 in" in check.reason
    assert "not for this shaft's diameter" in texts(sheet)


def test_a_smaller_shaft_past_yield_cannot_be_told_and_a_larger_one_is_not_ok() -> None:
    assert only(shaft(shaft="3/4 in", torque="1500 lbf*ft"), SHAFT).result == "cannot tell"
    assert only(shaft(shaft="1-1/8 in", torque="9000 lbf*ft"), SHAFT).result == "not ok"


def test_a_stated_least_passes_with_its_margin() -> None:
    sheet = steel("1541", treatment="cold drawn", shaft="1 in", torque="500 lbf*ft")
    check = only(sheet, SHAFT)
    assert check.result == "ok"
    assert check.margin == pytest.approx(1 - 30.558 / 50.229, abs=1e-3)
    assert sheet.figures[0].quantity == "torsional_yield_factor"


def test_a_stricter_source_of_the_same_keys_keeps_a_pass_from_being_told(tmp_path: Path) -> None:
    folder = tmp_path / "refdata"
    shutil.copytree(refdata().folder, folder)
    with (folder / "driveline" / "steels.csv").open("a", encoding="utf-8") as table:
        table.write(
            "1541,cold drawn,any,19 to 32 mm,not stated,yield_strength,95,,,ksi,,published,SHIG,a row of this test,primary,,0.3.0,,\n"
        )
    data = Refdata(str(folder))

    def result(torque: str) -> str:
        return only(steel("1541", treatment="cold drawn", shaft="1 in", torque=torque, data=data), SHAFT).result

    # 87 ksi yields at 821 lbf*ft, 95 ksi at 897
    assert (result("810 lbf*ft"), result("850 lbf*ft"), result("910 lbf*ft")) == ("ok", "cannot tell", "not ok")


def test_the_narrower_section_governs_for_a_size() -> None:
    figure = steel("1050", treatment="cold drawn", section="1 in").figures[0]
    assert (figure.key["section"], figure.chosen_by) == ("20 to 30 mm", "specificity")


def test_a_case_is_never_passed_by_its_surface() -> None:
    check = only(steel("1050M", treatment="induction hardened", shaft="31 mm", torque="900 lbf*ft"), SHAFT)
    assert check.result == "cannot tell"
    assert "case-core junction" in check.reason


@pytest.mark.parametrize(
    ("more", "missing"),
    [({"shaft": "1 in"}, "torque"), ({"torque": "900 lbf*ft"}, "diameter"), ({"length": "30 in"}, "diameter")],
)
def test_what_is_missing_answers_cannot_tell(more: dict[str, str], missing: str) -> None:
    check = only(steel("1541", treatment="cold drawn", **more), SHAFT)  # type: ignore[arg-type]
    assert check.result == "cannot tell"
    assert missing in check.reason


def test_no_shaft_no_check() -> None:
    assert steel("1541", treatment="cold drawn").checks == []


def test_no_published_yield_cannot_be_told() -> None:
    sheet = steel("1050", treatment="oil quenched and tempered", temper="400 degF", shaft="1 in", torque="10 lbf*ft")
    assert sheet.figures[0].quantity == "tensile_strength_typical"
    assert "no yield strength" in only(sheet, SHAFT).reason


def test_twist_uses_the_steels_own_modulus_or_says_what_it_assumes() -> None:
    own = shaft(length="30 in")
    assert "assumed" not in own.figure("shaft_twist").conditions
    other = steel("1541", treatment="cold drawn", shaft="1 in", torque="500 lbf*ft", length="30 in")
    assert "low alloy steel" in other.figure("shaft_twist").conditions
    assert "No shear modulus was found for 1541" in texts(other)


def test_a_bore_raises_the_stress_and_may_not_reach_the_outside() -> None:
    solid, hollow = shaft(), shaft(bore="1/2 in")
    assert hollow.figure("shaft_shear_stress").typical == pytest.approx(
        solid.figure("shaft_shear_stress").typical / (1 - 0.5**4)
    )
    with pytest.raises(InputError):
        shaft(bore="1 in")


def test_a_missing_temper_is_asked_for_by_name() -> None:
    with pytest.raises(Ambiguous) as caught:
        steel("4340", treatment="quenched and tempered")
    assert caught.value.nearest[0] == "600 degF"


def test_tempers_are_not_interpolated_and_the_nearest_are_offered() -> None:
    with pytest.raises(LookupMiss) as caught:
        steel("4340", treatment="oil quenched and tempered", temper="800 degF")
    assert caught.value.nearest[0] == "4340 | quenched and tempered | 800 degF"


def test_a_temper_on_an_untempered_treatment_is_refused() -> None:
    with pytest.raises(LookupMiss, match="without a temper"):
        steel("1045", treatment="cold drawn", temper="800 degF")


def test_a_section_of_no_row_is_refused_with_those_there_are() -> None:
    with pytest.raises(LookupMiss) as caught:
        steel("1541", treatment="cold drawn", section="3 in")
    assert caught.value.nearest == ("19 to 32 mm",)


def test_no_neighbour_is_borrowed_for_a_steel_without_strength() -> None:
    for grade in ("1038", "1039", "1053", "1055", "1541H", "4140H", "4340H", "5160", "8650", "1550"):
        with pytest.raises(LookupMiss) as caught:
            steel(grade, treatment="quenched and tempered", temper="800 degF")
        assert caught.value.nearest == ()
        assert "Do not take the figures of a neighbouring grade" in str(caught.value)


def test_a_unit_of_another_dimension_is_refused() -> None:
    with pytest.raises(UnitError):
        shaft(torque="1500 ksi")
    with pytest.raises(InputError):
        shaft(torque="-5 lbf*ft")


def test_every_figure_of_a_steel_of_the_table_renders_with_its_section() -> None:
    data = refdata()
    keys = {
        (r.cells["steel"], r.cells["treatment"], r.cells["temper"])
        for r in data.table("driveline/steels").rows
        if r.cells["quantity"] in STRENGTHS
    }
    assert len(keys) > 100
    for grade, treatment, temper in sorted(keys):
        sheet = steel(grade, treatment=treatment, temper=None if temper == "any" else temper)
        assert sheet.figures[0].quantity in STRENGTHS
        section = sheet.figures[0].key["section"]
        assert section == "any" or section in render(sheet)


def test_welding_is_warned_of_by_carbon_equivalent() -> None:
    assert "written procedure" in texts(steel("1541", treatment="hot rolled"))
    assert "preheat is usual" in texts(steel("1040", treatment="hot rolled"))
    assert "Do not weld on a hardened shaft" in texts(shaft())


@settings(deadline=None)
@given(st.integers(1, 5000))
def test_the_check_agrees_with_the_factor(torque: int) -> None:
    sheet = steel("1541", treatment="cold drawn", shaft="1 in", torque=f"{torque} lbf*ft")
    factor = sheet.figure("torsional_yield_factor").typical
    assert (only(sheet, SHAFT).result == "ok") == (factor >= 1)


def test_torque_at_yield_is_where_the_check_turns() -> None:
    at = steel("1541", treatment="cold drawn", shaft="1 in").figure("torque_at_torsional_yield").typical
    results = [
        only(steel("1541", treatment="cold drawn", shaft="1 in", torque=f"{t:.3f} lbf*ft"), SHAFT).result
        for t in (at - 0.01, at + 0.01)
    ]
    assert results == ["ok", "not ok"]


# Hardness


def test_a_hardness_between_two_points_lies_between_and_names_both() -> None:
    figure = hardness("HRC", "42.5").figures[0]
    low, high = figure.inputs
    assert min(low.typical, high.typical) < figure.typical < max(low.typical, high.typical)
    assert {low.key["hardness"], high.key["hardness"]} == {"42", "43"}


def test_a_misprint_never_answers() -> None:
    figure = hardness("HRC", "30").figure("yield_strength_typical")
    assert figure.typical != 941
    assert all(not f.standing for f in figure.inputs)


@pytest.mark.parametrize("typed", ["42", "HRC", "42 HRC 50", "forty HRC", ""])
def test_a_hardness_without_number_or_scale_is_refused(typed: str) -> None:
    with pytest.raises((InputError, LookupMiss)):
        shaft(hardness=typed)


@pytest.mark.parametrize("typed", ["43 HRC", "HRC 43", "43 rockwell c"])
def test_a_hardness_is_read_as_people_write_it(typed: str) -> None:
    assert shaft(hardness=typed).figure("hardness_hrc").typical == 43


# Splines


def test_the_root_form_changes_only_coarse_splines_and_the_hub() -> None:
    coarse = [
        spline("12/24", "20", root=r).figure("spline_minor_diameter_external").typical
        for r in ("flat root", "fillet root")
    ]
    fine = [
        spline("24/48", "20", root=r).figure("spline_minor_diameter_external").typical
        for r in ("flat root", "fillet root")
    ]
    assert coarse[0] > coarse[1]
    assert fine[0] == fine[1]


def test_spline_shear_without_its_factors_cannot_be_told() -> None:
    check = only(
        spline("24/48", "35", torque="2000 lbf*ft", source="engine"), "shear under the roots within the allowable"
    )
    assert check.result == "cannot tell"
    assert check.reason == "not given: material, load, cycles"


def test_spline_shear_is_judged_with_all_its_factors() -> None:
    def result(torque: str) -> str:
        sheet = spline(
            "24/48",
            "35",
            torque=torque,
            material="surface hardened, 48 to 53 HRC",
            source="engine",
            load="uniform load",
            cycles="10000 cycles",
        )
        return only(sheet, "shear under the roots within the allowable").result

    assert (result("800 lbf*ft"), result("900 lbf*ft")) == ("ok", "not ok")


def test_a_straight_sided_spline_has_its_tooth_width() -> None:
    assert spline("parallel side", "10").figures[0].text == "0.156"


@pytest.mark.parametrize(
    "more",
    [
        {"root": "round root"},
        {"fit": "press fit"},
        {"root": "fillet root", "fit": "major diameter fit"},
        {"bore": "1.4 in", "torque": "1 lbf*ft"},
    ],
)
def test_unknown_forms_of_a_spline_are_refused(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        spline("24/48", "35", **more)  # type: ignore[arg-type]


# Set-up

MAKER = ("0.006 in", "0.005 in", "0.008 in", "axle maker's sheet", "page 4")


def test_the_makers_figure_governs_and_other_axles_only_inform() -> None:
    sheet = setup("rear", "ring gear", "backlash", "new", as_left="0.007 in", maker=MAKER)
    assert sheet.figures[0].basis == "maker"
    assert only(sheet, LEFT).result == "ok"
    assert "Examples of other axles" in texts(sheet)
    assert all(f.source in ("axle maker's sheet", "as asked") for f in sheet.figures)


@pytest.mark.parametrize(
    ("left", "result"),
    [("0.004 in", "not ok"), ("0.005 in", "ok"), ("0.008 in", "ok"), ("0.22 mm", "not ok"), ("0.2 mm", "ok")],
)
def test_as_left_is_held_to_both_ends(left: str, result: str) -> None:
    assert only(setup("rear", "ring gear", "backlash", as_left=left, maker=MAKER), LEFT).result == result


@pytest.mark.parametrize(
    ("left", "maker", "why"),
    [
        ("0.007 in", None, "other axles do not answer"),
        (None, MAKER, "as left is not given"),
        ("good", MAKER, "as left is words"),
        ("0.007 in", ("0.006 in", "0.005 in", "0.008 in", None, None), "no source and place"),
        ("0.007 in", ("0.006 in", None, None, "axle maker's sheet", "page 4"), "without a tolerance"),
    ],
)
def test_what_is_not_known_cannot_be_told(left: str | None, maker: object, why: str) -> None:
    check = only(setup("rear", "ring gear", "backlash", as_left=left, maker=maker), LEFT)  # type: ignore[arg-type]
    assert check.result == "cannot tell"
    assert why in check.reason


def test_a_makers_figure_without_its_place_is_not_called_the_makers() -> None:
    sheet = setup(
        "rear", "ring gear", "backlash", as_left="0.007 in", maker=("0.006 in", None, None, "axle maker's sheet", None)
    )
    assert sheet.figures[0].basis == "measured"


def test_used_gears_go_back_to_their_recorded_backlash() -> None:
    sheet = setup("forklift axle (TM 10-3930-669-34)", "ring gear", "final setting", "used", as_left="0.0065 in")
    assert "recorded backlash" in only(sheet, LEFT).reason
    assert "Used gears go back to their recorded value" in texts(sheet)


def test_as_found_outside_the_figure_is_said_and_does_not_fail_the_step() -> None:
    sheet = setup("rear", "ring gear", "backlash", as_found="0.011 in", as_left="0.007 in", maker=MAKER)
    assert sheet.worst == "ok"
    assert "As found, 0.011 in was outside" in texts(sheet)


def test_a_makers_figure_answers_for_a_component_of_no_table() -> None:
    sheet = setup(
        "front",
        "inner joint",
        "boot clamp",
        as_left="22 lbf*in",
        maker=(None, "20 lbf*in", "25 lbf*in", "maker's sheet", "p. 2"),
    )
    assert only(sheet, LEFT).result == "ok"


def test_a_makers_figure_the_wrong_way_round_is_refused() -> None:
    with pytest.raises(InputError):
        setup("rear", "ring gear", "backlash", maker=(None, "0.008 in", "0.005 in", "s", "p"))


def test_the_makers_and_the_manuals_figures_apart_are_said() -> None:
    maker = (None, "0.012 in", "0.014 in", "axle maker's sheet", "page 4")
    sheet = setup("forklift axle (TM 10-3930-669-34)", "ring gear", "final setting", as_left="0.013 in", maker=maker)
    assert only(sheet, LEFT).result == "ok"
    assert "find out why they differ" in texts(sheet)


def test_the_cautions_of_the_step_are_those_of_what_is_set() -> None:
    preload = texts(setup("rear", "pinion bearings", "preload", "used"))
    for said in ("Never back off the nut", "not at break-away", "stands under the frame"):
        assert said in preload
    marks = texts(setup("rear", "pinion shim", "starting"))
    assert "thicker shim on some axles and thinner on others" in marks


def test_a_step_of_no_row_is_refused_with_those_there_are() -> None:
    with pytest.raises(LookupMiss) as caught:
        setup("rear", "ring gear", "paint")
    assert caught.value.nearest


# Joints


def test_equal_joints_in_phase_cancel_and_out_of_phase_do_not() -> None:
    name = "second joint cancels the first"
    good, bad = joint("5 deg", "5 deg", phasing="in phase"), joint("5 deg", "5 deg", phasing="wrong phase")
    assert (only(good, name).result, only(bad, name).result) == ("ok", "not ok")
    assert good.figures[0].typical == 0
    assert bad.figures[0].typical == pytest.approx(2 * joint("5 deg").figures[0].typical, rel=0.01)
    assert "roughly doubles" in texts(bad)


def test_a_heavy_truck_figure_informs_and_never_judges() -> None:
    sheet = joint("7 deg", "3 deg", phasing="in phase")
    assert only(sheet, "second joint cancels the first").result == "cannot tell"
    assert "over the 3 deg of a heavy truck manual" in texts(sheet)


@pytest.mark.parametrize(("second", "phasing"), [(None, None), ("5 deg", None)])
def test_an_unknown_second_joint_or_phasing_cannot_be_told(second: str | None, phasing: str | None) -> None:
    assert only(joint("5 deg", second, phasing=phasing), "second joint cancels the first").result == "cannot tell"


def test_the_working_angle_is_interpolated_between_speeds_and_not_beyond() -> None:
    name = "working angle at this speed"
    check = only(joint("5 deg", speed="3250 rpm"), name)
    assert check.required is not None
    assert check.required.value == pytest.approx((5.0 + 5.83) / 2)
    assert "not extrapolated" in only(joint("5 deg", speed="6000 rpm"), name).reason
    assert "not given" in only(joint("5 deg"), name).reason


def test_the_larger_of_two_working_angles_is_judged() -> None:
    for angles in (("3 deg", "6 deg"), ("6 deg", "3 deg")):
        assert only(joint(*angles, speed="3500 rpm"), "working angle at this speed").result == "not ok"


def test_a_compound_angle_is_worked_from_both_views() -> None:
    sheet = joint("3 deg", top="4 deg")
    assert sheet.figure("working_angle_true").typical == pytest.approx(5.0, abs=0.01)


def test_a_finding_that_only_mentions_a_number_is_words() -> None:
    check = only(setup("rear", "ring gear", "backlash", as_left="about 0.006 in", maker=MAKER), LEFT)
    assert (check.result, "words" in check.reason) == ("cannot tell", True)


def test_a_torque_is_no_backlash() -> None:
    with pytest.raises(UnitError):
        setup("rear", "ring gear", "backlash", as_left="10 lbf*ft")


def test_a_manual_with_a_figure_for_new_and_for_used_parts_asks_which() -> None:
    sheet = setup("wide utility truck axle (TM 9-2320-280-34)", "pinion", "preload", as_left="12 lbf*in")
    assert "say whether new or used" in only(sheet, LEFT).reason


def test_a_pass_on_recalled_strength_says_so() -> None:
    assert "from memory" in only(steel("1541", treatment="cold drawn", shaft="1 in", torque="500 lbf*ft"), SHAFT).reason


def test_an_unknown_phasing_is_refused() -> None:
    with pytest.raises(InputError):
        joint("3 deg", "3 deg", phasing="sideways")


@pytest.mark.parametrize(
    "sheet",
    [
        shaft(length="30 in", hardness="43 HRC"),
        hardness("HRC", "42.5"),
        spline("24/48", "35", torque="900 lbf*ft"),
        setup("rear", "ring gear", "backlash", as_found="0.011 in", as_left="0.007 in", maker=MAKER),
        joint("5 deg", "4 deg", phasing="in phase", top="2 deg", speed="3000 rpm"),
    ],
    ids=["steel", "hardness", "spline", "setup", "joint"],
)
def test_every_figure_has_its_own_id_its_evidence_and_a_known_quantity(sheet: Sheet) -> None:
    ids = [f.id for f in sheet.figures]
    assert len(set(ids)) == len(ids)
    for figure in sheet.figures:
        assert figure.evidence.basis
        assert sheet.data.quantity(figure.quantity)
    assert sheet.as_dict()["figures"]


@pytest.mark.parametrize(("angle", "result"), [("11.5 deg", "cannot tell"), ("12 deg", "not ok"), ("50 deg", "not ok")])
def test_an_angle_over_what_any_speed_of_the_table_has_is_not_ok_without_a_speed(angle, result):
    assert only(joint(angle), "working angle at this speed").result == result


@pytest.mark.parametrize(("left", "told"), [("0.007 in", False), ("0.004 in", False), ("0.010 in", True), (None, True)])
def test_what_to_do_about_too_much_backlash_is_told_when_there_may_be(left: str | None, told: bool) -> None:
    maker = (None, "0.005 in", "0.008 in", "axle maker", "p. 4")
    said = texts(setup("rear", "ring gear", "backlash", as_left=left, maker=maker))
    assert ("Backlash too large: Add shim on the ring gear side" in said) is told


def test_a_pattern_check_says_what_each_pattern_asks_for_and_names_other_axles_quantities() -> None:
    said = texts(setup("rear", "ring gear", "pattern check"))
    assert "Pattern too far to the heel: Reduce backlash to move it toward the toe." in said
    assert "Where backlash is read: At the heel of the tooth" in said
    assert "pattern brake torque 40 to 50 lbf*ft" in said
