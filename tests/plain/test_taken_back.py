"""A value that is taken back is the last one of its unit, and all else that was said still stands."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError

# A line up to its last value; that value, and the one that takes it back; what stands behind it.
LINES = [
    ("bend 1.5 in x .120 dom on a", "6 in", "5 in", "radius die"),
    ("bend on a 6 in radius die 1.5 in x", ".120", ".095", "dom"),
    ("arc length 1.5 in od 90 deg radius", "6 in", "5 in", ""),
    ("clutch master 3/4 slave 7/8 stroke", "1 in", "1.2 in", ""),
    ("prop shaft 3 in x .083 steel", "52 in", "54 in", "long"),
    ("4 in offset 30 deg bends radius", "5 in", "6 in", ""),
    ("brake master 3/4 in pedal 6 to 1", "100 lb", "90 lb", ""),
    ("torque 3/8-16 dry grade", "8", "5", ""),
    ("m10 8.8 dry into aluminium", "15 mm", "20 mm", "deep"),
    ("wire 10 ft", "20 amps", "30 amps", ""),
]


def _answer(line: str) -> object:
    """What a line comes to; None where it is refused."""
    try:
        found = gaugeblock.ask(line)
    except GaugeblockError:
        return None
    if isinstance(found, Sheet):
        return found.title, found.decision
    return [(line.key, line.sheet.decision) for line in found.lines] if isinstance(found, Table) else found


@pytest.mark.parametrize("mark", ["no wait", "scratch that", "sorry", "sorry i mean"])
@pytest.mark.parametrize(("begin", "was", "now", "end"), LINES, ids=lambda v: v.replace(" ", "_"))
def test_the_last_value_is_taken_back_and_no_other(begin: str, was: str, now: str, end: str, mark: str) -> None:
    """It comes to what the line with the new value comes to, or to a refusal: never to another option."""
    meant = _answer(f"{begin} {now} {end}".strip())
    assert meant is not None
    got = _answer(f"{begin} {was} {end}".strip() + f", {mark} {now}")
    assert got in (meant, None)
    assert got is not None or "sorry" in mark
