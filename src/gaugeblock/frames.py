"""A table of refdata as a pandas DataFrame, each row with its unit, its source and its id."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import keys_of
from gaugeblock.tables.load import Refdata, refdata

if TYPE_CHECKING:
    import pandas as pd

_COLUMNS = (
    "quantity",
    "value",
    "low",
    "high",
    "unit",
    "conditions",
    "basis",
    "source",
    "locator",
    "checked",
    "standing",
)


def frame(table: str, quantity: str | None = None, *, data: Refdata | None = None) -> pd.DataFrame:
    """The living rows of a ``table`` (``domain/table``) as a DataFrame; of one ``quantity`` where it is named.

    Its index is the id of each figure; key columns first, then quantity, value, low and high (floats, NaN where not
    given), unit, conditions, basis, source, place, mark, standing and the title of the source. Raises LookupMiss for a
    table that does not exist, and for a quantity that it has not; InputError for what is not text. pandas must be
    installed (it comes with ``gaugeblock[frames]``).

    >>> frame("fasteners/torques", "tightening_torque").loc[:, ["thread", "grade", "value", "unit", "source"]].shape[1]
    5
    """
    import pandas as pd

    from gaugeblock.lookup import figure_of, no_quantity

    data = data or refdata()
    names = [key.name for key in keys_of(table)]
    records = []
    held = data.table(table)
    if quantity is not None and quantity not in held.by_quantity:
        raise no_quantity(held, quantity)
    for row in held.rows:
        if quantity is not None and row.cells["quantity"] != quantity:
            continue
        figure = figure_of(row, data)
        source = data.entry("sources", figure.source) if figure.source else None
        records.append(
            {
                "id": figure.id,
                **{name: figure.key[name] for name in names},
                **{name: getattr(figure, name) for name in _COLUMNS},
                "title": source["title"] if source is not None else "",
            }
        )
    columns = ["id", *names, *_COLUMNS, "title"]
    made = pd.DataFrame(records, columns=columns).set_index("id")
    return made.astype({"value": float, "low": float, "high": float})
