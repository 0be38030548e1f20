"""What a line comes to that no answer reads whole: what stands beside its question, a story round it, rows of the
tables, rules, or an answer that stands if what was not understood changes nothing.
"""

from __future__ import annotations

from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.by_rule import first_of_two, nearly, outside_of, rules_of
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import Reading
from gaugeblock.plain.understand import PLAIN_BOLT, answer_to, as_said, nearly_as_likely, refused, understood, with_bolt
from gaugeblock.plain.words import words_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_OF_THE_FIRST = frozenset(["it", "its", "it's", "they", "them", "this", "that", "those", "these"])
_OF_NO_THREAD = "engagement in diameters"
_NEARLY = 2  # words that were left
_JOINED = frozenset(["and", "or"])


def not_whole(question: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | Answer:
    """What a line comes to that no answer reads whole; InputError where it comes to nothing."""
    meant = dict(reading.mended)
    put_right = tuple(meant.get(word, word) for word in words)
    if "part" in reading.values:
        from gaugeblock.plain.beside import of_its_place

        again = of_its_place(put_right, reading, data)
        if again is not None:
            return again.replace(mended=reading.mended)
    is_near = bool(reading.values) and all(need in reading.values for need in reading.topic.needs)
    other = outside_of(words, data)
    if other is not None:
        other = (
            None
            if is_near and reading.topic.is_meant(words)
            else (None if other.is_of_all else rules_of(words, data) or first_of_two(words, data)) or other
        )
    if other is None and len(reading.unread) <= _NEARLY and not _JOINED.isdisjoint(words):
        other = _two_values(put_right, data)
    other = other or _otherwise(put_right, reading, data) or _beside(words, put_right, reading, data)
    if other is None:
        from gaugeblock.plain.leaving import SHORT, left_round, of_a_named_bolt

        others = nearly_as_likely(put_right, reading, data) if len(words) > SHORT else []
        for one in (reading, *others):
            round_it = left_round(put_right, one, data)
            if round_it is not None:
                return round_it
        for one in (reading, *others):
            told = _in_a_story(put_right, one, data)
            if told is not None:
                return told
        both = _both_in_a_story(put_right, data)
        if both is not None:
            return both
        of_a_part = of_a_named_bolt(put_right, reading, data)
        if of_a_part is not None:
            return _named_bolt(*of_a_part, data)
        from gaugeblock.plain.converted import in_a_story

        story = in_a_story(words, data)
        if story is not None:
            return story
        other = outside_of(words, data)
    if other is None and not (is_near and len(reading.unread) <= _NEARLY):  # else the word in the way is told
        other = nearly(words, data)
    return other or _doubtful(put_right, reading, data) or refused(question, words, reading, data)


def _doubtful(words: tuple[str, ...], reading: Reading, data: Refdata) -> Answer | None:
    """The answer of a line with words that are not known: it stands if they change nothing. Where the whole line has
    none, that of its first question.
    """
    from gaugeblock.plain.beside import questions
    from gaugeblock.plain.leaving import left_round

    got = _in_doubt(words, reading, data)
    if got is not None:
        return got
    for head, rest in questions(words):
        first = understood(head, data)
        round_it = left_round(head, first, data)
        try:
            got = _in_doubt(head, first, data) if round_it is None else answer_to(round_it, None, data)
        except GaugeblockError:  # what it lacks is told of the whole line
            continue
        if got is not None:
            return got.replace(read_as=f"{got.read_as}; not answered: {' '.join(rest)}")
    return None


def _in_doubt(words: tuple[str, ...], reading: Reading, data: Refdata) -> Answer | None:
    """The answer that stands if the words which are not known change nothing; None where they may."""
    from gaugeblock.plain.doubtful import unknown_words

    left = unknown_words(words, reading, data)
    return _if_nothing_changes(reading, left, data) if left else None


def _in_a_story(words: tuple[str, ...], reading: Reading, data: Refdata) -> Answer | None:
    """The answer to the question of a long story, that stands if what the story tells beside it changes nothing; None
    where some of it surely does.
    """
    from gaugeblock.plain.story import told_and_doubtful

    found = told_and_doubtful(words, reading, data)
    if found is None:
        return None
    told, doubtful = found
    return _if_nothing_changes(reading.replace(aside=(*reading.aside, *told)), doubtful, data)


def _both_in_a_story(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """Two values that a long story tells of one option, side by side."""
    from gaugeblock.plain.story import twice_told

    found = twice_told(words, data)
    return None if found is None else Answer(as_said(found[0]), found[1], found[0].unit)


def _if_nothing_changes(reading: Reading, left: tuple[str, ...], data: Refdata) -> Answer | None:
    """The answer of a reading that stands if the words which were left change nothing; None where it has none."""
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.doubtful import in_doubt, table_in_doubt

    try:
        got = answer_to(reading.replace(unread=()), None, data)
    except GaugeblockError:
        return None  # what it lacks is told with the words
    if not left:
        return got
    told = f"{got.read_as}; not understood: {', '.join(left)}"
    if isinstance(got.found, Sheet):
        return got.replace(read_as=told, found=in_doubt(got.found, left))
    return got.replace(read_as=told, found=table_in_doubt(got.found, left)) if isinstance(got.found, Table) else None


def _named_bolt(name: str, plain: Reading, data: Refdata) -> Answer:
    """Whose figure the torque of a part's bolt is; with it what a plain bolt of its thread and grade takes."""
    from gaugeblock.plain.unnamed import nobodys

    left_out = f"; left out: {', '.join(plain.aside)}" if plain.aside else ""
    bolt = answer_to(plain.replace(aside=()), None, data)
    return Answer(
        f"torque: {name}{left_out}", nobodys(name, data), more=(bolt.replace(read_as=f"{bolt.read_as}{PLAIN_BOLT}"),)
    )


def _beside(words: tuple[str, ...], put_right: tuple[str, ...], reading: Reading, data: Refdata) -> Answer | None:
    """The answer to the question of a line that has more beside it: what is not answered is told."""
    from gaugeblock.plain.beside import alone, corrected, in_either_unit

    again = corrected(words, understood, data)
    if again is not None:
        return answer_to(again, None, data)
    found = in_either_unit(words, reading, data)
    if found is not None:
        return Answer(as_said(found[0]), found[1], found[0].unit)
    got = _two_values(put_right, data)
    if got is not None:
        return got
    first = alone(words, understood, data)
    if first is None:
        return first_of_two(words, data)
    got, rest = with_bolt(first[0], answer_to(first[0], None, data), data), " ".join(first[1])
    other = _second(first[0], first[1], data)
    if other is None:
        return got.replace(read_as=f"{got.read_as}; not answered: {rest}")
    return got.replace(more=(*got.more, other))


def _two_values(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """Two values of one option side by side: the bolt and the nut; None where a line has not two."""
    from gaugeblock.plain.beside import twice

    found = twice(words, data)
    if found is None:
        return None
    from gaugeblock.plain.versus import told

    return told(as_said(found[0]), found[0].unit, found[1])


def _second(first: Reading, rest: tuple[str, ...], data: Refdata) -> Answer | None:
    """The answer to a second question, by itself or with what the first was about; None where it has none."""
    about = words_of(" ".join(first.said.values()))
    by_itself = [rest[1:]] if _OF_THE_FIRST.isdisjoint(rest) else []
    for words in (*by_itself, (*about, *rest[1:])):
        reading = understood(words, data)
        if reading.topic.noun == _OF_NO_THREAD and "thread" in first.values:
            continue  # of that thread it is asked
        if reading.is_whole and reading.values and (reading.topic, reading.values) != (first.topic, first.values):
            try:
                return answer_to(reading, None, data)
            except GaugeblockError:
                continue
    from gaugeblock.plain.beside import of_the_same

    same = of_the_same(rest[1:], first, data)
    try:
        return None if same is None else answer_to(same, None, data)
    except GaugeblockError:
        return None


def _otherwise(words: tuple[str, ...], reading: Reading, data: Refdata) -> Answer | None:
    """What a line comes to that no answer reads whole: two things side by side, rows of the tables, or a name that none
    of them has.
    """
    from gaugeblock.plain.versus import left_open, parted, side_by_side, told

    if parted(words) is not None:
        from gaugeblock.plain.topics import topics

        every = [topic for group in topics(words) for topic in group]
        both = side_by_side(words, every, data)
        if both is not None:
            return told(f"{as_said(both[0])}{left_open(words)}", both[0].unit, both[1])
        from gaugeblock.plain.beside import questions

        for head, rest in questions(words):
            both = side_by_side(head, every, data) if parted(head) is not None else None
            if both is not None:
                return told(f"{as_said(both[0])}; not answered: {' '.join(rest)}", both[0].unit, both[1])
        return None
    from gaugeblock.plain.listing import listed
    from gaugeblock.plain.unnamed import unnamed

    found = listed(words, data)
    if found is not None:
        return Answer(f"a look through the tables for: {found.asked}", found)
    rules = rules_of(words, data)
    if rules is not None:
        return rules
    sheet = unnamed(words, reading, data)
    return None if sheet is None else Answer(f"torque: {sheet.title}", sheet)
