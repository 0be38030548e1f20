"""A line that goes on from the question before it: ``same but oiled``, ``what about M10``, ``and in aluminium?``."""

from __future__ import annotations

import re

from gaugeblock.errors import InputError
from gaugeblock.plain.chatter import CHATTER
from gaugeblock.plain.reading import Reading, read

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# A line that begins so cannot be read by itself.
_SAME = re.compile(
    r"(?:and |now |ok |then )*(?:the )?(?:same|ditto|as above|as before)(?: (?:again|thing|one|question|bolt|tube"
    r"|wire))?"
    r"(?: (?:but|with|in|into|for|only|just|except|now|on|at|and|if))+(?= |$)|(?:same again|ditto)(?= |$)"
    r"|(?:the )?(?:same|as)(?: as)? (?:before|above|last time)$"
    r"|and (?:in|into|with|if|on)(?= |$)"
)
# And one that may go on.
_GOES_ON = re.compile(
    r"(?:(?:and|but|or|so|then|now|ok|also) )*(?:what about|how about|what if|and|but|or|instead)"
    r"(?: (?:it|it's|its|is|the|a|an|with|in|into|for|on|at|if|i|we|use|used|using))*(?= |$)"
)
_INSTEAD = re.compile(r"(?:instead of|rather than|and not|not)(?: the| a| an)? (?P<old>.+)$")


def is_part(words: tuple[str, ...]) -> bool:
    """Whether a line says by its first words that it is no whole question."""
    return _SAME.match(" ".join(words)) is not None


def refuse(words: tuple[str, ...]) -> None:
    """InputError for a line that goes on from another, where none was asked before."""
    if is_part(words):
        why = "this goes on from another question, and each line is read by itself"
        raise InputError(" ".join(words)[:60], "", why, (), "say the whole question")


def followed(words: tuple[str, ...], last: Reading, data: Refdata) -> Reading | None:
    """The last question with what a line puts in place of it; None where the line is no such one, or where a word of
    it is not a value of what was asked.
    """
    line = " ".join(words)
    begins = _SAME.match(line) or _GOES_ON.match(line)
    if begins is None:
        return None
    rest = line[begins.end() :].strip()
    old = _INSTEAD.search(rest)
    if old is not None:
        rest = rest[: old.start()].strip()
        if not _is_in(old["old"], last):
            return None
    again = read(tuple(rest.split()), last.topic, data) if rest else None
    if again is None or again.unread or not (again.values or again.unit):
        return None
    values, said = {**last.values, **again.values}, {**last.said, **again.said}
    ordered = {key: said[key] for key in last.topic.slots if key in said}
    return last.replace(values=values, said=ordered, unit=again.unit or last.unit, mended=(), aside=again.aside)


def _is_in(old: str, last: Reading) -> bool:
    """Whether what a line takes back was said before it, or is nothing."""
    told = " ".join((*last.said.values(), *last.values.values())).casefold().split()
    return all(word in told or word in CHATTER for word in old.split())
