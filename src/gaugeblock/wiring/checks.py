"""The checks of a circuit: drop and heat of each wire, fuse, connector and relay, the wire that is there already."""

from __future__ import annotations

from math import ceil

from gaugeblock import units
from gaugeblock.answer.check import ASK, NOT_OK, OK, Bound, Check, at_least, at_most
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


def of_wire_there(of: Circuit, shown: list[Sized], coolest: list[Sized], load: Load, data: Refdata) -> list[Check]:
    """Whether the wire that is there is big enough: what all ways need stops it, and so does what it needs even where
    it lies coolest and may lose most; the rest asks.
    """
    if of.wire is None:
        return []
    own = there(of.wire, data)
    out = []
    for at, name in (("by_drop", "drop"), ("by_heat", "heat")):
        needed = [getattr(s, at) for s in shown]
        easiest = min(coolest, key=lambda s: getattr(s, at))
        check = _there(of.wire, own, name, shown[needed.index(max(needed))], max(needed), load, data)
        if check.result == NOT_OK and len(set(needed)) > 1:
            least = _there(of.wire, own, name, easiest, getattr(easiest, at), load, data, ", even at its easiest")
            check = check.replace(bears=ASK) if least.result == OK else least
        out.append(check)
    return out


def _there(
    wire: Measure, own: Figure, name: str, one: Sized, needed: int, load: Load, data: Refdata, where: str = ""
) -> Check:
    """Whether a wire is big enough in one way: by its own volts where it is metric, else by the gauge it needs."""
    by_volts = _loses(wire, own, one, load, data) if name == "drop" else None
    if by_volts is not None:
        return by_volts.replace(reason=f"{by_volts.reason}{where}")
    least = conductor.gauge(SIZES[min(needed, len(SIZES) - 1)], name, data)
    said = f"{named(wire)} is there, {least.text} AWG is needed for the {name}{where}"
    bound, actual = Bound(least.typical, "AWG", "max", least), Bound(own.typical, "AWG", "", own)
    result = OK if own.typical <= least.typical else NOT_OK  # gauge numbers go below zero and have no share of room
    return Check(f"wire that is there, {name}", result, said, bound, actual, subject="wire", case=name)


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
