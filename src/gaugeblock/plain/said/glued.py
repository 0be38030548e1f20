"""Numbers with their unit or the next word grown onto them -> two words: 60nm, 330mm, 3.08diff."""

from __future__ import annotations

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


def set_apart(text: str) -> str:
    """A line with a blank between each number and the unit that was grown onto it.

    >>> set_apart("60nm on m12x1.75")
    '60 nm on m12x1.75'
    >>> set_apart("thirtyamp fuse")
    'thirty amp fuse'
    """
    words = text.split(" ")
    for at, word in enumerate(words):
        if word[-_WHOLE:].isalpha() and word[:1].isdigit() and (apart := compiled(_NUMBER_AND_WORD).fullmatch(word)):
            words[at] = f"{apart[1]} {apart[2]}"
        elif word[-1:].isalpha() and word[:1].isdigit() and word.endswith(_GLUED):
            number = word.rstrip("abcdefghijklmnopqrstuvwxyz")
            if word[len(number) :] in _GLUED and number.replace(".", "", 1).isdigit():
                words[at] = f"{number} {word[len(number) :]}"
        elif word.endswith(_SAID) and (apart := compiled(f"{_NUMBERS}({'|'.join(_SAID)})").fullmatch(word)):
            words[at] = f"{apart[1]} {apart[2]}"
    return " ".join(words)
