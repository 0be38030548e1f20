"""The size of an exhaust pipe: guide and flow, one size where they agree, else both; a pipe that is there is judged."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import exhaust_pipe
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import InputError


def od(sheet: object, n: int = 0) -> float:
    return sheet.decision.figures[n].typical  # type: ignore[attr-defined,no-any-return]


def test_two_ways_that_differ_are_both_told_the_wider_first() -> None:
    sheet = exhaust_pipe("260 hp", displacement="4.75 L")
    assert sheet.decision.kind == ASK
    assert [round(f.typical, 3) for f in sheet.decision.figures] == [3, 2.647]
    assert sheet.questions[0].key == "od"


def test_two_ways_that_agree_are_used_and_say_habit() -> None:
    sheet = exhaust_pipe("200 hp", displacement="3 L")
    assert sheet.decision.kind == USE
    assert sheet.decision.do.startswith("Habit")


def test_a_pipe_that_is_smaller_than_usual_asks() -> None:
    sheet = exhaust_pipe("260 hp", displacement="4.75 L", od="2 in")
    assert sheet.decision.kind == ASK
    assert "smaller" in sheet.decision.do


def test_a_pipe_among_the_usual_is_used() -> None:
    assert exhaust_pipe("260 hp", displacement="4.75 L", od="2-1/2 in").decision.kind == USE


def test_more_loss_than_the_maker_allows_asks() -> None:
    known = {"displacement": "4.75 L", "speed": "5500 rpm", "gas": "1200 degF", "length": "40 ft", "wall": ".065 in"}
    allowed = exhaust_pipe("260 hp", od="2-1/2 in", back_pressure="8 psi", **known)
    less = exhaust_pipe("260 hp", od="2-1/2 in", back_pressure="1 psi", **known)
    assert (allowed.decision.kind, less.decision.kind) == (USE, ASK)
    assert "back pressure" in less.decision.because


@pytest.mark.parametrize(("power", "key"), [("26000 hp", "power"), ("0.2 hp", "power")])
def test_an_implausible_power_is_asked(power: str, key: str) -> None:
    sheet = exhaust_pipe(power)
    assert (sheet.decision.kind, sheet.questions[0].key) == (NONE, key)


@pytest.mark.parametrize(
    "more", [{"pipes": "nine"}, {"od": "2 in", "wall": "1 in"}, {"od": "-2 in"}, {"displacement": "4 hp"}]
)
def test_what_cannot_be_read_is_refused(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        exhaust_pipe("260 hp", **more)  # type: ignore[arg-type]


@given(st.integers(30, 900), st.integers(1, 300))
def test_more_power_never_asks_for_a_narrower_pipe(power: int, more: int) -> None:
    assert exhaust_pipe(f"{power + more} hp").decision.figures[0].typical >= od(exhaust_pipe(f"{power} hp"))


@given(st.integers(60, 900))
def test_two_pipes_share_the_flow(power: int) -> None:
    one, two = exhaust_pipe(f"{power} hp").figure("exhaust_flow"), exhaust_pipe(f"{power} hp", pipes="2")
    assert two.figure("exhaust_flow").typical == pytest.approx(one.typical / 2)
    assert od(two) < od(exhaust_pipe(f"{power} hp"))
