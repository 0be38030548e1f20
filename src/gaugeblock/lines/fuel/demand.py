"""What the engine burns, and so what the pump must deliver: each way that is open, the greater first."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
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
_STATES = {"diesel": "No. 2"}


class Demand(Value):
    """One way that the engine may burn: its consumption, the fuel's density, mass flow, and what the pump must do."""

    __slots__ = ("consumption", "density", "mass", "needed", "said")

    consumption: Figure
    density: Figure
    mass: Figure
    needed: Figure
    said: str

    def __init__(self, of: Supply, consumption: Figure, density: Figure, said: str, data: Refdata) -> None:
        put(self, "consumption", consumption)
        put(self, "density", density)
        put(self, "said", said)
        put(self, "mass", _mass(of, consumption, said, data))
        put(self, "needed", _needed(of, consumption, density, said, data))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All of it, what the pump must do first."""
        return self.needed, self.mass, self.consumption, self.density


def demands(of: Supply, data: Refdata) -> list[Demand]:
    """Every way that is open, the greatest first. LookupMiss where a fuel has no density or consumption."""
    density = of.given.figure("density", data) or fact(of, "fuel_density", data)
    own = of.given.figure("consumption", data)
    if own is not None:
        return [Demand(of, own, density, f"at {number_only(own, data)}", data)]
    found: dict[str, Demand] = {}
    for boost in [of.boost] if of.boost is not None else list(BOOSTS):
        row = look_up(SUPPLY, "specific_fuel_consumption", data=data, subject=of.fuel, case=boost, service="vehicle")
        one = Demand(of, row, density, _said(boost, row, data), data)
        found.setdefault(row.id, one)
    return sorted(found.values(), key=lambda d: -base(d.needed))


def _said(boost: str, row: Figure, data: Refdata) -> str:
    kind = "" if row.key["case"] == "any" else {BOOST: "with boost, ", NATURAL: "without boost, "}[boost]
    return f"{kind}at {number_only(row, data).partition(' to ')[2] or number_only(row, data)}"


def fact(of: Supply, quantity: str, data: Refdata) -> Figure:
    """A property of the fuel by the tables; LookupMiss where they have none."""
    return look_up(FUELS, quantity, data=data, item=of.fuel, state=_STATES.get(of.fuel, "any"))


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


def _is_metric(of: Supply) -> bool:
    return of.given.measures["power"].unit in ("kW", "W")


def _mass(of: Supply, consumption: Figure, said: str, data: Refdata) -> Figure:
    power = of.given.sure("power", data)
    unit = "kg/h" if _is_metric(of) else "lb/h"

    def flow(per: float | None) -> float | None:
        return None if per is None else units.from_base(units.to_base(per, consumption.unit) * base(power), unit)

    ends = flow(consumption.low), flow(consumption.high)
    key = {"power": power.text, "fuel": of.fuel, "way": said}
    inputs = (consumption, power)
    number = flow(consumption.value)
    return derived("fuel_mass_flow", "fuel_mass_flow", number, unit, inputs, data, key=key, ends=ends)


def _needed(of: Supply, consumption: Figure, density: Figure, said: str, data: Refdata) -> Figure:
    power, reserve = of.given.sure("power", data), of.given.figure("reserve", data)
    more = 1 + (base(reserve) if reserve is not None else 0.0)
    unit = "L/h" if _is_metric(of) else "gal/h"
    number = units.from_base(top(consumption) * base(power) / least(density) * more, unit)
    inputs = (consumption, power, density) if reserve is None else (consumption, power, density, reserve)
    key = {"power": power.text, "fuel": of.fuel, "way": said, "reserve": reserve.text if reserve is not None else "0"}
    return derived("fuel_flow_of_power", "fuel_flow_needed", number, unit, inputs, data, key=key)
