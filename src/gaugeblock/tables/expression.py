"""Expression: a printed formula as a program evaluates it, with nothing but arithmetic and a closed list of functions.

A text is one or more statements with ``;`` between them. The first is what the formula gives, with or without a name
before ``=``; the others define names that it uses, in any order. ``low`` and ``high`` are its ends.
"""

from __future__ import annotations

import ast
import math
import operator

from gaugeblock.errors import DataError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    Operand = float | Sequence[float]

LONGEST = 600
# Whole steps are counted to this share: 0.9 m in bays of 0.3 m is three bays, whatever binary fractions make of it.
_WHOLE = 1e-9


def _ceil(value: float) -> float:
    return float(math.ceil(value * (1.0 - _WHOLE)))


def _sec(angle: float) -> float:
    return 1.0 / math.cos(angle)


FUNCTIONS: dict[str, Callable[..., float]] = {
    "sqrt": math.sqrt,
    "exp": math.exp,
    "log": math.log,
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "sec": _sec,
    "asin": math.asin,
    "acos": math.acos,
    "atan": math.atan,
    "atan2": math.atan2,
    "abs": abs,
    "min": min,
    "max": max,
    "ceil": _ceil,
    "sum": sum,
    "count_of": len,
}
CONSTANTS = {"pi": math.pi}
_BINARY: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_COMPARE: dict[type[ast.cmpop], Callable[[float, float], bool]] = {
    ast.Lt: operator.lt,
    ast.LtE: operator.le,
    ast.Gt: operator.gt,
    ast.GtE: operator.ge,
}


class Expression:
    """The statements of one formula: ``text``, ``main`` the name of the first, ``symbols`` what it needs."""

    __slots__ = ("_statements", "main", "symbols", "text")

    def __init__(self, text: str) -> None:
        """Raises DataError for a text that is not arithmetic with the functions listed here."""
        self.text = text
        self._statements: dict[str, ast.expr] = {}
        used: dict[str, None] = {}
        for number, part in enumerate(text.split(";") if len(text) <= LONGEST else ()):
            name, node = _statement(part, text, "" if number else "result")
            if number == 0:
                self.main = name
            if name in self._statements or name in FUNCTIONS or name in CONSTANTS:
                raise _refused(text, f"{name} is defined twice")
            self._statements[name] = node
            for found in ast.walk(node):
                _known(found, text)
                if isinstance(found, ast.Name):
                    used[found.id] = None
        if not self._statements:
            raise _refused(text[:60], "too long")
        self.symbols = tuple(n for n in used if n not in self._statements and n not in FUNCTIONS and n not in CONSTANTS)

    def __contains__(self, name: str) -> bool:
        """Whether a statement gives this name."""
        return name in self._statements

    def value(self, given: Mapping[str, Operand], name: str = "") -> float:
        """What the first statement, or the one called ``name``, gives for the symbols ``given``.

        Raises DataError for a symbol not given, a definition that needs itself, or numbers outside the formula's range.
        """
        try:
            got = _Evaluation(self, given).of(name or self.main)
        except (ArithmeticError, ValueError, TypeError) as error:
            raise _refused(self.text, f"cannot be evaluated: {error}") from None
        if isinstance(got, complex) or not isinstance(got, (int, float)):
            raise _refused(self.text, "gives no real number")
        return float(got)

    def definition(self, name: str) -> ast.expr | None:
        """The statement that gives ``name``."""
        return self._statements.get(name)


class _Evaluation:
    def __init__(self, expression: Expression, given: Mapping[str, Operand]) -> None:
        self._expression = expression
        self._known: dict[str, Operand] = {**CONSTANTS, **given}
        self._open: set[str] = set()

    def of(self, name: str) -> Operand:
        if name not in self._known:
            node = self._expression.definition(name)
            if node is None or name in self._open:
                raise _refused(
                    self._expression.text, f"{name} is {'not given' if node is None else 'defined by itself'}"
                )
            self._open.add(name)
            self._known[name] = self._node(node)
        return self._known[name]

    def _node(self, node: ast.expr) -> Operand:
        if isinstance(node, ast.Constant):
            return float(node.value)  # type: ignore[arg-type]  # a float: no power of it takes for ever
        if isinstance(node, ast.Name):
            return self.of(node.id)
        if isinstance(node, ast.BinOp):
            return _BINARY[type(node.op)](self._number(node.left), self._number(node.right))
        if isinstance(node, ast.UnaryOp):
            return -self._number(node.operand)
        if isinstance(node, ast.IfExp):
            return self._node(node.body if self._holds(node.test) else node.orelse)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            return FUNCTIONS[node.func.id](*map(self._node, node.args))
        raise _refused(self._expression.text, "not arithmetic")

    def _number(self, node: ast.expr) -> float:
        return self._node(node)  # type: ignore[return-value]

    def _holds(self, node: ast.expr) -> bool:
        if not isinstance(node, ast.Compare):
            raise _refused(self._expression.text, "a condition is one comparison")
        return _COMPARE[type(node.ops[0])](self._number(node.left), self._number(node.comparators[0]))


def _statement(part: str, text: str, unnamed: str) -> tuple[str, ast.expr]:
    try:
        body = ast.parse(part.strip()).body
    except (SyntaxError, ValueError, MemoryError, RecursionError):
        raise _refused(text, "not an expression") from None
    node = body[0] if len(body) == 1 else None
    if isinstance(node, ast.Expr) and unnamed:
        return unnamed, node.value
    if isinstance(node, ast.Assign) and len(node.targets) == 1 and isinstance(node.targets[0], ast.Name):
        return node.targets[0].id, node.value
    raise _refused(text, "a definition is name = expression")


def _known(node: ast.AST, text: str) -> None:
    """Refuse any node that is not arithmetic on numbers and names with the functions listed."""
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        return
    if isinstance(node, ast.Name | ast.Load | ast.IfExp | ast.USub | ast.UnaryOp | ast.BinOp):
        return
    if isinstance(node, ast.Compare) and len(node.ops) == 1:
        return
    if (
        isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in FUNCTIONS
        and not node.keywords
    ):
        return
    if type(node) in _BINARY or type(node) in _COMPARE:
        return
    raise _refused(text, f"{type(node).__name__} is not arithmetic")


def _refused(text: str, why: str) -> DataError:
    return DataError(text, "expression", why, (), "write + - * / ** and " + " ".join(FUNCTIONS))
