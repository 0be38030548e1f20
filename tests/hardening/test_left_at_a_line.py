"""What is kept for the next question is kept when it is whole: a thread may be left at any line of it.

One question is left at each of its lines in turn, another is asked of the same things meanwhile, then the first goes
on: both get what they get alone. No luck is needed, as it is where threads run.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

import gaugeblock
from gaugeblock import lookup
from gaugeblock.answer.asking import Topic
from gaugeblock.finding import find
from gaugeblock.shelf import Shelf
from gaugeblock.tables.catalogue import LISTS, columns_of
from gaugeblock.tables.index import Index
from gaugeblock.tables.lines import Lines, read_raw
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tables.part import Part
from gaugeblock.tubes.told_apart import ToldApart

if TYPE_CHECKING:
    from types import FrameType

HOME = str(Path(gaugeblock.__file__).parent)
DATA = refdata()
Ask = Callable[[Any], object]


def left_at(line: int, thing: object, first: Ask, other: Ask) -> tuple[object, object, int]:
    """What both get where the first is left at one of its lines, and how many lines it came to before it went on."""
    count, meanwhile = 0, []

    def at_line(frame: FrameType, event: str, _: object) -> Any:
        nonlocal count
        if event == "line" and not meanwhile and not any(hasattr(v, "fileno") for v in frame.f_locals.values()):
            count += 1
            if count == line:
                sys.settrace(None)
                meanwhile.append(other(thing))
        return at_line

    before = sys.gettrace()
    sys.settrace(lambda frame, *_: at_line if frame.f_code.co_filename.startswith(HOME) else None)
    try:
        got = first(thing)
    finally:
        sys.settrace(before)
    return got, meanwhile[0] if meanwhile else None, count


def harmed(make: Callable[[], object], first: Ask, other: Ask, step: int = 1, most: int = 4000) -> list[object]:
    """The lines at which one of the two is harmed."""
    of_first, of_other = first(make()), other(make())
    found: list[object] = []
    line = 1
    while line < most:
        got, meanwhile, count = left_at(line, make(), first, other)
        if count < line:
            break
        if (got, meanwhile) != (of_first, of_other):
            found.append((line, got, meanwhile))
        line += step
    assert line > step
    return found


def lines_of_formulas() -> Lines:
    """As they stand after so many questions that the next one sorts them."""
    lines = Lines(DATA.path("formulas"), "formulas", LISTS["formulas"])
    for _ in range(8):
        lines.of("tube_mass")
    return lines


def part_of_threads() -> Part:
    part = Part(read_raw(DATA.path("fasteners/threads"), "fasteners/threads", columns_of("fasteners/threads")))
    part.tables[""] = None  # the second cell is asked
    return part


def index_of_torques() -> Index:
    table = DATA.table("fasteners/torques")
    index = Index(table.keys, table.of("tightening_torque"))
    for _ in range(3):
        index.fitting(torque("3/8-16 UNC"))
    return index


def torque(thread: str) -> list[str | None]:
    asked = {"thread": thread, "standard": "SAE J429", "grade": "5", "condition": "dry", "service": "vehicle"}
    return [asked.get(key.name) for key in DATA.table("fasteners/torques").keys]


def topic() -> Topic:
    return Topic(lambda: gaugeblock.tyre, "tyre", {}, "tyres?|wheels?|how (?:big|tall)")


WORDS = (["how", "big", "is", "a", "tyre"], ["tall", "wheels"])
PULLED = (
    ["pulled", "to", "90", "deg", "came", "back", "to", "87"],
    ["pulled", "to", "45", "deg", "came", "back", "to", "43"],
)


def signals(words: list[str]) -> Ask:
    line = tuple(words)
    return lambda of: [of.signal(line, at) for at in range(len(line))]


def halves(words: list[str]) -> Ask:
    line = tuple(words)
    return lambda reader: [hit.said for at in range(len(line)) for hit in reader.take(line, at, DATA)]


def begun(cell: str) -> Ask:
    return lambda part: part.begun_by(cell)


CASES: dict[str, tuple[Callable[[], object], Ask, Ask]] = {
    "a list by its first cells": (
        lines_of_formulas,
        lambda lines: lines.of("wire_gauge_of_area"),
        lambda lines: lines.of("tube_mass"),
    ),
    "a part of a table by its first cells": (part_of_threads, begun("3/8-16 UNC"), begun("M10x1.5")),
    "the first cells by how they are spelled": (
        part_of_threads,
        lambda part: part.spelled("3/8-16 unc"),
        lambda part: part.spelled("m10x1.5"),
    ),
    "the words that name a topic": (topic, signals(WORDS[0]), signals(WORDS[1])),
    "a test bend told in two halves": (ToldApart, halves(PULLED[0]), halves(PULLED[1])),
}


@pytest.mark.parametrize("case", CASES)
def test_what_is_kept_is_whole(case: str) -> None:
    make, first, other = CASES[case]
    assert first(make())
    assert other(make())
    assert harmed(make, first, other, most=400) == []
    assert harmed(make, other, first, most=400) == []


def fitting(thread: str) -> Ask:
    return lambda index: [row.line for row in index.fitting(torque(thread))]


def test_an_index_is_whole() -> None:
    first, other = fitting("3/8-16 UNC"), fitting("1/2-13 UNC")
    assert first(index_of_torques())
    assert harmed(index_of_torques, first, other, step=97) == []


def shelf_of_materials() -> tuple[Shelf, Refdata]:
    data = Refdata()
    return Shelf("lines/materials", data), data


def held(*words: str) -> Ask:
    def ask(of: tuple[Shelf, Refdata]) -> object:
        sought, entries = of[0].holding(words)
        return sorted((entry.key, [entry.place(word) for word in sought]) for entry in entries)

    return ask


def test_a_shelf_is_whole() -> None:
    for first, other in ((held("fuel", "hose"), held("silicone")), (held("silicone"), lambda of: len(of[0].entries))):
        assert harmed(shelf_of_materials, first, other, step=41) == []


def found(text: str) -> Ask:
    return lambda data: find(text, data=data).as_dict()


def looked_up(thread: str) -> Ask:
    return lambda data: lookup.look_up("fasteners/threads", "tensile_stress_area", thread=thread, data=data).text


@pytest.mark.parametrize(
    ("first", "other", "step"),
    [
        (looked_up("3/8-16 UNC"), looked_up("1/2-13 UNC"), 13),
        (looked_up("3/8-16 UNC"), lambda data: data.table("fasteners/threads").rows[0].key, 13),
        (found("banjo bolt"), found("fuel hose"), 2003),
        (found("fuel hose"), lambda data: [found("fuel hose")(data), found("hose")(data)], 2003),
    ],
)
def test_the_tables_are_whole(first: Ask, other: Ask, step: int) -> None:
    assert harmed(Refdata, first, other, step, most=60_000) == []
