"""Joints, outlet and ignition: habit asks until it is tried, rules in words are told, what was and is must agree."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import domains, exhaust_hanger, exhaust_ignition, exhaust_joint, exhaust_outlet, exhaust_run
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.answer.question import KINDS as QUESTIONS
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.exhaust.job import Exhaust
from gaugeblock.exhaust.joint import KINDS
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata

SET = {
    "maker_gap": "0.044 in",
    "gap": "0.044 in",
    "reach": "0.75 in",
    "old_reach": "0.75 in",
    "heat_range": "5, as the maker says",
    "lead": "1-1/2 in",
    "timing_before": "10 deg",
    "timing_after": "10 deg",
}


def keeps_form(sheet: Sheet) -> None:
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    assert set(decision.because) <= names
    assert decision.do.endswith((".", "?"))
    assert decision.kind != USE or not any(c.asks or c.stops for c in sheet.checks)
    assert decision.kind != ASK or all(c.when and c.then for c in decision.candidates)
    assert all(q.kind in QUESTIONS and set(q.checks) <= names for q in sheet.questions)
    assert all(q.key in Exhaust.keys for q in sheet.questions)


@pytest.mark.parametrize("kind", KINDS)
def test_every_joint_asks_until_it_was_tried(kind: str) -> None:
    more = {"od": "2-1/2 in", "wall": ".065 in"}
    open_, tried = exhaust_joint(kind, **more), exhaust_joint(kind, **more, tried="smoke, no leak")
    keeps_form(open_)
    keeps_form(tried)
    assert (open_.decision.kind, tried.decision.kind) == (ASK, USE)


def test_a_socket_is_the_pipe_and_its_clearance() -> None:
    socket = exhaust_joint("slip fit", od="2-1/2 in").figure("socket_inside_diameter")
    assert (socket.low, socket.high) == pytest.approx((2.51, 2.53))


@pytest.mark.parametrize(
    ("more", "name"),
    [
        ({"socket": "2.60 in"}, "socket not too wide"),
        ({"socket": "2.501 in"}, "socket not too tight"),
        ({"overlap": "3/4 in"}, "overlap"),
    ],
)
def test_a_joint_that_is_not_as_usual_asks(more: dict[str, str], name: str) -> None:
    sheet = exhaust_joint("slip joint", od="2-1/2 in", tried="smoke", **more)
    keeps_form(sheet)
    assert sheet.decision.kind == ASK
    assert name in sheet.decision.because


@pytest.mark.parametrize("clamp", ["V-band", "band clamp", "exhaust clamp"])
def test_a_clamp_brings_the_torques_of_its_kind(clamp: str) -> None:
    sheet = exhaust_joint("slip joint", od="2-1/2 in", clamp=clamp)
    torques = [f for f in sheet.figures if f.quantity == "tightening_torque"]
    assert torques
    assert len({f.key["part"] for f in torques}) == 1
    with pytest.raises(LookupMiss):
        exhaust_joint("slip joint", clamp="cheese")


@given(st.integers(1, 180))
def test_the_cuts_of_a_mitred_bend_turn_no_more_than_the_most(angle: int) -> None:
    sheet = exhaust_joint("pie cut", angle=f"{angle} deg")
    cuts, most = sheet.figure("mitre_cuts").typical, sheet.figure("mitre_angle_maximum").typical
    assert (cuts - 1) * most < angle <= cuts * most


def test_what_is_no_joint_or_no_size_is_refused_or_asked() -> None:
    with pytest.raises(LookupMiss) as refused:
        exhaust_joint("slip joynt")
    assert "slip joint" in refused.value.nearest
    with pytest.raises(InputError):
        exhaust_joint("slip joint", od="-2 in")
    assert exhaust_joint("slip joint", od="250 in").decision.kind == NONE


def test_the_rules_of_a_place_are_told_in_words() -> None:
    sheet = exhaust_outlet("germany")
    keeps_form(sheet)
    assert sheet.decision.kind == NONE
    assert "outline" in sheet.decision.do
    assert exhaust_outlet().questions[0].key == "jurisdiction"
    with pytest.raises(LookupMiss):
        exhaust_outlet("Atlantis")


def test_plugs_leads_and_timing_as_they_were_are_used() -> None:
    sheet = exhaust_ignition(**SET)
    keeps_form(sheet)
    assert (sheet.decision.kind, sheet.decision.figures[0].text) == (USE, "0.044")


@pytest.mark.parametrize(
    ("more", "kind", "name"),
    [
        ({"gap": "0.035 in"}, ASK, "plug gap"),
        ({"reach": "0.708 in"}, ASK, "plug reach"),
        ({"lead": "1/2 in"}, ASK, "lead to pipe"),
        ({"timing_after": "14 deg"}, ASK, "timing"),
        ({"heat_range": None}, ASK, "heat range"),
        ({"timing_before": None}, ASK, "timing"),
        ({"maker_gap": None}, NONE, "plug gap"),
        ({"gap": "4 in"}, NONE, "gap as typed"),
    ],
)
def test_what_changed_or_is_not_known_asks(more: dict[str, str | None], kind: str, name: str) -> None:
    sheet = exhaust_ignition(**{**SET, **more})
    keeps_form(sheet)
    assert sheet.decision.kind == kind
    assert next(c for c in sheet.checks if c.name == name).asks


@pytest.mark.parametrize(
    ("given", "kind", "because"),
    [
        ({}, ASK, "a habit alone"),
        ({"spacing": "4 ft"}, ASK, "a habit alone"),
        ({"spacing": "6 ft", "tried": "shaken hot"}, ASK, "spacing of the hangers"),
        ({"first": "18 in", "tried": "shaken hot"}, ASK, "first of the hangers"),
        ({"swing": "35 deg", "tried": "shaken hot"}, ASK, "swing of the hangers"),
        ({"spacing": "4 ft", "first": "10 in", "swing": "20 deg", "tried": "shaken hot"}, USE, ""),
        ({"spacing": "4 mm"}, NONE, ""),
    ],
)
def test_hangers_by_habit_ask_until_the_run_was_tried(given: dict[str, str], kind: str, because: str) -> None:
    sheet = exhaust_hanger(**given)
    decision = sheet.decision
    assert decision.kind == kind
    assert because in (*decision.because, "")
    names = {c.name for c in sheet.checks}
    assert all(q.kind in QUESTIONS and set(q.checks) <= names for q in sheet.questions)


def test_hangers_take_the_habits_of_a_run() -> None:
    """The spacing that a run is judged by is the one that is told alone."""
    alone = exhaust_hanger()
    run = exhaust_run(
        "108 in",
        "2-1/4 in",
        ".065 in",
        "409",
        hot="900 degF",
        fixed="0 in",
        hangers="10 in, 90 in",
        hanger_length="3 in",
    )
    for quantity in ("support_spacing_maximum", "hanger_swing_maximum"):
        assert alone.figure(quantity).id == run.figure(quantity).id


def test_each_kind_of_task_has_its_card_in_a_job() -> None:
    text = """
[[exhausts]]
name = "collector slip"
kind = "joint"
joint = "sliding joint"
od = "2-1/2 in"
[[exhausts]]
name = "outlet"
kind = "outlet"
jurisdiction = "Germany"
[[exhausts]]
name = "plugs"
kind = "ignition"
maker_gap = "0.035 in"
[[exhausts]]
name = "no kind of joint"
kind = "joint"
"""
    items = build(domains.parse_job(text), refdata(), "test").items
    assert all(i.card is not None for i in items)
    kinds = {i.name: i.sheet.decision.kind for i in items}
    assert kinds == {"collector slip": ASK, "outlet": NONE, "plugs": ASK, "no kind of joint": NONE}
