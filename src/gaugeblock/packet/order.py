"""The order of the work: the trade's, by what a task is about, where the job does not number its steps."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from gaugeblock.answer.item import Item

# What is worked on first stands first; a task goes by the first group that one of its words is in. Common practice.
_TRADE: tuple[tuple[str, ...], ...] = (
    ("engine mount", "mount bracket"),
    ("flywheel", "flexplate", "crankshaft"),
    ("clutch", "converter"),
    ("bell housing",),
    ("gearbox to", "transmission to"),
    ("crossmember",),
    ("gearbox mount", "transmission mount"),
    ("header", "manifold", "collector"),
    ("spark plug", "plugs"),
    ("exhaust",),
    ("tube", "tubes", "cut list"),
    ("line", "hose", "brake tube", "fuel"),
    ("pinion", "ring gear", "backlash", "side bearing"),
    ("axle", "u-bolt", "spring"),
    ("propeller shaft", "driveshaft", "joint"),
    ("brake", "caliper", "calliper"),
    ("steering",),
    ("wheel",),
    ("drain plug", "fluid", "first start"),
)
_RANK_OF_KIND = {"tubes": 5, "lines": 11, "driveline": 12}


def in_order_of_work(items: list[Item]) -> list[Item]:
    """The items in the order of the work; those alike stay as the job has them."""
    return sorted(items, key=_rank)


def _rank(item: Item) -> int:
    if item.card is None:
        return len(_TRADE) + 1
    text = f"{item.name} {next((r.text for r in item.facts if r.label == 'where'), '')}".casefold()
    for words in (item.name.casefold(), text):
        found = [n for n, group in enumerate(_TRADE) if any(word in words for word in group)]
        if found:
            return found[0]
    return _RANK_OF_KIND.get(item.domain, len(_TRADE))
