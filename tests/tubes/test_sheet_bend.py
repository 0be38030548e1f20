"""A bend in flat sheet: how its measures hang together, what is asked back, and what is hardly meant."""

from __future__ import annotations

from math import pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import sheet_bend
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError

WALL = st.integers(5, 120).map(lambda n: n / 10)  # mm
RADIUS = st.integers(0, 300).map(lambda n: n / 10)  # mm
ANGLE = st.integers(1, 165)
K = st.integers(20, 60).map(lambda n: n / 100)


def of(sheet: Sheet, quantity: str) -> float:
    """A figure of a sheet, in metres."""
    return base(next(f for f in sheet.figures if f.quantity == quantity))


@given(WALL, RADIUS, ANGLE, K | st.none())
def test_deduction_and_allowance_make_two_setbacks(wall: float, radius: float, angle: int, k: float | None) -> None:
    radius = min(radius, 40 * wall)
    sheet = sheet_bend(f"{wall} mm", f"{radius} mm", f"{angle} deg", k=None if k is None else f"{k}")
    both = of(sheet, "bend_deduction") + of(sheet, "bend_allowance")
    assert both == pytest.approx(2 * of(sheet, "sheet_setback"), abs=1e-12)
    assert of(sheet, "bend_deduction") > 0


@given(WALL, RADIUS, K, st.integers(1, 80), st.integers(1, 80))
def test_an_angle_bent_in_two_steps_takes_as_much(wall: float, radius: float, k: float, one: int, two: int) -> None:
    radius = min(radius, 40 * wall)

    def took(angle: int) -> float:
        sheet = sheet_bend(f"{wall} mm", f"{radius} mm", f"{angle} deg", k=f"{k}", fact="allowance")
        return base(sheet.decision.figure)

    assert took(one) + took(two) == pytest.approx(took(one + two))


@given(WALL, st.integers(10, 200), st.integers(10, 200), ANGLE)
def test_a_flat_length_is_the_legs_less_a_deduction_for_each_bend(wall: float, one: int, two: int, angle: int) -> None:
    legs = [one + 250, two + 500, one + 250]
    sheet = sheet_bend(f"{wall} mm", f"{wall} mm", f"{angle} deg", legs=", ".join(f"{leg} mm" for leg in legs))
    assert base(sheet.decision.figure) == pytest.approx(sum(legs) / 1000 - 2 * of(sheet, "bend_deduction"))


def test_a_sharp_bend_in_thin_sheet_takes_next_to_nothing_off() -> None:
    thin, thick = (of(sheet_bend(t, "0 mm", "90 deg"), "bend_deduction") for t in ("0.1 mm", "4 mm"))
    assert thin < 0.00014
    assert thick == pytest.approx(40 * thin)


def test_inches_and_millimetres_agree() -> None:
    inches = sheet_bend("1/8 in", "3/16 in", "60 deg", material="mild steel", legs="2 in, 3 in")
    metric = sheet_bend("3.175 mm", "4.7625 mm", "60 deg", material="mild steel", legs="50.8 mm, 76.2 mm")
    assert base(inches.decision.figure) == pytest.approx(base(metric.decision.figure))
    assert (inches.decision.figure.unit, metric.decision.figure.unit) == ("in", "mm")


def test_the_rule_for_any_metal_is_a_k_of_near_0_45() -> None:
    by_k = calc.bend_allowance_k(0.003, 0.002, 0.0078 * 180 / pi, radians(90))
    assert calc.bend_allowance_sheet(0.003, 0.002, radians(90)) == pytest.approx(by_k, rel=0.002)


def test_a_share_of_a_right_angle_is_two_over_pi_of_it_as_k() -> None:
    square = calc.bend_allowance_share(0.003, 0.002, 0.64, radians(90))
    assert square == pytest.approx(0.64 * 0.002 + 1.57 * 0.003, abs=0.003 * 0.001)


def test_a_k_of_a_test_strip_governs_and_says_so() -> None:
    own = sheet_bend("2 mm", "3 mm", "90 deg", k="0.5", material="mild steel")
    assert of(own, "bend_allowance") == pytest.approx(pi / 2 * 0.004)
    assert "you gave" in own.decision.do
    assert "you gave" not in sheet_bend("2 mm", "3 mm", "90 deg", material="mild steel").decision.do


def test_a_gauge_is_of_the_metals_usual_system() -> None:
    steel, stainless = (sheet_bend("16 ga", "2 mm", material=m) for m in ("mild steel", "304"))
    assert of(steel, "wall_thickness") != of(stainless, "wall_thickness")
    with pytest.raises(Ambiguous):
        sheet_bend("16 ga", "2 mm")


def test_a_radius_may_be_said_in_thicknesses() -> None:
    told, typed = sheet_bend("2 mm", "1.5 t", "90 deg"), sheet_bend("2 mm", "3 mm", "90 deg")
    assert base(told.decision.figure) == pytest.approx(base(typed.decision.figure))


def test_no_radius_is_asked_for() -> None:
    with pytest.raises(Ambiguous) as missing:
        sheet_bend("2 mm")
    assert missing.value.where == "radius"


@pytest.mark.parametrize(
    ("options", "key"),
    [
        ({"thickness": "2 mm", "radius": "101 mm"}, "radius"),
        ({"thickness": "2 mm", "radius": "3 in", "angle": "90 deg"}, None),
        ({"thickness": "1 mm", "radius": "3 in", "angle": "90 deg"}, "radius"),
        ({"thickness": "3 in", "radius": "3 in"}, "thickness"),
        ({"thickness": "2 mm", "radius": "3 mm", "angle": "200 deg"}, "angle"),
        ({"thickness": "2 mm", "radius": "3 mm", "k": "4"}, "k"),
        ({"thickness": "3 in", "material": "mild steel", "fact": "radius"}, "thickness"),
    ],
)
def test_what_is_hardly_meant_is_questioned(options: dict[str, str], key: str | None) -> None:
    sheet = sheet_bend(**options)
    assert (sheet.decision.kind == NONE) == (key is not None)
    assert [q.key for q in sheet.questions] == ([] if key is None else [key])


def test_a_radius_in_inches_for_millimetres_is_asked_about() -> None:
    assert "3\u00a0mm?" in sheet_bend("1 mm", "3 in").decision.do


def test_a_leg_that_its_bends_use_up_is_refused() -> None:
    for legs in ("4 mm, 50 mm", "50 mm, 9 mm, 50 mm", "50 mm", "50 kg, 30 mm"):
        with pytest.raises(GaugeblockError):
            sheet_bend("2 mm", "3 mm", "90 deg", legs=legs)
    assert sheet_bend("2 mm", "3 mm", "90 deg", legs="5 mm, 10 mm, 50 mm").decision.kind == USE


def test_a_hem_has_a_length_and_no_corner() -> None:
    assert sheet_bend("1 mm", "0.5 mm", "180 deg").decision.verb == "LENGTH IN THE BEND"
    assert sheet_bend("1 mm", "0.5 mm", "180 deg", legs="50 mm, 10 mm").decision.kind == NONE
    with pytest.raises(InputError):
        sheet_bend("1 mm", "0.5 mm", "90 deg", fact="flat length")


def test_a_radius_under_the_least_of_the_metal_is_cautioned() -> None:
    tight, wide = (sheet_bend("1/8 in", r, "90 deg", material="6061-T6") for r in ("1/8 in", "3/8 in"))
    assert any("crack" in c.text for c in tight.cautions)
    assert not wide.cautions


def test_a_least_radius_from_habit_asks() -> None:
    assert sheet_bend("2 mm", material="304", fact="radius").decision.kind == ASK
    assert sheet_bend("2 mm", material="mild steel", fact="radius").decision.kind == USE


def test_an_alloy_without_its_temper_is_asked_for_it() -> None:
    with pytest.raises(Ambiguous) as open_:
        sheet_bend("1/8 in", material="5052 aluminum", fact="radius")
    assert set(open_.value.every) == {"5052-O", "5052-H32", "5052-H34"}
    with pytest.raises(Ambiguous):
        sheet_bend("1/8 in", fact="radius")


@pytest.mark.parametrize("grain", ["1/64", "1/32", "1/16", "1/8", "3/16", "1/4", "3/8"])
def test_thicker_sheet_never_bends_tighter(grain: str) -> None:
    for metal in ("5052-H32", "6061-T6", "2024-T3", "3003-H14"):
        ends = [sheet_bend(t, material=metal, fact="radius") for t in (f"{grain} in", "0.4 in")]
        assert of(ends[0], "sheet_bend_ratio_minimum") <= of(ends[1], "sheet_bend_ratio_minimum")
