"""What changed between two releases: checked against what the change log says of them."""

from __future__ import annotations

import json

import pytest

from gaugeblock.cli import main
from gaugeblock.differences import ADDED, CHANGED, CLOSED, between
from gaugeblock.tables.load import refdata


def test_a_release_differs_from_itself_in_nothing() -> None:
    assert between(refdata("0.6.0"), refdata("0.6.0")) == []


def test_the_one_correction_of_a_release_is_found() -> None:
    """CHANGELOG, 0.6.0: a competition line's 280 bar is a burst pressure and no longer a rating."""
    found = between(refdata("0.5.0"), refdata("0.6.0"))
    kinds = [(CLOSED, "pressure_rating_minimum"), (ADDED, "burst_pressure_minimum")]
    assert [(d.kind, d.quantity) for d in found] == kinds
    before, after = found[0].before, found[1].after
    assert before is not None
    assert after is not None
    assert (before.text, before.unit, after.text, after.unit) == ("280", "bar", "280", "bar")


def test_a_change_log_entry_is_a_difference_and_unchanged_rows_are_none() -> None:
    """CHANGELOG, 0.7.0: DOT 4, wet: a letter's 311 degF gives way to the standard's 155 degC."""
    found = {(d.label, d.quantity): d for d in between(refdata("0.6.0"), refdata("0.7.0"))}
    wet = found["DOT 4 | wet", "boiling_point_minimum"]
    assert wet.kind == CHANGED
    assert wet.before is not None
    assert wet.after is not None
    assert (wet.before.text, wet.before.unit, wet.after.text, wet.after.unit) == ("311", "degF", "155", "degC")
    assert wet.why == "the row of NHTSA-12089 was taken back; FMVSS116 is the only one"
    assert ("3/8-16 UNC | SAE J429 | 5 | dry", "tightening_torque") not in found


def test_why_a_figure_changed_is_told_from_the_rows() -> None:
    """CHANGELOG, 0.9.0: a minimum that stood as a torque to set; ends rounded outward; 0.7.0: marks that were read."""
    found = {(d.label, d.quantity): d for d in between(refdata("0.8.0"), refdata("0.9.0"))}
    least = found["M24x3 | ISO 898-1 | 8.8 | dry", "tightening_torque"]
    assert least.why.startswith("the row of AGRI17 was taken back; it stands as tightening torque minimum now; ")
    bleeder = found["brake bleeder screw | not stated | vehicle", "tightening_torque"]
    assert bleeder.why == "the figure of common practice was put right"
    earlier = between(refdata("0.6.0"), refdata("0.7.0"))
    assert any(d.why == "quoted then, read since" and d.before and d.after for d in earlier)
    assert all(d.why for d in earlier if d.kind in (CHANGED, CLOSED))


def test_the_command(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "0.5.0", "0.6.0"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("From data release 0.5.0 to 0.6.0: 0 changed, 1 taken back, 1 added.")
    assert [line for line in out.splitlines() if len(line) > 80] == []
    assert main(["compare", "0.5.0", "0.6.0", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["differences"]) == 2


@pytest.mark.parametrize("argv", [["0.6.0", "0.5.0"], ["0.6.0", "0.6.0"], ["0.6.0", "77.0.0"]])
def test_what_cannot_be_compared_is_refused(capsys: pytest.CaptureFixture[str], argv: list[str]) -> None:
    assert main(["compare", *argv]) == 2
    assert capsys.readouterr().out == ""
