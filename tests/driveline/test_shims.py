"""Shims of an axle: the manuals' worked examples, both meanings of a mark, and that a preload stays as it was."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.forms import keeps_form
from gaugeblock import domains, setup, shims
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import page
from gaugeblock.driveline.shims.job import ShimLog
from gaugeblock.errors import InputError
from gaugeblock.tables.load import refdata

KEYS = set(ShimLog.keys)


def packs(sheet: Sheet) -> list[float]:
    return [f.typical for f in sheet.figures if f.quantity == "shim_pack" and f.basis == "derived"]


def test_the_manuals_example_of_side_shims() -> None:
    """TM 9-2320-289-34, Table 6-1: 0.250 - 0.010 + 0.004 and 0.265 + 0.010 + 0.004 in."""
    sheet = shims(move="0.010 in", ring_side="0.250 in", other_side="0.265 in", preload="0.004 in")
    keeps_form(sheet, KEYS)
    assert packs(sheet) == pytest.approx([0.244, 0.279])
    assert [f.key["moved"] for f in sheet.figures if f.quantity == "shim_pack" and f.basis == "derived"] == [
        "0.010"
    ] * 2


def test_shims_that_were_worked_out_say_how_much_was_moved() -> None:
    """0.004 in of backlash at 0.7 a thousandth of shim: 0.005714 in."""
    asked = {"backlash": "0.012 in", "wanted": "0.008 in", "per_shim": "0.7", "ring_side": "0.250 in"}
    (pack,) = [f for f in shims(**asked).figures if f.quantity == "shim_pack" and f.basis == "derived"]
    assert pack.key["moved"] == "0.005714"


@pytest.mark.parametrize(
    ("asked", "fitted"),
    [
        # TM 9-2320-289-34, Table 6-2: a plus mark is added, a minus mark subtracted
        ({"shim": "0.019 in", "new_mark": "+2", "sign": "plus adds"}, 0.021),
        ({"shim": "0.031 in", "new_mark": "-3", "sign": "plus adds"}, 0.028),
        # TM 9-2320-280-34, Table 9-1: old -3 and new +2 take off 0.005 in, old +4 and new -4 add 0.008 in
        ({"shim": "0.095 in", "old_mark": "-3", "new_mark": "+2", "sign": "plus takes off"}, 0.090),
        ({"shim": "0.095 in", "old_mark": "+4", "new_mark": "-4", "sign": "plus takes off"}, 0.103),
        # TM 5-3895-369-14, p. 5-409: old +2 and new -1 take off 0.003 in
        ({"shim": "0.095 in", "old_mark": "+2", "new_mark": "-1", "sign": "plus adds"}, 0.092),
    ],
)
def test_the_manuals_examples_of_pinion_shims(asked: dict[str, str], fitted: float) -> None:
    sheet = shims(**asked)
    assert (sheet.decision.kind, sheet.decision.verb) == ("use", "FIT")
    assert packs(sheet) == pytest.approx([fitted])


def test_a_mark_of_a_metric_shim_is_hundredths_of_a_millimetre() -> None:
    sheet = shims(shim="2.40 mm", new_mark="+3", sign="plus adds")
    assert packs(sheet) == pytest.approx([2.43])
    assert "hundredths of a millimetre" in sheet.decision.do


def test_what_a_plus_means_is_asked_unless_it_changes_nothing() -> None:
    sheet = shims(shim="0.031 in", new_mark="-3")
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["sign"])
    assert [f.typical for f in sheet.decision.figures] == pytest.approx([0.028, 0.034])
    assert shims(shim="0.031 in", old_mark="+2", new_mark="+2").decision.kind == "use"


def test_what_a_moved_shim_does_to_the_backlash() -> None:
    """The change is the ratio of this axle times the shim; without it the ends of the one axle that is printed."""
    (figure,) = shims(move="0.010 in", per_shim="0.7", fact="backlash").decision.figures
    assert (figure.quantity, figure.typical) == ("backlash", pytest.approx(0.007))
    sheet = shims(move="0.010 in", fact="backlash")
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["per_shim"])
    assert [f.typical for f in sheet.decision.figures] == pytest.approx([0.008, 0.005])
    there_and_back = shims(backlash="0.012 in", wanted="0.005 in", per_shim="0.7").decision.figures[0]
    assert there_and_back.typical == pytest.approx(0.010)
    assert shims(fact="backlash").decision.kind == "none"
    with pytest.raises(InputError):
        shims(move="0.010 in", fact="preload")


def test_what_a_shim_moves_is_measured_on_this_axle() -> None:
    sheet = shims(backlash="0.012 in", wanted="0.006 in")
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["per_shim"])
    assert [f.typical for f in sheet.decision.figures] == pytest.approx([0.006 / 0.8, 0.006 / 0.5])


@settings(max_examples=80, deadline=None)
@given(st.integers(2, 25), st.integers(2, 25), st.integers(40, 120), st.integers(150, 300), st.integers(150, 300))
def test_a_move_leaves_the_preload_alone_and_gives_the_backlash(
    found: int, wanted: int, per: int, ring: int, other: int
) -> None:
    asked = {"ring_side": f"0.{ring} in", "other_side": f"0.{other} in", "per_shim": f"{per / 100}"}
    sheet = shims(backlash=f"{found / 1000} in", wanted=f"{wanted / 1000} in", **asked)
    keeps_form(sheet, KEYS)
    if found == wanted:
        assert (sheet.decision.kind, packs(sheet)) == ("none", [])
        return
    if sheet.decision.kind == "none":
        assert sheet.questions  # a backlash that no axle has is asked about
        return
    thick, thin = packs(sheet)
    assert thick + thin == pytest.approx((ring + other) / 1000)
    assert (thick - ring / 1000) * per / 100 == pytest.approx((found - wanted) / 1000, abs=1e-9)


@pytest.mark.parametrize(
    "wrong",
    [
        {"shim": "0.031 in", "new_mark": "plus two"},
        {"shim": "0.031 in", "new_mark": "+99"},
        {"shim": "0.031 in", "new_mark": "+2", "sign": "sideways"},
        {"shim": "0.031 in", "backlash": "0.006 in"},
        {"backlash": "0.006", "wanted": "0.006 in"},
    ],
)
def test_what_cannot_be_read_is_refused(wrong: dict[str, str]) -> None:
    with pytest.raises(InputError):
        shims(**wrong)


@pytest.mark.parametrize(
    ("more", "key"),
    [({"backlash": "0.6 in"}, "backlash"), ({"wanted": "6 in"}, "wanted"), ({"per_shim": "7"}, "per_shim")],
)
def test_what_is_doubtful_is_asked(more: dict[str, str], key: str) -> None:
    sheet = shims(**{"backlash": "0.012 in", "wanted": "0.006 in", "per_shim": "0.7", **more})
    keeps_form(sheet, KEYS)
    assert (sheet.decision.kind, sheet.questions[0].key) == ("none", key)


def test_a_job_has_its_shim_log_and_its_pattern_is_drawn() -> None:
    text = '[[shims]]\nname = "x"\nshim = "0.031 in"\nold_mark = "+2"\nnew_mark = "-1"\nsign = "plus adds"\n'
    job = domains.parse_job(text)
    item = page.item(job.shims[0], job.shop, refdata())
    keeps_form(item.sheet, KEYS)
    assert packs(item.sheet) == pytest.approx([0.028])
    wrong = domains.parse_job(text.replace("+2", "two"))
    assert page.item(wrong.shims[0], wrong.shop, refdata()).sheet.questions[0].key == "old_mark"
    (drawing,) = setup("rear", "ring gear", "pattern check").drawings
    assert all(word in drawing.svg for word in ("toe", "heel", "More backlash", "Pinion in"))
    assert not setup("rear", "ring gear", "backlash").drawings
