"""Numbers with their unit grown onto them -> two words: 60nm, 16psi, 330mm."""

from __future__ import annotations

_GLUED = ("nm", "psi", "bar", "mm", "kg", "lb", "lbs", "mph", "kph", "kmh", "ksi", "mpa", "kpa", "rpm", "tpi", "kn")


def set_apart(text: str) -> str:
    """A line with a blank between each number and the unit that was grown onto it.

    >>> set_apart("60nm on m12x1.75")
    '60 nm on m12x1.75'
    """
    words = text.split(" ")
    for at, word in enumerate(words):
        if word[-1:].isalpha() and word[:1].isdigit() and word.endswith(_GLUED):
            number = word.rstrip("abcdefghijklmnopqrstuvwxyz")
            if word[len(number) :] in _GLUED and number.replace(".", "", 1).isdigit():
                words[at] = f"{number} {word[len(number) :]}"
    return " ".join(words)
