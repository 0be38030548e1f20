"""The estimate of a line's temperature beside a hot part: its inputs with their ranges, its cases, the gap that is ok."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.calc import lines as calc
from gaugeblock.calc import shields
from gaugeblock.calc.air import Air
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.load import canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.lines import Balance
    from gaugeblock.tables.load import Refdata

CASES = ("driving", "idling", "hot soak")
FLOW = ("flow temperature", "flow conductivity")
SHIELDS = ("none", "flat open", "curved open", "closed")
_WIDEST_GAP_M = 1.0
_NARROWEST_GAP_M = 0.001


def stated(text: str, quantity: str, dim: str, name: str) -> Figure:
    """A figure the user states: one value, or ``300 to 450 degC`` as a range. InputError, UnitError when unreadable."""
    low_text, between, high_text = text.partition(" to ")
    if not between:
        one = units.parse_measure(text, dim, name)
        low = high = one
    else:
        high = units.parse_measure(high_text, dim, name)
        number, unit = units.split_quantity(low_text)
        low = units.parse_measure(low_text if unit else f"{number} {high.unit}", dim, name)
    ends = float(units.convert(low.value, low.unit, high.unit)), float(high.value)
    if ends[0] > ends[1]:
        raise InputError(text, name, "its ends are the wrong way round", (), "write the lower end first")
    if dim in ("length", "ratio", "speed") and ends[0] < 0:
        raise InputError(text, name, "must not be less than zero", (), "give the size itself")
    if dim == "temperature" and units.to_base(ends[0], high.unit) <= 0:
        raise InputError(text, name, "is below absolute zero", (), "check the number and its unit")
    value = None if between else ends[0]
    return Figure(
        f"asked:{name}:{text}:{quantity}", quantity, value, high.unit, low=ends[0] if between else None,
        high=ends[1] if between else None, side="nominal", basis="measured", checked="primary", source="as asked", locator=name,
        text=f"{low_text} to {units.split_quantity(high_text)[0]}" if between else units.split_quantity(text)[0],
    )  # fmt: skip


def emissivity(text: str, at: Figure | None, name: str, data: Refdata) -> Figure:
    """Emissivity of a finish: a number, a range, or ``material: surface`` with ``@ 300 degC`` where the table has several.

    Between two printed points of one source it is those two as low and high; outside them it is refused with the nearest.
    """
    words, _, point = (part.strip() for part in text.partition("@"))
    if words[:1].isdigit() or words.startswith("."):
        got = stated(words, "total_emissivity", "ratio", name)
        if max(got.typical, got.high or 0.0) > 1:
            raise InputError(text, name, "an emissivity is between 0 and 1", (), "write 0.8 or 0.6 to 0.9")
        return got
    typed, _, surface = (part.strip() for part in words.partition(":"))
    table = data.table("lines/emissivity")
    material = canonical(data, "lines/emissivity", "material", typed)
    rows = [r for r in table.rows if r["material"] == material and r["quantity"] == "total_emissivity"]
    surfaces = list(dict.fromkeys(r["surface"] for r in rows))
    if not surface:
        if len(surfaces) > 1:
            raise LookupMiss(
                text, name, "the surface is missing", [f"{material}: {s}" for s in surfaces], "name the surface"
            )
        surface = surfaces[0]
    else:
        surface = canonical(data, "lines/emissivity", "surface", surface)
    mine = [r for r in rows if r["surface"] == surface]
    if not mine:
        near = [f"{material}: {s}" for s in surfaces]
        raise LookupMiss(
            text, name, f"no published emissivity of {material} with this surface", near, "use one of these"
        )
    if point:
        wanted = point
    elif len(mine) == 1:
        return lookup.figure_of(mine[0], data)
    elif at is not None:
        wanted = f"{units.significant(at.typical, 6)} {at.unit}"
    else:
        near = [f"{material}: {surface} @ {r.cells['temperature']}" for r in mine]
        raise LookupMiss(text, name, "the table has several temperatures of this surface", near, "name one with @")
    try:
        return lookup.look_up(
            "lines/emissivity", "total_emissivity", data=data, material=material, surface=surface, temperature=wanted
        )
    except LookupMiss:
        return _between(text, name, wanted, mine, data)


def _between(text: str, name: str, wanted: str, rows: list, data: Refdata) -> Figure:  # type: ignore[type-arg]
    from gaugeblock.tables.interval import parse_interval

    at = units.parse_measure(wanted, "temperature", name)
    kelvin = at.value * units.factor(at.unit) + units.offset(at.unit)
    points = sorted(
        (
            (i.low, r)
            for r in rows
            if (i := parse_interval(r["temperature"])) is not None and i.is_point and i.low is not None
        ),
        key=lambda pair: pair[0],
    )
    below = [r for p, r in points if p < kelvin]
    above = [r for p, r in points if p > kelvin]
    if not below or not above:
        near = [f"{r.cells['material']}: {r.cells['surface']} @ {r.cells['temperature']}" for r in rows]
        raise LookupMiss(
            text,
            name,
            f"no published emissivity at {wanted}, and none on both sides of it",
            near,
            "name the nearest point with @",
        )
    ends = lookup.figure_of(below[-1], data), lookup.figure_of(above[0], data)
    values = sorted(e.typical for e in ends)
    return Figure(
        f"derived:linear_interpolation:{'|'.join(ends[0].key.values())}|{wanted}:total_emissivity@{data.release}", "total_emissivity",
        None, "1", low=values[0], high=values[1], basis="derived", rule=data.rule("linear_interpolation"), inputs=ends,
        since=data.release, key=ends[0].key, conditions=f"between the printed points at {ends[0].key['temperature']} and {ends[1].key['temperature']}",
    )  # fmt: skip


def air_of(data: Refdata) -> Air:
    """Air at 1 atm from the tables: all temperatures at which one source prints conductivity, viscosity and Prandtl number."""
    got = data.memo.get("lines air")
    if got is None:
        wanted = ("thermal_conductivity", "kinematic_viscosity", "prandtl_number")
        points: dict[float, dict[str, float]] = {}
        for row in data.table("lines/air").rows:
            if row["quantity"] in wanted and not row["standing"]:
                figure = lookup.figure_of(row, data)
                at = units.parse_measure(row["temperature"], "temperature")
                key = at.to("degC") + 273.15
                points.setdefault(key, {}).setdefault(
                    f"{row.cells['source']}|{figure.quantity}", units.to_base(figure.typical, figure.unit)
                )
        columns: list[tuple[float, float, float, float]] = []
        for kelvin in sorted(points):
            sources = dict.fromkeys(k.split("|")[0] for k in points[kelvin])
            whole = [s for s in sources if all(f"{s}|{q}" in points[kelvin] for q in wanted)]
            if whole:
                k, nu, pr = (points[kelvin][f"{whole[0]}|{q}"] for q in wanted)
                columns.append((kelvin, k, nu, pr))
        got = data.memo["lines air"] = Air(*zip(*columns, strict=True))
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
    )
    OPTIONAL = ("speed", "air", "shield finish", "sleeve", "sleeve finish", "sleeve conductivity", *FLOW)

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
    if kind == "none":
        return calc.line_beside_pipe(
            si("hot temperature"),
            hot_radius,
            si("hot finish"),
            radius,
            si(finish),
            gap,
            si("air"),
            beside.air,
            None,
            speed,
            cooling,
        )
    place = hot_radius + gap / 2
    if kind == "flat open":
        shape = shields.flat(hot_radius, radius, gap, 2.0 * hot_radius)
    else:
        shape = shields.curved(
            hot_radius, radius, gap, place, 1.5707963267948966 if kind == "curved open" else 3.141592653589793
        )
    face = si("shield finish")
    return shields.line_behind_shield(
        si("hot temperature"),
        hot_radius,
        si("hot finish"),
        radius,
        si(finish),
        shape,
        face,
        face,
        si("air"),
        beside.air,
        None,
        speed,
        cooling,
    )


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
        """The input that moves the answer most over its own range, and the ends of the answer in K; a blank name for none."""
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
        ids = "|".join(f.text or f"{f.low} to {f.high}" for f in inputs)
        return Figure(
            f"derived:{rule}:{self.case}|{b.shield}|{ids}:{quantity}@{data.release}", quantity, likely, b.unit, low=low, high=high,
            side="nominal", basis="derived", rule=data.rule(rule), inputs=(*inputs, *self._air()), since=data.release,
            key={"case": self.case, "shield": b.shield}, conditions=f"{self.case}{with_}; an estimate; low and high from the ranges of the inputs",
        )  # fmt: skip

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
