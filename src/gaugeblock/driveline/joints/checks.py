"""What is asked of a shaft's joints: whether the second cancels the first, and whether each angle is usual."""

from __future__ import annotations

import math

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.driveline.joints.working import Working, text_of
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.interval import parse_interval
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.joints.given import Joints
    from gaugeblock.driveline.joints.swing import Swings
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

TABLE = "driveline/joints"
CANCELS = "second joint cancels the first"
SPEED = "working angle at this speed"
LEAST = "least working angle"
_EQUAL = "normal operation, both joints equal"
_SAME = math.radians(0.01)  # closer than any protractor reads


class Judged(Value):
    """A check, what settles it in one sentence (blank where it is ok), and the question that closes it."""

    __slots__ = ("check", "do", "question")

    check: Check
    do: str
    question: Question | None

    def __init__(self, check: Check, do: str = "", question: Question | None = None) -> None:
        put(self, "check", check)
        put(self, "do", do)
        put(self, "question", question)


def degrees(angle_rad: float) -> str:
    """An angle as a protractor may read it."""
    return f"{units.significant(math.degrees(angle_rad), 3)} deg"


def cancels(of: Joints, found: Working, swings: Swings, data: Refdata) -> Judged:
    """Whether the second joint takes back what the first does."""
    if len(found.angles) == 1:
        do = "Measure the angle of the second joint: one joint alone swings."
        question = Question(MEASURE, "What is the angle of the second joint?", "second", (CANCELS,))
        why = "the second joint's working angle is not given"
        return Judged(Check(CANCELS, CANNOT_TELL, why, bears=ASK), do, question)
    if found.lacks:
        which = "second" if found.lacks == "second_top" else "first"
        do = f"Measure the {which} joint in the top view too."
        question = Question(
            MEASURE, f"What is the angle of the {which} joint in the top view?", found.lacks, (CANCELS,)
        )
        return Judged(
            Check(CANCELS, CANNOT_TELL, f"the {which} joint's angle in the top view is not given", bears=ASK),
            do,
            question,
        )
    if of.phasing is None:
        question = Question(MEASURE, "Do the yokes at the two ends of the shaft stand in line?", "phasing", (CANCELS,))
        why = f"the phasing of the yokes is not given: {swings.either}"
        return Judged(
            Check(CANCELS, CANNOT_TELL, why, bears=ASK), "See whether the yokes of the shaft stand in line.", question
        )
    if of.phasing == "wrong phase":
        actual = Bound(swings.bad.typical, "%", "", swings.bad)
        check = Check(
            CANCELS,
            NOT_OK,
            f"the yokes are {of.how_out}: {swings.out_of_phase}",
            None,
            actual,
            bears=STOP,
        )
        question = Question(FILL_IN, "How do the yokes stand once the shaft is put right?", "phasing", (CANCELS,))
        return Judged(check, "Put the yokes of the shaft in line: pull the slip joint, and turn it.", question)
    return _in_phase(found, swings, data)


def _in_phase(found: Working, swings: Swings, data: Refdata) -> Judged:
    """Yokes in line: the planes must agree, and the angles be equal within what is published."""
    ends = swings.in_line
    actual = Bound(swings.good.typical, "%", "", swings.good)
    apart = abs(base(found.angles[0]) - base(found.angles[1]))
    if found.apart > _SAME and min(base(a) for a in found.angles) > _SAME:
        planes = degrees(found.apart)
        why = f"the joints lie in planes {planes} apart: {ends}"
        limits = _difference_limits(data)
        least = min(limits, key=base) if limits else None
        if least is not None and swings.good.typical <= swings.left_by(base(least), found):
            said = f"{why}; no more than {text_of(least)} of difference leaves"
            return Judged(Check(CANCELS, OK, said, None, actual))
        do = (
            f"The joints lie in planes {planes} apart. Line the shafts up in one view, or have the driveshaft shop set "
            "the yokes to it."
        )
        question = Question(
            ASK_MAKER,
            f"How are the yokes set for joints in planes {planes} apart, by the driveshaft shop?",
            "notes",
            (CANCELS,),
        )
        return Judged(Check(CANCELS, CANNOT_TELL, why, None, actual, bears=ASK), do, question)
    if apart <= _SAME:
        return Judged(Check(CANCELS, OK, f"equal angles, in phase: {ends}", None, actual))
    limits = _difference_limits(data)
    said = f"the angles differ by {degrees(apart)}: {ends}"
    if not limits:
        question = Question(ASK_MAKER, "How far may the two angles of the shaft differ?", "notes", (CANCELS,))
        why = f"{said}; no figure for a vehicle says how much is allowed"
        return Judged(Check(CANCELS, CANNOT_TELL, why, None, actual, bears=ASK), "Set the two angles equal.", question)
    strict = min(limits, key=base)
    is_far = all(apart > base(f) * (1 + 1e-9) for f in limits)
    got = Bound(math.degrees(apart), "deg")
    required = Bound(math.degrees(base(strict)), "deg", "max", strict)
    check = at_most(
        CANCELS,
        got,
        required,
        f"{said}; at most {text_of(strict)} is asked by {strict.source}",
        bears=STOP if is_far else ASK,
    )
    if check.result == OK:
        return Judged(check)
    question = Question(MEASURE, "What are the angles once the axle or the gearbox is tilted?", "second", (CANCELS,))
    return Judged(check, f"Tilt the axle or the gearbox until the two angles are within {text_of(strict)}.", question)


def _difference_limits(data: Refdata) -> list[Figure]:
    """What publications for any vehicle allow between the angles of a shaft's two ends."""
    rows = data.table(TABLE).by_quantity.get("angle_difference_maximum", ())
    return [
        lookup.figure_of(r, data)
        for r in rows
        if r["joint"] == "universal joint pair"
        and r["service"] in ("any", "vehicle")
        and "motor home" not in r["case"]
        and not r.standing
    ]


def usual(found: Working, speed: Measure | None, data: Refdata) -> Judged:
    """The larger working angle against what is printed by driveshaft speed; between the printed speeds linear."""
    worst = max(found.angles, key=base)
    got = Bound(math.degrees(base(worst)), "deg", "", worst)
    if speed is not None and not is_plausible(speed, "driveshaft_speed", data):
        said = did_you_mean(f"{speed.text} is no usual speed of a driveshaft", ())
        check = Check(SPEED, CANNOT_TELL, said, subject="speed", bears=ASK)
        return Judged(check, said, Question(FILL_IN, said, "speed", (SPEED,)))
    if speed is None:
        return _any_speed(worst, got, data)
    turning = stated(speed, "driveshaft_speed", "speed", data)
    ask_maker = Question(
        ASK_MAKER, f"What angle does the joint's maker allow at {text_of(turning)}?", "notes", (SPEED,)
    )
    try:
        limit = limit_at(turning, data)
    except LookupMiss:
        why = f"the trade's table has no figure at {text_of(turning)}, and it is not extrapolated: ask the maker"
        check = Check(SPEED, CANNOT_TELL, why, None, got, bears=ASK)
        return Judged(check, "Ask the joint's maker: this speed is not in the table.", ask_maker)
    most = math.degrees(base(limit))
    place = (
        limit.source
        or ", ".join(dict.fromkeys(f.source or "common practice" for f in limit.inputs))
        or "common practice"
    )
    reason = f"{degrees(base(worst))} at {text_of(turning)}, at most {units.significant(most, 3)} deg ({place})"
    check = at_most(SPEED, got, Bound(most, "deg", "max", limit), reason, bears=STOP)
    if check.result == OK:
        return Judged(check)
    do = f"Lessen {_over(found, most)} to {units.significant(most, 3)} deg, or run the shaft slower."
    return Judged(check, do, ask_maker)


def _over(found: Working, most: float) -> str:
    """Which joints stand at more than an angle, deg, in words."""
    if len(found.angles) == 1:
        return "the angle"
    angles = [(n, base(a)) for n, a in enumerate(found.angles, 1)]
    over = [f"joint {n} ({degrees(angle)})" for n, angle in angles if math.degrees(angle) > most]
    return f"the angle of {' and '.join(over)}"


def limit_at(turning: Figure, data: Refdata) -> Figure:
    """What is printed at a speed, or between two; under the slowest printed speed its figure, which is the stricter."""
    slowest, _ = _speeds(data)
    point = parse_interval(slowest.key["shaft_speed"])
    if point is not None and point.low is not None and base(turning) < float(point.low):
        return slowest
    at = {"joint": "single cardan", "case": _EQUAL, "shaft_speed": text_of(turning)}
    return lookup.look_up(TABLE, "working_angle_maximum", data=data, **at)


def _speeds(data: Refdata) -> tuple[Figure, Figure]:
    """The figures of the slowest and the fastest shaft that the table prints."""
    rows = data.table(TABLE).of("working_angle_maximum")
    known = [
        lookup.figure_of(r, data)
        for r in rows
        if r["joint"] == "single cardan" and r["case"] == _EQUAL and not r.standing
    ]
    return max(known, key=base), min(known, key=base)


def _any_speed(worst: Figure, got: Bound, data: Refdata) -> Judged:
    slowest, fastest = _speeds(data)
    said = degrees(base(worst))
    question = Question(
        FILL_IN, "How fast does the driveshaft turn at the top speed of the vehicle?", "speed", (SPEED,)
    )
    do = "Say how fast the driveshaft turns at top speed."
    if base(worst) <= base(fastest) * (1 + 1e-9):
        required = Bound(math.degrees(base(fastest)), "deg", "max", fastest)
        why = f"{said}, within {text_of(fastest)} at {fastest.key['shaft_speed']}, the fastest that is printed"
        return Judged(at_most(SPEED, got, required, why))
    if base(worst) <= base(slowest):
        return Judged(
            Check(SPEED, CANNOT_TELL, "the driveshaft's speed is not given", None, got, bears=ASK), do, question
        )
    required = Bound(math.degrees(base(slowest)), "deg", "max", slowest)
    why = (
        f"{said} is over what any speed of the trade's table has: at most {text_of(slowest)}"
        f" ({slowest.key['shaft_speed']})"
    )
    check = Check(SPEED, NOT_OK, why, required, got, bears=STOP)
    return Judged(check, f"Lessen the angle to {text_of(slowest)} at the most, or use a joint made for more.", question)


def needles_roll(of: Joints, found: Working, data: Refdata) -> Judged | None:
    """That no joint runs straight: its needles would not roll. None where nothing is published, or all are far from
    it.
    """
    rows = data.table(TABLE).by_quantity.get("working_angle_minimum", ())
    limits = [lookup.figure_of(r, data) for r in rows if r["service"] in ("any", "vehicle") and not r.standing]
    if not limits:
        return None
    limit = max(limits, key=base)
    least = min(found.angles, key=base)
    got = Bound(math.degrees(base(least)), "deg", "", least)
    required = Bound(math.degrees(base(limit)), "deg", "min", limit)
    reason = f"{degrees(base(least))}; at least {text_of(limit)}, or the needles do not roll, {limit.source}"
    check = at_least(LEAST, got, required, reason, bears=ASK)
    if check.result == OK:
        return Judged(check)
    key = "shafts_side" if of.shafts else "angle"
    do = f"Give each joint {text_of(limit)} at the least: tilt the axle or the gearbox, or shim the centre bearing."
    return Judged(check, do, Question(MEASURE, "What are the angles once each joint is bent a little?", key, (LEAST,)))
