"""Cutting stock: tubes packed on stock lengths, with the kerf; says whether fewer stock lengths could do.

Metres. Every piece costs its length and one kerf, except that the last cut of a length may run out of its end: so n
pieces fit when their lengths and n - 1 kerfs do.
"""

from __future__ import annotations

from math import ceil

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    Piece: TypeAlias = tuple[str, float]

SLACK = 1e-9  # m
SEARCH = 20_000  # places tried before the search gives up on a proof


class Bar:
    """One stock length: the pieces cut from it in order, and the offcut that is left after the last kerf."""

    __slots__ = ("length", "offcut", "offcut_name", "pieces")

    def __init__(self, name: str, length: float, pieces: Sequence[Piece], kerf: float) -> None:
        self.length = length
        self.pieces = tuple(pieces)
        left = length - sum(size for _, size in pieces) - kerf * len(pieces)
        self.offcut = left if left > SLACK else 0.0
        self.offcut_name = name


class CutList:
    """How pieces are cut: bars, the least number that any plan needs, and whether this plan is proved to be least."""

    __slots__ = ("bars", "least", "optimal")

    def __init__(self, bars: Sequence[Bar], least: int, optimal: bool) -> None:
        self.bars = tuple(bars)
        self.least = least
        self.optimal = optimal

    @property
    def says(self) -> str:
        """Whether it is optimal, in words."""
        count = len(self.bars)
        if self.optimal:
            return f"{count} stock length{'s' if count != 1 else ''}: no plan needs fewer"
        return f"{count} stock lengths: {self.least} at least are needed, fewer than {count} was not ruled out"


class TooLongError(ValueError):
    """A piece is longer than the stock."""

    def __init__(self, name: str, length: float, stock: float) -> None:
        super().__init__(
            f"{name} is {length * 1000:.1f} mm, the stock {stock * 1000:.1f} mm: {(length - stock) * 1000:.1f} mm too"
            " long"
        )
        self.name = name
        self.length = length


def least_bars(sizes: Sequence[float], room: float) -> int:
    """A number of bars that no plan can go under (Martello and Toth's L2): by total length, and by pairs that share
    none.

    ``sizes`` and ``room`` hold the kerf already. For each k: pieces over room - k stand alone, those over half a bar
    stand in a bar each, and what is left of these must take the pieces of k and more.
    """
    best = ceil(sum(sizes) / room - SLACK)
    for k in {0.0, *(s for s in sizes if s <= room / 2)}:
        alone = [s for s in sizes if s > room - k + SLACK]
        half = [s for s in sizes if room / 2 + SLACK < s <= room - k + SLACK]
        small = [s for s in sizes if k <= s <= room / 2 + SLACK]
        over = sum(small) - (len(half) * room - sum(half))
        best = max(best, len(alone) + len(half) + max(0, ceil(over / room - SLACK)))
    return best


def cut_list(pieces: Sequence[Piece], stock: float, kerf: float = 0.0, name: str = "offcut") -> CutList:
    """Pieces (name, length) on the fewest bars of ``stock`` that the search finds.

    First the longest piece into the fullest bar that takes it; if that meets the lower bound it is least. Otherwise
    branch and bound over the bars, up to a fixed number of tries (the same answer every time).
    TooLongError for a piece longer than the stock; ValueError for lengths that are not over nothing.

    >>> plan = cut_list([("a", 3.0), ("b", 3.0), ("c", 2.0), ("d", 2.0), ("e", 2.0)], 6.0)
    >>> len(plan.bars), plan.optimal
    (2, True)
    """
    if stock <= 0 or kerf < 0:
        raise ValueError("stock is over nothing and a kerf is not negative")
    for label, size in pieces:
        if not size > 0:
            raise ValueError(f"{label}: a length is over nothing")
        if size > stock + SLACK:
            raise TooLongError(label, size, stock)
    if not pieces:
        return CutList((), 0, True)
    order = sorted(range(len(pieces)), key=lambda i: (-pieces[i][1], i))
    sizes = [pieces[i][1] + kerf for i in order]
    room = stock + kerf
    least = least_bars(sizes, room)
    best = _fullest_first(sizes, room)
    optimal = len(best) == least
    if not optimal:
        better, finished = _search(sizes, room, least, len(best))
        best = better or best
        optimal = finished or len(best) == least
    bars = [Bar(f"{name} {n}", stock, [pieces[order[i]] for i in bar], kerf) for n, bar in enumerate(best, 1)]
    return CutList(bars, len(bars) if optimal else least, optimal)


def _fullest_first(sizes: Sequence[float], room: float) -> list[list[int]]:
    bars: list[list[int]] = []
    left: list[float] = []
    for i, size in enumerate(sizes):
        fits = [b for b, r in enumerate(left) if r >= size - SLACK]
        if fits:
            b = min(fits, key=lambda n: left[n])
            bars[b].append(i)
            left[b] -= size
        else:
            bars.append([i])
            left.append(room - size)
    return bars


def _search(sizes: Sequence[float], room: float, least: int, count: int) -> tuple[list[list[int]] | None, bool]:
    """Fewer than ``count`` bars by depth-first search, longest piece first; with whether the search ran to its end."""
    found: list[list[int]] | None = None
    bars: list[list[int]] = []
    left: list[float] = []
    rest = [0.0] * (len(sizes) + 1)
    for i in range(len(sizes) - 1, -1, -1):
        rest[i] = rest[i + 1] + sizes[i]
    tries = 0

    def place(i: int) -> bool:
        """False when the tries have run out or the lower bound is met: stop."""
        nonlocal found, count, tries
        tries += 1
        if tries > SEARCH:
            return False
        if i == len(sizes):
            found, count = [bar[:] for bar in bars], len(bars)
            return count > least
        size = sizes[i]
        usable = sum(r for r in left if r >= sizes[-1] - SLACK)
        if len(bars) + max(0, ceil((rest[i] - usable) / room - SLACK)) >= count:
            return True
        tried: set[float] = set()
        for b in sorted(range(len(left)), key=lambda n: left[n]):
            room_left = round(left[b], 9)
            if left[b] >= size - SLACK and room_left not in tried:
                tried.add(room_left)
                bars[b].append(i)
                left[b] -= size
                go = place(i + 1)
                left[b] += size
                bars[b].pop()
                if not go:
                    return False
        if len(bars) + 1 < count:
            bars.append([i])
            left.append(room - size)
            go = place(i + 1)
            bars.pop()
            left.pop()
            if not go:
                return False
        return True

    place(0)
    return found, tries <= SEARCH
