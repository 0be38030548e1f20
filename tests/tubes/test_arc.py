"""How much tube a bend takes up; which gauge a wall is nearest to."""

from __future__ import annotations

import math

import pytest

import gaugeblock
from gaugeblock import units
from gaugeblock.errors import Ambiguous, InputError, LookupMiss

# NAVEDTRA 14119, bend allowance by the length along the centre line: a 180 degree U-bolt of 1-1/4 in radius takes
# 3.14 * 1.25 = 3.925 in.
U_BOLT = 3.925


def test_the_printed_example() -> None:
    figure = gaugeblock.arc("1-1/4 in", "180 deg").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(U_BOLT, rel=1e-3)  # the manual takes pi as 3.14


@pytest.mark.parametrize("angle", [15, 30, 90, 180])
def test_a_bend_in_two_steps_is_as_long_as_in_one(angle: int) -> None:
    def length(degrees: float) -> float:
        figure = gaugeblock.arc("140 mm", f"{degrees} deg").decision.figure
        assert figure is not None
        return units.to_base(figure.typical, figure.unit)

    assert 2 * length(angle / 2) == pytest.approx(length(angle))
    assert length(angle) == pytest.approx(0.140 * math.radians(angle))


@pytest.mark.parametrize(("radius", "angle"), [("0 in", "90 deg"), ("5 in", "400 deg"), ("5 in", "-30 deg")])
def test_what_no_bend_is_is_refused(radius: str, angle: str) -> None:
    with pytest.raises(InputError):
        gaugeblock.arc(radius, angle)


def test_an_odd_radius_is_asked_about() -> None:
    sheet = gaugeblock.arc("900 in", "90 deg")
    assert sheet.decision.kind == "none"
    assert sheet.questions


@pytest.mark.parametrize(
    ("wall", "system", "number"),
    [
        (".120 in", "BWG", "11"),
        (".065 in", "BWG", "16"),
        ("1/8 in", "sheet steel", "11"),
        ("1.5 mm", "sheet steel", "16"),
        (".0508 in", "AWG", "16"),
    ],
)
def test_the_gauge_of_a_wall_is_the_nearest(wall: str, system: str, number: str) -> None:
    sheet = gaugeblock.gauge(wall, system=system)
    assert sheet.figures[0].key["gauge"] == number
    assert sheet.decision.verb == f"{number} GAUGE"


def test_every_wall_of_a_system_is_its_own_gauge() -> None:
    rows = [r for r in gaugeblock.refdata().table("tubes/gauges").of("wall_thickness") if not r["standing"]]
    for row in rows:
        again = gaugeblock.gauge(f"{row.cells['value']} {row.cells['unit']}", system=row["system"]).figures[0]
        assert float(again.text) == float(row.cells["value"])


def test_a_wall_without_its_system_is_open_and_one_beyond_all_is_refused() -> None:
    with pytest.raises(Ambiguous):
        gaugeblock.gauge("1/8 in")
    with pytest.raises(LookupMiss):
        gaugeblock.gauge("2 in", system="BWG")


@pytest.mark.parametrize(
    ("flare", "od", "standard", "thread"),
    [
        ("AN", "3/8 in", None, "9/16-18"),  # AN818 figure 1, dash 6
        ("double", "3/16 in", "inverted flare", "3/8-24"),
        ("bubble", "3/16 in", None, "M10x1"),  # ISO 4038
        ("ORB", "3/8 in", None, "9/16-18"),  # SAE J1926
    ],
)
def test_the_thread_of_the_nut_is_told_when_it_is_asked(flare: str, od: str, standard: str | None, thread: str) -> None:
    decision = gaugeblock.flare(flare, od=od, standard=standard, fact="thread").decision
    assert decision.verb.endswith(f"THREAD {thread}")
    assert decision.figure is not None


def test_legs_to_the_corner_come_to_what_the_cut_length_of_their_shape_is() -> None:
    """Two ways to one stick: 20 and 12 in to the corner are 14 and 6 in to a 90 degree bend of 6 in radius."""
    corner = gaugeblock.arc("6 in", "90 deg", corner="20 in, 12 in").decision.figure
    legs = gaugeblock.arc("6 in", "90 deg", legs="14 in, 6 in").decision.figure
    assert corner is not None
    assert legs is not None
    assert corner.typical == pytest.approx(legs.typical)
    assert corner.typical == pytest.approx(20 + 12 - 2 * 6 + 6 * math.pi / 2)


@pytest.mark.parametrize("angle", [20, 45, 90, 135])
def test_the_bend_starts_a_setback_before_the_corner(angle: int) -> None:
    sheet = gaugeblock.arc("140 mm", f"{angle} deg", corner="900 mm")
    start, setback = sheet.decision.figure, next(f for f in sheet.figures if f.quantity == "setback")
    assert sheet.decision.verb == "BEND STARTS"
    assert start is not None
    assert start.typical == pytest.approx(900 - 140 * math.tan(math.radians(angle) / 2))
    asked = gaugeblock.arc("140 mm", f"{angle} deg", fact="setback").decision.figure
    assert asked is not None
    assert asked.typical == pytest.approx(setback.typical)


@pytest.mark.parametrize("corners", [(10, 22, 10), (10, 14, 16, 12), (9, 13, 15, 13, 9)])
def test_a_leg_between_two_bends_loses_both_setbacks(corners: tuple[int, ...]) -> None:
    """Of a hoop and of longer shapes: at 90 degrees a setback is the radius, the first and the last leg lose one."""
    text = ", ".join(f"{one} in" for one in corners)
    sheet = gaugeblock.arc("4-1/2 in", "90 deg", corner=text)
    straights = [f.typical for f in sheet.figures if f.quantity == "straight"]
    between = [one - 9 for one in corners[1:-1]]
    assert straights == pytest.approx([corners[0] - 4.5, *between, corners[-1] - 4.5])
    bends = len(corners) - 1
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical == pytest.approx(sum(straights) + bends * 4.5 * math.pi / 2)


def test_what_has_no_corner_or_no_room_is_refused() -> None:
    with pytest.raises(InputError, match="before the corner"):
        gaugeblock.arc("6 in", "90 deg", corner="4 in")
    with pytest.raises(InputError, match="no corner"):
        gaugeblock.arc("6 in", "180 deg", corner="20 in")
    with pytest.raises(InputError, match="give one"):
        gaugeblock.arc("6 in", "90 deg", corner="20 in", legs="20 in")
    with pytest.raises(InputError, match="one of these"):
        gaugeblock.arc("6 in", "90 deg", fact="colour")
    with pytest.raises(InputError, match="give the leg"):
        gaugeblock.arc("6 in", "90 deg", fact="start")
    assert gaugeblock.arc("6 in", "180 deg", fact="setback").decision.kind == "none"
