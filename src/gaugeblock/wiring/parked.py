"""The answer ``parked``: how long a battery bears a standing draw and still starts the engine."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Bound, Check, at_least, at_most
from gaugeblock.answer.decision import ASK as ASKS
from gaugeblock.answer.decision import Candidate, Decision, ask, decided, none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import unusual
from gaugeblock.answer.printing import number_only, printed, significant_by_side
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.value import Value, put
from gaugeblock.wiring.settings import LIMITS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

VERB = "MAY STAND"
_READ = {
    "draw": ("current", "standing_current"),
    "battery": ("charge", "battery_charge"),
    "reserve": ("time", "reserve_capacity"),
    "days": ("time", "parking_time"),
    "used": ("ratio", "discharge_to_no_start"),
}


class Parked(Value):
    """A battery by its charge or its reserve capacity, the draw of the vehicle at rest, the days wanted, and the share
    of its charge that may be gone, where that was said.
    """

    __slots__ = ("battery", "days", "draw", "reserve", "used")

    draw: Measure | None
    battery: Measure | None
    reserve: Measure | None
    days: Measure | None
    used: Measure | None

    def __init__(
        self,
        draw: Measure | None,
        battery: Measure | None,
        reserve: Measure | None,
        days: Measure | None = None,
        used: Measure | None = None,
    ) -> None:
        if battery is None and reserve is None:
            why = "neither its charge nor its reserve capacity"
            raise Ambiguous("battery", "battery", why, ("battery", "reserve"), "give one of both: 60 Ah, or 100 min")
        put(self, "draw", draw)
        put(self, "battery", battery)
        put(self, "reserve", reserve)
        put(self, "days", days)
        put(self, "used", used)


def parked(
    draw: str | None = None,
    *,
    battery: str | None = None,
    reserve: str | None = None,
    days: str | None = None,
    used: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How long a battery bears a standing draw and still starts the engine; or the draw that it bears for so long.

    Parameters are text as people write them: ``draw`` of the vehicle at rest (``35 mA``); ``battery`` its charge
    (``60 Ah``), or ``reserve`` its reserve capacity (``100 min``); ``days`` that it is to stand; ``used`` the share
    of its charge that may be gone by then (``50 %``), where that is not the one at which it no longer starts.

    Returns a Sheet: the time, of a full battery at 25 degC; without a draw the most that it may be for the days.

    Raises Ambiguous where neither of both is given, InputError or UnitError for what cannot be read.

    >>> round(parked("35 mA", battery="60 Ah").decision.figures[0].typical, 1)
    28.6
    """
    data = data or refdata()
    asked = {"draw": draw, "battery": battery, "reserve": reserve, "days": days, "used": used}
    return judged(parked_of(asked), asked, data)


def parked_of(asked: dict[str, str | None]) -> Parked:
    """The Parked of what was typed."""
    read = {k: read_positive(t, dim, k) if (t := asked.get(k)) else None for k, (dim, _) in _READ.items()}
    draw = read.pop("draw")
    if draw is None and read["days"] is None:
        do = "measure it, an hour after the last door was shut; or give the days that it is to stand"
        raise InputError("draw", "", "the draw of the vehicle at rest was not said", (), do)
    return Parked(draw, **read)


def judged(of: Parked, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``parked``, of what was read."""
    title = f"parked with a draw of {of.draw.text}" if of.draw else f"parked for {of.days.text if of.days else ''}"
    draw = stated(of.draw, "standing_current", "draw", data) if of.draw else None
    read = {key: (getattr(of, key), quantity) for key, (_, quantity) in _READ.items() if getattr(of, key) is not None}
    doubts = unusual(read, data)
    if doubts:
        checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
        questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
        decision = none(VERB, next(iter(doubts.values())))
        figures = [] if draw is None else [draw]
        return Sheet(title, asked, data, figures, checks, [], decision=decision, questions=questions)
    charge = _charge(of, data)
    share = _no_start(data) if of.used is None else stated(of.used, "discharge_to_no_start", "used", data)
    if of.draw is None or draw is None:
        return _draw_for(of, charge, share, title, asked, data)
    time = _time(of.draw, charge, share, draw, data)
    starts = _time(of.draw, charge, _no_start(data), draw, data)
    is_over = of.used is not None and base(starts) < base(time)
    checks, questions = _checks(of, draw, starts if is_over else time, data)
    do = f"A full battery of {number_only(charge, data)} loses {number_only(share, data)} of its charge in that time."
    do = f"{do} {_sooner(share, data)}" if of.used is not None else do
    decision = decided(VERB, time, checks, do if not any(c.asks for c in checks) else "")
    if is_over:
        checks, questions, decision = _over(starts, time, share, checks, questions, data)
    elif decision.kind == ASKS:
        decision = _asked(decision, time, checks, share, data, is_own=of.used is not None)
    figures = [*([starts] if is_over else []), time, charge, share, draw]
    return Sheet(title, asked, data, figures, checks, _cautions(), decision=decision, questions=questions)


def _time(typed: Measure, charge: Figure, share: Figure, draw: Figure, data: Refdata) -> Figure:
    """How long a share of the charge lasts."""
    number = units.from_base(calc.parking_time(base(charge), base(share), base(draw)), "days")
    key = {"draw": typed.text, "battery": printed(charge, data), "used": printed(share, data)}
    return derived("parking_time", "parking_time", number, "days", (charge, share, draw), data, key=key)


def _over(
    starts: Figure, time: Figure, share: Figure, checks: list[Check], questions: list[Question], data: Refdata
) -> tuple[list[Check], list[Question], Decision]:
    """A share that is more than a battery starts with: how long it is sure to start, and then the time that was asked
    for.
    """
    name = "start after that"
    said = _sooner(share, data)
    check = Check(name, CANNOT_TELL, said.rstrip("."), subject="used", bears=ASK)
    question = Question(FILL_IN, "Must it start by itself then, or will it be charged first?", "used", (name,))
    both = [
        Candidate(starts, "it must start by itself, from full"),
        Candidate(time, "it is charged before it is started", f"{number_only(share, data)} of its charge is gone then"),
    ]
    names = [name, *(c.name for c in checks if c.asks)]
    return [*checks, check], [question, *questions], ask(VERB, both, names, question.text)


def _no_start(data: Refdata) -> Figure:
    subject = "share used when it no longer starts"
    return look_up(LIMITS, "discharge_to_no_start", data=data, subject=subject, case="any")


def _sooner(share: Figure, data: Refdata) -> str:
    """What a battery that may lose more than it starts with is no longer good for."""
    usual = _no_start(data)
    if base(share) <= base(usual):
        return "It still starts then."
    return f"It is no longer sure to start once {number_only(usual, data)} are gone, which is sooner."


def _draw_for(
    of: Parked, charge: Figure, share: Figure, title: str, asked: dict[str, str | None], data: Refdata
) -> Sheet:
    """The most that the vehicle may draw for the days that it is to stand."""
    assert of.days is not None
    days = stated(of.days, "parking_time", "days", data)
    number = units.from_base(calc.standing_draw(base(charge), base(share), base(days)), "mA")
    key = {"days": of.days.text, "battery": printed(charge, data)}
    text = significant_by_side(number, "max", 2)
    inputs = (charge, share, days)
    most = derived("draw_for_days", "standing_current_maximum", number, "mA", inputs, data, key=key, text=text)
    do = f"A full battery of {number_only(charge, data)} then loses {number_only(share, data)} of its charge."
    figures = [most, charge, share, days]
    return Sheet(title, asked, data, figures, [], _cautions(), decision=use("MAY DRAW", most, do))


def _asked(
    decision: Decision, time: Figure, checks: list[Check], share: Figure, data: Refdata, *, is_own: bool
) -> Decision:
    reason = next(c.reason for c in checks if c.asks)
    then = "no longer sure to start after that"
    if is_own:
        sooner = _sooner(share, data)
        then = f"{number_only(share, data)} of its charge is gone then; {sooner[0].lower()}{sooner[1:-1]}"
    candidate = Candidate(time, "full, with this draw", then)
    return ask(VERB, [candidate], decision.because, f"{reason}.")


def _charge(of: Parked, data: Refdata) -> Figure:
    if of.battery is not None:
        return stated(of.battery, "battery_charge", "battery", data)
    assert of.reserve is not None
    reserve = stated(of.reserve, "reserve_capacity", "reserve", data)
    subject = "usable amp hours from reserve capacity"
    rate = look_up(LIMITS, "reserve_to_amp_hours", data=data, subject=subject, case="any")
    number = units.from_base(base(reserve) * base(rate), "Ah")
    key = {"reserve": of.reserve.text}
    return derived("charge_of_reserve", "battery_charge", number, "Ah", (reserve, rate), data, key=key)


def _checks(of: Parked, draw: Figure, time: Figure, data: Refdata) -> tuple[list[Check], list[Question]]:
    limit = look_up(LIMITS, "standing_current_maximum", data=data, subject="standing draw", case="maker's limit")
    most = limit.high if limit.high is not None else limit.typical
    milliamps = units.from_base(base(draw), "mA")
    said = f"A car maker looks for the cause over {printed(limit, data)}; {printed(draw, data)} is drawn"
    bounds = Bound(milliamps, "mA", "", draw), Bound(most, "mA", "max", limit)
    checks = [at_most("standing draw", *bounds, said, subject="draw", bears=ASK)]
    questions = []
    if checks[0].asks:
        text = "What draws it? Pull one fuse after another and watch the ammeter."
        questions.append(Question(MEASURE, text, "draw", ("standing draw",)))
    if of.days is not None:
        wanted = stated(of.days, "parking_time", "days", data)
        said = f"{of.days.text} wanted, {number_only(time, data)} to be had"
        bounds = Bound(time.typical, "days", "", time), Bound(of.days.to("days"), "days", "min", wanted)
        checks.append(at_least("days wanted", *bounds, said, subject="days", bears=ASK))
        if checks[-1].asks:
            text = "Will it be charged meanwhile, or its battery taken off? Else give it fewer days."
            questions.append(Question(FILL_IN, text, "days", ("days wanted",)))
    said = "cold takes charge from a battery, and age too"
    checks.append(Check("cold and age", CANNOT_TELL, said, subject="battery", bears=INFORM))
    return checks, questions


def _cautions() -> list[Caution]:
    text = "Break the circuit at the earth post only, and open no door with an ammeter in line: its fuse blows."
    return [Caution(text, "damage"), Caution("A battery gives off hydrogen: no spark at its posts.", "injury")]
