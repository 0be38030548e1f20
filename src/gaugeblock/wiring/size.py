"""The answer ``wire_size``: a gauge number as copper, or the gauge of a metric wire."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring import checks, conductor
from gaugeblock.wiring.keys import named, wire_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

_SAE = "A cable sold by an SAE number holds 3 to 12 % less copper than AWG of that number."


def wire_size(wire: str, *, data: Refdata | None = None) -> Sheet:
    """A gauge number as the copper that it holds, or the gauge of a metric wire.

    ``wire`` is ``10 AWG``, ``2/0``, ``6 mm2`` or ``10500 cmil``.

    Returns a Sheet: of a gauge its area, and the least metric wire that replaces it; of an area the gauge that has no
    more copper. Raises InputError, UnitError or LookupMiss for what is no wire of the tables.

    >>> wire_size("2.5 mm2").decision.figure.text
    '14'
    """
    data = data or refdata()
    asked = {"wire": wire}
    size = wire_of(wire)
    if size is None:
        raise InputError(wire, "wire", "no wire", (), "write it as 10 AWG or 6 mm2")
    quantity = "wire_gauge" if size.unit == "AWG" else "conductor_area"
    if not is_plausible(size, quantity, data):
        said = did_you_mean(f"{named(size)} is no usual wire of a car", ())
        check = Check("wire as typed", CANNOT_TELL, said, subject="wire", bears=ASK)
        question = Question(FILL_IN, said, "wire", (check.name,))
        return Sheet(f"wire {wire}", asked, data, [], [check], [], decision=none("WIRE", said), questions=[question])
    gauge, cell = listed(size, data)
    cold = conductor.cold_resistance(cell, data)
    if size.unit == "AWG":
        title = f"{named(size)} wire: {conductor.area_text(cell)} of copper"
        metric = conductor.metric_of(cell, data)
        replaced = f"{metric} is the least metric wire that replaces it. " if metric else ""
        area = conductor.area_by_standard(gauge, data)
        decision = use("", area, f"{replaced}{_SAE}")
        return Sheet(title, asked, data, [area, gauge, cold], [], [], decision=decision)
    title = f"{named(size)} wire as a gauge"
    given = stated(size, "conductor_area", "wire", data)
    do = f"The gauge that has no more copper: {conductor.area_text(cell)}. It never carries more than that."
    area = conductor.area_of(cell, data)
    return Sheet(title, asked, data, [gauge, area, given, cold], [], [], decision=use("GAUGE", gauge, do))


def listed(size: Measure, data: Refdata) -> tuple[Figure, str]:
    """The gauge of a wire, and the size of the tables that it is or has no less copper than; LookupMiss for a gauge
    number that the tables do not have.
    """
    gauge = checks.there(size, data)
    cell = conductor.size_of(gauge)
    if size.unit == "AWG" and conductor.number_of(cell) != gauge.typical:
        near = sorted(conductor.SIZES, key=lambda s: abs(conductor.number_of(s) - gauge.typical))[:2]
        raise LookupMiss(size.text, "wire", "not a size of the tables", near, "use one of these, or its maker's sheet")
    return gauge, cell
