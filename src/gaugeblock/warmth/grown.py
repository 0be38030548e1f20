"""How much a metre of a material grows to a temperature: printed growth, else its mean coefficient of expansion."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.lookup import look_up_or_none

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
    for name in dict.fromkeys((_BY_TEMPERATURE.get(material, material), material)):
        keys = {"material": name, "temperature": hot}
        grown = None if is_from or name not in _materials("lines/growth", data) else _look("linear_growth", keys, data)
        grown = grown or (_look("expansion_coefficient", keys, data) if name in _materials("lines/expansion", data) else None)
        if grown is not None and (grown.key["temperature"] != "any" or _kelvin(hot) <= _ROOM_K):
            return grown
    return None


_TABLE = {"linear_growth": "lines/growth", "expansion_coefficient": "lines/expansion"}


def _look(quantity: str, keys: dict[str, str], data: Refdata) -> Figure | None:
    return look_up_or_none(_TABLE[quantity], quantity, data=data, **keys)


def _materials(table: str, data: Refdata) -> set[str]:
    return set(data.table(table).column("material").values()) | set(data.table(table).column("material"))


def _kelvin(hot: str) -> float:
    got = units.parse_measure(hot, "temperature", "hot")
    return units.to_base(float(got.value), got.unit)
