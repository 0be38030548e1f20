"""Chords of a path: points close enough together to draw it, or to look along it."""

from __future__ import annotations

from math import ceil, sqrt

from gaugeblock.calc.path import Arc

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Path, Vector


def chords(line: Path, sagitta: float) -> list[Vector]:
    """Points along a path whose chords stray from it by ``sagitta`` at most, for drawing and for a beam model."""
    points: list[Vector] = []
    for part in line.parts:
        count = 1
        if isinstance(part, Arc) and part.radius > 0:
            count = max(1, ceil(part.angle / (2 * sqrt(2 * sagitta / part.radius))))
        points += [part.at(part.length * i / count) for i in range(count)]
    return [*points, line.parts[-1].at(line.parts[-1].length)]
