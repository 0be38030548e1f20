"""Exhaust against printed answers, each with its source, to half a unit in the last printed digit."""

from __future__ import annotations

from itertools import pairwise

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import growth, look_up, units
from gaugeblock.calc import exhaust as calc
from gaugeblock.calc.frame import PINNED, SLIDING, G, Load, Section, solve

MINUTE = 60.0
FOOT, INCH, POUND = 0.3048, 0.0254, 4.4482216152605


@pytest.mark.parametrize(
    ("rise_f", "longest_ft"),
    [(800, "37.5"), (900, "33.3"), (1000, "30.0"), (1100, "27.3"), (1200, "25.0"), (1300, "23.1"), (1400, "21.4")],
)
def test_run_that_the_travel_of_a_bellows_allows(rise_f: int, longest_ft: str) -> None:
    """An engine chimney maker's installation sheet, Table 14: a bellows that takes 3 in stands for so many feet between
    fixed points, with its 1 in of growth for 100 ft and 100 degF. (Its 700 degF, 42.8 ft, is cut off, not rounded.)
    """
    per_kelvin = 1.0 / 1200.0 / 100.0 * 1.8
    hot, expansion = f"{68 + rise_f} degF", f"{per_kelvin * 1e6:.6f} um/(m*K)"
    sheet = growth(f"{longest_ft} ft", hot=hot, expansion=expansion, cold_end="68 degF")
    figure = sheet.figure("thermal_growth")
    got = units.in_unit(figure.typical, figure.unit, "in")
    assert got == pytest.approx(3.0, abs=0.05 * 12 * per_kelvin / 1.8 * rise_f)


@pytest.mark.parametrize(("degrees", "tangent"), [(4, "0.06993"), (10, "0.17633"), (15, "0.26795")])
def test_swing_of_a_hanger_by_a_table_of_tangents(degrees: int, tangent: str) -> None:
    """Natural tangents to five places, as any handbook of the trade prints them; no worked hanger was found. Four
    degrees is what pipework allows a rod.
    """
    got = units.from_base(calc.swing(float(tangent), 1.0), "deg")
    assert got == pytest.approx(degrees, abs=0.5e-5 * 180 / 3.14159)


def test_loss_of_a_straight_pipe() -> None:
    """A generator sheet, 1650 kVA, line A: 12 m of 300 mm at 230 m3/min and 0.506906475 kg/m3 lose 0.476717378 kPa."""
    got = calc.pipe_loss(12.0, 230.0 / MINUTE, 0.506906475, 0.3) / 1000
    assert got == pytest.approx(0.476717378, abs=1e-6)


def test_loss_of_a_straight_pipe_by_a_fluid_library() -> None:
    """The printed formula is that of Darcy and Weisbach with a friction factor of 0.016, to 1 %."""
    flow, density, bore = 230.0 / MINUTE, 0.506906475, 0.3
    factor = fluids.core.K_from_f(fd=0.016, L=12.0, D=bore)
    other = fluids.core.dP_from_K(K=factor, rho=density, V=calc.mean_velocity(flow, bore))
    assert calc.pipe_loss(12.0, flow, density, bore) == pytest.approx(other, rel=0.01)


def test_bore_by_the_loss_that_is_allowed() -> None:
    """A generator sheet, 2500 kVA: 129 m, 0.44609 kg/m3, 558 m3/min and 2.9 kPa ask for 466.8 mm.

    The printed numbers give 467.1 mm; the sheet rounds on its way, by 0.06 %.
    """
    assert calc.pipe_loss(129.0, 558.0 / MINUTE, 0.44609, 0.4668) / 1000 == pytest.approx(2.9, rel=0.005)


def test_density_of_the_gas() -> None:
    """The same sheet: 0.44609 kg/m3 at 517.2 degC."""
    assert calc.gas_density(517.2 + 273.0) == pytest.approx(0.44609, abs=0.0001)


def test_mass_flow() -> None:
    """A generator sheet, 650 kVA: 2.85 m3/s of 0.459 kg/m3 are 1.308 kg/s."""
    assert pytest.approx(1.308, abs=0.0005) == 2.85 * 0.459


def test_flow_of_cooled_gas() -> None:
    """Kates, Example 4 p. 81: 1200 cfm at 600 degF cooled to 400 degF are 973.58 cfm, with zero at -460 degF."""
    assert calc.hot_flow(1200.0, 400.0 + 460.0, 600.0 + 460.0) == pytest.approx(973.58, abs=0.005)


def test_force_on_the_main_anchor() -> None:
    """A bellows maker's calculation: 0.5 in of 5255 lbf/in is 2628 lbf; with a thrust of 25200 lbf, 27828 lbf."""
    spring = units.to_base(5255, "lbf/in") * 0.5 * INCH
    assert spring / POUND == pytest.approx(2628, abs=0.51)
    assert calc.anchor_force(25200 * POUND, 2628 * POUND) / POUND == pytest.approx(27828, abs=0.5)


def test_equivalent_length_of_a_run_with_elbows() -> None:
    """A back pressure sheet, page D: 6 in pipe, 100 ft, 3 short, 3 long, 2 half and 1 square elbow, 10 ft of flexible
    pipe are 247.56 ft.
    """
    parts = {
        "short radius elbow, R = D": 3,
        "long radius elbow, R over 1.5 D": 3,
        "45 degree elbow": 2,
        "square elbow, 90 degree": 1,
    }
    total = 100.0
    for part, count in parts.items():
        figure = look_up("exhaust/equivalent_lengths", "equivalent_length_ratio", part=part, service="industrial")
        total += count * figure.typical * 6
    flexible = look_up(
        "exhaust/equivalent_lengths", "equivalent_length_factor", part="flexible connector", service="industrial"
    )
    assert total + flexible.typical * 10 == pytest.approx(247.56, abs=0.005)


def test_load_on_the_far_support() -> None:
    """Bansal, Example 5.1 p. 101: 3 kN at 2 m and 6 kN at 4 m on a beam of 6 m put 5.0 kN on its far end."""
    loads = calc.hanger_loads((0.0, 6.0), 0.0, {2.0: 3000 / G, 4.0: 6000 / G}, [0.0, 6.0])
    assert loads[1] / 1000 == pytest.approx(5.0, abs=0.05)


def framed(ends: tuple[float, float], per: float, masses: dict[float, float], supports: list[float]) -> list[float]:
    """The same beam by the frame solver, node by node: a second implementation."""
    places = sorted({*ends, *supports, *masses})
    loads = [Load(places.index(at), up=-mass * G) for at, mass in masses.items()]
    for n, (a, b) in enumerate(pairwise(places)):
        weight, moment = per * G * (b - a) / 2, per * G * (b - a) ** 2 / 12
        loads += [Load(n, up=-weight, moment=-moment), Load(n + 1, up=-weight, moment=moment)]
    feet = {places.index(at): PINNED if n == 0 else SLIDING for n, at in enumerate(supports)}
    answer = solve([(at, 0.0) for at in places], Section(0.05, 0.002), 200e9, feet, loads)
    return [answer.reactions[places.index(at)][1] for at in supports]


@given(
    st.lists(st.integers(0, 40), min_size=2, max_size=6, unique=True),
    st.dictionaries(st.integers(0, 40), st.floats(0.1, 20.0), max_size=4),
    st.floats(0.1, 6.0),
)
def test_loads_of_hangers_by_a_frame(supports: list[int], masses: dict[int, float], per: float) -> None:
    """No worked example of a run with overhangs and several hangers was found: the frame solver is the second
    opinion.
    """
    at, hung = sorted(s / 10 for s in supports), {place / 10: mass for place, mass in masses.items()}
    found, other = calc.hanger_loads((0.0, 4.0), per, hung, at), framed((0.0, 4.0), per, hung, at)
    scale = max(abs(f) for f in other)
    assert found == pytest.approx(other, abs=1e-7 * scale)
    assert sum(found) == pytest.approx(G * (4.0 * per + sum(hung.values())), rel=1e-9)


def test_three_supports_under_an_even_weight() -> None:
    """The tables of beams: of two equal spans under an even load w, the middle support has 10/8 w L, an end 3/8 w L."""
    loads = calc.hanger_loads((0.0, 2.0), 1.0, {}, [0.0, 1.0, 2.0])
    assert [load / G for load in loads] == pytest.approx([0.375, 1.25, 0.375], rel=1e-6)
