"""The bytes of one refdata file, read line by line, so that one damaged line costs no other."""

from __future__ import annotations

import csv
import os
from typing import TYPE_CHECKING

from gaugeblock.tables.catalogue import TABLES, keys_of
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.load import Row

if TYPE_CHECKING:
    from collections.abc import Callable

# The column, or columns, that name one entry of a list.
LIST_KEYS = {
    "sources": ("id",),
    "quantities": ("quantity",),
    "formulas": ("name",),
    "words": ("domain", "column", "word"),
    "releases": ("version",),
    "ranges": ("table", "quantity"),
    "expressions": ("rule",),
    "symbols": ("rule", "symbol"),
    "rules": ("topic", "subject", "service", "jurisdiction", "statement"),
}


def read_raw(folder: str, name: str, columns: tuple[str, ...], faults: list[Fault]) -> list[Row]:
    """The readable rows of one file; what is wrong with its bytes, header or fields goes into ``faults``."""
    file = f"{name}.csv"

    def fault(line: int, column: str, rule: str, found: str, do: str) -> None:
        faults.append(Fault(file, line, column, rule, found, do))

    try:
        with open(os.path.join(folder, *file.split("/")), "rb") as handle:
            raw = handle.read()
    except OSError:
        fault(0, "", "missing_file", "no such file", "restore it, or write its header alone")
        return []
    if raw.startswith(b"\xef\xbb\xbf"):
        fault(1, "", "byte_order_mark", "a byte-order mark", "save the file as plain text without one")
        raw = raw[3:]
    if b"\r" in raw:
        line = raw[: raw.index(b"\r")].count(b"\n") + 1
        fault(line, "", "carriage_return", "a carriage return", "end each line with a line feed alone")
        raw = raw.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    if raw and not raw.endswith(b"\n"):
        fault(
            raw.count(b"\n") + 1,
            "",
            "cut_off",
            "no line end at the end of the file",
            "see whether the file was cut off",
        )
    text = raw.decode("utf-8", errors="replace")
    lines = text.removesuffix("\n").split("\n")
    if not raw.isascii() or "\x00" in text:
        for line, content in enumerate(lines, 1):
            strange = [c for c in content if not " " <= c <= "~"]
            if strange:
                fault(line, "", "not_ascii", repr("".join(strange[:5])), "write it in plain ASCII")
    return _split(lines, name, columns, fault)


def _split(
    lines: list[str], name: str, columns: tuple[str, ...], fault: Callable[[int, str, str, str, str], None]
) -> list[Row]:
    keys = tuple(k.name for k in keys_of(name)) if name in TABLES else LIST_KEYS[name.rsplit("/", 1)[-1]]
    width = len(columns)
    places = [columns.index(k) for k in keys]
    rows = []
    header = list(columns)
    for number, line in enumerate(lines, 1):
        try:
            values = next(csv.reader([line], strict=True), []) if '"' in line else line.split(",") if line else []
        except csv.Error as error:
            fault(
                number,
                "",
                "unclosed_quote",
                str(error),
                "close the quote on the same line, and double a quote inside it",
            )
            continue
        if number == 1:
            if values != header:
                fault(1, "", "header", _header_difference(values, header), f"write: {','.join(header)}")
                return []
        elif not values:
            fault(number, "", "blank_line", "a blank line", "take it out")
        elif values == header:
            fault(number, "", "repeated_header", "the header again", "take the line out")
        elif len(values) != width:
            rule = "short_row" if len(values) < width else "long_row"
            fault(
                number,
                "",
                rule,
                f"{len(values)} fields, not {width}",
                "give every column, blank ones too; quote a cell with a comma",
            )
        else:
            if (
                "  " in line
                or ", " in line
                or " ," in line
                or ' "' in line
                or '" ' in line
                or line.endswith(" ")
                or line[0] == " "
            ):
                for column, cell in zip(columns, values, strict=True):
                    if cell != cell.strip() or "  " in cell:
                        fault(number, column, "stray_space", repr(cell), "one space between words, none at the ends")
            rows.append(Row(name, number, columns, values, tuple([values[at] for at in places])))
    return rows


def _header_difference(values: list[str], header: list[str]) -> str:
    missing = [c for c in header if c not in values]
    extra = [c for c in values if c not in header]
    twice = sorted({c for c in values if values.count(c) > 1})
    parts = [
        f"{word} {', '.join(names)}" for word, names in (("no", missing), ("unknown", extra), ("twice", twice)) if names
    ]
    return "; ".join(parts) or "the columns in another order"
