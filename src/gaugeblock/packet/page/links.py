"""Links from one part of the page to another, by the number of an item."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.packet.page.filling import fill

if TYPE_CHECKING:
    from collections.abc import Mapping

    from markupsafe import Markup

    # The sheet on which the card of an item stands, by its number; an item without a card has its desk alone.
    PageOf = Mapping[int, int]


def go(number: int, page_of: PageOf) -> Markup:
    """The number of an item, which leads to its card, else to its desk."""
    return fill('<a href="#%s-%s">%s</a>', "card" if number in page_of else "desk", number, number)


def sheet_of(number: int, page_of: PageOf) -> Markup:
    """The sheet of an item's card, which leads there, else its desk."""
    if number in page_of:
        return fill('<a href="#card-%s">sheet&nbsp;%s</a>', number, page_of[number])
    return fill('<a href="#desk-%s">desk&nbsp;%s</a>', number, number)
