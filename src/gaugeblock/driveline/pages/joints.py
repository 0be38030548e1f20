"""An item of ``[[joints]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import job as job_tables
from gaugeblock.driveline.joints import answer as joint
from gaugeblock.driveline.joints.checks import CANCELS
from gaugeblock.driveline.joints.given import Joints, View, views
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_ONE = ("angle", "second", "top", "second_top", "phasing", "speed")


def item_of(job: job_tables.Joints, data: Refdata) -> Item:
    """The Item of the joints of one shaft."""
    asked: dict[str, str | None] = {k: text_of(getattr(job, k)) for k in _ONE}
    for key in ("shafts_side", "shafts_top"):
        asked[key] = ", ".join(m.text for m in getattr(job, key)) or None
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    if job.notes:
        facts.append(Row("notes", job.notes))
    return Item("driveline", job.name, facts, _sheet(job, asked, data), _card(job, asked))


def _sheet(job: job_tables.Joints, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, joint.VERB, CANCELS, data)
    if not job.shafts_side and job.angle is None:
        return task.missing(["angle"])
    pairs = ((job.angle, job.top), (job.second, job.second_top))
    angles = () if job.shafts_side else tuple(View(side, top) for side, top in pairs if side is not None)
    try:
        of = Joints(angles, views(job.shafts_side, job.shafts_top), job.phasing, job.speed)
        return joint.judged(of, asked, data)
    except GaugeblockError as error:
        return task.refused(error, {"speed": "speed", "phasing": "phasing"}, "angle")


def _card(job: job_tables.Joints, asked: dict[str, str | None]) -> Card:
    said = asked["shafts_side"] or " and ".join(t for t in (asked["angle"], asked["second"]) if t)
    return Card(
        ", ".join(t for t in (job.where, said) if t),
        (job.phasing or "").upper(),
        counted="shaft",
        notes=[f"Top view {asked['shafts_top']}." if asked["shafts_top"] else ""],
        boxes=[
            Box("input shaft", "deg", half=True),
            Box("propeller shaft", "deg", half=True),
            Box("output shaft", "deg", half=True),
            Box("yokes in line", half=True),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )
