"""The one column catalogue: every table, its key columns and how they match, and the columns all rows share.

Schemas, the loader, the look-up and the documentation are made from this. The tables and their keys are those of
refdata/tables.csv, the columns that all rows share and the other files are named here. A key is written
``name`` + marks: ``!`` no ``any`` allowed; ``~`` an interval; ``^`` interpolated between printed points.
"""

from __future__ import annotations

import os

from gaugeblock.errors import DataError, LookupMiss

ROW_COLUMNS = (
    "quantity",
    "value",
    "low",
    "high",
    "unit",
    "conditions",
    "basis",
    "source",
    "locator",
    "checked",
    "standing",
    "since",
    "until",
    "note",
)


def refdata_folder() -> str:
    """The folder of refdata: inside the installed package, else beside ``src`` in a checkout."""
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    for folder in (os.path.join(package, "_refdata"), os.path.join(package, "..", "..", "refdata")):
        if os.path.isfile(os.path.join(folder, "releases.csv")):
            return os.path.normpath(folder)
    raise DataError(
        "refdata", "installation", "the tables are not there", (), "install gaugeblock again, or run in a checkout"
    )


def _tables() -> dict[str, str]:
    try:
        with open(os.path.join(refdata_folder(), "tables.csv"), encoding="utf-8") as handle:
            head, *lines = handle.read().splitlines()
    except (OSError, UnicodeDecodeError, ValueError) as error:
        raise DataError("tables.csv", "refdata", f"cannot be read: {error}", (), "restore it") from None
    pairs = [line.split(",") for line in lines]
    if head != "table,keys" or any(len(pair) != 2 for pair in pairs):
        raise DataError("tables.csv", "refdata", "not a list of tables and their keys", (), "write: table,keys")
    return dict(pairs)


# table -> key columns, in the order of the file; and the folders they stand in, in the order of the work on a car.
TABLES: dict[str, str] = _tables()
DOMAINS: tuple[str, ...] = tuple(dict.fromkeys(table.partition("/")[0] for table in TABLES))

SERVICES = (
    "any",
    "vehicle",
    "vehicle safety cage",
    "light truck",
    "heavy truck",
    "military vehicle",
    "aircraft",
    "piping",
    "conduit",
    "marine",
    "industrial",
    "refrigeration",
    "hydraulic",
    "trailer",
    "garden machine",
    "one vehicle",
)
# A figure of one of these services answers a vehicle; all others inform and never pass or fail a check. A figure from
# the
# manual of one model is ``one vehicle``: an example beside the range that several of them make.
VEHICLE_SERVICES = ("vehicle", "any")

# Options that are one of a few words and stand in no table; words.csv may list what people type for them.
OPTIONS: dict[str, tuple[str, ...]] = {
    "driveline differential": ("open", "limited slip", "locked"),
    "driveline driven": ("rear", "front"),
    "driveline fit": ("side fit", "major diameter fit"),
    "driveline lifted": ("yes", "no"),
    "driveline phasing": ("in phase", "wrong phase"),
    "driveline root": ("flat root", "fillet root"),
    "driveline seating": ("fixed", "flexible"),
    "fasteners insert": ("yes", "no"),
    "fasteners joint": ("reused", "permanent"),
    "wiring kind": ("load", "starter cable"),
    "wiring return": ("wire", "body"),
}


# The kinds of a source, and what each weighs when rows compete: 0 a standard or a rule, 1 a public manual or a
# handbook, 2 a
# maker's published table, 3 any other page. A row without a source, a habit, weighs as the last.
SOURCE_WEIGHTS: dict[str, int] = {
    "standard": 0,
    "regulation": 0,
    "competition rules": 0,
    "government handbook": 1,
    "handbook": 1,
    "textbook": 1,
    "paper": 1,
    "maker's sheet": 2,
    "reference page": 3,
    "other": 3,
}
LIGHTEST = max(SOURCE_WEIGHTS.values())


# The dimension of interval and interpolated key columns. The hardness key is a bare number on the scale of its row.
KEY_DIMENSIONS = {
    "size": "length",
    "od": "length",
    "wall": "length",
    "section": "length",
    "bend_ratio": "ratio",
    "temper": "temperature",
    "temperature": "temperature",
    "displacement": "volume",
    "power": "power",
}


class Key:
    """A key column: its ``name``, how it matches (``exact``, ``interval``, ``interpolated``), and if ``any`` may
    stand.
    """

    __slots__ = ("any_allowed", "match", "name")

    def __init__(self, mark: str) -> None:
        self.any_allowed = not mark.endswith("!")
        mark = mark.rstrip("!")
        self.match = {"~": "interval", "^": "interpolated"}.get(mark[-1], "exact")
        self.name = mark.rstrip("~^")


_KEYS: dict[str, tuple[Key, ...]] = {}


def keys_of(table: str) -> tuple[Key, ...]:
    """The key columns of a table, in order; LookupMiss names the nearest tables."""
    got = _KEYS.get(table)
    if got is None:
        if table not in TABLES:
            from difflib import get_close_matches

            near = get_close_matches(table, TABLES, n=5, cutoff=0.3)
            raise LookupMiss(table, "refdata", "no such table", near, "use one of the tables of the catalogue")
        got = _KEYS[table] = tuple(Key(mark) for mark in TABLES[table].split())
    return got


def columns_of(table: str) -> tuple[str, ...]:
    """All columns of a table: its keys, then those every row has."""
    return tuple(k.name for k in keys_of(table)) + ROW_COLUMNS


# The other files of refdata: column names, in order.
LISTS: dict[str, tuple[str, ...]] = {
    "sources": ("id", "title", "publisher", "year", "kind", "url", "note", "since", "until"),
    "quantities": (
        "quantity",
        "dimension",
        "side",
        "safer",
        "prefers",
        "step",
        "hazard",
        "may",
        "plausible_low",
        "plausible_high",
        "plausible_unit",
        "definition",
        "words",
        "since",
        "until",
    ),
    "formulas": (
        "name",
        "domain",
        "expression",
        "symbols",
        "range",
        "basis",
        "source",
        "locator",
        "checked",
        "since",
        "until",
        "note",
    ),
    "words": ("domain", "word", "column", "cell", "since", "until", "note"),
    "releases": ("version", "date", "summary", "sha256"),
    "ranges": ("table", "quantity", "low", "high", "unit"),
    "expressions": ("rule", "kind", "gives", "unit", "expression", "reason"),
    "symbols": ("rule", "symbol", "quantity", "unit", "where"),
    "rules": (
        "topic",
        "subject",
        "service",
        "jurisdiction",
        "statement",
        "basis",
        "source",
        "locator",
        "checked",
        "standing",
        "severity",
        "since",
        "until",
        "note",
    ),
}
