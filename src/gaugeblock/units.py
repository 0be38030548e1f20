"""One closed, case-sensitive table of unit spellings, with exact factors; reading numbers; printing by side.

Dimensions are our own words: a torque is not an energy, a ratio is not a hardness. Conversions run in
exact rationals. Nothing here reads a file.

Sources of the factors: the inch is 25.4 mm and the avoirdupois pound 0.45359237 kg exactly (international
yard and pound agreement of 1959, NIST SP 811 App. B); standard gravity is 9.80665 m/s^2 (3rd CGPM, 1901).
"""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock.errors import InputError, UnitError
from gaugeblock.value import Value, put

_LBF = "4.4482216152605"  # 0.45359237 kg x 9.80665 m/s^2, exact

# spelling: (dimension, factor numerator, factor denominator, offset in base units, pint expression)
# factor takes a value to the dimension's base unit (SI, coherent).
UNITS: dict[str, tuple[str, str, str, str, str]] = {
    "in": ("length", "0.0254", "1", "0", "inch"),
    "mm": ("length", "0.001", "1", "0", "millimeter"),
    "ft": ("length", "0.3048", "1", "0", "foot"),
    "m": ("length", "1", "1", "0", "meter"),
    "um": ("length", "0.000001", "1", "0", "micrometer"),
    "mm**2": ("area", "0.000001", "1", "0", "millimeter ** 2"),
    "in**2": ("area", "0.00064516", "1", "0", "inch ** 2"),
    "cmil": ("area", "5.067074790974977e-10", "1", "0", "circular_mil"),
    "mm**4": ("second moment of area", "1e-12", "1", "0", "millimeter ** 4"),
    "in**4": ("second moment of area", "4.162314256e-7", "1", "0", "inch ** 4"),
    "rad": ("angle", "1", "1", "0", "radian"),
    "deg": ("angle", "3.14159265358979323846", "180", "0", "degree"),
    "turn": ("angle", "6.28318530717958647692", "1", "0", "turn"),
    "flats": ("angle", "3.14159265358979323846", "3", "0", "turn / 6"),
    "kg": ("mass", "1", "1", "0", "kilogram"),
    "g": ("mass", "0.001", "1", "0", "gram"),
    "lb": ("mass", "0.45359237", "1", "0", "pound"),
    "N": ("force", "1", "1", "0", "newton"),
    "kN": ("force", "1000", "1", "0", "kilonewton"),
    "lbf": ("force", _LBF, "1", "0", "pound_force"),
    "lbf*ft": ("torque", "1.3558179483314004", "1", "0", "pound_force * foot"),
    "N*m": ("torque", "1", "1", "0", "newton * meter"),
    "lbf*in": ("torque", "0.1129848290276167", "1", "0", "pound_force * inch"),
    "ksi": ("stress", "4448.2216152605", "0.00064516", "0", "1000 * pound_force / inch ** 2"),
    "psi": ("stress", _LBF, "0.00064516", "0", "pound_force / inch ** 2"),
    "MPa": ("stress", "1000000", "1", "0", "megapascal"),
    "bar": ("stress", "100000", "1", "0", "bar"),
    "kPa": ("stress", "1000", "1", "0", "kilopascal"),
    "GPa": ("stress", "1000000000", "1", "0", "gigapascal"),
    "Msi": ("stress", "4448221.6152605", "0.00064516", "0", "1000000 * pound_force / inch ** 2"),
    "Pa": ("stress", "1", "1", "0", "pascal"),
    "degC": ("temperature", "1", "1", "273.15", "degree_Celsius"),
    "degF": ("temperature", "5", "9", "255.37222222222222222222", "degree_Fahrenheit"),
    "delta_degC": ("temperature difference", "1", "1", "0", "delta_degree_Celsius"),
    "delta_degF": ("temperature difference", "5", "9", "0", "delta_degree_Fahrenheit"),
    "1": ("ratio", "1", "1", "0", "dimensionless"),
    "%": ("ratio", "0.01", "1", "0", "percent"),
    "kg/m**3": ("density", "1", "1", "0", "kilogram / meter ** 3"),
    "g/cm**3": ("density", "1000", "1", "0", "gram / centimeter ** 3"),
    "lb/in**3": ("density", "0.45359237", "0.000016387064", "0", "pound / inch ** 3"),
    "lb/ft": ("mass per length", "0.45359237", "0.3048", "0", "pound / foot"),
    "kg/m": ("mass per length", "1", "1", "0", "kilogram / meter"),
    "s": ("time", "1", "1", "0", "second"),
    "min": ("time", "60", "1", "0", "minute"),
    "h": ("time", "3600", "1", "0", "hour"),
    "year": ("time", "31557600", "1", "0", "year"),
    "mm**2/s": ("kinematic viscosity", "0.000001", "1", "0", "millimeter ** 2 / second"),
    "m**2/s": ("kinematic viscosity", "1", "1", "0", "meter ** 2 / second"),
    "Pa*s": ("dynamic viscosity", "1", "1", "0", "pascal * second"),
    "W/(m*K)": ("thermal conductivity", "1", "1", "0", "watt / (meter * kelvin)"),
    "J/(kg*K)": ("specific heat", "1", "1", "0", "joule / (kilogram * kelvin)"),
    "kJ/kg": ("specific energy", "1000", "1", "0", "kilojoule / kilogram"),
    "in/100ft": ("linear growth", "0.0254", "30.48", "0", "inch / (100 * foot)"),
    "um/(m*K)": ("thermal expansion", "0.000001", "1", "0", "micrometer / (meter * kelvin)"),
    "1/degF": ("thermal expansion", "9", "5", "0", "1 / delta_degree_Fahrenheit"),
    "1/degC": ("thermal expansion", "1", "1", "0", "1 / delta_degree_Celsius"),
    "ohm/m": ("resistance per length", "1", "1", "0", "ohm / meter"),
    "ohm/1000ft": ("resistance per length", "1", "304.8", "0", "ohm / (1000 * foot)"),
    "A": ("current", "1", "1", "0", "ampere"),
    "V": ("voltage", "1", "1", "0", "volt"),
    "W": ("power", "1", "1", "0", "watt"),
    "kW": ("power", "1000", "1", "0", "kilowatt"),
    "hp": ("power", "745.69987158227022", "1", "0", "horsepower"),
    "m**3": ("volume", "1", "1", "0", "meter ** 3"),
    "L": ("volume", "0.001", "1", "0", "liter"),
    "qt": ("volume", "0.000946352946", "1", "0", "quart"),
    "floz": ("volume", "0.0000295735295625", "1", "0", "fluid_ounce"),
    "rpm": ("rotational speed", "3.14159265358979323846", "30", "0", "revolution / minute"),
    "rev/mile": ("revolutions per length", "6.28318530717958647692", "1609.344", "0", "revolution / mile"),
    "mph": ("speed", "0.44704", "1", "0", "mile / hour"),
    "km/h": ("speed", "1", "3.6", "0", "kilometer / hour"),
    "m/s": ("speed", "1", "1", "0", "meter / second"),
    "1/in": ("per length", "1", "0.0254", "0", "1 / inch"),
    "cycles": ("cycle count", "1", "1", "0", "count"),
    "teeth": ("tooth count", "1", "1", "0", "count"),
    "lines": ("mark count", "1", "1", "0", "count"),
    "HRC": ("hardness HRC", "1", "1", "0", "dimensionless"),
    "HRB": ("hardness HRB", "1", "1", "0", "dimensionless"),
    "HRA": ("hardness HRA", "1", "1", "0", "dimensionless"),
    "HB": ("hardness HB", "1", "1", "0", "dimensionless"),
    "HV": ("hardness HV", "1", "1", "0", "dimensionless"),
    "HK": ("hardness HK", "1", "1", "0", "dimensionless"),
    "HS": ("hardness HS", "1", "1", "0", "dimensionless"),
}

# What people type at a prompt or in a job file. Tables use the spellings above only.
TYPED: dict[str, str] = {
    '"': "in",
    "inch": "in",
    "inches": "in",
    "ins": "in",
    "'": "ft",
    "feet": "ft",
    "foot": "ft",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "metre": "m",
    "meter": "m",
    "ft-lb": "lbf*ft",
    "ft-lbs": "lbf*ft",
    "ft lb": "lbf*ft",
    "ft lbs": "lbf*ft",
    "ft.lb": "lbf*ft",
    "ft-lbf": "lbf*ft",
    "ft*lbf": "lbf*ft",
    "lb-ft": "lbf*ft",
    "lbf-ft": "lbf*ft",
    "lb ft": "lbf*ft",
    "lbf ft": "lbf*ft",
    "lb*ft": "lbf*ft",
    "lbs-ft": "lbf*ft",
    "lbf.ft": "lbf*ft",
    "ftlb": "lbf*ft",
    "ft*lb": "lbf*ft",
    "lbft": "lbf*ft",
    "foot-pounds": "lbf*ft",
    "foot pounds": "lbf*ft",
    "in-lb": "lbf*in",
    "in-lbs": "lbf*in",
    "in lb": "lbf*in",
    "in lbs": "lbf*in",
    "in.lb": "lbf*in",
    "in-lbf": "lbf*in",
    "in*lbf": "lbf*in",
    "lb-in": "lbf*in",
    "lbf-in": "lbf*in",
    "lb in": "lbf*in",
    "lbf in": "lbf*in",
    "lb*in": "lbf*in",
    "lbf.in": "lbf*in",
    "inlb": "lbf*in",
    "in*lb": "lbf*in",
    "inch-pounds": "lbf*in",
    "inch pounds": "lbf*in",
    "Nm": "N*m",
    "N-m": "N*m",
    "N.m": "N*m",
    "N m": "N*m",
    "newton metres": "N*m",
    "newton meters": "N*m",
    "lbs": "lb",
    "pounds": "lb",
    "kgs": "kg",
    "°": "deg",
    "degrees": "deg",
    "degree": "deg",
    "turns": "turn",
    "C": "degC",
    "°C": "degC",
    "deg C": "degC",
    "F": "degF",
    "°F": "degF",
    "deg F": "degF",
    "kpsi": "ksi",
    "KSI": "ksi",
    "PSI": "psi",
    "mpa": "MPa",
    "N/mm**2": "MPa",
    "N/mm2": "MPa",
    "percent": "%",
    "x": "1",
    "sq in": "in**2",
    "in2": "in**2",
    "mm2": "mm**2",
    "in^2": "in**2",
    "mm^2": "mm**2",
    "feet-pounds": "lbf*ft",
    "horsepower": "hp",
    "r/min": "rpm",
}

_FACTORS: dict[str, Fraction] = {}
_OFFSETS: dict[str, Fraction] = {}
_NUMBER = re.compile(
    r"(?P<sign>[+-]?)(?:(?P<whole>[0-9]+)[ -](?P<mn>[0-9]+)/(?P<md>[0-9]+)|(?P<n>[0-9]+)/(?P<d>[0-9]+)"
    r"|(?P<dec>[0-9]+(?:\.[0-9]*)?|\.[0-9]+))",
    re.ASCII,
)
_LONGEST = 24


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
            f"a {dimension(unit)} cannot be given in {to}, which is a {dimension(to)}",
            spellings(dimension(unit)),
            "ask for a unit of the same dimension",
        )
    return (value * factor(unit) + offset(unit) - offset(to)) / factor(to)


def to_base(value: float, unit: str) -> float:
    """A float in the dimension's base unit (SI)."""
    scale, shift = _FLOATS.get(unit) or _as_floats(unit)
    return value * scale + shift


def from_base(value: float, unit: str) -> float:
    """A base-unit float in ``unit``."""
    scale, shift = _FLOATS.get(unit) or _as_floats(unit)
    return (value - shift) / scale


_FLOATS: dict[str, tuple[float, float]] = {}


def _as_floats(unit: str) -> tuple[float, float]:
    got = _FLOATS[unit] = float(factor(unit)), float(offset(unit))
    return got


def spellings(dim: str) -> tuple[str, ...]:
    """All spellings of one dimension, in table order."""
    return tuple(u for u, e in UNITS.items() if e[0] == dim)


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
        value = Fraction(match["dec"] if not match["dec"].endswith(".") else match["dec"] + "0")
    return -value if match["sign"] == "-" else value


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


def text_of(value: Measure | str | None) -> str | None:
    """A measure or a text as text; None stays None."""
    return value.text if isinstance(value, Measure) else value


def parse_measure(text: str, dim: str, where: str = "value") -> Measure:
    """Read ``31 lbf*ft``, ``1 3/8 in``, ``1-3/4"``, ``.120``, ``25 Nm`` as a measure of ``dim``.

    A bare fraction, or a number that begins with a point, is inches when a length is asked (nobody writes
    millimetres so); every other bare number is refused. InputError or UnitError name the nearest spelling.
    """
    number, unit_text = split_quantity(text)
    value = parse_number(number, where)
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
                f"{'an' if dim[0] in 'aeiou' else 'a'} {dim} needs its unit",
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
            f"{unit} is a {dimension(unit)}; a {dim} is asked",
            spellings(dim),
            "use a unit of the right dimension",
        )
    return Measure(value, unit, f"{number} {unit}")


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
