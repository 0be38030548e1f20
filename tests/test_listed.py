"""A list as it is typed: its items; a comma that may be a decimal one is asked about, with both readings."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from gaugeblock.errors import InputError
from gaugeblock.listed import items, refuse_decimal_comma

SRC = Path(__file__).resolve().parents[1] / "src" / "gaugeblock"


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("3.55, 41/10", ["3.55", "41/10"]),
        ("3.55,4.10", ["3.55", "4.10"]),
        ("3.55,4", ["3.55", "4"]),
        ("4,3.55", ["4", "3.55"]),
        ("41/10,3", ["41/10", "3"]),
        ("3,41/10", ["3", "41/10"]),
        ("1 3/8,2", ["1 3/8", "2"]),
        ("1, 5 cm, 3 cm", ["1", "5 cm", "3 cm"]),
        ("20 in,12 in", ["20 in", "12 in"]),
        ("3 deg , 5 deg,3 deg", ["3 deg", "5 deg", "3 deg"]),
        ("12 in", ["12 in"]),
        ("", [""]),
    ],
)
def test_a_comma_that_can_be_no_decimal_one_parts(typed: str, wanted: list[str]) -> None:
    assert items(typed, "legs") == wanted


@pytest.mark.parametrize(
    ("typed", "do"),
    [
        ("1,5 cm, 3 cm", 'write "1.5 cm", or "1 cm, 5 cm"'),
        ("3 cm, 1,5 cm", 'write "1.5 cm", or "1 cm, 5 cm"'),
        ("3,06", 'write "3.06", or "3, 6"'),
        ("3,06, 1,63", 'write "3.06", or "3, 6"'),
        ("3.55,4,10", 'write "4.10", or "4, 10"'),
        ("rise 1,5 in, angle 45 deg", 'write "rise 1.5 in", or "rise 1 in, 5 in"'),
        ("1,500 mm, 3 mm", 'write "1.500 mm", or "1 mm, 500 mm", or "1500 mm"'),
        ("M10x1,5", 'write "M10x1.5", or "M10x1, 5"'),
        ("1,5.", 'write "1.5.", or "1., 5."'),
    ],
)
def test_one_that_may_be_is_asked_with_both_readings(typed: str, do: str) -> None:
    with pytest.raises(InputError, match="decimal comma") as refused:
        items(typed, "legs")
    assert (refused.value.where, refused.value.do) == ("legs", do)


def test_in_a_sentence_a_mark_of_thousands_is_none() -> None:
    refuse_decimal_comma("1,500 lb at 3,000 rpm", "question", thousands=True)
    for typed in ("1,50 in", "0,500 in", "1,5000 in"):
        with pytest.raises(InputError):
            refuse_decimal_comma(typed, "question", thousands=True)


def test_a_long_one_is_refused_in_few_words() -> None:
    with pytest.raises(InputError) as refused:
        items(f"{'1' * 5000},{'2' * 5000} {'m' * 500}", "legs")
    assert len(str(refused.value)) < 1500


def test_all_lists_are_read_here() -> None:
    """No other module takes what a person typed apart at its commas; lines of tables are no typing."""
    found = []
    for path in sorted(SRC.rglob("*.py")):
        name = path.relative_to(SRC).as_posix()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            is_split = isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "split"
            if is_split and [a.value for a in node.args if isinstance(a, ast.Constant)] == [","]:
                found.append(name)
    tables = {name for name in found if name.startswith("tables/")} | {"closing.py"}  # lines of comma separated cells
    printed = {"exhaust/warming.py", "packet/desk.py"}  # names and conditions as a table prints them
    assert set(found) - tables - printed == {"listed.py"}
