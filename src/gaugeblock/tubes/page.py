"""Job items of the domain tubes -> Items: the plan of each tube with its drawings, then the cut list of all."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.printing import number_only
from gaugeblock.bodies import Drawn, Placed
from gaugeblock.errors import GaugeblockError, InputError, Problem
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.tubes.model import Tube
from gaugeblock.tubes.placed import drawn_tube, placed_tube
from gaugeblock.tubes.plan.bench import datum_words, table
from gaugeblock.tubes.plan.given import Given
from gaugeblock.tubes.plan.plan import plan_of, refused_plan
from gaugeblock.tubes.plan.planned import Plan
from gaugeblock.tubes.plan.stock import beside_a_cut_list, cut_rows, cut_sheet

_BY = (Box("by, date"), Box("checked by, date"))
_BOXES = (Box("cut length as done", half=True), Box("saw, by", half=True), Box("angles as bent"), *_BY)


def problems(item: Tube, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices."""
    if item.method is not None:
        try:
            canonical(data, "tubes/bend_minimums", "method", item.method)
        except GaugeblockError as error:
            yield Problem("method", None, f"{error.asked}: {error.why}", error.nearest, error.do)


def _given(tube: Tube, shop: Shop, data: Refdata) -> Given:
    """A tube of the job with its die."""
    named = (tube.die or "").casefold()
    die = next((d for d in shop.dies if named and d.name.casefold() == named), None)
    return Given(tube, die, shop.stock_length, data)


def planned(tube: Tube, shop: Shop, data: Refdata, *, draw: bool = False) -> Plan:
    """The plan of one tube of the job; what cannot be together is an open question of this item, not of the whole
    job.
    """
    given = _given(tube, shop, data)
    try:
        return plan_of(given, draw=draw)
    except InputError as error:
        return refused_plan(given, error)


def item(tube: Tube, shop: Shop, data: Refdata) -> Item:
    """The Item of one tube of the job."""
    made = planned(tube, shop, data, draw=True)
    return Item("tubes", tube.name, _facts(made.given), made.sheet, _card(made), made)


def placed(_tube: Tube, item: Item, _data: Refdata) -> list[Placed]:
    """What of a tube and round it stands in the vehicle."""
    return placed_tube(item.plan) if isinstance(item.plan, Plan) else []


def drawn(item: Item) -> Drawn | None:
    """The shape of a tube, for an item of another domain that is made of it."""
    return drawn_tube(item.plan) if isinstance(item.plan, Plan) else None


def together(job: Any, items: list[Item], data: Refdata) -> list[Item]:
    """What all tubes say together: the cut list."""
    plans = [i.plan for i in items if isinstance(i.plan, Plan)]
    if not any(p.bench is not None for p in plans):
        return []
    shop: Shop = job.shop
    sheet, groups = cut_sheet(plans, shop.stock_length, shop.kerf, data)
    bars = sum(len(g.bars) for g in groups)
    facts = [Row("stock length", str(shop.stock_length or "")), Row("kerf", str(shop.kerf or ""))]
    rows = [(*r[:-1], r[-1].replace(" ", "\u00a0")) for r in cut_rows(groups)]  # a length stays on one line
    lengths = f"{bars} stock length{'s' if bars != 1 else ''} of {shop.stock_length or '____'}"
    beside = beside_a_cut_list(plans)
    what = "all tubes of this job that can be cut, by material and size" if beside else "all tubes of this job"
    card = Card(what, counted="list", table=rows, notes=[lengths] if bars else [], boxes=[Box("as done"), *_BY])
    return [Item("tubes", "cut list of all tubes", facts, sheet, card)]


def _facts(given: Given) -> list[Row]:
    tube, die = given.tube, given.die
    first = {"where": "where", "material": "material", "od": "outside diameter", "wall": "wall", "method": "method"}
    rows = [Row(label, str(getattr(tube, k) or "")) for k, label in first.items()]
    rows += [Row(k, str(getattr(tube, k))) for k in ("product", "spec", "condition", "radius") if getattr(tube, k)]
    if die is not None:
        rows.append(Row("die", ", ".join(t for t in (die.name, f"radius {die.radius}" if die.radius else "") if t)))
    if tube.count is not None:
        rows.append(Row("how many", str(tube.count)))
    for number, made in enumerate(tube.bends, 1):
        parts = [
            str(made.angle or "angle ____"),
            f"radius {made.radius}" if made.radius else "",
            f"turn {made.turn}" if made.turn else "",
            f"after {made.straight} straight" if made.straight else "",
        ]
        rows.append(Row(f"bend {number}", ", ".join(p for p in parts if p)))
    rows += [Row(k, str(getattr(tube, k))) for k in ("datum", "gap", "tolerance") if getattr(tube, k)]
    if tube.notes:
        rows.append(Row("notes", tube.notes))
    return rows


# As those of the bench, in the width of a card.
_HEADS = ("DO", "BEND: ANGLE", "MARK AT", "FROM DATUM TO", "BENDS TOWARD", "SET", "TURN FIRST")


def _card(made: Plan) -> Card:
    """At the bench: what to cut and the table of marks; without marks what is known of the bends."""
    tube, die = made.given.tube, made.given.die
    size = f"{tube.od or '____'} x {tube.wall or '____'}"
    what = ", ".join(t for t in (size, tube.material, tube.condition) if t)
    notes = [f"die {die.name}".replace("die die", "die") if die is not None else tube.method or ""]
    method, count = (tube.method or "").upper(), tube.count or 1
    if made.bench is None:
        least = next((f for f in made.sheet.figures if f.quantity == "bend_radius_minimum"), None)
        if tube.bends:
            notes.append(f"bends {', '.join(str(b.angle or '____') for b in tube.bends)}")
        if least is not None:
            number = number_only(least, made.sheet.data)
            notes.append(f"least radius {number} ({least.key.get('service', least.basis)})")
        return Card(what, method, count=count, counted="tube", notes=notes, boxes=_BOXES)
    rows = [
        (do, n, at.replace(" ", "\u00a0"), side.removeprefix("towards "), goes.removeprefix("to "), *more)
        for do, n, at, side, goes, *more in table(made)
    ]
    if rows:
        notes.append(f"measure from {datum_words(made)}")
        notes.append("clockwise as seen looking along the tube from START")
    return Card(
        what,
        method,
        count=count,
        counted="tube",
        notes=notes,
        boxes=_BOXES,
        table=[_HEADS, *rows] if rows else (),
        says=("bend_mark", "bend_angle_set", "tube_turn", "straight", "bend_angle"),
    )
