"""A measure told in a story, and another unit that a wrench or a gauge has: both are one conversion."""

from __future__ import annotations

import pytest

from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import answer
from gaugeblock.plain.convert import Conversion


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ("the manual says sixteen inch pounds but the only gauge here reads newton metres", {"N*m": 1.80776}),
        (
            "book says eight and a half kilogram metres, wrench has foot pounds and newton metres, give me both",
            {"lbf*ft": 61.4806, "N*m": 83.3565},
        ),
        ("pump is 43 psi but the gauge is bar", {"bar": 2.96475}),
        ("torque 90 N\u00b7m in ft lbs", {"lbf*ft": 66.3806}),
        ("35 kilogram metres in foot pounds and newton metres", {"lbf*ft": 253.155, "N*m": 343.233}),
        ("40 lb\u00b7ft in N\u00b7m", {"N*m": 54.2327}),
    ],
)
def test_the_other_unit_of_a_story_is_what_is_asked(line: str, found: dict[str, float]) -> None:
    """Factors: NIST SP 811, B.8 (1 lbf ft = 1.355 818 N m, 1 kgf m = 9.806 65 N m, 1 psi = 6 894.757 Pa)."""
    got = answer(line)
    all_found = [one.found for one in (got, *got.more)]
    assert all(isinstance(one, Conversion) for one in all_found)
    assert {one.unit: float(one.exact) for one in all_found} == pytest.approx(found, rel=1e-5)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    "line",
    [
        "what fuel pressure in bar with 12 psi boost",
        "wheel nuts are 12 mm, torque in newton metres",
        "the motor has 12 psi of boost, what line pressure in bar",
        "two of them, 40 ft lbs and 60 ft lbs, wrench reads newton metres",
    ],
)
def test_a_question_of_something_else_is_no_conversion(line: str) -> None:
    try:
        got = answer(line)
    except GaugeblockError:
        return
    assert not isinstance(got.found, Conversion)


@pytest.mark.parametrize("sign", ["\u00b0C", "\u00ba C", "\u2103", " \u00b0 C", "\u02daC", " deg C", " degrees C"])
def test_every_sign_of_degrees_is_read(sign: str) -> None:
    assert answer(f"steel growth 1.5 m 500{sign}").read_as == answer("steel growth 1.5 m 500 degC").read_as


@pytest.mark.parametrize("square", ["mm2", "mm\u00b2", " mm\u00b2", " sq mm"])
def test_every_square_is_read(square: str) -> None:
    assert answer(f"16{square} cable 5 m 80 A 12 V").read_as == answer("16 mm2 cable 5 m 80 A 12 V").read_as
