"""The cases of a line beside heat: driving, idling and hot soak; the gap needed; what a shield would do."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.figure import Figure
from gaugeblock.sheets import line_heat
from gaugeblock.sheets.line_heat import Beside, Estimate
from gaugeblock.sheets.printing import number_only
from gaugeblock.sheets.sheet import CANNOT_TELL, NOT_OK, OK, Bound, Caution, Check

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.sheets.route import _Judged
    from gaugeblock.tables.load import Refdata


def estimates(
    inputs: dict[str, Figure],
    kind: str,
    air: str | None,
    soak_air: str | None,
    speed: str | None,
    judged: _Judged,
    governed: bool,
    data: Refdata,
) -> tuple[list[Figure], list[Check], list[Caution]]:
    """Figures, checks and cautions of the estimate; with ``governed`` a measured temperature decides and this informs."""
    name = "estimated temperature"
    first = Beside(inputs, kind, data)
    if first.missing:
        if governed:
            return [], [], []
        return [], [Check(name, CANNOT_TELL, f"for an estimate these are not given: {', '.join(first.missing)}")], []
    if first.si("gap", "low") <= 0:
        return (
            [],
            [
                Check(
                    name,
                    CANNOT_TELL,
                    "the line touches the hot part: contact conducts, which no estimate here covers; move it",
                )
            ],
            [],
        )
    checks: list[Check] = []
    cautions: list[Caution] = []
    figures: list[Figure] = []
    solved: list[tuple[Estimate, Figure]] = []
    known = None
    for case in line_heat.CASES:
        more, why = _air(case, air, soak_air, speed, data)
        if why:
            if not governed:
                checks.append(Check(f"{case}: estimate", CANNOT_TELL, why))
            continue
        known = estimate = Estimate(case, Beside({**inputs, **more}, kind, data), known)
        if estimate.why:
            checks.append(Check(f"{case}: estimate", CANNOT_TELL, estimate.why))
            continue
        rule = "line_energy_balance" if kind == "none" else "shielded_line_energy_balance"
        figure = estimate.figure("line_temperature", rule)
        solved.append((estimate, figure))
    solved.sort(key=lambda pair: -pair[0].high)
    for estimate, figure in solved:
        figures.append(figure)
        if not governed:
            checks += judged.band(figure, estimate.case)
    if not solved:
        return figures, checks, cautions
    worst, figure = solved[0]
    cautions.append(_matters(worst, figure))
    text = (
        "The estimate takes the line without flow, surroundings at the temperature of the air, air at one temperature round the line and "
        "the hot part as long as it looks; hot gas rising from the part onto the line is not in it. The correlations add their own scatter to the band."
    )
    cautions.append(Caution(text, "note", (figure.id,), "calculated"))
    if kind != "none":
        text = "The shield is taken midway in the gap" + (
            ", twice the hot part's diameter wide."
            if kind == "flat open"
            else ", half round the hot part."
            if kind == "curved open"
            else ", all round the hot part."
        )
        cautions.append(Caution(text, "note", (figure.id,), "assumed"))
    limit = judged.lowest_limit_k()
    if limit is not None:
        needed, check = _gap(worst, limit, governed, data)
        figures += needed
        checks += check
    if kind == "none":
        shielded = _with_shield(worst, data)
        if shielded is not None:
            figures.append(shielded)
            text = (
                f"A flat open shield midway, from bright to dull, would bring the {worst.case} estimate of {number_only(figure, data)} "
                f"to {number_only(shielded, data)}; it must cover all sight and stay cool enough itself."
            )
            cautions.append(Caution(text, "note", (shielded.id,), "calculated"))
    return figures, checks, cautions


def _air(
    case: str, air: str | None, soak_air: str | None, speed: str | None, data: Refdata
) -> tuple[dict[str, Figure], str]:
    """Air temperature and speed of a case, or why they are not there."""
    if case == "hot soak":
        if soak_air is not None:
            return {"air": line_heat.stated(soak_air, "air_temperature", "temperature", "soak air")}, ""
        found = lookup.look_up_or_none(
            "lines/heat_sources", "air_temperature", data=data, part="air above exhaust tunnel", state="hot soak"
        )
        return ({"air": found}, "") if found is not None else ({}, "the air temperature after shut-down is not given")
    if air is None:
        return {}, "the air temperature beside the line is not given"
    got = {"air": line_heat.stated(air, "air_temperature", "temperature", "air")}
    if case == "driving":
        if speed is None:
            return {}, "the speed of the air across the line is not given"
        got["speed"] = line_heat.stated(speed, "air_speed", "speed", "speed")
    return got, ""


def _matters(worst: Estimate, figure: Figure) -> Caution:
    name, cold, warm = worst.matters()
    if not name:
        return Caution(
            "No input was given as a range, so the estimate has no band: it is no better for that.",
            "note",
            (figure.id,),
            "calculated",
        )
    low, high = (units.from_base(t, figure.unit) for t in (cold, warm))
    text = f"What matters most is the {name}: over its range alone the line goes from {low:.0f} to {high:.0f} {figure.unit}. Measure that first."
    return Caution(text, "note", (figure.id,), "calculated")


def _gap(
    worst: Estimate, limit: tuple[float, Figure], governed: bool, data: Refdata
) -> tuple[list[Figure], list[Check]]:
    """The smallest gap that would be ok, beside the gap measured."""
    name = "gap"
    gap = worst.beside.inputs["gap"]
    if worst.beside.shield != "none":
        return [], []
    need_m = line_heat.gap_that_is_ok(worst, limit[0])
    actual = Bound(gap.low if gap.low is not None else gap.typical, gap.unit, figure=gap)
    if need_m is None:
        if governed:
            return [], []
        text = (
            f"no gap up to 1 m brings the highest estimate ({worst.case}) within {number_only(limit[1], data)}: "
            "the air alone is too hot, or a band too wide; measure"
        )
        return [], [Check(name, CANNOT_TELL, text, None, actual)]
    needed = Figure(
        f"derived:smallest_gap:{worst.figure().id}|{limit[1].id}:gap_needed", "gap_needed", units.from_base(need_m, gap.unit), gap.unit,
        side="min", basis="derived", rule=data.rule("smallest_gap"), inputs=(limit[1], *worst.beside.inputs.values()), since=data.release,
        key={"case": worst.case}, conditions=f"{worst.case}, highest estimate within {number_only(limit[1], data)}",
    )  # fmt: skip
    if governed:
        return [needed], []
    got = actual.value
    enough = got >= needed.typical * (1 - 1e-9)
    result = OK if enough else NOT_OK if worst.likely > limit[0] else CANNOT_TELL
    said = f"{number_only(gap, data)} measured, {number_only(needed, data)} needed ({worst.case}, highest estimate)"
    return [needed], [
        Check(name, result, said, Bound(needed.typical, gap.unit, "min", needed), actual, got / needed.typical - 1)
    ]


def _with_shield(worst: Estimate, data: Refdata) -> Figure | None:
    """The worst case behind a flat open shield, its finish from bright aluminised to dull oxidised steel."""
    bright = lookup.look_up_or_none(
        "lines/emissivity",
        "total_emissivity",
        data=data,
        material="aluminised steel",
        surface="new hot-dip",
        temperature="100 degC",
    )
    dull = lookup.look_up_or_none(
        "lines/emissivity",
        "total_emissivity",
        data=data,
        material="iron and steel",
        surface="oxidised",
        temperature="300 degC",
    )
    if bright is None or dull is None or worst.beside.si("gap") < 0.005:
        return None
    low = bright.low if bright.low is not None else bright.typical
    ends = [low, 0.5 * (low + dull.typical), dull.typical]
    kelvin = []
    for value in ends:
        face = Figure("", "total_emissivity", value, "1", basis="common practice")
        behind = line_heat.balance(Beside({**worst.beside.inputs, "shield finish": face}, "flat open", data), {})
        if behind.why_outside():
            return None
        kelvin.append(units.from_base(behind.kelvin, worst.beside.unit))
    inputs = (*worst.beside.inputs.values(), bright, dull)
    return Figure(
        f"derived:shielded_line_energy_balance:{worst.figure().id}:shielded_line_temperature", "shielded_line_temperature", kelvin[1],
        worst.beside.unit, low=kelvin[0], high=kelvin[2], side="nominal", basis="derived", rule=data.rule("shielded_line_energy_balance"),
        inputs=inputs, since=data.release, key={"case": worst.case, "shield": "flat open"},
        conditions=f"{worst.case}, likely inputs; a flat open shield midway, twice the hot part's diameter wide, from bright aluminised to dull oxidised steel",
    )  # fmt: skip
