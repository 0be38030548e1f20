"""A look-up that reads a part of a table gives what the whole table gives."""

from __future__ import annotations

import random

import pytest

from gaugeblock.errors import GaugeblockError
from gaugeblock.figure import Figure
from gaugeblock.lookup import look_up, look_up_or_none
from gaugeblock.tables.catalogue import TABLES, keys_of
from gaugeblock.tables.load import Refdata, canonical

TABLES_BY_WORD = [name for name in TABLES if keys_of(name)[0].match == "exact"]
SHOWN = 15  # first cells of a table, drawn by chance


def told(table: str, quantity: str, keys: dict[str, str], data: Refdata) -> Figure | str:
    try:
        return look_up(table, quantity, data=data, **keys)
    except GaugeblockError as error:
        return f"{type(error).__name__}: {error}"


@pytest.mark.parametrize("name", TABLES_BY_WORD)
def test_a_part_of_a_table_answers_as_the_whole_does(name: str) -> None:
    whole = Refdata()
    table, chance = whole.table(name), random.Random(name)
    names = [key.name for key in keys_of(name)]
    firsts = sorted({row.key[0] for row in table.rows})
    for first in chance.sample(firsts, min(SHOWN, len(firsts))):
        own = [row for row in table.rows if row.key[0] == first]
        for row in chance.sample(own, min(3, len(own))):
            part = Refdata()  # opens nothing that another question has opened
            keys = dict(zip(names, row.key, strict=True))
            assert told(name, row["quantity"], keys, part) == told(name, row["quantity"], keys, whole)
            other = chance.choice(table.rows)
            at = chance.randrange(len(names))
            keys[names[at]] = chance.choice((other.key[at], other.key[at].upper(), "nothing known"))
            for quantity in (row["quantity"], other["quantity"]):
                assert told(name, quantity, keys, part) == told(name, quantity, keys, whole)
            try:
                got = look_up_or_none(name, row["quantity"], data=Refdata(), **keys)
                assert got == look_up_or_none(name, row["quantity"], data=whole, **keys)
            except GaugeblockError:
                pass  # a measure that cannot be read: compared above


@pytest.mark.parametrize("name", TABLES_BY_WORD)
def test_a_first_key_means_the_same_cell_before_and_after_a_table_is_open(name: str) -> None:
    whole = Refdata()
    column = keys_of(name)[0].name
    cells = whole.table(name).column(column)
    words = whole.words(name.partition("/")[0], column) if cells else {}
    typed = [*cells.values(), *(c.upper() for c in cells.values()), *words]
    for text in random.Random(name).sample(typed, min(SHOWN, len(typed))):
        part = Refdata()
        assert canonical(part, name, column, text) == canonical(whole, name, column, text)


def test_a_row_is_one_thing_however_it_was_read_first() -> None:
    data = Refdata()
    figure = look_up("fasteners/torques", "tightening_torque", data=data, **_ONE)
    before = [row for row, _ in data.figures_made()]
    after = data.table("fasteners/torques").rows
    assert all(any(row is other for other in after) for row in before if row in after)
    assert {id(r) for r in before} & {id(r) for r in after}
    assert look_up("fasteners/torques", "tightening_torque", data=data, **_ONE) == figure


_FIRST = next(r for r in Refdata().table("fasteners/torques").rows if r["quantity"] == "tightening_torque")
_ONE = dict(zip([key.name for key in keys_of("fasteners/torques")], _FIRST.key, strict=True))
