"""The first page: ready or not, what stops, and the questions grouped by what somebody has to do."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import STOP, USE
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, KINDS, MEASURE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item

HEADS = {ASK_MAKER: "Ask the maker", MEASURE: "Measure on the car", FILL_IN: "Fill in the job file"}
# About so many questions stand on one page.
_FIRST_PAGE = 30
# With more than so many the rows stand closer.
_ROOMY = 12


class Place:
    """Where an item stands: its number on card and desk, and the page of its card."""

    def __init__(self, number: int, page: int | None) -> None:
        self.number = number
        self.page = page


def first_page(items: Sequence[Item], status: str) -> SimpleNamespace:
    """Counts, stops and questions of all items."""
    kinds = [i.sheet.decision.kind for i in items]
    stops = kinds.count(STOP)
    ready = kinds.count(USE)
    groups = [SimpleNamespace(head=HEADS[kind], rows=rows) for kind in KINDS if (rows := _rows(items, kind))]
    return SimpleNamespace(
        is_ready=stops == 0 and ready == len(items),
        stops=stops,
        asks=len(items) - stops - ready,
        ready=ready,
        stopped=[_stopped(i, n) for n, i in enumerate(items, 1) if i.sheet.decision.kind == STOP],
        groups=groups,
        is_compact=sum(len(g.rows) for g in groups) > _ROOMY,
        is_long=sum(len(g.rows) for g in groups) > _FIRST_PAGE,
        contradiction=_contradiction(status, stops),
    )


def _contradiction(status: str, stops: int) -> str:
    if not stops or not status.startswith("for build"):
        return ""
    what = "one item stops" if stops == 1 else f"{stops} items stop"
    return f"The job file says \u201cfor build\u201d, but {what}."


def _stopped(item: Item, number: int) -> SimpleNamespace:
    decision = item.sheet.decision
    why = next((c.reason for c in item.sheet.checks if c.name in decision.because), "")
    why, do = pretty(_sentence(why)), pretty(_sentence(decision.do))
    if why[:20].casefold() in do.casefold():
        why = ""  # the sentence says it whole
    return SimpleNamespace(name=item.name, number=number, why=why, do=do)


def _sentence(text: str) -> str:
    text = text.strip()
    return text if not text or text[-1] in ".?!" else f"{text}."


def _rows(items: Sequence[Item], kind: str) -> list[SimpleNamespace]:
    """One row a question, with every item that it settles; an item that asks without a question of its own says
    what to do.
    """
    rows: dict[str, list[tuple[Item, int]]] = {}
    for number, item in enumerate(items, 1):
        questions = [q for q in item.sheet.questions if q.kind == kind]
        for question in questions:
            rows.setdefault(question.text, []).append((item, number))
        decision = item.sheet.decision
        if kind == FILL_IN and not item.sheet.questions and decision.kind not in (USE, STOP):
            rows.setdefault(decision.do, []).append((item, number))
    merged: dict[tuple[int, ...], list[str]] = {}
    for text, found in rows.items():
        merged.setdefault(tuple(n for _, n in found), []).append(_sentence(text))
    names = {n: i.name for n, i in enumerate(items, 1)}
    return [
        SimpleNamespace(text=pretty(" ".join(texts)), items=[SimpleNamespace(name=names[n], number=n) for n in numbers])
        for numbers, texts in merged.items()
    ]
