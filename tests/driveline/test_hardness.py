"""A hardness: between its printed points, never outside them, read as people write it."""

from __future__ import annotations

import pytest

from driveline.asking import shaft
from gaugeblock import hardness
from gaugeblock.errors import InputError, LookupMiss


def test_a_hardness_between_two_points_lies_between_and_names_both() -> None:
    figure = hardness("HRC", "42.5").figures[0]
    low, high = figure.inputs
    assert min(low.typical, high.typical) < figure.typical < max(low.typical, high.typical)
    assert {low.key["hardness"], high.key["hardness"]} == {"42", "43"}


def test_a_misprint_never_answers() -> None:
    figure = hardness("HRC", "30").figure("yield_strength_typical")
    assert figure.typical != 941
    assert all(not f.standing for f in figure.inputs)


@pytest.mark.parametrize("typed", ["42", "HRC", "42 HRC 50", "forty HRC", ""])
def test_a_hardness_without_number_or_scale_is_refused(typed: str) -> None:
    with pytest.raises((InputError, LookupMiss)):
        shaft(hardness=typed)


@pytest.mark.parametrize("typed", ["43 HRC", "HRC 43", "43 rockwell c"])
def test_a_hardness_is_read_as_people_write_it(typed: str) -> None:
    assert shaft(hardness=typed).figure("hardness_hrc").typical == 43
