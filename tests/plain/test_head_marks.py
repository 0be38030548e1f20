"""A bolt named by the lines on its head is the grade that the table of head marks gives them."""

from __future__ import annotations

import pytest

from gaugeblock.cli import main
from gaugeblock.tables.load import refdata

MARKS = [
    ("three lines", "SAE J429 5"),
    ("3 lines", "SAE J429 5"),
    ("three radial lines", "SAE J429 5"),
    ("six lines", "SAE J429 8"),
    ("six dashes", "SAE J429 8"),
    ("five marks", "SAE J429 7"),
    ("plain head", "SAE J429 1"),
]


@pytest.mark.parametrize(("mark", "grade"), MARKS)
def test_lines_on_the_head_are_read_as_their_grade(mark: str, grade: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["ask", "3/8-16", *mark.split(), "dry"])
    assert capsys.readouterr().out.startswith(f"read as torque: 3/8-16, {grade}, dry\n")


def test_a_mark_that_two_grades_share_is_the_weaker_in_the_table_too() -> None:
    rows = {row.key[0]: row for row in refdata().table("fasteners/head_marks").rows if row.key[1] == "SAE J429"}
    assert rows["no lines"].key[2] == "1 or 2"
    assert {rows[mark].key[2] for mark in ("three lines, evenly spread", "six lines, evenly spread")} == {"5", "8"}


@pytest.mark.parametrize("word", ["a574", "shcs", "cap head", "socket head"])
def test_a_standard_of_one_grade_is_named_by_itself(word: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["ask", "3/8-16", *word.split(), "oiled"])
    assert capsys.readouterr().out.startswith("read as torque: 3/8-16, ASTM A574 socket head cap screw, oiled\n")
