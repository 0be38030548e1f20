"""Questions of what no table is about: who has it, and no number."""

from __future__ import annotations

import re

import pytest

import gaugeblock
from gaugeblock.answer.sheet import Sheet
from gaugeblock.found import Found
from gaugeblock.plain.answer import answer

OUTSIDE = [
    ("mig amps for 3 mm mild plate", "welder"),
    ("tig filler for cast iron bracket", "filler"),
    ("preheat 20 mm plate", "preheat"),
    ("tyre pressure 205/70R15", "tyre"),
    ("what psi for 195/65R15 tyres", "tyre"),
    ("toe in on a live axle", "alignment"),
    ("tappet gap", "valve"),
    ("ring gap 4 inch bore", "engine"),
    ("head gasket crush", "engine"),
    ("compression ratio for 95 octane", "tuning"),
    ("what oil in the diff", "oil"),
    ("minimum disc thickness", "brake"),
    ("spring rate of a coil with 12 mm wire", "springs"),
    ("H7 limits on a 25 mm hole", "fit"),
    ("how much interference for a 62 mm bearing", "fit"),
]


@pytest.mark.parametrize(("line", "word"), OUTSIDE)
def test_who_has_it_is_told_and_no_number(line: str, word: str) -> None:
    sheet = gaugeblock.ask(line)
    assert isinstance(sheet, Sheet)
    assert sheet.decision.kind == "none"
    assert sheet.figures == ()
    assert word in sheet.title
    assert not re.search("[0-9]", sheet.decision.do)


@pytest.mark.parametrize("line", ["what filler to weld 304 to mild steel", "filler for a mild flange to 304 pipe"])
def test_where_a_rule_says_it_the_rule_is_told(line: str) -> None:
    found = gaugeblock.ask(line)
    assert isinstance(found, Found)
    assert "309L" in found.text()


@pytest.mark.parametrize(
    "line",
    [
        "3/8-16 grade 8 dry, after welding the bracket",
        "what fuse for a 30 amp load and the welder's cable",
        "wheel bearing grease",
        "spark plug gap",
        "valve cover bolt torque",
    ],
)
def test_a_thing_of_the_tables_is_not_taken_for_one(line: str) -> None:
    from gaugeblock.plain.answer import answer

    try:
        got = answer(line)
    except gaugeblock.GaugeblockError:
        return
    assert "a question of" not in got.read_as


@pytest.mark.parametrize(
    ("line", "lost"),
    [
        ("push on hydraulic acorn blue hose", ("acorn", "blue")),
        ("4340 acorn in place of 4140 shafts", ("acorn",)),
        ("caliper piston acorn seals hot", ("acorn",)),
    ],
)
def test_what_stands_between_the_words_of_a_subject_is_not_swallowed(line: str, lost: tuple[str, ...]) -> None:
    """A subject is known by its own words; a word that only stands between two of them is said to be left out."""
    said = answer(line).read_as
    assert said.startswith("a question of")
    assert all(word in said for word in lost)
