"""Index: the rows of one quantity of a table by their exact keys, so that a question meets few of them."""

from __future__ import annotations

from fractions import Fraction
from operator import attrgetter, itemgetter

from gaugeblock.tables.interval import parse_interval

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import Any

    from gaugeblock.tables.catalogue import Key
    from gaugeblock.tables.load import Row

# Rows of the same exact keys above this number are sorted by their single measures too, at the second question.
_MANY = 6
_WALKS = 3
_LINE = attrgetter("line")


class Drawer:
    """The rows whose exact keys are the same; where they are many, those of one single measure are found by it."""

    __slots__ = ("_at", "_points", "_rest", "_times", "rows")

    def __init__(self, at: int | None) -> None:
        self.rows: list[Row] = []
        self._at = at
        self._times = 0
        self._points: dict[tuple[int, int], list[Row]] = {}
        self._rest: list[Row] = []

    def near(self, wants: Sequence[str | Fraction | None]) -> list[Row]:
        """The rows that a question may meet: those without another single measure than it asks."""
        at = self._at
        if at is None or len(self.rows) <= _MANY:
            return self.rows
        want = wants[at]
        self._times += 1
        if self._times == 1 or not isinstance(want, Fraction):
            return self.rows
        if self._times == 2 or not (self._points or self._rest):
            self._sort(at)
        found = self._points.get(want.as_integer_ratio())
        return self._rest if found is None else [*found, *self._rest]

    def _sort(self, at: int) -> None:
        self._points.clear()
        self._rest.clear()
        for row in self.rows:
            interval = parse_interval(row.key[at])
            if interval is not None and interval.low is not None and interval.is_point:
                self._points.setdefault(interval.low.as_integer_ratio(), []).append(row)
            else:
                self._rest.append(row)


class Index:
    """The rows of one quantity by the cells of their exact keys; the service stands outside, for it only ranks.

    The first few questions walk through the rows: to sort them takes as long as some twenty walks.
    """

    __slots__ = ("_exact", "_groups", "_measured", "_rows", "_walks")

    def __init__(self, keys: Sequence[Key], rows: list[Row]) -> None:
        self._rows = rows
        self._exact = [i for i, key in enumerate(keys) if key.match == "exact" and key.name != "service"]
        self._measured = [i for i, key in enumerate(keys) if key.match != "exact"]
        self._walks = 0
        self._groups: list[tuple[Callable[[Any], Any], dict[Any, Drawer]]] = []

    def fitting(self, wants: Sequence[str | Fraction | None]) -> list[Row]:
        """The rows that fit what is asked of each key, in table order, whatever their service."""
        if self._walks < _WALKS:
            self._walks += 1
            return self.walked(wants)
        if not self._groups:
            self._sort()
        found: list[Row] = []
        for cells_of, group in self._groups:
            drawer = group.get(cells_of(wants))
            if drawer is not None:
                found += drawer.near(wants)
        found = self._measuring(found, wants)
        if len(found) > 1:
            found.sort(key=_LINE)
        return found

    def walked(self, wants: Sequence[str | Fraction | None]) -> list[Row]:
        """The same, by a walk through all rows."""
        found = self._rows
        for at in self._exact:
            want = wants[at]
            found = [row for row in found if row.key[at] in (want, "any")]
        return self._measuring(found, wants)

    def _measuring(self, found: list[Row], wants: Sequence[str | Fraction | None]) -> list[Row]:
        for at in self._measured:
            want = wants[at]
            found = [row for row in found if row.key[at] == "any" or _holds(row.key[at], want)]
        return found

    def _sort(self) -> None:
        first = self._measured[0] if self._measured else None
        # rows that name the same keys stand together, by the cells of those; ``any`` meets whatever is asked
        groups: dict[tuple[int, ...], tuple[Callable[[Any], Any], dict[Any, Drawer]]] = {}
        for row in self._rows:
            cells = row.key
            named = tuple([i for i in self._exact if cells[i] != "any"])
            group = groups.get(named)
            if group is None:
                group = groups[named] = (itemgetter(*named) if named else _nothing, {})
            at = group[0](cells)
            drawer = group[1].get(at)
            if drawer is None:
                drawer = group[1][at] = Drawer(first)
            drawer.rows.append(row)
        self._groups = list(groups.values())


def _nothing(_: object) -> None:
    """What a row without an exact key asks of them."""


def _holds(cell: str, want: str | Fraction | None) -> bool:
    interval = parse_interval(cell)
    return interval is not None and isinstance(want, Fraction) and interval.holds(want)
