"""A hole with its fit, and an oil by its two numbers -> as one would have typed it."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_OILS = {"seventy five": "75", "eighty": "80", "eighty five": "85", "ninety": "90", "one forty": "140"}


def _fit(match: re.Match[str]) -> str:
    """``clearance hole for a 3/8 bolt, loose fit`` is a free clearance hole of it."""
    fit = {"loose": "free", "easy": "free", "snug": "close"}.get(match[2], match[2])
    return f"clearance {fit} {match[1]}"


def _oil(match: re.Match[str]) -> str:
    """``eighty ninety`` is a gear oil of 80W-90, as it is said."""
    return f"{_OILS[match[1].replace('-', ' ')]}w-{_OILS[match[2]]}"


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    (
        "through",
        r"\b(?:slides?|slips?|goes|fits?|pass(?:es)?|clears?) (?:right |easily |freely )?through\b",
        "clearance",
    ),
    *(
        (cue, r"\b(seventy[ -]five|eighty|eighty[ -]five) (?:w |weight )?(ninety|one forty)\b", _oil)
        for cue in ("ninety", "one forty")
    ),
    (
        "clearance",
        r"\bclearance(?: (?:holes?|drills?|bits?))?\b (.+?) (close|free|normal|loose|easy|snug)(?: fit(?:ting)?)?\b",
        _fit,
    ),
)
