"""An item of ``[[shafts]]``: its sheet and its card."""

from __future__ import annotations

from typing import Any

from gaugeblock.answer.decision import ASK, USE
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.propshafts import answer as shaft
from gaugeblock.driveline.propshafts.given import Propeller
from gaugeblock.driveline.propshafts.job import PropellerShaft
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_OWN = ("name", "where", "notes", "step")
# Where a refusal says that it arose -> the key of the item that is to be corrected, where that is not its own name.
_KEYS = {"driveline/shaft_tubes material": "material"}


def item_of(job: PropellerShaft, data: Refdata) -> Item:
    """The Item of one propeller shaft."""
    keys = [k for k in job.keys if k not in _OWN]
    given: dict[str, Any] = {k: getattr(job, k) or None for k in keys}
    asked = {k: _text(v) for k, v in given.items()}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    facts += [Row("notes", job.notes)] if job.notes else []
    try:
        sheet = shaft.judged(Propeller.read(given), asked, data, job.name)
    except GaugeblockError as error:
        where = _KEYS.get(error.where, error.where.replace(" ", "_"))
        task = Task(job.name, asked, shaft.VERB, shaft.LENGTH, data)
        sheet = task.refused(error, {error.where: where if where in keys else "notes"}, "length")
    return Item("driveline", job.name, facts, sheet, _card(job, sheet))


def _text(value: object) -> str | None:
    if isinstance(value, tuple):
        return ", ".join(v if isinstance(v, str) else v.text for v in value) or None
    return text_of(value)


_ON_CARD = (
    ("slip_travel", "slip joint, from ride height"),
    ("working_angle_true", "joint"),
    ("critical_speed", "whips at"),
)


def _card(job: PropellerShaft, sheet: Sheet) -> Card:
    tube = " x ".join(m.text for m in (job.od, job.wall) if m is not None)
    what = ", ".join(t for t in (tube, job.material, job.where) if t)
    boxes = [
        Box("joint to joint as made"),
        Box("slip left at full bump"),
        Box("yokes in line"),
        Box("by, date"),
        Box("checked by, date"),
    ]
    return Card(
        what or "tube not named",
        "",
        counted="shaft",
        notes=[f"Top speed {t}." if (t := _fastest(sheet)) else ""],
        boxes=boxes,
        table=_table(job, sheet),
        says=tuple(q for q, _ in _ON_CARD),
    )


def _fastest(sheet: Sheet) -> str:
    found = [f for f in sheet.figures if f.quantity == "driveshaft_speed"]
    return number_only(max(found, key=lambda f: f.typical), sheet.data) if found else ""


def _table(job: PropellerShaft, sheet: Sheet) -> list[tuple[str, str]]:
    """What is set and looked at beside the length."""
    if sheet.decision.kind not in (USE, ASK):
        return []
    rows = []
    length = next((f for f in sheet.figures if f.locator == "length"), None)
    if length is not None and length not in sheet.decision.figures:
        rows.append(("joint to joint, as given", number_only(length, sheet.data)))
    joints = 0
    most = max(len(job.shafts_side) - 1, 0)
    for figure in sheet.figures:
        if figure.quantity == "slip_travel":
            way = "goes in" if "inwards" in figure.conditions else "goes out"
            rows.append((f"slip joint {way}, at least", number_only(figure, sheet.data)))
        elif figure.quantity == "working_angle_true" and joints < most:
            joints += 1
            rows.append((f"joint {joints}, at ride height", number_only(figure, sheet.data)))
        elif figure.quantity == "critical_speed":
            rows.append(("whips at", number_only(figure, sheet.data)))
    return [("beside it", ""), *rows] if rows else []
