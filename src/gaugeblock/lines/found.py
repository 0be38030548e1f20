"""Found: what one part of an answer brings to the sheet."""

from __future__ import annotations

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Candidate
    from gaugeblock.answer.question import Question
    from gaugeblock.figure import Figure


class Found(Value):
    """The figures, checks, cautions and questions of one part of an answer."""

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

    def __add__(self, other: Found) -> Found:
        return Found(*(getattr(self, part) + getattr(other, part) for part in _PARTS))


_PARTS = ("figures", "checks", "cautions", "questions")


def asking(check: Check, kind: str, text: str, key: str, figures: Iterable[Figure] = ()) -> Found:
    """A check with the question that settles it; the question only where the check asks."""
    from gaugeblock.answer.question import Question

    return Found(figures, (check,), (), (Question(kind, text, key, (check.name,)),) if check.asks else ())


def of_stop(check: Check) -> list[Candidate]:
    """What a check that stops requires, and what it refuses."""
    from gaugeblock.answer.decision import Candidate

    ends = ((check.required, "required"), (check.actual, "refused"))
    return [Candidate(b.figure, "", said) for b, said in ends if b is not None and b.figure is not None]


def one_of_each(questions: Iterable[Question]) -> tuple[Question, ...]:
    """The same question once, with all checks that it settles."""
    out: dict[str, Question] = {}
    for question in questions:
        had = out.get(question.key)
        names = question.checks if had is None else (*had.checks, *question.checks)
        out[question.key] = (had or question).replace(checks=tuple(dict.fromkeys(names)))
    return tuple(out.values())
