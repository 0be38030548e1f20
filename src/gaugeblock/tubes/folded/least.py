"""The least inside radius of a bend in sheet, by its metal, temper and thickness."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, none, use
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous
from gaugeblock.tubes.folded.stock import least_ratio_or_refusal
from gaugeblock.tubes.rules import rules_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.folded.stock import SheetStock

VERB = "LEAST INSIDE RADIUS"


def thickness_doubt(wall: Figure, data: Refdata) -> dict[str, str]:
    """That a thickness is none of a sheet, by its key; empty where it is one."""
    low, high = plausible_range("wall_thickness", data) or (0.0, 1.0)
    if low * (1 - 1e-9) <= base(wall) <= high * (1 + 1e-9):
        return {}
    return {"thickness": did_you_mean(f"{wall.text} {wall.unit} is no usual thickness of sheet", ())}


def least(stock: SheetStock | None, wall: Figure, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of the least inside radius that a sheet takes."""
    if stock is None:
        why = "the least radius hangs on the metal and its temper"
        near = ("mild steel", "304 stainless", "5052-H32", "6061-T6")
        raise Ambiguous(asked["thickness"] or "", "material", why, near, "name the metal")
    thick = f"{wall.text} {wall.unit}"
    title = f"least inside radius of {stock.label}, {asked['thickness']}"
    if doubt := thickness_doubt(wall, data):
        return questioned(title, asked, doubt, "", data, [wall])
    ratio = least_ratio_or_refusal(stock, wall, data)
    if ratio is None:
        do = f"No least radius of {stock.label} {thick} thick is on record: ask who sells it, or bend a strip."
        return Sheet(title, asked, data, [wall], [], [], decision=none(VERB, do))
    inputs, key = (ratio, wall), {"thickness": thick, "material": stock.label}
    number = ratio.typical * wall.typical
    made = derived("sheet_radius_of_ratio", "sheet_bend_radius_minimum", number, wall.unit, inputs, data, key=key)
    cautions = rules_of(data, "bend line and grain")
    figures = [made, ratio, wall]
    do = f"{ratio.text} times the thickness. A tighter bend may crack on its outside: bend a test piece first."
    if not number:
        do = "The table lets it be bent sharp, on no radius at all."
    if ratio.basis != "common practice":
        do += _lower(ratio, wall)
        return Sheet(title, asked, data, figures, [], cautions, decision=use(VERB, made, do))
    reason = "that least radius is a habit, and no table of it is on record"
    check = Check("least radius", CANNOT_TELL, reason, bears=ASK)
    say = "Does a test piece of this sheet bend on that radius without a crack?"
    question = Question(FILL_IN, say, "radius", (check.name,))
    candidate = Candidate(made, "a test piece bends without a crack", "the bend holds")
    decision = ask(VERB, [candidate], (check.name,), do)
    return Sheet(title, asked, data, figures, [check], cautions, decision=decision, questions=[question])


def _lower(ratio: Figure, wall: Figure) -> str:
    """What another table allows, where it differs, as a sentence."""
    other = next((o for o in ratio.others if o.typical != ratio.typical), None)
    if other is None:
        return ""
    least = units.significant(other.typical * wall.typical, 3)
    return f" Another table has {other.text} times, {least} {wall.unit}."
