"""Apexes moved outward for a gap that the arcs cost: by how much, which, and when they stay."""

from __future__ import annotations

import math
from typing import Any

import pytest

from gaugeblock.answer.check import NOT_OK, OK
from gaugeblock.calc import path as paths
from gaugeblock.tubes.plan.plan import work_out
from gaugeblock.tubes.plan.planned import Plan

INCH = 0.0254
TUBE = {
    "name": "t",
    "od": "1 in",
    "wall": ".120 in",
    "material": "1020",
    "method": "rotary draw",
    "radius": "6 in",
    "datum": "d",
}
CORNER = [["0 in", "-20 in", "0 in"], ["0 in", "0 in", "0 in"], ["0 in", "0 in", "20 in"]]


def pipe(c: float, gap: str = "2 in", **keys: Any) -> dict[str, Any]:
    """A pipe of 1 in inside the corner, its centre ``c`` inches from both legs."""
    points = [["-9 in", f"-{c} in", f"{c} in"], ["9 in", f"-{c} in", f"{c} in"]]
    return {"name": "pipe", "od": "1 in", "gap": gap, "points": points, **keys}


def corner(thing: dict[str, Any], **keys: Any) -> Plan:
    return work_out({**TUBE, "points": CORNER, "obstacles": [thing], **keys})


def kick_up(**keys: Any) -> Plan:
    """Apexes of the top at -3.65 and 14.12 in, 6 in up: a box 5 in high under it is 1/2 in from sharp corners."""
    place = {"start": ["0 in", "-20 in", "0 in"], "runs": "right", "bends": "up"}
    shape = {"flat": "12 in", "rise": "6 in", "angle": "60 deg", "foot": "10 in"}
    box = {
        "name": "box",
        "gap": "1/2 in",
        "box": {"middle": ["0 in", "5.235 in", "4 in"], "size": ["4 in", "15 in", "2 in"]},
    }
    return work_out({**TUBE, "radius": "5 in", "kick_up": shape, "place": place, "obstacles": [box], **keys})


def value(plan: Plan, quantity: str) -> float:
    return next(f.typical for f in plan.sheet.figures if f.quantity == quantity)


def brute_gap(plan: Plan, at: tuple[float, float]) -> float:
    """Second implementation: the centre line by 20,000 chords' ends against a pipe that runs rearward through
    ``at``, in inches.
    """
    assert plan.shape is not None
    n = 20_000
    near = min(
        math.hypot(p[1] / INCH - at[0], p[2] / INCH - at[1])
        for p in (plan.shape.line.at(plan.shape.line.length * i / n) for i in range(n + 1))
    )
    return near - 0.5 - 0.5


def test_what_the_arc_costs_is_as_the_geometry_of_the_corner_says():
    """Pipe 3 in from both legs: sharp 3 - 1 = 2 in; the arc of 6 in about (-6, 6) passes 6 - 3 sqrt 2 from its
    centre.
    """
    plan = corner(pipe(3))
    assert value(plan, "gap_cost") == pytest.approx(2 - (6 - 3 * math.sqrt(2) - 1), abs=1e-3)
    text = next(c.text for c in plan.sheet.cautions if "round off the corners" in c.text)
    assert "apex of bend 1 was moved out" in text
    assert "the ends stay" in text


def test_the_gap_asked_is_there_again_and_no_more_than_asked():
    plan = corner(pipe(3))
    assert [c.result for c in plan.sheet.checks if c.name == "gap to pipe"] == [OK]
    # the search ends within 0.01 mm of way, and the gap's own bound is 0.01 mm
    assert brute_gap(plan, (-3, 3)) == pytest.approx(2.0, abs=0.03 / 25.4)


def test_it_is_the_apex_that_moves_along_its_bisector_and_the_ends_that_stay():
    plan = corner(pipe(3))
    assert plan.shape is not None
    assert plan.shape.points is not None
    assert plan.shape is not None
    moved = value(plan, "apex_moved")
    x, y, z = (v / INCH for v in plan.shape.points[1])
    assert (x, y, z) == pytest.approx((0.0, moved / math.sqrt(2), -moved / math.sqrt(2)), abs=1e-6)
    start, end = plan.shape.line.at(0.0), plan.shape.line.at(plan.shape.line.length)
    assert [v / INCH for v in (*start, *end)] == pytest.approx([0, -20, 0, 0, 0, 20], abs=1e-9)
    angle = math.pi - math.acos(
        paths.dot(*(paths.unit(paths.subtract(plan.shape.points[i], plan.shape.points[1])) for i in (0, 2)))
    )
    assert value(plan, "bend_angle") == pytest.approx(math.degrees(angle), abs=1e-6)


def test_movement_that_is_stated_is_cleared_too():
    still, rocked = (
        corner(pipe(3, "1-7/8 in")),
        corner(pipe(3, "1-7/8 in", moves=[{"right": "1/16 in", "down": "1/16 in"}])),
    )
    assert value(rocked, "apex_moved") > value(still, "apex_moved") + 0.05
    assert [c.result for c in rocked.sheet.checks if c.name == "gap to pipe"] == [OK]
    assert brute_gap(rocked, (-3 + 1 / 16, 3 - 1 / 16)) == pytest.approx(1.875, abs=0.03 / 25.4)


def test_both_tops_of_a_kick_up_go_out_alike_over_a_wide_thing():
    plan = kick_up()
    assert plan.shape is not None
    assert plan.shape.points is not None
    assert plan.shape.regained[0].apexes == (3, 4)
    heights = [p[2] / INCH for p in plan.shape.points]
    assert heights[2] == pytest.approx(heights[3])
    assert heights[2] > 6.01
    assert [b.angle for b in plan.shape.stick.bends] == pytest.approx([plan.shape.stick.bends[0].angle] * 4)  # type: ignore[union-attr]
    assert [c.result for c in plan.sheet.checks if c.name == "gap to box"] == [OK]


@pytest.mark.parametrize(
    ("thing", "result"),
    [
        (pipe(3, "2-1/8 in"), NOT_OK),  # sharp corners have 2 in only: the layout itself is short
        (pipe(3, "1/2 in"), OK),  # the arc leaves 0.757 in, which is enough
    ],
)
def test_apexes_stay_where_the_arc_is_not_what_is_wrong(thing, result):
    plan = corner(thing)
    assert plan.shape is not None
    assert plan.shape.regained == ()
    assert [c.result for c in plan.sheet.checks if c.name == "gap to pipe"] == [result]
    assert value(plan, "bend_angle") == pytest.approx(90)


def test_without_a_gap_asked_the_cost_is_told_and_nothing_moves():
    plan = corner({k: v for k, v in pipe(3).items() if k != "gap"})
    assert plan.shape is not None
    assert plan.shape.regained == ()
    assert value(plan, "gap_cost") == pytest.approx(2 - (5 - 3 * math.sqrt(2)), abs=1e-3)


def test_straights_and_angles_and_a_bent_rod_stay_as_given():
    place = {"start": ["0 in", "-20 in", "0 in"], "runs": "right", "bends": "up"}
    rod = {"lengths": ["20 in", "20 in"], "angles": ["90 deg"]}
    for shape in ({"template": rod}, {"bends": [{"straight": "14 in", "angle": "90 deg"}], "end": "14 in"}):
        plan = work_out({**TUBE, **shape, "place": place, "obstacles": [pipe(3)]})
        assert plan.shape is not None
        assert plan.shape.regained == ()
        assert [c.result for c in plan.sheet.checks if c.name == "gap to pipe"] == [NOT_OK]


def test_a_moved_shape_rests_on_what_moved_it():
    plan = corner(pipe(3))
    angle = next(f for f in plan.sheet.figures if f.quantity == "bend_angle")
    assert any(part.quantity == "gap_asked" for part in angle.walk())


def test_a_pipe_that_runs_askew_is_drawn_with_its_letter():
    askew = {"name": "exhaust", "od": "2 in", "points": [["-20 in", "-8 in", "4 in"], ["20 in", "2 in", "9 in"]]}
    plan = work_out({**TUBE, "points": CORNER, "obstacles": [askew]}, draw=True)
    svg = next(d.svg for d in plan.sheet.drawings if d.title.endswith("finished tube"))
    assert "not drawn" not in svg
    assert ">exhaust<" in svg
    assert ">A<" in svg
    road = {"name": "road", "plane": {"point": ["0 in", "0 in", "-9 in"], "free": "up"}}
    plan = work_out({**TUBE, "points": CORNER, "obstacles": [road]}, draw=True)
    assert "not drawn: road" in next(d.svg for d in plan.sheet.drawings if d.title.endswith("finished tube"))
