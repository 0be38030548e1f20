"""How a word is turned round: ``not oiled``, ``no oil``, ``unoiled``; and whether a choice says what was denied."""

from __future__ import annotations

import re
from functools import lru_cache

# What turns the words after it, to the end of what was typed. ``No 10`` is a number, not a denial.
_TURNS = (
    r"\b(?:not|never|without|w/o|minus|neither|nor|cannot|(?:is|are|was|were|do|does|did|has|have|ca|wo)n'?t|ain'?t"
    r"|non|no(?!\.?[ -]*[0-9])(?! ?\.))\b[ -]*(?:(?:an?|any|the|yet|been|be|much|very|too|quite|really|all|in an?)\b["
    r" ]*)*"
)
_PREFIXES = ("un", "non-", "non")
_SUFFIXES = ("-free", "less")
_ENDINGS = ("ised", "ized", "ed", "ing", "es", "s", "y", "d", "e")
_LEAST = 3
# Two stems are of one word where so many letters are the same, and that share of the longer.
_WORD, _SHARE = 5, 0.75
# Words that join others and say nothing by themselves.
_LINKS = frozenset(["a", "an", "and", "any", "at", "by", "for", "in", "of", "on", "the", "to", "with"])


# One of these stands in every text that ``_TURNS`` finds something in, or a word that ends in ``nt``: to look for them
# is quicker than to make the pattern.
_PIECES = ("no", "never", "without", "w/o", "minus", "neither", "n't")


def turn(plain: str) -> re.Match[str] | None:
    """Where a text in lower case turns round what comes after; None where it turns nothing."""
    if not any(piece in plain for piece in _PIECES):
        ends = plain.split("nt")[1:]
        if not any(end[:1] in ("", "_") or not end[0].isalnum() for end in ends):
            return None
    return re.search(_TURNS, plain)


def denied(text: str) -> str:
    """The words that a text turns round, in lower case; blank where it turns none.

    >>> denied("not oiled"), denied("unplated"), denied("oil-free"), denied("No 10-24")
    ('oiled', 'plated', 'oil', '')
    """
    plain = " ".join(text.casefold().split())
    found = turn(plain)
    if found is not None:
        return plain[found.end() :].strip(" -")
    if re.search("[- ]free$", plain):
        return plain[: -len("-free")].strip()
    for word in plain.split():
        base = _base(word)
        if base:
            return base
    return ""


def affirmed(text: str) -> str:
    """The words before those that a text turns round: ``wheel nut`` of ``wheel nut not lubed``."""
    plain = " ".join(text.casefold().split())
    found = turn(plain)
    return plain[: found.start()].strip(" ,") if found is not None else ""


def _base(word: str) -> str:
    """The word that a prefix or an ending turns round; blank where there is none, or where too little is left."""
    for prefix in _PREFIXES:
        if word.startswith(prefix) and len(word) >= len(prefix) + _LEAST:
            return word.removeprefix(prefix)
    for suffix in _SUFFIXES:
        if word.endswith(suffix) and len(word) >= len(suffix) + _LEAST:
            return word.removesuffix(suffix)
    return ""


def stem(word: str) -> str:
    """A word without its ending, so that ``oil``, ``oils`` and ``oiled`` are one."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= _LEAST:
            return word.removesuffix(ending)
    return word


def says(choice: str, base: str) -> bool:
    """Whether a choice says a word of ``base``, and does not itself turn it round."""
    plain = " ".join(choice.casefold().split())
    found = turn(plain)
    own = plain[: found.start()] if found is not None else re.sub(r"[^ ]+[- ]free$", "", plain)
    return any(_alike(a, b) for a in _stems(base) for b in _stems(own))


def _alike(a: str, b: str) -> bool:
    """Whether two stems are of one word: ``lubricat`` and ``lubricant``."""
    if a[:_WORD] != b[:_WORD]:
        return False
    same = next((n for n, (x, y) in enumerate(zip(a, b, strict=False)) if x != y), min(len(a), len(b)))
    return a == b or (same >= _WORD and same >= _SHARE * max(len(a), len(b)))


@lru_cache(4096)  # each choice of a vocabulary is looked at again for every word that it lacks
def _stems(text: str) -> frozenset[str]:
    return frozenset(stem(w) for w in re.findall(r"[a-z0-9./]+", text) if w not in _LINKS)
