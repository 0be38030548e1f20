"""The size of an injector: what is burnt, shared out over the time that they are open."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, fuel, injector_size
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import GaugeblockError


@given(st.integers(60, 900), st.integers(3, 12), st.integers(50, 95))
def test_the_injectors_pass_what_is_burnt(power: int, count: int, duty: int) -> None:
    sheet = injector_size(f"{power} hp", str(count), duty=f"{duty} %", consumption="0.5 lb/(hp*h)")
    if sheet.decision.kind == NONE:
        return
    assert sheet.decision.kind == USE
    figure = sheet.decision.figure
    assert figure is not None
    assert figure.typical * count * duty / 100 == pytest.approx(0.5 * power)


def test_the_sum_of_the_trade() -> None:
    """Power times 0.5 over injectors and duty (common practice): 220 hp, four, 80 %."""
    figure = injector_size("220 hp", "4", duty="80 %", consumption="0.5 lb/(hp*h)").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(34.375)


def test_a_pump_for_these_injectors_is_the_pump_for_the_power() -> None:
    """The same fuel by the answer ``fuel``, from the power and from the injectors at their duty."""
    size = injector_size("220 hp", "4", duty="80 %", consumption="0.5 lb/(hp*h)").decision.figure
    assert size is not None
    by_injectors = fuel(injectors="4", injector=f"{size.typical!r} lb/h", duty="80 %").figure("fuel_flow_needed")
    by_power = fuel(power="220 hp", consumption="0.5 lb/(hp*h)").figure("fuel_flow_needed")
    assert by_injectors.typical == pytest.approx(by_power.typical)


def test_boost_is_asked_and_burns_more() -> None:
    sheet = injector_size("220 hp", "4", duty="80 %")
    assert sheet.decision.kind == ASK
    boosted, plain = (one.figure.typical for one in sheet.decision.candidates)
    assert boosted > plain
    assert injector_size("220 hp", "4", duty="80 %", boost="no boost").decision.kind == USE


def test_what_no_engine_has_is_questioned_or_refused() -> None:
    assert injector_size("220000 hp", "4").decision.kind == NONE
    with pytest.raises(GaugeblockError):
        injector_size("220 hp", "many")


def test_it_is_asked_in_plain_words() -> None:
    assert ask("injectors for 220 hp on a four pot, 80 percent duty") == injector_size("220 hp", "4", duty="80 %")


@pytest.mark.parametrize(
    ("options", "meant"), [({"duty": "8 %"}, "8 %"), ({"duty": "40 %"}, "40 %"), ({"injectors": "40"}, "40")]
)
def test_a_point_that_slipped_is_asked_about(options: dict[str, str], meant: str) -> None:
    sheet = injector_size("220 hp", **{"injectors": "4", "boost": "no boost", **options})
    assert sheet.decision.kind == "none"
    assert meant in sheet.decision.do.replace("\u00a0", " ")
