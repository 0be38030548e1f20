"""Which items of a packet its pages show: all of them, or the one that was asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.errors import LookupMiss

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item

_MOST_NEAR = 5


class Scope:
    """What the pages hold: ``cards_only`` leaves the desk out, ``sheet`` names the one item that they are about."""

    __slots__ = ("cards_only", "sheet")

    def __init__(self, cards_only: bool = False, sheet: str | None = None) -> None:
        self.cards_only = cards_only
        self.sheet = sheet

    @property
    def is_whole(self) -> bool:
        """Whether nothing is left out."""
        return not self.cards_only and self.sheet is None


def chosen(items: Sequence[Item], name: str | None) -> dict[int, Item]:
    """Number of the card -> item: those called ``name``, whatever its capitals; all of them without a name.

    LookupMiss names the items that are nearest.
    """
    numbered = dict(enumerate(items, 1))
    if name is None:
        return numbered
    wanted = " ".join(name.split()).casefold()
    found = {n: i for n, i in numbered.items() if i.name.casefold() == wanted}
    if not found:
        from gaugeblock.tables.near import alike

        names = list(dict.fromkeys(i.name for i in items))
        holding = [n for n in names if wanted and wanted in n.casefold()]
        near = list(dict.fromkeys([*holding, *alike(wanted, names)]))[:_MOST_NEAR] or names[:_MOST_NEAR]
        raise LookupMiss(name[:80], "--sheet", "no item of this job has that name", near, "name one as the job does")
    return found
