"""A wanted clamp load, however said, gives the torque that the option gives."""

from __future__ import annotations

import pytest

from gaugeblock import ask, torque

_BOLTS = [("1/2-13", "SAE J429 8", "grade 8"), ("7/16-20", "SAE J429 5", "grade 5"), ("M12", "ISO 898-1 10.9", "10.9")]
_SAID = ["{} of clamp", "{} clamp load", "clamping force of {}", "{} tension", "{} preload"]
_FORCES = [("9000 lbf", "9000 pounds"), ("6500 lbf", "6500 lbs"), ("32 kN", "32 kn")]


@pytest.mark.parametrize(("thread", "grade", "graded"), _BOLTS)
@pytest.mark.parametrize("said", _SAID)
@pytest.mark.parametrize(("force", "spoken"), _FORCES)
def test_a_clamp_in_words_is_the_preload(
    thread: str, grade: str, graded: str, said: str, force: str, spoken: str
) -> None:
    want = torque(thread, grade=grade, condition="dry", preload=force)
    got = ask(f"what torque {thread} {graded} dry for {said.format(spoken)}")
    assert got.as_dict()["decision"] == want.as_dict()["decision"]
    other = torque(thread, grade=grade, condition="dry", preload="5000 lbf")
    assert got.as_dict()["decision"] != other.as_dict()["decision"]
