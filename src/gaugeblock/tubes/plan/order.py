"""The one page for a bending shop: what to order, straights, turns and bends, and the finished shape."""

from __future__ import annotations

from gaugeblock.answer.drawing import held_back
from gaugeblock.answer.pretty import pretty
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.drawing.order_sheet import order_sheet
from gaugeblock.drawing.stick_drawing import turned

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tubes.plan.marks import Marks
    from gaugeblock.tubes.plan.planned import Plan
    from gaugeblock.tubes.plan.tool import Tool


def order(made: Plan, marks: Marks, tool: Tool, finished: Callable[[float, float], str]) -> str:
    """The page of a tube whose marks are known."""
    tube, layout, tape = made.given.tube, marks.layout, made.given.tape
    ends = [f"{w} {tape.short(t)}" for w, t in (("START", layout.trim_start), ("END", layout.trim_end)) if t > 0]
    radius = tool.radius.text or f"{tool.radius.typical:.3f}"
    facts = [
        ("tube", " x ".join(pretty(str(t)) for t in (tube.od, tube.wall) if t)),
        ("material", " ".join(t for t in (tube.material, tube.product, tube.condition) if t)),
        ("bought to", tube.spec or ""),
        ("how many", str(tube.count) if tube.count else ""),
        ("radius", pretty(f"{radius} {tool.radius.unit} to the centre line")),
        ("method", tube.method or ""),
        ("tolerance", pretty(f"+/- {tube.tolerance}") if tube.tolerance else ""),
        ("leave on", ", ".join(ends) or "no trim at the ends"),
        ("ordered by", ""),
        ("date", ""),
    ]
    rows: list[tuple[str, str, str, str]] = [("BEND", "STRAIGHT", "THEN TURN, SEEN FROM START", "THEN BEND")]
    for n, b in enumerate(layout.stick.bends, 1):
        own = "" if abs(b.radius - tool.die.radius) < 1e-9 else f", R {tape.reads(b.radius)}"
        bend = f"{degrees_text(b.angle)}{own}"
        rows.append((str(n), tape.reads(b.straight), "-" if n == 1 else turned(b.turn), bend))
    rows.append(("end", tape.reads(layout.stick.end), "-", "-"))
    length = tape.reads(layout.stick.developed_length)
    notes = [
        f"Straights: tangent to tangent. Finished, along the centre line {length}.",
        "Angles are those of the finished tube: springback is the bender's.",
        "Add what your machine needs at the ends. Send a first piece for approval.",
    ]
    hold = held_back(made.sheet.decision, made.sheet.checks)
    return order_sheet(made.name, facts, rows, finished, notes, hold=hold)
