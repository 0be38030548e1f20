"""Two things of one kind set against each other in a line are the Table of both."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError

PAIRS = {
    "3/8-16 grade 5 vs grade 8 dry": ("grade", ["3/8-16 grade 5 dry", "3/8-16 grade 8 dry"]),
    "3/8-16 grade 5 dry versus oiled": ("condition", ["3/8-16 grade 5 dry", "3/8-16 grade 5 oiled"]),
    "dot 3 vs dot 4 boiling point wet": ("item", ["dot 3 boiling point wet", "dot 4 boiling point wet"]),
    "16 gauge awg compared to 16 gauge bwg": ("system", ["16 gauge awg", "16 gauge bwg"]),
    "tap drill m8 vs m10": ("thread", ["tap drill m8", "tap drill m10"]),
    "which is stronger grade 8 or class 10.9": ("bolt grade", ["grade 8 strength", "class 10.9 strength"]),
    "is 8.8 better than grade 5": ("grade", ["8.8 strength", "grade 5 strength"]),
    "blue thread locker on a 5/16-24 grade 8, same number as dry or not": (
        "condition",
        ["5/16-24 grade 8 thread locker", "5/16-24 grade 8 dry"],
    ),
}


@pytest.mark.parametrize(("line", "wanted"), PAIRS.items())
def test_each_row_is_the_answer_to_its_own_question(line: str, wanted: tuple[str, list[str]]) -> None:
    key, questions = wanted
    table = gaugeblock.ask(line)
    assert isinstance(table, Table)
    assert table.open == (key,)
    own = [gaugeblock.ask(q).decision for q in questions]
    assert [[f.text or f.typical for f in n.sheet.decision.figures] for n in table.lines] == [
        [f.text or f.typical for f in d.figures] for d in own
    ]


@pytest.mark.parametrize(
    "line",
    [
        "apples vs oranges",
        "3/8-16 grade 5 dry vs purple",
        "3/8-16 grade 5 dry vs 1/2-13 grade 8",  # they differ in two things
        "vs 3/8-16 grade 5",
        "3/8-16 grade 5 vs",
        "silicone hose compared to epdm temperature",  # one of them asks more
    ],
)
def test_what_cannot_be_set_side_by_side_is_refused(line: str) -> None:
    with pytest.raises(GaugeblockError):
        gaugeblock.ask(line)


def test_two_grades_show_what_each_stands_before_it_stretches() -> None:
    table = gaugeblock.ask("which is stronger grade 8 or class 10.9")
    assert isinstance(table, Table)
    assert table.text().count("proof strength") == len(table.lines)
