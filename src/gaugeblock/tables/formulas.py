"""Formulas: whether each rule of formulas.csv can be worked by a program, or says why it cannot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.errors import DataError
from gaugeblock.tables.expression import Expression
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.symbol import Symbol

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from gaugeblock.tables.load import Row

KINDS = ("expression", "procedure")
# A quantity or unit that is that of the figure itself.
ANY, OWN = "any", "own"
# The base unit of temperature, which no table prints.
KELVIN = "K"


def formula_faults(
    formulas: Iterable[Row], expressions: Iterable[Row], symbols: Iterable[Row], quantities: Iterable[Row]
) -> list[Fault]:
    """Every rule stands once in expressions.csv; an expression parses, with the symbols that are listed for it."""
    printed: dict[str, list[Row]] = {}
    for row in formulas:
        printed.setdefault(row["name"], []).append(row)
    letters: dict[str, list[Row]] = {}
    for row in symbols:
        letters.setdefault(row["rule"], []).append(row)
    dimensions = {r["quantity"]: r["dimension"] for r in quantities}
    faults: list[Fault] = []
    seen: dict[str, Row] = {}
    for row in expressions:
        rule = row["rule"]
        if rule in seen:
            do = "a rule stands once: take one out"
            faults.append(at_row(row, "rule", "duplicate_entry", f"the entry of line {seen[rule].line} again", do))
        seen[rule] = row
        if rule not in printed:
            faults.append(at_row(row, "rule", "unknown_rule", repr(rule), "name a rule of formulas.csv"))
        faults += _row_faults(row, printed.get(rule, []), letters.get(rule, []), dimensions)
    for rule, rows in printed.items():
        if rule not in seen:
            do = "add its row to expressions.csv: an expression, or a procedure with its reason"
            faults.append(at_row(rows[0], "name", "missing_expression", repr(rule), do))
    for rule, rows in letters.items():
        if rule not in seen:
            faults.append(at_row(rows[0], "rule", "unknown_rule", repr(rule), "name a rule of expressions.csv"))
    return faults


def _row_faults(row: Row, printed: list[Row], letters: list[Row], dimensions: Mapping[str, str]) -> list[Fault]:
    if row["kind"] not in KINDS:
        return [at_row(row, "kind", "kind_word", repr(row["kind"]), f"use one of: {', '.join(KINDS)}")]
    faults = _quantity_faults(row, "gives", dimensions, row["kind"] == "expression")
    if row["kind"] == "procedure":
        if not row["reason"]:
            faults.append(at_row(row, "reason", "blank_cell", "a blank", "say why no expression gives it"))
        if row["expression"] or row["unit"] or letters:
            do = "a procedure has no expression, unit or symbols"
            faults.append(at_row(row, "kind", "procedure_with_expression", "both", do))
        return faults
    if row["expression"] and not row["reason"]:
        do = "say why it is not evaluated as formulas.csv prints it, or leave the expression blank"
        faults.append(at_row(row, "reason", "blank_cell", "a blank", do))
    listed = {r["symbol"] for r in letters}
    for text in [row["expression"]] if row["expression"] else [r["expression"] for r in printed if not r["until"]]:
        faults += _text_faults(row, text, listed)
    seen: set[str] = set()
    for letter in letters:
        faults += _symbol_faults(letter, dimensions)
        if letter["symbol"] in seen:
            faults.append(at_row(letter, "symbol", "duplicate_entry", repr(letter["symbol"]), "take one out"))
        seen.add(letter["symbol"])
    return faults


def _text_faults(row: Row, text: str, listed: set[str]) -> list[Fault]:
    try:
        used = set(Expression(text).symbols)
    except DataError as error:
        return [at_row(row, "expression", "expression_grammar", f"{text!r}: {error.why}", error.do)]
    add, take = "add it to symbols.csv", "take it out of symbols.csv"
    return [
        *(at_row(row, "expression", "unlisted_symbol", repr(name), add) for name in sorted(used - listed)),
        *(at_row(row, "expression", "unused_symbol", repr(name), take) for name in sorted(listed - used)),
    ]


def _symbol_faults(letter: Row, dimensions: Mapping[str, str]) -> list[Fault]:
    faults = _quantity_faults(letter, "quantity", dimensions, True)
    try:
        where = Symbol(letter["symbol"], letter["quantity"], letter["unit"], letter["where"]).where
    except DataError as error:
        return [
            *faults,
            at_row(letter, "where", "where_word", repr(letter["where"]), f"use {', '.join(error.nearest)}"),
        ]
    if where.number is not None and letter["quantity"]:
        faults.append(at_row(letter, "quantity", "constant_of_a_quantity", letter["quantity"], "a constant has none"))
    return faults


def _quantity_faults(row: Row, column: str, dimensions: Mapping[str, str], with_unit: bool) -> list[Fault]:
    """Each quantity is known and the unit is of its dimension; a letter that no figure carries has no quantity."""
    faults = []
    unit = row["unit"]
    for quantity in row[column].split(" or ") if row[column] else ():
        if quantity == ANY:
            continue
        if quantity not in dimensions:
            faults.append(at_row(row, column, "unknown_quantity", repr(quantity), "name one of quantities.csv"))
        elif unit == OWN or (unit == KELVIN and dimensions[quantity] == "temperature") or not (unit or with_unit):
            continue
        elif unit not in units.UNITS:
            faults.append(at_row(row, "unit", "unknown_unit", repr(unit), "use a spelling of the table of units"))
        elif units.dimension(unit) != dimensions[quantity]:
            do = "use a unit of the quantity's dimension"
            faults.append(at_row(row, "unit", "wrong_dimension", f"{unit!r} for {quantity}", do))
    return faults
