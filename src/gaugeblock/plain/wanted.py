"""The unit that an answer is wanted in, named in a line without a number before it."""

from __future__ import annotations

import re

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Hit

_WANTED = (
    r"(?:in |as |into )?(?:(?P<Nm>nm|n[.*-]m|newton[ -]met(?:re|er)s?)|(?P<lbfft>(?:ft|foot)[- /]?(?:lbs?|pounds?)"
    r"|(?:lbs?|pounds?)[- ](?:ft|foot|feet)|lbf?\*ft|ft\*lbf?)|(?P<lbfin>(?:in|inch)[- /]?(?:lbs?|pounds?)"
    r"|(?:lbs?|pounds?)[- ](?:in|inch|inches)|lbf?\*in|in\*lbf?)|(?P<mm>mm|millimet(?:re|er)s?)|(?P<inch>inches|thou"
    r"|thousandths?(?: of an inch)?"
    r"|decimals?(?: inch(?:es)?)?)|(?P<psi>psi)|in (?P<bar>bar)|(?P<MPa>mpa)|(?P<ksi>ksi)|(?P<degF>fahrenheit)"
    r"|(?P<degC>celsius|centigrade)|in (?P<cm>cm|centimet(?:re|er)s?)|in (?P<kPa>kpa)"
    r"|(?P<kgm>kgf?[-.*]?m|kilogram[- ]?(?:force )?met(?:re|er)s?)"
    r"|(?P<Lh>lph|l/h|lit(?:re|er)s? (?:per|an?) hour)|(?P<galh>gph|gal(?:lon)?s?"
    r" (?:per|an?) hour))(?= |$)|(?:in (?:deg(?:rees?)? )?|deg(?:rees?)? )(?:(?P<F>f)|(?P<C>c))(?= |$)"
)
_UNITS = {
    "Nm": "N*m",
    "lbfft": "lbf*ft",
    "lbfin": "lbf*in",
    "inch": "in",
    "F": "degF",
    "C": "degC",
    "kgm": "kgf*m",
    "Lh": "L/h",
    "galh": "gal/h",
}
# A scale alone, as the last word of a line.
_LAST = {"f": "degF", "c": "degC", "inch": "in"}
# Words with which it can begin; the pattern is compiled when a line has one.
_FIRST = """
in as into nm n-m n.m n*m newton ft foot inch ft-lb ft-lbs lbf*ft
ftlb ftlbs ft/lb ft/lbs inlb inlbs in/lb in/lbs lb*ft ft*lb ft*lbf lbf*in
lb*in in*lb in*lbf foot-pounds in-lb in-lbs inch-pounds mm millimetre millimeter
millimetres millimeters inches lb lbs pound pounds thou thousandth thousandths
decimal decimals psi mpa ksi fahrenheit celsius centigrade
deg degree degrees lph l/h litre litres liter liters gph gal gals gallon gallons
kgm kg-m kg.m kg*m kgfm kgf-m kgf.m kgf*m kilogram kilogram-metres
"""
_BEGINS = frozenset(_FIRST.split())


def is_in(unit: str, found: object) -> bool:
    """Whether an answer has a figure of the dimension in which it is wanted, or none at all."""
    from gaugeblock import units
    from gaugeblock.answer.sheet import Sheet

    if not unit or not isinstance(found, Sheet) or not found.figures:
        return True
    return any(units.dimension(figure.unit) == units.dimension(unit) for figure in found.figures)


def wanted_at(words: tuple[str, ...], at: int) -> Hit | None:
    """The unit that the answer is wanted in, named at this place; a number before it has it as its own."""
    if words[at] in _LAST and at == len(words) - 1 and at and not words[at - 1][-1:].isdigit():
        from gaugeblock.answer.asking import Hit

        count = 1
        return Hit(count, _LAST[words[at]])
    if words[at] not in _BEGINS or (at and words[at - 1][:1].isdigit()):
        return None
    found = re.match(_WANTED, " ".join(words[at : at + 5]))
    if found is None or found.lastgroup is None:
        return None
    from gaugeblock.answer.asking import Hit

    return Hit(found[0].count(" ") + 1, _UNITS.get(found.lastgroup, found.lastgroup))
