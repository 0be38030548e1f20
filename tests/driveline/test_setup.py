"""A step of a set-up: the maker's figure governs, other axles inform, what was left is judged."""

from __future__ import annotations

import pytest

from driveline.asking import LEFT, MAKER, only, plain, texts
from gaugeblock import setup
from gaugeblock.errors import InputError, LookupMiss


def test_the_makers_figure_governs_and_other_axles_only_inform() -> None:
    sheet = setup("rear", "ring gear", "backlash", "new", as_left="0.007 in", maker=MAKER)
    assert sheet.figures[0].basis == "maker"
    assert only(sheet, LEFT).result == "ok"
    assert "Examples of other axles" in texts(sheet)
    assert all(f.source in ("axle maker's sheet", "read on this axle") for f in sheet.figures)


@pytest.mark.parametrize(
    ("left", "result"),
    [("0.004 in", "not ok"), ("0.005 in", "ok"), ("0.008 in", "ok"), ("0.22 mm", "not ok"), ("0.2 mm", "ok")],
)
def test_as_left_is_held_to_both_ends(left: str, result: str) -> None:
    assert only(setup("rear", "ring gear", "backlash", as_left=left, maker=MAKER), LEFT).result == result


@pytest.mark.parametrize(
    ("left", "maker", "why"),
    [
        ("0.007 in", None, "other axles do not answer"),
        (None, MAKER, "as left is not given"),
        ("good", MAKER, "as left is words"),
        ("0.007 in", ("0.006 in", "0.005 in", "0.008 in", None, None), "no source and place"),
        ("0.007 in", ("0.006 in", None, None, "axle maker's sheet", "page 4"), "without a tolerance"),
    ],
)
def test_what_is_not_known_cannot_be_told(left: str | None, maker: object, why: str) -> None:
    check = only(setup("rear", "ring gear", "backlash", as_left=left, maker=maker), LEFT)  # type: ignore[arg-type]
    assert check.result == "cannot tell"
    assert why in check.reason


def test_a_makers_figure_without_its_page_is_kept_and_the_page_is_asked_for() -> None:
    maker = ("0.006 in", "0.005 in", "0.008 in", "axle maker's sheet", None)
    sheet = setup("rear", "ring gear", "backlash", as_left="0.007 in", maker=maker)
    assert (sheet.figures[0].basis, only(sheet, LEFT).result) == ("maker", "ok")
    assert [(q.key, q.kind) for q in sheet.questions] == [("maker.place", "fill in")]
    assert sheet.decision.kind == "use"


def test_a_makers_figure_of_nobody_is_only_stated_and_asked_about() -> None:
    sheet = setup("rear", "ring gear", "backlash", maker=("0.006 in", None, None, None, "page 4"))
    assert sheet.figures[0].basis == "stated"
    assert (sheet.decision.kind, sheet.questions[0].key) == ("ask", "maker.source")


def test_used_gears_go_back_to_their_recorded_backlash() -> None:
    sheet = setup("forklift axle (TM 10-3930-669-34)", "ring gear", "final setting", "used", as_left="0.0065 in")
    assert "recorded backlash" in only(sheet, LEFT).reason
    assert "Used gears go back to their recorded value" in texts(sheet)


def test_as_found_outside_the_figure_is_said_and_does_not_fail_the_step() -> None:
    sheet = setup("rear", "ring gear", "backlash", as_found="0.011 in", as_left="0.007 in", maker=MAKER)
    assert sheet.worst == "ok"
    assert "As found, 0.011 in was outside" in texts(sheet)


def test_a_makers_figure_answers_for_a_component_of_no_table() -> None:
    sheet = setup(
        "front",
        "inner joint",
        "boot clamp",
        as_left="22 lbf*in",
        maker=(None, "20 lbf*in", "25 lbf*in", "maker's sheet", "p. 2"),
    )
    assert only(sheet, LEFT).result == "ok"


@pytest.mark.parametrize(
    ("maker", "key", "said"),
    [
        (("-0.006 in", None, None, "s", "p"), "maker.value", "Did you mean 0.006 in?"),
        ((None, "0.008 in", "0.005 in", "s", "p"), "maker.low", "is above its high"),
        (("0.15 in", None, None, "s", "p"), "maker.value", "Did you mean 0.15 mm?"),
        (("6 in", None, None, "s", "p"), "maker.value", "far from any backlash"),
        (("6 lbf*in", None, None, "s", "p"), "maker", "a length is set at this step"),
    ],
)
def test_an_implausible_makers_figure_is_questioned_and_never_set(maker: object, key: str, said: str) -> None:
    sheet = setup("rear", "ring gear", "backlash", as_left="0.006 in", maker=maker)  # type: ignore[arg-type]
    assert (sheet.decision.kind, sheet.decision.figures) == ("none", ())
    assert (sheet.questions[0].key, said in plain(sheet.questions[0].text)) == (key, True)
    assert said in plain(sheet.decision.do)
    assert all(f.basis != "maker" for f in sheet.figures)


def test_a_preload_in_the_wrong_unit_is_questioned() -> None:
    sheet = setup("rear", "pinion bearings", "preload", maker=("20 lbf*ft", None, None, "s", "p"))
    assert "Did you mean 20 lbf·in?" in plain(sheet.decision.do)


def test_a_makers_figure_is_only_taken_for_one_in_a_unit_that_an_indicator_reads() -> None:
    """150 um would be a usual backlash, and no dial has that unit."""
    sheet = setup("rear", "ring gear", "backlash", maker=("150 mm", None, None, "s", "p"))
    assert "far from any backlash" in sheet.decision.do
    assert "Did you mean" not in sheet.decision.do


def test_the_makers_and_the_manuals_figures_apart_are_said() -> None:
    maker = (None, "0.012 in", "0.014 in", "axle maker's sheet", "page 4")
    sheet = setup("forklift axle (TM 10-3930-669-34)", "ring gear", "final setting", as_left="0.013 in", maker=maker)
    assert only(sheet, LEFT).result == "ok"
    assert "find out why they differ" in texts(sheet)


def test_the_cautions_of_the_step_are_those_of_what_is_set() -> None:
    preload = texts(setup("rear", "pinion bearings", "preload", "used"))
    for said in ("Never back off the nut", "not at break-away", "stands under the frame"):
        assert said in preload
    marks = texts(setup("rear", "pinion shim", "starting"))
    assert "thicker shim on some axles and thinner on others" in marks


def test_a_step_of_no_row_is_refused_with_those_there_are() -> None:
    with pytest.raises(LookupMiss) as caught:
        setup("rear", "ring gear", "paint")
    assert caught.value.nearest


def test_a_finding_that_only_mentions_a_number_is_words() -> None:
    check = only(setup("rear", "ring gear", "backlash", as_left="about 0.006 in", maker=MAKER), LEFT)
    assert (check.result, "words" in check.reason) == ("cannot tell", True)


@pytest.mark.parametrize(
    ("left", "said"),
    [
        ("10 lbf*ft", "is a torque; a length is set"),
        ("-0.006 in", "Did you mean 0.006 in?"),
        ("0.007 mm", "Did you mean 0.007 in?"),
    ],
)
def test_a_doubtful_finding_is_questioned_and_judges_nothing(left: str, said: str) -> None:
    sheet = setup("rear", "ring gear", "backlash", as_left=left, maker=MAKER)
    assert (sheet.decision.kind, sheet.questions[0].key) == ("ask", "as_left")
    assert said in plain(sheet.questions[0].text)
    assert sheet.decision.figures[0].basis == "maker"


def test_a_manual_with_a_figure_for_new_and_for_used_parts_asks_which() -> None:
    sheet = setup("wide utility truck axle (TM 9-2320-280-34)", "pinion", "preload", as_left="12 lbf*in")
    assert "say whether new or used" in only(sheet, LEFT).reason


@pytest.mark.parametrize(("left", "told"), [("0.007 in", False), ("0.004 in", False), ("0.010 in", True), (None, True)])
def test_what_to_do_about_too_much_backlash_is_told_when_there_may_be(left: str | None, told: bool) -> None:
    maker = (None, "0.005 in", "0.008 in", "axle maker", "p. 4")
    said = texts(setup("rear", "ring gear", "backlash", as_left=left, maker=maker))
    assert ("Backlash too large: Add shim on the ring gear side" in said) is told


def test_a_pattern_check_says_what_each_pattern_asks_for_and_names_other_axles_quantities() -> None:
    said = texts(setup("rear", "ring gear", "pattern check"))
    assert "Pattern too far to the heel: Reduce backlash to move it toward the toe." in said
    assert "Where backlash is read: At the heel of the tooth" in said
    assert "pattern brake torque 40 to 50 lbf*ft" in said


@pytest.mark.parametrize(
    "maker",
    [("0.006 in",), {"tolerance": "0.001 in"}, {"value": 0.006}, {}, "0.006 in", {"low": "5 in", "high": "5 deg"}],
)
def test_a_makers_figure_of_another_form_is_refused_and_named(maker: object) -> None:
    with pytest.raises(InputError, match="maker"):
        setup("rear", "ring gear", "backlash", maker=maker)  # type: ignore[arg-type]


def test_a_makers_figure_is_taken_by_name_as_in_order() -> None:
    named = dict(zip(("value", "low", "high", "source", "place"), MAKER, strict=True))
    assert (
        setup("rear", "ring gear", "backlash", maker=named).figures
        == setup("rear", "ring gear", "backlash", maker=MAKER).figures
    )


def test_what_was_left_outside_stops_and_nothing_left_yet_is_an_empty_box() -> None:
    wrong = setup("rear", "ring gear", "backlash", as_left="0.012 in", maker=MAKER).decision
    assert (wrong.kind, "Set it again" in wrong.do) == ("stop", True)
    fresh = setup("rear", "ring gear", "backlash", maker=MAKER)
    assert (fresh.decision.kind, fresh.decision.verb, fresh.questions) == ("use", "SET", ())


def test_an_axle_of_no_manual_has_no_figure_and_its_maker_is_asked() -> None:
    sheet = setup("rear", "ring gear", "backlash")
    assert sheet.decision.kind == "none"
    assert [(q.kind, q.key) for q in sheet.questions] == [("ask the maker", "maker.value")]


def test_new_and_used_figures_are_candidates_by_what_the_parts_are() -> None:
    sheet = setup("wide utility truck axle (TM 9-2320-280-34)", "pinion", "preload")
    assert [c.when.split()[0] for c in sheet.decision.candidates] == ["new", "used"]
    assert sheet.questions[0].key == "wear"
