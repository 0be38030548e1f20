"""Antifreeze for a system: by the balance of what is drained and put in, and by the tables' frost."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import antifreeze, ask, coolant
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.units import to_base


@given(st.integers(4, 40), st.integers(0, 50), st.integers(20, 70))
def test_what_is_put_in_leaves_the_share_that_is_wanted(litres: int, now: int, wanted: int) -> None:
    if now >= wanted:
        with pytest.raises(InputError):
            antifreeze(f"{litres} L", mix=f"{wanted} %", now=f"{now} %")
        return
    neat = antifreeze(f"{litres} L", mix=f"{wanted} %", now=f"{now} %").decision.figure.typical
    glycol = (litres - neat) * now / 100 + neat
    assert glycol / litres == pytest.approx(wanted / 100)


@pytest.mark.parametrize("kind", ["ethylene glycol", "propylene glycol"])
@pytest.mark.parametrize("celsius", [-5, -12, -20, -25, -33])
def test_for_a_frost_it_is_the_least_mixture_that_stands_it(kind: str, celsius: int) -> None:
    sheet = antifreeze("10 L", frost=f"{celsius} degC", kind=kind)
    assert sheet.decision.kind == USE
    share = round(10 * sheet.decision.figure.typical)
    freezes = coolant(f"{share} %", kind=kind, fact="freezing").decision.figure
    assert to_base(freezes.typical, freezes.unit) <= to_base(celsius, "degC") + 1e-6
    shares = [s for s in (30, 33, 40, 50, 60) if s < share]
    for less in shares:
        try:
            other = coolant(f"{less} %", kind=kind, fact="freezing").decision.figure
        except LookupError:
            continue
        assert to_base(other.typical, other.unit) > to_base(celsius, "degC")


def test_what_nobody_has_or_said() -> None:
    assert antifreeze("9 L", frost="-80 degC").decision.kind == NONE
    assert antifreeze("900 L", mix="50/50").decision.kind == NONE
    with pytest.raises(Ambiguous):
        antifreeze("9 L")


@pytest.mark.parametrize(
    ("line", "options"),
    [
        ("antifreeze for 9 litres down to minus 25 how many litres neat", {"system": "9 L", "frost": "-25 degC"}),
        (
            "coolant is only 30% and i want half and half system holds 14 quarts how much neat do i put in",
            {"system": "14 qt", "mix": "50 %", "now": "30 %"},
        ),
    ],
)
def test_it_is_asked_in_plain_words(line: str, options: dict[str, str]) -> None:
    assert ask(line).decision == antifreeze(**options).decision


@pytest.mark.parametrize("mix", ["100 %", "0 %", "100/0"])
def test_neat_or_none_is_no_mixture(mix: str) -> None:
    with pytest.raises(InputError):
        antifreeze("9 L", mix=mix)


@pytest.mark.parametrize(
    ("options", "meant"),
    [
        ({"frost": "25 degC"}, "-25"),
        ({"frost": "40 degF"}, "-40"),
        ({"frost": "0 degC"}, "-0"),
        ({"mix": "75 %"}, "25 %"),
        ({"mix": "90 %"}, "Read it again"),
    ],
)
def test_a_frost_without_its_sign_and_a_mixture_that_nobody_fills_are_asked_about(
    options: dict[str, str], meant: str
) -> None:
    decision = antifreeze("9 L", **options).decision
    assert decision.kind == NONE
    assert meant in decision.do.replace("\u00a0", " ")


def test_where_it_freezes_is_told_in_the_unit_of_the_frost() -> None:
    assert "degC" in antifreeze("9 L", frost="-25 degC").decision.do
    assert "degF" in antifreeze("9 L", frost="-13 degF").decision.do
