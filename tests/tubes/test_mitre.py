"""Slices of a bend: a joint turns twice the saw's angle, and the slices laid end to end are the bend."""

from __future__ import annotations

from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, mitre
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import GaugeblockError


@given(st.integers(10, 180), st.integers(2, 20))
def test_the_joints_turn_the_whole(angle: int, slices: int) -> None:
    for ends, joints in (("cut", slices), ("square", slices - 1)):
        saw = mitre(f"{angle} deg", str(slices), ends=ends).decision.figure
        assert saw is not None
        assert 2 * joints * saw.typical == pytest.approx(angle)


# The trade's pie cuts of 90 degrees: five at 9 degrees a face, six at 7.5 (common practice).
@pytest.mark.parametrize(("slices", "saw"), [("5", 9), ("6", 7.5), ("3", 15), ("10", 4.5)])
def test_usual_pie_cuts(slices: str, saw: float) -> None:
    figure = mitre("90 deg", slices, ends="cut").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(saw)


def test_the_middle_of_outside_and_inside_is_the_polygon_round_the_centre_line() -> None:
    sheet = mitre("90 deg", "5", ends="cut", od="2.5 in", radius="3.75 in")
    outside, inside = sheet.figure("mitre_slice_outside").typical, sheet.figure("mitre_slice_inside").typical
    assert (outside + inside) / 2 == pytest.approx(2 * 3.75 * tan(radians(9)))
    assert outside - inside == pytest.approx(2 * 2.5 * tan(radians(9)))


def test_both_ways_are_shown_where_the_ends_were_not_said() -> None:
    sheet = mitre("90 deg", "6")
    assert sheet.decision.kind == ASK
    assert [one.figure.typical for one in sheet.decision.candidates] == pytest.approx([7.5, 9])
    assert mitre("90 deg", "6", ends="square").decision.kind == USE


@pytest.mark.parametrize(
    ("options"),
    [
        {"angle": "270 deg", "slices": "6"},
        {"angle": "90 deg", "slices": "1"},
        {"angle": "90 deg", "slices": "six"},
        {"angle": "90 deg", "slices": "6", "ends": "round"},
        {"angle": "90 deg", "slices": "6", "od": "3 in", "radius": "1.5 in"},
        {"angle": "90 mm", "slices": "6"},
    ],
)
def test_what_is_no_bend_of_slices_is_refused(options: dict[str, str]) -> None:
    with pytest.raises(GaugeblockError):
        mitre(**options)


def test_an_unlikely_tube_is_questioned() -> None:
    assert mitre("90 deg", "6", od="300 in", radius="900 in").decision.kind == NONE


def test_it_is_asked_in_plain_words() -> None:
    line = "pie cuts for a 90 in 2.5 inch pipe, six pieces, what saw angle"
    assert ask(line) == mitre("90 deg", "6", od="2.5 in")
