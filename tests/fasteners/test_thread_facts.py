"""Pitch, area and diameter of a thread, the strength of a grade, and the drill for a tap that no list has."""

from __future__ import annotations

import pytest

from gaugeblock import grade, hole, thread
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import refdata

DATA = refdata()
LISTED = [r for r in DATA.table("fasteners/holes").rows if r["fit"] == "tap drill" and not r.standing]


@pytest.mark.parametrize(
    ("typed", "fact", "text"),
    [
        ("M10", "pitch", "1.5"),  # ISO 262, coarse
        ("M12x1.75", "stress area", "84.3"),  # ISO 898-1
        ("3/8-16", "stress area", "0.0775"),  # Shigley 9th edition, Table 8-2
        ("3/8-24", "pitch", "24"),
        ("1/2-13", "root area", "0.1257"),  # the same table
        ("M8", "diameter", "8"),
    ],
)
def test_a_thread_has_what_its_standard_prints(typed: str, fact: str, text: str) -> None:
    figure = thread(typed, fact=fact).decision.figure
    assert figure is not None
    assert figure.text == text


def test_a_bare_size_is_coarse_and_fine() -> None:
    with pytest.raises(Ambiguous):
        thread("3/8")


def test_what_is_no_fact_or_no_thread_is_refused() -> None:
    with pytest.raises(InputError):
        thread("M8", fact="colour")
    with pytest.raises(LookupMiss):
        thread("M13")


@pytest.mark.parametrize(
    ("typed", "size", "text"),
    [
        ("grade 8", None, "150"),  # SAE J429: 150 ksi
        ("SAE J429 5", None, "120"),  # to 1 in
        ("SAE J429 5", "1 1/4 in", "105"),  # over 1 to 1 1/2 in
        ("10.9", None, "1040"),  # ISO 898-1, minimum
    ],
)
def test_a_grade_stands_what_its_standard_guarantees(typed: str, size: str | None, text: str) -> None:
    figure = grade(typed, size=size).decision.figure
    assert figure is not None
    assert figure.text == text


# Drill charts print for 3/8-24 letter Q, 0.332 in; for 5/16-24 letter I, 0.272 in; for M10x1.25 8.8 mm; common
# practice.
@pytest.mark.parametrize(
    ("typed", "chart"),
    [("3/8-24", 0.332), ("5/16-24", 0.272), ("7/16-20", 0.3906), ("M10x1.25", 8.8), ("M12x1.5", 10.5)],
)
def test_a_calculated_tap_drill_is_near_that_of_the_charts(typed: str, chart: float) -> None:
    figure = hole(typed, fit="tap drill").decision.figure
    assert figure is not None
    assert figure.basis == "derived"
    assert figure.typical == pytest.approx(chart, rel=0.01)


@pytest.mark.parametrize("row", LISTED, ids=lambda r: r["thread"])
def test_a_listed_drill_is_told_as_it_is_listed(row) -> None:  # type: ignore[no-untyped-def]
    figure = hole(row["thread"], fit="tap drill").decision.figure
    assert figure is not None
    assert figure.basis == "published"


def test_a_bolt_passes_by_its_diameter_whatever_its_pitch() -> None:
    coarse, fine = (hole(t, fit="close").decision.figure for t in ("3/8-16", "3/8-24"))
    assert coarse is not None
    assert fine is not None
    assert coarse.typical == fine.typical


def test_a_bolt_that_no_list_has_gets_no_hole() -> None:
    assert hole("9/16-12", fit="close").decision.kind == "none"


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("12", ["1/2-13 UNC", "#12-24 UNC", "M12x1.75"]),
        ("38", ["3/8-16 UNC"]),
        ("516", ["5/16-18 UNC"]),
        ("8", ["#8-32 UNC", "M8x1.25"]),
        ("10", ["#10-24 UNC", "M10x1.5"]),
    ],
)
def test_a_whole_number_brings_up_what_it_may_be_short_for(typed: str, near: list[str]) -> None:
    with pytest.raises(LookupMiss) as caught:
        keys.thread(typed, DATA)
    assert list(caught.value.nearest) == near
