"""What is asked of an exhaust pipe, read once: power, displacement, speed, pipes side by side, size, wall, gas."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.answer.plausible import did_you_mean, other_readings, plausible_range
from gaugeblock.answer.plausible import is_plausible as lies_in
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

# What is read, its dimension, and the quantity whose plausible range it is held against.
_READ = {
    "power": ("power", "engine_power"),
    "displacement": ("volume", "engine_displacement"),
    "speed": ("rotational speed", "engine_speed"),
    "od": ("length", "tube_od"),
    "wall": ("length", "tube_wall"),
    "gas": ("temperature", "exhaust_gas_temperature"),
    "length": ("length", "run_length"),
    "back_pressure": ("stress", "back_pressure_maximum"),
}
_MOST_PIPES = 4


class Pipe(Value):
    """What is known of an engine and the pipe behind it; None where it was not given."""

    __slots__ = ("back_pressure", "displacement", "gas", "length", "od", "pipes", "power", "speed", "wall")

    power: Measure
    pipes: int
    displacement: Measure | None
    speed: Measure | None
    od: Measure | None
    wall: Measure | None
    gas: Measure | None
    length: Measure | None
    back_pressure: Measure | None

    def __init__(self, pipes: int, given: dict[str, Measure | None]) -> None:
        power = given.get("power")
        if power is None:
            raise InputError("power", "power", "not given", (), "give the power of the engine: 260 hp")
        put(self, "pipes", pipes)
        for key in _READ:
            put(self, key, given.get(key))


def pipe_of(asked: dict[str, str | None]) -> Pipe:
    """The Pipe of what was typed; InputError or UnitError for what cannot be read."""
    given = {
        key: read_positive(typed, dim, key) if (typed := asked.get(key)) else None for key, (dim, _) in _READ.items()
    }
    of = Pipe(pipes_of(asked.get("pipes")), given)
    if of.od is not None and of.wall is not None and 2 * of.wall.to("m") >= of.od.to("m"):
        raise InputError(of.wall.text, "wall", "leaves no bore", (), "give the wall of the pipe")
    return of


def pipes_of(typed: str | None) -> int:
    """How many equal pipes side by side: one where nothing is said."""
    if not typed:
        return 1
    said = {"single": "1", "one": "1", "dual": "2", "twin": "2", "two": "2", "pair": "2"}
    text = typed.strip().casefold()
    text = said.get(text, text)
    count = units.whole_number(text)
    if count is None or not 1 <= count <= _MOST_PIPES:
        raise InputError(typed, "pipes", f"not a count from 1 to {_MOST_PIPES}", (), "write 1 or 2")
    return count


def doubts(of: Pipe, data: Refdata) -> dict[str, str]:
    """What is outside its plausible range, by key, as a question."""
    out = {}
    for key, (_, quantity) in _READ.items():
        measure = getattr(of, key)
        if measure is not None and not lies_in(measure, quantity, data):
            span = plausible_range(quantity, data)
            meant = other_readings(measure, *span) if span else ()
            out[key] = did_you_mean(f"{measure.text} is no usual {key.replace('_', ' ')} of an exhaust", meant)
    return out
