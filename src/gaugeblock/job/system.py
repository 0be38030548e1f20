"""What the system may lend to a safe writer: an exchange of two folders in one step, and a lock that ends with its
process.

Both are asked for when they are needed. Where a system has neither, the writer does without.
"""

from __future__ import annotations

import contextlib
import errno
import os
import sys
import time
from collections.abc import Iterator, Sequence
from typing import TypeAlias

WAIT_S = 20.0
_HERE = -100  # AT_FDCWD: names are looked up from the working folder
_EXCHANGE = 2  # RENAME_EXCHANGE of Linux, RENAME_SWAP of macOS
_UNSUPPORTED = (errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS, errno.EINVAL, errno.EBADF)


# What a file is to hold, whole or in pieces: to put millions of bytes together first takes a copy of them all.
Content: TypeAlias = bytes | Sequence[bytes]


class Busy(Exception):
    """Another process holds the lock, and has not let go of it for ``WAIT_S`` seconds."""


def exchange(one: str, other: str) -> None:
    """Let two folders change names in one step. OSError, with nothing changed, when the system cannot."""
    try:
        import ctypes

        library = ctypes.CDLL(None, use_errno=True)
        names = (os.fsencode(one), os.fsencode(other))
        if sys.platform == "darwin":
            failed = library.renamex_np(*names, _EXCHANGE)
        else:
            failed = library.renameat2(_HERE, names[0], _HERE, names[1], _EXCHANGE)
    except (ImportError, AttributeError, TypeError, OSError):
        raise OSError(errno.ENOSYS, "folders cannot be exchanged here") from None
    if failed:
        number = ctypes.get_errno()
        raise OSError(number, os.strerror(number), other)


@contextlib.contextmanager
def lock(folder: str) -> Iterator[bool]:
    """Hold a folder for one process at a time; False where the system has no such lock. Busy when it stays taken."""
    try:
        import fcntl

        handle = os.open(folder, os.O_RDONLY)
    except (ImportError, OSError):
        yield False
        return
    try:
        yield _taken(fcntl.flock, handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    finally:
        with contextlib.suppress(OSError):  # it lets go of the folder whatever it says
            os.close(handle)


def _taken(flock: object, handle: int, how: int) -> bool:
    until = time.monotonic() + WAIT_S
    while True:
        try:
            flock(handle, how)  # type: ignore[operator]
        except OSError as error:
            if error.errno in _UNSUPPORTED:
                return False
            if error.errno not in (errno.EAGAIN, errno.EACCES, errno.EINTR) or time.monotonic() > until:
                raise Busy from None
            time.sleep(0.02)
        else:
            return True


def sync_folder(folder: str) -> None:
    """Make the new names in a folder last through a power cut, where the system lets a folder be synced."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def fill(path: str, content: Content) -> None:
    """Write a file that must not exist yet, down to the disk. OSError when it cannot be; a part of it may stand
    then.
    """
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    with os.fdopen(handle, "wb") as out:
        out.writelines((content,) if isinstance(content, bytes) else content)
        out.flush()
        os.fsync(out.fileno())
