"""The least torque that a table prints for a bolt, and whether a torque keeps it."""

from __future__ import annotations

from gaugeblock import units
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


def check_least(least: Figure, main: Figure, whose: str, bolt: Bolt, found: Joint, draft: Draft) -> None:
    """Whether the torque is over the least one printed. It is for a bolt with its nut, so not into a softer metal;
    the part maker's figure stands without it, and a bolt whose friction or strength is stated has another.
    """
    if whose == clamp.MAKER or bolt.tapped.metal or found.is_own:
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
