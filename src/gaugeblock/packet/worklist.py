"""The second page: every figure of the build, one line a task, with columns to tick."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.answer.pretty import pretty

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item
    from gaugeblock.packet.first import Place
    from gaugeblock.packet.paper import Paper


LINES_A_SHEET = 29


def worklist(items: Sequence[Item], places: Sequence[Place], paper: Paper) -> list[SimpleNamespace]:
    """One line a task that has a card."""
    return [_line(i, p, paper) for i, p in zip(items, places, strict=True) if i.card is not None]


def _line(item: Item, place: Place, paper: Paper) -> SimpleNamespace:
    decision, card, paper = item.sheet.decision, item.card, paper.of(item)
    assert card is not None
    numbers = " or ".join(paper.number(f) for f in decision.figures)
    says = {STOP: "STOP", ASK: "ask first", NONE: "no figure"}.get(decision.kind, "")
    return SimpleNamespace(
        place=place,
        name=item.name,
        kind=decision.kind,
        says=says,
        verb=(decision.verb or "set").lower(),
        figure="" if decision.kind == STOP else numbers,
        condition=card.condition,
        trust=" or ".join(dict.fromkeys(paper.weakest(f) for f in decision.figures)),
        again=pretty(card.again),
    )
