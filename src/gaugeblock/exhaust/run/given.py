"""What is known of a run: its pipe, its shape, its heat, what it hangs from and what hangs on it."""

from __future__ import annotations

import re

from gaugeblock.answer.making import read_positive
from gaugeblock.errors import InputError
from gaugeblock.listed import items
from gaugeblock.units import parse_measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.known import Known
    from gaugeblock.units import Measure


class Hanger(Value):
    """A hanger at a place of the run, its length from pin to pin, and the force that it may carry; None not given."""

    __slots__ = ("at", "length", "limit")

    at: Measure
    length: Measure | None
    limit: Measure | None

    def __init__(self, at: Measure, length: Measure | None = None, limit: Measure | None = None) -> None:
        put(self, "at", at)
        put(self, "length", length)
        put(self, "limit", limit)


class Mass(Value):
    """A part that hangs on the run: what it is, its place and its mass."""

    __slots__ = ("at", "mass", "what")

    what: str
    at: Measure
    mass: Measure

    def __init__(self, what: str, at: Measure, mass: Measure) -> None:
        put(self, "what", what)
        put(self, "at", at)
        put(self, "mass", mass)


class Flex(Value):
    """A flexible section: where it begins and how long it is; its travel and spring rate by its maker, its area."""

    __slots__ = ("area", "at", "kind", "length", "rate", "travel")

    at: Measure
    length: Measure | None
    kind: str | None
    travel: Measure | None
    rate: Measure | None
    area: Measure | None

    def __init__(
        self,
        at: Measure,
        length: Measure | None = None,
        kind: str | None = None,
        travel: Measure | None = None,
        rate: Measure | None = None,
        area: Measure | None = None,
    ) -> None:
        put(self, "at", at)
        put(self, "length", length)
        put(self, "kind", kind)
        put(self, "travel", travel)
        put(self, "rate", rate)
        put(self, "area", area)


class Gap(Value):
    """A neighbour of the run: what it is, the gap when cold, and where on the run; None where it is not said. ``heat``
    is what is known for its heat, by the keys of the answer ``exhaust_gap``.
    """

    __slots__ = ("at", "gap", "heat", "to")

    to: str
    gap: Measure
    at: Measure | None
    heat: dict[str, str]

    def __init__(self, to: str, gap: Measure, at: Measure | None = None, heat: Mapping[str, str] | None = None) -> None:
        put(self, "to", to)
        put(self, "gap", gap)
        put(self, "at", at)
        put(self, "heat", dict(heat or {}))


class Run(Value):
    """A run as given; its places are measured along its middle line from its front end, where the engine is."""

    __slots__ = (
        "cold_end",
        "expansion",
        "fixed",
        "flex",
        "gaps",
        "hangers",
        "hot",
        "jurisdiction",
        "length",
        "masses",
        "material",
        "od",
        "pressure",
        "wall",
    )

    od: Measure
    wall: Measure
    material: str
    hot: Measure | None
    expansion: Known | None
    cold_end: Known | None
    length: Measure | None
    fixed: Measure | None
    flex: Flex | None
    pressure: Measure | None
    hangers: tuple[Hanger, ...]
    masses: tuple[Mass, ...]
    gaps: tuple[Gap, ...]
    jurisdiction: str | None

    def __init__(
        self,
        od: Measure,
        wall: Measure,
        material: str,
        *,
        hot: Measure | None = None,
        expansion: Known | None = None,
        cold_end: Known | None = None,
        length: Measure | None = None,
        fixed: Measure | None = None,
        flex: Flex | None = None,
        pressure: Measure | None = None,
        hangers: Sequence[Hanger] = (),
        masses: Sequence[Mass] = (),
        gaps: Sequence[Gap] = (),
        jurisdiction: str | None = None,
    ) -> None:
        if 2 * wall.to("m") >= od.to("m"):
            raise InputError(wall.text, "wall", "leaves no bore", (), "give the wall of the pipe")
        put(self, "od", od)
        put(self, "wall", wall)
        put(self, "material", material)
        put(self, "hot", hot)
        put(self, "expansion", expansion)
        put(self, "cold_end", cold_end)
        put(self, "length", length)
        put(self, "fixed", fixed)
        put(self, "flex", flex)
        put(self, "pressure", pressure)
        put(self, "hangers", tuple(sorted(hangers, key=lambda h: h.at.to("m"))))
        put(self, "masses", tuple(masses))
        put(self, "gaps", tuple(gaps))
        put(self, "jurisdiction", jurisdiction)


_AT = re.compile(r"(?P<first>.+?) at (?P<at>.+)")


def at_places(typed: str, where: str) -> list[tuple[str, str]]:
    """``12 lb at 80 in, 6 lb at 20 in`` -> what stands at each place, and the place; InputError otherwise."""
    out = []
    for part in items(typed, where):
        found = _AT.fullmatch(" ".join(part.split()))
        if found is None:
            raise InputError(
                part.strip()[:60], where, "no place with it", (), "write each with its place: 12 lb at 80 in"
            )
        out.append((found["first"], found["at"]))
    return out


def place(typed: str, where: str) -> Measure:
    """A place on the run; InputError under nothing."""
    return read_positive(parse_measure(typed, "length", where), "length", where, zero=True)
