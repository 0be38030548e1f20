"""A shape that does not fit the die: what would, in figures."""

from __future__ import annotations

from math import ceil, floor, inf

from gaugeblock.answer.check import NOT_OK, Check
from gaugeblock.bodies import Typed
from gaugeblock.calc import path as paths
from gaugeblock.calc import shapes
from gaugeblock.tubes.plan.keys import shape_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.tubes.plan.planned import Plan

NAME = "shape and marks"


def at_least_text(metres: float, tape: Tape) -> str:
    """A length that must be reached, on the tape's next step up."""
    return tape.reads(ceil(metres / tape.step - 1e-6) * tape.step)


def at_most_text(metres: float, tape: Tape) -> str:
    """A length that must not be passed, on the tape's next step down."""
    return tape.reads(floor(metres / tape.step + 1e-6) * tape.step)


def with_grip(keys: Mapping[str, Any], made: Plan) -> paths.TooTightError | None:
    """What the shape lacks when the straight that the die needs between bends is counted."""
    try:
        shape_of(keys, Typed(made.name, made.sheet.data), radius=made.die.radius, od=made.od, needed=made.die.between)
    except paths.TooTightError as tight:
        return tight
    except ValueError:
        pass
    return None


def refused(made: Plan, refusal: ValueError, with_grip: paths.TooTightError | None) -> None:
    """A shape that does not fit the die: what would."""
    sheet, make, tape_ = made.sheet, made.make, made.tape
    reason = str(refusal)
    if isinstance(refusal, paths.TooTightError):
        reason = f"straight {refusal.number} would be {tape_.reads(refusal.straight)}"
        fits = []
        inputs = (made.radius,) if made.radius is not None else ()
        words = "no straight left between the bends"
        if with_grip is not None and made.die.between > 0:
            refusal, words = (
                with_grip,
                f"{tape_.short(made.die.between)} of straight left between the bends, as the die needs",
            )
        if isinstance(refusal, shapes.RiseTooSmallError):
            figure = make(
                "offset_smallest_rise",
                "rise_minimum",
                refusal.smallest_rise,
                inputs,
                conditions=f"at this radius, {words}",
            )
            sheet.figures.append(figure)
            fits.append(f"a rise of {at_least_text(refusal.smallest_rise, tape_)} or more on this die")
        if 0 < refusal.largest_radius < inf:
            figure = make(
                "largest_radius_that_fits",
                "radius_maximum",
                refusal.largest_radius,
                inputs,
                conditions=f"for this shape, {words}",
            )
            sheet.figures.append(figure)
            fits.append(f"a die of {at_most_text(refusal.largest_radius, tape_)} radius or less for this shape")
        reason += (
            f": this die cannot make it. {' or '.join(fits).capitalize() if fits else 'No die can'} would work"
            if fits
            else ": no die can make it"
        )
    elif isinstance(refusal, shapes.FootTooShortError):
        short = refusal.needed - refusal.straight
        reason = f"foot {refusal.foot} would be {tape_.reads(refusal.straight)} straight:"
        reason += f" {tape_.reads(short)} more span on that side, a steeper angle or a smaller die"
    sheet.checks.insert(0, Check(NAME, NOT_OK, f"{reason}. No marks are given"))


def hint(made: Plan, keys: Mapping[str, Any]) -> str:
    """What would leave the straight that the die needs between bends."""
    tight = with_grip(keys, made)
    if tight is None:
        return "change the shape, or use a die with a shorter grip"
    fits = []
    if isinstance(tight, shapes.RiseTooSmallError):
        fits.append(f"a rise of {at_least_text(tight.smallest_rise, made.tape)} or more")
    if 0 < tight.largest_radius < inf:
        fits.append(f"a die of {at_most_text(tight.largest_radius, made.tape)} radius or less")
    return " or ".join(fits) + " would leave it" if fits else "no die leaves it: change the shape"
