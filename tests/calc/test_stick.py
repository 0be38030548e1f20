"""Marks on the blank: cut length, start-of-bend marks, angles to set, grips, seam, and what rounding does."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.calc import path as p
from gaugeblock.calc import shapes, stick, tubes

PI = math.pi
INCH = 0.0254


def _kick_up(radius=6 * INCH):
    points = shapes.kick_up(10 * INCH, 6 * INCH, PI / 4, 8 * INCH, radius=radius)
    made, _ = p.from_points(shapes.place(points, (0, 0, 0), (0, 1, 0), (0, 0, 1)), radius)
    return made


rows = st.lists(
    st.tuples(st.floats(0.05, 0.6), st.floats(-PI, PI), st.floats(0.1, 2.8), st.floats(0.03, 0.2)),
    min_size=1,
    max_size=7,
)


def _stick(drawn, end=0.3):
    return p.Stick((p.Bend(s, t if i else 0.0, a, r) for i, (s, t, a, r) in enumerate(drawn)), end)


def test_marks_from_the_start_are_the_tangents_with_trim_and_offset():
    made = _kick_up()
    die = stick.Die(6 * INCH, mark_offset=0.5 * INCH)
    got = stick.lay_out(made, die, trims=(2 * INCH, 3 * INCH))
    assert got.cut_length == pytest.approx(made.developed_length + 5 * INCH)
    assert got.start == 0.0
    expected = [2 * INCH + first - 0.5 * INCH for first, _ in made.tangents]
    assert [m.position for m in got.marks] == pytest.approx(expected)
    assert got.order == (1, 2, 3, 4)
    assert [m.goes for m in got.marks] == [1] * 4


def test_marks_from_the_centre_of_a_symmetrical_tube_are_symmetrical():
    made = _kick_up()
    got = stick.lay_out(made, stick.Die(6 * INCH, mark_offset=0.25 * INCH), datum="centre", step=INCH / 32)
    exact = [m.position for m in got.marks]
    assert exact == pytest.approx([-x for x in exact[::-1]])
    assert [m.goes for m in got.marks] == [-1, -1, 1, 1]
    # the inner marks stand half the flat from the centre, less the die's offset: the bend begins past the mark
    assert exact[2] == pytest.approx(5 * INCH - 0.25 * INCH)
    assert got.order == (3, 4, 2, 1)
    assert (got.start, got.end) == pytest.approx((-got.cut_length / 2, got.cut_length / 2))


def test_marks_from_the_end_are_those_of_the_reversed_tube_from_its_start():
    made = _stick([(0.3, 0.0, 1.0, 0.1), (0.2, 1.0, 0.5, 0.12), (0.4, -2.0, 2.0, 0.09)])
    die = stick.Die(0.1, mark_offset=0.01)
    got = stick.lay_out(made, die, trims=(0.02, 0.03), datum="end")
    other = stick.lay_out(made.reversed(), die, trims=(0.03, 0.02))
    assert [-m.position for m in got.marks][::-1] == pytest.approx([m.position for m in other.marks])
    assert got.order == (3, 2, 1)


@given(
    rows,
    st.sampled_from(["start", "centre", "end"]),
    st.sampled_from([INCH / 32, INCH / 16, 0.001]),
    st.floats(0.0, 0.04),
)
def test_rounding_never_accumulates(drawn, datum, step, offset):
    got = stick.lay_out(_stick(drawn), stick.Die(0.1, offset), datum=datum, step=step)
    for m in got.marks:
        assert abs(m.rounded - m.position) <= step / 2 * (1 + 1e-6)
        assert m.rounded / step == pytest.approx(round(m.rounded / step), abs=1e-6)
    assert abs(got.end_rounded - got.start_rounded - got.cut_length) <= step * (1 + 1e-6)


@given(rows, st.sampled_from(["start", "centre", "end"]))
def test_unrounded_marks_give_the_stick_back(drawn, datum):
    made, die = _stick(drawn), stick.Die(0.1, 0.013)
    back = stick.as_marked(stick.lay_out(made, die, datum=datum, trims=(0.02, 0.01)), die)
    assert back.straights == pytest.approx(made.straights, abs=1e-12)
    assert stick.shape_shift(made, back) < 1e-12


@given(rows, st.integers(0, 10**6))
@settings(max_examples=150)
def test_no_rounding_moves_the_shape_past_its_bound(drawn, seed):
    made, die = _stick(drawn), stick.Die(0.1, 0.0)
    rng = np.random.default_rng(seed)
    step, angle_step, turn_step = 0.002, math.radians(1.0), math.radians(2.0)
    got = stick.lay_out(made, die, datum=("start", "centre", "end")[seed % 3])
    for m in got.marks:
        m.rounded = m.position + rng.choice([-1.0, 1.0, 0.3]) * step / 2
    got.start_rounded, got.end_rounded = (
        got.start + rng.choice([-1, 1]) * step / 2,
        got.end + rng.choice([-1, 1]) * step / 2,
    )
    angles = [m.angle + rng.choice([-1.0, 1.0]) * angle_step / 2 for m in got.marks]
    turns = [m.turn + (rng.choice([-1.0, 1.0]) * turn_step / 2 if m.number > 1 else 0.0) for m in got.marks]
    only = stick.shape_shift(made, stick.as_marked(got, die))
    assert only <= stick.rounding_bound(made, step) * (1 + 1e-9)
    every = stick.shape_shift(made, stick.as_marked(got, die, angles, turns))
    assert every <= stick.rounding_bound(made, step, angle_step, turn_step) * (1 + 1e-9)


def test_the_bound_is_reached_by_a_plain_offset():
    # two bends of A, marks out by e opposite ways: the far foot moves 2 e sin(A/2) twice; the ends add e each
    made = _stick([(0.3, 0.0, 1.0, 0.1), (0.2, PI, 1.0, 0.1)])
    assert stick.rounding_bound(made, 0.002) == pytest.approx(0.001 * (2 + 4 * math.sin(0.5)))


def test_rounded_marks_that_swallow_a_straight_are_refused():
    made = _stick([(0.3, 0.0, 1.0, 0.1), (0.0, 0.0, 1.0, 0.1)])
    got = stick.lay_out(made, stick.Die(0.1))
    got.marks[1].rounded -= 0.001
    with pytest.raises(ValueError, match="bend 2"):
        stick.as_marked(got, stick.Die(0.1))


@pytest.mark.parametrize("ask", [{"datum": "middle"}, {"datum": -0.1}, {"datum": 99.0}, {"trims": (-0.1, 0.0)}])
def test_a_datum_or_trim_that_makes_no_sense_is_refused(ask):
    with pytest.raises(ValueError, match=r"datum|trim"):
        stick.lay_out(_kick_up(), stick.Die(0.1), **ask)


def test_set_angles_come_from_the_test_bends_and_never_past_them():
    tests = [(math.radians(a), math.radians(b)) for a, b in ((95, 90), (22, 20), (48, 45))]
    assert stick.set_angle(math.radians(45), tests) == pytest.approx(math.radians(48))
    assert stick.set_angle(math.radians(20), tests) == pytest.approx(math.radians(22))
    between = [stick.set_angle(math.radians(a), tests) for a in range(20, 91)]
    assert between == sorted(between)
    for outside in (19.9, 90.1):
        with pytest.raises(stick.OutsideTestsError):
            stick.set_angle(math.radians(outside), tests)
    assert stick.set_angle(1.0, [(1.1, 1.0)]) == pytest.approx(1.1)
    with pytest.raises(stick.OutsideTestsError):
        stick.set_angle(0.9, [(1.1, 1.0)])
    for bad in ([], [(1.0, 0.9), (0.9, 1.0)], [(1.0, 0.9), (1.1, 0.9)]):
        with pytest.raises(ValueError, match="test bends"):
            stick.set_angle(0.95, bad)


@given(st.floats(0.1, 2.5), st.floats(0.05, 0.3), st.floats(200e6, 500e6), st.floats(1.0, 1.5))
def test_an_estimate_is_a_range_over_the_wanted_angle_that_grows_with_yield(angle, radius, low, times):
    ask = {"radius": radius, "od": 0.04, "wall": 0.003, "modulus": 200e9}
    a, b = stick.set_angle_estimate(angle, yields=(low, low * times), **ask)
    assert angle < a <= b
    c, d = stick.set_angle_estimate(angle, yields=(low, low * 2), **ask)
    assert a == pytest.approx(c)
    assert d >= b


def test_a_radius_that_springs_back_whole_is_refused():
    with pytest.raises(ValueError, match="spring back"):
        stick.set_angle_estimate(1.0, radius=8.0, od=0.02, wall=0.001, yields=(4e8, 4e8), modulus=200e9)


def test_grips_count_the_trim_at_the_ends_and_nothing_between():
    made = _stick([(0.05, 0.0, 1.0, 0.1), (0.03, 0.0, 1.0, 0.1)], end=0.02)
    got = stick.grips(made, stick.Die(0.1, grip=0.06, between=0.04), trims=(0.02, 0.0))
    assert [(g.number, g.where) for g in got] == [(1, "start"), (2, "between"), (3, "end")]
    assert [g.short for g in got] == pytest.approx([0.0, 0.01, 0.04])
    assert stick.grips(p.Stick([], 1.0), stick.Die(0.1, grip=0.5)) == []


@given(st.lists(st.floats(-10, 10), min_size=1, max_size=8))
def test_the_seam_lies_as_far_from_every_bend_as_any_place_can(lines):
    at, least = stick.seam_line(lines)

    def off(x):
        return min(abs((x - line + PI / 2) % PI - PI / 2) for line in lines)

    assert off(at) == pytest.approx(least, abs=1e-9)
    assert max(off(x) for x in np.linspace(0, PI, 721)) <= least + 1e-9


def test_the_seam_of_a_flat_tube_is_on_the_neutral_line():
    assert stick.seam_line([0.0, PI, 0.0]) == (pytest.approx(PI / 2), pytest.approx(PI / 2))


def test_an_angle_outside_the_test_bends_is_told_with_what_they_gave():
    told = "120.00 deg lies outside the test bends, which gave 45.00 to 90.00 deg"
    with pytest.raises(stick.OutsideTestsError, match=told):
        stick.set_angle(2 * PI / 3, [(47 * PI / 180, PI / 4), (94 * PI / 180, PI / 2)])


def test_the_first_bend_has_no_turn_and_of_gaps_alike_the_first_takes_the_seam():
    made = p.Stick([p.Bend(0.3, 0.7, 1.0, 0.1), p.Bend(0.3, 0.4, 1.0, 0.1)], 0.3)
    assert [m.turn for m in stick.lay_out(made, stick.Die(0.1)).marks] == [0.0, 0.4]
    assert stick.seam_line([0.0, PI / 2]) == pytest.approx((PI / 4, PI / 4))
    assert stick.seam_line([0.0, PI / 3, 2 * PI / 3]) == pytest.approx((PI / 6, PI / 6))
    assert stick.seam_line([]) == pytest.approx((PI / 2, PI / 2))


@given(st.lists(st.floats(0.05, 3.0), min_size=1, max_size=5))
def test_the_seam_of_the_mirrored_tube_is_the_mirrored_seam(lines):
    lines = [0.0, *lines]
    (at, clear), (other, same) = stick.seam_line(lines), stick.seam_line([-x for x in lines])
    assert same == pytest.approx(clear, abs=1e-9)
    assert abs((at + other + PI / 2) % PI - PI / 2) < 1e-9


@pytest.mark.parametrize("od", [0.02, 0.04])
@pytest.mark.parametrize("modulus", [1e11, 2e11])
def test_a_radius_is_elastic_from_the_yield_at_which_the_outer_fibre_does_not_yield(od, modulus):
    ask = {"radius": 0.5, "od": od, "wall": 0.002, "modulus": modulus}
    limit = modulus * od / (2 * 0.5)
    for share in (1.0, 1.2):
        with pytest.raises(ValueError, match="the radius is elastic"):
            stick.set_angle_estimate(1.0, yields=(0.1 * limit, share * limit), **ask)
    low, high = stick.set_angle_estimate(1.0, yields=(0.1 * limit, 0.2 * limit), **ask)
    ratios = [tubes.springback_sheet(0.5, od, y * limit, modulus) for y in (0.1, 0.2)]
    ratios += [tubes.springback_tube(0.5, od, od - 0.004, y * limit, modulus) for y in (0.1, 0.2)]
    assert (low, high) == pytest.approx((1 / max(ratios), 1 / min(ratios)))


@pytest.mark.parametrize("put", [0.3, 1.2])
def test_one_test_bend_serves_in_proportion_and_one_that_kept_nothing_does_not(put):
    assert stick.set_angle_in_proportion(1.5, (put, 0.8 * put)) == pytest.approx(1.875)
    for got in (0.0, -0.1):
        with pytest.raises(ValueError, match="kept no angle"):
            stick.set_angle_in_proportion(1.5, (put, got))


def test_two_shapes_are_as_far_apart_as_their_farthest_joints():
    one = _stick([(0.3, 0.0, 1.0, 0.1), (0.2, 0.5, 0.5, 0.1)])
    assert stick.shape_shift(one, _stick([(0.3, 0.0, 1.0, 0.1), (0.2, 0.5, 0.5, 0.1)], end=0.37)) == pytest.approx(0.07)
    longer = _stick([(0.3, 0.0, 1.0, 0.1), (0.21, 0.5, 0.5, 0.1)])
    assert stick.shape_shift(one, longer) == pytest.approx(0.01)


@pytest.mark.parametrize("step", [None, 0.001])
@pytest.mark.parametrize("datum", ["start", "end", "centre", 0.45])
def test_the_blank_has_one_length_wherever_its_marks_are_from(datum, step):
    made = _stick([(0.3004, 0.0, 1.0, 0.1), (0.2003, 1.0, 0.5, 0.12), (0.4001, -2.0, 2.0, 0.09)])
    got = stick.lay_out(made, stick.Die(0.1, 0.01), trims=(0.0202, 0.0303), datum=datum, step=step)
    zero = {"start": -0.0202, "end": made.developed_length + 0.0303, "centre": made.developed_length / 2}.get(
        datum, 0.45
    )
    assert got.datum == pytest.approx(zero)
    assert (got.start, got.end) == pytest.approx((-0.0202 - zero, made.developed_length + 0.0303 - zero))
    assert got.end_rounded - got.start_rounded == pytest.approx(stick.round_to(got.cut_length, step))
    assert got.end_rounded == pytest.approx(got.end, abs=0.0011)
    if datum in ("start", "end"):
        assert (got.start_rounded if datum == "start" else got.end_rounded) == pytest.approx(0.0, abs=1e-12)
    for mark, (first, last) in zip(got.marks, made.tangents, strict=True):
        assert mark.tangent == (first if mark.goes > 0 else last)
        assert mark.position == pytest.approx(mark.tangent - mark.goes * 0.01 - zero)
        assert mark.arc == pytest.approx(last - first)
        assert mark.goes == (-1 if datum == "end" or (datum in ("centre", 0.45) and last <= zero) else 1)
    by_way = [got.marks[n - 1] for n in got.order]
    assert sorted(by_way, key=lambda m: (-m.goes, m.goes * m.position)) == by_way


def test_half_a_step_goes_up():
    assert stick.round_to(0.0125, 0.005) == pytest.approx(0.015)
    assert stick.round_to(-0.0125, 0.005) == pytest.approx(-0.01)
    assert stick.round_to(0.01249, 0.005) == pytest.approx(0.01)
    assert stick.round_to(0.01249, None) == stick.round_to(0.01249, 0.0) == 0.01249


def test_the_straight_between_bends_is_the_grip_unless_it_is_given():
    assert stick.Die(0.1, grip=0.05).between == 0.05
    assert stick.Die(0.1, grip=0.05, between=0.0).between == 0.0
    grip = stick.Grip(1, "start", 0.05, 0.05 + 1e-10)
    assert grip.short == 0.0
    assert stick.Grip(1, "start", 0.05, 0.06).short == pytest.approx(0.01)


@given(rows, st.floats(0.0, 3.0), st.integers(0, 10**6))
@settings(max_examples=60)
def test_the_bound_of_a_tube_marked_from_its_middle_holds_whichever_way_its_marks_are_off(drawn, at, seed):
    made, die = _stick(drawn), stick.Die(0.1, 0.0)
    rng = np.random.default_rng(seed)
    got = stick.lay_out(made, die, datum=min(at, 1.0) * made.developed_length)
    step = 0.002
    for m in got.marks:
        m.rounded = m.position + rng.choice([-1.0, 1.0]) * step / 2
    got.start_rounded, got.end_rounded = got.start - step / 2, got.end + rng.choice([-2, 2]) * step / 2
    moved = stick.shape_shift(made, stick.as_marked(got, die))
    assert moved <= stick.rounding_bound(made, step, outward=True) * (1 + 1e-9)
    assert stick.rounding_bound(made, step, outward=True) == pytest.approx(stick.rounding_bound(made, step) + step / 2)


def test_the_bound_grows_with_every_step_by_what_swings():
    """One right angle on 0.1, its far end 0.3 on: by the angle the end swings about the arc's centre; by a turn about
    the straight before it.
    """
    made = _stick([(0.5, 0.0, PI / 2, 0.1)], end=0.3)
    d = math.radians(0.5)
    far = math.hypot(0.3, 0.1)
    plain = stick.rounding_bound(made, 0.002)
    assert plain == pytest.approx(0.001 * (2 + 2 * math.sin(PI / 4)))
    by_angle = stick.rounding_bound(made, 0.002, 2 * d)
    assert by_angle == pytest.approx(0.001 * (2 + 2 * math.sin(PI / 4 + d / 2)) + d * (far + 0.1))
    assert stick.rounding_bound(made, 0.0, 0.0, 0.02) == pytest.approx(0.0, abs=1e-12)
    two = _stick([(0.5, 0.0, PI / 2, 0.1), (0.2, PI, PI / 2, 0.1)], end=0.3)
    # a Z: what follows the second straight lies from its line by the arc, 0.1 + 0.1 from its centre, and the end by 0.4
    assert stick.rounding_bound(two, 0.0, 0.0, 0.02) == pytest.approx(0.01 * 0.4)
