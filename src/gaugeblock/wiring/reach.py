"""The answer ``reach``: how far a wire may run before it loses so many volts."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.printing import significant_by_side
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring.heat import Placed, greatest, warmed
from gaugeblock.wiring.keys import named, too_great
from gaugeblock.wiring.one_wire import WAYS, Told, doubts_of, read_wire, resistance_of, voltage_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "REACHES"
_READ = {"current": ("current", "circuit_current"), "drop": ("voltage", "voltage_drop")}


def reach(
    wire: str,
    current: str,
    drop: str,
    *,
    voltage: str | None = None,
    insulation: str | None = None,
    air: str | None = None,
    bundle: str | None = None,
    back: str | None = None,
    kind: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How far a copper wire may run, from the source to the load, before it loses so many volts, as warm as it may run.

    ``wire`` is ``12 AWG`` or ``4 mm2``, ``current`` that of the load (``20 A``), ``drop`` what may be lost (``0.5 V``);
    ``back`` ``wire`` or ``body``: a way back by a wire of the same size halves the reach. ``insulation``, ``air``,
    ``bundle``, ``kind`` and ``voltage`` are as for ``drop``.

    Returns a Sheet whose decision is the length one way; both where the way back was not said; STOP where the current
    overheats the wire wherever it lies. Raises InputError, UnitError or LookupMiss for what cannot be read. Source: as
    ``drop``, turned round.

    >>> sheet = reach("4 mm2", "20 A", "0.5 V", insulation="GXL", air="60 degC", bundle="1", back="body")
    >>> round(sheet.decision.figure.typical, 2)
    4.04
    """
    data = data or refdata()
    asked = {
        "wire": wire,
        "current": current,
        "drop": drop,
        "voltage": voltage,
        "insulation": insulation,
        "air": air,
        "bundle": bundle,
        "return": back,
        "kind": kind,
    }
    size, way, read = read_wire(asked, _READ)
    system, placed = voltage_of(asked), Placed(asked, data)
    title = f"{named(size)} wire, {read['current'].text}, to lose {read['drop'].text}"
    doubts = doubts_of(size, read, _READ, data)
    if "drop" not in doubts and (doubt := too_great(read["drop"], system, data)):
        doubts["drop"] = doubt
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    amps, volts = (stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items())
    warm = warmed(size, cold, amps, placed, data)
    unit = "ft" if size.unit == "AWG" else "m"
    rest = (volts, greatest(cold, warm, data), amps)
    found = {one: _reached(one, rest, unit, data) for one in ([way] if way else WAYS)}
    told = Told(title, asked, VERB, warm, data)
    if warm.check is not None and warm.check.stops:
        return told.stopped(warm.check, [amps, volts, cold, warm.temperature, *warm.figures])
    return told.by_way(found, [amps, volts, cold], "From the source to the load. ")


def _reached(way: str, inputs: tuple[Figure, Figure, Figure], unit: str, data: Refdata) -> Figure:
    volts, resistance, amps = inputs
    metres = calc.reach(base(volts), base(resistance), base(amps), 2 if way == "wire" else 1)
    number = units.from_base(metres, unit)
    rule = "reach_two_wire" if way == "wire" else "reach_single_run"
    at = {**resistance.key, "return": WAYS[way]}
    text = significant_by_side(number, "max", 3)
    return derived(rule, "wire_length_maximum", number, unit, inputs, data, key=at, text=text)
