"""Words of everyday speech that say nothing of a figure: some four thousand, looked up one by one.

``everyday.txt`` beside this module has one a line. It was chosen from a public list of common English words: none that
is a part, a material, a state, a size, a number, a place on a vehicle, a use or a turn of another word; none that a
vocabulary knows, and none that is one slip of the keys from such a word (``bold`` from bolt).
"""

from __future__ import annotations

import os

_KNOWN: dict[str, bool] = {}
_TEXT: list[str] = []


def is_everyday(word: str) -> bool:
    """Whether a word says nothing of a figure in whatever sentence.

    >>> is_everyday("government"), is_everyday("stainless")
    (True, False)
    """
    got = _KNOWN.get(word)
    if got is None:
        if not _TEXT:
            with open(everyday_file(), encoding="ascii") as handle:
                _TEXT.append(f"\n{handle.read()}")
        got = _KNOWN[word] = word.isalpha() and f"\n{word}\n" in _TEXT[0]
    return got


def everyday_file() -> str:
    """The file of the words in the package."""
    return os.path.join(os.path.dirname(os.path.abspath(__file__)), "everyday.txt")
