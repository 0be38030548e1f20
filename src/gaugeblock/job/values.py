"""One value of a job file: text, a measure, a share, a wrench, a date. Each comes back read, or as InputError.

A Measure keeps its text in the closed spelling of its unit (``1-3/4 in``), so a job prints and travels as written.
"""

from __future__ import annotations

import re

from gaugeblock.errors import InputError, hidden, visible
from gaugeblock.job.wrench import WrenchRange, read_wrench
from gaugeblock.known import Known, parse_known
from gaugeblock.units import (
    TYPED,
    UNITS,
    Measure,
    dimension,
    nearest_units,
    parse_measure,
    split_quantity,
)

NAME_LIMIT = 80
TEXT_LIMIT = 500
COUNT_LIMIT = 999

_EXAMPLES = {
    "length": "in",
    "torque": "lbf*ft",
    "stress": "psi",
    "angle": "deg",
    "temperature": "degF",
    "ratio": "%",
    "rotational speed": "rpm",
}
_COMMA = re.compile(r"[+-]?[0-9]+,[0-9]", re.ASCII)
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", re.ASCII)


def example_unit(dim: str) -> str:
    """The unit that a message writes a measure of ``dim`` in: what most shops say, else the first of the table."""
    return _EXAMPLES.get(dim) or next(unit for unit, (of, *_) in UNITS.items() if of == dim)


def kind_of(value: object) -> str:
    """What a TOML value is, in plain words."""
    if isinstance(value, bool):
        return "true or false"
    for kind, word in ((str, "text"), (int, "a number"), (float, "a number"), (dict, "a table"), (list, "a list")):
        if isinstance(value, kind):
            return word
    return "a date or time without quotes"


def shown(text: str, limit: int = 60) -> str:
    """Text as a message may print it: what cannot be seen as its number, long text cut."""
    return visible(text, limit)


def is_blank(value: object) -> bool:
    """Whether a value is text with nothing in it: the same as a missing key."""
    return isinstance(value, str) and (not value or value.isspace()) and not hidden(value)


def plain_text(value: object, limit: int = TEXT_LIMIT) -> str:
    """One line of text without blanks around it; markup stays as it is. InputError for control characters or length."""
    if not isinstance(value, str):
        number = isinstance(value, int | float) and not isinstance(value, bool)
        do = f'write "{value}"' if number else "write it in quotes"
        raise InputError("value", "", f"text is wanted, not {kind_of(value)}", (), shown(do))
    found = hidden(value)
    if found:
        mark = found[0]
        what = {"\n": "a line break", "\t": "a tab"}.get(mark, f"the control character U+{ord(mark):04X}")
        do = "write it on one line, without control characters"
        raise InputError(shown(value), "", f"{what} at character {found.start() + 1}", (), do)
    text = value.strip()
    if len(text) > limit:
        raise InputError(shown(text, 30), "", f"{len(text)} characters; at most {limit} are taken", (), "shorten it")
    return text


def measure(value: object, dim: str, least: str = "positive") -> Measure:
    """A measure of ``dim``; ``least`` is ``positive``, ``zero`` or ``any``. InputError otherwise."""
    if not isinstance(value, str):
        number = isinstance(value, int | float) and not isinstance(value, bool)
        unit = example_unit(dim)
        do = f'write "{value} {unit}"' if number else f'write it as "12 {unit}"'
        article = "an" if dim[0] in "aeiou" else "a"
        raise InputError("value", "", f"{article} {dim} is text with its unit, not {kind_of(value)}", (), shown(do))
    text = plain_text(value, NAME_LIMIT)
    try:
        got = parse_measure(text, dim)
    except InputError as error:
        if _COMMA.match(text):
            raise InputError(
                shown(text), "", "a comma in a number", (), "write a decimal point, and no thousands mark"
            ) from None
        do = "give one figure here" if " to " in text else error.do
        raise InputError(shown(text), "", error.why, error.nearest, do) from None
    if dim == "temperature":
        if got.to("degC") < -273.15:
            raise InputError(shown(text), "", "below absolute zero", (), "correct the number or the unit")
    elif least != "any":
        _not_below(got, text, least)
    return got


def wall(value: object) -> Measure:
    """A wall as a length; where its unit is none, how a gauge number becomes one is told."""
    try:
        return measure(value, "length")
    except InputError as error:
        if not isinstance(value, str) or unit_of(split_quantity(value)[1]):
            raise
        do = f"{error.do}; a gauge number is a wall only by its system: look it up with `gauge`"
        raise InputError(error.asked, error.where, error.why, error.nearest, do) from None


def _not_below(got: Measure, text: str, least: str) -> None:
    if got.value < 0 or (got.value == 0 and least == "positive"):
        wanted = "more than 0" if least == "positive" else "0 or more"
        raise InputError(shown(text), "", f"must be {wanted}", (), "correct the number, or leave the key out")


def bend_angle(value: object) -> Measure:
    """An angle over 0 and up to one turn."""
    got = measure(value, "angle")
    if got.to("deg") > 360:
        raise InputError(shown(got.text), "", "more than a full turn", (), "give the angle of one bend")
    return got


def share(value: object) -> Measure:
    """A percentage over 0 and up to 100, with its sign: ``50 %``."""
    got = measure(value, "ratio")
    if got.unit != "%":
        raise InputError(shown(str(value)), "", "a percentage is wanted", (), 'write it as "50 %"')
    if got.to("%") > 100:
        raise InputError(shown(got.text), "", "more than 100 %", (), "give the share of the final torque")
    return got


def count(value: object) -> int:
    """A whole number from 1 to COUNT_LIMIT."""
    if not isinstance(value, int) or isinstance(value, bool):
        came = "a number with a point" if isinstance(value, float) else kind_of(value)
        raise InputError("value", "", f"a whole number is wanted, not {came}", (), "write it without quotes, as 4")
    if not 1 <= value <= COUNT_LIMIT:
        why = f"{shown(str(value), 20)}: a whole number from 1 to {COUNT_LIMIT} is wanted"
        raise InputError("value", "", why, (), "correct it")
    return value


def point(value: object, least: str) -> tuple[Measure, Measure, Measure]:
    """Three lengths: rearward, right and up."""
    if not isinstance(value, list | tuple) or len(value) != 3:
        what = f"{len(value)} values" if isinstance(value, list | tuple) else kind_of(value)
        why = f"three lengths are wanted (rearward, right, up), not {what}"
        raise InputError("value", "", why, (), 'write it as ["0 in", "-18 in", "6 in"]')
    a, b, c = (measure(v, "length", least) for v in value)
    return (a, b, c)


def wrench(value: object) -> WrenchRange:
    """A torque wrench's range."""
    text = plain_text(value, NAME_LIMIT)
    try:
        return read_wrench(text)
    except InputError as error:
        raise InputError(shown(text), "", error.why, error.nearest, error.do) from None


def issue_date(value: object) -> str:
    """A calendar date as text, ``2031-05-17``."""
    from datetime import date

    if not isinstance(value, str):
        raise InputError("value", "", f"a date is wanted as text, not {kind_of(value)}", (), 'write it as "2031-05-17"')
    text = plain_text(value, NAME_LIMIT)
    try:
        if not _DATE.fullmatch(text):
            raise ValueError
        date.fromisoformat(text)
    except ValueError:
        raise InputError(shown(text), "", "not a date of the calendar", (), 'write it as "2031-05-17"') from None
    return text


def choice(value: object, choices: tuple[str, ...]) -> str:
    """One of a short list of words."""
    text = plain_text(value, NAME_LIMIT)
    if text not in choices:
        from difflib import get_close_matches

        near = list(dict.fromkeys([*get_close_matches(text.casefold(), choices, n=5, cutoff=0.5), *choices]))
        raise InputError(shown(text), "", "not one of the words this key takes", near, "use one of these")
    return text


def unit_of(typed: str) -> str:
    """The unit spelling that typed text means; blank when it is none."""
    return typed if typed in UNITS else TYPED.get(typed, "")


def any_measure(value: object) -> Measure:
    """A figure of any dimension with its unit, as ``0.006 in``; which dimension fits is for the one who uses it."""
    if not isinstance(value, str):
        raise InputError(
            "value", "", f"a figure with its unit is text, not {kind_of(value)}", (), 'write it as "0.006 in"'
        )
    text = plain_text(value, NAME_LIMIT)
    number, typed = split_quantity(text)
    unit = unit_of(typed)
    if not unit:
        why = f"{typed[:40]!r} is not a unit" if typed else "the unit is missing"
        raise InputError(shown(text), "", why, nearest_units(typed[:40]), 'write it as "0.006 in"')
    return measure(f"{number} {unit}", dimension(unit), "any")


def finding(value: object) -> Measure | str:
    """What was found or left: a figure with its unit, or words that begin with a letter."""
    text = plain_text(value)
    return any_measure(text) if text[:1] in "+-.0123456789" else text


def known(value: object, dim: str, example: str) -> Known:
    """What somebody states: a number, a range, or a usual value with its ends; with what it was measured, and when."""
    return parse_known(plain_text(value, NAME_LIMIT), dim, "", example)
