"""Job items of the domain driveline -> Items: a shaft (desk only), or one step of an axle's set-up (a card)."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from gaugeblock.answer.item import Card, Item, Row, refusal_sheet, worst_reason
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.job import Driveline
from gaugeblock.driveline.setup import setup
from gaugeblock.driveline.steel import steel
from gaugeblock.errors import GaugeblockError, LookupMiss, Problem
from gaugeblock.job.model import Shop
from gaugeblock.job.part import as_texts
from gaugeblock.tables.load import Refdata, canonical

_SETUP = ("axle", "component", "step", "wear", "as_found", "as_left")
_SHAFT = ("steel", "treatment", "temper", "diameter", "length", "torque")


def problems(item: Driveline, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices."""
    keys = {"steel": "driveline/steels", "treatment": "driveline/steels", "component": "driveline/setup"}
    for key, table in keys.items():
        typed = getattr(item, key)
        if typed is None:
            continue
        try:
            canonical(data, table, key, typed)
        except GaugeblockError as error:
            yield Problem(key, None, f"{error.asked}: {error.why}", error.nearest, error.do)


def is_setup(job: Driveline) -> bool:
    """Whether the item is a step of a set-up: said so, or only keys of one given."""
    return job.kind == "setup" or (job.kind is None and any(getattr(job, k) is not None for k in _SETUP))


def item(job: Any, shop: Shop, data: Refdata) -> Item:
    """The Item of one shaft or set-up step of the job."""
    job = as_texts(job)
    names = _SETUP if is_setup(job) else _SHAFT
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), getattr(job, k) or "") for k in names)]
    if job.notes:
        facts.append(Row("notes", job.notes))
    if not is_setup(job):
        return Item("driveline", job.name, facts, _shaft(job, data), None)
    sheet = _setup(job, data)
    return Item("driveline", job.name, facts, sheet, _card(job, sheet, data))


def _shaft(job: Any, data: Refdata) -> Sheet:
    asked = {k: getattr(job, k) for k in _SHAFT}
    missing = [k for k in ("steel", "treatment") if getattr(job, k) is None]
    if missing:
        return refusal_sheet(
            job.name, asked, "shaft stress within torsional yield", f"{', '.join(missing)} not given", data
        )
    try:
        return steel(
            job.steel or "", treatment=job.treatment or "", temper=job.temper, shaft=job.diameter, length=job.length,
            torque=job.torque, data=data,
        )  # fmt: skip
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(
            job.name, asked, "shaft stress within torsional yield", f"{miss.asked}: {miss.why}{near}", data
        )


def _setup(job: Any, data: Refdata) -> Sheet:
    asked = {k: getattr(job, k) for k in _SETUP}
    missing = [k for k in ("component", "step") if getattr(job, k) is None]
    if missing:
        return refusal_sheet(job.name, asked, "set-up", f"{', '.join(missing)} not given", data)
    made = job.maker
    maker = None if made is None else (made.value, made.low, made.high, made.source or "", made.place or "")
    if maker is not None and not (maker[3] and maker[4]):
        maker = None
    try:
        return setup(
            job.axle or "axle not named", job.component or "", job.step or "", job.wear, as_found=job.as_found,
            as_left=job.as_left, maker=maker, data=data,
        )  # fmt: skip
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(job.name, asked, "set-up", f"{miss.asked}: {miss.why}{near}", data)


def _card(job: Any, sheet: Sheet, data: Refdata) -> Card:
    answer = next((f for f in sheet.figures if f.basis == "maker"), None)
    maker = f"{printed(answer, data)} ({answer.source}, {answer.locator})" if answer is not None else ""
    what = ", ".join(t for t in (job.where, job.component, job.step, job.wear) if t)
    boxes = [
        f"as found {job.as_found}" if job.as_found else "as found",
        f"as left {job.as_left}" if job.as_left else "as left",
        "by",
        "checked by",
    ]
    return Card(
        "SET", printed(answer, data) if answer is not None else "", "", answer.trust if answer is not None else "NO FIGURE", what,
        (job.wear or "").upper(), [Row("axle", job.axle or "________")], maker, boxes, worst_reason(sheet),
    )  # fmt: skip
