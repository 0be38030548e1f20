"""What a line decides: the limit, its candidates, and who settles them."""

from __future__ import annotations

import pytest

from gaugeblock import heat
from gaugeblock.lines.route import route
from lines.line_sheets import BESIDE, check_of


def test_a_measured_temperature_governs_and_the_estimate_only_informs():
    sheet = route("brake", **BESIDE, temperature="170 degC", temperature_by="thermocouple")
    assert sheet.governing.text == "155"
    read = next(f for f in sheet.figures if f.basis == "measured")
    assert read.value == 170
    assert check_of(sheet, "measured: fluid").result == "not ok"
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
    assert check_of(cool, "measured: fluid").result == "cannot tell"
    assert "reads low on bright metal" in check_of(cool, "measured: fluid").reason
    assert check_of(hot, "measured: fluid").result == "not ok"


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


def test_without_any_temperature_the_limits_stand_on_the_sheet_all_the_same():
    sheet = route("brake", fluid="DOT 4", fluid_state="wet", beside="exhaust header", gap="2 in")
    assert sheet.figure("boiling_point_minimum").text == "155"
    check = check_of(sheet, "fluid's limit")
    assert check.result == "cannot tell"
    assert check.required.value == 155


def test_petrol_in_a_hose_is_kept_under_the_limit_of_the_hose():
    sheet = route("fuel feed", material="SAE J30 R9", fluid="petrol", temperature="60 degC", temperature_by="crayon")
    assert (sheet.decision.kind, sheet.decision.verb, sheet.decision.figure.text) == ("use", "KEEP UNDER", "150")


def test_a_boiling_range_is_no_limit_for_the_estimate():
    sheet = route(
        "fuel feed", **{**BESIDE, "fluid": "gasoline", "hot_temperature": "60 to 80 degC", "soak_air": "30 to 40 degC"}
    )
    assert check_of(sheet, "fluid's limit").bears == "inform"
    assert "for information" in check_of(sheet, "fluid's limit").reason
    assert not any(f.quantity == "gap_needed" for f in sheet.figures)


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


def test_what_a_hose_is_marked_for_settles_whether_the_fluid_may_run_in_it():
    keys = {"material": "SAE J30 R9", "fluid": "E85"}
    assert "marked_for" in [q.key for q in route("fuel feed", **keys).questions]
    assert route("fuel feed", **keys, marked_for="E85").decision.kind == "use"
    assert route("fuel feed", **keys, marked_for="gasoline").decision.kind == "stop"


def test_a_state_on_which_no_limit_depends_is_not_asked():
    """Coolant has figures by its share of glycol, and no limit of temperature in either."""
    sheet = route("coolant", material="EPDM", fluid="coolant, ethylene glycol")
    assert (sheet.decision.kind, sheet.decision.figure.text) == ("use", "140")
    assert not sheet.questions


@pytest.mark.parametrize(
    ("paper", "whose"), [({}, "the limit given"), ({"line_limit_from": "sheet"}, "its maker's limit")]
)
def test_a_limit_is_said_to_be_its_makers_where_he_states_it(paper, whose):
    keys = {"material": "nylon tube", "fluid": "petrol", "temperature": "60 degC", "temperature_by": "thermocouple"}
    sheet = route("fuel feed", **keys, **paper, line_limit="100 degC")
    (said,) = (c.reason for c in sheet.checks if "100 degC" in c.reason)
    assert f"{whose} is 100 degC" in said


def test_a_limit_of_habit_asks_the_maker_of_that_thing_by_its_name() -> None:
    """What only a shop habit limits is asked of its own maker; the other side of the pair, which a standard limits, is
    not.
    """
    alone = heat("PTFE")
    assert alone.decision.kind == "ask"
    assert [question.text for question in alone.questions] == [
        "Ask the maker of the PTFE: the highest temperature it stands in use."
    ]
    known = heat("brake hose")
    assert all("PTFE" not in question.text for question in known.questions)


def test_more_facts_never_hide_the_heat() -> None:
    """What stands in for the air after shut-down decides nothing, and its outcome stands beside the limit."""
    keys = {"gap": "1 in", "od": "3/16 in", "hot_od": "2 1/4 in", "hot_finish": "0.8", "finish": "0.8"}
    for fluid_state in (None, "wet", "dry"):
        more = {} if fluid_state is None else {"fluid_state": fluid_state}
        sheet = route(
            "brake", fluid="DOT 4", beside="exhaust header", hot_temperature="700 to 900 degF", **keys, **more
        )
        assert sheet.decision.kind == "ask"
        for candidate in sheet.decision.candidates:
            assert "estimated 256 to 411 degF" in candidate.then
            assert candidate.then.endswith("too hot by that") == (candidate.figure.typical < 168)
