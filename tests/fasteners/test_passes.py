"""The passes of a tightening: what a wrench of the shop can be set to, or by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from gaugeblock import torque, units
from gaugeblock.fasteners.passes import BY_HAND, passes
from gaugeblock.job.wrench import read_wrench
from gaugeblock.tables.load import refdata
from gaugeblock.units import Measure

BIG, SMALL = "20 to 150 lbf*ft by 1", "40 to 200 lbf*in by 1"


def shares(*percent: int) -> list[Measure]:
    return [Measure(Fraction(p), "%", f"{p} %") for p in percent]


@pytest.mark.parametrize("thread", ["1/4-20", "5/16-18", "3/8-16", "7/16-14", "1/2-13", "5/8-11", "M8", "M12"])
@pytest.mark.parametrize("names", [(BIG,), (BIG, SMALL), ("10 to 200 N*m by 2.5", SMALL)])
def test_each_pass_is_a_graduation_of_a_wrench_that_reaches_it(thread: str, names: tuple[str, ...]) -> None:
    wrenches = [read_wrench(name) for name in names]
    grade = "ISO 898-1 8.8" if thread.startswith("M") else "SAE J429 8"
    sheet = torque(thread, grade=grade, condition="dry", wrench=names)
    figure = sheet.decision.figure
    if figure is None:  # no wrench reaches it
        return
    made = passes(shares(10, 30, 60, 100), figure, figure.unit, wrenches, refdata())
    assert len(made) == 4
    whole = units.to_base(figure.typical, figure.unit)
    for share, text in zip((0.1, 0.3, 0.6), made, strict=False):
        if text == BY_HAND:
            assert all(share * whole < w.to_nm(w.low) for w in wrenches)
            continue
        number, unit = text.partition(" on the wrench")[0].split(" ")
        wrench = next(w for w in wrenches if w.unit == unit and (w.text in text or "on the wrench" not in text))
        steps = (Fraction(number) - wrench.low) / wrench.step
        assert wrench.low <= Fraction(number) <= wrench.high
        assert steps.denominator == 1
        assert abs(wrench.to_nm(Fraction(number)) - share * whole) <= wrench.to_nm(wrench.step) * 0.5 * (1 + 1e-9)


def test_without_a_wrench_a_pass_is_the_share_itself() -> None:
    figure = torque("3/8-16", grade="SAE J429 5", condition="dry").decision.figure
    assert figure is not None
    assert passes(shares(50, 100), figure, "lbf*ft", (), refdata()) == ["16 lbf*ft", "31 lbf*ft"]


@pytest.mark.parametrize(
    ("small", "made"), [("10 to 30 N*m by 1", "30 N*m on the wrench 10 to 30 N*m by 1"), ("10 to 29 N*m by 1", BY_HAND)]
)
def test_a_wrench_is_set_at_its_very_end_and_not_past_it(small: str, made: str) -> None:
    names = ("50 to 200 N*m by 1", small)
    sheet = torque("M12", grade="8.8", condition="dry", wanted="100 N*m", wrench=names)
    figure = sheet.figure("torque_setting")
    assert figure.typical == 100
    wrenches = [read_wrench(name) for name in names]
    assert passes(shares(30, 100), figure, "N*m", wrenches, refdata())[0] == made
