"""An item of ``[[splines]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.job import Splines
from gaugeblock.driveline.keys import SplineLoad
from gaugeblock.driveline.splines import answer as spline
from gaugeblock.driveline.splines.sizes import THE_ANGLE, Sizes, check_form, teeth_of
from gaugeblock.driveline.splines.strength import ROOTS
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

_NAMES = ("pitch", "root", "fit", "torque", "bore", "length", "material", "source", "load", "cycles", "seating")
_FLEXIBLE = ("misalignment", "revolutions")
_FACTORS = "driveline/spline_factors"
_KEYS = {
    "pitch": "pitch",
    "teeth": "teeth",
    "fit": "fit",
    "bore": "bore",
    "misalignment": "misalignment",
    "spline material": "material",
    f"{_FACTORS} application_factor": "load",
    f"{_FACTORS} case": "source",
    f"{_FACTORS} level": "load",
    f"{_FACTORS} fatigue_life_factor": "cycles",
    f"{_FACTORS} wear_life_factor": "revolutions",
}


def item_of(job: Splines, data: Refdata) -> Item:
    """The Item of one spline."""
    asked: dict[str, str | None] = {k: text_of(getattr(job, k)) for k in (*_NAMES, *_FLEXIBLE)}
    asked["teeth"] = None if job.teeth is None else str(job.teeth)
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    if job.notes:
        facts.append(Row("notes", job.notes))
    card = Card(
        ", ".join(t for t in (job.where, job.pitch, f"{job.teeth} teeth" if job.teeth else "") if t),
        counted="spline",
        notes=[f"Torque asked of it {job.torque}." if job.torque else ""],
        boxes=[
            Box("outside diameter", "in", half=True),
            Box("engaged length", "in", half=True),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )
    return Item("driveline", job.name, facts, _sheet(job, asked, data), card)


def _sheet(job: Splines, asked: dict[str, str | None], data: Refdata) -> Sheet:
    task = Task(job.name, asked, spline.VERB, ROOTS, data)
    missing = [k for k in ("pitch", "teeth") if getattr(job, k) is None]
    if missing:
        return task.missing(missing)
    root, fit = job.root or "flat root", job.fit or "side fit"
    try:
        root, fit = check_form(THE_ANGLE, root, fit, data)
        made = Sizes(job.pitch or "", teeth_of(str(job.teeth)), root, fit, data)
        load = None
        if job.torque is not None:
            given = {k: getattr(job, k) for k in (*_NAMES[4:], *_FLEXIBLE)}
            load = SplineLoad(job.torque, **given)
        return spline.judged(made, load, asked, data)
    except GaugeblockError as error:
        return task.refused(error, _KEYS, "pitch")
