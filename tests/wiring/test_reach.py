"""How far a wire may run, and what a parked car may draw: the answers ``drop`` and ``parked`` turned round."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, drop, parked, reach
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.errors import InputError

WIRES = ("18 AWG", "14 AWG", "12 AWG", "8 AWG", "2 AWG", "1.5 mm2", "4 mm2", "16 mm2")


@given(st.sampled_from(WIRES), st.integers(1, 60), st.floats(0.1, 1.5), st.sampled_from(["wire", "body"]))
def test_over_its_reach_a_wire_loses_the_volts(wire: str, amps: int, volts: float, back: str) -> None:
    sheet = reach(wire, f"{amps} A", f"{volts:.3f} V", back=back)
    if sheet.decision.kind == STOP:  # it is too hot over any run
        assert drop(wire, f"{amps} A", "1 m", back=back).decision.kind == STOP
        return
    figure = sheet.decision.figure
    lost = drop(wire, f"{amps} A", f"{figure.typical:.9f} {figure.unit}", back=back)
    if lost.decision.figures:
        assert lost.decision.figures[0].typical == pytest.approx(round(volts, 3), rel=1e-6)
    assert float(figure.text) <= figure.typical  # what is shown is no further


@given(st.integers(30, 120), st.integers(3, 200))
def test_a_car_that_draws_so_much_stands_for_the_days(charge: int, days: int) -> None:
    most = parked(battery=f"{charge} Ah", days=f"{days} days")
    assert most.decision.kind == USE
    shown = most.decision.figure
    stands = parked(f"{shown.typical:.9f} mA", battery=f"{charge} Ah")
    assert stands.figure("parking_time").typical == pytest.approx(days, rel=1e-6)


def test_what_was_not_said_is_asked_and_what_no_car_has_questioned() -> None:
    both = reach("4 mm2", "20 A", "0.5 V")
    assert both.decision.kind == ASK
    assert both.decision.figures[1].typical == pytest.approx(2 * both.decision.figures[0].typical)
    assert reach("12 AWG", "20000 A", "0.5 V").decision.kind == NONE
    with pytest.raises(InputError):
        reach("12 AWG", "20 A", "0 V")
    with pytest.raises(InputError):
        parked(battery="60 Ah")


@pytest.mark.parametrize(
    ("line", "same"),
    [
        ("how far can i run 4mm2 before i lose half a volt at 20 amps", lambda: reach("4 mm2", "20 A", "0.5 V")),
        (
            "car sits 3 months on a 70 ah battery what drain can i live with",
            lambda: parked(battery="70 Ah", days="90 days"),
        ),
    ],
)
def test_it_is_asked_in_plain_words(line: str, same: object) -> None:
    assert ask(line).decision == same().decision
