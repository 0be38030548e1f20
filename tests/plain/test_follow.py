"""A line that goes on from the question before it."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock.errors import InputError
from gaugeblock.plain.prompt import Prompt


def _talked(*lines: str) -> Prompt:
    prompt = Prompt()
    for line in lines:
        assert prompt.take(line)
    return prompt


@pytest.mark.parametrize(
    ("goes_on", "whole"),
    [
        ("same but oiled", "torque m8 8.8 oiled"),
        ("what about M10", "torque m10 8.8 dry"),
        ("and 10.9 instead of 8.8?", "torque m8 10.9 dry"),
        ("and into aluminium", "torque m8 8.8 dry into aluminium"),
        ("how about with anti-seize", "torque m8 8.8 anti-seize"),
        ("same again in N*m", "torque m8 8.8 dry"),
    ],
)
def test_the_last_question_with_what_is_put_in_place_of_it(goes_on: str, whole: str) -> None:
    got = _talked("torque m8 8.8 dry", goes_on).answer
    assert got is not None
    assert got.found == gaugeblock.ask(whole)


def test_what_goes_on_twice_goes_on_from_both() -> None:
    got = _talked("torque m8 8.8 dry", "what about m10", "same but oiled").answer
    assert got is not None
    assert got.found == gaugeblock.ask("torque m10 8.8 oiled")


def test_a_whole_question_is_answered_by_itself() -> None:
    got = _talked("torque m8 8.8 dry", "what about dot 4 wet").answer
    assert got is not None
    assert got.found == gaugeblock.ask("dot 4 wet")


def test_what_was_never_said_is_not_taken_back(capsys: pytest.CaptureFixture[str]) -> None:
    _talked("torque m8 8.8 dry", "and oiled instead of zinc plated")
    assert "22 N*m" not in capsys.readouterr().out


@pytest.mark.parametrize(
    "line", ["same but stainless", "and in aluminium instead of steel?", "ditto with oil", "same as before"]
)
def test_alone_it_is_refused_and_told_why(line: str) -> None:
    with pytest.raises(InputError, match="goes on from another question"):
        gaugeblock.ask(line)
