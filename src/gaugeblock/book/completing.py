"""Lines that a question may go on with: the word that is being typed, then what has not been said yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.asking import Named
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.understand import understood
from gaugeblock.plain.words import words_of

if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.tables.load import Refdata

_MOST = 8
_WORDS = 3  # so many words back a phrase may have begun


def lines(text: str, data: Refdata) -> list[dict[str, str]]:
    """What to tap: ``say`` is on the button, ``text`` the line that it makes."""
    said = text.split(" ")
    if text.strip() and not said[-1] and (left := _open(text, data)):
        return [{"say": w, "text": f"{text.strip()} {w} "} for w in left]
    if len(said) > 1 and len(said[-1]) == 1 and said[-2][-1:].isdigit():
        return []  # a unit
    topic = _topic(text, data)
    for count in range(min(_WORDS, len(said)), 0, -1):
        part, head = " ".join(said[-count:]).casefold(), " ".join(said[:-count])
        if part.strip() and (found := _phrases(part, topic, data)):
            return [{"say": w, "text": f"{head} {w} ".lstrip()} for w in found]
    return []


def _topic(text: str, data: Refdata) -> Topic | None:
    """What the whole words of a line are about; None where they do not say it."""
    try:
        reading = understood(words_of(text.rpartition(" ")[0]), data)
    except GaugeblockError:
        return None
    return reading.topic if reading.values else None


def _phrases(part: str, topic: Topic | None, data: Refdata) -> list[str]:
    """The phrases that begin so, one for each thing meant: those of the topic first, the shortest first."""
    found: dict[str, str] = {}
    for phrase, meant in [*(_known(topic, data) if topic is not None else ()), *_known(None, data)]:
        if phrase.startswith(part) and phrase != part.strip():
            found.setdefault(meant or phrase, phrase)
    return list(dict.fromkeys(found.values()))[:_MOST]


def _known(topic: Topic | None, data: Refdata) -> list[tuple[str, str]]:
    """Every phrase of a topic, or of all, with what it means: a thing's own name, then what is spelt out, come
    first.
    """
    memo = ("completion", topic.noun if topic is not None else "")
    known = data._memo.get(memo)
    if known is None:
        from gaugeblock import domains

        topics = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
        readers = [r for t in topics if topic in (None, t) for readers in t.slots.values() for r in readers]
        pairs = {(p, c) for r in readers for p, c in r.phrases(data).items()}
        known = data._memo[memo] = sorted(pairs, key=_rank)
    return known  # type: ignore[return-value]


def _rank(pair: tuple[str, str]) -> tuple[bool, bool, int, tuple[str, str]]:
    phrase, meant = pair
    is_spelt = any(len(word) > 3 and word.isalpha() for word in phrase.split())
    return phrase != meant.casefold(), not is_spelt, len(phrase), pair


def _open(text: str, data: Refdata) -> list[str]:
    """The values of what the question leaves open."""
    try:
        reading = understood(words_of(text), data)
        topic: Topic = reading.topic
        left = topic.opens(dict(reading.values), data) if topic.opens is not None and reading.values else None
    except GaugeblockError:
        return []
    if left is None:
        return []
    found = list(dict.fromkeys(row[key] for key in left[0][-1:] for row in left[1]))
    spoken = {p for r in topic.slots.get(left[0][-1], ()) if isinstance(r, Named) for p in r.phrases(data)}
    return [v for v in found if v.casefold() in spoken][:_MOST]
