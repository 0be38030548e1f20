"""Whether a fluid is old or new, as people say it: a line with a sign of age never gets the figure of a new one."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, Hit, Shaped, always

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

WET, DRY = "wet", "dry"
_MANY = (
    r"(?:for |after |over |about |around |nearly |almost |at least |more than |past |the last |a good |a |an |some"
    r" |my )*"
    r"(?:couple(?: of)?|few|good few|many|several|long|[0-9]+(?:\.[0-9]+)?|1 1/2|1/2 a)?"
    r"(?:[ -](?:or|to) (?:so|more|[0-9]+))?"
)
_SPAN = (
    rf"{_MANY}[ -]?(?:years?|yrs?|months?|seasons?|winters?|summers?|ages|decades?|while|long time|donkeys? years)"
    r"(?:'s?)?(?: or (?:so|two|three|more|[0-9]))?"
)
_SINCE = (
    r"since (?:(?:about|around|i|we|he|the|it|they|my|last|day|was|car|truck|changed|bought|built|bled|fitted|got"
    r"|put|went"
    r"|one|1|it's|its) ?)*(?:[0-9]{4}|'?[0-9]{2}|new|year|winter|summer|spring|autumn|in)?"
)
_THERE = (
    r"(?:(?:in|on|inside|for|fr[o]m|out of) )?(?:the |my |his |her |a |use |there |service )*"
    r"(?:car|truck|van|bike|system|reservoir|use|service|there|it|can|bottle|shelf|lines?|calipers?|vehicle|one)?"
)
_BEEN = (
    r"(?:that |which |thats |that's |it |its |it's |has |have |had |is |was |ive |i've |fluid |whats |stuff )*"
    r"(?:been|sat|sitting|had|left|run|living|lived|used|driven|open|opened|stood|standing)"
    r"(?: (?:sat|sitting|it|in|left|used|driven|open|opened|stood|run|around|about|already|now))*"
)
_FORMS = (
    rf"{_BEEN} ?{_THERE} ?(?:{_SPAN}|{_SINCE})(?: (?:in|on) {_THERE})?(?: (?:now|old|ago))*",
    r"(?:that |which |thats |that's |it |its |has |is |was )*(?:been )?(?:in|on) (?:the |my )?(?:car|truck|use"
    r"|service|system)"
    rf"(?: {_SPAN})?(?: {_SINCE})?(?: now)?",
    rf"{_SPAN}[ -]old(?: now| in use)?",
    rf"{_SPAN} (?:in|on|ago|later|of (?:use|driving|service)|since)(?: {_THERE})?",
    rf"(?:after|for) {_SPAN}",
    r"(?:it's |its |it is |when |once |after |is |was )*(?:well |very |all )?(?:old|aged|used|wet|moist|in use"
    r"|second ?hand)"
    r"(?: fluid| stuff| in use| old)?",
    _SINCE,
    r"(?:fr[o]m|in|of|dated|filled in|filled|back in|changed in|put in) (?:19[5-9][0-9]|20[0-4][0-9])",
    r"(?:that |which |and |but |it |its |it's |is |was )*(?:not|isn'?t|aint|ain't|no longer|wasn'?t|far fr[o]m)"
    r" (?:very |so |quite |exactly |that |been )*(?:new|fresh|dry)(?: any ?more)?",
)
# What is a sign of age wherever it stands; an old truck is none, nor how often it is changed.
_SIGN = (
    r"(?<!every )(?<!each )\b(?:(?:[0-9]+ )?(?<!every [0-9] )(?:years?|yrs?|months?|decades?|seasons?|winters?)"
    r"|ages|ago"
    r"|since|used|aged|stale|tired|unknown|old(?:er|ish)?(?! (?:truck|car|van|bike|ute|school|girl|man|heap"
    r"|thing|motor|wagon|sedan|pickup|bus|beast|jeep))|second ?hand|20[0-2][0-9]|19[5-9][0-9]|opened|brown|black|dirty"
    r"|(?:been|sat|sitting) (?:in|on|there|around|open)|original|"
    r"(?:not|never|isn'?t|aint|ain't|no longer|wasn'?t|hardly|far fr[o]m|anything but) (?:\w+ ){0,2}(?:new|fresh|dry"
    r"|changed"
    r"|unopened))\b"
)


class Old:
    """What says that a fluid is old, at any length: been in a couple of years, since 2019 -> wet."""

    __slots__ = ("_compiled", "doubt")

    def __init__(self) -> None:
        self._compiled: list[re.Pattern[str]] = []
        self.doubt = 1

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """The plain words of age."""
        return dict.fromkeys(("old", "used", "years", "months", "since", "aged"), WET)

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """What it always means."""
        return (WET,)

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """The longest form at this place."""
        if not is_aged(words):
            return
        if not self._compiled:
            self._compiled = [re.compile(f"(?:{form}){END}") for form in _FORMS]
        line = " ".join(words[at : at + 16])
        ends = [found.end() for form in self._compiled if (found := form.match(line)) is not None and found.end()]
        if ends:
            phrase = line[: max(ends)].rstrip()
            is_told = any(map(str.isdigit, phrase))  # no number is lost
            said = f"wet, as {phrase}" if is_told else "old (wet)"
            yield Hit(phrase.count(" ") + 1, WET, said, 0 if is_told else self.doubt)


# A brake fluid that has water in it is wet, as that is tested: so much and no more.
_MOISTURE = (
    r"(?:(?:once|when|after|if|and|that|thats|with|which|its|it's|it|has|have|is|fluid|a|bit) )*"
    r"(?:(?:got|soaked up|absorbed|taken on|taken up|took on|picked up|drawn in|full of|contaminated with|holding|had"
    r"|with|pulled in)(?: (?:some|a bit of|a little|any|the|its|about|of))*(?: [1-3] ?(?:%|percent|per cent))?"
    r" (?:water|moisture|damp)|water logged|waterlogged|damp|moist)(?: in(?: (?:it|there|the fluid))?)?"
)


class Moist(Shaped):
    """What says that a fluid has taken up water -> wet, and told as it was said."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(_MOISTURE, always(WET), cue=("water", "moist", "damp"))

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, with what was typed."""
        for hit in super().take(words, at, data):
            yield Hit(hit.count, WET, f"wet, as {' '.join(words[at : at + hit.count])}")


class NewUnlessOld:
    """A reader of states, which finds nothing new in a line that has a sign of age."""

    __slots__ = ("_reader", "doubt")

    def __init__(self, reader: Reader) -> None:
        self._reader = reader
        self.doubt = 0

    def phrases(self, data: Refdata) -> dict[str, str]:
        """Those of the reader."""
        return dict(self._reader.phrases(data))

    def choices(self, data: Refdata) -> tuple[str, ...]:
        """Those of the reader."""
        return self._reader.choices(data)

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """What the reader takes, but for a new fluid beside a sign of age."""
        return (hit for hit in self._reader.take(words, at, data) if hit.value != DRY or not is_aged(words))


_LAST: dict[tuple[str, ...], bool] = {}


def is_aged(words: tuple[str, ...]) -> bool:
    """Whether a line has a sign of age."""
    got = _LAST.get(words)
    if got is None:
        _LAST.clear()  # one line is read at a time
        got = _LAST[words] = re.search(_SIGN, " ".join(words)) is not None
    return got
