"""The words of a long story, whose question is whole, that no answer reads: those that only tell it, and those that the
answer may hang on.

A number, a unit behind one, another value of what was read, a metal, a finish, a count, what is asked and what names a
fastener are neither: such a story is refused, for the figure may be another.
"""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.plain.beside import ASKS, side_by_side
from gaugeblock.plain.chatter import CHATTER, PLAIN, TURNING, is_story
from gaugeblock.plain.denying import SHORT_OF
from gaugeblock.plain.english import is_english
from gaugeblock.plain.leaving import UNITS, is_listed, kinds_of, named_by, others_of
from gaugeblock.plain.reading import hits_at, read
from gaugeblock.plain.round_words import ASKED, BY_KIND, MULTIPLE, NEVER_LEFT, PLACES, ROUND
from gaugeblock.plain.topics import topics
from gaugeblock.plain.unnamed import FASTENERS
from gaugeblock.plain.words import NUMBER_WORDS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.answer.asking import Hit, Topic
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

LONG = 15  # words: a shorter line is a question with few words round it
_LEAST_VALUES = 2
_LIKELY = 3  # readings
_MOST_LEFT = 0.6  # of the words that say something
_ASKING = frozenset(["what", "which", "whats", "what's", "how"])
_NEAR_THE_QUESTION = 3  # words behind what, which and how
_BESIDE = 2  # words
_TURNED = 4  # words that a word may turn
_STOPS = frozenset(["and", "but", "so", "because", "cos", "what", "how", "which", "if", "when", "where", "while"])
_GOES_ON = _STOPS | {"before", "after", "until", "till"}
_TIMES = frozenset(["twice", "thrice"])  # which a thing was done, or as much
_MULTIPLE = MULTIPLE - _TIMES - {"single", "third"}  # one alone, and the one after two others
# Kinds that surely change a figure, and the one that may, wherever the story tells it.
_FIRM = frozenset(["metal", "finish", "form", "service"])
_FORM, _STATE = frozenset(["form", "service"]), "state"


def told_and_doubtful(
    words: tuple[str, ...], reading: Reading, data: Refdata
) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    """Of the words that were left those that only tell the story, and those that the answer may hang on; None where one
    surely changes it, where the question is not whole, or where too much is left.
    """
    left = tuple(dict.fromkeys(reading.unread))
    if len(words) < LONG or not left or not _is_whole(words, reading):
        return None
    content = [word for word in words if word not in CHATTER and not is_story(word)]
    if sum(1 for word in left if not is_story(word)) > _MOST_LEFT * len(content):
        return None
    blocked = others_of(words, reading, data) | _asked(words)
    if {"part", "thread"} & reading.topic.slots.keys():
        blocked |= named_by(words, reading, data)
    told: list[str] = []
    doubtful: list[str] = []
    near = _near_what_is_asked(words, reading, data)
    for token in left:
        if " " in token:
            is_silent = _is_silent(token, words, reading, data)
            if is_silent is None:
                return None
            (told if is_silent else doubtful).append(token)
        elif (
            token in blocked
            or token in NEVER_LEFT
            or _changes(token, words, reading, data)
            or (token in _MULTIPLE and token in near)
        ):
            return None
        else:
            is_told = _tells(token, words, reading, data) or not (token in near or _is_asked(token, reading, data))
            (told if is_told else doubtful).append(token)
    return tuple(told), tuple(doubtful)


def twice_told(words: tuple[str, ...], data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of two values that a story tells of one option, discs in front and drums behind, where all else that it
    tells changes nothing; None where something of it may.
    """
    without = tuple(word for word in words if word not in ("or", "and", "both"))
    if len(words) < LONG or not TURNING.isdisjoint(without):
        return None
    every = sorted((read(without, topic, data) for group in topics(words) for topic in group), key=lambda one: one.cost)
    for reading in every[:_LIKELY]:
        for key, hit, taken in _other_values(without, reading, data):
            rest = tuple(word for word in reading.unread if word not in taken)
            told = told_and_doubtful(without, reading.replace(unread=rest), data) if rest else ((), ())
            if told is None or told[1] or not _is_whole(without, reading):
                continue
            said = {**reading.said, key: f"{reading.said[key]} and {hit.said}"}
            values = f"{key}={reading.values[key]}; {hit.value}"
            table = side_by_side(reading.topic, reading, said, values, data)
            if table is not None:
                return reading.replace(said=said, unread=(), aside=(*reading.aside, *told[0])), table
    return None


def _other_values(
    words: tuple[str, ...], reading: Reading, data: Refdata
) -> Iterator[tuple[str, Hit, tuple[str, ...]]]:
    """Each other value of an option that was read, with the words that say it, of which some were left."""
    for at in range(len(words)):
        for key, hit in hits_at(words, at, reading.topic, data):
            taken = words[at : at + hit.count]
            is_other = key in reading.values and key not in reading.topic.joined and hit.value != reading.values[key]
            if is_other and not hit.doubt and not {*reading.unread}.isdisjoint(taken):
                yield key, hit, taken


def _is_whole(words: tuple[str, ...], reading: Reading) -> bool:
    is_said = len(reading.values) >= _LEAST_VALUES or (bool(reading.values) and bool(reading.topic.asks_for))
    return is_said and all(need in reading.values for need in reading.topic.needs) and reading.topic.is_meant(words)


def _asked(words: tuple[str, ...]) -> set[str]:
    """The words by which the question asks: the next one to what, which or how, and the measures near it."""
    found: set[str] = set()
    for at, word in enumerate(words):
        if word in _ASKING:
            found.update(words[at + 1 : at + 2])
            found.update(w for w in words[at + 2 : at + 3] if w not in _GOES_ON)
            found.update(w for w in words[at + 3 : at + 1 + _NEAR_THE_QUESTION] if w in ASKED)
    return found


def _near_what_is_asked(words: tuple[str, ...], reading: Reading, data: Refdata) -> set[str]:
    """The words that stand beside a value that was read, a number, a fastener or the question's own words."""
    found: set[str] = set()
    for at, word in enumerate(words):
        count = 1 if word[:1].isdigit() or word in FASTENERS else reading.topic.signal(words, at)
        for key, hit in hits_at(words, at, reading.topic, data):
            if reading.values.get(key) == hit.value:
                count = max(count, hit.count)
        if count:
            found.update(words[max(0, at - _BESIDE) : at + count + _BESIDE])
    return found


def _changes(word: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether a word that was left surely changes the figure."""
    if word in NUMBER_WORDS or not all(part.isalpha() for part in word.split("-")):
        return True
    if word in UNITS and any(before[-1:].isdigit() for before, one in pairwise(words) if one == word):
        return True
    return _is_firm(word, reading.topic, data)


def _is_firm(word: str, topic: Topic, data: Refdata) -> bool:
    """Whether a word is of a kind that surely changes a figure; a metal or a finish if the question knows it."""
    kinds = kinds_of(word, topic, data)
    return not _FORM.isdisjoint(kinds) or (not _FIRM.isdisjoint(kinds) and word in topic.vocabulary(data))


def _is_asked(word: str, reading: Reading, data: Refdata) -> bool:
    """Whether a word is asked about, wherever the story tells it: a count, a state, a metal that the question does not
    know.
    """
    kinds = kinds_of(word, reading.topic, data)
    is_state = word in BY_KIND[_STATE] and _STATE in kinds
    return word in _MULTIPLE or word in _TIMES or is_state or not _FIRM.isdisjoint(kinds)


def _tells(word: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether a word tells the story alone."""
    if word in PLACES and not any(one == word and after[:1].isdigit() for one, after in pairwise(words)):
        return True
    if word in ROUND or is_story(word):
        return True
    if word in PLAIN or word in UNITS or word in ASKED or kinds_of(word, reading.topic, data):
        return False
    return is_english(word) and not is_listed(word, data) and word not in reading.topic.vocabulary(data)


def _is_silent(token: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool | None:
    """Whether what a word turns says nothing of the question: ``couldnt face``. None where it turns a value, a number
    or what changes a figure; False where it turns what the question is about.
    """
    turn, _, _ = token.partition(" ")
    is_silent = True
    for at, word in enumerate(words):
        if word != turn or (turn == "or" and words[at + 1 : at + 2] and words[at + 1] in ASKS):
            continue  # or do I have to move it: a second question
        for place in range(at + 1, min(len(words), at + 1 + _TURNED)):
            one = words[place]
            if one in _STOPS:
                break
            if one in CHATTER:
                continue
            is_value = any(hit.doubt < 1 for _, hit in hits_at(words, place, reading.topic, data))
            kinds = kinds_of(one, reading.topic, data)
            if is_value or one[:1].isdigit() or one in _MULTIPLE or not _FIRM.isdisjoint(kinds) or one in TURNING:
                return None
            if one in PLACES:
                continue
            is_known = kinds or one in PLAIN or is_listed(one, data) or is_listed(one.removesuffix("s"), data)
            if reading.topic.signal(words, place) or (is_known and not is_story(one) and one not in SHORT_OF):
                is_silent = False
    return is_silent
