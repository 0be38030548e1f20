"""What stands round a tube: the bodies it must clear, each with the gap wanted of it; and the tube itself as a body."""

from __future__ import annotations

from gaugeblock.bodies import Typed, direction, moves_of, moves_words
from gaugeblock.calc import clearance as calc
from gaugeblock.calc import path as paths
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.bodies import Body
    from gaugeblock.calc.clearance import Moves
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.model import Clear, Collar, Obstacle
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.shape import Shape

_LONG = 0.5  # m each way: a pipe or box of a shop's `clear` runs on square to the tube, and is drawn and checked so far
SLACK = 1.1 * calc.TOLERANCE  # m: the bound of the least distance, far under what a tape shows


class Thing(Value):
    """What must not be touched: its body, the gap wanted of it, its movement as words, and its typed figures."""

    __slots__ = ("asked", "body", "leaves", "moves")

    body: Body
    asked: Figure | None
    moves: str
    leaves: tuple[Figure, ...]

    def __init__(self, body: Body, asked: Figure | None, moves: str, leaves: tuple[Figure, ...]) -> None:
        put(self, "body", body)
        put(self, "asked", asked)
        put(self, "moves", moves)
        put(self, "leaves", leaves)


class Around(Value):
    """A tube as a body, with its collars and movement, and all that it must clear; ``own`` are its typed figures."""

    __slots__ = ("asked", "own", "things", "tube")

    tube: calc.Tube
    things: tuple[Thing, ...]
    own: tuple[Figure, ...]
    asked: Figure | None

    def __init__(
        self, tube: calc.Tube, things: tuple[Thing, ...], own: tuple[Figure, ...], asked: Figure | None
    ) -> None:
        put(self, "tube", tube)
        put(self, "things", things)
        put(self, "own", own)
        put(self, "asked", asked)

    def along(self, shape: Shape) -> Around:
        """The same with the tube on another path."""
        tube = self.tube
        return self.replace(tube=calc.Tube(tube.name, shape.line, tube.radius, tube.collars, tube.moves))


def around_of(given: Given, shape: Shape) -> Around:
    """The tube and what it must clear: what its own shape goes over, then the obstacles of the job."""
    tube, typed = given.tube, Typed(given.name, given.data)
    asked = typed.figure(tube.gap, "gap", "length", "gap_asked")[1] if tube.gap else None
    moved = moves_of(tube.moves, typed, "tube moves")
    first = len(typed.figures)
    collars = _collars(tube.collars, typed, "collar")
    own = tuple(typed.figures[first:])
    body = calc.Tube(given.name, shape.line, float(given.od_m) / 2, collars, moved)
    things = [] if shape.cleared is None or tube.clear is None else _cleared(tube.clear, shape, typed)
    things += [_thing(row, typed, asked) for row in tube.obstacles]
    return Around(body, tuple(things), own, asked)


def _collars(rows: Sequence[Collar], typed: Typed, where: str) -> list[tuple[float, float, float]]:
    """Flanges and clamps: place along the tube, length, radius."""
    out = []
    for n, row in enumerate(rows, 1):
        at, long, od = (
            typed.number(m, f"{where} {n} {k}", "length", "length")
            for k, m in (("at", row.at), ("length", row.length), ("od", row.od))
        )
        out.append((at, long, od / 2))
    return out


def _thing(row: Obstacle, typed: Typed, asked: Figure | None) -> Thing:
    first = len(typed.figures)
    where = row.name
    moves = moves_of(row.moves, typed, f"{where} moves")
    body: Body
    if row.points:
        body = _pipe(row, typed, moves)
    elif row.box is not None:
        middle = typed.point(row.box.middle, f"{where} middle")
        a, b, c = typed.point(row.box.size, f"{where} size")
        body = calc.Box(where, middle, (a / 2, b / 2, c / 2), moves=moves)
    elif row.plane is not None:
        point = typed.point(row.plane.point, f"{where} point")
        body = calc.Plane(where, point, direction(row.plane.free, f"{where} free"), moves)
    else:
        why = "neither points nor box nor plane"
        raise InputError(where, "obstacles", why, (), "give one: a pipe's points, a box or a plane")
    own = typed.figure(row.gap, f"{where} gap", "length", "gap_asked")[1] if row.gap else asked
    return Thing(body, own, moves_words(row.moves), tuple(typed.figures[first:]))


def _pipe(row: Obstacle, typed: Typed, moves: Moves) -> calc.Tube:
    where = row.name
    points = [typed.point(p, f"{where} point {n}") for n, p in enumerate(row.points, 1)]
    if row.od is None:
        raise InputError(where, "obstacles", "a pipe without its od", (), 'add od = "2-1/2 in"')
    od = typed.number(row.od, f"{where} od", "length", "tube_od")
    bend = typed.number(row.radius, f"{where} radius", "length", "centre_line_radius") if row.radius else 0.0
    try:
        stick, pose = paths.from_points(points, bend)
    except ValueError as error:
        raise InputError(where, "obstacles", str(error), (), "correct its points or its radius") from None
    return calc.Tube(where, paths.path(stick, pose), od / 2, _collars(row.collars, typed, f"{where} collar"), moves)


def _cleared(table: Clear, shape: Shape, typed: Typed) -> list[Thing]:
    """The box, the pipe, or the two pipes side by side that a kick-up was laid over, in the tube's own axes."""
    v, pose = shape.flat, shape.pose
    ahead, across = pose.direction, pose.normal
    up = paths.cross(across, ahead)
    name = table.name or "what is cleared"
    moves = moves_of(table.moves, typed, "clear moves")
    bodies: list[Body] = []
    if "od" in v:
        apart = v.get("spacing", 0.0)
        for named, off in ((f"{name}, first", -apart / 2), (f"{name}, second", apart / 2)) if apart else ((name, 0.0),):
            centre = paths.add(paths.add(pose.origin, ahead, v["at"] + off), up, v["height"])
            ends = (paths.add(centre, across, -_LONG), paths.add(centre, across, _LONG))
            bodies.append(calc.straight_pipe(named, *ends, v["od"] / 2, moves))
    else:
        tall = max(v["height"], 0.02)
        centre = paths.add(paths.add(pose.origin, ahead, v["at"]), up, v["height"] - tall / 2)
        bodies.append(calc.Box(name, centre, (v["width"] / 2, tall / 2, _LONG), (ahead, up, across), moves))
    asked = next(f for f in shape.leaves if f.locator == "clear gap")
    return [Thing(body, asked, moves_words(table.moves), shape.leaves) for body in bodies]


def gaps_of(pairs: Sequence[tuple[calc.Tube, Body]]) -> list[calc.Gap]:
    """The least gap of each tube from its thing, the movement of both counted; the round ones all at once."""
    tubes = [each for tube, body in pairs if isinstance(body, calc.Tube) for each in (tube, body)]
    found = iter(calc.tube_gaps(tubes, pairs=[(at, at + 1) for at in range(0, len(tubes), 2)]))
    return [next(found) if isinstance(b, calc.Tube) else calc.obstacle_gaps([t], [b])[0] for t, b in pairs]


def still(body: Body) -> Body:
    """The body where it stands."""
    if isinstance(body, calc.Tube):
        return still_tube(body)
    if isinstance(body, calc.Box):
        return calc.Box(body.name, body.centre, body.half, body.axes)
    return calc.Plane(body.name, body.point, body.normal)


def still_tube(tube: calc.Tube) -> calc.Tube:
    """The tube where it stands."""
    return calc.Tube(tube.name, tube.path, tube.radius, tube.collars)
