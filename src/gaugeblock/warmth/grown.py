"""How much a metre of a material grows to a temperature: printed growth, else its mean coefficient of expansion."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import LookupMiss
from gaugeblock.lookup import look_up_or_none
from gaugeblock.tables.load import canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# What people call by a short name, as the tables have it by temperature.
_BY_TEMPERATURE = {"steel": "carbon steel"}
# A coefficient that is printed without its range is that of a room and a little above.
_ROOM_K = 373.15


def per_length(material: str, hot: str, data: Refdata, *, is_from: bool = False) -> Figure | None:
    """The growth of a material for its length, to the temperature ``hot`` (``900 degF``); None where none is published.

    Printed growth is from one temperature alone: what grows from another (``is_from``) has its coefficient. A
    coefficient that is printed without its range of temperature serves to 100 degC, and no hotter: steel grows a fifth
    more per degree when it is red.
    """
    own = _cell("lines/expansion", material, data) or _cell("lines/growth", material, data)
    for name in dict.fromkeys((_BY_TEMPERATURE.get(own, own), own)):
        grown = None if is_from else _look("linear_growth", name, hot, data)
        grown = grown or _look("expansion_coefficient", name, hot, data)
        if grown is not None and (grown.key["temperature"] != "any" or _kelvin(hot) <= _ROOM_K):
            return grown
    return None


_TABLE = {"linear_growth": "lines/growth", "expansion_coefficient": "lines/expansion"}


def _cell(table: str, material: str, data: Refdata) -> str:
    """A material as a table has it; blank where it has none."""
    try:
        return canonical(data, table, "material", material)
    except LookupMiss:
        return ""


def _look(quantity: str, material: str, hot: str, data: Refdata) -> Figure | None:
    table = _TABLE[quantity]
    cell = _cell(table, material, data)
    return look_up_or_none(table, quantity, data=data, material=cell, temperature=hot) if cell else None


def _kelvin(hot: str) -> float:
    got = units.parse_measure(hot, "temperature", "hot")
    return units.to_base(float(got.value), got.unit)
