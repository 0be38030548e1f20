"""How each unit is said, by dimension: patterns of the words behind a number."""

from __future__ import annotations

import re

SAYS = {
    "length": {
        "in": "in|ins|inch|inches|\"|inch's",
        "mm": "mm|mil|millimet(?:re|er)s?",
        "ft": "ft|feet|foot|'",
        "m": "m|met(?:re|er)s?",
        "cm": "cm|centimet(?:re|er)s?",
    },
    "temperature": {
        "degC": "deg ?c|degrees? c|c|celsius|degrees? celsius|centigrade|degrees? centigrade",
        "degF": "deg ?f|degrees? f|f|fahrenheit|degrees? fahrenheit",
    },
    "torque": {
        "lbf*ft": "(?:ft|foot|feet)[-. *]?(?:lbs?|lbf|pounds?)|(?:lbs?|lbf|pounds?)[-. *]?(?:ft|foot|feet)",
        "lbf*in": "(?:in|inch)[-. *]?(?:lbs?|lbf|pounds?)|(?:lbs?|lbf|pounds?)[-. *]?(?:in|inch(?:es)?)",
        "N*m": "n[-. *]?m|newton[ -]met(?:re|er)s?",
    },
    "angle": {"deg": "deg|degs|degrees?|°"},
    "rotational speed": {"rpm": "rpm|revs|r/min"},
    "speed": {"mph": "mph|miles (?:an|per) hour", "km/h": "kmh|km/h|kph|kilomet(?:re|er)s (?:an|per) hour"},
    "stress": {
        "ksi": "ksi",
        "psi": "psi",
        "MPa": "mpa|megapascals?|n/mm2|newtons? per square mm",
        "bar": "bars?",
        "Msi": "msi",
        "GPa": "gpa",
    },
    "force": {"lbf": "lbs?|lbf|pounds?(?: force)?", "N": "n|newtons?", "kN": "kn|kilonewtons?"},
    "film coefficient": {
        "W/(m**2*K)": r"w(?:/|ith) ?m(?:\*\*|\^)?2[ */]?k|watts? per (?:square )?met(?:re|er).{0,12}k"
    },
    "thermal expansion": {
        "um/(m*K)": (
            r"um/ ?m[ */]?(?:deg ?)?[kc]|ppm(?:/(?:deg ?)?[kc])?|microns? per met(?:re|er)(?: per degrees?)?(?: c)?"
        ),
    },
    "current": {"A": "a|amps?|amperes?"},
    "voltage": {"V": "v|volts?"},
    "mass": {"kg": "kg|kgs|kilos?|kilograms?", "lb": "lbs?|pounds?"},
    "power": {"W": "w|watts?", "kW": "kw|kilowatts?", "hp": "hp|horsepower|bhp|horses?|ponies"},
    "volume": {
        "L": "l|lit(?:re|er)s?",
        "qt": "qts?|quarts?",
        "gal": "gals?|gallons?",
        "pint": "pints?",
    },
    "ratio": {"%": "%|percent|per cent"},
    "number": {"1": "(?!)"},
}
_IN_MM = {"in": 25.4, "mm": 1, "ft": 304.8, "m": 1000, "cm": 10}


def millimetres(number: str, unit: str) -> float:
    """A length as people type it, in millimetres."""
    return value_of(number) * _IN_MM[unit]


def value_of(number: str) -> float:
    """A number without its sign as people type it: 12, .5, 1 1/2."""
    parts = [part.partition("/") for part in re.split("[ -]", number.removeprefix("-"))]
    return sum(float(top) / float(bottom or 1) for top, _, bottom in parts if float(bottom or 1))
