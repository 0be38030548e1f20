"""What every decision of the driveline is, whatever was asked."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, MOST_CANDIDATES, NONE, STOP, USE
from gaugeblock.answer.question import KINDS
from gaugeblock.answer.sheet import Sheet


def keeps_form(sheet: Sheet, keys: set[str]) -> None:
    """What every decision is, whatever was asked."""
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    counts = {USE: (1, 1), ASK: (1, MOST_CANDIDATES), STOP: (0, MOST_CANDIDATES), NONE: (0, 0)}
    low, high = counts[decision.kind]
    assert low <= len(decision.candidates) <= high
    assert decision.verb
    assert set(decision.because) <= names
    assert all(f in sheet.figures for f in decision.figures)
    if decision.kind != USE:
        assert decision.do.endswith((".", "?"))
    if decision.kind == ASK:
        assert all(c.when and c.then for c in decision.candidates)
        assert sheet.questions
    if decision.kind == USE:
        assert not any(c.asks or c.stops for c in sheet.checks)
    if decision.kind == STOP:
        assert any(c.stops for c in sheet.checks)
    for question in sheet.questions:
        assert question.kind in KINDS
        assert question.key in keys
        assert set(question.checks) <= names
        assert question.text.endswith((".", "?"))
    assert len(set(sheet.questions)) == len(sheet.questions)
