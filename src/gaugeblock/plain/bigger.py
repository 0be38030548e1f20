"""Which of two measures is bigger, or whether they are the same: each in the unit of the other."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.convert import ANY_UNIT, Conversion, converted_to, unit_of
from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_WHICH = r"(?:which|what)(?: (?:one|size))?(?: is|'s)?(?: the)?"
_MORE = r"(?:bigger|larger|longer|smaller|shorter|thicker|thinner|wider|more|less|higher|lower|heavier|lighter|hotter)"
_AS = rf"(?:{_MORE}(?: or {_MORE})? than|the same(?: size| as| thing)* as|same as|equal to)"
_A = rf"(?P<a>{NUMBER})(?: ?(?P<u>{ANY_UNIT}))?(?![^ ])"
_B = rf"(?P<b>{NUMBER})(?: ?(?P<v>{ANY_UNIT}))?(?![^ ])"
_METRIC_SIZE = re.compile(r"\bm([0-9]{1,2})\b(?! ?(?:x|by|-|\.) ?[0-9])")  # M8 is 8 mm thick
_FORMS = tuple(
    re.compile(form)
    for form in (
        rf"{_WHICH} {_MORE} (?:an? )?{_A} or (?:an? )?{_B}",
        rf"(?:an? )?{_A} (?:or|vs|versus|and|against) (?:an? )?{_B} {_WHICH} {_MORE}",
        rf"(?:is|are) (?:an? )?{_A} {_AS} (?:an? )?{_B}",
        # the manual says 180 lbf*in, is that more or less than 20 N*m
        rf"[^0-9]*(?<![^ ]){_A} (?:so |and )?(?:is|would|are) (?:that|it|this|they)(?: be)? {_AS} (?:an? )?{_B}",
    )
)


def bigger(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The two measures of a line, each in the unit of the other; None for a line that asks for something else."""
    line = _METRIC_SIZE.sub(r"\1 mm", " ".join(words))
    for form in _FORMS:
        found = form.match(line)
        if found is None or (found.end() < len(line) and line[found.end()] != " "):
            continue
        rest = line[found.end() :].split()
        if any(word[0].isdigit() and word != "1" for word in rest):  # one spanner
            return None
        units = [found[u] or _unsaid(found[n], found[other]) for n, u, other in (("a", "u", "v"), ("b", "v", "u"))]
        told = _each(found["a"], units[0], found["b"], units[1], data) if all(units) else None
        if told is not None:
            more = f"; not answered: {' '.join(rest)}" if rest else ""
            first, second = told
            return Answer(f"two measures side by side{more}", first, more=(Answer("the other", second),))
    return None


def _unsaid(number: str, other: str | None) -> str:
    """The unit that a number has which none was said of: a fraction is in inches, any other has that of the other."""
    return "in" if "/" in number else other or ""


def _each(a: str, u: str, b: str, v: str, data: Refdata) -> tuple[Conversion, Conversion] | None:
    """Both measures in the unit of the other; None where they have one unit, or measure two things."""
    if unit_of(u) == unit_of(v):
        return None
    try:
        first, second = converted_to(a, u, v, data), converted_to(b, v, u, data)
    except GaugeblockError:
        return None
    return None if first is None or second is None else (first, second)
