"""Index: the rows of one quantity of a table by their exact keys and single measures, so that a question meets few."""

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

_WALKS = 3
_LINE = attrgetter("line")


class Group:
    """The rows that name the same keys, by the cells of these: a measure stands as its numerator and denominator.

    ``ranges`` are the keys in which they have a range, that is, in which what is asked must lie.
    """

    __slots__ = ("cells_of", "ranges", "rows")

    def __init__(self, named: Sequence[int], ranges: Sequence[int]) -> None:
        self.cells_of: Callable[[Any], Any] = itemgetter(*named) if named else _nothing
        self.ranges = ranges
        self.rows: dict[Any, list[Row]] = {}

    def fitting(self, asked: Sequence[Any]) -> Sequence[Row]:
        """Those that fit what is asked of each key."""
        found: Sequence[Row] = self.rows.get(self.cells_of(asked), ())
        for at in self.ranges if found else ():
            found = [row for row in found if _holds(row.key[at], asked[at])]
        return found


class Index:
    """The rows of one quantity by the cells of their exact keys; the service stands outside, for it only ranks.

    The first few questions walk through the rows: to sort them takes as long as some ten walks.
    """

    __slots__ = ("_exact", "_measured", "_rows", "_sorted", "_walks")

    def __init__(self, keys: Sequence[Key], rows: Sequence[Row]) -> None:
        self._rows = rows
        self._exact = [i for i, key in enumerate(keys) if key.match == "exact" and key.name != "service"]
        self._measured = [i for i, key in enumerate(keys) if key.match != "exact"]
        self._walks = 0
        self._sorted: tuple[Group, ...] = ()

    def fitting(self, wants: Sequence[str | Fraction | None]) -> Sequence[Row]:
        """The rows that fit what is asked of each key, in table order, whatever their service."""
        asked: Sequence[Any] = wants
        if self._measured:
            asked = [want.as_integer_ratio() if isinstance(want, Fraction) else want for want in wants]
        if self._walks < _WALKS:
            self._walks += 1
            return self._walked(asked)
        groups = self._sorted or self._sort()
        if len(groups) == 1:
            return groups[0].fitting(asked)
        found = [row for group in groups for row in group.fitting(asked)]
        if len(found) > 1:
            found.sort(key=_LINE)
        return found

    def _walked(self, asked: Sequence[Any]) -> Sequence[Row]:
        """The same, by a walk through all rows."""
        found = self._rows
        for at in self._exact:
            want = asked[at]
            found = [row for row in found if row.key[at] in (want, "any")]
        for at in self._measured:
            want = asked[at]
            found = [row for row in found if row.key[at] == "any" or _holds(row.key[at], want)]
        return found

    def _sort(self) -> tuple[Group, ...]:
        """Put the rows that name the same keys together, by the cells of those; ``any`` meets whatever is asked.

        They are kept when they are whole, and nothing else is: another thread may ask meanwhile.
        """
        columns = list(zip(*[row.key for row in self._rows], strict=True))
        measured = [at for at in self._measured if {*columns[at]} != {"any"}]
        single = {at: {cell: _single(cell) for cell in {*columns[at]}} for at in measured}
        loose = [at for at in self._exact if "any" in columns[at]] + measured
        groups: dict[tuple[str | None, ...], Group] = {}
        for row in self._rows:
            cells: Sequence[Any] = row.key
            if single:
                cells = [single[at][cell] if at in single else cell for at, cell in enumerate(cells)]
            form = tuple([cell if cell in _NO_CELL else "" for cell in [cells[at] for at in loose]])
            group = groups.get(form)
            if group is None:
                said = dict(zip(loose, form, strict=True))
                named = [at for at in (*self._exact, *measured) if said.get(at) not in _NO_CELL or at not in said]
                group = groups[form] = Group(named, [at for at in measured if said[at] is None])
            group.rows.setdefault(group.cells_of(cells), []).append(row)
        self._sorted = tuple(groups.values())
        return self._sorted


# What a row has in a key that it does not name by one cell: ``any``, or a range.
_NO_CELL = ("any", None)


def _single(cell: str) -> tuple[int, int] | str | None:
    """A single measure as numerator and denominator; ``any`` as it is; None for a range."""
    interval = parse_interval(cell)
    return cell if interval is None else interval.single


def _nothing(_: object) -> tuple[()]:
    """What a row without an exact key asks of them."""
    return ()


def _holds(cell: str, asked: tuple[int, int] | str | None) -> bool:
    """Whether a measure, as numerator and denominator, lies in the interval of a cell."""
    interval = parse_interval(cell)
    return interval is not None and isinstance(asked, tuple) and interval.holds_ratio(*asked)
