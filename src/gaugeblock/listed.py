"""A list as people type it: items with commas between. A comma that may be a decimal one is asked about."""

from __future__ import annotations

import re

from gaugeblock.errors import InputError

# Two numbers and no blank between: 1,5. No point or slash in either, which would tell that the comma is no decimal one.
_DOUBTFUL = r"(?<![0-9./])(?P<whole>[0-9]+),(?P<part>[0-9]+)(?!\.?[0-9]|/)"
_THOUSAND = 3  # digits behind a mark of thousands
_LONGEST = 40


def items(text: str, where: str) -> list[str]:
    """The items of a list, blanks around them taken off; InputError where ``1,5 cm`` may be one item or two.

    >>> items("50 mm, 30 mm", "legs")
    ['50 mm', '30 mm']
    """
    refuse_decimal_comma(text, where)
    return [item.strip() for item in text.split(",")]


def refuse_decimal_comma(text: str, where: str, *, thousands: bool = False) -> None:
    """InputError with both readings for a comma between two digits that may be a decimal one; with ``thousands`` not
    for ``1,500``, as in a line that asks.
    """
    for match in re.finditer(_DOUBTFUL, text, re.ASCII) if "," in text else ():
        whole, part = match["whole"], match["part"]
        is_thousands = len(part) == _THOUSAND and whole[0] != "0"
        if is_thousands and thousands:
            continue
        before, after = _in_a_line(text, match) if thousands else _around(text, match)
        unit = after if len(after) <= _LONGEST else ""
        second = str(int(part)) if len(part) <= _LONGEST else part
        one = f"{before}{whole}.{part}{unit}"
        two = f"{before}{whole}{unit}, {second}{unit}"
        more = f', or "{before}{whole}{part}{unit}"' if is_thousands else ""
        why = f"{match[0][:_LONGEST]} may be one number with a decimal comma, or two"
        raise InputError(text.strip()[:60], where, why, (), f'write "{one}", or "{two}"{more}')


def _in_a_line(text: str, match: re.Match[str]) -> tuple[str, str]:
    """Of a number in a whole line its unit alone: ``1,5 cm`` with what is asked round it."""
    unit = re.match(r" ?(?:mm|cm|m|in|inch|ft|deg|psi|bar|v|a|kg|lb)\b", text[match.end() :], re.ASCII | re.IGNORECASE)
    return "", unit[0] if unit is not None else ""


def _around(text: str, match: re.Match[str]) -> tuple[str, str]:
    """What stands in the same item before a number and behind it; none of a long text."""
    before = text[: match.start()].rpartition(",")[2].lstrip()
    after = text[match.end() :].partition(",")[0].rstrip()
    return (before if len(before) <= _LONGEST else "", after)
