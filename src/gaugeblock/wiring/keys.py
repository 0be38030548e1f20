"""What is asked of a circuit, read once: current, run, voltage, drop, insulation, air, bundle, return, fuse."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.errors import InputError
from gaugeblock.tables.catalogue import OPTIONS
from gaugeblock.tables.load import canonical, option
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.tables.load import Refdata

RETURNS = OPTIONS["wiring return"]
STARTER = "starter cable"
KINDS = ("load", STARTER)
PLACES = ("by the engine", "in the cabin")
_DEGREES = re.compile(r"(?P<number>[0-9.]+ *(?:deg ?)?[CF])(?: insulation)?", re.ASCII)
_MOST = {"bundle": 200, "wires": 12}
_SHARE = 0.25
_BATTERY = Measure(Fraction(12), "V", "12 V")
_NOT_OF_A_STARTER = ("bundle", "earth_drop", "fuse", "relay", "wires")
ALONE = "does not belong to a starter cable: each is judged alone, for seconds, without a fuse"
_OPTIONAL = (
    "power",
    "drop",
    "insulation",
    "air",
    "bundle",
    "back",
    "earth_drop",
    "fuse",
    "connector",
    "relay",
    "wire",
    "wires",
    "kind",
)


class Circuit(Value):
    """One circuit; None where something was not given.

    ``power`` is the load's where that was given, and ``current`` follows from it; ``drop`` is volts or a share of the
    voltage; ``insulation`` a temperature or the cell of a cable; ``air`` a
    temperature or one of ``PLACES``; ``bundle`` how many loaded wires lie together; ``back`` one of ``RETURNS``;
    ``earth_drop`` what the body was measured to lose; ``connector`` and ``relay`` what the weakest connector and the
    relay's contact may carry; ``wire`` a wire that is there already, by gauge or area; ``wires`` how many equal ones
    share the current; ``kind`` one of ``KINDS``.
    """

    __slots__ = ("current", "length", "voltage", *_OPTIONAL)

    current: Measure
    length: Measure
    voltage: Measure
    power: Measure | None
    drop: Measure | None
    insulation: Measure | str | None
    air: Measure | str | None
    bundle: int | None
    back: str | None
    earth_drop: Measure | None
    fuse: Measure | None
    connector: Measure | None
    relay: Measure | None
    wire: Measure | None
    wires: int | None
    kind: str | None

    def __init__(self, current: Measure, length: Measure, voltage: Measure, **given: Any) -> None:
        unknown = set(given) - set(_OPTIONAL)
        if unknown:
            raise TypeError(f"not of a circuit: {', '.join(sorted(unknown))}")
        put(self, "current", current)
        put(self, "length", length)
        put(self, "voltage", voltage)
        for name in _OPTIONAL:
            put(self, name, given.get(name))

    @property
    def is_starter(self) -> bool:
        """Whether it is a cable of the starter: seconds of a great current, each cable judged alone."""
        return self.kind == STARTER


def circuit_of(asked: dict[str, str | None], data: Refdata) -> Circuit:
    """The Circuit of what was typed; InputError, UnitError or LookupMiss for what cannot be read."""

    for key in ("current", "length"):
        if not asked.get(key):
            raise InputError("circuit", key, "not given", (), f"give the {key}")

    def positive(key: str, dimension: str) -> Measure | None:
        return read_positive(typed, dimension, key, zero=key == "earth_drop") if (typed := asked.get(key)) else None

    voltage = voltage_of(asked.get("voltage"))
    current, power = load_of(asked["current"] or "", voltage)
    of = Circuit(
        current,
        read_positive(asked["length"] or "", "length", "length"),
        voltage,
        power=power,
        drop=drop_of(asked.get("drop")),
        insulation=insulation_of(asked.get("insulation"), data),
        air=air_of(asked.get("air")),
        bundle=count_of(asked.get("bundle"), "bundle"),
        back=back_of(asked.get("return")),
        earth_drop=positive("earth_drop", "voltage"),
        fuse=positive("fuse", "current"),
        connector=positive("connector", "current"),
        relay=positive("relay", "current"),
        wire=wire_of(asked.get("wire")),
        wires=count_of(asked.get("wires"), "wires"),
        kind=kind_of(asked.get("kind")),
    )
    if of.is_starter:
        for key in _NOT_OF_A_STARTER:
            if asked.get(key):
                raise InputError(asked[key] or "", key, ALONE, (), f"leave the {key.replace('_', ' ')} out")
    if of.earth_drop is not None and of.back == "wire":
        said = "the current comes back by a wire, and the body loses nothing"
        raise InputError(of.earth_drop.text, "earth_drop", said, (), "leave it out, or write return = body")
    if of.wires is not None and of.bundle is not None and of.bundle < of.wires:
        why = f"{of.wires} wires share the current, and lie together"
        raise InputError(str(of.bundle), "bundle", why, (), "count them all")
    return of


def voltage_of(typed: str | None) -> Measure:
    """The voltage of the system: 12 V, which nearly every vehicle has, where it was not said."""
    return read_positive(typed, "voltage", "voltage") if typed else _BATTERY


def volts_said(voltage: Measure, typed: str | None) -> str:
    """The voltage as a title has it, with a word where it was taken."""
    return voltage.text if typed else f"{voltage.text} (taken: say 6 V or 24 V if it has that)"


def load_of(typed: str, voltage: Measure) -> tuple[Measure, Measure | None]:
    """The current of a load, and its power where that is what was typed: ``100 W`` at 12 V is 8.33 A."""
    if not typed.rstrip().casefold().endswith(("w", "watt", "watts")):
        return read_positive(typed, "current", "current"), None
    power = read_positive(typed, "power", "current")
    amps = Fraction(power.to("W")) / Fraction(voltage.to("V"))
    return Measure(amps, "A", f"{units.significant(float(amps), 3)} A"), power


def drop_of(typed: str | None) -> Measure | None:
    """An allowed drop in volts or as a share: ``0.5 V``, ``3 %``."""
    if not typed:
        return None
    got = units.parse_measure(typed, "voltage" if typed.rstrip()[-1:].lower() in ("v", "s", "t") else "ratio", "drop")
    share = got.to("1") if units.dimension(got.unit) == "ratio" else 0.0
    if got.value <= 0 or share >= _SHARE:
        raise InputError(typed, "drop", "not a drop over zero and under 25 %", (), "write it as 3 % or 0.5 V")
    return got


def insulation_of(typed: str | None, data: Refdata) -> Measure | str | None:
    """What the insulation bears (``105 degC``), or the cable by its letters (``GXL``) as the cell of the table."""
    if not typed:
        return None
    match = _DEGREES.fullmatch(typed.strip())
    if match is not None:
        return units.parse_measure(match["number"], "temperature", "insulation")
    return canonical(data, "wiring/wire", "item", typed)


def air_of(typed: str | None) -> Measure | str | None:
    """The air along the wire: a temperature, or a place of ``PLACES``."""
    if not typed:
        return None
    said = " ".join(typed.casefold().split())
    for place in PLACES:
        if said in (place, place.split()[-1]):
            return place
    if not said[:1].isdigit() and said[:1] not in "+-.":
        raise InputError(typed, "air", "neither a temperature nor a place", PLACES, "write it as 60 degC")
    return units.parse_measure(typed, "temperature", "air")


def count_of(typed: str | None, key: str) -> int | None:
    """How many wires: those that lie together loaded, or those that share the current."""
    if not typed:
        return None
    text = typed.strip().removesuffix("wires").removesuffix("wire").strip()
    most = _MOST[key]
    count = units.whole_number(text)
    if count is None or not 1 <= count <= most:
        raise InputError(typed, key, f"not a count from 1 to {most}", (), "count the wires that carry current")
    return count


def kind_of(typed: str | None) -> str | None:
    """What kind of circuit: a load, or a cable of the starter."""
    if not typed:
        return None
    return option(typed, "wiring kind", "not a kind of circuit")


def back_of(typed: str | None) -> str | None:
    """How the current comes back."""
    if not typed:
        return None
    return option(typed, "wiring return", "neither a wire nor the body", "write wire or body")


_LARGEST = Measure(Fraction(24), "V", "24 V")


def too_great(drop: Measure, voltage: Measure | None, data: Refdata) -> str:
    """Why an allowed drop is questioned: it is a larger share of the system than any circuit may lose; blank where it
    is none. Of a system that was not named the largest that is usual, 24 V.
    """
    span = plausible_range("voltage_drop_share", data)
    if span is None:  # of an earlier data release
        return ""
    of = voltage or _LARGEST
    share = drop.to("1") if units.dimension(drop.unit) == "ratio" else drop.to("V") / of.to("V")
    if share <= span[1] * (1 + 1e-9):
        return ""
    system = f" of {of.text}" if units.dimension(drop.unit) == "voltage" else ""
    return did_you_mean(f"{drop.text}{system} is no usual drop", ())


def all_lost(volts: float, voltage: Measure | None) -> str:
    """Why a drop, V, is questioned: it is all that the battery has; blank where it is not."""
    of = voltage or _BATTERY
    if volts < of.to("V") * (1 - 1e-9):
        return ""
    lost = f"{units.significant(volts, 3)} V would be lost, and {of.text} is all that"
    said = f"{lost} {'the system' if voltage else 'a usual battery'} has"
    return did_you_mean(f"{said}: the wire, the current or the length is hardly meant", ())


def wire_of(typed: str | None) -> Measure | None:
    """A gauge number of ``10 AWG``, ``SAE 10``, ``2/0`` or ``00`` (0 is 1/0, -1 is 2/0); or ``6 mm2``.

    A bare number is refused: it may be a gauge or an area. Only gauges are written ``2/0`` or ``00``.
    """
    if not typed:
        return None
    if typed.casefold().rstrip().endswith(("mm2", "mm**2", "mm^2", "cmil")):
        return read_positive(typed, "area", "wire")
    bare = " ".join(typed.casefold().split())
    if re.fullmatch(r"[0-9]*\.?[0-9]+", bare, re.ASCII) and set(bare) != {"0"}:
        why = "a number alone is a gauge to one shop and an area in mm2 to another"
        meant = (f"{bare} mm2",) if "." in bare else (f"{bare} AWG", f"{bare} mm2")
        raise InputError(typed, "wire", why, (), f"say {' or '.join(meant)}")
    text = re.sub(r"(?<![a-z])(?:awg|sae|gauge|ga)(?![a-z])|#", " ", bare)
    text = " ".join(text.split())
    if set(text) == {"0"}:
        text = f"{len(text)}/0"
    if not re.fullmatch(r"[1-9][0-9]?|[1-4]/0", text, re.ASCII):
        raise InputError(typed, "wire", "not a wire gauge", (), "write it as 10 AWG, 2/0 or 6 mm2")
    number = 1 - int(text[0]) if "/" in text else int(text)
    return Measure(Fraction(number), "AWG", f"{text} AWG")


def named(wire: Measure) -> str:
    """A wire as the trade writes it: ``16 mm2``, ``10 AWG``."""
    return wire.text.replace("mm**2", "mm2")
