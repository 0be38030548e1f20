"""Job items of the domain lines -> Items: the line past what is hot, its rules, clips and joints."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock import units
from gaugeblock.answer.item import Card, Item, Row, worst_reason
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Placed
from gaugeblock.errors import InputError, Problem
from gaugeblock.figure import Figure
from gaugeblock.job.model import Shop
from gaugeblock.lines.item import JUDGES
from gaugeblock.lines.job import Line
from gaugeblock.lines.keys import line_of_part
from gaugeblock.lines.paths import route_of_part
from gaugeblock.lines.placed import placed_line
from gaugeblock.tables.load import Refdata

_ALWAYS = ("service", "material", "fluid", "gap")
_SHOWN = 3


def problems(item: Line, data: Refdata) -> Iterator[Problem]:
    """Points that cannot be bent to their radius. An unknown material or fluid is an open question of the sheet."""
    try:
        placed_line(item, data)
    except InputError as error:
        yield Problem("points" if error.asked == item.name else "hot.points", None, error.why, error.nearest, error.do)


def placed(line: Line, _item: Item, data: Refdata) -> list[Placed]:
    """What of a line stands in the vehicle."""
    return placed_line(line, data)


def item(job: Line, shop: Shop, data: Refdata) -> Item:
    """The Item of one line of the job."""
    sheet = route_of_part(job, draw=True, data=data, is_metric=None if shop.units is None else shop.units == "metric")
    given = line_of_part(job)
    facts = [Row("where", job.where or "")]
    facts += [
        Row(k.replace("_", " "), text or "") for k, text in given.asked().items() if text is not None or k in _ALWAYS
    ]
    if job.notes:
        facts.append(Row("notes", job.notes))
    by_paths = None if job.gap is not None else sheet.asked["gap"]
    if by_paths is not None:
        facts = [Row("gap", f"{by_paths}, from the paths") if f.label == "gap" else f for f in facts]
    return Item("lines", job.name, facts, sheet, _card(job, sheet, data))


def _limits(sheet: Sheet) -> list[Figure]:
    """What the line and its fluid stand, the lowest first: of the sheet's figures and of what its checks ask."""
    asked = [c.required.figure for c in sheet.checks if c.required is not None and c.required.figure is not None]
    found = {f.id: f for f in (*sheet.figures, *asked) if f.quantity in JUDGES}
    return sorted(found.values(), key=lambda f: units.to_base(f.least, f.unit))


def _gap(job: Line, sheet: Sheet) -> Row:
    """The gap as measured, else as the paths give it."""
    by_paths = sheet.asked["gap"]
    if job.gap is None and by_paths is not None:
        return Row("gap (from the drawn routes)", by_paths)
    return Row("gap measured", _text(job.gap))


def _text(value: object) -> str:
    return "" if value is None else str(value)


def _card(job: Line, sheet: Sheet, data: Refdata) -> Card:
    needed = next((f for f in sheet.figures if f.quantity == "gap_needed"), None)
    limits = _limits(sheet)
    first = limits[0] if limits else needed
    detail = [Row("beside", job.beside or ""), _gap(job, sheet)]
    if needed is not None and first is not needed:
        detail.append(Row("gap needed", f"{printed(needed, data)} ({needed.trust})"))
    detail.append(Row("temperature measured", _text(job.temperature)))
    detail += [Row(f.key.get("item", "limit"), printed(f, data)) for f in limits[1:_SHOWN]]
    what = ", ".join(str(t) for t in (job.where, job.material, job.od, job.fluid, job.fluid_state) if t)
    verb = "KEEP AWAY" if first is not None and first is needed else "KEEP UNDER"
    return Card(
        verb,
        printed(first, data) if first is not None else "",
        "",
        first.trust if first is not None else "NO FIGURE",
        what,
        (job.service or "").upper(),
        [r for r in detail if r.text or r.label != "beside"],
        "",
        ["gap as left", "hot temperature", "by", "checked by"],
        worst_reason(sheet),
    )
