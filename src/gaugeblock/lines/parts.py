"""The parts of a line: clips, wall against pressure, flare and thread fit, what the fluid does to it, exhaust growth."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, Bound, Check, at_least, at_most
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import line_parts as calc
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lines.estimate import stated

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
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


def derived(
    name: str,
    quantity: str,
    value: float,
    unit: str,
    inputs: tuple[Figure, ...],
    data: Refdata,
    side: str,
    text: str = "",
) -> Figure:
    """A derived figure with an id made of its inputs."""
    ids = "|".join(f"{f.quantity}={f.text or f.typical}" for f in inputs)
    return Figure(
        f"derived:{name}:{ids}:{quantity}@{data.release}", quantity, value, unit, side=side, basis="derived", rule=data.rule(name),
        inputs=inputs, since=data.release, conditions=text,
    )  # fmt: skip


def supports(service: str | None, length: str | None, data: Refdata) -> tuple[list[Figure], list[Check]]:
    """Clip spacing with count and places; a missing length answers ``cannot tell``."""
    name = "clips"
    if service is None:
        return [], [Check(name, CANNOT_TELL, "the service of the line is not given")]
    subject = _SUBJECT.get(service)
    limit = (
        None
        if subject is None
        else lookup.look_up_or_none("lines/supports", "support_spacing_maximum", data=data, subject=subject, size="any")
    )
    if limit is None:
        return [], [
            Check(
                name,
                CANNOT_TELL,
                f"no published clip spacing for a {service} line: clip it beside each bend and each change to hose",
            )
        ]
    if length is None:
        reason = f"{number_only(limit, data)} apart at most; the length of the line is not given"
        return [limit], [Check(name, CANNOT_TELL, reason, Bound(limit.typical, limit.unit, "max", limit))]
    run = stated(length, "length", "length", "length")
    long_m, most_m = units.to_base(run.typical, run.unit), units.to_base(limit.typical, limit.unit)
    count = int(calc.support_count(long_m, most_m))
    clips = derived(
        "support_count",
        "support_count",
        float(count),
        "1",
        (run, limit),
        data,
        "nominal",
        "both ends held by their fittings",
    )
    figures = [limit, clips]
    apart = units.from_base(long_m / (count + 1), run.unit)
    spacing = derived("support_spacing_even", "support_spacing", apart, run.unit, (run, clips), data, "max")
    figures.append(spacing)
    unit = {"ft": "in", "m": "mm"}.get(run.unit, run.unit)  # as a tape is read
    places = ", ".join(units.significant(units.from_base(p, unit), 4) for p in calc.support_places(long_m, count)[:12])
    more = " ..." if count > 12 else ""
    where = f"at {places}{more} {unit} from one end" if count else "none between the fittings"
    reason = f"{count} clips {where}; plus one beside each bend and each change to hose; {number_only(limit, data)} apart at most"
    bound = Bound(units.from_base(most_m, run.unit), run.unit, "max", limit)
    return figures, [at_most(name, Bound(apart, run.unit, figure=spacing), bound, reason)]


def pressure(
    od: Figure | None, wall: str | None, system: str | None, strength: Figure | None, factor: str | None, data: Refdata
) -> tuple[list[Figure], list[Check]]:
    """Barlow: the pressure that brings the wall to its yield, against the system's peak; the factor is the user's."""
    name = "wall against pressure"
    lacking = [n for n, v in (("outside diameter", od), ("wall", wall), ("system pressure", system)) if v is None]
    if strength is None:
        lacking.append("a published yield strength of the tube")
    if od is None or wall is None or system is None or strength is None:
        return [], [Check(name, CANNOT_TELL, f"not given: {', '.join(lacking)}")]
    thick = stated(wall, "wall_thickness", "length", "wall")
    peak = stated(system, "system_pressure", "stress", "pressure")
    od_m, wall_m = units.to_base(od.typical, od.unit), units.to_base(thick.typical, thick.unit)
    if not 0 < 2 * wall_m < od_m:
        raise InputError(wall, "wall", "does not fit inside the outside diameter", (), "check wall and diameter")
    stress = units.to_base(strength.typical, strength.unit)
    at_yield = units.from_base(calc.pressure_of_wall(stress, wall_m, od_m), peak.unit)
    inputs = (strength, thick, od)
    bursts = derived(
        "thin_wall_hoop_pressure",
        "pressure_at_stress",
        at_yield,
        peak.unit,
        inputs,
        data,
        "max",
        "the wall reaches its least yield strength",
    )
    ratio = at_yield / peak.typical if peak.typical else 0.0
    thin = (
        ""
        if wall_m <= od_m / 20
        else "; the wall is thicker than a twentieth of the diameter, so this is a mean stress"
    )
    said = f"{number_only(bursts, data)} brings the wall to yield, {peak.text} {peak.unit} is the peak: {ratio:.1f} times{thin}"
    actual = Bound(at_yield, peak.unit, figure=bursts)
    if factor is None:
        result = NOT_OK if ratio < 1 else CANNOT_TELL
        return [bursts], [
            Check(
                name,
                result,
                f"{said}; the factor to keep is not given",
                Bound(peak.typical, peak.unit, "min", peak),
                actual,
            )
        ]
    keep = stated(factor, "safety_factor", "ratio", "factor")
    need_m = calc.wall_for_pressure(units.to_base(peak.typical, peak.unit), stress, od_m, keep.typical)
    needed = derived(
        "wall_for_pressure", "wall_needed", units.from_base(need_m, thick.unit), thick.unit, (peak, strength, od, keep), data, "min",
        f"factor {keep.text} on yield",
    )  # fmt: skip
    check = at_least(
        name,
        Bound(thick.typical, thick.unit, figure=thick),
        Bound(needed.typical, thick.unit, "min", needed),
        f"{said}; {number_only(needed, data)} wall needed",
    )
    return [bursts, needed], [check]


def exhaust_growth(
    anchors: str | None, material: str | None, hot: Figure | None, data: Refdata
) -> tuple[list[Figure], list[Check]]:
    """Growth of an exhaust between two anchors, and the slip or hanger travel it needs; nothing when no length was given."""
    if anchors is None:
        return [], []
    name = "exhaust growth"
    if material is None or hot is None:
        lacking = "material of the exhaust" if material is None else "temperature of the hot part"
        return [], [Check(name, CANNOT_TELL, f"the {lacking} is not given")]
    run = stated(anchors, "length", "length", "anchors")
    top = hot.high if hot.high is not None else hot.typical
    wanted = f"{units.significant(top, 6)} {hot.unit}"
    try:
        per = lookup.look_up("lines/growth", "linear_growth", data=data, material=material, temperature=wanted)
        grown = units.to_base(per.typical, per.unit) * units.to_base(run.typical, run.unit)
        said = "from 70 degF"
    except LookupMiss as first:
        if "not a key" in first.why and material not in data.table("lines/expansion").column("material"):
            raise
        found = lookup.look_up_or_none(
            "lines/expansion", "expansion_coefficient", data=data, material=material, temperature=wanted
        )
        if found is None:
            return [], [Check(name, CANNOT_TELL, f"no published growth of {material} at {wanted}")]
        per = found
        rise = units.to_base(top, hot.unit) - 293.15
        grown = calc.growth(units.to_base(per.typical, per.unit), units.to_base(run.typical, run.unit), rise)
        said = "from 20 degC"
    growth = derived(
        "thermal_growth",
        "thermal_growth",
        units.from_base(grown, run.unit),
        run.unit,
        (per, run, hot),
        data,
        "nominal",
        f"{said} to {wanted}, free to grow",
    )
    slip = derived(
        "thermal_growth",
        "slip_needed",
        units.from_base(grown, run.unit),
        run.unit,
        (per, run, hot),
        data,
        "min",
        "slip joints and hangers together",
    )
    reason = (
        f"{run.text} {run.unit} between anchors grows {number_only(growth, data)}: give slip joint or hangers that travel, "
        f"{number_only(slip, data)} or more; none was given to judge"
    )
    return [growth, slip], [Check(name, CANNOT_TELL, reason, Bound(slip.typical, slip.unit, "min", slip))]
