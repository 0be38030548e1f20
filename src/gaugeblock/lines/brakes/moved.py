"""How far the master cylinder and the pedal go for the way of the pistons, where no force was given."""

from __future__ import annotations

from gaugeblock.answer.decision import use
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.brakes import words
from gaugeblock.lines.brakes.working import fluid_of, pedal_of, stroke_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.brakes.keys import Circuit
    from gaugeblock.tables.load import Refdata

# What is said -> what is asked where it was not.
NEEDS = {
    "bore": "Which bore have the pistons of the calipers, wheel cylinders or slave?",
    "pistons": "How many pistons has one wheel?",
    "wheels": "How many wheels does this master cylinder work?",
    "travel": "How far does each piston move until the brake is hard on?",
}


def is_asked(of: Circuit) -> bool:
    """Whether the way of the pistons was given, and no force: how far the pedal goes is asked."""
    return of.given.has("master", "travel") and not of.given.has("force")


def lacks(of: Circuit) -> dict[str, str]:
    """What the stroke hangs on and was not given: key -> how it is asked."""
    got = {"bore": of.given.has("bore"), "pistons": of.pistons is not None, "wheels": of.wheels is not None}
    return {key: NEEDS[key] for key, is_there in got.items() if not is_there}


def moved(of: Circuit, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of the stroke of the master cylinder, and of the way of the pedal where its ratio was given.

    Source: the fluid that the pistons take comes out of the master cylinder; the pedal goes as far as its ratio makes
    of it.
    """
    fluid = fluid_of(of, of.given.figure("bore", data), data)
    stroke = stroke_of(of, fluid, data)
    assert fluid is not None
    assert stroke is not None
    pedal = pedal_of(of, stroke, data) if of.given.has("ratio") else None
    first = pedal or stroke
    said = f"The master cylinder moves {number_only(stroke, data)} for it. " if pedal is not None else ""
    said += "At the least: free play, hoses and linings that give way come on top."
    if pedal is None:
        said += " Say the pedal ratio for the way of the pedal."
    figures = list({f.id: f for f in (first, stroke, fluid, *of.given.figures(data))}.values())
    verb = "PEDAL GOES" if pedal is not None else "MASTER MOVES"
    decision = use(verb, first, said)
    return Sheet(words.title(of), asked, data, figures, [], words.cautions(of), decision=decision)
