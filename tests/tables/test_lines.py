"""Lines taken apart at their quotes and commas have the cells that the standard library's reader finds."""

from __future__ import annotations

import csv

from hypothesis import example, given
from hypothesis import strategies as st

from gaugeblock.tables.lines import split


def _read(lines: list[str]) -> list[list[str]] | None:
    """The cells by the reader alone; None where it refuses them."""
    quoted = csv.reader([line for line in lines if '"' in line or "\r" in line], strict=True)
    try:
        return [next(quoted) if '"' in line or "\r" in line else line.split(",") for line in lines]
    except (csv.Error, StopIteration):
        return None


def _split(lines: list[str]) -> list[list[str]] | None:
    try:
        return split(lines)
    except ValueError:
        return None


@given(st.lists(st.text('ab,," \r', min_size=1, max_size=9), max_size=3))
@example(['"a,b",c', ',"a"', '"a",', '"a","b"', '"a",,"b"', '"",a'])
@example(['"a""b",c'])
@example(['a"b,c"'])
@example(['"a"b,c'])
@example(['"a,b', 'c"'])
def test_cells_are_those_of_the_reader(lines: list[str]) -> None:
    assert _split(lines) == _read(lines)
