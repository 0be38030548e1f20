"""A torque that is printed for dry threads is never handed over for threads that are not, whatever else is open."""

from __future__ import annotations

import pytest

from gaugeblock.errors import GaugeblockError
from gaugeblock.fasteners.part import part
from gaugeblock.tables.load import refdata

ROWS = {(row["part"], row["size"]) for row in refdata().table("fasteners/part_torques").rows}
PARTS = sorted({name for name, _ in ROWS})


@pytest.mark.parametrize("condition", ["oiled", "anti-seize"])
@pytest.mark.parametrize("name", PARTS)
def test_a_dry_torque_is_told_as_one(name: str, condition: str) -> None:
    seen = 0
    for size in (None, *sorted(size for part_, size in ROWS if part_ == name)):
        try:
            sheet = part(name, size=size, condition=condition)
        except GaugeblockError:
            continue
        seen += 1
        assert sheet.decision.kind != "use"
        torques = [c for c in sheet.decision.candidates if c.figure.quantity == "tightening_torque"]
        assert all("clean and dry" in c.when for c in torques), sheet.decision
    assert seen
