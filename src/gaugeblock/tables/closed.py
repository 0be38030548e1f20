"""Closed releases as the program carries them: what each file of refdata held, so that a changed row is noticed.

``closed.csv`` beside this module has, for each closed release, the digest of all its rows (blank file) and of the rows
of each file. ``closed_bytes.csv`` has the digest of each file as it stood, byte for byte, when the last of them was
closed: a file that is still so holds the rows of every closed release, without a look at each. A look-up works the
digest of a file's rows out when the file is new or was changed since the last time, and keeps in a small cache of the
user which file that was; a lost or damaged cache costs that work again, and nothing else.
"""

from __future__ import annotations

import os
import sys

from gaugeblock.errors import DataError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

HEADER = "version,file,sha256"
BYTES_HEADER = "file,sha256"
_CACHE_LIMIT = 200_000
_DO = "restore the tables as they were released, or run validate to see what is wrong"


def closed_file() -> str:
    """The file of digests in the package."""
    return os.path.join(os.path.dirname(os.path.abspath(__file__)), "closed.csv")


def bytes_file() -> str:
    """The file of the digests of whole files in the package."""
    return os.path.join(os.path.dirname(closed_file()), "closed_bytes.csv")


class Closed:
    """The digests of closed releases: ``whole`` by version, ``files`` by version and file."""

    __slots__ = ("files", "whole")

    def __init__(self) -> None:
        self.whole: dict[str, str] = {}
        self.files: dict[str, dict[str, str]] = {}
        try:
            with open(closed_file(), encoding="ascii") as handle:
                head, *lines = handle.read().split("\n")
        except (OSError, ValueError) as error:
            raise DataError("closed.csv", "installation", f"cannot be read: {error}", (), "install again") from None
        if head != HEADER:
            raise DataError("closed.csv", "installation", "not the digests of releases", (), "install again")
        for line in lines:
            version, _, rest = line.partition(",")
            file, _, digest = rest.partition(",")
            if file:
                self.files[version][file] = digest
            elif version:
                self.whole[version] = digest
                self.files[version] = {}

    def check_list(self, releases: Sequence[Mapping[str, str]]) -> None:
        """DataError when a release is not closed with the digest that is carried for it."""
        listed = {row["version"]: row["sha256"] for row in releases}
        for version, digest in self.whole.items():
            if listed.get(version) != digest:
                why = "this release was closed with another digest, which the program carries"
                raise DataError(version, "releases.csv", why, (), _DO)


_CARRIED: list[Closed] = []
_SEEN: list[str] = []


def carried() -> Closed:
    """The digests that the program carries, read once."""
    if not _CARRIED:
        _CARRIED.append(Closed())
    return _CARRIED[0]


def verify(version: str, file: str, path: str, rows: Callable[[], Sequence[Sequence[str]]]) -> None:
    """DataError when the rows of a file that live in a closed release are not those that were released."""
    expected = carried().files[version].get(file, "")
    mark = _mark(path, expected)
    if mark and mark in _known():
        return
    from gaugeblock.tables.releases import file_digest, released_files

    # what a release leaves out may change
    if file in released_files() and file_digest(file, rows(), version) != expected:
        why = f"not the rows that were released as {version}: a cell was changed, a row added or taken out"
        raise DataError(f"{file}.csv", f"data release {version}", why, (), _DO)
    if mark:
        _remember(mark)


def file_bytes(folder: str, names: Iterable[str]) -> list[tuple[str, str]]:
    """Each file of refdata with the sha256 (hex) of its bytes; OSError when one cannot be read."""
    import hashlib

    found = []
    for name in sorted(names):
        with open(os.path.join(folder, *name.split("/")) + ".csv", "rb") as handle:
            found.append((name, hashlib.sha256(handle.read()).hexdigest()))
    return found


def whole_as_closed(version: str, folder: str) -> str:
    """The digest of a closed release, where every file stands byte for byte as it was closed; blank elsewhere: then
    its rows must be looked at.
    """
    from gaugeblock.tables.releases import released_files

    whole = carried().whole.get(version, "")
    try:
        with open(bytes_file(), encoding="ascii") as handle:
            closed_so = handle.read()
        found = file_bytes(folder, released_files()) if whole else []
    except (OSError, ValueError):
        return ""
    return whole if closed_so == "\n".join([BYTES_HEADER, *map(",".join, found), ""]) else ""


def _mark(path: str, expected: str) -> str:
    try:
        s = os.stat(path)
    except OSError:
        return ""
    return f"\n{expected[:32]} {s.st_size} {s.st_mtime_ns} {s.st_ctime_ns} {s.st_ino} {path}\n"


def _cache() -> str:
    """The cache of this user; blank where a user has none."""
    if sys.platform == "win32":
        folder = os.environ.get("LOCALAPPDATA", "")
    else:
        home = os.path.expanduser("~")
        folder = os.environ.get("XDG_CACHE_HOME", "") or (home and os.path.join(home, ".cache"))
    return os.path.join(folder, "gaugeblock", "checked") if os.path.isabs(folder) else ""


def _known() -> str:
    if not _SEEN:
        try:
            with open(_cache(), encoding="utf-8", errors="replace") as handle:
                _SEEN.append(handle.read(_CACHE_LIMIT))
        except OSError:
            _SEEN.append("")
    return _SEEN[0]


def _remember(mark: str) -> None:
    path = _cache()
    _SEEN[:] = [_known() + mark]
    try:
        if not path:
            return
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        full = len(_SEEN[0]) >= _CACHE_LIMIT
        how = os.O_WRONLY | os.O_CREAT | (os.O_TRUNC if full else os.O_APPEND)
        handle = os.open(path, how | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0), 0o600)
        try:
            os.write(handle, mark.encode("utf-8", "replace"))
        finally:
            os.close(handle)
    except (OSError, ValueError):
        pass  # without a cache the next look-up works it out again
