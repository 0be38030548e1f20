"""The part maker's own figure, as it was typed: one value, its ends, or both."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.units import Measure

NO_PAGE = "page not given"


def maker_figure(ends: Mapping[str, Measure], quantity: str, source: str, place: str, *, owner: str = "") -> Figure:
    """The maker's figure of ``ends`` (``value``, ``low``, ``high``: at least one), in the unit of the first.

    Basis ``maker`` where it says whose it is, with or without the page; ``stated`` where it does not.
    """
    unit = next(iter(ends.values())).unit
    numbers = {name: float(units.convert(m.value, m.unit, unit)) for name, m in ends.items()}
    typed = {name: m.number for name, m in ends.items() if m.unit == unit}
    both = f"{typed['low']} to {typed['high']}" if {"low", "high"} <= set(typed) else ""
    return Figure(
        f"maker:{owner}|{source or 'no source'}:{'|'.join(m.text for m in ends.values())}:{quantity}",
        quantity,
        numbers.get("value"),
        unit,
        low=numbers.get("low"),
        high=numbers.get("high"),
        side="target",
        basis="maker" if source else "stated",
        checked="primary" if source else "",
        source=source or "as given",
        locator=place or NO_PAGE,
        chosen_by="maker's figure",
        text=typed.get("value") or both,
    )
