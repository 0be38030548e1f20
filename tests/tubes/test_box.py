"""A square or rectangular tube: its section as the steel tables print it, its mass, and what it refuses."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import Ambiguous, InputError, box, section
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base

# AISC steel construction manual, hollow sections at their design wall (93 % of the nominal), as a page of section
# properties prints them: size, wall in, area in2, second moments in4 upright and lying.
PRINTED = [
    ("2 x 1", 0.116, 0.608, 0.280, 0.092),
    ("3 x 2", 0.174, 1.54, 1.77, 0.932),
    ("3 x 2.5", 0.174, 1.71, 2.11, 1.59),
]
# Half a unit in the last printed digit, and half of one per cent: the page does not print the corners it took.
SHARE = 0.005


@pytest.mark.parametrize(("size", "wall", "area", "upright", "lying"), PRINTED)
def test_sections_are_those_of_the_steel_tables(
    size: str, wall: float, area: float, upright: float, lying: float
) -> None:
    first, second = size.split(" x ")
    up, flat = box(f"{first} x {second} in", f"{wall} in"), box(f"{second} x {first} in", f"{wall} in")
    assert up.figure("section_area").typical == pytest.approx(area, rel=SHARE)
    assert up.figure("second_moment").typical == pytest.approx(upright, rel=SHARE)
    assert flat.figure("second_moment").typical == pytest.approx(lying, rel=SHARE)
    assert up.figure("section_modulus").typical == pytest.approx(2 * upright / float(first), rel=SHARE)


@given(st.floats(1, 4), st.floats(1, 4), st.floats(0.03, 0.24))
def test_a_box_weighs_its_metal_and_less_than_a_sharp_one(high: float, wide: float, wall: float) -> None:
    sheet = box(f"{high:.3f} x {wide:.3f} in", f"{wall:.3f} in", material="1020 DOM", length="1 ft", fact="mass")
    high, wide, wall = round(high, 3), round(wide, 3), round(wall, 3)
    sharp = high * wide - (high - 2 * wall) * (wide - 2 * wall)
    area = sheet.figure("section_area").typical
    assert 0.8 * sharp < area < sharp
    assert sheet.figure("mass_per_length").typical == pytest.approx(0.284 * 12 * area, rel=1e-6)
    assert sheet.figure("tube_mass").typical == pytest.approx(0.284 * 12 * area, rel=1e-6)


def test_a_metal_has_its_own_density_round_or_square() -> None:
    for metal, density in (("304", 0.29), ("6061-T6", 0.098)):
        sheets = (
            box("2 x 2 in", ".120 in", material=metal, fact="mass"),
            section(od="2 in", wall=".120 in", material=metal, fact="mass"),
        )
        assert [s.figure("density").typical for s in sheets] == [density, density]
        assert [s.decision.kind for s in sheets] == [USE, USE]


def test_a_size_may_have_its_wall_and_millimetres() -> None:
    both = box("40 x 20 x 2 mm"), box("40 x 20 mm", "2 mm")
    assert base(both[0].figure("section_modulus")) == base(both[1].figure("section_modulus"))


def test_what_is_not_said_is_asked_back_and_what_is_no_box_refused() -> None:
    with pytest.raises(Ambiguous):
        box("2 x 2 in")
    for size, wall in (("2 in", ".120 in"), ("2 x 2 x .120 in", ".120 in"), ("x", ".120 in"), ("2 x -1 in", ".1 in")):
        with pytest.raises(InputError):
            box(size, wall)


def test_a_wall_that_fills_the_corners_and_a_side_that_no_shop_has_are_questioned() -> None:
    assert box("1 x 1 in", ".3 in").decision.kind == NONE
    assert box("40 x 40 in", ".120 in").decision.kind == NONE
    assert box("2 x 2 in", ".120 in", fact="mass").decision.kind == NONE
