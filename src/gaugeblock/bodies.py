"""Bodies: what stands in a vehicle by its points, movement and datum, and the reader of typed places and lengths.

Vehicle axes are (rearward, right, up) from a datum that the user states, in metres.
"""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, stated
from gaugeblock.calc.clearance import Moves
from gaugeblock.errors import InputError
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any, TypeAlias

    from gaugeblock.calc import clearance as space
    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.job.model import Move
    from gaugeblock.tables.load import Refdata

    Body: TypeAlias = space.Tube | space.Box | space.Plane

TUBE, LINE, HOT, OBSTACLE = "tube", "line", "hot pipe", "obstacle"
AXES = ("rearward", "right", "up")
DIRECTIONS: dict[str, Vector] = {
    "forward": (-1.0, 0.0, 0.0),
    "rearward": (1.0, 0.0, 0.0),
    "left": (0.0, -1.0, 0.0),
    "right": (0.0, 1.0, 0.0),
    "down": (0.0, 0.0, -1.0),
    "up": (0.0, 0.0, 1.0),
}


class Placed(Value):
    """A body that stands in the vehicle: what it is, whose it is, its datum, the gap asked of it, its own figures."""

    __slots__ = ("asked", "body", "datum", "kind", "leaves", "owner")

    kind: str
    owner: str
    body: Body
    datum: str
    asked: Figure | None
    leaves: tuple[Figure, ...]

    def __init__(
        self, kind: str, owner: str, body: Body, datum: str, asked: Figure | None, leaves: tuple[Figure, ...]
    ) -> None:
        put(self, "kind", kind)
        put(self, "owner", owner)
        put(self, "body", body)
        put(self, "datum", " ".join(datum.casefold().split()))
        put(self, "asked", asked)
        put(self, "leaves", leaves)


class Drawn(Value):
    """A tube of the job whose shape is known, as another domain takes it: its middle line, size, steel and bends.

    ``line`` is in the axes of the vehicle where ``is_placed``, else in its own; ``leaves`` are what it rests on.
    """

    __slots__ = ("is_placed", "leaves", "line", "material", "name", "od", "wall")

    name: str
    line: Path
    od: Measure | None
    wall: Measure | None
    material: str | None
    is_placed: bool
    leaves: tuple[Figure, ...]

    def __init__(
        self,
        name: str,
        line: Path,
        od: Measure | None,
        wall: Measure | None,
        material: str | None,
        is_placed: bool,
        leaves: tuple[Figure, ...],
    ) -> None:
        put(self, "name", name)
        put(self, "line", line)
        put(self, "od", od)
        put(self, "wall", wall)
        put(self, "material", material)
        put(self, "is_placed", is_placed)
        put(self, "leaves", leaves)


class Typed:
    """Takes the measures of one item and keeps each as a stated Figure, in the order they were taken."""

    __slots__ = ("data", "figures", "name")

    def __init__(self, name: str, data: Refdata) -> None:
        self.name = name
        self.data = data
        self.figures: list[Figure] = []

    def number(self, given: Measure | str, where: str, dim: str, quantity: str, least: int | None = 0) -> float:
        """The SI value of a measure; ``least`` None lets it be negative."""
        return self.figure(given, where, dim, quantity, least)[0]

    def figure(
        self, given: Measure | str, where: str, dim: str, quantity: str, least: int | None = 0
    ) -> tuple[float, Figure]:
        """The SI value and the Figure of a measure, or of one as text. InputError when it is less than ``least``."""
        got = given if isinstance(given, Measure) else units.parse_measure(given, dim, where)
        if least is not None and got.value < least:
            raise InputError(got.text, where, "is less than nothing", (), "measure it, or leave it out")
        made = stated(got, quantity, where, self.data, owner=self.name, key={"tube": self.name})
        self.figures.append(made)
        return base(made), made

    def point(self, raw: Sequence[Measure | str], where: str) -> Vector:
        """A point in vehicle axes."""
        x, y, z = (
            self.number(t, f"{where} {w}", "length", "apex_coordinate", None) for t, w in zip(raw, AXES, strict=True)
        )
        return (x, y, z)


def direction(word: str, where: str) -> Vector:
    """A unit vector of a direction word. InputError names the nearest."""
    got = DIRECTIONS.get(word)
    if got is None:
        from gaugeblock.tables.near import nearest

        near = nearest(word, list(DIRECTIONS)) or list(DIRECTIONS)
        raise InputError(word, where, "not a direction", near, "use one of these")
    return got


def _way(row: Move | Mapping[str, Any], key: str) -> Any:
    return row.get(key) if isinstance(row, dict) else getattr(row, key)


def moves_of(rows: Sequence[Move | Mapping[str, Any]] | None, typed: Typed, where: str, group: str = "") -> Moves:
    """Stated movements added up by direction."""
    total = dict.fromkeys(DIRECTIONS, 0.0)
    for n, row in enumerate(rows or (), 1):
        for way in DIRECTIONS:
            far = _way(row, way)
            if far:
                at = f"{where} {n} {_way(row, 'why') or ''} {way}".replace("  ", " ")
                total[way] += typed.number(far, at, "length", "movement")
    return Moves(**total, group=group)


def moves_words(rows: Sequence[Move | Mapping[str, Any]] | None) -> str:
    """Stated movements as one text."""
    parts = []
    for row in rows or ():
        given = ((w, _way(row, w)) for w in DIRECTIONS)
        ways = ", ".join(f"{far} {w}" for w, far in given if far and _measure(far).value)
        why = _way(row, "why")
        parts.append(f"{why}: {ways}" if why else ways)
    return "; ".join(p for p in parts if p)


def _measure(given: Measure | str) -> Measure:
    return given if isinstance(given, Measure) else units.parse_measure(given, "length")


def place_words(at: Vector, tape: Tape) -> str:
    """A point in vehicle axes as words."""
    names = (("forward", "rearward"), ("left", "right"), ("down", "up"))
    words = [f"{tape.short(abs(v))} {pair[v > 0]}" for v, pair in zip(at, names, strict=True) if abs(v) > tape.step / 2]
    return ", ".join(words) or "nothing"
