"""Strengths of a tube's metal that step by the size of the tube."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.tubes.keys import COLUMNS, is_softened_by_a_weld

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row
    from gaugeblock.tubes.keys import Stock


def _rows(found: Stock, data: Refdata) -> list[Row]:
    if is_softened_by_a_weld(found):
        return []
    rows = [r for r in data.table("tubes/materials").rows if r["family"] == found.family and not r["standing"]]
    fit = [
        r
        for r in rows
        if all(getattr(found, c) is None or r.cells[c] in (getattr(found, c), "any") for c in COLUMNS[1:])
    ]
    return [r for r in fit if (r["od"], r["wall"]) != ("any", "any")]


def sizes(found: Stock, data: Refdata) -> list[str]:
    """The sizes that rows of this metal ask for."""
    return list(dict.fromkeys(f"od {r.cells['od']}, wall {r.cells['wall']}" for r in _rows(found, data)))


def figures(found: Stock, data: Refdata) -> list[Figure]:
    """The guaranteed strengths of this metal that step by size."""
    return [
        lookup.figure_of(r, data) for r in _rows(found, data) if r["quantity"] in ("yield_strength", "tensile_strength")
    ]
