"""What a packet may be written over: an earlier packet of the same build that was never issued, or the same one
again.
"""

from __future__ import annotations

import json
import os
from typing import Any, BinaryIO

from gaugeblock.errors import OutputError
from gaugeblock.job.values import shown

PAPERS = ("packet.md", "packet.html")
RECORD = "packet.json"
_LARGEST = 200_000_000
_HEAD = 64_000  # bytes in which the first lines stand


def refuse(folder: str, record: dict[str, Any]) -> None:
    """OutputError when ``folder`` holds files of these names that are not ours, or a paper that was issued."""
    there = [name for name in (*PAPERS, RECORD) if os.path.lexists(os.path.join(folder, name))]
    if not there:
        return
    earlier = _document(os.path.join(folder, RECORD))
    if earlier is None:
        why = "a file of that name is there, and no packet of this program beside it"
        raise _refusal(folder, there[0], why if there[0] != RECORD else "it is not a packet of this program")
    for name in PAPERS:
        if name in there and not _holds(os.path.join(folder, name), str(earlier["digest"])[:12]):
            raise _refusal(folder, name, "it is not the paper of the packet.json beside it")
    _issued(folder, earlier, record["document"])


def _issued(folder: str, earlier: dict[str, Any], document: dict[str, Any]) -> None:
    if not earlier.get("issued") or earlier["digest"] == document["digest"]:
        return
    same = all(earlier.get(key) == document.get(key) for key in ("identification", "revision"))
    if same and str(earlier.get("status") or "draft").startswith("draft"):
        return
    named = f"revision {earlier.get('revision') or '(none)'} of {earlier.get('identification') or 'a build'}"
    why = f"{shown(named, 120)}, issued {shown(str(earlier['issued']), 20)}, is in this folder"
    why += ", and the new packet says something else" if same else ""
    raise _refusal(folder, "", why)


def _refusal(folder: str, name: str, why: str) -> OutputError:
    safe = os.path.join(folder, name) if name else folder
    safe = safe.encode("utf-8", "backslashreplace").decode()
    do = "name another folder for the new packet, or move the earlier one away; nothing was written"
    return OutputError(shown(safe, 200), "output", why, (), do)


def _document(path: str) -> dict[str, Any] | None:
    """The document of a packet.json of this program; None for anything else."""
    try:
        if not os.path.isfile(path) or os.path.getsize(path) > _LARGEST:
            return None
        with open(path, "rb") as handle:
            record = _top(handle)
        document = record["document"]
        ours = str(record["program"]).startswith("gaugeblock") and type(record["contract"]) is int
        return document if ours and len(document["digest"]) == 64 else None
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None


def _top(handle: BinaryIO) -> Any:
    """What a record says of itself: its first three lines as this program writes them, else all of it."""
    *first, _ = handle.read(_HEAD).split(b",\n", 3)
    if len(first) == 3:
        handle.seek(-2, os.SEEK_END)
        if handle.read() == b"}\n":
            try:
                return json.loads(b",".join(first) + b"}")
            except ValueError:
                pass
    handle.seek(0)
    return json.loads(handle.read())


def _holds(path: str, mark: str) -> bool:
    try:
        if not os.path.isfile(path) or os.path.getsize(path) > _LARGEST:
            return False
        with open(path, "rb") as handle:
            return mark.encode() in handle.read()
    except OSError:
        return False
