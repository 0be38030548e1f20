"""The answer ``drop``: the volts that a wire loses on its way."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import parse_measure
from gaugeblock.wiring import conductor
from gaugeblock.wiring.keys import back_of, named, wire_of
from gaugeblock.wiring.size import listed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

VERB = "LOSES UP TO"
BACK = "way back"
# What is typed -> dimension and quantity.
_READ = {"current": ("current", "circuit_current"), "length": ("length", "wire_length")}
WARM = "A wire that is 60 degC (140 degF) warm loses a sixth more. Joints and switches come to it."
COUNTED = {"wire": "the way there and back", "body": "the way there alone"}
WAYS = {"wire": "back by a wire of the same size", "body": "back through the body"}


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
    size = wire_of(wire)
    if size is None:
        raise InputError(wire, "wire", "no wire", (), "write it as 12 AWG or 4 mm2")
    way = back_of(back)
    read = {key: parse_measure(str(asked[key]), dimension, key) for key, (dimension, _) in _READ.items()}
    for key, measure in read.items():
        if measure.value <= 0:
            raise InputError(measure.text, key, "not over zero", (), "give what there is")
    title = f"{named(size)} wire, {read['current'].text} over {read['length'].text}"
    doubts = _doubts(size, read, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    held = cold.key["size"]
    given = [stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items()]
    lost = {k: _lost(k, held, cold, given, data) for k in ([way] if way else list(WAYS))}
    figures = [*lost.values(), *given, cold]
    if way:
        decision = use(VERB, lost[way], f"{WAYS[way][0].upper()}{WAYS[way][1:]}. {WARM}")
        return Sheet(title, asked, data, figures, [], [], decision=decision)
    text = "How does the current come back: by a wire of the same size, or through the body?"
    check = Check(BACK, CANNOT_TELL, "not given: the way back", subject="return", bears=ASK)
    candidates = [Candidate(figure, WAYS[k], COUNTED[k]) for k, figure in lost.items()]
    decision = ask(VERB, candidates, (BACK,), f"Say how the current comes back. {WARM}")
    question = Question(FILL_IN, text, "return", (BACK,))
    return Sheet(title, asked, data, figures, [check], [], decision=decision, questions=[question])


def resistance_of(wire: Measure, data: Refdata) -> Figure:
    """That of a gauge, of a metric size, or of the next one down; LookupMiss for what no table has."""
    try:
        _, cell = listed(wire, data)
    except LookupMiss:
        small = conductor.metric_within(wire, data)
        if small is None:
            raise
        return small
    return conductor.cold_resistance_of(wire, cell, data)


def _doubts(size: Measure, read: dict[str, Measure], data: Refdata) -> dict[str, str]:
    every = {key: (measure, _READ[key][1]) for key, measure in read.items()}
    every["wire"] = (size, "wire_gauge" if size.unit == "AWG" else "conductor_area")
    return {
        key: did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
        for key, (measure, quantity) in every.items()
        if not is_plausible(measure, quantity, data)
    }


def _lost(way: str, cell: str, cold: Figure, given: list[Figure], data: Refdata) -> Figure:
    current, length = given
    pair = way == "wire"
    number = calc.voltage_drop(base(cold), base(length), base(current), 2 if pair else 1)
    rule = "voltage_drop_two_wire" if pair else "voltage_drop_single_run"
    key = {"size": cell, "return": WAYS[way]}
    inputs = (length, cold, current)
    volts = units.from_base(number, "V")
    return derived(rule, "voltage_drop", volts, "V", inputs, data, key=key, conditions=f"{cell} at 20 degC")
