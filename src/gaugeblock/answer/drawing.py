"""Drawing: an SVG picture of a sheet with its title."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, STOP
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Decision


class Drawing(Value):
    """An SVG picture of a sheet with its title; ``page`` is ``landscape`` or ``portrait`` for one that prints as a
    whole page, ``wide`` says that it takes the whole width of the text.
    """

    __slots__ = ("page", "svg", "title", "wide")

    title: str
    svg: str
    page: str
    wide: bool

    def __init__(self, title: str, svg: str, page: str = "", *, wide: bool = False) -> None:
        put(self, "title", title)
        put(self, "svg", svg)
        put(self, "page", page)
        put(self, "wide", wide)


def held_back(decision: Decision, checks: Iterable[Check]) -> tuple[str, list[str]]:
    """Why an order is not to be sent as it stands: a word and every reason; blank and none where it may be."""
    if decision.kind == STOP:
        said = decision.do.casefold()
        reasons = [f"{capital(c.reason)}." for c in checks if c.stops and c.reason.casefold() not in said]
        return "DO NOT MAKE YET", [pretty(one) for one in dict.fromkeys([decision.do, *reasons])]
    return ("ASK FIRST", [pretty(decision.do)]) if decision.kind == ASK else ("", [])
