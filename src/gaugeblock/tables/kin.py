"""Kin: some lines of a table, and the lines that have their key, read without splitting the others.

A search finds a word on a few lines of a table of a thousand; what it shows is all that stands under their keys.
"""

from __future__ import annotations

from bisect import bisect_right

from gaugeblock.tables.catalogue import LISTS, TABLES, columns_of, keys_of
from gaugeblock.tables.lines import split_at

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from gaugeblock.tables.load import Refdata

    # Its number, and its cells.
    Line = tuple[int, Sequence[str]]


def lines_with(folded: str, texts: Iterable[str]) -> set[int]:
    """The places of the lines of a text that have one of ``texts``; the first line has place 0."""
    found: set[int] = set()
    for text in texts:
        line = begin = 0
        at = folded.find(text)
        while at >= 0:
            line += folded.count("\n", begin, at)
            found.add(line)
            begin = folded.find("\n", at)
            at = folded.find(text, begin) if begin >= 0 else -1
    return found


def living_at(data: Refdata, name: str, text: str, places: set[int]) -> list[Line]:
    """The living lines of a table, or of a domain's rules, at some places of its text, as ``Refdata.living`` has
    them.
    """
    data.verify_table(name)
    columns = columns_of(name) if name in TABLES else LISTS["rules"]
    since, until = columns.index("since"), columns.index("until")
    lines = split_at(text.split("\n"), sorted(places), name, columns)
    return [(line, cells) for line, cells in lines if data.lives(cells[since], cells[until])]


def kin(data: Refdata, name: str, text: str, some: list[Line]) -> list[Line]:
    """The living lines of a table that have the key of one of ``some``."""
    width = len(keys_of(name))
    keys = {tuple(cells[:width]) for _, cells in some}
    begins = sorted(["".join([f'"{cell}",' if "," in cell else f"{cell}," for cell in key]) for key in keys])
    # the key of a line with a cell that is quoted without need is not seen by how the line begins
    places = lines_with(text, [f'"{cell}"' for cell in text.split('"')[1::2] if "," not in cell])
    for place, line in enumerate(text.split("\n")):
        at = bisect_right(begins, line)  # the one it begins with, for none begins with another
        if at and line.startswith(begins[at - 1]):
            places.add(place)
    return [line for line in living_at(data, name, text, places) if tuple(line[1][:width]) in keys]
