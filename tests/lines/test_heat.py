"""Behaviours of the heat answer: limits of line materials, hose classes, fluids and fuels."""

from __future__ import annotations

import json
import shlex

import pytest

from gaugeblock.cli import main
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss, UnitError
from gaugeblock.lines import commands as command
from gaugeblock.lines.heat import heat


def _check(sheet, name="temperature within the limit"):
    return next(c for c in sheet.checks if c.name == name)


def test_the_wet_boiling_point_governs_a_used_fluid_and_the_sheet_says_so():
    sheet = heat("DOT 4", state="wet", at="160 degC")
    assert sheet.governing.quantity == "boiling_point_minimum"
    assert _check(sheet).result == "not ok"
    assert any("governs a fluid that has been in use" in c.text for c in sheet.cautions)


@pytest.mark.parametrize(
    ("fluid", "is_told"),
    [("DOT 3", False), ("DOT 4", True), ("DOT 5", False), ("DOT 5.1", True), ("ISO 4925 class 4", True)],
)
def test_the_vapour_of_old_fluid_is_told_where_it_lies_under_the_limit_and_says_whose_it_is(fluid, is_told):
    """DOT 3 must reach 140 degC wet, under the 145 degC of fluids of the 1970s; silicone takes up no water."""
    sheet = heat(fluid, state="wet")
    told = [c for c in sheet.cautions if "145" in c.text]
    assert len(told) == is_told
    for caution in told:
        assert "on sale in the 1970s" in caution.text
        assert "stay well under the limit" in caution.text
        assert caution.severity == "injury"
        assert sheet.decision.figures[0].id in caution.figures
        assert any(id.startswith("lines/fluids:brake fluid, glycol base|3 % water") for id in caution.figures)


def test_a_dry_figure_is_not_carried_over_to_used_fluid():
    sheet = heat("DOT 4", state="dry", at="200 degC")
    assert _check(sheet).result == "ok"
    assert _check(sheet, "temperature within the wet boiling point").result == "cannot tell"
    assert sheet.worst == "cannot tell"


def test_a_missing_state_is_asked_for_not_assumed():
    """The aged fluid first, each with what comes of it."""
    decision = heat("DOT 3", at="150 degC").decision
    assert decision.kind == "ask"
    assert [f.key["state"] for f in decision.figures] == ["wet", "dry"]
    assert [c.then for c in decision.candidates] == ["stop: it is too hot", "55 degC left"]
    assert [q.key for q in heat("DOT 3").questions] == ["fluid_state"]


def test_what_is_too_hot_in_every_state_stops():
    sheet = heat("DOT 3", at="210 degC")
    assert sheet.decision.kind == "stop"
    assert not sheet.questions


def test_a_missing_class_is_asked_for_with_the_choices():
    with pytest.raises(Ambiguous) as refusal:
        heat("fuel hose")
    assert "SAE J30 R6" in refusal.value.nearest


def test_a_hose_class_answers_by_itself():
    assert heat("SAE J30 R9").governing.value == 150
    assert heat("fuel hose", klass="R9").governing.id == heat("R9").governing.id


def test_figures_of_other_classes_and_states_are_told_until_one_is_named():
    told = [c.text for c in heat("PTFE hose").cautions if c.text.startswith("More figures by")]
    assert [text.split("; name the ")[1] for text in told] == ["class.", "state."]
    named = heat("PTFE hose", klass="hose MIL-DTL-25579", state="continuous")
    assert not [c.text for c in named.cautions if c.text.startswith("More figures by")]


@pytest.mark.parametrize(("question", "columns"), [("brake fluid", 2), ("wet brake fluid", 1), ("dry brake fluid", 1)])
def test_brake_fluid_of_no_class_is_every_class_new_and_old_as_it_was_said(question, columns, capsys):
    """49 CFR 571.116, S5.1.1 and S5.1.2: boiling points in degC, wet and dry."""
    law = {"DOT 3": (140, 205), "DOT 4": (155, 230), "DOT 5": (180, 260), "DOT 5.1": (180, 260)}
    main(["ask", "boiling", "point", *question.split(), "--json"])
    rows = json.loads(capsys.readouterr().out)["table"]["rows"]
    main(["ask", "boiling", "point", *question.split()])
    printed = capsys.readouterr().out
    assert all(f"  {klass} " in printed for klass in law)
    assert len(rows) == 4 * columns
    for row in rows:
        key = {"state": question.split()[0], **row["key"]}
        (figure,) = [f for f in row["figures"] if f["id"] in row["decision"]["figures"]]
        assert (figure["value"], figure["unit"]) == (law[key["item"]][key["state"] == "dry"], "degC")


def test_the_only_class_there_is_answers_and_is_said():
    sheet = heat("nylon 12", state="continuous")
    assert sheet.governing.value == 90
    assert any("only class" in c.text and "multilayer" in c.text for c in sheet.cautions)


@pytest.mark.parametrize(
    ("at", "result"),
    [
        ("222 degC", "ok"),
        ("431 degF", "ok"),
        ("223 degC", "cannot tell"),
        ("232 degC", "cannot tell"),
        ("449 degF", "cannot tell"),
        ("233 degC", "not ok"),
        ("451 degF", "not ok"),
    ],
)
def test_close_under_the_limit_nobody_can_tell_and_just_over_it_is_not_ok(at, result):
    assert _check(heat("PTFE", at=at)).result == result


def test_an_expansion_joints_figure_informs_and_never_judges_a_hose():
    sheet = heat("PTFE", klass="expansion joint", state="continuous", at="100 degC")
    assert _check(sheet).result == "cannot tell"
    assert "expansion joint" in _check(sheet).reason


def test_an_expansion_joint_class_is_never_taken_unasked():
    with pytest.raises(Ambiguous):
        heat("silicone rubber")


def test_a_heat_ageing_temperature_is_no_limit():
    sheet = heat("rubber type A", at="20 degC")
    assert _check(sheet).result == "cannot tell"
    assert any("not a service limit" in c.text for c in sheet.cautions)


def test_a_demand_of_a_standard_is_no_limit():
    assert _check(heat("competition fuel line", klass="FIA 253-2015", at="20 degC")).result == "cannot tell"


def test_the_scope_of_a_standard_judges_and_no_summary_of_it():
    """SAE J844: not above 93 degC for any part of the system; a summary page had printed 100 degC continuous."""
    assert _check(heat("nylon air brake tube", at="97 degC")).result == "not ok"
    assert _check(heat("nylon air brake tube", at="85 degC")).result == "cannot tell"
    assert _check(heat("nylon air brake tube", at="80 degC")).result == "ok"


@pytest.mark.parametrize("at", ["10 degC", "60 degC", "240 degC"])
def test_a_boiling_range_informs_and_is_never_a_limit(at):
    sheet = heat("gasoline", at=at)
    assert _check(sheet).result == "cannot tell"
    assert _check(sheet).required is None
    assert (sheet.decision.kind, sheet.decision.figures) == ("none", ())
    assert "80 to 437 degF" in sheet.decision.do


def test_under_the_lowest_temperature_is_not_ok():
    assert heat("nylon tube", state="continuous", at="-50 degC").worst == "not ok"


def test_no_limit_published_is_cannot_tell():
    assert _check(heat("brazed steel tube", at="20 degC")).result == "cannot tell"
    assert heat("copper-nickel brake tube").decision.kind == "none"


@pytest.mark.parametrize("word", ["R6", "R7", "NBR", "neoprene"])
def test_words_of_the_trade_reach_their_cells(word):
    assert heat(word).governing.quantity == "temperature_maximum"


def test_from_memory_and_habit_are_said_in_the_reason():
    assert "from memory" in _check(heat("R9", at="100 degC")).reason


@pytest.mark.parametrize(
    ("keys", "error"),
    [
        ({"item": "DOT 7", "state": "wet"}, LookupMiss),
        ({"item": "gxl"}, LookupMiss),
        ({"item": ""}, LookupMiss),
        ({"item": "DOT 4", "state": "moldy"}, LookupMiss),
        ({"item": "DOT 4", "klass": "R9"}, LookupMiss),
        ({"item": "fuel hose", "klass": "R99"}, LookupMiss),
        ({"item": "PTFE", "at": "100"}, UnitError),
        ({"item": "PTFE", "at": "100 psi"}, UnitError),
        ({"item": "PTFE", "at": "hot"}, InputError),
        ({"item": 5}, InputError),
        ({"item": "PTFE", "at": 100}, InputError),
    ],
)
def test_what_cannot_be_answered_is_refused_with_what_to_do(keys, error):
    with pytest.raises(error) as refusal:
        heat(**keys)
    assert isinstance(refusal.value, GaugeblockError)
    assert refusal.value.do


def test_every_item_of_the_three_tables_answers_or_says_what_to_name():
    from gaugeblock.tables.load import refdata
    from gaugeblock.warmth.item import TABLES

    for table in TABLES:
        for item in refdata().table(table).column("item").values():
            assert _answers_or_names(item), item


def _answers_or_names(item):
    try:
        sheet = heat(item, at="50 degC")
    except LookupMiss as refusal:
        return refusal.nearest
    return sheet.checks and (sheet.figures or sheet.decision.do)


def test_the_command_prints_one_json_object_and_its_exit_code(capsys):
    assert command.heat(["DOT 4", "--state", "wet", "--at", "160 degC", "--json"]) == 1
    out = json.loads(capsys.readouterr().out)
    assert out["asked"] == {"item": "DOT 4", "class": None, "state": "wet", "at": "160 degC"}
    assert out["figures"][0]["value"] == 155
    assert out["checks"][0]["result"] == "not ok"


def test_the_command_prints_in_the_unit_asked(capsys):
    assert command.heat(["PTFE", "--in", "degF"]) == 0
    assert "449.6 degF" in capsys.readouterr().out


def test_the_examples_of_the_help_run(capsys):
    with pytest.raises(SystemExit) as done:
        command.heat(["--help"])
    assert done.value.code == 0
    examples = capsys.readouterr().out.rsplit("example:", 1)[1].strip().splitlines()
    assert len(examples) == 2
    for example in examples:
        argv = shlex.split(example)
        assert argv[:2] == ["gaugeblock", "heat"]
        assert command.heat(argv[2:]) in (0, 1)


def test_main_reports_a_refusal_on_standard_error_only(capsys):
    assert main(["heat", "fuel hozze"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "Near it: fuel hose" in said.err


@pytest.mark.parametrize("item", ["gasoline", "E10", "diesel"])
def test_fuel_work_is_cautioned_on_every_fuel(item):
    assert any("no ignition source" in c.text for c in heat(item).cautions)
    assert not any("no ignition source" in c.text for c in heat("DOT 4", state="wet").cautions)


def test_too_hot_by_a_limit_from_memory_asks_the_maker_and_never_stops():
    sheet = heat("R9", at="400 degF")
    assert _check(sheet).result == "not ok"
    assert sheet.decision.kind == "ask"
    assert [(q.kind, q.key) for q in sheet.questions] == [("ask the maker", "line_limit")]


def test_what_a_coating_keeps_off_informs_and_the_scaling_limit_decides():
    sheet = heat("aluminised exhaust tube", klass="409, type 1 coating")
    assert sheet.decision.figure.quantity == "oxidation_temperature_maximum"
    assert any(f.quantity == "rust_protection_temperature_maximum" for f in sheet.figures)
