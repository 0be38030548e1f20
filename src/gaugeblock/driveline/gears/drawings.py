"""The plot of a gearing: engine speed against road speed, a line a gear."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.making import base

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure

_USUAL = 6000.0
_MOST_FANS = 2


def drawings(columns: Sequence[tuple[str, Sequence[Figure]]], speed: Figure, most: Figure | None) -> list[Drawing]:
    """One plot to the engine's greatest speed: of one or two columns of engine speeds at the road speed, a gear
    each, or
    of the first and the last of more.
    """
    from gaugeblock.drawing.speed_plot import engine_against_road

    top = units.from_base(base(most), "rpm") if most is not None else _USUAL
    drawn = columns if len(columns) <= _MOST_FANS else (columns[0], columns[-1])
    fans = [(name, [(f.key["gear"], f.typical / speed.typical) for f in column]) for name, column in drawn]
    said = "" if most is not None else f"to {_USUAL:g} rpm: no limit was given"
    svg = engine_against_road(fans, top, speed.unit, speed.typical, said)
    return [Drawing("engine speed against road speed", svg)]
