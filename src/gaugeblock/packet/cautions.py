"""Which cautions a paper prints, under the manuals' words: few, each once, before the step that they concern."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.pretty import pretty

if TYPE_CHECKING:
    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.item import Item

# A reader heeds few: so many of each an item. The rest, and every note, stands in packet.json.
_MOST = {"WARNING": 2, "CAUTION": 1, "NOTE": 0}
_LONGEST_ON_A_CARD = 150  # characters
# What the program itself says of this very job, or a careful shop of this very work; a quoted law or study is a note.
_OWN = ("calculated", "refdata", "common practice", "assumed")


def signal(caution: Caution) -> str:
    """WARNING for people, CAUTION for equipment, NOTE for help."""
    if caution.source not in _OWN:
        return "NOTE"
    return {"injury": "WARNING", "damage": "CAUTION"}.get(caution.severity, "NOTE")


def warned(item: Item) -> list[SimpleNamespace]:
    """The one warning that a card bears, the most urgent that is short: on each card that it concerns, for a card is
    carried to the car alone.
    """
    text = _on_card(item)
    return [SimpleNamespace(word="WARNING", text=pretty(text))] if text else []


def _on_card(item: Item) -> str:
    texts = (c.text for c in _ranked(item) if signal(c) == "WARNING")
    return next((text for text in texts if len(pretty(text)) <= _LONGEST_ON_A_CARD), "")


def told(item: Item, said: set[str]) -> list[SimpleNamespace]:
    """The cautions of an item that were not said before, most urgent first; ``said`` is added to. What its card warns
    of is one of the few.
    """
    left = dict(_MOST)
    left["WARNING"] -= _on_card(item) in said
    out = []
    for caution in _ranked(item):
        word = signal(caution)
        if caution.text not in said and left[word]:
            left[word] -= 1
            said.add(caution.text)
            out.append(SimpleNamespace(word=word, text=pretty(caution.text)))
    return out


def _ranked(item: Item) -> list[Caution]:
    """The cautions of an item, the most urgent first; of those what was worked out of this very job."""
    return sorted(item.sheet.cautions, key=lambda c: (list(_MOST).index(signal(c)), c.source != "calculated"))
