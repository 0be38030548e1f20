"""What the plan of a tube comes to: cut this length, ask first, or stop."""

from __future__ import annotations

from gaugeblock.answer.decision import Candidate, ask, none, stop, use
from gaugeblock.answer.pretty import capital

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.question import Question
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.plan.found import Found
    from gaugeblock.tubes.plan.given import Given

VERB = "CUT"


def decision_of(given: Given, found: Found, doubts: Sequence[Doubt], cut: Figure | None) -> Decision:
    """The cut length where nothing is open that could change or stop it.

    A length that rests on a doubtful reading is no candidate: what was meant is asked first.
    """
    checks, questions = found.checks, found.questions
    doubtful = [d for d in doubts if d.is_of_the_shape]
    if doubtful:
        return none(VERB, doubtful[0].text)
    failed = [c for c in checks if c.stops]
    if failed:
        refused = [] if cut is None else [Candidate(cut)]
        return stop(VERB, refused, [c.name for c in failed], _sentence(failed[0]))
    open_ = [c for c in checks if c.asks]
    if cut is None:
        what = _settles(open_[0], questions) if open_ else "Give the shape of the tube."
        return none(VERB, what)
    if open_:
        names = [c.name for c in open_]
        when = f"this turns out as planned: {' and '.join(dict.fromkeys(c.subject for c in open_[:2]))}"
        then = "cut this length; else the shape or its length changes"
        return ask(VERB, [Candidate(cut, when, then)], names, _settles(open_[0], questions))
    return use(VERB, cut, f"Measure from {given.datum.upper()}.", [c.name for c in checks if c.result == "ok"])


def _settles(check: Check, questions: Sequence[Question]) -> str:
    """What settles an open check: its question, else what it says."""
    return next((q.text for q in questions if check.name in q.checks), _sentence(check))


def _sentence(check: Check) -> str:
    text = f"{check.name}: {check.reason}"
    return capital(text) + ("" if text.endswith((".", "?")) else ".")
