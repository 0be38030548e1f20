"""A measure in another unit, as the Answer to a line: one, several, or the one that a story tells."""

from __future__ import annotations

from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.plain.convert import Conversion
    from gaugeblock.tables.load import Refdata

# A line that may ask for a conversion: short, and with a unit at its end or a word that asks for one.
_LONGEST_CONVERSION, _MORE_OF_IT = 12, 6
_SAID_LAST = """
in ins inch inches decimal decimals mm mms mill mills millimetre millimeter millimetres millimeters ft feet foot m
metres meters micron microns um thou thousandths cm cms centimetres centimeters km kilometres kilometers miles mile lb
lbs pounds pound nm n-m newton metre meter kgm kg-m psi ksi bar bars kpa mpa atm mmhg inhg mercury c f celsius
centigrade fahrenheit n kn newtons kg kgs kilos kilograms g grams oz ounces hp horsepower kw kilowatts w watts
mph kph kmh km/h hour fps m/s second l litre liter litres liters gal gals gallon gallons qt quarts pints cc ml
ci cid cm2 centimetre centimeter lph gph gpm minute please rad radians deg degrees
"""
_UNITS = frozenset(_SAID_LAST.split())
# What a measure may be of, where it is asked in another unit: it changes no unit.
_NAMED = """
tyre tyres tire tires pressure pressures torque oil fuel boost compression gap gaps clearance bearing bearings piston
pistons ring rings journal coolant tank capacity line brake end float play thick thickness wall preload air manifold
"""
_OF_WHAT = frozenset(_NAMED.split())
_TYRES = frozenset(["tyre", "tyres", "tire", "tires"])
_MOST_OF_A_TYRE = {"psi": 150.0, "bar": 10.0, "kPa": 1000.0}  # more than those of a heavy truck
_AND_ASKS = frozenset(["is", "are", "what", "whats", "what's", "how", "do", "does", "should", "can", "will", "which"])
_GOES_ON = frozenset(["and", "then", "also", "or"])
_CONVERTS = frozenset(["convert", "what", "whats", "what's", "how"])
# Of these a power may be asked, or what makes it up.
_POWERS = frozenset(
    ["hp", "bhp", "kw", "horsepower", "power", "rpm", "amps", "amp", "a", "current", "watts", "w", "volts"]
)
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
    if len(words) < _LONGEST_CONVERSION + _MORE_OF_IT and not _POWERS.isdisjoint(words):
        from gaugeblock.plain.powers import powers

        told = powers(words, data)
        if told:
            return Answer("a calculation", told[0], more=tuple(Answer("a calculation", one) for one in told[1:]))
    if not _COMPARED.isdisjoint(words):
        from gaugeblock.plain.bigger import bigger

        both = bigger(words, data)
        if both is not None:
            return both
    is_last = words[-1] in _UNITS or (words[-1][:1].isdigit() and not {"to", "into"}.isdisjoint(words))
    longest = _LONGEST_CONVERSION + (_MORE_OF_IT if "convert" in words else 0)
    if len(words) < longest and (is_last or "how" in words or "convert" in words):
        from gaugeblock.plain.convert import conversion, conversions

        found = conversion(words, data)
        if found is not None:
            return Answer("a conversion", found)
        several = conversions(words, data)
        if several:
            return Answer("conversions", several[0], more=tuple(Answer("a conversion", one) for one in several[1:]))
    return _of_something(words, data) if {"in", "to", "into", "as"} & {*words} else None


def _of_something(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The conversion of a measure that is said to be of something, tyre pressure 35 psi in bar, or that a story ends
    in: whats 3 thou in mm; None for another line.
    """
    from gaugeblock.plain.chatter import CHATTER

    asked: tuple[str, ...] = words
    rest: tuple[str, ...] = ()
    for at in range(1, len(words) - 1):
        if words[at] == "and" and words[at + 1] in _AND_ASKS:
            asked, rest = words[:at], words[at:]
            break
    left = [word for word in asked if word in _OF_WHAT]
    found = _one(tuple(word for word in asked if word not in _OF_WHAT), data) if left else None
    if found is None:
        rest, left = (), []
        starts = [at for at in range(1, len(words)) if words[at] in _CONVERTS and words[at - 1] not in _GOES_ON]
        found = _one(words[starts[-1] :], data) if starts else None
        if found is not None:
            told = words[: starts[-1]]
            is_asked = not {*told}.isdisjoint(_CONVERTS)
            rest, left = (told, []) if is_asked else ((), [word for word in told if word not in CHATTER])
    if found is None:
        return None
    said = f"; left out: {', '.join(dict.fromkeys(left))}" if left else ""
    said += f"; not answered: {' '.join(rest)}" if rest else ""
    return Answer(f"a conversion{said}{_if_absurd(words, found)}", found)


def _one(words: tuple[str, ...], data: Refdata) -> Conversion | None:
    from gaugeblock.errors import InputError
    from gaugeblock.plain.convert import conversion

    if not any(word[:1].isdigit() or word[:1] == "." for word in words):
        return None
    try:
        return conversion(words, data)
    except InputError:  # of two things: the line asks for something else
        return None


def _if_absurd(words: tuple[str, ...], found: Conversion) -> str:
    """What is told of a pressure that no tyre holds."""
    number, _, unit = found.given.partition(" ")
    most = _MOST_OF_A_TYRE.get(unit)
    if _TYRES.isdisjoint(words) or most is None or float(number) <= most:
        return ""
    return f"; no tyre of a road vehicle holds {found.given}: see that the number is right"


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
