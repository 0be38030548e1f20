"""What the engine takes, and so what the pump must deliver: each way that is open, the greater first."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import LookupMiss
from gaugeblock.lines.fuel.keys import BOOST, BOOSTS, NATURAL, Supply
from gaugeblock.lookup import look_up
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

SUPPLY, FUELS = "lines/fuel_supply", "lines/fuels"
STATES = {"diesel": "No. 2"}


class Demand(Value):
    """One way of what the engine takes: what the pump must deliver, the fuel's density, the other figures of it, the
    condition, and what comes of it.
    """

    __slots__ = ("density", "needed", "others", "said", "then")

    needed: Figure
    density: Figure
    others: tuple[Figure, ...]
    said: str
    then: str

    def __init__(self, needed: Figure, density: Figure, others: tuple[Figure, ...], said: str, then: str) -> None:
        put(self, "needed", needed)
        put(self, "density", density)
        put(self, "others", others)
        put(self, "said", said)
        put(self, "then", then)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All of it, what the pump must do first."""
        return self.needed, *self.others, self.density


def demands(of: Supply, data: Refdata) -> list[Demand]:
    """Every way that is open, the greatest first. LookupMiss where a fuel has no density or consumption."""
    density = of.given.figure("density", data) or fact(of, "fuel_density", data)
    ways = []
    own = of.given.figure("consumption", data)
    if own is not None and of.given.has("power"):
        ways.append(_of_power(of, own, density, f"at {number_only(own, data)}", data))
    if of.injectors is not None and of.given.has("injector"):
        ways.append(_of_injectors(of, density, data))
    if not ways:
        ways = _of_habit(of, density, data)
    return sorted(ways, key=lambda d: -base(d.needed))


def _of_habit(of: Supply, density: Figure, data: Refdata) -> list[Demand]:
    found: dict[str, Demand] = {}
    for boost in [of.boost] if of.boost is not None else list(BOOSTS):
        row = look_up(SUPPLY, "specific_fuel_consumption", data=data, subject=of.fuel, case=boost, service="vehicle")
        if row.id not in found:
            found[row.id] = _of_power(of, row, density, _said(boost, row, data), data)
    return list(found.values())


def _said(boost: str, row: Figure, data: Refdata) -> str:
    kind = "" if row.key["case"] == "any" else {BOOST: "with boost, ", NATURAL: "without boost, "}[boost]
    return f"{kind}at {_top(row, data)}"


def _top(figure: Figure, data: Refdata) -> str:
    """The greatest number of a figure with its unit."""
    text = number_only(figure, data)
    return text.partition(" to ")[2] or text


def fact(of: Supply, quantity: str, data: Refdata) -> Figure:
    """A property of the fuel by the tables; LookupMiss where they have none."""
    return look_up(FUELS, quantity, data=data, item=of.fuel, state=STATES.get(of.fuel, "any"))


def fact_or_none(of: Supply, quantity: str, data: Refdata) -> Figure | None:
    """As ``fact``; None where the tables have none."""
    try:
        return fact(of, quantity, data)
    except LookupMiss:
        return None


def top(figure: Figure) -> float:
    """The greatest number of a figure in its base unit."""
    return units.to_base(figure.high if figure.high is not None else figure.typical, figure.unit)


def least(figure: Figure) -> float:
    """The least number of a figure in its base unit."""
    return units.to_base(figure.low if figure.low is not None else figure.typical, figure.unit)


def _of_power(of: Supply, consumption: Figure, density: Figure, said: str, data: Refdata) -> Demand:
    power, reserve = of.given.sure("power", data), of.given.figure("reserve", data)
    metric = power.unit in ("kW", "W")
    mass = _mass(of, power, consumption, said, "kg/h" if metric else "lb/h", data)
    flow = top(consumption) * base(power) / least(density) * _more(reserve)
    unit = "L/h" if metric else "gal/h"
    inputs = (consumption, power, density) if reserve is None else (consumption, power, density, reserve)
    key = {"power": power.text, "fuel": of.fuel, "way": said, "reserve": reserve.text if reserve is not None else "0"}
    number = units.from_base(flow, unit)
    needed = derived("fuel_flow_of_power", "fuel_flow_needed", number, unit, inputs, data, key=key)
    return Demand(needed, density, (mass, consumption), said, f"burns up to {_top(mass, data)}")


def _more(reserve: Figure | None) -> float:
    return 1 + (base(reserve) if reserve is not None else 0.0)


def _mass(of: Supply, power: Figure, consumption: Figure, said: str, unit: str, data: Refdata) -> Figure:
    def flow(per: float | None) -> float | None:
        return None if per is None else units.from_base(units.to_base(per, consumption.unit) * base(power), unit)

    ends = flow(consumption.low), flow(consumption.high)
    key = {"power": power.text, "fuel": of.fuel, "way": said}
    inputs = (consumption, power)
    number = flow(consumption.value)
    return derived("fuel_mass_flow", "fuel_mass_flow", number, unit, inputs, data, key=key, ends=ends)


def _of_injectors(of: Supply, density: Figure, data: Refdata) -> Demand:
    """The injectors open for their duty, all the time where it was not given."""
    assert of.injectors is not None
    count = stated(of.injectors, "injector_count", "injectors", data)
    one, duty = of.given.sure("injector", data), of.given.figure("duty", data)
    reserve = of.given.figure("reserve", data)
    by_mass = one.quantity == "injector_mass_flow"
    each = base(one) / least(density) if by_mass else base(one)
    flow = base(count) * each * (base(duty) if duty is not None else 1.0) * _more(reserve)
    unit = "gal/h" if one.unit in ("lb/h", "gal/h", "gal/min") else "L/h"
    inputs = (count, one, *(f for f in (duty, density if by_mass else None, reserve) if f is not None))
    open_for = number_only(duty, data) if duty is not None else "all"
    key = {"injectors": count.text, "injector": one.text, "duty": open_for, "fuel": of.fuel}
    key["reserve"] = reserve.text if reserve is not None else "0"
    rule = "fuel_flow_of_injectors_by_mass" if by_mass else "fuel_flow_of_injectors"
    number = units.from_base(flow, unit)
    needed = derived(rule, "fuel_flow_needed", number, unit, inputs, data, key=key)
    said = f"{count.text} injectors open {open_for} of the time"
    return Demand(needed, density, (), said, "")
