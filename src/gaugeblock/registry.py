"""The pint registry that speaks our unit spellings; pint is imported on first use only."""

from __future__ import annotations

from functools import cache
from typing import Any

from gaugeblock import units


@cache
def unit_names() -> dict[str, str]:
    """Our spelling -> the name it has in the pint registry: pint's own expression, or a unit defined by us.

    A scaled expression (``1000 * pound_force / inch ** 2``) is no unit to pint, so it gets a name of its own.
    """
    names = {}
    for number, (spelling, entry) in enumerate(units.UNITS.items()):
        expression = entry[4]
        names[spelling] = (
            f"gauge_unit_{number}"
            if any(c.isdigit() for c in expression.replace("** 2", "").replace("** 3", "").replace("** 4", ""))
            else expression
        )
    return names


def definition_text() -> str:
    """The pint definitions that the registry adds, one a line, made from the table of units."""
    names = unit_names()
    lines = [
        f"{name} = {units.UNITS[s][4]} = {s}" if s.isidentifier() else f"{name} = {units.UNITS[s][4]}"
        for s, name in names.items()
        if name != units.UNITS[s][4]
    ]
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
