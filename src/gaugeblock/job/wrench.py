"""WrenchRange: what a torque wrench reads. The one grammar of a wrench, for jobs, commands and answers."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

_WRENCH = re.compile(r"(.+?) to (.+?) by (.+)")
_FORM = 'write it as "5 to 80 lbf*ft by 1"'


class WrenchRange(Value):
    """What a torque wrench reads: ``low`` to ``high`` in steps of ``step``, all in ``unit``; ``text`` as typed."""

    __slots__ = ("high", "low", "step", "text", "unit")

    low: Fraction
    high: Fraction
    step: Fraction
    unit: str
    text: str

    def __init__(self, low: Fraction, high: Fraction, step: Fraction, unit: str, text: str) -> None:
        put(self, "low", low)
        put(self, "high", high)
        put(self, "step", step)
        put(self, "unit", unit)
        put(self, "text", text)

    def __str__(self) -> str:
        return self.text

    def to_nm(self, value: Fraction) -> float:
        """A reading of this wrench in N m."""
        return float(value * units.factor(self.unit))

    def nearest_inside(self, target: Fraction, low: Fraction, high: Fraction) -> Fraction | None:
        """The graduation nearest ``target`` in [low, high] and on the wrench, in its unit; None when there is none."""
        first = max(low, self.low)
        last = min(high, self.high)
        k_low = -((self.low - first) // self.step)
        k_high = (last - self.low) // self.step
        if k_low > k_high:
            return None
        k = min(max(round((target - self.low) / self.step), k_low), k_high)
        return self.low + k * self.step


def read_wrench(text: str, where: str = "") -> WrenchRange:
    """``5 to 80 lbf*ft by 1`` as numbers; the unit stands after the upper end, and may stand after the others too.

    InputError when it is not so written.

    >>> w = read_wrench("20 to 150 Nm by 2.5")
    >>> w.unit, float(w.step)
    ('N*m', 2.5)
    """
    asked = " ".join(text.split())
    shown = asked if len(asked) <= 60 else f"{asked[:60]}..."
    match = _WRENCH.fullmatch(asked)
    if match is None:
        raise InputError(shown, where, "not a wrench range", (), _FORM)
    try:
        high = units.parse_measure(match[2], "torque")
        low, step = (_in_unit(match[n], high.unit) for n in (1, 3))
    except InputError as error:
        raise InputError(shown, where, f"{error.asked}: {error.why}", error.nearest, _FORM) from None
    if not 0 <= low < high.value:
        raise InputError(shown, where, "the low end must be 0 or more, and below the high end", (), _FORM)
    if not 0 < step <= high.value - low:
        raise InputError(shown, where, "the step must be more than 0, and fit into the range", (), _FORM)
    return WrenchRange(low, high.value, step, high.unit, asked)


def _in_unit(text: str, unit: str) -> Fraction:
    """A number of the wrench's own unit, with that unit or without."""
    number, typed = units.split_quantity(text)
    if typed and units.parse_measure(text, "torque").unit != unit:
        raise InputError(text, "", "range and graduation are in two units", (), "give both in one unit")
    return units.parse_number(number)
