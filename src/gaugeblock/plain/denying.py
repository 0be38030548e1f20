"""What a line turns round, and changes nothing: a thing that nobody asked for, or the other of what was said."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.plain.chatter import CHATTER, is_story
from gaugeblock.plain.reading import Reading, hits_at

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
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
_SHORT_OF = """
book books manual manuals paper papers paperwork sheet chart charts clue clues idea ideas money cash time luck
catalogue catalog plate label tag sticker card box receipt card instructions
info information internet signal brains patience
"""
_PAPERS = frozenset(_SHORT_OF.split())


def agreed(words: tuple[str, ...], reading: Reading, data: Refdata) -> set[str]:
    """Of what was left of a line, what it turns round (``no book``, ``dont have``) and changes nothing of what was
    read: it is of no option at all, or the other value of one that was said (``no oil`` of threads that are dry).
    """
    found: set[str] = set()
    pairs = list(pairwise((*words, "")))
    for token in reading.unread:
        first, _, denied = token.partition(" ")
        places = [at for at, pair in enumerate(pairs) if pair == (first, denied)]
        if not denied or len(places) != 1:
            continue
        thing = _thing(words, places[0] + 2) if denied in _DOING else denied
        is_nothing = thing and (_is_nothing(thing, reading, data) or _is_other(thing, reading, data))
        if is_nothing or (not thing and denied in _BY_ITSELF):
            found |= {token, thing} if words.count(thing) == 1 else {token}
    return found


def _thing(words: tuple[str, ...], at: int) -> str:
    """What one does not have; blank where the line goes on with something else."""
    while at < len(words) and words[at] in _BEFORE_IT:
        at += 1
    return words[at] if at < len(words) and words[at] not in _GOES_ON else ""


def _is_nothing(word: str, reading: Reading, data: Refdata) -> bool:
    """Whether a word is of the story alone."""
    is_told = word in _PAPERS or word in _UNWANTED or (is_story(word) and word not in reading.topic.vocabulary(data))
    return is_told and not _hits(word, reading, data)


def _is_other(word: str, reading: Reading, data: Refdata) -> bool:
    """Whether a word is a value of options that were all said, and said otherwise."""
    found = _hits(word, reading, data)
    return bool(found) and all(key in reading.values and reading.values[key] != value for key, value in found)


def _hits(word: str, reading: Reading, data: Refdata) -> list[tuple[str, str]]:
    if word in CHATTER:
        return []
    return [(key, hit.value) for key, hit in hits_at((word,), 0, reading.topic, data)]
