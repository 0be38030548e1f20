"""The pressure in a line against what is printed of its class: a hose is sold for a pressure, whatever its wall."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Bound, Check, at_most
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import ASK_MAKER
from gaugeblock.lines.found import Found, asking

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

SUBJECT = "pressure of its class"
WORKING = "working_pressure_maximum"
_TESTS = {"proof_pressure_minimum": "tested at", "burst_pressure_minimum": "known to hold"}


def is_sold_for_a_pressure(item: Item | None) -> bool:
    """Whether a line is a hose, or has a working pressure printed: its wall says nothing of what it stands."""
    return item is not None and ("hose" in item.cell or item.look_up(WORKING) is not None)


def rated(item: Item, peak: Figure, data: Refdata) -> Found:
    """The peak pressure against the working pressure of a class, else against what a new one is tested at."""
    working = item.look_up(WORKING)
    asked = printed(peak, data)
    if working is not None:
        said = f"{_name(item)} is for {_said(working, peak, data)} at most in use, and {asked} is asked of it"
        check = at_most(SUBJECT, _bound(peak, peak.unit), _bound(working, peak.unit), said, subject=SUBJECT)
        text = f"{capital(said)}: take one for that pressure, or ask its maker."
        return asking(check, ASK_MAKER, text, "pressure", (working,))
    text = f"Ask the maker of the {_name(item)} for its working pressure."
    for quantity, what in _TESTS.items():
        tested = item.look_up(quantity)
        if tested is None:
            continue
        said = f"a new {_name(item)} is {what} {_said(tested, peak, data)}, and {asked} is asked of it"
        check = at_most(SUBJECT, _bound(peak, peak.unit), _bound(tested, peak.unit), said, subject=SUBJECT)
        if check.asks or check.stops:
            return asking(check, ASK_MAKER, text, "pressure", (tested,))
        return Found((tested,), (Check(SUBJECT, CANNOT_TELL, said, subject=SUBJECT, bears=INFORM),))
    check = Check(SUBJECT, CANNOT_TELL, f"no working pressure of {_name(item)} is published", subject=SUBJECT)
    return asking(check, ASK_MAKER, text, "pressure")


def _bound(figure: Figure, unit: str) -> Bound:
    return Bound(units.in_unit(figure.least, figure.unit, unit), unit, figure=figure)


def _said(figure: Figure, peak: Figure, data: Refdata) -> str:
    """A pressure as it is printed, and in the unit that was asked in."""
    own = printed(figure, data)
    return own if figure.unit == peak.unit else f"{own} ({printed(figure, data, peak.unit)})"


def _name(item: Item) -> str:
    return f"{item.cell} {item.klass}" if item.klass else item.cell
