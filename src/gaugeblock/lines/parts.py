"""The parts of a line: clips, wall against pressure, flare and thread fit, what the fluid does to it, exhaust growth."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import line_parts as calc
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.lines.found import Found
from gaugeblock.tables.load import canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata

_SUBJECT = {"brake": "brake line", "fuel feed": "fuel line", "fuel return": "fuel line", "vapour": "fuel line"}
_METALS = ("steel", "copper", "nickel", "aluminium", "exhaust tube", "nonferrous", "brake tube")


def tube_yield(product: str, data: Refdata) -> Figure | None:
    """The least yield strength that the tables of tubes state for a line's product; None where none is published."""
    rows = data.table("tubes/materials").by_quantity.get("yield_strength", [])
    found = [lookup.figure_of(r, data) for r in rows if r["product"] == product and not r.standing]
    return min(found, key=lambda f: units.to_base(f.least, f.unit), default=None)


def is_metal(material: str) -> bool:
    """Whether a line material is a metal tube: heat reaches its fluid long before it harms the tube."""
    return any(word in material for word in _METALS) and "hose" not in material and "nylon" not in material


def supports(line: Line, data: Refdata) -> Found:
    """Clip spacing with count and places; a missing length answers ``cannot tell``."""
    service, name = line.word("service"), "clips"
    run = line.figure("length", data)
    if service is None:
        why = "the service of the line is not given"
        return Found() if run is None else Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    subject = _SUBJECT.get(service)
    limit = None
    if subject is not None:
        keys = {"subject": subject, "size": "any"}
        limit = lookup.look_up_or_none("lines/supports", "support_spacing_maximum", data=data, **keys)
    if limit is None:
        why = f"no published clip spacing for a {service} line: clip it beside each bend and each change to hose"
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    if run is None:
        why = f"{number_only(limit, data)} apart at most; the length of the line is not given"
        required = Bound(limit.typical, limit.unit, "max", limit)
        return Found((limit,), (Check(name, CANNOT_TELL, why, required, bears=INFORM),))
    return _clips(run, limit, data)


def _clips(run: Figure, limit: Figure, data: Refdata) -> Found:
    """How many clips a run takes, and where they stand."""
    long_m, most_m = base(run), base(limit)
    count = int(calc.support_count(long_m, most_m))
    about = f"{run.text} {run.unit}"
    clips = derived(
        "support_count",
        "support_count",
        float(count),
        "1",
        (run, limit),
        data,
        about=about,
        conditions="both ends held by their fittings",
    )
    apart = units.from_base(long_m / (count + 1), run.unit)
    spacing = derived("support_spacing_even", "support_spacing", apart, run.unit, (run, clips), data, about=about)
    unit = {"ft": "in", "m": "mm"}.get(run.unit, run.unit)  # as a tape is read
    places = ", ".join(units.significant(units.from_base(p, unit), 4) for p in calc.support_places(long_m, count)[:12])
    more = " ..." if count > 12 else ""
    where = f"at {places}{more} {unit} from one end" if count else "none between the fittings"
    reason = f"{count} clips {where}; plus one beside each bend and each change to hose; {number_only(limit, data)} apart at most"
    required = Bound(units.from_base(most_m, run.unit), run.unit, "max", limit)
    return Found((limit, clips, spacing), (at_most("clips", Bound(apart, run.unit, figure=spacing), required, reason),))


def pressure(line: Line, strength: Figure | None, data: Refdata) -> Found:
    """Barlow: the pressure that brings the wall to its yield, against the system's peak; the factor is the user's."""
    if not (line.has("wall") or line.has("pressure")):
        return Found()
    name = "wall against pressure"
    od, thick, peak = (line.figure(key, data) for key in ("od", "wall", "pressure"))
    parts = (("outside diameter", od), ("wall", thick), ("system pressure", peak))
    lacking = [n for n, v in (*parts, ("a published yield strength of the tube", strength)) if v is None]
    if od is None or thick is None or peak is None or strength is None:
        return Found((), (Check(name, CANNOT_TELL, f"not given: {', '.join(lacking)}", bears=INFORM),))
    od_m, wall_m, stress = base(od), base(thick), base(strength)
    if not 0 < 2 * wall_m < od_m:
        asked = f"{thick.text} {thick.unit}"
        raise InputError(asked, "wall", "does not fit inside the outside diameter", (), "check wall and diameter")
    at_yield = units.from_base(calc.pressure_of_wall(stress, wall_m, od_m), peak.unit)
    about = f"{thick.text} {thick.unit}|{od.text} {od.unit}"
    bursts = derived(
        "thin_wall_hoop_pressure",
        "pressure_at_stress",
        at_yield,
        peak.unit,
        (strength, thick, od),
        data,
        about=about,
        conditions="the wall reaches its least yield strength",
    )
    ratio = at_yield / peak.typical if peak.typical else 0.0
    thin = (
        "; the wall is thicker than a twentieth of the diameter, so this is a mean stress" if 20 * wall_m > od_m else ""
    )
    said = f"{number_only(bursts, data)} brings the wall to yield, {peak.text} {peak.unit} is the peak: {ratio:.1f} times{thin}"
    keep = line.figure("factor", data)
    if keep is None:
        required, actual = Bound(peak.typical, peak.unit, "min", peak), Bound(at_yield, peak.unit, figure=bursts)
        result = NOT_OK if ratio < 1 else CANNOT_TELL
        why = f"{said}; the factor to keep is not given"
        return Found((bursts,), (Check(name, result, why, required, actual),))
    needed = derived(
        "wall_for_pressure",
        "wall_needed",
        units.from_base(calc.wall_for_pressure(base(peak), stress, od_m, keep.typical), thick.unit),
        thick.unit,
        (peak, strength, od, keep),
        data,
        about=f"{about}|{peak.text} {peak.unit}",
        conditions=f"factor {keep.text} on yield",
    )
    bounds = Bound(thick.typical, thick.unit, figure=thick), Bound(needed.typical, thick.unit, "min", needed)
    check = at_least(name, *bounds, f"{said}; {number_only(needed, data)} wall needed")
    return Found((bursts, needed), (check,))


def exhaust_growth(words: Words, hot: Figure | None) -> Found:
    """Growth of an exhaust between two anchors, and the slip or hanger travel it needs; nothing when no length was given."""
    line, data = words.line, words.data
    run = line.figure("anchors", data)
    if run is None:
        return Found()
    name = "exhaust growth"

    def cannot(why: str) -> Found:
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))

    if not line.has("exhaust_material") or hot is None:
        lacking = "material of the exhaust" if not line.has("exhaust_material") else "temperature of the hot part"
        return cannot(f"the {lacking} is not given")
    top = hot.high if hot.high is not None else hot.typical
    wanted = f"{units.significant(top, 6)} {hot.unit}"
    per = words.read("exhaust_material", lambda typed: _growth_of(typed, wanted, data))
    if per is None:
        return Found() if "exhaust_material" in words.unread else cannot(_none_published(line, wanted))
    if per.quantity == "linear_growth":
        grown, said = base(per) * base(run), "from 70 degF"
    else:
        grown, said = calc.growth(base(per), base(run), units.to_base(top, hot.unit) - 293.15), "from 20 degC"
    length = units.from_base(grown, run.unit)
    ends = (
        ("thermal_growth", f"{said} to {wanted}, free to grow"),
        ("slip_needed", "slip joints and hangers together"),
    )
    about = f"{run.text} {run.unit}|{line.word('exhaust_material')}|{wanted}"
    growth, slip = (
        derived("thermal_growth", q, length, run.unit, (per, run, hot), data, about=about, conditions=c)
        for q, c in ends
    )
    reason = (
        f"{run.text} {run.unit} between anchors grows {number_only(growth, data)}: give slip joint or hangers that travel, "
        f"{number_only(slip, data)} or more; none was given to judge"
    )
    required = Bound(slip.typical, slip.unit, "min", slip)
    return Found((growth, slip), (Check(name, CANNOT_TELL, reason, required, bears=INFORM),))


def _none_published(line: Line, wanted: str) -> str:
    return f"no published growth of {line.word('exhaust_material')} at {wanted}"


def _growth_of(material: str, at: str, data: Refdata) -> Figure | None:
    """Published growth of a material to a temperature, else its coefficient of expansion there; None where neither is."""
    keys = {"material": material, "temperature": at}
    try:
        canonical(data, "lines/growth", "material", material)
    except LookupMiss:
        if material not in data.table("lines/expansion").column("material"):
            raise
    grown = lookup.look_up_or_none("lines/growth", "linear_growth", data=data, **keys)
    if grown is not None:
        return grown
    return lookup.look_up_or_none("lines/expansion", "expansion_coefficient", data=data, **keys)
