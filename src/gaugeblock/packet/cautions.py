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
# What the program itself says of this very job, or a careful shop of this very work; a quoted law or study is a note.
_OWN = ("calculated", "refdata", "common practice", "assumed")


def signal(caution: Caution) -> str:
    """WARNING for people, CAUTION for equipment, NOTE for help."""
    if caution.source not in _OWN:
        return "NOTE"
    return {"injury": "WARNING", "damage": "CAUTION"}.get(caution.severity, "NOTE")


def told(item: Item, said: set[str]) -> list[SimpleNamespace]:
    """The cautions of an item that were not said before, most urgent first; ``said`` is added to."""
    left = dict(_MOST)
    out = []
    ranked = sorted(item.sheet.cautions, key=lambda c: (list(_MOST).index(signal(c)), c.source != "calculated"))
    for caution in ranked:
        word = signal(caution)
        if caution.text not in said and left[word]:
            left[word] -= 1
            said.add(caution.text)
            out.append(SimpleNamespace(word=word, text=pretty(caution.text)))
    return out
