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
    """The digests of closed releases: ``whole`` by version; of a file they are looked for when it is read."""

    __slots__ = ("_of", "_text", "whole")

    def __init__(self) -> None:
        self.whole: dict[str, str] = {}
        try:
            with open(closed_file(), "rb") as handle:
                head, _, lines = handle.read().decode("ascii").partition("\n")
        except (OSError, ValueError) as error:
            raise DataError("closed.csv", "installation", f"cannot be read: {error}", (), "install again") from None
        if head != HEADER:
            raise DataError("closed.csv", "installation", "not the digests of releases", (), "install again")
        self._text = f"\n{lines.rstrip()}\n"
        self._of: dict[str, dict[str, str]] = {}
        at = self._text.find(",,")  # the line of a release itself names no file
        while at >= 0:
            version = self._text[self._text.rfind("\n", 0, at) + 1 : at]
            self.whole[version] = self._text[at + 2 : self._text.find("\n", at)]
            at = self._text.find(",,", at + 1)

    def of(self, version: str, file: str) -> str:
        """The digest of a file's rows in a release; blank where it carries none."""
        got = self._of.get(version)
        if got is None:
            text, begins = self._text, f"\n{version},"
            last = text.rfind(begins)
            lines = text[text.find(begins) + 1 : text.find("\n", last + 1)].split("\n") if last >= 0 else []
            got = self._of[version] = {file: digest for _, file, digest in (line.split(",") for line in lines)}
        return got.get(file, "")

    def check_list(self, releases: Sequence[Mapping[str, str]]) -> None:
        """DataError when a release is not closed with the digest that is carried for it."""
        listed = {row["version"]: row["sha256"] for row in releases}
        for version, digest in self.whole.items():
            if listed.get(version) != digest:
                why = "this release was closed with another digest, which the program carries"
                raise DataError(version, "releases.csv", why, (), _DO)


_CARRIED: list[Closed] = []
_SEEN: list[set[str]] = []


def carried() -> Closed:
    """The digests that the program carries, read once."""
    if not _CARRIED:
        _CARRIED.append(Closed())
    return _CARRIED[0]


def verify(version: str, file: str, path: str, rows: Callable[[], Sequence[Sequence[str]]]) -> None:
    """DataError when the rows of a file that live in a closed release are not those that were released."""
    expected = carried().of(version, file)
    mark = _mark(path, expected)
    if mark and mark in _known():
        return
    from gaugeblock.tables.releases import file_digest, released_files

    # what a release leaves out may change
    if file in released_files() and file_digest(file, rows(), version) != expected:
        why = f"not the rows that were released as {version}: a cell was changed, a row added or taken out"
        raise DataError(f"{file}.csv", f"data release {version}", why, (), _DO)
    if mark:
        _remember([mark])


def path_of(folder: str, name: str) -> str:
    """Where a file of refdata stands, named without its ending."""
    return os.path.join(folder, *name.split("/")) + ".csv"


def file_bytes(folder: str, names: Iterable[str]) -> list[tuple[str, str]]:
    """Each file of refdata with the sha256 (hex) of its bytes; OSError when one cannot be read."""
    import hashlib

    found = []
    for name in sorted(names):
        with open(path_of(folder, name), "rb") as handle:
            found.append((name, hashlib.sha256(handle.read()).hexdigest()))
    return found


def whole_as_closed(version: str, folder: str) -> str:
    """The digest of a closed release, where every file is known to hold its rows or stands byte for byte as it was
    closed; blank elsewhere: then the rows must be looked at.
    """
    from gaugeblock.tables.releases import released_files

    whole = carried().whole.get(version, "")
    marks = [_mark(path_of(folder, name), carried().of(version, name)) for name in released_files()] if whole else []
    if whole and _known().issuperset(marks):
        return whole
    try:
        with open(bytes_file(), encoding="ascii") as handle:
            closed_so = handle.read()
        found = file_bytes(folder, released_files()) if whole else []
    except (OSError, ValueError):
        return ""
    if closed_so != "\n".join([BYTES_HEADER, *map(",".join, found), ""]):
        return ""
    _remember(mark for mark in marks if mark)
    return whole


def _mark(path: str, expected: str) -> str:
    try:
        s = os.stat(path)
    except OSError:
        return ""
    return f"{expected[:32]} {s.st_size} {s.st_mtime_ns} {s.st_ctime_ns} {s.st_ino} {path}"


def _cache() -> str:
    """The cache of this user; blank where a user has none."""
    if sys.platform == "win32":
        folder = os.environ.get("LOCALAPPDATA", "")
    else:
        home = os.path.expanduser("~")
        folder = os.environ.get("XDG_CACHE_HOME", "") or (home and os.path.join(home, ".cache"))
    return os.path.join(folder, "gaugeblock", "checked") if os.path.isabs(folder) else ""


def _known() -> set[str]:
    if not _SEEN:
        try:
            with open(_cache(), "rb") as handle:
                _SEEN.append({*handle.read(_CACHE_LIMIT).decode(errors="replace").split("\n")} - {""})
        except OSError:
            _SEEN.append(set())
    return _SEEN[0]


def _remember(marks: Iterable[str]) -> None:
    path = _cache()
    new = sorted({*marks} - _known())
    _known().update(new)
    try:
        if not path or not new:
            return
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        full = os.path.lexists(path) and os.lstat(path).st_size >= _CACHE_LIMIT
        how = os.O_WRONLY | os.O_CREAT | (os.O_TRUNC if full else os.O_APPEND)
        handle = os.open(path, how | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0), 0o600)
        try:
            os.write(handle, "".join(f"\n{mark}\n" for mark in new).encode("utf-8", "replace"))
        finally:
            os.close(handle)
    except (OSError, ValueError):
        pass  # without a cache the next look-up works it out again
