"""What is plausible of a quantity, and what may have been meant by a number that is not."""

from __future__ import annotations

import pytest

from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range, run_together
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


def test_a_reading_at_the_very_end_of_what_is_likely_is_one() -> None:
    for text, meant in (("8 in", "8 mm"), ("2 in", "2 mm")):
        assert other_readings(parse_measure(text, "length"), 0.002, 0.008, ("in", "mm")) == (meant,)
    for text in ("8.001 in", "1.999 in"):
        assert other_readings(parse_measure(text, "length"), 0.002, 0.008, ("in", "mm")) == ()


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("11/2 in", "1 1/2 in"),
        ("111/16 in", "1 11/16 in"),
        ("105/16 in", "10 5/16 in"),
        ("29/16 in", "2 9/16 in"),
        ("11/16 in", ""),
        ("15/16 in", ""),
        ("3/2 in", ""),
        ("20/4 in", ""),
        ("1.5 in", ""),
    ],
)
def test_a_mixed_number_whose_blank_was_left_out_is_told_from_a_fraction(typed: str, meant: str) -> None:
    assert run_together(parse_measure(typed, "length")) == meant
