"""What is plausible of a quantity, and what may have been meant by a number that is not."""

from __future__ import annotations

import pytest

from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.tables.load import refdata
from gaugeblock.units import parse_measure


@pytest.mark.parametrize(
    ("text", "dim", "quantity", "is_likely"),
    [
        ("12 lbf*in", "torque", "prevailing_torque", True),
        ("500 lbf*in", "torque", "prevailing_torque", True),
        ("150 lbf*ft", "torque", "prevailing_torque", False),
        ("35 ksi", "stress", "tapped_strength", True),
        ("35 MPa", "stress", "tapped_strength", False),
        ("35 MPa", "stress", "prevailing_torque", True),  # of another dimension: not this range's to judge
    ],
)
def test_a_measure_is_held_against_its_quantitys_range(text: str, dim: str, quantity: str, is_likely: bool) -> None:
    assert is_plausible(parse_measure(text, dim), quantity, refdata()) is is_likely


def test_the_other_unit_that_would_fit_is_asked_about() -> None:
    span = plausible_range("prevailing_torque", refdata())
    assert span is not None
    meant = other_readings(parse_measure("150 lbf*ft", "torque"), *span)
    assert "150 lbf*in" in meant
    assert did_you_mean("150 lbf*ft is a large drag", meant[:1]).endswith("?")
    assert other_readings(parse_measure("9000 lbf*ft", "torque"), *span) == ()
