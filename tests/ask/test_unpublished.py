"""What exists and has no figure is an answer that says who has it; it hides nothing that a table has."""

from __future__ import annotations

import contextlib
import io
import json

import pytest

from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.unpublished import named_by
from gaugeblock.cli import main
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners.part import part, part_cell
from gaugeblock.lines.heat import heat
from gaugeblock.plain.answer import answer
from gaugeblock.tables.load import refdata
from gaugeblock.warmth.item import item_cell

DATA = refdata()
PARTS, ITEMS = named_by("fasteners", "part", DATA), named_by("lines", "item", DATA)


@pytest.mark.parametrize("name", PARTS)
def test_a_part_without_a_figure_has_none_in_the_table(name: str) -> None:
    with pytest.raises(LookupMiss):
        part_cell(name, DATA)
    with pytest.raises(LookupMiss):
        part_cell(f"{name}s", DATA)


@pytest.mark.parametrize("name", ITEMS)
def test_an_item_without_a_figure_has_none_in_the_table(name: str) -> None:
    with pytest.raises(LookupMiss):
        item_cell(name, DATA)


def test_the_answer_is_none_and_says_who_has_the_figure() -> None:
    for name in PARTS:
        sheet = part(name)
        assert (sheet.decision.kind, sheet.figures) == ("none", ())
        assert DATA.words("fasteners", "maker of part")[name] in sheet.questions[0].text
    for name in ITEMS:
        sheet = heat(name)
        assert sheet.decision.kind == "none"
        assert DATA.words("lines", "maker of item")[name] in sheet.decision.do


def test_a_figure_that_somebody_names_is_set_all_the_same() -> None:
    sheet = part("seat belt bolt", maker={"torque": "40 N*m", "source": "manual", "place": "p. 3"})
    assert sheet.decision.figure is not None
    assert (sheet.decision.figure.typical, sheet.decision.figure.unit) == (40.0, "N*m")


LINES = ["seat belt bolt", "seat belt bolts torque", "hydraulic oil"]


@pytest.mark.parametrize("line", LINES)
def test_it_is_asked_in_plain_words(line: str) -> None:
    found = answer(line).found
    assert isinstance(found, Sheet)
    assert found.decision.kind == "none"


def test_a_related_thing_is_told_as_another() -> None:
    assert "the centre main bearing bolt, which is another thing" in part("main cap bolt").decision.do


def test_at_the_command_line_it_is_done() -> None:
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main(["part", "seat belt bolt", "--json"]) == 0
    assert json.loads(out.getvalue())["decision"]["kind"] == "none"
