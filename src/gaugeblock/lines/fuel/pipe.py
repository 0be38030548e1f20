"""One line of a fuel supply: the speed in it and the pressure that it loses."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import hydraulics as calc
from gaugeblock.lines.fuel.demand import SUPPLY, fact_or_none, least, top
from gaugeblock.lines.fuel.keys import HOSE, Supply
from gaugeblock.lookup import look_up
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

_METRIC = ("mm", "m")


class Pipe(Value):
    """A line by its ``name`` (feed, return): the speed in it; the loss, None where length or viscosity is not known."""

    __slots__ = ("factor", "loss", "name", "reynolds", "speed")

    name: str
    speed: Figure
    reynolds: Figure | None
    factor: Figure | None
    loss: Figure | None

    def __init__(
        self, name: str, speed: Figure, reynolds: Figure | None, factor: Figure | None, loss: Figure | None
    ) -> None:
        put(self, "name", name)
        put(self, "speed", speed)
        put(self, "reynolds", reynolds)
        put(self, "factor", factor)
        put(self, "loss", loss)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All of it, the loss first."""
        return tuple(f for f in (self.loss, self.speed, self.reynolds, self.factor) if f is not None)


def pipe_of(of: Supply, name: str, flow: Figure, density: Figure, data: Refdata) -> Pipe | None:
    """The line ``feed`` or ``return`` with this flow; None where its bore was not given."""
    before = "" if name == "feed" else "return_"
    bore, length = of.given.figure(f"{before}bore", data), of.given.figure(f"{before}length", data)
    return None if bore is None else pipe_with(of, name, flow, density, bore, length, data)


def pipe_with(
    of: Supply, name: str, flow: Figure, density: Figure, bore: Figure, length: Figure | None, data: Refdata
) -> Pipe:
    """A line of this bore with this flow."""
    key = {"line": name, "flow": f"{flow.key.get('way', '')}{flow.text}", "bore": bore.text}
    speed = _speed(flow, bore, key, data)
    viscosity = of.given.figure("viscosity", data) or fact_or_none(of, "kinematic_viscosity", data)
    if viscosity is None:
        return Pipe(name, speed, None, None, None)
    reynolds = _reynolds(speed, bore, viscosity, key, data)
    factor = _factor(of, reynolds, bore, key, data)
    loss = None if length is None else _loss(factor, length, bore, density, speed, key, data)
    return Pipe(name, speed, reynolds, factor, loss)


def _speed(flow: Figure, bore: Figure, key: dict[str, str], data: Refdata) -> Figure:
    unit = "m/s" if bore.unit in _METRIC else "ft/s"
    number = units.from_base(calc.flow_speed(base(flow), base(bore)), unit)
    return derived("flow_speed", "flow_speed", number, unit, (flow, bore), data, key=key)


def _reynolds(speed: Figure, bore: Figure, viscosity: Figure, key: dict[str, str], data: Refdata) -> Figure:
    way = base(speed) * base(bore)
    ends = (way / top(viscosity), way / least(viscosity)) if viscosity.value is None else (None, None)
    number = None if viscosity.value is None else way / base(viscosity)
    inputs = (speed, bore, viscosity)
    return derived("reynolds_number", "reynolds_number", number, "1", inputs, data, key=key, ends=ends)


def _factor(of: Supply, reynolds: Figure, bore: Figure, key: dict[str, str], data: Refdata) -> Figure:
    rough = look_up(SUPPLY, "roughness", data=data, subject="inside of a line", case=of.line or HOSE, service="any")

    def at(number: float | None) -> float | None:
        return None if number is None else calc.friction_factor(number, top(rough), base(bore))

    met = [f for f in (at(reynolds.low), at(reynolds.high)) if f is not None]
    ends = (min(met), max(met)) if met else (None, None)
    inputs = (reynolds, rough, bore)
    number = at(reynolds.value)
    return derived("friction_factor_churchill", "friction_factor", number, "1", inputs, data, key=key, ends=ends)


def _loss(
    factor: Figure, length: Figure, bore: Figure, density: Figure, speed: Figure, key: dict[str, str], data: Refdata
) -> Figure:
    unit = "kPa" if bore.unit in _METRIC else "psi"
    pascals = calc.line_loss(top(factor), base(length), base(bore), top(density), base(speed))
    number = units.from_base(pascals, unit)
    inputs = (factor, length, bore, density, speed)
    keys, said = key | {"length": length.text}, f"{key['line']} line"
    return derived("line_loss_darcy", "line_loss", number, unit, inputs, data, key=keys, conditions=said)
