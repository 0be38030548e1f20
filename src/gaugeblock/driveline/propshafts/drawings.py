"""The drawings of a propeller shaft: its side view, and the page for the driveshaft shop."""

from __future__ import annotations

from gaugeblock.answer.drawing import Drawing, held_back
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.printing import number_only
from gaugeblock.driveline.propshafts.angles import BUMP, DROOP, State
from gaugeblock.units import Measure, significant, to_base

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Decision
    from gaugeblock.driveline.propshafts.given import Propeller
    from gaugeblock.driveline.propshafts.travel import Travel
    from gaugeblock.driveline.propshafts.whip import Whip
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

_NOTES = (
    "Length: between the centres of the two joints. Measure it on the car, on its wheels.",
    "Slopes are down to the rear. Balance the shaft with its own yokes.",
)
_ONE, _TWO = ("gearbox", "shaft", "pinion"), ("gearbox", "front piece", "rear piece", "pinion")


def drawings(
    of: Propeller,
    at: Sequence[State],
    moved: Travel,
    found: Whip,
    decision: Decision,
    checks: Sequence[Check],
    name: str,
    data: Refdata,
) -> list[Drawing]:
    """The side view where the slopes are known; the order sheet too for a shaft that has a ``name``."""
    view = _view(of, at, moved, data)
    out = [Drawing("side view, every slope true", view)] if view else []
    if name and decision.candidates:
        page = _order(of, at, moved, found, held_back(decision, checks), name, view, data)
        out.append(Drawing(f"{name}: order for a driveshaft shop", page, "portrait"))
    return out


def _view(of: Propeller, at: Sequence[State], moved: Travel, data: Refdata) -> str:
    if not at:
        return ""
    from gaugeblock.drawing.shaft_lines import side_view

    named = _ONE if len(of.shafts_side) == len(_ONE) else _TWO
    said = [f"{what}|{pretty(m.text)}" for what, m in zip(named, of.shafts_side, strict=True)]
    angles = [pretty(f"{significant(f.typical, 3)} deg") for f in at[0].angles]
    others = [(n, _rad(side)) for n, side in ((BUMP, of.bump_side), (DROOP, of.droop_side)) if side]
    distance = next((pretty(number_only(f, data)) for f in moved.distances if f.locator == "length"), "")
    front = of.get("front_length")
    lengths = [distance] if named is _ONE else ["" if front is None else pretty(front.text), distance]
    return side_view(_rad(of.shafts_side), said, angles, lengths, others)


def _rad(slopes: Sequence[Measure]) -> list[float]:
    return [to_base(float(m.value), m.unit) for m in slopes]


def _order(
    of: Propeller,
    at: Sequence[State],
    moved: Travel,
    found: Whip,
    hold: tuple[str, list[str]],
    name: str,
    view: str,
    data: Refdata,
) -> str:
    from gaugeblock.drawing.order_sheet import drawing_body, order_sheet
    from gaugeblock.drawing.svg import Page

    def text(key: str) -> str:
        measure = of.get(key)
        return pretty(measure.text) if measure is not None else ""

    fastest = found.fastest
    facts = [
        ("tube", " x ".join(t for t in (text("od"), text("wall")) if t)),
        ("material", of.material or ""),
        *([("front piece", text("front_length"))] if of.is_in_two_pieces else []),
        ("joints", ""),
        ("front end fits", ""),
        ("rear end fits", ""),
        ("yokes", "in line"),
        ("slip joint", pretty(f"spline {text('spline_diameter')}") if text("spline_diameter") else ""),
        ("goes in, at least", _number(moved.ins, data)),
        ("goes out, at least", _number(moved.outs, data)),
        ("top speed", _number(fastest, data)),
        ("whips at", _number(found.critical, data)),
        ("balance at", _number(fastest, data)),
        ("ordered by", ""),
        ("date", ""),
    ]
    states = ["ride height", "full bump", "full droop"]
    rows = [("", *(s.upper() for s in states)), ("length", text("length"), text("bump"), text("droop"))]
    by_name = {s.name: s for s in at}
    for n in range(len(at[0].angles) if at else 0):
        found_at = [by_name.get(f"at {s}") for s in states]
        shown = [pretty(f"{significant(s.angles[n].typical, 3)} deg") if s is not None else "" for s in found_at]
        rows.append((f"joint {n + 1}", *shown))

    def fitted(width: float, height: float) -> str:
        page = Page(width, height, "side view")
        if view:
            across, down = _size(view)
            scale = min(width / across, height / down, 1.4)
            page.nested(drawing_body(view), 0, 0, across * scale, down * scale, (across, down))
        return page.svg()

    return order_sheet(name, facts, rows, fitted, _NOTES, order="ONE PROPELLER SHAFT", hold=hold)


def _size(view: str) -> tuple[float, float]:
    box = view[view.index('viewBox="') + len('viewBox="') :].split('"', 1)[0].split()
    return float(box[2]), float(box[3])


def _number(figure: Figure | None, data: Refdata) -> str:
    return pretty(number_only(figure, data)) if figure is not None else ""
