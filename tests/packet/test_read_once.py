"""Text is read once: a number of a job is read when the job is, and no answer reads it again."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from gaugeblock import domains, units
from gaugeblock.fasteners.maker import Stages
from gaugeblock.job.part import Part
from gaugeblock.job.wrench import WrenchRange
from gaugeblock.known import Known
from gaugeblock.packet.build import build
from gaugeblock.packet.render import render
from gaugeblock.span import Span
from gaugeblock.tables.load import Refdata
from gaugeblock.units import Measure

DEMO = Path(__file__).resolve().parents[2] / "reports" / "examples" / "demo.toml"
Read = tuple[str, str]  # text and dimension


@pytest.fixture
def reads(monkeypatch: pytest.MonkeyPatch) -> list[Read]:
    """Every text that is read as a measure, whichever module asks for it."""
    found: list[Read] = []
    whole = units.parse_measure

    def counted(text: str, dim: str, where: str = "value") -> Measure:
        found.append((text, dim))
        return whole(text, dim, where)

    for module in [m for m in list(sys.modules.values()) if getattr(m, "parse_measure", None) is whole]:
        monkeypatch.setattr(module, "parse_measure", counted)
    return found


def typed(value: object) -> Iterator[object]:
    """Every number with a unit that a job holds."""
    if isinstance(value, Part):
        for inner in vars(value).values():
            yield from typed(inner)
    elif isinstance(value, tuple):
        for inner in value:
            yield from typed(inner)
    elif isinstance(value, Span):
        yield from {id(value.low): value.low, id(value.high): value.high}.values()
    elif isinstance(value, Known):
        yield from typed(value.ends)
        yield from () if value.usual is None else (value.usual,)
    elif isinstance(value, Stages):
        for step in value.steps:
            yield from {id(step.low): step.low, id(step.high): step.high}.values()
    elif isinstance(value, Measure | WrenchRange):
        yield value


def test_the_demo_reads_each_number_once_and_its_answers_read_none_again(reads: list[Read]) -> None:
    data = Refdata()
    job = domains.read_job(DEMO)
    numbers = len(list(typed(job)))
    assert numbers > 100
    assert len(reads) == numbers
    reads.clear()
    assert domains.read_job(DEMO, domains.hooks(data)) == job
    assert len(reads) == numbers, "the hooks of the domains read a text again"
    reads.clear()
    render(build(job, data, "gaugeblock"))
    # What is left is the words of a line (a finish of 0.9 to 0.95), which an answer reads for each line, and key cells
    # that answers ask a table for: such a cell is read once, however many of the table's figures are asked.
    words = [word for line in job.lines for word in vars(line).values() if isinstance(word, str)]
    said = Counter(end for word in words for end in word.split(" to "))
    again = {read: count for read, count in Counter(reads).items() if count > max(1, said[read[0]])}
    assert again == {}
    assert len(reads) <= numbers / 5
