"""What stands in the vehicle, whatever domain it is of -> one Item of all gaps."""

from __future__ import annotations

from gaugeblock import domains
from gaugeblock.answer.item import Item
from gaugeblock.bodies import Drawn, Placed
from gaugeblock.job.model import Job
from gaugeblock.space import apart
from gaugeblock.tables.load import Refdata


def against_each_other(job: Job, items: list[Item], data: Refdata) -> list[Item]:
    """The Item of all gaps of a job; empty where fewer than two bodies with a path are to be told apart."""
    made = {(i.domain, i.name): i for i in items}
    bodies: list[Placed] = []
    for wing in domains.WINGS:
        parts = [part for table in wing.tables for part in getattr(job, table)]
        placed = getattr(wing.module("page"), "placed", None) if parts else None
        if placed is None:
            continue
        for part in parts:
            item = made.get((wing.name, part.name))
            bodies += [] if item is None else placed(part, item, data)
    sheet = apart(bodies, data, job.shop.units == "metric")
    return [] if sheet is None else [Item("tubes", "tubes and lines against each other", [], sheet, None)]


def drawn(items: list[Item]) -> dict[str, Drawn]:
    """What is drawn of these items, by its name in lower case."""
    pages = [(wing.name, page) for wing in domains.WINGS if hasattr(page := wing.module("page"), "drawn")]
    found = [page.drawn(item) for name, page in pages for item in items if item.domain == name]
    return {shape.name.casefold(): shape for shape in found if shape is not None}
