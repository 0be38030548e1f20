"""A circuit is told by the way there: a length of both wires together is halved, and comes back by wire."""

from __future__ import annotations

import pytest

from gaugeblock import ask
from gaugeblock.answer.sheet import Sheet


@pytest.mark.parametrize(
    "line",
    [
        "12 metres of 4 mm2 cable in total, out and back, 20 amps, how many volts do i lose",
        "twelve metres of 4 mm2 cable altogether there and back at 20 amps volts lost",
        "4 mm2 20 amps 12 m round trip volts lost",
        "round trip of 12 m 4 mm2 20 amps volts lost",
        "volts lost in 6 m of 4 mm2 at 20 amps return by wire",
    ],
)
def test_a_total_is_halved(line: str) -> None:
    """They were read as 12 m one way, and the drop was twice what it is."""
    sheet = ask(line)
    assert isinstance(sheet, Sheet)
    plain = ask("volts lost in 6 m of 4 mm2 at 20 amps return by wire")
    assert isinstance(plain, Sheet)
    assert sheet.decision.figures == plain.decision.figures


def test_the_way_there_alone_is_kept() -> None:
    sheet = ask("20 amps 15 ft there and back 12 gauge voltage drop")
    assert isinstance(sheet, Sheet)
    assert sheet.asked["length"] == "15 ft"


def test_what_is_asked_of_a_spline_stands_first() -> None:
    """``pitch dia`` was read as saying no more, and the outside diameter stood first."""
    for line, inches in (("24/48 spline 30t pitch dia", 1.25), ("24/48 spline 30 teeth", 31 / 24)):
        sheet = ask(line)
        assert isinstance(sheet, Sheet)
        assert sheet.decision.figure is not None
        assert sheet.decision.figure.typical == pytest.approx(inches)


def test_slopes_are_no_angles_of_joints() -> None:
    sheet = ask(
        "the gearbox slopes three degrees down to the back and the prop slopes five degrees down to the back and the"
        " pinion nose is tipped up three degrees what is each joint working at and do they cancel"
    )
    assert isinstance(sheet, Sheet)
    assert "2 deg and 2 deg" in sheet.title
