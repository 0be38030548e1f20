"""Old British threads by name: Whitworth, British Standard Fine, British Association."""

from __future__ import annotations

import math
import re

from gaugeblock import units

# Compiled where it is asked: few questions are of one.
_NAMED = (
    r"(?:no\.? ?|#)?(?P<n>10|[0-9]) ?-?ba"
    r"|(?P<size>[0-9]+(?:[ -][0-9]+)?/[0-9]+|1)(?: ?(?:in|inch|\"))?[ -]?(?:(?P<tpi>[0-9]{1,2})(?: tpi)? )?"
    r"(?P<series>bsw|bsf|bs ?w|bs ?f|w|whitworth|whit|ww)"
)


_INCH = 0.0254


def diameter_m(size: str) -> float:
    """The nominal diameter of an old British thread as the tables name it, m; BS 93 has 6 p**1.2 for the British
    Association, p = 0.9**number mm, and rounds it.

    >>> round(diameter_m("7/16 BSF"), 7), round(diameter_m("2 BA"), 4)
    (0.0111125, 0.0047)
    """
    number, _, series = size.rpartition(" ")
    if series == "BA":
        return 6 * math.pow(0.9, 1.2 * int(number)) / 1000
    return float(units.parse_number(number)) * _INCH


def british(text: str) -> str:
    """The size and series of an old British thread as the tables name it; blank for any other.

    >>> british("7/16 bsf"), british("1/2 Whitworth"), british("2BA"), british("3/8-16")
    ('7/16 BSF', '1/2 BSW', '2 BA', '')
    """
    found = re.fullmatch(_NAMED, " ".join(text.split()), re.IGNORECASE | re.ASCII)
    if found is None:
        return ""
    if found["n"]:
        return f"{int(found['n'])} BA"
    series = "BSF" if "f" in found["series"].casefold() else "BSW"
    return f"{found['size'].replace('-', ' ')} {series}"
