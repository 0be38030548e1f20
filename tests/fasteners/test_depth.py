"""Engagement: the rules of manuals and handbooks, against the words of these."""

from __future__ import annotations

import pytest

from gaugeblock import engagement, torque
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.lookup import look_up

# The rules as printed: TM367 App. H and TM604 Table 1-2 note 6 ask two diameters in aluminium; the handbook's chapter 9
# asks one and a half diameters of a steel stud in steel and in cast iron, one in hardened steel.
DIAMETERS = {"aluminium": 2, "steel": 1.5, "cast iron": 1.5, "hardened steel": 1}


@pytest.mark.parametrize("thread", ["1/4-20", "3/8-16", "1/2-13", "M8", "M10x1.5", "M12x1.25"])
@pytest.mark.parametrize(("metal", "diameters"), DIAMETERS.items())
def test_the_length_is_so_many_diameters(thread: str, metal: str, diameters: float) -> None:
    sheet = engagement(thread, into=metal)
    figure = sheet.decision.figure
    assert figure is not None
    diameter = look_up("fasteners/threads", "major_diameter", thread=figure.key["thread"])
    assert figure.unit == diameter.unit
    assert figure.typical == pytest.approx(diameters * diameter.typical, rel=1e-12)


@pytest.mark.parametrize("metal", ["aluminium", "cast iron", "steel", "magnesium"])
@pytest.mark.parametrize("thread", ["3/8-16", "M10"])
def test_it_is_what_the_torque_asks_to_be_measured(thread: str, metal: str) -> None:
    grade = "8.8" if thread[0] == "M" else "5"
    sheet = torque(thread, grade=grade, condition="dry", into=metal)
    asked = next(q.text for q in sheet.questions if q.key == "engagement")
    figure = engagement(thread, into=metal).decision.figure
    assert figure is not None
    assert f"{figure.text} {figure.unit} or more" in asked


def test_a_thread_of_a_metal_that_was_not_said_is_open() -> None:
    with pytest.raises(Ambiguous) as refused:
        engagement("3/8-16")
    assert "aluminium" in refused.value.nearest


@pytest.mark.parametrize(("thread", "metal"), [("3/8-17", "steel"), ("3/8-16", "cheese")])
def test_what_is_no_thread_or_no_metal_is_refused(thread: str, metal: str) -> None:
    with pytest.raises(LookupMiss):
        engagement(thread, into=metal)
