"""Universal joints: the speed swing of one joint and of a pair, in phase and out of it; working angles against the habit."""

from __future__ import annotations

import math

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.keys import PHASES
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, refdata

TABLE = "driveline/joints"
_LARGEST_DEG = 60.0


def joint(
    angle: str,
    second: str | None = None,
    *,
    phasing: str | None = None,
    top: str | None = None,
    speed: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How much a driven shaft speeds up and slows down, and whether the working angle is usual.

    Parameters are text as people write them: ``angle`` the first joint's working angle (``7 deg``), in the side view
    when ``top`` gives the angle in the top view; ``second`` the other joint's; ``phasing`` ``in phase`` or ``wrong
    phase``; ``speed`` the driveshaft's (``3000 rpm``).

    Returns a Sheet: the swing of the pair as phased first, then of one joint, peak to peak as a share of the mean.
    Two joints are taken to lie in one plane; that is printed.

    Raises InputError or UnitError for what cannot be read.

    >>> joint("20 deg").figures[0].quantity
    'speed_swing'
    """
    data = data or refdata()
    asked = {"angle": angle, "second": second, "phasing": phasing, "top": top, "speed": speed}
    if phasing is not None and phasing not in PHASES:
        raise InputError(phasing, "phasing", "not a phasing", PHASES, "use one of these")
    first = _angle(angle, "first joint", data)
    figures: list[Figure] = []
    if top is not None:
        above = _angle(top, "top view", data)
        true = calc.true_joint_angle(base(first), base(above))
        key = {"side": f"{first.text} {first.unit}", "top": f"{above.text} {above.unit}"}
        number = units.from_base(true, "deg")
        views = (first, above)
        first = derived("universal_joint_true_angle", "working_angle_true", number, "deg", views, data, key=key)
        figures.append(first)
    key = {"angle": _text(first)}
    one = _swing("universal_joint_speed_swing", calc.joint_speed_swing(base(first)), (first,), key, "one joint", data)
    checks: list[Check] = []
    cautions = rule_cautions(data, "universal joints", "speed swing")
    if second is None:
        figures.insert(0, one)
        checks.append(
            Check(
                "second joint cancels the first",
                CANNOT_TELL,
                "the second joint's working angle is not given",
                bears=ASK,
            )
        )
    else:
        other = _angle(second, "second joint", data)
        more, check, notes = _pair(first, other, phasing, one, data)
        figures = [*more, one, *figures]
        checks.append(check)
        cautions += notes
    checks.append(_usual(first, second, speed, data))
    cautions += rule_cautions(data, "universal joints", "cancellation", "phasing") + rule_cautions(
        data, "driveshaft", "travel"
    )
    title = f"universal joint at {_text(first)}" + (f" and {second}" if second is not None else "")
    return Sheet(title, asked, data, figures, checks, cautions)


def _text(figure: Figure) -> str:
    return f"{figure.text or units.significant(figure.typical)} {figure.unit}"


def _swing(
    rule: str, value: float, inputs: tuple[Figure, ...], key: dict[str, str], said: str, data: Refdata
) -> Figure:
    number = units.from_base(value, "%")
    return derived(rule, "speed_swing", number, "%", inputs, data, key=key, conditions=said)


def _angle(typed: str, name: str, data: Refdata) -> Figure:
    figure = stated(read_positive(typed, "angle", name, zero=True), "working_angle", name, data)
    if base(figure) > math.radians(_LARGEST_DEG):
        raise InputError(
            typed, name, "no joint works at this angle", (), "give the angle between the two shafts of the joint"
        )
    return figure


def _pair(
    first: Figure, other: Figure, phasing: str | None, one: Figure, data: Refdata
) -> tuple[list[Figure], Check, list[Caution]]:
    """The pair's swing as phased (both ways when the phasing is not given), and whether the second cancels the first."""
    key = {"first": _text(first), "second": _text(other)}
    said = "two joints in one plane"
    both = (first, other)
    swing = calc.pair_speed_swing(base(first), base(other))
    good = _swing("universal_joint_pair_swing_in_phase", swing, both, key, f"{said}, yokes in phase", data)
    swing = calc.pair_speed_swing_wrong_phase(base(first), base(other))
    out = f"{said}, yokes a quarter turn out of phase"
    bad = _swing("universal_joint_pair_swing_wrong_phase", swing, both, key, out, data)
    name = "second joint cancels the first"
    apart = abs(base(first) - base(other))
    notes = _difference_notes(apart, first, other, data)
    cautions = [
        Caution(
            "Both joints are taken to lie in one plane; a joint out of it leaves more swing.",
            "note",
            (good.id,),
            "common practice",
        ),
        *notes,
    ]
    one_text, good_text, bad_text = (f"{units.significant(f.typical, 3)} %" for f in (one, good, bad))
    ends = f"{good_text} in phase, {bad_text} out of phase, {one_text} of one joint alone"
    if phasing is None:
        return (
            [good, bad],
            Check(name, CANNOT_TELL, f"the phasing of the yokes is not given: {ends}", bears=ASK),
            cautions,
        )
    if phasing == "wrong phase":
        return (
            [bad, good],
            Check(name, NOT_OK, f"the yokes are out of phase: {ends}", None, Bound(bad.typical, "%", "", bad)),
            cautions,
        )
    if apart < 1e-9:
        return (
            [good, bad],
            Check(name, OK, f"equal angles, in phase: {ends}", None, Bound(good.typical, "%", "", good)),
            cautions,
        )
    text = f"the angles differ by {units.significant(math.degrees(apart), 3)} deg: {ends}; no figure for a vehicle says how much is allowed"
    return [good, bad], Check(name, CANNOT_TELL, text, None, Bound(good.typical, "%", "", good), bears=ASK), cautions


def _difference_notes(apart: float, first: Figure, other: Figure, data: Refdata) -> list[Caution]:
    """What a heavy truck manual allows between the two angles: it informs, it does not answer for a vehicle."""
    limit = lookup.look_up_or_none(
        TABLE,
        "angle_difference_maximum",
        data=data,
        joint="universal joint pair",
        case="difference between the operating angles",
        shaft_speed="any",
        service="heavy truck",
    )
    if limit is None:
        return []
    side = "within" if apart <= base(limit) * (1 + 1e-9) else "over"
    differ = (
        f"The angles differ by {units.significant(math.degrees(apart), 3)} deg, {side} the {limit.text} {limit.unit}"
    )
    text = f"{differ} of a heavy truck manual; that figure informs, it is not for this vehicle."
    return [Caution(text, "note", (limit.id, first.id, other.id), f"{limit.source} {limit.locator}")]


def _usual(first: Figure, second: str | None, speed: str | None, data: Refdata) -> Check:
    """The larger working angle against the trade's habit at this driveshaft speed; between its printed speeds linear."""
    name = "working angle at this speed"
    angles = [first] + ([_angle(second, "second joint", data)] if second is not None else [])
    worst = max(angles, key=base)
    degrees = math.degrees(base(worst))
    got = Bound(degrees, "deg", "", worst)
    if speed is None:
        rows = data.table(TABLE).by_quantity["working_angle_maximum"]
        known = [lookup.figure_of(r, data) for r in rows if r["joint"] == "single cardan" and not r.standing]
        highest = max(known, key=base)
        if base(worst) <= base(highest):
            return Check(name, CANNOT_TELL, "the driveshaft's speed is not given", None, got, bears=ASK)
        habit = f"habit at most {units.significant(math.degrees(base(highest)), 3)} deg ({highest.key['shaft_speed']}, common practice, from memory)"
        reason = f"{units.significant(degrees, 3)} deg is over what any speed of the trade's table has: {habit}"
        return Check(name, NOT_OK, reason, Bound(math.degrees(base(highest)), "deg", "max", highest), got)
    turning = stated(read_positive(speed, "rotational speed", "speed"), "driveshaft_speed", "speed", data)
    case = "normal operation, both joints equal"
    try:
        limit = lookup.look_up(
            TABLE, "working_angle_maximum", data=data, joint="single cardan", case=case, shaft_speed=_text(turning)
        )
    except LookupMiss:
        return Check(
            name,
            CANNOT_TELL,
            f"the trade's table has no figure at {_text(turning)}, and it is not extrapolated: ask the maker",
            bears=ASK,
        )
    most = math.degrees(base(limit))
    reason = f"{units.significant(degrees, 3)} deg at {_text(turning)}, habit at most {units.significant(most, 3)} deg (common practice, from memory)"
    return at_most(name, got, Bound(most, "deg", "max", limit), reason)
