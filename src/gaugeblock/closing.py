"""Closing a data release: ``python -m gaugeblock.closing 0.1.0`` writes its digest, and its rows are frozen.

The digests of the project's own releases are written a second time into the package, with those of each file: see
``tables/closed.py``. Said of a release that is closed already, it writes that second place anew.
"""

from __future__ import annotations

import csv
import os
import sys

from gaugeblock.domains import validate
from gaugeblock.errors import DataError, GaugeblockError, InputError, OutputError
from gaugeblock.tables import closed
from gaugeblock.tables.catalogue import LISTS, refdata_folder
from gaugeblock.tables.load import read_lines
from gaugeblock.tables.releases import release_digest, release_digests, released_files


def close(version: str, folder: str | None = None) -> str:
    """Freeze a release: write its digest into releases.csv and the package, and return the digest.

    Raises InputError when there is no such release, it is closed already, or an earlier one is open; DataError
    when ``validate`` finds a fault. Nothing is written then.
    """
    own = folder is None
    folder = folder or refdata_folder()
    path = os.path.join(folder, "releases.csv")
    columns = LISTS["releases"]
    rows = [dict(zip(columns, values, strict=True)) for values in read_lines(path, "releases", columns)]
    versions = [r["version"] for r in rows]
    if version not in versions:
        raise InputError(version, "releases.csv", "no such release", versions[::-1], "add its row first")
    at = versions.index(version)
    if own and rows[at]["sha256"] and version not in closed.carried().whole:
        _carry(folder, rows[: at + 1])
        return rows[at]["sha256"]
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
    if own:
        _carry(folder, rows[: at + 1])
    return rows[at]["sha256"]


def _carry(folder: str, rows: list[dict[str, str]]) -> None:
    """Write the digests of closed releases into the package. DataError when one is not that of its rows."""
    lines = [closed.HEADER.split(",")]
    for row in rows:
        whole, files = release_digests(folder, row["version"])
        if whole != row["sha256"]:
            raise DataError(row["version"], "releases.csv", f"its rows have the digest {whole}", (), "run validate")
        lines += [[row["version"], "", whole], *([row["version"], *entry] for entry in sorted(files.items()))]
    _write(closed.closed_file(), lines)
    standing = closed.file_bytes(folder, released_files())
    _write(closed.bytes_file(), [closed.BYTES_HEADER.split(","), *map(list, standing)])


def _write(path: str, lines: list[list[str]]) -> None:
    name = os.path.basename(path)
    try:
        with open(f"{path}.new", "w", newline="", encoding="ascii") as handle:
            csv.writer(handle, lineterminator="\n").writerows(lines)
        os.replace(f"{path}.new", path)
    except OSError as error:
        raise OutputError(name, "refdata", str(error), (), "make the file writable") from None


def main(arguments: list[str]) -> int:
    """``VERSION [FOLDER]``: exit 0 when closed, 2 when refused."""
    if len(arguments) not in (1, 2):
        sys.stderr.write("usage: python -m gaugeblock.closing VERSION [FOLDER]\n")
        return 2
    try:
        digest = close(*arguments)
    except GaugeblockError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    sys.stdout.write(f"{arguments[0]} {digest}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
