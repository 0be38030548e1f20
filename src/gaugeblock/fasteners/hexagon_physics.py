"""Physics rules of hexagons: how wide one is beside its thread, and bolt beside nut."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from gaugeblock.errors import UnitError
from gaugeblock.fasteners import british
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, printed
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Row

_TABLE = "fasteners/hexagons"
_INCH = 0.0254
_TURNED = ("hexagon bolt", "hexagon nut", "heavy hexagon nut", "structural bolt")
_KEYED = ("socket head cap screw", "button head screw", "countersunk socket screw", "set screw")
# Width over diameter: of a hexagon outside, of a flange bolt's, and of a hexagon inside, which leaves a wall round it.
_OUTSIDE, _SMALL, _FLANGED, _INSIDE = (1.4, 2.05), (1.3, 1.7), (1.2, 1.5), (0.35, 0.95)
_HEAVY = (1.4, 1.7)  # of a flange bolt of EN 1665
_BRITISH = ("BA", "BSW", "BSF")
_LARGE = (1.6, 2.4)  # of Whitworth threads before the war


def diameter_m(size: str) -> float:
    """The diameter that a size of the table names, in metres; 0 where it names none."""
    number, _, unit = size.rpartition(" ") if " " in size else (size, "", "")
    try:
        if unit in _BRITISH:
            return british.diameter_m(size)
        if size[0] == "M":
            return float(size[1:]) / 1000
        if size[0] == "#":
            return (0.060 + 0.013 * int(size[1:])) * _INCH
        parts = [part.partition("/") for part in number.split(" ")]
        return sum(float(a) / float(b or 1) for a, _, b in parts) * (_INCH if unit == "in" else 0.001)
    except (ValueError, ZeroDivisionError, IndexError, UnitError):
        return 0.0


def hexagon_suits_its_thread(facts: Facts) -> list[Fault]:
    """A hexagon is 1.4 to 2 times its thread, that of a flange bolt narrower; a hex key is thinner than its screw."""
    faults = []
    for row in facts.rows(_TABLE):
        head, size = row.cells["head"], diameter_m(row.cells["size"])
        ends = _OUTSIDE if head in _TURNED else _INSIDE if head in _KEYED else (0.8, 3.0)
        narrow = _SMALL if row.cells["standard"] == "JIS small" else ends
        if row.cells["standard"] == "old Whitworth":
            narrow = _LARGE
        flanged = _HEAVY if row.cells["standard"] == "EN 1665" else _FLANGED
        least, most = flanged if head == "flange bolt" else narrow
        if not size or not least * size <= facts.middle(row) <= most * size:
            found = f"{printed(row)} for {row.cells['size']} of a {head}"
            faults.append(at_row(row, column_of(row), "hexagon_suits_its_thread", found, READ_AGAIN))
    return faults


def hexagon_rises_with_its_thread(facts: Facts) -> list[Fault]:
    """Of one head, standard and source a larger thread has no smaller hexagon."""
    faults = []
    rows = [row for row in facts.rows(_TABLE) if row.cells["head"] in (*_TURNED, *_KEYED, "flange bolt")]
    for group in group_by(rows, lambda r: (r.cells["head"], r.cells["standard"], r.cells["source"])):
        ordered: list[Row] = sorted(group, key=lambda r: diameter_m(r.cells["size"]))
        for small, large in pairwise(ordered):
            if facts.middle(large) < facts.middle(small) * (1 - 1e-9):
                found = f"{printed(large)} for {large.cells['size']}, and {printed(small)} for {small.cells['size']}"
                faults.append(at_row(large, column_of(large), "hexagon_rises_with_its_thread", found, READ_AGAIN))
    return faults


def nut_is_no_smaller_than_its_bolt(facts: Facts) -> list[Fault]:
    """A nut's hexagon is no smaller than that of the bolt it goes on, by the standards of one kind."""
    pairs = {"ISO 4014": "ISO 4032", "DIN 931": "DIN 934", "JIS small": "JIS small", "ASME B18.2.1": "ASME B18.2.2"}
    rows = facts.rows(_TABLE)
    bolts = [row for row in rows if row.cells["head"] == "hexagon bolt"]
    faults = []
    for row in rows:
        if row.cells["head"] != "hexagon nut":
            continue
        for bolt in bolts:
            same = (
                bolt.cells["size"] == row.cells["size"] and pairs.get(bolt.cells["standard"]) == row.cells["standard"]
            )
            if same and facts.middle(row) < facts.middle(bolt) * (1 - 1e-9):
                found = f"{printed(row)} for a nut of {row.cells['size']}, and {printed(bolt)} for its bolt"
                faults.append(at_row(row, column_of(row), "nut_is_no_smaller_than_its_bolt", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    hexagon_suits_its_thread,
    hexagon_rises_with_its_thread,
    nut_is_no_smaller_than_its_bolt,
)
