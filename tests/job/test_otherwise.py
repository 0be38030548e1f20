"""A key by another name is told the key that it means, and nothing that is only spelt like it."""

from __future__ import annotations

import pytest

from gaugeblock.domains import parse_job
from gaugeblock.errors import JobError
from gaugeblock.job.otherwise import OTHERWISE

TABLES = ("fasteners", "tubes", "lines", "exhausts")


def told(text: str) -> str:
    with pytest.raises(JobError) as error:
        parse_job(text)
    return " ".join(str(error.value).split())


@pytest.mark.parametrize("word", OTHERWISE)
def test_a_word_of_a_shop_is_told_the_key_that_it_means(word: str) -> None:
    texts = [f"[[{word}]]\nname = 'A'\n", *(f"[[{table}]]\nname = 'A'\n{word} = 'x'\n" for table in TABLES)]
    answers = []
    for text in texts:
        try:
            parse_job(text)
        except JobError as error:
            answers.append(" ".join(str(error).split()))
    assert any(f"no such key in {where}" in one for one in answers for where in ("the top", "[["))
    assert any(f"nearest: {key}{mark}" in one for one in answers for key in OTHERWISE[word] for mark in ",;"), answers


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ('[[torques]]\nname = "A"', "fasteners"),
        ('[[lines]]\nname = "L"\ndistance = "3 in"', "gap"),
        ('[[lines]]\nname = "L"\nitem = "fuel hose"', "material"),
    ],
)
def test_the_meaning_goes_before_the_spelling(text: str, key: str) -> None:
    assert f"nearest: {key};" in told(text)
