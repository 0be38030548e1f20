"""Writing files all or nothing: after a failure no new file is left and the old ones are as they were."""

from __future__ import annotations

import errno
import os
from collections.abc import Mapping

from gaugeblock.errors import OutputError
from gaugeblock.job.values import shown

_REASONS = {
    errno.ENOENT: ("the folder above it does not exist", "make that folder first"),
    errno.ENOTDIR: ("a file stands where a folder is needed", "name a folder"),
    errno.EEXIST: ("something of that name is already there", "choose another name, or move it away"),
    errno.EISDIR: ("a folder of that name is already there", "choose another name"),
    errno.EACCES: ("not writable", "choose a folder that you may write to"),
    errno.EPERM: ("not writable", "choose a folder that you may write to"),
    errno.EROFS: ("not writable", "choose a folder that you may write to"),
    errno.ENAMETOOLONG: ("the name is too long", "choose a shorter one"),
    errno.ENOSPC: ("the disk is full", "make room"),
    errno.EFBIG: ("the file would be larger than is allowed here", "make room"),
    errno.ELOOP: ("the links lead in a circle", "name the folder itself"),
}


def write_all(folder: str | os.PathLike[str], files: Mapping[str, bytes]) -> None:
    """Write ``files`` (name -> content) into ``folder``, made when its parent exists.

    OutputError when that cannot be; nothing is changed then.
    """
    place = os.fspath(folder)
    at = place
    made = False
    try:
        if not place:
            raise OutputError("output folder", "", "no name is given", (), "name a folder")
        if not os.path.isdir(place):
            os.mkdir(place)
            made = True
        for name in files:
            at = os.path.join(place, name)
            if os.path.basename(name) != name or name in ("", ".", ".."):
                do = "name a file without a folder"
                raise OutputError(shown(name, 200), "output", "not a plain file name", (), do)
        at = place
        _Exchange(place, files).run()
    except BaseException as error:
        if made:
            os.rmdir(place)
        if isinstance(error, (OSError, ValueError)) and not isinstance(error, OutputError):
            raise _refusal(error, at) from None
        raise


def write_new(path: str | os.PathLike[str], content: bytes) -> None:
    """Write one file that must not exist yet. OutputError, with nothing left, when it does or cannot be written."""
    place = os.fspath(path)
    if not place:
        raise OutputError("output file", "", "no name is given", (), "name a file")
    try:
        handle = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        try:
            _fill(handle, content)
        except BaseException:
            os.unlink(place)
            raise
    except (OSError, ValueError) as error:
        raise _refusal(error, place) from None


class _Exchange:
    """One set of new files for one folder: written beside the old ones, then put in their place."""

    def __init__(self, folder: str, files: Mapping[str, bytes]) -> None:
        self.folder = folder
        self.files = files
        self.new: dict[str, str] = {}
        self.old: dict[str, str] = {}
        self.placed: list[str] = []

    def run(self) -> None:
        """Do it, or undo all of it."""
        try:
            for number, (name, content) in enumerate(self.files.items()):
                self._write(number, name, content)
            for number, name in enumerate(self.files):
                self._place(number, name)
        except BaseException:
            self._undo()
            raise
        for path in self.old.values():
            os.unlink(path)
        _sync_folder(self.folder)

    def _beside(self, number: int, kind: str) -> str:
        return os.path.join(self.folder, f".gaugeblock-{os.getpid()}-{number}.{kind}")

    def _write(self, number: int, name: str, content: bytes) -> None:
        path = self._beside(number, "new")
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        self.new[name] = path
        _fill(handle, content)

    def _place(self, number: int, name: str) -> None:
        target = os.path.join(self.folder, name)
        if os.path.isdir(target):
            raise IsADirectoryError(errno.EISDIR, "is a directory", target)
        if os.path.lexists(target):
            keep = self._beside(number, "old")
            os.rename(target, keep)
            self.old[name] = keep
        try:
            os.rename(self.new[name], target)
        except OSError as error:
            raise OSError(error.errno, error.strerror, target) from None
        del self.new[name]
        self.placed.append(target)

    def _undo(self) -> None:
        for path in (*self.placed, *self.new.values()):
            os.unlink(path)
        for name, keep in self.old.items():
            os.rename(keep, os.path.join(self.folder, name))


def _fill(handle: int, content: bytes) -> None:
    with os.fdopen(handle, "wb") as out:
        out.write(content)
        out.flush()
        os.fsync(out.fileno())


def _sync_folder(folder: str) -> None:
    """Make the new names last through a power cut, where the system lets a folder be synced."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(handle)
    except OSError:
        pass
    finally:
        os.close(handle)


def _refusal(error: OSError | ValueError, place: str) -> OutputError:
    """The system's error as one message about the file or folder it happened at."""
    at = place
    if isinstance(error, OSError) and error.filename2 is None and isinstance(error.filename, str):
        at = place if os.path.basename(error.filename).startswith(".gaugeblock-") else error.filename
    number = error.errno if isinstance(error, OSError) else None
    why, do = _REASONS.get(number or 0, (f"cannot be written: {error}", "choose another place"))
    if number == errno.EEXIST and not os.path.isdir(at):
        why, do = "a file of that name is already there", "choose another name, or move it away"
    safe = at.encode("utf-8", "backslashreplace").decode()
    return OutputError(shown(safe, 200), "output", why, (), do)
