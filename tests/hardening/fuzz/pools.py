"""What a hand may type: words and cells of the tables, figures with and without units, and what no hand should type."""

from __future__ import annotations

import argparse
import contextlib
import re
from functools import cache
from random import Random

from gaugeblock import domains, units
from gaugeblock.answer import command
from gaugeblock.cli import GENERAL
from gaugeblock.errors import InputError
from gaugeblock.tables.catalogue import LISTS
from gaugeblock.tables.load import Refdata, refdata

NUMBERS = (
    "0",
    "1",
    "16",
    "31",
    "0.120",
    ".120",
    "1.75",
    "90",
    "9000",
    "1 3/4",
    "1-3/4",
    "3/8",
    "7/16",
    "45",
    "400",
    "-40",
    "0.0000001",
    "1e3",
    "99999999999",
    "1/0",
    "5 1/2",
    "12.5",
    "007",
    "1,5",
    "½",
    "1'6",
    "²",
    "nan",
    "inf",
    "-0",
    "+3",
)
JUNK = (
    "",
    " ",
    "-",
    "--",
    "x",
    "any",
    "none",
    "?",
    "é",
    "8-Mar",
    "3/8-0",
    "3/8-16 UNC UNF",
    "M10x",
    "Mx1",
    "#",
    "%",
    "1/",
    "/2",
    "0/0",
    "\t",
    "a\nb",
    "\x1b[31m",
    "\x00",
    "\u200b",
    "\u202eabc",
    "\ufeff",
    "🔧",
    "|",
    "`",
    "{{ 7 }}",
    "<b>",
    "[a](b)",
    "![a](b)",
    "true",
    "null",
    "NaN",
    "../..",
    "/dev/null",
    "x" * 300,
    "9" * 400,
    "(",
    "a;b",
    "'",
    '"',
    "\\",
    "$HOME",
    "*",
    "~",
    "\U0001d7db",
    "\udcff",
    "to",
    "over",
    "to 3 in",
    "over 1/4 to 3/4 in",
    "1 to 2 mm",
    "12 ft 6 in",
    "2 in on 12 in",
    "5 to 80 lbf*ft by 1",
)


@cache
def data() -> Refdata:
    """The newest release."""
    return refdata()


@cache
def cells(column: str) -> tuple[str, ...]:
    """Every cell that a key column of this name has in any table, and the words for it."""
    found = {
        row[column]: None
        for table in data().all_tables()
        for row in table.rows
        if column in {k.name for k in table.keys}
    }
    at = LISTS["words"].index
    for line in data().lines("words").all():
        if line[at("column")] == column:
            found[line[at("word")]] = None
    return tuple(found)


@cache
def all_cells() -> tuple[str, ...]:
    """Every key cell and word of every table."""
    columns = {k.name: None for table in data().all_tables() for k in table.keys}
    return tuple({cell: None for column in columns for cell in cells(column)})


@cache
def all_units() -> tuple[str, ...]:
    """Every spelling of every unit, and some that are none."""
    return (*units.UNITS, *units.TYPED, "furlong", "ft lbs", "IN", "m m", "°F")


@cache
def releases() -> tuple[str, ...]:
    """Every release, and some that are none."""
    return (*(r["version"] for r in data().releases), "0.5.²", "9.9.9", "0.1", "latest", "")


def measure(chance: Random) -> str:
    """A figure with a unit, mostly."""
    number = (
        chance.choice(NUMBERS)
        if chance.random() < 0.5
        else f"{chance.uniform(0, 10) ** chance.randint(1, 4):.{chance.randint(0, 4)}f}"
    )
    return f"{number} {chance.choice(all_units())}" if chance.random() < 0.85 else number


def spoilt(text: str, chance: Random) -> str:
    """A text with a slip in it."""
    at = chance.randrange(len(text) + 1)
    slip = chance.randrange(5)
    if slip == 0:
        return text[:at] + text[at + 1 :]
    if slip == 1:
        return text[:at] + chance.choice(("-", "/", " ", ".", "0", "x", "é", "\x1b", "\u200b")) + text[at:]
    if slip == 2:
        return text[::-1]
    return text.upper() if slip == 3 else text[:at]


_FIGURE = re.compile(r"\d[\d./-]*(?: \d+/\d+)?(?: ?[A-Za-z*%]+)?")


def other_figure(text: str, chance: Random) -> str:
    """A text with one of its figures changed: in size, in unit, or for another."""
    found = list(_FIGURE.finditer(text))
    if not found:
        return spoilt(text, chance)
    match = chance.choice(found)
    number, blank, unit = match[0].partition(" ")
    try:
        size = float(number) * chance.choice((-1, 0, 0.001, 0.1, 0.5, 0.9, 1.1, 2, 10, 1000))
        new = f"{size:.6g}{blank}{unit}" if chance.random() < 0.7 else measure(chance)
    except ValueError:
        new = measure(chance)
    return text[: match.start()] + new + text[match.end() :]


def value(name: str, chance: Random) -> str:
    """Something for a key or an option of this name: mostly what fits it, or nearly."""
    roll = chance.random()
    if name in ("data_release",):
        return chance.choice(releases()) if roll < 0.95 else chance.choice(JUNK)
    if name in ("unit",):
        return chance.choice(all_units()) if roll < 0.95 else chance.choice(JUNK)
    if roll < 0.45 and cells(name):
        return chance.choice(cells(name))
    if roll < 0.75:
        return measure(chance)
    if roll < 0.85:
        return chance.choice(all_cells())
    return chance.choice(JUNK) if roll < 0.93 else spoilt(chance.choice(cells(name) or all_cells()), chance)


class _Caught(Exception):
    pass


@cache
def told_parsers() -> dict[str, command.Parser]:
    """The options of every command, and of every question of a command that has several, by its words."""
    from gaugeblock.cli import _run

    found: dict[str, command.Parser] = {}

    def catch(self: command.Parser, argv: object) -> None:
        found[self.prog.removeprefix("gaugeblock ")] = self
        raise _Caught

    real = command.Parser.parse_args
    command.Parser.parse_args = catch  # type: ignore[assignment, method-assign]
    try:
        for name in (*domains.commands(), *GENERAL):
            with contextlib.suppress(_Caught):
                try:
                    _run(name, [])
                except InputError as error:  # it wants one of its questions first
                    for question in error.nearest:
                        with contextlib.suppress(_Caught):
                            _run(name, [question])
    finally:
        command.Parser.parse_args = real  # type: ignore[method-assign]
    return found


@cache
def parsers() -> dict[str, argparse.ArgumentParser]:
    """The same, each with the library's parser of it."""
    return {name: parser.library() for name, parser in told_parsers().items()}
