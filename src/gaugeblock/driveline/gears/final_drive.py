"""The answer ``finaldrive``: the axle ratio for an engine speed that is wanted at a road speed."""

from __future__ import annotations

from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible, plausible_range
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.given import ratio_measure
from gaugeblock.driveline.gears.true_speed import doubts_of_tyres
from gaugeblock.driveline.gears.tyre import by_size
from gaugeblock.tables.load import Refdata, refdata

VERB = "USE RATIO"
_WHAT = {
    "engine_speed": ("engine_speed", "speed of an engine", "rotational speed"),
    "speed": ("road_speed", "road speed", "speed"),
}


def finaldrive(engine_speed: str, *, speed: str, tyre: str, gear: str = "1", data: Refdata | None = None) -> Sheet:
    """The axle ratio that gives an engine speed at a road speed.

    ``engine_speed`` that is wanted (``2500 rpm``) at a road ``speed`` (``110 km/h``); ``tyre`` its code
    (``P215/65R15``) or its outside diameter (``640 mm``); ``gear`` the ratio of the gear that is in (``0.82``).

    Returns a Sheet whose decision is the ratio; nothing slips. One that no axle has is asked about. Raises InputError
    or UnitError for what cannot be read. Source: as ``roadspeed``, turned round.

    >>> round(finaldrive("2500 rpm", speed="70 mph", tyre="24.7 in").decision.figure.typical, 2)
    2.62
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"engine_speed": engine_speed, "speed": speed, "tyre": tyre, "gear": gear}
    read = {key: read_positive(str(asked[key]), dimension, key) for key, (*_, dimension) in _WHAT.items()}
    inside, rolls = ratio_measure(gear, "gear"), by_size(tyre, data)
    title = f"axle ratio for {read['engine_speed'].text} at {read['speed'].text}, {tyre}"
    doubts = doubts_of_tyres({"tyre": rolls}, data)
    for key, measure in read.items():
        quantity, what, _ = _WHAT[key]
        if not is_plausible(measure, quantity, data):
            doubts[key] = did_you_mean(f"{measure.text} is no usual {what}", ())
    if not is_plausible(inside, "gear_ratio", data):
        doubts["gear"] = did_you_mean(f"{gear} is no usual ratio of a gear", ())
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    turning, fast = (stated(read[key], _WHAT[key][0], key, data) for key in _WHAT)
    geared = stated(inside, "gear_ratio", "gear", data)
    number = base(turning) / (base(fast) * base(geared) * base(rolls.turns))
    span = plausible_range("axle_ratio", data)
    if span is not None and not span[0] <= number <= span[1]:
        said = did_you_mean(f"that would be an axle of {number:.2f} to 1, which no car has", ())
        return questioned(title, asked, {"engine_speed": said}, VERB, data)
    inputs = (turning, rolls.turns, fast, geared)
    named = {k: v for k, v in asked.items() if v}
    ratio = derived("axle_ratio_for_speed", "axle_ratio", number, "1", inputs, data, key=named, text=f"{number:.2f}")
    figures = list(dict.fromkeys([ratio, turning, fast, geared, *rolls.below[-1:], rolls.turns]))
    return Sheet(title, asked, data, figures, [], [], decision=use(VERB, ratio, _DO))


_DO = "Take the nearest that is made for the axle: a higher number turns the engine faster. Nothing slips."
