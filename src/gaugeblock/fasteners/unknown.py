"""A bolt that the tables have no torque for: its maker is asked, and why is said."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.fasteners.decide import decide
from gaugeblock.fasteners.draft import Draft
from gaugeblock.fasteners.read import METAL

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.errors import LookupMiss
    from gaugeblock.tables.load import Refdata


def is_without_friction(miss: LookupMiss) -> bool:
    """Whether a condition is known, and nobody's nut factor of it was found."""
    return miss.why.startswith("no published nut factor")


def unknown(title: str, miss: LookupMiss, asked: Mapping[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of a bolt whose torque nobody has, by what a look-up missed."""
    is_grade = miss.where == "grade"
    name = "head marking" if is_grade else "tightening torque"
    reason = f"{miss.asked}: {miss.why}"
    if is_grade:
        text = f"Read the marks on the bolt's head again: {reason}. For this thread there are {miss.choices}."
        question = Question(FILL_IN, text, "grade", (name,))
    else:
        text = f"Ask the bolt's maker for its torque: {reason}."
        if miss.where == METAL:
            text = f"Ask the part's maker for its torque into {miss.asked}. The tables have {miss.choices}."
        elif is_without_friction(miss) and miss.asked == "thread-locking liquid":
            text += " The liquid's maker says whether the dry or the oiled torque is used with it: then ask with that."
        question = Question(ASK_MAKER, text, "maker.torque", (name,))
    draft = Draft(data)
    draft.check(Check(name, CANNOT_TELL, reason, bears=ASK))
    draft.ask(question)
    return draft.sheet(title, dict(asked), decide((), draft))
