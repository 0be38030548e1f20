"""Miles per gallon in litres per 100 km and back: of both gallons where none is named."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER
from gaugeblock.plain.convert import Conversion

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_MILE = Fraction("1.609344")  # km
_GALLONS = {"US": Fraction("3.785411784"), "imperial": Fraction("4.54609")}  # L
_LITRES = r"(?:l|lit(?:re|er)s?)(?: ?/ ?| per )100(?: ?kms?| kilomet(?:re|er)s?)?"
_MILES = r"mpg|miles (?:per|to the|to an?|an?) gallon"
_WHICH = r"(?P<which>us|american|imperial|uk|british|imp)?"
_TO_LITRES = re.compile(rf"(?P<n>{NUMBER}) {_WHICH} ?(?:{_MILES}) (?:in|to|into|as|=)(?: an?)? {_LITRES}")
_TO_MILES = re.compile(rf"(?P<n>{NUMBER}) {_LITRES} (?:in|to|into|as|=)(?: an?)? {_WHICH} ?(?:{_MILES})")
_DIGITS = 3


def economy(words: tuple[str, ...], data: Refdata) -> tuple[Conversion, ...]:
    """What a line asks of a consumption; none where it asks for something else."""
    line = " ".join(words)
    for form, to, other in ((_TO_LITRES, "L/100 km", "mpg"), (_TO_MILES, "mpg", "L/100 km")):
        found = form.search(line)
        if found is not None:
            amount = units.parse_number(found["n"])
            return tuple(
                _one(found["n"], per / amount, f"{name} {other}", f"{name} {to}", data)
                for name, per in _per_gallon(found["which"])
            )
    return ()


def _per_gallon(which: str | None) -> list[tuple[str, Fraction]]:
    """The name of a gallon and its litres per 100 km at one mile to it; of both where none was named."""
    named = {"us": "US", "american": "US"}.get(which or "", "imperial" if which else "")
    return [(name, 100 * litres / _MILE) for name, litres in _GALLONS.items() if named in ("", name)]


def _one(number: str, exact: Fraction, start: str, end: str, data: Refdata) -> Conversion:
    """A consumption in the other form; the gallon is told of the miles alone."""
    start, end = (text.replace("US L", "L").replace("imperial L", "L") for text in (start, end))
    shown = f"about {units.significant(float(exact), _DIGITS)}"
    return Conversion(f"{number} {start}", f"{shown} {end}", units.significant(float(exact), 12), end, False, data)
