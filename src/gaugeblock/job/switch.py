"""Putting a set of files in the place of an earlier one: whole beside it first, then in one step.

Where the system can exchange two folders, the new folder takes the name of the old one, and what else stands in it
goes along. Elsewhere, and where a folder must stay the one it is (a mount, the working folder, folders within it),
the files change places one by one after a note says that they do; whoever comes next finishes what a dead process
began. All names that are not the reader's begin with ``MARK``.
"""

from __future__ import annotations

import contextlib
import errno
import os
import stat
import time
import zlib
from collections.abc import Iterator, Mapping

from gaugeblock.job.system import Content, exchange, fill, sync_folder

MARK = ".gaugeblock-"
_SWITCH = MARK + "switch-"
_NOTE = "begun"
_MANY = 200  # more of the reader's own files than this stay where they are, and the folder with them
_STALE_S = 3600.0


class Torn(Exception):
    """Some of the files are new, some old, and neither can be put right now; ``kept`` is where both wait whole."""

    def __init__(self, kept: str, error: OSError) -> None:
        super().__init__(kept)
        self.kept = kept
        self.error = error


class _Stays(Exception):
    """This folder cannot be exchanged for another."""


def place_new(folder: str, files: Mapping[str, Content]) -> None:
    """A folder that does not exist yet, with its files, in one step."""
    beside = _beside(folder, 0)
    os.mkdir(beside)
    try:
        for name, content in files.items():
            fill(os.path.join(beside, name), content)
        sync_folder(beside)
        os.rename(beside, folder)
    except BaseException:
        _sweep(beside)
        raise
    sync_folder(os.path.dirname(folder))


def replace(folder: str, files: Mapping[str, Content]) -> None:
    """The files of a folder that exists for new ones; all else in it stays. OSError, with the old ones there; or
    Torn.
    """
    for name in files:
        target = os.path.join(folder, name)
        if os.path.isdir(target) and not os.path.islink(target):
            raise IsADirectoryError(errno.EISDIR, "is a directory", target)
    try:
        _exchanged(folder, files)
    except _Stays:
        _one_by_one(folder, files)


def heal(folder: str, names: tuple[str, ...], alone: bool) -> None:
    """Finish or clear what dead processes left in and beside a folder; ``alone`` when no living one can be at work."""
    parent, _ = os.path.split(folder)
    for entry in _listed(parent):
        if entry.startswith(_prefix(folder)) and (alone or _is_stale(os.path.join(parent, entry))):
            _clear(os.path.join(parent, entry), folder, names)
    for entry in _listed(folder):
        path = os.path.join(folder, entry)
        if entry.startswith(_SWITCH) and (alone or _is_stale(path)):
            if os.path.lexists(os.path.join(path, _NOTE)):
                _forward(path, folder)
            _sweep(path)
        elif entry.startswith(MARK) and os.path.isfile(path) and (alone or _is_stale(path)):
            _earlier_leftover(path, entry, folder, names)


def current(path: str) -> str:
    """Where the content of a file stands now: itself, or what waits to take its place after a process died."""
    folder, name = os.path.split(path)
    for entry in _listed(folder or "."):
        if entry.startswith(_SWITCH):
            at = os.path.join(folder, entry)
            waiting = os.path.join(at, "new", name)
            if os.path.lexists(os.path.join(at, _NOTE)) and os.path.isfile(waiting):
                return waiting
    return path


def beside_file(path: str) -> str:
    """A name beside a file that is to be made, for its content until it is whole."""
    return _beside(path, 0)


def clear_beside(path: str, alone: bool) -> None:
    """Take away what dead processes left of a file that was to be made."""
    parent, _ = os.path.split(path)
    for entry in _listed(parent or "."):
        at = os.path.join(parent, entry)
        if entry.startswith(_prefix(path)) and os.path.isfile(at) and (alone or _is_stale(at)):
            _gone(at)


# One folder for another


def _exchanged(folder: str, files: Mapping[str, Content]) -> None:
    old = os.stat(folder)
    along = _going_along(folder, files)
    beside = _beside(folder, old.st_ino)
    try:
        os.mkdir(beside)
    except OSError as error:
        raise _Stays from error
    try:
        for name, content in files.items():
            fill(os.path.join(beside, name), content)
        _as_home(beside, folder, along, old)
        sync_folder(beside)
        try:
            exchange(beside, folder)
        except OSError as error:
            raise _Stays from error
        sync_folder(os.path.dirname(folder))
    finally:
        _clear(beside, folder, tuple(files))


def _going_along(folder: str, files: Mapping[str, Content]) -> list[str]:
    """What else stands in a folder; _Stays when it holds more than plain files, or someone stands in it."""
    along = []
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.name not in files:
                if not entry.is_file(follow_symlinks=False):
                    raise _Stays
                along.append(entry.name)
    if len(along) > _MANY or os.path.samefile(folder, os.curdir):
        raise _Stays
    return along


def _as_home(beside: str, folder: str, along: list[str], old: os.stat_result) -> None:
    """Give the new folder what the old one has: its owner, its permissions, and the reader's own files."""
    try:
        new = os.stat(beside)
        if (new.st_uid, new.st_gid) != (old.st_uid, old.st_gid):
            os.chown(beside, old.st_uid, old.st_gid)
        os.chmod(beside, stat.S_IMODE(old.st_mode))
        for name in along:
            os.link(os.path.join(folder, name), os.path.join(beside, name), follow_symlinks=False)
    except (OSError, AttributeError, NotImplementedError) as error:  # cannot be made alike: the old folder stays
        raise _Stays from error


def _clear(beside: str, folder: str, names: tuple[str, ...]) -> None:
    """Take a folder beside away: one that never got its place, or the old one. What is the reader's goes home."""
    try:
        was_home = str(os.stat(beside).st_ino) == beside.rsplit("-", 2)[1]
    except OSError:
        return
    for entry in _listed(beside):
        path, home = os.path.join(beside, entry), os.path.join(folder, entry)
        if not was_home or entry in names or _is_same(path, home):
            _gone(path)
        elif not os.path.lexists(home):
            try:
                os.rename(path, home)
            except OSError:
                return
    _sweep_empty(beside)


# File by file


def _one_by_one(folder: str, files: Mapping[str, Content]) -> None:
    at = os.path.join(folder, _SWITCH + _token())
    new, old = os.path.join(at, "new"), os.path.join(at, "old")
    note = os.path.join(at, _NOTE)
    had = [name for name in files if os.path.lexists(os.path.join(folder, name))]
    try:
        for path in (at, new, old):
            os.mkdir(path)
        for name, content in files.items():
            fill(os.path.join(new, name), content)
        for name in had:
            _keep(os.path.join(folder, name), os.path.join(old, name))
        for path in (new, old, at):
            sync_folder(path)
        fill(note, b"")
        sync_folder(at)
        for name in files:
            os.replace(os.path.join(new, name), os.path.join(folder, name))
        sync_folder(folder)
    except BaseException as error:
        if not os.path.lexists(note):
            _sweep(at)
            raise
        _back(at, folder, files, had, error)
        raise
    _gone(note)
    _sweep(at)


def _keep(path: str, kept: str) -> None:
    """The old file under a second name, or a copy where a file has but one name."""
    try:
        os.link(path, kept)
    except (OSError, AttributeError, NotImplementedError):  # a file system without second names: copied instead
        with open(path, "rb") as handle:
            fill(kept, handle.read())


def _back(at: str, folder: str, files: Mapping[str, Content], had: list[str], error: BaseException) -> None:
    """Put the old files back, those that lost their place; Torn when that fails too."""
    new, old = os.path.join(at, "new"), os.path.join(at, "old")
    placed = [name for name in files if not os.path.lexists(os.path.join(new, name))]
    try:
        for name in placed:
            if name in had:
                os.replace(os.path.join(old, name), os.path.join(folder, name))
            else:
                os.unlink(os.path.join(folder, name))
        os.unlink(os.path.join(at, _NOTE))
    except OSError as second:
        if placed:
            raise Torn(at, second) from None
        if isinstance(error, OSError):  # nothing has moved, but the note cannot be taken away: its files must go first
            _sweep(new)
    _sweep(at)


def _forward(at: str, folder: str) -> None:
    """Finish what a note says was begun. OSError when that cannot be: nothing else may be written then."""
    new = os.path.join(at, "new")
    for name in sorted(os.listdir(new)) if os.path.isdir(new) else ():
        os.replace(os.path.join(new, name), os.path.join(folder, name))
    sync_folder(folder)
    _gone(os.path.join(at, _NOTE))


def _earlier_leftover(path: str, entry: str, folder: str, names: tuple[str, ...]) -> None:
    """Leftovers as ``MARK`` PID ``-`` number ``.old``: the old file goes back where its place is empty."""
    stem, _, kind = entry.rpartition(".")
    number = stem.rpartition("-")[2]
    if kind == "old" and number.isascii() and number.isdigit() and int(number) < len(names):
        target = os.path.join(folder, names[int(number)])
        if not os.path.lexists(target):
            os.rename(path, target)
            return
    _gone(path)


# Names, and taking away


def _token() -> str:
    return os.urandom(6).hex()


def _prefix(place: str) -> str:
    name = os.path.basename(place)
    return f"{MARK}{zlib.crc32(os.fsencode(name)):08x}-"


def _beside(place: str, number: int) -> str:
    return os.path.join(os.path.dirname(place), f"{_prefix(place)}{number}-{_token()}")


def _listed(folder: str) -> Iterator[str]:
    try:
        yield from sorted(os.listdir(folder))
    except OSError:
        return


def _is_stale(path: str) -> bool:
    try:
        return time.time() - os.lstat(path).st_mtime > _STALE_S
    except OSError:
        return False


def _is_same(path: str, other: str) -> bool:
    try:
        return os.path.samestat(os.lstat(path), os.lstat(other))
    except OSError:
        return False


def _gone(path: str) -> None:
    with contextlib.suppress(OSError):
        os.unlink(path)


def _sweep_empty(folder: str) -> None:
    with contextlib.suppress(OSError):
        os.rmdir(folder)


def _sweep(folder: str) -> None:
    """Take away a folder of ours with all in it, as far as that can be; what stays goes with the next run."""
    for entry in _listed(folder):
        path = os.path.join(folder, entry)
        if os.path.isdir(path) and not os.path.islink(path):
            _sweep(path)
        else:
            _gone(path)
    _sweep_empty(folder)
