"""A propeller shaft: what stops it, what is asked, and what it does when it is shorter, turned round or mirrored."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.forms import keeps_form
from gaugeblock import shaft
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.propshafts.job import PropellerShaft
from gaugeblock.driveline.propshafts.whip import STRESS
from gaugeblock.errors import InputError, LookupMiss

KEYS = set(PropellerShaft.keys)
TUBE = {"od": "3 in", "wall": "0.083 in", "material": "steel"}
WAY = {"length": "48 in", "bump": "47-1/2 in", "droop": "48-3/4 in"}
FAST = {"engine_speed": "5000 rpm", "gears": "3.06, 1.63, 1"}
WHIPS = "speed against whipping"


def result(sheet: Sheet, name: str) -> str:
    (check,) = [c for c in sheet.checks if c.name == name]
    return check.result


def whip(**more: str) -> float:
    return shaft(**{**TUBE, **WAY, **FAST, **more}).figure("critical_speed").typical


def test_a_shaft_that_is_known_is_used() -> None:
    sheet = shaft(**TUBE, **WAY, **FAST)
    assert sheet.decision.kind == "use"
    assert sheet.title == "propeller shaft, 3 in x 0.083 in, steel"
    assert (sheet.decision.verb, sheet.decision.figures[0].text) == ("MAKE", "48")
    assert [round(f.typical) for f in sheet.figures if f.quantity == "driveshaft_speed"] == [5000, 3067, 1634]
    assert [f.typical for f in sheet.figures if f.quantity == "slip_travel"] == pytest.approx([0.5, 0.75])


@pytest.mark.parametrize(
    ("speed", "kind", "told"), [("5600", "use", "ok"), ("6000", "ask", "not ok"), ("8500", "stop", "not ok")]
)
def test_the_faster_it_turns_the_less_is_let_through(speed: str, kind: str, told: str) -> None:
    """It whips at 8,118 rpm here: 70 % of that is 5,690."""
    sheet = shaft(**TUBE, **WAY, speed=f"{speed} rpm")
    assert (sheet.decision.kind, result(sheet, WHIPS)) == (kind, told)


def test_the_longer_piece_of_two_whips_first() -> None:
    one, two = whip(), whip(front_length="20 in")
    assert one == two
    assert whip(front_length="60 in") < one
    assert "front_length" in [
        q.key for q in shaft(**TUBE, **WAY, **FAST, shafts_side="1 deg, 1 deg, 2 deg, 1 deg").questions
    ]


@pytest.mark.parametrize(
    ("own", "factor"), [({"modulus": "10000 ksi"}, 10 / 29), ({"density": "2700 kg/m**3"}, 7850 / 2700)]
)
def test_a_shafts_own_figure_takes_the_place_of_its_metals(own: dict[str, str], factor: float) -> None:
    """It whips as the root of E over rho; steel has 29,000 ksi and 7,850 kg/m**3 to 2 %."""
    assert whip(**own) / whip() == pytest.approx(factor**0.5, rel=0.02)


def test_the_joints_turn_as_fast_as_the_fastest_gear_turns_the_shaft() -> None:
    """5,000 rpm through 0.7: 7,142.9."""
    sheet = shaft(**TUBE, **WAY, engine_speed="5000 rpm", gears="3.06, 0.7", shafts_side="1 deg, 4 deg, 1 deg")
    assert {f.key["speed"] for f in sheet.figures if f.quantity == "joint_acceleration"} == {"7143 rpm"}


@pytest.mark.parametrize(
    ("more", "kind", "says"),
    [
        ({"slip_in": "0.4 in"}, "stop", "bottoms"),
        ({"slip_in": "1 in"}, "use", ""),
        ({"engaged": "0.7 in"}, "stop", "pulls out"),
        ({"engaged": "1.5 in", "spline_diameter": "1-1/4 in"}, "ask", "engaged at the longest"),
        ({"engaged": "2.5 in", "spline_diameter": "1-1/4 in"}, "use", ""),
        ({"torque": "9000 lbf*ft", "yield_strength": "60 ksi"}, "stop", "yields"),
        ({"torque": "900 lbf*ft", "yield_strength": "60 ksi"}, "use", ""),
        ({"shafts_side": "3 deg, 5 deg, 9 deg", "phasing": "in phase"}, "stop", "within"),
        ({"shafts_side": "3 deg, 5 deg, 3 deg", "phasing": "wrong phase"}, "stop", ""),
        ({"length": "48 mm", "bump": "47 mm", "droop": "49 mm"}, "none", "did you mean"),
        ({"wall": "0.83 in"}, "none", "no usual wall"),
    ],
)
def test_what_stops_and_what_is_asked(more: dict[str, str], kind: str, says: str) -> None:
    sheet = shaft(**{**TUBE, **WAY, **FAST, "speed": "2500 rpm", **more})
    assert sheet.decision.kind == kind, sheet.decision
    assert says.lower() in sheet.decision.do.lower()


def test_wind_up_moves_what_is_judged_to_the_shaft_under_power() -> None:
    slopes = {"shafts_side": "3 deg, 5 deg, 1 deg", "phasing": "in phase", "speed": "2500 rpm"}
    still = shaft(**TUBE, **WAY, **slopes)
    assert result(still, "second joint cancels the first") == "not ok"
    assert result(shaft(**TUBE, **WAY, **slopes, wind_up="2 deg"), "second joint cancels the first") == "ok"


def test_a_question_about_whip_alone_gives_the_speed_to_stay_under() -> None:
    sheet = shaft(**TUBE, length="48 in")
    assert (sheet.decision.kind, sheet.decision.verb) == ("use", "KEEP UNDER")
    kept, critical = sheet.figure("driveshaft_speed_kept").typical, sheet.figure("critical_speed").typical
    assert sheet.decision.figures[0].typical == kept == pytest.approx(0.7 * critical)
    assert [shaft(**TUBE, length="48 in", speed=f"{n} rpm").decision.kind for n in (5000, 6500, 9000)] == [
        "use",
        "ask",
        "stop",
    ]


def test_what_is_missing_is_asked_one_by_one() -> None:
    for key in ("od", "wall", "material", "bump", "droop"):
        kept = {k: v for k, v in {**TUBE, **WAY, **FAST}.items() if k != key}
        sheet = shaft(**kept, slip_in="1 in")
        assert sheet.decision.kind == "ask"
        assert key in [q.key for q in sheet.questions]
    longest = shaft(**TUBE, **FAST)  # how long it may be is known, how long it is must be measured
    assert longest.decision.figures[0].quantity == "joint_distance_maximum"
    assert [q.key for q in longest.questions] == ["length"]


@pytest.mark.parametrize(
    "wrong",
    [
        {"wall": "2 in"},
        {"shafts_side": "3 deg, 5 deg"},
        {"bump_side": "3 deg, 5 deg, 3 deg"},
        {"phasing": "sideways"},
        {"gears": ",".join(["1"] * 13)},
        {"od": "3"},
    ],
)
def test_what_cannot_be_read_is_refused(wrong: dict[str, str]) -> None:
    with pytest.raises(InputError):
        shaft(**{**TUBE, **WAY, **wrong})


def test_a_material_without_a_row_is_refused() -> None:
    with pytest.raises(LookupMiss):
        shaft(**{**TUBE, **WAY, "material": "carbon fibre"})


@settings(max_examples=60, deadline=None)
@given(st.floats(20, 70), st.floats(0.1, 5))
def test_a_shorter_shaft_never_whips_slower(length: float, less: float) -> None:
    long, short = (whip(length=f"{n:.3f} in", bump="19 in", droop="19.5 in") for n in (length, length - less))
    assert short >= long


SLOPES = st.lists(st.integers(-6, 6), min_size=3, max_size=3)


@settings(max_examples=60, deadline=None)
@given(SLOPES, SLOPES)
def test_angles_are_the_same_of_a_car_turned_round_or_in_a_mirror(side: list[int], top: list[int]) -> None:
    def angles(side: list[int], top: list[int]) -> list[float]:
        said = {k: ", ".join(f"{n} deg" for n in v) for k, v in (("shafts_side", side), ("shafts_top", top))}
        sheet = shaft(**TUBE, **WAY, **said, phasing="in phase")
        keeps_form(sheet, KEYS)
        return [f.typical for f in sheet.figures if f.quantity == "working_angle_true"]

    here = angles(side, top)
    assert angles(side, [-n for n in top]) == pytest.approx(here)
    assert angles([-n for n in side[::-1]], top[::-1]) == pytest.approx(here[::-1])


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(["25.4", "1"]), st.integers(30, 70))
def test_the_unit_it_was_typed_in_changes_nothing(size: str, length: int) -> None:
    mm = shaft(od="76.2 mm", wall="2.1082 mm", material="steel", length=f"{length * 25.4:g} mm")
    assert mm.figure("critical_speed").typical == pytest.approx(
        shaft(**TUBE, length=f"{length} in").figure("critical_speed").typical, rel=1e-9
    )


@pytest.mark.parametrize(("od", "wall", "rpm"), [("3 in", "0.083 in", "6000 rpm"), ("4 in", "0.125 in", "4500 rpm")])
def test_the_longest_shaft_is_the_one_that_is_kept_under_that_speed(od: str, wall: str, rpm: str) -> None:
    """Asked again with the length that it said, the speed to keep under is the speed that was asked."""
    sheet = shaft(od=od, wall=wall, material="steel", speed=rpm)
    assert sheet.decision.kind == "ask"
    longest = sheet.decision.figures[0]
    assert longest.quantity == "joint_distance_maximum"
    again = shaft(od=od, wall=wall, material="steel", length=f"{longest.typical} in")
    assert again.decision.figures[0].typical == pytest.approx(float(rpm.removesuffix(" rpm")), rel=1e-6)


def test_an_engine_and_its_top_gear_say_the_speed_too() -> None:
    sheet = shaft(od="3 in", wall="0.083 in", material="steel", engine_speed="6000 rpm", gears="1")
    assert sheet.decision.figures[0].quantity == "joint_distance_maximum"


def test_what_is_left_of_a_tube_under_its_torque() -> None:
    (check,) = [
        c for c in shaft(**TUBE, **WAY, torque="900 lbf*ft", yield_strength="60 ksi").checks if c.name == STRESS
    ]
    assert check.required is not None
    assert check.actual is not None
    assert check.margin == pytest.approx(1 - check.actual.value / check.required.value)


@pytest.mark.parametrize("lacking", ["od", "wall", "material"])
def test_how_long_a_shaft_may_be_is_told_of_a_whole_tube_only(lacking: str) -> None:
    whole = {"od": "3 in", "wall": "0.083 in", "material": "steel", "speed": "5000 rpm"}
    assert any(figure.quantity == "joint_distance_maximum" for figure in shaft(**whole).figures)
    less = {key: value for key, value in whole.items() if key != lacking}
    assert not any(figure.quantity == "joint_distance_maximum" for figure in shaft(**less).figures)
