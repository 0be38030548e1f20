"""What a shop asks of shafts, gears and axles that hangs on no table: how it is, and what to ask instead.

Nothing here is a figure. A line is of such a subject where it has every one of its patterns and none of ``unless``.
"""

from __future__ import annotations

import re

from gaugeblock.answer.decision import none
from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.explained.gears import GEARS
from gaugeblock.plain.explained.steels import STEELS
from gaugeblock.plain.outside import not_looked_at, told_by

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# How a subject is called; a piece that its lines have, one of several; its patterns; what it must not have; what is
# told of it.
_EXPLAINED = (*GEARS, *STEELS)
_MARK = "Common practice, from memory."
CUES = frozenset(cue for _, cues, *_ in _EXPLAINED for cue in cues)


def explained(words: tuple[str, ...], data: Refdata) -> tuple[Sheet, str] | None:
    """The Sheet of a subject that is explained, and what of the line was not looked at; None where it is of none."""
    line = " ".join(words)
    for name, cues, patterns, unless, told in _EXPLAINED:
        if not any(cue in line for cue in cues):
            continue
        known = _all_of(patterns, line)
        if known and not (unless and re.search(_whole(unless), line)):
            sheet = Sheet(name, {"words": line}, data, [], [], (), decision=none("", f"{told} {_MARK}"))
            return sheet, not_looked_at(words, known)
    return None


def _all_of(patterns: tuple[str, ...], line: str) -> str:
    """What the patterns find in a line; blank where one finds nothing."""
    found = []
    for pattern in patterns:
        here = [told_by(match)[0] for match in re.finditer(_whole(pattern), line)]
        if not here:
            return ""
        found += here
    return " ".join(found)


def _whole(pattern: str) -> str:
    return rf"(?<![\w.])(?:{pattern})(?![\w.])"
