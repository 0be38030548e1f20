"""Universal joints: what cancels, what is left over, which angle is usual."""

from __future__ import annotations

import pytest

from driveline.asking import only, texts
from gaugeblock import joint
from gaugeblock.errors import InputError


def test_equal_joints_in_phase_cancel_and_out_of_phase_do_not() -> None:
    name = "second joint cancels the first"
    good, bad = joint("5 deg", "5 deg", phasing="in phase"), joint("5 deg", "5 deg", phasing="wrong phase")
    assert (only(good, name).result, only(bad, name).result) == ("ok", "not ok")
    assert good.figures[0].typical == 0
    assert bad.figures[0].typical == pytest.approx(2 * joint("5 deg").figures[0].typical, rel=0.01)
    assert "roughly doubles" in texts(bad)


def test_a_heavy_truck_figure_informs_and_never_judges() -> None:
    sheet = joint("7 deg", "3 deg", phasing="in phase")
    assert only(sheet, "second joint cancels the first").result == "cannot tell"
    assert "over the 3 deg of a heavy truck manual" in texts(sheet)


@pytest.mark.parametrize(("second", "phasing"), [(None, None), ("5 deg", None)])
def test_an_unknown_second_joint_or_phasing_cannot_be_told(second: str | None, phasing: str | None) -> None:
    assert only(joint("5 deg", second, phasing=phasing), "second joint cancels the first").result == "cannot tell"


def test_the_working_angle_is_interpolated_between_speeds_and_not_beyond() -> None:
    name = "working angle at this speed"
    check = only(joint("5 deg", speed="3250 rpm"), name)
    assert check.required is not None
    assert check.required.value == pytest.approx((5.0 + 5.83) / 2)
    assert "not extrapolated" in only(joint("5 deg", speed="6000 rpm"), name).reason
    assert "not given" in only(joint("5 deg"), name).reason


def test_the_larger_of_two_working_angles_is_judged() -> None:
    for angles in (("3 deg", "6 deg"), ("6 deg", "3 deg")):
        assert only(joint(*angles, speed="3500 rpm"), "working angle at this speed").result == "not ok"


def test_a_compound_angle_is_worked_from_both_views() -> None:
    sheet = joint("3 deg", top="4 deg")
    assert sheet.figure("working_angle_true").typical == pytest.approx(5.0, abs=0.01)


def test_an_unknown_phasing_is_refused() -> None:
    with pytest.raises(InputError):
        joint("3 deg", "3 deg", phasing="sideways")


@pytest.mark.parametrize(("angle", "result"), [("11.5 deg", "cannot tell"), ("12 deg", "not ok"), ("50 deg", "not ok")])
def test_an_angle_over_what_any_speed_of_the_table_has_is_not_ok_without_a_speed(angle, result):
    assert only(joint(angle), "working angle at this speed").result == result
