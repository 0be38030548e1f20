"""The fuel supply: what the pump must deliver, what the lines lose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.errors import Ambiguous
from gaugeblock.lines.fuel.habits import SUBJECTS, fuel_habit
from gaugeblock.lines.fuel.keys import FUELS, SYSTEMS
from gaugeblock.lines.fuel.leak import fuel_test
from gaugeblock.lines.fuel.line import fuel_line
from gaugeblock.lines.fuel.supply import fuel

FEED = {"consumption": "0.5 lb/(hp*h)", "line": "drawn tube"}
POWERS = st.integers(20, 1500)
BORES = st.integers(20, 75).map(lambda n: f"{n / 100} in")


def needed(sheet):
    figure = next(f for f in sheet.figures if f.quantity == "fuel_flow_needed")
    return units.to_base(figure.typical, figure.unit)


def lost(**given_):
    sheet = fuel("400 hp", **FEED, **given_)
    figure = next(f for f in sheet.figures if f.quantity == "line_loss")
    return units.to_base(figure.typical, figure.unit)


@given(POWERS, POWERS, st.sampled_from(sorted(FUELS)))
def test_more_power_never_needs_a_smaller_pump(one, other, kind):
    a, b = (needed(fuel(f"{p} hp", fuel=kind, consumption="0.6 lb/(hp*h)")) for p in sorted((one, other)))
    assert a <= b


@given(st.integers(1, 60), st.integers(1, 60), BORES)
def test_a_longer_line_never_loses_less(one, other, bore):
    a, b = (lost(length=f"{ft} ft", bore=bore) for ft in sorted((one, other)))
    assert a <= b


@given(BORES, BORES, st.integers(10, 120))
def test_a_larger_bore_never_loses_more(one, other, pump):
    a, b = sorted((one, other), key=lambda t: float(t.split()[0]))
    assert lost(length="14 ft", bore=a, pump=f"{pump} gph") >= lost(length="14 ft", bore=b, pump=f"{pump} gph")


@given(POWERS, st.integers(0, 100))
def test_a_reserve_never_makes_the_pump_smaller(power, reserve):
    bare = needed(fuel(f"{power} hp", consumption="0.5 lb/(hp*h)"))
    more = needed(fuel(f"{power} hp", consumption="0.5 lb/(hp*h)", reserve=f"{reserve} %"))
    assert more == pytest.approx(bare * (1 + reserve / 100))


@pytest.mark.parametrize("kind", sorted(FUELS))
def test_every_fuel_is_answered_or_asked(kind):
    sheet = fuel("300 hp", fuel=kind, consumption="0.8 lb/(hp*h)", bore="3/8 in", length="14 ft")
    assert sheet.decision.kind == "use"
    assert any(f.quantity == "line_loss" for f in sheet.figures)


def test_what_the_engine_burns_is_asked_and_the_greater_need_stands_first():
    sheet = fuel("400 hp")
    assert sheet.decision.kind == "ask"
    first, second = (units.to_base(f.typical, f.unit) for f in sheet.decision.figures[:2])
    assert first > second
    assert "consumption" in [q.key for q in sheet.questions]


def test_a_pump_that_is_too_small_stops_only_on_what_was_given():
    assert fuel("400 hp", consumption="0.5 lb/(hp*h)", pump="20 gph").decision.kind == "stop"
    assert fuel("400 hp", consumption="0.5 lb/(hp*h)", pump="60 gph").decision.kind == "use"
    assert fuel("400 hp", pump="20 gph").decision.kind == "ask"


def test_a_line_that_loses_more_than_it_may_stops():
    typed = {"bore": "1/4 in", "length": "20 ft"}
    assert fuel("600 hp", **FEED, **typed, loss="1 psi").decision.kind == "stop"
    assert fuel("600 hp", **FEED, **typed, loss="40 psi").decision.kind == "use"


def test_a_doubtful_consumption_is_asked():
    sheet = fuel("400 hp", consumption="5 lb/(hp*h)")
    assert (sheet.decision.kind, sheet.questions[0].key) == ("none", "consumption")


@given(st.integers(1, 16), st.integers(10, 400), st.integers(10, 100), st.integers(10, 100))
def test_injectors_that_are_open_longer_never_need_a_smaller_pump(count, each, one, other):
    typed = {"injectors": str(count), "injector": f"{each} lb/h"}
    a, b = (needed(fuel(**typed, duty=f"{d} %")) for d in sorted((one, other)))
    assert a <= b <= needed(fuel(**typed))


def test_injectors_by_mass_and_by_volume_are_one_flow():
    """At the least density of gasoline, 6.0 lb/gal."""
    mass = needed(fuel(injectors="8", injector="42 lb/h"))
    volume = needed(fuel(injectors="8", injector="7 gal/h"))
    assert mass == pytest.approx(volume)


def test_a_pressure_over_the_rating_of_the_hose_stops():
    typed = {"consumption": "0.5 lb/(hp*h)", "pressure": "58 psi"}
    assert fuel("400 hp", **typed, rated="50 psi").decision.kind == "stop"
    assert fuel("400 hp", **typed, rated="100 psi").decision.kind == "use"
    unknown = fuel("400 hp", consumption="0.5 lb/(hp*h)", rated="100 psi")
    assert (unknown.decision.kind, unknown.questions[0].key) == ("ask", "pressure")


def test_a_filter_made_for_less_than_goes_through_it_stops():
    assert fuel("400 hp", **FEED, pump="60 gph", filter_flow="100 L/h").decision.kind == "stop"
    assert fuel("400 hp", **FEED, pump="60 gph", filter_flow="300 L/h").decision.kind == "use"


def test_the_line_is_asked_with_its_bores_the_largest_first():
    sheet = fuel_line("400 hp", boost="no boost", length="14 ft")
    bores = [f.typical for f in sheet.decision.figures]
    assert bores == sorted(bores, reverse=True)
    assert sheet.decision.kind == "ask"


@given(POWERS, st.integers(1, 300))
def test_a_bore_that_loses_too_much_is_no_candidate(power, loss):
    sheet = fuel_line(f"{power} hp", **FEED, length="14 ft", loss=f"{loss / 100} psi")
    shown = {f.id for f in sheet.decision.figures}
    for figure in sheet.figures:
        if figure.quantity == "line_loss" and units.to_base(figure.typical, figure.unit) > loss * 68.94757293168:
            bore = next(f for f in figure.inputs if f.quantity == "bore_typical")
            assert bore.id not in shown


def test_alcohol_is_not_fed_by_a_bore_for_gasoline():
    assert [f.typical for f in fuel_line("400 hp", fuel="E85").decision.figures] == [0.5]


def test_no_rule_of_another_service_becomes_the_test_of_a_car():
    sheet = fuel_test()
    assert sheet.decision.kind == "none"
    assert {f.key["service"] for f in sheet.figures} == {"marine", "one vehicle"}


@pytest.mark.parametrize("subject", SUBJECTS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_a_filter_or_a_pressure_of_habit_is_asked_of_its_maker(subject, system):
    sheet = fuel_habit(subject, system=system)
    assert (sheet.decision.kind, sheet.questions[0].kind) == ("ask", "ask the maker")
    assert {f.basis for f in sheet.decision.figures} == {"common practice"}


def test_a_filter_without_its_system_is_asked():
    with pytest.raises(Ambiguous):
        fuel_habit("filter")


def test_a_fuel_that_nobody_named_is_asked():
    assert "fuel" in [q.key for q in fuel("400 hp").questions]
    assert "fuel" not in [q.key for q in fuel("400 hp", fuel="gasoline").questions]
    assert "fuel" in [q.key for q in fuel_line("400 hp").questions]
