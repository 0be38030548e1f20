"""What else stops an item is told once, beside what its decision says."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from gaugeblock.answer.check import NOT_OK, STOP, Check
from gaugeblock.answer.decision import stop
from gaugeblock.packet.first import also


def _item(*reasons: str, do: str) -> Any:
    checks = [Check(f"check {n}", NOT_OK, reason, bears=STOP) for n, reason in enumerate(reasons)]
    decision = stop("SET", (), ["check 0"], do)
    return SimpleNamespace(sheet=SimpleNamespace(decision=decision, checks=checks))


def test_every_other_reason_to_stop_is_told() -> None:
    told = also(_item("the clamp is past proof", "the thread strips", "the wrench is too small", do="Use less torque."))
    assert told == "Also: the thread strips. Also: the wrench is too small."


def test_what_the_decision_says_already_is_not_told_again() -> None:
    assert also(_item("past proof", "the thread strips", do="The thread strips. Engage more thread.")) == ""


def test_of_one_reason_nothing_more_is_told() -> None:
    assert also(_item("the clamp is past proof", do="Use less torque.")) == ""
