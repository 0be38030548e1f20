"""Words of the English language: a word that is one was meant as it stands, and is no slip of another.

``english.txt`` beside this module has some sixteen thousand in their shortest form, one a line.
"""

from __future__ import annotations

import os

from gaugeblock.plain.chatter import CHATTER, PLAIN
from gaugeblock.plain.everyday import is_everyday

# What makes another form of a word, and what stands there for a letter that it took away.
_ENDS = (
    ("s", ("",)),
    ("es", ("", "e")),
    ("ies", ("y",)),
    ("ed", ("", "e")),
    ("ied", ("y",)),
    ("ing", ("", "e")),
    ("ings", ("", "e")),
    ("er", ("", "e")),
    ("ers", ("", "e")),
    ("est", ("", "e")),
    ("ly", ("", "le")),
    ("ily", ("y",)),
    ("y", ("", "e")),
    ("ness", ("",)),
    ("less", ("",)),
)
_SHORTEST = 3  # letters
_KEEPS_E = ("ee", "oe", "ye", "ie")  # seeing, shoeing; spacing loses its e
_NEVER_DOUBLED = "aeiouwxy"
_LONG = ("oi", "ee", "oo", "ea", "ai", "ou", "au", "oa", "ie")  # no letter is doubled behind them: oiled
_TEXT: list[str] = []


def is_english(word: str) -> bool:
    """Whether a word is one of the language, in whatever form.

    >>> is_english("certifying"), is_english("smeared"), is_english("stainles"), is_english("oilled")
    (True, True, False, False)
    """
    return is_everyday(word) or (word.isalpha() and any(map(_is_listed, _all_forms(word))))


def _is_listed(word: str) -> bool:
    if not _TEXT:
        with open(english_file(), encoding="ascii") as handle:
            _TEXT.append(f"\n{handle.read()}")
    return f"\n{word}\n" in _TEXT[0] or word in CHATTER or word in PLAIN or is_everyday(word)


def _all_forms(word: str) -> list[str]:
    """Its forms, and those of what is said without its last letter: plumbin."""
    return _forms(word) + (_forms(f"{word}g") if word.endswith("in") else [])


def _forms(word: str) -> list[str]:
    """The word, and what it may be a form of: smeared, smear; running, run."""
    found = [word]
    for end, others in _ENDS:
        stem = word.removesuffix(end)
        if stem != word and len(stem) >= _SHORTEST:
            is_form = not (stem.endswith("e") and end[0] in "eiy" and stem[-2:] not in _KEEPS_E)
            found += [stem + other for other in others] if is_form else []
            is_doubled = len(stem) > _SHORTEST and stem[-1] == stem[-2]
            if is_doubled and stem[-1] not in _NEVER_DOUBLED and stem[-4:-2] not in _LONG:
                found.append(stem[:-1])
    return found


def english_file() -> str:
    """The file of the words in the package."""
    return os.path.join(os.path.dirname(os.path.abspath(__file__)), "english.txt")
