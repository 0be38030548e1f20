"""The estimate of a line beside a hot part: its cases, its band, the gap it needs, shields."""

from __future__ import annotations

import pytest

from gaugeblock.errors import LookupMiss
from gaugeblock.lines.route import route
from lines.line_sheets import BESIDE, check_of, hottest, says


@pytest.mark.parametrize("key", ["od", "gap", "hot_od", "hot_temperature", "hot_finish", "finish"])
def test_a_missing_input_of_the_estimate_is_named_never_filled_in(key):
    sheet = route("brake", **{k: v for k, v in BESIDE.items() if k != key})
    check = check_of(sheet, "estimated temperature")
    assert check.result == "cannot tell"
    assert not any(f.quantity == "line_temperature" for f in sheet.figures)


def test_the_estimate_has_its_band_and_names_what_matters_most():
    sheet = route("brake", **BESIDE)
    worst = hottest(sheet)
    assert worst.quantity == "line_temperature"
    assert worst.key["case"] == "hot soak"
    assert worst.low < worst.value < worst.high
    assert says(sheet, "What matters most is the hot temperature")
    assert check_of(sheet, "temperature measured on the car").result == "cannot tell"


def test_the_evidence_of_an_estimate_is_its_weakest_link():
    assert hottest(route("brake", **BESIDE)).evidence.checked == "memory"


def test_the_three_cases_are_hotter_from_driving_to_soak():
    found = {f.key["case"]: f.value for f in route("brake", **BESIDE).figures if f.quantity == "line_temperature"}
    assert found["driving"] < found["idling"] < found["hot soak"]


def test_without_speed_or_air_those_cases_cannot_tell():
    sheet = route("brake", **{k: v for k, v in BESIDE.items() if k not in ("air", "speed")})
    assert check_of(sheet, "driving").result == "cannot tell"
    assert check_of(sheet, "idling").result == "cannot tell"
    assert hottest(sheet).key["case"] == "hot soak"


@pytest.mark.parametrize("left_out", [("soak_air",), ("hot_temperature",), ("soak_air", "hot_temperature", "air")])
def test_what_nobody_gave_is_told_with_its_outcome_and_decides_nothing(left_out):
    """The habit's air after shut-down and the textbook's header are no inputs of this car."""
    given = {k: v for k, v in BESIDE.items() if k not in left_out}
    sheet = route("brake", **given, fluid_state="wet", beside="exhaust header")
    guessed = [c for c in sheet.checks if "nobody gave this" in c.reason]
    assert guessed
    assert all((c.result, c.bears) == ("cannot tell", "inform") for c in guessed)
    assert sheet.worst != "not ok"
    first = hottest(sheet)
    assert "gap_needed" not in [f.quantity for f in sheet.figures]
    assert first.key["case"] == "idling" if left_out == ("soak_air",) else "nobody gave this" in first.conditions
    assert sheet.decision.kind == "ask"
    assert [q.key for q in sheet.questions] == ["temperature"]


def test_at_the_gap_needed_the_highest_estimate_keeps_a_readings_margin_to_the_limit():
    sheet = route("brake", **BESIDE)
    need = sheet.figure("gap_needed")
    again = route("brake", **{**BESIDE, "gap": f"{need.value:.9f} in"})
    limit = 155.0 - 10.0
    assert hottest(again).high == pytest.approx(limit, abs=0.01)
    assert hottest(again).high <= limit + 1e-6
    assert check_of(again, "gap").result == "ok"
    assert check_of(again, "hot soak: fluid's limit").result == "ok"


def test_an_estimate_within_ten_degrees_of_its_limit_cannot_tell():
    need = route("brake", **BESIDE).figure("gap_needed").value
    nearer = route("brake", **{**BESIDE, "gap": f"{need * 0.93:.9f} in"})
    assert 145.0 < hottest(nearer).high < 155.0
    check = check_of(nearer, "hot soak: fluid's limit")
    assert check.result == "cannot tell"
    assert "less than 10 degC (18 degF) is left" in check.reason


def test_single_numbers_have_no_band_and_pass_nothing():
    """However far away: an estimate that does not know how wrong its inputs are is no ground for an ok."""
    single = {
        "hot_temperature": "380 degC",
        "hot_finish": "0.8",
        "finish": "0.8",
        "soak_air": "70 degC",
        "air": None,
        "speed": None,
    }
    for gap in ("1/8 in", "3 in"):
        sheet = route("brake", **{**BESIDE, **single, "gap": gap})
        assert hottest(sheet).low == hottest(sheet).high
        assert "ok" not in {c.result for c in sheet.checks if c.name in ("gap", "hot soak: fluid's limit")}
        assert "no band" in check_of(sheet, "gap").reason
        assert "without a band" in sheet.figure("gap_needed").conditions


def test_gap_needed_stands_beside_gap_measured():
    sheet = route("brake", **BESIDE)
    assert "given 1 in" in check_of(sheet, "gap").reason
    assert "needed" in check_of(sheet, "gap").reason
    assert sheet.figure("gap").value == 1


def test_a_shield_lowers_the_estimate_and_its_place_is_said():
    sheet = route("brake", **{**BESIDE, "gap": "2 in"}, shield="flat open", shield_finish="0.3")
    bare = route("brake", **{**BESIDE, "gap": "2 in"})
    assert hottest(sheet).value < hottest(bare).value
    assert says(sheet, "midway")
    assert check_of(sheet, "plain rule").result == "ok"
    assert says(sheet, "far less than the closed-plane")


def test_what_a_shield_would_do_is_told_unasked():
    sheet = route("brake", **BESIDE)
    assert sheet.figure("shielded_line_temperature").high < hottest(sheet).value


def test_a_shield_without_its_finish_cannot_tell():
    assert "shield finish" in check_of(route("brake", **BESIDE, shield="closed"), "estimated").reason


def test_touching_the_hot_part_is_outside_the_estimate():
    assert "touches" in check_of(route("brake", **{**BESIDE, "gap": "0 in"}), "estimated").reason


def test_air_outside_the_printed_points_cannot_tell_and_says_why():
    sheet = route("brake", **{**BESIDE, "soak_air": "450 degC"})
    assert check_of(sheet, "hot soak").result == "cannot tell"
    assert "air film" in check_of(sheet, "hot soak").reason


def test_an_emissivity_between_points_is_a_range_and_outside_them_is_refused():
    sheet = route(
        "brake", **{**BESIDE, "hot_temperature": "600 degC", "hot_finish": "stainless steel: typical, highly oxidised"}
    )
    finish = next(f for f in hottest(sheet).inputs if f.rule and f.rule.name == "linear_interpolation")
    assert (finish.low, finish.high) == (0.67, 0.7)
    assert finish.value == pytest.approx(0.67 + (600 - 526.85) / (726.85 - 526.85) * (0.7 - 0.67), rel=1e-9)
    with pytest.raises(LookupMiss) as refusal:
        route(
            "brake",
            **{**BESIDE, "hot_temperature": "300 degC", "hot_finish": "stainless steel: typical, highly oxidised"},
        )
    assert any("526.85" in n for n in refusal.value.nearest)
