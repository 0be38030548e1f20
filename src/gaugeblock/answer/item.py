"""Item: one task of the job with its Sheet and what its card says beside the decision."""

from __future__ import annotations

from gaugeblock.answer.sheet import Sheet
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable


class Row(Value):
    """A line that describes a task: what it is, and what it says (blank prints an empty box)."""

    __slots__ = ("label", "text")

    label: str
    text: str

    def __init__(self, label: str, text: str) -> None:
        put(self, "label", label)
        put(self, "text", text)


class Box(Value):
    """A box to write in: what is written there, its unit printed in it, and whether it takes half the width."""

    __slots__ = ("half", "label", "unit")

    label: str
    unit: str
    half: bool

    def __init__(self, label: str, unit: str = "", half: bool = False) -> None:
        put(self, "label", label)
        put(self, "unit", unit)
        put(self, "half", half)


class Card(Value):
    """What stands at the car beside the decision of the sheet, whose number, verb, trust and outcome the packet prints.

    ``what`` the thing worked on, in one line; ``condition`` the state that the number is for (DRY); ``count`` how many
    and ``counted`` of what; ``order`` the sequence in words, ``steps`` the passes to tick; ``notes`` short sentences
    (wrench, crow-foot, locknut); ``again`` when it is tightened again; ``boxes`` to write in; ``table`` head and rows
    of a task of several numbers; ``says`` the desk lines that the card already says, by quantity.
    """

    __slots__ = ("again", "boxes", "condition", "count", "counted", "notes", "order", "says", "steps", "table", "what")

    what: str
    condition: str
    count: int
    counted: str
    order: str
    steps: tuple[str, ...]
    notes: tuple[str, ...]
    again: str
    boxes: tuple[Box, ...]
    table: tuple[tuple[str, ...], ...]
    says: tuple[str, ...]

    def __init__(
        self,
        what: str,
        condition: str = "",
        *,
        count: int = 1,
        counted: str = "",
        order: str = "",
        steps: Iterable[str] = (),
        notes: Iterable[str] = (),
        again: str = "",
        boxes: Iterable[Box] = (),
        table: Iterable[Iterable[str]] = (),
        says: Iterable[str] = (),
    ) -> None:
        put(self, "what", what)
        put(self, "condition", condition)
        put(self, "count", count)
        put(self, "counted", counted)
        put(self, "order", order)
        put(self, "steps", tuple(steps))
        put(self, "notes", tuple(n for n in notes if n))
        put(self, "again", again)
        put(self, "boxes", tuple(boxes))
        put(self, "table", tuple(tuple(row) for row in table))
        put(self, "says", tuple(says))


class Item(Value):
    """One task: its domain, name, the rows that describe it, its Sheet, and its card (None for desk-only items).

    ``step`` is its place in the order of the work where the job gives one; ``of_all`` says that it speaks for all items
    of its domain (a cut list).
    """

    __slots__ = ("card", "domain", "facts", "name", "of_all", "plan", "sheet", "step")

    domain: str
    name: str
    facts: tuple[Row, ...]
    sheet: Sheet
    card: Card | None
    plan: object
    step: int | None
    of_all: bool

    def __init__(
        self,
        domain: str,
        name: str,
        facts: Iterable[Row],
        sheet: Sheet,
        card: Card | None,
        plan: object = None,
        *,
        step: int | None = None,
        of_all: bool = False,
    ) -> None:
        put(self, "domain", domain)
        put(self, "name", name)
        put(self, "facts", tuple(facts))
        put(self, "sheet", sheet)
        put(self, "card", card)
        put(self, "plan", plan)  # what the item's module worked out, for what its items say together
        put(self, "step", step)
        put(self, "of_all", of_all)
