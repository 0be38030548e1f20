"""What a speedometer shows after another axle ratio or tyre, and the driven gear that mends it."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.gears.tyre import Tyre
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

TABLE = "driveline/speedometers"
SHOWS = "what the speedometer shows"
_PERCENT = 100


class Speedometer(Value):
    """Shown over true speed, what it shows at the road speed, and the driven gear with what it leaves."""

    __slots__ = ("gear", "left", "ratio", "reading", "wanted")

    ratio: Figure
    reading: Figure
    wanted: Figure | None
    gear: Figure | None
    left: Figure | None

    def __init__(
        self,
        ratio: Figure,
        reading: Figure,
        wanted: Figure | None = None,
        gear: Figure | None = None,
        left: Figure | None = None,
    ) -> None:
        put(self, "ratio", ratio)
        put(self, "reading", reading)
        put(self, "wanted", wanted)
        put(self, "gear", gear)
        put(self, "left", left)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All of it that is known, the reading first."""
        return tuple(f for f in (self.reading, self.ratio, self.wanted, self.gear, self.left) if f is not None)


def speedometer(
    now: tuple[Figure, Tyre], was: tuple[Figure, Tyre], speed: Figure, driven: Measure | None, data: Refdata
) -> Speedometer:
    """Of axle and tyre as they are and as they were when it was right; ``driven`` is the gear that is in it."""
    (axle, tyre), (old_axle, old_tyre) = now, was
    value = base(axle) * base(tyre.turns) / (base(old_axle) * base(old_tyre.turns))
    key = {"axle": _named(axle), "tyre": tyre.typed, "was": f"{_named(old_axle)}, {old_tyre.typed}"}
    inputs = (axle, old_axle, tyre.turns, old_tyre.turns)
    ratio = derived("speedometer_ratio", "speedometer_ratio", value, "1", inputs, data, key=key)
    shown = units.from_base(base(speed) * value, speed.unit)
    said = f"shown at {speed.text} {speed.unit}"
    reading = derived(
        "speedometer_reading", "speedometer_reading", shown, speed.unit, (speed, ratio), data, key=key, conditions=said
    )
    if driven is None:
        return Speedometer(ratio, reading)
    fitted = stated(driven, "gear_teeth", "driven gear", data)
    exact = fitted.typical * value
    wanted = derived("driven_gear_wanted", "driven_gear_wanted", exact, "teeth", (fitted, ratio), data, key=key)
    whole = max(round(exact), 1)
    gear = stated(
        units.parse_measure(f"{whole} teeth", "tooth count", "gear"), "gear_teeth", "nearest whole gear", data
    )
    remains = f"with a driven gear of {whole} teeth"
    more = {**key, "driven": str(whole)}
    rule, of = "speedometer_ratio_of_gear", (wanted, gear)
    left = derived(rule, "speedometer_ratio", exact / whole, "1", of, data, key=more, conditions=remains)
    return Speedometer(ratio, reading, wanted, gear, left)


def _named(axle: Figure) -> str:
    return axle.text or units.significant(axle.typical, 3)


def said(found: Speedometer, speed: Figure, data: Refdata) -> str:
    """What it shows and what mends it, in two sentences."""
    shows, true = number_only(found.reading, data), number_only(speed, data)
    text = f"The speedometer shows {shows} at {true}"
    if found.gear is None or found.left is None:
        return f"{text}."
    off = _PERCENT * (found.left.typical - 1)
    if round(found.left.typical / found.ratio.typical, 9) == 1:
        return f"{text}, and no driven gear is nearer."
    leaves = "true" if abs(off) < _HAIR else f"{units.significant(abs(off), 2)} % {'high' if off > 0 else 'low'}"
    return f"{text}. A driven gear of {round(found.gear.typical)} teeth leaves it {leaves}."


_HAIR = 0.05


def judged(found: Speedometer, data: Refdata) -> Check:
    """Against what is recommended of cars; it tells and stops nothing."""
    limit = lookup.look_up(
        TABLE, "speedometer_reading_ratio", data=data, subject="speedometer", jurisdiction="SAE recommended practice"
    )
    low, high = limit.low or 1.0, limit.high or 1.0
    is_ok = low <= found.ratio.typical <= high
    why = f"{units.significant(found.ratio.typical, 3)} of the true speed; {low} to {high} is recommended of cars"
    required, actual = Bound(low, "1", "min", limit), Bound(found.ratio.typical, "1", "", found.ratio)
    return Check(SHOWS, OK if is_ok else NOT_OK, why, required, actual, subject="speedometer", bears=INFORM)
