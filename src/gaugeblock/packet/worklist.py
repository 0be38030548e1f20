"""The second page: every figure of the build, one line a task, with columns to tick."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import ASK, NEW_BOLTS_FIRST, NONE, STOP, USE
from gaugeblock.answer.pretty import pretty
from gaugeblock.packet.measure import height

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item
    from gaugeblock.packet.first import Place
    from gaugeblock.packet.paper import Paper
# Millimetres of a Letter sheet that the lines may fill; the sizes are those of packet.css.
_SHEET = 229.0


def worklist(items: Sequence[Item], places: Sequence[Place], paper: Paper) -> list[SimpleNamespace]:
    """One line a task that has a card."""
    return [_line(i, p, paper) for i, p in zip(items, places, strict=True) if i.card is not None]


def sheets(lines: Sequence[SimpleNamespace]) -> list[list[SimpleNamespace]]:
    """The lines in sheets, as many on each as its height holds."""
    out: list[list[SimpleNamespace]] = [[]]
    left = _SHEET
    for line in lines:
        tall = _height(line)
        if tall > left:
            out.append([])
            left = _SHEET
        out[-1].append(line)
        left -= tall
    return out


def _height(line: SimpleNamespace) -> float:
    figure = f"{line.says}mm {line.figure}" if line.says else line.figure
    cells = (
        height(line.name, 9.5, 1.12, 37.5),
        height(figure, 10.5, 1.12, 34, bold=True),
        height(line.condition, 8.5, 1.12, 26),
        height(line.trust, 8.5, 1.12, 21),
        height(line.again, 8.5, 1.12, 18),
    )
    return max(7.6, max(cells) + 0.8)


def _line(item: Item, place: Place, paper: Paper) -> SimpleNamespace:
    decision, card, paper = item.sheet.decision, item.card, paper.of(item)
    assert card is not None
    numbers = paper.numbers(decision)
    steps = sum(step != NEW_BOLTS_FIRST for step in card.steps)
    if steps > 1 and decision.kind == USE:
        numbers += f" in {steps} steps"  # the last of them is not all that is done
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
