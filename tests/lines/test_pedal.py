"""The pedal, the foot or the bore for a wanted pressure: against the circuit worked out, and a printed table."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, brake, pedal
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import Ambiguous, InputError, UnitError

# A rod builder's table of master cylinders (ROD-BORES): psi of 100 lbf on a pedal of 6 to 1.
PRINTED = {"3/4 in": 1359, "13/16 in": 1158, "7/8 in": 998, "15/16 in": 870, "1 in": 764, "1 1/8 in": 603}


@pytest.mark.parametrize("bore", PRINTED)
def test_it_is_the_printed_table_turned_round(bore: str) -> None:
    """The table prints whole psi: within one."""
    wanted = f"{PRINTED[bore]} psi"
    assert pedal(wanted, master=bore, force="100 lbf").figure("pedal_ratio").typical == pytest.approx(
        6, rel=1 / PRINTED[bore]
    )
    assert pedal(wanted, master=bore, ratio="6").figure("pedal_force").typical == pytest.approx(
        100, rel=1 / PRINTED[bore]
    )


@pytest.mark.parametrize("bore", PRINTED)
def test_the_bore_that_is_named_is_made_and_gives_no_less(bore: str) -> None:
    wanted = f"{PRINTED[bore] - 1} psi"
    named = pedal(wanted, force="100 lbf", ratio="6").decision.figure
    assert named.typical == pytest.approx(inches(bore))
    given_by = brake(f"{named.typical} in", force="100 lbf", ratio="6").figure("line_pressure").typical
    assert given_by >= PRINTED[bore] - 1


def inches(text: str) -> float:
    whole, _, part = text.removesuffix(" in").rpartition(" ")
    top, _, bottom = part.partition("/")
    return float(whole or 0) + float(top) / float(bottom or 1)


@given(st.integers(300, 1500), st.sampled_from(list(PRINTED)), st.integers(40, 140), st.floats(1, 4))
def test_what_is_shown_gives_the_pressure_and_hardly_more(psi: int, bore: str, pounds: int, assist: float) -> None:
    """Three digits, rounded to the side that gives no less."""
    said = f"{assist:.2f}"
    sheet = pedal(f"{psi} psi", master=bore, force=f"{pounds} lbf", assist=said)
    if not sheet.decision.figures:
        return
    shown = sheet.decision.figures[0].text
    if not 1.2 <= float(shown) <= 12:
        return
    got = brake(bore, force=f"{pounds} lbf", ratio=shown, assist=said).figure("line_pressure").typical
    assert psi * (1 - 1e-9) <= got <= psi * 1.011


def test_no_car_has_it_and_it_is_asked_about() -> None:
    for odd in (
        pedal("900 psi", master="1 in", force="20 lbf"),  # 35 to 1
        pedal("1200 psi", master="1 1/8 in", ratio="5"),  # 239 lbf
        pedal("2000 psi", force="60 lbf", ratio="4"),  # 0.39 in
    ):
        assert odd.decision.kind == ASK
        assert odd.questions
    assert pedal("90000 psi", master="1 in", ratio="6").decision.kind == NONE


def test_two_of_the_three_are_wanted() -> None:
    for few in ({}, {"master": "1 in"}, {"force": "80 lbf"}):
        with pytest.raises(Ambiguous):
            pedal("900 psi", **few)
    with pytest.raises(InputError, match="leave one out"):
        pedal("900 psi", master="1 in", force="80 lbf", ratio="6")
    with pytest.raises(UnitError):
        pedal("900 lbf", master="1 in", force="80 lbf")


@pytest.mark.parametrize(
    ("line", "options"),
    [
        ("what pedal ratio for 900 psi with a 7/8 master and 80 lb on the pedal", ("7/8 in", "80 lbf", None)),
        ("how hard do i push to get 900 psi with a 1 inch master and 6 to 1 pedal", ("1 in", None, "6")),
        ("what master cylinder for 900 psi 90 lb foot 5:1 pedal", (None, "90 lbf", "5")),
    ],
)
def test_it_is_asked_in_plain_words(line: str, options: tuple[str | None, ...]) -> None:
    asked = ask(line)
    assert asked.decision.kind == USE
    assert asked == pedal("900 psi", **dict(zip(("master", "force", "ratio"), options, strict=True)))
