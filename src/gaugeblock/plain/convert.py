"""A measure in another unit, asked in plain words: exact arithmetic, and no figure of any table."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER
from gaugeblock.errors import InputError
from gaugeblock.plain.chatter import CHATTER
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# What people say for a unit, beside its own spelling; one that says two units is that which the other end leaves.
_SPOKEN = {
    "in": r"in|ins|inch|inches|\"|decimal inch(?:es)?|decimals?",
    "mm": r"mm|mms|mill|mills|millimet(?:re|er)s?",
    "ft": r"ft|feet|foot|'",
    "m": r"m|met(?:re|er)s?",
    "um": r"um|microns?",
    "thou": r"thou|thous|thousandths?(?: of an inch)?",
    "cm": r"cm|cms|centimet(?:re|er)s?",
    "km": r"km|kms|kilomet(?:re|er)s?",
    "mile": r"miles?",
    "lbf*ft": r"(?:ft|foot|feet)[-. *]?(?:lbs?|lbf|pounds?)|(?:lbs?|lbf|pounds?)[-. *](?:ft|foot|feet)|ftlbs?|lbft",
    "lbf*in": r"(?:in|inch)[-. *]?(?:lbs?|lbf|pounds?)|(?:lbs?|lbf|pounds?)[-. *](?:in|inch|inches)|inlbs?|lbin",
    "N*m": r"n[-. *]?ms?|newton[ -]met(?:re|er)s?",
    "kg*cm": r"kg[-. *]?cm|kgf[-. *]?cm|kilogram[ -]centimet(?:re|er)s?",
    "kg*m": r"kg[-. *]?m|kilogram[ -]met(?:re|er)s?|kgf[-. *]?m|mkg",
    "psi": r"psi|pounds? per square inch|lbs? per square inch",
    "ksi": r"ksi|kpsi",
    "bar": r"bars?",
    "kPa": r"kpa|kilopascals?",
    "MPa": r"mpa|megapascals?|n/mm2|n/mm\*\*2",
    "atm": r"atm|atmospheres?",
    "mmHg": r"mmhg|mm of mercury",
    "inHg": r"inhg|in(?:ch(?:es)?)?(?: of)? (?:hg|mercury)",
    "degC": r"c|deg ?c|degrees? c|celsius|degrees? celsius|centigrade|degrees? centigrade|°c",
    "degF": r"f|deg ?f|degrees? f|fahrenheit|degrees? fahrenheit|°f",
    "lb": r"lbs?|pounds?",
    "kg": r"kgs?|kilos?|kilograms?",
    "N": r"n|newtons?",
    "kN": r"kn|kilonewtons?",
    "lbf": r"lbf|lbs?|pounds?(?: force)?",
    "kgf": r"kgf|kgs?|kilos?",
    "g": r"g|grams?",
    "oz": r"oz|ounces?",
    "hp": r"hp|(?:brake )?horse ?power|bhp|horses?",
    "kW": r"kw|kilowatts?",
    "W": r"w|watts?",
    "mph": r"mph|miles (?:an|per) hour",
    "km/h": r"kmh|km/h|kph|kilomet(?:re|er)s (?:an|per) hour",
    "ft/s": r"fps|ft/s|feet per second",
    "m/s": r"m/s|met(?:re|er)s per second",
    "L": r"l|lit(?:re|er)s?",
    "gal": r"gals?|gallons?",
    "imperial gal": r"(?:imp|imperial|uk|british) (?:gals?|gallons?)",
    "imperial pint": r"(?:imp|imperial|uk|british) pints?",
    "qt": r"qts?|quarts?",
    "pint": r"pints?",
    "floz": r"fl ?oz|fluid ounces?|oz|ounces?",
    "cm**3": r"cc|ccs|cm3|ml|cubic centimet(?:re|er)s?",
    "in**3": r"ci|cid|cu in|cubic inch(?:es)?|in3",
    "in**2": r"sq in|square inch(?:es)?|in2",
    "mm**2": r"sq mm|square millimet(?:re|er)s?|mm2",
    "L/h": r"lph|l/h|lit(?:re|er)s (?:an|per) hour",
    "gal/h": r"gph|gallons (?:an|per) hour",
    "gal/min": r"gpm|gallons (?:a|per) minute",
    "L/min": r"l/min|lpm|lit(?:re|er)s (?:a|per) minute",
    "cm**3/min": r"cc/min|cc (?:a|per) minute",
    "lb/h": r"lbs?/hr?|pph|pounds? (?:an|per) hour",
    "deg": r"deg|degs|degrees?",
    "rad": r"rad|radians?",
    "hundredths of a mm": r"hundredths of an? (?:mm|millimet(?:re|er))",
    "kgf/cm2": r"(?:kgf?|kilos?|kilograms?)(?:/| per )(?:cm2|square (?:cm|centimet(?:re|er)))",
    "lbf/in": r"(?:lbs?|lbf|pounds?)(?:/| per )(?:in|inch)",
    "N/mm": r"n/mm|newtons? per (?:mm|millimet(?:re|er))",
    "kg/m": r"kg/m|kilograms? per met(?:re|er)",
    "lb/ft": r"lbs?/ft|pounds? per foot",
}
# Units that a question may have and the tables do not: how many of which of theirs, exactly.
_MADE = {
    "thou": (Fraction(1, 1000), "in"),
    "cm": (Fraction(10), "mm"),
    "km": (Fraction(1000), "m"),
    "mile": (Fraction(5280), "ft"),
    "oz": (Fraction(1, 16), "lb"),
    "imperial gal": (Fraction("4.54609"), "L"),
    "imperial pint": (Fraction("0.56826125"), "L"),
    "kg*cm": (Fraction("0.0980665"), "N*m"),
    "kg*m": (Fraction("9.80665"), "N*m"),
    "kgf": (Fraction("9.80665"), "N"),
    "inHg": (Fraction("25.4"), "mmHg"),
    "hundredths of a mm": (Fraction(1, 100), "mm"),
    "kgf/cm2": (Fraction("0.980665"), "bar"),
}
_SHOWN = {"thou": "thousandths of an inch", "mile": "miles", "gal": "US gal", "qt": "US qt", "pint": "US pint"}
ANY_UNIT = "|".join(sorted({p for text in _SPOKEN.values() for p in [f"(?:{text})"]}, key=len, reverse=True))
_MEASURE = rf"(?P<n>-?{NUMBER})(?: ?(?P<from>{ANY_UNIT}))?"
# Each takes long to compile, so that is left until a line may be one (re keeps what it has compiled).
_FORMS = (
    rf"(?:how (?:do|can|would) (?:i|you|we) )?(?:convert(?:ed|ing)?|conversion(?: of)?|change|turn|=)? ?{_MEASURE}"
    rf" (?:in|to|into|as|is|equals?|=)(?: (?:what|how many|a|an))? (?P<to>{ANY_UNIT})",
    rf"how (?:many|much)(?: in)? (?P<to>{ANY_UNIT}) (?:is|are|in|to|do|does|make|makes|equals?|=)(?: an?)? {_MEASURE}",
    rf"(?P<to>{ANY_UNIT}) (?:in|for|from|of) {_MEASURE}",
    rf"(?P<from>{ANY_UNIT}) (?P<n>-?{NUMBER}) (?:in|to|into|as) (?P<to>{ANY_UNIT})",
    rf"(?:convert )?(?P<from>{ANY_UNIT}) (?:to|into|in) (?P<to>{ANY_UNIT})(?: (?:of|for))? (?P<n>-?{NUMBER})",
)
# With what the spelling of a unit begins; a longer word that begins with none of them is of no unit.
_RUNS = re.findall(r"[a-z]{2,}", ANY_UNIT)
_BEGINNINGS = frozenset([*_RUNS, *(run[:-1] for run in _RUNS if len(run) > 2)])
_LONGEST_BEGINNING = max(map(len, _BEGINNINGS))
_SHORT = 3
_OF_FORMS = frozenset(
    [
        "convert",
        "converted",
        "converting",
        "conversion",
        "change",
        "turn",
        "into",
        "what",
        "many",
        "much",
        "does",
        "make",
        "makes",
        "equals",
        "equal",
        "from",
    ]
)
# What ends a story: what is that in psi.
_LAST = (
    r"(?:what(?:'?s| is| does| would)?|how (?:much|many)) (?:is )?(?:that|it|this)(?: comes?(?: out)?| be| make)?"
    rf" (?:in|as|to) (?P<to>{ANY_UNIT})"
)
# The same at once behind its measure: wheel nuts 120 N*m in lbf*ft.
_AT_ONCE = rf" (?:in|to|into|as) (?P<to>{ANY_UNIT})$"
# A unit of torque or pressure that is named alone, as a wrench or a gauge has it: no word of speech is one of these.
_NAMED = ("lbf*ft", "lbf*in", "N*m", "psi", "bar", "kPa", "MPa", "N/mm", "lbf/in")
# One of these stands in every line that asks for a unit or names another.
_PIECES = (
    *(" in ", " to ", " into ", " as ", "lb", "pound", "psi", "bar", "kpa", "mpa", "pascal", "newton", "n/mm"),
    *(f"n{between}m" for between in ("", "-", ".", " ", "*")),
)
_OTHER = rf"(?<![^ ])(?P<to>{'|'.join(_SPOKEN[unit] for unit in _NAMED)})(?![^ ])"
# What has another unit than the book, and what a measure is of: with no more said nothing else can be asked.
_READS = frozenset(["wrench", "wrenches", "gauge", "spanner", "dial", "clicker", "tool", "scale", "both", "reads"])
_OF_IT = frozenset(["torque", "pressure", "tightening"])
_POLITE = frozenset(["please", "mate", "thanks", "ta", "cheers", "then", "exactly", "anyway", "pls", "love", "roughly"])
_NUMBERS = re.compile(r"(?<![^ ])[-.]?[0-9][^ ]*")
_ASKS = re.compile(r"\b(?:in|to|into|as|is|equals?|are|=|for|from|of)\b|=")
_EXACT_DIGITS, _SHOWN_DIGITS = 6, 5


class Conversion(Value):
    """A measure in another unit: ``given`` and ``found`` as text, the ``exact`` number, whether it ``is_exact`` as
    shown.
    """

    __slots__ = ("data", "exact", "found", "given", "is_exact", "unit")

    given: str
    found: str
    exact: str
    unit: str
    is_exact: bool
    data: Refdata

    def __init__(self, given: str, found: str, exact: str, unit: str, is_exact: bool, data: Refdata) -> None:
        put(self, "given", given)
        put(self, "found", found)
        put(self, "exact", exact)
        put(self, "unit", unit)
        put(self, "is_exact", is_exact)
        put(self, "data", data)

    def __hash__(self) -> int:
        return hash((self.given, self.exact, self.unit))

    def as_dict(self) -> dict[str, object]:
        """For JSON: what was given, and the number in the other unit."""
        told = {"given": self.given, "value": self.exact, "unit": self.unit, "printed": self.found}
        return {"asked": {"given": self.given, "unit": self.unit}, "conversion": told}

    def text(self) -> str:
        """For a person: the one line, and that no table has it."""
        from gaugeblock.answer.text import fitted

        more = "" if self.is_exact else f"   ({self.exact})"
        lines = fitted(f"{self.given} = {self.found}{more}", 2, 4)
        return "\n".join(["", *lines, *fitted("A conversion of what you gave. It is no figure of any table.", 2, 4)])


def conversion(words: tuple[str, ...], data: Refdata) -> Conversion | None:
    """What the words ask to be converted; None where they ask for something else.

    InputError where both units are known and measure different things.
    """
    line = _bare(words)
    if _ASKS.search(line) is None:
        return _side_by_side(line, data)
    if not may_be_of_units(line):
        return None
    for form in _FORMS:
        found = re.fullmatch(form, line)
        if found is not None:
            return converted_to(found["n"], found["from"] or "", found["to"], data)
    return None


_TO = ("to", "in", "into", "as")


def conversions(words: tuple[str, ...], data: Refdata) -> tuple[Conversion, ...]:
    """The conversions that a line asks for, one or several with ``and`` between them; none where one is no
    conversion.
    """
    parts: list[list[str]] = [[]]
    for word in words:
        if word in ("and", "also", "then"):
            parts.append([])
        else:
            parts[-1].append(word)
    parts = [part for part in parts if part]
    first = next((at for at, word in enumerate(parts[0]) if word in _TO), len(parts[0])) if parts else 0
    # of one measure in several units: 120 inch pounds to newton metres and to foot pounds
    parts = [[*parts[0][:first], *part] if at and part[0] in _TO else part for at, part in enumerate(parts)]
    found = [conversion(tuple(part), data) for part in parts]
    return tuple(one for one in found if one is not None) if len(parts) > 1 and all(found) else ()


def may_be_of_units(line: str) -> bool:
    """Whether every word of a line may be of a unit or of the forms of a conversion: a quick look before a long one."""
    return not any(
        len(word) > _SHORT
        and word.isalpha()
        and word not in _OF_FORMS
        and not any(word[:n] in _BEGINNINGS for n in range(2, _LONGEST_BEGINNING + 1))
        for word in line.split()
    )


def _side_by_side(line: str, data: Refdata) -> Conversion | None:
    """A measure and another unit of its kind, and no word more: ``10 bar psi``."""
    found = re.fullmatch(rf"{_MEASURE} (?P<to>{ANY_UNIT})", line) if may_be_of_units(line) else None
    if found is None or not found["from"]:
        return None
    try:
        return converted_to(found["n"], found["from"], found["to"], data)
    except InputError:
        return None


def in_a_story(words: tuple[str, ...], data: Refdata) -> tuple[tuple[Conversion, ...], tuple[str, ...]] | None:
    """The conversions that a story asks for, of the one measure that it tells: 2.2 bar on the left rear, so what is
    that in psi; the book says 16 inch pounds and my wrench reads newton metres. With them the words that were left
    out. None for another line.
    """
    last = len(words)
    while last and words[last - 1] in _POLITE:
        last -= 1
    line = " ".join(words[:last])
    if not any(piece in line for piece in _PIECES):  # before a long pattern is compiled for nothing
        return None
    numbers = _NUMBERS.findall(line)
    if not any(len(numbers) == len(found["n"].split()) for found in _measures(line)):
        return None
    asked = re.search(rf"\b{_LAST}$", line) or re.search(_AT_ONCE, line)
    told = line if asked is None else line[: asked.start()]
    measures = _measures(told)
    if len(measures) != 1 or len(_NUMBERS.findall(told)) != len(measures[0]["n"].split()):
        return None
    measure = measures[0]
    if asked is not None and asked.re.pattern == _AT_ONCE and measure.end() != asked.start():
        return None
    rest = f"{told[: measure.start()]} | {told[measure.end() :]}"
    others = [] if asked is not None else list(re.finditer(_OTHER, rest))
    found: dict[str, Conversion] = {}
    for to in [asked["to"]] if asked is not None else [one["to"] for one in others]:
        try:
            made = converted_to(measure["n"], measure["from"], to, data)
        except InputError:
            return None  # the story is of something else
        if made is None:
            return None
        found.setdefault(made.unit, made)
    for one in reversed(others):
        rest = f"{rest[: one.start()]} {rest[one.end() :]}"
    left = tuple(word for word in dict.fromkeys(rest.split()) if word not in CHATTER and word != "|")
    is_meant = asked is not None or _READS & {*left} or {*left} <= _OF_IT
    return (tuple(found.values()), left) if found and is_meant else None


def _measures(line: str) -> list[re.Match[str]]:
    """The measures in a line that have their unit."""
    return [found for found in re.finditer(rf"(?<![^ ]){_MEASURE}(?![^ ])", line) if found["from"]]


def _bare(words: tuple[str, ...]) -> str:
    """The line without what is said around it: ``please convert``, ``what is``."""
    keep = {"in", "to", "into", "as", "is", "are", "how", "much", "many", "a", "an", "m", "of", "for", "from"}
    first = 0
    while first < len(words) and (words[first] in CHATTER - keep or words[first] in ("is", "whats")):
        first += 1
    last = len(words)
    while last > first and words[last - 1] in CHATTER - keep:
        last -= 1
    return " ".join(words[first:last])


def unit_of(said: str) -> str:
    """The unit that people say so; the first of several."""
    return next((name for name, spoken in _SPOKEN.items() if re.fullmatch(spoken, said)), "")


def converted_to(number: str, unit: str, to: str, data: Refdata) -> Conversion | None:
    """A number of a unit in another, each as people say it; None where no unit is meant. InputError where they measure
    two things.
    """
    ends = [name for name, spoken in _SPOKEN.items() if re.fullmatch(spoken, to)]
    starts = [name for name, spoken in _SPOKEN.items() if re.fullmatch(spoken, unit)] if unit else []
    if not unit and ("/" in number or number.lstrip("-").startswith((".", "0."))):
        starts = ["in"]  # nobody writes millimetres so
    pairs = [(a, b) for a in starts for b in ends if _kind(a) == _kind(b)]
    if not starts:
        return None
    if not pairs:
        kinds = f"{units.dimension(_own(starts[0])[1])} and {units.dimension(_own(ends[0])[1])}"
        why = f"{kinds} are two things: one is not converted into the other"
        do = f"ask for a unit of {kinds.partition(' and ')[0]}"
        raise InputError(f"{number} {unit or starts[0]}", "", why, (), do)
    start, end = pairs[0]
    value = units.parse_number(number.replace("-", " ") if re.search(r"[0-9]-[0-9]", number) else number)
    share, inner = _own(start)
    per, outer = _own(end)
    exact = units.convert(value * share, inner, outer) / per
    text, is_exact = _printed(exact)
    shown = _SHOWN.get(end, end)
    return Conversion(f"{number} {_SHOWN.get(start, start)}", f"{text} {shown}", _long(exact), end, is_exact, data)


def _own(unit: str) -> tuple[Fraction, str]:
    """How many of which unit of the table it is."""
    return _MADE.get(unit, (Fraction(1), unit))


def _kind(unit: str) -> str:
    return units.dimension(_own(unit)[1])


def _printed(exact: Fraction) -> tuple[str, bool]:
    """The number as it is shown, and whether that is all of it: an inexact one has five digits and says ``about``."""
    text = units.decimal_text(exact)
    if Fraction(text) == exact and len(text.lstrip("-0.").replace(".", "")) <= _EXACT_DIGITS:
        return text, True
    return f"about {units.significant(float(exact), _SHOWN_DIGITS)}", False


def _long(exact: Fraction) -> str:
    """To twelve digits, as every number for another program."""
    return units.significant(float(exact), 12)
