"""The answer ``roadspeed``: how fast it goes at a speed of the engine."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.given import ratio_measure
from gaugeblock.driveline.gears.true_speed import doubts_of_tyres
from gaugeblock.driveline.gears.tyre import by_size
from gaugeblock.tables.load import Refdata, refdata

VERB = "ROAD SPEED"
_WHAT = {
    "ratio": ("axle_ratio", "axle ratio of a car"),
    "engine_speed": ("engine_speed", "speed of an engine"),
    "gear": ("gear_ratio", "ratio of a gear"),
}


def roadspeed(ratio: str, tyre: str, engine_speed: str, *, gear: str = "1", data: Refdata | None = None) -> Sheet:
    """How fast a vehicle goes at a speed of its engine.

    ``ratio`` the axle ratio (``4.56``); ``tyre`` its code (``P215/65R15``) or its outside diameter (``28 in``);
    ``engine_speed`` (``6800 rpm``); ``gear`` the ratio of the gear that is in.

    Returns a Sheet whose decision is the road speed; nothing slips. Raises InputError or UnitError for what cannot be
    read. Source: the engine turns with the ratios times the turns of the tyre in a mile.

    >>> round(roadspeed("4.56", "29 in", "6800 rpm").decision.figure.typical)
    129
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"ratio": ratio, "tyre": tyre, "engine_speed": engine_speed, "gear": gear}
    read = {
        "ratio": ratio_measure(ratio, "ratio"),
        "engine_speed": read_positive(engine_speed, "rotational speed", "engine speed"),
        "gear": ratio_measure(gear, "gear"),
    }
    rolls = by_size(tyre, data)
    title = f"road speed at {read['engine_speed'].text}, axle {ratio}, {tyre}"
    doubts = doubts_of_tyres({"tyre": rolls}, data)
    for key, measure in read.items():
        quantity, what = _WHAT[key]
        if not is_plausible(measure, quantity, data):
            doubts[key] = did_you_mean(f"{measure.text} is no usual {what}", ())
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    axle, turning, inside = (stated(measure, _WHAT[key][0], key, data) for key, measure in read.items())
    fast = base(turning) / (base(axle) * base(inside) * base(rolls.turns))
    inputs = (turning, rolls.turns, axle, inside)
    number = units.from_base(fast, "mph")
    of = {"ratio": ratio, "tyre": tyre, "engine_speed": engine_speed, "gear": gear}
    speed = derived("road_speed_at_engine_speed", "road_speed", number, "mph", inputs, data, key=of)
    figures = list(dict.fromkeys([speed, turning, axle, inside, *rolls.below[-1:], rolls.turns]))
    return Sheet(title, asked, data, figures, [], [], decision=use(VERB, speed, _DO))


_DO = "Nothing slips, and the tyre is new and free of load: on the road it is a few per cent less."
