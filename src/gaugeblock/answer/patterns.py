"""What a pattern of words is made of: the words that it spells, and the part of it that a line can begin to match.

To make the pattern of all words that name a topic takes 2 ms of the 45 ms that a question takes from cold; of one line
few of its alternatives can begin, and these take 0.2 ms.
"""

from __future__ import annotations

import re

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

_PLAIN = frozenset("abcdefghijklmnopqrstuvwxyz0123456789 '-/")
_REPEATS = frozenset("?*{")


def part_for(pattern: str, text: str) -> str:
    """The alternatives of ``pattern`` that can begin at a word of ``text``, in their order; blank for none.

    What it matches at the begin of a word of that text is what the whole pattern matches there.

    >>> part_for("bolts?|(?:cap |set )?screws?|how tight|(?:in|into) alloy", "how tight is a nut")
    'how tight'
    """
    words = f" {text}"
    kept = []
    for one in alternatives(pattern):
        starts = _starts(one)
        if starts is None or any(f" {start}" in words for start in starts):
            kept.append(one)
    return "|".join(kept)


def alternatives(pattern: str) -> list[str]:
    """The alternatives of a pattern, whatever stands in its groups.

    >>> alternatives("a(?:b|c)|d|[|]e")
    ['a(?:b|c)', 'd', '[|]e']
    """
    if "(" not in pattern and "[" not in pattern and "\\" not in pattern:
        return pattern.split("|")
    found, start = [], 0
    for at, depth in _marks(pattern):
        if pattern[at] == "|" and not depth:
            found.append(pattern[start:at])
            start = at + 1
    return [*found, pattern[start:]]


def _marks(pattern: str) -> Iterator[tuple[int, int]]:
    """Where a pattern has a bracket or a bar that is none of its letters, and how deep in its groups."""
    depth, is_set, at = 0, False, 0
    while at < len(pattern):
        char = pattern[at]
        if char == "\\":
            at += 1
        elif is_set:
            is_set = char != "]"
        elif char == "[":
            is_set = True
        elif char in "()|":
            depth += {"(": 1, ")": -1}.get(char, 0)
            yield at, depth
        at += 1


def _starts(one: str) -> list[str] | None:
    """What an alternative begins with, each way; None where that cannot be told."""
    if one.startswith("(?:"):
        end = _closed(one)
        after = one[end + 1 : end + 2]
        if after == "{":
            return None
        every = [] if after not in ("?", "*") else _starts(one[end + 2 :])
        for inner in alternatives(one[3:end]):
            starts = _starts(inner)
            if starts is None or every is None:
                return None
            every += starts
        return every
    count = 0
    while count < len(one) and one[count] in _PLAIN:
        count += 1
    if count < len(one) and one[count] in _REPEATS:
        count -= 1  # the last letter may be left out
    return [one[:count]] if count > 0 else None


def _closed(one: str) -> int:
    """Where the group ends that a text begins with."""
    return next((at for at, depth in _marks(one) if one[at] == ")" and not depth), len(one))


def plain_words(pattern: str) -> set[str]:
    """The words of four letters and more that a pattern spells, those it makes of a stem: weigh(?:t|s|ing), and of
    two that may be one: drive ?shaft.
    """
    known = set(re.findall(r"[a-z]{4,}", pattern))
    for stem, ends in re.findall(r"([a-z]{3,})\(\?:([a-z|]+)\)", pattern):
        known.update(stem + end for end in ends.split("|"))
    known.update(first + second for first, second in re.findall(r"([a-z]{3,}) \?([a-z]{3,})", pattern))
    return known
