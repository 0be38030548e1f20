"""An item of ``[[brakes]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.lines.brakes import balance, circuit, hand, hose, words
from gaugeblock.lines.brakes.facts import brake_fact
from gaugeblock.lines.brakes.job import BALANCE, HAND, HOSE, Brake
from gaugeblock.lines.brakes.keys import ALL, SLAVE, Circuit
from gaugeblock.lines.brakes.rules import LEAK, RULES
from gaugeblock.lines.given import Given, count_of
from gaugeblock.tables.load import Refdata


def item_of(job: Brake, data: Refdata) -> Item:
    """The Item of one item of the job."""
    asked: dict[str, str | None] = {k: getattr(job, k) for k in _KEYS.get(job.kind or "", ALL)}
    facts = [Row("where", job.where or ""), *(Row(_SAID.get(k, k), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    sheet = _sheet(job, asked, data)
    return Item("lines", job.name, facts, sheet, _card(job, sheet, data))


_KEYS = {HAND: hand.ALL, HOSE: tuple(hose.MEASURES), BALANCE: (balance.KEY,)}


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
    "rated": "rated by its maker",
    "hose": "free length of the hose",
    "droop": "way at full droop",
    "lock": "way at full lock",
}


def _sheet(job: Brake, asked: dict[str, str | None], data: Refdata) -> Sheet:
    try:
        if job.kind == HAND:
            return hand.judged(Given(asked, hand.MEASURES), count_of(job.cables, "cables"), asked, data)
        if job.kind == HOSE:
            return hose.judged(Given(asked, hose.MEASURES), asked, data)
        if job.kind == BALANCE:
            return balance.judged(job.name, asked, data)
        return circuit.judged(Circuit(asked), asked, data)
    except GaugeblockError as error:
        verb, first = {HAND: (hand.VERB, "ratio"), HOSE: (hose.VERB, "hose")}.get(
            job.kind or "", (circuit.VERB, "master")
        )
        return Task(job.name, asked, verb, job.kind or "brake circuit", data).refused(
            error, {k: k for k in asked}, first
        )


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
    if job.kind == HOSE:
        what = ", ".join(t for t in (job.where, job.hose and f"{job.hose} long") if t)
        boxes = [
            Box("droop, clear", half=True),
            Box("lock, clear", half=True),
            Box("by, date"),
            Box("checked by, date"),
        ]
        return Card(what, boxes=boxes, says=("hose_span",))
    if job.kind == BALANCE:
        boxes = [Box(f"{said}, {end}", half=True) for said in balance.MEASURED for end in ("front", "rear")]
        return Card(job.where or "", boxes=[*boxes, Box("linings, valve"), Box("tried by, date")])
    what = ", ".join(t for t in (job.where, job.kind, job.bore, job.master and f"master {job.master}") if t)
    if job.kind == SLAVE:
        return Card(what, notes=[words.CLUTCH_BLEEDING], boxes=[Box("stroke measured"), Box("by, date")])
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
