"""An injector at another pressure: the root of the pressure; by volume and mass through the density of the fuel."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, injector
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.errors import Ambiguous, InputError, UnitError


@given(st.integers(100, 1500), st.integers(20, 60), st.integers(20, 80))
def test_it_goes_as_the_root_of_the_pressure_and_back(flow: int, rated: int, now: int) -> None:
    there = injector(f"{flow} cm**3/min", rated=f"{rated} psi", pressure=f"{now} psi").decision.figure
    assert there is not None
    assert there.typical == pytest.approx(flow * sqrt(now / rated))
    back = injector(f"{there.typical!r} cm**3/min", rated=f"{now} psi", pressure=f"{rated} psi").decision.figure
    assert back is not None
    assert back.typical == pytest.approx(flow)


def test_four_times_the_pressure_gives_twice_the_flow() -> None:
    figure = injector("30 lb/h", rated="20 psi", pressure="80 psi").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(60)


def test_the_habit_of_ten_and_a_half_is_a_density_of_gasoline() -> None:
    """The trade takes 10.5 cc/min to the lb/h (common practice): it lies in what the density of the tables leaves."""
    figure = injector("42 lb/h").decision.figure
    assert figure is not None
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low < 42 * 10.5 <= figure.high
    assert figure.low == pytest.approx(42 * 453.59237 / (6.5 * 453.59237 / 3785.411784) / 60)


def test_mass_and_volume_give_each_other_back() -> None:
    by_mass = injector("42 lb/h").decision.figure
    assert by_mass is not None
    ends = [injector(f"{end!r} cm**3/min").decision.figure for end in (by_mass.low, by_mass.high)]
    assert ends[0] is not None
    assert ends[1] is not None
    assert ends[0].high == pytest.approx(42)
    assert ends[1].low == pytest.approx(42)


def test_a_fuel_of_one_density_gives_one_number() -> None:
    sheet = injector("42 lb/h", fuel="ethanol")
    assert sheet.decision.kind == USE
    assert sheet.decision.figure is not None
    assert base(sheet.decision.figure) * 6.61 * 453.59237 / 3785.411784 * 1e3 == pytest.approx(42 * 0.45359237 / 3600)


def test_what_is_missing_or_no_injector_is_told() -> None:
    with pytest.raises(Ambiguous):
        injector("24 lb/h", pressure="39 psi")
    with pytest.raises(Ambiguous):
        injector("24 lb/h", rated="39 psi")
    with pytest.raises((InputError, UnitError)):
        injector("24 psi")
    assert injector("24 lb/h", rated="43.5 psi", pressure="4000 psi").decision.kind == NONE
    assert injector("2 lb/h").decision.kind == NONE


def test_it_is_asked_in_plain_words() -> None:
    line = "24 lb injectors rated 43.5 psi, only 39 psi on the rail, flow now"
    assert ask(line) == injector("24 lb/h", rated="43.5 psi", pressure="39 psi")
    assert ask("240cc inj in lb hr") == injector("240 cm**3/min")
