"""A search that is the first of its tables, and reads some of their lines, finds what a later one finds."""

from __future__ import annotations

import random

import pytest

from gaugeblock.finding import find
from gaugeblock.shelf import plain, shelves
from gaugeblock.tables.catalogue import TABLES, keys_of
from gaugeblock.tables.kin import kin, living_at
from gaugeblock.tables.lines import read_text
from gaugeblock.tables.load import Refdata

WHOLE = Refdata()
WHOLE.all_tables()
KNOWN = [
    "steel",
    "spark plug",
    "torque",
    "copper",
    "any",
    "brake steel",
    "SAE",
    "dom tube",
    "1/4 in",
    "18-8",
    "rule",
    "note",
]
WORDS = sorted(
    {word for shelf in shelves(WHOLE) for e in shelf.entries for text in e.named for word in plain(text).split()}
)
DRAW = random.Random(1)
PAIRS = [" ".join(DRAW.sample(WORDS, 2)) for _ in range(10)]


@pytest.mark.parametrize(
    "text", [*KNOWN, *DRAW.sample(WORDS, 40), *(word[:3] for word in DRAW.sample(WORDS, 10)), *PAIRS]
)
def test_the_first_search_finds_what_a_later_one_finds(text: str) -> None:
    first, later = find(text, data=Refdata()), find(text, data=WHOLE)
    assert first.as_dict() == later.as_dict()
    assert (
        find(text, data=Refdata(), whole=True, named=True).text()
        == find(text, data=WHOLE, whole=True, named=True).text()
    )


@pytest.mark.parametrize("name", TABLES)
def test_the_kin_of_some_lines_are_all_with_their_keys(name: str) -> None:
    width, text = len(keys_of(name)), read_text(WHOLE.path(name), name)
    living = [(line, list(cells)) for line, cells in WHOLE.living(name)]
    drawn = DRAW.sample(living, min(len(living), 12))
    assert living_at(WHOLE, name, text, {line - 1 for line, _ in drawn}) == sorted(drawn)
    keys = [cells[:width] for _, cells in drawn]
    assert kin(WHOLE, name, text, drawn) == [line for line in living if line[1][:width] in keys]


def test_a_cell_that_is_quoted_without_need_hides_no_kin() -> None:
    name = "fasteners/moduli"
    text = read_text(WHOLE.path(name), name)
    line, cells = WHOLE.living(name)[0]
    lines = text.split("\n")
    quoted = ",".join([f'"{cells[0]}"', *lines[line - 1].split(",")[1:]])
    again = "\n".join([*lines[:-1], quoted, ""])
    assert [n for n, _ in kin(WHOLE, name, again, [(line, cells)]) if n in (line, len(lines))] == [line, len(lines)]
