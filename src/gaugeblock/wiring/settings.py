"""What is settled and what is open of a circuit: each way that it may be, as figures, the safer first."""

from __future__ import annotations

from itertools import product

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import printed
from gaugeblock.errors import InputError
from gaugeblock.lookup import look_up
from gaugeblock.tables.interval import parse_interval
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import TypeAlias

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.wiring.fusing import Fused
    from gaugeblock.wiring.heat import Placed
    from gaugeblock.wiring.keys import Circuit

    Lies: TypeAlias = Circuit | Fused | Placed

WIRE, LIMITS = "wiring/wire", "wiring/limits"
BOAT = "boat copper wire"
_LOOM = "7 to 24 conductors in a bundle"
_CABLES = ("SAE J1128 GPT cable", "SAE J1128 GXL cable")
_LETTERS = {"SAE J1128 GPT cable": "GPT, thick PVC", "SAE J1128 GXL cable": "GXL, TXL or SXL, cross-linked"}
_SYSTEMS = {"6 V": (5.5, 7.5), "12 V": (11.0, 15.0)}
_DROPS = (
    ("main feeders, blowers, electronics, navigation lights", "what must not fail"),
    ("other lighting and where it is not critical", "what may be dim or slow"),
)


class Way(Value):
    """One way that a key of a circuit may be: its figure (None: nothing to count) and what it says."""

    __slots__ = ("figure", "key", "words")

    key: str
    figure: Figure | None
    words: str

    def __init__(self, key: str, figure: Figure | None, words: str) -> None:
        put(self, "key", key)
        put(self, "figure", figure)
        put(self, "words", words)


class Setting(Value):
    """A circuit with nothing open: the way of each key."""

    __slots__ = ("ways",)

    ways: tuple[Way, ...]

    def __init__(self, ways: tuple[Way, ...]) -> None:
        put(self, "ways", ways)

    def way(self, key: str) -> Way:
        """The way of one key."""
        return next(w for w in self.ways if w.key == key)

    def number(self, key: str) -> float:
        """The number of one key in its base unit; 1 where there is nothing to count."""
        figure = self.way(key).figure
        return low_of(figure) if figure is not None else 1.0


def low_of(figure: Figure) -> float:
    """The lower end of a figure in its base unit: what an insulation bears for sure, where a source prints a range."""
    return base(figure) if figure.low is None else units.to_base(figure.low, figure.unit)


class Ways(Value):
    """All ways of a circuit, key by key, the safer first; a key with one way is settled."""

    __slots__ = ("by_key",)

    by_key: tuple[tuple[Way, ...], ...]

    def __init__(self, of: Circuit, voltage: Figure, data: Refdata) -> None:
        drops = _cranking(of, voltage, data) if of.is_starter and of.drop is None else _drops(of, voltage, data)
        put(self, "by_key", (drops, *lying(of, data), _returns(of)))

    @property
    def open(self) -> tuple[str, ...]:
        """The keys that have more than one way."""
        return tuple(ways[0].key for ways in self.by_key if len(ways) > 1)

    @property
    def plain(self) -> Setting:
        """The circuit as it mostly lies where nothing is said: alone, in the cabin, back through the body; of drop
        and insulation the stricter.
        """
        return Setting(tuple(ways[0] if ways[0].key in ("drop", "insulation") else ways[-1] for ways in self.by_key))

    def settings(self) -> Iterator[Setting]:
        """Every combination, the safest first."""
        yield from map(Setting, product(*self.by_key))


def lying(of: Lies, data: Refdata) -> tuple[tuple[Way, ...], ...]:
    """The ways that a wire may lie: its insulation, the air along it, the loom."""
    return _insulations(of, data), _airs(of, data), _bundles(of, data)


def _drops(of: Circuit, voltage: Figure, data: Refdata) -> tuple[Way, ...]:
    if of.drop is None:
        found = [
            look_up(LIMITS, "voltage_drop_share_maximum", data=data, subject=s, case="whole run", service="marine")
            for s, _ in _DROPS
        ]
        return tuple(
            Way("drop", _less_earth(_volts(f, voltage, data), of, data), f"{printed(f, data)} for {words}")
            for f, (_, words) in zip(found, _DROPS, strict=True)
        )
    if units.dimension(of.drop.unit) == "voltage":
        limit = stated(of.drop, "voltage_drop_maximum", "drop", data)
        return (Way("drop", _less_earth(limit, of, data), of.drop.text),)
    share = stated(of.drop, "voltage_drop_share", "drop", data)
    return (Way("drop", _less_earth(_volts(share, voltage, data), of, data), of.drop.text),)


_SHORT_FEET = 6  # to which a manual has figures of their own


def _cranking(of: Circuit, voltage: Figure, data: Refdata) -> tuple[Way, ...]:
    """What a cable may lose while the starter turns, by the manuals; by its length where they say."""
    volts, feet = base(voltage), units.from_base(units.to_base(float(of.length.value), of.length.unit), "ft")
    system = next((s for s, (low, high) in _SYSTEMS.items() if low <= volts <= high), "")
    case = "each cable"
    subject = f"{system} starting"
    if system == "12 V" and feet <= _SHORT_FEET:
        subject, case = "12 V cranking", "cable under 3 ft" if feet < 3 else "cable over 3 to 6 ft"
    if not system:
        raise InputError(f"{of.voltage.text}", "drop", "no manual was found for this voltage", (), "give the drop")
    figure = look_up(LIMITS, "voltage_drop_maximum", data=data, subject=subject, case=case, service="vehicle")
    strict = Way("drop", figure, f"{printed(figure, data)} while cranking")
    if system != "12 V" or feet <= _SHORT_FEET:
        return (strict,)
    subject, case = "cranking", "battery positive cable and connections"  # of a battery in the boot
    loose = look_up(LIMITS, "voltage_drop_maximum", data=data, subject=subject, case=case, service="vehicle")
    return strict, Way("drop", loose, f"{printed(loose, data)} while cranking, connections and all")


def _less_earth(limit: Figure, of: Circuit, data: Refdata) -> Figure:
    """What is left for the wire of an allowed drop where the body was measured to lose some of it."""
    if of.earth_drop is None:
        return limit
    earth = stated(of.earth_drop, "voltage_drop", "earth_drop", data)
    number = base(limit) - base(earth)
    if number <= 0:
        why = f"it is all of the {printed(limit, data)} that is allowed"
        raise InputError(of.earth_drop.text, "earth_drop", why, (), "clean and bolt the earth, and measure again")
    key = {"limit": printed(limit, data), "earth": of.earth_drop.text}
    return derived("voltage_left", "voltage_drop_maximum", number, "V", (limit, earth), data, key=key)


def _volts(share: Figure, voltage: Figure, data: Refdata) -> Figure:
    number = base(share) * base(voltage)
    said = printed(share, data)
    key = {"drop": said, "voltage": printed(voltage, data)}
    inputs = (share, voltage)
    return derived("voltage_drop_of_share", "voltage_drop_maximum", number, "V", inputs, data, key=key)


def _insulations(of: Lies, data: Refdata) -> tuple[Way, ...]:
    if isinstance(of.insulation, Measure):
        figure = stated(of.insulation, "insulation_temperature", "insulation", data)
        return (Way("insulation", figure, f"insulation for {of.insulation.text}"),)
    cables = (of.insulation,) if of.insulation is not None else _CABLES
    every = {"size": "all sizes", "condition": "any"}
    found = ((c, _strictest(look_up(WIRE, "temperature_maximum", data=data, item=c, **every))) for c in cables)
    return tuple(Way("insulation", f, f"{_LETTERS.get(c, c)} ({printed(f, data)})") for c, f in found)


def _strictest(figure: Figure) -> Figure:
    """What governs, or another source's figure where that is lower: a hot wire is judged by the stricter."""
    return min((figure, *(o for o in figure.others if not o.standing)), key=low_of)


def _airs(of: Lies, data: Refdata) -> tuple[Way, ...]:
    if isinstance(of.air, Measure):
        return (Way("air", stated(of.air, "air_temperature", "air", data), f"{of.air.text} air"),)
    cases = {
        None: ("by the engine", "in the cabin"),
        "by the engine": ("by the engine", "boat engine space"),
        "in the cabin": ("in a cabin that stood in the sun", "in the cabin"),
    }[of.air]
    found = [(c, look_up(LIMITS, "air_temperature", data=data, subject="air around a wire", case=c)) for c in cases]
    return tuple(Way("air", f, f"{printed(f, data)} air{_where(c)}") for c, f in found)


def _where(case: str) -> str:
    return ", the least for an engine compartment" if case == "boat engine space" else f" {case}"


def _bundles(of: Lies, data: Refdata) -> tuple[Way, ...]:
    if of.is_starter:
        return (Way("bundle", None, "alone"),)
    if of.bundle is None:
        loom = look_up(WIRE, "bundle_factor", data=data, item=BOAT, size="all sizes", condition=_LOOM)
        return (Way("bundle", loom, "in a loom of 7 to 24 loaded wires"), Way("bundle", None, "alone"))
    if of.bundle <= 2:
        return (Way("bundle", None, "alone, or with its own return"),)
    row = next(r for r in data.table(WIRE).of("bundle_factor") if _holds(r.cells["condition"], of.bundle))
    factor = look_up(WIRE, "bundle_factor", data=data, item=BOAT, size="all sizes", condition=row.cells["condition"])
    return (Way("bundle", factor, f"{of.bundle} loaded wires together"),)


def _holds(cell: str, count: int) -> bool:
    interval = parse_interval(cell.removesuffix(" conductors in a bundle"))
    return interval is not None and interval.holds(units.parse_number(str(count)))


def _returns(of: Circuit) -> tuple[Way, ...]:
    if of.is_starter:
        return (Way("return", None, "one cable by itself"),)
    said = {"wire": "back by a wire of the same size", "body": "back through the body"}
    ways = {w: Way("return", None, words) for w, words in said.items()}
    back = "body" if of.back is None and of.earth_drop is not None else of.back
    return tuple(ways.values()) if back is None else (ways[back],)
