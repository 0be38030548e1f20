"""The index of exact keys finds what a walk through all rows of a quantity finds, in the same order."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import groupby
from pathlib import Path

import pytest

from gaugeblock.tables.catalogue import TABLES, refdata_folder
from gaugeblock.tables.index import _WALKS, Index
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Row, Table, refdata

DRAW = random.Random(1)


def want(table: Table, row: Row, at: int) -> str | Fraction | None:
    """Something that may be asked of one key of a row: its cell, ``any``, another row's cell, or nothing."""
    cell = DRAW.choice([row, row, row, DRAW.choice(table.rows)]).key[at]
    if DRAW.random() < 0.1:
        return DRAW.choice([None, "any", "no such word"])
    if table.keys[at].match == "exact" or cell == "any":
        return cell
    interval = parse_interval(cell)
    assert interval is not None
    ends = [end for end in (interval.low, interval.high) if end is not None]
    return DRAW.choice([*ends, sum(ends, Fraction(0)) / len(ends)])


@pytest.mark.parametrize("name", TABLES)
def test_the_index_finds_what_a_walk_finds(name: str) -> None:
    table = refdata().table(name)
    for rows in table.by_quantity.values():
        index = Index(table.keys, rows)
        some = [*DRAW.sample(rows, min(len(rows), 40)), *rows[:1] * (_WALKS + 2)]
        for row in some:
            wants = [want(table, row, at) for at in range(len(table.keys))]
            assert list(index.fitting(wants)) == list(Index(table.keys, rows).fitting(wants))


def test_the_words_of_a_domain_stand_together() -> None:
    """They are read as one piece of the file: a word at its end would make every question read all of it."""
    domains = [line.partition(",")[0] for line in Path(refdata_folder(), "words.csv").read_text().splitlines()[1:]]
    assert len(list(groupby(domains))) == len(set(domains))
