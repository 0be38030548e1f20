"""The conductor of one setting: the smallest size by drop and by heat on plain numbers, then its figures."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import wiring as calc
from gaugeblock.errors import LookupMiss
from gaugeblock.lookup import look_up, look_up_or_none
from gaugeblock.value import Value, put
from gaugeblock.wiring.settings import BOAT, WIRE, Setting, low_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

SIZES = tuple(f"AWG {n}" for n in ["18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0"])
_COLUMNS = (60, 75, 80, 90, 105, 125, 200)
_TRUCK, _CROSS_LINKED_K = "cross-linked truck wire", 273.15 + 120.0
_TRAILER, _PVC_K = "PVC trailer wire", 273.15 + 90.0
_TRAILER_AIR = (120, 125, 150)  # degF
_TINNED = "tin-plated copper wire"
_AREAS = "AWG marine cable"
_LIES = ("insulation", "air", "bundle")
_METRIC = "copper conductor, class 5 and 6, tinned"


class Load(Value):
    """What every setting of a circuit shares: the current of one wire, the fuse that must carry it (None: none is
    listed, or none is fitted), the run, one way; ``cranking`` how long a starter turns (None: the load lasts).
    """

    __slots__ = ("cranking", "current", "fuse", "length")

    current: Figure
    fuse: Figure | None
    length: Figure
    cranking: Figure | None

    def __init__(self, current: Figure, fuse: Figure | None, length: Figure, cranking: Figure | None = None) -> None:
        put(self, "current", current)
        put(self, "fuse", fuse)
        put(self, "length", length)
        put(self, "cranking", cranking)

    @property
    def heating(self) -> float:
        """The current that the wire must stand, A: the load's, or its fuse's where that is larger."""
        return max(base(self.current), base(self.fuse) if self.fuse is not None else 0.0)


class Sized(Value):
    """The least sizes of one setting as places in SIZES; len(SIZES) where none of the table will do."""

    __slots__ = ("by_drop", "by_heat", "setting")

    setting: Setting
    by_drop: int
    by_heat: int

    def __init__(self, setting: Setting, by_drop: int, by_heat: int) -> None:
        put(self, "setting", setting)
        put(self, "by_drop", by_drop)
        put(self, "by_heat", by_heat)

    @property
    def at(self) -> int:
        """The larger of the two."""
        return max(self.by_drop, self.by_heat)

    @property
    def is_listed(self) -> bool:
        """Whether a wire of the table will do."""
        return self.at < len(SIZES)


def column_of(insulation_k: float) -> str | None:
    """The condition cell of the boat table for insulation of this temperature: the hottest column not over it."""
    fits = [c for c in _COLUMNS if c <= units.from_base(insulation_k, "degC") + 1e-9]
    return f"{fits[-1]} degC insulation" if fits else None


def table_current(size: str, column: str, data: Refdata) -> Figure:
    """What the boat table lets this size carry."""
    return look_up(WIRE, "current_maximum", data=data, item=BOAT, size=size, condition=column)


def vehicle_current(size: str, insulation_k: float, air_k: float, data: Refdata) -> Figure | None:
    """What a table for road vehicles lets this size carry: a truck part maker's for cross-linked wire, a trailer lamp
    maker's for PVC by the air; None where none speaks of it.
    """
    if insulation_k >= _CROSS_LINKED_K:
        keys = {"item": _TRUCK, "size": size, "condition": "any"}
    elif insulation_k <= _PVC_K:
        hotter = [f for f in _TRAILER_AIR if units.to_base(f, "degF") >= air_k - 1e-6]
        if not hotter:
            return None
        keys = {"item": _TRAILER, "size": size, "condition": f"{hotter[0]} degF ambient"}
    else:
        return None
    return look_up_or_none(WIRE, "current_maximum", data=data, **keys)


def cold_resistance(size: str, data: Refdata) -> Figure:
    """The greatest resistance of this size at 20 degC."""
    return look_up(WIRE, "resistance_maximum", data=data, item=_TINNED, size=size, condition="20 degC")


def cold_resistance_of(wire: Measure, gauge: str, data: Refdata) -> Figure:
    """The greatest resistance at 20 degC of a wire whose ``gauge`` has no more copper: that of the gauge, or of the
    largest metric size that it holds where that has less.
    """
    metric, of_gauge = metric_within(wire, data), cold_resistance(gauge, data)
    return of_gauge if metric is None else min(of_gauge, metric, key=base)


def metric_within(wire: Measure, data: Refdata) -> Figure | None:
    """The greatest resistance of the largest metric size that a wire holds; None for a gauge and for a thinner wire."""
    if wire.unit == "AWG":
        return None
    area = wire.to("mm**2") * (1 + 1e-9)
    within = [
        look_up(WIRE, "resistance_maximum", data=data, item=_METRIC, size=row.cells["size"], condition="20 degC")
        for row in data.table(WIRE).of("resistance_maximum")
        if row.cells["item"] == _METRIC and float(row.cells["size"].split()[0]) <= area
    ]
    return min(within, key=base, default=None)


def reference(data: Refdata) -> Figure:
    """The air that the boat table is made for."""
    return look_up(WIRE, "reference_ambient", data=data, item=BOAT, size="all sizes", condition="any")


def size_of(gauge: Figure) -> str:
    """The size of the table that a wire's gauge is, or the next that has no more copper."""
    number = gauge.typical
    name = f"AWG {1 - number:.0f}/0" if number < 1 else f"AWG {number:.0f}"
    if name in SIZES:
        return name
    smaller = [s for s in SIZES if number_of(s) >= number]
    if not smaller:
        raise LookupMiss(name, "wire", "smaller than any wire of the table", (SIZES[0],), "use a heavier wire")
    return smaller[-1]


def number_of(size: str) -> float:
    """The gauge number of a size; 1/0 is 0, 2/0 is -1."""
    name = size.removeprefix("AWG ")
    return float(1 - int(name[0])) if "/" in name else float(name)


def serves(setting: Setting) -> bool:
    """Whether the insulation bears the air, and the table has a column for it."""
    insulation = setting.number("insulation")
    return column_of(insulation) is not None and setting.number("air") < insulation


def least_by_heat(amperes: float, setting: Setting, data: Refdata) -> int:
    """The place in SIZES of the least that stands a current, A, for as long as it lasts; len(SIZES) for none."""
    if not serves(setting):
        return len(SIZES)
    return next(
        (at for at, size in enumerate(SIZES) if base(allowed(size, setting, data)) >= amperes * (1 - 1e-9)), len(SIZES)
    )


def sized(setting: Setting, load: Load, data: Refdata) -> Sized:
    """The least size by the allowed drop, and the least that stands the heat of its current and its fuse."""
    insulation, air = setting.number("insulation"), setting.number("air")
    column = column_of(insulation)
    if column is None or air >= insulation:
        return Sized(setting, len(SIZES), len(SIZES))
    factor = calc.ambient_factor(insulation, air, base(reference(data))) * setting.number("bundle")
    amperes, length, limit = base(load.current), base(load.length), setting.number("drop")
    by_drop = by_heat = len(SIZES)
    for at, size in enumerate(SIZES):
        cold = base(cold_resistance(size, data))
        if load.cranking is not None:
            hot = calc.temperature_after(air, amperes, cold, base(load.cranking), base(area_of(size, data)))
            stands = hot <= insulation * (1 + 1e-9)
        else:
            allowed = base(table_current(size, column, data)) * factor
            vehicle = vehicle_current(size, insulation, air, data)
            most = allowed if vehicle is None else min(allowed, base(vehicle))
            stands = most >= load.heating * (1 - 1e-9)
            hot = calc.conductor_temperature(air, insulation, min(amperes, allowed), allowed)
        if by_heat > at and stands:
            by_heat = at
        lost = calc.voltage_drop(calc.resistance_hot(cold, hot), length, amperes, 2 if is_pair(setting) else 1)
        if by_drop > at and lost <= limit * (1 + 1e-9):
            by_drop = at
    return Sized(setting, by_drop, by_heat)


def is_pair(setting: Setting) -> bool:
    """Whether the current comes back by a wire of the same size."""
    return setting.way("return").words.startswith("back by a wire")


def area_of(size: str, data: Refdata) -> Figure:
    """The metal of a size."""
    return look_up(WIRE, "conductor_area", data=data, item=_AREAS, size=size, condition="any")


class Conductor(Value):
    """One size in one setting, as figures: its area, what it may carry there, how hot it runs, what it loses."""

    __slots__ = ("allowed", "area", "drop", "factor", "hot", "resistance", "size")

    size: str
    area: Figure
    factor: Figure | None
    allowed: Figure | None
    hot: Figure | None
    resistance: Figure | None
    drop: Figure | None

    def __init__(
        self,
        size: str,
        area: Figure,
        factor: Figure | None,
        allowed: Figure | None,
        hot: Figure | None,
        resistance: Figure | None,
        drop: Figure | None,
    ) -> None:
        put(self, "size", size)
        put(self, "area", area)
        put(self, "factor", factor)
        put(self, "allowed", allowed)
        put(self, "hot", hot)
        put(self, "resistance", resistance)
        put(self, "drop", drop)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All of it, the drop first; without a drop where the current is over what the wire may carry."""
        every = (self.drop, self.allowed, self.area, self.hot, self.resistance, self.factor)
        return tuple(f for f in every if f is not None)


def conductor(size: str, setting: Setting, load: Load, data: Refdata, *, wire: Measure | None = None) -> Conductor:
    """The figures of one size, with the resistance of ``wire``, which has no less copper, where one is given.

    Its drop is worked out only where it may carry the current.
    """
    key = {"size": size, **{k: setting.way(k).words for k in _LIES}}
    cold = cold_resistance(size, data) if wire is None else cold_resistance_of(wire, size, data)
    if load.cranking is not None:
        return _cranked(size, cold, setting, load, key, data)
    factor, derated, most = _allowed(size, setting, data)
    area = area_of(size, data)
    if base(load.current) > base(most) * (1 + 1e-9):
        return Conductor(size, area, factor, most, None, None, None)
    hot = _loaded(setting, load.current, derated, key, data)
    resistance = resistance_hot(cold, hot, key, data)
    return Conductor(size, area, factor, most, hot, resistance, _drop(resistance, setting, load, data))


def lasting_heat(size: str, setting: Setting, current: Figure, data: Refdata) -> Figure:
    """How hot a size runs under a current that lasts, as it lies; of more than it may carry what its insulation
    bears: it is hotter than that then, and burns.
    """
    _, derated, most = _allowed(size, setting, data)
    if base(current) > base(most) * (1 + 1e-9):
        insulation = setting.way("insulation").figure
        assert insulation is not None
        return insulation
    key = {"size": size, **{k: setting.way(k).words for k in _LIES}}
    return _loaded(setting, current, derated, key, data)


def _loaded(setting: Setting, current: Figure, derated: Figure, key: dict[str, str], data: Refdata) -> Figure:
    insulation, air = (setting.way(k).figure for k in ("insulation", "air"))
    assert insulation is not None
    assert air is not None
    heat = calc.conductor_temperature(base(air), low_of(insulation), base(current), base(derated))
    inputs = (air, insulation, current, derated)
    number = units.from_base(heat, "degC")
    return derived("conductor_temperature_of_load", "conductor_temperature", number, "degC", inputs, data, key=key)


def allowed(size: str, setting: Setting, data: Refdata) -> Figure:
    """What one size may carry as it lies, for as long as the load lasts."""
    return _allowed(size, setting, data)[2]


def _allowed(size: str, setting: Setting, data: Refdata) -> tuple[Figure, Figure, Figure]:
    """The factor of the air, the boat rule's current as the wire lies, and the least that any table allows."""
    insulation, air, bundle = (setting.way(k).figure for k in _LIES)
    assert insulation is not None
    assert air is not None
    key = {"size": size, **{k: setting.way(k).words for k in _LIES}}
    own = reference(data)
    number = calc.ambient_factor(low_of(insulation), base(air), base(own))
    factor_key = {k: key[k] for k in ("insulation", "air")}
    factor = derived("ambient_factor", "ambient_factor", number, "1", (insulation, air, own), data, key=factor_key)
    table = table_current(size, column_of(low_of(insulation)) or "", data)
    inputs = (table, factor) if bundle is None else (table, factor, bundle)
    value = calc.derated_current(base(table), base(factor), base(bundle) if bundle is not None else 1.0)
    said = f"{size}, {key['bundle']}, {key['air']}"
    derated = derived("derated_current", "current_maximum", value, "A", inputs, data, key=key, conditions=said)
    return factor, derated, _least(derated, vehicle_current(size, low_of(insulation), base(air), data), key, data)


def _least(derated: Figure, vehicle: Figure | None, key: dict[str, str], data: Refdata) -> Figure:
    """The boat rule's figure, or that of a table for vehicles where it is lower."""
    if vehicle is None or base(vehicle) >= base(derated):
        return derated
    number = min(base(derated), base(vehicle))
    both = (derated, vehicle)
    said = f"{key['size']}, {vehicle.key['item']}"
    return derived("least_of_two_currents", "current_maximum", number, "A", both, data, key=key, conditions=said)


def resistance_hot(cold: Figure, hot: Figure, key: dict[str, str], data: Refdata) -> Figure:
    """The resistance of a conductor of this temperature."""
    key = {**key, "size": cold.key["size"]}
    ohms = units.from_base(calc.resistance_hot(base(cold), base(hot)), cold.unit)
    return derived("copper_resistance_hot", "resistance", ohms, cold.unit, (cold, hot), data, key=key)


def _cranked(size: str, cold: Figure, setting: Setting, load: Load, key: dict[str, str], data: Refdata) -> Conductor:
    """A cable of the starter: nothing cools it in the seconds that it works."""
    assert load.cranking is not None
    hot, area = cranking_heat(size, cold, setting, load.current, load.cranking, data), area_of(size, data)
    resistance = resistance_hot(cold, hot, key, data)
    return Conductor(size, area, None, None, hot, resistance, _drop(resistance, setting, load, data))


def cranking_heat(size: str, cold: Figure, setting: Setting, current: Figure, time: Figure, data: Refdata) -> Figure:
    """How hot a cable of the starter is after a try."""
    air, area = setting.way("air").figure, area_of(size, data)
    assert air is not None
    heat = calc.temperature_after(base(air), base(current), base(cold), base(time), base(area))
    rule, quantity = "conductor_temperature_after_cranking", "conductor_temperature"
    key = {"size": size, **{k: setting.way(k).words for k in _LIES}}
    inputs = (air, current, cold, time, area)
    return derived(rule, quantity, units.from_base(heat, "degC"), "degC", inputs, data, key=key)


def _drop(resistance: Figure, setting: Setting, load: Load, data: Refdata) -> Figure:
    back, pair = setting.way("return").words, is_pair(setting)
    number = calc.voltage_drop(base(resistance), base(load.length), base(load.current), 2 if pair else 1)
    rule = "voltage_drop_two_wire" if pair else "voltage_drop_single_run"
    inputs = (load.length, resistance, load.current)
    key = {**resistance.key, "return": back}
    return derived(rule, "voltage_drop", number, "V", inputs, data, key=key, conditions=f"{key['size']}, {back}")


def gauge(size: str, by: str, data: Refdata) -> Figure:
    """The gauge number of a size, as the figure that a decision shows; ``by`` is what asks for it."""
    area = area_of(size, data)
    name = size.removeprefix("AWG ")
    key = {"size": size, "by": by}
    return derived("wire_gauge_of_area", "wire_gauge", number_of(size), "AWG", (area,), data, key=key, text=name)


def metric_of(size: str, data: Refdata) -> str | None:
    """The least metric size that has no less copper and no more resistance: ``6 mm2``; None where none is listed."""
    area = area_of(size, data)
    most = base(cold_resistance(size, data))
    for row in data.table(WIRE).of("resistance_maximum"):
        if row.cells["item"] == _METRIC:
            cell = row.cells["size"]
            got = look_up_or_none(WIRE, "resistance_maximum", data=data, item=_METRIC, size=cell, condition="20 degC")
            is_as_big = float(cell.split()[0]) >= units.from_base(base(area), "mm**2")
            if got is not None and is_as_big and base(got) <= most:
                return cell
    return None


def area_by_standard(gauge: Figure, data: Refdata) -> Figure:
    """The copper of a solid wire of a gauge, by the standard of the gauge."""
    area = units.from_base(calc.area_of_gauge(gauge.typical), "mm**2")
    return derived("area_of_wire_gauge", "conductor_area", area, "mm**2", (gauge,), data, key={"gauge": gauge.text})


def area_text(size: str) -> str:
    """The copper of a size as the trade writes it: ``5.26 mm2``."""
    return f"{units.significant(calc.area_of_gauge(number_of(size)) * 1e6, 3)} mm2"
