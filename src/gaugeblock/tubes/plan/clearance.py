"""Does the tube clear: least gaps from what stands round it, movement counted; and what must come out past it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.making import base
from gaugeblock.bodies import Typed, moves_words, place_words
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.tubes.plan.around import SLACK, gaps_of, still, still_tube
from gaugeblock.tubes.plan.corner import corners
from gaugeblock.tubes.plan.found import Found, joined

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.clearance import Gap
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.model import Removal
    from gaugeblock.tubes.plan.around import Around, Thing
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.shape import Shape


def clearance_of(given: Given, shape: Shape, around: Around, radius: tuple[Figure, ...]) -> Found:
    """Collars on the tube, gaps from what stands round it, and a part that must come out past it."""
    leaves = tuple({f.id: f for f in (*shape.leaves, *radius, *around.own)}.values())
    stages = [_collars(given, around, shape)]
    if around.things:
        stages += [corners(given, shape, around, leaves), _gaps(given, around, leaves)]
        stages.append(Found(cautions=_assumed(given, shape)))
    if given.tube.removal is not None:
        stages.append(_removal(given.tube.removal, given, around))
    return joined(stages)


def _collars(given: Given, around: Around, shape: Shape) -> Found:
    length, reads = shape.line.length, given.tape.reads
    text = "a collar at {} lies off the tube, which is {} along its centre line"
    off = [text.format(reads(at), reads(length)) for at, _, _ in around.tube.collars if at > length]
    return Found(checks=[Check("collars", NOT_OK, why) for why in off])


def _assumed(given: Given, shape: Shape) -> list[Caution]:
    """What places are measured from, and how what is gone over lies."""
    text = "Assumed: the tube starts at the datum, runs to the right, its first bend goes up (place is not given)."
    if shape.is_placed:
        datum = given.tube.datum
        said = f"the datum: {datum}" if datum else "a datum that is not stated in words (datum)"
        text = f"Positions are measured rearward, right and up from {said}."
    out = [Caution(text, "note", (), "calculated")]
    if shape.cleared is not None:
        text = "Assumed: what is cleared crosses the tube at a right angle."
        out.append(Caution(text, "note", (), "calculated"))
    return out


def _gaps(given: Given, around: Around, leaves: tuple[Figure, ...]) -> Found:
    """Least surface gaps at rest and under the movement stated, each against the gap wanted."""
    moved = moves_words(given.tube.moves)
    rest = gaps_of([(still_tube(around.tube), still(t.body)) for t in around.things])
    moving = iter(gaps_of([(around.tube, t.body) for t in around.things if t.moves or moved]))
    figures: list[Figure] = []
    checks: list[Check] = []
    for thing, at_rest in zip(around.things, rest, strict=True):
        words = "; ".join(dict.fromkeys(w for w in (thing.moves, moved) if w))
        inputs = (*leaves, *(f for f in thing.leaves if f not in leaves))
        more, check = _gap(given, thing, at_rest, next(moving) if words else None, words, inputs)
        figures += more
        checks.append(check)
    return Found(figures, checks)


def _gap(
    given: Given, thing: Thing, rest: Gap, moved: Gap | None, words: str, inputs: tuple[Figure, ...]
) -> tuple[list[Figure], Check]:
    name, make, tape = f"gap to {thing.body.name}", given.make, given.tape
    at = f"at {place_words(rest.at, tape)} from the datum"
    at += "" if rest.what in ("tube", "tube to tube") else f" ({rest.what})"
    words_of = f"{name}, at rest, {at}"
    figures = [make("least_gap", "surface_gap", rest.gap, inputs, bend=thing.body.name, conditions=words_of)]
    least, said = rest, "no movement is stated"
    if moved is not None:
        least, said = moved, f"after movement ({words})"
        at = f"at {place_words(least.at, tape)} from the datum"
        key, words_of = f"{thing.body.name} moved", f"{name}, {said}, {at}"
        figures.append(make("least_gap_moved", "surface_gap", least.gap, inputs, bend=key, conditions=words_of))
    return figures, _judged(name, thing, least, at, said, figures[-1], given)


def _judged(name: str, thing: Thing, least: Gap, at: str, said: str, figure: Figure, given: Given) -> Check:
    """Whether a gap is the one that is wanted; one that nobody wants informs, unless it touches."""
    tape, subject = given.tape, thing.body.name
    got = Bound(units.from_base(least.gap, tape.unit), tape.unit, figure=figure)
    text = f"it touches, {at}; {said}" if least.gap <= 0 else f"smallest gap {tape.down(least.gap)}, {at}; {said}"
    if thing.asked is None:
        if least.gap <= 0:
            return Check(name, NOT_OK, text, None, got, subject=subject)
        return Check(name, CANNOT_TELL, f"{text}; no gap is wanted", None, got, subject=subject, bears=INFORM)
    asked = base(thing.asked)
    need = Bound(units.from_base(asked, tape.unit), tape.unit, "min", thing.asked)
    short = asked - least.low
    is_enough = short <= SLACK and least.gap > 0
    text += f"; wanted {tape.reads(asked)}"
    text += f", {tape.up(short - SLACK)} missing" if not is_enough and least.gap > 0 else ""
    margin = (least.gap - asked) / asked if asked else None
    return Check(name, OK if is_enough else NOT_OK, text, need, got, margin, subject=subject)


def _removal(part: Removal, given: Given, around: Around) -> Found:
    """Whether a part can be taken out past the tube along a straight line."""
    typed, tape = Typed(given.name, given.data), given.tape
    name = part.name
    middle = typed.point(part.middle, f"{name} middle")
    a, b, c = typed.point(part.size, f"{name} size")
    travel = typed.point(part.travel, f"{name} travel")
    tube = still_tube(around.tube)
    if sum(abs(v) > 0 for v in travel) <= 1:  # along the box's own axis it sweeps a box
        x, y, z = (abs(v) / 2 for v in travel)
        swept = calc.Box(name, paths.add(middle, travel, 0.5), (a / 2 + x, b / 2 + y, c / 2 + z))
        got = calc.obstacle_gaps([tube], [swept])[0]
    else:
        got = calc.taken_out(calc.Box(name, middle, (a / 2, b / 2, c / 2)), travel, [around.tube])[0]
    words = f"least gap while {name} is taken out along {place_words(travel, tape)}"
    figure = given.make(
        "least_gap_moved", "surface_gap", got.gap, tuple(typed.figures), bend=f"{name} out", conditions=words
    )
    at = f"at {place_words(got.at, tape)} from the datum"
    check = f"{name} can be taken out past the tube"
    bound = Bound(figure.typical, tape.unit, figure=figure)
    if got.low <= 0:
        why = f"it meets the tube on its way, {at}: take the tube off first, or move the tube"
        return Found([figure], [Check(check, NOT_OK, why, None, bound, subject=name)])
    why = f"smallest gap {tape.down(got.gap)} on its way, {at}"
    return Found([figure], [Check(check, OK, why, None, bound, subject=name)])
