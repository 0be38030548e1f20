"""A table of a job written as one text, as the commands take it: a shape, a test bend."""

from __future__ import annotations

from gaugeblock.errors import InputError
from gaugeblock.listed import items

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

# The measures of a shape in words.
SHAPES = {
    "single": ("first", "second", "angle"),
    "offset": ("rise", "angle", "before", "after"),
    "clear": ("od", "width", "spacing", "height", "at", "span", "gap", "angle"),
    "kick_up": ("flat", "width", "rise", "angle", "foot", "second rise", "second angle", "second foot"),
    "section": ("length", "torque"),
}
_FIRST = {
    "single": "first 6 in, angle 45 deg",
    "clear": "od 6 in, angle 45 deg",
    "section": "length 30 in, torque 200 lbf*ft",
}


def shape(name: str, text: str, where: str = "") -> dict[str, Any]:
    """``rise 6 in, angle 45 deg`` as keys of the shape; InputError for a measure that it has not."""
    known: Sequence[str] = SHAPES[name]
    where = where or name
    out: dict[str, Any] = {}
    second: dict[str, str] = {}
    for part in items(text, where):
        words = part.split()
        key = next((k for k in known if words[: len(k.split())] == k.split()), None)
        if key is None:
            do = f'write "{_FIRST.get(name, "rise 6 in, angle 45 deg")}"'
            raise InputError(part.strip()[:60] or "(blank)", where, "not a measure of this shape", known, do)
        value = " ".join(words[len(key.split()) :])
        if key in out or key.removeprefix("second ") in second:
            raise InputError(key, where, "given twice", (), "say it once")
        if key.startswith("second "):
            second[key.removeprefix("second ")] = value
        else:
            out[key] = value
    if out.get("flat") and out.get("width"):
        raise InputError("width", where, "both flat and width are given", (), "give the flat, or the width over all")
    return {**out, **({"second": second} if second else {})}


def trial_bend(text: str, where: str = "test bend") -> dict[str, str]:
    """``47 deg set, 45 deg got`` as a test bend."""
    parts = {p.split()[-1]: " ".join(p.split()[:-1]) for p in items(text, where) if p.split()}
    if set(parts) != {"set", "got"}:
        raise InputError(text[:60], where, "not a test bend", (), 'write "47 deg set, 45 deg got"')
    return {"pulled": parts["set"], "released": parts["got"]}
