"""The cases of a line beside heat: driving, idling and hot soak; the gap needed; what a shield would do."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.figure import Figure
from gaugeblock.lines import estimate as line_heat
from gaugeblock.lines.estimate import Beside, Estimate
from gaugeblock.lines.heat import CLOSE, CLOSE_K
from gaugeblock.lines.judged import NO_BAND

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.judged import Judged
    from gaugeblock.tables.load import Refdata


class Estimates:
    """What the estimate adds to a sheet, with its worst case and the gap that case needs (None where there is none)."""

    __slots__ = ("cautions", "checks", "figures", "needed", "worst")

    def __init__(self) -> None:
        self.figures: list[Figure] = []
        self.checks: list[Check] = []
        self.cautions: list[Caution] = []
        self.worst: Estimate | None = None
        self.needed: Figure | None = None


def estimates(
    inputs: dict[str, Figure],
    kind: str,
    airs: tuple[str | None, str | None, str | None],
    judged: Judged,
    governed: bool,
    data: Refdata,
) -> Estimates:
    """The estimate of every case; ``airs`` are air, air after shut-down and speed as typed.

    With ``governed`` a measured temperature decides, and the estimate informs.
    """
    out = Estimates()
    first = Beside(inputs, kind, data)
    if first.missing or first.si("gap", "low") <= 0:
        why = f"for an estimate these are not given: {', '.join(first.missing)}"
        if not first.missing:
            why = "the line touches the hot part: contact conducts, which no estimate here covers; move it"
        if not governed:
            out.checks.append(Check("estimated temperature", CANNOT_TELL, why))
        return out
    solved = _cases(out, inputs, kind, airs, governed, data)
    for estimate, figure in solved:
        out.figures.append(figure)
        if not governed:
            out.checks += judged.band(figure, estimate.case)
    if not solved:
        return out
    out.worst, figure = solved[0]
    flow = (
        "without flow, the worst case"
        if not first.flows
        else "without flow in the hot soak, with the least that it takes else"
    )
    out.cautions += [_matters(out.worst, figure), Caution(_MODEL.format(flow=flow), "note", (figure.id,), "calculated")]
    if "sleeve" in inputs:
        text = "The sleeve gives the line another size and finish; without flow it holds no heat back. The gap counts from its outside."
        out.cautions.append(Caution(text, "note", (figure.id,), "calculated"))
    if kind != "none":
        out.cautions.append(
            Caution(f"The shield is taken midway in the gap, {_SHAPES[kind]}.", "note", (figure.id,), "assumed")
        )
    limit = judged.lowest_limit_k()
    if limit is not None:
        out.needed, checks = _gap(out.worst, limit, governed, data)
        out.figures += [out.needed] if out.needed is not None else []
        out.checks += checks
    shielded = _with_shield(out.worst, data) if kind == "none" else None
    if shielded is not None:
        out.figures.append(shielded)
        text = (
            f"A flat open shield midway, from bright to dull, would bring the {out.worst.case} estimate of {number_only(figure, data)} "
            f"to {number_only(shielded, data)}; it must cover all sight and stay cool enough itself."
        )
        out.cautions.append(Caution(text, "note", (shielded.id,), "calculated"))
    return out


_MODEL = (
    "The estimate takes the line {flow}, surroundings at the temperature of the air, air at one temperature round the line "
    "and the hot part as long as it looks; hot gas rising from the part onto the line is not in it. The correlations add their own "
    "scatter to the band."
)
_SHAPES = {
    "flat open": "twice the hot part's diameter wide, open to the air on both faces",
    "curved open": "half round the hot part, open to the air on both faces",
    "closed": "all round the hot part",
}


def _cases(
    out: Estimates,
    inputs: dict[str, Figure],
    kind: str,
    airs: tuple[str | None, str | None, str | None],
    governed: bool,
    data: Refdata,
) -> list[tuple[Estimate, Figure]]:
    """The cases that could be solved, the hottest first; why the others could not be goes to the checks."""
    solved = []
    known = None
    still = {n: f for n, f in inputs.items() if n not in line_heat.FLOW}
    for case in line_heat.CASES:
        more, why = _air(case, *airs, data)
        if not why:
            own = still if case == "hot soak" else inputs  # after shut-down nothing flows
            known = estimate = Estimate(case, Beside({**own, **more}, kind, data), known)
            why = estimate.why
            rule = "line_energy_balance" if kind == "none" else "shielded_line_energy_balance"
            rule = "flowing_line_energy_balance" if estimate.beside.flows else rule
            if not why:
                solved.append((estimate, estimate.figure("line_temperature", rule)))
        if why and not governed:
            out.checks.append(Check(f"{case}: estimate", CANNOT_TELL, why))
    return sorted(solved, key=lambda pair: -pair[0].high)


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
            "No input was given as a range, so the estimate has no band and passes nothing: give ranges (300 to 450 degC).",
            "note",
            (figure.id,),
            "calculated",
        )
    low, high = (units.from_base(t, figure.unit) for t in (cold, warm))
    text = f"What matters most is the {name}: over its range alone the line goes from {low:.0f} to {high:.0f} {figure.unit}. Measure that first."
    return Caution(text, "note", (figure.id,), "calculated")


def _gap(
    worst: Estimate, limit: tuple[float, Figure], governed: bool, data: Refdata
) -> tuple[Figure | None, list[Check]]:
    """The smallest gap that would be ok, beside the gap measured; behind a shield the shield's place would have to move too."""
    name = "gap"
    gap = worst.beside.inputs["gap"]
    if worst.beside.shield != "none":
        return None, []
    actual = Bound(gap.low if gap.low is not None else gap.typical, gap.unit, figure=gap)
    if not worst.low < worst.high:
        return None, [] if governed else [Check(name, CANNOT_TELL, f"no gap is worked out: {NO_BAND}", None, actual)]
    need_m = line_heat.gap_that_is_ok(worst, limit[0] - CLOSE_K)
    if need_m is None:
        text = (
            f"no gap up to 1 m brings the highest estimate ({worst.case}) {CLOSE} under {number_only(limit[1], data)}: "
            "the air alone is too hot, or a band too wide; measure"
        )
        return None, [] if governed else [Check(name, CANNOT_TELL, text, None, actual)]
    needed = Figure(
        f"derived:smallest_gap:{worst.figure().id}|{limit[1].id}:gap_needed", "gap_needed", units.from_base(need_m, gap.unit), gap.unit,
        side="min", basis="derived", rule=data.rule("smallest_gap"), inputs=(limit[1], *worst.beside.inputs.values()), since=data.release,
        key={"case": worst.case}, conditions=f"{worst.case}, highest estimate {CLOSE} under {number_only(limit[1], data)}",
    )  # fmt: skip
    if governed:
        return needed, []
    enough = actual.value >= needed.typical * (1 - 1e-9)
    result = OK if enough else NOT_OK if worst.likely > limit[0] else CANNOT_TELL
    said = f"{number_only(gap, data)} measured, {number_only(needed, data)} needed ({worst.case}, highest estimate)"
    bound = Bound(needed.typical, gap.unit, "min", needed)
    return needed, [Check(name, result, said, bound, actual, actual.value / needed.typical - 1)]


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
        kelvin.append(units.from_base(behind.line_k, worst.beside.unit))
    inputs = (*worst.beside.inputs.values(), bright, dull)
    return Figure(
        f"derived:shielded_line_energy_balance:{worst.figure().id}:shielded_line_temperature", "shielded_line_temperature", kelvin[1],
        worst.beside.unit, low=kelvin[0], high=kelvin[2], side="nominal", basis="derived", rule=data.rule("shielded_line_energy_balance"),
        inputs=inputs, since=data.release, key={"case": worst.case, "shield": "flat open"},
        conditions=f"{worst.case}, likely inputs; a flat open shield midway, twice the hot part's diameter wide, from bright aluminised to dull oxidised steel",
    )  # fmt: skip
