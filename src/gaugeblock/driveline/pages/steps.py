"""A step of a set-up of ``[[driveline]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.job import Driveline
from gaugeblock.driveline.keys import Maker, Step
from gaugeblock.driveline.setups import answer as setup
from gaugeblock.driveline.setups.settling import CHECK
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_KEYS = {"driveline/setup component": "component", "driveline/setup step": "setting", "driveline/setup wear": "wear"}


def sheet_of(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """What is to be set, and whether it was left so."""
    task = Task(job.name, asked, "SET", CHECK, data)
    if job.component is None or job.setting is None:
        return task.missing([k for k in ("component", "setting") if getattr(job, k) is None])
    given = job.maker
    maker = None
    if given is not None and any(v is not None for v in (given.value, given.low, given.high)):
        maker = Maker(given.value, given.low, given.high, given.source or "", given.place or "")
    axle = job.axle or "axle not named"
    step = Step(axle, job.component, job.setting, job.wear, job.as_found, job.as_left, maker)
    try:
        return setup.judged(step, {**asked, "axle": axle, "maker": maker.text if maker is not None else None}, data)
    except GaugeblockError as error:
        return task.refused(error, _KEYS, "setting")


def card_of(job: Driveline, sheet: Sheet) -> Card:
    """Its card."""
    figure = next(iter(sheet.decision.figures), None)
    unit = figure.unit if figure is not None else ""
    found, left = text_of(job.as_found), text_of(job.as_left)
    return Card(
        ", ".join(t for t in (job.axle or job.where, job.component, job.setting) if t),
        (job.wear or "").upper(),
        counted="setting",
        notes=[f"As found {found}." if found else "", f"As left {left}." if left else ""],
        boxes=[
            Box("maker's figure, page"),
            Box("as found", unit, half=True),
            Box("as left", unit, half=True),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )
