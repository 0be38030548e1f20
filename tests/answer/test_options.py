"""A plain line of options is read as the parser of the standard library reads it; every other line is left to it."""

from __future__ import annotations

import random

import pytest

from gaugeblock.answer.options import Parser
from gaugeblock.errors import InputError
from hardening.fuzz.pools import told_parsers

PARSERS = told_parsers()
_LINES = 400


def _line(parser: Parser, chance: random.Random) -> list[str]:
    """A line of the options of a command, most of them whole, some with what does not belong there."""
    words = ["3/8-16", "", "a b", "--", "-5", "-x", "x=y", "--json", "--no-such", "--why=1", "-h"[:1], "M8"]
    line: list[str] = []
    needed = [told for told in parser.told if told[1].get("required")]
    others = chance.sample(parser.told, min(len(parser.told), chance.randint(0, 4)))
    for names, how in [*needed, *(told for told in others if told not in needed)]:
        value = chance.choice(words[:3] if chance.random() < 0.95 else words)
        if names[0][:1] != "-":
            line += [value] * chance.choice((1, 1, 2))
        elif how.get("action") == "store_true":
            line.append(names[0])
        else:
            line += [f"{names[0]}={value}"] if chance.random() < 0.3 else [names[0], value]
    if chance.random() < 0.2:
        line.insert(chance.randint(0, len(line)), chance.choice(words))
    return line


@pytest.mark.parametrize("name", sorted(PARSERS))
def test_a_plain_line_is_read_as_the_library_reads_it(name: str) -> None:
    parser, chance, plain = PARSERS[name], random.Random(name), 0
    library = parser.library()
    for _ in range(_LINES):
        line = _line(parser, chance)
        found = parser.plainly(line)
        if found is None:
            continue
        plain += 1
        try:
            read = vars(library.parse_args(line))
        except (InputError, SystemExit) as error:
            pytest.fail(f"{line} is read here, and the library refuses it: {error}")
        assert found == read, line
        assert list(found) == list(read), line
    assert plain >= 3, "the lines drawn show nothing"


def test_most_lines_need_no_library() -> None:
    assert PARSERS["torque"].plainly(["M8", "--grade", "8.8", "--why"]) is not None
    assert PARSERS["ask"].plainly(["3/8", "grade", "8"]) is not None
    assert PARSERS["find"].plainly(["--list", "spark", "plug"]) is not None
    assert PARSERS["audit"].plainly([]) is not None


@pytest.mark.parametrize(
    "line", [["--help"], ["a", "--why", "b"], ["--grade", "--why"], ["--grade=--"], ["--", "a"], ["-5"]]
)
def test_other_lines_are_the_librarys(line: list[str]) -> None:
    assert PARSERS["torque"].plainly(line) is None
