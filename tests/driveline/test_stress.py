"""The shear stress of a round shaft: a worked example, the answer on a steel, and the sizes."""

from __future__ import annotations

import math

import pytest

from gaugeblock import ask, shaftstress, steel
from gaugeblock.answer.decision import NONE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError


def test_singers_problem_304() -> None:
    """Singer, Strength of Materials, problem 304: 15 kip ft on a 4 in shaft, 14.3 ksi."""
    figure = shaftstress("4 in", "15000 lbf*ft").decision.figure
    assert figure is not None
    assert (round(figure.typical, 1), figure.unit) == (14.3, "ksi")


@pytest.mark.parametrize("diameter", ["1 in", "1-1/4 in", "35 mm"])
@pytest.mark.parametrize("bore", [None, "1/2 in"])
@pytest.mark.parametrize("torque", ["500 lbf*ft", "1500 N*m"])
def test_it_is_the_stress_of_a_shaft_of_any_steel(diameter: str, bore: str | None, torque: str) -> None:
    alone = shaftstress(diameter, torque, bore=bore).decision.figure
    of_steel = steel("1050", treatment="cold drawn", section="1 in", shaft=diameter, torque=torque, bore=bore)
    assert alone is not None
    pascal = {"ksi": 6894757.293168361, "MPa": 1e6}
    there = of_steel.figure("shaft_shear_stress")
    assert alone.typical * pascal[alone.unit] == pytest.approx(there.typical * pascal[there.unit])


def test_twice_as_thick_takes_an_eighth() -> None:
    thin, thick = (shaftstress(d, "1000 N*m").decision.figure for d in ("20 mm", "40 mm"))
    assert thin is not None
    assert thick is not None
    assert thin.typical / thick.typical == pytest.approx(8)
    assert thin.typical == pytest.approx(16 * 1000 / (math.pi * 0.02**3) / 1e6)


def test_the_yield_in_tension_counts_by_distortion_energy() -> None:
    """Mott, p. 547: a ductile steel yields in shear at 0.577 of what it yields at in tension."""
    in_tension = shaftstress("1-1/4 in", yield_strength="160 ksi").decision.figure
    in_shear = shaftstress("1-1/4 in", shear_yield=f"{160 / math.sqrt(3)} ksi").decision.figure
    assert in_tension is not None
    assert in_shear is not None
    assert in_tension.typical == pytest.approx(in_shear.typical)
    assert in_tension.typical * 12 == pytest.approx(160e3 / math.sqrt(3) * math.pi * 1.25**3 / 16)
    with pytest.raises(InputError):
        shaftstress("1-1/4 in", shear_yield="92 ksi", yield_strength="160 ksi")


def test_what_is_not_likely_is_questioned_and_what_cannot_be_refused() -> None:
    assert shaftstress("40 in", "1000 N*m").decision.kind == NONE
    with pytest.raises(InputError):
        shaftstress("1 in", "1000 N*m", bore="1 in")


@pytest.mark.parametrize(
    "line",
    [
        "shear stress of a 1 1/4 in shaft with 1100 ft lbs",
        "what stress does 1100 lb ft put in a 1-1/4 in solid shaft",
        "how much stress in an inch and a quarter bar under 1100 foot pounds",
    ],
)
def test_it_is_asked_in_plain_words(line: str) -> None:
    got, wanted = ask(line), shaftstress("1 1/4 in", "1100 lbf*ft")
    assert isinstance(got, Sheet)
    assert got.decision.figure is not None
    assert wanted.decision.figure is not None
    assert got.decision.figure.typical == pytest.approx(wanted.decision.figure.typical)
