"""Whether what somebody typed is plausible: against its quantity's range, and what else may have been meant."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.pretty import pretty

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure


def plausible_range(quantity: str, data: Refdata) -> tuple[float, float] | None:
    """The least and the most that a quantity may plausibly be, in the base unit of its dimension.

    None when not said.
    """
    row = data.entry("quantities", quantity)
    if row is None or not (row.get("plausible_low") and row.get("plausible_high")):
        return None
    unit = row["plausible_unit"]
    return units.to_base(float(row["plausible_low"]), unit), units.to_base(float(row["plausible_high"]), unit)


def is_plausible(measure: Measure, quantity: str, data: Refdata) -> bool:
    """Whether a measure lies in its quantity's plausible range.

    Yes where no range is said or the dimension is another; no where a blank was left out, whatever the range.
    """
    if run_together(measure):
        return False
    span = plausible_range(quantity, data)
    row = data.entry("quantities", quantity)
    if span is None or row is None or units.dimension(measure.unit) != units.dimension(row["plausible_unit"]):
        return True
    low, high = (end + way * 1e-9 * abs(end) for end, way in zip(span, (-1, 1), strict=True))
    return low <= base_of(measure) <= high


def run_together(measure: Measure) -> str:
    """``1 1/2 in`` for ``11/2 in``: a mixed number whose blank was left out; blank where nothing else can be meant."""
    over, _, bottom = measure.number.partition("/")
    if not (over.isdigit() and bottom.isdigit()) or len(over) < 2 or int(over) <= int(bottom):
        return ""
    whole, top = over[:-1], over[-1]
    if over[-2] != "0" and int(over[-2:]) < int(bottom):
        whole, top = over[:-2], over[-2:]
    if int(top) == 0 or int(top) >= int(bottom):
        return ""
    return f"{whole} {top}/{bottom} {measure.unit}"


def base_of(measure: Measure) -> float:
    """A measure in the base unit (SI) of its dimension."""
    return units.to_base(float(measure.value), measure.unit)


def other_readings(measure: Measure, low: float, high: float, among: tuple[str, ...] = ()) -> tuple[str, ...]:
    """What else a number may mean that would lie in [low, high] (base unit), as text: in other units of its dimension,
    or with a blank that was left out.

    ``among`` are the units a person may have meant; all of the dimension when none are named.
    """
    if meant := run_together(measure):
        return (meant,)
    pool = among or [u for u in units.spellings(units.dimension(measure.unit)) if u not in _TAPERS]
    found = []
    for unit in pool:
        got = units.to_base(float(measure.value), unit)
        if unit != measure.unit and low * (1 - 1e-9) <= got <= high * (1 + 1e-9):
            found.append(f"{measure.number} {unit}".removesuffix(" 1"))
    return tuple(found)


_TAPERS = ("in/ft", "ft/in")  # ratios that nobody types for a number without a unit
_BARE = re.compile(r"(?<=[0-9]) 1(?= is\b)")  # the unit of a bare number, which is not said


def did_you_mean(said: str, readings: tuple[str, ...]) -> str:
    """``said`` as a sentence, with what may have been meant as a question behind it."""
    said = _BARE.sub("", said)
    meant = f" Did you mean {' or '.join(readings[:2])}?" if readings else " Read it again."
    return pretty(f"{said}.{meant}")


def unusual(read: Mapping[str, tuple[Measure, str]], data: Refdata) -> dict[str, str]:
    """Of what was read, key by key with its quantity, what is not plausible: each key with the doubt in words."""
    return {
        key: did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
        for key, (measure, quantity) in read.items()
        if not is_plausible(measure, quantity, data)
    }
