"""What follows from the sizes of one circuit, as figures; None of what was not given."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import hydraulics as calc
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.brakes.keys import Circuit
    from gaugeblock.tables.load import Refdata

_METRIC = ("mm", "m")


class Worked(Value):
    """Pressure, and pressure without the booster; force on one pad or shoe; fluid, stroke, pedal travel and its share;
    hydraulic ratio; change of force by other bores; flow of the fluid and its speed in the tube.
    """

    __slots__ = (
        "change",
        "flow",
        "fluid",
        "pedal",
        "pressure",
        "push",
        "ratio",
        "share",
        "speed",
        "stroke",
        "unassisted",
    )

    pressure: Figure
    unassisted: Figure | None
    push: Figure | None
    ratio: Figure | None
    fluid: Figure | None
    stroke: Figure | None
    pedal: Figure | None
    share: Figure | None
    change: Figure | None
    flow: Figure | None
    speed: Figure | None

    def __init__(self, of: Circuit, data: Refdata) -> None:
        metric = of.given.measures["force"].unit in ("N", "kN")
        assist = of.given.figure("assist", data)
        put(self, "pressure", _pressure(of, assist, "", metric, data))
        put(
            self,
            "unassisted",
            (
                _pressure(of, None, "without the booster", metric, data)
                if assist is not None and base(assist) > 1
                else None
            ),
        )
        bore, count = of.given.figure("bore", data), of.pushing(data)
        put(self, "push", _push(self.pressure, bore, count, metric, data))
        put(self, "ratio", _ratio(of, bore, count, data))
        fluid = fluid_of(of, bore, data)
        put(self, "fluid", fluid)
        stroke = stroke_of(of, fluid, data)
        put(self, "stroke", stroke)
        pedal = pedal_of(of, stroke, data)
        put(self, "pedal", pedal)
        put(self, "share", _share(of, pedal, data))
        put(self, "change", _change(of, bore, data))
        put(self, "flow", _flow(of, fluid, data))
        put(self, "speed", _speed(of, self.flow, data))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All there are, the pressure first."""
        every = (
            self.pressure,
            self.push,
            self.stroke,
            self.pedal,
            self.fluid,
            self.speed,
            self.flow,
            self.share,
            self.ratio,
            self.unassisted,
            self.change,
        )
        return tuple(f for f in every if f is not None)


def _key(of: Circuit, *names: str) -> dict[str, str]:
    return {n: of.given.measures[n].text for n in names if n in of.given.measures}


def _pressure(of: Circuit, assist: Figure | None, said: str, metric: bool, data: Refdata) -> Figure:
    force, ratio, master = (of.given.sure(k, data) for k in ("force", "ratio", "master"))
    pascals = calc.line_pressure(base(force), base(ratio), base(master), base(assist) if assist is not None else 1.0)
    unit = "bar" if metric else "psi"
    inputs = (force, ratio, master) if assist is None else (force, ratio, assist, master)
    key = _key(of, "force", "ratio", "master") | ({"assist": assist.text} if assist is not None else {})
    number = units.from_base(pascals, unit)
    rule = "line_pressure_of_pedal"
    return derived(rule, "line_pressure", number, unit, inputs, data, key=key, about=said, conditions=said)


def _push(pressure: Figure, bore: Figure | None, count: Figure | None, metric: bool, data: Refdata) -> Figure | None:
    if bore is None or count is None:
        return None
    unit = "N" if metric else "lbf"
    number = units.from_base(calc.piston_force(base(pressure), base(bore), base(count)), unit)
    key = {**pressure.key, "bore": bore.text, "pistons": count.text}
    return derived("piston_force", "piston_force", number, unit, (pressure, count, bore), data, key=key)


def _ratio(of: Circuit, bore: Figure | None, count: Figure | None, data: Refdata) -> Figure | None:
    if bore is None or count is None:
        return None
    master = of.given.sure("master", data)
    number = calc.hydraulic_ratio(base(bore), base(master), base(count))
    key = _key(of, "bore", "master") | {"pistons": count.text}
    return derived("hydraulic_ratio", "hydraulic_ratio", number, "1", (count, bore, master), data, key=key)


def fluid_of(of: Circuit, bore: Figure | None, data: Refdata) -> Figure | None:
    travel, count = of.given.figure("travel", data), of.moving(data)
    if bore is None or travel is None or count is None:
        return None
    unit = "cm**3" if bore.unit in _METRIC else "in**3"
    number = units.from_base(calc.displaced(base(bore), base(travel), base(count)), unit)
    key = _key(of, "bore", "travel") | {"pistons": count.text}
    return derived("fluid_displaced", "fluid_displaced", number, unit, (count, bore, travel), data, key=key)


def stroke_of(of: Circuit, fluid: Figure | None, data: Refdata) -> Figure | None:
    if fluid is None:
        return None
    master = of.given.sure("master", data)
    travel = of.given.figure("travel", data)  # a master cylinder is named in inches in metric shops too
    unit = "mm" if (travel or master).unit in _METRIC else "in"
    number = units.from_base(calc.stroke(base(fluid), base(master)), unit)
    key = {**fluid.key, **_key(of, "master")}
    return derived("stroke_of_volume", "stroke_needed", number, unit, (fluid, master), data, key=key)


def pedal_of(of: Circuit, stroke: Figure | None, data: Refdata) -> Figure | None:
    if stroke is None:
        return None
    ratio, play = of.given.sure("ratio", data), of.given.figure("play", data)
    meters = calc.pedal_travel(base(stroke), base(ratio), base(play) if play is not None else 0.0)
    inputs = (stroke, ratio) if play is None else (stroke, play, ratio)
    key = {**stroke.key, **_key(of, "ratio", "play")}
    number = units.from_base(meters, stroke.unit)
    return derived("pedal_travel_of_stroke", "pedal_travel", number, stroke.unit, inputs, data, key=key)


def _share(of: Circuit, pedal: Figure | None, data: Refdata) -> Figure | None:
    whole = of.given.figure("pedal", data)
    if pedal is None or whole is None:
        return None
    number = 100 * base(pedal) / base(whole)
    key = {**pedal.key, **_key(of, "pedal")}
    return derived("pedal_travel_share", "pedal_travel_share", number, "%", (pedal, whole), data, key=key)


def _change(of: Circuit, bore: Figure | None, data: Refdata) -> Figure | None:
    was = of.given.figure("was", data)
    if bore is None or was is None:
        return None
    number = base(bore) ** 2 / base(was) ** 2
    key = _key(of, "bore", "was")
    return derived("force_change_of_bore", "force_change", number, "1", (bore, was), data, key=key)


def _flow(of: Circuit, fluid: Figure | None, data: Refdata) -> Figure | None:
    """The fluid that the pistons take over the time in which they take it."""
    time = of.given.figure("time", data)
    if fluid is None or time is None:
        return None
    unit = "L/min" if fluid.unit == "cm**3" else "gal/h"
    number = units.from_base(base(fluid) / base(time), unit)
    key = {**fluid.key, **_key(of, "time")}
    said = "even over that time"
    return derived("flow_of_volume", "line_flow", number, unit, (fluid, time), data, key=key, conditions=said)


def _speed(of: Circuit, flow: Figure | None, data: Refdata) -> Figure | None:
    """The speed in a tube that feeds every wheel of the circuit."""
    tube = of.given.figure("tube", data)
    if flow is None or tube is None:
        return None
    unit = "m/s" if tube.unit in _METRIC else "ft/s"
    number = units.from_base(calc.flow_speed(base(flow), base(tube)), unit)
    key = {**flow.key, **_key(of, "tube")}
    wheels = int(of.wheels.value) if of.wheels is not None else 1
    own = f"; a tube to one wheel of {wheels} has its share of it" if wheels > 1 else ""
    said = f"in a tube that feeds the whole circuit{own}; no limit of it for brakes was found"
    return derived("flow_speed", "flow_speed", number, unit, (flow, tube), data, key=key, conditions=said)
