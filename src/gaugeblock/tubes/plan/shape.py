"""The shape of a tube: its typed measures -> apex points and stick. Nothing is guessed."""

from __future__ import annotations

from itertools import pairwise
from math import tan

from gaugeblock.bodies import Typed, direction, moves_of
from gaugeblock.calc import path as paths
from gaugeblock.calc import shapes
from gaugeblock.calc.clearance import STILL, Moves
from gaugeblock.errors import InputError
from gaugeblock.tubes.model import SHAPES
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.calc.path import Path, Pose, Stick, Vector
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.model import Bend, Tube, TubePlace

_QUANTITIES = {
    "rise": "rise",
    "angle": "bend_angle",
    "flat": "flat",
    "gap": "gap_asked",
    "trim": "trim",
    "od": "outside_diameter",
}
_UNDEFINED = 1e-9


class Missing(Exception):
    """Keys that the shape needs and that were not given; an answer, not a fault: it becomes ``cannot tell``."""

    def __init__(self, keys: Sequence[str]) -> None:
        super().__init__(", ".join(keys))
        self.keys = tuple(keys)


class Regained(Value):
    """Apexes moved out for one thing: their numbers, how far and to where; the gaps before, sharp and bent."""

    __slots__ = ("apexes", "asked", "bent", "moved", "name", "places", "sharp")

    apexes: tuple[int, ...]
    moved: float
    places: tuple[Vector, ...]
    name: str
    sharp: float
    bent: float
    asked: Figure

    def __init__(
        self,
        apexes: Sequence[int],
        moved: float,
        places: Sequence[Vector],
        name: str,
        sharp: float,
        bent: float,
        asked: Figure,
    ) -> None:
        put(self, "apexes", tuple(apexes))
        put(self, "moved", moved)
        put(self, "places", tuple(places))
        put(self, "name", name)
        put(self, "sharp", sharp)
        put(self, "bent", bent)
        put(self, "asked", asked)


class Shape(Value):
    """A tube's shape: its stick, its apex points where it has some, and which Figures each number comes from.

    ``flat`` holds the typed measures of a flat shape in metres and radians; ``given`` those of each bend.
    """

    __slots__ = ("cleared", "flat", "given", "is_placed", "kind", "leaves", "points", "pose", "regained", "stick")

    kind: str
    stick: Stick
    pose: Pose
    points: tuple[Vector, ...] | None
    leaves: tuple[Figure, ...]
    is_placed: bool
    flat: Mapping[str, float]
    given: tuple[Mapping[str, Figure], ...]
    cleared: shapes.Cleared | None
    regained: tuple[Regained, ...]

    def __init__(
        self,
        kind: str,
        stick: Stick,
        pose: Pose,
        points: tuple[Vector, ...] | None,
        leaves: tuple[Figure, ...],
        is_placed: bool,
        flat: Mapping[str, float],
        given: tuple[Mapping[str, Figure], ...] = (),
        cleared: shapes.Cleared | None = None,
        regained: tuple[Regained, ...] = (),
    ) -> None:
        put(self, "kind", kind)
        put(self, "stick", stick)
        put(self, "pose", pose)
        put(self, "points", points)
        put(self, "leaves", leaves)
        put(self, "is_placed", is_placed)
        put(self, "flat", flat)
        put(self, "given", given)
        put(self, "cleared", cleared)
        put(self, "regained", regained)

    @property
    def line(self) -> Path:
        """The centre line in vehicle axes."""
        return paths.path(self.stick, self.pose)

    def inputs(self, quantity: str, number: int) -> tuple[Figure, ...]:
        """The typed figures behind a straight, angle or turn: of a path of points only the points beside it."""
        if self.kind != "points" or self.regained:
            return self.leaves
        first, count = {"straight": (number - 2, 4), "bend_angle": (number - 1, 3), "tube_turn": (number - 2, 4)}[
            quantity
        ]
        return self.leaves[max(0, 3 * first) : 3 * (first + count)]


class Die(Value):
    """What a shape is bent with: radius, the straight needed between its bends and at its feet, the tube's OD; in m."""

    __slots__ = ("foot", "needed", "od", "radius")

    radius: float
    od: float
    needed: float
    foot: float

    def __init__(self, radius: float, od: float, needed: float = 0.0, foot: float = 0.0) -> None:
        put(self, "radius", radius)
        put(self, "od", od)
        put(self, "needed", needed)
        put(self, "foot", foot)


def shape_kind(tube: Tube) -> str:
    """Which of the shapes is given; Missing when none is. A tube with an end and no bends is straight."""
    given = [k for k in SHAPES if getattr(tube, k)]
    if not given and tube.end is None:
        raise Missing(["a shape"])
    return given[0] if given else "bends"


def is_straight(tube: Tube) -> bool:
    """Whether the tube has no bend at all: an end alone, or points on one line."""
    if tube.points:
        points = [[m.to("m") for m in p] for p in tube.points]
        legs = [[b - a for a, b in zip(p, q, strict=True)] for p, q in pairwise(points)]
        whole = paths.subtract(_vector(points[-1]), _vector(points[0]))
        size = paths.norm(whole)
        along = [paths.dot(_vector(leg), whole) for leg in legs]
        off = [paths.norm(paths.cross(_vector(leg), whole)) for leg in legs]
        return size > 0 and all(a > 0 and o <= _UNDEFINED * size * size for a, o in zip(along, off, strict=True))
    return tube.end is not None and not any(getattr(tube, k) for k in SHAPES)


def _vector(values: Sequence[float]) -> Vector:
    return (values[0], values[1], values[2])


def shape_of(tube: Tube, typed: Typed, die: Die) -> Shape:
    """The shape of a tube bent on one die.

    Raises Missing, InputError, and the refusals of ``calc.shapes`` and ``calc.path`` for one that does not fit the die.
    """
    kind = shape_kind(tube)
    if kind == "points":
        return _from_points(tube, typed, die)
    pose, is_placed = _pose(tube.place, typed)
    first = len(typed.figures)
    if kind == "bends":
        stick, given = _from_bends(tube.bends, tube.end, typed, die.radius)
        return Shape(kind, stick, pose, None, tuple(typed.figures[first:]), is_placed, {}, given)
    cleared = None
    if kind == "template":
        flat, points = _template(tube, typed, pose)
    else:
        own = moves_of(tube.moves, typed, "tube moves") if kind == "clear" else STILL
        flat, across, cleared = _flat(kind, tube, typed, pose, own, die)
        points = shapes.place(across, pose.origin, pose.direction, paths.cross(pose.normal, pose.direction))
    stick, pose = paths.from_points(points, die.radius, die.needed, pose.normal)
    return Shape(kind, stick, pose, points, tuple(typed.figures[first:]), is_placed, flat, (), cleared)


def _from_points(tube: Tube, typed: Typed, die: Die) -> Shape:
    if len(tube.points) < 2:
        raise Missing(["points"])
    points = tuple(typed.point(p, f"points {n}") for n, p in enumerate(tube.points, 1))
    if is_straight(tube):
        points = (points[0], points[-1])
    stick, pose = paths.from_points(points, die.radius, die.needed, paths.START.normal)
    return Shape("points", stick, pose, points, tuple(typed.figures), True, {})


def _template(tube: Tube, typed: Typed, pose: Pose) -> tuple[dict[str, float], tuple[Vector, ...]]:
    """A shape read off a bent rod."""
    rod = tube.template
    lists: dict[str, list[float]] = {}
    for key, dim, quantity in (
        ("lengths", "length", "apex_distance"),
        ("angles", "angle", "bend_angle"),
        ("turns", "angle", "tube_turn"),
    ):
        least = None if key == "turns" else 0
        lists[key] = [
            typed.number(m, f"template {key[:-1]} {n}", dim, quantity, least)
            for n, m in enumerate(getattr(rod, key), 1)
        ]
    lost = [f"template.{k}" for k in ("lengths", "angles") if not lists[k]]
    if lost:
        raise Missing(lost)
    turns = lists["turns"] or ([0.0] if len(lists["angles"]) == 1 else [])
    if not turns:
        raise Missing(["template.turns"])
    points = shapes.template(lists["lengths"], lists["angles"], [0.0, *turns[1:]], pose)
    return {"first": lists["lengths"][0]}, points


def _from_bends(
    table: Sequence[Bend], end: Any, typed: Typed, radius: float
) -> tuple[Stick, tuple[Mapping[str, Figure], ...]]:
    """The stick of straights, bends and turns, with the typed figures of each bend."""
    lost = []
    for n, made in enumerate(table, 1):
        lost += [f"bend {n} {k}" for k in ("straight", "angle") if not getattr(made, k)]
        if n > 1 and not made.turn:
            lost.append(f"bend {n} turn")
    if not end:
        lost.append("end")
    if lost:
        raise Missing(lost)
    bends, given = [], []
    for n, made in enumerate(table, 1):
        if made.straight is None or made.angle is None:
            continue  # told above
        row: dict[str, Figure] = {}
        straight, row["straight"] = typed.figure(made.straight, f"bend {n} straight", "length", "straight")
        angle, row["angle"] = typed.figure(made.angle, f"bend {n} angle", "angle", "bend_angle")
        turn = 0.0
        if n > 1 and made.turn is not None:
            turn, row["turn"] = typed.figure(made.turn, f"bend {n} turn", "angle", "tube_turn", None)
        own = radius
        if made.radius:
            own, row["radius"] = typed.figure(made.radius, f"bend {n} radius", "length", "centre_line_radius")
        given.append(row)
        bends.append(paths.Bend(straight, turn, angle, own))
    last, figure = typed.figure(end, "end", "length", "straight")
    return paths.Stick(bends, last), (*given, {"straight": figure})


def read_of(typed: Typed, table: Any, at: str, keys: Sequence[str], needed: Sequence[str]) -> dict[str, float]:
    """The SI values of a table's keys; Missing with every needed key that is not there."""
    lost = [f"{at}.{key}" if at else key for key in needed if not getattr(table, key)]
    if lost:
        raise Missing(lost)
    out = {}
    for key in keys:
        value = getattr(table, key)
        if value:
            dim = "angle" if key == "angle" else "length"
            least = None if key == "second_foot_up" else 0
            out[key] = typed.number(value, f"{at} {key}".strip(), dim, _QUANTITIES.get(key, "length"), least)
    return out


def _flat(
    kind: str, tube: Tube, typed: Typed, pose: Pose, own: Moves, die: Die
) -> tuple[dict[str, float], Sequence[tuple[float, float]], shapes.Cleared | None]:
    """The measures of a flat shape, its points in its own plane, and what it was laid over."""
    table: Any = getattr(tube, kind)
    if kind == "clear":
        return _over(table, typed, pose, own, die)
    if kind == "kick_up":
        return (*_kick_up(table, typed, die), None)
    if kind == "single":
        v = read_of(typed, table, kind, ("first", "second", "angle"), ("first", "second", "angle"))
        return v, shapes.single_bend(v["first"], v["second"], v["angle"]), None
    keys = ("rise", "angle", "before", "after")
    v = read_of(typed, table, kind, keys, keys)
    make = shapes.offset if kind == "offset" else shapes.saddle
    return v, make(v["rise"], v["angle"], v["before"], v["after"], radius=die.radius, needed=die.needed), None


def _kick_up(table: Any, typed: Typed, die: Die) -> tuple[dict[str, float], Sequence[tuple[float, float]]]:
    either = "width" if table.width else "flat"
    keys = (either, "rise", "angle", "foot")
    v = read_of(typed, table, "kick_up", keys, keys)
    second = read_of(typed, table.second, "kick_up second", ("rise", "angle", "foot"), ()) if table.second else {}
    rise, angle, foot = (second.get(k, v[k]) for k in ("rise", "angle", "foot"))
    if either == "width":
        v["flat"] = shapes.kick_up_flat(
            v["width"], v["rise"], v["angle"], v["foot"], radius=die.radius, second=(rise, angle, foot)
        )
        if v["flat"] < die.needed - 1e-12:
            # each setback is radius times tan(angle/2)
            short = (die.needed - v["flat"]) / (2 * (tan(v["angle"] / 2) + tan(angle / 2)))
            raise paths.TooTightError(3, v["flat"], die.needed, die.radius - short)
    points = shapes.kick_up(
        v["flat"],
        v["rise"],
        v["angle"],
        v["foot"],
        radius=die.radius,
        needed=die.needed,
        second_rise=rise,
        second_angle=angle,
        second_foot=foot,
    )
    return v, points


def _over(
    table: Any, typed: Typed, pose: Pose, own: Moves, die: Die
) -> tuple[dict[str, float], Sequence[tuple[float, float]], shapes.Cleared]:
    """The kick-up that goes over what it must clear."""
    keys = ("width", "od", "spacing", "height", "at", "span", "gap", "angle", "second_foot_up")
    size = "od" if table.od else "width"
    v = read_of(typed, table, "clear", keys, (size, "height", "at", "span", "gap", "angle"))
    moved = moves_of(table.moves, typed, "clear moves")
    lift, run = paths.cross(pose.normal, pose.direction), pose.direction
    v["up"] = _reach(moved, lift) + _reach(own, lift, -1)
    v["side"] = max(_reach(moved, run, way) + _reach(own, run, -way) for way in (1, -1))
    thing = shapes.Beneath(
        width=v.get("width", v.get("spacing", 0.0)),
        height=v["height"],
        place=v["at"],
        round_radius=v.get("od", 0.0) / 2,
        up=v["up"],
        sideways=v["side"],
    )
    cleared = shapes.clear_over(
        thing,
        span=v["span"],
        gap=v["gap"],
        od=die.od,
        angle=v["angle"],
        radius=die.radius,
        second_foot_height=v.get("second_foot_up", 0.0),
        needed=die.needed,
        foot_needed=die.foot,
    )
    return v, cleared.points, cleared


def _reach(moves: Moves, way: Vector, sign: int = 1) -> float:
    """How far a movement goes in one direction, or against it."""
    return sum(max(sign * w * low, sign * w * high) for w, low, high in zip(way, moves.low, moves.high, strict=True))


def _pose(place: TubePlace | None, typed: Typed) -> tuple[Pose, bool]:
    """Where the tube starts and how it lies; to the right with its first bend up, from nothing, when it is not
    given.
    """
    if place is None or not (place.start or place.runs or place.bends):
        return paths.START, False
    lost = [f"place.{k}" for k in ("start", "runs", "bends") if not getattr(place, k)]
    if lost:
        raise Missing(lost)
    origin = typed.point(place.start or (), "place start")
    ahead, up = direction(place.runs or "", "place runs"), direction(place.bends or "", "place bends")
    if abs(paths.dot(ahead, up)) > _UNDEFINED:
        why = "lies along the tube"
        raise InputError(place.bends or "", "place bends", why, (), "give a direction across it")
    return paths.Pose(origin, ahead, paths.cross(ahead, up)), True
