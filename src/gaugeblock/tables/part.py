"""Part: the rows of a table that one cell of its first key can meet, read before the table is.

A look-up in a table of a thousand rows that asks for one thread meets a dozen of them. Until a table is opened whole, a
look-up splits only the lines that begin with its cell, or with ``any``.
"""

from __future__ import annotations

from gaugeblock.tables.catalogue import ROW_COLUMNS, columns_of, keys_of
from gaugeblock.tables.lines import read_raw, split_at

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Refdata, Row, Table

# After so many cells of one table it is quicker to open it whole.
_MOST = 24


class Part:
    """The lines of one table as they stand, and the tables of a few rows that were read of them, by their first
    cell.
    """

    __slots__ = ("_begun", "_spelled", "lines", "tables")

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines
        self.tables: dict[str, Table | None] = {}
        self._begun: dict[str, list[int]] = {}
        self._spelled: dict[str, set[str]] = {}

    def spelled(self, folded: str) -> set[str]:
        """The first cells that are spelled so, whatever their case, living or not."""
        return (self._spelled or self._by_spelling()).get(folded, set())

    def _by_spelling(self) -> dict[str, set[str]]:
        spelled: dict[str, set[str]] = {}
        for cell in {line[: line.find(",")] for line in self.lines}:
            spelled.setdefault(cell.casefold(), set()).add(cell)
        self._spelled = spelled
        return spelled

    def begun_by(self, cell: str) -> list[int]:
        """Where the lines stand that begin with a cell, with ``any`` or with a quote; the first time they are walked
        through, the second time sorted.
        """
        if not self.tables:
            firsts = (f"{cell},", "any,", '"')
            return [at for at, line in enumerate(self.lines) if line.startswith(firsts)]
        begun = self._begun or self._sorted()
        return sorted([*begun.get(cell, ()), *begun.get("any", ()), *begun.get('"', ())])

    def _sorted(self) -> dict[str, list[int]]:
        begun: dict[str, list[int]] = {}
        for at, line in enumerate(self.lines):
            begun.setdefault('"' if line[:1] == '"' else line[: line.find(",")], []).append(at)
        self._begun = begun
        return begun


def part_of(data: Refdata, name: str, cell: str) -> Table | None:
    """The rows of a table whose first key is ``cell`` or ``any``; None where it is better opened whole: it is open
    already, its first key is no word, or no living row has the cell.
    """
    if name in data.opened or keys_of(name)[0].match != "exact" or not cell or '"' in cell or "," in cell:
        return None
    part = _opened(data, name)
    if cell not in part.tables:
        part.tables[cell] = _read(data, name, cell, part) if len(part.tables) < _MOST else None
    return part.tables[cell]


def rows_of(data: Refdata, name: str, cell: str) -> list[Row]:
    """The living rows of a table whose first key is this cell."""
    part = part_of(data, name, cell)
    return [row for row in (part or data.table(name)).rows if row.key[0] == cell]


def rows_of_quantities(data: Refdata, name: str, *quantities: str) -> list[Row]:
    """The living rows of some quantities of a table, in its order, where it is not open read without the others."""
    if name in data.opened:
        return [row for row in data.table(name).rows if row["quantity"] in quantities]
    columns = columns_of(name)
    at, span = columns.index("quantity"), slice(columns.index("since"), columns.index("until") + 1)
    lines = _opened(data, name).lines
    sought = tuple([f",{quantity}," for quantity in quantities])
    places = [n for n, line in enumerate(lines) if any(one in line for one in sought)]
    found = split_at(lines, places, name, columns)
    return [data.row(name, n, cells) for n, cells in found if cells[at] in quantities and data.lives(*cells[span])]


def first_cell(data: Refdata, name: str, folded: str, cell_of: Callable[[], str | None]) -> str | None:
    """The cell of a table's first key that is spelled so, whatever its case, else that which a listed word means; None
    where no living row has it, or the table is better opened whole.
    """
    if name in data.opened or keys_of(name)[0].match != "exact":
        return None
    spelled = _opened(data, name).spelled(folded)
    if spelled:
        return (
            next((cell for cell in sorted(spelled) if part_of(data, name, cell)), None) if len(spelled) == 1 else None
        )
    word = cell_of()
    return word if word is not None and part_of(data, name, word) is not None else None


def _opened(data: Refdata, name: str) -> Part:
    """The lines of a table, read once."""
    part = data._parts.get(name)
    if part is None:
        data.verify_table(name)
        part = data._parts[name] = Part(read_raw(data.path(name), name, columns_of(name)))
    return part


def _read(data: Refdata, name: str, cell: str, part: Part) -> Table | None:
    from gaugeblock.tables.load import Table

    columns = columns_of(name)
    found = split_at(part.lines, part.begun_by(cell), name, columns)
    width = len(columns) - len(ROW_COLUMNS)
    since, until = columns.index("since"), columns.index("until")
    rows: list[Row] = []
    by_quantity: dict[str, list[Row]] = {}
    for line, cells in found:
        if cells[0] in (cell, "any") and data.lives(cells[since], cells[until]):
            row = data.row(name, line, cells)
            rows.append(row)
            by_quantity.setdefault(cells[width], []).append(row)
    return Table(name, tuple(rows), by_quantity) if any(row.key[0] == cell for row in rows) else None
