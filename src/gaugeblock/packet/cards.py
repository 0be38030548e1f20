"""The cards at the car: one a task, all of one grid."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.pretty import pretty

if TYPE_CHECKING:
    from gaugeblock.answer.decision import Candidate
    from gaugeblock.answer.item import Card, Item
    from gaugeblock.packet.paper import Paper

# Millimetres of a sheet that cards may fill, on Letter (A4 has more); a card is this high at the least, four a sheet.
_SHEET = 238.0
_BESIDE = 34  # characters that stand beside ASK FIRST
_LEAST = 54.0
_GAP = 2.4
# Characters that a line of the middle column holds, by size of type, and the height of such a line.
_TITLE, _ON, _SAY, _WARN, _FOOT = (36, 6.1), (42, 5.8), (55, 4.5), (62, 3.95), (68, 3.75)
_LONGEST_WARNING = 150


def card(number: int, item: Item, paper: Paper, cautions: list[SimpleNamespace]) -> SimpleNamespace:
    """One card as the template prints it; of its item's ``cautions`` it bears one warning."""
    made = item.card
    if made is None:
        raise ValueError(item.name)
    decision = item.sheet.decision
    figures = [_candidate(c, paper) for c in decision.candidates]
    return SimpleNamespace(
        number=number,
        name=item.name,
        anchor=f"card-{number}",
        count=made.count,
        counted=made.counted,
        kind=decision.kind,
        verb=decision.verb or "SET",
        do=pretty(decision.do),
        figures=figures,
        condition=made.condition,
        what=pretty(made.what),
        order=pretty(made.order),
        steps=[pretty(s) for s in made.steps] if decision.kind == USE else [],
        notes=[pretty(n) for n in made.notes],
        again=pretty(made.again),
        trust=_trust(item, paper),
        cautions=_warning(cautions),
        boxes=_boxes(made, decision.kind),
        table=[[pretty(c) for c in row] for row in made.table] if decision.kind in (USE, ASK) else [],
    )


def _candidate(candidate: Candidate, paper: Paper) -> SimpleNamespace:
    shown = paper.split(candidate.figure)
    shown.when = pretty(candidate.when)
    shown.then = pretty(candidate.then)
    return shown


def _trust(item: Item, paper: Paper) -> SimpleNamespace:
    """The trust word and the source of what is shown, once where the candidates agree."""
    figures = item.sheet.decision.figures
    words = list(dict.fromkeys(f.trust for f in figures))
    sources = list(dict.fromkeys(paper.root(f) for f in figures))
    return SimpleNamespace(word=" or ".join(words), source="; ".join(sources))


def _warning(cautions: list[SimpleNamespace]) -> list[SimpleNamespace]:
    """The one warning that a card bears: the first that is short."""
    return [c for c in cautions if c.word == "WARNING" and len(c.text) <= _LONGEST_WARNING][:1]


def _boxes(made: Card, kind: str) -> list[SimpleNamespace]:
    """The boxes to write in; where the number is open, the chosen one first."""
    boxes = [
        SimpleNamespace(label=b.label, unit=pretty(f"1 {b.unit}")[2:] if b.unit else "", half=b.half)
        for b in made.boxes
    ]
    if kind in (ASK, NONE, STOP) and not any(b.label == "chosen" for b in boxes):
        boxes.insert(min(1, len(boxes)), SimpleNamespace(label="settled: answer, by", unit="", half=False))
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


def _lines(text: str, kind: tuple[int, float]) -> float:
    """The height of a text that wraps, in mm, with a little to spare."""
    per_line, height = kind
    return -(-len(text) // per_line) * height if text else 0.0


def _height(made: SimpleNamespace) -> float:
    """How high a card is printed, in mm; rather too much than too little."""
    wide = 1.4 if made.table else 1.0  # a card with a table has the whole width

    def stretch(kind: tuple[int, float]) -> tuple[int, float]:
        return int(kind[0] * wide), kind[1]

    total: float = 5 + _lines(made.name, stretch(_TITLE)) + _lines(made.what, stretch(_ON))
    total += sum(_lines(f"WARNING {c.text}", stretch(_WARN)) + 1.6 for c in made.cautions if c.word == "WARNING")
    if made.kind == USE:
        shown = made.figures[0]
        across = 8.5 * len(shown.value) + 4.2 * len(shown.unit) + 3.0 * (len(made.verb) + len(made.condition)) + 24
        total += (15 if across < 104 else 22) + _lines(made.do, stretch(_SAY))
        total += _lines(f"{made.order}{''.join(f'[  ] {s}   ' for s in made.steps)}", stretch(_ON))
    elif made.kind == STOP:
        total += 14 + 1.2 * _lines(made.do, stretch(_SAY)) + (6.5 if made.figures else 0)
    elif made.kind == ASK:
        total += 9 + (0 if len(made.do) <= _BESIDE else _lines(made.do, stretch(_SAY)))
        across = 52 if len(made.figures) == 1 else 25 if len(made.figures) == 2 else 16
        total += 11 + max((_lines(f"{c.when}: {c.then}", (across, 4.4)) for c in made.figures), default=0)
    else:
        total += 23 + (0 if len(made.do) <= _BESIDE else _lines(made.do, stretch(_SAY)))
    foot = f"{made.trust.word}: {made.trust.source}. {'. '.join(made.notes)}. Why. {made.again}"
    total += 0.6 + _lines(foot, stretch(_FOOT))
    if made.table:
        total += 10 + sum(max(7.0, *(_lines(cell, (16, 5.4)) for cell in row)) for row in made.table[1:]) + 13
    else:
        total = max(total, 1.4 + 9.2 * sum(0.5 if b.half else 1 for b in made.boxes))
    return max(1.02 * total, _LEAST)
