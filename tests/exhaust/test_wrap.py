"""How much wrap a pipe takes: a helix unrolled."""

from __future__ import annotations

from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, exhaust_wrap
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import GaugeblockError


@given(st.integers(200, 3000), st.integers(25, 110), st.sampled_from([25, 50]), st.integers(0, 75))
def test_the_wrap_covers_the_pipe(length: int, od: int, width: int, lap: int) -> None:
    sheet = exhaust_wrap(f"{length} mm", f"{od} mm", f"{width} mm", overlap=f"{lap} %" if lap else "0")
    assert sheet.decision.kind == USE
    figure = sheet.decision.figure
    assert figure is not None
    # its area is that of the pipe, as many times as the lap lays it double, and more for its slant
    covered = figure.typical * 1000 * width * (1 - lap / 100)
    skin = pi * od * length
    advance = width * (1 - lap / 100)
    assert covered == pytest.approx(skin * hypot(1, advance / (pi * od)))


def test_pipes_that_are_alike_take_so_many_times_as_much() -> None:
    one = exhaust_wrap("30 in", "1-5/8 in", "2 in", overlap="25 %").decision.figure
    four = exhaust_wrap("30 in", "1-5/8 in", "2 in", overlap="1/2 in", pipes="4").decision.figure
    assert one is not None
    assert four is not None
    assert four.typical == pytest.approx(4 * one.typical)


def test_a_lap_that_was_not_said_is_asked_with_two_that_are_laid() -> None:
    sheet = exhaust_wrap("1 m", "45 mm", "50 mm")
    assert sheet.decision.kind == ASK
    quarter, half = (one.figure.typical for one in sheet.decision.candidates)
    assert quarter == pytest.approx(3.9003, abs=1e-3)  # 26.67 turns of 146.3 mm
    assert half > quarter


@pytest.mark.parametrize("options", [{"overlap": "90 %"}, {"overlap": "much"}, {"pipes": "0"}, {"pipes": "four"}])
def test_what_is_no_lap_and_no_number_is_refused(options: dict[str, str]) -> None:
    with pytest.raises(GaugeblockError):
        exhaust_wrap("1 m", "45 mm", "50 mm", **options)


def test_an_unlikely_pipe_is_questioned() -> None:
    assert exhaust_wrap("900 m", "45 mm", "50 mm").decision.kind == NONE


def test_it_is_asked_in_plain_words() -> None:
    line = "metres of 50 mm wrap for 1 m of 45 pipe, quarter overlap"
    assert ask(line) == exhaust_wrap("1 m", "45 mm", "50 mm", overlap="25 %")
