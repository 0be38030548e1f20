"""A fuse that is there already, beside the largest that its wire allows."""

from __future__ import annotations

import pytest

from gaugeblock import fuse
from gaugeblock.answer.decision import STOP
from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.answer import answer
from gaugeblock.wiring.fitted import beside


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("is a 30 amp fuse ok on 12 gauge", "Whether a fuse of 30 A is too large hangs on which of these it is."),
        ("5 amp fuse on 10 awg ok", "A fuse of 5 A is not larger than any of these."),
    ],
)
def test_a_fuse_that_is_there_is_held_against_what_the_wire_allows(line: str, said: str) -> None:
    got = answer(line)
    assert isinstance(got.found, Sheet)
    assert said in [one.text for one in got.found.cautions]
    plain = answer(
        " ".join(word for word in line.split() if not word.isdigit() or word in ("10", "12")).replace("amp ", "")
    )
    assert isinstance(plain.found, Sheet)
    assert got.found.decision == plain.found.decision


def test_a_fuse_beside_a_load_is_no_fuse_of_a_wire() -> None:
    got = answer("30 amp fuse for a 20 amp load")
    assert isinstance(got.found, Sheet)
    assert not any("A fuse of 30 A" in one.text or "a fuse of 30 A" in one.text for one in got.found.cautions)


@pytest.mark.parametrize(("wire", "most"), [("18 AWG", 18), ("14 AWG", 34), ("10 AWG", 58), ("8 AWG", 80)])
def test_a_fuse_that_its_wire_does_not_stand_anywhere_stops(wire: str, most: int) -> None:
    """By the truck part maker's table, which is lower here than the boat rule's in air of 30 degC."""
    of_wire = fuse(wire=wire)
    for amps in (most + 1, 2 * most, 5 * most):
        sheet = beside(f"{amps} A", of_wire)
        assert sheet.decision.kind == STOP
        assert "burns before it blows" in sheet.decision.do
        assert sheet.decision.figures == of_wire.decision.figures
    for amps in (1, most // 2, most):
        assert beside(f"{amps} A", of_wire).decision == of_wire.decision
