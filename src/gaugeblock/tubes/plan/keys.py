"""A tube's typed shape, die, place and movement -> SI numbers, each with its Figure. Nothing is guessed."""

from __future__ import annotations

from gaugeblock.bodies import DIRECTIONS, direction, moves_of
from gaugeblock.calc import path as paths
from gaugeblock.calc import shapes
from gaugeblock.calc.clearance import STILL, Moves
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.bodies import Typed
    from gaugeblock.calc.path import Path, Pose, Stick, Vector
    from gaugeblock.figure import Figure

SHAPES = ("clear", "single", "offset", "kick_up", "saddle", "template", "bends", "points")
_QUANTITIES = {"rise": "rise", "angle": "bend_angle", "flat": "flat", "gap": "gap_asked", "trim": "trim"}


class Missing(Exception):
    """Keys that the shape needs and that were not given; an answer, not a fault: it becomes ``cannot tell``."""

    def __init__(self, keys: Sequence[str]) -> None:
        super().__init__(", ".join(keys))
        self.keys = tuple(keys)


def read_of(
    typed: Typed, table: Mapping[str, Any], at: str, keys: Sequence[str], needed: Sequence[str]
) -> dict[str, float]:
    """The SI values of a table's keys; Missing with every needed key that is not there."""
    lost = [f"{at}.{key}" if at else key for key in needed if not table.get(key)]
    if lost:
        raise Missing(lost)
    out = {}
    for key in keys:
        if table.get(key):
            dim = "angle" if key == "angle" else "length"
            least = None if key == "second_foot_up" else 0
            out[key] = typed.number(table[key], f"{at} {key}".strip(), dim, _QUANTITIES.get(key, "length"), least)
    return out


class Regained:
    """Apexes that were moved out for one thing: their numbers, how far and to where; the gaps before, sharp and bent."""

    __slots__ = ("apexes", "asked", "bent", "moved", "name", "places", "sharp")

    def __init__(
        self,
        apexes: Sequence[int],
        moved: float,
        places: Sequence[Vector],
        name: str,
        gaps: tuple[float, float],
        asked: Figure,
    ) -> None:
        self.apexes = tuple(apexes)
        self.moved = moved
        self.places = tuple(places)
        self.name = name
        self.sharp, self.bent = gaps
        self.asked = asked


class Shape:
    """A tube's shape: its apex points (or its stick where it has none), and which Figures each number comes from."""

    __slots__ = (
        "cleared", "flat", "given", "is_placed", "kind", "leaves", "points", "pose", "regained", "stick", "words",
    )  # fmt: skip

    def __init__(self, kind: str) -> None:
        self.kind = kind
        self.points: tuple[Vector, ...] | None = None
        self.stick: Stick | None = None
        self.pose: Pose = paths.START
        self.cleared: shapes.Cleared | None = None
        self.flat: dict[str, float] = {}
        self.leaves: tuple[Figure, ...] = ()
        self.given: list[dict[str, Figure]] = []
        self.is_placed = False
        self.regained: list[Regained] = []
        self.words = ""

    def line(self) -> Path:
        """The centre line in vehicle axes."""
        if self.stick is None:
            raise ValueError("the shape has no stick")
        return paths.path(self.stick, self.pose)

    def inputs(self, quantity: str, number: int) -> tuple[Figure, ...]:
        """The typed figures behind a straight, angle or turn: of a path of points only the points beside it."""
        if self.kind != "points" or self.regained:
            return self.leaves
        first, count = {"straight": (number - 2, 4), "bend_angle": (number - 1, 3), "tube_turn": (number - 2, 4)}[
            quantity
        ]
        return self.leaves[max(0, 3 * first) : 3 * (first + count)]


def shape_kind(keys: Mapping[str, Any]) -> str:
    """Which of the shapes is given; Missing when none is, InputError for two."""
    given = [k for k in SHAPES if keys.get(k)]
    if not given:
        raise Missing(["a shape"])
    if len(given) > 1:
        raise InputError(
            given[1], "shape", f"both {given[0]} and {given[1]} give the shape", SHAPES, "keep one of them"
        )
    return given[0]


def shape_of(
    keys: Mapping[str, Any], typed: Typed, *, radius: float, od: float, needed: float, foot_needed: float = 0.0
) -> Shape:
    """The shape of a tube bent at one ``radius``, ``needed`` straight between its bends.

    Raises Missing, InputError, and the refusals of ``calc.shapes`` and ``calc.path`` for a shape that does not fit the die.
    """
    kind = shape_kind(keys)
    shape = Shape(kind)
    first = len(typed.figures)
    table = keys[kind]
    flat: Sequence[tuple[float, float]] | None = None
    if kind != "points":
        shape.pose = _pose(keys.get("place"), typed, shape)
        first = len(typed.figures)
    if kind == "bends":
        shape.stick = _from_bends(shape, table, keys.get("end"), typed, radius)
    elif kind == "points":
        shape.points = tuple(typed.point(p, f"points {n}") for n, p in enumerate(table, 1))
        if len(shape.points) < 2:
            raise Missing(["points"])
    elif kind == "template":
        lists = {
            key: [typed.number(t, f"template {key[:-1]} {n}", dim, quantity, None if key == "turns" else 0)
                  for n, t in enumerate(table.get(key) or (), 1)]
            for key, dim, quantity in (
                ("lengths", "length", "apex_distance"), ("angles", "angle", "bend_angle"), ("turns", "angle", "tube_turn"),
            )
        }  # fmt: skip
        lost = [f"template.{k}" for k in ("lengths", "angles") if not lists[k]]
        if lost:
            raise Missing(lost)
        turns = lists["turns"] or ([0.0] if len(lists["angles"]) == 1 else [])
        if not turns:
            raise Missing(["template.turns"])
        shape.flat = {"first": lists["lengths"][0]}
        shape.points = shapes.template(lists["lengths"], lists["angles"], [0.0, *turns[1:]], shape.pose)
    else:
        own = moves_of(keys.get("moves"), typed, "tube moves") if kind == "clear" else STILL
        flat = _flat(kind, table, typed, shape, own, radius=radius, od=od, needed=needed, foot_needed=foot_needed)
    shape.leaves = tuple(typed.figures[first:])
    if kind == "points":
        shape.is_placed = True
    if flat is not None:
        up = paths.cross(shape.pose.normal, shape.pose.direction)
        shape.points = shapes.place(flat, shape.pose.origin, shape.pose.direction, up)
    if shape.points is not None:
        shape.stick, shape.pose = paths.from_points(shape.points, radius, needed, shape.pose.normal)
    return shape


def _from_bends(
    shape: Shape, table: Sequence[Mapping[str, Any]], end: str | None, typed: Typed, radius: float
) -> Stick:
    lost = []
    for n, made in enumerate(table, 1):
        lost += [f"bend {n} {k}" for k in ("straight", "angle") if not made.get(k)]
        if n > 1 and not made.get("turn"):
            lost.append(f"bend {n} turn")
    if not end:
        lost.append("end")
    if lost:
        raise Missing(lost)
    bends = []
    for n, made in enumerate(table, 1):
        row: dict[str, Figure] = {}
        straight, row["straight"] = typed.figure(made["straight"], f"bend {n} straight", "length", "straight")
        angle, row["angle"] = typed.figure(made["angle"], f"bend {n} angle", "angle", "bend_angle")
        turn = 0.0
        if n > 1:
            turn, row["turn"] = typed.figure(made["turn"], f"bend {n} turn", "angle", "tube_turn", None)
        own = radius
        if made.get("radius"):
            own, row["radius"] = typed.figure(made["radius"], f"bend {n} radius", "length", "centre_line_radius")
        shape.given.append(row)
        bends.append(paths.Bend(straight, turn, angle, own))
    last, figure = typed.figure(str(end), "end", "length", "straight")
    shape.given.append({"straight": figure})
    return paths.Stick(bends, last)


def _flat(
    kind: str, table: Mapping[str, Any], typed: Typed, shape: Shape, own: Moves, *, radius: float, od: float, needed: float, foot_needed: float
) -> Sequence[tuple[float, float]]:  # fmt: skip
    """The points of a flat shape in its own plane."""
    if kind == "single":
        v = shape.flat = read_of(typed, table, kind, ("first", "second", "angle"), ("first", "second", "angle"))
        return shapes.single_bend(v["first"], v["second"], v["angle"])
    if kind in ("offset", "saddle"):
        keys = ("rise", "angle", "before", "after")
        v = shape.flat = read_of(typed, table, kind, keys, keys)
        make = shapes.offset if kind == "offset" else shapes.saddle
        return make(v["rise"], v["angle"], v["before"], v["after"], radius=radius, needed=needed)
    if kind == "kick_up":
        either = "width" if table.get("width") else "flat"
        keys = (either, "rise", "angle", "foot")
        v = shape.flat = read_of(typed, table, kind, keys, keys)
        second = read_of(typed, table.get("second") or {}, "kick_up second", ("rise", "angle", "foot"), ())
        other = tuple(second.get(k, v[k]) for k in ("rise", "angle", "foot"))
        if either == "width":
            v["flat"] = shapes.kick_up_flat(
                v["width"], v["rise"], v["angle"], v["foot"], radius=radius, second=(other[0], other[1], other[2])
            )
            if v["flat"] < needed - 1e-12:
                fits = _radius_for_width(needed - v["flat"], radius, [v["angle"], other[1]])
                raise paths.TooTightError(3, v["flat"], needed, fits)
        return shapes.kick_up(
            v["flat"], v["rise"], v["angle"], v["foot"], radius=radius, needed=needed, second_rise=other[0],
            second_angle=other[1], second_foot=other[2],
        )  # fmt: skip
    over = ("width", "od", "height", "at", "span", "gap", "angle", "second_foot_up")
    size = "od" if table.get("od") else "width"
    v = shape.flat = read_of(typed, table, kind, over, (size, "height", "at", "span", "gap", "angle"))
    moved = moves_of(table.get("moves"), typed, "clear moves")
    lift, run = paths.cross(shape.pose.normal, shape.pose.direction), shape.pose.direction
    v["up"] = _reach(moved, lift) + _reach(own, lift, -1)
    v["side"] = max(_reach(moved, run, way) + _reach(own, run, -way) for way in (1, -1))
    shape.cleared = shapes.clear_over(
        width=v.get("width", 0.0), height=v["height"], place=v["at"], span=v["span"], gap=v["gap"], od=od, angle=v["angle"],
        radius=radius, round_radius=v.get("od", 0.0) / 2, second_foot_height=v.get("second_foot_up", 0.0), moves_up=v["up"],
        moves_sideways=v["side"], needed=needed, foot_needed=foot_needed,
    )  # fmt: skip
    return shape.cleared.points


def _reach(moves: Moves, way: Vector, sign: int = 1) -> float:
    """How far a movement goes in one direction, or against it."""
    return sum(max(sign * w * low, sign * w * high) for w, low, high in zip(way, moves.low, moves.high, strict=True))


def _radius_for_width(short: float, radius: float, angles: list[float]) -> float:
    """The largest radius that leaves a kick-up of one width its flat: each setback is radius times tan(angle/2)."""
    from math import tan

    return radius - short / (2 * sum(tan(a / 2) for a in angles))


def _pose(place: Mapping[str, Any] | None, typed: Typed, shape: Shape) -> Pose:
    """Where the tube starts and how it lies; to the right with its first bend up, from nothing, when it is not given."""
    if not place or not any(place.values()):
        return paths.START
    lost = [f"place.{k}" for k in ("start", "runs", "bends") if not place.get(k)]
    if lost:
        raise Missing(lost)
    origin = typed.point(place["start"], "place start")
    ahead, up = (direction(place[k], f"place {k}") for k in ("runs", "bends"))
    if abs(paths.dot(ahead, up)) > 1e-9:
        raise InputError(
            place["bends"], "place bends", "lies along the tube", list(DIRECTIONS), "give a direction across it"
        )
    shape.is_placed = True
    return paths.Pose(origin, ahead, paths.cross(ahead, up))
