"""The inputs of the estimate that there are: what was given, and what the tables have where nobody gave it."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import LookupMiss
from gaugeblock.lines.found import Found
from gaugeblock.tables.load import canonical
from gaugeblock.warmth.emissivity import emissivity
from gaugeblock.warmth.estimate import FLOW, Beside

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.judged import Judged
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata

# name of an input -> key of the line
_MEASURES = {
    "hot temperature": "hot_temperature",
    "hot diameter": "hot_od",
    "line diameter": "od",
    "gap": "gap",
    "sleeve": "sleeve",
    "sleeve conductivity": "sleeve_conductivity",
    "flow temperature": "flow_temperature",
    "flow conductivity": "flow_conductivity",
    "film": "film",
}
_FINISHES = {
    "hot finish": "hot_finish",
    "line finish": "finish",
    "shield finish": "shield_finish",
    "sleeve finish": "sleeve_finish",
}


def inputs_of(words: Words, judged: Judged) -> tuple[dict[str, Figure], str, Found]:
    """The inputs of the estimate by name, in the order of the sheet; what stands in for what nobody gave; what to
    say.
    """
    line, data = words.line, words.data
    out = {name: f for name, key in _MEASURES.items() if (f := line.figure(key, data)) is not None}
    cautions, stands_in = [], ""
    beside = line.word("beside")
    if "hot temperature" not in out and beside is not None:
        found = heat_source(beside, data)
        if found is not None:
            out["hot temperature"] = found
            stands_in = f"hot part at {number_only(found, data)}, a value of {found.source or 'habit'}"
            value, of = number_only(found, data), found.source or "habit"
            text = f"{value} is a textbook value ({of}), not this car's: measure the hot part."
            severity = "note" if line.has("temperature") else "damage"
            cautions.append(Caution(text, severity, (found.id,), found.source or "common practice"))
    for name, key in _FINISHES.items():
        at = out.get("hot temperature") if name == "hot finish" else None
        finish = words.read(key, partial(_emissivity, at=at, name=name, data=data))
        if finish is not None:
            out[name] = finish
    checks = _flow(out, judged)
    return {n: out[n] for n in Beside.NAMES if n in out}, stands_in, Found((), checks, cautions)


def _emissivity(typed: str, at: Figure | None, name: str, data: Refdata) -> Figure:
    return emissivity(typed, at, name, data)


def _flow(inputs: dict[str, Figure], judged: Judged) -> list[Check]:
    """The fluid's conductivity of the tables where none is given; without one the flow is left out, and why is told."""
    if "flow temperature" not in inputs:
        for name in FLOW:
            inputs.pop(name, None)
        return []
    fluid = judged.fluid.item
    if "flow conductivity" not in inputs and fluid is not None:
        found = next((f for f in fluid.figures if f.quantity == "thermal_conductivity"), None)
        if found is not None:
            inputs["flow conductivity"] = found
    needed = ["flow conductivity", *(["sleeve conductivity"] if "sleeve" in inputs else [])]
    lost = [n for n in needed if n not in inputs]
    if not lost:
        return []
    for name in FLOW:
        inputs.pop(name, None)
    text = f"{', '.join(lost)} not given: the estimate is without flow"
    return [Check("cooling by flow", CANNOT_TELL, text, bears=INFORM)]


def heat_source(part: str, data: Refdata) -> Figure | None:
    """A published surface temperature of a named part; None where the part is not in the table or has none."""
    from gaugeblock.lookup import look_up_or_none

    try:
        cell = canonical(data, "lines/heat_sources", "part", part)
    except LookupMiss:
        return None
    for state in ("running", "not stated"):
        got = look_up_or_none("lines/heat_sources", "surface_temperature", data=data, part=cell, state=state)
        if got is not None:
            return got
    return None
