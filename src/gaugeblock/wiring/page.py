"""Items of ``[[circuits]]`` and ``[[batteries]]`` -> Items: their sheets and cards."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError, Problem
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata
from gaugeblock.wiring import circuit
from gaugeblock.wiring.answering import VERB
from gaugeblock.wiring.conductor import metric_of
from gaugeblock.wiring.job import Battery, Circuit
from gaugeblock.wiring.keys import STARTER as STARTER_CABLE
from gaugeblock.wiring.keys import circuit_of

_KEYS = ("kind", "current", "length", "voltage", "drop", "insulation", "air", "bundle")
_MORE = ("earth_drop", "fuse", "connector", "relay", "wire", "wires")
# Where a refusal says that it arose -> the key of the item that is to be corrected.
_WHERE = {**{k: k for k in (*_KEYS, "return", *_MORE)}, "wiring/wire item": "insulation", "number": "current"}
_PARKED = ("draw", "battery", "reserve", "days", "used")
_NEEDED = ("current", "length", "voltage")


def problems(item: Circuit | Battery, data: Refdata) -> Iterator[Problem]:
    """Nothing stops the job here: what the tables do not know of an item is that item's question."""
    yield from ()


def item(job: Circuit | Battery, shop: Shop, data: Refdata) -> Item:
    """The Item of one item of the job."""
    if isinstance(job, Battery):
        return _battery(job, data)
    asked: dict[str, str | None] = {k: getattr(job, k) for k in _KEYS}
    asked |= {"return": job.back, **{k: getattr(job, k) for k in _MORE}}
    sheet = _sheet(job, asked, data)
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    return Item("wiring", job.name, facts, sheet, card_of(job, sheet))


def _battery(job: Battery, data: Refdata) -> Item:
    from gaugeblock.wiring import parked

    asked: dict[str, str | None] = {k: getattr(job, k) for k in _PARKED}
    task = Task(job.name, asked, parked.VERB, "time parked", data)
    missing = [k for k in ("draw", "battery") if not asked[k] and not (k == "battery" and asked["reserve"])]
    try:
        sheet = task.missing(missing) if missing else parked.judged(parked.parked_of(asked), asked, data)
    except GaugeblockError as error:
        sheet = task.refused(error, {k: k for k in _PARKED}, "draw")
    facts = [Row("where", job.where or ""), *(Row(k, t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    boxes = [Box("draw measured", "mA", half=True), Box("battery at rest", "V", half=True), Box("by, date")]
    what = ", ".join(t for t in (job.where, job.battery or job.reserve, job.draw) if t)
    return Item("wiring", job.name, facts, sheet, Card(what, boxes=boxes))


def card_of(job: Circuit, sheet: Sheet) -> Card:
    """Its card: boxes for what was fitted and what the circuit loses."""
    fitted = [Box("wire fitted", "AWG", half=True)]
    if job.kind != STARTER_CABLE:
        fitted.append(Box("fuse fitted", "A", half=True))
    used = sheet.decision.figure
    metric = metric_of(used.key["size"], sheet.data) if used is not None else None
    return Card(
        ", ".join(t for t in (job.where, job.current, job.length, job.voltage) if t),
        f"or {metric}" if metric else "",
        boxes=[*fitted, Box("drop measured", "V", half=True), Box("by, date", half=len(fitted) > 1)],
        says=("fuse_rating", "voltage_drop"),
    )


def _sheet(job: Circuit, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, VERB, "wire", data)
    missing = [k for k in _NEEDED if not asked[k]]
    if missing:
        return task.missing(missing)
    try:
        return circuit.judged(circuit_of(asked, data), asked, data)
    except GaugeblockError as error:
        return task.refused(error, _WHERE, "current")
