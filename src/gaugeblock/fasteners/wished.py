"""A torque that somebody wants for a part, or has in mind, beside the one that is on record for it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.fasteners.open_keys import LIMITS
from gaugeblock.fasteners.way import Way, exact_way, safer_first, table_way

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.figure import Figure

BESIDE = "wanted torque beside the table"
_WRENCH = 0.1  # of what is on record: so far off a wrench may be anyway
_ROUNDED = 0.01  # of it: another unit, or a number that was rounded


def wished_ways(want: Figure, rows: Sequence[Figure], is_confirmed: bool, draft: Draft) -> list[Way]:
    """The torque that is wanted; where it is over or under what is on record, that first or it, by what the part's
    maker says. ``rows`` are what the tables have of the part, for each value of what is left open of it.
    """
    torques = [row for row in rows if units.dimension(row.unit) == "torque"]
    if not torques or is_confirmed or units.dimension(want.unit) != "torque":
        return [exact_way(want)]
    nm = units.to_base(want.typical, want.unit)
    offs = {_off(nm, row, _ROUNDED if row.side == "max" else _WRENCH) for row in torques}  # a ceiling is not passed
    said = offs.pop() if len(offs) == 1 else ""
    row = (max if said == "over" else min)(torques, key=lambda one: units.to_base(one.typical, one.unit))
    if not said:
        then = f"on record: {printed(row, draft.data)}" if len(torques) == 1 else ""
        return [exact_way(want, then=then)]
    text = f"{printed(want, draft.data)} is {said} the {_in(want.unit, row)} that is on record for it"
    draft.figure(row)
    draft.check(Check(BESIDE, CANNOT_TELL, text, bears=ASK))
    draft.ask(Question(ASK_MAKER, f"Ask the part's maker: {text}.", "maker.torque", (BESIDE,)))
    other = table_way(row, draft.data, "the part's maker says nothing else", LIMITS.get(row.quantity, ""))
    return safer_first([other, exact_way(want, "the part's maker says so")])


def beside(in_mind: str, sheet: Sheet) -> Sheet:
    """The Sheet of a part, with how a torque that somebody has in mind lies beside what is on record: it is no figure,
    and never the one to set.
    """
    number, _, unit = in_mind.partition(" ")
    in_mind = in_mind.replace("*", "\u00b7")
    nm = units.to_base(float(units.parse_number(number)), unit)
    decision = sheet.decision
    rows = [one for one in decision.figures if units.dimension(one.unit) == "torque"]
    offs = {_off(nm, row, _ROUNDED) for row in rows}
    if not rows:
        said = f"Nothing is on record that {in_mind} could be held against."
    elif len(offs) > 1:
        said = f"Whether {in_mind} is right hangs on which of these it is."
    else:
        off = offs.pop()
        said = f"{in_mind} is {off} what is on record." if off else f"{in_mind} lies in what is on record."
    return sheet.replace(decision=decision.replace(do=f"{decision.do} {said}".strip()))


def _in(unit: str, row: Figure) -> str:
    """What is on record, in the unit of what is wanted."""
    own = [end for end in (row.low, row.high) if row.value is None and end is not None] or [row.typical]
    told = [units.significant(units.from_base(units.to_base(end, row.unit), unit), 3) for end in own]
    return f"{' to '.join(told)} {unit}".replace("*", "\u00b7")


def _off(nm: float, row: Figure, share: float) -> str:
    """``over`` or ``under`` what is on record by more than a share of it; blank where it is neither."""
    ends = [units.to_base(end, row.unit) for end in (row.value, row.low, row.high) if end is not None]
    if nm > (1 + share) * max(ends) and row.side != "min":
        return "over"
    return "under" if nm < (1 - share) * min(ends) and row.side != "max" else ""
