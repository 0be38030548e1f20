"""Lines that a question may go on with: the word that is being typed, then what has not been said yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.asking import Named
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import understood
from gaugeblock.plain.words import words_of

if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.tables.load import Refdata

_MOST = 8


def lines(text: str, data: Refdata) -> list[dict[str, str]]:
    """What to tap: ``say`` is on the button, ``text`` the line that it makes."""
    head, _, part = text.rpartition(" ")
    part = part.casefold()
    if part:
        kept = f"{head} " if head else ""
        return [{"say": w, "text": f"{kept}{w} "} for w in _words(part, data)]
    if not head.strip():
        return []
    return [{"say": w, "text": f"{head} {w} "} for w in _open(head, data)]


def _words(part: str, data: Refdata) -> list[str]:
    """The words and phrases that begin so, the shortest first, one for each thing meant: its own name where that
    begins so.
    """
    known = data.memo.get("completion")
    if known is None:
        from gaugeblock import domains

        topics = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
        readers = [r for t in topics for readers in t.slots.values() for r in readers]
        pairs = {(p, c) for r in readers for p, c in r.phrases(data).items()}
        known = data.memo["completion"] = sorted(
            pairs, key=lambda pair: (pair[0] != pair[1].casefold(), len(pair[0]), pair)
        )
    found: dict[str, str] = {}
    for phrase, meant in known:  # type: ignore[attr-defined]
        if phrase.startswith(part) and phrase != part:
            found.setdefault(meant or phrase, phrase)
    return list(dict.fromkeys(found.values()))[:_MOST]


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
