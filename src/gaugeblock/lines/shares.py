"""The share of glycol that is in a cooling system and the one that is wanted, as people say both in one line."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, Hit, Shaped

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

_PERCENT = r"(?:%|percent|per cent)"
_OF = r"(?: (?:glycol|anti-?freeze|coolant|mix(?:ture)?|strength|concentrat(?:e|ion)))?"
_WHERE = r"(?: (?:(?:on|by|with|off|through) (?:the |my |a )?(?:tester|refractometer|hydrometer)|in (?:it|there)|now))*"
# What tests the share that is in it, and what may stand before it besides.
_TESTED = (
    r"(?:(?:it|that|this|which|the|my|a|tester|refractometer|hydrometer) )*"
    r"(?:tests?|tested|testing|reads?|reading|shows?|showing|says?|saying|measures?|is|it'?s|only|now|just|has"
    r"|currently|sits?|sitting|already)(?: (?:at|only|now|just|about|around|currently|is|as|out|a|says?|reads?))*"
)
_FROM = r"(?:from|of|at|drop|dilute|thin|bring|take|got|with|a)(?: (?:it|from|only|about|just|a))*"
_WISH = (
    r"(?:want(?:ed|s)?|need(?:s|ed)?|to|reach|get|make|bring|become|up to|after|aim(?:ing)? for|should be"
    r"|ought to be)(?: (?:it|that|to|up|down|get|at|about|be|reach"
    r"|in|there|a|the|me|have|back))*"
)
_WANTED = (
    rf"(?<![0-9])\b{_WISH} (?P<w>[2-7][0-9](?:/[0-9]+)?|half|1/2)(?=[ %]|$)(?! ?(?:l|lit\w*|qts?|quarts?"
    rf"|deg\w*|c|f|psi)\b)"
)
_NOW = (
    rf"(?:(?P<mark>{_TESTED}) |(?P<weak>{_FROM}) )?"
    rf"(?:(?P<n>[0-9]{{1,2}}) ?{_PERCENT}|(?P<bare>[0-9]{{1,2}})(?![0-9./])"
    rf"|(?:(?:a|an|1|one) )?(?P<part>third|1/3|quarter|1/4)){_OF}{_WHERE}"
)
_PARTS = {"third": "33", "1/3": "33", "quarter": "25", "1/4": "25"}


class Now(Shaped):
    """The share that is in it: one that was tested, or that stands in a line beside the one that is wanted."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(_NOW, lambda match: match[0])

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """A bare number is a share only where it was tested and another share is wanted."""
        found = re.match(f"(?:{_NOW}){END}", " ".join(words[at : at + 14]))
        if found is None:
            return
        count = found[0].count(" ") + 1
        is_between = _is_wanted(words[:at]) or _is_wanted(words[at + count :])
        if not is_between and (found["mark"] is None or found["n"] is None):
            return
        if found["bare"] is not None and found["mark"] is None and found["weak"] is None:
            return
        share = found["n"] or found["bare"] or _PARTS[found["part"]]
        doubt = 0 if found["mark"] else 1 if found["weak"] else 2
        typed = f" ({found['part']})" if found["part"] else ""
        yield Hit(count, f"{share} %", f"{share} % in it now{typed}", doubt)


# A cold that it must stand is no share: protects to 30.
_OF_COLD = frozenset(
    ["protect", "protects", "protected", "protection", "good", "safe", "down", "cold", "frost", "stand"]
)


class Wanted(Shaped):
    """The share that is wanted; a bare number is one where no cold is told."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(
            r"(?:i )?(?:want(?:ed|s)?|to|need(?:s|ed)?|get|make|reach|after|aim(?:ing)? for|should be|ought to be)"
            r"(?: it)?(?: to| up to| get| at| up at| back to| about)?(?: be| reach)?"
            r" (?P<n>[2-7][0-9])(?P<unit> ?(?:%|percent|per cent))?(?: in (?:it|there))?",
            lambda match: f"{match['n']} %",
            "{} wanted",
        )

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """What it takes, but for a bare number behind a word of cold."""
        for hit in super().take(words, at, data):
            is_bare = not any("%" in word or "cent" in word for word in words[at : at + hit.count])
            if not (is_bare and not _OF_COLD.isdisjoint(words[max(0, at - 2) : at])):
                yield hit


def _is_wanted(words: tuple[str, ...]) -> bool:
    """Whether a share is wanted there."""
    return re.search(_WANTED, " ".join(words)) is not None
