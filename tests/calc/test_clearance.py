"""Least gaps against brute force over points of the same paths, within the bound each answer states."""

from __future__ import annotations

import math

import numpy as np
import pytest

from gaugeblock.calc import bounded, nearest
from gaugeblock.calc import clearance as c
from gaugeblock.calc import path as p

PI = math.pi


def _line(rng, bends, spread=0.6):
    rows = [
        p.Bend(
            rng.uniform(0.02, 0.3), rng.uniform(-PI, PI) if i else 0.0, rng.uniform(0.1, 3.0), rng.uniform(0.03, 0.2)
        )
        for i in range(bends)
    ]
    heading = p.unit(tuple(rng.normal(size=3).tolist()))
    return p.path(
        p.Stick(rows, rng.uniform(0.05, 0.3)),
        p.Pose(tuple(rng.uniform(-spread, spread, 3).tolist()), heading, p.square_to(heading)),
    )


def _points(line, low, high, count):
    return np.array([line.at(x) for x in np.linspace(max(low, 0.0), min(high, line.length), count)])


def _brute(a, b, low=(0, 0, 0), high=(0, 0, 0)):
    """Least distance of two paths when b may move in a box, by points; finer round the best five times. Never under
    the truth.
    """
    spans = [0.0, a.length, 0.0, b.length]
    best = math.inf
    for _ in range(6):
        p_a, p_b = _points(a, *spans[:2], 300), _points(b, *spans[2:], 300)
        z = p_a[:, None] - p_b[None]
        far = np.linalg.norm(z - np.clip(z, low, high), axis=2)
        i, j = np.unravel_index(far.argmin(), far.shape)
        best = min(best, far[i, j])
        for k, index in ((0, i), (2, j)):
            step = (spans[k + 1] - spans[k]) / 299
            middle = max(spans[k], 0.0) + index * step
            spans[k], spans[k + 1] = max(0.0, middle - 4 * step), min((a, b)[k // 2].length, middle + 4 * step)
    return best


def test_gaps_of_tubes_equal_brute_force_within_their_bound():
    rng = np.random.default_rng(4)
    for _ in range(60):
        a, b = _line(rng, int(rng.integers(0, 5))), _line(rng, int(rng.integers(0, 5)))
        (got,) = c.tube_gaps([c.Tube("a", a, 0.02), c.Tube("b", b, 0.01)])
        true = _brute(a, b) - 0.03
        assert got.low <= true + 1e-12
        assert got.gap <= true + 1.01e-5
        assert got.gap - got.low <= 1.0001e-5
        assert min(math.dist(got.at, q) for q in _points(a, 0, a.length, 4000)) < 1e-3
        reached = min(math.dist(got.at, q) for q in _points(b, 0, b.length, 4000)) - 0.03
        assert reached - 1e-3 < got.gap < reached + 1.01e-5


def test_gaps_of_moving_tubes_equal_brute_force_within_their_bound():
    rng = np.random.default_rng(5)
    for _ in range(40):
        a, b = _line(rng, int(rng.integers(0, 4))), _line(rng, int(rng.integers(0, 4)))
        reach = rng.uniform(0, 0.08, 6) * rng.integers(0, 2, 6)
        names = ("forward", "rearward", "left", "right", "down", "up")
        moves = c.Moves(**dict(zip(names, reach.tolist(), strict=True)))
        (got,) = c.tube_gaps([c.Tube("a", a, 0.0), c.Tube("b", b, 0.0, moves=moves)])
        true = _brute(a, b, moves.low, moves.high)
        assert got.low <= true + 1e-12
        assert got.gap <= true + 1.01e-5
        assert got.gap > true - 1e-3  # reached by points of the paths
        (swapped,) = c.tube_gaps([c.Tube("b", b, 0.0, moves=moves), c.Tube("a", a, 0.0)])
        assert swapped.gap == pytest.approx(got.gap, abs=2e-5)


@pytest.mark.parametrize(
    ("q0", "q1", "expected"),
    [
        ((0, 0, 0.1), (1, 0, 0.1), 0.1),  # parallel, side by side
        ((1.3, 0, 0), (2, 0, 0), 0.3),  # in line, apart
        ((0.5, 0, 0), (0.7, 0, 0), 0.0),  # one in the other
        ((0.5, -1, 0.2), (0.5, 1, 0.2), 0.2),  # crossing
        ((1.3, 0.4, 0), (1.3, 2, 0), 0.5),  # end to end
    ],
)
def test_straight_pipes_in_known_places(q0, q1, expected):
    (got,) = c.tube_gaps([c.straight_pipe("a", (0, 0, 0), (1, 0, 0), 0.02), c.straight_pipe("b", q0, q1, 0.03)])
    assert got.gap == pytest.approx(expected - 0.05, abs=1e-9)


@pytest.mark.parametrize("angle", [0.0, 0.7, PI / 2, 2.5, PI, -2.2])
def test_a_collar_keeps_its_distance_from_a_wall_whichever_way_that_faces(angle):
    line = c.straight_pipe("pipe", (0.3, -0.2, -1), (0.3, -0.2, 1), 0.02).path
    flanged = c.Tube("pipe", line, 0.02, [(1.0, 0.01, 0.05)])
    ahead, across = math.cos(angle), math.sin(angle)
    wall = c.Plane("wall", (0.3 - 0.4 * ahead, -0.2 - 0.4 * across, 3.0), (ahead, across, 0))
    (got,) = c.obstacle_gaps([flanged], [wall])
    assert (got.what, got.gap) == ("collar", pytest.approx(0.35, abs=1e-9))


def test_concentric_bends_keep_their_distance_all_along():
    tubes = []
    for name, radius in (("inner", 0.1), ("outer", 0.16)):
        stick = p.Stick([p.Bend(0.2, 0.0, PI / 2, radius)], 0.2)
        tubes.append(c.Tube(name, p.path(stick, p.Pose((0, -radius, 0), (1, 0, 0), (0, 0, 1))), 0.02))
    (got,) = c.tube_gaps(tubes)
    assert got.low <= 0.02 <= got.gap + 1e-9
    assert got.gap == pytest.approx(0.02, abs=1e-5)


def _clamp_box(points, box):
    turn = np.array(box.axes)
    local = (points - np.array(box.centre)) @ turn.T
    return np.linalg.norm(local - np.clip(local, -np.array(box.half), box.half), axis=-1)


def _askew(rng):
    first = p.unit(tuple(rng.normal(size=3).tolist()))
    second = p.square_to(first)
    return (first, second, p.cross(first, second))


def test_gaps_from_boxes_and_planes_equal_brute_force():
    rng = np.random.default_rng(6)
    seen = 0
    for _ in range(40):
        line = _line(rng, int(rng.integers(0, 4)))
        box = c.Box(
            "box", tuple(rng.uniform(-1, 1, 3).tolist()), tuple(rng.uniform(0.02, 0.2, 3).tolist()), _askew(rng)
        )
        plane = c.Plane("road", (0, 0, -3), tuple(rng.normal(size=3).tolist()))
        points = _points(line, 0, line.length, 4000)
        step = line.length / 3999
        got = c.obstacle_gaps([c.Tube("t", line, 0.02)], [box, plane])
        apart = _clamp_box(points, box).min()
        if apart > 0:
            seen += 1
            assert got[0].low <= apart - 0.02
            assert apart - step / 2 - 0.02 <= got[0].gap <= apart - 0.02 + 1.01e-5
        else:
            assert got[0].gap < 0
        level = ((points - np.array(plane.point)) @ np.array(plane.normal)).min() - 0.02
        assert got[1].low <= level
        assert level - step / 2 <= got[1].gap <= level + 1.01e-5
    assert seen > 20


def test_a_box_in_vehicle_axes_meets_its_movement_exactly():
    pipe = c.straight_pipe("pipe", (-1, 0, 0), (1, 0, 0), 0.02)
    engine = c.Box("engine", (0, 0, 0.5), (0.2, 0.2, 0.3), moves=c.Moves(down=0.05, left=0.3, up=1.0))
    (got,) = c.obstacle_gaps([pipe], [engine])
    assert got.gap == pytest.approx(0.2 - 0.05 - 0.02, abs=1e-9)
    (road,) = c.obstacle_gaps([pipe], [c.Plane("road", (0, 0, -0.3), (0, 0, 1), c.Moves(up=0.1, down=0.2))])
    assert road.gap == pytest.approx(0.3 - 0.1 - 0.02, abs=1e-9)


def test_a_body_round_its_movement_reaches_as_much_further_as_it_moves():
    low, high = (-0.1, -0.2, -0.3), (0.4, 0.5, 0.7)
    box = c.Box("box", (1.0, 2.0, 3.0), (0.1, 0.2, 0.3))
    grown = box.grown(low, high)
    for axis in range(3):
        way = tuple(float(axis == k) for k in range(3))
        back = tuple(-x for x in way)
        assert grown.support(way) == pytest.approx(box.support(way) + high[axis])
        assert grown.support(back) == pytest.approx(box.support(back) - low[axis])
    cylinder = c.Cylinder((1.0, 2.0, 3.0), (0, 0, 1), 0.01, 0.05)
    wide = cylinder.grown(low, high)
    assert wide.centre == pytest.approx(grown.centre)
    assert wide.support((0, 0, 1)) == pytest.approx(cylinder.support((0, 0, 1)) + 0.7)
    assert wide.radius == pytest.approx(0.05 + 0.25 + 0.35)
    floor = c.Plane("floor", (0, 0, 1.0), (0, 0, 2)).grown(low, high)
    assert (floor.point, floor.normal) == ((0, 0, 1.7), (0, 0, 1.0))
    lean = c.Plane("wall", (0, 0, 0), (-1, 1, 0)).grown(low, high)
    assert c.dot(lean.point, lean.normal) == pytest.approx((0.1 + 0.5) / math.sqrt(2))


def test_how_far_two_parts_may_come_nearer_is_what_each_may_move():
    one = c.Moves(forward=0.1, rearward=0.2, left=0.3, right=0.4, down=0.5, up=0.6)
    two = c.Moves(forward=0.01, rearward=0.02, left=0.03, right=0.04, down=0.05, up=0.06)
    assert (one.low, one.high) == ((-0.1, -0.3, -0.5), (0.2, 0.4, 0.6))
    low, high = c._relative(one, two)
    assert low == pytest.approx((-0.21, -0.43, -0.65))
    assert high == pytest.approx((0.12, 0.34, 0.56))


def test_movement_counts_by_its_direction_only():
    pipe = c.straight_pipe("pipe", (-1, 0, 0), (1, 0, 0), 0.02)
    for moves, gap in ((c.Moves(down=0.03), 0.03), (c.Moves(up=0.03), 0.06), (c.Moves(left=0.2, right=0.2), 0.06)):
        (got,) = c.tube_gaps([pipe, c.straight_pipe("rocks", (0, -1, 0.1), (0, 1, 0.1), 0.02, moves)])
        assert got.gap == pytest.approx(gap, abs=1e-9)


def test_parts_of_one_group_move_together():
    rock = c.Moves(down=0.05, up=0.05, group="engine")
    pair = [
        c.straight_pipe("a", (-1, 0, 0), (1, 0, 0), 0.02, rock),
        c.straight_pipe("b", (0, -1, 0.1), (0, 1, 0.1), 0.02, rock),
    ]
    assert c.tube_gaps(pair)[0].gap == pytest.approx(0.06)
    pair[1].moves = c.Moves(down=0.05, up=0.05, group="body")
    assert c.tube_gaps(pair)[0].gap == pytest.approx(-0.04, abs=1e-9)


def test_a_flange_wider_than_its_pipe_counts():
    plain = c.straight_pipe("plain", (-1, 0, 0), (1, 0, 0), 0.02)
    flanged = c.straight_pipe("flanged", (-1, 0, 0.2), (1, 0, 0.2), 0.03)
    assert c.tube_gaps([plain, flanged])[0].gap == pytest.approx(0.15)
    flanged.collars = ((1.0, 0.012, 0.06),)
    (got,) = c.tube_gaps([plain, flanged])
    assert got.gap == pytest.approx(0.12, abs=1e-9)
    assert got.what == "tube to collar"
    plain.collars = ((0.5, 0.02, 0.05),)  # half a metre along: its rim is nearer to the pipe than to the other flange
    assert c.tube_gaps([plain, flanged])[0].gap == pytest.approx(0.12, abs=1e-9)
    plain.collars = ((1.0, 0.02, 0.05),)
    (got,) = c.tube_gaps([plain, flanged])
    assert got.what == "collar to collar"
    assert got.gap == pytest.approx(0.2 - 0.06 - 0.05, abs=2e-5)
    (box,) = c.obstacle_gaps([flanged], [c.Box("box", (0, 0, 0.5), (0.1, 0.1, 0.1))])
    assert (box.what, box.gap) == ("collar", pytest.approx(0.3 - 0.06 - 0.1, abs=2e-5))
    (road,) = c.obstacle_gaps([flanged], [c.Plane("road", (0, 0, 0), (0, 0, 1))])
    assert (road.what, road.gap) == ("collar", pytest.approx(0.14))


def test_collars_equal_brute_force():
    rng = np.random.default_rng(8)
    for _ in range(25):
        heads = [p.unit(tuple(rng.normal(size=3).tolist())) for _ in range(2)]
        one = c.Cylinder((0, 0, 0), heads[0], 0.01, 0.05)
        two = c.Cylinder(tuple(rng.uniform(0.06, 0.2, 3).tolist()), heads[1], 0.02, 0.04)
        gap, low, _ = c._solid_gap(one, two)
        # points of one's surface against the clamp of two, written out again
        spin, high = np.meshgrid(np.linspace(0, 2 * PI, 400), np.linspace(-0.01, 0.01, 9))
        u = np.array(p.square_to(one.axis))
        v = np.cross(one.axis, u)
        rings = [
            r * (np.cos(spin)[..., None] * u + np.sin(spin)[..., None] * v) + high[..., None] * np.array(one.axis)
            for r in np.linspace(0, 0.05, 21)
        ]
        z = np.concatenate([r.reshape(-1, 3) for r in rings]) - np.array(two.centre)
        along = z @ np.array(two.axis)
        across = np.linalg.norm(z - along[:, None] * np.array(two.axis), axis=1)
        true = np.hypot(np.maximum(across - 0.04, 0), np.maximum(np.abs(along) - 0.02, 0)).min()
        assert low <= true + 1e-9
        assert gap <= true + 1e-4
        assert true <= gap + 2e-3  # the points stand 2.5 mm apart on one's faces


def test_a_collar_that_moves_grows_along_its_axis_by_the_way_along_it_and_in_width_by_the_way_across():
    collar = c.Cylinder((1.0, 2.0, 3.0), (0, 0, 1), 0.01, 0.05)
    along = collar.grown((0, 0, -0.1), (0, 0, 0.3))
    assert (along.half, along.radius) == pytest.approx((0.21, 0.05), abs=1e-12)
    assert along.centre == pytest.approx((1.0, 2.0, 3.1))
    across = collar.grown((-0.2, 0, 0), (0.1, 0, 0))
    assert (across.half, across.radius) == pytest.approx((0.01, 0.2), abs=1e-12)
    assert across.centre == pytest.approx((0.95, 2.0, 3.0))


def test_many_pairs_at_once_have_the_gaps_that_they_have_one_by_one():
    """Both are within the tolerance over the truth: moving, bent, crossing, in line and touching, in one call."""
    rng = np.random.default_rng(2)
    tolerance = 1e-5
    still = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.0))
    curves, boxes = [], []
    for _ in range(150):
        curves += [(_line(rng, int(rng.integers(0, 3)), 0.3), 0.0), (_line(rng, int(rng.integers(0, 3)), 0.3), 0.0)]
        reach = rng.uniform(0, 0.3, 6) * rng.integers(0, 2, 6)
        boxes.append((tuple((-reach[:3]).tolist()), tuple(reach[3:].tolist())))
    for q0, q1 in (
        ((0.5, -1, 0), (0.5, 1, 0)),
        ((0.3, 0, 0), (0.6, 0, 0)),
        ((1, 0, 0), (2, 0, 0)),
        ((2, 0, 0), (3, 0, 0)),
    ):
        curves += [(c.straight_pipe("a", (0, 0, 0), (1, 0, 0), 0.0).path, 0.0)]
        curves += [(c.straight_pipe("b", q0, q1, 0.0).path, 0.0)]
        boxes.append(((-0.1, 0.0, -0.1), (0.1, 0.0, 0.1)) if q0[0] < 2 else still)
    pairs = [(2 * n, 2 * n + 1) for n in range(len(boxes))]
    every = nearest.curve_pairs(curves, pairs, tolerance, boxes)
    for (i, j), box, (gap, _, _) in zip(pairs, boxes, every, strict=True):
        assert gap == pytest.approx(bounded.curve_pair(curves[i], curves[j], tolerance, box)[0], abs=1.01 * tolerance)
    assert [gap for gap, _, _ in every[-4:]] == pytest.approx([0.0, 0.0, 0.0, 1.0], abs=1e-9)


def test_a_box_taken_out_is_met_along_its_way():
    box = c.Box("gearbox", (0, 0, 0), (0.3, 0.15, 0.2))
    below = c.straight_pipe("pipe", (1.0, -1, -0.25), (1.0, 1, -0.25), 0.02)
    (stands,) = c.obstacle_gaps([below], [box])
    assert stands.gap == pytest.approx(math.hypot(0.7, 0.05) - 0.02, abs=1e-6)
    (out,) = c.taken_out(box, (2.0, 0, 0), [below])
    assert out.gap == pytest.approx(0.05 - 0.02, abs=1e-6)
    (down,) = c.taken_out(box, (2.0, 0, -0.5), [below])
    assert down.gap < 0
    below.collars = ((1.0, 0.02, 0.04),)
    (flange,) = c.taken_out(box, (2.0, 0, 0), [below])
    assert flange.what == "collar"
    assert flange.gap == pytest.approx(0.01, abs=1e-4)
    assert flange.low == pytest.approx(0.01 - 2.0 / 400, abs=1e-4)


def test_a_box_taken_out_equals_brute_force():
    rng = np.random.default_rng(9)
    for _ in range(12):
        line = _line(rng, 3)
        box = c.Box(
            "box", tuple(rng.uniform(-1, 1, 3).tolist()), tuple(rng.uniform(0.02, 0.1, 3).tolist()), _askew(rng)
        )
        travel = rng.uniform(-0.5, 0.5, 3)
        (got,) = c.taken_out(box, tuple(travel.tolist()), [c.Tube("t", line, 0.01)])
        points = _points(line, 0, line.length, 1000)
        apart = min(_clamp_box(points - w * travel, box).min() for w in np.linspace(0, 1, 201))
        if apart > 0:
            assert got.low <= apart - 0.01
            assert apart - 0.01 - line.length / 999 / 2 - np.linalg.norm(travel) / 400 <= got.gap <= apart - 0.01 + 1e-4


def test_bodies_that_make_no_sense_are_refused():
    with pytest.raises(ValueError, match="movement"):
        c.Moves(up=-0.1)
    with pytest.raises(ValueError, match="square"):
        c.Box("b", (0, 0, 0), (1, 1, 1), ((1, 0, 0), (1, 1, 0), (0, 0, 1)))


@pytest.mark.parametrize("away", [(0.3, 0.0, 0.2), (0.0, 0.25, -0.4), (0.2, 0.3, 0.4), (-0.1, 0.0, 0.5)])
def test_the_least_gap_of_two_solids_comes_up_to_the_gap_that_is_found(away: tuple[float, float, float]) -> None:
    """Two solids apart in height too: the plane between them bounds the gap from below, and closes on it."""
    disc = c.Cylinder((0.0, 0.0, 0.0), (0.0, 0.0, 1.0), 0.005, 0.03)
    box = c.Box("box", away, (0.02, 0.03, 0.01))
    high, low, _ = c._solid_gap(disc, box)
    assert low == pytest.approx(high, abs=2 * c.TOLERANCE)
    assert 0 < low <= high * (1 + 1e-12)
