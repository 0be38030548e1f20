"""A low range: the whole ratio stands before what is to be done."""

from __future__ import annotations

import pytest

from gaugeblock.plain.answer import ask


def test_the_whole_ratio_of_a_low_range_is_told_with_the_speed() -> None:
    """4.10 x 2.72 x 4.02 is 44.8; at 1000 rpm on a tyre of 31 in that is 1000 / 44.8 turns a minute."""
    sheet = ask("crawl ratio 4.10 axle 2.72 low 4.02 first 31 inch tyre 1000 rpm")
    assert sheet.decision.do.startswith("The engine turns 44.8 times for one turn of the wheel, 4.02 x 2.72 x 4.10.")
    assert sheet.decision.figure.typical == pytest.approx(1000 / 44.83 * 3.14159 * 31 * 60 / 63360, rel=0.02)
