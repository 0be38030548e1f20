"""An item of ``[[shims]]``: its sheet and its card, which is the shim log."""

from __future__ import annotations

from typing import Any

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.shims import answer as shims
from gaugeblock.driveline.shims.given import KEYS, Shims
from gaugeblock.driveline.shims.job import ShimLog
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of


def item_of(job: ShimLog, data: Refdata) -> Item:
    """The Item of one shim pack."""
    given: dict[str, Any] = {k: getattr(job, k) for k in KEYS}
    asked = {k: v if isinstance(v, str) else text_of(v) for k, v in given.items()}
    facts = [Row("where", job.where or ""), Row("axle", job.axle or "")]
    facts += [Row(k.replace("_", " "), t) for k, t in asked.items() if t]
    facts += [Row("notes", job.notes)] if job.notes else []
    try:
        sheet = shims.judged(Shims.read(given), asked, data)
    except GaugeblockError as error:
        task = Task(job.name, asked, shims.MOVE, shims.TYPED, data)
        sheet = task.refused(error, {k.replace("_", " "): k for k in KEYS}, "notes")
    return Item("driveline", job.name, facts, sheet, _card(job, sheet))


def _card(job: ShimLog, sheet: Sheet) -> Card:
    packs = [f for f in sheet.figures if f.quantity == "shim_pack" and f.conditions]
    table = [("fit", ""), *((f.conditions, number_only(f, sheet.data)) for f in packs)] if packs else []
    return Card(
        ", ".join(t for t in (job.axle, job.where, sheet.title) if t),
        "",
        counted="setting",
        notes=["Keep every shim that comes out, with its side and its size."],
        boxes=[
            Box("ring gear's side, out / in"),
            Box("other side, out / in"),
            Box("backlash, four places"),
            Box("by, date"),
            Box("checked by, date"),
        ],
        table=table,
    )
