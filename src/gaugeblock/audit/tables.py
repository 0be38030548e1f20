"""The audit of the tables of one release: every row, every disagreement, and what to read next."""

from __future__ import annotations

from collections import Counter

from gaugeblock import lookup, spreads
from gaugeblock.audit.kinds import answer, finding, kind_of, mark
from gaugeblock.tables.catalogue import ROW_COLUMNS, TABLES, columns_of
from gaugeblock.tables.load import Row

TYPE_CHECKING = False  # typing itself stays off the path of a summary
if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from typing import Any

    from gaugeblock.tables.load import Refdata

# Where a column stands that every row has, counted from its end.
_AT = {name: n - len(ROW_COLUMNS) for n, name in enumerate(ROW_COLUMNS)}
_QUANTITY, _BASIS, _CHECKED, _SOURCE, _PLACE, _STANDING = (
    _AT[name] for name in ("quantity", "basis", "checked", "source", "locator", "standing")
)


class _Table:
    """The living lines of one table, by their marks; and of blank standing those ``alone`` for their key and quantity,
    and the rows of which there are ``several``.
    """

    __slots__ = ("alone", "marks", "name", "several")

    def __init__(self, name: str, data: Refdata) -> None:
        self.name = name
        lines = data.living(name)
        self.marks = Counter([(c[_BASIS], c[_CHECKED], c[_STANDING]) for _, c in lines])
        columns = columns_of(name)
        width = len(columns) + _QUANTITY
        groups: dict[tuple[str, ...], list[tuple[int, Sequence[str]]]] = {}
        for line in lines:
            cells = line[1]
            if not cells[_STANDING]:
                groups.setdefault(tuple(cells[: width + 1]), []).append(line)
        self.alone = [group[0][1] for group in groups.values() if len(group) == 1]
        self.several = [
            [Row(name, line, columns, cells, tuple(cells[:width])) for line, cells in group]
            for group in groups.values()
            if len(group) > 1
        ]

    def tied(self) -> Iterator[list[Row]]:
        """Living rows of one key and quantity that only edition or source id could rank."""
        for rows in self.several:
            alike: dict[tuple[str, str], list[Row]] = {}
            for row in rows:
                alike.setdefault((row.values[_BASIS], row.values[_CHECKED]), []).append(row)
            yield from (group for group in alike.values() if len(group) > 1)

    def counted(self) -> dict[str, Any]:
        """How many rows there are, and of each mark."""
        by: Counter[str] = Counter()
        for (basis, checked, _), count in self.marks.items():
            by[mark(basis, checked)] += count
        return {"table": self.name, "rows": sum(by.values()), "by": dict(sorted(by.items()))}


def audit_refdata(data: Refdata) -> dict[str, Any]:
    """The audit of all tables of one release, in the JSON of the contract; DataError for a damaged one."""
    tables = [_Table(name, data) for name in TABLES]
    findings: list[dict[str, Any]] = []
    for table in tables:
        for row in data.table(table.name).rows:
            findings += _row_findings(row, data)
        for rows in table.tied():
            findings += _disagreement(rows, data)
    counted = [table.counted() for table in tables]
    counts = sum((Counter(table["by"]) for table in counted), Counter[str]())
    return {**answer("refdata", data.release, counted, findings, counts), "read_next": _read_next(tables, data)}


def tally(data: Refdata) -> dict[str, Any]:
    """The audit of all tables in numbers: as ``audit_refdata``, with how many of each kind in place of the findings."""
    tables = [_Table(name, data) for name in TABLES]
    kinds: Counter[str] = Counter()
    for table in tables:
        for marks, count in table.marks.items():
            if kind := kind_of(*marks):
                kinds[kind] += count
        kinds["sources disagree"] += sum(_apart(rows) is not None for rows in table.tied())
    return {
        "scope": "refdata",
        "data_release": data.release,
        "tables": [table.counted() for table in tables],
        "kinds": kinds,
        "read_next": _read_next(tables, data),
    }


def read_next(data: Refdata) -> list[dict[str, Any]]:
    """The publications that were quoted or remembered, by what a reading of them would settle: harm times figures.

    Each with its ``source`` and ``place``, how many ``figures`` answer from it today, and how many of those ``hurt``
    when they are wrong. Common practice has no publication to read.
    """
    return _read_next([_Table(name, data) for name in TABLES], data)


def _read_next(tables: list[_Table], data: Refdata) -> list[dict[str, Any]]:
    found: dict[tuple[str, str], list[int]] = {}
    for table in tables:
        unread: list[Sequence[str]] = [c for c in table.alone if c[_CHECKED] != "primary" and c[_BASIS] == "published"]
        for rows in table.several:
            if any(_is_unread(row.values) for row in rows):
                governs = lookup.governing_row(rows, data).values
                unread += [governs] if _is_unread(governs) else []
        for cells in unread:
            counts = found.setdefault((cells[_SOURCE], cells[_PLACE]), [0, 0])
            counts[0] += 1
            counts[1] += data.quantity(cells[_QUANTITY])["hazard"] == "injury"
    order = sorted(found.items(), key=lambda f: (-(f[1][0] + 2 * f[1][1]), f[0]))
    return [{"source": s, "place": p, "figures": n, "hurt": hurt} for (s, p), (n, hurt) in order]


def _is_unread(cells: Sequence[str]) -> bool:
    return cells[_BASIS] == "published" and cells[_CHECKED] != "primary"


def _apart(rows: list[Row]) -> tuple[float, float] | None:
    """Lowest and highest of rows that disagree, in the unit of the first."""
    return spreads.apart([(row.typical, row["unit"]) for row in rows])


def _row_findings(row: Row, data: Refdata) -> Iterator[dict[str, Any]]:
    kind = kind_of(row["basis"], row["checked"], row.standing)
    if not kind:
        return
    from gaugeblock.answer.printing import with_unit

    figure = lookup.figure_of(row, data)
    hazard = data.quantity(figure.quantity)["hazard"]
    what = (
        f"{row.table}: {lookup.figure_label(row)}: {figure.quantity.replace('_', ' ')}"
        f" {with_unit(figure.text, figure.unit)}"
    )
    if figure.standing:
        what += f" ({figure.source}, {figure.locator}); it never governs"
    elif kind == "from memory":
        what += f" ({figure.source}, {figure.locator}): read it in its own text"
    yield finding(kind, hazard, [figure.id], what)


def _disagreement(rows: list[Row], data: Refdata) -> Iterator[dict[str, Any]]:
    """That tied rows are over 2 % apart."""
    found = _apart(rows)
    if found is not None:
        low, high = found
        quantity, unit = rows[0]["quantity"], rows[0]["unit"]
        names = ", ".join(row["source"] or "habit" for row in rows)
        share = f" ({high / low - 1:.0%} apart)" if low > 0 else ""
        what = f"{rows[0].table}: {lookup.figure_label(rows[0])}: {quantity.replace('_', ' ')}"
        text = f"{what} {low:.4g} to {high:.4g} {unit}{share}: {names}"
        ids = [lookup.figure_of(row, data).id for row in rows]
        yield finding("sources disagree", data.quantity(quantity)["hazard"], ids, text)
