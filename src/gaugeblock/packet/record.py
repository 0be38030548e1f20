"""Reading the record of a packet from its packet.json."""

from __future__ import annotations

import json
import os
import stat
from typing import Any

from gaugeblock.errors import InputError
from gaugeblock.job.switch import current

# The packet of a job as large as may be has some 50 MB.
_LARGEST = 200_000_000
_DO = "give the packet.json of a packet"


def read_record(path: str | os.PathLike[str]) -> dict[str, Any]:
    """The record of a packet.json; InputError when it is not one."""
    name = os.fspath(path)

    def refuse(why: str) -> InputError:
        return InputError(name.encode("utf-8", "backslashreplace").decode(), "audit", why, (), _DO)

    try:
        found = os.stat(name)
        if stat.S_ISDIR(found.st_mode):
            raise refuse("a folder, not a file")
        if not stat.S_ISREG(found.st_mode):
            raise refuse("not an ordinary file")
        if found.st_size > _LARGEST:
            raise refuse(f"too large for a packet ({found.st_size // 1_000_000} MB)")
        with open(current(name), encoding="utf-8") as handle:
            text = handle.read(_LARGEST + 1)
    except InputError:
        raise
    except OSError as error:
        raise refuse(f"cannot be read ({(error.strerror or str(error)).lower()})") from None
    except UnicodeDecodeError:
        raise refuse("not JSON: it is not text") from None
    except ValueError as error:
        raise refuse(f"cannot be read ({error})") from None
    return _parsed(text, refuse)


def _parsed(text: str, refuse: Any) -> dict[str, Any]:
    try:
        record = json.loads(text)
    except json.JSONDecodeError as error:
        cut = "not JSON: it ends too early" if error.pos >= len(text.rstrip()) - 1 else "not JSON"
        raise refuse(f"{cut} (line {error.lineno}, column {error.colno})") from None
    except (ValueError, RecursionError):
        raise refuse("not JSON that a packet can hold") from None
    if not isinstance(record, dict):
        raise refuse("not a packet")
    return record
