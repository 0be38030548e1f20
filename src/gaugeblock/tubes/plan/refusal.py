"""A shape that does not fit the die: what would, in figures."""

from __future__ import annotations

from math import inf

from gaugeblock.answer.check import NOT_OK, Check
from gaugeblock.answer.pretty import capital
from gaugeblock.bodies import Typed
from gaugeblock.calc import path as paths
from gaugeblock.calc import shapes
from gaugeblock.tubes.plan.found import Found
from gaugeblock.tubes.plan.marks import NAME
from gaugeblock.tubes.plan.shape import Die, shape_kind, shape_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.tool import Tool


def with_grip(given: Given, tool: Tool) -> paths.TooTightError | None:
    """What the shape lacks when the straight that the die needs between bends is counted."""
    try:
        shape_of(
            given.tube,
            Typed(given.name, given.data),
            Die(tool.die.radius, float(given.od_m), tool.die.between),
        )
    except paths.TooTightError as tight:
        return tight
    except ValueError:
        pass
    return None


def refused(given: Given, tool: Tool, refusal: ValueError) -> Found:
    """A shape that does not fit the die: what would."""
    tape = given.tape
    if isinstance(refusal, paths.TooTightError):
        return _tight(given, tool, refusal)
    reason = str(refusal)
    if isinstance(refusal, shapes.FootTooShortError):
        short = refusal.needed - refusal.straight
        reason = f"foot {refusal.foot} would be {tape.reads(refusal.straight)} straight:"
        reason += f" {tape.up(short)} more span on that side, a steeper angle or a smaller die"
    return Found(checks=[Check(NAME, NOT_OK, f"{reason}. No marks are given")])


def _tight(given: Given, tool: Tool, refusal: paths.TooTightError) -> Found:
    tape, make, inputs = given.tape, given.make, (tool.radius,)
    reason = f"straight {refusal.number} would be {tape.reads(refusal.straight)}"
    figures, fits = [], []
    straight: tuple[Figure, ...] = ()
    words = "no straight left between the bends"
    grip = with_grip(given, tool)
    if grip is not None and tool.die.between > 0:
        refusal = grip
        straight = () if tool.between is None else (tool.between,)
        words = f"{tape.short(tool.die.between)} of straight left between the bends, as the die needs"
    if isinstance(refusal, shapes.RiseTooSmallError):
        said = f"at this radius, {words}"
        rise = (*_angle_of(given, refusal.number), *straight, *inputs)
        rule = "saddle_smallest_rise" if shape_kind(given.tube) == "saddle" else "offset_smallest_rise"
        figures.append(make(rule, "rise_minimum", refusal.smallest_rise, rise, conditions=said))
        fits.append(f"a rise of {tape.up(refusal.smallest_rise)} or more on this die")
    if 0 < refusal.largest_radius < inf:
        said = f"for this shape, {words}"
        figures.append(
            make(
                "largest_radius_that_fits",
                "radius_maximum",
                refusal.largest_radius,
                (*straight, *inputs),
                conditions=said,
            )
        )
        fits.append(f"a die of {tape.down(refusal.largest_radius)} radius or less for this shape")
    reason += f": this die cannot make it. {capital(' or '.join(fits))} would work" if fits else ": no die can make it"
    return Found(figures, [Check(NAME, NOT_OK, f"{reason}. No marks are given")])


def _angle_of(given: Given, straight: int) -> tuple[Figure, ...]:
    """The angle typed of the leg that is too short: of the second side where the fourth straight is."""
    shape = getattr(given.tube, shape_kind(given.tube))
    second = getattr(shape, "second", None)
    angle = second.angle if straight > 2 and second is not None and second.angle else shape.angle
    return (Typed(given.name, given.data).figure(angle, "angle", "angle", "bend_angle")[1],)


def hint(given: Given, tool: Tool | None) -> str:
    """What would leave the straight that the die needs between bends."""
    if tool is None or tool.between is None:
        return ""
    tight = with_grip(given, tool)
    if tight is None:
        return "change the shape, or use a die with a shorter grip"
    fits = []
    if isinstance(tight, shapes.RiseTooSmallError):
        fits.append(f"a rise of {given.tape.up(tight.smallest_rise)} or more")
    if 0 < tight.largest_radius < inf:
        fits.append(f"a die of {given.tape.down(tight.largest_radius)} radius or less")
    return " or ".join(fits) + " would leave it" if fits else "no die leaves it: change the shape"
