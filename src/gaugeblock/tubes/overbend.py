"""Overbend: how far to pull a bend so that it is right when the tool lets go, by one test bend."""

from __future__ import annotations

from math import radians

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import derived, read_positive, stated
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.stick import set_angle_in_proportion
from gaugeblock.errors import InputError
from gaugeblock.job.form import trial_bend
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes.doubt import sprung_wrongly

_MOST = 180  # degrees: no bender pulls further
_NEAR = 0.5
FIRST = "Make the first bend a trial: pull it, let go, and measure it."


def overbend(angle: str, test: str, *, data: Refdata | None = None) -> Sheet:
    """The angle to pull for a bend, by one test bend of the same stock on the same die.

    ``angle`` of the finished bend, over 0 to 180 deg (``45 deg``); ``test`` what was pulled and what it was when let
    go (``90 deg set, 87 deg got``).

    Returns a Sheet whose decision is the angle to pull; it asks where the test bend is not plausible. Raises InputError
    or UnitError for what cannot be read. Source of the relation: KALP, springback section: the ratio of the radii
    before and after is the same for every angle of one die.

    >>> round(overbend("45 deg", "90 deg set, 87 deg got").decision.figure.typical, 2)
    46.55
    """
    data = data or refdata()
    asked = {"angle": angle, "test": test}
    parts = trial_bend(test, "test")
    wanted = read_positive(angle, "angle", "angle")
    put, got = (read_positive(parts[name], "angle", "test") for name in ("pulled", "released"))
    title = f"bend of {wanted.text}, by a test bend of {put.text} that came to {got.text}"
    if wanted.to("deg") > _MOST:
        raise InputError(wanted.text, "angle", "a bend is over 0 to 180 deg", (), "give the angle of the finished bend")
    why = sprung_wrongly(put, got)
    if why:
        reason = f"{why}: pulled to {put.text} it came to {got.text}"
        check = Check("test as typed", CANNOT_TELL, reason, subject="test", bears=INFORM)
        say = (
            f"{reason[0].upper()}{reason[1:]}. Measure the test bend again: what it was pulled to, and what it is now."
        )
        question = Question(FILL_IN, say, "test", ("test as typed",))
        return Sheet(title, asked, data, [], [check], (), decision=none("", say), questions=[question])
    given = (
        stated(wanted, "bend_angle", "angle", data),
        stated(put, "bend_angle_set", "test", data),
        stated(got, "bend_angle_got", "test", data),
    )
    tested = radians(put.to("deg")), radians(got.to("deg"))
    exact = units.from_base(set_angle_in_proportion(radians(wanted.to("deg")), tested), "deg")
    conditions = "in proportion from one test bend of the same stock on the same die"
    key = {"angle": wanted.text, "test": test}
    made = derived(
        "angle_set_in_proportion", "bend_angle_set", exact, "deg", given, data, key=key, conditions=conditions
    )
    is_near = _NEAR * put.to("deg") <= wanted.to("deg") <= put.to("deg") / _NEAR
    do = FIRST if is_near else f"The test bend was of a very different angle. {FIRST}"
    return Sheet(title, asked, data, [made, *given], [], (), decision=use("PULL TO", made, do))
