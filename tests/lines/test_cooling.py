"""Where a coolant freezes and boils: the printed points, water's own curve under a cap, and what is questioned."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import InputError, coolant
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.errors import LookupMiss, UnitError

# Saturation temperature of water, degC, at pounds over the air: steam tables as handbooks print them (20, 30, 40 psia
# are 108.9, 121.3 and 130.7 degC).
STEAM = {5.304: 108.9, 15.304: 121.3, 25.304: 130.7}
PRINTED = {"33 %": 0, "50 %": -34, "60/40": -65}  # degF: three Army publications, each named in its row


@pytest.mark.parametrize(("over", "boils"), STEAM.items())
def test_water_under_a_cap_boils_by_the_steam_tables(over: float, boils: float) -> None:
    figure = coolant("water", cap=f"{over} psi").figure("boiling_point_under_cap")
    assert (figure.typical - 32) / 1.8 == pytest.approx(boils, abs=0.5)


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
    for mix in ("55 %", "0/0", "100 %"):
        with pytest.raises(LookupMiss):
            coolant(mix)
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
