"""What is told first of a shaft, a joint, a tyre, a hardness: the greatest speed, the section that governs, no number
that nothing rests on.
"""

from __future__ import annotations

import io
import re
from contextlib import redirect_stdout
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import axle, domains, gearing, hardness, joint, ratio, shaft, steel, tyre
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import plausible_range
from gaugeblock.answer.short import short
from gaugeblock.cli import main
from gaugeblock.driveline import keys, page
from gaugeblock.driveline.hardness import converted, torsional_yields
from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.tables.load import refdata

DATA = refdata()
TUBE = {"od": "76 mm", "wall": "2 mm", "material": "steel", "length": "1500 mm"}
MADE = {"bump": "1490 mm", "droop": "1510 mm", "slip_in": "40 mm", "engaged": "80 mm"}


@pytest.mark.parametrize("gears", list(permutations(["4.31", "2.33", "0.79"])))
def test_the_highest_speed_of_a_shaft_is_the_one_that_is_shown(gears: tuple[str, ...]) -> None:
    sheet = shaft(**TUBE, engine_speed="4200 rpm", gears=", ".join(gears))
    first = next(f for f in sheet.figures if f.quantity == "driveshaft_speed")
    assert first.typical == pytest.approx(4200 / 0.79)
    assert "driveshaft speed 5316 rpm" in short(sheet)


@given(st.floats(0.3, 1.4), st.booleans())
@settings(max_examples=40, deadline=None)
def test_near_its_whip_a_shaft_is_told_by_speeds_and_never_by_its_length(share: float, is_made: bool) -> None:
    """Under the shops' share it is used, over it asked, at its whip and over it stops: the first screen has the share,
    what shops keep to, and what to do; the number is a speed.
    """
    made = MADE if is_made else {}
    whips = shaft(**TUBE, **made, speed="2000 rpm").figure("critical_speed").typical
    sheet = shaft(**TUBE, **made, speed=f"{share * whips:.2f} rpm")
    decision = sheet.decision
    if share >= 1.001:
        assert decision.kind == STOP
        assert "whips at" in decision.do
    elif 0.701 < share < 0.999:
        assert decision.kind == ASK
        assert [f.unit for f in decision.figures] == ["rpm"]
        told = " ".join(short(sheet).split())
        for said in ("of the speed at which it whips", "shops keep it under 70 %", "use a larger tube"):
            assert said in told
    elif share < 0.699:
        assert decision.kind == USE


@pytest.mark.parametrize(
    "more",
    [
        {"speed": "6500 rpm"},
        {"speed": "2000 rpm", "slip_in": "5 mm"},
        {"speed": "2000 rpm", "engaged": "5 mm"},
        {"speed": "2000 rpm", "torque": "9000 N*m", "yield_strength": "300 MPa"},
    ],
)
def test_a_shaft_that_stops_says_what_is_refused_in_plain_words(more: dict[str, str]) -> None:
    sheet = shaft(**{**TUBE, **MADE, **more})
    assert sheet.decision.kind == STOP
    assert "refused: 1500 mm (59 1/16 in) between the joints" in " ".join(short(sheet).split())


def test_the_card_of_a_shaft_near_its_whip_has_no_length_as_its_number() -> None:
    given = {**TUBE, **MADE, "speed": "5316 rpm"}
    lines = "\n".join(f'{key} = "{text}"' for key, text in given.items())
    job = domains.parse_job(
        f'[job]\nvehicle = "EXAMPLE"\n[[shafts]]\nname = "rear"\n{lines}', hooks=domains.hooks(DATA)
    )
    item = page.item(job.shafts[0], job.shop, DATA)
    assert item.sheet.decision.kind == ASK
    assert {f.unit for f in item.sheet.decision.figures} == {"rpm"}


STEEL = {"treatment": "quenched and tempered", "temper": "800 degF"}
PULL = {"wheel_load": "1000 lbf", "grip": "0.9", "radius": "13 in"}
WHOLE = {**PULL, "engine_torque": "300 lbf*ft", "gear": "2.5", "ratio": "4", "differential": "open"}


@pytest.mark.parametrize(("pitch", "teeth"), [("24/48", "31"), ("24/48", "28"), ("16/32", "20")])
@pytest.mark.parametrize("diameter", [None, "28 mm", "32 mm", "36 mm", "1-1/2 in"])
@pytest.mark.parametrize("pull", [PULL, WHOLE, {**WHOLE, "wheel_load": "9000 lbf", "engine_torque": "3000 lbf*ft"}])
def test_where_the_root_of_the_spline_governs_it_is_said_with_its_diameter(
    pitch: str, teeth: str, diameter: str | None, pull: dict[str, str]
) -> None:
    sheet = axle("4340", **STEEL, **pull, diameter=diameter, spline=pitch, teeth=teeth)
    sizes = [f for f in sheet.figures if f.quantity == "shaft_diameter"]
    by_spline = [f for f in sizes if f.conditions == "under the spline roots"]
    assert ("root of its spline governs" in sheet.decision.do) == bool(by_spline)
    if by_spline:
        told = " ".join(short(sheet, whole=True).split())
        assert re.search(r"root of its spline governs: [0-9.]+ (in|mm)", told)
        least = min(base(f) for f in sizes)
        assert base(by_spline[0]) == least


@given(st.floats(0, 52))
@settings(max_examples=60, deadline=None)
def test_a_hardness_never_judges_a_shaft_by_more_than_distortion_energy_or_the_paper_has(number: float) -> None:
    of = keys.hardness(f"{number:.1f} HRC", DATA)
    governs = torsional_yields(of, DATA)
    if not governs:
        return
    yields = converted(of, "yield_strength_typical", DATA)
    printed = converted(of, "torsional_yield_strength_typical", DATA)
    assert yields is not None
    assert printed is not None
    assert base(governs[0]) == pytest.approx(min(base(yields) / 3**0.5, base(printed)))
    if number < 20.1:
        return  # no hardness of a shaft: asked about first
    sheet = steel("4340", hardness=of.text, shaft="1-1/4 in", torque="300 lbf*ft")
    factor = next(f for f in sheet.figures if f.quantity == "torsional_yield_factor")
    assert base(factor.inputs[0]) == pytest.approx(base(governs[0]))


@pytest.mark.parametrize("typed", ["42 HRC", "HRC 42", "42HRC", "42 Rockwell C", "302 HB", "302 Brinell"])
def test_a_hardness_with_its_scale_is_read_as_one_word_or_two(typed: str) -> None:
    number, scale = keys.split_hardness(typed) or ("", "")
    shown = []
    for argv in ([typed], [number, scale]):
        out = io.StringIO()
        with redirect_stdout(out):
            assert main(["hardness", *argv]) == 0
        shown.append(out.getvalue())
    assert shown[0] == shown[1]
    assert number in shown[0]


def test_without_its_scale_a_hardness_is_none() -> None:
    assert keys.split_hardness("42") is None
    assert hardness("HRC", "42").decision.kind == USE


@given(st.floats(0.5, 60), st.floats(500, 6000))
@settings(max_examples=60, deadline=None)
def test_an_angle_that_no_joint_runs_at_is_questioned_and_not_calculated_with(angle: float, speed: float) -> None:
    typed = f"{angle:.2f} deg"
    sheet = joint(typed, typed, phasing="in phase", speed=f"{speed:.0f} rpm")
    if round(angle, 2) > 20.001:
        assert sheet.decision.kind == NONE
        assert sheet.figures == ()
        assert sheet.questions[0].key == "angle"
        return
    check = next(c for c in sheet.checks if c.name == "working angle at this speed")
    if check.result == "not ok":  # the number is the angle that is allowed, and no swing of 0 %
        assert [f.quantity for f in sheet.decision.figures] == ["working_angle_maximum"]


@given(st.integers(5, 60), st.integers(5, 60))
def test_teeth_that_make_no_axle_ratio_are_questioned(ring: int, pinion: int) -> None:
    low, high = plausible_range("axle_ratio", DATA) or (0.0, 0.0)
    try:
        sheet = ratio(f"{ring}/{pinion}")
    except InputError:
        assert ring < pinion
        return
    assert (sheet.decision.kind == USE) == (low <= ring / pinion <= high)
    assert sheet.decision.kind == USE or [q.key for q in sheet.questions] == ["teeth"]


OLD = ["6.00-16", "5.60-15", "5.20 x 10", "560-15", "7.50-20", "6.00 S 16", "E78-15", "FR70-14"]
RADIALS = ["165 R13", "165R13", "165 SR 13", "155HR15", "185 VR 14", "175R14C"]


@pytest.mark.parametrize("size", [*OLD, *RADIALS])
def test_a_size_of_old_cars_is_refused_in_plain_words_with_what_to_say(size: str) -> None:
    for ask in (lambda: tyre(size), lambda: gearing("3.55", tyre=size)):
        with pytest.raises(GaugeblockError) as refused:
            ask()
        text = str(refused.value)
        assert "maker prints" in text
        assert "unit" not in text
        for near in refused.value.nearest:
            assert tyre(near).decision.kind == USE
        assert bool(refused.value.nearest) == (size[0] not in "EF")


@pytest.mark.parametrize("size", ["205/55R16", "P215/65R15", "31x10.50R15", "28 in", "165/82R13", "660 mm"])
def test_a_size_that_says_how_high_a_tyre_is_stays_read(size: str) -> None:
    assert tyre(size).decision.kind == USE
