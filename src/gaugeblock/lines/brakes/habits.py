"""What shops do where no publication speaks: residual pressure, the size of brake tube, the ratio of a pedal."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, none
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous
from gaugeblock.lines.given import Given, choice_of
from gaugeblock.lookup import look_up

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

BRAKES = "lines/brakes"
RESIDUAL, SIZE, PEDAL = "residual pressure", "line size", "pedal ratio"
_BELOW, _ABOVE = "disc, master cylinder below the calipers", "disc, master cylinder above the calipers"
CASES = {
    "drum": ("drums", "drum brakes", "drum brake"),
    _BELOW: ("disc below", "discs below", "below", "master below", "low master cylinder", "under the floor"),
    _ABOVE: ("disc above", "discs above", "above", "master above", "disc", "discs", "on the firewall"),
}

TUBES = {
    "to one wheel": ("one wheel", "wheel", "front", "caliper"),
    "to an axle or a long run": ("axle", "rear", "rear axle", "long run", "to the rear", "to an axle"),
}
PEDALS = {
    "no assist": (
        "no booster",
        "no servo",
        "manual",
        "unassisted",
        "without a booster",
        "without a servo",
        "unboosted",
    ),
    "assisted": ("booster", "servo", "power", "boosted", "with a booster", "with a servo", "power brakes"),
}
_NO_VALVE = "No residual valve: habit fits none where the master cylinder stands above the calipers."


def residual(case: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of a residual pressure; Ambiguous where the kind of brake was not said."""
    which = choice_of(case, "case", CASES)
    if which is None:
        raise Ambiguous(RESIDUAL, BRAKES, "the kind of brake changes it", tuple(CASES), "name the case")
    return _residual(which, asked, data)


def size(case: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of the size of brake tube; Ambiguous where what it feeds was not said."""
    which = choice_of(case, "case", TUBES)
    if which is None:
        raise Ambiguous(SIZE, BRAKES, "what the tube feeds changes it", tuple(TUBES), "name the case")
    figure = look_up(BRAKES, "tube_size_typical", data=data, subject="brake tube", case=which, service="vehicle")
    check = Check(SIZE, CANNOT_TELL, "habit, from memory: no publication of it was found", bears=ASK)
    question = Question(
        ASK_MAKER, "Which tube do the master cylinder and the brakes take, by their makers?", "case", (SIZE,)
    )
    candidates = [Candidate(figure, "as shops fit it", "nuts and flares go with its size")]
    do = "Fit what the vehicle had, or what the maker of master cylinder and brakes prints: ports and nuts go with it."
    title = f"brake tube, {which}"
    return Sheet(
        title, asked, data, [figure], [check], [], decision=ask("TUBE", candidates, (SIZE,), do), questions=[question]
    )


def pedal(case: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of the lever ratio of a brake pedal; Ambiguous where it was not said whether there is a booster."""
    which = choice_of(case, "case", PEDALS)
    if which is None:
        raise Ambiguous(PEDAL, BRAKES, "a booster changes it", tuple(PEDALS), "name the case")
    figure = look_up(BRAKES, "pedal_ratio_typical", data=data, subject="pedal", case=which, service="vehicle")
    check = Check(PEDAL, CANNOT_TELL, "habit: no publication of it was found", bears=ASK)
    text = "Which pedal ratio does the maker of the master cylinder, or of its booster, print?"
    candidates = [Candidate(figure, "as shops make it", "more of it asks less of the foot and more way of the pedal")]
    do = _beside(figure, asked.get("ratio"), data)
    do += "Before you make the pedal, work out the line pressure that foot, ratio and bore give."
    decision = ask("PEDAL RATIO", candidates, (PEDAL,), do)
    question = Question(ASK_MAKER, text, "case", (PEDAL,))
    title = f"pedal ratio, {which}"
    return Sheet(title, asked, data, [figure], [check], [], decision=decision, questions=[question])


def _beside(habit: Figure, typed: str | None, data: Refdata) -> str:
    """A pedal's own ratio beside those that shops make, in a sentence; nothing where none was typed."""
    if not typed:
        return ""
    given = Given({"ratio": typed}, {"ratio": ("ratio", "pedal_ratio")})
    doubt = given.doubts(data).get("ratio", "")
    if doubt:
        return f"{doubt} "
    own = float(given.measures["ratio"].value)
    low, high = (habit.typical if end is None else end for end in (habit.low, habit.high))
    where = "less than" if own < low else "more than" if own > high else "within"
    return f"Yours of {own:.3g} to 1 is {where} the {low:g} to {high:g} that shops make. "


def _residual(which: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    title = f"residual pressure, {which}"
    if which == _ABOVE:
        text = "A soft pedal there has another cause: look for it."
        return Sheet(
            title, asked, data, [], [], [Caution(text, "damage")], decision=none("RESIDUAL PRESSURE", _NO_VALVE)
        )
    figure = look_up(BRAKES, "residual_pressure_typical", data=data, subject=RESIDUAL, case=which, service="vehicle")
    others = [o for o in figure.others if not o.standing and o.chosen_by != "service"]
    candidates = [
        Candidate(f, "by a textbook" if f.source == "TXT-BRK08" else "as shops fit it", _comes(f))
        for f in (figure, *others)
    ]
    name = "residual pressure"
    check = Check(name, CANNOT_TELL, "habit, and no publication of a general figure was found", bears=ASK)
    do = "Ask the maker of the master cylinder whether it has a valve inside: two in one line drag or lock."
    question = Question(ASK_MAKER, "Is there a residual valve inside the master cylinder?", "case", (name,))
    caution = Caution("When drums become discs, take the drum valve out of that circuit: the pads drag.", "damage")
    decision = ask("RESIDUAL PRESSURE", candidates, (name,), do)
    return Sheet(title, asked, data, [figure, *others], [check], [caution], decision=decision, questions=[question])


def _comes(figure: Figure) -> str:
    return (
        "keeps the cups of the wheel cylinders spread"
        if "drum" in figure.key["case"]
        else "keeps the fluid from running back"
    )
