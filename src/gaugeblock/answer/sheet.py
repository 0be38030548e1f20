"""Sheet: one answer, as the command line, the packet and Python all get it."""

from __future__ import annotations

from functools import wraps

from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.answer.decision import decided
from gaugeblock.answer.printing import printed
from gaugeblock.errors import Ambiguous, GaugeblockError, visible
from gaugeblock.figure import Figure, derived_number
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping
    from typing import Any, ParamSpec

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.drawing import Drawing
    from gaugeblock.answer.question import Question
    from gaugeblock.answer.table import Table
    from gaugeblock.tables.load import Refdata

    P = ParamSpec("P")


class Sheet(Value):
    """One answer: figures (the governing one first), checks, cautions, drawings, what it comes to, what is to be asked.

    What the decision shows stands among the figures, last where the answer did not list it. ``grid`` is a table of what
    was worked out side by side: its head, then its rows; empty for most answers.
    """

    __slots__ = ("asked", "cautions", "checks", "data", "decision", "drawings", "figures", "grid", "questions", "title")

    title: str
    asked: Mapping[str, str | None]
    data: Refdata
    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]
    drawings: tuple[Drawing, ...]
    decision: Decision
    questions: tuple[Question, ...]
    grid: tuple[tuple[str, ...], ...]

    def __init__(
        self,
        title: str,
        asked: Mapping[str, str | None],
        data: Refdata,
        figures: Iterable[Figure],
        checks: Iterable[Check],
        cautions: Iterable[Caution],
        drawings: Iterable[Drawing] | None = None,
        decision: Decision | None = None,
        questions: Iterable[Question] = (),
        grid: Iterable[tuple[str, ...]] = (),
    ) -> None:
        listed, judged = tuple(figures), tuple(checks)
        decision = decision or decided("", listed[0] if listed else None, judged)
        known = {figure.id for figure in listed}
        put(self, "title", title)
        put(self, "asked", asked if type(asked) is Keys else Keys(asked))
        put(self, "data", data)
        put(self, "figures", (*listed, *(f for f in decision.figures if f.id not in known)))
        put(self, "checks", judged)
        put(self, "cautions", tuple(cautions))
        put(self, "drawings", tuple(drawings or ()))
        put(self, "decision", decision)
        put(self, "questions", tuple(questions))
        put(self, "grid", tuple(grid))

    def __repr__(self) -> str:
        numbers = " or ".join([printed(figure, self.data) for figure in self.decision.figures])
        does = f"{self.decision.kind} {self.decision.verb} {numbers}".strip()
        return f"<Sheet {visible(self.title, 100)!r}: {visible(does, 100)}; {len(self.figures)} figures>"

    @property
    def governing(self) -> Figure | None:
        """The first figure; None on a sheet that has none."""
        return self.figures[0] if self.figures else None

    def figure(self, quantity: str) -> Figure:
        """The first figure of a quantity; KeyError when the sheet has none."""
        for figure in self.figures:
            if figure.quantity == quantity:
                return figure
        raise KeyError(quantity)

    @property
    def worst(self) -> str:
        """``not ok`` if any check is, else ``cannot tell`` if any is, else ``ok``."""
        results = {c.result for c in self.checks}
        return NOT_OK if NOT_OK in results else CANNOT_TELL if CANNOT_TELL in results else OK

    def text(self, unit: str | None = None, columns: int | None = None, whole: bool = False) -> str:
        """For a person, as the command line prints it; ``unit`` prints every figure of that dimension in it, and
        nothing is cut from the ``whole``.
        """
        from gaugeblock.answer.short import short

        return short(self, unit, columns, whole=whole)

    def as_dict(self, made: dict[int, dict[str, object]] | None = None) -> dict[str, object]:
        """The sheet in the JSON of the contract; ``made`` as in ``figure_dict``, where sheets share figures."""
        made = {} if made is None else made
        return {
            "asked": self.asked,
            "data_release": self.data.release,
            "decision": self.decision.as_dict(),
            "figures": [figure_dict(f, self.data, made) for f in self.figures],
            "checks": [c.as_dict() for c in self.checks],
            "questions": [q.as_dict() for q in self.questions],
            "cautions": [c.as_dict() for c in self.cautions],
            **({"grid": [list(row) for row in self.grid]} if self.grid else {}),
        }


def figure_dict(figure: Figure, data: Refdata, made: dict[int, dict[str, object]] | None = None) -> dict[str, object]:
    """A Figure in the JSON of the contract: every key present, null when not given, derived numbers at 12 digits.

    ``made`` holds the figures of sheets that are kept by identity: an input of ten answers is worked out once.
    """
    made = {} if made is None else made
    got = made.get(id(figure))
    if got is None:
        got = made[id(figure)] = _figure_dict(figure, data, made)
    return got


def _figure_dict(figure: Figure, data: Refdata, made: dict[int, dict[str, object]]) -> dict[str, object]:

    def number(value: float | None) -> float | int | None:
        if value is None:
            return None
        if figure.basis == "derived":
            value = derived_number(value)
        return int(value) if value.is_integer() and abs(value) < 1e15 else value

    return {
        "id": figure.id,
        "quantity": figure.quantity,
        "value": number(figure.value),
        "low": number(figure.low),
        "high": number(figure.high),
        "unit": figure.unit,
        "side": figure.side,
        "basis": figure.basis,
        "checked": figure.checked or None,
        "source": figure.source or None,
        "locator": figure.locator or None,
        "conditions": figure.conditions or None,
        "note": figure.note or None,
        "since": figure.since or None,
        "key": figure.key,
        "standing": figure.standing or None,
        "chosen_by": figure.chosen_by or None,
        "evidence": figure.evidence.as_dict(),
        "rule": figure.rule.as_dict() if figure.rule else None,
        "inputs": [figure_dict(f, data, made) for f in figure.inputs],
        "others": [figure_dict(f, data, made) for f in figure.others],
        "printed": printed(figure, data),
    }


# What is so where nobody says otherwise is no part of a title.
_USUAL = ("vehicle", "reused")


def opens(topic_of: Callable[[], Topic], first: str = "") -> Callable[[Callable[P, Sheet]], Callable[P, Sheet]]:
    """Of an answer: what it refuses because a key was left open has the Table that its topic makes of that.

    ``topic_of`` loads the topic, ``first`` is the option that stands first and without its name.
    """

    def of(answer: Callable[P, Sheet]) -> Callable[P, Sheet]:
        @wraps(answer)
        def asked(*args: P.args, **options: P.kwargs) -> Sheet:
            try:
                return answer(*args, **options)
            except Ambiguous as error:
                given: dict[str, Any] = {**({first: args[0]} if args and first else {}), **options}
                raise error.tabled(lambda: _table(topic_of(), given)) from None

        return asked

    return of


def _table(topic: Topic, given: Mapping[str, Any]) -> Table | None:
    """What the values of the open key come to; None where the topic does not know them."""
    from gaugeblock.answer.opening import answered
    from gaugeblock.answer.table import Table
    from gaugeblock.tables.load import refdata

    data = given.get("data") or refdata()
    values = {k: v for k, v in given.items() if k != "data" and v is not None}
    said = {k: v for k, v in values.items() if isinstance(v, str) and v not in _USUAL}
    try:
        got = answered(topic, values, said, data)
    except GaugeblockError:
        return None
    return got if isinstance(got, Table) else None
