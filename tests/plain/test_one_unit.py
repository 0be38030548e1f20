"""A bare number in a line of millimetres is not taken for inches."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.errors import InputError


@pytest.mark.parametrize("radius", ["6", "5", "4"])
@pytest.mark.parametrize("tube", ["38 mm", "25 mm", "50.8 mm"])
def test_the_unit_of_a_bare_radius_is_asked(tube: str, radius: str) -> None:
    with pytest.raises(InputError, match="millimetres or inches") as refused:
        gaugeblock.ask(f"arc length 90 deg {tube} tube radius {radius}")
    assert f"say {radius} mm, or {radius} in" in str(refused.value)


@pytest.mark.parametrize(
    "line",
    [
        "arc length 90 deg 1.5 in tube radius 6",
        "arc length 90 deg 38 mm tube radius 6 inch",
        "arc length 90 deg 38 mm tube radius 6 in",
        "arc length 90 deg 38 mm tube radius 114 mm",
        "drop 1 in 4 over 300 mm slope",
    ],
)
def test_a_unit_that_is_said_is_not_asked(line: str) -> None:
    assert "millimetres or inches" not in _refusal(line)


def _refusal(line: str) -> str:
    """Why a line is refused; no text where it is answered."""
    try:
        gaugeblock.ask(line)
    except InputError as refused:
        return str(refused)
    return ""
