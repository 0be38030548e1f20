"""Writing all or nothing: after every refusal the folder is byte for byte as it was."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.errors import OutputError
from gaugeblock.job.output import write_all, write_new

PACKET = {"packet.md": b"new md", "packet.html": b"new html", "packet.json": b"{}"}


def state(folder: Path) -> dict[str, bytes | None]:
    """Everything below a folder, with the content of files."""
    return {str(p.relative_to(folder)): p.read_bytes() if p.is_file() else None for p in sorted(folder.rglob("*"))}


@contextmanager
def largest_file(size: int) -> Iterator[None]:
    """Let the system refuse, half way, to write files larger than ``size``."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def test_files_are_written_into_a_folder_that_is_made(tmp_path: Path) -> None:
    write_all(tmp_path / "out", PACKET)
    assert state(tmp_path / "out") == dict(sorted(PACKET.items()))


def test_old_files_are_replaced_and_others_stay(tmp_path: Path) -> None:
    (tmp_path / "packet.md").write_bytes(b"old")
    (tmp_path / "notes.txt").write_bytes(b"mine")
    write_all(tmp_path, PACKET)
    assert state(tmp_path) == dict(sorted({**PACKET, "notes.txt": b"mine"}.items()))


def test_new_files_have_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    write_all(tmp_path, PACKET)
    (tmp_path / "plain").write_bytes(b"")
    assert (tmp_path / "packet.md").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_failure_half_way_through_the_bytes_leaves_all_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "packet.md").write_bytes(b"old")
    before = state(tmp_path)
    with largest_file(4096), pytest.raises(OutputError, match="larger than is allowed") as refused:
        write_all(tmp_path, {"packet.md": b"x", "packet.html": b"x" * 10_000})
    assert state(tmp_path) == before
    assert ".gaugeblock-" not in str(refused.value)


def test_a_failure_in_a_new_folder_takes_the_folder_away(tmp_path: Path) -> None:
    with largest_file(4096), pytest.raises(OutputError):
        write_all(tmp_path / "out", {"a": b"x", "b": b"x" * 10_000})
    assert state(tmp_path) == {}


def test_a_failure_while_taking_their_places_puts_the_old_ones_back(tmp_path: Path) -> None:
    (tmp_path / "packet.md").write_bytes(b"old")
    (tmp_path / "packet.json").mkdir()
    before = state(tmp_path)
    with pytest.raises(OutputError, match=r"packet\.json: a folder of that name"):
        write_all(tmp_path, PACKET)
    assert state(tmp_path) == before


@given(st.integers(0, 3), st.integers(0, 3))
def test_wherever_it_fails_nothing_changes(old: int, fails_at: int) -> None:
    names = [f"f{i}" for i in range(4)]
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        for name in names[:old]:
            (folder / name).write_bytes(b"old " + name.encode())
        (folder / names[fails_at]).unlink(missing_ok=True)
        (folder / names[fails_at]).mkdir()
        before = state(folder)
        with pytest.raises(OutputError):
            write_all(folder, dict.fromkeys(names, b"new"))
        assert state(folder) == before


@pytest.mark.parametrize(
    ("folder", "word"),
    [
        ("", "no name is given"),
        ("none/out", "the folder above it does not exist"),
        ("file", "a file of that name is already there"),
        ("file/out", "a file stands where a folder is needed"),
        ("dangling", "already there"),
        ("loop/out", "links lead in a circle"),
        ("x" * 300, "the name is too long"),
        ("a\0b", "null byte"),
        ("a\ud800b", "cannot be written"),
        ("none\x1b[31m/out", r"none\\u001b\[31m/out: the folder above"),
    ],
)
def test_places_where_no_folder_can_be(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, folder: str, word: str) -> None:
    monkeypatch.chdir(tmp_path)
    Path("file").write_bytes(b"mine")
    Path("dangling").symlink_to("nowhere/at/all")
    Path("loop").symlink_to("loop")
    with pytest.raises(OutputError, match=word) as refused:
        write_all(folder, PACKET)
    str(refused.value).encode()
    assert sorted(os.listdir()) == ["dangling", "file", "loop"]
    assert Path("file").read_bytes() == b"mine"


@pytest.mark.parametrize("name", ["", ".", "..", "a/b", "../a", "/a", "x" * 300, "a\0b"])
def test_a_name_that_is_no_plain_name_leaves_nothing(tmp_path: Path, name: str) -> None:
    (tmp_path / "out").mkdir()
    with pytest.raises(OutputError):
        write_all(tmp_path / "out", {"good": b"x", name: b"x"})
    assert state(tmp_path) == {"out": None}


NOT_MINE = """
import os, sys
from gaugeblock.errors import OutputError
from gaugeblock.job.output import write_all, write_new
if os.getuid() == 0:
    os.setgid(65534)
    os.setuid(65534)
for folder in (sys.argv[1], os.path.join(sys.argv[1], "out")):
    try:
        write_all(folder, {"a": b"x"})
    except OutputError as error:
        print(error)
try:
    write_new(os.path.join(sys.argv[1], "new.toml"), b"x")
except OutputError as error:
    print(error)
"""


def test_a_folder_that_may_not_be_written_is_told_and_left(tmp_path: Path) -> None:
    """Root may write anywhere, so the attempt is made as nobody."""
    with tempfile.TemporaryDirectory() as place:
        locked = Path(place) / "locked"
        locked.mkdir()
        locked.chmod(0o555)
        Path(place).chmod(0o755)
        ran = subprocess.run([sys.executable, "-c", NOT_MINE, str(locked)], capture_output=True, text=True, check=True)
        told = ran.stdout.splitlines()
        assert len(told) == 3
        assert all("not writable" in line and str(locked) in line for line in told)
        assert os.listdir(locked) == []


def test_a_new_file_that_cannot_be_finished_is_taken_away(tmp_path: Path) -> None:
    with largest_file(4096), pytest.raises(OutputError, match=r"car\.toml"):
        write_new(tmp_path / "car.toml", b"x" * 10_000)
    assert state(tmp_path) == {}
