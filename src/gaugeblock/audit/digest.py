"""The digest of a packet's record: its JSON in one order and one spelling."""

from __future__ import annotations

import hashlib
import json

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

_compact = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), sort_keys=True).encode


def record_digest(record: dict[str, Any]) -> str:
    """sha256 (hex) of a packet's record, its own digest left blank."""
    return digest_of(encoded({**record, "document": {**record["document"], "digest": ""}}))


def encoded(record: dict[str, Any]) -> dict[str, list[str]]:
    """Each top-level value of a record as compact JSON with sorted keys: one text, or one an entry and brackets
    round them.
    """
    return {
        key: ["[", *map(_compact, value), "]"] if isinstance(value, list) else [_compact(value)]
        for key, value in record.items()
    }


def encoded_sheets(sheets: list[dict[str, Any]]) -> list[str]:
    """The sheets of a record that was just made, as in ``encoded``: a figure below many answers is put into text
    once. Measured on the demo, two million characters: half the time of the encoder alone.
    """
    made: dict[int, str] = {}

    def text(figure: dict[str, Any]) -> str:
        got = made.get(id(figure))
        if got is None:
            # a quote inside a text is escaped, so these stand for the two lists and for nothing else
            got = _compact({**figure, "inputs": [], "others": []})
            for name in ("inputs", "others"):
                got = got.replace(f'"{name}":[]', f'"{name}":[{",".join(map(text, figure[name]))}]', 1)
            made[id(figure)] = got
        return got

    def part(name: str, value: Any) -> str:
        return f'"{name}":[{",".join(map(text, value))}]' if name == "figures" else f'"{name}":{_compact(value)}'

    return ["{" + ",".join(part(name, sheet[name]) for name in sorted(sheet)) + "}" for sheet in sheets]


def digest_of(parts: dict[str, list[str]]) -> str:
    """sha256 (hex) of an encoded record: compact JSON with sorted keys, the digest in it blank."""
    # piece by piece: a packet's record is millions of characters, and each copy of it takes its time
    whole = hashlib.sha256()
    before = "{"
    for key, (first, *rest) in sorted(parts.items()):
        whole.update(f"{before}{json.dumps(key)}:{first}".encode())
        for at, entry in enumerate(rest):
            whole.update(f",{entry}".encode() if 0 < at < len(rest) - 1 else entry.encode())
        before = ","
    whole.update(b"}")
    return whole.hexdigest()
