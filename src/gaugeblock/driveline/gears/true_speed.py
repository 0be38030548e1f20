"""The answer ``truespeed``: how fast it goes when the speedometer was right with another tyre."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.decision import USE, Candidate, Decision, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible, plausible_range
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.tyre import Tyre, by_size
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "TRUE SPEED"
_PERCENT = 100


def true_speed(tyre: str, was: str, shown: str | None = None, *, data: Refdata | None = None) -> Sheet:
    """How fast a vehicle goes by a speedometer that was right with another tyre.

    ``tyre`` the one that is fitted and ``was`` the one with which it was right, each by its code (``285/30R20``) or its
    outside diameter (``33 in``); ``shown`` what the speedometer shows (``100 km/h``). The axle ratio is the same.

    Returns a Sheet whose decision is the true speed; where nothing is shown, what the speedometer shows over the true
    speed. Raises InputError or UnitError for what cannot be read. Source: the shaft turns as often at one reading, so
    that speeds are as the turns of the tyres in a mile.

    >>> round(true_speed("33 in", "31 in", "100 km/h").decision.figure.typical, 1)
    106.5
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"tyre": tyre, "was": was, "shown": shown}
    read = None if shown is None else read_positive(shown, "speed", "shown")
    now, old = by_size(tyre, data), by_size(was, data)
    title = f"speedometer{f' at {read.text}' if read is not None else ''} on {tyre}, right with {was}"
    doubts = doubts_of_tyres({"tyre": now, "was": old}, data)
    if read is not None and not is_plausible(read, "road_speed", data):
        doubts["shown"] = did_you_mean(f"{read.text} is no usual speed of a car", ())
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    if read is None:
        return _of_tyres(title, asked, now, old, data)
    reading = stated(read, "speedometer_reading", "shown", data)
    share = base(old.turns) / base(now.turns)
    key = {"tyre": tyre, "was": was}
    number = units.from_base(base(reading) * share, read.unit)
    inputs = (reading, old.turns, now.turns)
    speed = derived("true_speed_of_tyres", "road_speed", number, read.unit, inputs, data, key=key)
    figures = [speed, reading, *now.below[-1:], *old.below[-1:], now.turns, old.turns]
    return Sheet(title, asked, data, list(dict.fromkeys(figures)), [], [], decision=use(VERB, speed, _said(share)))


def _of_tyres(title: str, asked: dict[str, str | None], now: Tyre, old: Tyre, data: Refdata) -> Sheet:
    """What the speedometer shows over the true speed."""
    number, key = base(now.turns) / base(old.turns), {"tyre": now.typed, "was": old.typed}
    inputs = (now.turns, old.turns)
    shows = derived("speedometer_ratio_of_tyres", "speedometer_ratio", number, "1", inputs, data, key=key)
    figures = [shows, *now.below[-1:], *old.below[-1:], now.turns, old.turns]
    candidate = Candidate(shows, plus="times the true speed")
    decision = Decision(USE, "SPEEDOMETER SHOWS", (candidate,), (), shown_over_true(number))
    return Sheet(title, asked, data, list(dict.fromkeys(figures)), [], [], decision=decision)


def shown_over_true(ratio: float) -> str:
    """How far the speedometer is off the true speed, in words."""
    off = units.significant(abs(_PERCENT * (ratio - 1)), 2)
    if abs(ratio - 1) < _HAIR:
        return "The speedometer stays right."
    way, covers = ("high", "more") if ratio > 1 else ("low", "less")
    return f"It reads {off} % too {way}, and counts {covers} way than it goes."


def _said(share: float) -> str:
    """By how much the speedometer is off, in words."""
    off = units.significant(abs(_PERCENT * (share - 1)), 2)
    if abs(share - 1) < _HAIR:
        return "The speedometer stays right."
    way, covers = ("faster", "more") if share > 1 else ("slower", "less")
    return f"It goes {off} % {way} than the speedometer shows, and it covers {covers} than it counts."


_HAIR = 0.0005


def doubts_of_tyres(tyres: dict[str, Tyre], data: Refdata) -> dict[str, str]:
    """A doubt of each tyre that no car has, by its option."""
    return {
        key: did_you_mean(f"{tyre.typed} makes a tyre that no car has", ())
        for key, tyre in tyres.items()
        if not all(_is_usual(figure, data) for figure in (tyre.below[-1], tyre.turns))
    }


def _is_usual(figure: Figure, data: Refdata) -> bool:
    span = plausible_range(figure.quantity, data)
    return span is None or span[0] <= base(figure) <= span[1]
