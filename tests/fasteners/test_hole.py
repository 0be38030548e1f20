"""Holes to drill: for a tap, and for a bolt to pass."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock import hole
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.table import Table
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.tables.load import refdata

ROWS = [row for row in refdata().table("fasteners/holes").rows if not row["standing"]]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: " ".join(row.key))
def test_every_hole_on_record_is_drilled_as_it_is_printed(row) -> None:
    decision = hole(row["thread"], fit=row["fit"]).decision
    assert (decision.kind, decision.verb) == (USE, "DRILL")
    assert decision.figure.quantity == "hole_diameter"
    same = [r for r in ROWS if r.key == row.key]
    assert decision.figure.text in [r["value"] for r in same]


@pytest.mark.parametrize("thread", sorted({row["thread"] for row in ROWS}))
def test_a_bolt_passes_a_larger_hole_than_its_tap_is_drilled_to(thread: str) -> None:
    """Each clearance hole is over the thread's own diameter, the tap's drill under it."""
    from gaugeblock.fasteners.hole import fits_of
    from gaugeblock.fasteners.keys import thread as read
    from gaugeblock.units import to_base

    data = refdata()
    major = read(thread, data).diameter_m
    sizes = {fit: hole(thread, fit=fit).decision.figure for fit in fits_of(thread, data)}
    for fit, figure in sizes.items():
        size = to_base(figure.typical, figure.unit)
        assert (size < major) if fit == "tap drill" else (size > major)


def test_a_hole_that_was_not_named_is_open() -> None:
    with pytest.raises(Ambiguous) as refused:
        hole("M8")
    assert isinstance(refused.value.table, Table)
    assert [line.key["fit"] for line in refused.value.table.lines] == list(refused.value.nearest)


def test_clearance_alone_leaves_out_the_tap() -> None:
    with pytest.raises(Ambiguous) as refused:
        hole("#10-24", fit="clearance")
    assert list(refused.value.nearest) == ["clearance, close", "clearance, free"]


def test_a_thread_without_a_hole_on_record_has_none() -> None:
    assert hole("9/16-18", fit="close").decision.kind == NONE


def test_what_is_no_fit_is_refused() -> None:
    with pytest.raises(LookupMiss):
        hole("M8", fit="sideways")


@pytest.mark.parametrize(
    ("question", "number"),
    [
        ("tap drill for 3/8-16", "0.313"),
        ("what drill for m10 tap", "8.5"),
        ("clearance hole m8", "9.0"),
        ("close fit hole for a 5/16-18 bolt", "0.323"),
        ("m8 tapped hole, what drill bit", "6.8"),
    ],
)
def test_it_is_asked_as_people_say_it(question: str, number: str) -> None:
    assert gaugeblock.ask(question).decision.figure.text == number


@pytest.mark.parametrize(
    ("thread", "share", "drill"),
    [
        ("M6", "60 %", 5.22),  # 6 - 1.299 x 1 x 0.6
        ("3/8-16", "50%", 0.334),  # 0.375 - 1.299 / 16 x 0.5
        ("1/4-20", "70 percent", 0.2045),
    ],
)
def test_a_share_of_the_thread_has_its_own_drill(thread: str, share: str, drill: float) -> None:
    """The 60 degree thread has 0.6495 P of height on each side."""
    figure = hole(thread, fit="tap drill", share=share).decision.figure
    assert figure is not None
    assert figure.value == pytest.approx(drill, abs=0.001)


@pytest.mark.parametrize(("fit", "share"), [("close", "60 %"), ("tap drill", "30 %"), ("tap drill", "much")])
def test_a_share_of_no_tap_is_refused(fit: str, share: str) -> None:
    with pytest.raises(InputError):
        hole("M6", fit=fit, share=share)


def test_a_tap_drill_of_a_bare_size_is_told_of_coarse_and_fine() -> None:
    table = gaugeblock.ask("5/16 tap drill")
    assert isinstance(table, Table)
    assert [line.key["thread"] for line in table.lines] == ["5/16-18 UNC", "5/16-24 UNF"]
