"""Row and Table: one row of a table of figures, and the rows of a table that live in one release."""

from __future__ import annotations

from gaugeblock.errors import DataError, LookupMiss
from gaugeblock.tables.catalogue import ROW_COLUMNS, keys_of
from gaugeblock.tables.index import Index
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.lines import is_decimal
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction


# Where the standing stands, counted from the end of a row of figures.
_STANDING = ROW_COLUMNS.index("standing") - len(ROW_COLUMNS)
# Value, low and high, the same.
_NUMBERS = slice(ROW_COLUMNS.index("value") - len(ROW_COLUMNS), ROW_COLUMNS.index("high") + 1 - len(ROW_COLUMNS))


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

    @property
    def typical(self) -> float:
        """The value, or the middle of low and high, or the one end there is; DataError when there is none."""
        value, low, high = self.values[_NUMBERS]
        if value:
            return self.decimal("value", value)
        ends = [self.decimal(column, text) for column, text in (("low", low), ("high", high)) if text]
        if not ends:
            why = "no value, no low and no high"
            raise DataError(f"{self.table}.csv", f"line {self.line}", why, (), "give at least one")
        return sum(ends) / len(ends)

    def decimal(self, column: str, text: str) -> float:
        """The number of a cell that is not blank; DataError when it is not a decimal."""
        if not is_decimal(text):
            why, do = f"{text!r} is not a decimal number", "write it with a point and no unit"
            raise DataError(f"{self.table}.csv", f"line {self.line}, column {column}", why, (), do)
        return float(text)


class Table:
    """The rows of one table that live in one release, by quantity."""

    __slots__ = (
        *("_dimensions", "_indexes", "_means"),
        *("by_quantity", "cells_of", "keys", "measured", "name", "names", "rows", "service"),
    )

    def __init__(self, name: str, rows: list[Row], by_quantity: dict[str, list[Row]]) -> None:
        self.name = name
        self.keys = keys_of(name)
        self.rows = rows
        self.by_quantity = by_quantity
        self.cells_of: dict[str, dict[str, str]] = {}
        self.names = tuple([key.name for key in self.keys])
        self.service = self.names.index("service") if "service" in self.names else None
        self.measured = tuple([at for at, key in enumerate(self.keys) if key.match != "exact"])
        self._indexes: dict[str, Index] = {}
        self._means: list[tuple[str, dict[str, str | Fraction]]] = []
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
            got = self.cells_of[name] = {cell.casefold(): cell for cell in self._distinct(name)}
        return got

    def _distinct(self, name: str) -> dict[str, None]:
        at = self.names.index(name)
        return dict.fromkeys([row.key[at] for row in self.rows])

    @property
    def means(self) -> list[tuple[str, dict[str, str | Fraction]]]:
        """The keys in their order, each with what a text asks of it where that is known: of an exact key that was read
        once a cell that is asked as it stands, of a measure a number in base units that was read.
        """
        if not self._means:
            self._means = [(key.name, {}) for key in self.keys]
        return self._means

    def as_it_stands(self, at: int, typed: str) -> str | Fraction | None:
        """What a text asks of an exact key that has it as it stands; None of another, and of a service, which is always
        read.
        """
        name, means = self.means[at]
        if not means and name != "service":
            column = self.column(name)
            means |= {c: column[c.casefold()] for c in self._distinct(name) if c == " ".join(c.split())}
        return means.get(typed)

    def single(self, name: str, cell: str) -> Fraction | None:
        """The single measure of a cell that stands in a key column, in base units and of the column's dimension; else
        None.
        """
        if self.column(name).get(cell.casefold()) != cell:
            return None
        interval = parse_interval(cell)
        is_single = interval is not None and interval.is_point and interval.dimension == self.dimension(name)
        return interval.low if interval is not None and is_single else None

    def dimension(self, name: str) -> str | None:
        """The dimension of a key column of measures; None where every row says ``any``."""
        if name not in self._dimensions:
            intervals = map(parse_interval, self._distinct(name))
            self._dimensions[name] = next((i.dimension for i in intervals if i is not None), None)
        return self._dimensions[name]
