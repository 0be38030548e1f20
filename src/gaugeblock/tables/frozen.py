"""Whether closed releases are as released: their rows by digest, their digests by what the program carries."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import refdata_folder
from gaugeblock.tables.closed import carried
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.load import Row
from gaugeblock.tables.releases import combine, released_files, row_digests

if TYPE_CHECKING:
    from collections.abc import Mapping


def digest_faults(read: Mapping[str, list[Row]], releases: list[Row], versions: Mapping[str, int]) -> list[Fault]:
    closed = [r for r in releases if r.cells["sha256"] and r.cells["version"] in versions]
    if not closed:
        return []
    last = len(versions)
    spans = [
        (versions.get(r.cells["since"], last), versions.get(r.cells["until"], last), digest)
        for name, rows in read.items()
        for r, digest in zip(rows, row_digests(name, released_files()[name], (r.values for r in rows)), strict=True)
    ]
    faults = []
    for release in closed:
        at = versions[release.cells["version"]]
        digest = combine(d for since, until, d in spans if since <= at < until)
        if digest != release.cells["sha256"]:
            do = (
                "a released row was edited, added or taken out: put it back; to correct it, close the row (until) and"
                " add a new one"
            )
            faults.append(
                Fault(
                    "releases.csv",
                    release.line,
                    "sha256",
                    "released_rows_frozen",
                    f"rows of {release.cells['version']} with digest {digest}",
                    do,
                )
            )
    return faults


def carried_faults(folder: str, releases: list[Row]) -> list[Fault]:
    """Digests that differ from those in the package: of the project's own tables, or of a copy of them."""
    whole = carried().whole
    listed = {r.cells["version"]: r for r in releases}
    is_own = os.path.realpath(folder) == os.path.realpath(refdata_folder())
    if not is_own and all(listed[v].cells["sha256"] != d for v, d in whole.items() if v in listed):
        return []
    faults = []
    for version, digest in whole.items():
        row = listed.get(version)
        if row is None or row.cells["sha256"] != digest:
            line, found = (0, f"no release {version}") if row is None else (row.line, repr(row.cells["sha256"][:12]))
            do = f"put back the digest {digest}, and the rows as they were released"
            faults.append(Fault("releases.csv", line, "sha256", "carried_digest", f"{found} for {version}", do))
    for version, row in listed.items():
        if is_own and row.cells["sha256"] and version not in whole:
            do = f"run: python -m gaugeblock.closing {version}"
            faults.append(Fault("releases.csv", row.line, "sha256", "digest_not_carried", version, do))
    return faults
