"""Where a coolant freezes and boils: the printed points, water's own curve under a cap, and what is questioned."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import InputError, ask, coolant
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError, LookupMiss, UnitError

# Saturation temperature of water, degC, at pounds over the air: steam tables as handbooks print them (20, 30, 40 psia
# are 108.9, 121.3 and 130.7 degC).
STEAM = {5.304: 108.9, 15.304: 121.3, 25.304: 130.7}
PRINTED = {"33 %": 0, "50 %": -34, "60/40": -65}  # degF: three Army publications, each named in its row


@pytest.mark.parametrize(("over", "boils"), STEAM.items())
def test_water_under_a_cap_boils_by_the_steam_tables(over: float, boils: float) -> None:
    figure = coolant("water", cap=f"{over} psi").figure("boiling_point_under_cap")
    assert (figure.typical - 32) / 1.8 == pytest.approx(boils, abs=0.5)


# Where water boils in an open pan up a mountain, degF: the table that the US Department of Agriculture prints for cooks
# (from memory).
MOUNTAIN = {"2000 ft": 208, "5000 ft": 203, "7500 ft": 198, "10000 ft": 194}


@pytest.mark.parametrize(("height", "boils"), MOUNTAIN.items())
def test_water_up_a_mountain_boils_where_cooks_are_told(height: str, boils: float) -> None:
    assert coolant("water", air=height).figure("boiling_point_under_cap").typical == pytest.approx(boils, abs=1.2)


def test_the_air_at_the_sea_changes_nothing() -> None:
    for cap in (None, "15 psi"):
        plain = coolant("50 %", cap=cap).decision.figures[0].typical
        assert coolant("50 %", cap=cap, air="101.325 kPa").decision.figures[0].typical == pytest.approx(plain, abs=1e-6)
        assert coolant("50 %", cap=cap, air="0 ft" if cap else "101.325 kPa").decision.figures[0].typical == (
            pytest.approx(plain, abs=1e-6)
        )


@pytest.mark.parametrize("air", ["90000 ft", "moon", "", "500 psi", "-200 ft"])
def test_what_is_no_air_is_refused(air: str) -> None:
    with pytest.raises(GaugeblockError):
        coolant("water", air=air)


@pytest.mark.parametrize(
    ("line", "air"),
    [
        ("plain water boils at 5000 ft", "5000 ft"),
        ("what temp does water boil at 7000 feet elevation", "7000 ft"),
        ("50/50 coolant 15 psi cap at 8000 feet when does it boil", "8000 ft"),
        ("barometer says nine hundred millibar, where does plain water boil", "90 kPa"),
    ],
)
def test_the_height_is_read(line: str, air: str) -> None:
    sheet = ask(line)
    assert isinstance(sheet, Sheet)
    assert sheet.asked["air"] == air


@pytest.mark.parametrize(("mix", "freezes"), PRINTED.items())
def test_a_mixture_freezes_where_the_manuals_say(mix: str, freezes: float) -> None:
    decision = coolant(mix, fact="freezing").decision
    assert decision.kind == USE
    assert decision.figures[0].typical == freezes


@given(st.floats(2, 30), st.floats(0.5, 4))
def test_more_pressure_and_more_glycol_boil_later(cap: float, more: float) -> None:
    low, high = (
        coolant("50 %", cap=f"{p:.2f} psi").figure("boiling_point_under_cap").typical for p in (cap, cap + more)
    )
    assert low < high
    assert low > coolant("40 %", cap=f"{cap:.2f} psi").figure("boiling_point_under_cap").typical
    assert low > coolant("50 %").figure("boiling_point").typical


def test_what_the_tables_lack_is_refused_or_none() -> None:
    for mix in ("55 %", "0/0"):
        with pytest.raises(LookupMiss):
            coolant(mix)
    with pytest.raises(LookupMiss):
        coolant("100 %", kind="propylene glycol")
    assert "sooner again" in coolant("100 %", fact="freezing").decision.do
    for mix in ("half", "", "-50 %"):
        with pytest.raises(InputError):
            coolant(mix)
    with pytest.raises(InputError):
        coolant("50 %", fact="taste")
    with pytest.raises(UnitError):
        coolant("50 %", cap="15 mm")
    assert coolant("40 %", kind="propylene glycol").decision.kind == NONE


def test_a_cap_that_no_radiator_has_is_questioned() -> None:
    sheet = coolant("50 %", cap="150 psi")
    assert sheet.decision.kind == NONE
    assert sheet.questions[0].key == "cap"


def test_the_warning_is_printed_with_every_answer() -> None:
    for fact in ("boiling", "freezing"):
        assert any("hot engine" in c.text for c in coolant("50 %", cap="15 psi", fact=fact).cautions)
