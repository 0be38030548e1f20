"""A sleeve over a line, and what flows in it: their place in the estimate, on the sheet and in the section."""

from __future__ import annotations

import math

import pytest

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL
from gaugeblock.lines.job import Line
from gaugeblock.lines.paths import bodies_of, route_of_part
from gaugeblock.lines.route import route
from gaugeblock.tables.load import refdata
from gaugeblock.warmth.estimate import air_of

NEAR = {
    "beside": "exhaust header",
    "fluid": "gasoline",
    "od": "8 mm",
    "gap": "25 mm",
    "hot_od": "45 mm",
    "hot_temperature": "400 degC",
    "hot_finish": "0.85",
    "finish": "0.8",
    "air": "50 degC",
    "soak_air": "90 degC",
    "speed": "5 m/s",
}
FLOW = {"flow_temperature": "40 degC", "flow_conductivity": "0.12 W/(m*K)"}
SLEEVE = {"sleeve": "2 mm", "sleeve_finish": "0.8", "sleeve_conductivity": "0.05 W/(m*K)"}


def cases(**keys: str) -> dict[str, float]:
    """Case -> the likely temperature in K."""
    sheet = route(**{**NEAR, **keys})
    found = [f for f in sheet.figures if f.quantity == "line_temperature"]
    return {f.key["case"]: units.to_base(f.typical, f.unit) for f in found}


def test_flow_cools_while_the_engine_runs_and_not_after():
    still, flowing = cases(), cases(**FLOW)
    assert flowing["hot soak"] == still["hot soak"]
    for case in ("driving", "idling"):
        assert 313.15 < flowing[case] < still[case] - 5


@pytest.mark.parametrize("case", ["idling", "driving"])
def test_the_balance_with_flow_and_sleeve_closes_by_hand(case):
    """Second, plain implementation: each flow of heat written out at the temperature of the sheet, W a metre."""
    line_k = cases(**FLOW, **SLEEVE)[case]
    r1, r2, hot_r = 0.004, 0.006, 0.0225
    inner, through = math.pi * 3.66 * 0.12, 2 * math.pi * 0.05 / math.log(r2 / r1)
    carried = inner * (line_k - 313.15)
    surface = line_k + carried / through
    # crossed strings of two circles at a centre distance, then the exchange with surroundings by radiosities
    a, b, c = hot_r, r2, hot_r + 0.025 + r2
    same, other = math.sqrt(c**2 - (a - b) ** 2), math.sqrt(c**2 - (a + b) ** 2)
    turn_same, turn_other = math.asin((a - b) / c), math.asin((a + b) / c)
    uncrossed = 2 * same + a * (math.pi + 2 * turn_same) + b * (math.pi - 2 * turn_same)
    crossed = 2 * other + (a + b) * (math.pi + 2 * turn_other)
    exchange = (crossed - uncrossed) / 2  # area times view factor, a metre of length
    f_line, f_hot = exchange / (2 * math.pi * b), exchange / (2 * math.pi * a)
    e_hot, e_line, sigma = 0.85, 0.8, 5.670374419e-8
    far = sigma * 323.15**4
    j_hot, j_line = sigma * 673.15**4, sigma * surface**4
    for _ in range(200):
        on_hot, on_line = f_hot * j_line + (1 - f_hot) * far, f_line * j_hot + (1 - f_line) * far
        j_hot = e_hot * sigma * 673.15**4 + (1 - e_hot) * on_hot
        j_line = e_line * sigma * surface**4 + (1 - e_line) * on_line
    gained = 2 * math.pi * r2 * e_line * (on_line - sigma * surface**4)
    film = 0.5 * (surface + 323.15)
    k, nu, pr = (float(v) for v in air_of(refdata()).at(film))
    if case == "idling":
        ra = 9.80665 / film * (surface - 323.15) * (2 * r2) ** 3 / nu**2 * pr
        nusselt = (0.60 + 0.387 * ra ** (1 / 6) / (1 + (0.559 / pr) ** (9 / 16)) ** (8 / 27)) ** 2
    else:
        re = 5.0 * 2 * r2 / nu
        top = 0.62 * re**0.5 * pr ** (1 / 3) * (1 + (re / 282000) ** (5 / 8)) ** 0.8
        nusselt = 0.3 + top / (1 + (0.4 / pr) ** (2 / 3)) ** 0.25
    convected = nusselt * k / (2 * r2) * 2 * math.pi * r2 * (surface - 323.15)
    assert gained - convected - carried == pytest.approx(0.0, abs=1e-6 * gained)


def test_a_sleeve_without_flow_changes_size_and_finish_only():
    thin = cases(sleeve="2 mm", sleeve_finish="0.8")
    assert thin == pytest.approx(cases(od="12 mm"), abs=1e-6)
    assert cases(sleeve="2 mm", sleeve_finish="0.1")["hot soak"] < thin["hot soak"]


def test_a_thicker_sleeve_keeps_a_flowing_line_cooler():
    temperatures = [cases(**FLOW, **{**SLEEVE, "sleeve": f"{t} mm"})["idling"] for t in (1, 2, 4)]
    assert temperatures == sorted(temperatures, reverse=True)
    assert temperatures[0] > temperatures[-1] + 1


def test_the_conductivity_comes_from_the_tables_where_they_have_the_fluid():
    sheet = route(**NEAR, flow_temperature="40 degC")
    idling = next(f for f in sheet.figures if f.quantity == "line_temperature" and f.key["case"] == "idling")
    used = next(f for f in idling.inputs if f.quantity == "thermal_conductivity" and f.unit == "W/(m*K)" and f.low)
    assert used.basis == "common practice"
    assert idling.rule is not None
    assert idling.rule.name == "flowing_line_energy_balance"
    assert idling.trust == "CALCULATED, HABIT (from memory)"


@pytest.mark.parametrize(
    ("keys", "missing"),
    [
        ({"fluid": "DOT 4", "flow_temperature": "40 degC"}, "flow conductivity"),
        ({**FLOW, "sleeve": "2 mm", "sleeve_finish": "0.8"}, "sleeve conductivity"),
    ],
)
def test_flow_that_cannot_be_counted_is_left_out_and_said(keys, missing):
    sheet = route(**{**NEAR, **keys})
    check = next(c for c in sheet.checks if c.name == "cooling by flow")
    assert check.result == CANNOT_TELL
    assert missing in check.reason
    assert all("with flow" not in f.conditions for f in sheet.figures)


def test_a_sleeve_needs_its_finish():
    sheet = route(**NEAR, sleeve="2 mm")
    assert "sleeve finish" in next(c.reason for c in sheet.checks if c.name == "estimated temperature")


def test_the_section_shows_the_sleeve():
    plain, sleeved = (
        next(d.svg for d in route(**NEAR, **keys, draw=True).drawings if d.title == "section") for keys in ({}, SLEEVE)
    )
    assert "in its sleeve" in sleeved
    assert sleeved.count("<circle") == plain.count("<circle") + 1


def test_a_sleeve_of_a_job_takes_its_thickness_from_the_gap_of_the_paths():
    hot = {"name": "pipe", "points": [["0 in", "0 in", "0 in"], ["10 in", "0 in", "0 in"]], "od": "2 in"}
    beside = [["0 in", "4 in", "0 in"], ["10 in", "4 in", "0 in"]]
    line = Line.read(
        {
            "name": "line",
            "service": "fuel feed",
            "od": "10 mm",
            "sleeve": "1 to 2 mm",
            "sleeve_finish": "0.8",
            "points": beside,
            "hot": hot,
        },
        (),
        [],
    )
    bodies = bodies_of(line, refdata())
    assert bodies is not None
    assert bodies[0].radius == pytest.approx(0.007)
    gap = next(f for f in route_of_part(line, is_metric=True).figures if f.quantity == "gap")
    # 4 in less half of 2 in, less 5 mm and 2 mm; cut to 0.01 mm on the near side
    assert gap.typical == pytest.approx(4 * 25.4 - 25.4 - 7, abs=0.0201)
