"""A saying is looked for where its cue stands: every line that its pattern is for has one of its cues."""

from __future__ import annotations

import random
import re
from re import _constants as codes
from re import _parser as parser
from typing import Any

import pytest

from gaugeblock.plain.sayings import every
from gaugeblock.plain.seldom import FIRST, LAST, sayings_of

CUES: dict[str, list[str]] = {}
for cue, pattern, _ in every():
    CUES.setdefault(pattern, []).append(cue)
CATEGORIES = {codes.CATEGORY_DIGIT: "059", codes.CATEGORY_WORD: "qz5", codes.CATEGORY_SPACE: " "}
LINES = 200


def _one(chance: random.Random, choices: list[Any]) -> str:
    """A letter of a set."""
    letters: list[str] = []
    for code, value in choices:
        if code is codes.NEGATE:
            return "q"
        if code is codes.LITERAL:
            letters.append(chr(value))
        elif code is codes.RANGE:
            letters += map(chr, range(value[0], value[1] + 1))
        else:
            letters += CATEGORIES.get(value, "q")
    return chance.choice(letters)


def _text(chance: random.Random, tree: Any) -> str:
    """A text that a pattern may be for; what stands round it is not looked at."""
    out = ""
    for code, value in tree:
        if code is codes.LITERAL:
            out += chr(value)
        elif code in (codes.ANY, codes.NOT_LITERAL):
            out += "q"
        elif code is codes.IN:
            out += _one(chance, value)
        elif code is codes.BRANCH:
            out += _text(chance, chance.choice(value[1]))
        elif code is codes.SUBPATTERN:
            out += _text(chance, value[3])
        elif code in (codes.MAX_REPEAT, codes.MIN_REPEAT):
            least, most, what = value
            for _ in range(chance.randint(least, min(most, least + 2))):
                out += _text(chance, what)
    return out


@pytest.mark.parametrize("pattern", CUES)
def test_every_line_of_a_saying_has_its_cue(pattern: str) -> None:
    chance, tree = random.Random(pattern), parser.parse(pattern)
    for _ in range(LINES):
        line = _text(chance, tree) if pattern[0] == "^" else f"so {_text(chance, tree)} now"
        if re.search(pattern, line):
            assert any(cue in line for cue in CUES[pattern]), line


@pytest.mark.parametrize("name", [*FIRST, *LAST])
def test_a_module_of_sayings_is_read_where_one_of_its_cues_stands(name: str) -> None:
    assert set({**FIRST, **LAST}[name].split("|")) == {cue for cue, _, _ in sayings_of(name)}
