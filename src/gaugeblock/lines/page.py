"""Job items of the domain lines -> Items: the line past what is hot, its rules, clips and joints."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from gaugeblock import units
from gaugeblock.answer.item import Card, Item, Row, worst_reason
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Placed
from gaugeblock.errors import InputError, Problem
from gaugeblock.figure import Figure
from gaugeblock.job.model import Shop
from gaugeblock.job.part import as_texts
from gaugeblock.lines.item import JUDGES
from gaugeblock.lines.job import Line
from gaugeblock.lines.placed import placed_line
from gaugeblock.lines.route_job import ROUTE_KEYS, route_of
from gaugeblock.tables.load import Refdata

_ALWAYS = ("service", "material", "fluid", "gap")
_SHOWN = 3


def problems(item: Line, data: Refdata) -> Iterator[Problem]:
    """Points that cannot be bent to their radius. An unknown material or fluid is an open question of the sheet."""
    try:
        placed_line(item.as_dict(), data)
    except InputError as error:
        yield Problem("points" if error.asked == item.name else "hot.points", None, error.why, error.nearest, error.do)


def placed(line: Line, _item: Item, data: Refdata) -> list[Placed]:
    """What of a line stands in the vehicle."""
    return placed_line(line.as_dict(), data)


def item(job: Any, shop: Shop, data: Refdata) -> Item:
    """The Item of one line of the job."""
    job = as_texts(job)
    shown = [k for k in ROUTE_KEYS if getattr(job, k) is not None or k in _ALWAYS]
    facts = [Row("where", job.where or "")]
    facts += [Row(k.removeprefix("hose_").replace("_", " "), getattr(job, k) or "") for k in shown]
    if job.notes:
        facts.append(Row("notes", job.notes))
    sheet = route_of(job, draw=True, data=data, is_metric=None if shop.units is None else shop.units == "metric")
    if job.gap is None and "gap" in sheet.asked:
        facts = [Row("gap", f"{sheet.asked['gap']}, from the paths") if f.label == "gap" else f for f in facts]
    return Item("lines", job.name, facts, sheet, _card(job, sheet, data))


def _limits(sheet: Sheet) -> list[Figure]:
    """What the line and its fluid stand, the lowest first: of the sheet's figures and of what its checks ask."""
    asked = [c.required.figure for c in sheet.checks if c.required is not None and c.required.figure is not None]
    found = {f.id: f for f in (*sheet.figures, *asked) if f.quantity in JUDGES}
    return sorted(found.values(), key=lambda f: units.to_base(f.least, f.unit))


def _gap(job: Any, sheet: Sheet) -> Row:
    """The gap as measured, else as the paths give it."""
    if job.gap is None and "gap" in sheet.asked:
        return Row("gap by the paths", str(sheet.asked["gap"]))
    return Row("gap measured", job.gap or "")


def _card(job: Any, sheet: Sheet, data: Refdata) -> Card:
    needed = next((f for f in sheet.figures if f.quantity == "gap_needed"), None)
    limits = _limits(sheet)
    first = limits[0] if limits else needed
    detail = [Row("beside", job.beside or ""), _gap(job, sheet)]
    if needed is not None and first is not needed:
        detail.append(Row("gap needed", f"{printed(needed, data)} ({needed.trust})"))
    detail.append(Row("temperature measured", job.temperature or ""))
    detail += [Row(f.key.get("item", "limit"), printed(f, data)) for f in limits[1:_SHOWN]]
    what = ", ".join(t for t in (job.where, job.material, job.od, job.fluid, job.fluid_state) if t)
    verb = "KEEP AWAY" if first is not None and first is needed else "KEEP UNDER"
    return Card(
        verb, printed(first, data) if first is not None else "", "", first.trust if first is not None else "NO FIGURE", what,
        (job.service or "").upper(), [r for r in detail if r.text or r.label != "beside"], "",
        ["gap as left", "hot temperature", "by", "checked by"], worst_reason(sheet),
    )  # fmt: skip
