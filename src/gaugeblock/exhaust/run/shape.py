"""Where each place of a run stands: along its middle line, and in space where its shape is drawn."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


class Shape(Value):
    """The middle line of a run: its length as a figure, the tubes that it is made of, what they rest on.

    ``tubes`` are (name, path), end to end. One tube is drawn as it is; of several, whose place to each other is not
    known, only the lengths are used.
    """

    __slots__ = ("is_placed", "leaves", "length", "tubes")

    length: Figure
    tubes: tuple[tuple[str, Path], ...]
    leaves: tuple[Figure, ...]
    is_placed: bool

    def __init__(
        self,
        length: Figure,
        tubes: Sequence[tuple[str, Path]] = (),
        leaves: Sequence[Figure] = (),
        is_placed: bool = False,
    ) -> None:
        put(self, "length", length)
        put(self, "tubes", tuple(tubes))
        put(self, "leaves", tuple(leaves))
        put(self, "is_placed", is_placed)

    @property
    def line(self) -> Path | None:
        """The path of a run of one drawn tube; None where only the length is known."""
        return self.tubes[0][1] if len(self.tubes) == 1 else None

    def apart(self, a: float, b: float) -> float:
        """Straight distance in m between two places; along the line where its shape is not known, which is the most."""
        line = self.line
        if line is None:
            return abs(a - b)
        from gaugeblock.calc.path import norm, subtract

        return norm(subtract(line.at(a), line.at(b)))

    def moved(self, at: float, fixed: float, share: float) -> Vector | None:
        """How far a place moves in the axes of the drawn tube when all grows by ``share``; None without a shape."""
        line = self.line
        if line is None:
            return None
        from gaugeblock.calc.path import subtract

        x, y, z = subtract(line.at(at), line.at(fixed))
        return (x * share, y * share, z * share)


def drawn(
    tubes: Sequence[tuple[str, Path]], leaves: Sequence[Figure], unit: str, data: Refdata, *, is_placed: bool
) -> Shape:
    """The Shape of tubes end to end."""
    total = units.from_base(sum(path.length for _, path in tubes), unit)
    names = ", ".join(name for name, _ in tubes)
    length = derived("run_length_of_path", "run_length", total, unit, tuple(leaves), data, about=names)
    return Shape(length, tubes, leaves, is_placed)


def end(shape: Shape) -> float:
    """The length of a run in m."""
    return base(shape.length)
