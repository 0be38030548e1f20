"""A pedal told by two lengths: its ratio, and how much of the line tells it."""

from __future__ import annotations

import pytest

from gaugeblock.lines.brakes.lever import Lever
from gaugeblock.tables.load import refdata


@pytest.mark.parametrize(
    ("line", "ratio", "words"),
    [
        ("pivot to pushrod 2 in and pivot to pad 12 in", "6", 11),
        ("pivot to pad 300 mm and pivot to pushrod 50 mm", "6", 11),
        ("ratio 12 over 2", "6", 4),
        ("12 over 2 pedal", "6", 4),
        ("pushrod 2 1/4 in from pivot and pad 13 1/2 in from pivot", "6", 13),
        ("2 in pivot to pushrod and 12 in pivot to pad", "6", 11),
    ],
)
def test_every_word_that_tells_the_pedal_is_of_its_ratio(line: str, ratio: str, words: int) -> None:
    found = list(Lever().take(tuple(line.split()), 0, refdata()))
    assert [(hit.value, hit.count) for hit in found] == [(ratio, words)]


@pytest.mark.parametrize("line", ["pivot to pushrod 12 in and pivot to pad 2 in", "ratio 2 over 12", "pivot to pad"])
def test_a_pedal_that_is_shorter_than_its_push_rod_is_none(line: str) -> None:
    assert list(Lever().take(tuple(line.split()), 0, refdata())) == []


@pytest.mark.parametrize("line", ["pivot to pushrod 2 in and pivot to pad 300 mm"])
def test_two_units_make_no_ratio(line: str) -> None:
    assert list(Lever().take(tuple(line.split()), 0, refdata())) == []
