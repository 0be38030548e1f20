"""The least torque that a table prints for a bolt, and whether a torque keeps it."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, INFORM, Bound, at_least
from gaugeblock.answer.making import base
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.fasteners import clamp
from gaugeblock.fasteners.draft import LEAST

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.fasteners.joint import Joint
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


def least_of(found: Joint, data: Refdata) -> Figure | None:
    """The least torque of a table for this thread, grade and condition; None where none is printed."""
    key = found.key
    if not key["standard"] or not key["condition"]:
        return None
    at = {name: key[name] for name in ("thread", "standard", "grade", "condition", "service")}
    return lookup.look_up_or_none("fasteners/torques", "tightening_torque_minimum", data=data, **at)


def check_least(main: Figure, whose: str, bolt: Bolt, found: Joint, draft: Draft) -> None:
    """Whether the torque is over the least one printed. It is for a bolt with its nut, so not into a softer metal;
    the part maker's figure stands without it, and a bolt whose friction or strength is stated has another.
    """
    if whose == clamp.MAKER or bolt.tapped.metal or found.is_own:
        return
    least = least_of(found, draft.data)
    if least is None:
        return
    draft.figure(least)
    required = Bound(units.from_base(base(least), main.unit), main.unit, "min", least)
    reason = f"one maker's table prints {number_only(least, draft.data)} as the least for this bolt with its nut"
    bears = ASK if whose in (clamp.WANTED, clamp.GIVEN) else INFORM
    check = at_least(LEAST, Bound(main.typical, main.unit, figure=main), required, reason, bears=bears)
    draft.check(check)
    if check.asks:
        text = "Ask the bolt's maker whether so little torque holds this joint."
        draft.ask(Question(ASK_MAKER, text, "maker.torque", (LEAST,)))
