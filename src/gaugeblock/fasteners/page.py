"""Job items of the domain fasteners -> Items with their Sheet and bench card. A blank key is a blank box."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, Check
from gaugeblock.answer.decision import Decision, decided
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.printing import number_only, printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError, InputError, LookupMiss, Problem
from gaugeblock.fasteners import keys as fastener_keys
from gaugeblock.fasteners.job import Fastener
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.target import maker_torque
from gaugeblock.fasteners.torque import torque
from gaugeblock.figure import Figure
from gaugeblock.job.model import Shop
from gaugeblock.job.wrench import WrenchRange
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.units import Measure, text_of

_OTHER = {"lbf*ft": "N*m", "lbf*in": "N*m", "N*m": "lbf*ft"}
_HEAT = ("exhaust", "header", "manifold", "turbo", "catalyst", "silencer", "muffler")


def problems(item: Fastener, data: Refdata) -> Iterator[Problem]:
    """What the tables do not know of an item's keys, each with the nearest choices."""
    readers: dict[str, Callable[[str], object]] = {
        "thread": lambda text: fastener_keys.thread(text, data),
        "grade": lambda text: fastener_keys.grade(text, data),
        "condition": lambda text: fastener_keys.condition(text, data),
        "into": lambda text: canonical(data, "fasteners/engagement", "into", text),
        "locknut": lambda text: canonical(data, "fasteners/prevailing", "nut", text),
    }
    for key, read in readers.items():
        text = getattr(item, key)
        if text is None:
            continue
        try:
            read(text)
        except GaugeblockError as error:
            if error.why.startswith("no published"):
                continue  # an open question of its sheet
            yield Problem(key, None, f"{error.asked}: {error.why}", error.nearest, error.do)


def item(job: Fastener, shop: Shop, data: Refdata) -> Item:
    """The Item of one fastener of the job."""
    maker = _maker(job)
    plain = _part_sheet(job, maker, data) if job.part is not None else _thread_sheet(job, maker, shop, data)
    checks = list(plain.checks)
    if job.maker is not None and maker is None:
        missing = [k for k in ("torque", "source", "place") if getattr(job.maker, k) is None]
        reason = f"the maker's figure needs its {' and '.join(missing)} before it can govern"
        checks.append(Check("maker's figure", CANNOT_TELL, reason))
    cautions = [*plain.cautions, *_shop_cautions(job)]
    sheet = Sheet(plain.title, plain.asked, data, plain.figures, checks, cautions)
    sheet.decide(_decision(sheet))
    return Item("fasteners", job.name, _facts(job), sheet, _card(job, sheet, shop, data))


def _maker(job: Any) -> tuple[str, str, str] | None:
    made = job.maker
    if made is None or made.source is None or made.place is None:
        return None
    text = text_of(made.torque)
    if text is None and made.low is not None and made.high is not None:
        low, high = made.low, made.high
        middle = (low.value + units.convert(high.value, high.unit, low.unit)) / 2
        text = f"{units.decimal_text(middle)} {low.unit}"
    return None if text is None else (text, made.source, made.place)


def _part_sheet(job: Fastener, maker: tuple[str, str, str] | None, data: Refdata) -> Sheet:
    try:
        return part(
            job.part or "",
            size=job.size,
            seat=job.seat,
            material=job.material,
            service=job.service,
            maker=maker,
            data=data,
        )
    except LookupMiss as miss:
        figures = [maker_torque(maker)] if maker is not None else []
        reason = f"no published source for {miss.asked}: ask the maker"
        checks = [] if maker is not None else [Check("tightening torque", CANNOT_TELL, reason)]
        title = ", ".join(t for t in (job.part, job.size, job.seat, job.material) if t)
        return Sheet(
            title,
            {"part": job.part, "size": job.size, "seat": job.seat, "material": job.material},
            data,
            figures,
            checks,
            [],
        )


def _thread_sheet(job: Any, maker: tuple[str, str, str] | None, shop: Shop, data: Refdata) -> Sheet:
    missing = [k for k in ("thread", "grade", "condition") if getattr(job, k) is None]
    if missing:
        checks = [Check("tightening torque", CANNOT_TELL, f"{', '.join(missing)} not given")]
        title = ", ".join(t for t in (job.thread, job.grade, job.condition) if t) or job.name
        asked = {"thread": job.thread, "grade": job.grade, "condition": job.condition}
        figures = [maker_torque(maker)] if maker is not None else []
        return Sheet(title, asked, data, figures, [] if maker is not None else checks, [])
    adapter = _adapter(job)
    try:
        sheet = torque(
            job.thread or "", grade=job.grade or "", condition=job.condition or "", service=job.service, joint=job.joint or "reused",
            into=job.into, engagement=text_of(job.engagement), tapped_strength=text_of(job.tapped_strength), locknut=job.locknut,
            prevailing=text_of(job.prevailing), maker=maker, wrench=None if job.wrench is None else job.wrench.text, adapter=adapter, data=data,
        )  # fmt: skip
        if job.wrench is None and shop.wrenches:
            sheet = _with_shop_wrench(job, maker, shop, sheet, adapter, data)
        return sheet
    except LookupMiss as miss:
        asked = {"thread": job.thread, "grade": job.grade, "condition": job.condition}
        figures = [maker_torque(maker)] if maker is not None else []
        reason = f"no published source: ask the maker ({miss.asked}: {miss.why})"
        title = ", ".join(t for t in (job.thread, job.grade, job.condition) if t)
        return Sheet(title, asked, data, figures, [Check("tightening torque", CANNOT_TELL, reason)], [])


def _adapter(job: Fastener) -> str | None:
    made = job.adapter
    if made is None:
        return None
    if made.length is None or made.wrench_length is None:
        raise InputError(
            job.name, "adapter", "needs its length and the wrench's", (), "measure both, or leave the adapter out"
        )
    return f"{made.length} on {made.wrench_length}" + (f" at {made.angle}" if made.angle else "")


def _rank(tool: WrenchRange, target_nm: float) -> tuple[bool, float]:
    """Wrenches that reach the target first, the finest of them before the others."""
    return (not tool.to_nm(tool.low) <= target_nm <= tool.to_nm(tool.high), tool.to_nm(tool.step))


def _wrench_for(shown: Figure | None, shop: Shop) -> str:
    """The shop's wrench that reaches all of a figure; blank where none does or it is no torque."""
    if shown is None or units.dimension(shown.unit) != "torque" or not shop.wrenches:
        return ""
    ends = [units.to_base(e, shown.unit) for e in (shown.typical, shown.low, shown.high) if e is not None]
    reach = [tool for tool in shop.wrenches if not any(_rank(tool, end)[0] for end in ends)]
    return str(min(reach, key=lambda tool: _rank(tool, ends[0]), default=""))


def _with_shop_wrench(
    job: Any, maker: tuple[str, str, str] | None, shop: Shop, plain: Sheet, adapter: str | None, data: Refdata
) -> Sheet:
    """The sheet with the shop's wrench whose range holds the target best: the finest one with a graduation inside."""
    answer = next(f for f in plain.figures if f.quantity in ("torque_setting", "tightening_torque"))
    target = units.to_base(answer.typical, answer.unit)
    best = min(shop.wrenches, key=lambda tool: _rank(tool, target))
    return torque(
        job.thread or "", grade=job.grade or "", condition=job.condition or "", service=job.service, joint=job.joint or "reused",
        into=job.into, engagement=text_of(job.engagement), tapped_strength=text_of(job.tapped_strength), locknut=job.locknut,
        prevailing=text_of(job.prevailing),
        maker=maker, wrench=best.text, adapter=adapter, data=data,
    )  # fmt: skip


def _shop_cautions(job: Fastener) -> list[Caution]:
    """What a careful shop adds for the place that the job names."""
    words = f"{job.name} {job.where or ''} {job.part or ''}".casefold()
    out = []
    is_wheel = any(w in words for w in ("wheel nut", "wheel bolt", "wheel stud", "wheels"))
    if is_wheel or any(w in words for w in ("brake", "caliper", "steering", "suspension")):
        out.append(
            Caution("Brake, wheel and steering work is checked by a second person before the car moves.", "injury")
        )
    if is_wheel:
        out.append(
            Caution("Wheel nuts: no oil on the seats, crosswise, and checked again after the first miles.", "injury")
        )
    if any(w in words for w in _HEAT) and job.retighten is None:
        out.append(Caution("Hot joint: say whether it is tightened again, cold, after the first heat.", "damage"))
    if any(w in words for w in ("cover", "gasket", "oil pan", "sump", "rubber", "bushing")):
        out.append(
            Caution(
                "A soft gasket or rubber in the joint is crushed before a bolt chart's torque is reached: ask the part's maker.",
                "damage",
            )
        )
    return out


def _facts(job: Fastener) -> list[Row]:
    of_thread = ("thread", "grade", "condition", "into", "engagement", "locknut")
    of_part = ("part", "size", "seat", "material")
    keys = ("where", *(of_part if job.part is not None else of_thread), "count", "order", "passes", "retighten")
    rows = []
    for key in keys:
        value = getattr(job, key)
        text = ", ".join(map(str, value)) if isinstance(value, tuple) else "" if value is None else str(value)
        optional = key in ("engagement", "locknut", "order", "passes", "retighten", "into", "seat", "material")
        if text or not optional:
            rows.append(Row(key.replace("retighten", "tighten again"), text))
    if job.notes:
        rows.append(Row("notes", job.notes))
    return rows


def _shown(sheet: Sheet) -> tuple[Figure | None, Figure | None]:
    """The figure at the fastener, and what the wrench is set to where the two part."""
    answer = next((f for f in sheet.figures if f.quantity in ("tightening_torque", "turn_from_snug")), None)
    setting = next((f for f in sheet.figures if f.quantity == "torque_setting"), None)
    return answer, setting if answer is not None else None


def _decision(sheet: Sheet) -> Decision:
    answer, setting = _shown(sheet)
    verb = "SET" if setting is not None else "TIGHTEN"
    return decided(verb, setting or answer, sheet.checks, "" if answer else "Ask the part maker for the figure.")


def _card(job: Any, sheet: Sheet, shop: Shop, data: Refdata) -> Card:
    answer, setting = _shown(sheet)
    shown = setting or answer
    what = ", ".join(t for t in (job.thread or job.part, job.size, job.grade, job.seat, job.material) if t)
    tool = next(
        (f.conditions.removeprefix("wrench ") for f in sheet.figures if f.conditions.startswith("wrench ")),
        str(job.wrench or _wrench_for(shown, shop)),
    )
    notes = [f"Wrench {tool}" if tool else ""]
    if job.adapter is not None:
        notes.append(f"Crow-foot {_adapter(job)}: already allowed for")
    if job.locknut is not None:
        drag = any(f.quantity.startswith("prevailing_torque") for f in sheet.figures)
        said = "its drag is added" if drag else "read its drag while it runs down, and add it"
        notes.append(f"Locknut {job.locknut}: {said}")
    if shown is not None and setting is not None and answer is not None and _differs(answer, setting):
        notes.append(f"Gives {number_only(answer, data)} at the fastener")
    made = next((f for f in sheet.figures if f.basis == "maker"), None)
    if made is not None and made is not answer:
        notes.append(f"Maker: {printed(made, data)} ({made.source}, {made.locator})")
    unit = _unit_of(shown, data) if shown is not None else ""
    return Card(
        what,
        (job.condition or "").upper() or ("" if job.part else "CONDITION?"),
        count=job.count or 1,
        counted="" if job.count is None else "pieces" if job.part else "bolts" if job.count > 1 else "bolt",
        order=job.order or "",
        steps=_passes(job.passes, shown, data) if shown is not None else (),
        notes=[*notes, job.notes or ""],
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


def _differs(a: Figure, b: Figure) -> bool:
    x, y = units.to_base(a.typical, a.unit), units.to_base(b.typical, b.unit)
    return abs(x - y) > 0.02 * abs(x)


def _unit_of(figure: Figure, data: Refdata) -> str:
    return number_only(figure, data).rsplit(" ", 1)[-1]


def _passes(shares: tuple[Measure, ...], figure: Figure, data: Refdata) -> list[str]:
    """Each pass in the unit of the last one; a range has both its ends."""
    unit = _unit_of(figure, data)
    parts = []
    for measure in shares:
        share = measure.to("1")
        if share == 1:
            parts.append(number_only(figure, data))
            continue
        ends = [None if e is None else e * share for e in (figure.value, figure.low, figure.high)]
        value, low, high = ends if figure.value is None else (ends[0], None, None)
        parts.append(number_only(figure.replace(value=value, low=low, high=high, text=""), data, unit))
    return parts
