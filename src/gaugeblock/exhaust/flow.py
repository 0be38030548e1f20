"""Flow through an exhaust pipe: the bore that power asks for, the velocity in a given one, the pressure that it
loses.
"""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import exhaust as calc
from gaugeblock.lookup import look_up
from gaugeblock.tables.interval import parse_interval
from gaugeblock.units import Measure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.exhaust.keys import Pipe
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

LIMITS = "exhaust/limits"
_QUANTITIES = {
    "power": "engine_power",
    "displacement": "engine_displacement",
    "speed": "engine_speed",
    "od": "exhaust_pipe_od",
    "wall": "tube_wall",
    "gas": "exhaust_gas_temperature",
    "length": "run_length",
    "back_pressure": "back_pressure_maximum",
}
_INTAKE_K = units.to_base(80.0, "degF")


def given(of: Pipe, data: Refdata) -> dict[str, Figure]:
    """What was given, as Figures by key; the count of pipes too."""
    out = {k: stated(m, q, k, data) for k, q in _QUANTITIES.items() if (m := getattr(of, k)) is not None}
    count = Measure(units.parse_number(str(of.pipes)), "1", str(of.pipes))
    out["pipes"] = stated(count, "pipe_count", "pipes", data)
    return out


def _wall(read: dict[str, Figure], data: Refdata) -> Figure:
    """The wall that was given, else the usual one."""
    if "wall" in read:
        return read["wall"]
    return look_up(LIMITS, "tube_wall", data=data, subject="wall of a car exhaust pipe", case="any")


def _per_area(data: Refdata) -> Figure:
    return look_up(LIMITS, "flow_per_area", data=data, subject="straight exhaust pipe", case="any")


def _per_power(data: Refdata) -> Figure:
    return look_up(LIMITS, "flow_per_power", data=data, subject="exhaust flow", case="naturally aspirated")


def _unit(of: Pipe) -> str:
    return "mm" if of.od is not None and of.od.unit == "mm" else "in"


def flow_of(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure:
    """Hot gas through each pipe, by the power."""
    per, power, pipes = _per_power(data), read["power"], read["pipes"]
    number = units.from_base(base(power) * base(per) / of.pipes, "cfm")
    return derived("exhaust_flow_of_power", "exhaust_flow", number, "cfm", (power, per, pipes), data)


def od_by_flow(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure:
    """The outside diameter whose bore takes the flow of the power at the usual flow for its area."""
    wall, through, area = _wall(read, data), flow_of(of, read, data), _per_area(data)
    bore = calc.bore_for_flow(base(through), base(area))
    number = units.from_base(bore + 2 * base(wall), _unit(of))
    return derived(
        "exhaust_pipe_by_flow", "exhaust_pipe_od", number, _unit(of), (through, area, wall), data, about="power"
    )


def hot_flow(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure | None:
    """Hot gas through each pipe, by displacement, speed and gas temperature; None where one of them is not known."""
    if not {"displacement", "speed", "gas"} <= read.keys():
        return None
    inputs = (read["displacement"], read["speed"], read["gas"], read["pipes"])
    cold = calc.intake_flow(base(inputs[0]), base(inputs[1]) / (2 * calc.PI))
    number = units.from_base(calc.hot_flow(cold, base(inputs[2]), _INTAKE_K) / of.pipes, "cfm")
    return derived("exhaust_flow_of_speed", "exhaust_flow", number, "cfm", inputs, data, about="speed")


def listed(of: Pipe, data: Refdata) -> list[Figure]:
    """The smallest pipe of the lists of habit that is taken for the power of each pipe."""
    need = of.power.to("W") / of.pipes
    table = data.table("exhaust/pipe_power")
    ranked = []
    for row in table.of("pipe_power_maximum"):
        size = parse_interval(row.cells["od"])
        if size is not None and size.low is not None:
            ranked.append((size.low, row))
    for _, row in sorted(ranked, key=lambda pair: (pair[0], pair[1].line)):
        figure = look_up(
            "exhaust/pipe_power", "pipe_power_maximum", data=data, od=row.cells["od"], layout=row.cells["layout"]
        )
        if units.to_base(figure.least, figure.unit) >= need * (1 - 1e-9):
            return [figure]
    return []


def made(of: Pipe, read: dict[str, Figure], data: Refdata) -> list[Figure]:
    """What a pipe that was given makes of the flow: its velocity, and what it loses where gas and length are known."""
    out = [flow_of(of, read, data)]
    if "od" not in read:
        return out
    out.append(velocity(of, read, data))
    loss = lost(of, read, data)
    return out if loss is None else [*out, loss]


def bore(read: dict[str, Figure], data: Refdata) -> Figure:
    """The bore of the pipe that was given."""
    od, wall = read["od"], _wall(read, data)
    number = units.from_base(base(od) - 2 * base(wall), od.unit)
    return derived("exhaust_bore", "pipe_bore", number, od.unit, (od, wall), data)


def _through(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure:
    return hot_flow(of, read, data) or flow_of(of, read, data)


def velocity(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure:
    """Mean velocity of the hot gas in the pipe that was given."""
    through, inside = _through(of, read, data), bore(read, data)
    number = calc.mean_velocity(base(through), base(inside))
    return derived("exhaust_velocity", "gas_velocity", number, "m/s", (through, inside), data)


def lost(of: Pipe, read: dict[str, Figure], data: Refdata) -> Figure | None:
    """What the pipe that was given loses; None where its length or the gas is not known."""
    if not {"od", "gas", "length"} <= read.keys():
        return None
    inputs = (read["length"], _through(of, read, data), bore(read, data), read["gas"])
    length, through, inside, gas = (base(f) for f in inputs)
    number = units.from_base(calc.pipe_loss(length, through, calc.gas_density(gas), inside), "kPa")
    return derived("exhaust_pipe_loss", "pressure_loss", number, "kPa", inputs, data)


def checks(of: Pipe, read: dict[str, Figure], data: Refdata) -> list[Check]:
    """What the pipe loses against what the engine maker allows."""
    if "od" not in read:
        return []
    out = []
    loss, allowed = lost(of, read, data), read.get("back_pressure")
    if loss is not None and allowed is not None:
        unit = allowed.unit
        actual = Bound(units.from_base(base(loss), unit), unit, "", loss)
        said = f"the pipe alone loses {number_only(loss, data, unit)}, {number_only(allowed, data)} is allowed"
        out.append(
            at_most(
                "back pressure", actual, Bound(allowed.typical, unit, "max", allowed), said, subject="loss", bears=ASK
            )
        )
    return out
