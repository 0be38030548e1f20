"""The starter: written as it is, valid as it is, and every key of a job is explained in it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from gaugeblock.domains import parse_job, read_job, tables
from gaugeblock.errors import OutputError
from gaugeblock.job.model import job_model
from gaugeblock.job.part import Part
from gaugeblock.job.starter import starter, starter_text

# Taking the # away from every switched-off key, table and list line.
STARTER = starter_text(tables())
ALL_ON = re.sub(r"(?m)^#(?=[\[\]a-z]|  \{)", "", STARTER)


def keys_of(model: type[Part], form: str) -> set[tuple[str, str]]:
    """(table, key) of a model and of all models below it."""
    out = set()
    for name, key in model.keys.items():
        if key.part is not None:
            out |= keys_of(key.part, f"{form}.{name}" if form else name)
        else:
            out.add((form, name))
    return out


def given_in(value: object, form: str = "") -> set[tuple[str, str]]:
    """(table, key) of everything a parsed job gives."""
    out: set[tuple[str, str]] = set()
    for key, inner in value.items() if isinstance(value, dict) else ():
        below = f"{form}.{key}" if form else key
        if isinstance(inner, dict):
            out |= given_in(inner, below)
        elif isinstance(inner, list) and any(isinstance(i, dict) for i in inner):
            for item in inner:
                out |= given_in(item, below)
        else:
            out.add((form, key))
    return out


def test_the_starter_as_written_is_a_half_filled_job(tmp_path: Path) -> None:
    file = tmp_path / "car.toml"
    starter(file, tables())
    job = read_job(file)
    assert file.read_text(encoding="utf-8") == STARTER
    assert job.title.owner is None
    assert [f.grade for f in job.fasteners] == ["SAE J429 5"]
    assert job.fasteners[0].engagement is None


def test_every_key_of_a_job_is_in_the_starter_and_its_examples_are_valid() -> None:
    import tomllib

    parse_job(ALL_ON)
    assert given_in(tomllib.loads(ALL_ON)) == keys_of(job_model(tables()), "")


def test_no_two_keys_are_left_without_a_word_on_what_they_mean() -> None:
    seen = set()
    unexplained = []
    for line in STARTER.splitlines():
        match = re.match(r"#?([a-z_]+) = [^#]*(#.*)?$", line)
        if match and match[1] not in seen:
            seen.add(match[1])
            if not match[2]:
                unexplained.append(match[1])
    assert unexplained == []


def test_the_starter_fits_a_terminal_of_120_columns_in_plain_ascii() -> None:
    assert STARTER.isascii()
    assert max(len(line) for line in STARTER.splitlines()) <= 120
    assert "\t" not in STARTER


def test_a_file_that_is_there_stays_as_it_is(tmp_path: Path) -> None:
    file = tmp_path / "car.toml"
    file.write_text("mine")
    with pytest.raises(OutputError, match="already there") as refused:
        starter(file, tables())
    assert str(file) in str(refused.value)
    assert file.read_text() == "mine"


def test_a_link_to_nowhere_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "car.toml").symlink_to(tmp_path / "else.toml")
    with pytest.raises(OutputError, match="already there"):
        starter(tmp_path / "car.toml", tables())
    assert not (tmp_path / "else.toml").exists()


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("", "no name is given"),
        ("none/car.toml", "the folder above it does not exist"),
        ("file/car.toml", "a file stands where a folder is needed"),
        (".", "already there"),
        ("x" * 300, "the name is too long"),
        ("a\0b", "null byte"),
    ],
)
def test_places_where_no_starter_can_be_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, word: str
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("file").write_text("x")
    with pytest.raises(OutputError, match=word):
        starter(name, tables())
    assert [p.name for p in tmp_path.iterdir()] == ["file"]
