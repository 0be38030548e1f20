"""The answer ``fuel_test``: how a fuel system is tested for leaks, and how long the pressure stands."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.fuel.demand import SUPPLY
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

NAME = "test pressure and time"
_DO = (
    "Ask the maker of the pump or the engine what pressure the line must hold, and for how long. With the pump running"
    " and the engine off look at every joint, dry, then again hot."
)
_ASK = "What pressure must the line hold after the pump stops, and for how many minutes?"
FUME = "Fumes in a tank burn: never test a tank that has held fuel with air, a lamp or a flame near it."


def fuel_test(*, data: Refdata | None = None) -> Sheet:
    """How a fuel system is tested for leaks, and how long the pressure stands.

    Returns a Sheet without a figure to use: for cars no rule was found; what a boat rule and one vehicle's manual say
    stands beside it, and informs. Raises DataError where the tables are damaged.

    >>> fuel_test().decision.kind
    'none'
    """
    data = data or refdata()
    boats = {"jurisdiction": "US federal", "subject": "fuel system pressure test, boats", "service": "marine"}
    pressure = look_up("lines/limits", "test_pressure_minimum", data=data, **boats)
    time = look_up("lines/limits", "hold_time", data=data, **boats)
    drop = look_up(
        SUPPLY,
        "fuel_pressure_drop_maximum",
        data=data,
        subject="injected four",
        case="stopped 5 min",
        service="one vehicle",
    )
    marine = (
        f"boats: the system stands {number_only(pressure, data)} of air or inert gas for {number_only(time, data)}"
        " without a drop; or half as much again as it has when it is full, if that is more"
    )
    one = f"one injected car: no more than {number_only(drop, data)} lost in 5 min after the stop"
    checks = [
        Check(NAME, CANNOT_TELL, "no rule for cars was found", bears=INFORM),
        Check("boats", CANNOT_TELL, marine, subject="marine", bears=INFORM),
        Check("one car", CANNOT_TELL, one, subject="one vehicle", bears=INFORM),
    ]
    questions = [Question(ASK_MAKER, _ASK, "pressure", (NAME,))]
    cautions = [Caution(FUME, "injury")]
    decision = none("HOLD", f"{_DO} For {marine}.")
    return Sheet(
        "fuel leak test", {}, data, [pressure, time, drop], checks, cautions, decision=decision, questions=questions
    )
