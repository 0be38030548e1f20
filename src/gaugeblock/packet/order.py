"""The order of the work: the steps that the job numbers, then what the trade does first."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item

# What is worked on first stands first; a task goes by the group of the word that its name begins with soonest. Common
# practice.
_TRADE: tuple[tuple[str, ...], ...] = (
    ("engine mount", "mount bracket"),
    ("crossmember",),
    ("flywheel", "flexplate", "crankshaft", "crank pulley", "crank damper"),
    ("clutch", "converter"),
    ("bellhousing",),
    ("gearbox to", "transmission to", "engine to"),
    ("gearbox mount", "transmission mount"),
    ("header", "manifold", "collector"),
    ("spark plug", "plug"),
    ("exhaust",),
    ("tube", "cut list"),
    ("line", "hose", "brake line", "brake tube", "brake hose", "fuel"),
    ("ring gear to",),
    ("pinion",),
    ("shim", "carrier shim", "side bearing"),
    ("ring gear", "backlash"),
    ("axle", "u-bolt", "spring"),
    ("propeller shaft", "propshaft", "driveshaft", "joint", "u-joint"),
    ("brake", "caliper", "calliper"),
    ("steering",),
    ("circuit", "wiring", "battery", "fuse"),
    ("wheel",),
    ("drain plug", "fluid", "first start"),
)
_GROUP = {"tubes": "tube", "lines": "line", "driveline": "axle", "wiring": "circuit", "exhaust": "exhaust"}
# Within a group what is made comes before what bolts it, and what is set last.
_MADE = {"tubes": 0, "lines": 0, "fasteners": 1}


def in_order_of_work(items: Sequence[Item]) -> list[Item]:
    """The items in the order of the work: those with a step by its number, then the others as the trade works.

    An item that speaks for all of its domain (a cut list) stands before the first of them. Those alike stay as the job
    has them.
    """
    ranked = [(_rank(item), item) for item in items]
    own = [(rank, i.domain) for rank, i in ranked if not i.of_all]
    first = {i.domain: min(rank for rank, domain in own if domain == i.domain) for i in items if i.of_all}
    placed = [((first[i.domain], 0) if i.of_all and i.card is not None else (rank, 1), i) for rank, i in ranked]
    return [item for _, item in sorted(placed, key=lambda pair: pair[0])]


def _rank(item: Item) -> tuple[int, int, int, int]:
    """Numbered or not, the number, the group of the trade, and what is done first in it."""
    made = _MADE.get(item.domain, 2)
    if item.step is not None:
        return (0, item.step, 0, made)
    if item.card is None:
        return (2, 0, 0, made)
    return (1, 0, _group(item), made)


def _group(item: Item) -> int:
    where = next((r.text for r in item.facts if r.label == "where"), "")
    for text in (_joined(item.name), _joined(where)):
        found = [(at, n) for n, words in enumerate(_TRADE) for word in words if (at := _begins(word, text)) >= 0]
        if found:
            return min(found)[1]
    word = _GROUP.get(item.domain)
    return next((n for n, group in enumerate(_TRADE) if word in group), len(_TRADE))


def _joined(text: str) -> str:
    """A text in lower case, its compounds in one word as the list has them: bell housing, flex-plate, u joint."""
    text = text.casefold()
    for parted, whole in _COMPOUNDS:
        text = text.replace(f"{parted[0]} {parted[1]}", whole).replace(f"{parted[0]}-{parted[1]}", whole)
    return text


_COMPOUNDS = (
    (("bell", "housing"), "bellhousing"),
    (("gear", "box"), "gearbox"),
    (("flex", "plate"), "flexplate"),
    (("fly", "wheel"), "flywheel"),
    (("cross", "member"), "crossmember"),
    (("drive", "shaft"), "driveshaft"),
    (("prop", "shaft"), "propshaft"),
    (("crank", "shaft"), "crankshaft"),
    (("u", "bolt"), "u-bolt"),
    (("u", "joint"), "u-joint"),
)


def _begins(word: str, text: str) -> int:
    """Where a text has a word begin; -1 where it does not."""
    at = text.find(word)
    while at > 0 and (text[at - 1].isalnum() or text[at - 1] == "_"):
        at = text.find(word, at + 1)
    return at
