"""Look-ups a shop makes of the driveline, each with what it must get: a figure, a refusal with the nearest keys, or
no source.
"""

from __future__ import annotations

import json

import pytest

from gaugeblock import hardness, joint, setup, spline, steel
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import commands
from gaugeblock.errors import GaugeblockError, LookupMiss

# grade, treatment, temper, more -> quantity of the answer with its text and unit
STEEL_ANSWERS = [
    ("1541", "cold drawn", None, {}, "yield_strength", "87", "ksi"),
    ("SAE 1541", "hot-rolled", None, {}, "tensile_strength", "92", "ksi"),
    ("1050", "cold drawn", None, {"section": "1-1/4 in"}, "yield_strength", "580", "MPa"),
    ("4340", "q&t", "800 F", {}, "yield_strength_typical", "1360", "MPa"),
    ("AISI 4140", "oqt", "1000 degF", {}, "yield_strength_typical", "834", "MPa"),
    ("300m", "q&t 280 ksi", None, {}, "tensile_strength", "280", "ksi"),
    ("4340", "quenched and tempered to 260 ksi", None, {}, "yield_strength", "217", "ksi"),
    ("4130", "wqt", "1000 F", {}, "yield_strength_typical", "132", "ksi"),
    ("1050M", "induction", None, {}, "tensile_strength_typical", "2360", "MPa"),
]
# grade, treatment, temper -> words of the refusal, its first nearest key (None: none is offered)
STEEL_REFUSALS = [
    ("1550", "hot rolled", None, "neighbouring grade", None),
    ("1541H", "quenched and tempered", None, "neighbouring grade", None),
    ("5160", "oqt", "800 F", "neighbouring grade", None),
    ("4340", "oqt", "770 F", "not interpolated", "4340 | oil quenched and tempered | 800 degF"),
    (
        "4140",
        "q&t",
        "770 F",
        "no published strength of 4140 in this treatment",
        "4140 | oil quenched and tempered | 800 degF",
    ),
    ("1541", "q&t", "400 F", "A standard does exist (see ASTM A311)", "1541 | hot rolled"),
]


@pytest.mark.parametrize(("grade", "treatment", "temper", "more", "quantity", "text", "unit"), STEEL_ANSWERS)
def test_a_steel_that_is_published(
    grade: str, treatment: str, temper: str | None, more: dict[str, str], quantity: str, text: str, unit: str
) -> None:
    figure = steel(grade, treatment=treatment, temper=temper, **more).figure(quantity)  # type: ignore[arg-type]
    assert (figure.text, figure.unit) == (text, unit)
    assert figure.source


@pytest.mark.parametrize(("grade", "treatment", "temper", "why", "nearest"), STEEL_REFUSALS)
def test_a_steel_that_is_not(grade: str, treatment: str, temper: str | None, why: str, nearest: str | None) -> None:
    with pytest.raises(LookupMiss) as caught:
        steel(grade, treatment=treatment, temper=temper)
    assert why in str(caught.value)
    assert caught.value.nearest[:1] == ((nearest,) if nearest else ())


HARDNESS_ANSWERS = [
    ("HRC", "40", "hardness_hb", 371, 0),
    ("Rockwell C", "45", "hardness_hv", 446, 0),
    ("Rc", "38", "tensile_strength_typical", 171, 0),
    ("Brinell", "321", "hardness_hrc", 34.3, 0),
    ("BHN", "388", "tensile_strength_typical", 193, 0),
    ("HRC", "28", "hardness_hb", 271, 0),
    ("HRC", "50", "torsional_yield_strength_typical", 917, 0),
    ("HB", "352", "tensile_strength_typical", 170, 0.5),  # half way between 341 and 363 HB, 163 and 177 ksi
]
HARDNESS_REFUSALS = [("HRC", "70"), ("HB", "120"), ("shore", "60")]


@pytest.mark.parametrize(("scale", "value", "quantity", "expected", "within"), HARDNESS_ANSWERS)
def test_a_hardness_that_is_printed_or_between(
    scale: str, value: str, quantity: str, expected: float, within: float
) -> None:
    assert hardness(scale, value).figure(quantity).typical == pytest.approx(expected, abs=within)


@pytest.mark.parametrize(("scale", "value"), HARDNESS_REFUSALS)
def test_a_hardness_that_is_not(scale: str, value: str) -> None:
    with pytest.raises(LookupMiss) as caught:
        hardness(scale, value)
    assert caught.value.nearest


# What the trade calls the shaft, to the hundredth: a 35 spline 1.50 in, a 40 spline 1.71 in, a 31 spline 1.33 in
@pytest.mark.parametrize(("teeth", "outside"), [("35", 1.50), ("40", 1.71), ("31", 1.33)])
def test_a_spline_the_trade_names_by_its_count(teeth: str, outside: float) -> None:
    assert spline("24 pitch", teeth).figures[0].typical == pytest.approx(outside, abs=0.005)


@pytest.mark.parametrize(
    ("pitch", "teeth", "angle"), [("24/48", "35.5", "30 deg"), ("24/48", "35", "37.5 deg"), ("24", "35", "30 deg")]
)
def test_a_spline_the_equations_do_not_cover(pitch: str, teeth: str, angle: str) -> None:
    with pytest.raises(GaugeblockError):
        spline(pitch, teeth, pressure_angle=angle)


MAKER = ("0.006 in", "0.005 in", "0.008 in", "axle maker's sheet", "page 4")
TRUCK = "wide utility truck axle (TM 9-2320-280-34)"
CHECKED: list[tuple[str, Sheet, str, str]] = [
    (
        "left inside the maker's figure",
        setup("rear", "ring gear", "backlash", "new", as_left="0.007 in", maker=MAKER),
        "as left",
        "ok",
    ),
    (
        "left outside it",
        setup("rear", "ring gear", "backlash", "new", as_left="0.012 in", maker=MAKER),
        "as left",
        "not ok",
    ),
    ("no maker's figure", setup("rear", "ring gear", "backlash", "new", as_left="0.007 in"), "as left", "cannot tell"),
    ("this manual's own axle, used", setup(TRUCK, "pinion", "preload", "used", as_left="12 in-lb"), "as left", "ok"),
    ("the same with the new figure", setup(TRUCK, "pinion", "preload", "new", as_left="12 in-lb"), "as left", "not ok"),
    ("new or used not said", setup(TRUCK, "pinion", "preload", as_left="12 in-lb"), "as left", "cannot tell"),
    (
        "a greatest runout",
        setup(TRUCK, "differential case, ring gear face", "check", as_left="0.0015 in"),
        "as left",
        "ok",
    ),
    (
        "metric on an inch figure",
        setup("rear", "ring gear", "backlash", as_left="0.15 mm", maker=MAKER),
        "as left",
        "ok",
    ),
    ("equal angles in phase", joint("4 deg", "4 deg", phasing="in phase"), "second joint", "ok"),
    ("a yoke a quarter turn out", joint("4 deg", "4 deg", phasing="wrong phase"), "second joint", "not ok"),
    ("three degrees apart", joint("6 deg", "3 deg", phasing="in phase"), "second joint", "not ok"),
    ("usual at 3000 rpm", joint("5.5 deg", "5.5 deg", phasing="in phase", speed="3000 rpm"), "working angle", "ok"),
    (
        "too much at 4500 rpm",
        joint("5.5 deg", "5.5 deg", phasing="in phase", speed="4500 rpm"),
        "working angle",
        "not ok",
    ),
    ("faster than the trade's table", joint("2 deg", speed="7000 rpm"), "working angle", "cannot tell"),
]


@pytest.mark.parametrize(("sheet", "check", "result"), [c[1:] for c in CHECKED], ids=[c[0] for c in CHECKED])
def test_a_step_or_a_joint_is_judged(sheet: Sheet, check: str, result: str) -> None:
    (found,) = [c for c in sheet.checks if c.name.startswith(check)]
    assert (found.result, bool(found.reason)) == (result, True)


def test_a_step_of_no_table_is_refused_with_steps() -> None:
    with pytest.raises(LookupMiss) as caught:
        setup("rear", "wheel bearings", "grease colour")
    assert caught.value.nearest


# The commands


@pytest.mark.parametrize(
    ("run", "argv", "code", "said"),
    [
        (
            commands.steel,
            ["1541", "--treatment", "cold drawn", "--shaft", "1 in", "--torque", "500 lbf*ft"],
            0,
            "TORSIONAL YIELD FACTOR",
        ),
        (
            commands.steel,
            ["1541", "--treatment", "cold drawn", "--shaft", "1 in", "--torque", "900 lbf*ft"],
            0,  # a typical strength asks, it does not stop
            "NOT OK",
        ),
        (commands.steel, ["4340", "--treatment", "q&t", "--temper", "800 F", "--in", "ksi"], 0, "197.3 ksi"),
        (commands.hardness, ["42", "HRC"], 0, "195 ksi"),
        (commands.spline, ["24/48", "35"], 0, "1.5 in"),
        (commands.setup, ["rear", "ring gear", "backlash", "--as-left", "0.007 in"], 0, "CANNOT TELL"),
        (commands.joint, ["5 deg", "5 deg", "--phasing", "wrong phase"], 1, "NOT OK"),
    ],
)
def test_a_command_prints_and_exits(
    run: object, argv: list[str], code: int, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert callable(run)
    assert run([*argv, "--why"]) == code
    assert said in capsys.readouterr().out


def test_json_of_a_steel_is_the_sheet(capsys: pytest.CaptureFixture[str]) -> None:
    commands.steel(["4340", "--treatment", "q&t", "--temper", "800 F", "--json"])
    out = json.loads(capsys.readouterr().out)
    assert out["figures"][0]["quantity"] == "yield_strength_typical"
    assert out["figures"][0]["key"]["section"] == "1 in"
    assert out["asked"]["grade"] == "4340"
