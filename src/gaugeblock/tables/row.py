"""Row and Table: one row of a table of figures, and the rows of a table that live in one release."""

from __future__ import annotations

from gaugeblock.errors import DataError, LookupMiss
from gaugeblock.tables.catalogue import ROW_COLUMNS, keys_of
from gaugeblock.tables.index import Index
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.lines import is_decimal
from gaugeblock.value import Keys

# Where the standing stands, counted from the end of a row of figures.
_STANDING = ROW_COLUMNS.index("standing") - len(ROW_COLUMNS)


class Row:
    """One row of a table of figures: its cells by column, where it stands, and its key cells in order."""

    __slots__ = ("cells", "columns", "key", "line", "standing", "table", "values")

    cells: dict[str, str]

    def __init__(
        self, table: str, line: int, columns: tuple[str, ...], values: list[str], key: tuple[str, ...]
    ) -> None:
        self.table = table
        self.line = line
        self.key = key
        self.standing = values[_STANDING]
        self.columns = columns
        self.values = values

    def __getattr__(self, name: str) -> dict[str, str]:
        # ``cells`` are made when first asked, since a look-up needs few of a table's rows
        if name != "cells":
            raise AttributeError(name)
        self.cells = made = Keys(zip(self.columns, self.values, strict=True))
        return made

    def __getitem__(self, column: str) -> str:
        """One cell."""
        return self.values[self.columns.index(column)]

    def number(self, column: str) -> float | None:
        """The decimal in ``value``, ``low`` or ``high``; None when blank; DataError when it is not a decimal."""
        text = self[column]
        return self.decimal(column, text) if text else None

    def decimal(self, column: str, text: str) -> float:
        """The number of a cell that is not blank; DataError when it is not a decimal."""
        if not is_decimal(text):
            why, do = f"{text!r} is not a decimal number", "write it with a point and no unit"
            raise DataError(f"{self.table}.csv", f"line {self.line}, column {column}", why, (), do)
        return float(text)


class Table:
    """The rows of one table that live in one release, by quantity."""

    __slots__ = (
        *("_dimensions", "_indexes", "_spelled"),
        *("by_quantity", "cells_of", "keys", "name", "names", "rows", "service"),
    )

    def __init__(self, name: str, rows: list[Row], by_quantity: dict[str, list[Row]]) -> None:
        self.name = name
        self.keys = keys_of(name)
        self.rows = rows
        self.by_quantity = by_quantity
        self.cells_of: dict[str, dict[str, str]] = {}
        self.names = tuple(key.name for key in self.keys)
        self.service = self.names.index("service") if "service" in self.names else None
        self._indexes: dict[str, Index] = {}
        self._spelled: dict[str, dict[str, str]] = {}
        self._dimensions: dict[str, str | None] = {}

    def index(self, quantity: str) -> Index:
        """The rows of a quantity by their exact keys, made once."""
        got = self._indexes.get(quantity)
        if got is None:
            got = self._indexes[quantity] = Index(self.keys, self.by_quantity.get(quantity, []))
        return got

    def of(self, quantity: str) -> list[Row]:
        """The rows of one quantity; LookupMiss when this data release has none."""
        rows = self.by_quantity.get(quantity)
        if not rows:
            what = quantity.replace("_", " ")
            why = "this data release has no figures of it"
            raise LookupMiss(what, self.name.partition("/")[2].replace("_", " "), why, (), "use a later data release")
        return rows

    def column(self, name: str) -> dict[str, str]:
        """The distinct cells of a key column, each by its case-folded spelling."""
        got = self.cells_of.get(name)
        if got is None:
            at = next(i for i, k in enumerate(self.keys) if k.name == name)
            distinct = dict.fromkeys(row.key[at] for row in self.rows)
            got = self.cells_of[name] = {cell.casefold(): cell for cell in distinct}
        return got

    def spelled(self, name: str) -> dict[str, str]:
        """The cells of an exact key that are asked as they stand there; those of a service and of measures are read."""
        got = self._spelled.get(name)
        if got is None:
            at = self.names.index(name)
            is_word = self.keys[at].match == "exact" and name != "service"
            column = self.column(name) if is_word else {}
            distinct = {row.key[at] for row in self.rows} if is_word else ()
            got = self._spelled[name] = {c: column[c.casefold()] for c in distinct if c == " ".join(c.split())}
        return got

    def dimension(self, name: str) -> str | None:
        """The dimension of a key column of measures; None where every row says ``any``."""
        if name not in self._dimensions:
            at = next(i for i, k in enumerate(self.keys) if k.name == name)
            intervals = (parse_interval(row.key[at]) for row in self.rows)
            self._dimensions[name] = next((i.dimension for i in intervals if i is not None), None)
        return self._dimensions[name]
