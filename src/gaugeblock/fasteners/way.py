"""Way: a torque at the fastener that may be the one, the condition that makes it so, and how far a setting may be
off it.
"""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


class Way(Value):
    """A torque with the least and the most that a setting for it may give at the fastener, in the torque's unit.

    ``plus`` is what is done after it: ``+ 90 deg``.
    ``is_most`` says that it is a ceiling, which is never passed, not even by what a wrench may miss by.
    """

    __slots__ = ("figure", "high", "is_most", "low", "plus", "then", "when")

    figure: Figure
    low: float
    high: float
    is_most: bool
    when: str
    then: str
    plus: str

    def __init__(
        self,
        figure: Figure,
        low: float,
        high: float,
        is_most: bool = False,
        when: str = "",
        then: str = "",
        plus: str = "",
    ) -> None:
        put(self, "figure", figure)
        put(self, "low", low)
        put(self, "high", high)
        put(self, "is_most", is_most)
        put(self, "when", when)
        put(self, "then", then)
        put(self, "plus", plus)


def exact_way(figure: Figure, when: str = "", then: str = "") -> Way:
    """A way that keeps to its figure: one number, or both ends of its range."""
    is_range = figure.low is not None and figure.high is not None and figure.value is None
    low, high = (figure.low, figure.high) if is_range else (figure.typical, figure.typical)
    return Way(figure, low or 0.0, high or 0.0, False, when, then)


def table_way(figure: Figure, data: Refdata, when: str = "", then: str = "") -> Way:
    """A way of a general table or calculation: as far off as the manuals let a table's torque be.

    A ceiling is not passed.
    """
    is_most = figure.side == "max"
    if figure.value is None and figure.low is not None and figure.high is not None:
        return Way(figure, figure.low, figure.high, is_most, when, then)
    allowed = lookup.look_up_or_none(
        "fasteners/preload", "torque_tolerance", data=data, method="torque wrench", lubricant="any", case="table torque"
    )
    share = allowed.typical / 100 if allowed is not None else 0.0
    low, high = figure.typical * (1 - share), figure.typical * (1 + share)
    if is_most:
        high = figure.typical
    elif figure.low is not None and figure.high is not None:
        low, high = max(low, figure.low), min(high, figure.high)
    return Way(figure, low, high, is_most, when, then)


def safer_first(ways: Sequence[Way]) -> list[Way]:
    """The ways, the least torque first."""
    return sorted(ways, key=lambda way: way.figure.typical)
