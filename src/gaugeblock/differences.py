"""What changed between two data releases: figures that were put right, added and taken back."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row

CHANGED, ADDED, CLOSED = "changed", "added", "taken back"


class Difference(Value):
    """One quantity of one key: the governing figure of the earlier release and of the later one, None where there was
    none. ``kind`` is ``changed``, ``added`` or ``taken back``; ``why`` the note of the later row.
    """

    __slots__ = ("after", "before", "kind", "label", "quantity", "table", "why")

    table: str
    label: str
    quantity: str
    before: Figure | None
    after: Figure | None
    kind: str
    why: str

    def __init__(
        self, table: str, label: str, quantity: str, before: Figure | None, after: Figure | None, why: str
    ) -> None:
        put(self, "table", table)
        put(self, "label", label)
        put(self, "quantity", quantity)
        put(self, "before", before)
        put(self, "after", after)
        put(self, "kind", ADDED if before is None else CLOSED if after is None else CHANGED)
        put(self, "why", why)

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {
            "table": self.table,
            "label": self.label,
            "quantity": self.quantity,
            "kind": self.kind,
            "before": _said(self.before),
            "after": _said(self.after),
            "why": self.why or None,
        }


def between(earlier: Refdata, later: Refdata) -> list[Difference]:
    """Every key and quantity whose governing figure differs between two releases, by table; changed ones first."""
    found: list[Difference] = []
    for table in later.all_tables():
        old, new = _rows(earlier, table.name), _rows(later, table.name)
        for at in dict.fromkeys((*old, *new)):
            if [_cells(r) for r in old.get(at, ())] == [_cells(r) for r in new.get(at, ())]:
                continue
            before = lookup.govern_rows(old[at], earlier) if at in old else None
            after = lookup.govern_rows(new[at], later) if at in new else None
            if before is not None and after is not None and _said(before) == _said(after):
                continue
            row = (new.get(at) or old[at])[0]
            fresh = [r for r in new.get(at, ()) if r not in old.get(at, ())]
            why = next((r.cells["note"] for r in fresh if r.cells["note"]), "")
            found.append(Difference(table.name, lookup.figure_label(row), at[1], before, after, why))
    order = (CHANGED, CLOSED, ADDED)
    return sorted(found, key=lambda d: order.index(d.kind))


def _rows(data: Refdata, name: str) -> dict[tuple[tuple[str, ...], str], list[Row]]:
    """The living rows of a table by key and quantity."""
    by: dict[tuple[tuple[str, ...], str], list[Row]] = {}
    for row in data.table(name).rows:
        by.setdefault((row.key, row.cells["quantity"]), []).append(row)
    return by


def _cells(row: Row) -> tuple[str, ...]:
    return tuple(value for column, value in row.cells.items() if column != "until")


def _said(figure: Figure | None) -> str:
    """A figure as it is told: its number, what it rests on and where that stands."""
    if figure is None:
        return ""
    source = ", ".join(part for part in (figure.source, figure.locator) if part)
    return " ".join(part for part in (figure.text, figure.unit, figure.trust, source and f"({source})") if part)
