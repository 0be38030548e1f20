"""How often a tyre turns in a mile, by its size code, its outside diameter, or its maker."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import driveline as calc
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

_CODE = re.compile(
    r"(?:P|LT)?\s*(?P<width>[0-9]{3})/(?P<aspect>[0-9]{2,3})\s*(?:ZR|R|D|B|-)?\s*(?P<rim>[0-9]{2}(?:\.5)?)\s*(?:C|LT"
    r"|XL)?",
    re.ASCII | re.IGNORECASE,
)
# An off-road size says its overall diameter first: 31x10.50R15.
_OVERALL = re.compile(
    r"(?P<od>[0-9]{2}(?:\.[0-9]+)?)\s*x\s*[0-9]{1,2}(?:\.[0-9]+)?\s*(?:R|-)\s*[0-9]{2}", re.ASCII | re.I
)
# Sizes of old cars, which do not say how high the tyre is: a radial without its aspect, a cross-ply, a letter size.
_OLD_RADIAL = re.compile(r"(?P<width>[12][0-9]{2})\s*/?\s*(?:[SHV]?R|[SHV])\s*(?P<rim>1[0-9])\s*C?", re.ASCII | re.I)
_CROSS_PLY = re.compile(
    r"(?P<width>[3-9](?:[.,][0-9]{1,2})|1[0-9][.,][0-9]{1,2}|[4-9][0-9]0)\s*(?:[-x/SHL]|\s)\s*(?P<rim>[12][0-9])",
    re.ASCII | re.I,
)
_LETTER = re.compile(r"[A-NP]\s*R?\s*[5-8][0-9]\s*(?:-|R|\s)?\s*1[3-6]", re.ASCII | re.I)
_HIGH = 82  # % of its width: by the European rule of the time, from memory
_PARTS = (("width", "mm", "tyre_section_width"), ("aspect", "%", "tyre_aspect"), ("rim", "in", "rim_diameter"))


class Tyre(Value):
    """A tyre as typed: its turns in a mile, and the figures below that were typed or worked out."""

    __slots__ = ("below", "turns", "typed")

    typed: str
    turns: Figure
    below: tuple[Figure, ...]

    def __init__(self, typed: str, turns: Figure, below: tuple[Figure, ...]) -> None:
        put(self, "typed", typed)
        put(self, "turns", turns)
        put(self, "below", below)

    @property
    def is_by_size(self) -> bool:
        """Whether its turns follow from its size, which is free of load."""
        return bool(self.below)


def refuse_old(typed: str) -> None:
    """InputError, with what to say in its place, for a size of old cars that does not say how high the tyre is."""
    text = typed.strip()
    if (radial := _OLD_RADIAL.fullmatch(text)) is not None:
        why = "a radial of old cars, whose size does not say how high the tyre is"
        near = f"{radial['width']}/{_HIGH}R{radial['rim']}"
        do = (
            f"give the diameter that its maker prints; about {_HIGH} % of the width was usual (common practice, from"
            f" memory), which is {near}"
        )
        raise InputError(typed, "tyre", why, (near,), do)
    if (ply := _CROSS_PLY.fullmatch(text)) is not None:
        wide = float(ply["width"].replace(",", "."))
        wide = wide / 100 if wide > _HIGH else wide
        near = f"{units.significant(float(ply['rim']) + 2 * wide, 3)} in"
        why = "a cross-ply size of old cars, which does not say how high the tyre is"
        do = (
            "give the diameter that its maker prints, or measure it; such a section is about as high as it is wide"
            f" (common practice, from memory), which comes near {near}"
        )
        raise InputError(typed, "tyre", why, (near,), do)
    if _LETTER.fullmatch(text) is not None:
        why = "a letter size, which says the load that the tyre bears and not how high it is"
        raise InputError(typed, "tyre", why, (), "give the diameter that its maker prints, as 27 in, or measure it")


def by_maker(revolutions: Measure, data: Refdata) -> Tyre:
    """A tyre whose turns in a mile its maker prints."""
    return Tyre(revolutions.text, stated(revolutions, "tyre_revolutions", "revolutions", data), ())


def by_size(typed: str, data: Refdata) -> Tyre:
    """A tyre by its code (``P215/65R15``, ``31x10.50R15``) or outside diameter (``28 in``); InputError else."""
    match = _CODE.fullmatch(typed.strip())
    parts: tuple[Figure, ...] = ()
    if match is None:
        refuse_old(typed)
        overall = _OVERALL.fullmatch(typed.strip())
        text = f"{overall['od']} in" if overall is not None else typed
        diameter = stated(units.parse_measure(text, "length", "tyre"), "tyre_diameter", "tyre", data)
    else:
        parts = tuple(
            stated(units.parse_measure(f"{match[n]} {u}", units.dimension(u), n), quantity, f"{n} of {typed}", data)
            for n, u, quantity in _PARTS
        )
        number = units.from_base(calc.tyre_diameter(*(base(f) for f in parts)), "in")
        diameter = derived("tyre_diameter_of_code", "tyre_diameter", number, "in", parts, data, key={"tyre": typed})
    if diameter.typical <= 0:
        raise InputError(typed, "tyre", "must be more than zero", (), "give the tyre itself")
    number = calc.revolutions_per_mile(base(diameter))
    said = "free of load; a loaded tyre turns about 3 % more often"
    made = derived(
        "revolutions_per_mile",
        "tyre_revolutions",
        number,
        "rev/mile",
        (diameter,),
        data,
        key={"tyre": typed},
        conditions=said,
    )
    return Tyre(typed, made, (*parts, diameter))
