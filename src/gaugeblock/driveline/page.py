"""Job items of the domain driveline -> Items: a shaft, one step of an axle's set-up, a spline, the joints of a
shaft.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from gaugeblock.answer.item import Item, Row
from gaugeblock.answer.wing import loaded
from gaugeblock.driveline.job import SETUP, SHAFT, Driveline
from gaugeblock.errors import Problem
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

if TYPE_CHECKING:
    from gaugeblock.driveline.axles.job import AxleShaft
    from gaugeblock.driveline.job import GearingItem, Joints, Splines
    from gaugeblock.driveline.propshafts.job import PropellerShaft
    from gaugeblock.driveline.shims.job import ShimLog

# The page of an item of another table, by its model: what a job does not have is not loaded.
_PAGES = {
    "AxleShaft": "axles",
    "PropellerShaft": "propshafts",
    "ShimLog": "shims",
    "Joints": "joints",
    "GearingItem": "gearing",
    "Splines": "splines",
}


def problems(
    item: Driveline | AxleShaft | PropellerShaft | ShimLog | Splines | Joints | GearingItem, data: Refdata
) -> Iterator[Problem]:
    """Nothing stops the job here: what the tables do not know of an item is that item's question."""
    yield from ()


def is_setup(job: Driveline) -> bool:
    """Whether the item is a step of a set-up: said so, or only keys of one given."""
    return job.kind == "setup" or (job.kind is None and any(getattr(job, k) is not None for k in SETUP))


def item(
    job: Driveline | AxleShaft | PropellerShaft | ShimLog | Splines | Joints | GearingItem, shop: Shop, data: Refdata
) -> Item:
    """The Item of one item of the job. Each kind reads its own rooms alone."""
    if not isinstance(job, Driveline):
        made: Item = loaded(f"gaugeblock.driveline.pages.{_PAGES[type(job).__name__]}").item_of(job, data)
        return made
    names = [k for k in (SETUP if is_setup(job) else SHAFT) if k != "maker"]
    asked = {"step" if k == "setting" else k: text_of(getattr(job, k)) for k in names}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    if job.notes:
        facts.append(Row("notes", job.notes))
    if not is_setup(job):
        from gaugeblock.driveline.pages import shafts

        return Item("driveline", job.name, facts, shafts.sheet_of(job, asked, data), shafts.card_of(job))
    from gaugeblock.driveline.pages import steps

    sheet = steps.sheet_of(job, asked, data)
    return Item("driveline", job.name, facts, sheet, steps.card_of(job, sheet))
