"""The passes of a tightening, each as a wrench of the shop is set for it."""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.printing import number_only

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.job.wrench import WrenchRange
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

BY_HAND = "by hand, under every wrench"


def passes(
    shares: Sequence[Measure], figure: Figure, unit: str, wrenches: Sequence[WrenchRange], data: Refdata
) -> list[str]:
    """Each pass of a torque in the unit of the card's number; a range has both its ends.

    Of what a wrench is set to a pass is the nearest graduation of that wrench, else of another of the shop, which is
    named; under all of them it is tightened by hand.
    """
    parts = []
    for measure in shares:
        share = measure.to("1")
        if share == 1:
            parts.append(number_only(figure, data, unit))
        elif wrenches and figure.quantity == "torque_setting" and figure.value is not None:
            parts.append(_set(units.to_base(figure.value * share, figure.unit), figure, wrenches))
        else:
            ends = [None if e is None else e * share for e in (figure.value, figure.low, figure.high)]
            value, low, high = ends if figure.value is None else (ends[0], None, None)
            parts.append(number_only(figure.replace(value=value, low=low, high=high, text=""), data, unit))
    return parts


def _set(torque: float, figure: Figure, wrenches: Sequence[WrenchRange]) -> str:
    """A torque, N m, as a wrench is set for it: the one that the whole is set on comes first."""
    whole = units.to_base(figure.typical, figure.unit)
    first = [w for w in wrenches if any(w.text in part.conditions for part in figure.walk())]
    for wrench in (*first, *wrenches):
        target = Fraction(torque) / units.factor(wrench.unit)
        if not wrench.low - wrench.step / 2 <= target <= wrench.high:
            continue
        at = wrench.nearest_inside(target, wrench.low, wrench.high)
        if at is not None and 0 < wrench.to_nm(at) < whole * (1 + 1e-9):
            on = "" if not first or wrench == first[0] else f" on the wrench {wrench.text}"
            return f"{units.significant(float(at), 4)} {wrench.unit}{on}"
    return BY_HAND
