"""Job items of the domain tubes -> Items with their Sheet and bench card."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock.errors import GaugeblockError, LookupMiss, Problem
from gaugeblock.job.model import Die, Shop, Tube
from gaugeblock.packet.item import Card, Item, Row, refusal_sheet, worst_reason
from gaugeblock.sheets.printing import number_only
from gaugeblock.sheets.sheet import CANNOT_TELL, Check, Sheet
from gaugeblock.sheets.tubes import bend
from gaugeblock.tables.load import Refdata, canonical


def problems(item: Tube, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices."""
    if item.method is not None:
        try:
            canonical(data, "tubes/bend_minimums", "method", item.method)
        except GaugeblockError as error:
            yield Problem("method", None, f"{error.asked}: {error.why}", error.nearest, error.do)


def _die(job: Tube, shop: Shop) -> Die | None:
    return next((d for d in shop.dies if d.name.casefold() == (job.die or "").casefold()), None)


def item(job: Tube, shop: Shop, data: Refdata) -> Item:
    """The Item of one tube of the job: each distinct radius of its bends is judged."""
    die = _die(job, shop)
    radius = job.radius or (die.radius if die is not None else None)
    sheet = _sheet(job, radius, data)
    radii = dict.fromkeys(b.radius for b in job.bends if b.radius is not None and b.radius != radius)
    for other in radii:
        more = _sheet(job, other, data)
        sheet.checks += [
            Check(f"{c.name}, bend of {other}", c.result, c.reason, c.required, c.actual, c.margin) for c in more.checks
        ]
    if job.die is not None and die is not None and die.radius is None and radius is None:
        sheet.checks.append(Check("die", CANNOT_TELL, f"the shop profile gives no radius for {die.name}"))
    return Item("tubes", job.name, _facts(job, die), sheet, _card(job, die, radius, sheet, data))


def _sheet(job: Tube, radius: str | None, data: Refdata) -> Sheet:
    asked = {k: getattr(job, k) for k in ("material", "od", "wall", "method", "service")}
    missing = [k for k in ("material", "od", "wall", "method") if getattr(job, k) is None]
    if missing:
        return refusal_sheet(job.name, asked, "bend radius", f"{', '.join(missing)} not given", data)
    angles = [b.angle for b in job.bends if b.angle is not None]
    try:
        return bend(
            od=job.od or "", wall=job.wall or "", material=job.material or "", method=job.method or "", radius=radius,
            angle=max(angles, key=lambda a: float(a.split(" ")[0])) if angles else None, service=job.service, product=job.product,
            condition=job.condition, spec=job.spec, die=job.die, data=data,
        )  # fmt: skip
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        return refusal_sheet(job.name, asked, "bend radius", f"{miss.asked}: {miss.why}{near}", data)


def _facts(job: Tube, die: Die | None) -> list[Row]:
    rows = [Row(k, getattr(job, k) or "") for k in ("where", "material", "od", "wall", "method")]
    rows += [Row(k, getattr(job, k)) for k in ("product", "spec", "condition", "radius") if getattr(job, k) is not None]
    if die is not None:
        rows.append(Row("die", ", ".join(t for t in (die.name, f"radius {die.radius}" if die.radius else "") if t)))
    if job.count is not None:
        rows.append(Row("count", str(job.count)))
    for number, made in enumerate(job.bends, 1):
        parts = [
            made.angle or "angle ____",
            f"radius {made.radius}" if made.radius else "",
            f"turn {made.turn}" if made.turn else "",
        ]
        before = f"after {made.straight} straight" if made.straight else ""
        rows.append(Row(f"bend {number}", ", ".join(p for p in (*parts, before) if p)))
    if job.notes:
        rows.append(Row("notes", job.notes))
    return rows


def _card(job: Tube, die: Die | None, radius: str | None, sheet: Sheet, data: Refdata) -> Card:
    least = next((f for f in sheet.figures if f.quantity == "bend_radius_minimum"), None)
    detail = [Row("tool", f"die {die.name}" if die is not None else job.method or "")]
    if job.bends:
        detail.append(Row("bends", ", ".join(b.angle or "____" for b in job.bends)))
    if least is not None:
        detail.append(Row("least radius", f"{number_only(least, data)} ({least.key.get('service', least.basis)})"))
    if job.count is not None:
        detail.append(Row("how many", str(job.count)))
    what = ", ".join(
        t for t in (job.where, f"{job.od or '____'} x {job.wall or '____'}", job.material, job.condition) if t
    )
    return Card(
        "BEND ON", f"{radius} radius" if radius else "", "", least.trust if least is not None else "NO FIGURE", what,
        (job.method or "").upper(), detail, "", ["as done", "by", "checked by"], worst_reason(sheet),
    )  # fmt: skip
