"""A system that fails or ends the process at one chosen call, and what a folder holds afterwards."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from gaugeblock.errors import OutputError
from gaugeblock.job import output, switch, system
from gaugeblock.job.switch import MARK, current

NAMES = ("packet.md", "packet.html", "packet.json")
OLD, NEW, NEXT = ({name: word + name.encode() for name in NAMES} for word in (b"old ", b"new ", b"next "))
MINE = b"the reader's own"
CALLS = (
    "open",
    "fdopen",
    "mkdir",
    "rename",
    "replace",
    "link",
    "unlink",
    "rmdir",
    "fsync",
    "close",
    "listdir",
    "scandir",
    "stat",
    "lstat",
    "chmod",
    "chown",
    "access",
    "urandom",
)
ERRORS = (errno.ENOSPC, errno.EIO, errno.EACCES)
HOMES = ("absent", "plain", "notes", "folders", "stays")
KILLED = 9


class Out:
    """A file of which writing and flushing are counted too."""

    def __init__(self, file: Any, count: Callable[[str], None]) -> None:
        self._file, self._count = file, count

    def write(self, content: bytes) -> None:
        self._file.write(content[: len(content) // 2])
        self._count("write")
        self._file.write(content[len(content) // 2 :])

    def __getattr__(self, name: str) -> Any:
        return getattr(self._file, name)

    def __enter__(self) -> Out:
        return self

    def __exit__(self, *_: object) -> None:
        self._file.close()


class System:
    """``os`` as the writer sees it: before each call it does what ``strike`` does, given the number and the name."""

    def __init__(self, strike: Callable[[int, str], None]) -> None:
        self.calls = 0
        self.path = os.path
        self._strike = strike

    def _count(self, name: str) -> None:
        self.calls += 1
        self._strike(self.calls, name)

    def __getattr__(self, name: str) -> Any:
        real = getattr(os, name)
        if name not in CALLS:
            return real

        def call(*args: Any, **options: Any) -> Any:
            if name == "close":  # a close that fails has closed all the same
                real(*args, **options)
                return self._count(name)
            self._count(name)
            made = real(*args, **options)
            return Out(made, self._count) if name == "fdopen" else made

        return call


@contextmanager
def struck(patch: pytest.MonkeyPatch, strike: Callable[[int, str], None]) -> Iterator[System]:
    """The writer with a system that strikes."""
    made = System(strike)
    exchanging = system.exchange

    def exchange(one: str, other: str) -> None:
        made._count("exchange")
        exchanging(one, other)

    with patch.context() as patched:
        for module in (output, switch, system):
            patched.setattr(module, "os", made)
        patched.setattr(switch, "exchange", exchange)
        yield made


def failing(at: int, number: int, for_good: bool) -> Callable[[int, str], None]:
    """Raise an error of the system at call ``at``, or at it and all that come after."""

    def strike(call: int, name: str) -> None:
        if call == at or (for_good and call > at):
            raise OSError(number, os.strerror(number), f"/{MARK}some/file")

    return strike


def calm(call: int, name: str) -> None:
    """Strike nowhere."""


def killing(at: int) -> Callable[[int, str], None]:
    """End the process at call ``at``, with nothing flushed and nothing cleared."""

    def strike(call: int, name: str) -> None:
        if call == at:
            os._exit(KILLED)

    return strike


def home(root: Path, kind: str, patch: pytest.MonkeyPatch) -> Path:
    """A folder as it is before: not there, with the earlier packet, with the reader's own files and folders too."""
    root.mkdir()
    folder = root / "out"
    if kind == "absent":
        return folder
    folder.mkdir()
    for name, content in OLD.items():
        (folder / name).write_bytes(content)
    if kind in ("notes", "stays"):
        (folder / "notes.txt").write_bytes(MINE)
    if kind == "folders":
        (folder / "drawings").mkdir()
        (folder / "drawings" / "one.txt").write_bytes(MINE)
    if kind == "stays":  # a system without an exchange of folders
        patch.setattr(switch, "exchange", _cannot)
    return folder


def _cannot(one: str, other: str) -> None:
    raise OSError(errno.ENOSYS, "not here")


def packet(folder: Path, follow: bool = False) -> dict[str, bytes]:
    """The files of a packet as they are, or as a reader who follows a note of a switch finds them."""
    found = {}
    for name in NAMES:
        with suppress(FileNotFoundError):
            found[name] = Path(current(str(folder / name)) if follow else folder / name).read_bytes()
    return found


def own(folder: Path) -> dict[str, bytes]:
    """What else is in a folder, leftovers aside."""
    return {
        str(p.relative_to(folder)): p.read_bytes()
        for p in folder.rglob("*")
        if p.is_file() and p.name not in NAMES and MARK not in str(p)
    }


def leftovers(root: Path) -> list[str]:
    """What a writer has left behind, anywhere below."""
    return [str(p.relative_to(root)) for p in root.rglob(f"{MARK}*")]


def attempt(folder: Path) -> SimpleNamespace:
    """Write the new packet: how that ended."""
    try:
        output.write_all(folder, NEW)
    except OutputError as error:
        return SimpleNamespace(refused=True, text=str(error))
    return SimpleNamespace(refused=False, text="")


def calls_of(root: Path, kind: str, patch: pytest.MonkeyPatch) -> int:
    """How many calls a write makes when all goes well."""
    with patch.context() as patched:
        folder = home(root, kind, patched)
        with struck(patched, calm) as made:
            assert not attempt(folder).refused
    assert packet(folder) == NEW
    assert leftovers(root) == []
    return made.calls


def killed_at(folder: Path, at: int, patch: pytest.MonkeyPatch) -> bool:
    """Write in a process of its own that ends at call ``at``; whether it got so far."""
    child = os.fork()
    if child == 0:
        code = 1
        try:
            with struck(patch, killing(at)):
                output.write_all(folder, NEW)
            code = 0
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == KILLED


def judge_after_fault(root: Path, folder: Path, before: dict[str, bytes], was: dict[str, bytes], ended: Any) -> str:
    """What is wrong after a write that met a fault; blank when the packet is the old one or the new one, and truly
    told.
    """
    found = packet(folder)
    torn = "run it again, which puts the new ones" in ended.text
    if own(folder) != before:
        return f"the reader's own files: {own(folder)}"
    if torn:
        kept = Path(ended.text.split("whole in ")[1].split("/old,")[0])
        whole = {p.name: p.read_bytes() for p in (kept / "old").iterdir()} | {
            n: found[n] for n in found if found[n] == OLD[n]
        }
        return "" if whole == OLD and packet(folder, follow=True) == NEW else f"torn, and not kept: {whole}"
    if ended.refused and found != was:
        return f"refused, and {found}"
    if not ended.refused and found != NEW:
        return f"told as done, and {found}"
    return ""


def judge_next_run(root: Path, folder: Path, before: dict[str, bytes]) -> str:
    """What is wrong after the next run, which nothing disturbs; blank when all is as if nothing had happened."""
    output.write_all(folder, NEXT)
    if packet(folder) != NEXT:
        return f"after the next run: {packet(folder)}"
    if own(folder) != before:
        return f"the reader's own files after the next run: {own(folder)}"
    return f"left behind: {leftovers(root)}" if leftovers(root) else ""
