"""The small tasks of an exhaust in a job: a joint, the outlet, the ignition beside headers."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.exhaust import ignition, joint, outlet
from gaugeblock.exhaust.job import IGNITION, JOINT, OUTLET, Exhaust
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_KEYS = {
    JOINT: ("joint", "od", "wall", "socket", "overlap", "angle", "tried", "clamp"),
    OUTLET: ("jurisdiction",),
    IGNITION: ("maker_gap", "gap", "reach", "old_reach", "heat_range", "lead", "timing_before", "timing_after"),
}
_BY = (Box("by, date", half=True), Box("checked by, date", half=True))
_BOXES = {
    JOINT: (Box("overlap as made", "in", half=True), Box("found tight by", half=True), *_BY),
    OUTLET: (Box("rule of the place", half=True), Box("past the body", "in", half=True), *_BY),
    IGNITION: (Box("timing before", "deg", half=True), Box("timing after", "deg", half=True), *_BY),
}
_VERBS = {JOINT: joint.VERB, OUTLET: outlet.VERB, IGNITION: ignition.VERB}


def small(job: Exhaust, facts: list[Row], data: Refdata) -> Item:
    """The Item of a joint, an outlet or the ignition."""
    kind = job.kind or JOINT
    asked = {k: text_of(getattr(job, k)) for k in _KEYS[kind]}
    sheet = _sheet(job, kind, asked, data)
    more = [Row(k.replace("_", " "), t) for k, t in asked.items() if t and not any(r.text == t for r in facts)]
    what = ", ".join(
        t for t in (job.where, job.joint, text_of(job.od), job.clamp, job.maker_gap, job.jurisdiction) if t
    )
    notes = [f"{_SAID[f.quantity]} {number_only(f, data)}" for f in _beside(sheet)]
    says = tuple(f.quantity for f in _beside(sheet))
    return Item("exhaust", job.name, [*facts, *more], sheet, Card(what, boxes=_BOXES[kind], notes=notes, says=says))


# What a card says beside its decision; what is of another service or one vehicle stays at the desk.
_SAID = {"overlap_minimum": "overlap at least", "tightening_torque": "usual torque of the clamp"}


def _beside(sheet: Sheet) -> list[Figure]:
    shown = {f.id for f in sheet.decision.figures}
    of = [f for f in sheet.figures if f.quantity in _SAID and f.id not in shown]
    mine = [f for f in of if f.key.get("service") in ("vehicle", "any")]
    return list({f.quantity: f for f in reversed(mine)}.values())


def _sheet(job: Exhaust, kind: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, _VERBS[kind], kind, data)
    try:
        if kind == OUTLET:
            return outlet.exhaust_outlet(asked["jurisdiction"], data=data)
        if kind == IGNITION:
            return ignition.judged(asked, data)
        if not asked["joint"]:
            return task.missing(["joint"])
        return joint.judged(joint.kind_of(asked["joint"]), asked, data)
    except GaugeblockError as error:
        first = {JOINT: "joint", OUTLET: "jurisdiction", IGNITION: "maker_gap"}[kind]
        return task.refused(
            error, {**{k: k for k in _KEYS[kind]}, "kind": "joint", "fasteners/part_torques part": "clamp"}, first
        )
