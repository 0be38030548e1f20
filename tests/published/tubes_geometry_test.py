"""Bent shapes and frames against published figures. Each case names its source; half a unit in the last printed
digit.
"""

from __future__ import annotations

from math import pi, radians, tan

import pytest

from gaugeblock.calc import frame, path, shapes
from gaugeblock.calc.frame import FIXED, PINNED, SLIDING, Load
from gaugeblock.tubes.plan.plan import plan

INCH = 0.0254


def test_bend_of_half_inch_plate():
    """NAVEDTRA 14119, Fig. 13-49 Example 1: 90 degrees, inside radius 3.00 in, 1/2 in plate: 5.1 in."""
    assert path.Bend(0.0, 0.0, radians(90), 3.25).arc == pytest.approx(5.1, abs=0.05)


def test_u_bolt():
    """NAVEDTRA 14119, Fig. 13-50 Example 2: U-bolt, inside radius 1 in, 1/2 in stock: 3.925 in (its pi is 3.14)."""
    # wider than the last digit: 3.14 for pi makes 1.25 pi 3.925 instead of 3.927
    assert path.Stick([path.Bend(0.0, 0.0, pi, 1.25)], 0.0).developed_length == pytest.approx(3.925, abs=0.0025)


@pytest.mark.parametrize(("angle", "multiplier", "digit"), [(5, 11.4, 0.1), (10, 5.76, 0.01), (45, 1.414, 0.001)])
def test_offset_multipliers(angle, multiplier, digit):
    """NJATC conduit course, offset multipliers: apex to apex of an offset over its rise."""
    # at 5 degrees 1/sin is 11.474: the course cuts the digit, it does not round
    points = shapes.offset(1.0, radians(angle), 1.0, 1.0, radius=0.0)
    travel = ((points[2][0] - points[1][0]) ** 2 + (points[2][1] - points[1][1]) ** 2) ** 0.5
    assert multiplier - digit / 2 <= travel < multiplier + digit


def test_kick_of_four_and_five_eighths():
    """NJATC lesson 7: 4 5/8 in rise at 22.5 degrees, 12 in between (with its multiplier 2.6)."""
    points = shapes.offset(4.625, radians(22.5), 1.0, 1.0, radius=0.0)
    travel = ((points[2][0] - points[1][0]) ** 2 + (points[2][1] - points[1][1]) ** 2) ** 0.5
    assert travel == pytest.approx(12, abs=0.5)


@pytest.mark.parametrize(("angle", "shrink"), [(15, 0.132), (22.5, 0.199), (30, 0.268), (45, 0.414), (60, 0.577)])
def test_offset_shrink(angle, shrink):
    """Shrink constants as trade tables print them before rounding to sixteenths: tan(A/2)."""
    points = shapes.offset(1.0, radians(angle), 0.0, 0.0, radius=0.0)
    travel = ((points[2][0] - points[1][0]) ** 2 + (points[2][1] - points[1][1]) ** 2) ** 0.5
    assert travel - points[-1][0] == pytest.approx(shrink, abs=0.0005)
    assert tan(radians(angle) / 2) == pytest.approx(shrink, abs=0.0005)


def test_points_of_an_s_bend():
    """FHM, first post: four points of an S in one tilted plane, so the second bend is turned 180 degrees."""
    points = [
        (38.5202, -14.0264, 0.0),
        (45.3142, -14.0264, 0.0),
        (45.3142, -17.5214, 0.9654),
        (48.6822, -17.5214, 0.9654),
    ]
    stick, _ = path.from_points(points, 0.5)
    assert [b.angle for b in stick.bends] == pytest.approx([pi / 2, pi / 2])
    assert abs(stick.bends[1].turn) == pytest.approx(pi)


# Beams: straight tubes must give the handbook formulas (Roark; AISC beam diagrams), not only near them.
SECTION = frame.Section(0.0445, 0.003)
E, L, P = 205e9, 0.9, 1800.0
EI = E * SECTION.second


def _beam(feet, load_at=0.5, count=20):
    nodes = [(L * i / count, 0.0) for i in range(count + 1)]
    at = round(count * load_at)
    return frame.solve(nodes, SECTION, E, feet, [Load(at, up=-P)]), at


@pytest.mark.parametrize(
    ("feet", "load_at", "moment", "sag"),
    [
        ({0: PINNED, 20: SLIDING}, 0.5, P * L / 4, P * L**3 / (48 * EI)),  # simple supports, middle load
        ({0: FIXED, 20: FIXED}, 0.5, P * L / 8, P * L**3 / (192 * EI)),  # fixed ends, middle load
        ({0: FIXED}, 1.0, P * L, P * L**3 / (3 * EI)),  # cantilever, tip load
        ({0: PINNED, 20: SLIDING}, 0.25, P * L * 3 / 16, None),  # simple supports, load at a quarter: P a b / L
        ({0: FIXED, 20: SLIDING}, 0.5, 3 * P * L / 16, None),  # fixed and propped, middle load
        ({0: FIXED, 20: FIXED}, 0.25, P * L * 0.25 * 0.75**2, None),  # fixed ends, load at a: P a b^2 / L^2
    ],
)
def test_straight_tubes_equal_the_beam_formulas(feet, load_at, moment, sag):
    got, at = _beam(feet, load_at)
    assert got.moment == pytest.approx(moment, rel=1e-7)
    assert got.bending_stress == pytest.approx(moment * 0.0445 / 2 / SECTION.second, rel=1e-7)
    if sag is not None:
        assert -got.moves[at][1] == pytest.approx(sag, rel=1e-7)


def test_deflection_of_a_tube_as_worked():
    """AEX solution a: tube 20 x 14 mm, 1000 mm span, 170 N at the middle, 3 mm: modulus 197806.293 MPa."""
    section = frame.Section(0.020, 0.003)
    assert section.second * 1e12 == pytest.approx(5968.2406, abs=0.00005)
    nodes = [(i * 0.1, 0.0) for i in range(11)]
    got = frame.solve(nodes, section, 197806.293e6, {0: PINNED, 10: SLIDING}, [Load(5, up=-170.0)])
    assert -got.moves[5][1] * 1000 == pytest.approx(3.0, abs=5e-8)


@pytest.mark.parametrize(
    ("od", "wall", "least", "area"),
    [
        (25.4, 1.6, 8509, 114),
        (25.4, 1.2, 6695, 91),
        (1.375 * 25.4, 0.049 * 25.4, 18015, 126),
        (25.4, 0.095 * 25.4, 11320, 173),
    ],
)
def test_sections_meet_the_minimums_they_are_listed_under(od, wall, least, area):
    """FSAE rules 2021, F.3.4.1: each example tube meets the second moment (mm^4) and area (mm^2) of its row."""
    section = frame.Section(od / 1000, wall / 1000)
    # the first row's minimum is its own tube's 8508.8 mm^4, printed rounded up
    assert section.second * 1e12 >= least - 0.5
    assert section.area * 1e6 >= area


def test_plan_of_the_published_u_bolt():
    """NAVEDTRA 14119, Fig. 13-50 Example 2 through the whole plan: two legs of 1 in off a 180 degree bend make
    5.925 in.
    """
    keys = {"od": "1/2 in", "radius": "1 in inside", "reads": "decimal", "end": "1 in"}
    sheet = plan({**keys, "bends": [{"straight": "1 in", "angle": "180 deg"}]})
    # wider than the last digit, as above: its pi is 3.14
    assert sheet.figure("cut_length").typical == pytest.approx(2 + 3.925, abs=0.0025)


@pytest.mark.parametrize(("angle", "multiplier"), [(30, 2.0), (45, 1.414), (60, 1.155)])
def test_plan_of_an_offset_keeps_the_trade_multiplier(angle, multiplier):
    """Distance between the bends of an offset over its rise, as trade tables print it (30 deg 2, 45 deg 1.414, 60
    deg 1.155).
    """
    rise, radius = 20.0, 3.0
    keys = {"od": "1 in", "radius": f"{radius} in"}
    shape = {"rise": f"{rise} in", "angle": f"{angle} deg", "before": "9 in", "after": "9 in"}
    straights = [f.typical for f in plan({**keys, "offset": shape}).figures if f.quantity == "straight"]
    apex_to_apex = straights[1] + 2 * radius * tan(radians(angle) / 2)
    assert apex_to_apex / rise == pytest.approx(multiplier, abs=0.0005)


def test_plan_carries_as_the_beam_tables_say():
    """Simply supported and built-in beams, load at the middle: F L / 4 and F L / 8 (the published beam formulas)."""
    load = {"mass": "100 kg", "at": "centre", "bump_factor": "1"}
    keys = {
        "od": "40 mm",
        "wall": "3 mm",
        "material": "1020 DOM",
        "method": "rotary draw",
        "radius": "160 mm",
        "points": [["0 mm", "0 mm", "0 mm"], ["0 mm", "1000 mm", "0 mm"]],
        "reads": "mm",
    }
    modulus_of_section = 2 * frame.Section(0.040, 0.003).second / 0.040
    for feet, share in (("pinned", 4), ("fixed", 8)):
        stress = plan({**keys, "load": {**load, "feet": feet}}).figure("bending_stress").typical
        assert stress == pytest.approx(980.665 * 1.0 / share / modulus_of_section / 1e6, rel=1e-6)
