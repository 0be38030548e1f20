"""The answer ``regear``: which axle ratio gives with other tyres the engine speed of before."""

from __future__ import annotations

from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.given import ratio_measure
from gaugeblock.driveline.gears.true_speed import doubts_of_tyres
from gaugeblock.driveline.gears.tyre import by_size
from gaugeblock.tables.load import Refdata, refdata

VERB = "USE RATIO"


def regear(ratio: str, was: str, tyre: str, *, data: Refdata | None = None) -> Sheet:
    """Which axle ratio gives with another tyre the engine speed that there was.

    ``ratio`` the axle ratio that is fitted (``3.73``); ``was`` the tyre that it drove and ``tyre`` the one that it
    shall drive, each by its code (``265/70R17``) or its outside diameter (``35 in``).

    Returns a Sheet whose decision is that ratio. Raises InputError or UnitError for what cannot be read. Source: the
    shaft turns with the ratio times the turns of the tyre in a mile.

    >>> round(regear("3.73", "31 in", "35 in").decision.figure.typical, 2)
    4.21
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"ratio": ratio, "was": was, "tyre": tyre}
    fitted = ratio_measure(ratio, "ratio")
    now, old = by_size(tyre, data), by_size(was, data)
    title = f"axle ratio on {tyre}, in place of {ratio} on {was}"
    doubts = doubts_of_tyres({"tyre": now, "was": old}, data)
    if not is_plausible(fitted, "axle_ratio", data):
        doubts["ratio"] = did_you_mean(f"{fitted.text} is no usual axle ratio of a car", ())
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    given = stated(fitted, "axle_ratio", "ratio", data)
    inputs = (given, old.turns, now.turns)
    number = base(given) * base(old.turns) / base(now.turns)
    key = {"ratio": ratio, "was": was, "tyre": tyre}
    wanted = derived("axle_ratio_for_tyre", "axle_ratio", number, "1", inputs, data, key=key)
    figures = [wanted, given, *now.below[-1:], *old.below[-1:], now.turns, old.turns]
    return Sheet(title, asked, data, list(dict.fromkeys(figures)), [], [], decision=use(VERB, wanted, _DO))


_DO = (
    "Take the nearest that is made for the axle: a higher number turns the engine faster. The speedometer changes too."
)
