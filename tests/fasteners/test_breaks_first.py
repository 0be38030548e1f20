"""Whether the bolt breaks before the thread of the tapped metal strips: by the strength that the metal needs for it."""

from __future__ import annotations

import pytest

from gaugeblock import torque

ASKED = {"grade": "SAE J429 5", "condition": "dry", "into": "aluminium", "engagement": "3/4 in"}


@pytest.mark.parametrize(("share", "result"), [(0.5, "not ok"), (0.999, "not ok"), (1.001, "ok"), (2.0, "ok")])
def test_a_metal_weaker_than_it_needs_to_be_strips_first(share: float, result: str) -> None:
    needed = torque("3/8-16", **ASKED).figure("tapped_strength_needed")
    own = f"{needed.typical * share:.6g} {needed.unit}"
    sheet = torque("3/8-16", **ASKED, tapped_strength=own)
    (check,) = (c for c in sheet.checks if c.name == "bolt breaks before the thread")
    assert check.result == result
    assert check.required is not None
    assert check.actual is not None
    assert check.required.value == pytest.approx(needed.typical)
    assert check.actual.value == pytest.approx(needed.typical * share, rel=1e-5)
