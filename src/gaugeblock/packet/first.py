"""The first page: ready or not, what stops, and the questions grouped by what somebody has to do."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.decision import STOP, USE
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, KINDS, MEASURE
from gaugeblock.packet.measure import height

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item

# Of so many items the count is told, not the names.
_MANY = 4
HEADS = {ASK_MAKER: "Ask the maker", MEASURE: "Measure on the car", FILL_IN: "Fill in the job file"}
OF_READY = "Ready without it"
# Millimetres of a Letter sheet that the first page may fill (A4 has more). The sizes below are those of packet.css.
_SHEET = 243.0
_HEADING, _FOOT = 10.2, 31.0


class Rows:
    """How the rows of questions are set: width of the names and of the text, sizes and leading, least height, mm."""

    def __init__(self, names: float, text: float, points: float, leading: float, least: float, head: float) -> None:
        self.names, self.text, self.points, self.leading = names, text, points, leading
        self.least, self.head = least, head


_ROOMY, _CLOSE = Rows(41.0, 67.0, 9.5, 1.25, 8.8, 7.6), Rows(40.5, 77.0, 8.3, 1.13, 6.15, 4.9)


class Place:
    """Where an item stands: its number on card and desk, and the page of its card."""

    def __init__(self, number: int, page: int | None) -> None:
        self.number = number
        self.page = page


def first_page(items: Sequence[Item], status: str, about: str = "") -> SimpleNamespace:
    """Counts, stops and questions of all items; ``about`` is what is said of the vehicle. The rows stand closer where
    one sheet holds them so, and it is told how many sheets there are.
    """
    kinds = [i.sheet.decision.kind for i in items]
    stops = kinds.count(STOP)
    ready = kinds.count(USE)
    groups = [SimpleNamespace(head=HEADS[kind], rows=rows) for kind in KINDS if (rows := _rows(items, (kind,)))]
    groups += [SimpleNamespace(head=OF_READY, rows=rows) for rows in [_rows(items, KINDS, of_ready=True)] if rows]
    stopped = [_stopped(i, n) for n, i in enumerate(items, 1) if i.sheet.decision.kind == STOP]
    asks = len(items) - stops - ready
    contradiction = _contradiction(status, stops, asks)
    top = max(23.0, 15.3 + height(about, 9, 1.15, 100)) + (8.0 if contradiction else 0)
    top += _HEADING * (bool(stopped) + bool(groups)) + sum(_stop_height(s) for s in stopped)
    _mark_first([*(s for s in stopped), *(i for g in groups for row in g.rows for i in row.items)])
    is_compact = top + _FOOT + sum(_group_height(g, _ROOMY) for g in groups) > _SHEET
    return SimpleNamespace(
        is_ready=stops == 0 and ready == len(items),
        stops=stops,
        asks=asks,
        ready=ready,
        stopped=stopped,
        groups=groups,
        is_compact=is_compact,
        sheets=_sheets(groups, _CLOSE if is_compact else _ROOMY, top),
        contradiction=contradiction,
    )


def _mark_first(entries: Sequence[SimpleNamespace]) -> None:
    """Where an item stands for the first time on the page a card can lead back to it."""
    seen: set[int] = set()
    for entry in entries:
        entry.anchor = "" if entry.number in seen else f"ask-{entry.number}"
        seen.add(entry.number)


def _stop_height(row: SimpleNamespace) -> float:
    return max(9.0, height(f"{row.why} {row.do}", 9.5, 1.15, 108, bold=True) + 0.8)


def _row_height(row: SimpleNamespace, rows: Rows) -> float:
    names = row.many or "; ".join(i.name for i in row.items)
    told = height(row.text, rows.points, rows.leading, rows.text)
    return max(rows.least, max(told, height(names, rows.points, rows.leading, rows.names, bold=True)) + 0.6)


def _group_height(group: SimpleNamespace, rows: Rows) -> float:
    return rows.head + sum(_row_height(row, rows) for row in group.rows)


def _sheets(groups: Sequence[SimpleNamespace], rows: Rows, top: float) -> list[list[SimpleNamespace]]:
    """The groups in sheets, as much of each on a sheet as it holds under ``top`` mm; the words and the boxes to sign
    follow on the last.
    """
    out: list[list[SimpleNamespace]] = [[]]
    left = _SHEET - top
    for group in groups:
        part = None
        for row in group.rows:
            tall = _row_height(row, rows)
            if left < tall + (rows.head if part is None else 0.0):
                out.append([])
                part, left = None, _SHEET
            if part is None:
                part = SimpleNamespace(head=group.head, rows=[])
                out[-1].append(part)
                left -= rows.head
            part.rows.append(row)
            left -= tall
    if left < _FOOT:
        out.append([])
    return out


def _contradiction(status: str, stops: int, asks: int) -> str:
    if not (stops or asks) or not status.startswith("for build"):
        return ""
    what = [(stops, "one item stops", f"{stops} items stop"), (asks, "one is asked first", f"{asks} are asked first")]
    if not stops:
        what = [(asks, "one item is asked first", f"{asks} items are asked first")]
    said = " and ".join(one if count == 1 else several for count, one, several in what if count)
    return f"The job file says \u201cfor build\u201d, but {said}."


def _stopped(item: Item, number: int) -> SimpleNamespace:
    decision = item.sheet.decision
    why = next((c.reason for c in item.sheet.checks if c.name in decision.because), "")
    why, do = pretty(_sentence(why)), pretty(_sentence(decision.do))
    if why[:20].casefold() in do.casefold():
        why = ""  # the sentence says it whole
    first, _, rest = do.partition(". ")
    if rest and first.casefold().removeprefix("it is ") in why.casefold():
        do = rest  # and not twice
    return SimpleNamespace(name=item.name, number=number, why=why, do=f"{do} {also(item)}".rstrip())


def also(item: Item) -> str:
    """What else stops an item, besides what its decision says: each reason in a sentence of its own."""
    decision = item.sheet.decision
    stops = [c for c in item.sheet.checks if c.stops]
    if decision.kind != STOP or len(stops) < _SEVERAL:
        return ""
    first = next((c for c in stops if c.name in decision.because), stops[0])
    told = f"{first.reason} {decision.do}".casefold()
    rest = dict.fromkeys(c.reason for c in stops if c is not first and c.reason.casefold() not in told)
    return pretty(" ".join(f"Also: {_sentence(reason)}" for reason in rest))


_SEVERAL = 2


def _sentence(text: str) -> str:
    text = text.strip()
    return text if not text or text[-1] in ".?!" else f"{text}."


def _runs(numbers: Sequence[int]) -> str:
    """Numbers in words, those that follow each other as one run.

    >>> _runs([1, 2, 3, 5, 8, 9])
    '1 to 3, 5, 8, 9'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{r[0]} to {r[-1]}" if len(r) > 2 else ", ".join(map(str, r)) for r in runs]
    return ", ".join(said)


def _rows(items: Sequence[Item], kinds: Sequence[str], *, of_ready: bool = False) -> list[SimpleNamespace]:
    """One row a question, with every open item that it settles, or ``of_ready`` ones; an item that asks without a
    question of its own says what to do.
    """
    rows: dict[str, list[tuple[Item, int]]] = {}
    for number, item in enumerate(items, 1):
        if (item.sheet.decision.kind == USE) != of_ready:
            continue
        questions = [q for q in item.sheet.questions if q.kind in kinds]
        for question in questions:
            rows.setdefault(question.text, []).append((item, number))
        decision = item.sheet.decision
        if FILL_IN in kinds and not item.sheet.questions and decision.kind not in (USE, STOP):
            rows.setdefault(decision.do, []).append((item, number))
    merged: dict[tuple[int, ...], list[str]] = {}
    for text, found in rows.items():
        merged.setdefault(tuple(n for _, n in found), []).append(_sentence(text))
    names = {n: i.name for n, i in enumerate(items, 1)}
    return [
        SimpleNamespace(
            text=pretty(" ".join(texts)),
            items=[SimpleNamespace(name=names[n], number=n) for n in numbers],
            many=f"{len(numbers)} items: {_runs(numbers)}" if len(numbers) >= _MANY else "",
        )
        for numbers, texts in merged.items()
    ]
