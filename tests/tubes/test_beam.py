"""A load in the middle of a tube: two ways to one stress, and what it comes to."""

from __future__ import annotations

from math import pi

import pytest

import gaugeblock
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.calc import frame
from gaugeblock.units import to_base

TUBE = {"od": "1-1/2 in", "wall": ".095 in", "span": "30 in", "material": "1020 DOM"}
SETTLED = {**TUBE, "bump": "2", "share": "50 %"}


def number(sheet: gaugeblock.Sheet, quantity: str) -> float:
    figure = next(f for f in sheet.figures if f.quantity == quantity)
    return to_base(figure.typical, figure.unit)


def test_stress_and_sag_are_those_of_the_plane_frame() -> None:
    """The frame is solved as a matrix, the beam by the handbook's F L / 4 and F L^3 / 48 E I."""
    sheet = gaugeblock.beam(**SETTLED, load="200 lb")
    modulus = number(sheet, "modulus")
    force = number(sheet, "load_mass") * 2 * frame.G
    half = 15 * 0.0254
    nodes = [(0.0, 0.0), (half, 0.0), (2 * half, 0.0)]
    held = {0: frame.PINNED, 2: frame.SLIDING}
    got = frame.solve(nodes, frame.Section(0.0381, 0.002413), modulus, held, [frame.Load(1, up=-force)])
    assert number(sheet, "bending_stress") == pytest.approx(got.stress, rel=1e-6)
    assert number(sheet, "deflection") == pytest.approx(got.sag, rel=1e-6)


def test_the_greatest_load_comes_to_the_share_that_is_allowed() -> None:
    """What is allowed brings exactly the allowed share; a pound more stops."""
    most = gaugeblock.beam(**SETTLED).decision
    assert (most.kind, most.verb) == (USE, "KEEP UNDER")
    assert most.figure is not None
    at = most.figure.typical
    just = gaugeblock.beam(**SETTLED, load=f"{at:.6f} lb")
    assert just.decision.kind == USE
    assert number(just, "yield_share") == pytest.approx(0.5, rel=1e-6)
    assert gaugeblock.beam(**SETTLED, load=f"{at + 1:.6f} lb").decision.kind == STOP


def test_by_hand_of_a_metric_tube() -> None:
    """50 x 3 mm of 250 MPa across 1 m: W = pi (50^4 - 44^4) / (32 x 50) mm3, F = 4 x 250 W / 1000 N."""
    modulus = pi * (50**4 - 44**4) / (32 * 50)
    sheet = gaugeblock.beam("50 mm", "3 mm", "1 m", yield_strength="250 MPa", bump="1", share="100 %")
    figure = sheet.decision.figure
    assert figure is not None
    assert figure.unit == "kg"
    assert figure.typical == pytest.approx(4 * 250 * modulus / 1000 / 9.80665, rel=1e-6)


@pytest.mark.parametrize("lost", ["bump", "share"])
def test_what_is_not_said_is_asked_for_and_never_taken_as_safe(lost: str) -> None:
    asked = {key: value for key, value in SETTLED.items() if key != lost}
    sheet = gaugeblock.beam(**asked)
    assert sheet.decision.kind == ASK
    assert [q.key for q in sheet.questions] == [lost]
    assert gaugeblock.beam(**asked, load="100 lb").decision.kind == ASK


def test_what_bends_for_good_stops_whatever_else_was_said() -> None:
    assert gaugeblock.beam(**TUBE, load="1100 lb").decision.kind == STOP


def test_without_a_metal_or_with_an_odd_load_there_is_no_figure() -> None:
    bare = gaugeblock.beam("1-1/2 in", ".095 in", "30 in", load="100 lb")
    assert bare.decision.kind == NONE
    assert [q.key for q in bare.questions] == ["material"]
    odd = gaugeblock.beam(**TUBE, bump="200")
    assert odd.decision.kind == NONE
    assert odd.figures == ()


@pytest.mark.parametrize(("key", "more", "less"), [("span", "40 in", "20 in"), ("bump", "3", "1.5")])
def test_a_longer_span_and_harder_bumps_bear_less(key: str, more: str, less: str) -> None:
    low, high = (gaugeblock.beam(**{**SETTLED, key: value}).decision.figure for value in (more, less))
    assert low is not None
    assert high is not None
    assert low.typical < high.typical


def test_bumps_are_told_by_their_rule_and_no_number_of_them_stands_in_the_program() -> None:
    sheet = gaugeblock.beam(**TUBE)
    assert any("two to three times" in caution.text for caution in sheet.cautions)
    assert not any(mark.isdigit() for question in sheet.questions for mark in question.text)


def test_what_stops_says_what_the_greatest_load_is_of() -> None:
    """Without the bumps nothing is called allowed: it is where the tube bends for good."""
    at_rest = gaugeblock.beam(**TUBE, load="1100 lb").decision
    settled = gaugeblock.beam(**SETTLED, load="1100 lb").decision
    assert "bends for good, standing still" in at_rest.candidates[0].then
    assert settled.candidates[0].then == "at most"


@pytest.mark.parametrize(
    ("given", "when"),
    [
        ({}, "it begins to bend for good, standing still"),
        ({"bump": "3"}, "it begins to bend for good"),
        ({"share": "60 %"}, "that share is reached, standing still"),
    ],
)
def test_the_greatest_load_says_what_it_does(given: dict[str, str], when: str) -> None:
    from gaugeblock import beam

    sheet = beam("1.5 in", ".095 in", "30 in", material="1020 DOM", load="250 lb", **given)
    assert sheet.decision.candidates[-1].when == when
