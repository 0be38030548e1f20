"""Item: one task of the job with its Sheet and what its bench card says."""

from __future__ import annotations

from gaugeblock.answer.check import CANNOT_TELL, Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.tables.load import Refdata


class Row:
    """A line of a bench card or desk page: what it is, and what it says (blank prints an empty box)."""

    __slots__ = ("label", "text")

    def __init__(self, label: str, text: str) -> None:
        self.label = label
        self.text = text


class Card:
    """What stands at the car: the number large, what it is on, the condition, the tool, how far to trust it.

    ``table`` is its head and rows, for a task of several numbers.
    """

    __slots__ = (
        "boxes", "condition", "detail", "maker", "number", "other_unit", "table", "trust", "verb", "warning", "what",
    )  # fmt: skip

    def __init__(
        self,
        verb: str,
        number: str,
        other_unit: str,
        trust: str,
        what: str,
        condition: str,
        detail: list[Row],
        maker: str,
        boxes: list[str],
        warning: str,
        table: list[tuple[str, ...]] | None = None,
    ) -> None:
        self.verb = verb
        self.number = number
        self.other_unit = other_unit
        self.trust = trust
        self.what = what
        self.condition = condition
        self.detail = detail
        self.maker = maker
        self.boxes = boxes
        self.warning = warning
        self.table = table or []


class Item:
    """One task: its domain, name, the rows that describe it, its Sheet, and its bench card (None for desk-only items)."""

    __slots__ = ("card", "domain", "facts", "name", "plan", "sheet")

    def __init__(
        self, domain: str, name: str, facts: list[Row], sheet: Sheet, card: Card | None, plan: object = None
    ) -> None:
        self.plan = plan  # what the item's module worked out, for what its items say together
        self.domain = domain
        self.name = name
        self.facts = facts
        self.sheet = sheet
        self.card = card


def pretty(text: str) -> str:
    """Unit spellings as a person reads them on paper: a raised dot and small figures."""
    for plain, shown in (
        ("**2", "\u00b2"),
        ("**3", "\u00b3"),
        ("**4", "\u2074"),
        ("lbf*ft", "lbf\u00b7ft"),
        ("lbf*in", "lbf\u00b7in"),
        ("N*m", "N\u00b7m"),
        (" degF", " \u00b0F"),
        (" degC", " \u00b0C"),
        (" deg", "\u00b0"),
    ):
        text = text.replace(plain, shown)
    return text


def worst_reason(sheet: Sheet) -> str:
    """The first check that is not ok, else the first that cannot be told, and how many more are open; blank when all are ok."""
    open_checks = [c for c in sheet.checks if c.result != "ok"]
    open_checks.sort(key=lambda c: c.result != "not ok")
    if not open_checks:
        return ""
    first, *rest = open_checks
    more = f" AND {len(rest)} MORE OPEN: {', '.join(c.name for c in rest)} (desk sheet)" if rest else ""
    return f"{first.result.upper()}: {first.name}: {first.reason}.{more}"


def refusal_sheet(title: str, asked: dict[str, str | None], check: str, reason: str, data: Refdata) -> Sheet:
    """A sheet without an answer: one check that cannot be told, with its reason."""
    return Sheet(title, asked, data, [], [Check(check, CANNOT_TELL, reason)], [])
