"""A measure in another unit, as the Answer to a line: one, several, or the one that a story tells."""

from __future__ import annotations

from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# A line that may ask for a conversion: short, and with a unit at its end or a word that asks for one.
_LONGEST_CONVERSION = 12
_SAID_LAST = """
in ins inch inches decimal decimals mm mms mill mills millimetre millimeter millimetres millimeters ft feet foot m
metres meters micron microns um thou thousandths cm cms centimetres centimeters km kilometres kilometers miles mile lb
lbs pounds pound nm n-m newton metre meter kgm kg-m psi ksi bar bars kpa mpa atm mmhg inhg mercury c f celsius
centigrade fahrenheit n kn newtons kg kgs kilos kilograms g grams oz ounces hp horsepower kw kilowatts w watts
mph kph kmh km/h hour fps m/s second l litre liter litres liters gal gals gallon gallons qt quarts pints cc ml
ci cid cm2 centimetre centimeter lph gph gpm minute please rad radians deg degrees
"""
_UNITS = frozenset(_SAID_LAST.split())
# With these two measures are set side by side.
_MORE_OR_LESS = """
bigger larger longer smaller shorter thicker thinner wider more less higher lower heavier lighter hotter same equal
"""
_COMPARED = frozenset(_MORE_OR_LESS.split())
# What reads another unit than the book has.
_READ_BY = frozenset(["wrench", "gauge", "spanner", "dial", "clicker", "reads"])


def converted(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The conversions that a short line asks for, or a story of a wrench that reads another unit; None for others."""
    if "mpg" in words or "gallon" in words:
        from gaugeblock.plain.economy import economy

        told = economy(words, data)
        if told:
            return Answer("a conversion", told[0], more=tuple(Answer("a conversion", one) for one in told[1:]))
    if not _COMPARED.isdisjoint(words):
        from gaugeblock.plain.bigger import bigger

        both = bigger(words, data)
        if both is not None:
            return both
    is_last = words[-1] in _UNITS or (words[-1][:1].isdigit() and not {"to", "into"}.isdisjoint(words))
    if len(words) < _LONGEST_CONVERSION and (is_last or "how" in words or "convert" in words):
        from gaugeblock.plain.convert import conversion, conversions

        found = conversion(words, data)
        if found is not None:
            return Answer("a conversion", found)
        several = conversions(words, data)
        if several:
            return Answer("conversions", several[0], more=tuple(Answer("a conversion", one) for one in several[1:]))
    return None


def read_in_another_unit(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The conversion of a story in which a wrench or a gauge reads another unit."""
    return None if _READ_BY.isdisjoint(words) else in_a_story(words, data)


def in_a_story(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The conversions of the one measure that a story tells."""
    from gaugeblock.plain import convert

    told = convert.in_a_story(words, data)
    if told is None:
        return None
    left_out = f"; left out: {', '.join(told[1])}" if told[1] else ""
    first, *more = told[0]
    return Answer(f"a conversion{left_out}", first, more=tuple(Answer("a conversion", one) for one in more))
