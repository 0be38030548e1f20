"""What a shop asks of shafts, gears and axles that rules alone have, and what to ask instead.

Nothing here is a figure. A line is of such a subject where it has every one of its patterns and none of ``unless``;
what is told of it are the statements of its rules.
"""

from __future__ import annotations

from gaugeblock.answer.decision import none
from gaugeblock.answer.patterns import compiled
from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.explained.gears import GEARS
from gaugeblock.plain.explained.steels import STEELS
from gaugeblock.plain.outside import left_of, not_looked_at, told_by
from gaugeblock.plain.subjects.general import is_of_more

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# How a subject is called; a piece that its lines have, one of several; its patterns; what it must not have; the subject
# of its rules; what else to know or to ask.
_EXPLAINED = (*GEARS, *STEELS)
_MARK = "Common practice, from memory."
CUES = frozenset(cue for _, cues, *_ in _EXPLAINED for cue in cues)


def explained(words: tuple[str, ...], data: Refdata) -> tuple[Sheet, str] | None:
    """The Sheet of a subject that is explained, and what of the line was not looked at; None where it is of none."""
    line = " ".join(words)
    for name, cues, patterns, unless, subject, then in _EXPLAINED:
        if not any(cue in line for cue in cues):
            continue
        known = _all_of(patterns, line)
        if known and not (unless and compiled(_whole(unless)).search(line)) and not is_of_more(left_of(words, known)):
            told = f"{_told(subject, data)} {then}".rstrip()
            sheet = Sheet(name, {"words": line}, data, [], [], (), decision=none("", told))
            return sheet, not_looked_at(words, known)
    return None


def _told(subject: str, data: Refdata) -> str:
    """What the rules of a subject state, and how far to trust it."""
    from gaugeblock.finding import rules

    held = [e.rule for e in rules(data) if e.rule is not None and e.rule["subject"] == subject]
    marks = {_MARK if rule["checked"] == "memory" else "Common practice." for rule in held}
    return " ".join([*(rule["statement"] for rule in held), *sorted(marks)])


def _all_of(patterns: tuple[str, ...], line: str) -> str:
    """What the patterns find in a line; blank where one finds nothing."""
    found = []
    for pattern in patterns:
        here = [told_by(match)[0] for match in compiled(_whole(pattern)).finditer(line)]
        if not here:
            return ""
        found += here
    return " ".join(found)


def _whole(pattern: str) -> str:
    return rf"(?<![\w.])(?:{pattern})(?![\w.])"
