"""Numbers that a story says in passing: what a thing cost, at what time of day, in which year. They are no figure."""

from __future__ import annotations

_MONEY = frozenset(["quid", "bucks", "buck", "dollars", "dollar", "pence", "cents", "euro", "euros", "rand", "bob"])
_PAID = frozenset(["paid", "pay", "quoted", "charged", "charges", "asking", "asked"])
_CLOCK = frozenset(["oclock", "o'clock", "pm"])
_DAY = (("this", "morning"), ("this", "afternoon"), ("this", "evening"), ("last", "night"), ("at", "night"))
_PARTS_OF_AN_HOUR = tuple((part, way) for part in ("half", "quarter") for way in ("past", "to"))
_SIGNS = ("$", "\u00a3", "\u20ac")
_OF_A_YEAR = frozenset(["in", "since"])  # of 2000 and for 1960 are as often a load
_UNITS = """
lb lbs pound pounds ft foot feet nm n newton newtons psi rpm revs mm in inch inches thou f c deg degrees kg kilo kilos
mph watts w
"""
_MEASURES = frozenset(_UNITS.split())
_VEHICLES = """
pickup pickups ute wagon sedan saloon coupe truck van car hatchback convertible roadster estate
"""
_CARS = frozenset(_VEHICLES.split())
_OWNED = frozenset(["a", "an", "my", "his", "her", "our", "the", "this", "old", "their", "your"])
_FIRST_YEAR, _LAST_YEAR = 1955, 2012  # no steel and no alloy is called so
_KINDS = _MONEY | _CLOCK
_CUES = _KINDS | _CARS | _PAID | {"morning", "afternoon", "evening", "night", "past", "quarter"}


def in_passing(words: list[str]) -> list[str]:
    """The words of a line with each such number and its word as one: ``40-quid``, ``9-this-morning``, ``year-1998``.

    >>> in_passing(["paid", "40", "quid", "in", "1998"])
    ['paid', '40-quid', 'in', 'year-1998']
    """
    if _CUES.isdisjoint(words) and not any(word[:1] in "12" and len(word) == 4 for word in words):
        return words
    out: list[str] = []
    for at, word in enumerate(words):
        before = out[-1] if out else ""
        after = words[at + 1 : at + 2]
        if _is_plain(word) and tuple(out[-2:]) in _PARTS_OF_AN_HOUR and _MEASURES.isdisjoint(after):
            out[-2:] = [f"{word}-{out[-2]}-{before}"]
        elif word in _KINDS and _is_plain(before):
            out[-1] = f"{before}-{word}"
        elif tuple(words[at - 1 : at + 1]) in _DAY and len(out) > 1 and _is_plain(out[-2]):
            out[-2:] = [f"{out[-2]}-{before}-{word}"]
        elif before in _PAID and _is_plain(word) and after == ["for"]:
            out.append(f"price-{word}")
        else:
            out.append(f"year-{word}" if _is_year(words, at) else word)
    return out


def is_in_passing(word: str) -> bool:
    """Whether a word is such a number: ``40-quid``, ``$14``."""
    if word[:1] in _SIGNS:
        return word[1:2].isdigit()
    _, dash, kind = word.partition("-")
    parts = tuple(kind.split("-"))
    return bool(dash) and (
        kind in _KINDS or word.startswith(("year-", "price-")) or parts in _DAY or parts in _PARTS_OF_AN_HOUR
    )


def _is_plain(word: str) -> bool:
    return word.replace(".", "", 1).isdigit()


def _is_year(words: list[str], at: int) -> bool:
    """Whether a number is a year that a story tells, or that of a car: a 72 pickup."""
    if words[at].isdigit() and len(words[at]) == 2 and words[at + 1 : at + 2] and words[at + 1] in _CARS:
        return at > 0 and words[at - 1] in _OWNED
    if not (words[at].isdigit() and _FIRST_YEAR <= int(words[at]) <= _LAST_YEAR and at > 1):
        return False
    is_an_inch = words[at - 2][-1:].isdigit()
    after = words[at + 1 : at + 2]
    is_measured = any(w[:1].isdigit() or w in _MEASURES for w in after)
    return words[at - 1] in _OF_A_YEAR and not is_an_inch and not is_measured


def spoken(word: str) -> str:
    """A word as it is shown: ``40 quid``, ``year 1998``."""
    return word.replace("-", " ") if is_in_passing(word) else word
