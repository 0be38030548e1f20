"""Found: what one stage of a plan says: its figures, its checks, its cautions, and what would settle what is open."""

from __future__ import annotations

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.question import Question
    from gaugeblock.figure import Figure


class Found(Value):
    """Figures, checks, cautions and questions of one stage, in the order they are printed."""

    __slots__ = ("cautions", "checks", "figures", "questions")

    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]
    questions: tuple[Question, ...]

    def __init__(
        self,
        figures: Iterable[Figure] = (),
        checks: Iterable[Check] = (),
        cautions: Iterable[Caution] = (),
        questions: Iterable[Question] = (),
    ) -> None:
        put(self, "figures", tuple(figures))
        put(self, "checks", tuple(checks))
        put(self, "cautions", tuple(cautions))
        put(self, "questions", tuple(questions))


def joined(stages: Iterable[Found]) -> Found:
    """All of several stages, in order."""
    parts = list(stages)
    return Found(
        [f for p in parts for f in p.figures],
        [c for p in parts for c in p.checks],
        [c for p in parts for c in p.cautions],
        [q for p in parts for q in p.questions],
    )
