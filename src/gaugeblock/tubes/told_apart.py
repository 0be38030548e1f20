"""A bend that was tried on the bender, told in two places of a line: what it was pulled to, what it measured then."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Hit
from gaugeblock.tubes.doubt import MOST_BACK
from gaugeblock.tubes.said import DEG

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

# What it was pulled to, and what the protractor said of it afterwards.
_PULLS = (
    r"(?:pull(?:s|ed|ing)?|bent|bend(?:ing)?|set|setting|wound|took|crank(?:ed)?|dialled|dialed|swung|overbent"
    r"|stopped|went|(?:bender|dial|pointer|machine|lever|scale) (?:was|is|reads?|said|says|showed|shows|sat)"
    r"(?= (?:on|at|[0-9]))|(?:reads?|read|said|says|showed|shows|was)(?= [0-9.]+ (?:deg\w* )?on the"
    r" (?:bender|dial|machine|scale|pointer)))"
)
_ON_THE_WAY = (
    r"(?: (?:it|this|that|mine|round|over|to|at|past|on|the|my|an?|die|bender|tubes?|tubing|pipe|test|bit|piece|scrap"
    r"|sample|first|one|up|out|dial|pointer|handle|lever|machine|until|till|was|exactly|dead))*"
)
_ON_WHAT = (
    r"(?: (?:mark|bends?|degree mark|(?:on|by) (?:the|my) (?:dial|bender|machine|scale|pointer|mark)"
    r"|when (?:i|we) (?:stopped|let go)))*"
)
_MEASURED = (
    r"(?:(?:angle ?finder|finder|protractor|spirit level|level|inclinometer|digital (?:gauge|level|box|protractor)"
    r"|angle (?:gauge|cube|box))(?: (?:then|only|now|just))* (?:says?|said|reads?|shows?|showed|gives?|gave|has|is|was"
    r"|measures?|measured|at|on it)|(?:came|comes?|coming|sprang|springs?|sprung|relax(?:ed|es)|opened|opens"
    r"|drop(?:ped|s)|fell|falls|settle[sd]|unwound|unwinds|ended|ends|finished|landed|lands)"
    r"(?= (?:back|out|up|open|to|at|only|down|by))|(?:went|goes) (?=back|out|open|down)|(?:it |that )?measure[sd]"
    r"|it only|(?:it |and |is |its |it's )only)"
)
_AFTERWARDS = (
    r"(?: (?:back|out|up|open|to|at|as|about|only|around|down|just|off|by|it|roughly|the|true|actual|on|me|an?))*"
)
_CUE_WORDS = """
finder protractor level inclinometer gauge box cube came comes coming sprang springs sprung relaxed relaxes opened opens
dropped drops fell falls settled settles unwound unwinds ended ends finished landed lands measured measures only went
goes
"""
_CUES = frozenset(_CUE_WORDS.split())
_ASKED_TO = re.compile(r"(?:should|do|must|shall|can|could|would|need|have|how far|what)(?: (?:i|we|you|to))*$")
_LEAST, _MOST = 5, 185  # degrees of a bend that is pulled


class ToldApart:
    """Reader of a test bend whose halves stand apart in a line: each of the two places gives the whole of it."""

    __slots__ = ("_last",)

    def __init__(self) -> None:
        self._last: tuple[tuple[str, ...], dict[int, Hit]] = ((), {})  # a line with its places, set as one

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """The words of both halves that say nothing else."""
        return dict.fromkeys(("protractor", "inclinometer", "overbent", "sprang", "springs", "sprung", "relaxed"), "")

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: what is told makes more than any list."""
        return ()

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """The whole test bend, at each place where a half of it stands."""
        line, places = self._last
        if words is not line:
            places = self._halves(words)
            self._last = words, places
        if at in places:
            yield places[at]

    def _halves(self, words: tuple[str, ...]) -> dict[int, Hit]:
        """The places of both halves; none where a half is missing, or told twice and not alike."""
        if _CUES.isdisjoint(words):
            return {}
        put = _places(words, rf"{_PULLS}{_ON_THE_WAY} (?P<n>{NUMBER})(?: ?(?:{DEG})(?= |$))?{_ON_WHAT}(?= |$)")
        got = _places(words, rf"{_MEASURED}{_AFTERWARDS} (?P<n>{NUMBER})(?: ?(?:{DEG})(?= |$))?(?= |$)")
        put = {
            at: one
            for at, one in put.items()
            if not any(other < at + one[0] and at < other + it[0] for other, it in got.items())
            and not _ASKED_TO.search(" ".join(words[max(0, at - 3) : at]))
        }
        if len({n for _, n in put.values()}) != 1 or len({n for _, n in got.values()}) != 1:
            return {}
        first, last = next(iter(put.values()))[1], next(iter(got.values()))[1]
        value = _of_two(first, last)
        if value is None:
            return {}
        return {at: Hit(count, value, f"test bend {value}") for at, (count, _) in (*put.items(), *got.items())}


def _places(words: tuple[str, ...], text: str) -> dict[int, tuple[int, str]]:
    """Where a half of a test bend stands: how many words it has, and its degrees."""
    found: dict[int, tuple[int, str]] = {}
    pattern = re.compile(text)
    end = 0
    for at in range(len(words)):
        match = pattern.match(" ".join(words[at : at + _HALF])) if at >= end else None
        if match and _LEAST <= float(units.parse_number(match["n"])) <= _MOST:
            found[at] = (match[0].count(" ") + 1, match["n"])
            end = at + found[at][0]
    return found


_HALF = 14  # words


def _of_two(put: str, got: str) -> str | None:
    """A test bend of its two halves; None for degrees that no bend keeps."""
    first, last = float(units.parse_number(put)), float(units.parse_number(got))
    return f"{first:g} deg set, {last:g} deg got" if first * (1 - MOST_BACK) <= last <= first else None
