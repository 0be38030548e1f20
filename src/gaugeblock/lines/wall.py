"""The wall of a line against the pressure in it: on yield, on burst, with the factor that the shop keeps."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_least
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE
from gaugeblock.calc import line_parts as calc
from gaugeblock.lines.found import Found, asking
from gaugeblock.lines.rated import is_sold_for_a_pressure, rated
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

SUBJECT = "wall against pressure"
# what the factor is on -> the strength it is on, what the wall does there, the rule that says at what pressure
_ON = {
    "yield": ("yield_strength", "yields", "thin_wall_hoop_pressure"),
    "burst": ("tensile_strength", "bursts", "thin_wall_burst"),
}


_OWN_STRENGTH = ("tensile_strength", "yield_strength")


class Pipe(Value):
    """A tube under pressure: its diameter, wall and peak pressure."""

    __slots__ = ("od", "peak", "wall")

    od: Figure
    wall: Figure
    peak: Figure

    def __init__(self, od: Figure, wall: Figure, peak: Figure) -> None:
        put(self, "od", od)
        put(self, "wall", wall)
        put(self, "peak", peak)

    @property
    def about(self) -> str:
        """What tells this tube from another."""
        return f"{self.wall.text} {self.wall.unit}|{self.od.text} {self.od.unit}"


def pressure(line: Line, item: Item | None, data: Refdata) -> Found:
    """Barlow: the pressure at which the wall yields, and at which it bursts, against the peak; the factors are the
    user's.

    Nothing without a pressure. A strength that the line's own sheet gives governs over one of the tables.
    """
    peak = line.figure("pressure", data)
    if peak is None:
        return Found()
    if item is not None and is_sold_for_a_pressure(item) and not any(line.has(one) for one in _OWN_STRENGTH):
        return rated(item, peak, data)
    od, wall = line.figure("od", data), line.figure("wall", data)
    if od is None or wall is None:
        key, what = ("od", "outside diameter") if od is None else ("wall", "wall")
        check = Check(SUBJECT, CANNOT_TELL, f"the {what} is not given", subject=SUBJECT)
        return asking(check, MEASURE, f"Measure the {what} of the line.", key)
    if not 0 < 2 * base(wall) < base(od):
        why = f"a wall of {wall.text} {wall.unit} does not fit inside {od.text} {od.unit}"
        check = Check(SUBJECT, CANNOT_TELL, why, subject=SUBJECT)
        return asking(check, MEASURE, f"Measure wall and diameter again: {why}.", "wall")
    pipe = Pipe(od, wall, peak)
    strengths = {on: _strength(line, item, quantity, data) for on, (quantity, *_) in _ON.items()}
    if not any(strengths.values()):
        check = Check(SUBJECT, CANNOT_TELL, "no strength of the tube is published or given", subject=SUBJECT)
        text = "Ask the maker of the tube for its least tensile strength."
        return asking(check, ASK_MAKER, text, "tensile_strength")
    bursts = {on: _at(pipe, strength, on, data) for on, strength in strengths.items() if strength is not None}
    found = Found(bursts.values())
    for on in _ON:
        keep = line.figure(f"factor_on_{on}", data)
        if keep is not None:
            found += _kept(pipe, keep, on, strengths[on], bursts.get(on), data)
    either = line.figure("factor", data)
    if either is not None:
        return found + _either(pipe, either, strengths, bursts, data)
    if line.has("factor_on_yield") or line.has("factor_on_burst"):
        return found
    return found + _without_factor(pipe, bursts)


def _strength(line: Line, item: Item | None, quantity: str, data: Refdata) -> Figure | None:
    """The line's own strength, else that of its material, else the least that the tables of tubes state for its
    product.
    """
    own = line.figure(quantity, data)
    if own is not None or item is None:
        return own
    published = next((f for f in item.figures if f.quantity == quantity), None)
    return published or _of_tubes(item.cell, quantity, data)


def _of_tubes(product: str, quantity: str, data: Refdata) -> Figure | None:
    rows = data.table("tubes/materials").by_quantity.get(quantity, ())
    found = [lookup.figure_of(r, data) for r in rows if r["product"] == product and not r.standing]
    return min(found, key=lambda f: units.to_base(f.least, f.unit), default=None)


def _least(strength: Figure) -> float:
    return units.to_base(strength.least, strength.unit)


def _at(pipe: Pipe, strength: Figure, on: str, data: Refdata) -> Figure:
    """The pressure at which the wall reaches a strength."""
    at = calc.pressure_of_wall(_least(strength), base(pipe.wall), base(pipe.od))
    return derived(
        _ON[on][2],
        "pressure_at_stress",
        units.from_base(at, pipe.peak.unit),
        pipe.peak.unit,
        (strength, pipe.wall, pipe.od),
        data,
        about=f"{pipe.about}|{strength.text} {strength.unit}",
        conditions=f"the wall {_ON[on][1]}, at its least strength",
    )


def _said(pipe: Pipe, bursts: Figure, on: str, data: Refdata) -> str:
    """At what pressure the wall gives way, and how many times the peak that is."""
    times = bursts.typical / pipe.peak.typical if pipe.peak.typical else 0.0
    thick = "; the wall is over a twentieth of the diameter, so this is a mean stress"
    tail = thick if 20 * base(pipe.wall) > base(pipe.od) else ""
    return (
        f"the wall {_ON[on][1]} at about {number_only(bursts, data)}, {times:.1f} times the "
        f"{pipe.peak.text} {pipe.peak.unit} peak{tail}"
    )


def _kept(pipe: Pipe, keep: Figure, on: str, strength: Figure | None, bursts: Figure | None, data: Refdata) -> Found:
    """A named factor against the wall."""
    name = f"{SUBJECT}, factor on {on}"
    if strength is None or bursts is None:
        quantity = _ON[on][0]
        what = quantity.replace("_", " ")
        check = Check(name, CANNOT_TELL, f"no {what} of the tube is published or given", subject=SUBJECT)
        return asking(check, ASK_MAKER, f"Ask the maker of the tube for its least {what}.", quantity)
    needed = _needed(pipe, keep, on, strength, data)
    bounds = (
        Bound(pipe.wall.typical, pipe.wall.unit, figure=pipe.wall),
        Bound(needed.typical, needed.unit, "min", needed),
    )
    said = f"{_said(pipe, bursts, on, data)}; for factor {keep.text} on {on} {number_only(needed, data)} wall is needed"
    check = at_least(name, *bounds, said, subject=SUBJECT)
    return asking(check, ASK_MAKER, _too_thin(needed, data), "wall", (needed,))


def _too_thin(needed: Figure, data: Refdata) -> str:
    least = number_only(needed, data)
    return f"The wall is too thin by the usual rule: take {least} or more, or ask the maker of the tube."


def _needed(pipe: Pipe, keep: Figure, on: str, strength: Figure, data: Refdata) -> Figure:
    wall_m = calc.wall_for_pressure(base(pipe.peak), _least(strength), base(pipe.od), keep.typical)
    return derived(
        "wall_for_pressure",
        "wall_needed",
        units.from_base(wall_m, pipe.wall.unit),
        pipe.wall.unit,
        (pipe.peak, strength, pipe.od, keep),
        data,
        about=f"{pipe.about}|{pipe.peak.text} {pipe.peak.unit}|{keep.text} on {on}",
        conditions=f"factor {keep.text} on {on}",
    )


def _either(
    pipe: Pipe, keep: Figure, strengths: dict[str, Figure | None], bursts: dict[str, Figure], data: Refdata
) -> Found:
    """A factor of which nobody said what it is on: judged on both, and asked where that makes a difference."""
    name = f"{SUBJECT}, factor {keep.text}"
    parts = []
    for on, strength in strengths.items():
        if strength is not None:
            needed = _needed(pipe, keep, on, strength, data)
            is_kept = base(pipe.wall) >= base(needed) * (1 - 1e-9)
            parts.append((on, needed, is_kept))
    said = "; ".join(f"on {on} {number_only(needed, data)} wall is needed" for on, needed, _ in parts)
    reason = f"{_said(pipe, bursts[parts[0][0]], parts[0][0], data)}; {said}"
    kept = {on: is_kept for on, _, is_kept in parts}
    result = OK if kept.get("yield") else NOT_OK if kept.get("burst") is False else CANNOT_TELL  # a tube yields first
    strictest = max((needed for _, needed, _ in parts), key=base)
    bounds = (
        Bound(strictest.typical, strictest.unit, "min", strictest),
        Bound(pipe.wall.typical, pipe.wall.unit, figure=pipe.wall),
    )
    check = Check(name, result, reason, *bounds, subject=SUBJECT)
    figures = [needed for _, needed, _ in parts]
    if result == NOT_OK:
        return asking(check, ASK_MAKER, _too_thin(strictest, data), "wall", figures)
    text = f"Is the factor {keep.text} on burst or on yield? Write factor_on_burst or factor_on_yield."
    return asking(check, FILL_IN, text, "factor_on_burst", figures)


def _without_factor(pipe: Pipe, bursts: dict[str, Figure]) -> Found:
    """Without a factor: not ok where the wall gives way under the peak, else asked."""
    over = [on for on, f in bursts.items() if f.typical < pipe.peak.typical]
    on = over[-1] if over else next(iter(bursts))  # what bursts under the peak yields too
    first = bursts[on]
    times = first.typical / pipe.peak.typical if pipe.peak.typical else 0.0
    bounds = Bound(pipe.peak.typical, pipe.peak.unit, "min", pipe.peak), Bound(first.typical, first.unit, figure=first)
    said = f"the wall {_ON[on][1]} at {times:.1f} times the {pipe.peak.text} {pipe.peak.unit} peak"
    if times < 1:
        text = "The wall gives way under the peak by the usual rule: take a thicker wall, or ask the maker of the tube."
        return asking(Check(SUBJECT, NOT_OK, said, *bounds, subject=SUBJECT), ASK_MAKER, text, "wall")
    check = Check(SUBJECT, CANNOT_TELL, f"{said}; no safety factor was given", *bounds, subject=SUBJECT)
    text = "Say which factor the wall must keep: on burst (factor_on_burst) or on yield (factor_on_yield)."
    return asking(check, FILL_IN, text, "factor_on_burst")
