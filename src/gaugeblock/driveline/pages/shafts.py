"""A shaft of ``[[driveline]]``: its sheet and its card."""

from __future__ import annotations

from gaugeblock.answer.item import Box, Card
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys, steel
from gaugeblock.driveline.carrying import VERB
from gaugeblock.driveline.job import Driveline
from gaugeblock.driveline.keys import Shaft
from gaugeblock.driveline.torsion import CHECK
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import Refdata

# Where a refusal says that it arose -> the key of the item that is to be corrected.
_KEYS = {
    "driveline/steels steel": "steel",
    "driveline/steels strength": "steel",
    "driveline/steels treatment": "treatment",
    "driveline/steels temper": "temper",
    "driveline/steels section": "section",
    "driveline/hardness scale": "hardness",
    "hardness": "hardness",
    "bore": "bore",
    "case depth": "case_depth",
    "core hardness": "core_hardness",
}


def sheet_of(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """Whether it carries what is asked of it."""
    task = Task(job.name, asked, VERB, CHECK, data)
    if job.yield_strength is None and (job.steel is None or job.treatment is None):
        return task.missing([k for k in ("steel", "treatment") if getattr(job, k) is None])
    try:
        shaft = Shaft(
            job.steel or "steel not named",
            job.treatment or "as certified",
            temper=job.temper,
            section=job.section,
            diameter=job.diameter,
            bore=job.bore,
            length=job.length,
            torque=job.torque,
            hardness=keys.hardness(job.hardness, data) if job.hardness else None,
            yield_strength=job.yield_strength,
            certificate=job.certificate or "",
            case_depth=job.case_depth,
            core_hardness=keys.hardness(job.core_hardness, data, "core hardness") if job.core_hardness else None,
            shear_modulus=job.shear_modulus,
        )
        names = {"steel": "grade", "diameter": "shaft"}
        return steel.judged(shaft, {names.get(k, k): v for k, v in asked.items()}, data)
    except GaugeblockError as error:
        return task.refused(error, _KEYS, "steel")


def card_of(job: Driveline) -> Card:
    """Its card."""
    what = ", ".join(str(t) for t in (job.steel, job.treatment, job.temper, job.diameter) if t)
    return Card(
        what,
        counted="shaft",
        notes=[f"Torque asked of it {job.torque}." if job.torque else ""],
        boxes=[Box("steel as certified"), Box("hardness measured"), Box("by, date"), Box("checked by, date")],
    )
