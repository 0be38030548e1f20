"""Power of a torque at a speed and of a current at a voltage, as they are asked; and no other line."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.plain.powers import powers
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

# hp = lbf ft x rpm / 5252 and kW = N m x rpm / 9549, as handbooks print them (Machinery's Handbook, power and torque);
# A = W / V.
ASKED = [
    ("hp from 400ftlb at 4500", 400 * 4500 / 5252, "hp"),
    ("what hp does 400 lb ft make at 4500 rpm", 400 * 4500 / 5252, "hp"),
    ("torque of 300 hp at 5000 rpm", 300 * 5252 / 5000, "lbf*ft"),
    ("rpm for 300 hp at 315 ft lb", 300 * 5252 / 315, "rpm"),
    ("350 nm at 4000 rpm in kw", 350 * 4000 / 9549, "kW"),
    ("55w bulb amps 12v", 55 / 12, "A"),
    ("how many amps does a 55 watt bulb draw at 12 volts", 55 / 12, "A"),
    ("100 watts 24v amps", 100 / 24, "A"),
    ("watts of 5 amps at 12 volts", 60.0, "W"),
]


@pytest.mark.parametrize(("line", "value", "unit"), ASKED)
def test_the_third_of_two(line: str, value: float, unit: str) -> None:
    first = powers(words_of(line), refdata())[0]
    assert first.unit == unit
    assert float(first.exact) == pytest.approx(value, rel=1e-3)
    asked = gaugeblock.ask(line)
    assert asked == first


@pytest.mark.parametrize(
    "line",
    [
        "what wire for 55 watts 12 v 10 ft",
        "fuse for 55 watts at 12 volts amps",
        "300 hp exhaust pipe size",
        "400 lb ft at 4500 rpm 4340 shaft hp",
        "not 55 watts 12 v amps",
        "55 watts 240 v amps",
        "torque 3/8-16 grade 8 300 hp",
        "0 watts 12 v amps",
    ],
)
def test_any_other_line_is_none_of_these(line: str) -> None:
    found = powers(words_of(line), refdata())
    assert found == () or line.startswith("0 ")
