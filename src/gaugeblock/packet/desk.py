"""At the desk: one line a figure, what was checked, what can go wrong, and the drawings of each item."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from markupsafe import Markup

from gaugeblock.answer.check import INFORM, OK
from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.text import label

if TYPE_CHECKING:
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.item import Item
    from gaugeblock.figure import Figure
    from gaugeblock.packet.first import Place
    from gaugeblock.packet.paper import Paper

# A condition that is longer stands in packet.json; the card says what matters of it.
_SHORT = 24
# What is worked to stands first on a sheet; what lies far behind it stands in packet.json.
_MOST_FIGURES = 5
_OUTCOME = {STOP: "STOP", ASK: "ASK FIRST", NONE: "NO FIGURE"}


def desk(item: Item, place: Place, paper: Paper, cautions: list[SimpleNamespace]) -> SimpleNamespace:
    """The desk sheet of one item, with those of its ``cautions`` that its card does not bear."""
    sheet = item.sheet
    decision = sheet.decision
    says = item.card.says if item.card is not None else ()
    listed = [f for f in sheet.figures if f.quantity not in says]
    listed = _once(listed, paper)
    figures = listed[:_MOST_FIGURES]
    told = [c for c in sheet.checks if c.result != OK and not _is_on_card(c, item)]
    told = [c for c in told if c.bears != INFORM]  # what informs changes nothing that is set today: packet.json has it
    return SimpleNamespace(
        name=item.name,
        place=place,
        anchor=f"desk-{place.number}",
        what=pretty(item.card.what) if item.card is not None else "",
        outcome=_OUTCOME.get(decision.kind, ""),
        number=" or ".join(paper.number(f) for f in decision.figures) if decision.kind != STOP else "",
        condition=item.card.condition if item.card is not None else "",
        facts=[SimpleNamespace(label=pretty(r.label), text=pretty(r.text)) for r in item.facts if r.text],
        figures=[_line(f, paper, is_first=n == 0) for n, f in enumerate(figures)],
        more=len(listed) - len(figures),
        checks=[_check(c) for c in told],
        kept=sum(c.result == OK for c in sheet.checks),
        cautions=cautions,
        drawings=[SimpleNamespace(title=d.title, svg=Markup(d.svg), page=d.page) for d in sheet.drawings],
    )


def _once(figures: list[Figure], paper: Paper) -> list[Figure]:
    """Figures that print alike, quantity and number, stand once."""
    return list({(f.quantity, paper.number(f)): f for f in reversed(figures)}.values())[::-1]


def _line(figure: Figure, paper: Paper, *, is_first: bool) -> SimpleNamespace:
    name = label(figure) + (
        f": {figure.key['bend']}" if figure.quantity == "surface_gap" and "bend" in figure.key else ""
    )
    whole = paper.whole(figure)
    number, _, window = whole.partition(" (")
    others = sorted({paper.number(o) for o in figure.others if not o.standing and o.chosen_by != "service"} - {number})
    return SimpleNamespace(
        label=pretty(name),
        number=number,
        window=window.rstrip(")"),
        other=paper.other(figure),
        weakest=paper.weakest(figure),
        source=paper.source(figure),
        conditions=pretty(figure.conditions) if len(figure.conditions) <= _SHORT else "",
        also=", ".join(others[:3]) if is_first else "",
    )


def _is_on_card(check: Check, item: Item) -> bool:
    """Whether the card says it already, as what is to be done."""
    return item.card is not None and check.reason == item.sheet.decision.do


def _check(check: Check) -> SimpleNamespace:
    word = {"not ok": "NOT OK", "cannot tell": "ASK"}[check.result]
    return SimpleNamespace(word=word, name=pretty(check.name), reason=pretty(check.reason))
