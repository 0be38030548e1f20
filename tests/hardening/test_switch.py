"""Old or new, never half: a fault or a kill at every call of the system, once and for good, and two writers at once.

``scripts/fuzz switch`` tries every call with every error; here each home meets every kill and a full disk.
"""

from __future__ import annotations

import contextlib
import errno
import os
from pathlib import Path

import pytest

from gaugeblock.errors import OutputError
from gaugeblock.job import output, switch, system
from hardening import faults
from hardening.faults import HOMES, NEW, NEXT, OLD


def _done(handle: int) -> None:
    pass


@pytest.fixture(autouse=True)
def no_waiting_for_the_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """A power cut is not tried here, and waiting for the disk is most of the time."""
    monkeypatch.setattr(os, "fsync", _done)


@pytest.mark.parametrize("for_good", [False, True], ids=["once", "for good"])
@pytest.mark.parametrize("kind", HOMES)
def test_a_full_disk_at_any_call(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str, for_good: bool) -> None:
    calls = faults.calls_of(tmp_path / "whole", kind, monkeypatch)
    wrong = []
    for at in range(1, calls + 1):
        root = tmp_path / str(at)
        with monkeypatch.context() as patched:
            folder = faults.home(root, kind, patched)
            before = faults.own(folder)
            with faults.struck(patched, faults.failing(at, errno.ENOSPC, for_good)):
                ended = faults.attempt(folder)
            found = faults.judge_after_fault(root, folder, before, {} if kind == "absent" else OLD, ended)
            found = found or faults.judge_next_run(root, folder, before)
        wrong += [f"call {at}: {found}"] if found else []
    assert wrong == []


@pytest.mark.parametrize("kind", HOMES)
def test_a_kill_at_any_call(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str) -> None:
    calls = faults.calls_of(tmp_path / "whole", kind, monkeypatch)
    seen = set()
    for at in range(1, calls + 1):
        root = tmp_path / str(at)
        with monkeypatch.context() as patched:
            folder = faults.home(root, kind, patched)
            before = faults.own(folder)
            assert faults.killed_at(folder, at, patched)
            # where folders cannot be exchanged, a reader follows the note of the switch
            found = faults.packet(folder, follow=kind in ("folders", "stays"))
            assert found in (OLD, NEW, {} if kind == "absent" else OLD), at
            assert faults.own(folder) == before, at
            seen.add(found.get("packet.md"))
            assert faults.judge_next_run(root, folder, before) == "", at
    assert len(seen) == 2  # the old one and the new one both came up


def test_an_exchange_leaves_the_readers_files_and_permissions(tmp_path: Path) -> None:
    folder = tmp_path / "out"
    folder.mkdir(mode=0o750)
    (folder / "notes.txt").write_bytes(b"mine")
    number = (folder / "notes.txt").stat().st_ino
    output.write_all(folder, NEW)
    assert (folder / "notes.txt").stat().st_ino == number
    assert (folder / "notes.txt").stat().st_nlink == 1
    assert folder.stat().st_mode & 0o777 == 0o750
    assert faults.leftovers(tmp_path) == []


def test_a_link_to_a_folder_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "out").symlink_to("real")
    output.write_all(tmp_path / "out", NEW)
    assert (tmp_path / "out").is_symlink()
    assert faults.packet(tmp_path / "real") == NEW


def test_the_working_folder_stays_the_one_it_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    output.write_all(".", NEW)
    assert sorted(os.listdir()) == sorted(NEW)


def test_leftovers_of_an_earlier_program_are_put_right(tmp_path: Path) -> None:
    folder = tmp_path / "out"
    folder.mkdir()
    pid = os.getpid()
    for name, content in {
        "packet.md": b"new",
        f".gaugeblock-{pid}-1.old": b"old html",
        f".gaugeblock-{pid}-2.new": b"new json",
        ".gaugeblock-1-0.old": b"old md",
    }.items():
        (folder / name).write_bytes(content)
    switch.heal(str(folder), tuple(NEW), alone=True)
    assert (folder / "packet.html").read_bytes() == b"old html"
    assert faults.leftovers(folder) == []
    output.write_all(folder, NEW)
    assert faults.packet(folder) == NEW


def test_two_at_once_leave_one_of_the_two_whole(tmp_path: Path) -> None:
    for number in range(6):
        folder = tmp_path / str(number) / "out"
        folder.parent.mkdir()
        if number % 2:
            output.write_all(folder, OLD)
        children = []
        for files in (NEW, NEXT):
            child = os.fork()
            if child == 0:
                code = 1
                try:
                    output.write_all(folder, files)
                    code = 0
                finally:
                    os._exit(code)
            children.append(child)
        assert [os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) for child in children] == [0, 0]
        assert faults.packet(folder) in (NEW, NEXT)
        assert faults.leftovers(tmp_path) == []


def test_a_folder_that_another_holds_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(system, "WAIT_S", 0.05)
    with system.lock(str(tmp_path)), pytest.raises(OutputError, match="another gaugeblock is writing here"):
        output.write_all(tmp_path / "out", NEW)
    assert list(tmp_path.iterdir()) == []


def test_a_new_file_is_whole_or_not_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def count() -> int:
        with faults.struck(monkeypatch, faults.calm) as made:
            output.write_new(tmp_path / "whole.toml", b"whole")
        return made.calls

    for at in range(1, count() + 1):
        path = tmp_path / f"{at}.toml"
        with faults.struck(monkeypatch, faults.failing(at, errno.ENOSPC, True)), contextlib.suppress(OutputError):
            output.write_new(path, b"whole")
        assert not path.exists() or path.read_bytes() == b"whole", at
        path.unlink(missing_ok=True)
        output.write_new(path, b"next")
        assert faults.leftovers(tmp_path) == [], at
