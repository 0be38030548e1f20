"""Burst: the inside pressure at which the wall of a tube reaches the tensile strength that its metal guarantees."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.line_parts import pressure_of_wall
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.tubes import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

VERB = "BURSTS AT"
_THIN = 20  # diameters of a wall
_TOLD = "Of a straight, sound tube when it is cold, by its least tensile strength. Flares and fittings give way sooner."
_NO_WORKING = "This is where the tube bursts, and no working pressure: divide it by the factor that you keep."


def burst(strength: Sheet, od: str | None, wall: str | None, data: Refdata) -> Sheet:
    """As ``material``, whose Sheet ``strength`` is, with the pressure at which a wall bursts; none without a strength.

    Raises Ambiguous where the diameter or the wall was not given, InputError for a wall that does not fit. Source: the
    hoop stress of a thin wall.
    """
    if od is None or wall is None:
        raise Ambiguous(strength.title, "od", "a burst pressure hangs on diameter and wall", (), "give --od and --wall")
    across, thick = keys.outside_diameter(od, data), keys.length(wall, "wall")
    outside, inside = (
        stated(measure, quantity, key, data)
        for measure, quantity, key in ((across, "tube_od", "od"), (thick, "tube_wall", "wall"))
    )
    if not 0 < 2 * base(inside) < base(outside):
        raise InputError(wall, "wall", f"it does not fit inside {od}", (), "measure both again")
    title = f"{strength.title}, {across.text} x {thick.text}"
    asked = {**strength.asked, "od": od, "wall": wall, "fact": "burst"}
    tensile = next((f for f in strength.figures if f.quantity == "tensile_strength"), None)
    if tensile is None:
        do = "No tensile strength of this tube is on record: its maker has it, and its working pressure."
        return Sheet(title, asked, data, [outside, inside], [], strength.cautions, decision=none(VERB, do))
    unit = "psi" if tensile.unit in ("psi", "ksi") else "bar"
    pascals = pressure_of_wall(units.to_base(tensile.least, tensile.unit), base(inside), base(outside))
    number = units.from_base(pascals, unit)
    made = derived("thin_wall_burst", "pressure_at_stress", number, unit, (tensile, inside, outside), data, about=title)
    cautions = [Caution(_NO_WORKING, "injury", (made.id,)), *strength.cautions]
    if _THIN * base(inside) > base(outside):
        text = "The wall is over a twentieth of the diameter: the rule is of thin walls, and gives a mean stress here."
        cautions.insert(0, Caution(text, "note"))
    return Sheet(title, asked, data, [made, tensile, outside, inside], [], cautions, decision=use(VERB, made, _TOLD))
