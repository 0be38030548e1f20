"""A line past a hot part: what was measured on the car, then the plain rule, then the estimate; its rules and its parts."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, OK, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lines import cases as line_cases
from gaugeblock.lines import estimate as line_heat
from gaugeblock.lines import fit as line_fit
from gaugeblock.lines import parts as line_parts
from gaugeblock.lines import rules as line_rules
from gaugeblock.lines.judged import Judged
from gaugeblock.tables.load import Refdata, canonical, nearest, refdata

SERVICES = ("brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission")
SIDES = ("same side", "other side")
READ_BY = ("crayon", "paint", "thermocouple", "infra-red")


def route(
    service: str | None = None,
    *,
    material: str | None = None,
    klass: str | None = None,
    state: str | None = None,
    od: str | None = None,
    wall: str | None = None,
    length: str | None = None,
    pressure: str | None = None,
    factor: str | None = None,
    fluid: str | None = None,
    fluid_state: str | None = None,
    beside: str | None = None,
    gap: str | None = None,
    temperature: str | None = None,
    temperature_by: str | None = None,
    side: str | None = None,
    shield: str | None = None,
    shield_finish: str | None = None,
    hot_od: str | None = None,
    hot_temperature: str | None = None,
    hot_finish: str | None = None,
    finish: str | None = None,
    air: str | None = None,
    soak_air: str | None = None,
    speed: str | None = None,
    sleeve: str | None = None,
    sleeve_finish: str | None = None,
    sleeve_conductivity: str | None = None,
    flow_temperature: str | None = None,
    flow_conductivity: str | None = None,
    jurisdiction: str | None = None,
    flare: str | None = None,
    seat: str | None = None,
    nut: str | None = None,
    port: str | None = None,
    anchors: str | None = None,
    exhaust_material: str | None = None,
    hose_length: str | None = None,
    droop: str | None = None,
    lock: str | None = None,
    draw: bool = False,
    data: Refdata | None = None,
) -> Sheet:
    """Whether a line past a hot part is cool enough, far enough, allowed, held and joined.

    All parameters are text as people write them, and all may be missing: what needs one that is answers ``cannot tell``
    and names it. ``beside`` is the hot part (``exhaust header``); ``temperature`` the line's own as measured and
    ``temperature_by`` what read it; ``side`` of the rail ``same side`` or ``other side``; ``shield`` ``none``,
    ``flat open``, ``curved open`` or ``closed``; ``sleeve`` its thickness over the line; ``flow_temperature`` that of what
    flows in the line while the engine runs, which cools it. Temperatures, ``air``, ``speed`` and finishes may be ranges (``300 to 450 degC``);
    a finish is an emissivity or ``material: surface`` of the table.

    Returns a Sheet: a measured temperature governs, then the plain rule, then the estimate of each case with its band;
    gap needed beside gap measured; written rules; clips; wall and pressure; flare and thread fit; exhaust growth. With
    ``draw`` also temperature against gap and the section to scale, where there is an estimate.

    Raises LookupMiss, InputError or UnitError for what is given and cannot be read.

    >>> route("brake", fluid="DOT 4", temperature="170 degC", temperature_by="thermocouple").worst
    'not ok'
    """
    data = data or refdata()
    asked = {
        "service": service, "material": material, "class": klass, "state": state, "od": od, "wall": wall, "length": length,
        "pressure": pressure, "factor": factor, "fluid": fluid, "fluid_state": fluid_state, "beside": beside, "gap": gap,
        "temperature": temperature, "temperature_by": temperature_by, "side": side, "shield": shield, "shield_finish": shield_finish,
        "hot_od": hot_od, "hot_temperature": hot_temperature, "hot_finish": hot_finish, "finish": finish, "air": air,
        "soak_air": soak_air, "speed": speed, "sleeve": sleeve, "sleeve_finish": sleeve_finish, "sleeve_conductivity": sleeve_conductivity,
        "flow_temperature": flow_temperature, "flow_conductivity": flow_conductivity,
        "jurisdiction": jurisdiction, "flare": flare, "seat": seat, "nut": nut, "port": port,
        "anchors": anchors, "exhaust_material": exhaust_material,
        "hose_length": hose_length, "droop": droop, "lock": lock,
    }  # fmt: skip
    for name, value, choices in (
        ("service", service, SERVICES),
        ("side", side, SIDES),
        ("shield", shield, line_heat.SHIELDS),
        ("temperature_by", temperature_by, READ_BY),
    ):
        if value is not None and value not in choices:
            raise InputError(
                value, name, "not one of the choices", nearest(value, list(choices)) or choices, "use one of these"
            )
    kind = shield or "none"
    judged = Judged(material, klass, state, fluid, fluid_state, data)
    if service is None and (material or klass or fluid):
        judged.cannot = [c for c in judged.cannot if "not given" not in c.reason]
    measured = (
        None if temperature is None else line_heat.stated(temperature, "line_temperature", "temperature", "temperature")
    )
    gap_figure = None if gap is None else line_heat.stated(gap, "gap", "length", "gap")
    od_figure = None if od is None else line_heat.stated(od, "outside_diameter", "length", "od")
    figures: list[Figure] = []
    checks: list[Check] = []
    cautions: list[Caution] = []
    if measured is not None:
        figures.append(measured)
        checks += judged.measured(measured, temperature_by)
    else:
        checks.append(
            Check(
                "temperature measured on the car",
                CANNOT_TELL,
                "none is given: use a temperature crayon, paint or a thermocouple, hot and after shut-down",
            )
        )
        checks += judged.cannot
    plain = _plain_rule(side, shield, measured)
    checks += [plain] if plain is not None else []
    given = {
        "hot diameter": hot_od, "hot temperature": hot_temperature, "hot finish": hot_finish, "line finish": finish,
        "shield finish": shield_finish, "sleeve": sleeve, "sleeve finish": sleeve_finish, "sleeve conductivity": sleeve_conductivity,
        "flow temperature": flow_temperature, "flow conductivity": flow_conductivity,
    }  # fmt: skip
    inputs, notes = _inputs(given, beside, od_figure, gap_figure, data)
    cautions += notes
    checks += _flow(inputs, judged)
    more = line_cases.estimates(inputs, kind, (air, soak_air, speed), judged, measured is not None, data)
    figures += more.figures
    checks += more.checks
    cautions += more.cautions
    if measured is None and more.worst is None:
        limits, open_ones = judged.untested()
        figures += limits
        checks += open_ones
    if gap_figure is not None:
        figures.append(gap_figure)
    found = [
        line_rules.clearance(service, jurisdiction, gap_figure, data),
        line_parts.supports(service, length, data) if service or length else ([], []),
        line_parts.pressure(od_figure, wall, pressure, judged.strength, factor, data) if wall or pressure else ([], []),
        line_parts.exhaust_growth(anchors, exhaust_material, inputs.get("hot temperature"), data),
    ]
    for part_figures, part_checks in found:
        figures += part_figures
        checks += part_checks
    checks += line_fit.fit(flare, seat, nut, port, od_figure, wall, data)
    checks += line_fit.hose(hose_length, droop, lock, data)
    checks += line_fit.compatible(judged.fluid_cell, judged.material_cell)
    cautions += judged.cautions + line_rules.written(service, jurisdiction, data) + line_rules.shop(service, kind, data)
    title = " ".join(p for p in (service or "", "line", f"beside {beside}" if beside else "") if p)
    drawn = []
    if draw and more.worst is not None:
        from gaugeblock.lines.drawings import drawings

        drawn = drawings(more.worst, judged.lowest_limit_k(), more.needed, data)
    return Sheet(title, asked, data, figures, checks, cautions, drawn)


def _plain_rule(side: str | None, shield: str | None, measured: Figure | None) -> Check | None:
    """The rule that needs no figure; None where it is not met and a measured temperature governs instead."""
    name = "plain rule: other side of the rail, or a shield with air on both sides"
    if side == "other side":
        return Check(name, OK, "the rail stands between line and hot part")
    if shield in ("flat open", "curved open", "closed"):
        return Check(name, OK, f"a {shield} shield stands between; keep air on both its sides")
    if side is None and shield is None:
        return Check(name, CANNOT_TELL, "neither the side of the rail nor a shield is given")
    if measured is not None:
        return None
    return Check(name, CANNOT_TELL, "not met: measure on the car, or re-route")


def _inputs(
    given: dict[str, str | None], beside: str | None, od: Figure | None, gap: Figure | None, data: Refdata
) -> tuple[dict[str, Figure], list[Caution]]:
    """The inputs of the estimate that there are, those of the tables included."""
    out: dict[str, Figure] = {}
    cautions: list[Caution] = []
    if given["hot temperature"] is not None:
        out["hot temperature"] = line_heat.stated(
            given["hot temperature"], "surface_temperature", "temperature", "hot temperature"
        )
    elif beside is not None:
        found = _heat_source(beside, data)
        if found is not None:
            out["hot temperature"] = found
            text = f"The hot part's temperature is {number_only(found, data)} of {found.source or 'habit'}, not of this car: measure it."
            cautions.append(Caution(text, "damage", (found.id,), found.source or "common practice"))
    if given["hot diameter"] is not None:
        out["hot diameter"] = line_heat.stated(given["hot diameter"], "outside_diameter", "length", "hot diameter")
    if od is not None:
        out["line diameter"] = od
    if gap is not None:
        out["gap"] = gap
    for name, quantity, dim in _STATED:
        typed = given[name]
        if typed is not None:
            out[name] = line_heat.stated(typed, quantity, dim, name)
    for name, at in (
        ("hot finish", out.get("hot temperature")),
        ("line finish", None),
        ("shield finish", None),
        ("sleeve finish", None),
    ):
        typed = given[name]
        if typed is not None:
            out[name] = line_heat.emissivity(typed, at, name, data)
    return {n: out[n] for n in line_heat.Beside.NAMES if n in out}, cautions


# what the shop states of a sleeve and of what flows -> quantity, dimension
_STATED = (
    ("sleeve", "sleeve_thickness", "length"),
    ("sleeve conductivity", "thermal_conductivity", "thermal conductivity"),
    ("flow temperature", "fluid_temperature", "temperature"),
    ("flow conductivity", "thermal_conductivity", "thermal conductivity"),
)


def _flow(inputs: dict[str, Figure], judged: Judged) -> list[Check]:
    """The fluid's conductivity of the tables where none is given; without one the flow is left out, and why is told."""
    if "flow temperature" not in inputs:
        for name in line_heat.FLOW:
            inputs.pop(name, None)
        return []
    fluid = next((item for name, item in judged.items if name.startswith("fluid")), None)
    if "flow conductivity" not in inputs and fluid is not None:
        found = next((f for f in fluid.figures if f.quantity == "thermal_conductivity"), None)
        if found is not None:
            inputs["flow conductivity"] = found
    lost = [
        n for n in ("flow conductivity", *(["sleeve conductivity"] if "sleeve" in inputs else [])) if n not in inputs
    ]
    if not lost:
        return []
    for name in line_heat.FLOW:
        inputs.pop(name, None)
    return [Check("cooling by flow", CANNOT_TELL, f"{', '.join(lost)} not given: the estimate is without flow")]


def _heat_source(part: str, data: Refdata) -> Figure | None:
    """A published surface temperature of a named part; None where the part is not in the table or has none."""
    from gaugeblock.lookup import look_up_or_none

    try:
        cell = canonical(data, "lines/heat_sources", "part", part)
    except LookupMiss:
        return None
    for state in ("running", "not stated"):
        got = look_up_or_none("lines/heat_sources", "surface_temperature", data=data, part=cell, state=state)
        if got is not None:
            return got
    return None
