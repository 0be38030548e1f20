"""A shaft steel of which the hardness is known and the treatment is not: the hardness says what it came to."""

from __future__ import annotations

import pytest

from gaugeblock import Ambiguous, steel
from gaugeblock.driveline.splines.answer import spline
from gaugeblock.plain.answer import answer


@pytest.mark.parametrize("grade", ["4340", "300M", "1541"])
def test_its_strength_is_that_of_its_hardness(grade: str) -> None:
    sheet = steel(grade, hardness="42 HRC")
    assert sheet.decision.figures[0].quantity == "tensile_strength_typical"
    assert sheet.decision.figures[0].text == "195"
    assert "Typical, not guaranteed" in sheet.decision.do


def test_a_torque_is_judged_by_it() -> None:
    sheet = steel("4340", hardness="42 HRC", shaft="1 in", torque="1000 lbf*ft")
    assert sheet.decision.figures[0].quantity == "torsional_yield_factor"


def test_without_both_the_treatment_is_asked() -> None:
    with pytest.raises(Ambiguous) as asked:
        steel("4340")
    assert "quenched and tempered" in asked.value.every


def test_in_plain_words() -> None:
    assert answer("300m shaft at 52 rockwell c").read_as == "shaft steel: 300M, 52 HRC"


def test_a_straight_sided_tooth_says_of_which_diameter_it_is() -> None:
    assert "major diameter" in spline("parallel side", "10").decision.do
