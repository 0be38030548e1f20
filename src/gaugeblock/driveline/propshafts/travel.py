"""How far the slip joint of a propeller shaft goes, and whether it bottoms or pulls out."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check, at_least
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.driveline.joints.checks import TABLE, Judged
from gaugeblock.driveline.propshafts.whip import figure_of, text_of
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.propshafts.given import Propeller
    from gaugeblock.tables.load import Refdata

BOTTOMS, PULLS_OUT, TRAVEL = "slip joint at its shortest", "slip joint at its longest", "travel of the slip joint"


class Travel(Value):
    """Distances between the joints, the way of the slip joint in and out from ride height, and what is left of both."""

    __slots__ = ("distances", "engaged", "ins", "left", "outs")

    distances: tuple[Figure, ...]
    ins: Figure | None
    outs: Figure | None
    left: Figure | None
    engaged: Figure | None

    def __init__(
        self,
        distances: tuple[Figure, ...],
        ins: Figure | None = None,
        outs: Figure | None = None,
        left: Figure | None = None,
        engaged: Figure | None = None,
    ) -> None:
        put(self, "distances", distances)
        put(self, "ins", ins)
        put(self, "outs", outs)
        put(self, "left", left)
        put(self, "engaged", engaged)

    @property
    def longest(self) -> Figure | None:
        """The greatest distance between the joints."""
        return max(self.distances, key=base) if self.distances else None

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All that was worked out."""
        return tuple(f for f in (self.ins, self.outs, self.left, self.engaged) if f is not None)


def travel(of: Propeller, data: Refdata) -> Travel:
    """Of the distances that were measured; without the ride height there is none."""
    given = [figure_of(of, k, data) for k in ("length", "bump", "droop")]
    distances = tuple(f for f in given if f is not None)
    ride = given[0]
    if ride is None or len(distances) == 1:
        return Travel(distances)
    key = {"distances": ", ".join(text_of(f) for f in distances)}

    def way(rule: str, about: str, end: Figure) -> Figure:
        number = units.from_base(abs(base(end) - base(ride)), ride.unit)
        said = f"from ride height, {about}"
        return derived(rule, "slip_travel", number, ride.unit, (ride, end), data, key=key, conditions=said, about=about)

    ins = way("slip_travel_in", "inwards", min(distances, key=base))
    outs = way("slip_travel_out", "outwards", max(distances, key=base))
    gap, meshed = figure_of(of, "slip_in", data), figure_of(of, "engaged", data)
    left = engaged = None
    if gap is not None:
        left = _rest("slip_left_of_travel", "slip_left", gap, ins, "left before it bottoms", data)
    if meshed is not None:
        engaged = _rest("slip_engaged_of_travel", "slip_engaged", meshed, outs, "engaged at its longest", data)
    return Travel(distances, ins, outs, left, engaged)


def _rest(rule: str, quantity: str, had: Figure, taken: Figure, said: str, data: Refdata) -> Figure:
    number = units.from_base(base(had) - base(taken), had.unit)
    key = {**taken.key, "at ride height": text_of(had)}
    return derived(rule, quantity, number, had.unit, (had, taken), data, key=key, conditions=said)


def judged(of: Propeller, found: Travel, data: Refdata) -> list[Judged]:
    """Whether the slip joint bottoms at one end of the travel or pulls out at the other."""
    lacks = [k for k in ("bump", "droop") if of.get(k) is None]
    if lacks:
        named = " and at ".join(f"full {k}" for k in lacks)
        text = f"How far apart are the two joints at {named}?"
        check = Check(TRAVEL, CANNOT_TELL, f"the distance at {named} is not given", subject="slip joint", bears=ASK)
        do = f"Measure the distance between the joints at {named}: the slip joint must not bottom or pull out."
        return [Judged(check, do, Question(MEASURE, text, lacks[0], (TRAVEL,)))]
    return [_bottoms(found, data), _pulls_out(of, found, data)]


def _bottoms(found: Travel, data: Refdata) -> Judged:
    assert found.ins is not None
    goes_in = number_only(found.ins, data)
    if found.left is None:
        why = f"it goes in by {goes_in} from ride height: leave more than that, measured on the car"
        return Judged(Check(BOTTOMS, CANNOT_TELL, why, subject="slip joint", bears=INFORM))
    left = number_only(found.left, data)
    actual = Bound(found.left.typical, found.left.unit, "", found.left)
    habit = lookup.look_up(TABLE, "slip_clearance", data=data, joint="slip yoke", case="ride height", service="vehicle")
    if found.left.typical <= 0:
        zero = Bound(0.0, found.left.unit, "min")
        short = left.lstrip("-")
        why = f"it goes in by {goes_in} from ride height, and bottoms {short} before that"
        do = (
            f"The slip joint bottoms {short} before the springs do: make the shaft shorter, or use a longer slip joint."
        )
        question = Question(
            MEASURE, "How far can the slip joint go in at ride height, once put right?", "slip_in", (BOTTOMS,)
        )
        return Judged(Check(BOTTOMS, NOT_OK, why, zero, actual, subject="slip joint", bears=STOP), do, question)
    why = f"{left} is left at the shortest; shops leave {number_only(habit, data)} at ride height"
    return Judged(Check(BOTTOMS, OK, why, None, actual, subject="slip joint"))


def _pulls_out(of: Propeller, found: Travel, data: Refdata) -> Judged:
    assert found.outs is not None
    goes_out = number_only(found.outs, data)
    if found.engaged is None:
        why = f"it goes out by {goes_out} from ride height: keep a spline diameter engaged beyond that"
        return Judged(Check(PULLS_OUT, CANNOT_TELL, why, subject="slip joint", bears=INFORM))
    engaged = number_only(found.engaged, data)
    actual = Bound(found.engaged.typical, found.engaged.unit, "", found.engaged)
    question = Question(
        MEASURE, "What length of the splines is engaged at ride height, once put right?", "engaged", (PULLS_OUT,)
    )
    if found.engaged.typical <= 0:
        zero = Bound(0.0, found.engaged.unit, "min")
        why = f"it goes out by {goes_out} from ride height, and pulls out before that"
        do = "The slip joint pulls out at full travel: make the shaft longer, or use a longer slip joint."
        return Judged(Check(PULLS_OUT, NOT_OK, why, zero, actual, subject="slip joint", bears=STOP), do, question)
    spline = figure_of(of, "spline_diameter", data)
    if spline is None:
        why = f"{engaged} is engaged at the longest; shops keep one spline diameter"
        return Judged(Check(PULLS_OUT, OK, why, None, actual, subject="slip joint", bears=INFORM))
    habit = lookup.look_up(
        TABLE,
        "engagement_to_diameter_minimum",
        data=data,
        joint="slip yoke",
        case="engaged length",
        service="vehicle",
    )
    least = units.from_base(habit.typical * base(spline), found.engaged.unit)
    required = Bound(least, found.engaged.unit, "min", habit)
    why = f"{engaged} is engaged at the longest; shops keep one spline diameter, {text_of(spline)}"
    check = at_least(PULLS_OUT, actual, required, why, subject="slip joint", bears=ASK)
    if check.result == OK:
        return Judged(check)
    do = (
        f"Only {engaged} of the splines is engaged at the longest. Ask the driveshaft shop, or use a longer slip joint."
    )
    return Judged(check, do, question)
