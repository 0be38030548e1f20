"""The cards at the car: one a task, all of one grid."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import ASK, NONE, STOP, USE, fact
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.answer.short import unmet
from gaugeblock.packet.cautions import warned
from gaugeblock.packet.first import also
from gaugeblock.packet.measure import height, width

if TYPE_CHECKING:
    from gaugeblock.answer.decision import Candidate
    from gaugeblock.answer.item import Card, Item
    from gaugeblock.figure import Figure
    from gaugeblock.packet.paper import Paper

# Millimetres of a sheet that cards may fill, on Letter (A4 has more); a card is this high at the least, four a sheet.
_SHEET = 237.0
_LONG = 90  # characters of a sentence that stands below ASK FIRST or STOP, not beside it
_LEAST = 54.0
_GAP = 2.4
# The width of the middle column, with the boxes at its right and below it.
_ROOM, _WIDE_ROOM = 109.0, 159.0
# Said once, at the head of the cards.
_MAKER_LINE = "The maker's figure, if you have it, settles it."


def card(number: int, item: Item, paper: Paper) -> SimpleNamespace:
    """One card as the template prints it."""
    made = item.card
    if made is None:
        raise ValueError(item.name)
    decision, paper = item.sheet.decision, paper.of(item)
    figures = [_candidate(c, paper) for c in decision.candidates]
    steps = [pretty(s) for s in made.steps] if decision.kind == USE else []
    if decision.kind == ASK and decision.verb == _fact(decision.figures):
        figures[0].when = f"{decision.verb.lower()}{f': {figures[0].when}' if figures[0].when else ''}"
    return SimpleNamespace(
        number=number,
        name=item.name,
        anchor=f"card-{number}",
        count=made.count,
        counted=made.counted,
        kind=decision.kind,
        verb=decision.verb or "SET",
        do="" if steps and decision.kind == USE else _do(item),
        figures=figures,
        condition=made.condition,
        what=pretty(made.what),
        order=pretty(made.order),
        steps=steps,
        notes=[pretty(_capital(n.rstrip("."))) for n in (*_not_ok(item), *made.notes)],
        again=pretty(made.again),
        trust=_trust(item, paper),
        cautions=warned(item),
        boxes=_boxes(made, decision.kind),
        table=[[pretty(c) for c in row] for row in made.table] if decision.kind in (USE, ASK) else [],
    )


def _not_ok(item: Item) -> list[str]:
    """What was judged not ok and yet leaves the number standing."""
    return [f"not ok: {check.name}: {check.reason}" for check in unmet(item.sheet)]


def _capital(text: str) -> str:
    """With a capital at its beginning, as a sentence has it."""
    return capital(text)


def _do(item: Item) -> str:
    """What to do, in words; all that stops it; and whether the first page has more to settle."""
    said = pretty(item.sheet.decision.do.replace(_MAKER_LINE, "").strip())
    return " ".join(text for text in (said, also(item), _more(item, said)) if text)


def _more(item: Item, said: str) -> str:
    """How many questions of an open item its card does not say."""
    if item.sheet.decision.kind not in (ASK, NONE):
        return ""
    texts = dict.fromkeys(pretty(q.text) for q in item.sheet.questions)
    # what the card says is one of them, in its own words or in others
    left = sum(text not in said for text in texts) - (not any(text in said for text in texts))
    return "" if left <= 0 else f"The first page asks {'one thing' if left == 1 else f'{left} things'} more."


def _fact(figures: tuple[Figure, ...]) -> str:
    """What a number is called that is only read."""
    return fact(figures[0]) if figures else ""


def _candidate(candidate: Candidate, paper: Paper) -> SimpleNamespace:
    shown = paper.split(candidate.figure)
    shown.when = pretty(candidate.when)
    shown.then = pretty(candidate.then)
    shown.plus = pretty(candidate.plus)
    return shown


def _trust(item: Item, paper: Paper) -> SimpleNamespace:
    """The trust word and the source of what is shown, once where the candidates agree."""
    figures = item.sheet.decision.figures
    words = list(dict.fromkeys(f.trust for f in figures))
    told = dict.fromkeys(paper.root(f) for f in figures)
    sources = [one for one in told if not any(one != other and other.endswith(one) for other in told)]
    return SimpleNamespace(word=" or ".join(words), source="; ".join(sources))


def _boxes(made: Card, kind: str) -> list[SimpleNamespace]:
    """The boxes to write in; where the number is open, the chosen one first."""
    boxes = [
        SimpleNamespace(label=b.label, unit=pretty(f"1 {b.unit}")[2:] if b.unit else "", half=b.half)
        for b in made.boxes
    ]
    if kind in (ASK, NONE, STOP) and not any(b.label == "chosen" for b in boxes):
        before = 0 if boxes and boxes[0].half else min(1, len(boxes))
        boxes.insert(before, SimpleNamespace(label="settled: answer, by", unit="", half=False))
    return boxes


def pages(cards: list[SimpleNamespace]) -> list[list[SimpleNamespace]]:
    """The cards in sheets: as many on each as its height holds, four where none is long."""
    out: list[list[SimpleNamespace]] = []
    left = 0.0
    for made in cards:
        height = _height(made) + _GAP
        if not out or height > left:
            out.append([])
            left = _SHEET
        out[-1].append(made)
        left -= height
    return out


def _height(made: SimpleNamespace) -> float:
    """How high a card is printed, in mm: the sizes and leadings are those of packet.css."""
    room = _WIDE_ROOM if made.table else _ROOM
    total = 5.2 + height(made.name, 15, 1.15, room, bold=True) + height(made.what, 13.6, 1.2, room)
    total += sum(height(f"WARNING {c.text}", 9.5, 1.18, room - 4) + 1.6 for c in made.cautions)
    total += {USE: _used, STOP: _stopped, ASK: _asked}.get(made.kind, _none)(made, room)
    notes = "".join(f"{n}. " for n in made.notes)
    again = f" Tighten again {made.again}." if made.again else ""
    total += 0.6 + height(f"{made.trust.word}: {made.trust.source}. {notes}{again}", 9, 1.2, room)
    if made.table:
        return max(total + 5.4 + _table_height(made.table, room) + 13, _LEAST)
    boxes = 1.4 + 9.2 * _rows(made.boxes)
    return max(total, boxes, _LEAST)


def _table_height(table: list[list[str]], room: float) -> float:
    """How high the rows of a table are printed: as wide as they need, or the widest column gives way."""
    columns = [max(width(row[n], 12, bold=True) for row in table[1:]) + 1.6 for n in range(len(table[0]))]
    columns = [max(w, width(head, 8.5) + 1.2) for w, head in zip(columns, table[0], strict=True)]
    widest = columns.index(max(columns))
    columns[widest] = min(columns[widest], room - sum(columns) + columns[widest])
    return sum(
        max(height(cell, 12, 1.28, w, bold=True) for cell, w in zip(row, columns, strict=True)) + 1.0
        for row in table[1:]
    )


def _rows(boxes: list[SimpleNamespace]) -> int:
    """Rows of boxes: two halves that stand together share one."""
    rows, open_half = 0, False
    for box in boxes:
        rows += not (box.half and open_half)
        open_half = box.half and not open_half
    return rows


def _used(made: SimpleNamespace, room: float) -> float:
    shown = made.figures[0]
    line = width(shown.value, 42, bold=True) + width(shown.unit, 21, bold=True) + width(shown.other, 12) + 11
    line += min(width(made.verb, 13, bold=True), 20.0) + (
        width(made.condition, 15, bold=True) + 8 if made.condition else 0
    )
    steps = width(made.order, 13.6) + sum(width(s, 13.6) + 12 for s in made.steps)
    rows = -(-steps // room)
    return 15.2 + (7.5 if line > room else 0) + rows * 6.4 + height(made.do, 12.5, 1.22, room)


def _stopped(made: SimpleNamespace, room: float) -> float:
    said = 6.2 if made.figures else 0.0
    if width(made.do, 12, bold=True) <= room - 40:
        return 12.8 + said
    return 14.5 + height(made.do, 12, 1.18, room, bold=True) + said


def _question(made: SimpleNamespace, room: float) -> float:
    """The line of ASK FIRST or NO FIGURE with what is to be done, beside it or below."""
    beside = room - 40 - (width(made.condition, 13, bold=True) + 8 if made.condition else 0)
    if len(made.do) > _LONG or beside < 60:
        return 9 + height(made.do, 11, 1.18, room)
    return max(8.4, height(made.do, 11, 1.18, beside))


def _asked(made: SimpleNamespace, room: float) -> float:
    across = (room - 3) / 2 if len(made.figures) == 2 else room / max(len(made.figures), 1) - 3
    told = max((height(f"{c.when}: {c.then}", 10.5, 1.18, across) for c in made.figures), default=0)
    return 1 + _question(made, room) + (14.0 if len(made.figures) > 2 else 11.5) + told


def _none(made: SimpleNamespace, room: float) -> float:
    return 1 + _question(made, room) + 17.4
