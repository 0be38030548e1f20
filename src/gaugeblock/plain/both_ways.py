"""A length of the wire there and back as that of the way there, by which a circuit is told."""

from __future__ import annotations

_ALL = ("total", "altogether")
_LENGTHS = frozenset(["m", "metre", "metres", "meter", "meters", "ft", "feet", "foot"])
_NEAR_A_LENGTH = 10  # words


def one_way(words: list[str]) -> list[str]:
    """The length of both wires together as that of the way there, by which a circuit is told: ``12 m of cable in total,
    out and back`` is 6 m, and back by wire; so is ``24 ft round trip``.
    """
    line = " ".join(words)
    both = next((b for b in ("out and back", "there and back", "round trip", "round-trip") if b in line), "")
    if not both or not (both.startswith("round") or any(word in words for word in _ALL)):
        return words
    at = next(n for n in range(len(words)) if " ".join(words[n:]).startswith(both))
    end = at + both.count(" ") + 1
    near = range(max(0, at - _NEAR_A_LENGTH), min(len(words) - 1, end + 3))
    lengths = [n for n in near if words[n + 1] in _LENGTHS and words[n].replace(".", "", 1).isdigit()]
    if len(lengths) != 1:
        return words
    length = lengths[0]
    halved = [*words[:length], f"{float(words[length]) / 2:g}", *words[length + 1 : at]]
    rest = [w for n, w in enumerate(words) if n >= end]
    if length >= end:
        halved, rest = words[:at], [*words[end:length], f"{float(words[length]) / 2:g}", *words[length + 1 :]]
    return _without_total([*halved, "return", "by", "wire", *rest])


def _without_total(words: list[str]) -> list[str]:
    """Without what was said of the total: ``in total``, ``altogether``."""
    return [
        word
        for n, word in enumerate(words)
        if word not in _ALL and not (word == "in" and words[n + 1 : n + 2] and words[n + 1] in _ALL)
    ]
