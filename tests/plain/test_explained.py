"""What is told of a line that hangs on no table: found by its cues, and every example that it gives is answered."""

from __future__ import annotations

import re
from importlib import import_module

import pytest

from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.finding import find, rules
from gaugeblock.plain.answer import ask
from gaugeblock.plain.by_rule import _EXPLAINED as PIECES
from gaugeblock.plain.by_rule import _MODULES, _THINGS
from gaugeblock.plain.explained.reading import _EXPLAINED, CUES, explained
from gaugeblock.plain.subjects.axles import _LIES
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

DATA = refdata()
_OF_EXPLAINED = tuple(piece.replace("_", " ") for piece in PIECES.split())
EXAMPLES = sorted({line for *_, told in _EXPLAINED for line in re.findall("`gaugeblock ask ([^`]+)`", told)})
SUBJECTS = {entry.rule["subject"] for entry in rules(DATA) if entry.rule is not None}


def test_every_cue_has_a_piece_that_lets_the_line_in() -> None:
    assert [cue for cue in CUES if not any(piece in cue for piece in _OF_EXPLAINED)] == []
    assert [piece for piece in _OF_EXPLAINED if not any(piece in cue for cue in CUES)] == []


def test_examples_are_seen() -> None:
    assert len(EXAMPLES) > 12


@pytest.mark.parametrize("line", EXAMPLES)
def test_what_a_reader_is_told_to_ask_is_answered(line: str) -> None:
    assert ask(line, data=DATA) is not None


@pytest.mark.parametrize(
    "command", sorted({c for *_, told in _EXPLAINED for c in re.findall("`gaugeblock find ([^`]+)`", told)})
)
def test_what_a_reader_is_told_to_find_is_there(command: str) -> None:
    assert find(command, data=DATA).groups


@pytest.mark.parametrize("module", [name for name, _ in _MODULES])
def test_every_rule_of_a_subject_is_on_record(module: str) -> None:
    subjects = import_module(f"gaugeblock.plain.subjects.{module}")._SUBJECTS
    assert {rule for subject in subjects for rule in subject.rules} <= SUBJECTS


def test_every_subject_that_is_explained_has_its_rules() -> None:
    assert {subject for *_, subject, _ in _EXPLAINED} <= SUBJECTS


def test_every_rule_of_where_a_pattern_lies_is_on_record() -> None:
    assert {rule for _, lies in _LIES for rule in lies} <= SUBJECTS


@pytest.mark.parametrize(
    "line",
    [
        "twist of a 32 mm shaft 900 mm long under 1000 Nm",
        "4340 40 hrc 2 inch shaft 3000 lb ft",
        "400 lb-ft engine, 3.0 first, 4.10 diff, open",
        "backlash 0.014 want 0.008 what shim",
        "longest 3 inch .083 steel driveshaft at 5000 rpm",
        "28 inch tyres 3.73 at 60 mph",
        "ring gear bolt torque",
    ],
)
def test_a_line_that_an_answer_works_out_is_not_explained(line: str) -> None:
    assert explained(words_of(line), DATA) is None
    try:
        found = ask(line, data=DATA)
    except GaugeblockError:
        return
    assert not (isinstance(found, Sheet) and found.title in {name for name, *_ in _EXPLAINED})


def test_the_guards_are_plain_pieces() -> None:
    assert all(pieces == pieces.casefold() for pieces in (PIECES, _THINGS, *(pieces for _, pieces in _MODULES)))
