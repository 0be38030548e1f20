"""Sources that disagree on a torque are told, with their ends; those that nearly agree are not."""

from __future__ import annotations

import pytest

from gaugeblock import part, steel
from gaugeblock.fasteners.keys import grade
from gaugeblock.tables.load import refdata


@pytest.mark.parametrize(
    ("name", "service", "ends"),
    [
        ("brake bleeder screw", "one vehicle", "8 to 9.8 N*m"),
        ("brake hose banjo bolt", "one vehicle", "27 to 54 N*m"),
        ("ball joint to control arm locknut, upper", "military vehicle", "21 to 28 lbf*ft"),
    ],
)
def test_two_manuals_that_disagree_are_told(name: str, service: str, ends: str) -> None:
    assert any(c.text == f"Sources disagree: {ends}." for c in part(name, service=service).cautions)


def test_strengths_within_two_per_cent_are_no_disagreement() -> None:
    """1018 cold drawn: 370 and 372 MPa."""
    sheet = steel("1018", treatment="cold drawn")
    assert sheet.figures[0].others or "2 sources" in str(sheet.decision)
    assert not any("disagree" in c.text or "differ" in c.text for c in sheet.cautions)


def test_strengths_further_apart_are_one() -> None:
    told = [
        caution.text
        for name in dict.fromkeys(row["steel"] for row in refdata().table("driveline/steels").rows)
        for treatment in ("hot rolled", "cold drawn")
        if (sheet := _or_none(name, treatment)) is not None
        for caution in sheet.cautions
        if "disagree" in caution.text or "Other rows" in caution.text
    ]
    assert told
    for text in told:
        low, high = text.rpartition(": ")[2].split()[0], text.rpartition(" to ")[2].split()[0]
        assert float(high) / float(low) > 1.015, text


def _or_none(name, treatment):
    from gaugeblock.errors import GaugeblockError

    try:
        return steel(name, treatment=treatment)
    except GaugeblockError:
        return None


def test_a_list_of_grades_that_a_table_prints_is_found_by_its_name() -> None:
    assert grade("SAE J429 1 or 2", refdata()) == ("SAE J429", "1 or 2")
