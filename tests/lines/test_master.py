"""Another bore of a master cylinder: by areas, against the whole circuit worked out with each bore."""

from __future__ import annotations

from itertools import permutations

import pytest

from gaugeblock import ask, brake, mastercylinder
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.errors import InputError

BORES = ("5/8 in", "3/4 in", "13/16 in", "7/8 in", "15/16 in", "1 in", "1-1/8 in", "20.64 mm", "25.4 mm")


@pytest.mark.parametrize(("now", "before"), list(permutations(BORES, 2)))
def test_it_is_the_pressure_of_the_circuit_over_that_of_the_other(now: str, before: str) -> None:
    figure = mastercylinder(now, before).decision.figure
    assert figure is not None
    with_now, with_before = (
        brake(bore, force="80 lbf", ratio="6").figure("line_pressure").typical for bore in (now, before)
    )
    assert figure.typical == pytest.approx(with_now / with_before)


def test_it_says_what_the_foot_and_the_pedal_do() -> None:
    less = mastercylinder("7/8 in", "1 in")
    assert less.decision.kind == USE
    assert "31 % more pressure" in less.decision.do  # (8/7)**2 = 1.306
    assert "23 % less foot" in less.decision.do
    assert "31 % further" in less.decision.do
    assert any("further" in c.text for c in less.cautions if c.severity == "injury")
    more = mastercylinder("1 in", "7/8 in")
    assert "23 % less pressure" in more.decision.do
    assert "31 % more foot" in more.decision.do
    assert not any("further" in c.text for c in more.cautions)
    assert "stay as they were" in mastercylinder("1 in", "25.4 mm").decision.do


def test_what_is_no_bore_is_questioned_or_refused() -> None:
    assert mastercylinder("7 in", "1 in").decision.kind == NONE
    assert mastercylinder("1 in", "0.1 in").decision.kind == NONE
    with pytest.raises(InputError):
        mastercylinder("big", "1 in")


@pytest.mark.parametrize(
    ("line", "now", "before"),
    [
        ("master cylinder 1 in instead of 7/8", "1 in", "7/8 in"),
        ("went from a 15/16 master to a 3/4", "3/4 in", "15/16 in"),
        ("swapped my 1 inch master cylinder for a 7/8 how much softer is the pedal", "7/8 in", "1 in"),
        ("took the 7/8 master off and put a 1 inch one on how much harder do i push", "1 in", "7/8 in"),
    ],
)
def test_it_is_asked_in_plain_words(line: str, now: str, before: str) -> None:
    assert ask(line) == mastercylinder(now, before)


def test_a_force_on_the_pedal_asks_for_the_pressure_itself() -> None:
    assert ask("1 in master 100 lb pedal 6 to 1") == brake("1 in", force="100 lbf", ratio="6")
