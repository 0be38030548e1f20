"""A conversion of a measure that is said to be of something, or with which a story ends; a gallon is of one country."""

from __future__ import annotations

import pytest

from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import answer
from gaugeblock.plain.convert import Conversion


@pytest.mark.parametrize(
    ("line", "number", "unit"),
    [
        ("tyre pressure 35 psi in bar", 2.41317, "bar"),
        ("boost 1.2 bar in psi", 17.4045, "psi"),
        ("fuel pressure 43 psi to bar", 2.96475, "bar"),
        ("convert 0.0025 inch bearing clearance to microns and is that per inch of journal", 63.5, "um"),
        (
            "machinist wrote three thou on the docket for piston clearance but my feeler set is all metric and the"
            " thinnest two blades are point oh five and point one, whats three thou in millimetres",
            0.0762,
            "mm",
        ),
        ("manual says twenty kilos per square centimetre, whats twenty kilos per square cm in psi", 284.467, "psi"),
        ("4.5 imperial gallons in litres", 20.4574, "L"),
        ("its US gallons not imperial ones, 4.5 of them in litres please", 17.0344, "L"),
        ("its imperial gallons not US ones, 4.5 of them in litres", 20.4574, "L"),
    ],
)
def test_the_measure_is_converted(line: str, number: float, unit: str) -> None:
    """Factors: NIST SP 811, B.8 (1 imperial gallon = 4.546 09 L, 1 US gallon = 3.785 412 L)."""
    found = answer(line).found
    assert isinstance(found, Conversion)
    assert (float(found.exact), found.unit) == (pytest.approx(number, rel=1e-5), unit)


def test_what_stands_beside_it_is_told() -> None:
    assert (
        "not answered: and is that per inch of journal"
        in answer("convert 0.0025 inch bearing clearance to microns and is that per inch of journal").read_as
    )
    assert "no tyre of a road vehicle holds 350 psi" in answer("tyre pressure 350 psi in bar").read_as
    assert "no tyre" not in answer("tyre pressure 35 psi in bar").read_as
    assert "no tyre" not in answer("fuel pressure 350 psi in bar").read_as


@pytest.mark.parametrize(
    "line",
    ["torque for 3/8-16 grade 8 and what is 31 ft lbs in nm", "what torque m8 8.8 in ft lbs", "dry m10 8.8 in nm"],
)
def test_a_question_of_the_tables_is_no_conversion(line: str) -> None:
    try:
        found = answer(line).found
    except GaugeblockError:
        return
    assert not isinstance(found, Conversion)
