"""Facts: the open rows of refdata with their numbers in base units, as the physics rules look at them."""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.catalogue import keys_of
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.limits import own_ranges

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from gaugeblock.tables.limits import Ranges
    from gaugeblock.tables.load import Row

READ_AGAIN = "read the source again; a printed error keeps its value with standing misprint"
NUMBERS = ("value", "low", "high")


class Thread:
    """A thread designation: ``series``, basic major diameter and pitch in m, and whether it is metric."""

    __slots__ = ("is_metric", "major_m", "pitch_m", "series")

    def __init__(self, series: str, major_m: float, pitch_m: float, is_metric: bool) -> None:
        self.series = series
        self.major_m = major_m
        self.pitch_m = pitch_m
        self.is_metric = is_metric


# ISO 261 coarse pitches, mm: a metric thread with this pitch is of the coarse series.
_COARSE = {
    3: 0.5,
    4: 0.7,
    5: 0.8,
    6: 1,
    7: 1,
    8: 1.25,
    10: 1.5,
    12: 1.75,
    14: 2,
    16: 2,
    18: 2.5,
    20: 2.5,
    22: 2.5,
    24: 3,
    27: 3,
    30: 3.5,
    33: 3.5,
    36: 4,
    39: 4,
}
_METRIC = re.compile(r"M([0-9.]+)x([0-9.]+)", re.ASCII)
_INCH = re.compile(r"(#?[0-9/-]+?)-([0-9]+) ([0-9]?UN[A-Z]*)", re.ASCII)


@cache
def thread_of(cell: str) -> Thread | None:
    """The thread that a key cell names; None when it names a bare size or something else."""
    metric = _METRIC.fullmatch(cell)
    if metric:
        major, pitch = float(metric[1]), float(metric[2])
        return Thread("M coarse" if _COARSE.get(int(major)) == pitch else "M fine", major / 1000, pitch / 1000, True)
    inch = _INCH.fullmatch(cell)
    if inch is None:
        return None
    size = inch[1]
    try:
        # Number sizes: 0.060 in for #0 and 0.013 in a number (ASME B1.1).
        major = 0.06 + 0.013 * int(size[1:]) if size.startswith("#") else float(units.parse_number(size))
    except (GaugeblockError, ValueError):
        return None
    return Thread(inch[3], major * 0.0254, 0.0254 / int(inch[2]), False)


@cache
def size_m(cell: str) -> float | None:
    """The diameter in m that a thread or size cell names; None when it names none."""
    thread = thread_of(cell)
    if thread is not None:
        return thread.major_m
    try:
        return units.parse_measure(cell, "length").to("m")
    except GaugeblockError:
        return None


class Facts:
    """The open rows of blank standing, by table, with their numbers in base units."""

    def __init__(self, tables: Mapping[str, list[Row]], ranges: Ranges | None = None) -> None:
        self.ranges = ranges or own_ranges()
        self.tables = {
            name: [r for r in rows if not r.cells["until"] and not r.cells["standing"]] for name, rows in tables.items()
        }
        self._numbers: dict[Row, dict[str, float]] = {}

    def rows(self, table: str, *quantities: str) -> list[Row]:
        """The rows of a table, of some quantities when any is named."""
        return [r for r in self.tables.get(table, ()) if not quantities or r.cells["quantity"] in quantities]

    def all_rows(self) -> Iterator[Row]:
        """Every row of every table."""
        for rows in self.tables.values():
            yield from rows

    def numbers(self, row: Row) -> dict[str, float]:
        """value, low and high in base units, those that are given."""
        got = self._numbers.get(row)
        if got is None:
            unit = row.cells["unit"]
            got = self._numbers[row] = {c: units.to_base(float(row.cells[c]), unit) for c in NUMBERS if row.cells[c]}
        return got

    def low(self, row: Row) -> float:
        """The lowest of the numbers of a row."""
        return min(self.numbers(row).values())

    def high(self, row: Row) -> float:
        """The highest of the numbers of a row."""
        return max(self.numbers(row).values())

    def middle(self, row: Row) -> float:
        """The value, or the middle of the ends there are."""
        value = self.numbers(row).get("value")
        return (self.low(row) + self.high(row)) / 2 if value is None else value

    def slack(self, row: Row, column: str) -> float:
        """Half a unit in the last printed place, in base units."""
        places = len(row.cells[column].partition(".")[2])
        return 0.5 * 10.0**-places * float(units.factor(row.cells["unit"]))


def shown(row: Row, column: str) -> str:
    """One number of a row with its unit, as a fault prints it."""
    return f"{row.cells[column]} {row.cells['unit']}"


def printed(row: Row) -> str:
    """The value of a row, or its ends, with its unit."""
    ends = " to ".join(row.cells[c] for c in ("low", "high") if row.cells[c])
    return f"{row.cells['value'] or ends} {row.cells['unit']}"


def column_of(row: Row) -> str:
    """The first of value, low and high that a row has."""
    return next(c for c in NUMBERS if row.cells[c])


def rest(row: Row, *left_out: str) -> tuple[str, ...]:
    """What makes rows of one series: all other keys, quantity and source."""
    keys = [cell for key, cell in zip(keys_of(row.table), row.key, strict=True) if key.name not in left_out]
    return (*keys, row.cells["quantity"], row.cells["source"])


def group_by(rows: Iterable[Row], key: Callable[[Row], tuple[str, ...]]) -> list[list[Row]]:
    """Rows that share a key, each group in table order."""
    got: dict[tuple[str, ...], list[Row]] = {}
    for row in rows:
        got.setdefault(key(row), []).append(row)
    return list(got.values())


@cache
def order_of(cell: str) -> float | None:
    """A size cell as a number to sort by; None when it is not a size."""
    size = size_m(cell)
    if size is not None:
        return size
    try:
        interval = parse_interval(cell)
    except GaugeblockError:
        return None
    if interval is None or interval.low is None or not interval.is_point:
        return None
    return float(interval.low)


def series_of(row: Row, column: str) -> str:
    """The series of a thread cell: coarse, fine ..., or blank."""
    thread = thread_of(row.cells[column])
    return thread.series if thread is not None else "size"
