"""What is known of a shim pack, read once."""

from __future__ import annotations

import re

from gaugeblock.answer.making import read_positive
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.units import Measure

# Key -> the quantity that it is a figure of.
SIDE = {
    "backlash": "backlash",
    "wanted": "backlash",
    "per_shim": "backlash_per_shim",
    "move": "shim_move",
    "ring_side": "shim_pack",
    "other_side": "shim_pack",
    "preload": "shim_added",
}
PINION = {"shim": "shim_pack"}
MARKS = ("old_mark", "new_mark")
SIGNS = ("plus adds", "plus takes off")
# What is asked: the shim to move or to fit, or what a shim that was moved does to the backlash.
FACTS = SHIM, BACKLASH = ("shim", "backlash")
KEYS = (*SIDE, *PINION, *MARKS, "sign")
_MAY_BE_ZERO = ("backlash", "move", "preload")
_MARK = re.compile(r"[+-]?[0-9]{1,3}(?:\.[0-9])?", re.ASCII)
_MOST_MARK = 20.0


class Shims(Value):
    """The measures by key of SIDE and PINION, the pinion's marks as written on it, and what a plus means."""

    __slots__ = ("new_mark", "of", "old_mark", "sign")

    of: Mapping[str, Measure]
    old_mark: float | None
    new_mark: float | None
    sign: str | None

    def __init__(
        self,
        of: Mapping[str, Measure],
        old_mark: float | None = None,
        new_mark: float | None = None,
        sign: str | None = None,
    ) -> None:
        if sign is not None and sign not in SIGNS:
            raise InputError(sign, "sign", "not a meaning of a plus mark", SIGNS, "use one of these")
        is_pinion = "shim" in of or old_mark is not None or new_mark is not None
        side = [k for k in SIDE if k in of]
        if is_pinion and side:
            why = f"{side[0].replace('_', ' ')} is of the side bearings, shim and marks are of the pinion"
            raise InputError("shims", "shims", why, (), "ask for the two one after the other")
        put(self, "of", of)
        put(self, "old_mark", old_mark)
        put(self, "new_mark", new_mark)
        put(self, "sign", sign)

    @property
    def is_pinion(self) -> bool:
        """Whether it is the pinion's shim that is asked for."""
        return "shim" in self.of or self.old_mark is not None or self.new_mark is not None

    def get(self, key: str) -> Measure | None:
        """The measure under a key; None where it was not given."""
        return self.of.get(key)

    @classmethod
    def read(cls, typed: Mapping[str, Any]) -> Shims:
        """From texts as people write them, or measures that are read already, by key."""
        known = {}
        for key in (*SIDE, *PINION):
            given = typed.get(key)
            if given is not None:
                dimension = "ratio" if key == "per_shim" else "length"
                known[key] = read_positive(given, dimension, key.replace("_", " "), zero=key in _MAY_BE_ZERO)
        marks = [None if typed.get(k) is None else _mark(str(typed[k]), k.replace("_", " ")) for k in MARKS]
        return cls(known, marks[0], marks[1], typed.get("sign"))


def _mark(typed: str, where: str) -> float:
    text = typed.strip().replace("\u2212", "-")
    if _MARK.fullmatch(text) is None or abs(float(text)) > _MOST_MARK:
        raise InputError(typed, where, "not a mark of a pinion", (), "write it as it stands on the pinion: +2, -3, 0")
    return float(text)
