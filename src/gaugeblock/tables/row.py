"""Row and Table: one row of a table of figures, and the rows of a table that live in one release."""

from __future__ import annotations

from types import MappingProxyType

from gaugeblock.errors import DataError, LookupMiss
from gaugeblock.tables.catalogue import ROW_COLUMNS, keys_of
from gaugeblock.tables.index import Index
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.lines import is_decimal
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from fractions import Fraction


# Where the standing stands, counted from the end of a row of figures.
_STANDING = ROW_COLUMNS.index("standing") - len(ROW_COLUMNS)
# Value, low and high, the same.
_NUMBERS = slice(ROW_COLUMNS.index("value") - len(ROW_COLUMNS), ROW_COLUMNS.index("high") + 1 - len(ROW_COLUMNS))


class _Open:
    """A row or a table while it is made: nothing freezes it yet, as to set each part with ``put`` takes longer."""

    __slots__ = ()


class _OpenRow(_Open):
    __slots__ = ("cells", "columns", "key", "line", "standing", "table", "values")

    cells: dict[str, str]
    columns: tuple[str, ...]
    key: tuple[str, ...]
    line: int
    standing: str
    table: str
    values: tuple[str, ...]


class Row(_OpenRow):
    """One row of a table of figures: its cells by column, where it stands, and its key cells in order; frozen."""

    __slots__ = ()

    def __init__(
        self, table: str, line: int, columns: tuple[str, ...], values: Sequence[str], key: tuple[str, ...]
    ) -> None:
        put(self, "__class__", _OpenRow)
        self.table = table
        self.line = line
        self.key = key
        self.standing = values[_STANDING]
        self.columns = columns
        self.values = tuple(values)
        put(self, "__class__", Row)

    __setattr__ = Value.__setattr__
    __delattr__ = Value.__delattr__

    def __getattr__(self, name: str) -> dict[str, str]:
        # ``cells`` are made when first asked, since a look-up needs few of a table's rows
        if name != "cells":
            raise AttributeError(name)
        made = Keys(zip(self.columns, self.values, strict=True))
        put(self, "cells", made)
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


class _OpenTable(_Open):
    __slots__ = (
        *("_cells_of", "_dimensions", "_indexes", "_means"),
        *("by_quantity", "keys", "measured", "name", "names", "rows", "service"),
    )


class Table(_OpenTable):
    """The rows of one table that live in one release, by quantity; frozen."""

    __slots__ = ()

    def __init__(self, name: str, rows: tuple[Row, ...], by_quantity: Mapping[str, Iterable[Row]]) -> None:
        put(self, "__class__", _OpenTable)
        self.name = name
        self.keys = keys_of(name)
        self.rows = rows
        self.by_quantity = MappingProxyType({quantity: tuple(of) for quantity, of in by_quantity.items()})
        self._cells_of: dict[str, dict[str, str]] = {}
        self.names = tuple([key.name for key in self.keys])
        self.service = self.names.index("service") if "service" in self.names else None
        self.measured = tuple([at for at, key in enumerate(self.keys) if key.match != "exact"])
        self._indexes: dict[str, Index] = {}
        # of each key what a text asks of it where that is known: of an exact key that was read once a cell that is
        # asked as it stands, of a measure a number in base units that was read
        means: list[tuple[str, dict[str, str | Fraction]]] = [(key.name, {}) for key in self.keys]
        self._means = tuple(means)
        self._dimensions: dict[str, str | None] = {}
        put(self, "__class__", Table)

    __setattr__ = Value.__setattr__
    __delattr__ = Value.__delattr__

    def index(self, quantity: str) -> Index:
        """The rows of a quantity by their exact keys, made once."""
        got = self._indexes.get(quantity)
        if got is None:
            got = self._indexes[quantity] = Index(self.keys, self.by_quantity.get(quantity, ()))
        return got

    def of(self, quantity: str) -> tuple[Row, ...]:
        """The rows of one quantity; LookupMiss when this data release has none."""
        rows = self.by_quantity.get(quantity)
        if not rows:
            what = quantity.replace("_", " ")
            why = "this data release has no figures of it"
            raise LookupMiss(what, self.name.partition("/")[2].replace("_", " "), why, (), "use a later data release")
        return rows

    def column(self, name: str) -> dict[str, str]:
        """The distinct cells of a key column, each by its case-folded spelling."""
        got = self._cells_of.get(name)
        if got is None:
            got = self._cells_of[name] = Keys({cell.casefold(): cell for cell in self._distinct(name)})
        return got

    def _distinct(self, name: str) -> dict[str, None]:
        at = self.names.index(name)
        return dict.fromkeys([row.key[at] for row in self.rows])

    def as_it_stands(self, at: int, typed: str) -> str | Fraction | None:
        """What a text asks of an exact key that has it as it stands; None of another, and of a service, which is always
        read.
        """
        name, means = self._means[at]
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
