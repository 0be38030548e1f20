"""A Sheet as the page shows it: its card, as the packet's cards are made, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.item import Card, Item
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.text import MARKS, label
from gaugeblock.packet.cards import card

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.packet.paper import Paper

WORDS = {ASK: "ASK FIRST", STOP: "STOP", NONE: "NO FIGURE", USE: ""}
_STATES = ("condition", "state", "treatment")


def sheet_view(sheet: Sheet, paper: Paper) -> dict[str, Any]:
    """The card of an answer and what stands behind it."""
    condition = next((str(sheet.asked[k]) for k in _STATES if sheet.asked.get(k)), "")
    item = Item("", sheet.title, (), sheet, Card(sheet.title, condition.upper()))
    paper = paper.of(item)
    shown = card(1, item, paper)
    return {
        "is": "sheet",
        "word": WORDS[sheet.decision.kind],
        "card": {**vars(shown), "what": "", "boxes": []},
        "why": why(sheet, paper),
    }


def cell(sheet: Sheet, paper: Paper) -> dict[str, Any]:
    """What one row of a table comes to: its number or its word."""
    decision, figures = sheet.decision, sheet.decision.figures
    item = Item("", sheet.title, (), sheet, None)
    paper = paper.of(item)
    return {
        "kind": decision.kind,
        "word": WORDS[decision.kind],
        "number": paper.numbers(decision) if decision.kind != STOP else "",
        "other": paper.other(figures[0]) if figures and decision.kind == USE else "",
        "trust": figures[0].trust if figures else "",
    }


def why(sheet: Sheet, paper: Paper) -> dict[str, Any]:
    """Every figure, check and caution behind an answer."""
    return {
        "figures": [_figure(f, paper) for f in sheet.figures],
        "checks": [
            {"word": MARKS[c.result].replace("CANNOT TELL", "ASK"), "name": pretty(c.name), "reason": pretty(c.reason)}
            for c in sheet.checks
        ],
        "cautions": [
            {"word": {"injury": "WARNING", "damage": "CAUTION"}.get(c.severity, "NOTE"), "text": pretty(c.text)}
            for c in sheet.cautions
        ],
    }


def _figure(figure: Figure, paper: Paper) -> dict[str, Any]:
    others = sorted({f"{paper.number(o)} {o.source or o.basis}" for o in figure.others if not o.standing})
    ids = [f.source for f in figure.walk() if f.source]
    if figure.rule is not None and figure.rule.source:
        ids.append(figure.rule.source)
    return {
        "label": label(figure),
        "number": paper.whole(figure),
        "other": paper.other(figure),
        "trust": figure.trust,
        "source": paper.source(figure),
        "sources": list(dict.fromkeys(ids)),
        "conditions": pretty(figure.conditions),
        "formula": pretty(figure.rule.expression) if figure.rule is not None else "",
        "inputs": [f"{label(f)} {paper.whole(f)}" for f in figure.inputs],
        "others": [pretty(o) for o in others],
    }
