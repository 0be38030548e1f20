"""The plain case of a decision: what stops goes before what asks, and what asks before what is used."""

from __future__ import annotations

from gaugeblock.answer.check import ASK as ASKS
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Check
from gaugeblock.answer.decision import ASK, NONE, STOP, USE, decided
from gaugeblock.fasteners.torque import torque

FINE = Check("fine", OK, "all is well")
WORD = Check("word", CANNOT_TELL, "nobody said", bears=INFORM)
OPEN = Check("open", CANNOT_TELL, "it was not said which", bears=ASKS)
BROKEN = Check("broken", NOT_OK, "it is broken")


def test_what_stops_goes_before_what_asks_and_that_before_the_figure() -> None:
    figure = torque("3/8-16", grade="SAE J429 5", condition="dry").decision.figure
    for checks, kind, because, do in (
        ([FINE, OPEN, BROKEN], STOP, ("broken",), "it is broken"),
        ([OPEN, WORD], ASK, ("open",), "it was not said which"),
        ([FINE, WORD], USE, (), ""),
    ):
        made = decided("TIGHTEN", figure, checks)
        assert (made.kind, made.because, made.do, made.figures) == (kind, because, do, (figure,))
        assert decided("TIGHTEN", figure, checks, "Say it so.").do == "Say it so."


def test_without_a_figure_there_is_nothing_to_use() -> None:
    assert decided("TIGHTEN", None, [BROKEN]).kind == STOP
    assert decided("TIGHTEN", None, [OPEN], "Ask the maker.").kind == NONE
