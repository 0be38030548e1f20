"""Numbers with their unit or the next word grown onto them -> two words: 60nm, 330mm, 3.08diff."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.answer.patterns import compiled

_WHOLE = 4  # letters: a diff, and no unit
# 3.08diff, 16gauge, 1/2inch; the size of a thread or of a tyre is one word.
_NUMBER_AND_WORD = r"([0-9]*\.?[0-9]+|[0-9]+/[0-9]+)([a-z]{4,})"
_GLUED = ("nm", "psi", "bar", "mm", "kg", "lb", "lbs", "mph", "kph", "kmh", "ksi", "mpa", "kpa", "rpm", "tpi", "kn")
# Thirtyamp, sixmetre: a number said as a word, and its unit.
_SAID = (
    *("amp", "amps", "volt", "volts", "watt", "watts", "gauge", "inch", "foot", "metre", "metres", "meter", "meters"),
    *("thou", "degrees", "tooth", "newton", "pound", "litre"),
)
_NUMBERS = (
    r"(two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen"
    r"|(?:twen|thir|for|fif|six|seven|eigh|nine)ty|hundred)"
)


_TWO_WORDS = {"topup": "top up", "topoff": "top off", "headbolt": "head bolt", "headbolts": "head bolts"}
_THREAD_AND_WORD = r"(m[0-9]{1,2}(?:x[0-9]?\.?[0-9]+)?)(tap|taps|drill|bolts?|nuts?|torque|studs?|dry|hole|clearance)"


def set_apart(text: str) -> str:
    """A line with a blank between each number and the unit that was grown onto it.

    >>> set_apart("60nm on m12x1.75")
    '60 nm on m12x1.75'
    >>> set_apart("m8x1.25tap drill")
    'm8x1.25 tap drill'
    >>> set_apart("3in x .083 x52")
    '3in x .083 x 52'
    >>> set_apart("thirtyamp fuse")
    'thirty amp fuse'
    """
    return " ".join([_apart(word, before) for before, word in pairwise(("", *text.split(" ")))])


def _apart(word: str, before: str) -> str:
    """One word of a line as it is typed by itself; ``before`` is the one that stands before it."""
    if word in _TWO_WORDS:
        return _TWO_WORDS[word]
    is_alpha = word[-1:].isalpha()
    if word[:1].isdigit() and word[-_WHOLE:].isalpha() and (apart := compiled(_NUMBER_AND_WORD).fullmatch(word)):
        return f"{apart[1]} {apart[2]}"
    if word[:1] == "m" and is_alpha and (apart := compiled(_THREAD_AND_WORD).fullmatch(word)):
        return f"{apart[1]} {apart[2]}"
    if word[:1] == "x" and before[-1:].isdigit() and word[1:].replace(".", "", 1).isdigit():
        return f"x {word[1:]}"  # .083 x52
    if is_alpha and word[:1].isdigit() and word.endswith(_GLUED):
        number = word.rstrip("abcdefghijklmnopqrstuvwxyz")
        if word[len(number) :] in _GLUED and number.replace(".", "", 1).isdigit():
            return f"{number} {word[len(number) :]}"
    elif word.endswith(_SAID) and (apart := compiled(f"{_NUMBERS}({'|'.join(_SAID)})").fullmatch(word)):
        return f"{apart[1]} {apart[2]}"
    return word
