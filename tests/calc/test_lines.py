"""Properties of the line's balance: it closes, it is monotone, it has the right limits, arrays equal scalars."""

from __future__ import annotations

from math import pi

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import printed
from gaugeblock.calc import heat, line_parts, shields
from gaugeblock.calc import lines as calc
from gaugeblock.calc.air import Air

AIR = Air(
    (273.15, 313.15, 373.15, 473.15, 573.15, 673.15),
    (0.02364, 0.02662, 0.03095, 0.03779, 0.04418, 0.05015),
    (1.338e-5, 1.702e-5, 2.306e-5, 3.455e-5, 4.765e-5, 6.219e-5),
    (0.7362, 0.7255, 0.7111, 0.6974, 0.6935, 0.6948),
)
PIPE, LINE = 0.0286, 0.00238

hot = st.floats(330.0, 1100.0)
emissivity = st.floats(0.02, 1.0)
gap = st.floats(0.0005, 1.0)
speed = st.sampled_from([0.0, 1.0, 8.0, 30.0])
radius = st.floats(0.001, 0.08)


def line(
    hot_k=673.15, e1=0.8, e2=0.8, gap_m=0.025, air_k=313.15, speed=0.0, pipe=PIPE, own=LINE, far=None, cooling=None
):
    around = calc.Around(hot_k, air_k, AIR, far, speed, cooling)
    return calc.line_beside_pipe(calc.Round(pipe, e1), calc.Round(own, e2), gap_m, around)


@given(hot, emissivity, emissivity, gap, speed, radius, radius)
def test_the_balance_closes(hot_k, e1, e2, gap_m, v, pipe, own):
    got = line(hot_k, e1, e2, gap_m, speed=v, pipe=pipe, own=own)
    assert got.residual < 1e-9
    assert 313.15 - 1e-9 <= got.kelvin <= hot_k


@given(st.floats(250.0, 400.0), st.floats(250.0, 400.0), st.floats(0.05, 5.0), st.floats(250.0, 360.0))
def test_the_balance_closes_with_flow_and_other_surroundings(air_k, far_k, conductance, fluid_k):
    got = line(air_k=air_k, far=far_k, cooling=calc.Cooling(conductance, fluid_k, 0.002, 0.1))
    assert got.residual < 1e-9


@given(hot, emissivity, emissivity, gap, st.floats(1.05, 4.0), speed)
def test_it_falls_with_the_gap(hot_k, e1, e2, gap_m, factor, v):
    assert line(hot_k, e1, e2, gap_m * factor, speed=v).kelvin <= line(hot_k, e1, e2, gap_m, speed=v).kelvin + 1e-9


@given(hot, st.floats(1.0, 300.0), emissivity, emissivity, gap, speed)
def test_it_rises_with_the_hot_parts_temperature(hot_k, more, e1, e2, gap_m, v):
    assert line(hot_k + more, e1, e2, gap_m, speed=v).kelvin >= line(hot_k, e1, e2, gap_m, speed=v).kelvin


@given(hot, st.floats(0.02, 0.9), st.floats(0.01, 0.1), emissivity, gap, speed)
def test_it_rises_with_either_emissivity(hot_k, e, more, other, gap_m, v):
    assert line(hot_k, e + more, other, gap_m, speed=v).kelvin >= line(hot_k, e, other, gap_m, speed=v).kelvin - 1e-9
    assert line(hot_k, other, e + more, gap_m, speed=v).kelvin >= line(hot_k, other, e, gap_m, speed=v).kelvin - 1e-9


def test_a_mirror_line_has_the_temperature_of_the_air():
    assert line(e2=0.0).kelvin == pytest.approx(313.15, abs=1e-6)


def test_a_mirror_pipe_warms_nothing():
    """It reflects surroundings of the air's temperature, whatever its own."""
    assert line(e1=0.0).kelvin == pytest.approx(313.15, abs=1e-9)


def test_far_away_it_has_the_temperature_of_the_air():
    assert line(gap_m=1e4).kelvin == pytest.approx(313.15, abs=1e-3)


def test_near_contact_it_tends_to_the_touching_view_factor():
    touching = heat.view_factor_cylinders(LINE, PIPE, 0.0)
    assert heat.view_factor_cylinders(LINE, PIPE, 1e-9) == pytest.approx(touching, abs=1e-3)
    assert touching < 0.5
    assert line(gap_m=1e-9).kelvin == pytest.approx(line(gap_m=1e-6).kelvin, abs=1.0)


def test_a_black_pair_needs_no_reflections():
    own = heat.view_factor_cylinders(LINE, PIPE, 0.025)
    got = line(e1=1.0, e2=1.0)
    plain = own * heat.emissive_power(673.15) + (1 - own) * heat.emissive_power(313.15)
    assert got.absorbed == pytest.approx(2 * pi * LINE * plain, rel=1e-13)


def test_all_at_one_temperature_nothing_flows():
    got = line(hot_k=313.15)
    assert got.kelvin == pytest.approx(313.15, abs=1e-9)
    assert got.convected == pytest.approx(0.0, abs=1e-9)


@given(hot, gap)
def test_moving_air_is_never_taken_as_worse_than_still_air(hot_k, gap_m):
    assert line(hot_k, gap_m=gap_m, speed=0.05).kelvin <= line(hot_k, gap_m=gap_m).kelvin + 1e-9


def test_outside_the_correlations_it_says_so():
    assert not line(air_k=260.0, hot_k=270.0).inside
    assert "air film" in line(air_k=260.0, hot_k=270.0).why_outside()
    assert "Re Pr" in line(speed=1e-4).why_outside()
    assert "Rayleigh" in line(own=12.0, pipe=1.0).why_outside()
    assert line().why_outside() == ""
    assert line().inside


@pytest.mark.parametrize(
    ("part", "at", "over"),
    [
        ("film_k", 273.15, -1e-9),
        ("film_k", 673.15, 1e-9),
        ("rayleigh", 1e12, 1.0),
        ("reynolds_prandtl", 0.2, -0.2),  # 0 is still air, which has no such number
    ],
)
def test_what_is_inside_has_no_reason_to_be_outside_at_the_very_limits(part, at, over):
    for value in (at, at + over / 2, at + over, at - over / 2, at - over):
        got = line()
        setattr(got, part, value)
        assert bool(got.inside) == (got.why_outside() == ""), (part, value)
        shaded = behind(SHAPES["flat"])
        names = ("film_k", "rayleigh", "reynolds_prandtl")
        shaded.shield = tuple(value if n == part else getattr(got, n) for n in names)
        assert bool(shaded.inside) == (shaded.why_outside() == ""), (part, value)
        assert got.inside == shaded.inside
    still = line()
    assert still.reynolds_prandtl == 0.0


def test_why_a_balance_is_outside_is_told_in_the_numbers_of_the_figures():
    got = line(air_k=260.0, hot_k=270.0)
    said = f"the air film would be at {got.film_k - 273.15:.0f} degC; the air figures cover 0 to 400 degC"
    assert got.why_outside() == said
    got = line(speed=1e-4)
    assert f"Re Pr {got.reynolds_prandtl:.2g} is not over the 0.2" in got.why_outside()
    got = behind(shields.flat(PIPE, LINE, 0.05, 0.005))
    assert "straight sight past its edges" in got.why_outside()
    hot_tube = behind(SHAPES["tube"], 0.9, hot_k=1500.0)
    assert f"the air film of the shield would be at {hot_tube.shield[0] - 273.15:.0f} degC" in hot_tube.why_outside()


def test_what_does_not_close_is_told_as_a_share_of_the_largest_flow():
    got = line()
    for absorbed, emitted, convected, carried, share in (
        (8.0, 1.0, 2.0, 1.0, 0.5),
        (1.0, 8.0, -2.0, 1.0, 0.75),
        (1.0, 1.0, 1.0, -10.0, 0.9),
        (1.0, 1.0, -10.0, 1.0, 0.9),
        (0.0, 0.0, 0.0, 0.0, 0.0),
    ):
        got.absorbed, got.emitted, got.convected, got.carried = absorbed, emitted, convected, carried
        assert got.residual == pytest.approx(share)
        got.kelvin = numpy.array([300.0])
        got.absorbed, got.convected = numpy.array([absorbed]), numpy.array([convected])
        assert got.residual == pytest.approx([share])
        got.kelvin = 300.0


@pytest.mark.parametrize("array", [False, True])
@pytest.mark.parametrize("root", [1.0, 250.0, 301.0, 399.0])
def test_the_temperature_is_found_in_few_steps_and_inside_its_bounds(array, root):
    asked = []

    def net(x):
        asked.append(x)
        if not array:
            assert 0.0 <= x <= 400.0 + 1e-3
        return (root**4 - x**4) / 1e8 + (root - x)

    low, high, start = (numpy.array([v]) if array else v for v in (0.0, 400.0, 300.0))
    got = calc.solve(net, low, high, 1.0, start)
    assert got == pytest.approx(root, rel=1e-12)
    assert len(asked) <= 14


def test_a_flow_through_a_sleeve_is_two_resistances_in_a_row():
    sleeve = calc.Cooling(2.0, 313.15, 0.003, 0.05)
    wall = numpy.log((LINE + 0.003) / LINE) / (2 * pi * 0.05)
    assert sleeve.from_surface(LINE) == pytest.approx(1 / (1 / 2.0 + wall))
    under = sleeve.under_sleeve(400.0, LINE)
    assert (under - 313.15) * 2.0 == pytest.approx((400.0 - under) / wall)
    bare = calc.Cooling(2.0, 313.15)
    assert bare.from_surface(LINE) == 2.0
    assert bare.under_sleeve(400.0, LINE) == 400.0
    assert calc.Around(600.0, 300.0, AIR, cooling=sleeve).outside(LINE) == LINE + 0.003
    assert calc.Around(600.0, 300.0, AIR).outside(LINE) == LINE


def test_flow_brings_a_line_to_the_fluid_and_what_it_carries_is_what_it_gains():
    got = line(cooling=calc.Cooling(2.0, 280.0))
    assert got.carried == pytest.approx(2.0 * (got.kelvin - 280.0))
    assert got.line_k == got.kelvin
    hot_oil = line(hot_k=400.0, gap_m=0.5, cooling=calc.Cooling(1e6, 420.0))
    assert hot_oil.kelvin == pytest.approx(420.0, abs=1e-3)
    cold = line(cooling=calc.Cooling(1e6, 250.0))
    assert cold.kelvin == pytest.approx(250.0, abs=1e-3)


def test_a_film_that_is_given_stands_in_place_of_the_correlations():
    around = calc.Around(673.15, 313.15, AIR, film=17.0)
    got = calc.line_beside_pipe(calc.Round(PIPE, 0.8), calc.Round(LINE, 0.8), 0.025, around)
    assert got.convected == pytest.approx(17.0 * 2 * pi * LINE * (got.kelvin - 313.15))
    assert got.residual < 1e-9


def test_a_sleeve_alone_does_not_cool_a_line_without_flow():
    """Only its size changes the answer: the same sleeve with any conductivity gives the same temperature."""
    thin, thick = (line(cooling=calc.Cooling(0.0, 313.15, 0.003, k)).kelvin for k in (0.05, 5.0))
    assert thin == pytest.approx(thick, abs=1e-9)
    sleeve = calc.Cooling(0.0, 313.15, 0.003, 0.05)
    assert sleeve.under_sleeve(400.0, LINE) == 400.0


def test_flow_cools_and_a_sleeve_then_helps_the_line():
    bare = calc.Cooling(2.0, 313.15)
    sleeved = calc.Cooling(2.0, 313.15, 0.003, 0.05)
    plain = line(own=0.00538).kelvin  # the sleeve's size, without flow
    assert line(cooling=bare).kelvin < line().kelvin
    surface = line(cooling=sleeved).kelvin
    assert surface < plain
    assert sleeved.under_sleeve(surface, LINE) < surface


@pytest.mark.parametrize("v", [0.0, 6.0])
def test_arrays_equal_scalars(v):
    gaps = numpy.geomspace(0.001, 1.0, 25)
    got = line(gap_m=gaps, speed=v)
    assert got.kelvin.shape == (25,)
    assert got.inside.all()
    assert (got.residual < 1e-9).all()
    for i in range(0, 25, 6):
        assert got.kelvin[i] == pytest.approx(line(gap_m=float(gaps[i]), speed=v).kelvin, abs=1e-7)


def test_arrays_of_other_inputs_equal_scalars():
    hots = numpy.array([400.0, 600.0, 900.0])
    speeds = numpy.array([0.0, 3.0, 9.0])
    got = line(hot_k=hots, speed=speeds, e1=numpy.array([0.2, 0.5, 0.9]))
    for i, (h, v, e) in enumerate(zip(hots, speeds, (0.2, 0.5, 0.9), strict=True)):
        assert got.kelvin[i] == pytest.approx(line(hot_k=float(h), speed=float(v), e1=e).kelvin, abs=1e-7)


@pytest.mark.parametrize("surface", [313.15, 320.0, 600.0])
def test_the_film_of_arrays_is_that_of_scalars_however_slow_the_air(surface):
    speeds = numpy.array([0.0, 1e-4, 1e-3, 5e-3, 0.05, 1.0, 30.0])
    many = calc.convection(surface, 313.15, 2 * LINE, speeds, AIR)
    for i, speed in enumerate(speeds.tolist()):
        one = calc.convection(surface, 313.15, 2 * LINE, speed, AIR)
        assert [float(numpy.broadcast_to(m, 7)[i]) for m in many] == pytest.approx(one)
    k, nu, pr = AIR.at((surface + 313.15) / 2)
    forced = heat.nusselt_forced(2 * LINE / nu, pr)
    still = heat.nusselt_natural(heat.rayleigh(surface - 313.15, (surface + 313.15) / 2, 2 * LINE, nu, pr), pr)
    assert many[0][0] == pytest.approx(still * k / (2 * LINE))
    assert many[0][5] == pytest.approx(max(forced, still) * k / (2 * LINE))
    assert (many[1], many[3][5]) == pytest.approx(((surface + 313.15) / 2, 2 * LINE / nu * pr))


# ---- view factors and shields ----------------------------------------------------------------------------------------


@given(radius, radius, gap)
def test_view_factors_are_reciprocal_and_shares(a, b, s):
    one, two = heat.view_factor_cylinders(a, b, s), heat.view_factor_cylinders(b, a, s)
    assert 0.0 < one < 0.5
    assert a * one == pytest.approx(b * two, rel=1e-7, abs=1e-15)


@given(st.floats(0.05, pi), st.floats(0.05, 0.98))
def test_an_arc_sees_pipe_itself_and_outside_in_shares(half_angle, inner):
    from math import acos

    own = shields.self_view(half_angle, 2 * acos(inner))
    assert -1e-12 <= own <= 1 - inner + 1e-12


def behind(shape, e=0.3, e2=None, hot_k=673.15):
    around = calc.Around(hot_k, 313.15, AIR)
    faces = (e, e if e2 is None else e2)
    return shields.line_behind_shield(calc.Round(PIPE, 0.8), calc.Round(LINE, 0.8), shape, faces, around)


SHAPES = {
    "flat": shields.flat(PIPE, LINE, 0.05, 0.06),
    "arc": shields.curved(PIPE, LINE, 0.05, PIPE + 0.025, pi / 2),
    "tube": shields.curved(PIPE, LINE, 0.05, PIPE + 0.025, pi),
}


@pytest.mark.parametrize("shape", SHAPES.values(), ids=SHAPES)
@given(hot, emissivity, emissivity)
@settings(max_examples=40)
def test_both_balances_close_behind_a_shield(shape, hot_k, e, other):
    got = behind(shape, e, other, hot_k=hot_k)
    assert got.residual < 1e-9
    assert got.shield_residual < 1e-9
    assert 313.15 - 1e-9 <= got.kelvin <= got.shield_k + 1e-9 <= hot_k + 1e-6


@pytest.mark.parametrize("shape", SHAPES.values(), ids=SHAPES)
def test_a_shield_helps_and_a_bright_one_more(shape):
    bare = line(gap_m=0.05).kelvin
    dull, bright = behind(shape, 0.9).kelvin, behind(shape, 0.05).kelvin
    assert bright < dull < bare


def test_a_closed_tube_is_hotter_than_an_open_arc_with_air_on_both_faces():
    assert behind(SHAPES["tube"]).shield_k > behind(SHAPES["arc"]).shield_k


def test_an_open_bright_shield_saves_the_pipe_far_less_than_the_closed_planes_promise():
    """Loss of the hot pipe by radiation with an open half shield of 0.05 against the plane formula's reduction."""
    shape = shields.curved(PIPE, LINE, 0.05, PIPE + 0.025, pi / 2)
    got = behind(shape, 0.05)
    to_shield = shape.pipe_to_shield * 2 * pi * PIPE / shape.width_m
    powers = [heat.emissive_power(t) for t in (got.shield_k, 673.15, 313.15)]
    on_pipe, _ = heat.grey_pair(*powers, 0.05, 0.8, to_shield, shape.pipe_to_shield, shape.self_view)
    loss = 0.8 * (heat.emissive_power(673.15) - on_pipe)
    bare = 0.8 * (heat.emissive_power(673.15) - heat.emissive_power(313.15))
    promised = printed.planes_factor_shielded(0.8, 1.0, 0.05, 0.05) / heat.planes_factor(0.8, 1.0)
    assert promised < 0.05
    assert loss / bare > 0.5


def test_sight_past_a_narrow_shield_is_noticed():
    assert SHAPES["flat"].covered
    assert not shields.flat(PIPE, LINE, 0.05, 0.005).covered
    assert not shields.curved(PIPE, LINE, 0.05, PIPE + 0.025, 0.1).covered


@pytest.mark.parametrize("place", [0.2, 0.5, 0.9])
@pytest.mark.parametrize("own", [LINE, 2 * PIPE])
def test_a_sheet_covers_from_the_width_at_which_no_sight_passes_its_edge(place, own):
    """Straight sights from points of the pipe to points of the line, and where they cross the sheet's plane."""
    round_it = numpy.exp(1j * numpy.linspace(0.0, 2 * pi, 1441))
    one, two = (PIPE * round_it)[:, None], PIPE + own + 0.05 + (own * round_it)[None]
    at = PIPE + place * 0.05
    across = one.imag + (two.imag - one.imag) * (at - one.real) / (two.real - one.real)
    # a sight leaves the pipe and meets the line from outside only
    way = two - one
    leaves = (one.conj() * way).real > 0
    meets = ((two - (PIPE + own + 0.05)).conj() * way).real < 0
    widest = float(abs(across[leaves & meets]).max())
    assert shields.flat(PIPE, own, 0.05, widest * 1.001, place).covered
    assert not shields.flat(PIPE, own, 0.05, widest * 0.999, place).covered


def test_a_sheet_is_as_wide_as_it_is_and_a_tube_goes_all_round():
    sheet = shields.flat(PIPE, LINE, 0.05, 0.06, 0.4)
    assert sheet.width_m == pytest.approx(0.12)
    assert sheet.convects_m * pi == pytest.approx(2 * 0.12)  # a cylinder of the perimeter of both faces
    assert sheet.pipe_to_shield == pytest.approx(numpy.arctan(0.06 / (PIPE + 0.02)) / pi)
    assert sheet.line_to_shield == pytest.approx(numpy.arctan(0.06 / (LINE + 0.03)) / pi)
    assert (sheet.self_view, sheet.gap_conductance_over_k) == (0.0, 0.0)
    tube, half = SHAPES["tube"], SHAPES["arc"]
    assert tube.width_m == pytest.approx(2 * pi * (PIPE + 0.025))
    assert half.width_m == pytest.approx(tube.width_m / 2)
    assert (tube.pipe_to_shield, half.pipe_to_shield) == pytest.approx((1.0, 0.5))
    assert tube.convects_m == half.convects_m == pytest.approx(2 * (PIPE + 0.025))
    assert tube.gap_conductance_over_k == pytest.approx(2 * pi / numpy.log((PIPE + 0.025) / PIPE))
    assert half.gap_conductance_over_k == 0.0
    assert tube.line_to_shield == heat.view_factor_cylinders(LINE, PIPE + 0.025, 0.025)
    assert tube.covered
    assert tube.self_view == pytest.approx(1 - PIPE / (PIPE + 0.025))
    many = shields.curved(PIPE, LINE, 0.05, PIPE + 0.025, numpy.array([pi / 2, pi]))
    for name in shields.Shield.__slots__:
        pair = [getattr(half, name), getattr(tube, name)]
        assert numpy.broadcast_to(getattr(many, name), 2).tolist() == pytest.approx(pair)


def test_nothing_shines_through_a_shield_as_warm_as_all_else():
    got = behind(SHAPES["flat"], hot_k=313.15)
    assert got.kelvin == pytest.approx(313.15, abs=1e-6)
    assert got.shield_k == pytest.approx(313.15, abs=1e-6)


@pytest.mark.parametrize("over", [0.005, 0.025, 0.045])
def test_an_arc_covers_from_the_angle_at_which_no_sight_passes_its_edge(over):
    """Straight sights from points of the pipe to points of the line, and where they cross the arc's own circle."""
    round_it = numpy.exp(1j * numpy.linspace(0.0, 2 * pi, 721))
    start = (PIPE * round_it)[:, None]
    way = PIPE + LINE + 0.05 + (LINE * round_it)[None] - start
    ahead = (start * way.conj()).real / abs(way) ** 2
    share = -ahead + numpy.sqrt(ahead**2 + ((PIPE + over) ** 2 - PIPE**2) / abs(way) ** 2)
    widest = float(abs(numpy.angle(start + share * way)).max())
    assert shields.curved(PIPE, LINE, 0.05, PIPE + over, widest + 1e-3).covered
    assert not shields.curved(PIPE, LINE, 0.05, PIPE + over, widest - 1e-3).covered


def test_a_narrow_shield_or_a_shield_outside_the_air_points_is_told():
    assert "too narrow" in behind(shields.flat(PIPE, LINE, 0.05, 0.005)).why_outside()
    assert not behind(shields.flat(PIPE, LINE, 0.05, 0.005)).inside
    hot_tube = behind(SHAPES["tube"], 0.9, hot_k=1500.0)
    assert "of the shield" in hot_tube.why_outside()
    assert behind(SHAPES["flat"]).why_outside() == ""


def test_shields_take_arrays():
    gaps = numpy.array([0.03, 0.05, 0.2])
    shape = shields.flat(PIPE, LINE, gaps, 0.06)
    got, one = behind(shape), behind(shields.flat(PIPE, LINE, 0.05, 0.06))
    assert got.kelvin[1] == pytest.approx(one.kelvin, abs=1e-7)
    assert (got.shield_residual < 1e-9).all()


def test_shield_between_planes_is_where_both_fluxes_meet():
    t1, t2, e1, e2, es = 900.0, 400.0, 0.7, 0.5, 0.1
    flux = heat.radiation(t1, t2, printed.planes_factor_shielded(e1, e2, es, es))
    middle = heat.shield_temperature(flux, t1, e1, es)
    assert heat.radiation(middle, t2, heat.planes_factor(es, e2)) == pytest.approx(flux, rel=1e-12)


# ---- air and parts ---------------------------------------------------------------------------------------------------


@given(st.floats(200.0, 900.0))
def test_air_by_array_equals_air_by_number(kelvin):
    one = AIR.at(kelvin)
    many = AIR.at(numpy.array([kelvin]))
    assert [m[0] for m in many] == pytest.approx(list(one), rel=1e-12)
    assert bool(AIR.covers(kelvin)) == (273.15 <= kelvin <= 673.15)


BAD_POINTS = (
    ((300.0,), (1.0,), (1.0,), (1.0,)),
    ((300.0, 300.0), (1.0, 2.0), (1.0, 2.0), (1.0, 2.0)),
    ((300.0, 400.0), (1.0,), (1.0, 2.0), (1.0, 2.0)),
)


@pytest.mark.parametrize("points", BAD_POINTS)
def test_air_of_bad_points_is_refused(points):
    with pytest.raises(ValueError, match="air"):
        Air(*points)


@given(st.floats(0.01, 20.0), st.floats(0.05, 1.0))
def test_clips_are_enough_and_not_one_too_many(length, spacing):
    count = int(line_parts.support_count(length, spacing))
    assert length / (count + 1) <= spacing * (1 + 1e-6)
    assert count == 0 or length / count > spacing * (1 - 1e-6)
    places = line_parts.support_places(length, count)
    assert list(places) == sorted(places)
    assert all(0 < p < length for p in places)


def test_clips_take_arrays():
    assert list(line_parts.support_count(numpy.array([0.2, 0.9, 1.0]), 0.3)) == [0, 2, 3]


@given(st.floats(1e6, 1e9), st.floats(1e-4, 5e-3), st.floats(0.003, 0.1), st.floats(1.0, 8.0))
def test_wall_and_pressure_are_inverse(stress, wall, diameter, factor):
    pressure = line_parts.pressure_of_wall(stress, wall, diameter, factor)
    assert line_parts.wall_for_pressure(pressure, stress, diameter, factor) == pytest.approx(wall, rel=1e-12)


def test_where_the_correlation_of_cross_flow_is_stated_to_hold() -> None:
    """Churchill and Bernstein: for all Re Pr of 0.2 and more (Incropera, Fundamentals of Heat and Mass Transfer, 6th
    ed., Eq. 7.54).
    """
    assert pytest.approx(0.2) == heat.REYNOLDS_PRANDTL_MINIMUM


def test_air_that_nobody_moves_stands_still() -> None:
    assert calc.Around(600.0, 300.0, Air([300.0, 400.0], [0.026, 0.033], [1.6e-5, 2.6e-5], [0.71, 0.7])).speed == 0


@pytest.mark.parametrize("scale", [1e-6, 1.0, 1e6])
def test_a_balance_is_closed_as_a_share_of_its_largest_term(scale: float) -> None:
    """Of small flows as of large ones: to a billionth, whatever the unit of the terms."""
    found = calc.solve(lambda t: scale * (300.0 - t) / 300.0, 200.0, 400.0, scale, 250.0)
    assert found == pytest.approx(300.0, rel=1e-9)
