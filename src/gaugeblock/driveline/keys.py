"""What is asked of the driveline, read once: a shaft, a hardness, a spline, a step of a set-up."""

from __future__ import annotations

import re
from collections.abc import Mapping

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.errors import InputError
from gaugeblock.job import values
from gaugeblock.tables.catalogue import OPTIONS
from gaugeblock.tables.load import canonical, option
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

ROOTS = OPTIONS["driveline root"]
FITS = OPTIONS["driveline fit"]
PHASES = OPTIONS["driveline phasing"]

_HARDNESS = re.compile(
    r"(?P<word>[A-Za-z][A-Za-z ]*?)?\s*(?P<number>[0-9./ -]*[0-9.])\s*(?P<unit>[A-Za-z][A-Za-z ]*)?", re.ASCII
)
_BEGINS = frozenset("0123456789.+-")


class Hardness(Value):
    """A hardness: the cell of its scale, and its number as decimal text."""

    __slots__ = ("number", "scale")

    scale: str
    number: str

    def __init__(self, scale: str, number: str) -> None:
        put(self, "scale", scale)
        put(self, "number", number)

    @property
    def text(self) -> str:
        """As people write it: ``42 HRC``."""
        return f"{self.number} {self.scale}"


class Shaft(Value):
    """A shaft: its steel and treatment as typed, sizes and torque; None where one was not given.

    ``section`` is the bar's own size, ``hardness`` what was measured on this very shaft, ``yield_strength`` its own by
    the ``certificate`` named or as measured; ``case_depth`` and ``core_hardness`` of a case-hardened one;
    ``shear_modulus`` the steel's own.
    """

    __slots__ = (
        "bore",
        "case_depth",
        "certificate",
        "core_hardness",
        "diameter",
        "grade",
        "hardness",
        "length",
        "section",
        "shear_modulus",
        "temper",
        "torque",
        "treatment",
        "yield_strength",
    )

    grade: str
    treatment: str
    temper: Measure | None
    section: Measure | None
    diameter: Measure | None
    bore: Measure | None
    length: Measure | None
    torque: Measure | None
    hardness: Hardness | None
    yield_strength: Known | None
    certificate: str
    case_depth: Measure | None
    core_hardness: Hardness | None
    shear_modulus: Known | None

    def __init__(
        self,
        grade: str,
        treatment: str,
        *,
        temper: Measure | None = None,
        section: Measure | None = None,
        diameter: Measure | None = None,
        bore: Measure | None = None,
        length: Measure | None = None,
        torque: Measure | None = None,
        hardness: Hardness | None = None,
        yield_strength: Known | None = None,
        certificate: str = "",
        case_depth: Measure | None = None,
        core_hardness: Hardness | None = None,
        shear_modulus: Known | None = None,
    ) -> None:
        if diameter is not None and bore is not None and bore.to("m") >= diameter.to("m"):
            raise InputError(bore.text, "bore", "not smaller than the shaft", (), "give bore and outside diameter")
        put(self, "grade", grade)
        put(self, "treatment", treatment)
        put(self, "temper", temper)
        put(self, "section", section)
        put(self, "diameter", diameter)
        put(self, "bore", bore)
        put(self, "length", length)
        put(self, "torque", torque)
        put(self, "hardness", hardness)
        put(self, "yield_strength", yield_strength)
        put(self, "certificate", certificate)
        put(self, "case_depth", case_depth)
        put(self, "core_hardness", core_hardness)
        put(self, "shear_modulus", shear_modulus)

    @property
    def is_asked(self) -> bool:
        """Whether anything of a shaft was given, and not of its steel alone."""
        return any(m is not None for m in (self.diameter, self.bore, self.length, self.torque))


class Maker(Value):
    """The maker's own figure: a value, its ends, or both; where it stands (blank where that is not given)."""

    __slots__ = ("high", "low", "place", "source", "value")

    value: Measure | None
    low: Measure | None
    high: Measure | None
    source: str
    place: str

    def __init__(
        self,
        value: Measure | None = None,
        low: Measure | None = None,
        high: Measure | None = None,
        source: str = "",
        place: str = "",
    ) -> None:
        put(self, "value", value)
        put(self, "low", low)
        put(self, "high", high)
        put(self, "source", source)
        put(self, "place", place)

    @property
    def ends(self) -> dict[str, Measure]:
        """What was given of value, low and high, by name in that order."""
        pairs = (("value", self.value), ("low", self.low), ("high", self.high))
        return {name: measure for name, measure in pairs if measure is not None}

    @property
    def text(self) -> str:
        """All that was given, in one line."""
        return " ".join(t for t in (*(m.text for m in self.ends.values()), self.source, self.place) if t)


class Step(Value):
    """One step of an axle's set-up; ``as_found`` and ``as_left`` are a measure, or words."""

    __slots__ = ("as_found", "as_left", "axle", "component", "maker", "step", "wear")

    axle: str
    component: str
    step: str
    wear: str | None
    as_found: Measure | str | None
    as_left: Measure | str | None
    maker: Maker | None

    def __init__(
        self,
        axle: str,
        component: str,
        step: str,
        wear: str | None = None,
        as_found: Measure | str | None = None,
        as_left: Measure | str | None = None,
        maker: Maker | None = None,
    ) -> None:
        put(self, "axle", axle)
        put(self, "component", component)
        put(self, "step", step)
        put(self, "wear", wear)
        put(self, "as_found", as_found)
        put(self, "as_left", as_left)
        put(self, "maker", maker)


FIXED, FLEXIBLE = SEATINGS = OPTIONS["driveline seating"]


class SplineLoad(Value):
    """What a spline must carry, and how it is seated; None where it was not given."""

    __slots__ = (
        "bore",
        "cycles",
        "length",
        "load",
        "material",
        "misalignment",
        "revolutions",
        "seating",
        "source",
        "torque",
    )

    torque: Measure
    bore: Measure | None
    length: Measure | None
    material: str | None
    source: str | None
    load: str | None
    cycles: str | None
    seating: str | None
    misalignment: str | None
    revolutions: str | None

    def __init__(
        self,
        torque: Measure,
        bore: Measure | None = None,
        length: Measure | None = None,
        material: str | None = None,
        source: str | None = None,
        load: str | None = None,
        cycles: str | None = None,
        seating: str | None = None,
        misalignment: str | None = None,
        revolutions: str | None = None,
    ) -> None:
        if seating is not None:
            seating = option(seating, "driveline seating", "not a seating of a spline")
        put(self, "torque", torque)
        put(self, "bore", bore)
        put(self, "length", length)
        put(self, "material", material)
        put(self, "source", source)
        put(self, "load", load)
        put(self, "cycles", cycles)
        put(self, "seating", seating)
        put(self, "misalignment", misalignment)
        put(self, "revolutions", revolutions)


def positive(typed: str | Measure | None, dimension: str, where: str) -> Measure | None:
    """A typed measure of more than zero; None stays None."""
    return None if typed is None else read_positive(typed, dimension, where)


def own_stress(typed: str | Known | None, where: str, example: str) -> Known | None:
    """A strength or a modulus of this very shaft: typed, or measured ``by TOOL on YYYY-MM-DD``; None stays None."""
    if typed is None or not isinstance(typed, str):
        return typed
    from gaugeblock.known import parse_known

    return parse_known(typed, "stress", where, example)


def split_hardness(typed: str) -> tuple[str, str] | None:
    """The number and the scale of ``42 HRC``, ``HRC 42``, ``42 Rockwell C``; None where one of them is not there."""
    match = _HARDNESS.fullmatch(" ".join(typed.split()))
    words = [w for w in (match["word"], match["unit"]) if w] if match else []
    return (match["number"], words[0]) if match is not None and len(words) == 1 else None


def hardness(typed: str, data: Refdata, where: str = "hardness") -> Hardness:
    """``42 HRC``, ``HRC 42`` or ``302 Brinell``; InputError when number or scale is missing."""
    said = split_hardness(typed)
    if said is None:
        raise InputError(typed, where, "not a hardness with its scale", (), "write it as 42 HRC or 302 HB")
    scale = canonical(data, "driveline/hardness", "scale", said[1])
    return Hardness(scale, units.decimal_text(units.parse_number(said[0], where)))


def finding(typed: str | None, where: str) -> Measure | str | None:
    """What was found or left: a figure with its unit (a bare ``.007`` is inches), or words that begin with a letter."""
    if typed is None or not typed.strip():
        return None
    text = typed.strip()
    if text[0] not in _BEGINS:
        return text
    if not units.split_quantity(text)[1]:
        return units.parse_measure(text, "length", where)
    return values.any_measure(text)


_MAKER_KEYS = ("value", "low", "high", "source", "place")


def maker(given: Mapping[str, str | None] | Sequence[str | None]) -> Maker:
    """The maker's figure from texts: by name, or in the order value, low, high, source, place.

    InputError for a name that is none of these, for another count, when no end of it is given, or for two dimensions.
    """
    if isinstance(given, str) or (not isinstance(given, Mapping) and len(given) != len(_MAKER_KEYS)):
        raise InputError(
            str(given)[:60], "maker", "not value, low, high, source and place", _MAKER_KEYS, "give all five"
        )
    named = given if isinstance(given, Mapping) else dict(zip(_MAKER_KEYS, given, strict=True))
    for name, text in named.items():
        if name not in _MAKER_KEYS:
            raise InputError(
                str(name)[:60], "maker", "no such key of a maker's figure", _MAKER_KEYS, "use one of these"
            )
        if text is not None and not isinstance(text, str):
            raise InputError(str(text)[:60], f"maker's {name}", "not text", (), 'write it as "0.006 in"')
    ends = {name: text for name in _MAKER_KEYS[:3] if (text := named.get(name)) is not None}
    if not ends:
        raise InputError("maker's figure", "maker", "no value, no low and no high", (), "give at least one")
    first = next(iter(ends.values()))
    typed = units.split_quantity(first)[1]
    if not typed:
        raise InputError(first[:60], "maker's figure", "not a number with its unit", (), 'write it as "0.006 in"')
    dimension = units.dimension(units.TYPED.get(typed, typed))
    read = {name: units.parse_measure(text, dimension, f"maker's {name}") for name, text in ends.items()}
    return Maker(**read, source=named.get("source") or "", place=named.get("place") or "")
