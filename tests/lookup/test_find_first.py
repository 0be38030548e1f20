"""What find puts first: the thing itself, of a road vehicle, one line a hit, and nothing that only sounds like it."""

from __future__ import annotations

import pytest

from gaugeblock.finding import find
from gaugeblock.tables.load import refdata

DATA = refdata()


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("wire", "solid copper wire"),
        ("lug nut", "wheel nut"),
        ("chromoly", "4130"),
        ("spark plug", "spark plug, 10 mm, gasket, aluminium: torque"),
        ("exhaust tip", "tips"),
        ("brake line", "brake"),
        ("dot 4", "DOT 4"),
        ("tap drill 3/8-16", "3/8-16 UNC, tap drill"),
        ("hose clamp", "hose clamp"),
        ("fuse", "fuse"),
        ("muffler", "muffler"),
        ("nylon", "nylon"),
        ("u joint", "cardan"),
        ("header", "header"),
        ("alternator", "alternator"),
        ("heat wrap", "wrap"),
        ("battery", "battery"),
    ],
)
def test_the_first_hit_is_the_thing_itself(words: str, first: str) -> None:
    assert first in find(words, data=DATA).text(columns=80).splitlines()[0]


def test_a_word_of_two_columns_means_both() -> None:
    """Chromoly is a steel, and of the steels 4130."""
    labels = [entry.label for entry, _ in find("chromoly", data=DATA).groups]
    assert labels
    assert not any("1008" in label for label in labels)


@pytest.mark.parametrize("columns", [60, 80])
@pytest.mark.parametrize("words", ["torque", "steel", "hose", "wire"])
def test_one_screen_of_hits(words: str, columns: int) -> None:
    lines = find(words, data=DATA).text(columns=columns).splitlines()
    assert len(lines) <= 15
    assert max(map(len, lines)) <= columns
