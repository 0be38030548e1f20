"""What is asked of a circuit, read once: current, run, voltage, drop, insulation, air, bundle, return, fuse."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.errors import InputError
from gaugeblock.tables.load import canonical
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

RETURNS = ("wire", "body")
PLACES = ("by the engine", "in the cabin")
_DEGREES = re.compile(r"(?P<number>[0-9.]+ *(?:deg ?)?[CF])(?: insulation)?", re.ASCII)
_MOST_WIRES = 200
_SHARE = 0.25


class Circuit(Value):
    """One circuit; None where something was not given.

    ``drop`` is volts or a share of the voltage; ``insulation`` a temperature or the cell of a cable; ``air`` a
    temperature or one of ``PLACES``; ``bundle`` how many loaded wires lie together; ``back`` one of ``RETURNS``;
    ``connector`` what the weakest connector may carry; ``wire`` the gauge of a wire that is there already.
    """

    __slots__ = (
        "air",
        "back",
        "bundle",
        "connector",
        "current",
        "drop",
        "fuse",
        "insulation",
        "length",
        "voltage",
        "wire",
    )

    current: Measure
    length: Measure
    voltage: Measure
    drop: Measure | None
    insulation: Measure | str | None
    air: Measure | str | None
    bundle: int | None
    back: str | None
    fuse: Measure | None
    connector: Measure | None
    wire: Measure | None

    def __init__(
        self,
        current: Measure,
        length: Measure,
        voltage: Measure,
        drop: Measure | None = None,
        insulation: Measure | str | None = None,
        air: Measure | str | None = None,
        bundle: int | None = None,
        back: str | None = None,
        fuse: Measure | None = None,
        connector: Measure | None = None,
        wire: Measure | None = None,
    ) -> None:
        put(self, "current", current)
        put(self, "length", length)
        put(self, "voltage", voltage)
        put(self, "drop", drop)
        put(self, "insulation", insulation)
        put(self, "air", air)
        put(self, "bundle", bundle)
        put(self, "back", back)
        put(self, "fuse", fuse)
        put(self, "connector", connector)
        put(self, "wire", wire)


def circuit_of(asked: dict[str, str | None], data: Refdata) -> Circuit:
    """The Circuit of what was typed; InputError, UnitError or LookupMiss for what cannot be read."""

    def amperes(key: str) -> Measure | None:
        return read_positive(typed, "current", key) if (typed := asked.get(key)) else None

    for key in ("current", "length", "voltage"):
        if not asked.get(key):
            raise InputError("circuit", key, "not given", (), f"give the {key}")
    return Circuit(
        read_positive(asked["current"] or "", "current", "current"),
        read_positive(asked["length"] or "", "length", "length"),
        read_positive(asked["voltage"] or "", "voltage", "voltage"),
        drop_of(asked.get("drop")),
        insulation_of(asked.get("insulation"), data),
        air_of(asked.get("air")),
        bundle_of(asked.get("bundle")),
        back_of(asked.get("return")),
        amperes("fuse"),
        amperes("connector"),
        wire_of(asked.get("wire")),
    )


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


def bundle_of(typed: str | None) -> int | None:
    """How many loaded wires lie together; the wire itself is one."""
    if not typed:
        return None
    text = typed.strip().removesuffix("wires").removesuffix("wire").strip()
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= _MOST_WIRES:
        raise InputError(typed, "bundle", f"not a count from 1 to {_MOST_WIRES}", (), "count the wires that are loaded")
    return int(text)


def back_of(typed: str | None) -> str | None:
    """How the current comes back."""
    if not typed:
        return None
    said = typed.strip().casefold()
    said = "body" if said in ("body", "chassis", "frame", "earth", "ground") else said
    if said not in RETURNS:
        raise InputError(typed, "return", "neither a wire nor the body", RETURNS, "write wire or body")
    return said


def wire_of(typed: str | None) -> Measure | None:
    """A gauge number of ``10``, ``10 AWG``, ``SAE 10``, ``2/0`` or ``00``; 0 is 1/0, -1 is 2/0."""
    if not typed:
        return None
    text = re.sub(r"\b(?:awg|sae|gauge|ga)\b|#", " ", typed.casefold())
    text = " ".join(text.split())
    if set(text) == {"0"}:
        text = f"{len(text)}/0"
    if not re.fullmatch(r"[1-9][0-9]?|[1-4]/0", text, re.ASCII):
        raise InputError(typed, "wire", "not a wire gauge", (), "write it as 10 AWG or 2/0")
    number = 1 - int(text[0]) if "/" in text else int(text)
    return Measure(Fraction(number), "AWG", f"{text} AWG")
