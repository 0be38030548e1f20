"""A line read again with the words that were nearly typed put right: a slip of the keys, two words grown together."""

from __future__ import annotations

from gaugeblock.negation import denied
from gaugeblock.plain.chatter import CHATTER, PLAIN, TURNING, is_aside
from gaugeblock.plain.reading import read

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Set

    from gaugeblock.answer.asking import Topic
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

_MOST_ALIKE = 3
_GROWN, _PART = 7, 3  # letters of two words that were grown together, and of each


def mend(words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | None:
    """The line read again with the words that were nearly typed put right; None where that helps nothing.

    A word is put right only when one word alone is so near to it, and it is said to the reader. Short words, those
    that turn another, and those that mean something of another thing (a drawn tube) are never changed.
    """
    from gaugeblock.plain.english import is_english
    from gaugeblock.plain.round_words import CHANGING

    known = reading.topic.vocabulary(data) | CHATTER
    changes: dict[str, str] = {}
    for word in reading.unread:
        if word in PLAIN or word in TURNING or is_aside(word) or word in known or denied(word):
            continue
        if apart := _apart(word, known):
            changes[word] = apart
            continue
        near = [f"{word}g"] if word.endswith("in") and f"{word}g" in known else slips(word, known)
        if is_english(word) or word in CHANGING:  # it was meant as it stands, or of several, or said so
            near = [one for one in near if one.rstrip("s") == word.rstrip("s") or one == f"{word}g"]
        else:
            near = _that_is_read(words, word, slips(word, known, every=True), reading.topic, data) or near
        is_sure = len(near) == 1 or (bool(near) and _are_alike(words, word, near, reading.topic, data))
        cells = {line[3].casefold() for line in data.words_with(word) if line[1].casefold() == word}
        if is_sure and not cells:
            changes[word] = near[0]
        elif len(meant := {c for c in cells & known if distance(word, c, 1) < 2}) == 1:  # a listed slip: deisel
            changes[word] = meant.pop()
    if not changes:
        return None
    again = read(tuple(" ".join(changes.get(w, w) for w in words).split(" ")), reading.topic, data)
    if again.cost >= reading.cost:
        return None
    return again.replace(mended=tuple(changes.items()))


def _apart(word: str, known: Set[str]) -> str:
    """Two known words that were grown together, ``drill size``; blank for none, or where there are two ways."""
    if not word.isalpha() or len(word) < _GROWN:
        return ""
    places = range(_PART, len(word) - _PART + 1)
    ways = [f"{word[:at]} {word[at:]}" for at in places if word[:at] in known and word[at:] in known]
    return ways[0] if len(ways) == 1 else ""


def _are_alike(words: tuple[str, ...], word: str, near: list[str], topic: Topic, data: Refdata) -> bool:
    """Whether a line comes to the same with each of the words that one may be a slip of: temper, tempered."""
    if len(near) > _MOST_ALIKE:
        return False
    ways = [read(tuple(one if w == word else w for w in words), topic, data) for one in near]
    return all((way.values, word in way.unread) == (ways[0].values, False) for way in ways)


def _that_is_read(words: tuple[str, ...], word: str, near: list[str], topic: Topic, data: Refdata) -> list[str]:
    """The one word of several that one may be a slip of with which alone a line is read whole; none where there are
    more.
    """
    if not 1 < len(near) <= _MOST_ALIKE:
        return []
    whole = [one for one in near if read(tuple(one if w == word else w for w in words), topic, data).is_whole]
    return whole if len(whole) == 1 else []


def slips(word: str, known: Set[str], *, every: bool = False) -> list[str]:
    """The known words of which a word is a slip of the keys, those that it is nearest to; of these the likeliest, if
    not ``every`` one.
    """
    if len(word) < 4 or not word.isalpha():
        return []
    most = 1 if len(word) < 8 else 2
    if len(word) == 4:  # of so short a word only a letter that was left out, or two changed over
        known = {k for k in known if len(k) == 5 or sorted(k) == sorted(word)}
    found = [(d, k) for k in known if k[:1] == word[:1] and (d := distance(word, k, most)) <= most]
    least = min((d for d, _ in found), default=0)
    nearest = {k for d, k in found if d == least}
    if len(nearest) > 1 and not every:  # letters changed over are the likeliest slip
        nearest = {k for k in nearest if sorted(k) == sorted(word)} or nearest
    return sorted(k for k in nearest if not (k.endswith("s") and k[:-1] in nearest))  # a set has no order of its own


def distance(a: str, b: str, most: int) -> int:
    """Letters changed, put in, left out or changed over between two words; ``most + 1`` where it is more."""
    if abs(len(a) - len(b)) > most:
        return most + 1
    older: list[int] = []
    last: list[int] = []
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        older, last, row = last, row, [i]
        for j, y in enumerate(b, 1):
            cost = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (x != y))
            if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                cost = min(cost, older[j - 2] + 1)
            row.append(cost)
    return row[-1]
