"""What is asked in plain words -> the Sheet of the answer, or the Table of what is left open."""

from __future__ import annotations

from gaugeblock.answer.decision import NONE
from gaugeblock.answer.opening import answered, compared
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss
from gaugeblock.plain.by_rule import asked_for, first_of_two, nearly, outside_of, rules_of, subject_of, with_guess
from gaugeblock.plain.chatter import is_story
from gaugeblock.plain.given import Answer as Answer
from gaugeblock.plain.reading import Reading, mend, read
from gaugeblock.plain.wanted import is_in
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Never

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table
    from gaugeblock.found import Found
    from gaugeblock.plain.convert import Conversion


PLAIN_BOLT = ": a plain bolt of this thread, not this part"
# Topics that may have a word which was nearly typed.
_MENDED = 5
_GOES_ON = frozenset(["same", "ditto", "the", "and", "now", "ok", "then", "as"])
_OF_THE_FIRST = frozenset(["it", "its", "it's", "they", "them", "this", "that", "those", "these"])
_AS_LIKELY = 200  # of two words that were left
_OF_NO_THREAD = "engagement in diameters"
_SURELY_MEANT = 3  # options that were said: no rule is meant
_NEARLY = 2  # words that were left


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
    try:
        got = _with_bolt(reading, answer_to(reading, None, data), data)
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


def _with_bolt(reading: Reading, got: Answer, data: Refdata) -> Answer:
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
        _refused(question, words, reading, data)
    return _not_whole(question, words, reading, data)


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
            return Answer(_as_said(both[0]), both[1], both[0].unit)
    if reading.is_whole:
        is_told = len(reading.values) >= _SURELY_MEANT or all(map(is_story, reading.aside))
        return (None if is_told else rules_of(words, data, whole=True)) or reading
    if any(" " in word for word in reading.unread):
        from gaugeblock.plain.denying import without_denied

        return without_denied(words, reading, data, understood)
    return None


def _not_whole(question: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | Answer:
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
    other = other or _otherwise(put_right, reading, data) or _beside(words, put_right, reading, data)
    if other is None:
        from gaugeblock.plain.leaving import SHORT, left_round, of_a_named_bolt

        others = _nearly_as_likely(put_right, reading, data) if len(words) > SHORT else []
        for one in (reading, *others):
            round_it = left_round(put_right, one, data)
            if round_it is not None:
                return round_it
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
    return other or _doubtful(put_right, reading, data) or _refused(question, words, reading, data)


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
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.doubtful import in_doubt, table_in_doubt, unknown_words

    left = unknown_words(words, reading, data)
    if not left:
        return None
    try:
        got = answer_to(reading.replace(unread=()), None, data)
    except GaugeblockError:
        return None  # what it lacks is told with the word
    told = f"{got.read_as}; not understood: {', '.join(left)}"
    if isinstance(got.found, Sheet):
        return got.replace(read_as=told, found=in_doubt(got.found, left))
    return got.replace(read_as=told, found=table_in_doubt(got.found, left)) if isinstance(got.found, Table) else None


def _nearly_as_likely(words: tuple[str, ...], best: Reading, data: Refdata) -> list[Reading]:
    """The readings that leave a word or two more than the best one, the likeliest first."""
    from gaugeblock.plain.topics import topics

    found = (read(words, topic, data) for group in topics(words) for topic in group if topic is not best.topic)
    return sorted((one for one in found if one.cost <= best.cost + _AS_LIKELY), key=lambda one: one.cost)


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
    from gaugeblock.plain.beside import alone, corrected, in_either_unit, twice

    again = corrected(words, data)
    if again is not None:
        return answer_to(again, None, data)
    found = in_either_unit(words, reading, data)
    if found is not None:
        return Answer(_as_said(found[0]), found[1], found[0].unit)
    found = twice(put_right, data)
    if found is not None:
        from gaugeblock.plain.versus import told

        return told(_as_said(found[0]), found[0].unit, found[1])
    first = alone(words, understood, data)
    if first is None:
        return first_of_two(words, data)
    got, rest = _with_bolt(first[0], answer_to(first[0], None, data), data), " ".join(first[1])
    other = _second(first[0], first[1], data)
    if other is None:
        return got.replace(read_as=f"{got.read_as}; not answered: {rest}")
    return got.replace(more=(*got.more, other))


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
            return told(f"{_as_said(both[0])}{left_open(words)}", both[0].unit, both[1])
        from gaugeblock.plain.beside import questions

        for head, rest in questions(words):
            both = side_by_side(head, every, data) if parted(head) is not None else None
            if both is not None:
                return told(f"{_as_said(both[0])}; not answered: {' '.join(rest)}", both[0].unit, both[1])
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


def reading_of(question: str, data: Refdata) -> Reading:
    """How a question is read by one answer; InputError for one that is not read whole."""
    words = words_of(question)
    reading = understood(words, data)
    if not reading.is_whole:
        _refused(question, words, reading, data)
    return reading


def _refused(question: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> Never:
    """Raise InputError for a line that was not read whole."""
    if reading.unread:
        from gaugeblock.plain.refused import not_understood

        raise not_understood(question, words, reading, _as_said(reading), data)
    from gaugeblock.plain.refused import not_said

    raise not_said(question, words, reading, _as_said(reading), data)


def answer_to(reading: Reading, compare: str | None, data: Refdata) -> Answer:
    """The answer to a question that was read; with ``compare`` the usual values of that option side by side."""
    values, said = dict(reading.values), reading.said
    if compare is not None:
        return Answer(_as_said(reading), compared(reading.topic, values, said, compare, data), reading.unit)
    return Answer(_as_said(reading), answered(reading.topic, values, said, data), reading.unit)


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
    likely = sorted(found, key=lambda one: (len(one.unread), one.cost))[:_MENDED]
    mended = [again for one in likely if (again := mend(words, one, data)) is not None]
    return min([*found, *mended], key=lambda one: one.cost)


def _as_said(reading: Reading) -> str:
    """How the line was read, in one line."""
    text = ", ".join(reading.said.values())
    text = f"{reading.topic.noun}: {text}" if text else reading.topic.noun
    text += f", wanted in {reading.unit}" if reading.unit else ""
    text += f"; left out: {', '.join(dict.fromkeys(reading.aside))}" if reading.aside else ""
    mended = "; ".join(f'"{typed}" as {meant}' for typed, meant in reading.mended)
    return f"{text} ({mended})" if mended else text
