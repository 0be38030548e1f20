"""Wiring against printed answers, each with its source, to half a unit in the last printed digit."""

from __future__ import annotations

import pytest

from gaugeblock import circuit, look_up, units
from gaugeblock.calc import wiring as calc

FOOT = 0.3048


@pytest.mark.parametrize(
    ("ohm_a_foot", "feet", "amperes", "printed", "half"),
    [(0.00028, 90, 20, 0.504, 0.0005), (0.00126, 39, 20, 0.98, 0.005), (0.00126, 156, 20, 3.93, 0.005)],
)
def test_voltage_drop(ohm_a_foot: float, feet: float, amperes: float, printed: float, half: float) -> None:
    """AC 43.13-1B Tables 11-7 and 11-8 p. 11-22; the run counts the earth wire."""
    assert calc.voltage_drop(ohm_a_foot / FOOT, feet * FOOT, amperes) == pytest.approx(printed, abs=half)


def test_voltage_drop_out_and_back() -> None:
    """A training page: AWG 16, 4.99 ohm/1000 ft, 100 ft one way and 4 A lose 4.0 V, of 24 V."""
    got = calc.voltage_drop(units.to_base(4.99, "ohm/1000ft"), 100 * FOOT, 4, 2)
    assert got == pytest.approx(4.0, abs=0.05)


def test_voltage_drop_in_metres() -> None:
    """A page on a 12 V system: 1.3 mm2, 0.01785 ohm mm2/m, 20 m one way and 1 A lose 0.549 V, 4.58 % of 12 V."""
    got = calc.voltage_drop(0.01785 / 1.3, 20, 1, 2)
    assert got == pytest.approx(0.549, abs=0.0005)
    assert 100 * got / 12 == pytest.approx(4.58, abs=0.005)


# Areas in circular mils of a printed table of the American wire gauge (AWGHP).
GAUGES = [(10, 10381), (14, 4106.8), (18, 1624.3), (20, 1021.5), (6, 26250)]


@pytest.mark.parametrize(("number", "area"), GAUGES)
def test_gauge_by_the_formula_of_astm_b258(number: int, area: float) -> None:
    assert calc.gauge_of_area(area * 5.067074790974977e-10) == pytest.approx(number, abs=0.001)


@pytest.mark.parametrize(
    ("insulation", "printed"), [(60, 0.58), (75, 0.75), (80, 0.78), (90, 0.82), (105, 0.85), (125, 0.89)]
)
def test_engine_space_factors_of_the_boat_rule(insulation: float, printed: float) -> None:
    """33 CFR 183.425 Table 5 note 1: air of 50 degC under a table of 30 degC.

    0.85 stands for 0.856, which would round to 0.86: the rule cuts it.
    """
    got = calc.ambient_factor(insulation + 273.15, 323.15, 303.15)
    assert got == pytest.approx(printed, abs=0.0065)
    row = look_up(
        "wiring/wire",
        "engine_space_factor",
        item="boat copper wire",
        size="all sizes",
        condition=f"{insulation} degC insulation",
    )
    assert row.typical == printed


# A cable maker's table of UL 1426 cable in an engine space: Table 5 x 0.85 x the bundle's factor.
DERATED = [
    ("AWG 2", "7 to 24", 89.3),
    ("AWG 6", "3", 71.4),
    ("AWG 12", "3", 26.8),
    ("AWG 14", "4 to 6", 17.9),
    ("AWG 1/0", "4 to 6", 145.4),
]


@pytest.mark.parametrize(("size", "bundle", "printed"), DERATED)
def test_ampacity_in_an_engine_space_and_a_bundle(size: str, bundle: str, printed: float) -> None:
    boat = {"item": "boat copper wire"}
    table = look_up("wiring/wire", "current_maximum", **boat, size=size, condition="105 degC insulation")
    factor = look_up(
        "wiring/wire", "bundle_factor", **boat, size="all sizes", condition=f"{bundle} conductors in a bundle"
    )
    got = calc.derated_current(table.typical, 0.85, factor.typical)
    assert got == pytest.approx(printed, abs=0.051)


@pytest.mark.parametrize(("size", "printed"), [("AWG 12", 38), ("AWG 4/0", 378)])
def test_ampacity_inside_an_engine_space(size: str, printed: float) -> None:
    """A boat cable page's Table E: 105 degC insulation."""
    table = look_up(
        "wiring/wire", "current_maximum", item="boat copper wire", size=size, condition="105 degC insulation"
    )
    assert calc.derated_current(table.typical, 0.85) == pytest.approx(printed, abs=0.5)


@pytest.mark.parametrize("celsius", [5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100])
def test_resistance_by_temperature(celsius: float) -> None:
    """IEC 60228's factors to 20 degC, three figures; the standard rounds 1/(1 + 0.004 (t - 20))."""
    row = look_up(
        "wiring/wire",
        "resistance_to_reference_factor",
        item="copper conductor",
        size="all sizes",
        condition=f"{celsius} degC",
    )
    assert 1 / calc.resistance_hot(1.0, celsius + 273.15) == pytest.approx(row.typical, abs=0.0045)


@pytest.mark.parametrize(("drop", "printed", "area"), [(0.03, 6271, 9343), (0.10, 1881, 2336)])
def test_wire_for_a_drop_by_circular_mils(drop: float, printed: float, area: float) -> None:
    """A chandler's catalogue, 12 V, 10 A, 21 ft out and back, K 10.75: AWG 10 for 3 %, AWG 16 for 10 %."""
    mils = 10.75 * 10 * 21 / (drop * 12)
    assert mils == pytest.approx(printed, abs=0.5)
    assert mils < area


@pytest.mark.parametrize(
    ("wire", "insulation", "printed"), [("AWG 14", 105, 52.5), ("AWG 18", 60, 15), ("AWG 10", 80, 75)]
)
def test_largest_fuse_of_the_boat_rule(wire: str, insulation: int, printed: float) -> None:
    """33 CFR 183.455(c)(1): under 50 V, 150 % of the table's current; our answer keeps to 100 %."""
    table = look_up(
        "wiring/wire", "current_maximum", item="boat copper wire", size=wire, condition=f"{insulation} degC insulation"
    )
    share = look_up("wiring/limits", "fuse_share_maximum", subject="fuse rating", case="under 50 V", service="marine")
    assert table.typical * share.typical / 100 == printed


def test_a_whole_circuit_by_hand() -> None:
    """20 A, 10 ft, 12 V, 3 % with GXL at 40 degC, worked by hand with AC 43.13-1B's resistance at the wire's heat.

    AWG 10: 70 A x sqrt(85/95) = 66.2 A; 40 + 85 (20/66.2)^2 = 47.8 degC; 1.26 x 282.3/254.5 = 1.398 ohm/1000 ft;
    20 ft and 20 A lose 0.559 V, too much of 0.36 V. AWG 8: 90 x 0.946 = 85.1 A; 44.7 degC; 0.768 ohm/1000 ft; 0.307 V.
    A truck part maker's table allows AWG 8 less than that, 80 A.
    """
    got = circuit("20 A", "10 ft", "12 V", drop="3 %", insulation="GXL", air="40 degC", bundle="1", back="wire")
    assert got.decision.kind == "use"
    assert got.decision.figures[0].text == "8"
    allowed = got.figure("current_maximum")
    assert (allowed.typical, allowed.inputs[0].typical) == (80, pytest.approx(85.1, abs=0.05))
    assert got.figure("voltage_drop").typical == pytest.approx(0.307, abs=0.0005)
