"""What the arcs cost of the gap that sharp corners would have, and how far apexes were moved for it."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.answer.caution import Caution
from gaugeblock.bodies import place_words
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.calc.path import Line, Path
from gaugeblock.tubes.plan.around import gaps_of, still, still_tube
from gaugeblock.tubes.plan.found import Found

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Vector
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.around import Around
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.making import Make
    from gaugeblock.tubes.plan.shape import Regained, Shape


def corners(given: Given, shape: Shape, around: Around, leaves: tuple[Figure, ...]) -> Found:
    """The cost of the arcs: of the shape's own thing, of what apexes were moved for, and of the rest."""
    if shape.cleared is not None:
        return _over(given, shape, leaves)
    if shape.points is None or len(shape.points) < 3:
        return Found()
    moved = [_regained(r, given, leaves) for r in shape.regained]
    lost = _lost(given, shape, around, leaves)
    return Found([f for m in (*moved, lost) for f in m.figures], (), [c for m in (*moved, lost) for c in m.cautions])


def _over(given: Given, shape: Shape, leaves: tuple[Figure, ...]) -> Found:
    got, make, tape = shape.cleared, given.make, given.tape
    if got is None or got.cost <= 0:
        return Found()
    sharp = f"with sharp corners {tape.reads(shape.flat['gap'])}, bent to the same apexes {tape.down(got.sharp_gap)}"
    inputs = (*leaves, *(() if given.od is None else (given.od,)))
    cost = make("corner_cost", "gap_cost", got.cost, inputs, conditions=sharp)
    words = "each top apex outward along the flat, so that the gap wanted is there again"
    rule = "apex_moved_for_flat" if got.is_drawn_out else "apex_moved"
    moved = make(rule, "apex_moved", got.moved, inputs, conditions=words)
    text = f"Bends round off the corners: without the correction the gap would be {tape.up(got.cost)} smaller."
    text += f" The top apexes were moved out {tape.reads(got.moved)} a side."
    return Found([cost, moved], (), [Caution(text, "note", (cost.id, moved.id), "calculated")])


def sharp_line(points: tuple[Vector, ...]) -> Path:
    """The path of sharp corners through apex points."""
    pairs = ((a, paths.subtract(b, a)) for a, b in pairwise(points))
    return Path([Line(a, paths.unit(v), paths.norm(v)) for a, v in pairs])


def _lost(given: Given, shape: Shape, around: Around, leaves: tuple[Figure, ...]) -> Found:
    """What the arcs cost next to each thing that no apex was moved for."""
    things = [t for t in around.things if all(r.name != t.body.name for r in shape.regained)]
    bent = still_tube(around.tube)
    sharp = calc.Tube(bent.name, sharp_line(shape.points or ()), bent.radius)
    bare = calc.Tube(bent.name, bent.path, bent.radius)
    gaps = gaps_of([(tube, still(t.body)) for t in things for tube in (sharp, bare)])
    figures, cautions = [], []
    for thing, before, after in zip(things, gaps[::2], gaps[1::2], strict=True):
        lost, name = before.gap - after.gap, thing.body.name
        if lost <= given.tape.step / 2:
            continue
        words = f"gap to {name}: with sharp corners less with arcs"
        both = _gaps(given.make, name, before.gap, after.gap, leaves)
        figure = given.make("gap_lost", "gap_cost", lost, both, bend=name, conditions=words)
        text = (
            f"Bends round off the corners: next to {name} the gap is {given.tape.up(lost)} smaller than with sharp"
            " corners."
        )
        figures.append(figure)
        cautions.append(Caution(text, "note", (figure.id,), "calculated"))
    return Found(figures, (), cautions)


def _gaps(make: Make, name: str, sharp: float, bent: float, leaves: tuple[Figure, ...]) -> tuple[Figure, Figure]:
    """The least gap to a thing with sharp corners, and with arcs to the same apexes."""
    words = f"gap to {name}, with"
    first = make("least_gap", "surface_gap", sharp, leaves, bend=f"{name} sharp", conditions=f"{words} sharp corners")
    return first, make("least_gap", "surface_gap", bent, leaves, bend=f"{name} bent", conditions=f"{words} arcs")


def _regained(r: Regained, given: Given, leaves: tuple[Figure, ...]) -> Found:
    """What the apexes that were moved for one thing are about."""
    make, tape, said = given.make, given.tape, f"moved for {r.name}"
    inputs = (*leaves, r.asked)
    kept = f"with sharp corners {tape.down(r.sharp)}, bent to the same apexes {tape.down(r.bent)}"
    both = _gaps(make, r.name, r.sharp, r.bent, inputs)
    cost = make("gap_lost", "gap_cost", r.sharp - r.bent, both, bend=said, conditions=f"gap to {r.name}: {kept}")
    bends = [n - 1 for n in r.apexes]
    where = "; ".join(
        f"of bend {n} to {place_words(at, tape)} of the datum" for n, at in zip(bends, r.places, strict=True)
    )
    words = f"{where}: the gap wanted of {r.name} is there again"
    moved = make("apex_moved_to_gap", "apex_moved", r.moved, inputs, bend=said, conditions=words)
    apexes = f"apex of bend {bends[0]} was" if len(bends) == 1 else f"apexes of bends {_and(bends)} were"
    bent = f"have {tape.down(r.bent)} to" if r.bent > 0 else "touch"
    text = (
        f"Bends round off the corners: bent to the apexes given, the tube would {bent} {r.name}, where sharp corners"
        f" have {tape.down(r.sharp)}. The {apexes} moved out {tape.reads(r.moved)}; the angles there and beside it are"
        " a little other than given, the ends stay. Figures, marks and drawings are of the moved shape."
    )
    return Found([cost, moved], (), [Caution(text, "damage", (cost.id, moved.id), "calculated")])


def _and(numbers: list[int]) -> str:
    return ", ".join(map(str, numbers[:-1])) + f" and {numbers[-1]}"
