"""The checks of a circuit: drop and heat of each wire, fuse, connector and relay, the wire that is there already."""

from __future__ import annotations

from math import ceil

from gaugeblock import units
from gaugeblock.answer.check import ASK, NOT_OK, OK, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import printed
from gaugeblock.calc import wiring as calc
from gaugeblock.wiring import conductor
from gaugeblock.wiring.conductor import SIZES
from gaugeblock.wiring.keys import named

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure
    from gaugeblock.wiring.conductor import Conductor, Load, Sized
    from gaugeblock.wiring.fusing import Fused
    from gaugeblock.wiring.keys import Circuit


def _bound(figure: Figure, unit: str, side: str = "") -> Bound:
    return Bound(units.from_base(base(figure), unit), unit, side, figure)


def of_wire(one: Sized, wire: Conductor, load: Load, data: Refdata) -> list[Check]:
    """That a wire keeps its drop, and stands the heat of its current and its fuse."""
    out, case = [], wire.size
    limit = one.setting.way("drop").figure
    if wire.drop is not None and limit is not None:
        said = f"{printed(wire.drop, data)} lost of {printed(limit, data)}"
        bounds = _bound(wire.drop, "V"), _bound(limit, "V")
        out.append(at_most(f"drop, {case}", *bounds, said, subject="drop", case=case))
    if wire.allowed is not None:
        carried = load.fuse if load.fuse is not None and base(load.fuse) > base(load.current) else load.current
        said = f"{printed(wire.allowed, data)} allowed, {printed(carried, data)} to stand"
        more = {"subject": "heat", "case": case, "bears": ASK}
        out.append(at_least(f"heat, {case}", _bound(wire.allowed, "A"), _bound(carried, "A"), said, **more))
    elif wire.hot is not None:
        limit = one.setting.way("insulation").figure
        assert limit is not None
        said = f"{printed(wire.hot, data)} after a try, {printed(limit, data)} allowed"
        more = {"subject": "heat", "case": case, "bears": ASK}
        out.append(at_most(f"heat, {case}", _bound(wire.hot, "degC"), _bound(limit, "degC"), said, **more))
    return out


def of_fuse(of: Circuit, load: Load, data: Refdata) -> list[Check]:
    """Whether fuse, connector, relay and load agree."""
    out = []
    rating = load.fuse
    if rating is not None and of.fuse is not None:
        said = f"{printed(rating, data)} fuse, {printed(load.current, data)} load"
        bounds = _bound(rating, "A"), _bound(load.current, "A")
        out.append(at_least("fuse carries the load", *bounds, said, subject="fuse"))
    carried = rating if rating is not None else load.current
    if of.connector is not None:
        connector = stated(of.connector, "connector_current_maximum", "connector", data)
        said = f"connector {printed(connector, data)}, {printed(carried, data)} fuse"
        out.append(at_most("connector", _bound(carried, "A"), _bound(connector, "A"), said, subject="connector"))
    if of.relay is not None:
        relay = stated(of.relay, "relay_current_maximum", "relay", data)
        whole = current_of(of, data)
        said = f"relay {printed(relay, data)}, {printed(whole, data)} load"
        out.append(at_most("relay", _bound(whole, "A"), _bound(relay, "A"), said, subject="relay"))
    return out


def current_of(of: Circuit | Fused, data: Refdata) -> Figure:
    """The current of a load, as stated or by its power."""
    if of.power is None:
        assert of.current is not None
        return stated(of.current, "circuit_current", "current", data)
    power = stated(of.power, "load_power", "current", data)
    voltage = stated(of.voltage, "system_voltage", "voltage", data)
    key = {"power": of.power.text, "voltage": of.voltage.text}
    number = base(power) / base(voltage)
    return derived("current_of_power", "circuit_current", number, "A", (power, voltage), data, key=key)


def there(wire: Measure, data: Refdata) -> Figure:
    """A wire that is there already, by gauge; of a metric one the gauge that has no more copper."""
    if wire.unit == "AWG":
        return stated(wire, "wire_gauge", "wire", data)
    area = stated(wire, "conductor_area", "wire", data)
    number = float(ceil(calc.gauge_of_area(base(area)) * (1 - 1e-9)))
    text = f"{1 - number:.0f}/0" if number < 1 else f"{number:.0f}"
    key = {"wire": wire.text}
    return derived("wire_gauge_within_area", "wire_gauge", number, "AWG", (area,), data, key=key, text=text)


def of_wire_there(of: Circuit, shown: list[Sized], load: Load, data: Refdata) -> list[Check]:
    """Whether the wire that is there is big enough: where all is settled drop and heat stop it, else they ask."""
    if of.wire is None:
        return []
    own = there(of.wire, data)
    actual = Bound(own.typical, "AWG", "", own)
    out = []
    for at, name in (("by_drop", "drop"), ("by_heat", "heat")):
        needed = [getattr(s, at) for s in shown]
        bears = STOP if len(set(needed)) == 1 else ASK
        if name == "drop":
            by_volts = _loses(of.wire, own, shown[needed.index(max(needed))], load, data)
            if by_volts is not None:
                out.append(by_volts.replace(bears=bears))
                continue
        least = conductor.gauge(SIZES[max(needed)], name, data)
        said = f"{named(of.wire)} is there, {least.text} AWG is needed for the {name}"
        bound = Bound(least.typical, "AWG", "max", least)
        result = OK if own.typical <= least.typical else NOT_OK  # gauge numbers go below zero and have no share of room
        out.append(
            Check(f"wire that is there, {name}", result, said, bound, actual, subject="wire", case=name, bears=bears)
        )
    return out


def _loses(wire: Measure, own: Figure, one: Sized, load: Load, data: Refdata) -> Check | None:
    """Whether a metric wire keeps the drop, by its own resistance; None for a gauge, and where it may not carry it."""
    limit = one.setting.way("drop").figure
    if wire.unit == "AWG" or limit is None:
        return None
    lost = conductor.conductor(conductor.size_of(own), one.setting, load, data, wire=wire).drop
    if lost is None:
        return None
    said = f"{named(wire)} is there, and loses {printed(lost, data)} of {printed(limit, data)}"
    return at_most("wire that is there, drop", _bound(lost, "V"), _bound(limit, "V"), said, subject="wire", case="drop")
