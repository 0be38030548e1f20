"""The answer ``gearing``: engine speed at a road speed through every gear, for axle ratios side by side."""

from __future__ import annotations

import math
import re

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import MOST_CANDIDATES, Candidate, Decision, ask, none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

VERB = "TURNS"
_CODE = re.compile(
    r"(?:P|LT)?\s*(?P<width>[0-9]{3})/(?P<aspect>[0-9]{2,3})\s*(?:ZR|R|D|B|-)?\s*(?P<rim>[0-9]{2}(?:\.5)?)",
    re.ASCII | re.IGNORECASE,
)
# An off-road size says its overall diameter first: 31x10.50R15.
_OVERALL = re.compile(
    r"(?P<od>[0-9]{2}(?:\.[0-9]+)?)\s*x\s*[0-9]{1,2}(?:\.[0-9]+)?\s*(?:R|-)\s*[0-9]{2}", re.ASCII | re.I
)
_TEETH = re.compile(r"(?P<ring>[0-9]{1,3})\s*[/:x]\s*(?P<pinion>[0-9]{1,3})", re.ASCII)
_MOST = 12


class Gearing(Value):
    """Axle ratios as typed, gears of the gearbox, tyre, road speed and transfer ratio."""

    __slots__ = ("gears", "ratios", "revolutions", "speed", "transfer", "tyre")

    ratios: tuple[str, ...]
    gears: tuple[Measure, ...]
    tyre: str | None
    revolutions: Measure | None
    speed: Measure
    transfer: Measure | None

    def __init__(
        self,
        ratios: tuple[str, ...],
        gears: tuple[Measure, ...],
        tyre: str | None,
        revolutions: Measure | None,
        speed: Measure,
        transfer: Measure | None = None,
    ) -> None:
        if not ratios or not gears or len(ratios) > _MOST or len(gears) > _MOST:
            raise InputError(
                "gearing", "ratios, gears", f"one to {_MOST} of each are wanted", (), "give them with commas"
            )
        if tyre is None and revolutions is None:
            raise InputError("tyre", "tyre", "no size and no revolutions a mile", (), "write it as P215/65R15 or 26 in")
        put(self, "ratios", ratios)
        put(self, "gears", gears)
        put(self, "tyre", tyre)
        put(self, "revolutions", revolutions)
        put(self, "speed", speed)
        put(self, "transfer", transfer)


def ratio_measure(typed: str, where: str) -> Measure:
    """A ratio as a plain number over zero; InputError for anything else."""
    got = units.parse_measure(typed, "ratio", where)
    if got.value <= 0 or got.unit != "1":
        raise InputError(typed, where, "not a ratio over zero", (), "write it as 3.55")
    return got


def listed(typed: str | Sequence[str]) -> tuple[str, ...]:
    """Texts with commas between, or a sequence of them."""
    parts = typed.split(",") if isinstance(typed, str) else typed
    return tuple(p.strip() for p in parts if p.strip())


def gearing(
    ratios: str | Sequence[str],
    *,
    tyre: str | None = None,
    revolutions: str | None = None,
    speed: str = "60 mph",
    gears: str | Sequence[str] = "1",
    transfer: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Engine speed at a road speed through every gear, for axle ratios side by side.

    Parameters are text as people write them: ``ratios`` ``3.55, 4.10`` or tooth counts ``41/10``; ``tyre`` its code
    (``P215/65R15``) or outside diameter (``28 in``), or ``revolutions`` a mile by its maker (``775 rev/mile``);
    ``speed``
    of the vehicle; ``gears`` the gearbox's ratios, the top gear last; ``transfer`` a transfer case's.

    Returns a Sheet: the engine speed in the last gear first. Nothing slips; by its code a tyre is new and free of
    load, and a
    loaded one turns about 3 % more often.

    Raises InputError or UnitError for what cannot be read.

    >>> round(gearing("3.89", tyre="29 in", speed="60 mph").figures[0].typical)
    2705
    """
    data = data or refdata()
    asked = {
        "ratios": ", ".join(listed(ratios)),
        "tyre": tyre,
        "revolutions": revolutions,
        "speed": speed,
        "gears": ", ".join(listed(gears)),
        "transfer": transfer,
    }
    of = Gearing(
        listed(ratios),
        tuple(ratio_measure(g, "gears") for g in listed(gears)),
        tyre,
        None if revolutions is None else units.parse_measure(revolutions, "revolutions per length", "revolutions"),
        units.parse_measure(speed, "speed", "speed"),
        None if transfer is None else ratio_measure(transfer, "transfer"),
    )
    return judged(of, asked, data)


def judged(of: Gearing, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``gearing``, of what was read."""
    turns, below = _turns(of, data)
    speed = stated(of.speed, "road_speed", "speed", data)
    gears = [stated(g, "gear_ratio", f"gear {n}", data) for n, g in enumerate(of.gears, 1)]
    transfer = stated(of.transfer, "transfer_ratio", "transfer", data) if of.transfer is not None else None
    axles = [_axle(r, data) for r in of.ratios]
    table = {(a.id, g.id): _speed(turns, speed, a, g, transfer, data) for a in axles for g in gears}
    typed = [
        (speed, "speed"),
        *((g, "gears") for g in gears),
        *((a, "ratios") for a in axles),
        *((t, "tyre") for t in below),
    ]
    typed += [(turns, "tyre" if of.tyre is not None else "revolutions")] + (
        [(transfer, "transfer")] if transfer else []
    )
    doubts = {key: _doubt(f) for f, key in typed if not _fits(f, data)}
    checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
    questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
    tops = [table[a.id, gears[-1].id] for a in axles]
    if doubts:
        decision: Decision = none(VERB, next(iter(doubts.values())))
    elif len(axles) == 1:
        decision = use(VERB, tops[0], f"In top gear at {of.speed.text}.")
    else:
        text = "Which of these ratios is fitted?"
        checks.append(Check("axle ratio", CANNOT_TELL, f"{len(axles)} ratios are compared", bears=ASK))
        questions.append(Question(FILL_IN, text, "ratios", ("axle ratio",)))
        pairs = sorted(zip(axles, tops, strict=True), key=lambda p: -base(p[1]))
        at = f"{number_only(speed, data)} in top gear"
        candidates = [Candidate(t, f"the ratio is {_named(a)}", f"at {at}") for a, t in pairs[:MOST_CANDIDATES]]
        decision = ask(VERB, candidates, ["axle ratio"], "Choose the ratio by the engine speed that suits the engine.")
    figures = dict.fromkeys((*(() if doubts else tops), *table.values(), turns, *below, *axles))
    title = f"engine speed at {of.speed.text}"
    return Sheet(
        title, asked, data, list(figures), checks, _cautions(of, turns, axles), decision=decision, questions=questions
    )


def _fits(figure: Figure, data: Refdata) -> bool:
    number = units.parse_measure(f"{figure.typical:.9f} {figure.unit}", units.dimension(figure.unit))
    return is_plausible(number, figure.quantity, data)


def _doubt(figure: Figure) -> str:
    shown = figure.text or units.significant(figure.typical)
    unit = "" if figure.unit == "1" else f" {figure.unit}"
    return did_you_mean(f"{shown}{unit} is no usual {figure.quantity.replace('_', ' ')}", ())


def _named(axle: Figure) -> str:
    return axle.text or units.significant(axle.typical, 3)


def _axle(typed: str, data: Refdata) -> Figure:
    match = _TEETH.fullmatch(typed)
    if match is None:
        return stated(ratio_measure(typed, "ratios"), "axle_ratio", "axle ratio", data)
    teeth = []
    for name in ("ring", "pinion"):
        if int(match[name]) == 0:
            raise InputError(typed, "ratios", "no teeth", (), "count the teeth of ring gear and pinion")
        measure = units.parse_measure(f"{match[name]} teeth", "tooth count", name)
        teeth.append(stated(measure, "gear_teeth", f"{name} of {typed}", data))
    number = teeth[0].typical / teeth[1].typical
    common = math.gcd(int(match["ring"]), int(match["pinion"]))
    said = (
        "hunting: every tooth meets every other"
        if common == 1
        else f"not hunting: teeth have {common} as common factor"
    )
    return derived("ratio_of_teeth", "axle_ratio", number, "1", teeth, data, key={"teeth": typed}, conditions=said)


def _turns(of: Gearing, data: Refdata) -> tuple[Figure, tuple[Figure, ...]]:
    """Turns of the tyre in a mile, and the figures below it that were typed."""
    if of.revolutions is not None:
        return stated(of.revolutions, "tyre_revolutions", "revolutions", data), ()
    tyre = of.tyre or ""
    match = _CODE.fullmatch(tyre.strip())
    typed: tuple[Figure, ...] = ()
    if match is None:
        overall = _OVERALL.fullmatch(tyre.strip())
        text = f"{overall['od']} in" if overall is not None else tyre
        diameter = stated(units.parse_measure(text, "length", "tyre"), "tyre_diameter", "tyre", data)
    else:
        parts = (("width", "mm", "tyre_section_width"), ("aspect", "%", "tyre_aspect"), ("rim", "in", "rim_diameter"))
        typed = tuple(
            stated(units.parse_measure(f"{match[n]} {u}", units.dimension(u), n), quantity, f"{n} of {tyre}", data)
            for n, u, quantity in parts
        )
        value = calc.tyre_diameter(*(base(f) for f in typed))
        number = units.from_base(value, "in")
        diameter = derived("tyre_diameter_of_code", "tyre_diameter", number, "in", typed, data, key={"tyre": tyre})
    if diameter.typical <= 0:
        raise InputError(tyre, "tyre", "must be more than zero", (), "give the tyre itself")
    number = calc.revolutions_per_mile(base(diameter))
    key = {"tyre": tyre}
    said = "free of load; a loaded tyre turns about 3 % more often"
    made = derived(
        "revolutions_per_mile", "tyre_revolutions", number, "rev/mile", (diameter,), data, key=key, conditions=said
    )
    return made, (*typed, diameter)


def _speed(turns: Figure, speed: Figure, axle: Figure, gear: Figure, transfer: Figure | None, data: Refdata) -> Figure:
    more = base(transfer) if transfer is not None else 1.0
    value = calc.engine_speed(base(turns), base(speed), base(axle), base(gear), more)
    key = {"axle": _named(axle), "gear": gear.text, "number": gear.locator, "speed": f"{speed.text} {speed.unit}"}
    inputs = (turns, speed, axle, gear) if transfer is None else (turns, speed, axle, gear, transfer)
    number = units.from_base(value, "rpm")
    said = f"axle {_named(axle)}, gear {gear.text}"
    return derived("engine_speed_at_road_speed", "engine_speed", number, "rpm", inputs, data, key=key, conditions=said)


def _cautions(of: Gearing, turns: Figure, axles: list[Figure]) -> list[Caution]:
    out = []
    if of.revolutions is None:
        text = "By its size a tyre is free of load: a loaded one turns about 3 % more often, and so does the engine."
        out.append(Caution(text, "note", (turns.id,), "common practice"))
    toothed = [a for a in axles if a.basis == "derived"]
    return out + [Caution(f"{a.key['teeth']}: {a.conditions}.", "note", (a.id,), "common practice") for a in toothed]
