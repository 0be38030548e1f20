"""The estimate of a line's temperature beside a hot part: its inputs with their ranges, its cases, the gap that is
ok.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import derived
from gaugeblock.calc import lines as calc
from gaugeblock.calc.air import Air
from gaugeblock.errors import LookupMiss
from gaugeblock.tables.interval import parse_interval

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.lines import Balance
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

CASES = ("driving", "idling", "hot soak")
FLOW = ("flow temperature", "flow conductivity")
_WIDEST_GAP_M = 1.0
_NARROWEST_GAP_M = 0.001


def air_of(data: Refdata) -> Air:
    """Air at 1 atm from the tables: all temperatures at which one source prints conductivity, viscosity and Prandtl
    number.
    """
    got = data._memo.get("lines air")
    if got is None:
        wanted = ("thermal_conductivity", "kinematic_viscosity", "prandtl_number")
        points: dict[float, dict[str, float]] = {}
        for row in data.table("lines/air").rows:
            if row["quantity"] in wanted and not row["standing"]:
                figure = lookup.figure_of(row, data)
                at = parse_interval(row["temperature"])
                if at is None or at.low is None:
                    continue
                points.setdefault(float(at.low), {}).setdefault(
                    f"{row.cells['source']}|{figure.quantity}", units.to_base(figure.typical, figure.unit)
                )
        columns: list[tuple[float, float, float, float]] = []
        for kelvin in sorted(points):
            sources = dict.fromkeys(k.split("|")[0] for k in points[kelvin])
            whole = [s for s in sources if all(f"{s}|{q}" in points[kelvin] for q in wanted)]
            if whole:
                k, nu, pr = (points[kelvin][f"{whole[0]}|{q}"] for q in wanted)
                columns.append((kelvin, k, nu, pr))
        if not columns:
            why = f"data release {data.release} has no figures of it"
            raise LookupMiss("air", "the estimate of a temperature", why, (), "use a later data release")
        got = data._memo["lines air"] = Air(*zip(*columns, strict=True))
    return got  # type: ignore[return-value]


class Beside:
    """A line beside a hot part: every input a Figure, its ends in SI; what is missing, by name."""

    __slots__ = ("air", "data", "inputs", "missing", "shield", "unit")

    # name -> dimension of the base unit; the order of the sheet
    NAMES = (
        "hot temperature",
        "hot diameter",
        "hot finish",
        "line diameter",
        "line finish",
        "sleeve",
        "sleeve finish",
        "sleeve conductivity",
        "gap",
        "air",
        "speed",
        "shield finish",
        "flow temperature",
        "flow conductivity",
        "film",
    )
    OPTIONAL = ("film", "speed", "air", "shield finish", "sleeve", "sleeve finish", "sleeve conductivity", *FLOW)

    def __init__(self, inputs: dict[str, Figure], shield: str, data: Refdata) -> None:
        self.inputs = inputs
        self.shield = shield
        self.data = data
        self.air = air_of(data)
        needed = [n for n in self.NAMES if n not in self.OPTIONAL]
        if shield != "none":
            needed.append("shield finish")
        if "sleeve" in inputs:
            needed[needed.index("line finish")] = "sleeve finish"
        if self.flows:
            needed += [*FLOW, *(["sleeve conductivity"] if "sleeve" in inputs else [])]
        self.missing = [n for n in needed if n not in inputs]
        self.unit = inputs["hot temperature"].unit if "hot temperature" in inputs else "degC"

    @property
    def flows(self) -> bool:
        """Whether what flows in the line is counted."""
        return "flow temperature" in self.inputs

    def si(self, name: str, end: str = "likely") -> float:
        """One input in SI at its low, likely or high end."""
        figure = self.inputs[name]
        value = figure.typical
        if end == "low":
            value = figure.low if figure.low is not None else value
        elif end == "high":
            value = figure.high if figure.high is not None else value
        return units.to_base(value, figure.unit)

    def ranged(self) -> list[str]:
        """The inputs that have a range."""
        return [n for n, f in self.inputs.items() if f.low is not None and f.high is not None and f.low < f.high]


def balance(beside: Beside, ends: dict[str, str], gap_m: float | None = None, shield: str | None = None) -> Balance:
    """The solved line with each input at the end named in ``ends`` (``likely`` where it is not)."""

    def si(name: str) -> float:
        return beside.si(name, ends.get(name, "likely"))

    kind = beside.shield if shield is None else shield
    cooling, finish = None, "line finish"
    if "sleeve" in beside.inputs or beside.flows:
        cooling = calc.Cooling(
            calc.laminar_conductance(si("flow conductivity")) if beside.flows else 0.0,
            si("flow temperature") if beside.flows else si("air"),
        )
    if cooling is not None and "sleeve" in beside.inputs:
        finish = "sleeve finish"
        cooling.sleeve_m = si("sleeve")
        cooling.sleeve_conductivity = si("sleeve conductivity") if beside.flows else 1.0
    hot_radius, radius = si("hot diameter") / 2, si("line diameter") / 2
    gap = si("gap") if gap_m is None else gap_m
    speed = si("speed") if "speed" in beside.inputs else 0.0
    pipe, line = calc.Round(hot_radius, si("hot finish")), calc.Round(radius, si(finish))
    film = si("film") if "film" in beside.inputs else None
    around = calc.Around(si("hot temperature"), si("air"), beside.air, speed=speed, cooling=cooling, film=film)
    if kind == "none":
        return calc.line_beside_pipe(pipe, line, gap, around)
    from gaugeblock.calc import shields

    place = hot_radius + gap / 2
    if kind == "flat open":
        shape = shields.flat(hot_radius, radius, gap, 2.0 * hot_radius)
    else:
        shape = shields.curved(
            hot_radius, radius, gap, place, 1.5707963267948966 if kind == "curved open" else 3.141592653589793
        )
    face = si("shield finish")
    return shields.line_behind_shield(pipe, line, shape, (face, face), around)


class Estimate:
    """Low, likely and high temperature of one case, and the ends of the inputs that make them.

    ``known`` gives the ends of inputs that another case has settled: a temperature rises with the same ends in each.
    """

    __slots__ = ("beside", "case", "high", "highest", "likely", "low", "lowest", "solved", "why")

    def __init__(self, case: str, beside: Beside, known: Estimate | None = None) -> None:
        self.case = case
        self.beside = beside
        self.solved = balance(beside, {})
        self.likely = self.solved.line_k
        self.why = self.solved.why_outside()
        self.lowest: dict[str, str] = {}
        self.highest: dict[str, str] = {}
        for name in beside.ranged():
            if known is not None and name in known.highest:
                top = known.highest[name]
            else:
                top = "high" if balance(beside, {name: "high"}).line_k >= self.likely else "low"
            self.lowest[name], self.highest[name] = ("low" if top == "high" else "high"), top
        self.low = self.high = self.likely
        if self.highest:
            cold, warm = balance(beside, self.lowest), balance(beside, self.highest)
            self.low, self.high = cold.line_k, warm.line_k
            self.why = self.why or cold.why_outside() or warm.why_outside()

    def matters(self) -> tuple[str, float, float]:
        """The input that moves the answer most over its own range, and the ends of the answer in K; a blank name for
        none.
        """
        best = ("", self.likely, self.likely)
        for name in self.highest:
            low, high = (float(balance(self.beside, {name: ends[name]}).line_k) for ends in (self.lowest, self.highest))
            if high - low > best[2] - best[1]:
                best = (name, low, high)
        return best

    def figure(self, quantity: str = "line_temperature", rule: str = "line_energy_balance") -> Figure:
        """The estimate as a Figure, with its inputs and the air at the film."""
        b, data = self.beside, self.beside.data
        inputs = tuple(
            b.inputs[n] for n in Beside.NAMES if n in b.inputs and (n != "shield finish" or b.shield != "none")
        )
        low, likely, high = (units.from_base(t, b.unit) for t in (self.low, self.likely, self.high))
        with_ = (", in a sleeve" if "sleeve" in b.inputs else "") + (", with flow" if b.flows else "")
        return derived(
            rule,
            quantity,
            likely,
            b.unit,
            (*inputs, *self._air()),
            data,
            about="|".join(f.text or f"{f.low} to {f.high}" for f in inputs),
            ends=(low, high),
            key={"case": self.case, "shield": b.shield},
            conditions=f"{self.case}{with_}; an estimate; low and high from the ranges of the inputs",
        )

    def _air(self) -> tuple[Figure, ...]:
        at = f"{self.solved.film_k - 273.15:.0f} degC"
        found = (
            lookup.look_up_or_none("lines/air", q, data=self.beside.data, fluid="air", temperature=at)
            for q in ("thermal_conductivity", "kinematic_viscosity", "prandtl_number")
        )
        return tuple(f for f in found if f is not None)


def gap_that_is_ok(estimate: Estimate, limit_k: float) -> float | None:
    """Smallest gap in m at which the highest answer is within the limit; None when none up to 1 m is.

    The temperature falls with the gap, so false position on its logarithm finds it, to 1e-3 K
    on the safe side.
    """
    from math import exp, log

    ends = {n: e for n, e in estimate.highest.items() if n != "gap"}

    def over(log_gap: float) -> float:
        return float(balance(estimate.beside, ends, exp(log_gap)).line_k) - limit_k

    a, b = log(_NARROWEST_GAP_M), log(_WIDEST_GAP_M)
    at_a, at_b = over(a), over(b)
    if at_b > 0:
        return None
    if at_a <= 0:
        return _NARROWEST_GAP_M
    kept = 0
    for _ in range(60):
        middle = (a * at_b - b * at_a) / (at_b - at_a)
        now = over(middle)
        if now > 0:
            a, at_a = middle, now
            at_b = at_b / 2 if kept > 0 else at_b
            kept = 1
        else:
            b, at_b = middle, now
            at_a = at_a / 2 if kept < 0 else at_a
            kept = -1
        if b - a < 1e-6 or -1e-3 < now <= 0:
            break
    return exp(b)


def gap_needed(worst: Estimate, limit: Figure, most_k: float, room: str) -> Figure | None:
    """The smallest gap of ``gap_that_is_ok`` as a Figure, in the unit of the gap that was given; None when none is.

    ``most_k`` is the limit less the ``room`` that is kept to it, which says so in words.
    """
    need_m = gap_that_is_ok(worst, most_k)
    if need_m is None:
        return None
    gap = worst.beside.inputs["gap"]
    which = "highest estimate" if worst.low < worst.high else "estimate, without a band"
    return derived(
        "smallest_gap",
        "gap_needed",
        units.from_base(need_m, gap.unit),
        gap.unit,
        (limit, *worst.beside.inputs.values()),
        worst.beside.data,
        about=f"{worst.figure().id}|{limit.id}",
        key={"case": worst.case},
        conditions=f"{worst.case}, {which} {room}",
    )
