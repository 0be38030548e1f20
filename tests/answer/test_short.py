"""The short answer: every number whole with its trust, no piece of a sentence, what can hurt before what is nice."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from gaugeblock import fuse
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.short import short
from gaugeblock.answer.text import render
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque

if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet

ASKED = {
    "wheel nuts of any size": lambda: part("wheel nut"),
    "into aluminium": lambda: torque("7/16-14", grade="8", condition="dry", into="aluminium"),
    "a great drag": lambda: torque("3/8-16", grade="5", condition="dry", prevailing="150 lbf*ft"),
    "a maker's figure in another unit": lambda: torque("3/8-16", grade="8", condition="dry", maker="75 lbf*in"),
    "a plain bolt": lambda: torque("3/8-16", grade="5", condition="dry"),
}


@pytest.fixture(params=ASKED)
def sheet(request: pytest.FixtureRequest) -> Sheet:
    return ASKED[request.param]()


@pytest.mark.parametrize("columns", [40, 50, 60, 80, 100])
def test_every_number_stands_whole_beside_its_trust(sheet: Sheet, columns: int) -> None:
    text = short(sheet, columns=columns)
    flat = " ".join(text.split())
    assert sheet.decision.candidates
    for candidate in sheet.decision.candidates:
        assert number_only(candidate.figure, sheet.data) in flat
        assert candidate.figure.trust in flat
    assert " or PUBLISHED" not in flat
    assert [line for line in text.splitlines() if line != line.rstrip()] == []


@pytest.mark.parametrize("columns", [40, 50, 60, 80, 100])
def test_a_caution_or_a_question_stands_whole_or_not_at_all(sheet: Sheet, columns: int) -> None:
    flat = " ".join(short(sheet, columns=columns).split())
    told = sum(caution.text in flat for caution in sheet.cautions)
    asked = sum(f"{q.kind.capitalize()}: {q.text}" in flat for q in sheet.questions)
    assert flat.count("CARE ") == told
    assert sum(flat.count(f" {kind}: ") for kind in {q.kind.capitalize() for q in sheet.questions}) == asked


def test_cautions_go_before_further_figures() -> None:
    text = short(ASKED["into aluminium"](), columns=80)
    assert "CARE " in text
    assert "clamp load" not in text
    assert text.count("\n") + 1 <= 15


def test_sizes_that_are_not_shown_are_said() -> None:
    assert "Not all of them are shown." in " ".join(short(ASKED["wheel nuts of any size"](), columns=80).split())


@pytest.mark.parametrize("more", [{}, {"wrench": ["10 to 80 lbf*ft by 1"]}, {"adapter": "2 in on 12 in"}])
def test_no_other_torque_of_the_bolt_stands_under_the_number(more: dict[str, object]) -> None:
    """A reader at arm's length takes any torque for the torque."""
    bolt = torque(
        "3/8-16",
        grade="5",
        condition="dry",
        into="aluminium",
        insert="no",
        engagement="1 in",
        **more,  # type: ignore[arg-type]
    )
    assert bolt.decision.kind == "use"
    under = short(bolt, columns=80).splitlines()[3:]
    assert [line for line in under if "tightening torque" in line and ("lbf*" in line or "N*m" in line)] == []


def test_what_the_tables_have_is_only_said_of_the_quantity_that_was_stated() -> None:
    own = short(torque("3/8-16", grade="SAE J429 5", condition="oiled", nut_factor="0.16"))
    assert "nut factor 0.16 GIVEN; the tables have 0.18" in own
    other = short(fuse("10 A", wire="10 AWG"))
    assert "circuit current 10 A" in other
    assert "the tables have" not in other


def test_a_line_that_just_fits_is_one_line() -> None:
    sheet = torque("3/8-16", grade="5", condition="dry")
    wide = next(line for line in short(sheet, columns=200).splitlines() if "TIGHTEN" in line)
    assert wide in short(sheet, columns=len(wide)).splitlines()
    parted = short(sheet, columns=len(wide) - 1).splitlines()
    assert wide not in parted
    assert any(line.strip() == sheet.decision.candidates[0].figure.trust for line in parted)


@pytest.mark.parametrize("columns", [40, 60, 80])
def test_the_foot_of_a_whole_answer_stands_under_the_answer(columns: int) -> None:
    """The release and who governs: two blanks in, and more where it goes on."""
    lines = render(torque("M8", grade="8.8", condition="dry"), None, columns).splitlines()
    at = next(n for n, line in enumerate(lines) if "data release" in line)
    assert lines[at].startswith("  data release")
    assert all(line.startswith("    ") for line in lines[at + 1 :])
