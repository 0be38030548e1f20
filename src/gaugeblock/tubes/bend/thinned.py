"""The wall that is left at the outside of a bend, and what it has to be."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, OK, Bound, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import InputError
from gaugeblock.tubes import keys
from gaugeblock.tubes.rules import rules_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

VERB = "OUTER WALL"
_NAME = "outer wall after bending"
# What stands behind it: what it hangs on, and the wall that may have arrived.
_BESIDE = ("centre_line_radius", "outer_fibre_strain", "wall_least")
_AFTER = "Predicted, with the whole stretch taken by the wall: it is hardly thinner than that. Measure the bend."


def outer_wall(sheet: Sheet, least: str | None, data: Refdata) -> Sheet:
    """The Sheet of a bend with its outer wall first, against the ``least`` that is asked for where one is.

    InputError where no radius was given: without one nothing is stretched.
    """
    found = next((f for f in sheet.figures if f.quantity == "outer_wall"), None)
    if found is None:
        raise InputError("outer wall", "radius", "it hangs on the radius of the bend", (), "give the radius of the die")
    figures = [found, *(f for quantity in _BESIDE for f in sheet.figures if f.quantity == quantity)]
    title = f"{found.key['od']} x {found.key['wall']} tube, bent"
    sheet = sheet.replace(title=title, checks=[], questions=[], cautions=rules_of(data, "wall after bending"))
    if least is None:
        return sheet.replace(figures=figures, decision=use(VERB, found, _AFTER))
    needed = stated(keys.size(least, "least_wall", "tube_wall", data), "tube_wall", "least wall", data)
    got, bound = Bound(found.typical, found.unit, figure=found), Bound(needed.typical, needed.unit, "min", needed)
    is_under = base(found) < base(needed) * (1 - 1e-9)
    text = f"{number_only(found, data)} predicted, {number_only(needed, data)} asked for"
    check = Check(_NAME, CANNOT_TELL if is_under else OK, text, bound, got, bears=ASK)
    figures.insert(1, needed)
    do = f"{'Under' if is_under else 'At or over'} the {number_only(needed, data)} that is asked for. {_AFTER}"
    if not is_under:
        return sheet.replace(figures=figures, checks=[check], decision=use(VERB, found, do))
    shown = [Candidate(found, f"predicted; {number_only(needed, data)} is asked for")]
    do = f"Take a heavier wall or a larger radius: this is under the {number_only(needed, data)} that is asked for."
    return sheet.replace(figures=figures, checks=[check], decision=ask(VERB, shown, [_NAME], do))
