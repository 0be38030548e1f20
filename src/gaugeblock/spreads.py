"""How far sources are apart: the spread of rows as specific as the governing one, and when that is told."""

from __future__ import annotations

from gaugeblock import units

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure

STEPS = ("standing", "service", "specificity", "basis", "weight", "checked", "safer end", "edition", "source id")
# An other that lost at one of these is as specific as the one that governs: it belongs to the spread.
_SAME = frozenset(STEPS[3:])
_DISAGREE = 0.02


def same_specificity(figure: Figure) -> tuple[Figure, ...]:
    """The others that are as specific as the governing figure: with it they make the spread."""
    return tuple(o for o in figure.others if o.chosen_by in _SAME)


def spread(figure: Figure) -> tuple[float, float]:
    """Lowest and highest of the governing figure and the others of its specificity, in its unit."""
    ends = [e for e in (figure.value, figure.low, figure.high) if e is not None]
    for other in same_specificity(figure):
        found = (e for e in (other.value, other.low, other.high) if e is not None)
        ends.extend(units.in_unit(e, other.unit, figure.unit) for e in found)
    return min(ends), max(ends)


def spread_ends(figure: Figure) -> tuple[Figure, ...]:
    """The others that set an end of the spread beyond the governing figure's own range."""
    own = [e for e in (figure.value, figure.low, figure.high) if e is not None]
    low, high = spread(figure)
    out = []
    for other in same_specificity(figure):
        ends = [
            units.in_unit(e, other.unit, figure.unit) for e in (other.value, other.low, other.high) if e is not None
        ]
        if (min(ends) == low < min(own)) or (max(ends) == high > max(own)):
            out.append(other)
    return tuple(out)


def disagreement(figure: Figure) -> tuple[float, float] | None:
    """Lowest and highest of the governing figure and the others of its specificity, when they differ by over 2 %;
    else None.

    Whichever step decided among them: that one governs does not make the others agree. Each counts by its value, or the
    middle of its range.
    """
    return apart([(f.typical, f.unit) for f in (figure, *same_specificity(figure))])


def apart(values: Sequence[tuple[float, str]]) -> tuple[float, float] | None:
    """Lowest and highest of numbers with their units, in the unit of the first, when they differ by over 2 %; else
    None.
    """
    unit = values[0][1]
    numbers = [units.in_unit(value, given, unit) for value, given in values]
    low, high = min(numbers), max(numbers)
    return (low, high) if high - low > _DISAGREE * min(abs(low), abs(high)) else None
