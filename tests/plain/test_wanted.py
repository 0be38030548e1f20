"""What a line says of the answer itself: the unit it is wanted in, a word of what was read already, a bare number."""

from __future__ import annotations

import pytest

from gaugeblock.answer.table import Table
from gaugeblock.cli import main
from gaugeblock.errors import InputError
from gaugeblock.plain.answer import answer, reading_of
from gaugeblock.plain.prompt import Prompt, _completer, _next_words
from gaugeblock.tables.load import refdata

DATA = refdata()


@pytest.mark.parametrize(
    ("line", "unit"),
    [
        ("3/8-16 grade 5 dry in nm", "N*m"),
        ("3/8-16 grade 5 dry inch pounds", "lbf*in"),
        ("pinion bearing preload new bearings inch pounds", "lbf*in"),
        ("16ga wall in thousandths", "in"),
        ("3/8-16 grade 5 dry in lb ft", "lbf*ft"),
        ("3/8-16 grade 5 dry in pound feet", "lbf*ft"),
        ("m6 8.8 dry in pound inches", "lbf*in"),
        ("dot 3 wet in fahrenheit", "degF"),
    ],
)
def test_the_unit_that_an_answer_is_wanted_in(line: str, unit: str) -> None:
    got = answer(line)
    assert got.unit == unit
    assert got.read_as.endswith(f"wanted in {unit}")


def test_a_unit_behind_a_number_is_the_numbers_own() -> None:
    assert reading_of("is 300 ft lbs ok for a 1 inch 4340 axle quenched and tempered 800 f", DATA).unit == ""


def test_it_is_printed_in_that_unit(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "3/8-16", "grade", "5", "dry", "in", "nm"]) == 0
    assert "TIGHTEN   42 N*m" in capsys.readouterr().out
    assert main(["ask", "dot", "3", "wet", "in", "nm"]) == 2  # no figure of it has that dimension
    assert main(["torque", "3/8-16", "--grade", "5", "--condition", "dry", "--in", "nm"]) == 0
    assert "TIGHTEN   42 N*m" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("line", "same"),
    [
        ("banjo bolt torque brake hose 10mm", "brake hose banjo bolt 10mm torque"),
        ("m6 bolts stainless a2-70 dry", "m6 bolts a2-70 dry"),
        ("7/16 fine bolts grade 8s oiled", "7/16 fine bolts grade 8 oiled"),
    ],
)
def test_a_word_of_what_was_read_says_no_more(line: str, same: str) -> None:
    assert reading_of(line, DATA).values == reading_of(same, DATA).values


@pytest.mark.parametrize("line", ["3/8-16 grade 8 dry not dry", "14 mm spark plug no gasket aluminium"])
def test_what_turns_a_word_of_it_is_still_refused(line: str) -> None:
    with pytest.raises(InputError, match="not understood"):
        answer(line)


@pytest.mark.parametrize(
    ("line", "units"),
    [("gearing 3.55 28 inch tires at 60", ("60 mph", "60 km/h")), ("dot 4 wet at 250", ("250 degF", "250 degC"))],
)
def test_a_number_with_two_readings_is_answered_for_both(line: str, units: tuple[str, ...]) -> None:
    table = answer(line).found
    assert isinstance(table, Table)
    assert [line.key[table.open[-1]] for line in table.lines] == list(units)


@pytest.mark.parametrize("line", ["again", "in nm", "please help me", "so what now"])
def test_small_talk_alone_has_no_answer(line: str) -> None:
    with pytest.raises(InputError):
        answer(line)


# --- the line to ask in


def said(capsys: pytest.CaptureFixture[str], prompt: Prompt, line: str) -> str:
    assert prompt.take(line)
    return capsys.readouterr().out


def test_the_line_to_ask_in_asks_back_for_what_was_left_out(capsys: pytest.CaptureFixture[str]) -> None:
    prompt = Prompt(run=main)
    for line in ("again", "compare", "to packet"):
        assert "Nothing was asked yet." in said(capsys, prompt, line)
    said(capsys, prompt, "3/8-16 grade 5 dry")
    assert "condition" in said(capsys, prompt, "compare")
    assert "again in N*m" in said(capsys, prompt, "again")
    assert "to packet build.toml" in said(capsys, prompt, "to packet")
    assert "42 N*m" in said(capsys, prompt, "in nm")
    assert "44 lbf*ft" in said(capsys, prompt, "compare grade=5, 8")
    assert "torque 7.2" in said(capsys, prompt, "find spark plug")
    assert "26 N*m" in said(capsys, prompt, "torque M8 --grade 8.8 --condition dry")


def test_what_may_stand_next(capsys: pytest.CaptureFixture[str]) -> None:
    prompt = Prompt()
    said(capsys, prompt, "3/8-16 grade 5 dry")
    assert "condition" in _next_words(prompt, "compare c")
    assert set(_next_words(prompt, "again in ")) == {"N*m", "lbf*ft", "lbf*in", "kgf*m", "kgf*cm"}
    words = _next_words(prompt, "an")
    assert {"anti-seize", "compare", "again in"} <= set(words)
    assert not [w for w in words if w.startswith("grade8")]
    assert callable(_completer(prompt))
