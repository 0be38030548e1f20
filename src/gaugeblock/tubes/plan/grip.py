"""Every straight of a stick against the grip of the die: the ends with their trim, and between bends."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.calc import stick as sticks

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Stick
    from gaugeblock.calc.stick import Grip
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.tool import Tool

ENDS = "straight for the die to grip, at the ends"
BETWEEN = "straight for the die to grip, between bends"


def grip_checks(stick: Stick, tool: Tool, trims: tuple[float, float], hint: str, tape: Tape) -> list[Check]:
    """Whether the die can hold the tube for each bend."""
    rows = sticks.grips(stick, tool.die, trims)
    ends = [g for g in rows if g.where != "between"]
    between = [g for g in rows if g.where == "between"]
    out = [] if not ends else [_check(ENDS, ends, tool.grip, " with its trim", hint, tape)]
    return out + ([] if not between else [_check(BETWEEN, between, tool.between, "", hint, tape)])


def _check(name: str, rows: list[Grip], figure: Figure | None, trimmed: str, hint: str, tape: Tape) -> Check:
    worst = min(rows, key=lambda g: g.available - g.needed)
    least = tape.down(worst.available)
    at = f"straight {worst.number}{trimmed}"
    if figure is None:
        why = f"the grip of the die is not given; the shortest, {at}, is {least}: measure the die"
        return Check(name, CANNOT_TELL, why, bears=ASK)
    need = Bound(units.from_base(worst.needed, tape.unit), tape.unit, "min", figure)
    got = Bound(units.from_base(worst.available, tape.unit), tape.unit)
    text = f"{at} is {least}; {tape.reads(worst.needed)} needed"
    if worst.short:
        more = f": {tape.up(worst.short)} more trim there, cut off after bending" if trimmed else f": {hint}"
        return Check(name, NOT_OK, text + more, need, got)
    margin = (worst.available - worst.needed) / worst.needed if worst.needed else None
    return Check(name, OK, text, need, got, margin)
