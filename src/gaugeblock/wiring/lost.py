"""The answer ``drop``: the volts that a wire loses on its way."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring.keys import named
from gaugeblock.wiring.one_wire import WAYS, by_way, doubts_of, read_wire, resistance_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "LOSES UP TO"
_READ = {"current": ("current", "circuit_current"), "length": ("length", "wire_length")}


def drop(wire: str, current: str, length: str, *, back: str | None = None, data: Refdata | None = None) -> Sheet:
    """The volts that a copper wire loses between the source and the load, at 20 degC.

    ``wire`` is ``12 AWG`` or ``4 mm2``, ``current`` that of the load (``25 A``), ``length`` from the source to the
    load, one way (``12 ft``), ``back`` ``wire`` or ``body``: the way back by a wire of the same size is counted, the
    body is not.

    Returns a Sheet whose decision is the drop; both where the way back was not said. Raises InputError, UnitError or
    LookupMiss for what cannot be read. Source: AC 43.13-1B Table 11-7, with the resistance of the table of wires.

    >>> round(drop("12 AWG", "25 A", "12 ft", back="body").decision.figure.typical, 2)
    0.61
    """
    data = data or refdata()
    asked = {"wire": wire, "current": current, "length": length, "return": back}
    size, way, read = read_wire(asked, _READ)
    title = f"{named(size)} wire, {read['current'].text} over {read['length'].text}"
    doubts = doubts_of(size, read, _READ, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    given = [stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items()]
    lost = {k: _lost(k, cold.key["size"], cold, given, data) for k in ([way] if way else WAYS)}
    return by_way(lost, [*given, cold], VERB, "", title, asked, data)


def _lost(way: str, cell: str, cold: Figure, given: list[Figure], data: Refdata) -> Figure:
    current, length = given
    pair = way == "wire"
    number = calc.voltage_drop(base(cold), base(length), base(current), 2 if pair else 1)
    rule = "voltage_drop_two_wire" if pair else "voltage_drop_single_run"
    key = {"size": cell, "return": WAYS[way]}
    inputs = (length, cold, current)
    volts = units.from_base(number, "V")
    return derived(rule, "voltage_drop", volts, "V", inputs, data, key=key, conditions=f"{cell} at 20 degC")
