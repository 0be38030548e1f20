"""The answer ``reach``: how far a wire may run before it loses so many volts."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import significant_by_side
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import parse_measure
from gaugeblock.wiring.keys import back_of, named, wire_of
from gaugeblock.wiring.lost import BACK, COUNTED, WARM, WAYS, resistance_of

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
    size = wire_of(wire)
    if size is None:
        raise InputError(wire, "wire", "no wire", (), "write it as 12 AWG or 4 mm2")
    way = back_of(back)
    read = {key: parse_measure(str(asked[key]), dimension, key) for key, (dimension, _) in _READ.items()}
    for key, measure in read.items():
        if measure.value <= 0:
            raise InputError(measure.text, key, "not over zero", (), "give what there is")
    title = f"{named(size)} wire, {read['current'].text}, to lose {read['drop'].text}"
    every = {**{key: (m, _READ[key][1]) for key, m in read.items()}}
    every["wire"] = (size, "wire_gauge" if size.unit == "AWG" else "conductor_area")
    doubts = {
        key: did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
        for key, (measure, quantity) in every.items()
        if not is_plausible(measure, quantity, data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    cold = resistance_of(size, data)
    given = [stated(read[key], quantity, key, data) for key, (_, quantity) in _READ.items()]
    unit = "ft" if size.unit == "AWG" else "m"
    found = {}
    for one in [way] if way else list(WAYS):
        metres = calc.reach(base(given[1]), base(cold), base(given[0]), 2 if one == "wire" else 1)
        number = units.from_base(metres, unit)
        rule = "reach_two_wire" if one == "wire" else "reach_single_run"
        at = {"size": cold.key["size"], "return": WAYS[one]}
        text = significant_by_side(number, "max", 3)
        inputs = [given[1], cold, given[0]]
        found[one] = derived(rule, "wire_length_maximum", number, unit, inputs, data, key=at, text=text)
    figures = [*found.values(), *given, cold]
    if way:
        do = f"From the source to the load. {WAYS[way][0].upper()}{WAYS[way][1:]}. {WARM}"
        return Sheet(title, asked, data, figures, [], [], decision=use(VERB, found[way], do))
    text = "How does the current come back: by a wire of the same size, or through the body?"
    check = Check(BACK, CANNOT_TELL, "not given: the way back", subject="return", bears=ASK)
    candidates = [Candidate(found[k], WAYS[k], COUNTED[k]) for k in WAYS]
    decision = ask(VERB, candidates, (BACK,), f"Say how the current comes back. {WARM}")
    question = Question(FILL_IN, text, "return", (BACK,))
    return Sheet(title, asked, data, figures, [check], [], decision=decision, questions=[question])
