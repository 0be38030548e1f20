"""Bent centre lines: against a second implementation made of 4 x 4 matrices, and by their symmetries."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gaugeblock.calc import path as p
from gaugeblock.calc import shapes

PI = math.pi


def _matrices(straights, turns, angles, radii):
    """Second implementation: a frame (x ahead, z bend axis) carried by 4 x 4 matrices over n sticks of k bends at once.

    Gives the tangent points (n, k, 2, 3), apexes (n, k, 3), and the end (n, 3). Shares no code with the package.
    """
    n, k = angles.shape
    frame = np.tile(np.eye(4), (n, 1, 1))

    def move(x, y):
        m = np.tile(np.eye(4), (n, 1, 1))
        m[:, 0, 3], m[:, 1, 3] = x, y
        return m

    def spin(angle, i, j):
        m = np.tile(np.eye(4), (n, 1, 1))
        m[:, i, i] = m[:, j, j] = np.cos(angle)
        m[:, i, j], m[:, j, i] = -np.sin(angle), np.sin(angle)
        return m

    tangents, apexes = np.empty((n, k, 2, 3)), np.empty((n, k, 3))
    for b in range(k):
        frame = frame @ spin(turns[:, b], 1, 2) @ move(straights[:, b], 0.0)
        tangents[:, b, 0] = frame[:, :3, 3]
        apexes[:, b] = (frame @ move(radii[:, b] * np.tan(angles[:, b] / 2), 0.0))[:, :3, 3]
        frame = frame @ move(0.0, radii[:, b]) @ spin(angles[:, b], 0, 1) @ move(0.0, -radii[:, b])
        tangents[:, b, 1] = frame[:, :3, 3]
    return tangents, apexes, (frame @ move(straights[:, k], 0.0))[:, :3, 3]


def _random(n, k, seed):
    rng = np.random.default_rng(seed)
    turns = rng.uniform(-PI, PI, (n, k))
    turns[:, 0] = 0.0
    return rng.uniform(0.01, 2.0, (n, k + 1)), turns, rng.uniform(0.02, 3.0, (n, k)), rng.uniform(0.01, 0.4, (n, k))


POSE = p.Pose((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0))


def test_twenty_thousand_random_sticks_agree_with_matrices_both_ways():
    for k in range(1, 9):
        straights, turns, angles, radii = _random(2500, k, k)
        tangents, apexes, ends = _matrices(straights, turns, angles, radii)
        starts = np.zeros((2500, 1, 3))
        all_points = np.concatenate([starts, apexes, ends[:, None]], axis=1)
        size = 1.0 + np.abs(all_points).max(axis=(1, 2))
        got_tangents, got_back, got_length = [], [], []
        for i, points in enumerate(all_points.tolist()):
            bends = map(p.Bend, straights[i].tolist(), turns[i].tolist(), angles[i].tolist(), radii[i].tolist())
            line = p.path(p.Stick(bends, straights[i, k].item()), POSE)
            got_tangents.append([[part.at(0.0), part.at(part.length)] for part in line.parts[1::2]])
            stick, pose = p.from_points([tuple(q) for q in points], radii[i].tolist())
            assert pose.origin == (0.0, 0.0, 0.0)
            got_back.append(
                [[b.straight for b in stick.bends], [b.turn for b in stick.bends], [b.angle for b in stick.bends]]
            )
            got_length.append(stick.developed_length)
        assert (np.abs(np.array(got_tangents) - tangents).max(axis=(1, 2, 3)) < 1e-11 * size).all()
        back = np.array(got_back)
        # an apex at 3 rad stands 14 radii off, so its points carry its size in rounding; turns are compared on the
        # circle
        assert (np.abs(back[:, 0] - straights[:, :k]) < 1e-11 * size[:, None]).all()
        assert (np.abs(back[:, 2] - angles) < 1e-11 * size[:, None]).all()
        spun = np.abs(np.exp(1j * back[:, 1]) - np.exp(1j * turns))
        assert (spun < 1e-9 * size[:, None]).all()
        total = straights.sum(axis=1) + (radii * angles).sum(axis=1)
        assert (np.abs(np.array(got_length) - total) < 1e-11 * size).all()


lengths = st.floats(0.2, 3.0)
coordinates = st.floats(-2.0, 2.0)
vectors = st.tuples(coordinates, coordinates, coordinates)


@st.composite
def point_lists(draw):
    """Apexes that a tube of 1 mm radius can follow: legs of 10 mm or more that do not fold back."""
    points = [draw(vectors)]
    points += draw(st.lists(vectors, min_size=1, max_size=6))
    for a, b in pairwise(points):
        if math.dist(a, b) < 0.01:
            points.remove(b)
    return points


def _bent(points):
    try:
        return p.from_points(points, 0.001)
    except ValueError:
        return None


@given(point_lists())
@settings(max_examples=300)
def test_points_to_stick_to_points_comes_back(points):
    got = _bent(points)
    if got is None:
        return
    back = p.to_points(*got)
    assert max(math.dist(a, b) for a, b in zip(points, back, strict=True)) < 1e-9


@given(point_lists())
def test_mirrored_shape_is_the_mirrored_stick(points):
    got = _bent(points)
    if got is None:
        return
    stick, _ = got
    other, _ = p.from_points([(-x, y, z) for x, y, z in points], 0.001)
    for a, b in zip(stick.mirrored().bends, other.bends, strict=True):
        assert (a.straight, a.angle) == pytest.approx((b.straight, b.angle), abs=1e-9)
        if min(a.angle, PI - a.angle) > 1e-5:
            assert math.cos(a.turn - b.turn) == pytest.approx(1.0, abs=1e-9)


@given(point_lists())
def test_reversed_tube_is_the_reversed_stick(points):
    got = _bent(points)
    if got is None or any(not 1e-4 < b.angle < PI - 1e-3 for b in got[0].bends):
        return
    stick, _ = got
    other, _ = p.from_points(points[::-1], 0.001)
    for a, b in zip(stick.reversed().bends, other.bends, strict=True):
        assert (a.straight, a.angle) == pytest.approx((b.straight, b.angle), abs=1e-9)
        assert math.cos(a.turn - b.turn) == pytest.approx(1.0, abs=1e-9)
    assert stick.reversed().reversed().straights == stick.straights
    assert [b.turn for b in stick.reversed().reversed().bends] == [b.turn for b in stick.bends]


@given(point_lists(), st.floats(-PI, PI), st.floats(-PI, PI), vectors)
def test_turning_and_moving_the_frame_changes_no_stick(points, a, b, shift):
    got = _bent(points)
    if got is None or any(not 1e-4 < bend.angle < PI - 1e-3 for bend in got[0].bends):
        return
    moved = [p.add(p.rotated(p.rotated(q, (0.0, 0.0, 1.0), a), (1.0, 0.0, 0.0), b), shift) for q in points]
    other, _ = p.from_points(moved, 0.001)
    for x, y in zip(got[0].bends, other.bends, strict=True):
        assert (x.straight, x.angle) == pytest.approx((y.straight, y.angle), abs=1e-9)
        assert math.cos(x.turn - y.turn) == pytest.approx(1.0, abs=1e-9)


sticks = st.lists(
    st.tuples(lengths, st.floats(-PI, PI), st.floats(0.0, PI), st.floats(0.01, 0.3)), min_size=1, max_size=6
)


@given(sticks, lengths)
@settings(max_examples=50)
def test_developed_length_is_the_integral_of_the_path(rows, end):
    stick = p.Stick((p.Bend(s, t if i else 0.0, a, r) for i, (s, t, a, r) in enumerate(rows)), end)
    line = p.path(stick)
    assert line.length == pytest.approx(stick.developed_length, rel=1e-12)
    # walk every part by its own heading (Gauss, 8 points): the integral lands where the path says it is
    nodes, weights = np.polynomial.legendre.leggauss(24)
    at, length = np.array(line.at(0.0)), 0.0
    for part in line.parts:
        places = (nodes + 1) / 2 * part.length
        heads = np.array([part.heading(x) for x in places])
        length += (np.linalg.norm(heads, axis=1) * weights).sum() / 2 * part.length
        at = at + (heads * weights[:, None]).sum(axis=0) / 2 * part.length
        assert np.abs(at - np.array(part.at(part.length))).max() < 1e-9
    assert length == pytest.approx(stick.developed_length, rel=1e-12)


@pytest.mark.parametrize("angle", [1e-13, 1e-9, 1e-7, 1e-4, PI - 1e-3])
def test_bends_near_nothing_and_near_a_fold_come_back(angle):
    points = [(0.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 1.0 + math.cos(angle), math.sin(angle)), (0.3, 2.0, 0.5)]
    stick, pose = p.from_points(points, 1e-6)
    assert stick.bends[0].angle == pytest.approx(angle if angle > 1e-12 else 0.0, rel=1e-6)
    assert max(math.dist(a, b) for a, b in zip(points, p.to_points(stick, pose), strict=True)) < 1e-9


def test_a_u_bend_has_a_path_and_no_apex():
    stick = p.Stick([p.Bend(1.0, 0.0, PI, 0.1)], 0.5)
    line = p.path(stick, POSE)
    assert line.at(line.length) == pytest.approx((0.5, 0.2, 0.0), abs=1e-12)
    with pytest.raises(ValueError, match="no apex"):
        p.to_points(stick)
    with pytest.raises(ValueError, match="folds back"):
        p.from_points([(0, 0, 0), (0, 1, 0), (0, 0.2, 0)], 0.01)


@pytest.mark.parametrize(
    "points", [[(0, 0, 0)], [(0, 0, 0), (0, 0, 0)], [(0, 0, 0), (0, math.nan, 0)], [(0, 0, 0), (0, math.inf, 0)]]
)
def test_points_that_are_no_tube_are_refused(points):
    with pytest.raises(ValueError, match=r"points"):
        p.from_points(points, 0.1)


def test_a_negative_straight_is_refused_with_the_largest_radius_that_fits():
    points = [(0, 0, 0), (0, 0.2, 0), (0, 0.2, 0.15), (0, 0.4, 0.15)]
    with pytest.raises(p.TooTightError) as caught:
        p.from_points(points, 0.1, needed=0.02)
    best = caught.value.largest_radius
    assert caught.value.number == 2
    assert caught.value.straight == pytest.approx(-0.05)
    stick, _ = p.from_points(points, best, needed=0.02)
    assert min(stick.straights) == pytest.approx(0.02)
    with pytest.raises(p.TooTightError):
        p.from_points(points, best * 1.001, needed=0.02)


@given(
    st.lists(st.tuples(st.floats(0.2, 0.6), st.floats(0.05, 1.5)), min_size=1, max_size=5),
    st.floats(0.3, 0.6),
    st.floats(0.0, 0.1),
)
def test_the_largest_radius_leaves_what_is_needed_and_no_more(legs, last, needed):
    """However little the bends turn: by that radius the shortest straight is just what is needed."""
    angles = [angle for _, angle in legs]
    points = shapes.template([*(length for length, _ in legs), last], angles, [0.0] * len(angles))
    best = p.largest_radius([*(length for length, _ in legs), last], angles, needed)
    stick, _ = p.from_points(points, best * (1 - 1e-12), needed=needed * (1 - 1e-9))
    assert min(stick.straights) == pytest.approx(needed, abs=1e-6)


def test_a_leg_shorter_than_what_is_needed_is_told_that_no_radius_fits():
    points = [(0, 0, 0), (0, 0.2, 0), (0, 0.2, 0.15), (0, 0.4, 0.15)]
    with pytest.raises(p.TooTightError, match=r"65\.00 mm or less would fit"):
        p.from_points(points, 0.1, needed=0.02)
    with pytest.raises(p.TooTightError, match="no radius would fit"):
        p.from_points(points, 0.1, needed=0.16)


def test_turns_are_clockwise_seen_from_the_start():
    # runs rearward, goes up, then to the right: seen from the start looking up along the second leg
    stick, _ = p.from_points([(0, 0, 0), (1, 0, 0), (1, 0, 1), (1, 1, 1)], 0.1)
    # bend 1 turns x to z about -y; bend 2 turns z to y about -x: from -y to -x about +z is a clockwise quarter
    assert stick.bends[1].turn == pytest.approx(-PI / 2)
    left, _ = p.from_points([(0, 0, 0), (1, 0, 0), (1, 0, 1), (1, -1, 1)], 0.1)
    assert left.bends[1].turn == pytest.approx(PI / 2)
    assert left.lines == pytest.approx((0.0, PI / 2))


def test_the_path_is_found_on_a_plane():
    stick, pose = p.from_points([(0, -0.6, 0), (0, -0.3, 0), (0, 0, 0.4), (0, 0.3, 0), (0, 0.6, 0)], 0.05)
    line = p.path(stick, pose)
    (middle,) = line.on_plane((0, 0, 0), (0, 1, 0))
    assert middle == pytest.approx(stick.developed_length / 2)
    heights = line.on_plane((0, 0, 0.1), (0, 0, 1))
    assert len(heights) == 2
    assert [line.at(x)[2] for x in heights] == pytest.approx([0.1, 0.1])


@given(sticks, lengths, vectors, st.floats(-1.5, 1.5))
@settings(max_examples=60, deadline=None)
def test_a_plane_is_met_where_the_height_over_it_changes_its_sign(rows, end, normal, height):
    assume(p.norm(normal) > 0.1)
    line = p.path(p.Stick((p.Bend(s, t if i else 0.0, a, r) for i, (s, t, a, r) in enumerate(rows)), end))
    n = p.unit(normal)
    point = (height * n[0], height * n[1], height * n[2])
    found = line.on_plane(point, normal)
    assert list(found) == sorted(found)
    assert [p.dot(line.at(x), n) for x in found] == pytest.approx([height] * len(found), abs=1e-9)
    places = np.linspace(0.0, line.length, 2000)
    over = np.array([p.dot(line.at(x), n) for x in places]) - height
    over[abs(over) < 1e-12] = 0  # where the line lies in the plane, as a height of 1e-81 m did, it changes no sign
    for i in np.flatnonzero(over[:-1] * over[1:] < 0):
        assert any(places[i] - 1e-9 <= x <= places[i + 1] + 1e-9 for x in found)


def test_a_plane_is_met_by_both_legs_of_a_u_by_its_back_alone_and_not_past_it():
    line = p.path(p.Stick([p.Bend(0.0, 0.0, PI, 0.1)], 0.0), POSE)
    assert line.on_plane((0.05, 0, 0), (1, 0, 0)) == pytest.approx((0.1 * PI / 6, 0.1 * 5 * PI / 6))
    assert line.on_plane((0, 0.15, 0), (0, -3, 0)) == pytest.approx((0.1 * 2 * PI / 3,))
    assert line.on_plane((0.11, 0, 0), (1, 0, 0)) == ()
    assert line.on_plane((0, 0, 0), (0, 0, 1)) == ()


# shapes


def test_a_shape_begins_at_nothing_and_has_the_straights_that_were_asked():
    def straights(points, radius):
        assert points[0] == (0.0, 0.0)
        stick, _ = p.from_points(shapes.place(points, (0, 0, 0), (0, 1, 0), (0, 0, 1)), radius)
        return stick

    bent = straights(shapes.single_bend(0.5, 0.4, 0.8), 0.1)
    back = 0.1 * math.tan(0.4)
    assert bent.straights == pytest.approx((0.5 - back, 0.4 - back))
    assert [b.angle for b in bent.bends] == pytest.approx([0.8])
    assert shapes.single_bend(0.5, 0.4, 0.8)[2][1] > 0  # up
    kicked = shapes.kick_up(0.25, 0.3, 0.7, 0.15, radius=0.1)
    assert straights(kicked, 0.1).straights[::2] == pytest.approx((0.15, 0.25, 0.15))
    assert shapes.kick_up_flat(kicked[-1][0], 0.3, 0.7, 0.15, radius=0.1) == pytest.approx(0.25)
    square = shapes.kick_up(0.25, 0.3, PI / 2, 0.15, radius=0.1)
    assert shapes.kick_up_flat(square[-1][0], 0.3, PI / 2, 0.15, radius=0.1) == pytest.approx(0.25)
    assert square[-1][0] == pytest.approx(0.25 + 2 * 0.15 + 4 * 0.1)
    up = shapes.offset(0.3, PI / 2, 0.2, 0.1, radius=0.1)
    assert [x for x, _ in up] == pytest.approx([0.0, 0.3, 0.3, 0.5])
    assert [y for _, y in up] == [0.0, 0.0, 0.3, 0.3]


@pytest.mark.parametrize(("make", "most"), [(shapes.offset, PI / 2), (shapes.saddle, PI / 4)], ids=["offset", "saddle"])
def test_an_angle_is_over_nothing_and_to_its_most_and_a_rise_over_nothing(make, most):
    make(0.5, most, 0.2, 0.1, radius=0.05)
    for angle in (0.0, -0.1, most * 1.001):
        with pytest.raises(ValueError, match=f"over 0 and at most {most * 180 / PI:.0f} degrees"):
            make(0.5, angle, 0.2, 0.1, radius=0.05)
    for rise in (0.0, -0.1):
        with pytest.raises(ValueError, match="more than nothing"):
            make(rise, most, 0.2, 0.1, radius=0.0)


def test_a_rise_too_small_is_told_with_its_leg_in_millimetres():
    with pytest.raises(shapes.RiseTooSmallError, match=r"straight 2 would be .* or a rise of 58\.58 mm or more") as low:
        shapes.offset(0.05, PI / 4, 0.1, 0.1, radius=0.1)
    assert low.value.smallest_rise == pytest.approx(0.2 * (1 - math.sqrt(0.5)))
    with pytest.raises(shapes.RiseTooSmallError, match="straight 4 would be"):
        shapes.kick_up(0.2, 0.3, 0.7, 0.1, radius=0.1, second_rise=0.01)
    with pytest.raises(shapes.RiseTooSmallError, match="straight 2 would be"):
        shapes.kick_up(0.2, 0.01, 0.7, 0.1, radius=0.1, second_rise=0.3)
    thing = shapes.Beneath(width=0.3, height=0.2, place=1.0)
    with pytest.raises(shapes.RiseTooSmallError, match="straight 4 would be"):
        shapes.clear_over(thing, span=2.0, gap=0.0, od=0.04, angle=0.8, radius=0.1, second_foot_height=0.21)


@pytest.mark.parametrize("bad", ["width", "round_radius", "up", "sideways"])
def test_what_is_beneath_has_no_negative_size(bad):
    ask = {"width": 0.0, "height": -0.1, "place": -1.0, "round_radius": 0.0, "up": 0.0, "sideways": 0.0}
    assert shapes.Beneath(**ask).height == -0.1
    with pytest.raises(ValueError, match="not negative"):
        shapes.Beneath(**(ask | {bad: -1e-9}))


def test_what_moves_beneath_is_cleared_wherever_it_stands():
    """A thing that moves is a thing that is higher and wider by its movement; what is narrow has its flat drawn out."""
    ask = {"span": 2.4, "gap": 0.01, "od": 0.04, "angle": 0.8, "radius": 0.1, "second_foot_height": 0.05}
    moved = shapes.clear_over(shapes.Beneath(width=0.2, height=0.2, place=1.1, up=0.03, sideways=0.04), **ask)
    grown = shapes.clear_over(shapes.Beneath(width=0.28, height=0.23, place=1.1), **ask)
    for name in shapes.Cleared.__slots__:
        assert np.ravel(getattr(moved, name)) == pytest.approx(np.ravel(getattr(grown, name))), name
    assert moved.rises == pytest.approx((0.26, 0.21))
    assert not moved.is_drawn_out
    assert moved.points[-1] == (2.4, 0.05)
    thin = shapes.clear_over(shapes.Beneath(width=0.0, height=0.2, place=1.1), needed=0.06, **ask)
    stick, _ = p.from_points(shapes.place(thin.points, (0, 0, 0), (0, 1, 0), (0, 0, 1)), 0.1)
    assert thin.is_drawn_out
    assert (stick.straights[2], thin.flat) == pytest.approx((0.06, 0.06))
    assert thin.feet == pytest.approx((stick.straights[0], stick.straights[4]))
    assert thin.points[2][0] - 1.1 == pytest.approx(1.1 - thin.points[3][0])
    assert thin.moved == pytest.approx(thin.points[3][0] - thin.sharp_points[3][0])
    wide = shapes.clear_over(shapes.Beneath(width=0.0, height=0.2, place=1.1, round_radius=0.2), **ask)
    assert (wide.cost, wide.moved) == (0.0, 0.0)
    assert wide.points == wide.sharp_points


def test_the_plane_of_a_tube_is_found_where_it_has_one():
    flat = [(0, 0, 0), (1, 0, 0), (1, 0, 1), (2, 0, 1.5)]
    assert shapes.plane_normal(flat) == pytest.approx((0.0, -1.0, 0.0))
    assert shapes.plane_normal([(0, 0, 0), (1, 0, 0), (3, 0, 0)]) is None
    assert shapes.plane_normal([(0, 0, 0), (1, 0, 0)]) is None
    with pytest.raises(ValueError, match="one plane"):
        shapes.plane_normal([*flat, (2, 0.01, 2)])


def test_a_template_has_one_angle_and_one_turn_a_bend():
    for lengths_, angles, turns in (([1.0, 1.0], [], []), ([1.0, 1.0], [0.5], []), ([1.0], [0.5], [0.0])):
        with pytest.raises(ValueError, match="one length more"):
            shapes.template(lengths_, angles, turns)


@given(st.floats(0.02, 0.6), st.floats(0.05, PI / 2), st.floats(0.02, 0.2), st.floats(0.0, 0.1))
def test_the_smallest_rise_just_fits(rise, angle, radius, needed):
    smallest = shapes.smallest_rise(angle, radius, needed)
    got = shapes.offset(smallest, angle, 0.1, 0.2, radius=radius, needed=needed)
    stick, _ = p.from_points(shapes.place(got, (0, 0, 0), (0, 1, 0), (0, 0, 1)), radius)
    assert stick.straights == pytest.approx((0.1, needed, 0.2), abs=1e-9)
    if rise < smallest * 0.999:
        with pytest.raises(shapes.RiseTooSmallError) as caught:
            shapes.offset(rise, angle, 0.1, 0.2, radius=radius, needed=needed)
        assert caught.value.smallest_rise == pytest.approx(smallest)
        fit = caught.value.largest_radius
        if fit > 0:
            assert shapes.offset_straight(rise, angle, fit) == pytest.approx(needed, abs=1e-9)


@given(st.floats(0.3, 0.5), st.floats(0.4, PI / 2), st.floats(0.02, 0.12), st.floats(0.35, 0.5), st.floats(0.4, 1.2))
def test_a_kick_up_measures_what_was_asked(rise, angle, radius, rise_2, angle_2):
    points = shapes.kick_up(
        0.25, rise, angle, 0.15, radius=radius, second_rise=rise_2, second_angle=angle_2, second_foot=0.2
    )
    stick, pose = p.from_points(shapes.place(points, (0, 0, 0), (0, 1, 0), (0, 0, 1)), radius)
    assert stick.straights[0] == pytest.approx(0.15)
    assert stick.straights[2] == pytest.approx(0.25)
    assert stick.straights[4] == pytest.approx(0.2)
    assert [b.angle for b in stick.bends] == pytest.approx([angle, angle, angle_2, angle_2])
    width = points[-1][0]
    assert shapes.kick_up_flat(width, rise, angle, 0.15, radius=radius, second=(rise_2, angle_2, 0.2)) == pytest.approx(
        0.25
    )
    assert p.to_points(stick, pose)[-1][2] == pytest.approx(rise - rise_2)


def test_a_saddle_lands_where_it_started():
    points = shapes.saddle(0.3, PI / 8, 0.2, 0.1, radius=0.1)
    stick, pose = p.from_points(shapes.place(points, (0, 0, 0), (1, 0, 0), (0, 0, 1)), 0.1)
    assert [b.angle for b in stick.bends] == pytest.approx([PI / 8, PI / 4, PI / 8])
    assert p.to_points(stick, pose)[-1][2] == pytest.approx(0.0, abs=1e-12)
    assert (stick.straights[0], stick.end) == pytest.approx((0.2, 0.1))
    with pytest.raises(shapes.RiseTooSmallError) as caught:
        shapes.saddle(0.01, PI / 8, 0.2, 0.1, radius=0.1, needed=0.05)
    shapes.saddle(caught.value.smallest_rise, PI / 8, 0.2, 0.1, radius=0.1, needed=0.05)


def test_a_flat_shape_stands_square_to_its_run_however_up_leans():
    for up in ((3.0, 5.0, 0.0), (-3.0, 5.0, 0.0), (0.0, 1.0, 0.0)):
        along, over = shapes.place([(2.0, 0.0), (0.0, 2.0)], (1.0, 1.0, 1.0), (4.0, 0.0, 0.0), up)
        assert along == pytest.approx((3.0, 1.0, 1.0))
        assert over == pytest.approx((1.0, 3.0, 1.0))


def test_the_largest_radius_of_a_saddle_just_fits():
    with pytest.raises(shapes.RiseTooSmallError) as caught:
        shapes.saddle(0.05, PI / 8, 0.2, 0.1, radius=0.3, needed=0.02)
    fit = caught.value.largest_radius
    assert 0 < fit < 0.3
    points = shapes.saddle(0.05, PI / 8, 0.2, 0.1, radius=fit * (1 - 1e-9), needed=0.02)
    stick, _ = p.from_points(shapes.place(points, (0, 0, 0), (1, 0, 0), (0, 0, 1)), fit)
    assert stick.straights[1] == pytest.approx(0.02, abs=1e-7)
    with pytest.raises(shapes.RiseTooSmallError):
        shapes.saddle(0.05, PI / 8, 0.2, 0.1, radius=fit * 1.001, needed=0.02)


def test_a_template_gives_its_own_lengths_angles_and_turns_back():
    points = shapes.template([0.3, 0.4, 0.5, 0.2], [0.5, 1.0, 0.7], [0.0, 1.2, -2.0])
    stick, _ = p.from_points(points, 1e-9)
    assert [b.angle for b in stick.bends] == pytest.approx([0.5, 1.0, 0.7])
    assert [b.turn for b in stick.bends] == pytest.approx([0.0, 1.2, -2.0])
    assert [math.dist(a, b) for a, b in pairwise(points)] == pytest.approx([0.3, 0.4, 0.5, 0.2])


def _least(points, radius, inside):
    """Brute force: least distance of a flat bent tube from points, by 3,000 chords (their sagitta is 4e-6 at most)."""
    stick, pose = p.from_points([(0.0, x, y) for x, y in points], radius)
    line = p.path(stick, pose)
    places = np.array([line.at(x)[1:] for x in np.linspace(0, line.length, 3001)])
    a, along = places[:-1], np.diff(places, axis=0)
    least = math.inf
    for q in inside:
        t = np.clip(((np.array(q) - a) * along).sum(axis=1) / (along**2).sum(axis=1), 0, 1)
        least = min(least, np.hypot(*(a + t[:, None] * along - np.array(q)).T).min())
    return least


@given(
    st.tuples(
        st.floats(0.0, 0.3),
        st.floats(0.15, 0.3),
        st.floats(0.005, 0.03),
        st.floats(0.5, PI / 2),
        st.floats(0.03, 0.13),
        st.floats(0.0, 0.06),
    )
)
@settings(max_examples=60, deadline=None)
def test_the_gap_asked_for_comes_back_after_the_arcs_cut_the_corner(ask):
    width, height, gap, angle, radius, round_radius = ask
    od, place, span = 0.04, 1.4, 2.8  # room for the flattest slope on both sides
    assume(shapes.offset_straight(height + round_radius + gap + od / 2, angle, radius) > 0)
    thing = shapes.Beneath(width=width, height=height, place=place, round_radius=round_radius)
    got = shapes.clear_over(thing, span=span, gap=gap, od=od, angle=angle, radius=radius)
    corners = [(place - width / 2, height), (place + width / 2, height)]
    touch = round_radius + od / 2
    assert _least(got.points, radius, corners) - touch == pytest.approx(gap, abs=1e-5)
    if got.sharp_points[3][0] - got.sharp_points[2][0] > 2 * radius * math.tan(angle / 2):
        # past the corner itself the distance counts up again
        assert _least(got.sharp_points, radius, corners) == pytest.approx(abs(got.sharp_gap + touch), abs=1e-5)
    assert got.cost >= 0
    assert got.points[-1][0] == span


def test_the_cost_of_the_corner_is_said():
    # 1-3/4 tube over a 3 in pipe with half an inch, 45 degrees, a 6 in die; the reach is 2.875 in
    pipe = shapes.Beneath(width=0.0, height=4.0, place=16.0, round_radius=1.5)
    got = shapes.clear_over(pipe, span=32.0, gap=0.5, od=1.75, angle=PI / 4, radius=6.0)
    assert got.cost == pytest.approx((6.0 - 2.875) * (1 / math.cos(PI / 8) - 1))
    assert got.moved == pytest.approx((6.0 - 2.875) * math.tan(PI / 8))
    assert got.flat == pytest.approx(0.0, abs=1e-12)
    assert got.rises == (6.875, 6.875)


@pytest.mark.parametrize("bad", [{"gap": -1e-9}, {"span": 0.0}, {"od": 0.0}])
def test_a_kick_up_without_a_tube_or_a_span_is_refused(bad):
    ask = {"span": 2.0, "gap": 0.0, "od": 0.04, "angle": 0.8, "radius": 0.1}
    thing = shapes.Beneath(width=0.3, height=0.2, place=1.0)
    assert shapes.clear_over(thing, **ask).points[-1][0] == 2.0
    with pytest.raises(ValueError, match="more than nothing"):
        shapes.clear_over(thing, **(ask | bad))


def test_a_kick_up_that_does_not_land_is_refused_with_what_is_missing():
    ask = {"gap": 0.01, "od": 0.04, "angle": 0.8, "radius": 0.1, "foot_needed": 0.1}
    with pytest.raises(shapes.FootTooShortError) as caught:
        shapes.clear_over(shapes.Beneath(width=0.3, height=0.2, place=0.45), span=0.9, **ask)
    missing = caught.value.needed - caught.value.straight
    moved = shapes.Beneath(width=0.3, height=0.2, place=0.45 + missing)
    got = shapes.clear_over(moved, span=0.9 + 2 * missing, **ask)
    assert got.feet == pytest.approx((0.1, 0.1))


def test_arrays_give_what_scalars_give():
    rng = np.random.default_rng(1)
    rise, angle, radius = rng.uniform(0.1, 1, 100), rng.uniform(0.1, 1.5, 100), rng.uniform(0.01, 0.3, 100)
    rows = list(zip(rise.tolist(), angle.tolist(), radius.tolist(), strict=True))
    assert shapes.offset_straight(rise, angle, radius).tolist() == pytest.approx(
        [shapes.offset_straight(*r) for r in rows]
    )
    assert shapes.smallest_rise(angle, radius, rise).tolist() == pytest.approx(
        [shapes.smallest_rise(a, r, h) for h, a, r in rows]
    )
    assert shapes.offset_radius(rise, angle, radius).tolist() == pytest.approx(
        [shapes.offset_radius(h, a, r) for h, a, r in rows]
    )
    both = p.cut_length([rise, rise + 1, rise], [angle, angle], [radius, radius])
    one = [p.cut_length([h, h + 1, h], [a, a], [r, r]) for h, a, r in rows]
    assert both.tolist() == pytest.approx(one)
