"""One wire and its current: how hot it runs where it lies hottest, and whether it stands it where it lies coolest."""

from __future__ import annotations

from itertools import product

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import printed
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.lookup import look_up
from gaugeblock.units import Measure
from gaugeblock.value import Value, put
from gaugeblock.wiring import checks, conductor, keys, settings
from gaugeblock.wiring.conductor import SIZES
from gaugeblock.wiring.settings import LIMITS, Setting, Way

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.wiring.settings import Lies


class Placed(Value):
    """What one wire lies in, as it was said; None where nothing was."""

    __slots__ = ("air", "bundle", "insulation", "is_starter")

    insulation: Measure | str | None
    air: Measure | str | None
    bundle: int | None
    is_starter: bool

    def __init__(self, asked: dict[str, str | None], data: Refdata) -> None:
        put(self, "insulation", keys.insulation_of(asked.get("insulation"), data))
        put(self, "air", keys.air_of(asked.get("air")))
        put(self, "bundle", keys.count_of(asked.get("bundle"), "bundle"))
        put(self, "is_starter", keys.kind_of(asked.get("kind")) == keys.STARTER)
        if self.is_starter and self.bundle is not None:
            raise InputError(str(asked["bundle"]), "bundle", keys.ALONE, (), "leave the bundle out")


def ways_of(placed: Lies, data: Refdata) -> list[Setting]:
    """The ways that a wire may lie; InputError where the air is over what its insulation bears."""
    found = [lie for ways in product(*settings.lying(placed, data)) if conductor.serves(lie := Setting(ways))]
    if not found:
        air = placed.air.text if isinstance(placed.air, Measure) else str(placed.air)
        raise InputError(air, "air", "over what the insulation bears", (), "choose insulation for more heat")
    return found


def coolest(lies: Sequence[Setting], data: Refdata) -> list[Setting]:
    """The same ways as cool as they may be: where habit alone says how hot the air is, the air that the table of
    wires is made for, so that what fails there fails by what is published.
    """
    return list({lie.ways: lie for lie in (cooled(one, data) for one in lies)}.values())


def cooled(one: Setting, data: Refdata) -> Setting:
    """One way as cool as it may be."""
    air = one.way("air").figure
    if air is None or Bound(air.typical, air.unit, "", air).is_firm:
        return one
    reference = conductor.reference(data)
    cool = Way("air", reference, f"{printed(reference, data)} air")
    return Setting(tuple(cool if way.key == "air" else way for way in one.ways))


def most(size: str, lies: Sequence[Setting], data: Refdata) -> Figure:
    """What a size may carry for as long as the load lasts where it lies coolest: more overheats it everywhere."""
    return max((conductor.allowed(size, lie, data) for lie in coolest(lies, data)), key=base)


def needed(amperes: float, lies: Sequence[Setting], data: Refdata) -> str:
    """The least size that stands a current, A, where it lies coolest; blank where none of the table does."""
    at = min(conductor.least_by_heat(amperes, lie, data) for lie in coolest(lies, data))
    return SIZES[at] if at < len(SIZES) else ""


def fit(size: str) -> str:
    """What to fit in place of a wire that a current overheats everywhere, as a sentence."""
    if not size:
        return f"No single wire up to {SIZES[-1].removeprefix('AWG ')} AWG stands it: share the load."
    return f"Fit {size.removeprefix('AWG ')} AWG or heavier: that is the least, even there."


class Warm(Value):
    """A wire under its current: how hot it runs where it lies hottest (``lie``), its resistance there, the check of
    its heat (None: it stands it everywhere), and the size that stands it where that is coolest (blank: none does).
    """

    __slots__ = ("check", "figures", "lie", "resistance", "size", "temperature")

    check: Check | None
    figures: tuple[Figure, ...]
    lie: Setting
    resistance: Figure
    size: str
    temperature: Figure

    def __init__(self, lie: Setting, temperature: Figure, resistance: Figure, check: Check | None, size: str) -> None:
        put(self, "lie", lie)
        put(self, "temperature", temperature)
        put(self, "resistance", resistance)
        put(self, "check", check)
        bounds = () if check is None else (check.actual, check.required)
        put(self, "figures", tuple(b.figure for b in bounds if b is not None and b.figure is not None))
        put(self, "size", size)


def warmed(wire: Measure, cold: Figure, current: Figure, placed: Placed, data: Refdata) -> Warm:
    """A wire under its current, of this greatest resistance at 20 degC."""
    lies = ways_of(placed, data)
    size, is_thinner = _size(wire, data)
    time = (
        look_up(LIMITS, "cranking_time", data=data, subject="cranking", case="one try") if placed.is_starter else None
    )
    every = []
    for lie in lies:
        heat = conductor.lasting_heat(size, lie, current, data)
        hot = heat if time is None else conductor.cranking_heat(size, cold, lie, current, time, data)
        bears = _bears(lie)
        every.append((bears if is_thinner or base(hot) > base(bears) else hot, lie))
    hot, lie = max(every, key=lambda one: base(one[0]))
    if hot.quantity != "conductor_temperature":
        hot = _at_most(
            hot, "conductor_temperature", (hot,), {"size": size, "insulation": lie.way("insulation").words}, data
        )
    key = {"size": cold.key["size"], **{way.key: way.words for way in lie.ways}}
    resistance = conductor.resistance_hot(cold, hot, key, data)
    if time is not None:
        check = _stands_a_try(wire, size, cold, current, time, lies, data)
        return Warm(lie, hot, resistance, check, _cable(current, time, lies, data))
    check = stands(keys.named(wire), size, current, lies, data)
    return Warm(lie, hot, resistance, check, needed(base(current), lies, data))


def _cable(current: Figure, time: Figure, lies: Sequence[Setting], data: Refdata) -> str:
    """The least cable that stands one try of the starter where it lies coolest; blank where none of the table does."""
    for size in SIZES:
        cold = conductor.cold_resistance(size, data)
        for lie in coolest(lies, data):
            hot = conductor.cranking_heat(size, cold, lie, current, time, data)
            if base(hot) <= settings.low_of(_bears(lie)) * (1 + 1e-9):
                return size
    return ""


def _size(wire: Measure, data: Refdata) -> tuple[str, bool]:
    """The size of the table that a wire holds, and whether it is thinner than any of them."""
    try:
        return conductor.size_of(checks.there(wire, data)), False
    except LookupMiss:
        return SIZES[0], True


def _at_most(one: Figure, quantity: str, of: Sequence[Figure], key: dict[str, str], data: Refdata) -> Figure:
    unit = of[0].unit
    ends = None, units.in_unit(one.typical, one.unit, unit)
    return derived("envelope", quantity, None, unit, of, data, ends=ends, key=key)


def greatest(cold: Figure, warm: Warm, data: Refdata) -> Figure:
    """The greatest resistance of a wire from cold to as hot as it runs."""
    return _at_most(warm.resistance, "resistance_maximum", (cold, warm.resistance), dict(warm.resistance.key), data)


def stands(wire: str, size: str, current: Figure, lies: Sequence[Setting], data: Refdata) -> Check | None:
    """That a wire stands a current that lasts: stops where it is too hot wherever it lies, asks where only habit has
    it so, informs where it is too hot in some places; None where it stands it everywhere.
    """
    everywhere = [conductor.allowed(size, lie, data) for lie in lies]
    least, usual, top = min(everywhere, key=base), max(everywhere, key=base), most(size, lies, data)
    amperes = base(current) * (1 - 1e-9)
    if base(least) >= amperes:
        return None
    carries, bears, where = least, INFORM, "where it lies hottest"
    if base(top) < amperes:
        carries, bears, where = top, STOP, "even where it lies coolest"
    elif base(usual) < amperes:
        carries, bears, where = usual, ASK, "where it usually lies coolest"
    said = f"{wire} wire may carry {printed(carries, data)} {where}, and {printed(current, data)} is to go through it"
    bounds = Bound(base(carries), "A", "", carries), Bound(base(current), "A", "", current)
    if bears == INFORM:  # it hangs on where it lies, which was not said
        said = f"{said}; where it lies coolest it may carry {printed(top, data)}: say the air and the loom"
        return Check("wire stands its current", CANNOT_TELL, said, *bounds, subject="wire", case=size, bears=bears)
    return at_least("wire stands its current", *bounds, said, subject="wire", case=size, bears=bears)


def _stands_a_try(
    wire: Measure, size: str, cold: Figure, current: Figure, time: Figure, lies: Sequence[Setting], data: Refdata
) -> Check | None:
    """That a starter's cable stands one try, where the air is coolest and its insulation bears the most."""
    tries = [(conductor.cranking_heat(size, cold, lie, current, time, data), lie) for lie in coolest(lies, data)]
    hot, lie = min(tries, key=lambda one: base(one[0]) - settings.low_of(_bears(one[1])))
    limit = _bears(lie)
    if base(hot) <= settings.low_of(limit) * (1 + 1e-9):
        return None
    said = (
        f"{keys.named(wire)} cable passes {printed(limit, data)}, which is all that its insulation bears, within a try"
        f" of {printed(time, data)}"
    )
    bounds = Bound(base(hot), "K", "", hot), Bound(settings.low_of(limit), "K", "", limit)
    return at_most("cable stands a try", *bounds, said, subject="wire", case=size)


def _bears(lie: Setting) -> Figure:
    figure = lie.way("insulation").figure
    assert figure is not None
    return figure
