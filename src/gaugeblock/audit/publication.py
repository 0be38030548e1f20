"""One publication: the figures taken from it, and what rests on it today - answers, formulas, statements."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.text import width, wrap
from gaugeblock.tables.catalogue import DOMAINS

TYPE_CHECKING = False  # typing itself stays off the path of a summary
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.tables.load import Refdata, Row

_MARKS = {"primary": "read", "quoted": "quoted", "memory": "from memory"}


def publication(id: str, data: Refdata) -> dict[str, Any]:
    """What the tables of one release have of a publication.

    ``figures`` each with its key, number, unit, place, mark and standing; ``answers`` says whether a look-up of it
    rests on this row, else ``instead`` names whose figure governs. ``formulas`` and ``statements`` are those that
    cite it.
    """
    figures: list[dict[str, Any]] = []
    for table in data.all_tables():
        groups: dict[tuple[object, ...], list[Row]] = {}
        for row in table.rows:
            groups.setdefault((row.key, row["quantity"]), []).append(row)
        for rows in groups.values():
            if any(row["source"] == id for row in rows):
                governing = lookup.governing_row(rows, data)
                figures += [_of_row(row, governing) for row in rows if row["source"] == id]
    return {
        "figures": figures,
        "formulas": [name for name, entry in data.listing("formulas").items() if entry["source"] == id],
        "statements": [s["subject"] for d in DOMAINS for s in data.statements(d) if s["source"] == id],
    }


def _of_row(row: Row, governing: Row) -> dict[str, Any]:
    answers = row is governing and not row["standing"]
    ends = " to ".join(row[c] for c in ("low", "high") if row[c])
    return {
        "table": row.table,
        "label": lookup.figure_label(row),
        "quantity": row["quantity"],
        "text": row["value"] or ends,
        "unit": row["unit"],
        "locator": row["locator"],
        "checked": row["checked"],
        "standing": row["standing"],
        "answers": answers,
        "instead": None if answers or row is governing else governing["source"] or governing["basis"],
    }


def lines_of(found: dict[str, Any]) -> list[str]:
    """A publication as text: who rests on it, then its figures by what they are."""
    figures, wide = found["figures"], width()
    count = sum(f["answers"] for f in figures)
    rest = len(figures) - count
    beside = f", and {rest} {'figure stands' if rest == 1 else 'figures stand'} beside another" if rest else ""
    lines = wrap(f"{count} {'answer rests' if count == 1 else 'answers rest'} on it{beside}.", 2, 4, wide=wide)
    for name in ("formulas", "statements"):
        if found[name]:
            cited = ", ".join(dict.fromkeys(n.replace("_", " ") for n in found[name]))
            lines += wrap(f"{capital(name[:-1])}s that cite it: {cited}.", 2, 4, wide=wide)
    quantity = ""
    for one in sorted(figures, key=lambda f: f["quantity"]):
        if one["quantity"] != quantity:
            quantity = one["quantity"]
            lines += ["", f"  {quantity.replace('_', ' ')}"]
        unit = "" if one["unit"] == "1" else f" {one['unit']}"
        rests = "" if one["answers"] else f"; {one['standing'] or 'beside ' + str(one['instead'])}"
        place = f", {one['locator']}" if one["locator"] else ""
        text = f"{one['label']}: {one['text']}{unit}{place} ({_MARKS[one['checked']]}){rests}"
        lines += wrap(text, 4, 6, wide=wide)
    return lines
