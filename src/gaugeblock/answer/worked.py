"""A derived figure worked again: its rule's expression on its inputs as they are printed."""

from __future__ import annotations

from itertools import product

from gaugeblock import units
from gaugeblock.errors import DataError, GaugeblockError
from gaugeblock.tables.expression import Expression
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.symbol import Symbol

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

    Given = dict[str, float | tuple[float, ...]]


class Formula:
    """How a rule is evaluated: ``expression``, its ``unit``, ``symbols``; a procedure has a ``reason`` instead."""

    __slots__ = ("expression", "gives", "reason", "rule", "symbols", "unit")

    def __init__(self, rule: str, data: Refdata) -> None:
        """Raises DataError for a rule that expressions.csv does not have."""
        rows = data.unreleased("expressions", rule)
        if not rows:
            raise DataError(
                rule, "expressions.csv", "this rule is not there", (), "add its row, or say why it is a procedure"
            )
        row = rows[0]
        self.rule = rule
        self.gives = tuple(row["gives"].split(" or ")) if row["gives"] else ()
        self.unit = row["unit"]
        self.reason = row["reason"] if row["kind"] == "procedure" else ""
        self.expression: Expression | None = None
        self.symbols: tuple[Symbol, ...] = ()
        if row["kind"] == "expression":
            self.expression = Expression(row["expression"] or data.rule(rule).expression)
            self.symbols = tuple(
                Symbol(s["symbol"], s["quantity"], s["unit"], s["where"]) for s in data.unreleased("symbols", rule)
            )


def formula(rule: str, data: Refdata) -> Formula:
    """The Formula of a rule, read once."""
    memo = ("formula", rule)
    if memo not in data._memo:
        data._memo[memo] = Formula(rule, data)
    return data._memo[memo]  # type: ignore[return-value]


def worked(figure: Figure, data: Refdata) -> tuple[float | None, float | None, float | None] | None:
    """Value, low and high of a derived figure by its rule, in its unit, each None where the figure has none.

    None for a procedure. Raises DataError where the inputs that the figure prints do not carry what its rule needs.
    """
    if figure.rule is None:
        raise DataError(figure.id, "figure", "it was not derived", (), "work a derived figure")
    by = formula(figure.rule.name, data)
    expression = by.expression
    if expression is None:
        return None
    given = {s.name: _given(s, figure) for s in by.symbols}
    value = low = high = None
    if figure.value is not None:
        value = _in_unit(expression.value(given), by.unit, figure)
    if figure.low is not None or figure.high is not None:
        if "low" in expression or "high" in expression:
            ends = expression.value(given, "low"), expression.value(given, "high")
        else:
            corners = [expression.value(corner) for corner in _corners(by, given, figure)]
            ends = min(corners), max(corners)
        low, high = (_in_unit(e, by.unit, figure) for e in ends)
    return value, None if figure.low is None else low, None if figure.high is None else high


def _in_unit(number: float, unit: str, figure: Figure) -> float:
    return number if unit in ("own", figure.unit) else units.from_base(_base(number, unit), figure.unit)


def _base(number: float, unit: str) -> float:
    return units.to_base(number, unit) if unit in units.UNITS else number


def _number(number: float, source: Figure, unit: str, figure: Figure) -> float:
    """A number of an input in the symbol's unit: ``own`` is the figure's, an unknown one the base unit."""
    unit = figure.unit if unit == "own" else unit
    if unit == source.unit:
        return number
    base = units.to_base(number, source.unit)
    return units.from_base(base, unit) if unit in units.UNITS else base


def _inputs(symbol: Symbol, figure: Figure) -> list[Figure]:
    every = figure.inputs
    if symbol.where.below:
        every = tuple(f for f in figure.walk() if f is not figure)
    return [f for f in every if f.quantity in symbol.quantities or symbol.quantities == ("any",)]


def _given(symbol: Symbol, figure: Figure) -> float | tuple[float, ...]:
    where = symbol.where
    if where.number is not None:
        return where.number
    if where.key == "own":
        return _key(figure, figure)
    found = _inputs(symbol, figure)
    if where.many:
        return tuple(_number(n, f, symbol.unit, figure) for f in found for n in _numbers(f, where.many, where.end))
    order = where.order or 0
    if len(found) <= order and where.absent is not None:
        return where.absent
    if len(found) <= order or (where.order is None and len(found) > 1 and where.span != "spread"):
        quantity = " or ".join(symbol.quantities) or "of no quantity"
        many = "more than once" if found else "not"
        why = f"{symbol.name} ({quantity}) is {many} among its inputs"
        raise DataError(figure.id, "figure", why, [f.quantity for f in figure.inputs], "give the figure all its inputs")
    if where.key:
        return _key(found[order], figure)
    return _number(_end(found[order], where.end), found[order], symbol.unit, figure)


def _numbers(figure: Figure, many: str, end: str = "") -> tuple[float, ...]:
    if many == "all":
        return (_end(figure, end),)
    return tuple(n for n in (figure.value, figure.low, figure.high) if n is not None)


def _end(figure: Figure, end: str) -> float:
    if end == "printed" and figure.text:
        return float(units.parse_number(figure.text))
    got = {"low": figure.low, "high": figure.high, "least": figure.least}.get(end)
    return figure.typical if got is None else got


def _key(of: Figure, figure: Figure) -> float:
    """The number of the one key that the inputs of a figure differ in, of ``of``; in base units where it has a unit."""
    keys = [dict(f.key) for f in figure.inputs]
    apart = [k for k in (keys[0] if keys else {}) if len({key[k] for key in keys if k in key}) > 1]
    cell = dict(of.key).get(apart[0], "") if len(apart) == 1 else ""
    try:
        interval = parse_interval(cell) if cell else None
    except GaugeblockError:
        interval = None
    if interval is None or interval.low is None:
        raise DataError(
            of.id, "figure", "its inputs do not differ in one key that is a number", apart, "give it its two points"
        )
    return float(interval.low)


def _corners(by: Formula, given: Given, figure: Figure) -> Iterator[Given]:
    """The symbols with each that spans at one end or the other, in all combinations."""
    spans: dict[str, tuple[float, float]] = {}
    for symbol in by.symbols:
        if symbol.where.span:
            found = _inputs(symbol, figure)
            own = found if symbol.where.span == "spread" else found[symbol.where.order or 0 :][:1]
            numbers = [_number(n, f, symbol.unit, figure) for f in own for n in _numbers(f, "ends")]
            spans[symbol.name] = min(numbers), max(numbers)
    for ends in product(*spans.values()):
        yield {**given, **dict(zip(spans, ends, strict=True))}
