"""Engagement: how much thread a bolt needs in the metal that it goes into."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.engagement import ends, minimums, needed
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic

TABLE = "fasteners/engagement"
VERB = "ENGAGE"


def _topic() -> Topic:
    from gaugeblock.fasteners.thread_ask import ENGAGEMENT

    return ENGAGEMENT


def metals(data: Refdata) -> list[str]:
    """The metals that a rule of the tables is for."""
    return list(dict.fromkeys(row["into"] for row in data.table(TABLE).rows if not row.standing))


@opens(_topic, "thread")
def engagement(thread: str, *, into: str | None = None, data: Refdata | None = None) -> Sheet:
    """The least length of thread that a bolt needs in a tapped metal, by the rules of manuals and handbooks.

    ``thread`` ``3/8-16`` or ``M8``; ``into`` the metal: ``aluminium``, ``cast iron``, ``steel``.

    Returns a Sheet; its decision is ``none`` for a metal that no rule of the tables is for. Raises Ambiguous with the
    metals when none is named, LookupMiss for what is no thread or no metal.

    >>> round(engagement("3/8-16", into="aluminium").decision.figure.typical, 4)
    0.75
    """
    data = data or refdata()
    found = keys.thread(thread, data)
    asked = {"thread": thread, "into": into}
    if into is None:
        raise Ambiguous(found.cell, "into", "the metal was not said", metals(data), "name one of these")
    metal = data.words("fasteners", "into").get(into.casefold()) or canonical(data, TABLE, "into", into)
    rules = minimums(metal, data)
    title = f"thread of {found.cell} into {metal}"
    if not rules:
        do = f"No rule for {metal} was found. Ask the maker of the part, or of its insert."
        return Sheet(title, asked, data, [], [], [], decision=none(VERB, do))
    diameter = lookup.look_up("fasteners/threads", "major_diameter", data=data, thread=found.cell)
    key = Keys(thread=found.cell)
    by_length = {needed(rule, found, diameter, key, data): rule for rule in rules}
    _, least = ends(by_length, data)
    others = [figure for figure in by_length if figure is not least]
    rule = by_length[least]
    title += f" ({rule.typical:g} diameters, {rule.source or 'habit'})"
    said = [Caution(f"The rule as printed: {rule.conditions}.", "damage", (rule.id,), rule.source)]
    return Sheet(title, asked, data, [least, *others, rule], [], said, decision=use(VERB, least))
