"""What a pattern of words is made of: the words that it spells, the letters that it begins with, and the part of it
that a line can begin to match.

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
# Groups that look on or back and take nothing, and what stands between letters.
_LOOKS = ("(?=", "(?!", "(?<=", "(?<!")
_BETWEEN = ("^", "$", r"\b", r"\B", r"\A", r"\Z")
_COMPILED: dict[str, re.Pattern[str]] = {}


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


def compiled(pattern: str) -> re.Pattern[str]:
    """A pattern, made once: the standard library keeps 512 of them, and a line of words is held against more."""
    got = _COMPILED.get(pattern)
    if got is None:
        got = _COMPILED[pattern] = re.compile(pattern)
    return got


def has_one(text: str, pieces: tuple[str, ...]) -> bool:
    """Whether one of the pieces stands in a text."""
    for piece in pieces:  # noqa: SIM110 - a third of the time of any()
        if piece in text:
            return True
    return False


def first_letters(pattern: str) -> frozenset[str] | None:
    """The letters with which what it matches can begin; None where that cannot be told, or it can match nothing.

    >>> sorted(first_letters(r"(?:the )?(?:bolt|nut)s?(?! cap)|-?[0-2]"))
    ['-', '0', '1', '2', 'b', 'n', 't']
    >>> first_letters(r"\\w+ bolts?") is None
    True
    """
    found = _firsts(pattern)
    return None if found is None or found[1] else frozenset(found[0])


def _firsts(pattern: str) -> tuple[set[str], bool] | None:
    """The first letters of all alternatives, and whether one of them can match nothing; None where it is not known."""
    every, is_blank = set[str](), False
    for one in alternatives(pattern):
        begun = _begun(one)
        if begun is None:
            return None
        every |= begun[0]
        is_blank = is_blank or begun[1]
    return every, is_blank


def _begun(one: str) -> tuple[set[str], bool] | None:
    """As ``_firsts``, of one alternative."""
    letters, at = set[str](), 0
    while at < len(one):
        atom = _atom(one, at)
        if atom is None:
            return None
        here, is_blank, at = atom
        letters |= here
        times = one[at : at + 1]
        if times and times in "?*+{":
            is_blank = is_blank or times in "?*" or (times == "{" and one[at + 1] in "0,")
            at = one.index("}", at) + 1 if times == "{" else at + 1
            at += one[at : at + 1] in ("?", "+")  # as few as may be
        if not is_blank:
            return letters, False
    return letters, True


def _atom(one: str, at: int) -> tuple[set[str], bool, int] | None:
    """The letters of what stands at a place, whether it can match nothing, and where it ends."""
    char = one[at]
    if char == "(":
        end = at + _closed(one[at:])
        if one.startswith(_LOOKS, at):
            return set(), True, end + 1
        begin = (
            at + 3 if one.startswith("(?:", at) else one.index(">", at) + 1 if one.startswith("(?P<", at) else at + 1
        )
        if one[begin] == "?":
            return None
        inner = _firsts(one[begin:end])
        return None if inner is None else (*inner, end + 1)
    if char == "[":
        end = one.index("]", at + 1)
        letters = _of_set(one[at + 1 : end])
        return None if letters is None else (letters, False, end + 1)
    if one.startswith(_BETWEEN, at):
        return set(), True, at + (2 if char == "\\" else 1)
    if char == "\\":
        return None if one[at + 1].isalnum() else ({one[at + 1]}, False, at + 2)
    return None if char == "." else ({char}, False, at + 1)


def _of_set(inside: str) -> set[str] | None:
    """The letters of a set; None for one of all others, or of a kind."""
    if inside[0] == "^" or "\\" in inside:
        return None
    letters, at = set[str](), 0
    while at < len(inside):
        if inside[at + 1 : at + 2] == "-" and at + 2 < len(inside):
            letters.update(map(chr, range(ord(inside[at]), ord(inside[at + 2]) + 1)))
            at += 3
        else:
            letters.add(inside[at])
            at += 1
    return letters


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
