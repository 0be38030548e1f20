"""A hydraulic clutch: the fluid that leaves the master fills the slave, whichever of the four is left out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, brake, clutch
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.errors import Ambiguous, InputError

BORES = st.sampled_from(["5/8 in", "0.7 in", "3/4 in", "13/16 in", "7/8 in", "1 in", "19.05 mm", "22.2 mm"])


@given(BORES, BORES, st.integers(10, 35))
def test_each_of_the_four_gives_back_the_others(master: str, slave: str, stroke: int) -> None:
    way = clutch(slave, master=master, stroke=f"{stroke} mm").decision.figure
    assert way is not None
    travel = f"{way.typical!r} {way.unit}"
    back = clutch(slave, master=master, travel=travel)
    if back.decision.kind == NONE:  # further than a slave goes
        return
    assert back.decision.figure is not None
    assert back.decision.figure.typical == pytest.approx(stroke)
    for wanted, options in (("master", {"slave": slave}), ("slave", {"master": master})):
        figure = clutch(**options, stroke=f"{stroke} mm", travel=travel).decision.figure
        assert figure is not None
        number, unit = {"master": master, "slave": slave}[wanted].split()
        bore = float(number) if "/" not in number else eval_fraction(number)
        assert figure.typical == pytest.approx(bore * (25.4 if unit == "in" else 1))


def eval_fraction(text: str) -> float:
    """A fraction as a number."""
    top, bottom = text.split("/")
    return int(top) / int(bottom)


def test_it_is_the_stroke_of_a_brake_circuit_with_one_piston() -> None:
    """The same fluid by volumes, as the brake answer works them (49 CFR 570 and its sum of volumes)."""
    of_brake = brake("3/4 in", kind="slave cylinder", bore="7/8 in", pistons="1", wheels="1", travel="12 mm", ratio="6")
    of_clutch = clutch("7/8 in", master="3/4 in", travel="12 mm", ratio="6")
    for quantity in ("stroke_needed", "pedal_travel"):
        assert base(of_clutch.figure(quantity)) == pytest.approx(base(of_brake.figure(quantity)))


def test_equal_bores_move_alike_and_push_alike() -> None:
    sheet = clutch("3/4 in", master="3/4 in", stroke="30 mm", ratio="6", force="90 lbf")
    assert sheet.decision.kind == USE
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical == pytest.approx(30)
    assert sheet.figure("slave_force").typical == pytest.approx(540)  # 90 x 6


def test_what_is_gained_in_force_is_lost_in_way() -> None:
    sheet = clutch("1 in", master="5/8 in", stroke="1.1 in", ratio="5", force="100 N")
    assert sheet.decision.figure is not None
    way = base(sheet.decision.figure) * base(sheet.figure("slave_force"))
    assert way == pytest.approx(1.1 * 0.0254 * 500)


def test_what_is_left_out_or_too_much_is_told() -> None:
    with pytest.raises(Ambiguous, match="three of the two bores"):
        clutch("7/8 in", master="5/8 in")
    with pytest.raises(InputError, match="nothing is left"):
        clutch("7/8 in", master="5/8 in", stroke="30 mm", travel="14 mm")
    assert clutch("7 in", master="5/8 in", stroke="30 mm").decision.kind == NONE
    assert clutch("7/8 in", master="5/8 in", stroke="300 mm").decision.kind == NONE


def test_the_bore_before_slave_is_no_travel() -> None:
    assert ask("slave travel with a 3/4 master and 7/8 slave 1 inch stroke") == clutch(
        "7/8 in", master="3/4 in", stroke="1 in"
    )


def test_a_slave_of_a_clutch_is_asked_of_as_one() -> None:
    """Not how far a brake's piston moves until the brake is hard on, nor in which order its wheels are bled."""
    sheet = brake("5/8 in", force="90 lbf", ratio="6", kind="slave cylinder", bore="7/8 in", stroke="1.2 in")
    asked = " ".join(q.text for q in sheet.questions)
    assert "clutch" in asked
    assert "brake" not in asked
