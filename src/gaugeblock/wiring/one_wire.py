"""What the answers of one wire and its load share: how they are read, and told by the way back."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.plausible import unusual
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.units import parse_measure
from gaugeblock.wiring import conductor
from gaugeblock.wiring.keys import back_of, wire_of
from gaugeblock.wiring.size import listed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

    Asked = dict[str, str | None]
    # What is typed -> dimension and quantity.
    Kinds = Mapping[str, tuple[str, str]]

WAYS = {"wire": "back by a wire of the same size", "body": "back through the body"}
_BACK = "way back"
_WARM = "A wire that is 60 degC (140 degF) warm loses a sixth more. Joints and switches come to it."
_COUNTED = {"wire": "the way there and back", "body": "the way there alone"}


def read_wire(asked: Asked, kinds: Kinds) -> tuple[Measure, str, dict[str, Measure]]:
    """The wire, the way back (blank where it was not said) and what else was typed. Raises InputError or UnitError."""
    size = wire_of(str(asked["wire"]))
    if size is None:
        raise InputError(str(asked["wire"]), "wire", "no wire", (), "write it as 12 AWG or 4 mm2")
    way = back_of(asked["return"])
    read = {key: parse_measure(str(asked[key]), dimension, key) for key, (dimension, _) in kinds.items()}
    for key, measure in read.items():
        if measure.value <= 0:
            raise InputError(measure.text, key, "not over zero", (), "give what there is")
    return size, way or "", read


def doubts_of(size: Measure, read: Mapping[str, Measure], kinds: Kinds, data: Refdata) -> dict[str, str]:
    """What was typed and is no usual figure, each with the doubt in words."""
    every = {key: (measure, kinds[key][1]) for key, measure in read.items()}
    every["wire"] = (size, "wire_gauge" if size.unit == "AWG" else "conductor_area")
    return unusual(every, data)


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


def by_way(
    found: Mapping[str, Figure], rest: list[Figure], verb: str, said: str, title: str, asked: Asked, data: Refdata
) -> Sheet:
    """The Sheet of what was found for each way back: the one that was said, or both and the question which it is."""
    figures = [*found.values(), *rest]
    if len(found) == 1:
        ((way, figure),) = found.items()
        do = f"{said}{capital(WAYS[way])}. {_WARM}"
        return Sheet(title, asked, data, figures, [], [], decision=use(verb, figure, do))
    text = "How does the current come back: by a wire of the same size, or through the body?"
    check = Check(_BACK, CANNOT_TELL, "not given: the way back", subject="return", bears=ASK)
    candidates = [Candidate(figure, WAYS[k], _COUNTED[k]) for k, figure in found.items()]
    decision = ask(verb, candidates, (_BACK,), f"Say how the current comes back. {_WARM}")
    question = Question(FILL_IN, text, "return", (_BACK,))
    return Sheet(title, asked, data, figures, [check], [], decision=decision, questions=[question])
