"""Interval: what a ``~`` key cell holds. One grammar, exact rationals.

    0.375 in | 1/4 to 3/4 in | over 3/4 to 1 1/2 in | to 16 mm | over 16 mm | any

A number without a unit is a pure ratio. ``to`` includes its end, ``over`` leaves its end out.
"""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.errors import GaugeblockError, InputError

_FORM = re.compile(
    r"(?:(?P<over>over )?(?P<a>-?[0-9./ ]*[0-9.]))?(?:(?(a) )(?P<to>to )(?P<b>-?[0-9./ ]*[0-9.]))?(?: (?P<unit>[^"
    r" ]+))?",
    re.ASCII,
)


class Interval:
    """Ends in the dimension's base unit (None = open-ended), whether each is left out, and the unit it was written
    in. ``single`` is the numerator and denominator of a single value, None of a range.
    """

    __slots__ = ("_high", "_low", "dimension", "high", "high_open", "low", "low_open", "single", "text", "unit")

    def __init__(
        self, low: Fraction | None, low_open: bool, high: Fraction | None, high_open: bool, unit: str, text: str
    ) -> None:
        self.low = low
        self.low_open = low_open
        self.high = high
        self.high_open = high_open
        self.unit = unit
        self.dimension = units.dimension(unit)
        self.text = text
        self._low = None if low is None else low.as_integer_ratio()
        self._high = None if high is None else high.as_integer_ratio()
        self.single = self._low if self._low == self._high else None

    def holds(self, value: Fraction) -> bool:
        """Whether a base-unit value lies inside."""
        return self.holds_ratio(*value.as_integer_ratio())

    def holds_ratio(self, top: int, bottom: int) -> bool:
        """As ``holds``, of a numerator and a denominator: whole numbers are quicker compared than rationals."""
        if self._low is not None:
            above = top * self._low[1] - self._low[0] * bottom
            if above < 0 or (self.low_open and not above):
                return False
        if self._high is not None:
            below = self._high[0] * bottom - top * self._high[1]
            return below > 0 or not (below or self.high_open)
        return True

    def overlaps(self, other: Interval) -> bool:
        """Whether the two share a value; a single value inside a range counts, equal ends count when both include
        them.
        """
        if self.dimension != other.dimension:
            return False
        return not (_before(self, other) or _before(other, self))

    @property
    def is_point(self) -> bool:
        """A single value."""
        return self.single is not None

    @property
    def width(self) -> Fraction | None:
        """High minus low in base units; None when an end is open."""
        return None if self.low is None or self.high is None else self.high - self.low


def _before(a: Interval, b: Interval) -> bool:
    if a.high is None or b.low is None:
        return False
    return a.high < b.low or (a.high == b.low and (a.high_open or b.low_open))


_SEEN: dict[str, Interval | None] = {}


def parse_interval(cell: str) -> Interval | None:
    """The interval in a key cell; None for ``any``. InputError when the cell does not follow the grammar."""
    if cell in _SEEN:
        return _SEEN[cell]
    got = None if cell == "any" else _parse(cell)
    _SEEN[cell] = got
    return got


def is_interval(cell: str) -> bool:
    """Whether a cell follows the grammar, with units that there are."""
    try:
        parse_interval(cell)
    except GaugeblockError:
        return False
    return True


def _parse(cell: str) -> Interval:
    match = _FORM.fullmatch(cell)
    if match is None or (match["a"] is None and match["b"] is None) or (match["over"] and match["a"] is None):
        raise InputError(
            cell,
            "interval",
            "not an interval",
            (),
            "write 0.375 in, 1/4 to 3/4 in, over 3/4 to 1 1/2 in, to 16 mm or over 16 mm",
        )
    unit = match["unit"] or "1"
    to_base = units.factor(unit)
    shift = units.offset(unit)

    def base(text: str) -> Fraction:
        scaled = units.parse_number(text, "interval") * to_base
        return scaled + shift if shift else scaled

    low = base(match["a"]) if match["a"] is not None else None
    high = base(match["b"]) if match["b"] is not None else None
    if match["over"] is None and match["to"] is None:
        high = low
    if low is not None and high is not None and (low > high or (match["over"] and low == high)):
        raise InputError(cell, "interval", "its ends are the wrong way round", (), "write the lower end first")
    return Interval(low, match["over"] is not None, high, False, unit, cell)
