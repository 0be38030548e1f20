"""What a packet may be written over: its own draft, never a stranger's file and never a paper that was issued."""

from __future__ import annotations

from pathlib import Path

import pytest

from gaugeblock.errors import OutputError
from gaugeblock.packet.make import make_packet

JOB = """
[job]
owner = "B. Sample"
identification = "trial no. 9"
status = "{status}"
{more}
[[fasteners]]
name = "caliper bracket"
thread = "3/8-16"
grade = "SAE J429 5"
condition = "{condition}"
"""
FILES = ("packet.md", "packet.html", "packet.json")


def written(folder: Path, condition: str = "dry", status: str = "draft", more: str = "") -> dict[str, str]:
    """The files of a packet made into a folder."""
    job = folder.parent / "job.toml"
    job.write_text(JOB.format(condition=condition, status=status, more=more), encoding="utf-8")
    make_packet(str(job), str(folder))
    return {name: (folder / name).read_text(encoding="utf-8") for name in FILES}


def test_a_draft_is_written_over_by_the_next(tmp_path: Path) -> None:
    folder = tmp_path / "out"
    first = written(folder)
    assert written(folder) == first
    second = written(folder, condition="oiled")
    assert all(second[name] != first[name] for name in FILES)


@pytest.mark.parametrize("name", FILES)
def test_a_strangers_file_of_that_name_is_left_alone(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "out"
    folder.mkdir()
    (folder / name).write_text("somebody's notes", encoding="utf-8")
    with pytest.raises(OutputError) as refused:
        written(folder)
    assert name in str(refused.value)
    assert [p.name for p in folder.iterdir()] == [name]


@pytest.mark.parametrize("name", FILES[:2])
def test_a_page_that_is_not_of_the_record_beside_it_is_left_alone(tmp_path: Path, name: str) -> None:
    folder, other = tmp_path / "out", tmp_path / "other"
    written(folder)
    pages = written(other, condition="oiled")
    (folder / name).write_text(pages[name], encoding="utf-8")
    with pytest.raises(OutputError, match="not the paper"):
        written(folder)
    assert (folder / name).read_text(encoding="utf-8") == pages[name]


def test_a_paper_that_was_issued_is_left_alone_but_for_itself(tmp_path: Path) -> None:
    folder, issued = tmp_path / "out", 'issued = "2026-11-01"\nrevision = "B"'
    first = written(folder, status="for build", more=issued)
    assert written(folder, status="for build", more=issued) == first
    with pytest.raises(OutputError, match=r"revision B of trial no. 9, issued 2026-11-01, is in this folder"):
        written(folder, condition="oiled", status="for build", more=issued)
    assert (folder / "packet.json").read_text(encoding="utf-8") == first["packet.json"]
