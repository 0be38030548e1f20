"""Every word that the vocabulary has for a grade is read as that grade of its standard."""

from __future__ import annotations

import pytest

from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners.keys import grade
from gaugeblock.tables.load import refdata

DATA = refdata()
GRADES, STANDARDS = DATA.words("fasteners", "grade"), DATA.words("fasteners", "standard")
STRONG = {(row.key[0], row.key[1]) for row in DATA.table("fasteners/grades").rows if not row.standing}


def read(word: str) -> tuple[str, str] | None:
    """What a word is read as; None where it is refused."""
    try:
        return grade(word, DATA)
    except LookupMiss:
        return None


@pytest.mark.parametrize("word", GRADES)
def test_a_word_is_its_grade(word: str) -> None:
    cell, standard = GRADES[word], STANDARDS.get(word)
    alike = {pair for pair in STRONG if pair[1] == cell and standard in (None, pair[0])}
    if len(alike) == 1:
        # the word itself may be a grade of no stated standard too: then its standard is asked for
        is_open = word == cell.casefold() and len({pair for pair in STRONG if pair[1] == cell}) > 1
        assert read(word) in ((None,) if is_open else alike)
    elif not alike:
        assert read(word) in (None, (standard, cell))  # a list of grades as a torque table prints it
