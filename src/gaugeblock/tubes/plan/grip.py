"""Every straight of a stick against the grip of the die: the ends with their trim, and between bends."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.calc import stick as sticks
from gaugeblock.tubes.bend.bent import MINIMUMS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Stick
    from gaugeblock.calc.stick import Grip
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.tool import Tool

ENDS = "straight for the die to grip, at the ends"
BETWEEN = "straight for the die to grip, between bends"


def grip_checks(stick: Stick, tool: Tool, trims: tuple[float, float], hint: str, given: Given) -> list[Check]:
    """Whether the die can hold the tube for each bend.

    Where its grip is not given, straights as long as the method usually needs are enough; shorter ones are asked about.
    """
    tape = given.tape
    rows = sticks.grips(stick, tool.die, trims)
    ends = [g for g in rows if g.where != "between"]
    between = [g for g in rows if g.where == "between"]
    usual = None if tool.grip is not None and tool.between is not None else _usual(given)
    out = [] if not ends else [_check(ENDS, ends, tool.grip, usual, " with its trim", hint, tape)]
    return out + ([] if not between else [_check(BETWEEN, between, tool.between, usual, "", hint, tape)])


def _usual(given: Given) -> Bound | None:
    """The straight that the method usually needs to grip, at its high end; None where no habit is on record."""
    tube = given.tube
    if not tube.method or given.od is None:
        return None
    row = lookup.look_up_or_none(
        MINIMUMS,
        "straight_end_ratio",
        data=given.data,
        product="tube",
        measured_to="not a radius",
        method=tube.method,
        service=tube.service,
    )
    if row is None:
        return None
    most = float(given.od_m) * (row.high if row.high is not None else row.typical)
    return Bound(units.from_base(most, given.tape.unit), given.tape.unit, "min", row)


def _check(
    name: str, rows: list[Grip], figure: Figure | None, usual: Bound | None, trimmed: str, hint: str, tape: Tape
) -> Check:
    worst = min(rows, key=lambda g: g.available - g.needed)
    least = tape.down(worst.available)
    at = f"straight {worst.number}{trimmed}"
    got = Bound(units.from_base(worst.available, tape.unit), tape.unit)
    if figure is None and usual is not None and got.value >= usual.value:
        most = tape.reads(units.to_base(usual.value, tape.unit))
        return Check(name, OK, f"{at} is {least}; {most} is the most that is usually gripped (HABIT)", usual, got)
    if figure is None:
        why = f"the grip of the die is not given; the shortest, {at}, is {least}: measure the die"
        return Check(name, CANNOT_TELL, why, bears=ASK)
    need = Bound(units.from_base(worst.needed, tape.unit), tape.unit, "min", figure)
    text = f"{at} is {least}; {tape.reads(worst.needed)} needed"
    if worst.short:
        more = f": {tape.up(worst.short)} more trim there, cut off after bending" if trimmed else f": {hint}"
        return Check(name, NOT_OK, text + more, need, got)
    margin = (worst.available - worst.needed) / worst.needed if worst.needed else None
    return Check(name, OK, text, need, got, margin)
