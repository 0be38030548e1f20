"""The joints of a propeller shaft at ride height, under power and at both ends of the travel."""

from __future__ import annotations

import math
from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.check import INFORM, Bound, Check, at_most
from gaugeblock.answer.making import base, derived
from gaugeblock.driveline.joints import checks
from gaugeblock.driveline.joints.checks import Judged
from gaugeblock.driveline.joints.given import Joints, views
from gaugeblock.driveline.joints.swing import Swings, one_joint, swings
from gaugeblock.driveline.joints.working import Working, text_of, working
from gaugeblock.figure import Figure
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.driveline.propshafts.given import Propeller
    from gaugeblock.tables.load import Refdata

RIDE, POWER, BUMP, DROOP, FRONT = "at ride height", "under power", "at full bump", "at full droop", "front joint"
_THREE = 3
# Beyond this the small-angle rule of the acceleration is off by more than a tenth.
_SMALL = math.radians(15)


class State(Value):
    """The joints in one state: their angles, what the pair swings, and what was asked of them."""

    __slots__ = ("acceleration", "found", "front", "name", "swings", "told")

    name: str
    found: Working
    swings: Swings | None
    acceleration: Figure | None
    front: Figure | None
    told: tuple[Judged, ...]

    def __init__(
        self,
        name: str,
        found: Working,
        pair: Swings | None,
        acceleration: Figure | None,
        told: Sequence[Judged],
        front: Figure | None = None,
    ) -> None:
        put(self, "name", name)
        put(self, "found", found)
        put(self, "front", front)
        put(self, "swings", pair)
        put(self, "acceleration", acceleration)
        put(self, "told", tuple(told))

    @property
    def angles(self) -> tuple[Figure, ...]:
        """The working angle of each joint, from the gearbox to the axle."""
        return (*(() if self.front is None else (self.front,)), *self.found.angles)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """Angles and swing."""
        out = [*self.angles, *((self.swings.good,) if self.swings is not None else ())]
        out += [self.acceleration] if self.acceleration is not None else []
        return tuple(f for f in out if f.basis == "derived")


def states(of: Propeller, speed: Figure | None, data: Refdata) -> list[State]:
    """Each state whose slopes were given. Under power the pinion stands higher by the wind-up of its springs; the
    pair must then cancel, else at ride height.
    """
    if not of.shafts_side:
        return []
    wind_up = of.get("wind_up")
    out = [_state(RIDE, of, of.shafts_side, of.shafts_top, speed, data, is_judged=wind_up is None)]
    if wind_up is not None:
        last = of.shafts_side[-1]
        raised = _raised(last, wind_up)
        out.append(_state(POWER, of, (*of.shafts_side[:-1], raised), of.shafts_top, speed, data, is_judged=True))
    for name, side in ((BUMP, of.bump_side), (DROOP, of.droop_side)):
        if side:
            out.append(_state(name, of, side, of.shafts_top, speed, data, is_judged=False))
    return out


def _raised(slope: Measure, wind_up: Measure) -> Measure:
    more = units.from_base(units.to_base(float(wind_up.value), wind_up.unit), slope.unit)
    value = units.significant(float(slope.value) + more, 4)
    return Measure(Fraction(value), slope.unit, f"{value} {slope.unit}")


def _state(
    name: str,
    of: Propeller,
    side: tuple[Measure, ...],
    top: tuple[Measure, ...],
    speed: Figure | None,
    data: Refdata,
    *,
    is_judged: bool,
) -> State:
    """The rear three shafts as a pair; the front joint of a shaft in two pieces by itself."""
    turning = None if speed is None else _turning(speed)
    pair = Joints((), views(side[-_THREE:], top[-_THREE:]), of.phasing, turning)
    found = working(pair, data)
    made = swings(found, data)
    told = [checks.usual(found, turning, data)]
    if is_judged:
        told.insert(0, checks.cancels(pair, found, made, data))
        rolls = checks.needles_roll(pair, found, data)
        told += [rolls] if rolls is not None else []
    front = None
    if len(side) > _THREE:
        front = working(Joints((), views((*side[:2], side[1]), (*top[:2], top[1]) if top else ())), data).angles[0]
        told += [_front(front, data)]
    told = [_named(t, name, is_judged) for t in told]
    return State(name, found, made, _acceleration(found, speed, data), told, front)


def _turning(speed: Figure) -> Measure:
    """The speed of the shaft in the unit that it was typed in, else in rpm to four digits."""
    unit = speed.unit if speed.text else "rpm"
    value = f"{speed.typical:.12g}" if speed.text else units.significant(units.from_base(base(speed), "rpm"), 4)
    return Measure(Fraction(value), unit, f"{value} {unit}")


def _named(told: Judged, state: str, is_judged: bool) -> Judged:
    """A check said of one state; what does not decide there only informs, but for an angle that is over its limit."""
    old = told.check
    bears = old.bears if is_judged or old.stops else INFORM
    check = Check(
        f"{old.name}, {state}" if state not in (RIDE, POWER) else old.name,
        old.result,
        f"{state}, {old.reason}" if state == POWER else old.reason,
        old.required,
        old.actual,
        old.margin,
        subject=old.subject,
        case=state,
        bears=bears,
    )
    question = told.question if bears != INFORM else None
    if question is not None:
        key = {"speed": "speed", "phasing": "phasing", "notes": "notes"}.get(question.key, "shafts_side")
        question = question.replace(key=key, checks=(check.name,))
    do = f"Under power the pinion rises. {told.do}" if state == POWER and told.do else told.do
    return Judged(check, do, question)


def _front(angle: Figure, data: Refdata) -> Judged:
    """The first joint of a shaft in two pieces: nothing takes its swing back, so it stands nearly straight."""
    rows = data.table(checks.TABLE).of("working_angle_maximum")
    limits = [lookup.figure_of(r, data) for r in rows if "two-piece" in r["case"] and not r.standing]
    swing = one_joint(angle, data)
    said = f"{checks.degrees(base(angle))}, swings {units.significant(swing.typical, 2)} %, and nothing takes it back"
    limit = max(limits, key=base)
    got = Bound(math.degrees(base(angle)), "deg", "", angle)
    required = Bound(math.degrees(base(limit)), "deg", "max", limit)
    why = f"{said}; makers allow {text_of(limit)} at the most"
    check = at_most("front joint nearly straight", got, required, why, subject=FRONT, bears=INFORM)
    return Judged(check)


def _acceleration(found: Working, speed: Figure | None, data: Refdata) -> Figure | None:
    """What the pair leaves, as an angular acceleration; None where the joints lie in different planes."""
    if speed is None or found.apart > 0 or any(base(a) > _SMALL for a in found.angles):
        return None
    first, second = found.angles
    value = base(speed) ** 2 * abs(base(first) ** 2 - base(second) ** 2)
    key = {"speed": text_of(speed), "first": text_of(first), "second": text_of(second)}
    rule = "universal_joint_pair_acceleration"
    inputs = (speed, first, second)
    return derived(rule, "joint_acceleration", value, "rad/s**2", inputs, data, key=key, conditions="left by the pair")
