"""Job items of the domain fasteners -> Items with their Sheet and bench card. A blank key is a blank box."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from gaugeblock import units
from gaugeblock.answer.decision import ASK, Decision
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only, shop_unit
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError, InputError, LookupMiss, Problem
from gaugeblock.fasteners import keys, part, torque
from gaugeblock.fasteners.bolt import OWN, Bolt, CrowFoot, Grip, Own, Piece, Tapped, Tools, Wish
from gaugeblock.fasteners.decide import Tightening
from gaugeblock.fasteners.job import Fastener, MakerTorque
from gaugeblock.fasteners.maker import TORQUE, Maker, Stage, Stages, range_of
from gaugeblock.fasteners.passes import passes
from gaugeblock.fasteners.place import of_its_place
from gaugeblock.fasteners.read import grip as read_grip
from gaugeblock.fasteners.read import metal_cell
from gaugeblock.figure import Figure
from gaugeblock.job.model import Shop
from gaugeblock.job.wrench import WrenchRange
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.units import Measure, text_of


def problems(item: Fastener, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices."""
    readers: dict[str, Callable[[str], object]] = {
        "thread": lambda text: keys.thread(text, data),
        "grade": lambda text: keys.grade(text, data),
        "condition": lambda text: keys.condition(text, data),
        "into": lambda text: metal_cell(text, data),
        "locknut": lambda text: canonical(data, "fasteners/prevailing", "nut", text),
    }
    found = [(key, read, getattr(item, key)) for key, read in readers.items()]
    if item.grip is not None and item.grip.modulus is None:
        found.append(("grip.metal", lambda text: canonical(data, "fasteners/moduli", "metal", text), item.grip.metal))
    if item.maker is not None:
        found.append(("maker.condition", readers["condition"], item.maker.condition))
    for key, read, text in found:
        if text is None:
            continue
        try:
            read(text)
        except GaugeblockError as error:
            if error.why.startswith("no published"):
                continue  # an open question of its sheet
            yield Problem(key, None, f"{error.asked}: {error.why}", error.nearest, error.do)


def item(job: Fastener, shop: Shop, data: Refdata) -> Item:
    """The Item of one fastener of the job. What is wrong with it alone is its own question."""
    made = _part_sheet(job, shop, data) if job.part is not None else _thread_sheet(job, shop, data)
    sheet = of_its_place(made, job)
    return Item("fasteners", job.name, _facts(job), sheet, _card(job, sheet, shop, data))


# --- the job's keys as what an answer takes
# -----------------------------------------------------------------------------


def _wish(job: Fastener, data: Refdata) -> Wish:
    return Wish(_maker(job.maker, data), job.wanted, None, job.confirmed)


def _maker(made: MakerTorque | None, data: Refdata) -> Maker | None:
    """The maker's figure; None where none is given yet."""
    if made is None:
        return None
    stages = _stages(made)
    if stages is None:
        return None
    condition = keys.condition_cell(made.condition, data) if made.condition else ""
    return Maker(stages, made.source or "", made.place or "", condition, made.new_bolts == "yes")


def _stages(made: MakerTorque) -> Stages | None:
    if made.low is not None and made.high is not None:
        return range_of(made.low, made.high)
    one = made.low or made.high
    return made.torque or (Stages((Stage(TORQUE, one),)) if one is not None else None)


def _tools(job: Fastener, shop: Shop, data: Refdata) -> Tools:
    nut = canonical(data, "fasteners/prevailing", "nut", job.locknut) if job.locknut else ""
    return Tools(nut, job.prevailing, _adapter(job), _wrenches(job, shop))


def _wrenches(job: Fastener, shop: Shop) -> tuple[WrenchRange, ...]:
    return (job.wrench,) if job.wrench is not None else tuple(shop.wrenches)


def _adapter(job: Fastener) -> CrowFoot | None:
    made = job.adapter
    if made is None:
        return None
    if made.length is None or made.wrench_length is None:
        do = "measure both, or leave the adapter out"
        raise InputError(job.name, "adapter", "needs its length and the wrench's", (), do)
    return CrowFoot(made.length, made.wrench_length, made.angle)


def _own(job: Fastener) -> Own:
    return Own(**{name: getattr(job, name) for name in OWN})


def _grip(job: Fastener) -> Grip | None:
    """The grip; None where its length is not given yet."""
    made = job.grip
    if made is None or made.length is None:
        return None
    return Grip(made.length, made.shank, made.metal or "", made.modulus, made.bolt_modulus, made.load)


def _asked(job: Fastener, keys_of: tuple[str, ...]) -> dict[str, str | None]:
    """What the job gives for these keys, as text."""
    asked: dict[str, str | None] = {}
    for key in keys_of:
        value = getattr(job, key)
        asked[key] = text_of(value) if value is None or isinstance(value, str | Measure) else str(value)
    maker = _stages(job.maker) if job.maker is not None else None
    adapter = _adapter(job)
    asked = {**asked, "maker": maker.text if maker else None, "adapter": adapter.text if adapter else None}
    grip = _grip(job)
    return {**asked, "grip": grip.text} if grip is not None else asked


_OF_BOLT = (
    "thread",
    "grade",
    "condition",
    "service",
    "joint",
    "into",
    "insert",
    "engagement",
    "tapped_strength",
    *OWN,
    "locknut",
    "prevailing",
    "wanted",
    "wrench",
)
_OF_PART = ("part", "size", "seat", "material", "service", "condition", "locknut", "prevailing", "wanted", "wrench")


# --- sheets
# -------------------------------------------------------------------------------------------------------------


def _part_sheet(job: Fastener, shop: Shop, data: Refdata) -> Sheet:
    asked = _asked(job, _OF_PART)
    condition = keys.condition_cell(job.condition, data) if job.condition else ""
    tools, wish = _tools(job, shop, data), _wish(job, data)
    name = job.part or ""
    try:
        name = part.part_cell(name, data)
        piece = Piece(name, job.size, job.seat, job.material, job.service, condition, tools, wish)
        return part.answer(piece, asked, data)
    except LookupMiss as miss:
        piece = Piece(name, job.size, job.seat, job.material, job.service, condition, tools, wish)
        return part.unknown(piece, miss, asked, data)


def _thread_sheet(job: Fastener, shop: Shop, data: Refdata) -> Sheet:
    asked = _asked(job, _OF_BOLT)
    tapped = Tapped("", job.insert or "", job.engagement, job.tapped_strength)
    thread = keys.thread(job.thread, data) if job.thread else None
    grade = keys.grade(job.grade, data) if job.grade else None
    tools, wish = _tools(job, shop, data), _wish(job, data)
    try:
        if job.into:
            tapped = tapped.replace(metal=metal_cell(job.into, data))
        if thread is not None and grade is not None:
            keys.refuse_other_thread(thread, grade, data)
        condition, rubs = _of_threads(job, wish, data)
        if grade is not None and condition is not None:
            keys.refuse_other_metal(grade, condition, data)
        bolt = Bolt(thread, grade, condition, job.service, job.joint or "reused", tapped, tools, wish, rubs=rubs)
        return torque.answer(bolt.replace(own=_own(job), grip=read_grip(_grip(job), data)), asked, data)
    except LookupMiss as miss:
        bolt = Bolt(thread, None, None, job.service, job.joint or "reused", tapped, tools, wish)
        return _refused(job, bolt, miss, asked, data)


def _of_threads(job: Fastener, wish: Wish, data: Refdata) -> tuple[tuple[str, str, str] | None, str]:
    """The condition of the threads; where nobody published its friction and a torque is named, its cell alone."""
    if not job.condition:
        return None, ""
    try:
        return keys.condition(job.condition, data), ""
    except LookupMiss as miss:
        from gaugeblock.fasteners.unknown import is_without_friction

        if not wish.is_named or not is_without_friction(miss):
            raise
        return None, keys.condition_cell(job.condition, data)


def _refused(job: Fastener, bolt: Bolt, miss: LookupMiss, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The sheet of a bolt that the tables have no torque for: a torque that somebody names is set, else it is asked."""
    if bolt.wish.is_named and miss.where != "grade":
        return torque.answer(bolt, asked, data)
    from gaugeblock.fasteners.unknown import unknown

    return unknown(", ".join(t for t in (job.thread, job.grade, job.condition) if t), miss, asked, data)


_OPTIONAL = ("engagement", "insert", "locknut", "order", "passes", "retighten", "into", "seat", "material")


def _facts(job: Fastener) -> list[Row]:
    of_thread = ("thread", "grade", "condition", "into", "insert", "engagement", "locknut")
    of_part = ("part", "size", "seat", "material", "condition", "locknut")
    names = ("where", *(of_part if job.part is not None else of_thread), "count", "order", "passes", "retighten")
    rows = []
    for key in names:
        value = getattr(job, key)
        text = ", ".join(map(str, value)) if isinstance(value, tuple) else "" if value is None else str(value)
        optional = key in _OPTIONAL or (key == "condition" and job.part is not None)
        if text or not optional:
            rows.append(Row(key.replace("retighten", "tighten again"), text))
    if job.notes:
        rows.append(Row("notes", job.notes))
    return rows


def _card(job: Fastener, sheet: Sheet, shop: Shop, data: Refdata) -> Card:
    decision = sheet.decision
    shown = decision.figure or (decision.figures[0] if decision.figures else None)
    what = ", ".join(t for t in (job.thread or job.part, job.size, job.grade, job.seat, job.material) if t)
    stages = decision.stages if isinstance(decision, Tightening) else ()
    unit = _unit_of(shown, shop, data) if shown is not None else ""
    return Card(
        what,
        (job.condition or "").upper() or (_as_printed(shown) if job.part else "CONDITION?"),
        count=job.count or 1,
        counted="" if job.count is None else "pieces" if job.part else "bolts" if job.count > 1 else "bolt",
        order=job.order or "",
        steps=stages or (passes(job.passes, shown, unit, _wrenches(job, shop), data) if shown is not None else ()),
        notes=[*_of_order(job, decision), *_notes(job, sheet, shown, unit, data), job.notes or ""],
        again=job.retighten or "",
        boxes=[
            Box("maker's figure, page"),
            Box("as done", unit, half=True),
            Box("wrench no.", half=True),
            Box("by, date"),
            Box("checked by, date"),
            *([Box("tightened again, date")] if job.retighten else []),
        ],
    )


def _as_printed(shown: Figure | None) -> str:
    """The threads that a table's figure of a part is for, where nothing else is said: clean and dry."""
    if shown is None or any(
        f.basis in ("maker", "stated", "measured") or _WETTED.search(f.conditions) for f in shown.walk()
    ):
        return ""
    return "CLEAN, DRY"


_WETTED = re.compile(r"oil|lubric|greas|seize|seal|compound|paste|wet|lock", re.IGNORECASE)


def _of_order(job: Fastener, decision: Decision) -> list[str]:
    """Order and passes where the number is open: they hold for whichever it comes to."""
    if decision.kind != ASK:
        return []
    shares = [f"{measure.to('1') * 100:.3g} %" for measure in job.passes]
    passed = f"Passes: {', '.join(shares)} of what is settled" if shares else ""
    return [f"Order: {job.order}" if job.order else "", passed]


def _notes(job: Fastener, sheet: Sheet, shown: Figure | None, unit: str, data: Refdata) -> list[str]:
    """What the card says beside the number: the wrench, what is counted in, both ends of a range, the maker's paper."""
    notes = []
    inside = list(shown.walk()) if shown is not None else []
    wrench = next((f.conditions for f in inside if f.conditions.startswith("wrench ")), "")
    if wrench:
        notes.append(capital(wrench))
    if job.adapter is not None:
        counted = any(f.quantity == "adapter_length" for f in inside)
        adapter = _adapter(job)
        says = "already allowed for" if counted else "NOT allowed for yet"
        notes.append(f"Crow-foot {adapter.text if adapter else ''}: {says}")
    if job.locknut is not None or job.prevailing is not None:
        added = any(f.quantity == "prevailing_torque" for f in inside)
        says = "its drag is added" if added else "its drag is NOT added: read it while it runs down, and add it"
        notes.append(f"Locknut {job.locknut or ''}".rstrip() + f": {says}")
    is_setting = shown is not None and shown.quantity == "torque_setting"
    # the nearest one: further in stand torques of other conditions, which it was worked out from
    at = next((f for f in inside if f.quantity.startswith("tightening_torque")), None) if is_setting else None
    if at is not None and sheet.decision.figure is shown and _says_more(at, shown, data):
        notes.append(f"For {number_only(at, data, unit)} at the fastener")
    made = next((f for f in sheet.figures if f.basis == "maker"), None)
    if made is not None and not isinstance(sheet.decision, Tightening):
        notes.append(f"Maker: {number_only(made, data)} ({made.source}, {made.locator})")
    return notes


def _says_more(at: Figure, shown: Figure | None, data: Refdata) -> bool:
    """Whether the torque at the fastener is more than the setting says already: another number, or both ends of a
    range.
    """
    if shown is None or at is shown or number_only(at, data) == number_only(shown, data):
        return False
    x, y = (units.to_base(f.typical, f.unit) for f in (at, shown))
    return at.value is None or abs(x - y) > 0.02 * abs(x)


def _unit_of(figure: Figure, shop: Shop, data: Refdata) -> str:
    """The unit that the card's number stands in."""
    metric = None if shop.units is None else shop.units == "metric"
    return number_only(figure, data, shop_unit(figure, metric)).rsplit(" ", 1)[-1]
