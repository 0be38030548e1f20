"""Digests of rows and of data releases.

A released row is frozen: its digest covers every cell but ``until``, so a later release may close the row and
nothing else may change.
"""

from __future__ import annotations

import hashlib
import json
import os
from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import DOMAINS, LISTS, TABLES, columns_of
from gaugeblock.tables.load import read_lines, version_key

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
