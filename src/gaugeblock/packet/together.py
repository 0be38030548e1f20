"""What stands in the vehicle, tubes and lines together -> one Item of their gaps."""

from __future__ import annotations

from gaugeblock.answer.item import Item
from gaugeblock.job.model import Job
from gaugeblock.space import Placed, apart, placed_line, placed_tube
from gaugeblock.tables.load import Refdata
from gaugeblock.tubes.page import keys_of
from gaugeblock.tubes.plan.planned import Plan


def against_each_other(job: Job, items: list[Item], data: Refdata) -> list[Item]:
    """The Item of all gaps of a job; empty where fewer than two bodies with a path are to be told apart."""
    keys = {t.name: keys_of(t) for t in job.tubes}
    bodies: list[Placed] = []
    for item in items:
        if isinstance(item.plan, Plan) and item.name in keys:
            bodies += placed_tube(item.plan, keys[item.name])
    for line in job.lines:
        bodies += placed_line(line.as_dict())
    sheet = apart(bodies, data, job.shop.units == "metric")
    return [] if sheet is None else [Item("tubes", "tubes and lines against each other", [], sheet, None)]
