"""Where the apexes of a bent tube lie along its sharp-cornered line, and the smallest rise that its die makes."""

from __future__ import annotations

from math import pi, sin, tan

from gaugeblock.bodies import Typed
from gaugeblock.calc import tubes as calc
from gaugeblock.calc.shapes import smallest_rise
from gaugeblock.tubes.plan.shape import shape_kind

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Stick
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.making import Make
    from gaugeblock.tubes.plan.tool import Tool

# The legs of a bend run off without limit as it nears half a turn: up to here its apex is a place on a bench.
_MOST = 170 * pi / 180
_RISES = ("offset", "kick_up", "saddle")


def apexes(stick: Stick, rows: Sequence[Sequence[Figure]], make: Make) -> list[Figure]:
    """The apex of each bend from the START end along the straight legs, as a template or a drawing has it."""
    out: list[Figure] = []
    at, before = 0.0, None
    for n, (bend, row) in enumerate(zip(stick.bends, rows, strict=False), 1):
        if bend.angle > _MOST:
            break
        straight = next(f for f in row if f.quantity == "straight")
        arc = next(f for f in row if f.quantity == "developed_length")
        back = _setback(n, bend.radius, bend.angle, arc.inputs, make)
        last = () if before is None else (out[-1], before)
        at += bend.straight + calc.setback(bend.radius, bend.angle)
        if n > 1:
            at += calc.setback(stick.bends[n - 2].radius, stick.bends[n - 2].angle)
        words = f"apex of bend {n}, from START along the straight legs"
        out.append(make.length("apex_place", "apex_place", at, (straight, *last, back), bend=str(n), conditions=words))
        before = back
    return out


def _setback(n: int, radius: float, angle: float, inputs: tuple[Figure, ...], make: Make) -> Figure:
    return make("setback_tube", "setback", calc.setback(radius, angle), inputs, bend=str(n), conditions=f"bend {n}")


def smallest_rises(given: Given, tool: Tool | None) -> list[Figure]:
    """The smallest rise that this die makes at the angle of the shape; of both sides where they differ."""
    kind = shape_kind(given.tube)
    if tool is None or kind not in _RISES:
        return []
    shape = getattr(given.tube, kind)
    second = getattr(shape, "second", None)
    typed, out = Typed(given.name, given.data), []
    needed = tool.die.between
    straight = (tool.between,) if tool.between is not None and needed > 0 else ()
    for at, measure in (("", shape.angle), ("2", second.angle if second is not None else None)):
        if measure is None or (at and measure == shape.angle):
            continue
        angle, figure = typed.figure(measure, "angle", "angle", "bend_angle")
        if kind == "saddle" and angle >= pi / 2 - 1e-9:
            continue
        rule = "saddle_smallest_rise" if kind == "saddle" else "offset_smallest_rise"
        least = (
            sin(angle) * (needed + tool.die.radius * (tan(angle / 2) + tan(angle)))
            if kind == "saddle"
            else smallest_rise(angle, tool.die.radius, needed)
        )
        words = f"at {measure} on this die" + (", with the straight it needs between bends" if straight else "")
        inputs = (figure, *straight, tool.radius)
        out.append(given.make(rule, "rise_minimum", least, inputs, bend=at, conditions=words))
    return out
