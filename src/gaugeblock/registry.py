"""The pint registry that speaks our unit spellings; pint is imported on first use only."""

from __future__ import annotations

from functools import cache
from typing import Any

from gaugeblock import units

# Units of ours that pint has no name for: what they are called there. A hardness is a dimension of its own, each scale:
# pint refuses to add it to a number or to another scale, or to turn it into that; two of one scale it adds, which means
# nothing.
_NAMES = {
    "ksi": "kilopound_force_per_square_inch",
    "Msi": "megapound_force_per_square_inch",
    "flats": "wrench_flat",
    "in/100ft": "inch_per_hundred_feet",
    "ohm/1000ft": "ohm_per_thousand_feet",
    "mmH2O": "millimeter_of_water",
}


@cache
def unit_names() -> dict[str, str]:
    """Our spelling -> the name it has in the pint registry: pint's own expression, or a unit defined by us."""
    return {s: _NAMES.get(s) or (f"hardness_{s}" if is_hardness(s) else entry[4]) for s, entry in units.UNITS.items()}


def is_hardness(unit: str) -> bool:
    """Whether a unit is a scale of hardness."""
    return units.dimension(unit).startswith("hardness")


def definition_text() -> str:
    """The pint definitions that the registry adds, one a line, made from the table of units."""
    lines = []
    for spelling, name in unit_names().items():
        meaning = f"[hardness_{spelling}]" if is_hardness(spelling) else units.UNITS[spelling][4]
        if name != meaning:
            lines.append(f"{name} = {meaning} = {spelling}" if spelling.isidentifier() else f"{name} = {meaning}")
    return "\n".join(lines) + "\n"


@cache
def registry() -> Any:
    """The pint UnitRegistry, with our definitions loaded."""
    import pint

    made: Any = pint.UnitRegistry()
    made.load_definitions(definition_text().splitlines())
    return made


def quantity(value: Any, unit: str) -> Any:
    """A pint Quantity of ``value`` (number or array) in one of our unit spellings; UnitError for any other.

    Built from value and unit, never by parsing free text.

    >>> round(quantity(31.0, "lbf*ft").to("newton * meter").magnitude, 2)
    42.03
    """
    units.dimension(unit)
    made = registry()
    return made.Quantity(value, made.Unit(unit_names()[unit]))
