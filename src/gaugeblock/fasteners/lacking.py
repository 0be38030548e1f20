"""Lacking: what a bolt's torque needs and nobody said."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.fasteners import said
from gaugeblock.fasteners.decide import decide
from gaugeblock.fasteners.draft import Draft

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.fasteners.bolt import Bolt
    from gaugeblock.tables.load import Refdata


def missing(bolt: Bolt, title: str, asked: dict[str, str | None], data: Refdata, draft: Draft | None = None) -> Sheet:
    """No torque can be found: what is missing is asked."""
    draft = draft or Draft(data)
    draft.caution(*said.read_as(bolt))
    texts = {
        "thread": "Give the thread: size and pitch.",
        "grade": "Read the marks on the bolt's head, and give its grade.",
        "condition": "Say how the threads are tightened: dry, oiled, with a paste.",
    }
    is_there = {"grade": bolt.own.has_strength, "condition": bolt.own.nut_factor is not None}
    missing = [n for n in texts if getattr(bolt, n) is None and not is_there.get(n, False)]
    name = "tightening torque"
    draft.check(Check(name, CANNOT_TELL, f"{', '.join(missing)} not given", bears=ASK))
    for key in missing:
        draft.ask(Question(FILL_IN, texts[key], key, (name,)))
    return draft.sheet(title, asked, decide((), draft))
