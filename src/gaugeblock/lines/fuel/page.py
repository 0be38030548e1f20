"""An item of ``[[fuel]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.lines.fuel import supply
from gaugeblock.lines.fuel.job import Fuel
from gaugeblock.lines.fuel.keys import ALL, Supply
from gaugeblock.tables.load import Refdata


def item_of(job: Fuel, data: Refdata) -> Item:
    """The Item of one item of the job."""
    asked: dict[str, str | None] = {k: job.filter_rating if k == "filter" else getattr(job, k) for k in ALL}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    try:
        sheet = supply.judged(Supply(asked), asked, data)
    except GaugeblockError as error:
        keys = {**{k: k for k in ALL}, "lines/fuels item": "density", "lines/fuel_supply subject": "consumption"}
        sheet = Task(job.name, asked, supply.VERB, "fuel supply", data).refused(error, keys, "fuel")
    return Item("lines", job.name, facts, sheet, _card(job, sheet))


def _card(job: Fuel, sheet: Sheet) -> Card:
    sprayed = f"{job.injectors} injectors of {job.injector}" if job.injectors and job.injector else None
    what = ", ".join(t for t in (job.where, job.fuel or "gasoline", job.power, sprayed, job.system) if t)
    lost = [f for f in sheet.figures if f.quantity == "line_loss"]
    notes = [f"The {f.key['line']} loses {number_only(f, sheet.data)}" for f in lost]
    boxes = [
        Box("pressure", "psi", half=True),
        Box("volts at the plug", "V", half=True),
        Box("flow measured", half=True),
        Box("joints dry", half=True),
        Box("by, date"),
        Box("checked by, date"),
    ]
    return Card(what, notes=notes, boxes=boxes, says=("line_loss",))
