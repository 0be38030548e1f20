"""A line whose question is whole, and that tells a story round it: the words of the story, which are left out and said.

A word may be left where it can say nothing more of what is asked: it is a word of the language and not a slip of the
keys, no number, turns nothing, is a value of no option, names no fastener, and no metal, finish, form, standard or
state that can move the answer: the length in a bend hangs on no metal.
"""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.plain.chatter import PLAIN, TURNING
from gaugeblock.plain.denying import agreed
from gaugeblock.plain.english import is_english
from gaugeblock.plain.reading import Reading, hits_at
from gaugeblock.plain.round_words import ASKED, BY_KIND, CHANGING, COUNTING, OF_A_BOLT, PLACES, QUALITY, ROUND
from gaugeblock.plain.unnamed import FASTENERS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.tables.load import Refdata

SHORT = 9  # words: in so short a line each is meant
_MOST = 10  # words; of a longer story too much may be meant
_LONGEST_NAME = 3  # words
_LEAST_VALUES = 2  # or one, and the question's own word
# Columns of words.csv whose cells change a figure, by the kind of their words.
_OF_A_KIND = {
    "finish": re.compile("condition|lubricant|surface|coating|finish"),
    "metal": re.compile("material|into|insert|grade"),
    "state": re.compile("treatment|temper|state|wear"),
    "form": re.compile("seat|fluid|flare"),
}
_LINKS = frozenset(
    ["of", "on", "for", "in", "to", "from", "the", "a", "an", "my", "our", "your", "his", "this", "that"]
)
_ASKING = frozenset(["what", "which", "whats", "what's"])
# Of a thing that goes by what it does, the word is part of its name: a speed sensor.
_NAMED_SO = frozenset(["sensor", "sensors", "switch", "sender", "governor", "regulator", "limiter"])
_COUNTED = frozenset(["gear", "moment", "speed", "hand", "pass", "stage", "step", "bend", "wire", "one"])
# Units that a question may have: one alone is no small thing.
_UNIT_WORDS = """
psi ksi bar mpa kpa rpm revs mph kph nm lb lbs ft feet foot inch inches mm cm metre metres meter meters amp amps
volt volts watt watts degree degrees celsius fahrenheit percent gallon gallons litre litres liter liters hp kw
horsepower newton newtons kg kilos kilo pounds pound ounce ounces thou mil mils gauge hour hours minute minutes
"""
UNITS = frozenset(_UNIT_WORDS.split())
_LINKING = frozenset(["of", "on", "for", "in", "to", "from"])


def left_round(words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | None:
    """The reading without the words that stand round its question; None where one of them may say more of it."""
    if len(words) <= SHORT or not 0 < len(reading.unread) <= _MOST or not _is_sure(words, reading):
        return None
    own = others_of(words, reading, data)
    is_bolt = bool({"part", "thread"} & reading.topic.slots.keys())
    named = named_by(words, reading, data) if is_bolt else set()
    if any(before in _ASKING and word in reading.unread for before, word in pairwise(words)):
        return None  # it is what is asked
    denied = agreed(words, reading, data)
    for word in dict.fromkeys(reading.unread):
        if word in denied:
            continue
        if " " in word:
            return None
        if word not in own and (word == "new" or (word in OF_A_BOLT and not is_bolt)):
            continue
        if (is_bolt and word == "steel" and _is_of_fasteners(words)) or (word == "second" and _is_of_a_thing(words)):
            continue
        if word in named or not all(_is_round(part, words, own, reading.topic, data) for part in word.split("-")):
            return None
    return reading.replace(unread=(), aside=(*reading.aside, *dict.fromkeys(reading.unread)))


def _is_of_fasteners(words: tuple[str, ...]) -> bool:
    """Whether all that is called steel are fasteners, which every grade on record is of."""
    behind = (words[at + 1 : at + 4] for at, word in enumerate(words) if word == "steel")
    return not {"stainless", "mild"} & {*words} and all(not FASTENERS.isdisjoint(after) for after in behind)


def _is_of_a_thing(words: tuple[str, ...]) -> bool:
    """Whether a second one of something is told, and no gear, nor a time."""
    return all(after.isalpha() and after not in _COUNTED for one, after in pairwise((*words, "")) if one == "second")


def _is_sure(words: tuple[str, ...], reading: Reading) -> bool:
    """Whether all that the answer needs was said, and surely this is asked."""
    if not reading.values or any(need not in reading.values for need in reading.topic.needs):
        return False
    is_named = reading.topic.is_meant(words)
    is_said = len(reading.values) >= _LEAST_VALUES or "part" in reading.values or bool(reading.topic.asks_for)
    return is_named and is_said


def named_by(words: tuple[str, ...], reading: Reading, data: Refdata) -> set[str]:
    """Words that name a fastener: the blade bolts; the bolts of the blade, where thread and grade were not both said
    or the tables have such a part.
    """
    found: set[str] = set()
    is_plain = {"thread", "grade"} <= reading.values.keys()
    for at, word in enumerate(words):
        if word in FASTENERS:
            found.update(words[max(0, at - 2) : at])
            after = at + 1
            if words[after : after + 1] and words[after] in _LINKING:
                while after < len(words) and words[after] in _LINKS:
                    after += 1
                behind = words[after : after + 2]
                found.update(w for w in behind if not is_plain or _is_of_a_part(w, data))
    return found - {"new"}  # as a bolt is, where nothing else is said


def of_a_named_bolt(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[str, Reading] | None:
    """The name of a fastener whose thread and grade were said and whose part no table has, and the reading without it;
    None for a line that is not whole without it.
    """
    if not {"thread", "grade"} <= reading.values.keys() or not reading.unread:
        return None
    own, named = others_of(words, reading, data), named_by(words, reading, data)
    name = [word for word in dict.fromkeys(reading.unread) if word in named]
    rest = [word for word in dict.fromkeys(reading.unread) if word not in named]
    so = {one for one, after in pairwise(words) if after in _NAMED_SO and one in ASKED}
    is_thing = all(
        word in ROUND or word in so or (len(words) > SHORT and is_english(word)) or _is_of_a_part(word, data)
        for word in name
    )
    changes = any(
        word in CHANGING | TURNING | (ASKED - so) | PLAIN or word in own or word in _changing(data) for word in name
    )
    if not name or not is_thing or changes or len(name) > _LONGEST_NAME:
        return None
    if rest and (len(words) <= SHORT or not all(_is_round(word, words, own, reading.topic, data) for word in rest)):
        return None
    fastener = next((word for word in words if word in FASTENERS), "bolt")
    before = words[: words.index(fastener)] if fastener in words else ()
    at = len(before)
    while at and before[at - 1] in {*name, *reading.aside}:  # the mower blade bolt
        at -= 1
    called = before[at:] if {*name} <= {*before[at:]} else tuple(name)
    aside = tuple(word for word in (*reading.aside, *rest) if word not in called)
    return f"{' '.join(called)} {fastener.removesuffix('s')}", reading.replace(unread=(), aside=aside)


def _is_of_a_part(word: str, data: Refdata) -> bool:
    """Whether the name of some part has a word."""
    lines = data.words_with(word)
    return any(line[0] == "fasteners" and "part" in line[2] and word in line[1].casefold().split() for line in lines)


def may_change(word: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether a word that was left may say more of what is asked, be it of the language or not."""
    own, topic = others_of(words, reading, data), reading.topic
    parts = word.split("-")
    if " " in word or word in own or not all(part.isalpha() for part in parts):
        return True
    if any(is_listed(part, data) and part not in ROUND for part in parts):
        return True
    if any(part in TURNING or part in ASKED or part in UNITS or _moves(part, topic, data) for part in parts):
        return True
    if any(part in PLACES and _before_a_number(part, words) for part in parts):
        return True
    return any(part in COUNTING for part in parts)


def is_of_no_account(word: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether a word of a story is a word alone, asks for nothing, is no value of an option of what is asked and of no
    kind that can move its answer.
    """
    own, topic = others_of(words, reading, data), reading.topic
    parts = word.split("-")
    if word in own or not all(part.isalpha() for part in parts):
        return False
    if any(part in TURNING or part in ASKED or part in UNITS or _moves(part, topic, data) for part in parts):
        return False
    return not any(part in PLACES and _before_a_number(part, words) for part in parts)


def is_listed(word: str, data: Refdata) -> bool:
    """Whether words.csv has a word, of whatever column: the trade means something by it."""
    return any(line[1].casefold() == word for line in data.words_with(word))


def _before_a_number(word: str, words: tuple[str, ...]) -> bool:
    return any(after[:1].isdigit() for one, after in pairwise(words) if one == word)


def _is_round(word: str, words: tuple[str, ...], own: set[str], topic: Topic, data: Refdata) -> bool:
    """Whether a word says nothing of what is asked."""
    if word in TURNING or word in ASKED or not word.isalpha() or word in own or _moves(word, topic, data):
        return False
    if word in PLACES:  # over 250 degF is a limit
        return not _before_a_number(word, words)
    if word in ROUND:
        return True
    if word in PLAIN:
        return QUALITY in topic.unmoved and word not in COUNTING and word not in topic.vocabulary(data)
    return word in CHANGING or is_english(word)


def _moves(word: str, topic: Topic, data: Refdata) -> bool:
    """Whether a word is of a kind that can move the answer."""
    return bool(kinds_of(word, topic, data))


def kinds_of(word: str, topic: Topic, data: Refdata) -> set[str]:
    """The kinds of a word that can move the answer."""
    found = {kind for kind, those in BY_KIND.items() if word in those}
    if word not in PLACES | ROUND:
        found |= _changing(data).get(word, frozenset())
    return found - topic.unmoved


def others_of(words: tuple[str, ...], reading: Reading, data: Refdata) -> set[str]:
    """The words that may be a value of some option of the topic: one that is taken by another value too."""
    found: set[str] = set()
    for at in range(len(words)):
        for key, hit in hits_at(words, at, reading.topic, data):
            if hit.value != reading.values.get(key):
                found.update(words[at : at + hit.count])
    return found


def _changing(data: Refdata) -> dict[str, frozenset[str]]:
    """The words by which people call a metal, a finish, a lubricant, a state, a fluid, a grade of whatever -> of which
    kinds they are.
    """
    got = data._memo.get("changing words")
    if got is None:
        found: dict[str, set[str]] = {}
        for line in data.words_with():
            kinds = [kind for kind, columns in _OF_A_KIND.items() if columns.search(line[2])]
            if kinds and " " not in line[1]:
                found.setdefault(line[1].casefold(), set()).update(kinds)
        got = data._memo["changing words"] = {word: frozenset(kinds) for word, kinds in found.items()}
    return got  # type: ignore[return-value]
