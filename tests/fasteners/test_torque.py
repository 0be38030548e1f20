"""The torque sheet: who governs, what the window promises, and the dry figure on other threads."""

from __future__ import annotations

import shutil
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fasteners.fastener_questions import (
    DRY5,
    MAKER,
    ask,
    check_of,
    derived_of,
    ends,
    fast,
    questions,
)
from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.short import short
from gaugeblock.answer.text import render
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners.maker import read_maker
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque
from gaugeblock.figure import Figure
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

# --- who governs ------------------------------------------------------------------------------------------------------


def test_the_published_torque_governs_over_the_derived_one_which_is_beside_it() -> None:
    sheet = torque("3/8-16", **DRY5)
    assert [f.basis for f in sheet.figures[:2]] == ["published", "derived"]
    assert sheet.figure("torque_difference").inputs == (sheet.figures[0], sheet.figures[1])
    assert not any("calculated" in c.text for c in sheet.cautions)


def test_without_a_published_torque_the_derived_one_governs_and_says_so() -> None:
    sheet = torque("3/8-16", grade="SAE J429 5", condition="moly")
    assert sheet.governing is not None
    assert sheet.governing.basis == "derived"
    assert any("this one is calculated" in c.text and c.severity == "damage" for c in sheet.cautions)


def test_habit_informs_and_does_not_govern_over_the_derived(tmp_path: Path) -> None:
    folder = tmp_path / "refdata"
    shutil.copytree(refdata().folder, folder)
    with (folder / "fasteners" / "torques.csv").open("a", encoding="ascii") as table:
        table.write(
            "M10x1.5,ISO 898-1,8.8,moly paste,any,any,tightening_torque,30,,,N*m,,common practice,,,quoted,,0.3.0,,\n"
        )
    sheet = torque("M10x1.5", grade="8.8", condition="moly", data=Refdata(str(folder)))
    assert sheet.governing is not None
    assert sheet.governing.basis == "derived"
    habits = [f for f in sheet.figures if f.basis == "common practice"]
    assert len(habits) == 1
    assert habits[0].trust == "HABIT"


def test_the_makers_figure_governs_and_is_printed_as_makers() -> None:
    sheet = torque("3/8-16", **DRY5, maker=MAKER)
    first, second = sheet.figures[:2]
    assert (first.value, first.basis, first.source, first.locator) == (33.0, "maker", MAKER[1], MAKER[2])
    assert first.trust == "MAKER"
    assert second.basis == "published"
    line = next(line for line in render(sheet).splitlines() if "TIGHTENING TORQUE" in line)
    assert "33 lbf*ft" in line
    assert line.endswith("MAKER")


@pytest.mark.parametrize("text", ["0.5 to 0.8 N*m", "0.05 to 0.8 N*m", "7 to 9 lbf*in"])
def test_a_makers_range_is_read_however_small_it_is(text: str) -> None:
    maker = read_maker((text, "sheet", "p. 1"))
    assert maker is not None
    figure = maker.figure(0)
    assert f"{figure.low:g} to {figure.high:g} {figure.unit}" == text


def test_each_stage_of_a_makers_figure_says_which_of_how_many_it_is() -> None:
    maker = read_maker(("22 N*m, then 40 N*m, then 90 deg", "sheet", "p. 1"))
    assert maker is not None
    figures = [maker.figure(n) for n in range(3)]
    assert [f.conditions for f in figures] == ["stage 1 of 3", "stage 2 of 3", "stage 3 of 3"]
    assert [f"{f.text} {f.unit}" for f in figures] == ["22 N*m", "40 N*m", "90 deg"]


@pytest.mark.parametrize("text", ["0 to 0.8 N*m", "0.8 to 0.8 N*m", "0.8 to 0.5 N*m"])
def test_a_makers_range_that_does_not_rise_from_over_nothing_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        read_maker((text, "sheet", "p. 1"))


def test_the_makers_figure_is_checked_against_proof_too() -> None:
    sheet = torque("3/8-16", **DRY5, maker=("90 lbf*ft", "sheet", "p. 1"), confirmed="maker")
    check = check_of(sheet, "clamp at low friction within proof")
    assert (check.result, check.bears) == (NOT_OK, "ask")
    assert sheet.decision.kind == "ask"


@pytest.mark.parametrize("service", ["vehicle", "any"])
def test_an_aircraft_row_never_governs_for_a_vehicle(service: str) -> None:
    asked = {"thread": "1/4-20 UNC", "standard": "SAE J429", "grade": "8", "condition": "dry"}
    figure = look_up("fasteners/torques", "tightening_torque", service=service, **asked)
    assert figure.key["service"] == "any"
    assert [o.key["service"] for o in figure.others if o.chosen_by == "service"] == ["aircraft"]
    aircraft = look_up("fasteners/torques", "tightening_torque", service="aircraft", **asked)
    assert (aircraft.key["service"], aircraft.text) == ("aircraft", "54 to 81")


def test_no_row_of_another_service_governs_any_torque_or_part_of_a_vehicle() -> None:
    data = refdata()
    answered = 0
    for table in ("fasteners/torques", "fasteners/part_torques", "fasteners/prevailing"):
        names = [k.name for k in data.table(table).keys]
        for row in data.table(table).rows:
            keys = dict(zip(names, row.key, strict=True))
            keys["service"] = "vehicle"
            keys = {k: v for k, v in keys.items() if v != "any" or k == "service"}
            try:
                figure = look_up(table, row.cells["quantity"], data=data, **keys)
            except LookupMiss:
                continue  # only other services, or a standing: refused, and so not answered
            assert figure.key["service"] in ("vehicle", "any")
            assert not figure.standing
            answered += 1
    assert answered > 150


def test_a_heavy_truck_figure_informs_a_part_of_a_vehicle_and_does_not_answer() -> None:
    sheet = part("flare nut", size="-6", seat="jic", material="steel")
    assert sheet.figures == ()
    assert sheet.checks[0].result == CANNOT_TELL
    assert any("Informs only" in c.text and "heavy truck" in c.text for c in sheet.cautions)
    own = part("flare nut", size="-6", seat="jic", material="steel", service="heavy truck")
    assert own.figure("turn_from_snug").key["service"] == "heavy truck"


# --- the window -------------------------------------------------------------------------------------------------------


def _past_proof(sheet: Sheet, figure: Figure) -> bool:
    """Whether the upper end of a torque passes the proof load at the lowest friction known."""
    derived = derived_of(sheet)
    preload = derived.inputs[2]
    proof = preload.inputs[1]
    lowest = units.to_base(ends(derived)[0], derived.unit) / units.to_base(preload.typical, preload.unit)  # Klow D
    top = units.to_base(ends(figure)[1], figure.unit)
    return top > lowest * units.to_base(proof.typical, proof.unit) * (1 + 1e-9)


@fast
@given(question=questions, joint=st.sampled_from(["reused", "permanent"]))
def test_a_window_past_proof_at_the_lowest_friction_is_never_ok(question: tuple[str, str, str], joint: str) -> None:
    sheet = ask(question, joint=joint)
    derived = derived_of(sheet)
    if sheet.governing is derived and _past_proof(sheet, derived):
        assert check_of(sheet, "clamp at low friction within proof").result in (NOT_OK, CANNOT_TELL)


@fast
@given(question=questions, joint=st.sampled_from(["reused", "permanent"]))
def test_the_target_lies_in_its_window_as_held_and_as_printed(question: tuple[str, str, str], joint: str) -> None:
    sheet = ask(question, joint=joint)
    figure = derived_of(sheet)
    low, high = ends(figure)
    assert figure.value is not None
    assert low <= figure.value <= high
    text = printed(figure, sheet.data)
    number, window = text.split(" (")
    first, last = window.rstrip(")").split(" to ")
    assert Fraction(first) <= Fraction(number.split(" ")[0]) <= Fraction(last)
    unit = number.split(" ")[1]
    assert float(Fraction(first)) >= units.from_base(units.to_base(low, figure.unit), unit) * (1 - 1e-6)
    assert float(Fraction(last)) <= units.from_base(units.to_base(high, figure.unit), unit) * (1 + 1e-6)


@fast
@given(question=questions)
def test_the_permanent_joint_asks_for_more_in_the_ratio_of_the_shares(question: tuple[str, str, str]) -> None:
    reused, permanent = derived_of(ask(question)), derived_of(ask(question, joint="permanent"))
    assert permanent.typical / reused.typical == pytest.approx(0.9 / 0.75, rel=1e-12)


@fast
@given(question=questions)
def test_judging_the_derived_torque_backwards_gives_its_own_preload(question: tuple[str, str, str]) -> None:
    derived = derived_of(ask(question))
    text = units.decimal_text(Fraction(derived.typical), 12)
    sheet = ask(question, given=f"{text} {derived.unit}")
    clamp = sheet.governing
    assert clamp is not None
    assert clamp.quantity == "clamp_load"
    preload = derived.inputs[2]
    assert units.to_base(clamp.typical, clamp.unit) == pytest.approx(
        units.to_base(preload.typical, preload.unit), rel=1e-9
    )
    assert sheet.figure("share_of_proof").typical == pytest.approx(75, rel=1e-9)


@fast
@given(question=questions, number=st.integers(min_value=1, max_value=400))
def test_clamp_is_proportional_to_the_setting_and_its_ends_are_those_of_friction(
    question: tuple[str, str, str], number: int
) -> None:
    one, two = (ask(question, given=f"{n} N*m", confirmed="given").figures[0] for n in (number, 2 * number))
    assert two.typical == pytest.approx(2 * one.typical, rel=1e-12)
    low, high = ends(one)
    assert low <= one.typical <= high


# --- the dry figure on other threads ----------------------------------------------------------------------------------


def test_the_dry_figure_on_a_lubricated_thread_is_not_ok_when_it_is_what_was_set() -> None:
    sheet = torque("3/8-16", grade="grade 5", condition="antiseize", given="31 lbf*ft")
    check = check_of(sheet, "dry torque not used here")
    assert check.result == NOT_OK
    assert any(c.severity == "injury" and "Do not use the dry torque here" in c.text for c in sheet.cautions)


def test_the_dry_figure_is_warned_of_when_it_was_not_set() -> None:
    sheet = torque("3/8-16", grade="grade 5", condition="antiseize")
    assert check_of(sheet, "dry torque not used here").result == OK
    assert any("Do not use the dry torque here" in c.text for c in sheet.cautions)


def test_a_makers_figure_as_high_as_the_dry_one_cannot_be_told_of() -> None:
    sheet = torque(
        "3/8-16", grade="grade 5", condition="antiseize", maker=("31 lbf*ft", "sheet", "p. 1"), confirmed="maker"
    )
    assert check_of(sheet, "dry torque not used here").result == CANNOT_TELL
    (question,) = [q for q in sheet.questions if q.key == "maker.condition"]
    assert (question.kind, question.checks) == ("ask the maker", ("dry torque not used here",))


def test_a_torque_is_called_by_its_thread_grade_and_condition() -> None:
    assert torque("3/8-16", **DRY5).title == "3/8-16 UNC, SAE J429 5, dry"
    assert torque("3/8-16", wanted="20 lbf*ft", condition="dry").title == "3/8-16 UNC, dry"
    assert torque(None, wanted="20 lbf*ft").title == "bolt"


def test_a_dry_thread_has_no_such_check() -> None:
    assert [c.name for c in torque("3/8-16", **DRY5).checks] == ["clamp at low friction within proof"]


def test_a_share_past_proof_is_told_with_both_its_ends_and_as_it_usually_is() -> None:
    sheet = torque("3/8-16", **DRY5, wanted="60 lbf*ft")
    assert check_of(sheet, "clamp at low friction within proof").result == NOT_OK
    ends_, usual = [(f.low, f.high) for f in sheet.figures if f.quantity == "share_of_proof"]
    assert usual == (None, None)
    assert ends_[0] is not None
    assert ends_[1] is not None
    assert 100 < ends_[0] < ends_[1]


def test_only_a_lesser_row_past_proof_gives_cannot_tell_with_its_name() -> None:
    sheet = torque("3/8-16", grade="grade 5", condition="oiled")
    check = check_of(sheet, "clamp at low friction within proof")
    assert (check.result, check.bears) == (CANNOT_TELL, "inform")
    assert sheet.decision.kind == "use"


# --- the least that a table prints, and friction at its lowest --------------------------------------------------------

M24 = {"grade": "8.8", "condition": "dry"}


def test_a_minimum_of_a_table_is_no_torque_to_set() -> None:
    """One maker's list is headed as the least: it stands beside the torque and never governs."""
    sheet = torque("M24x3", **M24)
    least = next(f for f in sheet.figures if f.quantity == "tightening_torque_minimum")
    assert (least.text, least.side) == ("551", "min")
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical >= least.typical
    assert all(f.source != least.source for f in (sheet.decision.figure, *sheet.decision.figure.others))
    assert check_of(sheet, "least torque of a table").result == OK


def test_less_than_the_least_is_asked_and_the_makers_own_is_not() -> None:
    wanted = torque("M24x3", wanted="500 N*m", **M24)
    check = check_of(wanted, "least torque of a table")
    assert (check.result, wanted.decision.kind) == (NOT_OK, "ask")
    assert [q.key for q in wanted.questions if check.name in q.checks] == ["maker.torque"]
    own = torque("M24x3", maker=("500 N*m", "its sheet", "p. 2"), **M24)
    assert not any(c.name == check.name for c in own.checks)
    tapped = torque("M24x3", wanted="500 N*m", into="aluminium", **M24)
    assert not any(c.name == check.name for c in tapped.checks), "the least is for a bolt with its nut"


def test_a_tables_torque_that_may_pass_proof_says_so_in_the_short_answer() -> None:
    sheet = torque("M24x3", **M24)
    share = next(f for f in sheet.figures if f.quantity == "share_of_proof")
    assert share.high is not None
    assert share.typical < 100 < share.high
    said = [c for c in sheet.cautions if share.id in c.figures and c.severity == "damage"]
    assert [f"{share.high:.0f} % of proof" in c.text for c in said] == [True]
    inside = torque("M10x1.5", grade="8.8", condition="dry")
    assert not any("slippery" in c.text for c in inside.cautions)


def test_the_short_answer_counts_its_sources_and_says_how_far_apart_they_are() -> None:
    """Whatever unit each prints: two print newton metres, one pound-feet with a window, one a range."""
    figure = torque("M10x1.5", grade="8.8", condition="dry").decision.figure
    assert figure is not None
    alike = [figure, *(o for o in figure.others if o.chosen_by not in ("standing", "service", "specificity"))]
    ends = [units.in_unit(e, f.unit, "N*m") for f in alike for e in (f.value, f.low, f.high) if e is not None]
    text = short(torque("M10x1.5", grade="8.8", condition="dry"))
    low, high = (units.significant(end, 3) for end in (min(ends), max(ends)))
    assert len({f.source for f in alike}) == 4
    assert f"4 sources, {low} to {high} N*m." in " ".join(text.split())
    assert "One source." in short(part("spark plug", size="14 mm", seat="taper", material="aluminium"))
    assert "source." not in short(part("brake bleeder screw")), "a habit has no publication to count"
