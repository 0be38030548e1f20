"""Two things of one kind set against each other in a line: ``grade 5 vs grade 8``."""

from __future__ import annotations

from gaugeblock.answer.opening import compared
from gaugeblock.plain.reading import read

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

_AGAINST = (("vs",), ("versus",), ("compared", "to"), ("compared", "with"), ("against",))


def parted(words: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    """What stands before and behind the word that sets two things against each other; None for no such word."""
    for mark in _AGAINST:
        for at in range(1, len(words) - len(mark)):
            if words[at : at + len(mark)] == mark:
                return words[:at], words[at + len(mark) :]
    return None


def side_by_side(words: tuple[str, ...], topics: list[Topic], data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of the one option in which the two differ, whatever else was said of either; None where they differ in
    more, where a word of either is not understood, or where one of them has no answer.
    """
    halves = parted(words)
    if halves is None:
        return None
    best: tuple[int, Reading, Reading] | None = None
    for topic in topics:
        first, second = (read(half, topic, data) for half in halves)
        if not first.unread and not second.unread and (best is None or first.cost + second.cost < best[0]):
            best = first.cost + second.cost, first, second
    if best is None:
        return None
    _, first, second = best
    apart = [k for k in first.values if k in second.values and first.values[k] != second.values[k]]
    values, said = {**second.values, **first.values}, {**second.said, **first.said}
    if len(apart) != 1 or any(need not in values for need in first.topic.needs):
        return None
    names = f"{apart[0]}={first.values[apart[0]]}; {second.values[apart[0]]}"
    told = {k: v for k, v in said.items() if k != apart[0]}
    told[apart[0]] = f"{first.said[apart[0]]} and {second.said[apart[0]]}"
    table = compared(first.topic, values, said, names, data)
    return (first.replace(values=values, said=told), table) if len(table.lines) > 1 else None
