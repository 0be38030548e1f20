"""Writing files all or nothing: whoever looks finds the old ones or the new ones, each set whole."""

from __future__ import annotations

import contextlib
import errno
import os
from collections.abc import Callable, Mapping

from gaugeblock.errors import OutputError
from gaugeblock.job.switch import MARK, Torn, beside_file, clear_beside, heal, place_new, replace
from gaugeblock.job.system import Busy, Content, fill, lock, sync_folder
from gaugeblock.job.values import shown

_REASONS = {
    errno.ENOENT: ("the folder above it does not exist", "make that folder first"),
    errno.ENOTDIR: ("a file stands where a folder is needed", "name a folder"),
    errno.EEXIST: ("something of that name is already there", "choose another name, or move it away"),
    errno.ENOTEMPTY: ("something of that name is already there", "choose another name, or move it away"),
    errno.EISDIR: ("a folder of that name is already there", "choose another name"),
    errno.EACCES: ("not writable", "choose a folder that you may write to"),
    errno.EPERM: ("not writable", "choose a folder that you may write to"),
    errno.EROFS: ("not writable", "choose a folder that you may write to"),
    errno.ENAMETOOLONG: ("the name is too long", "choose a shorter one"),
    errno.ENOSPC: ("the disk is full", "make room"),
    errno.EDQUOT: ("your share of the disk is full", "make room"),
    errno.EFBIG: ("the file would be larger than is allowed here", "make room"),
    errno.ELOOP: ("the links lead in a circle", "name the folder itself"),
}


def write_all(
    folder: str | os.PathLike[str], files: Mapping[str, Content], allows: Callable[[str], None] | None = None
) -> None:
    """Write ``files`` (name -> content) into ``folder``, made when its parent exists; other files in it stay.

    ``allows`` looks at a folder that exists before anything in it is replaced, and raises what speaks against it.
    OutputError when the files cannot be written; nothing is changed then, or the message says what is and where
    both sets are kept. What a process that was killed has left is put right first.
    """
    place = os.fspath(folder)
    if not place:
        raise OutputError("output folder", "", "no name is given", (), "name a folder")
    at = place
    try:
        for name in files:
            at = os.path.join(place, name)
            if os.path.basename(name) != name or name in ("", ".", "..") or "\0" in name:
                do = "name a file without a folder"
                raise OutputError(shown(name, 200), "output", "not a plain file name", (), do)
        at = place
        real = _real(place)
        with lock(os.path.dirname(real)) as alone:
            heal(real, tuple(files), alone)
            if not os.path.isdir(real):
                place_new(real, files)
                return
            if allows is not None:
                allows(place)
            if not os.access(real, os.W_OK | os.X_OK):
                raise PermissionError(errno.EACCES, "not writable", place)
            replace(real, files)
    except (OSError, ValueError, Busy, Torn) as error:
        if isinstance(error, OutputError):
            raise
        raise _refusal(error, at) from None


def write_new(path: str | os.PathLike[str], content: bytes) -> None:
    """Write one file that must not exist yet. OutputError, with nothing left, when it does or cannot be written."""
    place = os.fspath(path)
    if not place:
        raise OutputError("output file", "", "no name is given", (), "name a file")
    try:
        with lock(os.path.dirname(os.path.abspath(place))) as alone:
            clear_beside(place, alone)
            if os.path.lexists(place):
                raise FileExistsError(errno.EEXIST, "exists", place)
            _place_file(place, content)
    except (OSError, ValueError, Busy) as error:
        raise _refusal(error, place) from None


def _place_file(place: str, content: bytes) -> None:
    beside = beside_file(place)
    try:
        fill(beside, content)
        try:
            os.link(beside, place)  # unlike a rename, never over a file that has come in between
        except FileExistsError:
            raise
        except (OSError, AttributeError, NotImplementedError):  # a file system without second names: renamed instead
            os.rename(beside, place)
        sync_folder(os.path.dirname(place) or os.curdir)
    finally:
        with contextlib.suppress(OSError, ValueError):
            os.unlink(beside)


def _real(place: str) -> str:
    """The folder itself, behind links; the place as named where there is none yet."""
    if os.path.isdir(place):
        return os.path.realpath(place)
    if os.path.lexists(place):
        raise FileExistsError(errno.EEXIST, "exists", place)
    whole = os.path.abspath(place)
    return os.path.join(os.path.realpath(os.path.dirname(whole)), os.path.basename(whole))


def _refusal(error: Exception, place: str) -> OutputError:
    """The system's error as one message about the file or folder it happened at."""
    if isinstance(error, Busy):
        do = "wait until that is done, then run it again"
        return OutputError(_safe(place), "output", "another gaugeblock is writing here", (), do)
    if isinstance(error, Torn):
        why = f"only some of the files could be replaced ({error.error.strerror}); the earlier ones are whole in "
        why += (
            f"{_safe(os.path.join(error.kept, 'old'))}, the new ones are here and in"
            f" {_safe(os.path.join(error.kept, 'new'))}"
        )
        return OutputError(_safe(place), "output", why, (), "run it again, which puts the new ones in their places")
    at = place
    number = error.errno if isinstance(error, OSError) else None
    if isinstance(error, OSError) and error.filename2 is None and isinstance(error.filename, str):
        at = place if MARK in error.filename else error.filename
    why, do = _REASONS.get(number or 0, (f"cannot be written: {_words(error)}", "choose another place"))
    if number == errno.EEXIST and not os.path.isdir(at):
        why, do = "a file of that name is already there", "choose another name, or move it away"
    return OutputError(_safe(at), "output", why, (), do)


def _words(error: Exception) -> str:
    return error.strerror if isinstance(error, OSError) and error.strerror else str(error)


def _safe(path: str) -> str:
    return shown(path.encode("utf-8", "backslashreplace").decode(), 200)
