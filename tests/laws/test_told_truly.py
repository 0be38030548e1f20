"""What an answer says beside its number is true of this very question."""

from __future__ import annotations

import pytest

from gaugeblock.driveline.gears.answer import gearing
from gaugeblock.driveline.joints.answer import joint
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque
from gaugeblock.lines.heat import heat
from gaugeblock.tables.load import refdata
from gaugeblock.tubes.bend.sheet import bend
from gaugeblock.tubes.flare import flare

DATA = refdata()
ITEMS = sorted({r["item"] for t in ("lines/fluids", "lines/materials") for r in DATA.table(t).rows})


@pytest.mark.parametrize("item", ITEMS)
def test_room_to_a_limit_of_heat_is_no_room_in_the_cold(item: str) -> None:
    try:
        sheet = heat(item, at="-60 degC")
    except LookupError:  # a class or a state is asked
        return
    if not any(f.quantity == "temperature_minimum" for f in sheet.figures):
        assert " left" not in sheet.decision.do


@pytest.mark.parametrize("at", ["311 degF", "154.9 degC", "155.1 degC"])
def test_no_room_is_told_as_nought(at: str) -> None:
    sheet = heat("DOT 4", state="wet", at=at)
    decision = sheet.decision
    said = " ".join([decision.do, *(c.then for c in decision.candidates), *(c.reason for c in sheet.checks)])
    assert "-0 " not in said


@pytest.mark.parametrize("angle", ["6 deg", "8 deg", "10 deg"])
@pytest.mark.parametrize("speed", ["4000 rpm", "5000 rpm"])
def test_a_joint_that_stops_shows_the_angle_that_is_allowed(angle: str, speed: str) -> None:
    sheet = joint(angle, angle, phasing="in phase", speed=speed)
    if sheet.decision.kind == "stop" and sheet.decision.because[0] != "the joints cancel":
        assert [f.unit for f in sheet.decision.figures] == ["deg"]


@pytest.mark.parametrize(("size", "inches"), [("31x10.50R15", 31.0), ("33x12.5R15", 33.0), ("35 x 12.50-17", 35.0)])
def test_an_off_road_size_says_its_diameter(size: str, inches: float) -> None:
    assert gearing("3.55", tyre=size).figure("tyre_diameter").typical == inches


@pytest.mark.parametrize(
    ("kind", "od", "thread"),
    [
        ("bubble", "3/16 in", "nut M10x1"),
        ("ORB", "3/8 in", "port 9/16-18"),
        ("AN", "3/8 in", "nut 9/16-18"),
        ("double", "3/8 in", "nut 5/8-18"),
    ],
)
def test_a_flare_says_the_thread_first(kind: str, od: str, thread: str) -> None:
    assert flare(kind, od=od).title.endswith(thread)


@pytest.mark.parametrize("wall", [".049 in", ".065 in"])
def test_a_wall_over_its_limit_is_what_a_flare_asks_about(wall: str) -> None:
    sheet = flare("double", od="1/4 in", wall=wall)
    assert sheet.decision.kind in ("ask", "stop")
    assert "wall" in sheet.decision.do


@pytest.mark.parametrize("radius", ["1 in", "0.9 in", "1.3 in"])
def test_a_centre_line_radius_under_the_tube_is_asked_about_and_never_offered(radius: str) -> None:
    sheet = bend(od="1-3/4 in", wall=".120 in", material="1020 DOM", method="rotary draw", radius=radius)
    assert sheet.decision.kind == "none"
    assert "inside" in sheet.decision.do


def test_marks_on_a_head_are_a_grade() -> None:
    assert torque("3/8-16", grade="three lines", condition="dry").decision == (
        torque("3/8-16", grade="5", condition="dry").decision
    )


def test_a_caution_on_one_kind_of_clamp_stands_on_that_kind() -> None:
    for name, is_so in (("hose clamp", False), ("hose clamp, constant torque", True)):
        told = part(name, size="2 in", material="stainless screw" if not is_so else None).cautions
        assert any("spring-loaded" in c.text for c in told) is is_so


def test_figures_of_another_service_are_told_where_the_own_has_none() -> None:
    for name, size in (("O-ring boss stud end", "9/16-18"), ("axle drain plug", "M24x1.5")):
        sheet = part(name, size=size)
        assert sheet.decision.kind == "none"
        assert "industrial" in sheet.decision.do


def test_a_state_that_is_asked_is_not_told_room_in_the_cold() -> None:
    assert all(" left" not in c.then for c in heat("DOT 4", at="-50 degC").decision.candidates)
