"""A line as the topic that reads it best, and that topic's answer."""

from __future__ import annotations

from gaugeblock.answer.decision import NONE
from gaugeblock.answer.opening import answered, compared
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.given import Answer
from gaugeblock.plain.mending import mend
from gaugeblock.plain.passing import spoken
from gaugeblock.plain.reading import Reading, read
from gaugeblock.plain.words import words_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, Never

    from gaugeblock.answer.asking import Topic
    from gaugeblock.tables.load import Refdata

PLAIN_BOLT = ": a plain bolt of this thread, not this part"
# Topics that may have a word which was nearly typed.
_MENDED = 5
_AS_LIKELY = 200  # of two words that were left
_LAST, _FEW_LINES = "readings of the last lines", 4


def understood(words: tuple[str, ...], data: Refdata) -> Reading:
    """The reading that leaves the fewest words: of all topics of all wings, those that the words point to first."""
    from gaugeblock.plain.topics import topics

    found: list[Reading] = []
    unnamed: list[Topic] = []  # what a line does not name is never read better than what is whole
    for group in topics(words):
        for topic in group:
            if topic.is_named and topic.asks_for and not topic.is_meant(words):
                unnamed.append(topic)
                continue
            reading = read(words, topic, data)
            if reading.is_plain:  # every word is part of an option: no other topic can read it better
                return reading
            found.append(reading)
        best = min(found, key=lambda one: one.cost, default=None)
        if best is not None and best.is_whole:
            return best
    found += [read(words, topic, data) for topic in unnamed]
    _lately(data)[words] = found
    likely = sorted(found, key=lambda one: (len(one.unread), one.cost))[:_MENDED]
    mended = [again for one in likely if (again := mend(words, one, data)) is not None]
    return min([*found, *mended], key=lambda one: one.cost)


def answer_to(reading: Reading, compare: str | None, data: Refdata) -> Answer:
    """The answer to a question that was read; with ``compare`` the usual values of that option side by side."""
    values, said = dict(reading.values), reading.said
    if compare is not None:
        return Answer(as_said(reading), compared(reading.topic, values, said, compare, data), reading.unit)
    return Answer(as_said(reading), answered(reading.topic, values, said, data), reading.unit)


def as_said(reading: Reading) -> str:
    """How the line was read, in one line."""
    text = ", ".join(reading.said.values())
    text = f"{reading.topic.noun}: {text}" if text else reading.topic.noun
    text += f", wanted in {reading.unit}" if reading.unit else ""
    text += f"; left out: {', '.join(map(spoken, dict.fromkeys(reading.aside)))}" if reading.aside else ""
    mended = "; ".join(f'"{typed}" as {meant}' for typed, meant in reading.mended)
    return f"{text} ({mended})" if mended else text


def nearly_as_likely(words: tuple[str, ...], best: Reading, data: Refdata) -> list[Reading]:
    """The readings that leave a word or two more than the best one, the likeliest first."""
    found = _lately(data).get(words, [])
    if not found:  # of words that were put right since
        from gaugeblock.plain.topics import topics

        found = [read(words, topic, data) for group in topics(words) for topic in group]
    near = (one for one in found if one.topic is not best.topic and one.cost <= best.cost + _AS_LIKELY)
    return sorted(near, key=lambda one: one.cost)


def refused(question: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> Never:
    """Raise InputError for a line that was not read whole."""
    if reading.unread:
        from gaugeblock.plain.refused import not_understood

        raise not_understood(question, words, reading, as_said(reading), data)
    from gaugeblock.plain.refused import not_said

    raise not_said(question, words, reading, as_said(reading), data)


def with_bolt(reading: Reading, got: Answer, data: Refdata) -> Answer:
    """An answer that has no figure of a part; with it what a plain bolt of its thread and grade takes."""
    if "part" not in reading.values or "grade" not in reading.values or "size" not in reading.values:
        return got
    if isinstance(got.found, Sheet) and got.found.decision.kind != NONE:
        return got
    said = " ".join(text for key, text in reading.said.items() if key not in ("part", "kind", "seat"))
    bolt = understood(words_of(said), data)
    if not bolt.is_whole or "thread" not in bolt.values:
        return got
    try:
        other = answer_to(bolt, None, data)
        if isinstance(other.found, Sheet) and other.found.decision.kind == NONE:  # its condition left open has some
            keys = [key for key in bolt.values if key != "condition"]
            bolt = bolt.replace(values={k: bolt.values[k] for k in keys}, said={k: bolt.said[k] for k in keys})
            other = answer_to(bolt, None, data)
    except GaugeblockError:  # what is known of the part stands without it
        return got
    return got.replace(more=(other.replace(read_as=f"{other.read_as}{PLAIN_BOLT}"),))


def _lately(data: Refdata) -> dict[tuple[str, ...], list[Reading]]:
    """The readings of the last few lines that none of them read whole."""
    last: Any = data._memo.setdefault(_LAST, {})
    if len(last) > _FEW_LINES:
        last.clear()
    return last  # type: ignore[no-any-return]
