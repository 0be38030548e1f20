"""A bare number that was taken for inches in a line that speaks of millimetres: its unit is asked."""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.plain.reading import Reading

_INCHES = frozenset(["inch", "inches", "ins", '"'])
_TAKEN = re.compile(r"(?P<n>[0-9]+) in(?: [a-z].*)?")


def ask_unit(words: tuple[str, ...], reading: Reading) -> None:
    """InputError where an option was read as so many whole inches that nobody said, and the line has millimetres and
    nothing in inches: ``3 mm r3``.
    """
    if "mm" not in words or not _INCHES.isdisjoint(words) or any(map(_is_of_inches, words)):
        return
    if any(after == "in" and before[:1].isdigit() for before, after in pairwise(words)):
        return
    for key, value in reading.values.items():
        taken = _TAKEN.fullmatch(value)
        if taken is not None:
            number = taken["n"]
            why = "millimetres or inches? the rest of the line is in millimetres"
            raise InputError(number, key, why, (), f"say {number} mm, or {number} in")


def _is_of_inches(word: str) -> bool:
    """Whether a number is written as inches are: a fraction, ``.120``."""
    return "/" in word or word[:1] == "."
