"""Bends in flat sheet against published figures. Each case names its source; half a unit in the last printed digit."""

from __future__ import annotations

import pytest

from gaugeblock import sheet_bend
from gaugeblock.answer.making import base

INCH = 0.0254
# A sheet metal workbook, 90 degree bends: stock of .050 in, inside radius .032 in.
WORKBOOK = {"thickness": "0.050 in", "radius": "0.032 in", "angle": "90 deg"}


@pytest.mark.parametrize(("fact", "printed"), [("allowance", 0.085), ("deduction", 0.079)])
def test_the_workbooks_bend(fact: str, printed: float) -> None:
    """Sheet metal workbook, 90 degree bends: bend allowance .085, bend deduction .079."""
    figure = sheet_bend(**WORKBOOK, fact=fact).decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(printed, abs=0.0005)


def test_the_workbooks_part_of_three_bends() -> None:
    """Sheet metal workbook, 90 degree bends: legs .740, .420, 1.050 and 1.000 in give a flat stretch-out of 2.973."""
    figure = sheet_bend(**WORKBOOK, legs=".740 in, .420 in, 1.050 in, 1.000 in").decision.figure
    assert figure is not None
    # wider than the last digit: the workbook takes three deductions already rounded, .0005 each at most
    assert figure.typical == pytest.approx(2.973, abs=0.0005 + 3 * 0.0005)


def test_the_handbooks_channel() -> None:
    """FAA-H-8083-31, chapter 4, U-channel of 0.040 in 2024-T3: radius 0.16, setback 0.2, flats 0.8, 1.6 and 0.8 in."""
    channel = {"thickness": "0.040 in", "radius": "0.16 in", "angle": "90 deg"}
    back = sheet_bend(**channel, fact="setback").decision.figure
    assert back is not None
    assert back.typical == pytest.approx(0.2, abs=0.05)
    whole = sheet_bend(**channel, legs="1.00 in, 2.00 in, 1.00 in")
    took = next(f for f in whole.figures if f.quantity == "bend_allowance")
    flats = base(whole.decision.figure) - 2 * base(took)
    assert flats / INCH == pytest.approx(0.8 + 1.6 + 0.8, abs=3 * 0.05)


def test_the_handbooks_least_radius() -> None:
    """FAA-H-8083-31, chapter 4, step 1: the least radius of 0.040 in 2024-T3 is 0.16 in; by another table than ours."""
    figure = sheet_bend("0.040 in", material="2024-T3", fact="radius").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(0.16, abs=0.005)


def test_plate_bent_square_by_the_navy() -> None:
    """NAVEDTRA 14119, Fig. 13-49 Example 1: 90 degrees, inside radius 3.00 in, 1/2 in plate, mid-line: 5.1 in."""
    figure = sheet_bend("1/2 in", "3 in", "90 deg", k="0.5", fact="allowance").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(5.1, abs=0.05)


@pytest.mark.parametrize(
    ("metal", "thickness", "least"),
    [
        # Aluminum Design Manual 2005, Table 3-1, p. VII-78, in thicknesses
        ("5052-O", "1/8 in", 0.5),
        ("5052-H32", "1/8 in", 1.5),
        ("5052-H34", "1/16 in", 1.5),
        ("3003-H14", "1/4 in", 1.5),
        ("2024-T3", "1/16 in", 4),
        # a design book's page, the same table of 6061
        ("6061-T6", "1/8 in", 2.5),
        ("6061-T4", "1/4 in", 3),
        # a steel house's reference guide, cold forming across the grain: A36 through .250 in; grade 50
        ("mild steel", "0.125 in", 1),
        ("A572 grade 50", "0.2 in", 2),
        # ASTM A6, Table X4.2: plate to 3/4 in
        ("mild steel", "3/8 in", 1.5),
    ],
)
def test_printed_least_radii(metal: str, thickness: str, least: float) -> None:
    sheet = sheet_bend(thickness, material=metal, fact="radius")
    wall = next(f for f in sheet.figures if f.quantity == "wall_thickness")
    figure = sheet.decision.figure
    assert figure is not None
    assert base(figure) == pytest.approx(least * base(wall))
