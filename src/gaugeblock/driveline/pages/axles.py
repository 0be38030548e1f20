"""An item of ``[[axles]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.axles import answer as axle
from gaugeblock.driveline.axles.comparing import ROOM
from gaugeblock.driveline.axles.job import AxleShaft
from gaugeblock.driveline.axles.judging import REACHES
from gaugeblock.driveline.carrying import VERB
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_OWN = ("name", "where", "notes", "step")
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
    facts += [Row("notes", job.notes)] if job.notes else []
    sheet = _sheet(job, asked, data)
    return Item("driveline", job.name, facts, sheet, _card(job, sheet, asked))


def _text(value: object) -> str | None:
    if isinstance(value, tuple):
        return ", ".join(value) or None
    if isinstance(value, int):
        return str(value)
    return text_of(value)  # type: ignore[arg-type]


_SHOWN = 2


def _card(job: AxleShaft, sheet: Sheet, asked: dict[str, str | None]) -> Card:
    what = ", ".join(str(t) for t in (job.material, job.treatment, job.temper, job.diameter) if t)
    reached = next((f for f in sheet.figures if f.quantity == "shaft_torque"), None)
    notes = [f"At most {number_only(reached, sheet.data)} reaches it." if reached is not None else ""]
    boxes = [Box("steel as certified"), Box("hardness measured"), Box("by, date"), Box("checked by, date")]
    table = _stronger(sheet, asked)
    return Card(
        what or "steel not named", counted="shaft", notes=notes, boxes=boxes, table=table, says=("shaft_torque",)
    )


def _stronger(sheet: Sheet, asked: dict[str, str | None]) -> list[tuple[str, str]]:
    """What stronger steels would do, where this one has little room."""
    factor = next((f for f in sheet.decision.figures if f.quantity == "torsional_yield_factor"), None)
    if factor is None or factor.typical >= ROOM:
        return []
    lines = axle.axle_stronger(asked, sheet.data)[:_SHOWN]
    named = [", ".join(v for v in line.key.values() if v != "any") for line in lines]
    carried = [number_only(line.sheet.decision.figures[0], sheet.data) for line in lines]
    return [("of another steel", "carries"), *zip(named, carried, strict=True)] if lines else []


def _sheet(job: AxleShaft, asked: dict[str, str | None], data: Refdata) -> Sheet:
    try:
        return axle.axle(**asked, data=data)
    except GaugeblockError as error:
        task = Task(job.name, asked, VERB, REACHES, data)
        keys = {**dict.fromkeys(_SAME, ""), **_KEYS}
        where = error.where if keys.get(error.where) == "" else _KEYS.get(error.where, "")
        return task.refused(error, {error.where: where or "material"}, "material")
