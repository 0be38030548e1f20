"""A stick of equal bends with equal straights between them and at its ends, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Reader

_UNIT = r"(?: ?(?P<unit>in|inch(?:es)?|mm|\"))"
_STRAIGHT = r"(?: (?:long|of|straights?|legs?|lengths?|pieces?|tube|tubing))+"
_BOTH = r"(?:(?:at|on|off|and|each|the|either|of|with) )*(?:both|each|either|the two) (?:ends?|sides?)"
_COUNTS = {"two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}
_BETWEEN = r"(?:(?:in )?between|betwixt)(?: (?:each|them|every|the|two|bends?|one|of|pair|all))*"


def _each(match: re.Match[str]) -> str:
    """How long each straight is; an inch mark is inches."""
    return f"{match['n']} {'mm' if match['unit'] == 'mm' else 'in'}"


EQUAL_READERS: tuple[Reader, ...] = (
    Shaped(
        rf"(?P<n>{NUMBER}){_UNIT}{_STRAIGHT} {_BETWEEN} (?:and )?{_BOTH}",
        _each,
        "straights of {} between and at both ends",
        cue=("both end", "each end", "either end", "both side", "each side", "either side"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER}){_UNIT}{_STRAIGHT} {_BOTH} (?:and )?{_BETWEEN}",
        _each,
        "straights of {} between and at both ends",
        cue=("between",),
    ),
)
# A tube with its wall in millimetres, which were not said: 48.3 by 3.2.
METRIC_OD = Shaped(
    r"(?P<n>[2-9][0-9](?:\.[0-9]+)?)(?= (?:x|by) [1-6]\.[0-9](?: |$))",
    lambda m: f"{m['n']} mm",
    "{} OD",
    cue=("x ", "by "),
)
COUNTED_BENDS = Shaped(
    rf"(?P<c>[2-6]|two|three|four|five|six) (?:bends?|corners|elbows?) of (?P<n>{NUMBER}) ?(?:deg(?:rees?)?|°)?",
    lambda m: f"{_COUNTS.get(m['c'], m['c'])} x {m['n']} deg",
    "{}",
    cue=(" of ",),
)


def with_equal(values: dict[str, str]) -> dict[str, str]:
    """The straights of a stick of so many bends, each of which is as long as the others: one more than its bends."""
    each = values.get("equal", "")
    if not each or "legs" in values:
        return values
    count = int(values.get("bends", "1"))
    return {**values, "legs": ", ".join([each] * (count + 1))}
