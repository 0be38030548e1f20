"""Job items of the domain lines -> Items: what the line and its fluid stand, beside what is hot."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock.errors import LookupMiss, Problem
from gaugeblock.figure import Figure
from gaugeblock.job.model import Line, Shop
from gaugeblock.packet.item import Card, Item, Row, refusal_sheet, worst_reason
from gaugeblock.sheets.lines import heat
from gaugeblock.sheets.printing import printed
from gaugeblock.sheets.sheet import CANNOT_TELL, Check, Sheet
from gaugeblock.tables.load import Refdata

_KEYS = (
    "service", "material", "hose_class", "od", "wall", "length", "pressure", "fluid", "fluid_state", "beside", "gap", "temperature",
    "temperature_by", "side", "shield",
)  # fmt: skip
_LIMITS = ("temperature_maximum", "boiling_point_minimum")


def problems(item: Line, data: Refdata) -> Iterator[Problem]:
    """Nothing is refused here: an unknown material or fluid is an open question of the sheet."""
    yield from ()


def item(job: Line, shop: Shop, data: Refdata) -> Item:
    """The Item of one line of the job."""
    facts = [Row("where", job.where or "")]
    facts += [
        Row(k.removeprefix("hose_").replace("_", " "), getattr(job, k) or "")
        for k in _KEYS
        if getattr(job, k) is not None or k in ("material", "fluid", "gap")
    ]
    if job.notes:
        facts.append(Row("notes", job.notes))
    sheet = _sheet(job, data)
    return Item("lines", job.name, facts, sheet, _card(job, sheet, data))


def _one(job: Line, what: str, typed: str | None, klass: str | None, state: str | None, data: Refdata) -> Sheet:
    name = f"{what} stands the heat"
    if typed is None:
        return refusal_sheet(job.name, {what: None}, name, f"{what} not given", data)
    try:
        sheet = heat(typed, klass=klass, state=state, at=job.temperature, data=data)
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(job.name, {what: typed}, name, f"{miss.asked}: {miss.why}{near}", data)
    if job.temperature is None:
        sheet.checks.append(
            Check(
                name,
                CANNOT_TELL,
                "no temperature was measured at the line: crayon, paint or thermocouple, hot and after shut-down",
            )
        )
    return sheet


def _sheet(job: Line, data: Refdata) -> Sheet:
    parts = [
        _one(job, "material", job.material, job.hose_class, None, data),
        _one(job, "fluid", job.fluid, None, job.fluid_state, data),
    ]
    figures: list[Figure] = []
    cautions = {}
    checks = []
    for part in parts:
        figures += [f for f in part.figures if f.id not in {g.id for g in figures}]
        checks += part.checks
        cautions.update({c.text: c for c in part.cautions})
    asked = {k.removeprefix("hose_"): getattr(job, k) for k in _KEYS}
    return Sheet(
        job.name, asked, data, figures, list({(c.name, c.reason): c for c in checks}.values()), list(cautions.values())
    )


def _card(job: Line, sheet: Sheet, data: Refdata) -> Card:
    limits = [f for f in sheet.figures if f.quantity in _LIMITS]
    first = limits[0] if limits else None
    detail = [
        Row("beside", job.beside or ""),
        Row("gap measured", job.gap or ""),
        Row("temperature measured", job.temperature or ""),
    ]
    detail += [Row(f.key.get("item", "limit"), printed(f, data)) for f in limits[1:3]]
    what = ", ".join(t for t in (job.where, job.material, job.od, job.fluid, job.fluid_state) if t)
    return Card(
        "KEEP UNDER", printed(first, data) if first is not None else "", "", first.trust if first is not None else "NO FIGURE", what,
        (job.service or "").upper(), [r for r in detail if r.text or r.label != "beside"], "",
        ["gap as left", "hot temperature", "by", "checked by"], worst_reason(sheet),
    )  # fmt: skip
