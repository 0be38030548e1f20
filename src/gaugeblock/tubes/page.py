"""Job items of the domain tubes -> Items: the plan of each tube with its drawings, then the cut list of all."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from gaugeblock.answer.check import NOT_OK, Check
from gaugeblock.answer.decision import decided
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Placed
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.drawing.order_sheet import order_sheet
from gaugeblock.drawing.stick_drawing import turned
from gaugeblock.errors import GaugeblockError, InputError, Problem
from gaugeblock.job.model import Die, Shop
from gaugeblock.job.part import as_texts
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.tubes.job import Tube
from gaugeblock.tubes.placed import placed_tube
from gaugeblock.tubes.plan import stock as tube_plan_stock
from gaugeblock.tubes.plan.bench import HEADS, datum_words, shape_words, table
from gaugeblock.tubes.plan.drawings import finished
from gaugeblock.tubes.plan.plan import NAME, work_out
from gaugeblock.tubes.plan.planned import Plan


def problems(item: Tube, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices; numbers that cannot be together."""
    if item.method is not None:
        try:
            canonical(data, "tubes/bend_minimums", "method", item.method)
        except GaugeblockError as error:
            yield Problem("method", None, f"{error.asked}: {error.why}", error.nearest, error.do)


def _die(job: Tube, shop: Shop) -> Die | None:
    return next((d for d in shop.dies if d.name.casefold() == (job.die or "").casefold()), None)


def keys_of(job: Tube) -> dict[str, Any]:
    """A tube of the job as the keys that ``plan`` takes."""
    return job.as_dict()


def plan_of(job: Any, shop: Any, data: Refdata, *, draw: bool = False) -> Plan:
    """The plan of one tube of the job, each distinct radius of its bends judged."""
    job, shop = as_texts(job), as_texts(shop)
    die = _die(job, shop)
    keys = keys_of(job)
    shape = die.as_dict() if die is not None else None
    try:
        made = work_out(keys, die=shape, stock_length=shop.stock_length, draw=draw, data=data)
    except (
        InputError
    ) as error:  # of two keys that do not go together: an open question of this item, not of the whole job
        made = work_out({"name": job.name}, data=data)
        made.sheet.checks = [Check(NAME, NOT_OK, str(error))]
        return made
    radius = job.radius or (die.radius if die is not None else None)
    for other in dict.fromkeys(b.radius for b in job.bends if b.radius is not None and b.radius != radius):
        more = work_out(
            {**{k: v for k, v in keys.items() if k not in ("bends", "die")}, "radius": other}, data=data
        ).sheet
        made.sheet.checks += [
            Check(f"{c.name}, bend of {other}", c.result, c.reason, c.required, c.actual, c.margin)
            for c in more.checks
            if c.name.startswith(("radius", "outer wall"))
        ]
    return made


def item(job: Any, shop: Any, data: Refdata) -> Item:
    """The Item of one tube of the job."""
    job, shop = as_texts(job), as_texts(shop)
    die = _die(job, shop)
    made = plan_of(job, shop, data, draw=True)
    if made.layout is not None:
        made.sheet.drawings.append(Drawing(f"{job.name}: order for a bending shop", _order(job, made), "portrait"))
    return Item("tubes", job.name, _facts(job, die), made.sheet, _card(job, die, made, data), made)


def placed(tube: Tube, item: Item, _data: Refdata) -> list[Placed]:
    """What of a tube and round it stands in the vehicle."""
    return placed_tube(item.plan, keys_of(tube)) if isinstance(item.plan, Plan) else []


def together(job: Any, items: list[Item], data: Refdata) -> list[Item]:
    """What all tubes say together: the cut list."""
    job = as_texts(job)
    plans = [(i.plan, keys_of(t)) for i, t in zip(items, job.tubes, strict=True) if isinstance(i.plan, Plan)]
    out = []
    if any(p.layout is not None for p, _ in plans):
        sheet, groups = tube_plan_stock.cut_sheet(plans, job.shop.stock_length, job.shop.kerf, data)
        bars = sum(len(g.bars) for g in groups)
        facts = [Row("stock length", job.shop.stock_length or ""), Row("kerf", job.shop.kerf or "")]
        rows = [(*r[:-1], r[-1].replace(" ", "\u00a0")) for r in tube_plan_stock.cut_rows(groups)]
        number = next((f for f in sheet.figures if f.quantity == "stock_bars"), None)
        sheet.decide(decided("CUT FROM", number, sheet.checks))
        card = Card(
            "all tubes of this job, by material and size", counted="list", table=rows,
            notes=[f"{bars} stock lengths of {job.shop.stock_length or '____'}"],
            boxes=[Box("as done"), Box("by, date"), Box("checked by, date")],
        )  # fmt: skip
        out.append(Item("tubes", "cut list of all tubes", facts, sheet, card))
    return out


def _facts(job: Any, die: Die | None) -> list[Row]:
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
    rows += [Row(k, getattr(job, k)) for k in ("datum", "gap", "tolerance") if getattr(job, k) is not None]
    if job.notes:
        rows.append(Row("notes", job.notes))
    return rows


def _card(job: Any, die: Die | None, made: Plan, data: Refdata) -> Card:
    """At the bench: what to cut and the table of marks; without marks what is known of the bends."""
    sheet: Sheet = made.sheet
    what = ", ".join(t for t in (f"{job.od or '____'} x {job.wall or '____'}", job.material, job.condition) if t)
    boxes = [
        Box("cut length as done", half=True),
        Box("saw, by", half=True),
        Box("angles as bent"),
        Box("by, date"),
        Box("checked by, date"),
    ]
    notes = [f"die {die.name}".replace("die die", "die") if die is not None else job.method or ""]
    method = (job.method or "").upper()
    count = job.count or 1
    if made.layout is not None and made.cut is not None:
        sheet.decide(decided("CUT", made.cut, sheet.checks))
        notes += [f"measure from {datum_words(made)}", *shape_words(made)]
        notes.append("clockwise as seen looking along the tube from START")
        rows = [(n, at.replace(" ", "\u00a0", 1), *rest) for n, at, *rest in table(made)]
        return Card(
            what, method, count=count, counted="tube", notes=notes, boxes=boxes, table=[HEADS, *rows] if rows else (),
            says=("bend_mark", "bend_angle_set", "tube_turn", "straight", "bend_angle"),
        )  # fmt: skip
    least = next((f for f in sheet.figures if f.quantity == "bend_radius_minimum"), None)
    radius = next((f for f in sheet.figures if f.quantity == "bend_radius"), None)
    sheet.decide(decided("BEND ON", radius or least, sheet.checks))
    if job.bends:
        notes.append(f"bends {', '.join(str(b.angle or '____') for b in job.bends)}")
    if least is not None:
        notes.append(f"least radius {number_only(least, data)} ({least.key.get('service', least.basis)})")
    return Card(what, method, count=count, counted="tube", notes=notes, boxes=boxes)


def _order(job: Any, made: Plan) -> str:
    """The one page for a bending shop."""
    layout = made.layout
    if layout is None or made.radius is None:
        raise ValueError("the tube has no marks")
    reads = made.tape.reads
    material = " ".join(t for t in (job.material, job.product, job.condition) if t)
    ends = [f"{w} {made.tape.short(t)}" for w, t in (("START", layout.trim_start), ("END", layout.trim_end)) if t > 0]
    radius = made.radius.text or f"{made.radius.typical:.3f}"
    facts = [
        ("tube", " x ".join(t for t in (job.od, job.wall) if t)), ("material", material), ("bought to", job.spec or ""),
        ("how many", str(job.count) if job.count else ""), ("radius", f"{radius} {made.radius.unit} to the centre line"),
        ("method", job.method or ""), ("tolerance", f"+/- {job.tolerance}" if job.tolerance else ""),
        ("leave on", ", ".join(ends) or "no trim at the ends"), ("ordered by", ""), ("date", ""),
    ]  # fmt: skip
    rows: list[tuple[str, str, str, str]] = [("STEP", "STRAIGHT", "THEN TURN, SEEN FROM START", "THEN BEND")]
    for n, b in enumerate(layout.stick.bends, 1):
        own = "" if abs(b.radius - made.die.radius) < 1e-9 else f", R {reads(b.radius)}"
        rows.append((str(n), reads(b.straight), "-" if n == 1 else turned(b.turn), f"{degrees_text(b.angle)}{own}"))
    rows.append((str(len(rows)), reads(layout.stick.end), "-", "end of the tube"))
    notes = [
        f"Straights are tangent to tangent; along the centre line {reads(layout.stick.developed_length)}, finished. Add what your machine needs at the ends.",
        "Angles are those of the finished tube: springback is the bender's. Send a first piece for approval.",
    ]
    return order_sheet(job.name, facts, rows, finished(made), notes)
