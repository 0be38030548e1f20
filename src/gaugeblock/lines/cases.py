"""The cases of a line beside heat: driving, idling and hot soak; the gap needed; what a shield would do."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.making import derived
from gaugeblock.answer.printing import number_only
from gaugeblock.figure import Figure
from gaugeblock.lines.found import Found
from gaugeblock.lines.views import views_of
from gaugeblock.value import Value, put
from gaugeblock.warmth import estimate as line_heat
from gaugeblock.warmth.estimate import Beside, Estimate
from gaugeblock.warmth.verdict import NO_BAND, low_end, room_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.judged import Judged
    from gaugeblock.lines.keys import Line
    from gaugeblock.tables.load import Refdata


class Estimates(Value):
    """What the estimate adds to a sheet, with its worst case and the gap that case needs (None where there is none).

    ``is_enough`` where the hottest case, of inputs that were all given, is within every limit with its whole band;
    ``guessed`` is the temperature of the hottest case in which something stands in for what nobody gave, where that is
    hotter than all others.
    """

    __slots__ = ("found", "guessed", "is_enough", "needed", "worst")

    found: Found
    worst: Estimate | None
    needed: Figure | None
    is_enough: bool
    guessed: Figure | None

    def __init__(
        self,
        found: Found,
        worst: Estimate | None = None,
        needed: Figure | None = None,
        is_enough: bool = False,
        guessed: Figure | None = None,
    ) -> None:
        put(self, "guessed", guessed)
        put(self, "found", found)
        put(self, "worst", worst)
        put(self, "needed", needed)
        put(self, "is_enough", is_enough)


class Case(Value):
    """One case that was solved, and what in it stands in for what nobody gave (blank where all was given)."""

    __slots__ = ("estimate", "figure", "stands_in")

    estimate: Estimate
    figure: Figure
    stands_in: str

    def __init__(self, estimate: Estimate, figure: Figure, stands_in: str) -> None:
        put(self, "estimate", estimate)
        put(self, "figure", figure)
        put(self, "stands_in", stands_in)


def estimates(inputs: dict[str, Figure], stands_in: str, line: Line, judged: Judged, data: Refdata) -> Estimates:
    """The estimate of every case. Where a temperature was measured, that decides, and the estimate informs.

    A case in which something stands in for what nobody gave informs: it is told with its outcome, and decides nothing.
    """
    kind, governed = line.word("shield") or "none", line.has("temperature")
    first = Beside(inputs, kind, data)
    if first.missing or first.si("gap", "low") <= 0:
        why = f"for an estimate these are not given: {', '.join(first.missing)}"
        if not first.missing:
            why = "the line touches the hot part: contact conducts, which no estimate here covers; move it"
        check = Check("estimated temperature", CANNOT_TELL, why, bears=INFORM)
        return Estimates(Found((), () if governed else (check,)))
    solved, unsolved = _cases(inputs, stands_in, line, data)
    checks = [] if governed else list(unsolved)
    own = [case for case in solved if not case.stands_in]
    held = [] if governed else [c for case in own for c in judged.band(case.figure, case.estimate.case)]
    guessed = [] if governed else [c for case in solved if case.stands_in for c in _guessed(case, judged)]
    found = Found([case.figure for case in solved], [*checks, *held, *guessed])
    if not own:
        return Estimates(found, guessed=solved[0].figure if solved else None)
    worst, figure = own[0].estimate, own[0].figure
    found += Found(views_of(worst, figure)) + _said(worst, figure, inputs, kind)
    limit = judged.lowest
    needed = None
    if limit is not None and worst.case == "hot soak":  # a gap for a cooler case alone would mislead
        needed, gap_checks = _gap(worst, limit, governed, judged)
        found += Found(() if needed is None else (needed,), gap_checks)
    shielded = _with_shield(worst, data) if kind == "none" else None
    if shielded is not None:
        text = (
            f"A flat open shield midway, from bright to dull, would bring the {worst.case} estimate of "
            f"{number_only(figure, data)} to {number_only(shielded, data)}; it must cover all sight and stay cool."
        )
        found += Found((shielded,), (), (Caution(text, "note", (shielded.id,), "calculated"),))
    is_enough = bool(held) and worst.case == "hot soak" and all(c.result == OK for c in held)
    hotter = next((c.figure for c in solved if c.stands_in and c.estimate.high > worst.high), None)
    return Estimates(found, worst, needed, is_enough, hotter)


def _guessed(case: Case, judged: Judged) -> list[Check]:
    """A case that rests on a stand-in against every limit: it informs."""
    said = f"nobody gave this: {case.stands_in}; with it"
    found = judged.band(case.figure, case.estimate.case)
    return [c.replace(result=CANNOT_TELL, bears=INFORM, reason=f"{said} {c.reason}") for c in found]


def _said(worst: Estimate, figure: Figure, inputs: dict[str, Figure], kind: str) -> Found:
    """What the estimate is, and what it takes for granted."""
    flow = "without flow, the worst case"
    if "flow temperature" in inputs:
        flow = "without flow in the hot soak, with the least that it takes else"
    out = [_matters(worst, figure), Caution(_MODEL.format(flow=flow), "note", (figure.id,), "calculated")]
    if "sleeve" in inputs:
        text = (
            "The sleeve gives the line another size and finish; without flow it holds no heat back. "
            "The gap counts from its outside."
        )
        out.append(Caution(text, "note", (figure.id,), "calculated"))
    if kind != "none":
        text = f"The shield is taken midway in the gap, {_SHAPES[kind]}."
        out.append(Caution(text, "note", (figure.id,), "assumed"))
    return Found((), (), out)


_MODEL = (
    "The estimate takes the line {flow}, surroundings at the temperature of the air, air at one temperature round "
    "the line and the hot part as long as it looks; hot gas rising from the part onto the line is not in it. "
    "The correlations add their own scatter to the band."
)
_SHAPES = {
    "flat open": "twice the hot part's diameter wide, open to the air on both faces",
    "curved open": "half round the hot part, open to the air on both faces",
    "closed": "all round the hot part",
}


def _cases(
    inputs: dict[str, Figure], stands_in: str, line: Line, data: Refdata
) -> tuple[list[Case], tuple[Check, ...]]:
    """The cases that could be solved, those of given inputs first, the hottest first; why the others could not be."""
    solved, unsolved = [], []
    kind = line.word("shield") or "none"
    known = None
    still = {n: f for n, f in inputs.items() if n not in line_heat.FLOW}
    for name in line_heat.CASES:
        more, air_stands_in, why = _air(name, line, data)
        if not why:
            own = still if name == "hot soak" else inputs  # after shut-down nothing flows
            known = estimate = Estimate(name, Beside({**own, **more}, kind, data), known)
            why = estimate.why
            rule = "line_energy_balance" if kind == "none" else "shielded_line_energy_balance"
            rule = "flowing_line_energy_balance" if estimate.beside.flows else rule
            guessed = " and ".join(t for t in (stands_in, air_stands_in) if t)
            if not why:
                solved.append(Case(estimate, _figure(estimate, rule, guessed), guessed))
        if why:
            unsolved.append(Check(f"{name}: estimate", CANNOT_TELL, why, subject="estimate", case=name, bears=INFORM))
    return sorted(solved, key=lambda case: (bool(case.stands_in), -case.estimate.high)), tuple(unsolved)


def _figure(estimate: Estimate, rule: str, guessed: str) -> Figure:
    made = estimate.figure("line_temperature", rule)
    return made.replace(conditions=f"{made.conditions}; nobody gave this: {guessed}") if guessed else made


def _air(case: str, line: Line, data: Refdata) -> tuple[dict[str, Figure], str, str]:
    """Air temperature and speed of a case, what of it stands in for what nobody gave, or why they are not there."""
    if case == "hot soak":
        given = line.figure("soak_air", data)
        if given is not None:
            return {"air": given}, "", ""
        keys = {"part": "air above exhaust tunnel", "state": "hot soak"}
        found = lookup.look_up_or_none("lines/heat_sources", "air_temperature", data=data, **keys)
        if found is None:
            return {}, "", "the air temperature after shut-down is not given"
        return {"air": found}, f"air after shut-down at {number_only(found, data)}, a shop habit", ""
    air = line.figure("air", data)
    if air is None:
        return {}, "", "the air temperature beside the line is not given"
    if case != "driving":
        return {"air": air}, "", ""
    speed = line.figure("speed", data)
    return ({"air": air, "speed": speed}, "", "") if speed is not None else ({}, "", _NO_SPEED)


_NO_SPEED = "the speed of the air across the line is not given"


def _matters(worst: Estimate, figure: Figure) -> Caution:
    name, cold, warm = worst.matters()
    if not name:
        return Caution(
            "No input was given as a range, so the estimate has no band and passes nothing: "
            "give ranges (300 to 450 degC).",
            "note",
            (figure.id,),
            "calculated",
        )
    low, high = (units.from_base(t, figure.unit) for t in (cold, warm))
    text = (
        f"What matters most is the {name}: over its range alone the line goes from {low:.0f} to {high:.0f} "
        f"{figure.unit}. Measure that first."
    )
    return Caution(text, "note", (figure.id,), "calculated")


def _gap(worst: Estimate, limit: Figure, governed: bool, judged: Judged) -> tuple[Figure | None, list[Check]]:
    """The smallest gap that would be ok, beside the gap measured; behind a shield the shield's place would have to
    move too.

    Inputs without a range give a gap too, and no ``ok``.
    """
    name, data = "gap", judged.data
    room_k, room = room_of(judged.margin)
    gap = worst.beside.inputs["gap"]
    if worst.beside.shield != "none":
        return None, []
    actual = Bound(gap.low if gap.low is not None else gap.typical, gap.unit, figure=gap)
    limit_k = units.to_base(low_end(limit, limit.unit), limit.unit)
    needed = line_heat.gap_needed(worst, limit, limit_k - room_k, f"{room} under {number_only(limit, data)}")
    has_band = worst.low < worst.high
    which = "highest estimate" if has_band else "estimate, without a band"
    if needed is None:
        why = (
            f"no gap up to 1 m brings the {which} ({worst.case}) {room} under {number_only(limit, data)}: "
            "the air alone is too hot, or a band too wide; measure"
        )
        return None, [] if governed else [Check(name, CANNOT_TELL, why, None, actual, bears=INFORM)]
    if governed:
        return needed, []
    enough = actual.value >= needed.typical * (1 - 1e-9)
    result = OK if enough and has_band else NOT_OK if worst.likely > limit_k else CANNOT_TELL
    said = f"given {number_only(gap, data)}, needed {number_only(needed, data)} ({worst.case}, {which})"
    if not has_band:
        said = f"{said}; {NO_BAND}"
    bound = Bound(needed.typical, gap.unit, "min", needed)
    check = Check(name, result, said, bound, actual, actual.value / needed.typical - 1, case=worst.case)
    return needed, [check.replace(bears=INFORM)]  # the estimate's own checks decide


def _face(material: str, surface: str, at: str, data: Refdata) -> Figure | None:
    keys = {"material": material, "surface": surface, "temperature": at}
    return lookup.look_up_or_none("lines/emissivity", "total_emissivity", data=data, **keys)


_SHIELD_TAKEN = (
    "a flat open shield midway, twice the hot part's diameter wide, from bright aluminised to dull oxidised steel"
)


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
        ends=(kelvin[0], kelvin[2]),
        key={"case": worst.case, "shield": "flat open"},
        conditions=f"{worst.case}, likely inputs; {_SHIELD_TAKEN}",
    )
