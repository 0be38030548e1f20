"""A line that no answer reads, whose every word stands in the tables: its rows, and nothing else."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.finding import plain
from gaugeblock.found import Found
from gaugeblock.shelf import shelves

LISTED = {
    "chassis wiring current 10 awg": ("AWG 10", "current_maximum"),
    "3/8 washer od": ("plain washer", "washer_outside_diameter"),
    "cv joint max angle": ("constant velocity joint", "working_angle_maximum"),
    "how hot does a header get": ("exhaust header", "surface_temperature"),
}


@pytest.mark.parametrize(("line", "wanted"), LISTED.items())
def test_rows_answer_a_line_that_no_answer_reads(line: str, wanted: tuple[str, str]) -> None:
    found = gaugeblock.ask(line)
    assert isinstance(found, Found)
    entry, figures = found.groups[0]
    assert wanted[0] in entry.label
    assert figures[0].quantity == wanted[1]


@pytest.mark.parametrize("line", LISTED)
def test_every_word_stands_in_each_row_that_is_listed(line: str) -> None:
    found = gaugeblock.ask(line)
    for entry, figures in found.groups:
        told = [f"{f.quantity.replace('_', ' ')} {found.data.quantity(f.quantity)['words']}" for f in figures]
        names = " ".join(map(plain, told))
        of_table = next(shelf for shelf in shelves(found.data) if shelf.name == entry.table)
        text = " ".join(next(one for one in of_table.entries if one.label == entry.label).named) + names
        assert all(f" {word}" in text for word in found.asked.split()), entry.label


@pytest.mark.parametrize(
    "line",
    [
        "thermostat width",  # a bolt of its housing is no width
        "not the cv joint max angle",
        "cv joint max angle without grease",
        "cv joint max angle purple",
        "wet torque for 1/2-13 grade 5",  # a bolt is read whole or not at all
        "seat",
    ],
)
def test_a_word_that_no_row_has_or_that_turns_another_is_refused(line: str) -> None:
    with pytest.raises(InputError):
        gaugeblock.ask(line)


def test_a_measure_holds_for_the_figures_and_not_for_the_name_of_a_part() -> None:
    """The nut of a pressure sensor has a torque: it is none of the tyre's pressure, which the vehicle's maker has."""
    found = gaugeblock.ask("tyre pressure")
    assert isinstance(found, Sheet)
    assert (found.title, found.decision.kind, found.figures) == ("tyre pressures", "none", ())


def test_few_figures_are_told_with_their_sources_and_no_wider_than_the_screen() -> None:
    text = gaugeblock.ask("cv joint max angle").text(60)
    assert "One source." in text
    assert max(map(len, text.splitlines())) <= 60
