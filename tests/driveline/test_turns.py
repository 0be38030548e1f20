"""An axle's ratio by turning it: an open differential turns at the mean of its wheels."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, turns
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import InputError


@given(st.floats(2.5, 5.5), st.integers(1, 12))
def test_the_shaft_turns_by_the_mean_of_both_wheels(ratio: float, count: int) -> None:
    for left, right, which in ((count, 0, "one"), (count, count, "both")):
        shaft = ratio * (left + right) / 2
        sheet = turns(f"{shaft:.6f}", wheel=str(count), turned=which)
        assert sheet.decision.kind == USE
        assert sheet.decision.figure.typical == pytest.approx(ratio, rel=1e-5)


def test_it_asks_where_both_may_be_meant_and_only_there() -> None:
    both = turns("3.7")
    assert both.decision.kind == ASK
    assert [f.typical for f in both.decision.figures] == [7.4, 3.7]
    assert turns("1.2").decision.kind == USE  # 1.2 to 1 is no axle, 2.4 is one
    assert turns("40").decision.kind == NONE
    with pytest.raises(InputError):
        turns("1.9", turned="left")
    with pytest.raises(InputError):
        turns("0")


@pytest.mark.parametrize(
    ("line", "shaft", "turned"),
    [
        (
            "jacked one wheel up other on the floor turned the wheel one turn and the prop went 1.9 times what ratio",
            "1.9",
            "one",
        ),
        ("prop turns 3.7 times for one turn of both wheels whats the axle ratio", "3.7", "both"),
    ],
)
def test_it_is_asked_in_plain_words(line: str, shaft: str, turned: str) -> None:
    assert ask(line).decision == turns(shaft, turned=turned).decision
