"""An item of ``[[axles]]``: its sheet and its card."""

from __future__ import annotations

from typing import Any

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.axles import answer as axle
from gaugeblock.driveline.axles.comparing import ROOM, stronger
from gaugeblock.driveline.axles.form import Form
from gaugeblock.driveline.axles.job import ORDER, AxleShaft
from gaugeblock.driveline.axles.judging import REACHES, judged
from gaugeblock.driveline.axles.order import is_ordered, order
from gaugeblock.driveline.axles.pull import Pull
from gaugeblock.driveline.carrying import VERB
from gaugeblock.driveline.keys import Shaft
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_OWN = ("name", "where", "notes", "step", *ORDER)
# Where a refusal says that it arose -> the key of the item that is to be corrected.
_KEYS = {
    "driveline/steels steel": "material",
    "driveline/steels strength": "material",
    "driveline/steels treatment": "treatment",
    "driveline/steels temper": "temper",
    "driveline/steels section": "section",
    "driveline/hardness scale": "hardness",
    "case depth": "case_depth",
    "core hardness": "core_hardness",
    "wheel load": "wheel_load",
    "axle load": "axle_load",
    "pitch": "spline",
    "number": "gear",
}
_SAME = ("hardness", "bore", "parts", "diameter", "shoulder", "fillet", "teeth", "height", "converter", "root")


def item_of(job: AxleShaft, data: Refdata) -> Item:
    """The Item of one axle shaft."""
    asked = {k: _text(getattr(job, key.name)) for k, key in job.keys.items() if k not in _OWN}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    facts += [Row(k.replace("_", " "), t) for k in ORDER if (t := _text(getattr(job, k)))]
    facts += [Row("notes", job.notes)] if job.notes else []
    given = {k: _given(getattr(job, key.name)) for k, key in job.keys.items() if k not in _OWN}
    try:
        of = axle.shaft_of(given, data), axle.form_of(given), Pull.read(given)
        sheet = judged(*of, asked, data)
    except GaugeblockError as error:
        return Item(
            "driveline", job.name, facts, (refused := _refused(job, error, asked, data)), _card(job, refused, [])
        )
    if is_ordered(job):
        sheet = sheet.replace(drawings=(*sheet.drawings, order(job, sheet)))
    return Item("driveline", job.name, facts, sheet, _card(job, sheet, _stronger(of, sheet, asked)))


def _given(value: Any) -> Any:
    """What the answer takes of a value of the job: what was read stays read."""
    return (value or None) if isinstance(value, tuple) else str(value) if isinstance(value, int) else value


def _text(value: object) -> str | None:
    if isinstance(value, tuple):
        return ", ".join(value) or None
    if isinstance(value, int):
        return str(value)
    return text_of(value)


_SHOWN = 2


def _card(job: AxleShaft, sheet: Sheet, table: list[tuple[str, str]]) -> Card:
    what = ", ".join(str(t) for t in (job.material, job.treatment, job.temper, job.diameter) if t)
    reached = next((f for f in sheet.figures if f.quantity == "shaft_torque"), None)
    notes = [f"At most {number_only(reached, sheet.data)} reaches it." if reached is not None else ""]
    boxes = [Box("steel as certified"), Box("hardness measured"), Box("by, date"), Box("checked by, date")]
    return Card(
        what or "steel not named", counted="shaft", notes=notes, boxes=boxes, table=table, says=("shaft_torque",)
    )


def _stronger(of: tuple[Shaft, Form, Pull], sheet: Sheet, asked: dict[str, str | None]) -> list[tuple[str, str]]:
    """What stronger steels would do, where this one has little room."""
    factor = next((f for f in sheet.decision.figures if f.quantity == "torsional_yield_factor"), None)
    if factor is None or factor.typical >= ROOM:
        return []
    lines = stronger(*of, asked, sheet.data, _SHOWN)
    named = [", ".join(v for v in line.key.values() if v != "any") for line in lines]
    carried = [number_only(line.sheet.decision.figures[0], sheet.data) for line in lines]
    return [("of another steel", "carries"), *zip(named, carried, strict=True)] if lines else []


def _refused(job: AxleShaft, error: GaugeblockError, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The sheet of a shaft of which something cannot be read or is not known: its question."""
    task = Task(job.name, asked, VERB, REACHES, data)
    keys = {**dict.fromkeys(_SAME, ""), **_KEYS}
    where = error.where if keys.get(error.where) == "" else _KEYS.get(error.where, "")
    return task.refused(error, {error.where: where or "material"}, "material")
