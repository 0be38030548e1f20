"""The answer ``reach``: how far a wire may run before it loses so many volts."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.printing import significant_by_side
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring.keys import named
from gaugeblock.wiring.one_wire import WAYS, by_way, doubts_of, read_wire, resistance_of

VERB = "REACHES"
_READ = {"current": ("current", "circuit_current"), "drop": ("voltage", "voltage_drop")}


def reach(wire: str, current: str, drop: str, *, back: str | None = None, data: Refdata | None = None) -> Sheet:
    """How far a copper wire may run, from the source to the load, before it loses so many volts, at 20 degC.

    ``wire`` is ``12 AWG`` or ``4 mm2``, ``current`` that of the load (``20 A``), ``drop`` what may be lost (``0.5 V``);
    ``back`` ``wire`` or ``body``: a way back by a wire of the same size halves the reach.

    Returns a Sheet whose decision is the length one way; both where the way back was not said. Raises InputError,
    UnitError or LookupMiss for what cannot be read. Source: as ``drop``, turned round.

    >>> round(reach("4 mm2", "20 A", "0.5 V", back="body").decision.figure.typical, 2)
    4.91
    """
    data = data or refdata()
    asked = {"wire": wire, "current": current, "drop": drop, "return": back}
    size, way, read = read_wire(asked, _READ)
    title = f"{named(size)} wire, {read['current'].text}, to lose {read['drop'].text}"
    doubts = doubts_of(size, read, _READ, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    amps, volts = (stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items())
    unit = "ft" if size.unit == "AWG" else "m"
    found = {}
    for one in [way] if way else WAYS:
        metres = calc.reach(base(volts), base(cold), base(amps), 2 if one == "wire" else 1)
        number = units.from_base(metres, unit)
        rule = "reach_two_wire" if one == "wire" else "reach_single_run"
        at = {"size": cold.key["size"], "return": WAYS[one]}
        text = significant_by_side(number, "max", 3)
        found[one] = derived(rule, "wire_length_maximum", number, unit, [volts, cold, amps], data, key=at, text=text)
    return by_way(found, [amps, volts, cold], VERB, "From the source to the load. ", title, asked, data)
