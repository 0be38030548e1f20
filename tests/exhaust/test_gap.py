"""A gap to a neighbour: rules and habits, the largest first; what is left when hot; contact stops."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import exhaust_gap
from gaugeblock.answer.decision import ASK, STOP, USE
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.exhaust.gap import NEIGHBOURS


@pytest.mark.parametrize("name", NEIGHBOURS)
def test_every_neighbour_has_a_figure(name: str) -> None:
    sheet = exhaust_gap(name)
    assert sheet.decision.kind == ASK
    assert sheet.decision.figures
    assert all(c.when and c.then for c in sheet.decision.candidates)


@pytest.mark.parametrize(
    ("asked", "more", "kind"),
    [
        ("brake line", {"gap": "2-1/2 in", "movement": "3/8 in"}, USE),
        ("brake line", {"gap": "2 in", "movement": "3/8 in"}, ASK),
        ("brake line", {"gap": "1/4 in", "movement": "3/8 in"}, STOP),
        ("brake line", {"jurisdiction": "US Maryland"}, USE),
        ("tire", {"gap": "3 in"}, ASK),
        ("fuel tank", {"gap": "300 in"}, ASK),
    ],
)
def test_a_gap_is_judged_by_the_most_that_was_found(asked: str, more: dict[str, str], kind: str) -> None:
    assert exhaust_gap(asked, **more).decision.kind == kind


def test_a_neighbour_that_is_not_known_names_the_nearest() -> None:
    with pytest.raises(LookupMiss) as refused:
        exhaust_gap("brake lin")
    assert "brake line" in refused.value.nearest
    with pytest.raises(InputError):
        exhaust_gap("floor", "-2 in")


@given(st.sampled_from(sorted(NEIGHBOURS)), st.integers(0, 64), st.integers(0, 64), st.integers(0, 64))
def test_more_movement_never_makes_a_gap_better(name: str, gap: int, moved: int, more: int) -> None:
    rank = (USE, ASK, STOP)
    less = exhaust_gap(name, f"{gap}/16 in", movement=f"{moved}/16 in").decision.kind
    worse = exhaust_gap(name, f"{gap}/16 in", movement=f"{moved + more}/16 in").decision.kind
    assert rank.index(worse) >= rank.index(less)


@pytest.mark.parametrize("gap", ["1/2 in", "1 in", "2 in", "3 in", "6 in"])
def test_the_heat_is_told_at_every_gap_that_has_an_estimate(gap: str) -> None:
    """The nearer, the hotter, and never the quieter."""
    keys = {"pipe": "2-1/4 in", "hot": "700 to 900 degF", "od": "3/16 in", "what": "DOT 4", "state": "wet"}
    sheet = exhaust_gap("brake line", gap=gap, **keys)
    (heat,) = [f for f in sheet.figures if f.quantity == "line_temperature"]
    low, high = heat.low, heat.high
    assert low is not None
    assert high is not None
    assert f"about {heat.typical:.0f} degF" in sheet.decision.do
    verdict = (
        ": too hot by that." if heat.typical > 311 else ": it may be too hot." if high > 311 else "stands 311 degF."
    )
    assert sheet.decision.do.endswith(verdict)
