"""Does the tube clear: least gaps from what stands round it, with the movement stated, and what its arcs cost."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.bodies import direction, moves_of, moves_words, place_words
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.calc.path import Line, Path
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any, TypeAlias

    from gaugeblock.bodies import Typed
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.keys import Shape
    from gaugeblock.tubes.plan.marks import Maker

    Body: TypeAlias = calc.Tube | calc.Box | calc.Plane

_LONG = 0.5  # m each way: a pipe or box of a shop's `clear` runs on square to the tube, and is drawn and checked so far
SLACK = 1.1 * calc.TOLERANCE  # m: the bound of the least distance, far under what a tape shows


class Thing:
    """What must not be touched: its body, the gap asked of it, and the movement as words."""

    __slots__ = ("asked", "body", "leaves", "moves")

    def __init__(self, body: Body, asked: Figure | None, moves: str, leaves: tuple[Figure, ...]) -> None:
        self.body = body
        self.asked = asked
        self.moves = moves
        self.leaves = leaves


def collars_of(rows: Sequence[Mapping[str, Any]] | None, typed: Typed, where: str) -> list[tuple[float, float, float]]:
    """Flanges and clamps: place along the tube, length, radius."""
    out = []
    for n, row in enumerate(rows or (), 1):
        at, long, od = (typed.number(row[k], f"{where} {n} {k}", "length", "length") for k in ("at", "length", "od"))
        out.append((at, long, od / 2))
    return out


def things_of(keys: Mapping[str, Any], shape: Shape, typed: Typed, asked: Figure | None) -> list[Thing]:
    """Everything the tube must clear: what its own shape clears, then the obstacles of the job."""
    out = []
    if shape.cleared is not None:
        out.append(_cleared(keys["clear"], shape, typed))
    for row in keys.get("obstacles") or ():
        first = len(typed.figures)
        where = row["name"]
        moves = moves_of(row.get("moves"), typed, f"{where} moves")
        body: calc.Tube | calc.Box | calc.Plane
        if row.get("points"):
            points = [typed.point(p, f"{where} point {n}") for n, p in enumerate(row["points"], 1)]
            od = typed.number(row["od"], f"{where} od", "length", "tube_od")
            bend = (
                typed.number(row["radius"], f"{where} radius", "length", "centre_line_radius")
                if row.get("radius")
                else 0.0
            )
            try:
                stick, pose = paths.from_points(points, bend)
                body = calc.Tube(
                    where,
                    paths.path(stick, pose),
                    od / 2,
                    collars_of(row.get("collars"), typed, f"{where} collar"),
                    moves,
                )
            except ValueError as error:
                raise InputError(where, "obstacles", str(error), (), "correct its points or its radius") from None
        elif row.get("box"):
            middle = typed.point(row["box"]["middle"], f"{where} middle")
            a, b, c = typed.point(row["box"]["size"], f"{where} size")
            body = calc.Box(where, middle, (a / 2, b / 2, c / 2), moves=moves)
        else:
            point = typed.point(row["plane"]["point"], f"{where} point")
            body = calc.Plane(where, point, direction(row["plane"]["free"], f"{where} free"), moves)
        own = typed.figure(row["gap"], f"{where} gap", "length", "gap_asked")[1] if row.get("gap") else asked
        out.append(Thing(body, own, moves_words(row.get("moves")), tuple(typed.figures[first:])))
    return out


def _cleared(table: Mapping[str, Any], shape: Shape, typed: Typed) -> Thing:
    """The pipe or box that a kick-up was laid over, in the tube's own axes."""
    v, pose = shape.flat, shape.pose
    ahead, across = pose.direction, pose.normal
    up = paths.cross(across, ahead)
    name = table.get("name") or "what is cleared"
    middle = paths.add(pose.origin, ahead, v["at"])
    moves = moves_of(table.get("moves"), typed, "clear moves")
    body: calc.Tube | calc.Box
    if "od" in v:
        centre = paths.add(middle, up, v["height"])
        body = calc.straight_pipe(
            name, paths.add(centre, across, -_LONG), paths.add(centre, across, _LONG), v["od"] / 2, moves
        )
    else:
        tall = max(v["height"], 0.02)
        centre = paths.add(middle, up, v["height"] - tall / 2)
        body = calc.Box(name, centre, (v["width"] / 2, tall / 2, _LONG), (ahead, up, across), moves)
    asked = next(f for f in typed.figures if f.locator == "clear gap")
    return Thing(body, asked, moves_words(table.get("moves")), shape.leaves)


def gaps_of(pairs: Sequence[tuple[calc.Tube, Body]]) -> list[calc.Gap]:
    """The least gap of each tube from its thing, the movement of both counted; the round ones all at once."""
    tubes = [each for tube, body in pairs if isinstance(body, calc.Tube) for each in (tube, body)]
    found = iter(calc.tube_gaps(tubes, pairs=[(at, at + 1) for at in range(0, len(tubes), 2)]))
    return [next(found) if isinstance(b, calc.Tube) else calc.obstacle_gaps([t], [b])[0] for t, b in pairs]


def gap_of(tube: calc.Tube, body: Body) -> calc.Gap:
    """The least gap of a tube from one thing, the movement of both counted."""
    return gaps_of([(tube, body)])[0]


def _still(body: Body) -> Body:
    """The body where it stands."""
    if isinstance(body, calc.Tube):
        return calc.Tube(body.name, body.path, body.radius, body.collars)
    if isinstance(body, calc.Box):
        return calc.Box(body.name, body.centre, body.half, body.axes)
    return calc.Plane(body.name, body.point, body.normal)


def clearance(
    tube: calc.Tube, moved: str, things: Sequence[Thing], leaves: tuple[Figure, ...], make: Maker
) -> tuple[list[Figure], list[Check]]:
    """Least surface gaps at rest and under the movement stated, each against the gap asked."""
    figures, checks, tape = [], [], make.tape
    still = calc.Tube(tube.name, tube.path, tube.radius, tube.collars)
    gaps = gaps_of([(still, _still(t.body)) for t in things] + [(tube, t.body) for t in things if t.moves or moved])
    resting, moving = iter(gaps[: len(things)]), iter(gaps[len(things) :])
    for thing in things:
        body, name = thing.body, f"gap to {thing.body.name}"
        inputs = (*leaves, *(f for f in thing.leaves if f not in leaves))
        rest = next(resting)
        at = f"at {place_words(rest.at, tape)} from the datum" + (
            "" if rest.what in ("tube", "tube to tube") else f" ({rest.what})"
        )
        figures.append(
            make("least_gap", "surface_gap", rest.gap, inputs, bend=body.name, conditions=f"{name}, at rest, {at}")
        )
        least, said = rest, "no movement is stated"
        words = "; ".join(dict.fromkeys(w for w in (thing.moves, moved) if w))
        if words:
            least = next(moving)
            said = f"after movement ({words})"
            at = f"at {place_words(least.at, tape)} from the datum"
            figures.append(
                make(
                    "least_gap_moved",
                    "surface_gap",
                    least.gap,
                    inputs,
                    bend=f"{body.name} moved",
                    conditions=f"{name}, {said}, {at}",
                )
            )
        text = f"{tape.reads(least.gap)} at the least, {at}; {said}"
        if least.gap <= 0:
            text = f"it touches, {at}; {said}"
        got = Bound(units.from_base(least.gap, tape.unit), tape.unit, figure=figures[-1])
        if thing.asked is None:
            result = NOT_OK if least.gap <= 0 else CANNOT_TELL
            checks.append(
                Check(name, result, f"{text}; no gap is asked for" if result == CANNOT_TELL else text, None, got)
            )
            continue
        asked = units.to_base(thing.asked.typical, thing.asked.unit)
        need = Bound(units.from_base(asked, tape.unit), tape.unit, "min", thing.asked)
        short = asked - least.low
        result = OK if short <= SLACK and least.gap > 0 else NOT_OK
        text += f"; {tape.reads(asked)} asked" + (
            f", {tape.reads(short)} missing" if result == NOT_OK and least.gap > 0 else ""
        )
        checks.append(Check(name, result, text, need, got, (least.gap - asked) / asked if asked else None))
    return figures, checks


def corner_figures(
    shape: Shape, tube: calc.Tube, things: Sequence[Thing], leaves: tuple[Figure, ...], make: Maker
) -> tuple[list[Figure], list[Caution]]:
    """What the arcs cost of the gap that sharp corners would have, and how far the apexes were moved for it."""
    got, tape = shape.cleared, make.tape
    if got is not None:
        if got.cost <= 0:
            return [], []
        cost = make(
            "corner_cost",
            "gap_cost",
            got.cost,
            leaves,
            conditions=f"with sharp corners {tape.reads(shape.flat['gap'])}, bent to the same apexes {tape.reads(got.sharp_gap)}",
        )
        moved = make(
            "apex_moved",
            "apex_moved",
            got.moved,
            leaves,
            conditions="each top apex outward along the flat, so that the gap asked for is there again",
        )
        text = f"The arc cuts the corner: bent to sharp-corner apexes the tube would lose {tape.reads(got.cost)} of the gap."
        text += f" The top apexes were moved out {tape.reads(got.moved)} a side."
        return [cost, moved], [Caution(text, "note", (cost.id, moved.id), "calculated")]
    if shape.points is None or not things or len(shape.points) < 3:
        return [], []
    figures, cautions = _regained(shape, leaves, make)
    pairs = zip(shape.points, shape.points[1:], strict=False)
    sharp = calc.Tube(
        tube.name,
        Path([Line(a, paths.unit(paths.subtract(b, a)), paths.norm(paths.subtract(b, a))) for a, b in pairs]),
        tube.radius,
    )
    for thing in things:
        if any(r.name == thing.body.name for r in shape.regained):
            continue
        body = _still(thing.body)
        lost = gap_of(sharp, body).gap - gap_of(calc.Tube(tube.name, tube.path, tube.radius), body).gap
        if lost > tape.step / 2:
            figure = make(
                "gap_lost",
                "gap_cost",
                lost,
                leaves,
                bend=thing.body.name,
                conditions=f"gap to {thing.body.name}: with sharp corners less with arcs",
            )
            text = f"The arc cuts the corner: next to {thing.body.name} it costs {tape.reads(lost)} of the gap that sharp corners would have."
            figures.append(figure)
            cautions.append(Caution(text, "note", (figure.id,), "calculated"))
    return figures, cautions


def _regained(shape: Shape, leaves: tuple[Figure, ...], make: Maker) -> tuple[list[Figure], list[Caution]]:
    """What each moved apex is about."""
    figures: list[Figure] = []
    cautions: list[Caution] = []
    tape = make.tape
    for r in shape.regained:
        said = f"moved for {r.name}"
        inputs = (*leaves, r.asked)
        cost = make(
            "gap_lost", "gap_cost", r.sharp - r.bent, inputs, bend=said,
            conditions=f"gap to {r.name}: with sharp corners {tape.reads(r.sharp)}, bent to the same apexes {tape.reads(r.bent)}",
        )  # fmt: skip
        bends = [n - 1 for n in r.apexes]
        where = "; ".join(
            f"of bend {n} to {place_words(at, tape)} of the datum" for n, at in zip(bends, r.places, strict=True)
        )
        moved = make(
            "apex_moved_to_gap", "apex_moved", r.moved, inputs, bend=said,
            conditions=f"{where}: the gap asked of {r.name} is there again",
        )  # fmt: skip
        figures += [cost, moved]
        apexes = (
            f"apex of bend {bends[0]} was"
            if len(bends) == 1
            else f"apexes of bends {' and '.join(map(str, bends))} were"
        )
        kept = f"keep {tape.reads(r.bent)} from" if r.bent > 0 else "touch"
        text = (
            f"The arc cuts the corner: bent to the apexes given, the tube would {kept} {r.name}, where sharp corners have "
            f"{tape.reads(r.sharp)}. The {apexes} moved out {tape.reads(r.moved)}; the angles there and beside it are a "
            "little other than given, the ends stay. Figures, marks and drawings are of the moved shape."
        )
        cautions.append(Caution(text, "damage", (cost.id, moved.id), "calculated"))
    return figures, cautions


def removal_check(table: Mapping[str, Any], tube: calc.Tube, typed: Typed, make: Maker) -> tuple[Figure, Check]:
    """Whether a part can be taken out past the tube along a straight line."""
    name, first = table["name"], len(typed.figures)
    middle = typed.point(table["middle"], f"{name} middle")
    a, b, c = typed.point(table["size"], f"{name} size")
    travel = typed.point(table["travel"], f"{name} travel")
    box = calc.Box(name, middle, (a / 2, b / 2, c / 2))
    if sum(abs(v) > 0 for v in travel) <= 1:  # along the box's own axis it sweeps a box
        x, y, z = (abs(v) / 2 for v in travel)
        swept = calc.Box(name, paths.add(middle, travel, 0.5), (a / 2 + x, b / 2 + y, c / 2 + z))
        got = calc.obstacle_gaps([calc.Tube(tube.name, tube.path, tube.radius, tube.collars)], [swept])[0]
    else:
        got = calc.taken_out(box, travel, [tube])[0]
    leaves = tuple(typed.figures[first:])
    figure = make(
        "least_gap_moved",
        "surface_gap",
        got.gap,
        leaves,
        bend=f"{name} out",
        conditions=f"least gap while {name} is taken out along {place_words(travel, make.tape)}",
    )
    at = f"at {place_words(got.at, make.tape)} from the datum"
    check = f"{name} can be taken out past the tube"
    bound = Bound(figure.typical, make.tape.unit, figure=figure)
    if got.low <= 0:
        return figure, Check(
            check, NOT_OK, f"it meets the tube on its way, {at}: take the tube off first, or move the tube", None, bound
        )
    return figure, Check(check, OK, f"{make.tape.reads(got.gap)} at the least on its way, {at}", None, bound)
