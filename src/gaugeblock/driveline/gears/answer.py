"""The answer ``gearing``: engine speed at a road speed through every gear, for axle ratios and tyres side by side."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import MOST_CANDIDATES, Candidate, Decision, ask, none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.gears import speedometer as dial
from gaugeblock.driveline.gears import tyre as tyres
from gaugeblock.driveline.gears.drawings import drawings
from gaugeblock.driveline.gears.given import Gearing, listed
from gaugeblock.driveline.gears.teeth import axle_of
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.driveline.gears.tyre import Tyre

VERB = "TURNS"
KEYS = (
    "ratios",
    "tyre",
    "revolutions",
    "speed",
    "gears",
    "transfer",
    "engine_speed",
    "was_ratio",
    "was_tyre",
    "driven_gear",
)


class Column(Value):
    """One axle ratio with one tyre: the engine speed through every gear, and what the speedometer then shows."""

    __slots__ = ("axle", "shown", "speeds", "tyre")

    axle: Figure
    tyre: Tyre
    speeds: tuple[Figure, ...]
    shown: dial.Speedometer | None

    def __init__(
        self, axle: Figure, tyre: Tyre, speeds: tuple[Figure, ...], shown: dial.Speedometer | None = None
    ) -> None:
        put(self, "axle", axle)
        put(self, "tyre", tyre)
        put(self, "speeds", speeds)
        put(self, "shown", shown)

    def named(self, *, has_tyre: bool) -> str:
        """What heads it: the axle ratio, with the tyre where several are compared."""
        return f"{_named(self.axle)}, {self.tyre.typed}" if has_tyre else f"axle {_named(self.axle)}"


def gearing(
    ratios: str | Sequence[str],
    *,
    tyre: str | Sequence[str] | None = None,
    revolutions: str | None = None,
    speed: str = "60 mph",
    gears: str | Sequence[str] = "1",
    transfer: str | None = None,
    engine_speed: str | None = None,
    was_ratio: str | None = None,
    was_tyre: str | None = None,
    driven_gear: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Engine speed at a road speed through every gear, for axle ratios and tyres side by side.

    Parameters are text as people write them: ``ratios`` ``3.55, 4.10`` or tooth counts ``41/10``; ``tyre`` its code
    (``P215/65R15``) or outside diameter (``28 in``), several with commas, or ``revolutions`` a mile by its maker
    (``775 rev/mile``); ``speed`` of the vehicle; ``gears`` the gearbox's ratios, the top gear last; ``transfer`` a
    transfer case's; ``engine_speed`` the engine's greatest. ``was_ratio`` and ``was_tyre`` are those with which the
    speedometer was right, what is left out did not change; ``driven_gear`` the teeth of its driven gear.

    Returns a Sheet: the engine speed in the last gear first, and a grid of all. Nothing slips; by its code a tyre is
    new and free of load, and a loaded one turns about 3 % more often.

    Raises InputError or UnitError for what cannot be read.

    >>> round(gearing("3.89", tyre="29 in", speed="60 mph").figures[0].typical)
    2705
    """
    data = data or refdata()
    asked = {
        "ratios": ", ".join(listed(ratios, "ratios")),
        "tyre": ", ".join(listed(tyre, "tyre")) or None,
        "revolutions": revolutions,
        "speed": speed,
        "gears": ", ".join(listed(gears, "gears")),
        "transfer": transfer,
        "engine_speed": engine_speed,
        "was_ratio": was_ratio,
        "was_tyre": was_tyre,
        "driven_gear": driven_gear,
    }
    return judged(Gearing.read({**asked, "ratios": ratios, "tyre": tyre, "gears": gears}), asked, data)


def judged(of: Gearing, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``gearing``, of what was read."""
    speed = stated(of.speed, "road_speed", "speed", data)
    gears = [stated(g, "gear_ratio", f"gear {n}", data) for n, g in enumerate(of.gears, 1)]
    transfer = stated(of.transfer, "transfer_ratio", "transfer", data) if of.transfer is not None else None
    most = stated(of.most, "engine_speed", "engine speed", data) if of.most is not None else None
    columns = _columns(of, speed, gears, transfer, data)
    typed = [
        (speed, "speed"),
        *((g, "gears") for g in gears),
        *((c.axle, "ratios") for c in columns),
        *((t, "tyre") for c in columns for t in c.tyre.below),
        *((c.tyre.turns, "tyre" if c.tyre.is_by_size else "revolutions") for c in columns),
        *([(transfer, "transfer")] if transfer is not None else []),
        *([(most, "engine_speed")] if most is not None else []),
    ]
    doubts = {key: _doubt(f) for f, key in typed if not _fits(f, data)}
    checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
    questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
    tops = [c.speeds[-1] for c in columns]
    if doubts:
        decision: Decision = none(VERB, next(iter(doubts.values())))
    elif len(columns) == 1:
        decision = use(VERB, tops[0], _said(columns[0], speed, gears, data))
    else:
        check, question, decision = _choice(columns, speed, gears, data)
        checks.append(check)
        questions.append(question)
    if not doubts:
        checks += [dial.judged(c.shown, data) for c in columns[:1] if c.shown is not None and len(columns) == 1]
        checks += _over(columns, most, data)
    every = [f for c in columns for f in c.speeds]
    shown = [f for c in columns if c.shown is not None for f in c.shown.figures]
    below = [f for c in columns for f in (c.tyre.turns, *c.tyre.below, c.axle)]
    figures = dict.fromkeys((*(() if doubts else tops), *every, *shown, *below))
    grid = () if doubts or len(every) < _WORTH else _grid(columns, most, data)
    named = [(c.named(has_tyre=_has_tyres(columns)), c.speeds) for c in columns]
    return Sheet(
        f"engine speed at {of.speed.text}",
        asked,
        data,
        list(figures),
        checks,
        _cautions(columns),
        [] if doubts else drawings(named, speed, most),
        decision=decision,
        questions=questions,
        grid=grid,
    )


_WORTH = 2


def _columns(of: Gearing, speed: Figure, gears: list[Figure], transfer: Figure | None, data: Refdata) -> list[Column]:
    axles = [axle_of(r, data) for r in of.ratios]
    own = of.revolutions
    turning = [tyres.by_size(t, data) for t in of.tyres] if own is None else [tyres.by_maker(own, data)]
    was_axle = axle_of(of.was_ratio, data) if of.was_ratio is not None else None
    was_tyre = tyres.by_size(of.was_tyre, data) if of.was_tyre is not None else None
    out = []
    for axle in axles:
        for tyre in turning:
            speeds = tuple(_speed(tyre, speed, axle, g, transfer, data) for g in gears)
            shown = None
            if was_axle is not None or was_tyre is not None:
                was = (was_axle or axle, was_tyre or tyre)
                shown = dial.speedometer((axle, tyre), was, speed, of.driven, data)
            out.append(Column(axle, tyre, speeds, shown))
    return out


def _has_tyres(columns: Sequence[Column]) -> bool:
    return len({c.tyre.typed for c in columns}) > 1


def _gear_of(gears: list[Figure]) -> str:
    """The gear whose engine speed is told: the last, which is direct where none was said."""
    if len(gears) > 1:
        return f"in top gear, {gears[-1].text}"
    return "in a direct gear" if base(gears[0]) == 1 else f"in the gear of {gears[0].text}"


def _said(column: Column, speed: Figure, gears: list[Figure], data: Refdata) -> str:
    more = f" {dial.said(column.shown, speed, data)}" if column.shown is not None else ""
    gear = _gear_of(gears)
    return f"{capital(gear)} at {speed.text} {speed.unit}.{more}"


def _choice(
    columns: list[Column], speed: Figure, gears: list[Figure], data: Refdata
) -> tuple[Check, Question, Decision]:
    """Several ratios or tyres side by side: which is fitted is asked."""
    has_tyres, has_ratios = _has_tyres(columns), len({c.axle.id for c in columns}) > 1
    what = "ratio" if has_ratios else "tyre"
    key, name = ("ratios", "axle ratio") if has_ratios else ("tyre", "tyre")
    check = Check(name, CANNOT_TELL, f"{len(columns)} columns are compared", bears=ASK)
    question = Question(FILL_IN, f"Which of these {what}s is fitted?", key, (name,))
    at = f"{number_only(speed, data)} {_gear_of(gears)}"
    pairs = sorted(columns, key=lambda c: -base(c.speeds[-1]))[:MOST_CANDIDATES]
    candidates = [
        Candidate(
            c.speeds[-1],
            f"the ratio is {_named(c.axle)}" + (f" and the tyre {c.tyre.typed}" if has_tyres else ""),
            f"at {at}",
        )
        for c in pairs
    ]
    do = f"Choose the {what} by the engine speed that suits the engine."
    return check, question, ask(VERB, candidates, [name], do)


def _over(columns: list[Column], most: Figure | None, data: Refdata) -> list[Check]:
    """Gears that turn the engine faster than its greatest speed; it tells and stops nothing."""
    if most is None:
        return []
    over = [f for c in columns for f in c.speeds if base(f) > base(most)]
    if not over:
        return []
    why = f"{len(over)} of the speeds are over {number_only(most, data)}"
    return [Check("engine's greatest speed", CANNOT_TELL, why, subject="engine", bears=INFORM)]


def _grid(columns: list[Column], most: Figure | None, data: Refdata) -> tuple[tuple[str, ...], ...]:
    """Gears down, ratios and tyres across; the speedometer below."""
    has_tyres = _has_tyres(columns)

    def cell(figure: Figure) -> str:
        over = most is not None and base(figure) > base(most)
        return f"{number_only(figure, data)}{' over' if over else ''}"

    rows = [("gear", *(c.named(has_tyre=has_tyres) for c in columns))]
    for n, first in enumerate(columns[0].speeds):
        rows.append((first.key["gear"], *(cell(c.speeds[n]) for c in columns)))
    shown = [c.shown for c in columns if c.shown is not None]
    if shown:
        rows.append(("speedometer", *(number_only(d.reading, data) for d in shown)))
    geared = [d.gear for d in shown if d.gear is not None]
    if geared:
        rows.append(("driven gear", *(f"{round(g.typical)} teeth" for g in geared)))
    return tuple(rows)


def _fits(figure: Figure, data: Refdata) -> bool:
    number = units.parse_measure(f"{figure.typical:.9f} {figure.unit}", units.dimension(figure.unit))
    return is_plausible(number, figure.quantity, data)


def _doubt(figure: Figure) -> str:
    shown = figure.text or units.significant(figure.typical)
    unit = "" if figure.unit == "1" else f" {figure.unit}"
    return did_you_mean(f"{shown}{unit} is no usual {figure.quantity.replace('_', ' ')}", ())


def _named(axle: Figure) -> str:
    return axle.text or units.significant(axle.typical, 3)


def _speed(tyre: Tyre, speed: Figure, axle: Figure, gear: Figure, transfer: Figure | None, data: Refdata) -> Figure:
    more = base(transfer) if transfer is not None else 1.0
    value = calc.engine_speed(base(tyre.turns), base(speed), base(axle), base(gear), more)
    key = {
        "axle": _named(axle),
        "gear": gear.text,
        "number": gear.locator,
        "speed": f"{speed.text} {speed.unit}",
        "tyre": tyre.typed,
    }
    inputs = (tyre.turns, speed, axle, gear) if transfer is None else (tyre.turns, speed, axle, gear, transfer)
    number = units.from_base(value, "rpm")
    said = f"axle {_named(axle)}, gear {gear.text}"
    return derived("engine_speed_at_road_speed", "engine_speed", number, "rpm", inputs, data, key=key, conditions=said)


def _cautions(columns: list[Column]) -> list[Caution]:
    out = []
    by_size = [c.tyre.turns.id for c in columns if c.tyre.is_by_size]
    if by_size:
        text = "By its size a tyre is free of load: a loaded one turns about 3 % more often, and so does the engine."
        out.append(Caution(text, "note", tuple(dict.fromkeys(by_size)), "common practice"))
    toothed = dict.fromkeys(c.axle for c in columns if c.axle.basis == "derived")
    return out + [Caution(f"{a.key['teeth']}: {a.conditions}.", "note", (a.id,), "common practice") for a in toothed]
