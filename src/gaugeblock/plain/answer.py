"""What is asked in plain words -> the Sheet of the answer, or the Table of what is left open."""

from __future__ import annotations

from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import MOST, Line, Table
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss
from gaugeblock.plain.chatter import TURNING
from gaugeblock.plain.reading import Reading, mend, read
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Topic

_KEYS = {"class": "klass"}  # what Python cannot call a parameter


class Answer(Value):
    """A question answered: how it was ``read_as``, and ``found``, which is a Sheet or a Table."""

    __slots__ = ("found", "read_as")

    read_as: str
    found: Sheet | Table

    def __init__(self, read_as: str, found: Sheet | Table) -> None:
        put(self, "read_as", read_as)
        put(self, "found", found)

    def as_dict(self) -> dict[str, object]:
        """The JSON of the answer, with how the line was read."""
        return {"read_as": self.read_as, **self.found.as_dict()}


def ask(question: str, *, data: Refdata | None = None) -> Sheet | Table:
    """The answer to a question in plain words.

    ``question`` is a line as people say it: ``3/8-16 grade 8 anti-seize into aluminum``. Returns the Sheet of the
    command that answers it; a Table where a key that changes the number was not said. Raises InputError that names
    every word that was not understood, and whatever the answer itself refuses.

    >>> ask("3/8-16 grade 5 dry").decision.figure.text
    '31'
    """
    return answer(question, data=data).found


def answer(question: str, *, data: Refdata | None = None) -> Answer:
    """As ``ask``, with how the line was read."""
    data = data or refdata()
    words = words_of(question)
    reading = understood(words, data)
    if reading.unread:
        raise _not_understood(question, reading, data)
    missing = [need for need in reading.topic.needs if need not in reading.values]
    if missing:
        what = f"the {_spoken(missing[0])} was not said"
        raise InputError(question, f"read as {_as_said(reading)}", what, (), f"say the {_spoken(missing[0])}")
    return Answer(_as_said(reading), _answered(reading, question, data))


def understood(words: tuple[str, ...], data: Refdata) -> Reading:
    """The reading that leaves the fewest words: of all topics of all wings, those that the words point to first."""
    from gaugeblock.plain.topics import topics

    best: Reading | None = None
    for group in topics(words):
        for topic in group:
            reading = read(words, topic, data)
            if reading.is_plain:  # every word is part of an option: no other topic can read it better
                return reading
            if best is None or reading.cost < best.cost:
                best = reading
        if best is not None and not best.unread and all(n in best.values for n in best.topic.needs):
            return best
    assert best is not None
    return mend(words, best, data) or best


def _answered(reading: Reading, question: str, data: Refdata) -> Sheet | Table:
    topic = reading.topic
    values = dict(reading.values)
    left = topic.opens(values, data) if topic.opens is not None else None
    if left is not None:
        open_keys, rows = left
        if len(rows) == 1:
            values.update(rows[0])
        elif rows:
            return _table(reading, values, open_keys, rows, question, data)
        else:
            what = " and ".join(map(_spoken, open_keys))
            why = f"the {what} was not said, and none is on record for it"
            raise LookupMiss(question, f"read as {_as_said(reading)}", why, (), "ask its maker")
    try:
        return _sheet(topic, values, data)
    except Ambiguous as error:
        key = _left_open(error, values, topic)
        if key is None or len(error.every) < 2:
            raise
        return _table(reading, values, (key,), [{key: choice} for choice in error.every], question, data)


def _left_open(error: Ambiguous, values: Mapping[str, str], topic: Topic) -> str | None:
    """The option that a refusal says is open: one that was said and means several things, or one that was not said."""
    said = next((key for key, value in values.items() if value == error.asked), None)
    wanted = error.do.removeprefix("name the ").split(" ")[0]
    return next((k for k in (*topic.slots, said) if k is not None and k in (wanted, _KEYS.get(wanted))), said)


def _sheet(topic: Topic, values: Mapping[str, str], data: Refdata) -> Sheet:
    options = topic.settle(dict(values), data) if topic.settle is not None else dict(values)
    return topic.call(options, data)


def _table(
    reading: Reading,
    values: Mapping[str, str],
    open_keys: tuple[str, ...],
    rows: list[dict[str, str]],
    question: str,
    data: Refdata,
) -> Sheet | Table:
    topic, lines, refused = reading.topic, [], None
    for row in rows[:MOST]:
        try:
            lines.append(Line(row, _sheet(topic, {**values, **row}, data)))
        except GaugeblockError as error:
            refused = refused or error
    if not lines:
        raise refused or InputError(question, "question", "nothing answers it", (), "say more of it")
    known = [said for key, said in reading.said.items() if key not in open_keys]
    title = f"{topic.noun}: {', '.join(known) or 'what there is'}; not said: {', '.join(map(_spoken, open_keys))}"
    return Table(title, {**values, "question": question}, data, open_keys, lines, max(0, len(rows) - MOST))


def _as_said(reading: Reading) -> str:
    """How the line was read, in one line."""
    text = ", ".join(reading.said.values())
    text = f"{reading.topic.noun}: {text}" if text else reading.topic.noun
    mended = "; ".join(f'"{typed}" as {meant}' for typed, meant in reading.mended)
    return f"{text} ({mended})" if mended else text


def _not_understood(question: str, reading: Reading, data: Refdata) -> InputError:
    words = ", ".join(f'"{word}"' for word in dict.fromkeys(reading.unread))
    turns = [w for w in reading.unread if w.split()[0] in TURNING]
    if turns:
        why = f"not understood: {words}; it may turn the answer round, so nothing is answered"
        do = "say what it is, not what it is not"
    else:
        why = f"not understood: {words}"
        do = "say it in other words, or leave it out if it changes nothing"
    where = f"read as {_as_said(reading)}" if reading.values else ""
    return InputError(question, where, why, lambda: _near(reading, data), do)


def _near(reading: Reading, data: Refdata) -> list[str]:
    from gaugeblock.tables.load import nearest

    known = {w: w for w in reading.topic.vocabulary(data)}
    found: list[str] = []
    for word in reading.unread:
        if word.isalpha():
            found += [n for n in nearest(word, known, 3) if n not in found]
    return found[:5]


def _spoken(key: str) -> str:
    return key.replace("_", " ")
