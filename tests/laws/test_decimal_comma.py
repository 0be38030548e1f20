"""A decimal comma in a list is never read as two items: every option that takes a list asks which was meant."""

from __future__ import annotations

import shlex
from collections.abc import Callable
from typing import Any

import pytest

import gaugeblock
from gaugeblock.errors import InputError
from gaugeblock.job import form

from .test_every_option import said

RUN = {"length": "100 in", "od": "2 in", "wall": ".065 in", "material": "mild steel"}
AXLE = {"wheel_load": "1000 lb", "grip": "0.9", "radius": "13 in"}
PROP = {"od": "3 in", "wall": ".083 in", "length": "48 in"}
BENT = ("3 mm", "3 mm")
# Every option that takes a list: the answer with it.
LISTS: dict[str, Callable[[str], Any]] = {
    "sheet_bend legs": lambda x: gaugeblock.sheet_bend(*BENT, legs=f"{x} cm, 3 cm"),
    "arc legs": lambda x: gaugeblock.arc("4 in", "90 deg", legs=f"{x} in, 9 in"),
    "arc corner": lambda x: gaugeblock.arc("4 in", "90 deg", corner=f"{x} in, 19 in"),
    "gearing ratios": lambda x: gaugeblock.gearing(f"{x}, 3.55", tyre="28 in"),
    "gearing tyre": lambda x: gaugeblock.gearing("3.55", tyre=f"{x} in, 28 in"),
    "gearing gears": lambda x: gaugeblock.gearing("3.55", tyre="28 in", gears=x),
    "joint shafts_side": lambda x: gaugeblock.joint(shafts_side=f"{x} deg, 3 deg, 5 deg"),
    "joint shafts_top": lambda x: gaugeblock.joint(shafts_side="1 deg, 2 deg, 1 deg", shafts_top=f"{x} deg, 3 deg"),
    "shaft gears": lambda x: gaugeblock.shaft(**PROP, material="steel", engine_speed="5000 rpm", gears=x),
    "shaft shafts_side": lambda x: gaugeblock.shaft(**PROP, material="steel", shafts_side=f"{x} deg, 3 deg"),
    "axle parts": lambda x: gaugeblock.axle("4340", **AXLE, parts=f"{x} in x 4 in, 1-1/4 in x 22 in"),
    "exhaust_run hangers": lambda x: gaugeblock.exhaust_run(**RUN, hot="500 degC", hangers=f"{x} in, 60 in"),
    "exhaust_run masses": lambda x: gaugeblock.exhaust_run(**RUN, hot="500 degC", masses=f"{x} lb at 80 in"),
    "shape": lambda x: form.shape("offset", f"rise {x} in, angle 45 deg"),
    "trial bend": lambda x: form.trial_bend(f"{x} deg set, 45 deg got"),
    "compared": lambda x: gaugeblock.compared(gaugeblock.section, f"wall={x} mm, 3 mm", od="40 mm"),
    "ask legs": lambda x: gaugeblock.ask(f"3 mm sheet 3 mm radius legs {x} cm and 3 cm"),
    "ask gear": lambda x: gaugeblock.ask(f"{x} gear 28 in tyre"),
}


@pytest.mark.parametrize("name", LISTS)
@pytest.mark.parametrize("number", ["1,5", "3,06", "0,5", "12,75"])
def test_a_decimal_comma_is_asked_about(name: str, number: str) -> None:
    whole, _, part = number.partition(",")
    with pytest.raises(InputError, match="decimal comma") as refused:
        LISTS[name](number)
    assert f"{whole}.{part}" in refused.value.do
    assert ', or "' in refused.value.do


@pytest.mark.parametrize("name", ["gearing ratios", "gearing gears", "shaft gears"])
@pytest.mark.parametrize("number", ["06", "063", "00"])
def test_a_ratio_with_a_zero_before_it_is_asked_about(name: str, number: str) -> None:
    with pytest.raises(InputError, match="begins with a zero"):
        LISTS[name](f"3, {number}")


@pytest.mark.parametrize(
    "line",
    [
        'sheetbend --thickness "3 mm" --radius "3 mm" --legs "1,5 cm, 3 cm"',
        'gearing 3,55 --tyre "28 in"',
        'gearing 3.55 --tyre "28 in" --gears 3,06',
        'arc --radius "4 in" --angle "90 deg" --legs "1,5 in, 9 in"',
        'section --od "40 mm" --wall "2 mm" --compare "wall=1,5 mm, 2 mm"',
        "ask 3 mm sheet 3 mm radius legs 1,5 cm and 3 cm",
    ],
)
def test_so_does_the_command_line(line: str) -> None:

    code, text = said(shlex.split(line))
    assert (code, "decimal comma" in " ".join(text.split())) == (2, True), text


@pytest.mark.parametrize("ratios", ["3.55, 41/10", "3.55,41/10", "3.55,4.10", "3.55, 4.10"])
def test_a_list_as_the_help_writes_it_stands(ratios: str) -> None:
    sheet = gaugeblock.gearing(ratios, tyre="28 in")
    assert [round(f.typical, 2) for f in sheet.figures if f.quantity == "axle_ratio"] == [3.55, 4.1]


def test_legs_without_a_blank_behind_the_comma_stand() -> None:
    sheet = gaugeblock.sheet_bend(*BENT, legs="50 mm,30 mm")
    assert sheet.decision == gaugeblock.sheet_bend(*BENT, legs="50 mm, 30 mm").decision


def test_a_mark_of_thousands_in_a_sentence_stands() -> None:
    table = gaugeblock.ask("3.55 gears 28 in tyre 1,500 rpm")
    assert table.title == gaugeblock.ask("3.55 gears 28 in tyre 1500 rpm").title
