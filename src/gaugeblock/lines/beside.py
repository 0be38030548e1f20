"""One line, hose, fluid or fuel beside one hot part, asked without a job."""

from __future__ import annotations

from gaugeblock.errors import InputError
from gaugeblock.lines.route import route
from gaugeblock.tables.load import canonical
from gaugeblock.warmth.item import table_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def beside(
    item: str, hot: str | None, *, klass: str | None, state: str | None, given: Mapping[str, Any], data: Refdata
) -> Sheet:
    """How hot ``item`` gets beside the part ``hot``, and whether it stands that.

    ``given`` are further keys of a line as ``route`` takes them (``gap``, ``od``, ``hot_od`` ...). InputError for a
    class of a fluid, which has a state; else as ``route``.
    """
    if hot is not None and all(given.get(k) is None for k in ("hot_temperature", "temperature")):
        canonical(data, "lines/heat_sources", "part", hot)  # only a part that is known needs no temperature
    if table_of(item, data) == "lines/materials":
        return route(material=item, klass=klass, state=state, beside=hot, data=data, **given)
    if klass is not None:
        raise InputError(klass, "--class", "a fluid or fuel has a state, not a class", (), "leave the class out")
    return route(fluid=item, fluid_state=state, beside=hot, data=data, **given)
