"""What the answers of one wire and its load share: how they are read, and told by the way back."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, stop, use
from gaugeblock.answer.making import read_positive
from gaugeblock.answer.plausible import unusual
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.units import parse_measure
from gaugeblock.value import Value, put
from gaugeblock.wiring import conductor
from gaugeblock.wiring.heat import Warm, fit
from gaugeblock.wiring.keys import back_of, wire_of
from gaugeblock.wiring.size import listed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

    Asked = dict[str, str | None]
    # What is typed -> dimension and quantity.
    Kinds = Mapping[str, tuple[str, str]]

WAYS = {"wire": "back by a wire of the same size", "body": "back through the body"}
_BACK = "way back"
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


def voltage_of(asked: Asked) -> Measure | None:
    """The voltage of the system; None where it was not said."""
    return read_positive(typed, "voltage", "voltage") if (typed := asked.get("voltage")) else None


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


def counted(warm: Warm, data: Refdata) -> str:
    """How warm the copper was taken to be, and why, as a sentence."""
    hot = f"{printed(warm.temperature, data)} ({units.in_unit(warm.temperature.typical, 'degC', 'degF'):.0f} degF)"
    if warm.temperature.rule is not None and warm.temperature.rule.name == "envelope":
        return f"Counted with the copper at {hot}, as hot as its insulation bears."
    air, bundle = (warm.lie.way(key).words for key in ("air", "bundle"))
    return f"Counted with the copper at {hot}: {air}, {bundle}."


class Told(Value):
    """An answer of one wire: its title, what was asked, its verb, its wire under its current."""

    __slots__ = ("asked", "data", "title", "verb", "warm")

    title: str
    asked: Asked
    verb: str
    warm: Warm
    data: Refdata

    def __init__(self, title: str, asked: Asked, verb: str, warm: Warm, data: Refdata) -> None:
        put(self, "title", title)
        put(self, "asked", asked)
        put(self, "verb", verb)
        put(self, "warm", warm)
        put(self, "data", data)

    def by_way(self, found: Mapping[str, Figure], rest: Sequence[Figure], said: str) -> Sheet:
        """The Sheet of what was found for each way back: the one that was said, or both and the question which it is;
        STOP where the current overheats the wire wherever it lies.
        """
        warm, data = self.warm, self.data
        checks = [] if warm.check is None else [warm.check]
        figures = [*found.values(), *rest, warm.temperature, warm.resistance, *warm.figures]
        unique = list({f.id: f for f in figures}.values())
        if warm.check is not None and warm.check.stops:
            return self.stopped(warm.check, unique)
        less = " Say the air and the loom for less." if not (self.asked["air"] and self.asked["bundle"]) else ""
        what = (
            f"{said}{counted(warm, data)}{less if self.asked['kind'] is None else ''} Joints and switches come to it."
        )
        asks = [c.name for c in checks if c.asks]
        if len(found) == 1 and not asks:
            ((way, figure),) = found.items()
            decision = use(self.verb, figure, f"{capital(WAYS[way])}. {what}")
            return Sheet(self.title, self.asked, data, unique, checks, [], decision=decision)
        candidates = [Candidate(figure, WAYS[k], _COUNTED[k]) for k, figure in found.items()]
        if len(found) == 1:
            assert warm.check is not None
            decision = ask(self.verb, candidates, asks, f"{warm.check.reason}. {what}")
            return Sheet(self.title, self.asked, data, unique, checks, [], decision=decision)
        text = "How does the current come back: by a wire of the same size, or through the body?"
        checks.append(Check(_BACK, CANNOT_TELL, "not given: the way back", subject="return", bears=ASK))
        decision = ask(self.verb, candidates, (*asks, _BACK), f"Say how the current comes back. {what}")
        question = Question(FILL_IN, text, "return", (_BACK,))
        return Sheet(self.title, self.asked, data, unique, checks, [], decision=decision, questions=[question])

    def stopped(self, check: Check, figures: Sequence[Figure]) -> Sheet:
        """The Sheet of a wire that its current overheats wherever it lies: nothing of it is to be used."""
        size = self.warm.size
        own = [conductor.gauge(size, "heat", self.data)] if size else []
        needed = [Candidate(gauge, "", "required") for gauge in own]
        decision = stop(self.verb, needed, (check.name,), f"{check.reason}: it burns. {fit(size)}")
        return Sheet(self.title, self.asked, self.data, [*own, *figures], [check], [], decision=decision)
