"""An item of ``[[brakes]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.lines.brakes import circuit, hand, words
from gaugeblock.lines.brakes.facts import LEAK, RULES, brake_fact
from gaugeblock.lines.brakes.job import HAND, Brake
from gaugeblock.lines.brakes.keys import ALL, SLAVE, Circuit
from gaugeblock.lines.given import Given, count_of
from gaugeblock.tables.load import Refdata


def item_of(job: Brake, data: Refdata) -> Item:
    """The Item of one item of the job."""
    is_hand = job.kind == HAND
    asked: dict[str, str | None] = {k: getattr(job, k) for k in (hand.ALL if is_hand else ALL)}
    facts = [Row("where", job.where or ""), *(Row(_SAID.get(k, k), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    sheet = _hand(job, asked, data) if is_hand else _circuit(job, asked, data)
    return Item("lines", job.name, facts, sheet, _card(job, sheet, data))


_SAID = {
    "force": "force of the foot or hand",
    "master": "bore of the master cylinder",
    "ratio": "lever ratio",
    "assist": "booster",
    "stroke": "stroke of the master cylinder",
    "bore": "bore of the pistons",
    "pistons": "pistons of one wheel",
    "play": "free play",
    "pedal": "whole way of the pedal",
    "was": "bore before the swap",
    "lever": "whole way of the lever",
}


def _circuit(job: Brake, asked: dict[str, str | None], data: Refdata) -> Sheet:
    try:
        return circuit.judged(Circuit(asked), asked, data)
    except GaugeblockError as error:
        task = Task(job.name, asked, circuit.VERB, "brake circuit", data)
        return task.refused(error, {k: k for k in ALL}, "master")


def _hand(job: Brake, asked: dict[str, str | None], data: Refdata) -> Sheet:
    try:
        return hand.judged(Given(asked, hand.MEASURES), count_of(job.cables, "cables"), asked, data)
    except GaugeblockError as error:
        task = Task(job.name, asked, hand.VERB, "hand brake", data)
        return task.refused(error, {k: k for k in hand.ALL}, "ratio")


def _card(job: Brake, sheet: Sheet, data: Refdata) -> Card:
    if job.kind == HAND:
        what = ", ".join(t for t in (job.where, job.force, job.cables and f"{job.cables} cables") if t)
        boxes = [
            Box("clicks", half=True),
            Box("held on slope", "%", half=True),
            Box("by, date"),
            Box("checked by, date"),
        ]
        return Card(what, boxes=boxes, says=("lever_travel",))
    what = ", ".join(t for t in (job.where, job.kind, job.bore, job.master and f"master {job.master}") if t)
    if job.kind == SLAVE:
        return Card(what, notes=[words.BLEEDING], boxes=[Box("stroke measured"), Box("by, date")])
    rule = RULES[LEAK][0]
    test = brake_fact(LEAK, place=rule.place, data=data)
    force, time = (number_only(f, data) for f in test.figures)
    boxes = [
        Box(f"held {time}", half=True),
        Box("pedal taken", "%", half=True),
        Box("joints dry", half=True),
        Box("hoses at lock", half=True),
        Box("by, date"),
        Box("checked by, date"),
    ]
    notes = [words.BLEEDING, f"Leak test: {force} on the pedal for {time} ({rule.place})"]
    return Card(what, notes=notes, boxes=boxes, says=("piston_force", "stroke_needed", "pedal_travel"))
