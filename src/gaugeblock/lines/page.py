"""Job items of the domain lines -> Items: the line past what is hot, its rules, clips and joints."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock import units
from gaugeblock.answer.decision import decided
from gaugeblock.answer.item import Box, Card, Item, Row
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


def _card(job: Line, sheet: Sheet, data: Refdata) -> Card:
    needed = next((f for f in sheet.figures if f.quantity == "gap_needed"), None)
    limits = _limits(sheet)
    first = limits[0] if limits else needed
    verb = "KEEP AWAY" if first is not None and first is needed else "KEEP UNDER"
    sheet.decide(decided(verb, first, sheet.checks, "" if first else "Ask the maker of the line for its limit."))
    gap = job.gap or sheet.asked.get("gap") or ""
    notes = [
        f"Beside the {job.beside}{f', gap {gap}' if gap else ''}" if job.beside else "",
        f"Gap needed {printed(needed, data)} ({needed.trust})" if needed is not None and first is not needed else "",
        f"Measured {job.temperature}" if job.temperature else "",
        *(f"{f.key.get('item', 'limit')}: {printed(f, data)}" for f in limits[1:_SHOWN]),
    ]
    temperature = first.unit if first is not None and first is not needed else "degF"
    return Card(
        ", ".join(str(t) for t in (job.material, job.od, job.fluid, job.fluid_state) if t),
        (job.service or "").upper(),
        counted="line",
        notes=notes,
        boxes=[
            Box("gap as left", "in" if first is None else "", half=True),
            Box("pressure test", half=True),
            Box("temperature, hot", temperature),
            Box("temperature, after shut-down", temperature),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )
