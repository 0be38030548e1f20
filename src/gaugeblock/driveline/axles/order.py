"""The page for the axle shop: one axle, flange to flange, with what it must fit."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from gaugeblock.answer.drawing import Drawing, held_back
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.sheet import Sheet
from gaugeblock.drawing.axle_plan import HEIGHT as PLAN_HEIGHT
from gaugeblock.drawing.axle_plan import WIDTH as PLAN_WIDTH
from gaugeblock.drawing.axle_plan import axle_plan
from gaugeblock.drawing.order_sheet import drawing_body, order_sheet
from gaugeblock.drawing.svg import Page
from gaugeblock.driveline.axles.job import ORDER, AxleShaft
from gaugeblock.errors import GaugeblockError
from gaugeblock.job.checks import Fault
from gaugeblock.job.locate import Path
from gaugeblock.units import Measure, parse_measure, to_base

_LARGEST = 1.6


def is_ordered(job: AxleShaft) -> bool:
    """Whether anything of the axle itself was given."""
    return any(getattr(job, key) is not None for key in ORDER)


def order(job: AxleShaft, sheet: Sheet) -> Drawing:
    """The page; what was not given prints a line to fill in."""

    def text(key: str) -> str:
        value = getattr(job, key)
        return "" if value is None else pretty(value if isinstance(value, str) else value.text.removesuffix(" 1"))

    shaft = " ".join(t for t in (text("spline"), f"{job.teeth} teeth" if job.teeth is not None else "") if t)
    facts = [
        ("flange to flange", text("flange_to_flange")),
        ("spring seats", text("spring_seats")),
        ("pinion offset", _offset(job)),
        ("housing tube", text("housing_tube")),
        ("seat angle", text("seat_angle")),
        ("brakes", text("brakes")),
        ("bolt circle", text("bolt_circle")),
        ("wheel register", text("register")),
        ("axle ratio", text("ratio")),
        ("differential", text("differential")),
        ("shaft steel", text("material")),
        ("treated", text("treatment")),
        ("shaft spline", shaft),
        ("pinion flange", ""),
        ("ordered by", ""),
        ("date", ""),
    ]
    rows = [("", "WANTED", "AS MADE", "CHECKED BY")]
    wanted = {"flanges": text("flange_to_flange"), "seats": text("spring_seats"), "offset": _offset(job), "runout": ""}
    rows += [(label, said, "", "") for label, said in wanted.items()]
    notes = [
        "Flange to flange: between the faces that the wheels or drums bolt to, brakes included.",
        "Spring seats: between their middles. Seat angle: how far the pinion points up from the seats.",
        "Measure on the car at ride height. Weld nothing before wheels, springs and brakes were tried on it.",
    ]

    def fitted(width: float, height: float) -> str:
        page = Page(width, height, "axle from above")
        if job.flange_to_flange is not None:
            scale = min(width / PLAN_WIDTH, height / PLAN_HEIGHT, _LARGEST)
            size = (PLAN_WIDTH, PLAN_HEIGHT)
            page.nested(drawing_body(_plan(job)), 0, 0, PLAN_WIDTH * scale, PLAN_HEIGHT * scale, size)
        return page.svg()

    svg = order_sheet(
        job.name, facts, rows, fitted, notes, order="ONE AXLE", hold=held_back(sheet.decision, sheet.checks)
    )
    return Drawing(f"{job.name}: order for an axle shop", svg, "portrait")


def _offset(job: AxleShaft) -> str:
    if job.pinion_offset is None:
        return ""
    side = "to the right" if job.pinion_offset.value > 0 else "to the left" if job.pinion_offset.value < 0 else ""
    return pretty(f"{job.pinion_offset.text.lstrip('-')} {side}".strip())


def _base(measure: Measure | None) -> float | None:
    return None if measure is None else to_base(float(measure.value), measure.unit)


def _plan(job: AxleShaft) -> str:
    flanges, seats = job.flange_to_flange, job.spring_seats
    said = (
        pretty(flanges.text) if flanges is not None else "",
        pretty(seats.text) if seats is not None else "",
        _offset(job).removesuffix(" to the right").removesuffix(" to the left"),
    )
    known = job.pinion_offset is not None
    return axle_plan(_base(flanges) or 1.0, _base(seats), _base(job.pinion_offset) or 0.0, said, is_pinion_known=known)


def faults(path: Path, item: dict[str, Any], _job: dict[str, Any]) -> Iterator[Fault]:
    """Seats or a pinion that do not lie between the flanges."""
    wide = _length(item.get("flange_to_flange"))
    if wide is None:
        return
    for key, most in (("spring_seats", wide), ("pinion_offset", wide / 2)):
        got = _length(item.get(key))
        if got is not None and abs(got) >= most:
            why = f"{item[key]} does not lie between flanges that are {item['flange_to_flange']} apart"
            yield Fault((*path, key), why, "measure both again", (*path, "flange_to_flange"))


def _length(raw: object) -> float | None:
    """In m; None for what is refused as it is read."""
    try:
        return None if raw is None else _base(parse_measure(str(raw), "length"))
    except GaugeblockError:
        return None
