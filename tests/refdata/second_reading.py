"""The second reading of the safety tables, by another hand, and compared cell by cell.

``second/<domain>_<table>.csv`` holds key, quantity, numbers, unit, source and mark of each row that could be
read twice, entered again from the gathered rows or, where these were read once only, from the documents' text
found again; a blank mark was not read twice. The 13 rows of release 0.4.0 were read the second time by the same
reader, the stainless bolts on other pages, 409 tube and engine oil on the same. The rows that 0.7.0 adds to
lines and tubes were entered twice by the same reader, the second time from the gathered rows or the page again;
those of fasteners and driveline were entered again from the gathered rows by tables of their own, five bolt
hardnesses are from memory and one was seen on one page only. Those of 0.9.0, and older ones of limits,
supports, set-ups, joints, wire, fuels, locknuts and bends, were paired with the gathered rows by their keys and
places, never by their numbers, and stand here where the numbers were the same; the other pairs were looked at
one by one: another unit, another row, or a correction that the change log tells; the rules on boats' fuel and
on brakes from copies of their text; the loads of ISO 898-1 from two copies of its tables, which quote it. Rows
that stand in refdata only are habits without a document, figures from memory, and pages that were not found
again.
"""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import keys_of
from gaugeblock.tables.facts import NUMBERS

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

FOLDER = Path(__file__).parent / "second"

# table: (rows read twice, living rows), as measured when they were last compared.
MEASURED = {
    "fasteners/grades": (205, 211),
    "fasteners/torques": (1021, 1021),
    "fasteners/part_torques": (973, 993),
    "fasteners/nut_factors": (31, 38),
    "lines/materials": (189, 198),
    "lines/fluids": (47, 47),
    "driveline/steels": (944, 944),
    "tubes/materials": (335, 343),
    "lines/limits": (120, 124),
    "lines/supports": (47, 49),
    "wiring/limits": (83, 87),
    "driveline/setup": (227, 232),
    "fasteners/prevailing": (86, 86),
}

# Tables of which a part was read twice: what is fed to slips is not judged by them.
PARTS = {
    # Entered again from the pages' text, the inch bolts and the hex keys from other pages; habits stand once.
    "fasteners/hexagons": (201, 325),
    # Entered a second time from other charts, the letters from their millimetres.
    "fasteners/drills": (106, 106),
    # Read again from the pages by another reader, who had not seen the first figures.
    "fasteners/british_threads": (76, 78),
    # Compared with the gathered rows; those of calculated or renamed keys stand once.
    "wiring/wire": (397, 451),
    "lines/clearances": (25, 27),
    "tubes/pipe_sizes": (245, 325),
    "tubes/flares": (96, 317),
    # ISO 898-1 loads against two copies of its tables; the inch loads were read once.
    "fasteners/bolt_loads": (123, 153),
    # What release 0.9.0 brought: entered again from the gathered rows, the rules of boats and brakes from their text.
    "driveline/speedometers": (3, 3),
    "exhaust/back_pressure": (23, 30),
    "exhaust/clearances": (7, 13),
    "exhaust/equivalent_lengths": (3, 6),
    "exhaust/expansion": (4, 4),
    "exhaust/joints": (15, 24),
    "exhaust/limits": (21, 31),
    "exhaust/materials": (24, 28),
    "exhaust/outlets": (6, 7),
    "lines/brakes": (13, 28),
    "lines/fuel_supply": (34, 54),
    # Entered again from the gathered rows in the same way, older rows too.
    "lines/fuels": (47, 86),
    "wiring/fuses": (9, 44),
    "driveline/joints": (46, 63),
    "tubes/bend_minimums": (56, 240),
}
TWICE = MEASURED | PARTS

Cells = dict[str, str]
Place = tuple[str, ...]


def place_of(table: str, cells: Mapping[str, str]) -> Place:
    """What names a row in both readings: its key cells, quantity and source."""
    return (*(cells[k.name] for k in keys_of(table)), cells["quantity"], cells["source"])


def second_rows(table: str) -> list[Cells]:
    """The rows of a table as the second reader entered them."""
    with open(FOLDER / f"{table.replace('/', '_')}.csv", newline="", encoding="ascii") as handle:
        return list(csv.DictReader(handle))


def differences(second: Mapping[str, str], cells: Mapping[str, str]) -> list[str]:
    """The columns in which a row of refdata differs from its second reading: 0.9 and 0.90 are equal, 0.9 and 0.91
    are not.
    """
    found = [c for c in NUMBERS if _number(second[c]) != _number(cells[c])]
    found += ["unit"] if second["unit"] != cells["unit"] else []
    return found + (["checked"] if second["checked"] and second["checked"] != cells["checked"] else [])


def _number(text: str) -> Decimal | None:
    return Decimal(text) if text else None


def living(rows: Iterable[Cells]) -> list[Cells]:
    """The rows that live in the newest release."""
    return [r for r in rows if not r["until"]]
