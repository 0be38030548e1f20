"""Digests of rows and of data releases, and closing a release.

A released row is frozen: its digest covers every cell but ``until``, so a later release may close the row and
nothing else may change. Close a release with ``python -m gaugeblock.tables.releases close 0.1.0``.
"""

from __future__ import annotations

import csv
import hashlib
import json
import os
import sys
from typing import TYPE_CHECKING

from gaugeblock.errors import DataError, GaugeblockError, InputError, OutputError
from gaugeblock.tables.catalogue import DOMAINS, LISTS, TABLES, columns_of
from gaugeblock.tables.load import read_lines, refdata_folder, version_key

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

# The lists that a release holds beside the tables of figures and the rules of each domain.
RELEASED_LISTS = ("sources", "quantities", "formulas", "words")


def released_files() -> dict[str, tuple[str, ...]]:
    """Every file that a release covers, without its ending, with its columns."""
    files = {name: LISTS[name] for name in RELEASED_LISTS}
    for domain in DOMAINS:
        files.update({t: columns_of(t) for t in TABLES if t.startswith(f"{domain}/")})
        files[f"{domain}/rules"] = LISTS["rules"]
    return files


def row_digest(table: str, cells: Mapping[str, str]) -> str:
    """sha256 (hex) of a row: its table and its cells, blanks and ``until`` left out.

    >>> row_digest("a/b", {"x": "1", "y": "", "until": "0.2.0"}) == row_digest("a/b", {"x": "1"})
    True
    """
    kept = {column: cell for column, cell in cells.items() if cell and column != "until"}
    text = json.dumps([table, kept], ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()


def combine(digests: Iterable[str]) -> str:
    """sha256 (hex) over row digests, in sorted order."""
    return hashlib.sha256("\n".join(sorted(digests)).encode()).hexdigest()


def lives_in(version: str, since: str, until: str) -> bool:
    """Whether a row with this lifetime lives in a release."""
    at = version_key(version)
    return version_key(since) <= at and (not until or at < version_key(until))


def release_digest(folder: str, version: str) -> str:
    """sha256 (hex) of all that lives in a release: figures, rules, formulas, quantities, sources and words.

    Raises DataError when a file is missing or cannot be read.
    """
    digests = []
    for name, columns in released_files().items():
        for _, values in read_lines(os.path.join(folder, *name.split("/")) + ".csv", name, columns):
            cells = dict(zip(columns, values, strict=True))
            if lives_in(version, cells["since"], cells["until"]):
                digests.append(row_digest(name, cells))
    return combine(digests)


def close(version: str, folder: str | None = None) -> str:
    """Freeze a release: write its digest into releases.csv, and return the digest.

    Raises InputError when there is no such release, it is closed already, or an earlier one is open; DataError
    when ``validate`` finds a fault. Nothing is written then.
    """
    from gaugeblock.tables.validate import validate

    folder = folder or refdata_folder()
    path = os.path.join(folder, "releases.csv")
    columns = LISTS["releases"]
    rows = [dict(zip(columns, values, strict=True)) for _, values in read_lines(path, "releases", columns)]
    versions = [r["version"] for r in rows]
    if version not in versions:
        raise InputError(version, "releases.csv", "no such release", versions[::-1], "add its row first")
    at = versions.index(version)
    if rows[at]["sha256"]:
        raise InputError(
            version, "releases.csv", "this release is closed already", (), "add a new release for new rows"
        )
    still_open = [r["version"] for r in rows[:at] if not r["sha256"]]
    if still_open:
        raise InputError(version, "releases.csv", "an earlier release is open", still_open, "close that one first")
    # Two releases may be open while both wait to be closed; that alone does not stop the first.
    faults = [f for f in validate(folder) if f.rule != "open_release"]
    if faults:
        raise DataError(
            version, "refdata", f"{len(faults)} faults, the first: {faults[0]}", (), "run validate and correct them"
        )
    rows[at]["sha256"] = release_digest(folder, version)
    _write(path, [list(columns), *(list(r.values()) for r in rows)])
    return rows[at]["sha256"]


def _write(path: str, lines: list[list[str]]) -> None:
    try:
        with open(f"{path}.new", "w", newline="", encoding="ascii") as handle:
            csv.writer(handle, lineterminator="\n").writerows(lines)
        os.replace(f"{path}.new", path)
    except OSError as error:
        raise OutputError("releases.csv", "refdata", str(error), (), "make the file writable") from None


def main(arguments: list[str]) -> int:
    """``close VERSION [FOLDER]``: exit 0 when closed, 2 when refused."""
    if len(arguments) not in (2, 3) or arguments[0] != "close":
        sys.stderr.write("usage: python -m gaugeblock.tables.releases close VERSION [FOLDER]\n")
        return 2
    try:
        digest = close(*arguments[1:])
    except GaugeblockError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    sys.stdout.write(f"{arguments[1]} {digest}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
