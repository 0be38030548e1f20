"""Fault: one thing wrong in refdata - file, line, column, rule, what was found, what to do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.value import Value, put

if TYPE_CHECKING:
    from gaugeblock.tables.load import Row


class Fault(Value):
    """One broken rule at one place; ``line`` 0 and a blank ``column`` mean the whole file or row."""

    __slots__ = ("column", "do", "file", "found", "line", "rule")

    file: str
    line: int
    column: str
    rule: str
    found: str
    do: str

    def __init__(self, file: str, line: int, column: str, rule: str, found: str, do: str) -> None:
        put(self, "file", file)
        put(self, "line", line)
        put(self, "column", column)
        put(self, "rule", rule)
        put(self, "found", found)
        put(self, "do", do)

    def __str__(self) -> str:
        place = ": ".join(
            p for p in (f"refdata/{self.file}:{self.line}" if self.line else f"refdata/{self.file}", self.column) if p
        )
        return f"{place}: {self.rule}: found {self.found}; {self.do}"

    def __repr__(self) -> str:
        return f"<Fault {self}>"

    @property
    def parts(self) -> tuple[str, int, str, str, str, str]:
        """All parts in the order they are printed."""
        return self.file, self.line, self.column, self.rule, self.found, self.do


def at_row(row: Row, column: str, rule: str, found: str, do: str) -> Fault:
    """The fault of one row of a table of figures."""
    return Fault(f"{row.table}.csv", row.line, column, rule, found, do)
