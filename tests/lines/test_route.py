"""Behaviours of the route sheet: what governs, what stays open, and what a careful shop is told."""

from __future__ import annotations

import json

import pytest

from gaugeblock.calc.clearance import straight_pipe
from gaugeblock.domains import read_job
from gaugeblock.errors import InputError, LookupMiss, UnitError
from gaugeblock.lines import commands as command
from gaugeblock.lines.job import Line
from gaugeblock.lines.paths import route_along, route_of_part
from gaugeblock.lines.route import route

BESIDE = {
    "material": "brazed double-wall steel tube",
    "od": "3/16 in",
    "fluid": "DOT 4",
    "gap": "1 in",
    "hot_od": "2 1/4 in",
    "hot_temperature": "300 to 450 degC",
    "hot_finish": "0.6 to 0.9",
    "finish": "0.5 to 0.9",
    "air": "30 to 50 degC",
    "soak_air": "60 to 90 degC",
    "speed": "3 to 10 m/s",
}


def _check(sheet, start):
    return next(c for c in sheet.checks if c.name.startswith(start))


def _worst(sheet):
    """The estimate of the hottest case."""
    return next(f for f in sheet.figures if f.quantity == "line_temperature")


def _says(sheet, words):
    return any(words in c.text for c in sheet.cautions)


def test_nothing_given_answers_cannot_tell_for_all_and_not_ok_for_none():
    sheet = route()
    assert sheet.checks
    assert {c.result for c in sheet.checks} == {"cannot tell"}
    assert all(c.reason for c in sheet.checks)
    assert _says(sheet, "measure on the car, hot and after shut-down")


@pytest.mark.parametrize("key", ["od", "gap", "hot_od", "hot_temperature", "hot_finish", "finish"])
def test_a_missing_input_of_the_estimate_is_named_never_filled_in(key):
    sheet = route("brake", **{k: v for k, v in BESIDE.items() if k != key})
    check = _check(sheet, "estimated temperature")
    assert check.result == "cannot tell"
    assert not any(f.quantity == "line_temperature" for f in sheet.figures)


def test_a_measured_temperature_governs_and_the_estimate_only_informs():
    sheet = route("brake", **BESIDE, temperature="170 degC", temperature_by="thermocouple")
    assert sheet.governing.text == "155"
    read = next(f for f in sheet.figures if f.basis == "measured")
    assert read.value == 170
    assert _check(sheet, "measured: fluid").result == "not ok"
    assert not any(c.name.startswith(("hot soak", "idling", "driving")) for c in sheet.checks)
    assert any(f.rule and f.rule.name == "line_energy_balance" for f in sheet.figures)


def test_the_line_too_near_is_not_ok_and_the_same_line_re_routed_is_ok():
    near = route(
        "brake",
        material="brazed steel tube",
        fluid="DOT 4",
        temperature="171 degC",
        temperature_by="thermocouple",
        side="same side",
        length="1 m",
    )
    far = route(
        "brake",
        material="brazed steel tube",
        fluid="DOT 4",
        fluid_state="wet",
        temperature="82 degC",
        temperature_by="thermocouple",
        side="other side",
        length="1 m",
    )
    assert near.worst == "not ok"
    assert far.worst == "ok"
    assert (near.decision.kind, far.decision.kind) == ("ask", "use")
    assert far.decision.figure.text == "155"


def test_an_infra_red_reading_is_never_enough_for_ok():
    cool = route("brake", fluid="DOT 4", temperature="80 degC", temperature_by="infra-red")
    hot = route("brake", fluid="DOT 4", temperature="180 degC", temperature_by="infra-red")
    assert _check(cool, "measured: fluid").result == "cannot tell"
    assert "reads low on bright metal" in _check(cool, "measured: fluid").reason
    assert _check(hot, "measured: fluid").result == "not ok"


@pytest.mark.parametrize(
    ("at", "kind", "outcomes"),
    [
        ("200 degC", "ask", ["stop: it is too hot", "30 degC left"]),
        ("250 degC", "stop", ["required", "refused"]),
        ("80 degC", "ask", ["75 degC left", "150 degC left"]),
    ],
)
def test_the_age_of_a_brake_fluid_is_asked_with_what_comes_of_each(at, kind, outcomes):
    sheet = route("brake", material="brake tube", fluid="DOT 4", temperature=at, temperature_by="thermocouple")
    assert sheet.decision.kind == kind
    assert [c.then for c in sheet.decision.candidates] == outcomes
    if kind == "ask":
        assert [q.key for q in sheet.questions] == ["fluid_state"]
        assert sheet.decision.figures[0].key["state"] == "wet"


def test_the_estimate_has_its_band_and_names_what_matters_most():
    sheet = route("brake", **BESIDE)
    worst = _worst(sheet)
    assert worst.quantity == "line_temperature"
    assert worst.key["case"] == "hot soak"
    assert worst.low < worst.value < worst.high
    assert _says(sheet, "What matters most is the hot temperature")
    assert _check(sheet, "temperature measured on the car").result == "cannot tell"


def test_the_evidence_of_an_estimate_is_its_weakest_link():
    assert _worst(route("brake", **BESIDE)).evidence.checked == "memory"


def test_the_three_cases_are_hotter_from_driving_to_soak():
    found = {f.key["case"]: f.value for f in route("brake", **BESIDE).figures if f.quantity == "line_temperature"}
    assert found["driving"] < found["idling"] < found["hot soak"]


def test_without_speed_or_air_those_cases_cannot_tell():
    sheet = route("brake", **{k: v for k, v in BESIDE.items() if k not in ("air", "speed")})
    assert _check(sheet, "driving").result == "cannot tell"
    assert _check(sheet, "idling").result == "cannot tell"
    assert _worst(sheet).key["case"] == "hot soak"


@pytest.mark.parametrize("left_out", [("soak_air",), ("hot_temperature",), ("soak_air", "hot_temperature", "air")])
def test_what_nobody_gave_is_told_with_its_outcome_and_decides_nothing(left_out):
    """The habit's air after shut-down and the textbook's header are no inputs of this car."""
    given = {k: v for k, v in BESIDE.items() if k not in left_out}
    sheet = route("brake", **given, fluid_state="wet", beside="exhaust header")
    guessed = [c for c in sheet.checks if "nobody gave this" in c.reason]
    assert guessed
    assert all((c.result, c.bears) == ("cannot tell", "inform") for c in guessed)
    assert sheet.worst != "not ok"
    first = _worst(sheet)
    assert "gap_needed" not in [f.quantity for f in sheet.figures]
    assert first.key["case"] == "idling" if left_out == ("soak_air",) else "nobody gave this" in first.conditions
    assert sheet.decision.kind == "ask"
    assert [q.key for q in sheet.questions] == ["temperature"]


def test_at_the_gap_needed_the_highest_estimate_keeps_a_readings_margin_to_the_limit():
    sheet = route("brake", **BESIDE)
    need = sheet.figure("gap_needed")
    again = route("brake", **{**BESIDE, "gap": f"{need.value:.9f} in"})
    limit = 155.0 - 10.0
    assert _worst(again).high == pytest.approx(limit, abs=0.01)
    assert _worst(again).high <= limit + 1e-6
    assert _check(again, "gap").result == "ok"
    assert _check(again, "hot soak: fluid's limit").result == "ok"


def test_an_estimate_within_ten_degrees_of_its_limit_cannot_tell():
    need = route("brake", **BESIDE).figure("gap_needed").value
    nearer = route("brake", **{**BESIDE, "gap": f"{need * 0.93:.9f} in"})
    assert 145.0 < _worst(nearer).high < 155.0
    check = _check(nearer, "hot soak: fluid's limit")
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
        assert _worst(sheet).low == _worst(sheet).high
        assert "ok" not in {c.result for c in sheet.checks if c.name in ("gap", "hot soak: fluid's limit")}
        assert "no band" in _check(sheet, "gap").reason
        assert "without a band" in sheet.figure("gap_needed").conditions


def test_without_any_temperature_the_limits_stand_on_the_sheet_all_the_same():
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", beside="exhaust header", gap="2 in")
    assert sheet.figure("boiling_point_minimum").text == "155"
    check = _check(sheet, "fluid's limit")
    assert check.result == "cannot tell"
    assert check.required.value == 155


def test_gap_needed_stands_beside_gap_measured():
    sheet = route("brake", **BESIDE)
    assert "given 1 in" in _check(sheet, "gap").reason
    assert "needed" in _check(sheet, "gap").reason
    assert sheet.figure("gap").value == 1


def test_a_shield_lowers_the_estimate_and_its_place_is_said():
    sheet = route("brake", **{**BESIDE, "gap": "2 in"}, shield="flat open", shield_finish="0.3")
    bare = route("brake", **{**BESIDE, "gap": "2 in"})
    assert _worst(sheet).value < _worst(bare).value
    assert _says(sheet, "midway")
    assert _check(sheet, "plain rule").result == "ok"
    assert _says(sheet, "far less than the closed-plane")


def test_what_a_shield_would_do_is_told_unasked():
    sheet = route("brake", **BESIDE)
    assert sheet.figure("shielded_line_temperature").high < _worst(sheet).value


def test_a_shield_without_its_finish_cannot_tell():
    assert "shield finish" in _check(route("brake", **BESIDE, shield="closed"), "estimated").reason


def test_touching_the_hot_part_is_outside_the_estimate():
    assert "touches" in _check(route("brake", **{**BESIDE, "gap": "0 in"}), "estimated").reason


def test_air_outside_the_printed_points_cannot_tell_and_says_why():
    sheet = route("brake", **{**BESIDE, "soak_air": "450 degC"})
    assert _check(sheet, "hot soak").result == "cannot tell"
    assert "air film" in _check(sheet, "hot soak").reason


def test_an_emissivity_between_points_is_a_range_and_outside_them_is_refused():
    sheet = route(
        "brake", **{**BESIDE, "hot_temperature": "600 degC", "hot_finish": "stainless steel: typical, highly oxidised"}
    )
    finish = next(f for f in _worst(sheet).inputs if f.rule and f.rule.name == "linear_interpolation")
    assert (finish.low, finish.high) == (0.67, 0.7)
    assert finish.value == pytest.approx(0.67 + (600 - 526.85) / (726.85 - 526.85) * (0.7 - 0.67), rel=1e-9)
    with pytest.raises(LookupMiss) as refusal:
        route(
            "brake",
            **{**BESIDE, "hot_temperature": "300 degC", "hot_finish": "stainless steel: typical, highly oxidised"},
        )
    assert any("526.85" in n for n in refusal.value.nearest)


def test_most_written_rules_give_no_number_and_the_sheet_says_so():
    sheet = route("brake", gap="1 in")
    assert _says(sheet, "Few rules give a distance")
    assert _says(sheet, "Australia NSW")
    assert not any(c.name == "written clearance" for c in sheet.checks)


def test_the_rules_of_the_place_that_was_named_are_told_alone():
    told = [c for c in route("brake", jurisdiction="NSW").cautions if "No distance is given" in c.text]
    assert told
    assert all(c.text.startswith("Australia NSW:") for c in told)
    others = [c for c in route("brake").cautions if "No distance is given" in c.text]
    assert len(others) > len(told)
    assert {c.severity for c in others} == {"note"}


@pytest.mark.parametrize(("gap", "result"), [("1 in", "not ok"), ("1.5 in", "ok"), ("38.1 mm", "ok")])
def test_a_written_clearance_is_a_reject_limit_and_no_target(gap, result):
    check = _check(route("brake", gap=gap, jurisdiction="Maryland"), "written clearance")
    assert check.result == result
    assert "not a target" in check.reason


def test_a_jurisdiction_without_a_number_cannot_tell():
    assert _check(route("brake", gap="1 in", jurisdiction="NSW"), "written clearance").result == "cannot tell"


def test_clips_have_count_and_places():
    sheet = route("brake", length="1 m")
    assert sheet.figure("support_count").value == 3
    assert "250, 500, 750 mm from one end" in _check(sheet, "clips").reason
    assert _check(route("brake"), "clips").result == "cannot tell"
    assert _check(route("coolant", length="1 m"), "clips").result == "cannot tell"


def test_wall_against_pressure_needs_a_stated_factor():
    tube = {"material": "brazed double-wall steel tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "2000 psi"}
    assert _check(route("brake", **tube), "wall against pressure").result == "cannot tell"
    assert _check(route("brake", **tube, factor="3"), "wall against pressure").result == "ok"
    assert _check(route("brake", **tube, factor_on_yield="3"), "wall against pressure").result == "ok"
    assert _check(route("brake", **tube, factor_on_yield="5"), "wall against pressure").result == "not ok"
    assert _check(route("brake", **{**tube, "pressure": "9000 psi"}), "wall against pressure").result == "not ok"


@pytest.mark.parametrize(
    ("flare", "seat", "result"),
    [
        ("45 deg double", "45 deg", "ok"),
        ("37 deg single", "37 deg", "ok"),
        ("45 deg double", "37 deg", "not ok"),
        ("bubble", "45 deg", "not ok"),
    ],
)
def test_flares_of_two_angles_never_mix(flare, seat, result):
    assert _check(route("brake", flare=flare, seat=seat), "flare against seat").result == result


@pytest.mark.parametrize(
    ("nut", "port", "result", "words"),
    [
        ("3/8-24", "3/8-24", "ok", ""),
        ("M10x1.0", "M10x1", "ok", ""),
        ("3/8-24", "M10x1.0", "not ok", "starts in"),
        ("7/16-24", "7/16-20", "not ok", "starts in"),
        ("M10x1.25", "M10x1.0", "not ok", "starts in"),
        ("M12x1.0", "M10x1.0", "not ok", "does not enter"),
        ("3/8-24", "1/2-20", "not ok", "does not enter"),
    ],
)
def test_pairs_that_start_and_then_strip_are_named(nut, port, result, words):
    check = _check(route("brake", nut=nut, port=port), "nut thread")
    assert check.result == result
    assert words in check.reason


def test_the_common_wall_is_just_what_a_double_flare_takes():
    def result(wall):
        return _check(
            route("brake", od="3/16 in", wall=wall, flare="45 deg double", seat="45 deg"), "wall against flare"
        ).result

    assert result("0.028 in") == "ok"
    assert result("0.035 in") == "not ok"


def test_fluid_against_rubber_where_a_text_names_the_pair():
    assert _check(route("brake", material="EPDM", fluid="DOT 4"), "fluid against").result == "ok"
    assert (
        _check(
            route("brake", material="FKM", klass="expansion joint", state="continuous", fluid="DOT 4"), "fluid against"
        ).result
        == "cannot tell"
    )
    assert _check(route("fuel feed", material="R6", fluid="E85"), "fluid against").result == "cannot tell"


def test_exhaust_growth_asks_for_slip():
    sheet = route(
        "brake", **{**BESIDE, "hot_temperature": "700 degF"}, anchors="100 ft", exhaust_material="carbon steel"
    )
    assert sheet.figure("thermal_growth").value == pytest.approx(5.63, rel=1e-9)
    assert _check(sheet, "exhaust growth").result == "cannot tell"


def test_cautions_of_brake_and_fuel_work():
    assert _says(route("brake"), "by another person")
    assert _says(route("fuel feed"), "no ignition source")
    assert _says(route("brake"), "over half carried brake fluid with three per cent")


@pytest.mark.parametrize(
    ("keys", "error"),
    [
        ({"service": "steam"}, InputError),
        ({"side": "left"}, InputError),
        ({"shield": "tin foil"}, InputError),
        ({"temperature_by": "hand"}, InputError),
        ({"gap": "1"}, UnitError),
        ({"gap": "-1 in"}, InputError),
        ({"temperature": "-300 degC"}, InputError),
        ({"fluid": "lemonade"}, LookupMiss),
        ({"material": "string"}, LookupMiss),
        ({"gap": "1 in", "jurisdiction": "Atlantis", "service": "brake"}, LookupMiss),
        ({"flare": "60 deg", "seat": "45 deg"}, LookupMiss),
        ({"nut": "3/8", "port": "3/8-24"}, InputError),
        ({"hot_finish": "1.4"}, InputError),
        ({"air": "50 to 30 degC", **{k: v for k, v in BESIDE.items() if k != "air"}}, InputError),
    ],
)
def test_what_cannot_be_read_is_refused(keys, error):
    with pytest.raises(error):
        route(**keys)


def test_drawings_come_when_asked_for_and_there_is_an_estimate():
    assert [d.title for d in route("brake", **BESIDE, draw=True).drawings] == ["temperature against gap", "section"]
    assert route("brake", **BESIDE).drawings == []
    assert route("brake", draw=True).drawings == []


PARTS = {
    "length": "1 m",
    "wall": "0.028 in",
    "pressure": "1000 psi",
    "factor": "3",
    "jurisdiction": "MD",
    "anchors": "1 m",
}


def test_every_figure_of_a_sheet_has_its_quantity_defined_and_its_id_once():
    sheet = route("brake", **BESIDE, **PARTS, exhaust_material="carbon steel")
    ids = [f.id for f in sheet.figures]
    assert len(ids) == len(set(ids))
    for figure in sheet.figures:
        for part in figure.walk():
            assert sheet.data.quantity(part.quantity)
            assert part.evidence


def test_the_command_estimates_beside_a_part(capsys):
    argv = ["DOT 4", "--beside", "exhaust header", "--gap", "1 in", "--od", "3/16 in", "--hot-od", "2 1/4 in", "--json"]
    argv += ["--hot-finish", "0.8", "--finish", "0.8"]
    command.heat(argv)
    out = json.loads(capsys.readouterr().out)
    assert any(f["quantity"] == "line_temperature" for f in out["figures"])
    assert any("measure the hot part" in c["text"] for c in out["cautions"])


def test_the_command_refuses_half_an_estimate():
    with pytest.raises(InputError, match="--beside"):
        command.heat(["DOT 4", "--state", "wet", "--gap", "1 in"])
    with pytest.raises(InputError):
        command.heat(["DOT 4", "--beside", "exhaust header", "--at", "100 degC"])


JOB = """
[job]
owner = "A"
identification = "B"

[[lines]]
name = "rear brake line"
service = "brake"
fluid = "DOT 4"
temperature = "171 degC"
temperature_by = "thermocouple"

[[lines]]
name = "re-routed"
service = "brake"
material = "brazed steel tube"
fluid = "DOT 4"
temperature = "82 degC"
temperature_by = "thermocouple"
side = "other side"
length = "1 m"
"""


def test_route_of_a_job_runs_all_lines_or_the_one_named(tmp_path, capsys):
    job = tmp_path / "build.toml"
    job.write_text(JOB)
    assert command.route([str(job)], read_job) == 1
    assert "re-routed" in capsys.readouterr().out
    assert command.route([str(job), "re-routed", "--json"], read_job) == 0
    assert json.loads(capsys.readouterr().out)["asked"]["service"] == "brake"
    with pytest.raises(LookupMiss) as refusal:
        command.route([str(job), "re-routd"], read_job)
    assert "re-routed" in refusal.value.nearest


def test_a_route_is_the_same_twice():
    assert json.dumps(route("brake", **BESIDE).as_dict()) == json.dumps(route("brake", **BESIDE).as_dict())


def _job_line(**keys):
    """A line as a job file gives it."""
    refused = []
    line = Line.read({"name": "front line", **keys}, (), refused)
    assert not refused
    return line


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("material", "unobtainium pipe"),
        ("fluid", "lemonade"),
        ("class", "R99"),
        ("fluid_state", "soggy"),
    ],
)
def test_a_word_of_a_job_that_cannot_be_read_is_an_open_question(key, typed):
    keys = {
        "service": "brake",
        "material": "fuel hose",
        "class": "SAE J30 R9",
        "fluid": "DOT 4",
        "temperature": "80 degC",
        key: typed,
    }
    sheet = route_of_part(_job_line(**keys))
    check = next(c for c in sheet.checks if typed in c.reason)
    assert check.result == "cannot tell"
    assert sheet.asked[key] == typed
    assert sheet.title.startswith("front line")


def test_a_finish_of_a_job_that_is_not_in_the_table_is_an_open_question():
    sheet = route_of_part(_job_line(service="brake", **{**BESIDE, "hot_finish": "titanium: blue"}))
    assert any("titanium" in c.reason for c in sheet.checks)
    assert "hot finish" in _check(sheet, "estimated temperature").reason


def test_the_gap_of_two_paths_is_their_nearest_place():
    line = straight_pipe("line", (0.0, 0.04, 0.0), (1.0, 0.09, 0.0), 0.00238125)
    hot = straight_pipe("exhaust", (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), 0.028575)
    sheet = route_along(line, hot, "brake", **{k: v for k, v in BESIDE.items() if k not in ("gap", "od", "hot_od")})
    # the slanted line starts 40 mm beside the axis and leaves it from there
    assert sheet.figure("gap").value / 1000 == pytest.approx(0.04 - 0.00238125 - 0.028575, abs=2e-5)
    assert _worst(sheet)
    assert _says(sheet, "nearest place of line to exhaust")
    with pytest.raises(InputError):
        route_along(line, hot, "brake", gap="1 in")


@pytest.mark.parametrize(
    ("droop", "lock", "result"),
    [("300 mm", "280 mm", "ok"), ("300 mm", "310 mm", "not ok"), ("305 mm", None, "cannot tell")],
)
def test_a_hose_keeps_slack_under_pressure(droop, lock, result):
    """A flexible hose may shorten by 4 % under pressure: 320 mm leaves 307.2 mm."""
    assert _check(route("brake", hose_length="320 mm", droop=droop, lock=lock), "hose slack").result == result


def test_petrol_in_a_hose_is_kept_under_the_limit_of_the_hose():
    sheet = route("fuel feed", material="SAE J30 R9", fluid="petrol", temperature="60 degC", temperature_by="crayon")
    assert (sheet.decision.kind, sheet.decision.verb, sheet.decision.figure.text) == ("use", "KEEP UNDER", "150")


def test_a_boiling_range_is_no_limit_for_the_estimate():
    sheet = route(
        "fuel feed", **{**BESIDE, "fluid": "gasoline", "hot_temperature": "60 to 80 degC", "soak_air": "30 to 40 degC"}
    )
    assert _check(sheet, "fluid's limit").bears == "inform"
    assert "for information" in _check(sheet, "fluid's limit").reason
    assert not any(f.quantity == "gap_needed" for f in sheet.figures)


PATHS = {
    "points": [["0 in", "0 in", "0 in"], ["40 in", "0 in", "0 in"]],
    "hot": {"name": "pipe", "points": [["20 in", "-20 in", "3 in"], ["20 in", "20 in", "3 in"]], "od": "2 in"},
}


def _line_of_a_job(**keys):
    given = {k: v for k, v in BESIDE.items() if k not in ("gap", "hot_od", "od")}
    return _job_line(**{"name": "line", "service": "brake", "od": "3/16 in", **given, **PATHS, **keys})


def test_the_paths_of_a_job_line_give_its_gap_and_its_nearest_place():
    """Two straight bodies square to each other: 3 in between centre lines, less 1 in and 3/32 in."""
    sheet = route_of_part(_line_of_a_job())
    # 1.90625 in; the search gives a lower bound within 0.02 mm of it, cut to 0.001 in on the near side
    assert 1.904 <= float(sheet.asked["gap"].removesuffix(" in")) <= 1.906
    assert _says(sheet, "at 20 in rearward from the datum")
    metric = route_of_part(_line_of_a_job(), is_metric=True)
    assert 48.38 <= float(metric.asked["gap"].removesuffix(" mm")) <= 48.419
    assert _says(metric, "at 508 mm rearward from the datum")
    assert "from the paths" in sheet.figure("gap").note
    assert (
        route_of_part(_line_of_a_job(points=[["0 in", "0 in", "3 in"], ["40 in", "0 in", "3 in"]])).asked["gap"]
        == "0.000 in"
    )


def test_a_gap_measured_on_the_car_governs_over_the_paths():
    sheet = route_of_part(_line_of_a_job(gap="1-1/4 in"))
    assert sheet.asked["gap"] == "1-1/4 in"


def test_points_that_do_not_fit_the_radius_of_a_line_are_refused():
    sharp = [["0 in", "0 in", "0 in"], ["1 in", "0 in", "0 in"], ["1 in", "1 in", "0 in"]]
    with pytest.raises(InputError, match="line"):
        route_of_part(_line_of_a_job(points=sharp, radius="6 in"))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('name = "a"\nhot = "x"', "lines[1].hot (a): a table is wanted"),
        ('service = "brake"', "lines[1].name: is missing"),
        ('name = "a"\npressure = "1200"', "lines[1].pressure (a): 1200: a stress needs its unit"),
        ('name = "a"\nhot_temperature = "400"', "lines[1].hot_temperature (a): 400: a temperature needs its unit"),
        ('name = "a"\nair = "50 to 30 degC"', "the wrong way round"),
    ],
)
def test_what_cannot_be_read_of_a_line_is_refused_with_one_message(tmp_path, text, words):
    from gaugeblock.domains import hooks
    from gaugeblock.errors import JobError
    from gaugeblock.tables.load import refdata

    job = tmp_path / "build.toml"
    job.write_text(f"[[lines]]\n{text}\n")
    for checking in (None, hooks(refdata())):
        with pytest.raises(JobError) as refused:
            read_job(job, checking)
        assert len(refused.value.problems) == 1
        assert words in str(refused.value)


def test_a_line_too_hot_by_a_limit_from_memory_asks_its_maker_and_his_figure_settles_it():
    keys = {"material": "SAE J30 R9", "fluid": "petrol", "temperature": "200 degC", "temperature_by": "thermocouple"}
    sheet = route("fuel feed", **keys)
    assert sheet.decision.kind == "ask"
    assert [q.key for q in sheet.questions] == ["line_limit"]
    paper = {"line_limit_from": "hose maker's sheet, page 3"}
    assert route("fuel feed", **keys, **paper, line_limit="220 degC").decision.kind == "use"
    stopped = route("fuel feed", **keys, **paper, line_limit="180 degC")
    assert stopped.decision.kind == "stop"
    assert stopped.decision.figures[0].basis == "maker"


def test_a_makers_figure_without_its_page_is_kept_and_the_page_is_asked():
    sheet = route("fuel feed", material="nylon tube", fluid="petrol", line_limit="100 degC", line_limit_from="leaflet")
    assert sheet.decision.figures[0].text == "100"
    assert [q.key for q in sheet.questions] == ["line_limit_from"]


def test_a_class_nobody_named_is_asked_with_what_each_stands():
    sheet = route("fuel feed", material="fuel hose", fluid="petrol")
    assert sheet.decision.kind == "ask"
    assert [f.text for f in sheet.decision.figures] == ["100", "125", "135"]
    assert sheet.questions[0].key == "class"


def test_an_open_class_is_not_asked_where_the_fluid_decides_whatever_it_is():
    keys = {"material": "SAE J30 R9", "fluid": "DOT 4", "temperature": "80 degC"}
    assert [f.text for f in route("brake", **{**keys, "material": "fuel hose"}).decision.figures] == [
        "100",
        "125",
        "135",
    ]
    wet_or_dry = route("brake", material="polyacrylate rubber (ACM)", fluid="DOT 3").decision
    assert [f.text for f in wet_or_dry.figures] == ["140", "170"]


@pytest.mark.parametrize(
    ("factor", "result", "key"),
    [("3", "ok", None), ("8", "cannot tell", "factor_on_burst"), ("40", "not ok", "wall")],
)
def test_an_older_jobs_factor_asks_what_it_is_on_where_that_makes_a_difference(factor, result, key):
    tube = {"material": "brake tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "1200 psi", "factor": factor}
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", **tube, tensile_strength="50 ksi")
    assert _check(sheet, "wall against pressure").result == result
    assert key is None or key in [q.key for q in sheet.questions]


def test_a_wall_that_bursts_under_the_peak_stops():
    tube = {"material": "brake tube", "od": "3/16 in", "wall": "0.028 in", "pressure": "6000 psi"}
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", **tube, tensile_strength="10 ksi")
    assert sheet.decision.kind == "stop"


def test_what_a_hose_is_marked_for_settles_whether_the_fluid_may_run_in_it():
    keys = {"material": "SAE J30 R9", "fluid": "E85"}
    assert "marked_for" in [q.key for q in route("fuel feed", **keys).questions]
    assert route("fuel feed", **keys, marked_for="E85").decision.kind == "use"
    assert route("fuel feed", **keys, marked_for="gasoline").decision.kind == "stop"
