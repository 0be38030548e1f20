"""The fuel supply: what the pump must deliver, what the lines lose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.lines.fuel.keys import FUELS
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
