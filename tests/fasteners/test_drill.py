"""Drills by number and letter, and those next to a hole: against the pairs of thread and drill that handbooks print."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import ask, drill, hole, refdata
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners.drills import nearest
from gaugeblock.units import to_base

DATA = refdata()
# Tap drills for three quarters of the thread as every handbook of the trade pairs them (Machinery's Handbook, tables of
# tap drills; UPENN, common tap and clearance drill sizes).
PAIRED = {
    "#8-32": "number 29",
    "#10-24": "number 25",
    "#10-32": "number 21",
    "1/4-20": "number 7",
    "1/4-28": "number 3",
    "5/16-18": "letter F",
    "5/16-24": "letter I",
    "3/8-24": "letter Q",
    "3/8-16": "5/16 in",
    "1/2-13": "27/64 in",
}


@pytest.mark.parametrize(("thread", "name"), PAIRED.items())
def test_the_nearest_drill_of_a_tap_is_the_one_that_handbooks_pair_with_it(thread: str, name: str) -> None:
    do = hole(thread, fit="tap drill").decision.do
    assert do.startswith(f"Drills next to it: {name} ("), do


@pytest.mark.parametrize(
    ("thread", "mm"), [("M6", "5 mm"), ("M8", "6.8 mm"), ("M10", "8.5 mm"), ("M10x1.25", "8.8 mm")]
)
def test_a_metric_tap_has_its_drill_in_millimetres(thread: str, mm: str) -> None:
    assert mm in hole(thread, fit="tap drill").decision.do


def test_numbers_fall_and_letters_rise_without_a_gap() -> None:
    rows = DATA.table("fasteners/drills").rows
    cells = [row["drill"] for row in rows]
    assert cells == [f"#{n}" for n in range(80, 0, -1)] + [chr(n) for n in range(ord("A"), ord("Z") + 1)]
    sizes = [float(row["value"]) for row in rows]
    assert all(0 < b - a < 0.016 for a, b in pairwise(sizes))


@given(st.integers(40, 1000))
def test_no_drill_is_nearer_than_those_that_are_named(hundredths: int) -> None:
    mm = hundredths / 100
    told = nearest(mm / 1000, DATA)
    low, *high = [float(n) for n in re.findall(r"([0-9.]+)(?: mm| or)", told.rpartition(";")[2])]
    assert low <= mm + 1e-9 <= (high or [low])[-1] + 1e-6
    found = re.search(r"(number [0-9]+|letter [A-Z]) \(([0-9.]+) in\)", told)
    sizes = [float(row["value"]) * 25.4 for row in DATA.table("fasteners/drills").rows]
    if found is None:
        assert mm < min(sizes) or mm > max(sizes)
    else:
        assert abs(float(found[2]) * 25.4 - mm) <= min(abs(size - mm) for size in sizes) + 1e-6


@pytest.mark.parametrize(
    ("line", "inches"),
    [
        ("letter q drill size", 0.332),
        ("number 7 drill in mm", 0.201),
        ("what size is a #29 drill", 0.136),
        ("drill no 21", 0.159),
        ("number twenty nine drill", 0.136),
        ("f drill bit in inches", 0.257),
    ],
)
def test_a_drill_is_asked_for_by_its_name(line: str, inches: float) -> None:
    found = ask(line)
    assert isinstance(found, Sheet)
    figure = found.decision.figure
    assert figure.quantity == "drill_diameter"
    assert to_base(figure.typical, figure.unit) == pytest.approx(inches * 0.0254)


@pytest.mark.parametrize("line", ["#10-32 tap drill", "tap drill #10-32", "10-32 tap drill", "#8-32 tap drill"])
def test_a_thread_by_its_number_is_no_drill_wherever_it_stands(line: str) -> None:
    found = ask(line)
    assert isinstance(found, Sheet)
    assert found.decision.figure.quantity == "hole_diameter"


def test_what_is_no_drill_and_what_is_too_large() -> None:
    for name in ("#81", "0", "AA", "7/16"):
        with pytest.raises(LookupMiss):
            drill(name)
    with pytest.raises(InputError):
        drill()
    with pytest.raises(InputError):
        drill("Q", size="8 mm")
    assert drill(size="8.78 mm").decision.kind == USE
    assert drill(size="30 mm").decision.kind == NONE
