"""An item of ``[[gearing]]``: its sheet and its card with a table of engine speeds."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears import answer as gearing
from gaugeblock.driveline.gears.given import Gearing
from gaugeblock.driveline.job import GearingItem
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata

# Where a refusal says that it arose -> the key of the item.
_KEYS = {k.replace("_", " "): k for k in gearing.KEYS}


def item_of(job: GearingItem, data: Refdata) -> Item:
    """The Item of one gearing."""
    lists = {"ratios": ", ".join(job.ratios) or None, "gears": ", ".join(job.gears) or None}
    asked: dict[str, str | None] = {k: lists[k] if k in lists else getattr(job, k) for k in gearing.KEYS}
    sheet = _sheet(job, asked, data)
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    card = Card(
        ", ".join(t for t in (job.where, asked["ratios"], job.revolutions or job.tyre) if t),
        counted="axle",
        notes=[f"At {job.speed}." if job.speed else ""],
        boxes=[Box("ratio fitted"), Box("by, date"), Box("checked by, date")],
        table=[tuple(row) for row in sheet.grid],
    )
    return Item("driveline", job.name, facts, sheet, card)


def _sheet(job: GearingItem, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, gearing.VERB, "engine speed", data)
    missing = [k for k in ("ratios", "speed") if not getattr(job, k)]
    if job.tyre is None and job.revolutions is None:
        missing.append("tyre")
    if missing:
        return task.missing(missing)
    try:
        of = Gearing.read({**asked, "ratios": job.ratios, "gears": job.gears})
        return gearing.judged(of, asked, data)
    except GaugeblockError as error:
        return task.refused(error, _KEYS, "ratios")
