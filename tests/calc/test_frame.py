"""Bent tubes as plane frames: equilibrium, symmetry, curved bars by theory, and a dense second implementation."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from gaugeblock.calc import frame, path, shapes

PI = math.pi
SECTION = frame.Section(0.0445, 0.003)
E = 200e9


def _kick_up(angle=0.7, rise=0.2):
    points = shapes.kick_up(0.3, rise, angle, 0.15, radius=0.12)
    stick, pose = path.from_points(shapes.place(points, (0, 0, 0), (0, 1, 0), (0, 0, 1)), 0.12)
    return path.path(stick, pose)


def _dense(nodes, feet, loads):
    """Second implementation: full matrices by numpy, each element by its rotation matrix."""
    n = len(nodes)
    big = np.zeros((3 * n, 3 * n))
    for i in range(n - 1):
        d = np.subtract(nodes[i + 1], nodes[i])
        length = np.hypot(*d)
        c, s = d / length
        turn = np.kron(np.eye(2), np.array([[c, s, 0], [-s, c, 0], [0, 0, 1]]))
        own = np.zeros((6, 6))
        own[np.ix_([0, 3], [0, 3])] = E * SECTION.area / length * np.array([[1, -1], [-1, 1]])
        bend = np.array(
            [
                [12, 6 * length, -12, 6 * length],
                [6 * length, 4 * length**2, -6 * length, 2 * length**2],
                [-12, -6 * length, 12, -6 * length],
                [6 * length, 2 * length**2, -6 * length, 4 * length**2],
            ]
        )
        own[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = E * SECTION.second / length**3 * bend
        big[3 * i : 3 * i + 6, 3 * i : 3 * i + 6] += turn.T @ own @ turn
    f = np.zeros(3 * n)
    for load in loads:
        f[3 * load.node : 3 * load.node + 3] += (load.along, load.up, load.moment)
    held = [3 * node + k for node, fix in feet.items() for k in range(3) if fix[k]]
    free = np.setdiff1d(np.arange(3 * n), held)
    u = np.zeros(3 * n)
    u[free] = np.linalg.solve(big[np.ix_(free, free)], f[free])
    return u.reshape(-1, 3), (big @ u - f).reshape(-1, 3)


@given(
    angle=st.floats(0.3, 1.3),
    rise=st.floats(0.15, 0.4),
    foot=st.sampled_from([frame.FIXED, frame.PINNED]),
    force=st.tuples(st.floats(-5e3, 5e3), st.floats(-5e3, 5e3), st.floats(-500, 500)),
)
# a load 0.1 mm from where a bend begins: an element that short beside one of 300 mm once left five digits
@example(angle=0.9140625, rise=0.2757298099683764, foot=frame.FIXED, force=(0.0, 0.0, 1.0))
@settings(max_examples=40, deadline=None)
def test_a_bent_frame_equals_dense_matrices_and_is_in_balance(angle, rise, foot, force):
    assume(shapes.offset_straight(rise, angle, 0.12) > 0)
    assume(any(force))
    line = _kick_up(angle, rise)
    nodes, (at,) = frame.nodes_of(line, (0, 1, 0), (0, 0, 1), [line.length * 0.4])
    loads = [frame.Load(at, *force)]
    feet = {0: foot, len(nodes) - 1: foot}
    got = frame.solve(nodes, SECTION, E, feet, loads)
    moves, reactions = _dense(nodes, feet, loads)
    size = np.abs(moves).max() + 1e-12
    assert np.abs(np.array(got.moves) - moves).max() < 1e-6 * size
    near = 1e-6 * max(map(abs, (*force, 1e-9)))  # of the load asked: what is left of 16 digits after 1 / length^3
    for node, r in got.reactions.items():
        assert np.array(r) == pytest.approx(reactions[node] * np.array(foot), rel=0, abs=near)
    total = np.array(list(got.reactions.values())).sum(axis=0)
    assert total[0] == pytest.approx(-force[0], abs=near)
    assert total[1] == pytest.approx(-force[1], abs=near)
    about = sum(m + x * fy - y * fx for n, (fx, fy, m) in got.reactions.items() for x, y in [nodes[n]])
    x, y = nodes[at]
    assert about + force[2] + x * force[1] - y * force[0] == pytest.approx(0.0, abs=near)


def test_a_symmetrical_load_gives_symmetrical_feet():
    line = _kick_up()
    nodes, (at,) = frame.nodes_of(line, (0, 1, 0), (0, 0, 1), [line.length / 2])
    got = frame.solve(
        nodes, SECTION, E, {0: frame.PINNED, len(nodes) - 1: frame.PINNED}, [frame.Load(at, up=-150 * 3 * 9.80665)]
    )
    first, last = got.reactions[0], got.reactions[len(nodes) - 1]
    assert first[1] == pytest.approx(last[1]) == pytest.approx(150 * 3 * 9.80665 / 2)
    assert first[0] == pytest.approx(-last[0])
    assert first[0] > 0  # the feet are pushed apart and hold it together
    assert got.sag == pytest.approx(math.hypot(*got.moves[at][:2]))
    assert got.stress > got.bending_stress > 0


@given(share=st.floats(0.05, 0.95), span=st.floats(0.3, 2.0))
def test_the_greatest_deflection_is_found_between_nodes_too(share, span):
    """A beam on two supports under one load off its middle: F b (L^2 - b^2)^1.5 / (9 sqrt 3 L E I), b the shorter
    part.
    """
    near, force = min(share, 1 - share) * span, 1000.0
    nodes = [(0.0, 0.0), (share * span, 0.0), (span, 0.0)]
    got = frame.solve(nodes, SECTION, E, {0: frame.PINNED, 2: frame.SLIDING}, [frame.Load(1, up=-force)])
    known = force * near * (span**2 - near**2) ** 1.5 / (9 * 3**0.5 * span * E * SECTION.second)
    assert got.sag == pytest.approx(known, rel=1e-6)


@given(share=st.floats(0.05, 0.95), span=st.floats(0.3, 2.0))
def test_a_beam_sags_alike_on_both_sides_of_its_load_and_not_at_all_at_its_ends(share, span):
    """Moments by statics: F a b / L under the load, nothing at a pinned end; a beam that sags counts positive."""
    nodes = [(0.0, 0.0), (share * span, 0.0), (span, 0.0)]
    got = frame.solve(nodes, SECTION, E, {0: frame.PINNED, 2: frame.SLIDING}, [frame.Load(1, up=-1000.0)])
    (_, first, left), (_, right, last) = got.forces
    most = 1000.0 * share * (1 - share) * span
    assert (left, right) == pytest.approx((most, most), rel=1e-6)
    assert (first, last) == pytest.approx((0.0, 0.0), abs=1e-6 * most)
    assert (got.moment, got.moment_node) == (pytest.approx(most, rel=1e-6), 1)


def test_a_quarter_circle_cantilever_bends_as_theory_says():
    # tip load P along the radius at the tip of a thin quarter ring (Castigliano, bending alone):
    # pi P R^3 / 4 E I its own way, P R^3 / 2 E I across
    radius, p = 0.5, 100.0
    count = 400
    nodes = [(radius * math.sin(a), radius * math.cos(a)) for a in (PI / 2 * i / count for i in range(count + 1))]
    got = frame.solve(nodes, SECTION, E, {0: frame.FIXED}, [frame.Load(count, along=-p)])
    ei = E * SECTION.second
    along, up, _ = got.moves[count]
    # wider than the discretisation: the stretch of the ring adds I / (A R^2) of the whole, 0.2 %
    assert -along == pytest.approx(PI * p * radius**3 / (4 * ei), rel=3e-3)
    assert abs(up) == pytest.approx(p * radius**3 / (2 * ei), rel=5e-3)
    # 400 elements a millimetre or two long: rounding of their stiffness leaves some 1e-8
    assert got.moment == pytest.approx(p * radius, rel=1e-6)


def test_twice_the_load_twice_the_answer_and_finer_chords_change_little():
    line = _kick_up()
    ask = []
    for spacing, load in ((0.02, 1.0), (0.02, 2.0), (0.005, 1.0)):
        nodes, (at,) = frame.nodes_of(line, (0, 1, 0), (0, 0, 1), [0.5], spacing)
        feet = {0: frame.FIXED, len(nodes) - 1: frame.FIXED}
        ask.append(frame.solve(nodes, SECTION, E, feet, [frame.Load(at, up=-1000 * load)]))
    assert ask[1].moment == pytest.approx(2 * ask[0].moment)
    assert ask[1].sag == pytest.approx(2 * ask[0].sag)
    assert ask[2].moment == pytest.approx(ask[0].moment, rel=2e-3)
    assert ask[2].sag == pytest.approx(ask[0].sag, rel=2e-3)


def test_a_torque_reaction_is_a_couple_at_the_mounts():
    up, down = frame.torque_couple(600.0, 0.4)
    nodes = [(i * 0.1, 0.0) for i in range(11)]
    got = frame.solve(
        nodes, SECTION, E, {0: frame.PINNED, 10: frame.SLIDING}, [frame.Load(3, up=up), frame.Load(7, up=down)]
    )
    assert got.reactions[0][1] == pytest.approx(-600.0)
    assert got.reactions[10][1] == pytest.approx(600.0)


def test_frames_that_are_not_held_are_refused():
    nodes = [(0.0, 0.0), (0.5, 0.0), (1.0, 0.0)]
    for feet in ({}, {0: frame.PINNED}, {0: frame.SLIDING, 2: frame.SLIDING}):
        with pytest.raises(ValueError, match="not held"):
            frame.solve(nodes, SECTION, E, feet, [frame.Load(1, up=-1.0)])
    with pytest.raises(ValueError, match="same"):
        frame.solve([(0, 0), (0, 0)], SECTION, E, {0: frame.FIXED}, [])
    with pytest.raises(ValueError, match="wall"):
        frame.Section(0.04, 0.021)
    with pytest.raises(ValueError, match="off the tube"):
        frame.nodes_of(_kick_up(), (0, 1, 0), (0, 0, 1), [99.0])


def test_clamps_slip_and_tubes_crush_by_their_figures():
    assert frame.slip_force(20e3, 0.2, 2) == pytest.approx(8e3)
    assert frame.crush_force(0.04, 0.004, 300e6, 0.03) > 4 * frame.crush_force(0.04, 0.002, 300e6, 0.03)


@given(
    st.lists(st.tuples(st.floats(-2, 2), st.floats(-2, 2)), min_size=2, max_size=5, unique=True),
    st.lists(st.tuples(st.booleans(), st.booleans(), st.booleans()), min_size=1, max_size=3),
)
def test_whether_feet_hold_is_the_rank_of_what_they_hold(nodes, fixed):
    """Three independent motions are held where the rows of what is held have rank three, by numpy."""
    feet = dict(zip(range(len(nodes)), fixed, strict=False))
    x0, y0 = nodes[0]
    size = max(math.hypot(x - x0, y - y0) for x, y in nodes)
    assume(size > 0.1)
    rows = []
    for node, fix in feet.items():
        x, y = (nodes[node][0] - x0) / size, (nodes[node][1] - y0) / size
        rows += [row for row, held in zip(((1, 0, -y), (0, 1, x), (0, 0, 1)), fix, strict=True) if held]
    least = min(np.linalg.svd(np.array(rows))[1]) if len(rows) >= 3 else 0.0
    assume(not 1e-7 < least < 1e-2)  # between held and not
    assert frame._holds(nodes, feet) == (least >= 1e-2)
