"""Universal joints: what cancels, what is left over, which angle is usual."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.asking import only, texts
from driveline.forms import keeps_form
from gaugeblock import domains, joint
from gaugeblock.driveline import page
from gaugeblock.driveline.job import Joints
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.tables.load import refdata

KEYS = set(Joints.keys)


def test_equal_joints_in_phase_cancel_and_out_of_phase_do_not() -> None:
    name = "second joint cancels the first"
    good, bad = joint("5 deg", "5 deg", phasing="in phase"), joint("5 deg", "5 deg", phasing="wrong phase")
    assert (only(good, name).result, only(bad, name).result) == ("ok", "not ok")
    assert good.figures[0].typical == 0
    assert bad.figures[0].typical == pytest.approx(2 * joint("5 deg").figures[0].typical, rel=0.01)
    assert "roughly doubles" in texts(bad)


def test_a_heavy_truck_figure_never_judges_a_vehicle() -> None:
    check = only(joint("7 deg", "5 deg", phasing="in phase"), "second joint cancels the first")
    assert (
        check.required is None or check.required.figure is None or check.required.figure.key["service"] != "heavy truck"
    )


@pytest.mark.parametrize(("second", "phasing"), [(None, None), ("5 deg", None)])
def test_an_unknown_second_joint_or_phasing_cannot_be_told(second: str | None, phasing: str | None) -> None:
    assert only(joint("5 deg", second, phasing=phasing), "second joint cancels the first").result == "cannot tell"


def test_the_working_angle_is_interpolated_between_speeds_and_not_beyond() -> None:
    name = "working angle at this speed"
    check = only(joint("5 deg", speed="3250 rpm"), name)
    assert check.required is not None
    assert check.required.value == pytest.approx((5.0 + 5.8) / 2)
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


@pytest.mark.parametrize(("angle", "result"), [("11.5 deg", "cannot tell"), ("12 deg", "not ok"), ("45 deg", "not ok")])
def test_an_angle_over_what_any_speed_of_the_table_has_is_not_ok_without_a_speed(angle, result):
    assert only(joint(angle), "working angle at this speed").result == result


CANCELS = "second joint cancels the first"


def test_a_top_view_reaches_both_joints() -> None:
    sheet = joint("3 deg", "3 deg", top="2 deg", second_top="2 deg", phasing="in phase", speed="3000 rpm")
    assert only(sheet, CANCELS).result == "ok"
    assert (sheet.decision.kind, sheet.figures[0].typical) == ("use", 0)


@pytest.mark.parametrize(("more", "lacks"), [({"top": "2 deg"}, "second_top"), ({"second_top": "2 deg"}, "top")])
def test_a_top_view_of_one_joint_alone_asks_for_the_other(more: dict[str, str], lacks: str) -> None:
    sheet = joint("3 deg", "3 deg", phasing="in phase", **more)  # type: ignore[arg-type]
    assert (sheet.decision.kind, sheet.questions[0].key) == ("ask", lacks)


def test_three_shafts_in_two_views_give_each_joint_its_true_angle() -> None:
    """Gearbox and pinion parallel, the shaft down 2 and across 2: both joints work at 2.82 degrees and cancel."""
    sheet = joint(shafts_side="3 deg, 5 deg, 3 deg", shafts_top="0 deg, 2 deg, 0 deg", phasing="in phase")
    angles = [f.typical for f in sheet.figures if f.quantity == "working_angle_true"]
    assert angles == pytest.approx([2.823, 2.823], abs=1e-3)
    assert only(sheet, CANCELS).result == "ok"


def test_equal_angles_in_planes_apart_do_not_cancel() -> None:
    sheet = joint("3 deg", "3 deg", top="2 deg", second_top="-2 deg", phasing="in phase")
    check = only(sheet, CANCELS)
    assert (check.result, "planes 67.4 deg apart" in check.reason) == ("cannot tell", True)
    assert sheet.figure("joint_plane_angle").typical == pytest.approx(67.35, abs=0.01)


SLOPES = st.integers(-80, 80).map(lambda n: f"{n / 10:g} deg")
SETS = st.tuples(SLOPES, SLOPES, SLOPES)


def shown(side: Sequence[str], top: Sequence[str], phasing: str | None) -> list[tuple[str, float]]:
    sheet = joint(shafts_side=side, shafts_top=top, phasing=phasing, speed="2000 rpm")
    keeps_form(sheet, KEYS)
    swing = ("speed_swing", sheet.figures[0].typical)
    return [(sheet.decision.kind, 0.0), swing, *((c.result, 0.0) for c in sheet.checks)]


def turned(slopes: Sequence[str]) -> list[str]:
    return [f"-{s}".replace("--", "") for s in slopes]


@settings(max_examples=60, deadline=None)
@given(SETS, SETS, st.sampled_from([None, "in phase", "wrong phase"]))
def test_mirrored_turned_round_and_seen_from_the_other_end_the_joints_are_the_same(
    side: tuple[str, ...], top: tuple[str, ...], phasing: str | None
) -> None:
    first = shown(side, top, phasing)
    for again in ((side, turned(top)), (turned(side), top), (top, side), (side[::-1], top[::-1])):
        for (a, x), (b, y) in zip(first, shown(*again, phasing), strict=True):
            assert (a, x) == (b, pytest.approx(y, abs=2e-4))


@pytest.mark.parametrize(
    "said",
    [
        {"top": "2 deg"},
        {"angle": "3 deg", "shafts_side": "3 deg, 5 deg, 3 deg"},
        {"shafts_side": "3 deg, 5 deg"},
        {"shafts_top": "3 deg, 5 deg, 3 deg"},
        {"angle": "95 deg"},
    ],
)
def test_joints_that_are_not_wholly_said_are_refused(said: dict[str, str]) -> None:
    with pytest.raises(InputError):
        joint(**said)  # type: ignore[arg-type]


def test_angles_that_are_left_open_are_named() -> None:
    with pytest.raises(Ambiguous) as caught:
        joint()
    assert caught.value.nearest == ("angle", "shafts_side")


def test_slopes_are_drawn_true_with_their_working_angles_and_angles_alone_are_not() -> None:
    (view,) = joint(shafts_side="3 deg, 5.5 deg, 3 deg", phasing="in phase").drawings
    assert view.svg.count("2.5") == 2
    assert "5.5" in view.svg
    assert not joint("3 deg", "3 deg", phasing="in phase").drawings


def test_a_speed_of_no_driveshaft_is_questioned() -> None:
    sheet = joint("3 deg", "3 deg", phasing="in phase", speed="40000 rpm")
    assert (sheet.decision.kind, sheet.questions[-1].key) == ("ask", "speed")


def test_joints_of_a_job_have_a_card_and_their_decision() -> None:
    job = domains.parse_job(
        '[[joints]]\nname = "rear shaft"\nshafts_side = ["3 deg", "5 deg", "3 deg"]\nphasing = "in phase"\nspeed ='
        ' "3000 rpm"\n'
    )
    item = page.item(job.joints[0], job.shop, refdata())
    assert (item.sheet.decision.kind, item.sheet.decision.verb) == ("use", "SWINGS")
    assert item.card is not None
    empty = domains.parse_job('[[joints]]\nname = "rear shaft"\n')
    assert page.item(empty.joints[0], empty.shop, refdata()).sheet.decision.kind == "none"
