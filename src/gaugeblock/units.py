"""One closed, case-sensitive table of unit spellings, with exact factors; reading numbers; printing by side.

Dimensions are our own words: a torque is not an energy, a ratio is not a hardness. Conversions run in
exact rationals. Nothing here reads a file.
The table itself stands in ``unit_table``.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from gaugeblock.errors import InputError, UnitError
from gaugeblock.unit_table import TYPED as TYPED
from gaugeblock.unit_table import UNITS as UNITS
from gaugeblock.value import Value, put

_NUMBER = re.compile(
    r"(?P<sign>[+-]?)(?:(?P<whole>[0-9]+)[ -](?P<mn>[0-9]+)/(?P<md>[0-9]+)|(?P<n>[0-9]+)/(?P<d>[0-9]+)"
    r"|(?P<dec>[0-9]+(?:\.[0-9]*)?|\.[0-9]+))",
    re.ASCII,
)
_LONGEST = 24
_MOST_DIGITS = 6  # of a whole number of things

_FACTORS: dict[str, Fraction] = {}
_OFFSETS: dict[str, Fraction] = {}


def dimension(unit: str) -> str:
    """The dimension word of a unit spelling; UnitError with the nearest spellings when it is unknown."""
    entry = UNITS.get(unit)
    if entry is None:
        raise UnitError(unit, "unit", "no such unit spelling", nearest_units(unit), "use one of the listed spellings")
    return entry[0]


def factor(unit: str) -> Fraction:
    """Exact multiplier from ``unit`` to its dimension's base unit."""
    got = _FACTORS.get(unit)
    if got is None:
        dimension(unit)
        if unit == "degF":
            got = Fraction(5, 9)
        else:
            entry = UNITS[unit]
            got = Fraction(entry[1]) / Fraction(entry[2])
        _FACTORS[unit] = got
    return got


def offset(unit: str) -> Fraction:
    """Exact offset in base units; not zero only for degC and degF (273.15 K and 459.67 x 5/9 K)."""
    got = _OFFSETS.get(unit)
    if got is None:
        dimension(unit)
        got = Fraction("459.67") * Fraction(5, 9) if unit == "degF" else Fraction(UNITS[unit][3])
        _OFFSETS[unit] = got
    return got


def convert(value: Fraction, unit: str, to: str) -> Fraction:
    """``value`` in ``unit`` as an exact number of ``to``; UnitError across dimensions.

    >>> convert(Fraction(1), "in", "mm")
    Fraction(127, 5)
    """
    if unit == to:
        return value
    if dimension(unit) != dimension(to):
        raise UnitError(
            unit,
            "unit",
            f"{_one(dimension(unit))} cannot be given in {to}, which is {_one(dimension(to))}",
            spellings(dimension(unit)),
            "ask for a unit of the same dimension",
        )
    scaled = value * factor(unit)
    shift = _shift(unit, to)
    return (scaled + shift if shift else scaled) / factor(to)


@cache
def _shift(unit: str, to: str) -> Fraction:
    """How far the zero of one unit stands from that of another, in base units."""
    return offset(unit) - offset(to)


def to_base(value: float, unit: str) -> float:
    """A float in the dimension's base unit (SI)."""
    scale, shift = _FLOATS.get(unit) or _as_floats(unit)
    return value * scale + shift


def in_unit(value: float, unit: str, to: str) -> float:
    """A float of one unit in another of the same dimension; itself, to the last bit, in its own."""
    return value if unit == to else from_base(to_base(value, unit), to)


def from_base(value: float, unit: str) -> float:
    """A base-unit float in ``unit``."""
    scale, shift = _FLOATS.get(unit) or _as_floats(unit)
    return (value - shift) / scale


_FLOATS: dict[str, tuple[float, float]] = {}


def _as_floats(unit: str) -> tuple[float, float]:
    got = _FLOATS[unit] = float(factor(unit)), float(offset(unit))
    return got


def spellings(dim: str) -> tuple[str, ...]:
    """All spellings of one dimension, in table order: what a shop says first."""
    return tuple(u for u, e in UNITS.items() if e[0] == dim)


def _one(dim: str) -> str:
    """A dimension with its article."""
    return f"{'an' if dim[0] in 'aeiou' else 'a'} {dim}"


def nearest_units(text: str, dim: str | None = None) -> tuple[str, ...]:
    """Up to five spellings that look like ``text``, of one dimension when it is known."""
    from difflib import get_close_matches

    pool = {u: u for u, e in UNITS.items() if dim is None or e[0] == dim}
    pool.update({t: u for t, u in TYPED.items() if u in pool})
    folded: dict[str, str] = {}
    for typed, unit in pool.items():
        folded.setdefault(typed.casefold(), unit)
    found = [folded[m] for m in get_close_matches(text.casefold(), folded, n=8, cutoff=0.6)]
    if not found and dim is not None:
        found = list(spellings(dim))
    return tuple(dict.fromkeys(found))[:5]


def parse_number(text: str, where: str = "number") -> Fraction:
    """An exact number from ``1.25``, ``.120``, ``3/8``, ``1 3/8`` or ``1-3/8``; InputError for anything else.

    >>> parse_number("1-3/4")
    Fraction(7, 4)
    """
    asked = text.strip()
    match = _NUMBER.fullmatch(asked) if len(asked) <= _LONGEST else None
    if match is None:
        shown = asked if len(asked) <= _LONGEST else asked[:_LONGEST] + "..."
        why = "a decimal comma; write a point" if re.fullmatch(r"[+-]?\d+,\d+", asked) else "not a number"
        raise InputError(shown or "(blank)", where, why, (), "write 1.25, .120, 3/8 or 1 3/8")
    for bottom in (match["md"], match["d"]):
        if bottom is not None and int(bottom) == 0:
            raise InputError(asked, where, "division by zero", (), "write 1.25, .120, 3/8 or 1 3/8")
    if match["whole"] is not None:
        value = int(match["whole"]) + Fraction(int(match["mn"]), int(match["md"]))
    elif match["n"] is not None:
        value = Fraction(int(match["n"]), int(match["d"]))
    else:
        whole, _, part = match["dec"].partition(".")
        value = Fraction(int(whole + part), 10 ** len(part))
    return -value if match["sign"] == "-" else value


def whole_number(text: str) -> int | None:
    """A whole number in plain digits, of six at most; None for anything else: a raised 2 is no number of things.

    >>> whole_number("12"), whole_number("\u00b2")
    (12, None)
    """
    return int(text) if len(text) <= _MOST_DIGITS and text.isascii() and text.isdigit() else None


def split_quantity(text: str) -> tuple[str, str]:
    """The number part and the unit part of what was typed; the unit may be blank."""
    asked = text.strip()
    match = _NUMBER.match(asked)
    if match is None:
        return asked, ""
    return asked[: match.end()], asked[match.end() :].strip()


class Measure(Value):
    """A number with a unit, read exactly: ``value`` (Fraction), ``unit`` (a table spelling), ``text`` as typed."""

    __slots__ = ("text", "unit", "value")

    value: Fraction
    unit: str
    text: str

    def __init__(self, value: Fraction, unit: str, text: str) -> None:
        put(self, "value", value)
        put(self, "unit", unit)
        put(self, "text", text)

    @property
    def number(self) -> str:
        """The number as typed, without its unit."""
        return self.text.rsplit(" ", 1)[0]

    def __str__(self) -> str:
        return self.text

    def to(self, unit: str) -> float:
        """The measure as a float in ``unit``."""
        return float(convert(self.value, self.unit, unit))

    def __repr__(self) -> str:
        return f"Measure({self.text!r})"


def text_of(value: object) -> str | None:
    """A measure, what is stated, or a text as text; None stays None."""
    return None if value is None else str(value)


def parse_measure(text: str, dim: str, where: str = "value") -> Measure:
    """Read ``31 lbf*ft``, ``1 3/8 in``, ``1-3/4"``, ``.120``, ``25 Nm`` as a measure of ``dim``.

    A bare fraction, or a number that begins with a point, is inches when a length is asked (nobody writes
    millimetres so); every other bare number is refused. InputError or UnitError name the nearest spelling.
    """
    number, unit_text = split_quantity(text)
    value = parse_number(number, where)
    if dim == "ratio":
        _refuse_zero(number, where)
    unit = UNITS[unit_text] and unit_text if unit_text in UNITS else TYPED.get(unit_text, "")
    if not unit_text:
        if dim == "ratio":
            unit = "1"
        elif dim == "length" and ("/" in number or number.lstrip("+-").startswith(".")):
            unit = "in"
        else:
            units = spellings(dim)
            raise UnitError(
                text.strip(),
                where,
                f"{_one(dim)} needs its unit",
                tuple(f"{number} {u}" for u in units),
                "add the unit",
            )
    if not unit:
        raise UnitError(
            text.strip()[:60],
            where,
            f"{unit_text[:40]!r} is not a unit of {dim}",
            nearest_units(unit_text[:40], dim),
            "use one of the listed spellings",
        )
    if dimension(unit) != dim:
        raise UnitError(
            text.strip(),
            where,
            f"{unit} is {_one(dimension(unit))}; {_one(dim)} is asked",
            spellings(dim),
            "use a unit of the right dimension",
        )
    return Measure(value, unit, f"{number} {unit}")


def _refuse_zero(number: str, where: str) -> None:
    """InputError for a ratio that begins with a zero and has no point behind it: ``06``, of 3,06 perhaps."""
    digits = number.lstrip("+-")
    if digits[:1] == "0" and digits[1:2].isdigit():
        rest = digits[1:]
        do = f"write 0.{rest}, or {rest.lstrip('0') or '0'}"
        raise InputError(number, where, "it begins with a zero; it may be the rest of a longer number", (), do)


def step_round(value: float | Fraction, step: Fraction, side: str) -> Fraction:
    """``value`` on the grid of ``step``: down for side ``max``, up for ``min``, else to the nearest.

    A float within 1e-9 of a step (relative to the step count) is that step; only then does the side decide.
    """
    top, bottom = value.as_integer_ratio()
    top, bottom = top * step.denominator, bottom * step.numerator
    down, rest = divmod(top, bottom)
    near = down + (2 * rest > bottom or (2 * rest == bottom and down % 2))
    if abs(top - near * bottom) * 10**9 > bottom * max(1, abs(near)):
        near = down if side == "max" else down + 1 if side == "min" else near
    return Fraction(near * step.numerator, step.denominator)


def decimal_text(value: Fraction, places: int = 12) -> str:
    """An exact number as plain decimal text, without trailing zeros.

    >>> decimal_text(Fraction(7, 4))
    '1.75'
    """
    scaled = round(abs(value) * 10**places)
    whole, part = divmod(scaled, 10**places)
    text = f"{whole}.{part:0{places}d}".rstrip("0").rstrip(".") if part else str(whole)
    return f"-{text}" if value < 0 and scaled else text


def fraction_text(value: Fraction) -> str:
    """An exact number of inches as the trade writes it: ``1 3/8``, ``3/16``, ``5``.

    >>> fraction_text(Fraction(11, 8))
    '1 3/8'
    """
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value).numerator, abs(value).denominator)
    if not rest:
        return f"{sign}{whole}"
    part = f"{rest}/{abs(value).denominator}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def significant(value: float, digits: int = 4) -> str:
    """A float to so many significant digits, in plain decimal text."""
    if value == 0:
        return "0"
    text = f"{value:.{digits}g}"
    return decimal_text(Fraction(text)) if "e" in text else text
