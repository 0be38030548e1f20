"""Draft: figures, checks, cautions and questions of one answer as they are gathered. A Sheet is made of it once."""

from __future__ import annotations

from gaugeblock.answer.sheet import Sheet

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.question import Question
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


# The names of the checks that more than one module knows.
PROOF = "clamp at low friction within proof"
DRY = "dry torque not used here"
LENGTH = "length of engagement"
HOLDS = "thread holds the clamp"
REUSE = "locknut may be used again"
CONDITION = "condition of the threads"
CAN_SET = "wrench can set it"
STRETCH = "stretch of the bolt"
CLOSED = "joint stays closed under the load"
LOADED = "bolt under the load within proof"
LEAST = "least torque of a table"


class Draft:
    """What an answer has gathered so far, each figure once, in order."""

    __slots__ = ("cautions", "checks", "data", "figures", "questions")

    def __init__(self, data: Refdata) -> None:
        self.data = data
        self.figures: dict[str, Figure] = {}
        self.checks: list[Check] = []
        self.cautions: list[Caution] = []
        self.questions: list[Question] = []

    def figure(self, *figures: Figure | None) -> None:
        """Add figures, those that are there and are not in it yet."""
        for figure in figures:
            if figure is not None:
                self.figures.setdefault(figure.id, figure)

    def check(self, check: Check) -> None:
        """Add a check."""
        self.checks.append(check)

    def caution(self, *cautions: Caution | None) -> None:
        """Add cautions, those that are there."""
        self.cautions += [c for c in cautions if c is not None]

    def ask(self, question: Question) -> None:
        """Add a question; one that is there already takes the checks of the other."""
        for at, old in enumerate(self.questions):
            if (old.kind, old.text, old.key) == (question.kind, question.text, question.key):
                self.questions[at] = old.replace(checks=tuple(dict.fromkeys((*old.checks, *question.checks))))
                return
        self.questions.append(question)

    def sheet(
        self, title: str, asked: dict[str, str | None], decision: Decision, first: tuple[Figure, ...] = ()
    ) -> Sheet:
        """The Sheet of all that was gathered, ``first`` above the other figures."""
        figures = {f.id: f for f in (*first, *self.figures.values())}
        return Sheet(
            title,
            asked,
            self.data,
            list(figures.values()),
            self.checks,
            self.cautions,
            decision=decision,
            questions=self.questions,
        )
