"""Written rules and the cautions of a careful shop."""

from __future__ import annotations

import pytest

from gaugeblock.lines.route import route
from lines.line_sheets import check_of, says


def test_most_written_rules_give_no_number_and_the_sheet_says_so():
    sheet = route("brake", gap="1 in")
    assert says(sheet, "Few rules give a distance")
    assert says(sheet, "Australia NSW")
    assert not any(c.name == "written clearance" for c in sheet.checks)


def test_the_rules_of_the_place_that_was_named_are_told_alone():
    told = [c for c in route("brake", jurisdiction="NSW").cautions if "No distance is given" in c.text]
    assert told
    assert all(c.text.startswith("Australia NSW:") for c in told)
    others = [c for c in route("brake").cautions if "No distance is given" in c.text]
    assert len(others) > len(told)
    assert {c.severity for c in others} == {"note"}


@pytest.mark.parametrize(("gap", "result"), [("1 in", "not ok"), ("1.5 in", "ok"), ("38.1 mm", "ok")])
def test_a_written_clearance_is_a_reject_limit_and_no_target(gap, result):
    check = check_of(route("brake", gap=gap, jurisdiction="Maryland"), "written clearance")
    assert check.result == result
    assert "not a target" in check.reason


def test_a_jurisdiction_without_a_number_cannot_tell():
    assert check_of(route("brake", gap="1 in", jurisdiction="NSW"), "written clearance").result == "cannot tell"


def test_cautions_of_brake_and_fuel_work():
    assert says(route("brake"), "by another person")
    assert says(route("fuel feed"), "no ignition source")
    assert says(route("brake"), "over half carried brake fluid with three per cent")
