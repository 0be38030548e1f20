"""Brakes: pressure, stroke and pedal of a circuit, the hand brake, and what rules say."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.answer.question import KINDS
from gaugeblock.cli import main
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.lines.brakes.circuit import brake
from gaugeblock.lines.brakes.facts import brake_fact
from gaugeblock.lines.brakes.hand import handbrake
from gaugeblock.lines.brakes.hose import brake_hose
from gaugeblock.lines.brakes.rules import RULES

CIRCUIT = {"force": "100 lbf", "ratio": "6", "kind": "drum", "bore": "7/8 in", "wheels": "2", "travel": "2 mm"}
BORES = st.integers(40, 160).map(lambda n: f"{n / 100} in")


def number(sheet, quantity):
    figure = next(f for f in sheet.figures if f.quantity == quantity)
    return units.to_base(figure.typical, figure.unit)


def answer(sheet):
    figure = sheet.decision.figures[0]
    return units.to_base(figure.typical, figure.unit)


@given(BORES, BORES)
def test_a_larger_master_cylinder_gives_less_pressure_and_takes_less_stroke(one, other):
    a, b = (brake(m, **CIRCUIT) for m in sorted((one, other), key=lambda t: float(t.split()[0])))
    assert answer(a) >= answer(b)
    assert number(a, "stroke_needed") >= number(b, "stroke_needed")


@given(st.integers(15, 300), st.integers(15, 300))
def test_more_foot_never_gives_less_pressure(one, other):
    a, b = (answer(brake("1 in", **CIRCUIT | {"force": f"{f} lbf"})) for f in sorted((one, other)))
    assert a <= b


@given(BORES, st.sampled_from(["1", "2", "4"]))
def test_what_the_pistons_take_is_what_the_master_gives(master, wheels):
    """Fluid is not lost: stroke times the master's area is the travel times the area of all pistons."""
    sheet = brake(master, **CIRCUIT | {"wheels": wheels})
    bore = float(master.split()[0]) * 0.0254
    pistons = 2 * int(wheels) * (7 / 8 * 0.0254) ** 2 * 0.002
    assert number(sheet, "stroke_needed") * bore**2 == pytest.approx(pistons, rel=1e-9)


def test_a_stroke_that_is_too_short_stops():
    sheet = brake("3/4 in", **CIRCUIT, stroke="0.2 in")
    assert sheet.decision.kind == "stop"
    assert brake("3/4 in", **CIRCUIT, stroke="0.9 in").decision.kind == "use"


def test_other_wheel_cylinders_ask_for_the_balance_until_someone_tried_it():
    sheet = brake("1 in", **CIRCUIT, was="3/4 in")
    assert sheet.decision.kind == "ask"
    assert [q.key for q in sheet.questions if "balance" in q.checks[0]] == ["balance"]
    tried = brake("1 in", **CIRCUIT, was="3/4 in", balance="B. Sample, 1 June, on gravel")
    assert tried.decision.kind == "use"


def test_a_fixed_caliper_has_pistons_on_both_sides():
    with pytest.raises(InputError, match="each side"):
        brake("1 in", force="100 lbf", ratio="6", kind="fixed caliper", bore="38 mm", pistons="3")


def test_what_is_missing_is_asked_with_its_key():
    sheet = brake(None, force="100 lbf", ratio="6")
    assert sheet.decision.kind == "none"
    assert [q.key for q in sheet.questions] == ["master"]


def test_a_force_in_the_wrong_unit_is_doubted():
    sheet = brake("1 in", force="4000 lbf", ratio="6")
    assert sheet.decision.kind == "none"
    assert sheet.questions[0].key == "force"


@pytest.mark.parametrize(("subject", "place"), [(s, r.place) for s, rules in RULES.items() for r in rules])
def test_every_rule_has_its_row_and_says_whose_it_is(subject, place):
    sheet = brake_fact(subject, place=place)
    figure = sheet.decision.figures[0]
    assert (sheet.decision.kind, figure.basis) == ("use", "published")
    assert place in sheet.title
    assert "{" not in sheet.decision.do


def test_a_rule_of_several_places_asks_which():
    with pytest.raises(Ambiguous):
        brake_fact("leak test")
    with pytest.raises(LookupMiss):
        brake_fact("leak test", place="US Texas")


def test_residual_pressure_is_a_table_of_its_cases_until_one_is_said(capsys):
    main(["ask", "residual", "pressure", "--json"])
    rows = json.loads(capsys.readouterr().out)["table"]["rows"]
    assert [row["key"]["case"].split(",")[0] for row in rows] == ["drum", "disc", "disc"]
    main(["ask", "residual", "pressure", "drums", "--json"])
    assert json.loads(capsys.readouterr().out)["decision"]["kind"] == "ask"


def test_a_residual_valve_is_asked_of_the_maker():
    sheet = brake_fact("residual valve", case="drums")
    assert sheet.decision.kind == "ask"
    assert sheet.questions[0].kind in KINDS
    assert [(c.figure.text, c.when) for c in sheet.decision.candidates] == [
        ("7", "by a textbook"),
        ("10", "as shops fit it"),
    ]
    assert brake_fact("residual valve", case="disc above").decision.kind == "none"


@given(st.integers(50, 900), st.integers(50, 900))
def test_a_harder_hand_pulls_harder_and_two_cables_share_it(one, other):
    a, b = (answer(handbrake(force=f"{f} N", ratio="6")) for f in sorted((one, other)))
    assert a <= b
    assert answer(handbrake(force=f"{one} N", ratio="6", cables="2")) == pytest.approx(
        answer(handbrake(force=f"{one} N", ratio="6")) / 2
    )


def test_a_lever_that_has_not_way_enough_stops():
    assert handbrake(force="300 N", ratio="6", travel="30 mm", lever="150 mm").decision.kind == "stop"


SPANS = st.integers(8, 40).map(lambda n: f"{n} in")


@given(SPANS, SPANS, st.integers(6, 44))
def test_a_hose_that_would_be_stretched_is_never_let_pass(droop, lock, hose):
    sheet = brake_hose(hose=f"{hose} in", droop=droop, lock=lock)
    way = max(int(droop.split()[0]), int(lock.split()[0]))
    assert (sheet.decision.kind == "stop") == (hose < way / 0.96)
    assert answer(brake_hose(droop=droop, lock=lock)) == answer(brake_hose(droop=lock, lock=droop))


@given(st.integers(300, 3000), st.integers(40, 250))
def test_a_pressure_over_a_rating_stops(rated, foot):
    sheet = brake("1 in", force=f"{foot} lbf", ratio="6", rated=f"{rated} psi")
    assert (sheet.decision.kind == "stop") == (number(sheet, "line_pressure") > rated * 6894.757293168)


def test_a_cable_pulled_over_its_rating_stops():
    assert handbrake(force="60 lb", ratio="7", rated="300 lbf").decision.kind == "stop"
    assert handbrake(force="60 lb", ratio="7", rated="500 lbf").decision.kind == "use"


def test_the_balance_is_a_sheet_of_questions_and_has_no_figure():
    sheet = brake_fact("balance")
    assert (sheet.decision.kind, list(sheet.figures)) == ("none", [])
    assert {q.kind for q in sheet.questions} == set(KINDS)


@pytest.mark.parametrize("case", ["wheel", "axle"])
def test_a_size_from_memory_asks(case):
    sheet = brake_fact("line size", case=case)
    assert sheet.decision.kind == "ask"
    assert sheet.decision.figures[0].checked == "memory"


@pytest.mark.parametrize(
    ("case", "low", "high"),
    [("no booster", 5.0, 7.0), ("manual", 5.0, 7.0), ("servo", 4.0, 5.0), ("assisted", 4.0, 5.0)],
)
def test_a_pedal_has_the_ratio_that_shops_give_it(case: str, low: float, high: float) -> None:
    sheet = brake_fact("pedal ratio", case=case)
    (figure,) = sheet.decision.figures
    assert (sheet.decision.kind, figure.low, figure.high) == ("ask", low, high)
    assert figure.trust == "HABIT"


def test_what_help_a_pedal_has_is_asked() -> None:
    with pytest.raises(Ambiguous):
        brake_fact("pedal ratio")
    with pytest.raises(InputError, match="place"):
        brake_fact("pedal ratio", case="manual", place="US federal")


def test_a_booster_that_was_not_given_is_asked_before_a_rating_is_passed():
    typed = {"force": "100 lbf", "ratio": "6", "rated": "3000 psi"}
    sheet = brake("1 in", **typed)
    assert (sheet.decision.kind, "assist" in [q.key for q in sheet.questions]) == ("ask", True)
    assert brake("1 in", **typed, assist="1").decision.kind == "use"
    assert brake("1 in", **typed, assist="5").decision.kind == "stop"


def test_fluid_in_its_tube_is_what_the_pistons_take_in_the_time_they_take_it():
    """Four pistons of 7/8 in by 2 mm are 3.104 cm3; in 0.3 s through 0.132 in (8.829 mm2) that is 1.172 m/s."""
    keys = {"force": "80 lbf", "ratio": "6", "kind": "drum", "bore": "7/8 in", "wheels": "2", "travel": "2 mm"}
    one = brake("1 in", **keys, tube="0.132 in", time="0.3 s").figure("flow_speed")
    assert units.to_base(one.typical, one.unit) == pytest.approx(1.172, abs=0.0005)
    slow = brake("1 in", **keys, tube="0.132 in", time="0.6 s").figure("flow_speed")
    wide = brake("1 in", **keys, tube="0.264 in", time="0.3 s").figure("flow_speed")
    assert (slow.typical, wide.typical) == pytest.approx((one.typical / 2, one.typical / 4))
    assert "moves at 3.8" in brake("1 in", **keys, tube="0.132 in", time="0.3 s").decision.do


@pytest.mark.parametrize("lacks", ["tube", "time", "travel"])
def test_no_speed_without_its_sizes(lacks):
    keys = {"force": "80 lbf", "ratio": "6", "kind": "drum", "bore": "7/8 in", "wheels": "2", "travel": "2 mm"}
    given = {**keys, "tube": "0.132 in", "time": "0.3 s"}
    del given[lacks]
    assert not [f for f in brake("1 in", **given).figures if f.quantity == "flow_speed"]


def test_how_much_harder_other_brakes_push_is_told_in_per_cent() -> None:
    """(7/8 over 5/8) squared is 1.96."""
    sheet = brake(master="1 in", ratio="6", force="100 lbf", kind="drum", bore="7/8 in", was="5/8 in", wheels="2")
    (said,) = [check.reason for check in sheet.checks if check.name == "front to rear balance"]
    assert "push 96 % more" in said
