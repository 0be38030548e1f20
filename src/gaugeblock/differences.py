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
    none. ``kind`` is ``changed``, ``added`` or ``taken back``; ``why`` says what of the rows made the difference;
    ``note`` is the later
    row's.
    """

    __slots__ = ("after", "before", "kind", "label", "note", "quantity", "table", "why")

    table: str
    label: str
    quantity: str
    before: Figure | None
    after: Figure | None
    kind: str
    why: str
    note: str

    def __init__(
        self, table: str, label: str, quantity: str, before: Figure | None, after: Figure | None, why: str, note: str
    ) -> None:
        put(self, "table", table)
        put(self, "label", label)
        put(self, "quantity", quantity)
        put(self, "before", before)
        put(self, "after", after)
        put(self, "kind", ADDED if before is None else CLOSED if after is None else CHANGED)
        put(self, "why", why)
        put(self, "note", note)

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
            "note": self.note or None,
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
            note = next((r.cells["note"] for r in fresh if r.cells["note"]), "")
            kept = {r["source"] for r in new.get(at, ())}
            why = "" if before is None else _why(before, after, kept, _moved(before, at, new))
            found.append(Difference(table.name, lookup.figure_label(row), at[1], before, after, why, note))
    order = (CHANGED, CLOSED, ADDED)
    return sorted(found, key=lambda d: order.index(d.kind))


_MARKS = {"memory": "from memory", "quoted": "quoted", "primary": "read", "": "unread"}
_BY = {
    "only row": "is the only one",
    "service": "is of this service",
    "specificity": "is for exactly this",
    "basis": "rests on the better ground",
    "weight": "has the weightier source",
    "checked": "has been read more closely",
    "safer end": "is on the safer side",
    "edition": "is the newer edition",
}


def _why(before: Figure, after: Figure | None, kept: set[str], moved: str) -> str:
    """What of the rows made a governing figure change, in words."""
    whose = before.source or before.basis
    as_now = f"; it stands as {moved.replace('_', ' ')} now" if moved else ""
    if after is None:
        return f"the row of {whose} was taken back{as_now}"
    if (before.source, before.basis) == (after.source, after.basis):
        if (before.text, before.unit) != (after.text, after.unit):
            return f"the figure of {whose} was put right"
        if before.checked != after.checked:
            return f"{_MARKS[before.checked]} then, {_MARKS[after.checked]} since"
        return "its place was put right"
    now = after.source or after.basis
    reason = f"{now} {_BY[after.chosen_by]}" if after.chosen_by in _BY else f"{now} governs"
    return reason if before.source in kept else f"the row of {whose} was taken back{as_now}; {reason}"


def _moved(before: Figure, at: tuple[tuple[str, ...], str], new: dict[tuple[tuple[str, ...], str], list[Row]]) -> str:
    """The quantity as which the same number of the same source stands at this key now; blank where it does not."""
    for (key, quantity), rows in new.items():
        if key == at[0] and quantity != at[1]:
            for row in rows:
                text = row["value"] or " to ".join(row[c] for c in ("low", "high") if row[c])
                if (row["source"], text, row["unit"]) == (before.source, before.text, before.unit):
                    return quantity
    return ""


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
