"""The cases of a line beside heat: driving, idling and hot soak; the gap needed; what a shield would do."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.making import derived
from gaugeblock.answer.printing import number_only
from gaugeblock.figure import Figure
from gaugeblock.lines import estimate as line_heat
from gaugeblock.lines.estimate import Beside, Estimate
from gaugeblock.lines.found import Found
from gaugeblock.lines.heat import CLOSE, CLOSE_K
from gaugeblock.lines.judged import NO_BAND
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.judged import Judged
    from gaugeblock.lines.keys import Line
    from gaugeblock.tables.load import Refdata


class Estimates(Value):
    """What the estimate adds to a sheet, with its worst case and the gap that case needs (None where there is none)."""

    __slots__ = ("found", "needed", "worst")

    found: Found
    worst: Estimate | None
    needed: Figure | None

    def __init__(self, found: Found, worst: Estimate | None = None, needed: Figure | None = None) -> None:
        put(self, "found", found)
        put(self, "worst", worst)
        put(self, "needed", needed)


def estimates(inputs: dict[str, Figure], line: Line, judged: Judged, data: Refdata) -> Estimates:
    """The estimate of every case. Where a temperature was measured, that decides, and the estimate informs."""
    kind, governed = line.word("shield") or "none", line.has("temperature")
    first = Beside(inputs, kind, data)
    if first.missing or first.si("gap", "low") <= 0:
        why = f"for an estimate these are not given: {', '.join(first.missing)}"
        if not first.missing:
            why = "the line touches the hot part: contact conducts, which no estimate here covers; move it"
        check = Check("estimated temperature", CANNOT_TELL, why, bears=INFORM)
        return Estimates(Found((), () if governed else (check,)))
    solved, unsolved = _cases(inputs, line, data)
    checks = [] if governed else list(unsolved)
    if not governed:
        for estimate, figure in solved:
            checks += judged.band(figure, estimate.case)
    found = Found([figure for _, figure in solved], checks)
    if not solved:
        return Estimates(found)
    worst, figure = solved[0]
    found += _said(worst, figure, inputs, kind)
    limit = judged.lowest_limit_k()
    needed = None
    if limit is not None:
        needed, gap_checks = _gap(worst, limit, governed, data)
        found += Found(() if needed is None else (needed,), gap_checks)
    shielded = _with_shield(worst, data) if kind == "none" else None
    if shielded is not None:
        text = (
            f"A flat open shield midway, from bright to dull, would bring the {worst.case} estimate of {number_only(figure, data)} "
            f"to {number_only(shielded, data)}; it must cover all sight and stay cool enough itself."
        )
        found += Found((shielded,), (), (Caution(text, "note", (shielded.id,), "calculated"),))
    return Estimates(found, worst, needed)


def _said(worst: Estimate, figure: Figure, inputs: dict[str, Figure], kind: str) -> Found:
    """What the estimate is, and what it takes for granted."""
    flow = "without flow, the worst case"
    if "flow temperature" in inputs:
        flow = "without flow in the hot soak, with the least that it takes else"
    out = [_matters(worst, figure), Caution(_MODEL.format(flow=flow), "note", (figure.id,), "calculated")]
    if "sleeve" in inputs:
        text = "The sleeve gives the line another size and finish; without flow it holds no heat back. The gap counts from its outside."
        out.append(Caution(text, "note", (figure.id,), "calculated"))
    if kind != "none":
        text = f"The shield is taken midway in the gap, {_SHAPES[kind]}."
        out.append(Caution(text, "note", (figure.id,), "assumed"))
    return Found((), (), out)


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
    inputs: dict[str, Figure], line: Line, data: Refdata
) -> tuple[list[tuple[Estimate, Figure]], tuple[Check, ...]]:
    """The cases that could be solved, the hottest first; why the others could not be."""
    solved, unsolved = [], []
    kind = line.word("shield") or "none"
    known = None
    still = {n: f for n, f in inputs.items() if n not in line_heat.FLOW}
    for case in line_heat.CASES:
        more, why = _air(case, line, data)
        if not why:
            own = still if case == "hot soak" else inputs  # after shut-down nothing flows
            known = estimate = Estimate(case, Beside({**own, **more}, kind, data), known)
            why = estimate.why
            rule = "line_energy_balance" if kind == "none" else "shielded_line_energy_balance"
            rule = "flowing_line_energy_balance" if estimate.beside.flows else rule
            if not why:
                solved.append((estimate, estimate.figure("line_temperature", rule)))
        if why:
            unsolved.append(Check(f"{case}: estimate", CANNOT_TELL, why, subject="estimate", case=case, bears=INFORM))
    return sorted(solved, key=lambda pair: -pair[0].high), tuple(unsolved)


def _air(case: str, line: Line, data: Refdata) -> tuple[dict[str, Figure], str]:
    """Air temperature and speed of a case, or why they are not there."""
    if case == "hot soak":
        given = line.figure("soak_air", data)
        if given is not None:
            return {"air": given}, ""
        found = lookup.look_up_or_none(
            "lines/heat_sources", "air_temperature", data=data, part="air above exhaust tunnel", state="hot soak"
        )
        return ({"air": found}, "") if found is not None else ({}, "the air temperature after shut-down is not given")
    air = line.figure("air", data)
    if air is None:
        return {}, "the air temperature beside the line is not given"
    if case != "driving":
        return {"air": air}, ""
    speed = line.figure("speed", data)
    return ({"air": air, "speed": speed}, "") if speed is not None else ({}, _NO_SPEED)


_NO_SPEED = "the speed of the air across the line is not given"


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

    def none_worked_out(why: str) -> tuple[None, list[Check]]:
        return None, [] if governed else [Check(name, CANNOT_TELL, why, None, actual)]

    if not worst.low < worst.high:
        return none_worked_out(f"no gap is worked out: {NO_BAND}")
    need_m = line_heat.gap_that_is_ok(worst, limit[0] - CLOSE_K)
    allowed = number_only(limit[1], data)
    if need_m is None:
        return none_worked_out(
            f"no gap up to 1 m brings the highest estimate ({worst.case}) {CLOSE} under {allowed}: "
            "the air alone is too hot, or a band too wide; measure"
        )
    needed = derived(
        "smallest_gap",
        "gap_needed",
        units.from_base(need_m, gap.unit),
        gap.unit,
        (limit[1], *worst.beside.inputs.values()),
        data,
        about=f"{worst.figure().id}|{limit[1].id}",
        key={"case": worst.case},
        conditions=f"{worst.case}, highest estimate {CLOSE} under {allowed}",
    )
    if governed:
        return needed, []
    enough = actual.value >= needed.typical * (1 - 1e-9)
    result = OK if enough else NOT_OK if worst.likely > limit[0] else CANNOT_TELL
    said = f"{number_only(gap, data)} measured, {number_only(needed, data)} needed ({worst.case}, highest estimate)"
    bound = Bound(needed.typical, gap.unit, "min", needed)
    return needed, [Check(name, result, said, bound, actual, actual.value / needed.typical - 1, case=worst.case)]


def _face(material: str, surface: str, at: str, data: Refdata) -> Figure | None:
    keys = {"material": material, "surface": surface, "temperature": at}
    return lookup.look_up_or_none("lines/emissivity", "total_emissivity", data=data, **keys)


def _with_shield(worst: Estimate, data: Refdata) -> Figure | None:
    """The worst case behind a flat open shield, its finish from bright aluminised to dull oxidised steel."""
    bright = _face("aluminised steel", "new hot-dip", "100 degC", data)
    dull = _face("iron and steel", "oxidised", "300 degC", data)
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
    return derived(
        "shielded_line_energy_balance",
        "shielded_line_temperature",
        kelvin[1],
        worst.beside.unit,
        (*worst.beside.inputs.values(), bright, dull),
        data,
        about=worst.figure().id,
        low=kelvin[0],
        high=kelvin[2],
        key={"case": worst.case, "shield": "flat open"},
        conditions=f"{worst.case}, likely inputs; a flat open shield midway, twice the hot part's diameter wide, from bright aluminised to dull oxidised steel",
    )
