"""Units: reading numbers, exact conversion, equality with pint, printing by side."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.errors import InputError, UnitError
from gaugeblock.registry import quantity


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1.25", Fraction(5, 4)),
        (".120", Fraction(3, 25)),
        ("3/8", Fraction(3, 8)),
        ("1 3/8", Fraction(11, 8)),
        ("1-3/4", Fraction(7, 4)),
        ("7", Fraction(7)),
        ("-0.5", Fraction(-1, 2)),
        ("+2", Fraction(2)),
        ("5.", Fraction(5)),
        ("-1 1/2", Fraction(-3, 2)),
        (" 12 ", Fraction(12)),
    ],
)
def test_numbers_that_people_write_are_read_exactly(text: str, value: Fraction) -> None:
    assert units.parse_number(text) == value


@pytest.mark.parametrize(
    "text",
    [
        "",
        "abc",
        "1,5",
        "1.2.3",
        "1/0",
        "1 1/0",
        "1e5",
        "0x10",
        "1_000",
        "nan",
        "inf",
        "1 / 2",
        "3/8/2",
        "--1",
        "1 2",
        "\u0661",
        "1" * 25,
    ],
)
def test_anything_else_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        units.parse_number(text)


def test_a_decimal_comma_is_named() -> None:
    with pytest.raises(InputError, match="decimal comma"):
        units.parse_number("1,5")


@pytest.mark.parametrize("unit", units.UNITS)
def test_each_unit_equals_pint(unit: str) -> None:
    one, two = (quantity(value, unit).to_base_units().magnitude for value in (1.0, 2.0))
    assert units.to_base(1.0, unit) == pytest.approx(one, rel=1e-12)
    assert units.to_base(2.0, unit) == pytest.approx(two, rel=1e-12)


@pytest.mark.parametrize("unit", units.UNITS)
def test_units_of_one_dimension_are_alike_to_pint(unit: str) -> None:
    first = units.spellings(units.dimension(unit))[0]
    assert quantity(1.0, unit).dimensionality == quantity(1.0, first).dimensionality


def test_pint_quantity_keeps_value_and_refuses_other_spellings() -> None:
    assert quantity(31.0, "lbf*ft").to("newton * meter").magnitude == pytest.approx(42.0303564, rel=1e-8)
    with pytest.raises(UnitError):
        quantity(31.0, "ft-lb")


def test_every_typed_word_means_a_listed_unit() -> None:
    assert set(units.TYPED.values()) <= set(units.UNITS)
    assert not set(units.TYPED) & set(units.UNITS)


same_dimension = st.sampled_from(list(units.UNITS)).flatmap(
    lambda unit: st.tuples(st.just(unit), st.sampled_from(units.spellings(units.dimension(unit))))
)


@given(st.fractions(min_value=-(10**6), max_value=10**6), same_dimension)
def test_a_conversion_and_its_return_are_exact(value: Fraction, pair: tuple[str, str]) -> None:
    unit, to = pair
    assert units.convert(units.convert(value, unit, to), to, unit) == value


@given(st.sampled_from(list(units.UNITS)), st.sampled_from(list(units.UNITS)))
def test_a_conversion_across_dimensions_is_refused(unit: str, to: str) -> None:
    if units.dimension(unit) == units.dimension(to):
        assert units.convert(Fraction(0), unit, to) == units.convert(Fraction(0), unit, to)
    else:
        with pytest.raises(UnitError):
            units.convert(Fraction(1), unit, to)


steps = st.sampled_from([Fraction(1), Fraction(1, 2), Fraction(1, 16), Fraction(1, 32), Fraction(1, 1000), Fraction(5)])


@given(st.fractions(min_value=-(10**4), max_value=10**4, max_denominator=10**6), steps)
def test_the_side_decides_the_end_of_a_step(value: Fraction, step: Fraction) -> None:
    down, up = units.step_round(value, step, "max"), units.step_round(value, step, "min")
    slack = step * Fraction(1, 10**9) * max(1, abs(round(value / step)))
    assert value - step < down <= value + slack
    assert value - slack <= up < value + step
    for side in ("max", "min", "target", "nominal"):
        assert (units.step_round(value, step, side) / step).denominator == 1
    assert abs(units.step_round(value, step, "target") - value) <= step / 2


@given(st.integers(1, 2000), st.sampled_from(["max", "min", "target", "nominal"]))
def test_a_whole_number_survives_conversion_and_return_in_floats(whole: int, side: str) -> None:
    derived = units.from_base(units.to_base(float(whole), "lbf*ft"), "lbf*ft")
    assert units.step_round(derived, Fraction(1), side) == whole


def test_a_float_just_off_a_step_is_that_step_and_one_further_off_is_not() -> None:
    one = Fraction(1)
    assert units.step_round(41.99999999999999, one, "max") == 42
    assert units.step_round(42.00000000000001, one, "min") == 42
    assert units.step_round(41.9999, one, "max") == 41
    assert units.step_round(42.0001, one, "min") == 43


def test_a_bare_number_needs_its_unit_but_a_bare_fraction_of_length_is_inches() -> None:
    assert units.parse_measure("1 3/8", "length").unit == "in"
    assert units.parse_measure(".120", "length").unit == "in"
    with pytest.raises(UnitError, match="needs its unit"):
        units.parse_measure("38", "length")
    with pytest.raises(UnitError, match="a length is asked"):
        units.parse_measure("38 psi", "length")


@given(st.fractions(min_value=-1000, max_value=1000, max_denominator=64))
def test_a_fraction_of_an_inch_is_read_back(value: Fraction) -> None:
    assert units.parse_number(units.fraction_text(value)) == value


@given(st.decimals(min_value=-1000, max_value=1000, places=6))
def test_decimal_text_is_read_back(value: object) -> None:
    exact = Fraction(str(value))
    assert units.parse_number(units.decimal_text(exact)) == exact


@pytest.mark.parametrize(
    ("typed", "dimension", "unit", "number"),
    [  # the kilogram-force is 9.80665 N by definition (3rd CGPM, 1901); the rest are exact by their names
        ("5.5 kg-m", "torque", "N*m", 53.936575),
        ("55 kgf-cm", "torque", "N*m", 5.3936575),
        ("1 kg/cm2", "stress", "bar", 0.980665),
        ("50 kgf", "force", "N", 490.3325),
        ("30 cm", "length", "mm", 300.0),
        ("5 centimetres", "length", "mm", 50.0),
        ("35 thou", "length", "in", 0.035),
        ("2 metres", "length", "mm", 2000.0),
        ("1 1/2 in.", "length", "mm", 38.1),
        ("8 oz", "mass", "lb", 0.5),
        ("100 PS", "power", "kW", 73.549875),
        ("110 kph", "speed", "km/h", 110.0),
        ("20 ft.lbs", "torque", "lbf*ft", 20.0),
    ],
)
def test_units_that_a_shop_writes_are_read(typed: str, dimension: str, unit: str, number: float) -> None:
    got = units.parse_measure(typed, dimension, "here")
    assert float(units.convert(got.value, got.unit, unit)) == pytest.approx(number, rel=1e-12)
