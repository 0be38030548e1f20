"""Expressions and symbols, damaged one way each: ``validate`` names the rule, the file and the line."""

from __future__ import annotations

import pytest

from gaugeblock.tables.catalogue import LISTS, refdata_folder
from gaugeblock.tables.formulas import formula_faults
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import read_raw

FILES = ("formulas", "expressions", "symbols", "quantities")


def rows() -> dict[str, list[Row]]:
    return {name: read_raw(refdata_folder(), name, LISTS[name], []) for name in FILES}


def changed(row: Row, **cells: str) -> Row:
    made = {**row.cells, **cells}
    return Row(row.table, row.line, LISTS[row.table], list(made.values()), row.key)


def faults(tables: dict[str, list[Row]]) -> set[tuple[str, int, str]]:
    return {(f.file, f.line, f.rule) for f in formula_faults(*(tables[name] for name in FILES))}


def test_the_own_formulas_have_no_fault() -> None:
    assert faults(rows()) == set()


@pytest.mark.parametrize(
    ("file", "key", "cells", "rule"),
    [
        ("expressions", ("wall_factor",), {"kind": "formula"}, "kind_word"),
        ("expressions", ("wall_factor",), {"expression": "outside_diameter/wall"}, "blank_cell"),
        (
            "expressions",
            ("wall_factor",),
            {"expression": "outside_diameter over wall", "reason": "r"},
            "expression_grammar",
        ),
        ("expressions", ("wall_factor",), {"expression": "outside_diameter", "reason": "r"}, "unused_symbol"),
        ("expressions", ("wall_factor",), {"expression": "outside_diameter/wall*a", "reason": "r"}, "unlisted_symbol"),
        ("expressions", ("wall_factor",), {"rule": "wall_factory"}, "unknown_rule"),
        ("expressions", ("wall_factor",), {"rule": "wall_factory"}, "missing_expression"),
        ("expressions", ("wall_factor",), {"rule": "wall_least"}, "duplicate_entry"),
        ("expressions", ("wall_factor",), {"gives": "factor"}, "unknown_quantity"),
        ("expressions", ("wall_factor",), {"unit": "in"}, "wrong_dimension"),
        ("expressions", ("wall_factor",), {"unit": "inches"}, "unknown_unit"),
        ("expressions", ("seam_line",), {"reason": ""}, "blank_cell"),
        ("expressions", ("seam_line",), {"expression": "1"}, "procedure_with_expression"),
        ("symbols", ("wall_factor", "wall"), {"quantity": "walls"}, "unknown_quantity"),
        ("symbols", ("wall_factor", "wall"), {"unit": "psi"}, "wrong_dimension"),
        ("symbols", ("wall_factor", "wall"), {"symbol": "outside_diameter"}, "duplicate_entry"),
        ("symbols", ("wall_factor", "wall"), {"where": "somewhere"}, "where_word"),
        ("symbols", ("wall_factor", "wall"), {"where": "is 2"}, "constant_of_a_quantity"),
        ("symbols", ("wall_factor", "wall"), {"rule": "wall_factory"}, "unknown_rule"),
    ],
)
def test_a_damaged_cell_is_told_at_its_line(file: str, key: tuple[str, ...], cells: dict[str, str], rule: str) -> None:
    tables = rows()
    place = next(n for n, r in enumerate(tables[file]) if r.key == key)
    line = tables[file][place].line
    tables[file][place] = changed(tables[file][place], **cells)
    found = {(f, n) for f, n, r in faults(tables) if r == rule}
    assert found
    assert rule in ("missing_expression", "duplicate_entry") or any(n == line or f != f"{file}.csv" for f, n in found)


def test_a_rule_without_its_expression_is_told() -> None:
    tables = rows()
    tables["expressions"] = [r for r in tables["expressions"] if r["rule"] != "wall_factor"]
    assert {r for _, _, r in faults(tables)} == {"missing_expression", "unknown_rule"}
