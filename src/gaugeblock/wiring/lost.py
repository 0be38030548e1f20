"""The answer ``drop``: the most volts that a wire loses on its way, as warm as it may run."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring.heat import Placed, warmed
from gaugeblock.wiring.keys import all_lost, named
from gaugeblock.wiring.one_wire import WAYS, Told, doubts_of, read_wire, resistance_of, voltage_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "LOSES UP TO"
_READ = {"current": ("current", "circuit_current"), "length": ("length", "wire_length")}


def drop(
    wire: str,
    current: str,
    length: str,
    *,
    voltage: str | None = None,
    insulation: str | None = None,
    air: str | None = None,
    bundle: str | None = None,
    back: str | None = None,
    kind: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The most volts that a copper wire loses between the source and the load, as warm as it may run.

    ``wire`` is ``12 AWG`` or ``4 mm2``, ``current`` that of the load (``25 A``), ``length`` from the source to the
    load, one way (``12 ft``), ``back`` ``wire`` or ``body``: the way back by a wire of the same size is counted, the
    body is not. ``insulation``, ``air``, ``bundle`` and ``kind`` are as for ``circuit``, which counts the same; where
    one was not said the hottest that it may be is taken. ``voltage`` is that of the system.

    Returns a Sheet whose decision is the drop; both where the way back was not said; STOP where the current overheats
    the wire wherever it lies. Raises InputError, UnitError or LookupMiss for what cannot be read. Source: AC 43.13-1B
    Table 11-7 and 11-66d(4), with the resistance of the table of wires.

    >>> sheet = drop("12 AWG", "25 A", "12 ft", insulation="GXL", air="60 degC", bundle="1", back="body")
    >>> round(sheet.decision.figure.typical, 2)
    0.76
    """
    data = data or refdata()
    asked = {
        "wire": wire,
        "current": current,
        "length": length,
        "voltage": voltage,
        "insulation": insulation,
        "air": air,
        "bundle": bundle,
        "return": back,
        "kind": kind,
    }
    size, way, read = read_wire(asked, _READ)
    volts, placed = voltage_of(asked), Placed(asked, data)
    title = f"{named(size)} wire, {read['current'].text} over {read['length'].text}"
    doubts = doubts_of(size, read, _READ, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    given = [stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items()]
    warm = warmed(size, cold, given[0], placed, data)
    lost = {k: _lost(k, warm.resistance, given, data) for k in ([way] if way else WAYS)}
    told = Told(title, asked, VERB, warm, data)
    rest = [*given, cold]
    if warm.check is not None and warm.check.stops:
        return told.stopped(warm.check, [*rest, warm.temperature, *warm.figures])
    doubt = all_lost(min(map(base, lost.values())), volts)
    if doubt:
        return questioned(title, asked, {"length": doubt}, VERB, data, rest)
    return told.by_way(lost, rest, "")


def _lost(way: str, resistance: Figure, given: list[Figure], data: Refdata) -> Figure:
    current, length = given
    pair = way == "wire"
    number = calc.voltage_drop(base(resistance), base(length), base(current), 2 if pair else 1)
    rule = "voltage_drop_two_wire" if pair else "voltage_drop_single_run"
    key = {**resistance.key, "return": WAYS[way]}
    inputs = (length, resistance, current)
    volts = units.from_base(number, "V")
    return derived(rule, "voltage_drop", volts, "V", inputs, data, key=key, conditions=key["size"])
