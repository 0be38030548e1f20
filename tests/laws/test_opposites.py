"""No refusal offers the opposite of what was typed, nor what was denied: every vocabulary, every option of a
command.
"""

from __future__ import annotations

import csv
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from gaugeblock.errors import GaugeblockError, LookupMiss
from gaugeblock.fasteners.keys import condition
from gaugeblock.negation import denied, says
from gaugeblock.tables.catalogue import LISTS, OPTIONS, TABLES, keys_of, refdata_folder
from gaugeblock.tables.load import canonical, option, refdata

if TYPE_CHECKING:
    pass

DATA = refdata()
TURNS = ("not {}", "no {}", "non-{}", "un{}", "without {}", "not very {}", "isn't {}", "never {}", "{}-free", "{} free")
WORDS = [
    dict(zip(LISTS["words"], cells, strict=True))
    for cells in csv.reader((Path(refdata_folder()) / "words.csv").read_text(encoding="utf-8").splitlines()[1:])
]
RELATIONS = ("related", "opposite")
NO_CELL = ("any", "not stated")
COLUMNS = [
    (table, key.name)
    for table in TABLES
    for key in keys_of(table)
    if key.match == "exact" and any(c[:1].isalpha() for c in DATA.table(table).column(key.name))
]


def offered(table: str, column: str, typed: str) -> tuple[str, ...] | None:
    """What a refusal of a word offers; None where the word is known."""
    try:
        canonical(DATA, table, column, typed)
    except LookupMiss as error:
        return error.every
    return None


def meanings(word: str, table: str) -> dict[str, str | None]:
    """What a word means in every column of the domain: dry and oiled steel have one surface."""
    domain = table.split("/", maxsplit=1)[0]
    columns = {column for name, column in COLUMNS if name.startswith(domain)}
    return {column: DATA.words(domain, column).get(word.casefold()) for column in columns}


@pytest.mark.parametrize(("table", "column"), COLUMNS)
def test_what_is_denied_is_never_offered(table: str, column: str) -> None:
    """Of every word of every key column, in every way to turn it round."""
    own = {c: c for c in DATA.table(table).column(column).values() if c not in NO_CELL and c[:1].isalpha()}
    listed_words = DATA.words(table.split("/", maxsplit=1)[0], column)
    words = own | {w: c for w, c in listed_words.items() if c in own and w.isalpha()}
    wrong = []
    for word, cell in list(words.items())[::3] if len(words) > 150 else words.items():
        for turn in TURNS[:4] if len(words) > 60 else TURNS:
            if not turn.endswith(" {}") and not (word.isalpha() and word.islower() and len(word) > 3):
                continue  # nobody glues a turn to a number or to several words
            typed = turn.format(word)
            if not denied(typed):
                continue  # "not an"
            listed = listed_words.get(typed.casefold())
            if listed is not None:
                if listed == cell and meanings(typed, table) == meanings(word, table):
                    wrong.append((typed, cell))
                continue
            found = offered(table, column, typed)
            if found is None:
                continue  # the table has a cell of this very name: unoxidised
            wrong += [(typed, c) for c in found if c == cell or says(c, denied(typed))]
    assert wrong == []


@pytest.mark.parametrize("relation", RELATIONS)
def test_an_opposite_is_never_offered_and_what_is_related_comes_first(relation: str) -> None:
    """Of every word that the tables list an opposite or a relation for."""
    wrong = []
    for row in WORDS:
        kind, _, column = row["column"].partition(" ")
        if kind != relation or row["until"]:
            continue
        found = _refusal(row["domain"], column, row["word"])
        if found is None:
            continue
        if relation == "related" and found[:1] != (row["cell"],):
            wrong.append((row["domain"], column, row["word"], found))
        if relation == "opposite" and row["cell"] in found:
            wrong.append((row["domain"], column, row["word"], found))
    assert wrong == [], wrong


def _refusal(domain: str, column: str, word: str) -> tuple[str, ...] | None:
    try:
        if (domain, column) == ("fasteners", "condition"):
            condition(word, DATA)
        elif f"{domain} {column}" in OPTIONS:
            option(word, f"{domain} {column}", "no such word", data=DATA)
        else:
            said = [DATA.words(domain, f"{relation} {column}").get(word.casefold()) for relation in RELATIONS]
            cell = next(cell for cell in said if cell)
            table = next(t for t, c in COLUMNS if t.startswith(domain) and c == column and _has(t, c, cell))
            canonical(DATA, table, column, word)
    except GaugeblockError as error:
        return error.every
    return None


def _has(table: str, column: str, cell: str) -> bool:
    return cell.casefold() in DATA.table(table).column(column)
