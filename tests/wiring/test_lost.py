"""The volts that a wire loses: by the resistance of the handbook's tables of copper wire, both ways back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import drop, wire_size
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.errors import GaugeblockError, LookupMiss

COOL = {"insulation": "GXL", "air": "20 degC", "bundle": "1"}

# Ohm per 1000 ft of solid bare copper at 20 degC, NBS Handbook 100, from memory. The table that governs is the greatest
# of aircraft wire, whose strands hold less copper from 16 to 8: up to a third more.
NBS100 = {"18 AWG": 6.385, "14 AWG": 2.525, "12 AWG": 1.588, "10 AWG": 0.9989, "8 AWG": 0.6282, "4 AWG": 0.2485}


@pytest.mark.parametrize("wire", NBS100)
def test_by_the_handbooks_resistance(wire: str) -> None:
    """A tenth of an ampere does not warm it: what it loses in air of 20 degC is what it loses cold."""
    sheet = drop(wire, "0.1 A", "10 ft", back="body", **COOL)  # type: ignore[arg-type]
    assert sheet.decision.kind == USE
    least = NBS100[wire] * 0.1 * 10 / 1000
    assert 0.97 * least <= sheet.decision.figure.typical <= 1.35 * least


@given(st.sampled_from(list(NBS100)), st.integers(1, 40), st.integers(1, 30))
def test_a_wire_back_doubles_it_and_it_rises_with_both(wire: str, amps: int, feet: int) -> None:
    one, two = (drop(wire, f"{amps} A", f"{feet} ft", back=way).decision for way in ("body", "wire"))
    more = drop(wire, f"{amps + 1} A", f"{feet} ft", back="body").decision
    assert two.kind in (one.kind, NONE)  # the way back may take all that the battery has
    assert more.kind == one.kind or more.kind in (STOP, NONE)
    if USE in (two.kind, more.kind):
        assert two.kind != USE or two.figures[0].typical == pytest.approx(2 * one.figures[0].typical)
        assert more.kind != USE or more.figures[0].typical > one.figures[0].typical


def test_the_way_back_is_asked_and_both_are_shown() -> None:
    sheet = drop("4 mm2", "25 A", "3.6 m")
    assert sheet.decision.kind == ASK
    high, low = (f.typical for f in sheet.decision.figures)
    assert high == pytest.approx(2 * low)
    assert [q.key for q in sheet.questions] == ["return"]


def test_what_no_car_has_is_questioned_and_what_cannot_be_read_refused() -> None:
    assert drop("12 AWG", "25000 A", "12 ft").decision.kind == NONE
    with pytest.raises(LookupMiss):
        drop("13 AWG", "25 A", "12 ft")
    for typed in (("", "25 A", "12 ft"), ("12 AWG", "0 A", "12 ft"), ("12 AWG", "25 V", "12 ft")):
        with pytest.raises(GaugeblockError):
            drop(*typed)


# Greatest resistance at 20 degC of conductors of copper, ohm per km: IEC 60228 class 5, plain, and the nearly alike of
# ISO 6722 for road vehicles, both from memory.
METRIC = {"0.75": (26.0, 24.7), "1.5": (13.3, 12.7), "2.5": (7.98, 7.60), "6": (3.30, 3.14), "16": (1.21, 1.16)}


@pytest.mark.parametrize("area", METRIC)
def test_a_metric_wire_by_its_own_standard(area: str) -> None:
    """16 mm2 stands 20 % of copper over 6 AWG, the next gauge down, and is not reckoned as that."""
    sheet = drop(f"{area} mm2", "0.1 A", "10 m", back="body", **COOL)  # type: ignore[arg-type]
    lost = sheet.decision.figures[0].typical
    # Of a wire thinner than 18 AWG no table says what it may carry: it is taken as hot as its insulation bears.
    warm = (234.5 + 125) / 254.5 if float(area) < 0.82 else 1.0
    for resistance in METRIC[area]:
        assert resistance <= lost * 1000 / warm <= 1.09 * resistance


# Gauges that the tables have; of the others the next one down counts.
MADE = (18, 16, 14, 12, 10, 8, 6, 4, 2, 1)


@given(st.floats(1, 100))
def test_no_metric_wire_loses_less_than_its_copper_or_more_than_the_next_gauge_down(area: float) -> None:
    sheet = drop(f"{area:.2f} mm2", "0.1 A", "10 m", back="body", **COOL)  # type: ignore[arg-type]
    sized = wire_size(f"{area:.2f} mm2").decision.figure
    gauge = sized.text if "/" in sized.text or sized.typical in MADE else f"{sized.typical + 1:.0f}"
    lost = sheet.decision.figures[0].typical
    next_down = drop(f"{gauge} AWG", "0.1 A", "10 m", back="body", **COOL)  # type: ignore[arg-type]
    assert lost <= next_down.decision.figures[0].typical * (1 + 1e-4)  # the thinner wire is the warmer by a hair
    assert lost >= 0.99 * 17.241 / area * 0.001
