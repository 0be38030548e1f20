"""The answer ``jointlimit``: the greatest usual working angle of a universal joint at a driveshaft's speed."""

from __future__ import annotations

from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.joints.checks import TABLE, limit_at
from gaugeblock.driveline.joints.working import text_of
from gaugeblock.errors import LookupMiss
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

VERB = "KEEP UNDER"
_NOT_PRINTED = "The trade's table stops at a slower speed than this. Ask the joint's maker."


def joint_limit(speed: str, *, data: Refdata | None = None) -> Sheet:
    """The greatest usual working angle of each of two equal universal joints at a driveshaft's ``speed``.

    ``speed`` is that of the driveshaft at the top speed of the vehicle (``3000 rpm``). Between the speeds that are
    printed the angle is linear; under the slowest it is the slowest one's.

    Returns a Sheet whose decision is that angle; over the fastest speed that is printed it has no figure, and the
    joint's maker is asked. Raises InputError or UnitError for what cannot be read. Source: the trade's table of working
    angles by speed, ``driveline/joints``.

    >>> joint_limit("5000 rpm").decision.figure.unit
    'deg'
    """
    data = data or refdata()
    turning = read_positive(speed, "rotational speed", "speed")
    title = f"universal joint at {turning.text}"
    asked: dict[str, str | None] = {"speed": speed}
    if not is_plausible(turning, "driveshaft_speed", data):
        doubt = did_you_mean(f"{turning.text} is no usual speed of a driveshaft", ())
        return questioned(title, asked, {"speed": doubt}, VERB, data)
    given = stated(turning, "driveshaft_speed", "speed", data)
    try:
        limit = limit_at(given, data)
    except LookupMiss:  # over the speeds that are printed
        question = Question(ASK_MAKER, f"What angle does the joint's maker allow at {turning.text}?", "maker")
        return Sheet(title, asked, data, [], [], [], decision=none(VERB, _NOT_PRINTED), questions=[question])
    smooth = look_up(TABLE, "working_angle_maximum", data=data, joint="single cardan", case="smooth running")
    least = look_up(TABLE, "working_angle_minimum", data=data, joint="single cardan", case="each end of a shaft")
    do = f"Of each of two joints, with equal angles and the yokes in line. {text_of(smooth)} runs smooth; under "
    do += f"{text_of(least)} the needles do not roll."
    return Sheet(title, asked, data, [limit, given, smooth, least], [], [], decision=use(VERB, limit, do))
