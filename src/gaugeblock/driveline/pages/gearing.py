"""An item of ``[[gearing]]``: its sheet and its card with a table of engine speeds."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import gearing
from gaugeblock.driveline.job import GearingItem
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata

_KEYS = {
    "ratios": "ratios",
    "gears": "gears",
    "tyre": "tyre",
    "revolutions": "revolutions",
    "speed": "speed",
    "transfer": "transfer",
}


def item_of(job: GearingItem, data: Refdata) -> Item:
    """The Item of one gearing."""
    asked: dict[str, str | None] = {
        "ratios": ", ".join(job.ratios) or None,
        "tyre": job.tyre,
        "revolutions": job.revolutions,
        "speed": job.speed,
        "gears": ", ".join(job.gears) or None,
        "transfer": job.transfer,
    }
    sheet = _sheet(job, asked, data)
    facts = [Row("where", job.where or ""), *(Row(k, t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    card = Card(
        ", ".join(t for t in (job.where, asked["ratios"], job.revolutions or job.tyre) if t),
        counted="axle",
        notes=[f"At {job.speed}." if job.speed else ""],
        boxes=[Box("ratio fitted"), Box("by, date"), Box("checked by, date")],
        table=_table(sheet),
    )
    return Item("driveline", job.name, facts, sheet, card)


def _table(sheet: Sheet) -> list[tuple[str, ...]]:
    """Gears down, ratios across; none where nothing was worked out or something is doubtful."""
    speeds = [f for f in sheet.figures if f.quantity == "engine_speed"] if sheet.decision.kind in ("use", "ask") else []
    axles = list(dict.fromkeys(f.key["axle"] for f in speeds))
    gears = sorted({(f.key["number"], f.key["gear"]) for f in speeds}, key=lambda g: int(g[0].split()[-1]))
    at = {(f.key["axle"], f.key["number"]): number_only(f, sheet.data) for f in speeds}
    head = ("gear", *(f"axle {a}" for a in axles))
    return [head, *((ratio, *(at[a, number] for a in axles)) for number, ratio in gears)] if speeds else []


def _sheet(job: GearingItem, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, gearing.VERB, "engine speed", data)
    missing = [k for k in ("ratios", "speed") if not getattr(job, k)]
    if job.tyre is None and job.revolutions is None:
        missing.append("tyre")
    if missing:
        return task.missing(missing)
    try:
        of = gearing.Gearing(
            job.ratios,
            tuple(gearing.ratio_measure(g, "gears") for g in job.gears or ("1",)),
            job.tyre,
            units.parse_measure(job.revolutions, "revolutions per length", "revolutions") if job.revolutions else None,
            units.parse_measure(job.speed or "", "speed", "speed"),
            gearing.ratio_measure(job.transfer, "transfer") if job.transfer else None,
        )
        return gearing.judged(of, asked, data)
    except GaugeblockError as error:
        return task.refused(error, _KEYS, "ratios")
