"""From which side of the vehicle a drawing is seen: forward is x, left y, up z."""

from __future__ import annotations

import pytest

from gaugeblock.tubes.plan.drawings import _seen_from


@pytest.mark.parametrize(
    ("way", "side"),
    [
        ((1.0, 0.0, 0.0), "FROM THE REAR"),
        ((-1.0, 0.0, 0.0), "FROM THE FRONT"),
        ((0.0, 1.0, 0.0), "FROM THE RIGHT"),
        ((0.0, -1.0, 0.0), "FROM THE LEFT"),
        ((0.0, 0.0, 1.0), "FROM ABOVE"),
        ((0.0, 0.0, -1.0), "FROM BELOW"),
    ],
)
def test_a_view_along_an_axis_is_named_by_its_side(way: tuple[float, float, float], side: str) -> None:
    assert _seen_from(way, "other") == side


def test_a_view_askew_has_another_name() -> None:
    assert _seen_from((0.7071, 0.7071, 0.0), "other") == "other"
    assert _seen_from((0.999, 0.0447, 0.0), "other") == "other", "two and a half degrees aside is aside"
