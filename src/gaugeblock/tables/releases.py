"""Digests of rows and of data releases.

A released row is frozen: its digest covers every cell but ``until``, so a later release may close the row and
nothing else may change.
"""

from __future__ import annotations

import hashlib
import os
from functools import cache
from json.encoder import encode_basestring
from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import DOMAINS, LISTS, TABLES, columns_of
from gaugeblock.tables.load import read_lines, version_key

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

# The lists that a release holds beside the tables of figures and the rules of each domain.
RELEASED_LISTS = ("sources", "quantities", "formulas", "words")
# Columns that a digest leaves out: how a row ends, and what is known about a quantity beside its figures.
UNFROZEN = {"quantities": frozenset({"may", "plausible_low", "plausible_high", "plausible_unit"})}
_ESCAPED = bytes([*range(0x20), *b'"\\'])  # by JSON


@cache
def released_files() -> dict[str, tuple[str, ...]]:
    """Every file that a release covers, without its ending, with its columns."""
    files = {name: LISTS[name] for name in RELEASED_LISTS}
    for domain in DOMAINS:
        files.update({t: columns_of(t) for t in TABLES if t.startswith(f"{domain}/")})
        files[f"{domain}/rules"] = LISTS["rules"]
    return files


def row_digest(table: str, cells: Mapping[str, str]) -> str:
    """sha256 (hex) of a row: its table and its cells, blanks, ``until`` and the columns of ``UNFROZEN`` left out.

    >>> row_digest("a/b", {"x": "1", "y": "", "until": "0.2.0"}) == row_digest("a/b", {"x": "1"})
    True
    """
    return row_digests(table, tuple(cells), [list(cells.values())])[0]


def row_digests(table: str, columns: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """As ``row_digest``, of many rows with the same columns."""
    kept = [
        (f'"{columns[at]}":', at)
        for at in sorted(range(len(columns)), key=columns.__getitem__)
        if columns[at] != "until" and columns[at] not in UNFROZEN.get(table, ())
    ]
    every = list(rows)
    is_plain = _is_plain("".join(map("".join, every)))  # as nearly all tables are: asked of all rows at once
    out = []
    for cells in every:
        # JSON without spaces: ["table",{"column":"cell",...}], sorted by column
        if is_plain or _is_plain("".join(cells)):
            text = ",".join([f'{head}"{cell}"' for head, at in kept if (cell := cells[at])])
        else:
            text = ",".join([head + encode_basestring(cell) for head, at in kept if (cell := cells[at])])
        out.append(hashlib.sha256(f'["{table}",{{{text}}}]'.encode()).hexdigest())
    return out


def _is_plain(text: str) -> bool:
    """Whether JSON has nothing to escape in a text: no quote, no backslash, no control character."""
    coded = text.encode()
    return len(coded.translate(None, _ESCAPED)) == len(coded)


def combine(digests: Iterable[str]) -> str:
    """sha256 (hex) over row digests, in sorted order."""
    return hashlib.sha256("\n".join(sorted(digests)).encode()).hexdigest()


def lives_in(version: str, since: str, until: str) -> bool:
    """Whether a row with this lifetime lives in a release."""
    at = version_key(version)
    return version_key(since) <= at and (not until or at < version_key(until))


def file_digest(name: str, rows: Iterable[Sequence[str]], version: str) -> str:
    """sha256 (hex) over the rows of one file that live in a release; blank when none does."""
    digests = row_digests(name, released_files()[name], _living(name, rows, version))
    return combine(digests) if digests else ""


def _living(name: str, rows: Iterable[Sequence[str]], version: str) -> list[Sequence[str]]:
    columns = released_files()[name]
    since, until = columns.index("since"), columns.index("until")
    lives: dict[tuple[str, str], bool] = {}
    living = []
    for values in rows:
        span = (values[since], values[until])
        if span not in lives:
            lives[span] = lives_in(version, *span)
        if lives[span]:
            living.append(values)
    return living


def release_digests(
    folder: str, version: str, living: Mapping[str, Sequence[Sequence[str]]] | None = None
) -> tuple[str, dict[str, str]]:
    """sha256 (hex) of all that lives in a release, and of the part of each file that has a part in it.

    Figures, rules, formulas, quantities, sources and words; ``living`` has the living rows of files that were read
    already. Raises DataError when a file is missing or cannot be read.
    """
    parts = dict(_parts(folder, version, living))
    whole = combine(d for digests in parts.values() for d in digests)
    return whole, {name: combine(digests) for name, digests in parts.items()}


def _parts(
    folder: str, version: str, living: Mapping[str, Sequence[Sequence[str]]] | None
) -> Iterator[tuple[str, list[str]]]:
    """The digests of the rows of each file that has a part in a release."""
    for name, columns in released_files().items():
        rows = None if living is None else living.get(name)
        if rows is None:
            every = read_lines(os.path.join(folder, *name.split("/")) + ".csv", name, columns)
            rows = _living(name, every, version)
        digests = row_digests(name, columns, rows)
        if digests:
            yield name, digests


def release_digest(folder: str, version: str, living: Mapping[str, Sequence[Sequence[str]]] | None = None) -> str:
    """As ``release_digests``, of all files together."""
    return combine(d for _, digests in _parts(folder, version, living) for d in digests)
