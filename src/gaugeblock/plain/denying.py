"""What a line turns round, and changes nothing: a thing that nobody asked for, or the other of what was said."""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.answer.opening import answered
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.negation import says
from gaugeblock.plain.chatter import CHATTER, is_story
from gaugeblock.plain.reading import Reading, hits_at
from gaugeblock.plain.round_words import METALS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Hit
    from gaugeblock.tables.load import Refdata

# What one does not do to a thing that is named next: I do not have a book.
_DONE = """
have got get find see own want need afford trust bring remember recall know keep like fancy carry use fit spot
"""
_DOING = frozenset(_DONE.split())
# Of these it need not be said what.
_BY_ITSELF = frozenset(["know", "remember", "recall", "see"])
_BEFORE_IT = frozenset(["a", "an", "the", "any", "my", "his", "our", "her", "one", "no", "to", "enough", "much", "of"])
# What nobody wants.
_UNWANTED = frozenset(["fire", "trouble", "mess", "leak", "leaks", "surprises", "smell", "noise", "drama", "accident"])
_GOES_ON = frozenset(["what", "how", "which", "where", "if", "so", "and", "but", "when", "why"])
# What a shop has to look things up in, and what it runs short of.
_LACKED = """
book books manual manuals paper papers paperwork sheet chart charts clue clues idea ideas money cash time luck
catalogue catalog plate label tag sticker card box receipt card instructions
info information internet signal brains patience
room space lathe mill notcher grinder press hoist lift crane welder compressor vice helper gantry
"""
SHORT_OF = frozenset(_LACKED.split())
_DENIES = (("not",), ("no",), ("without",), ("w/o",), ("isnt",), ("isn't",), ("instead", "of"), ("rather", "than"))
_INTO = frozenset(["in", "into", "on"])
# With these it is asked, and not said: is it not dry.
_IS_IT = frozenset(["is", "are", "was", "were", "does", "do", "if", "when", "why"])
_ASKED_OF = frozenset(["it", "they", "that", "this", "them", "i"])
_STEELS = (("mild", "steel"), ("carbon", "steel"), ("plain", "steel"), ("cast", "iron"))
# A metal has one of these.
_TREATED = (
    frozenset(["annealed"]),
    frozenset(["normalised", "normalized"]),
    frozenset(["hardened", "quenched"]),
    frozenset(["as-rolled", "rolled"]),
)


def agreed(words: tuple[str, ...], reading: Reading, data: Refdata) -> set[str]:
    """Of what was left of a line, what it turns round (``no book``, ``dont have``) and changes nothing of what was
    read: it is of no option at all, or the other value of one that was said (``no oil`` of threads that are dry).
    """
    found: set[str] = set()
    pairs = list(pairwise((*words, "")))
    for token in reading.unread:
        first, _, denied = token.partition(" ")
        places = [at for at, pair in enumerate(pairs) if pair == (first, denied)]
        if not denied or first == "or" or len(places) != 1:  # or stainless: a second value denies nothing
            continue
        if denied not in _DOING and any(hit.count > 1 for _, hit in hits_at(words, places[0] + 1, reading.topic, data)):
            continue  # more is denied than the next word
        thing = _thing(words, places[0] + 2) if denied in _DOING else denied
        is_nothing = thing and (_is_nothing(thing, reading, data) or _is_other(thing, reading, data))
        if is_nothing or (not thing and denied in _BY_ITSELF):
            found |= {token, thing} if words.count(thing) == 1 else {token}
    return found


def without_denied(
    words: tuple[str, ...], first: Reading, data: Refdata, read: Callable[..., Reading]
) -> Reading | None:
    """The reading of a line without what it denies, where all of that was said otherwise: oiled, not dry. None for a
    line that denies nothing, or something that it leaves open.
    """
    denials = [
        (at, at + len(turn))
        for at in range(len(words))
        if " ".join(words[at : at + 2]) in first.unread and (turn := _turn(words, at))
    ]
    if not denials:
        return None
    rest: list[str] = []
    denied: list[tuple[int, tuple[str, ...]]] = []
    asides: list[str] = []
    end = 0
    for at, behind in denials:
        after = behind
        if at < end or (words[at - 1 : at] and words[at - 1] in _ASKED_OF and words[at - 2] in _IS_IT):
            return None
        while words[after : after + 1] and words[after] in _BEFORE_IT | _INTO:
            after += 1
        if after >= len(words):
            return None
        phrase = max([1, *(hit.count for _, hit in hits_at(words, after, first.topic, data))])
        if words[after : after + 2] in _STEELS:
            phrase = max(phrase, 2)
        rest += words[end:at]
        end = after + phrase
        denied.append((at, words[after:end]))
        asides.append(" ".join(words[at:end]))
    left = (*rest, *words[end:])
    again = read(left, data)
    if not again.is_whole:
        from gaugeblock.plain.leaving import left_round

        again = left_round(left, again, data) or again
    if not again.is_whole or not again.values:
        return None
    if not all(
        _is_another_number(words[at - 1] if at else "", thing, again, data) or _is_said_otherwise(thing, again, data)
        for at, thing in denied
    ):
        return None
    return again.replace(aside=(*again.aside, *asides))


# A unit that a number is not in: 1.1 bar, not psi.
_UNITS = frozenset(
    [
        "psi",
        "bar",
        "kpa",
        "nm",
        "n*m",
        "mm",
        "cm",
        "inch",
        "inches",
        "in",
        "metres",
        "meters",
        "feet",
        "ft",
        "lbs",
        "kg",
        "celsius",
        "fahrenheit",
    ]
)


def _is_another_number(before: str, thing: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether what is denied is a unit, or the number in place of the one said right before it, of the same form and of
    no option by itself: M12x1.25, not 1.75.
    """
    if len(thing) == 1 and thing[0] in _UNITS:
        return True
    first, *unit = thing
    said = before.rpartition("x")[2]
    is_alike = re.sub("[0-9]", "0", said) == re.sub("[0-9]", "0", first) and any(c in said for c in "./")
    return is_alike and all(word in _UNITS for word in unit) and not _whole_hits(thing, reading, data)


def _turn(words: tuple[str, ...], at: int) -> tuple[str, ...]:
    """The words at this place that deny what comes after them."""
    return next((turn for turn in _DENIES if words[at : at + len(turn)] == turn), ())


def _is_said_otherwise(thing: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether what is denied is of options that were said, and said otherwise; or another treatment of the metal."""
    if any(word in CHATTER for word in thing):
        return False
    ways = (thing, ("into", *thing))  # alloy by itself may be the bolt's
    found = next((hits for way in ways if (hits := _whole_hits(way, reading, data))), [])
    if found:
        # one thing that several options may have (a hose by its class) is denied where it is said otherwise of one
        return all(
            any(
                key in reading.values and reading.values[key] != value and not _is_open(key, value, reading, data)
                for key, hit in found
                if hit.value == value
            )
            for value in {hit.value for _, hit in found}
        )
    said = {word for text in reading.said.values() for word in text.casefold().split()}
    if METALS.issuperset(thing) and not METALS.isdisjoint(said - {*thing}):  # of two metals it is the other one
        return True
    own = next((group for group in _TREATED if group.issuperset(thing)), None)
    return own is not None and any(not group.isdisjoint(said) for group in _TREATED if group is not own)


def _whole_hits(thing: tuple[str, ...], reading: Reading, data: Refdata) -> list[tuple[str, Hit]]:
    """What the options take of all these words."""
    return [(key, hit) for key, hit in hits_at(thing, 0, reading.topic, data) if hit.count == len(thing)]


def _is_open(key: str, denied: str, reading: Reading, data: Refdata) -> bool:
    """Whether an option that was said leaves several values open, and what is denied is one of them."""
    try:
        found = answered(reading.topic, dict(reading.values), reading.said, data)
    except GaugeblockError:  # what is lacking is told
        return False
    if isinstance(found, Sheet) or key not in found.open:
        return False
    return found.more > 0 or any(says(line.key.get(key, ""), denied) for line in found.lines)


def _thing(words: tuple[str, ...], at: int) -> str:
    """What one does not have; blank where the line goes on with something else."""
    while at < len(words) and words[at] in _BEFORE_IT:
        at += 1
    return words[at] if at < len(words) and words[at] not in _GOES_ON else ""


def _is_nothing(word: str, reading: Reading, data: Refdata) -> bool:
    """Whether a word is of the story alone."""
    is_told = word in SHORT_OF or word in _UNWANTED or (is_story(word) and word not in reading.topic.vocabulary(data))
    return is_told and not _hits(word, reading, data)


def _is_other(word: str, reading: Reading, data: Refdata) -> bool:
    """Whether a word is a value of options that were all said, and said otherwise."""
    found = _hits(word, reading, data)
    return bool(found) and all(key in reading.values and reading.values[key] != value for key, value in found)


def _hits(word: str, reading: Reading, data: Refdata) -> list[tuple[str, str]]:
    if word in CHATTER:
        return []
    return [(key, hit.value) for key, hit in hits_at((word,), 0, reading.topic, data)]
