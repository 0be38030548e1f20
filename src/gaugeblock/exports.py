"""The tables for other programs: a Data Package descriptor, and one release as an SQLite file or as Parquet files."""

from __future__ import annotations

import contextlib
import os
import sqlite3
import tempfile
from typing import TYPE_CHECKING, Any

from gaugeblock.errors import OutputError
from gaugeblock.tables.catalogue import DOMAINS, LISTS, TABLES, columns_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

# What a column holds where it is no plain text.
_TYPES = {"value": "number", "low": "number", "high": "number", "date": "date"}
# A column of any table -> the list and its column that it refers to.
_REFERS = {"source": ("sources", "id"), "quantity": ("quantities", "quantity")}
_LISTS = ("sources", "quantities", "formulas", "words", "releases", "ranges", "expressions", "symbols")
_ABOUT = "Reference figures for a small vehicle-building shop, each with its source and with how far it was read."


def descriptor(data: Refdata) -> dict[str, Any]:
    """The tables as a Data Package (version 2 of the specification): fields, types, foreign keys, licence.

    Source: Data Package standard, https://datapackage.org, as read in 2026.
    """
    resources = [_resource(name, LISTS[name], f"{name}.csv") for name in _LISTS]
    resources += [_resource(f"{d}-rules", LISTS["rules"], f"{d}/rules.csv") for d in DOMAINS]
    resources += [_resource(name.replace("/", "-"), columns_of(name), f"{name}.csv") for name in TABLES]
    return {
        "$schema": "https://datapackage.org/profiles/2.0/datapackage.json",
        "name": "gaugeblock",
        "title": "gaugeblock reference figures",
        "description": _ABOUT,
        "version": data.release,
        "licenses": [{"name": "MIT", "title": "MIT License", "path": "https://opensource.org/license/mit"}],
        "resources": [r for r in resources if os.path.isfile(os.path.join(data.folder, r["path"]))],
    }


def _resource(name: str, columns: Iterable[str], path: str) -> dict[str, Any]:
    fields = [{"name": column, "type": _TYPES.get(column, "string")} for column in columns]
    schema: dict[str, Any] = {"fields": fields, "missingValues": [""]}
    if name == "releases":
        schema["primaryKey"] = ["version"]
    fields_of = [field["name"] for field in fields]
    is_free = name in ("formulas", "symbols", "ranges")  # a rule may be of two quantities, a formula of no source
    keys = [(c, *of) for c, of in _REFERS.items() if c in fields_of and of != (name, c) and not is_free]
    if keys:
        schema["foreignKeys"] = [
            {"fields": [column], "reference": {"resource": resource, "fields": [field]}}
            for column, resource, field in keys
        ]
    return {
        "name": name.replace("_", "-"),
        "type": "table",
        "path": path,
        "scheme": "file",
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "schema": schema,
    }


def to_sqlite(path: str, data: Refdata) -> int:
    """Write one release into a new SQLite file: every table and list with its living rows; how many rows.

    The tables are named as their files, with ``_`` for ``/``; all cells are text as they stand in the tables, the
    numbers too, so that no digit is lost. OutputError where the file is there already or cannot be written.
    """
    from gaugeblock.job.output import write_new

    handle, place = tempfile.mkstemp(suffix=".sqlite")
    os.close(handle)
    try:
        with contextlib.closing(sqlite3.connect(place)) as base:
            count = sum(_fill(base, name, columns, rows) for name, columns, rows in _released(data))
            base.commit()
        with open(place, "rb") as written:
            write_new(path, written.read())
    finally:
        os.unlink(place)
    return count


def to_parquet(folder: str, data: Refdata) -> int:
    """Write one release into a new folder, a Parquet file for every table and list; how many rows.

    Names and cells are those of ``to_sqlite``: text as it stands in the tables. Each file's metadata name the release
    and its digest. OutputError where the folder is there already or cannot be written, and where pyarrow, which comes
    with ``gaugeblock[parquet]``, is not installed.

    Source: Apache Parquet format, https://parquet.apache.org, by its own library.
    """
    try:
        import pyarrow
        from pyarrow import parquet
    except ImportError:
        why = "Parquet is written with pyarrow, which is not installed"
        do = "run: pip install 'gaugeblock[parquet]'; --sqlite needs nothing more"
        raise OutputError("--parquet", "export", why, (), do) from None
    from gaugeblock.job.output import write_all
    from gaugeblock.tables.releases import release_digest

    files: dict[str, bytes] = {}
    count = 0
    text = pyarrow.string()
    about = {"gaugeblock_release": data.release, "gaugeblock_digest": release_digest(data.folder, data.release)}
    for name, columns, rows in _released(data):
        schema = pyarrow.schema([(column, text) for column in columns], metadata=about)
        cells = [[row[at] for row in rows] for at in range(len(columns))]
        sink = pyarrow.BufferOutputStream()
        parquet.write_table(pyarrow.table(cells, schema=schema), sink)
        files[f"{name.replace('/', '_')}.parquet"] = sink.getvalue().to_pybytes()
        count += len(rows)
    write_all(folder, files, _is_taken)
    return count


def _is_taken(folder: str) -> None:
    why = "something of that name is already there"
    raise OutputError(folder, "output", why, (), "choose another name, or move it away")


def _released(data: Refdata) -> Iterable[tuple[str, tuple[str, ...], list[list[str]]]]:
    """Name, columns and living rows of every table and list of a release."""
    for table in data.all_tables():
        yield table.name, tuple(columns_of(table.name)), [list(row.values) for row in table.rows]
    for name in ("sources", "quantities", "formulas"):
        rows = [[entry[column] for column in LISTS[name]] for entry in data.listing(name).values()]
        yield name, LISTS[name], rows
    statements = [[d, *(s[c] for c in LISTS["rules"])] for d in DOMAINS for s in data.statements(d)]
    yield "rules", ("domain", *LISTS["rules"]), statements
    yield "releases", LISTS["releases"], [[r[c] for c in LISTS["releases"]] for r in data.releases]


def _fill(base: sqlite3.Connection, name: str, columns: tuple[str, ...], rows: list[list[str]]) -> int:
    table = name.replace("/", "_")
    named = ", ".join(f'"{column}" TEXT' for column in columns)
    base.execute(f'CREATE TABLE "{table}" ({named})')
    base.executemany(f'INSERT INTO "{table}" VALUES ({", ".join("?" * len(columns))})', rows)
    return len(rows)
