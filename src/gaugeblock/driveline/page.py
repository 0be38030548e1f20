"""Job items of the domain driveline -> Items: a shaft (desk only), or one step of an axle's set-up (a card)."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock.answer.decision import decided
from gaugeblock.answer.item import Box, Card, Item, Row, refusal_sheet
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import setup, steel
from gaugeblock.driveline.job import Driveline
from gaugeblock.driveline.keys import Maker, Shaft, Step
from gaugeblock.errors import GaugeblockError, LookupMiss, Problem
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.units import text_of

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


def item(job: Driveline, shop: Shop, data: Refdata) -> Item:
    """The Item of one shaft or set-up step of the job."""
    names = _SETUP if is_setup(job) else _SHAFT
    asked = {k: text_of(getattr(job, k)) for k in names}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), text or "") for k, text in asked.items())]
    if job.notes:
        facts.append(Row("notes", job.notes))
    if not is_setup(job):
        shaft = _shaft(job, asked, data)
        return Item("driveline", job.name, facts, shaft, _shaft_card(job, shaft))
    sheet = _setup(job, asked, data)
    return Item("driveline", job.name, facts, sheet, _card(job, sheet, data))


def _shaft(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    check = "shaft stress within torsional yield"
    if job.steel is None or job.treatment is None:
        missing = [k for k in ("steel", "treatment") if getattr(job, k) is None]
        return refusal_sheet(job.name, asked, check, f"{', '.join(missing)} not given", data)
    try:
        shaft = Shaft(job.steel, job.treatment, job.temper, diameter=job.diameter, length=job.length, torque=job.torque)
        return steel.judged(shaft, _asked_of_steel(shaft), data)
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(job.name, asked, check, f"{miss.asked}: {miss.why}{near}", data)


def _asked_of_steel(shaft: Shaft) -> dict[str, str | None]:
    names = ("treatment", "temper", "section", "diameter", "bore", "length", "torque", "hardness")
    said = {name: text_of(getattr(shaft, name)) for name in names}
    return {"grade": shaft.grade, **{"shaft" if k == "diameter" else k: v for k, v in said.items()}}


def _setup(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    if job.component is None or job.step is None:
        missing = [k for k in ("component", "step") if getattr(job, k) is None]
        return refusal_sheet(job.name, asked, "set-up", f"{', '.join(missing)} not given", data)
    given = job.maker
    maker = None
    if given is not None and given.source and given.place:
        maker = Maker(given.value, given.low, given.high, given.source, given.place)
    axle = job.axle or "axle not named"
    step = Step(axle, job.component, job.step, job.wear, job.as_found, job.as_left, maker)
    said = {**asked, "axle": axle, "maker": maker.text if maker is not None else None}
    try:
        return setup.judged(step, said, data)
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(job.name, asked, "set-up", f"{miss.asked}: {miss.why}{near}", data)


def _card(job: Driveline, sheet: Sheet, data: Refdata) -> Card:
    answer = next((f for f in sheet.figures if f.basis == "maker"), None)
    sheet.decide(decided("SET", answer, sheet.checks, "" if answer else "Ask the axle maker for the figure."))
    unit = answer.unit if answer is not None else ""
    return Card(
        ", ".join(t for t in (job.axle or job.where, job.component, job.step) if t),
        (job.wear or "").upper(),
        counted="setting",
        notes=[f"As found {job.as_found}" if job.as_found else "", f"as left {job.as_left}" if job.as_left else ""],
        boxes=[
            Box("maker's figure, page"),
            Box("as found", unit, half=True),
            Box("as left", unit, half=True),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )


def _shaft_card(job: Driveline, sheet: Sheet) -> Card:
    margin = next((f for f in sheet.figures if f.quantity == "torsional_yield_factor"), None)
    sheet.decide(decided("CARRIES", margin, sheet.checks, "" if margin else "Give the size, the torque and the steel."))
    what = ", ".join(str(t) for t in (job.steel, job.treatment, job.temper, job.diameter) if t)
    return Card(
        what,
        counted="shaft",
        notes=[f"Torque asked of it {job.torque}" if job.torque else ""],
        boxes=[Box("steel as certified"), Box("hardness measured"), Box("by, date"), Box("checked by, date")],
    )
