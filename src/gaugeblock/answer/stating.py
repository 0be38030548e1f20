"""How people say what they know themselves: a strength, a modulus, a limit, as one number or a range, with its tool."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped
from gaugeblock.answer.said_units import SAYS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_MEASURED = r"(?: (?:measured )?(?:by|with) (?P<tool>[a-z][a-z0-9 -]*?) on (?P<date>[0-9]{4}-[0-9]{2}-[0-9]{2}))?"
# What may stand between the name of a thing and its number.
_IS = r"(?: (?:strength|of|is|at|about|was|measured|tested|=))*"
_OWN = r"(?:(?:with|it|its|my|own|this|has|have|an?|the|lot|lot's|bar|tube|shaft|bolt|at) )*"


def known(dimension: str, names: str, say: str, *, bare: str = "", cue: tuple[str, ...] = ()) -> tuple[Shaped, Shaped]:
    """Readers of what is stated of a thing of these ``names``: ``yield of 62 ksi``, ``62 to 65 ksi yield``.

    A range, and with what it was measured and when (``by tensile test on 2026-11-20``), go with it; ``say`` is how a
    person is told of it, ``bare`` the unit of a number that has none, ``cue`` as of Shaped.
    """
    low, high = rf"(?:(?P<low>{NUMBER})(?P<lowunit>{{}})? ?(?:to|-) ?)?", rf"(?P<high>{NUMBER})"
    units = "|".join(SAYS[dimension].values())
    unit = rf" ?(?P<unit>{units})" if not bare else rf"(?: ?(?P<unit>{units}))?"
    amount = low.format(rf" ?(?:{units})") + high + unit
    read = _value(dimension, bare)
    return (
        Shaped(rf"{_OWN}(?:{names}){_IS} {amount}{_MEASURED}", read, say, cue=cue),
        Shaped(rf"{_OWN}{amount} (?:of )?(?:{names})(?: strength)?{_MEASURED}", read, say, cue=cue),
    )


def unit_said(dimension: str, text: str) -> str:
    """The unit that was said, as it is written."""
    import re

    return next((unit for unit, said in SAYS[dimension].items() if re.fullmatch(said, text)), "")


def _value(dimension: str, bare: str) -> Callable[[re.Match[str]], str | None]:
    def value(match: re.Match[str]) -> str | None:
        unit = unit_said(dimension, match["unit"]) if match["unit"] else bare
        if match["lowunit"] and unit_said(dimension, match["lowunit"].strip()) != unit:
            return None
        number = f"{match['low']} to {match['high']}" if match["low"] else match["high"]
        said = f"{number} {unit}" if unit != "1" else number
        return f"{said} by {match['tool']} on {match['date']}" if match["date"] else said

    return value
