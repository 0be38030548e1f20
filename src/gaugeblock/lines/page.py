"""Job items of the domain lines -> Items: the line past what is hot, its rules, clips and joints."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.answer.decision import ASK, USE, Decision
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.wing import loaded
from gaugeblock.bodies import Placed
from gaugeblock.errors import InputError, Problem
from gaugeblock.figure import Figure
from gaugeblock.job.model import Shop
from gaugeblock.lines.job import HotPipe, Line
from gaugeblock.lines.keys import label_of, line_of_part
from gaugeblock.lines.paths import route_of_part
from gaugeblock.lines.placed import placed_line
from gaugeblock.tables.load import Refdata
from gaugeblock.warmth.item import JUDGES, OPEN_STATES, is_limit
from gaugeblock.warmth.verdict import CLOSE_K, low_end

if TYPE_CHECKING:
    from gaugeblock.lines.brakes.job import Brake
    from gaugeblock.lines.fuel.job import Fuel

_ALWAYS = ("service", "material", "fluid", "gap")
_SHOWN = 2


def problems(item: Line | Brake | Fuel, data: Refdata) -> Iterator[Problem]:
    """Points that cannot be bent to their radius. An unknown material or fluid is an open question of the sheet."""
    if not isinstance(item, Line):
        return
    if not item.points and not isinstance(item.hot, HotPipe):
        return  # an item that is not sound comes with its plain texts alone, maybe without a name
    try:
        placed_line(item, data)
    except InputError as error:
        yield Problem("points" if error.asked == item.name else "hot.points", None, error.why, error.nearest, error.do)


def placed(line: Line | Brake | Fuel, _item: Item, data: Refdata) -> list[Placed]:
    """What of a line stands in the vehicle."""
    return placed_line(line, data) if isinstance(line, Line) else []


def item(job: Line | Brake | Fuel, shop: Shop, data: Refdata) -> Item:
    """The Item of one item of the job."""
    if not isinstance(job, Line):
        made: Item = loaded(f"gaugeblock.lines.{_PAGES[type(job).__name__]}").item_of(job, data)
        return made
    is_metric = None if shop.units is None else shop.units == "metric"
    sheet = route_of_part(job, draw=True, data=data, is_metric=is_metric)
    given = line_of_part(job)
    facts = [Row("where", job.where or "")]
    facts += [
        Row(_SAID.get(k, label_of(k)), t or "") for k, t in given.asked().items() if t is not None or k in _ALWAYS
    ]
    if job.notes:
        facts.append(Row("notes", job.notes))
    by_paths = None if job.gap is not None else sheet.asked["gap"]
    if by_paths is not None:
        facts = [Row("gap", f"{by_paths} (from the drawn routes)") if f.label == "gap" else f for f in facts]
    return Item("lines", job.name, facts, sheet, _card(job, sheet, is_metric))


# The page of an item of another table, by its model: what a job does not have is not loaded.
_PAGES = {"Brake": "brakes.page", "Fuel": "fuel.page"}
# What the desk calls a key where its own name is no word of the trade.
_SAID = {
    "od": "outside diameter",
    "pressure": "highest pressure",
    "temperature": "temperature measured",
    "temperature_by": "measured with",
    "hot_od": "diameter of the hot part",
    "hot_temperature": "temperature of the hot part",
    "hot_finish": "surface of the hot part (emissivity)",
    "finish": "surface of the line (emissivity)",
    "shield_finish": "surface of the shield (emissivity)",
    "sleeve_finish": "surface of the sleeve (emissivity)",
    "air": "air, driving or idling",
    "soak_air": "air after shut-down",
    "speed": "speed of the air",
    "line_limit": "limit by the line's maker",
    "line_limit_from": "from",
    "fluid_limit": "boiling point by the fluid's maker",
    "fluid_limit_from": "from",
    "factor_on_burst": "safety factor on burst",
    "factor_on_yield": "safety factor on yield",
    "anchors": "exhaust between its anchors",
    "droop": "way at full droop",
    "lock": "way at full lock",
}


def _others(sheet: Sheet) -> list[Figure]:
    """What else the line and its fluid stand, the lowest first; nothing while it is open what they are."""
    if sheet.decision.kind != USE:
        return []
    shown = {f.id for f in sheet.decision.figures}
    asked = [c.required.figure for c in sheet.checks if c.required is not None and c.required.figure is not None]
    found = {f.id: f for f in (*sheet.figures, *asked) if f.quantity in JUDGES and f.id not in shown}
    limits = [f for f in found.values() if is_limit(f, sheet.data)]
    return sorted(limits, key=lambda f: units.to_base(f.least, f.unit))


def _whose(limit: Figure) -> str:
    """Whose limit it is, with its state."""
    state = limit.key.get("state", "")
    return ", ".join(p for p in (limit.key.get("item", "limit"), state) if p and p not in OPEN_STATES)


def _to_read(decision: Decision, hot: str | None) -> str:
    """What a crayon or thermocouple may read under the limit that stands large: what it is good to is kept free."""
    limit = decision.figures[0] if decision.kind in (USE, ASK) and decision.figures else None
    if limit is None or limit.quantity not in JUDGES:
        return ""
    unit = hot or limit.unit
    room = units.from_base(CLOSE_K, f"delta_{unit}")
    return f"May read {low_end(limit, unit) - room:.0f} {unit} at most: a reading is good to {room:.0f} {unit}"


def _card(job: Line, sheet: Sheet, is_metric: bool | None) -> Card:
    data, decision = sheet.data, sheet.decision
    hot = "degF" if is_metric is False else "degC" if is_metric else None
    needed = next((f for f in sheet.figures if f.quantity == "gap_needed"), None)
    gap = job.gap or sheet.asked.get("gap") or ""
    far = None if is_metric is None else "mm" if is_metric else "in"
    notes = [
        _to_read(decision, hot) if job.margin is None else "",
        f"Beside the {job.beside}{f', gap {gap}' if gap else ''}" if job.beside else "",
        f"Gap needed {number_only(needed, data, far)} ({needed.trust})" if needed is not None else "",
        f"Measured {job.temperature}" if job.temperature else "",
        *(f"{_whose(f)}: {number_only(f, data, hot)}" for f in _others(sheet)[:_SHOWN]),
    ]
    temperature = hot or (decision.figures[0].unit if decision.figures else "degF")
    return Card(
        ", ".join(str(t) for t in (job.material, job.od, job.fluid, job.fluid_state) if t),
        (job.service or "").upper(),
        counted="line",
        notes=notes,
        boxes=[
            Box("gap as left", "mm" if is_metric else "in", half=True),
            Box("pressure test", half=True),
            Box("temperature, hot", temperature),
            Box("temperature, after shut-down", temperature),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )
