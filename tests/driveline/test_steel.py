"""A steel and a shaft of it: which strength governs, when a shaft cannot be told, what is said and what is refused."""

from __future__ import annotations

import shutil
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.asking import SHAFT, only, shaft, texts
from gaugeblock import steel
from gaugeblock.answer.decision import ASK
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.text import render
from gaugeblock.driveline.hardness import from_strength
from gaugeblock.driveline.steels import STRENGTHS
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss, UnitError
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import to_base


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
    """16 T / (pi d^3) = 632.1 MPa at 1,500 lbf ft on 1 in; 38 HRC yields at 883 + 0.8 (1152 - 883) = 1098.2 MPa, in
    shear at 1098.2 / sqrt(3) = 634.0 MPa: 1.003, and 1,505 lbf ft at yield.
    """
    soft = shaft(shaft="1 in", torque="1500 lbf*ft", hardness="38 HRC")
    assert soft.governing.value == pytest.approx(634.0 / 632.1, rel=1e-3)
    assert soft.figure("torque_at_torsional_yield").value == pytest.approx(1500 * 634.0 / 632.1, rel=1e-3)
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


def certified(torque: str | None = None) -> Sheet:
    return steel(
        "1541",
        treatment="cold drawn",
        shaft="1 in",
        torque=torque,
        yield_strength="87 ksi",
        certificate="mill sheet 12",
    )


def test_a_certified_yield_passes_with_its_margin() -> None:
    sheet = certified("500 lbf*ft")
    check = only(sheet, SHAFT)
    assert check.result == "ok"
    assert check.margin == pytest.approx(1 - 30.558 / 50.229, abs=1e-3)
    assert sheet.figures[0].quantity == "torsional_yield_factor"
    assert sheet.figure("yield_strength").basis == "maker"
    assert (sheet.decision.kind, sheet.decision.verb) == ("use", "CARRIES")


def test_a_certificate_answers_for_a_steel_that_no_table_has() -> None:
    sheet = steel("no. 7", treatment="as delivered", shaft="1 in", torque="500 lbf*ft", yield_strength="87 ksi")
    assert only(sheet, SHAFT).result == "ok"
    with pytest.raises(LookupMiss):
        steel("no. 7", treatment="as delivered", shaft="1 in", torque="500 lbf*ft")


def test_a_stricter_source_of_the_same_keys_keeps_a_pass_from_being_told(tmp_path: Path) -> None:
    folder = tmp_path / "refdata"
    shutil.copytree(refdata().folder, folder)
    with (folder / "driveline" / "steels.csv").open("a", encoding="utf-8") as table:
        table.write(
            "1541,cold drawn,any,20 to 30 mm,not stated,yield_strength,95,,,ksi,,published,SHIG,a row of this"
            " test,primary,,0.3.0,,\n"
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
    assert steel("1541", treatment="cold drawn").checks == ()


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
        steel("4340", treatment="oil quenched and tempered", temper="770 degF")
    assert caught.value.nearest[0] == "4340 | oil quenched and tempered | 800 degF"


def test_a_temper_on_an_untempered_treatment_is_refused() -> None:
    with pytest.raises(LookupMiss, match="without a temper"):
        steel("1045", treatment="cold drawn", temper="800 degF")


def test_a_section_of_no_row_is_refused_with_those_there_are() -> None:
    with pytest.raises(LookupMiss) as caught:
        steel("1541", treatment="cold drawn", section="3 in")
    assert caught.value.nearest == ("20 to 30 mm",)


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
@given(st.integers(120, 5000))
def test_the_check_agrees_with_the_factor(torque: int) -> None:
    sheet = certified(f"{torque} lbf*ft")
    factor = sheet.figure("torsional_yield_factor").typical
    assert (only(sheet, SHAFT).result == "ok") == (factor >= 1)


def test_torque_at_yield_is_where_the_check_turns() -> None:
    at = certified().figure("torque_at_torsional_yield").typical
    results = [only(certified(f"{t:.3f} lbf*ft"), SHAFT).result for t in (at - 0.01, at + 0.01)]
    assert results == ["ok", "not ok"]


def test_recalled_strength_asks_for_the_certificate_and_never_stops() -> None:
    for torque, result in (("500 lbf*ft", "cannot tell"), ("900 lbf*ft", "not ok")):
        sheet = steel("1541", treatment="cold drawn", shaft="1 in", torque=torque)
        assert only(sheet, SHAFT).result == result
        assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["yield_strength"])


@pytest.mark.parametrize(
    ("grade", "typed", "found"),
    [
        ("1035", "Oil quenched and tempered", "quenched and tempered"),
        ("1035", "OQT", "quenched and tempered"),
        ("4140", "Quenched and tempered", "oil quenched and tempered"),
    ],
)
def test_a_quench_named_in_one_of_both_finds_its_steel_and_says_so(grade: str, typed: str, found: str) -> None:
    sheet = steel(grade, treatment=typed, temper="800 degF")
    assert found in sheet.title.split(", ")
    assert "the quench is named in one of them only" in texts(sheet)
    assert "quench is named" not in texts(steel(grade, treatment=found, temper="800 degF"))


def test_another_quench_is_not_taken_for_it_where_no_temper_is_named_that_both_have() -> None:
    with pytest.raises(LookupMiss) as refused:
        steel("4340", treatment="water quenched and tempered")
    assert any("quenched and tempered" in near for near in refused.value.nearest)
    assert "quench is named" in texts(steel("4340", treatment="water quenched and tempered", temper="1000 degF"))


def test_the_hardness_of_a_treatment_is_its_tables_and_the_conversion_beside_it() -> None:
    """4340 oil quenched, tempered at 800 degF: the nickel producers' table prints 401 and 415 HB."""
    sheet = steel("4340", treatment="oil quenched and tempered", temper="800 degF", fact="hardness")
    assert sheet.decision.verb == "HARDNESS NEAR"
    assert sheet.decision.figure.unit == "HB"
    assert sheet.decision.figure.typical in (401, 415)
    assert 42 < sheet.figure("hardness_hrc").typical < 45


def test_a_steel_without_a_hardness_has_it_of_its_strength_or_says_so() -> None:
    rows = [r for r in refdata().table("driveline/steels").rows if not r.standing]
    hard = {(r["steel"], r["treatment"]) for r in rows if r["quantity"].startswith("hardness")}
    strong = {(r["steel"], r["treatment"]) for r in rows if r["quantity"] == "yield_strength" and r["temper"] == "any"}
    tensile = {(r["steel"], r["treatment"]) for r in rows if r["quantity"].startswith("tensile")}
    without = sorted(pair for pair in strong - hard if "any" not in pair)
    kinds = {pair: steel(pair[0], treatment=pair[1], fact="hardness").decision.kind for pair in without}
    assert {kinds[pair] for pair in without if pair not in tensile} <= {"none"}
    for pair in set(without) & tensile:
        typical = steel(pair[0], treatment=pair[1], fact="tensile").decision.figure
        assert typical is not None
        assert kinds[pair] == ("use" if from_strength(typical, refdata()) else "none"), pair


@pytest.mark.parametrize("size", ["0.75 in", "1 in", "30 mm", "2 in"])
def test_no_bar_is_taken_as_stronger_than_a_bar_of_the_table(size: str) -> None:
    """Over all steels: what a source calls the least never governs over a lower typical value of a bar no larger."""
    data = refdata()
    asked = {(r["steel"], r["treatment"], r["temper"]) for r in data.table("driveline/steels").rows}
    lower = 0
    for grade, treatment, temper in sorted(asked):
        typed = None if temper == "any" else temper
        try:
            sheet = steel(grade, treatment=treatment, temper=typed, shaft=size)
        except GaugeblockError:
            continue
        taken = next((f for f in sheet.figures if f.quantity.startswith("yield_strength")), None)
        if taken is None or taken.quantity != "yield_strength":
            lower += taken is not None
            continue
        for row in data.table("driveline/steels").rows:
            span = parse_interval(row["section"])
            if (
                (row["steel"], row["treatment"], row["temper"], row["quantity"])
                != (grade, treatment, temper, "yield_strength_typical")
                or row["standing"]
                or span is None
                or span.high is None
            ):
                continue
            if float(span.high) <= to_base(float(Fraction(size.split(maxsplit=1)[0])), size.split()[1]) * (1 + 1e-9):
                typical = to_base(float(row["value"] or row["low"]), row["unit"])
                assert to_base(taken.typical, taken.unit) <= typical / 0.98 * (1 + 1e-9), (grade, treatment, size)
    assert lower > 10


@pytest.mark.parametrize("torque", ["500 lbf*ft", "1800 lbf*ft", "2500 N*m"])
@pytest.mark.parametrize("steel_is", [{"hardness": "30 HRC"}, {"treatment": "quenched and tempered to class BC"}])
def test_without_a_diameter_the_thinnest_that_does_not_yield_is_told(torque: str, steel_is: dict[str, str]) -> None:
    """The shaft of that diameter, asked about, yields at the torque."""
    grade = "4140" if "hardness" in steel_is else "A434"
    sheet = steel(grade, torque=torque, **steel_is)
    assert sheet.decision.kind == ASK
    least = sheet.decision.figures[0]
    assert least.quantity == "shaft_diameter_least"
    again = steel(grade, torque=torque, shaft=f"{least.typical:.9f} {least.unit}", **steel_is)
    factor = next(f for f in again.figures if f.quantity.startswith("torsional_yield_factor"))
    if grade == "4140":
        assert factor.typical == pytest.approx(1, rel=1e-3)
    assert 1 - 1e-3 <= factor.typical < 1.5  # a thin bar of a class is stronger than its thickest one


def test_a_hollow_shaft_has_no_thinnest_of_a_solid_one() -> None:
    """The least diameter is that of a solid shaft: with a bore that was said it would be too thin."""
    sheet = steel("4340", hardness="40 HRC", torque="2000 lbf*ft", bore="10 mm")
    assert not any(figure.quantity == "shaft_diameter_least" for figure in sheet.figures)
    assert all(one.figure.quantity != "shaft_diameter_least" for one in sheet.decision.candidates)
    whole = steel("4340", hardness="40 HRC", torque="2000 lbf*ft")
    assert [one.figure.quantity for one in whole.decision.candidates] == ["shaft_diameter_least"]
