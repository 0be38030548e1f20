"""What is asked in plain words -> the Sheet of the answer, or the Table of what is left open."""

from __future__ import annotations

from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.plain.by_rule import asked_for, outside_of, rules_of, subject_of, with_guess
from gaugeblock.plain.chatter import is_story
from gaugeblock.plain.given import Answer
from gaugeblock.plain.one_unit import ask_unit
from gaugeblock.plain.understand import answer_to, as_said, refused, understood, with_bolt
from gaugeblock.plain.wanted import is_in
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.found import Found
    from gaugeblock.plain.convert import Conversion
    from gaugeblock.plain.reading import Reading


_GOES_ON = frozenset(["same", "ditto", "the", "and", "now", "ok", "then", "as"])
_SURELY_MEANT = 3  # options that were said: no rule is meant


def ask(
    question: str, *, compare: str | None = None, data: Refdata | None = None
) -> Sheet | Table | Conversion | Found:
    """The answer to a question in plain words.

    ``question`` is a line as people say it: ``3/8-16 grade 8 anti-seize into aluminum``; ``compare`` an option whose
    usual values are put side by side (``condition``). Returns the Sheet of the command that answers it; a Table where
    a key that changes the number was not said; the Conversion of a measure (``31 ft lbs in nm``). The rows Found that
    have every word of a line which no answer reads whole; of two questions the first. Raises InputError that names
    every word that was not understood, and whatever the answer itself refuses.

    >>> ask("3/8-16 grade 5 dry").decision.figure.text
    '31'
    """
    return answer(question, compare=compare, data=data).found


def answer(question: str, *, compare: str | None = None, data: Refdata | None = None) -> Answer:
    """As ``ask``, with how the line was read."""
    data = data or refdata()
    read_as = read_or_answered(question, data)
    if isinstance(read_as, Answer):
        return read_as
    return answer_to(read_as, compare, data) if compare is not None else answer_or_rules(question, read_as, data)


def answer_or_rules(question: str, reading: Reading, data: Refdata) -> Answer:
    """The answer to a question that was read; what the rules say of it where the tables have no such thing."""
    ask_unit(words_of(question), reading)
    try:
        got = with_bolt(reading, answer_to(reading, None, data), data)
        got = with_guess(reading, got, data)
        if not is_in(reading.unit, got.found):
            why = f"it was read as {got.read_as}, and nothing of that is in {reading.unit}"
            raise InputError(reading.unit, "", why, (), f"say what you want in {reading.unit}")
        return got
    except (LookupMiss, InputError) as error:
        words = words_of(question)
        other = None if isinstance(error, Ambiguous) else outside_of(words, data) or rules_of(words, data)
        if other is None:
            raise
        return other


def read_or_answered(question: str, data: Refdata) -> Reading | Answer:
    """How a question is read; or, where no answer of a command is meant, the conversion that it asks for, the rows that
    have all its words, or whose figure it is. InputError for none of these.
    """
    words = words_of(question)
    before = _before_reading(question, words, data)
    if before is not None:
        return before
    reading = understood(words, data)
    surely = _surely(words, reading, data)
    if surely is not None:
        return surely
    if not reading.unread and reading.topic.asks_again(words):
        refused(question, words, reading, data)
    from gaugeblock.plain.otherwise import not_whole

    return not_whole(question, words, reading, data)


def _before_reading(question: str, words: tuple[str, ...], data: Refdata) -> Answer | None:
    """The conversions or the rules that a line plainly asks for; InputError for a line that is no whole question, or
    that is refused by name.
    """
    if words and words[0] in _GOES_ON:
        from gaugeblock.plain.follow import refuse

        refuse(words)
    from gaugeblock.plain.converted import converted, read_in_another_unit

    found = converted(words, data)
    if found is not None:
        return found
    if "on" in words or "about" in words:
        from gaugeblock.plain.held import held

        there = held(words, data)
        if there is not None:
            return there
    return subject_of(question, words, data) or asked_for(words, data) or read_in_another_unit(words, data)


def _surely(words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | Answer | None:
    """What a line that is read whole comes to, a part and its mate, or one that denies what it says otherwise."""
    if "part" in reading.values and "and" in words:
        from gaugeblock.plain.beside import of_its_mate

        both = of_its_mate(words, reading, data)
        if both is not None:
            return Answer(as_said(both[0]), both[1], both[0].unit)
    if reading.is_whole:
        is_told = len(reading.values) >= _SURELY_MEANT or all(map(is_story, reading.aside))
        return (None if is_told else rules_of(words, data, whole=True)) or reading
    if any(" " in word for word in reading.unread):
        from gaugeblock.plain.denying import without_denied

        return without_denied(words, reading, data, understood)
    return None


def reading_of(question: str, data: Refdata) -> Reading:
    """How a question is read by one answer; InputError for one that is not read whole."""
    words = words_of(question)
    reading = understood(words, data)
    if not reading.is_whole:
        refused(question, words, reading, data)
    return reading
