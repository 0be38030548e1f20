"""What the wrench is set to, what a setting does, and whether the tapped thread holds."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fasteners.fastener_questions import DRY5, THREADS, ask, check_of, derived_of, ends, fast, questions
from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.answer.text import render
from gaugeblock.errors import InputError
from gaugeblock.fasteners.torque import torque

# --- setting of the wrench --------------------------------------------------------------------------------------------


@fast
@given(question=questions, drag=st.integers(min_value=0, max_value=60))
def test_a_locknuts_prevailing_torque_is_added_to_target_and_window(question: tuple[str, str, str], drag: int) -> None:
    plain = ask(question, prevailing="0 lbf*in").figure("torque_setting")
    with_drag = ask(question, prevailing=f"{drag} lbf*in").figure("torque_setting")
    extra = units.from_base(units.to_base(float(drag), "lbf*in"), plain.unit)
    assert with_drag.typical - plain.typical == pytest.approx(extra, rel=1e-9, abs=1e-9)
    for now, before in zip(ends(with_drag), ends(plain), strict=True):
        assert now - before == pytest.approx(extra, rel=1e-9, abs=1e-9)


def test_a_published_prevailing_torque_is_added_and_said_to_be_the_least() -> None:
    sheet = torque("3/8-16", **DRY5, locknut="nylon insert")
    setting = sheet.figure("torque_setting")
    assert setting.typical == pytest.approx(31 + 9 / 12, rel=1e-12)
    assert sheet.figure("prevailing_torque_minimum").source == "TM604"
    assert any("least that a locknut must still have" in c.text for c in sheet.cautions)


def test_a_locknut_without_a_figure_cannot_be_told_of() -> None:
    sheet = torque("M10x1.5", grade="8.8", condition="dry", locknut="nylon insert")
    assert check_of(sheet, "prevailing torque added").result == CANNOT_TELL
    with pytest.raises(KeyError):
        sheet.figure("torque_setting")


@fast
@given(question=questions, arm=st.integers(min_value=1, max_value=9))
def test_an_adapter_square_to_the_wrench_changes_nothing_and_in_line_lowers_the_dial(
    question: tuple[str, str, str], arm: int
) -> None:
    wanted = ask(question)
    assert wanted.governing is not None
    square = ask(question, adapter=f"{arm} in on 12 in at 90 deg").figure("torque_setting")
    in_line = ask(question, adapter=f"{arm} in on 12 in").figure("torque_setting")
    assert square.typical == pytest.approx(wanted.governing.typical, rel=1e-12)
    assert in_line.typical == pytest.approx(wanted.governing.typical * 12 / (12 + arm), rel=1e-12)


@fast
@given(question=questions, arm=st.integers(min_value=0, max_value=9), drag=st.integers(min_value=0, max_value=60))
def test_the_setting_that_was_found_gives_its_clamp_back(question: tuple[str, str, str], arm: int, drag: int) -> None:
    wanted = ask(question).figure("clamp_load")
    tools = {"adapter": f"{arm} in on 12 in", "prevailing": f"{drag} lbf*in"}
    setting = ask(question, **tools).figure("torque_setting")
    back = ask(question, **tools, given=f"{setting.typical:.12f} {setting.unit}").governing
    assert back is not None
    assert back.quantity == "clamp_load"
    assert back.typical == pytest.approx(wanted.typical, rel=1e-9)


def test_a_given_setting_through_a_crow_foot_clamps_more_and_a_locknut_takes_its_part() -> None:
    """31 lbf ft on 12 in and 2 in is 31 x 14/12 = 36.17 at the thread; 40 lbf in of drag leaves 31 - 40/12."""
    plain = torque("3/8-16", **DRY5, given="31 lbf*ft").governing
    more = torque("3/8-16", **DRY5, given="31 lbf*ft", adapter="2 in on 12 in").governing
    less = torque("3/8-16", **DRY5, given="31 lbf*ft", prevailing="40 lbf*in").governing
    assert plain is not None
    assert more is not None
    assert less is not None
    assert more.typical / plain.typical == pytest.approx(14 / 12, rel=1e-12)
    assert less.typical / plain.typical == pytest.approx((31 - 40 / 12) / 31, rel=1e-12)
    unknown = torque("M10x1.5", grade="8.8", condition="dry", given="50 N*m", locknut="nylon insert")
    assert check_of(unknown, "prevailing torque taken off").result == CANNOT_TELL


@pytest.mark.parametrize("more", [{"wrench": "5 to 80 lbf*ft by 1"}, {"prevailing": "31 lbf*ft"}])
def test_a_given_setting_is_not_looked_for_and_not_all_drag(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        torque("3/8-16", **DRY5, given="31 lbf*ft", **more)


@pytest.mark.parametrize(
    ("thread", "grade", "condition"),
    [
        ("3/8-16", "grade 5", "dry"),
        ("3/8-16", "grade 5", "antiseize"),
        ("M8x1.25", "8.8", "dry"),
        ("M10x1.5", "8.8", "oiled"),
    ],
)
def test_the_cut_for_aluminium_is_of_whatever_torque_is_taken(thread: str, grade: str, condition: str) -> None:
    sheet = torque(thread, grade=grade, condition=condition, into="aluminium")
    cut = sheet.figure("tightening_torque_maximum")
    assert cut.typical == pytest.approx(0.7 * cut.inputs[0].typical, rel=1e-12)
    assert cut.inputs[0].id == sheet.figures[0].id
    assert check_of(sheet, "torque into aluminium").result == CANNOT_TELL
    assert any("cut to 0.70 or less" in c.text for c in sheet.cautions)


def test_what_is_not_ok_is_named_above_the_number() -> None:
    shallow = torque(
        "M10x1.5", grade="8.8", condition="dry", into="aluminium", engagement="10 mm", tapped_strength="200 MPa"
    )
    assert render(shallow).splitlines()[1] == "  NOT OK      length of engagement, thread stripping"
    assert render(torque("M10x1.5", grade="8.8", condition="dry")).splitlines()[1] == ""


def test_a_wrench_without_a_graduation_inside_is_not_ok() -> None:
    for wrench in ("0 to 250 lbf*in by 10", "40 to 150 lbf*ft by 1", "5 to 80 lbf*ft by 35"):
        sheet = torque("3/8-16", **DRY5, wrench=wrench)
        assert check_of(sheet, "a graduation inside the window").result == NOT_OK
        with pytest.raises(KeyError):
            sheet.figure("torque_setting")
        assert sheet.worst == NOT_OK


@fast
@given(
    question=questions,
    start=st.integers(min_value=0, max_value=40),
    span=st.integers(min_value=10, max_value=400),
    step=st.sampled_from(["1/2", "1", "2", "5", "2.5"]),
    unit=st.sampled_from(["lbf*ft", "lbf*in", "N*m"]),
)
def test_the_graduation_is_on_the_wrench_and_in_the_window(
    question: tuple[str, str, str], start: int, span: int, step: str, unit: str
) -> None:
    sheet = ask(question, wrench=f"{start} to {start + span} {unit} by {step}")
    check = check_of(sheet, "a graduation inside the window")
    target = sheet.governing
    assert target is not None
    derived = derived_of(sheet)
    low, high = (units.to_base(e, derived.unit) for e in ends(derived))
    low, high = (
        min(low, units.to_base(target.typical, target.unit)),
        max(high, units.to_base(target.typical, target.unit)),
    )
    marks = [start + k * Fraction(step) for k in range(int(Fraction(span) / Fraction(step)) + 1)]
    inside = [m for m in marks if low * (1 + 1e-9) <= units.to_base(float(m), unit) <= high * (1 - 1e-9)]
    if check.result == OK:
        set_to = sheet.figure("torque_setting")
        assert Fraction(set_to.typical).limit_denominator(10**6) in marks
        assert low * (1 - 1e-9) <= units.to_base(set_to.typical, set_to.unit) <= high * (1 + 1e-9)
        want = units.to_base(target.typical, target.unit)
        nearest = min(inside, key=lambda m: abs(units.to_base(float(m), unit) - want), default=None)
        if nearest is not None:
            off = abs(units.to_base(set_to.typical, unit) - want)
            assert off <= abs(units.to_base(float(nearest), unit) - want) * (1 + 1e-6) + 1e-9
    else:
        assert inside == []


# --- engagement -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("options", "result", "said"),
    [
        ({"engagement": "3/4 in"}, CANNOT_TELL, "tapped metal is not given"),
        ({"into": "aluminum"}, CANNOT_TELL, "thread length engaged is not given"),
        ({"into": "aluminum", "engagement": "3/4 in"}, OK, "needed"),
        ({"into": "aluminum", "engagement": "1/2 in"}, NOT_OK, "needed"),
        ({"into": "cast iron", "engagement": "0.5625 in"}, OK, "100%"),
        ({"into": "cast iron", "engagement": "0.5624 in"}, NOT_OK, "needed"),
    ],
)
def test_length_of_engagement(options: dict[str, str], result: str, said: str) -> None:
    check = check_of(torque("3/8-16", **DRY5, **options), "length of engagement")
    assert check.result == result
    assert said in check.reason


def test_stripping_needs_the_strength_of_the_tapped_metal() -> None:
    options = {"into": "aluminum", "engagement": "3/4 in"}
    assert check_of(torque("3/8-16", **DRY5, **options), "thread stripping").result == CANNOT_TELL
    for strength, result in (("25 ksi", NOT_OK), ("26 ksi", OK)):  # 25.97 ksi are needed
        sheet = torque("3/8-16", **DRY5, **options, tapped_strength=strength)
        assert check_of(sheet, "thread stripping").result == result


def test_a_screw_that_strips_before_it_breaks_is_not_ok() -> None:
    check = check_of(torque("3/8-16", **DRY5, into="steel", engagement="0.2 in"), "thread stripping")
    assert check.result == NOT_OK
    assert "screw's own thread" in check.reason


@fast
@given(
    size=st.sampled_from(THREADS),
    first=st.integers(min_value=4, max_value=60),
    more=st.integers(min_value=1, max_value=40),
)
def test_more_engagement_never_asks_for_a_stronger_metal(size: str, first: int, more: int) -> None:
    grade = "ISO 898-1 8.8" if size.startswith("M") else "SAE J429 8"
    needed = [
        torque(size, grade=grade, condition="dry", into="steel", engagement=f"{mm} mm").figure("tapped_strength_needed")
        for mm in (first, first + more)
    ]
    assert needed[1].typical / needed[0].typical == pytest.approx(first / (first + more), rel=1e-9)
