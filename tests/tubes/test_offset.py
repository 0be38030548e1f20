"""Offsets and copes: against pipefitters' multipliers, the path of a bent tube, and two round tubes in space."""

from __future__ import annotations

from math import acos, cos, hypot, pi, radians, sin, sqrt, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, cope, offset
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.errors import InputError

# Travel over rise as pipefitters' and conduit benders' tables print it, from memory: cosecants.
PRINTED = {10: 5.76, 15: 3.864, 22.5: 2.613, 30: 2.0, 45: 1.414, 60: 1.155}


@pytest.mark.parametrize("angle", PRINTED)
def test_by_the_fitters_multipliers(angle: float) -> None:
    sheet = offset("10 in", f"{angle} deg")
    assert sheet.decision.kind == USE
    assert sheet.decision.figure.typical == pytest.approx(10 * PRINTED[angle], rel=2e-3)
    assert sheet.figure("offset_run").typical == pytest.approx(10 / tan(radians(angle)))


def test_a_rolling_offset_is_one_over_its_diagonal() -> None:
    rolled, plain = offset("3 in", "45 deg", across="4 in"), offset("5 in", "45 deg")
    assert rolled.decision.figure.typical == pytest.approx(plain.decision.figure.typical)


@given(st.floats(2, 20), st.floats(10, 90), st.floats(1, 8))
def test_the_marks_are_those_of_the_bent_tube(rise: float, angle: float, radius: float) -> None:
    """Walk the tube: an arc, a straight, an arc back; it must end carried over by the rise."""
    turn = radians(round(angle, 2))
    try:
        sheet = offset(f"{rise:.3f} in", f"{angle:.2f} deg", radius=f"{radius:.3f} in")
    except InputError:
        assert round(rise, 3) / sin(turn) < 2 * round(radius, 3) * tan(turn / 2) * (1 + 1e-9)
        return
    bend = round(radius, 3)
    straight = sheet.decision.figure.typical - bend * turn
    assert straight >= -1e-9
    carried = 2 * bend * (1 - cos(turn)) + straight * sin(turn)
    assert carried == pytest.approx(round(rise, 3), rel=1e-6)


@given(st.floats(0.5, 3), st.floats(0, 1.5), st.floats(20, 90))
def test_a_cope_is_where_the_tubes_meet(small: float, more: float, angle: float) -> None:
    """Each line along the small tube is followed until it is as far from the large one's axis as its radius."""
    own, other, turn = round(small, 3), round(small + more, 3), radians(round(angle, 2))
    depths = []
    for n in range(361):
        t = pi * n / 360
        across, along = own / 2 * sin(t), own / 2 * cos(t)
        # the axis of the large tube is x, that of the small one lies in the plane of x and y, turned by the angle
        reach = sqrt(max(0.0, (other / 2) ** 2 - across**2))
        depths.append((reach + along * cos(turn)) / sin(turn))
    got = cope(f"{own} in", f"{other} in", angle=f"{angle:.2f} deg").decision.figure.typical
    assert got == pytest.approx(max(depths) - min(depths), rel=1e-3, abs=1e-4)
    assert got >= other / 2 - hypot(sqrt(max(0.0, other**2 - own**2)) / 2, 0) - 1e-6


def test_what_is_no_offset_is_questioned_or_refused() -> None:
    assert offset("4000 in", "30 deg").decision.kind == NONE
    with pytest.raises(InputError):
        offset("4 in", "100 deg")
    with pytest.raises(InputError, match="smaller tube"):
        cope("2 in", "1-3/4 in")
    with pytest.raises(InputError):
        cope("1 in", "2 in", angle="5 deg")
    assert acos(0) == pytest.approx(pi / 2)


@pytest.mark.parametrize(
    ("line", "same"),
    [
        ("need a 4 inch offset with two 30 degree bends how far between the bends", lambda: offset("4 in", "30 deg")),
        ("up 3 and across 4 with 45s how long is the slant", lambda: offset("3 in", "45 deg", across="4 in")),
        ("cope depth 1 1/2 tube onto 1 3/4 square on", lambda: cope("1 1/2 in", "1 3/4 in")),
    ],
)
def test_it_is_asked_in_plain_words(line: str, same: object) -> None:
    assert ask(line).decision == same().decision
