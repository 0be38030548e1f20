"""Span: a measure that may be a range, read exactly: ``250 degF``, ``300 to 450 degC``."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

_NOT_NEGATIVE = ("length", "ratio", "speed", "stress", "thermal conductivity")


class Span(Value):
    """What somebody typed: ``low`` and ``high`` in the unit each was typed in, one and the same for a single number."""

    __slots__ = ("high", "low", "text")

    low: Measure
    high: Measure
    text: str

    def __init__(self, low: Measure, high: Measure, text: str) -> None:
        put(self, "low", low)
        put(self, "high", high)
        put(self, "text", text)

    @property
    def is_range(self) -> bool:
        """Whether two ends were typed."""
        return self.low is not self.high

    @property
    def unit(self) -> str:
        """The unit of the answer: the one typed last."""
        return self.high.unit

    def __str__(self) -> str:
        return self.text

    def as_measure(self) -> Measure:
        """The higher end, with the text of the whole: what the maker of stated figures takes."""
        text = f"{self.text} 1" if self.unit == "1" else self.text
        return Measure(self.high.value, self.unit, text)


def of(measure: Measure) -> Span:
    """One number as a Span."""
    return Span(measure, measure, _said(measure.number, measure.unit))


def _said(number: str, unit: str) -> str:
    """A number with its unit; a pure ratio has none."""
    return number if unit == "1" else f"{number} {unit}"


def parse_span(text: str, dim: str, where: str) -> Span:
    """``250 degF``, or ``300 to 450 degC`` as a range; InputError or UnitError when it cannot be read.

    >>> parse_span("300 to 450 degC", "temperature", "hot temperature").text
    '300 to 450 degC'
    """
    low_text, between, high_text = text.partition(" to ")
    high = units.parse_measure(high_text if between else text, dim, where)
    if not between:
        got = of(high)
    else:
        number, unit = units.split_quantity(low_text)
        low = units.parse_measure(low_text if unit else f"{number} {high.unit}", dim, where)
        got = Span(low, high, _said(f"{low_text} to {units.split_quantity(high_text)[0]}", high.unit))
    low_end, high_end = got.low.to(got.unit), float(got.high.value)
    if low_end > high_end:
        raise InputError(text, where, "its ends are the wrong way round", (), "write the lower end first")
    if dim in _NOT_NEGATIVE and low_end < 0:
        raise InputError(text, where, "must not be less than zero", (), "give the size itself")
    if dim == "temperature" and units.to_base(low_end, got.unit) <= 0:
        raise InputError(text, where, "is below absolute zero", (), "check the number and its unit")
    return got
