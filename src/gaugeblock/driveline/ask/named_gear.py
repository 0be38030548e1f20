"""A gear that is named without its ratio: ``in overdrive`` is no direct gear, and its ratio is asked."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped
from gaugeblock.driveline.ask.common import OF_THE_CAR
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Refdata

NAMED_GEAR = "named_gear"
LOW = r"first|1st|second|2nd|third|3rd"
HIGH = r"fourth|4th|fifth|5th|sixth|6th"
_EXAMPLE = {"first": "3.06", "second": "1.90", "third": "1.40", "fourth": "1"}
_PLAIN = {"1st": "first", "2nd": "second", "3rd": "third", "4th": "fourth", "5th": "fifth", "6th": "sixth"}
GEAR_NAMED = (
    Shaped(
        rf"(?:(?:with|in|and) )?(?:an? |the |its )*(?P<n>overdrive|{LOW}|{HIGH})(?: gear)?",
        lambda m: _PLAIN.get(m["n"], m["n"]),
        "in {}",
        doubt=1,
        cue=("overdrive", "first", "second", "third", "fourth", "fifth", "sixth", "st", "nd", "rd", "th"),
    ),
)


def with_its_ratio(option: str, noun: str) -> Callable[[dict[str, str], Refdata], dict[str, str]]:
    """The options without the gear's name; ``option`` is the one that holds its ratio, ``noun`` what is asked.

    The settling raises Ambiguous where a gear is named and its ratio is not said.
    """

    def settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
        if NAMED_GEAR in values and option not in values:
            named = values[NAMED_GEAR]
            raise Ambiguous(
                "gear",
                f"read as {noun}, in {named}",
                f"the ratio of {named} was not said, and it differs from gearbox to gearbox",
                (),
                f'say it with the gear, as "{_EXAMPLE.get(named, "0.70")} {named}"',
            )
        return {k: v for k, v in values.items() if k != NAMED_GEAR and k not in OF_THE_CAR}

    return settle
