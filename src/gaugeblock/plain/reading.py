"""The words of a line -> what is asked: a topic and its options, and every word that was not understood."""

from __future__ import annotations

import re
from itertools import pairwise, permutations

from gaugeblock.answer.asking import Hit
from gaugeblock.negation import denied
from gaugeblock.plain.chatter import CHATTER, OF_A_THING, TURNING, is_aside, is_story, is_thing
from gaugeblock.plain.wanted import wanted_at
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.asking import Reader, Topic
    from gaugeblock.tables.load import Refdata

# What a word costs by how it is read: as part of an option, as the topic's own, as chatter, not at all.
_HIT, _SIGNAL, _CHATTER, _ASIDE, _UNREAD = 2, 2, 3, 9, 100
_AND = frozenset(["and", "or"])
_LEFT_OUT = "\0"  # before a word that was left out
_MISSING = 40
_LEAST_TWO = 2  # values of one option
_GRADE = "[0-9]{3,4}[a-z]?"
_NOT_ASKED, _NOT_NAMED = 7, 1000


class Reading(Value):
    """How a line was read: its ``topic``, the ``values`` by option, what a person is told, the words left ``unread``.

    ``cost`` is lower the better it fits; ``mended`` are words that were nearly typed, each with what it was read as;
    ``unit`` is the one that the answer is wanted in; ``aside`` are words that were left out, which change no figure.
    """

    __slots__ = ("aside", "cost", "mended", "said", "topic", "unit", "unread", "values")

    topic: Topic
    values: dict[str, str]
    said: dict[str, str]
    unread: tuple[str, ...]
    cost: int
    mended: tuple[tuple[str, str], ...]
    unit: str
    aside: tuple[str, ...]

    def __init__(
        self,
        topic: Topic,
        values: dict[str, str],
        said: dict[str, str],
        unread: tuple[str, ...],
        cost: int,
        mended: tuple[tuple[str, str], ...] = (),
        unit: str = "",
        aside: tuple[str, ...] = (),
    ) -> None:
        put(self, "aside", aside)
        put(self, "unit", unit)
        put(self, "topic", topic)
        put(self, "values", values)
        put(self, "said", said)
        put(self, "unread", unread)
        put(self, "cost", cost)
        put(self, "mended", mended)

    @property
    def is_whole(self) -> bool:
        """Whether every word was read, and nothing that is needed is missing."""
        return not self.unread and all(need in self.values for need in self.topic.needs)

    @property
    def is_plain(self) -> bool:
        """Whether every word was read as part of an option, without a doubt, and nothing needed is missing."""
        return bool(self.values) and self.cost == _HIT * len(self.values)


_UNIT = "unit wanted"
_Step = tuple[int, "tuple[tuple[str, Hit, int], ...]", "tuple[str, ...]"]


_ASKING = frozenset(["what", "which"])
# What is asked with them of another answer than the one of a thing that nobody names: a torque.
_FAR = (("how", "far"), ("how", "close"), ("how", "near"))
_BY_HOW_MUCH = (("lower",), ("less",), ("higher",), ("worse",), ("better",), ("under",), ("below",), ("apart",))
_SIZED, _OF_WHAT = frozenset(["spanner", "socket"]), frozenset(["for", "size", "sizes", "to", "on"])
_OTHERS = frozenset(["angle", "drill", "flare", "flares", "fluid", "fuse", "gap", "gauge", "hose", "ratio", "wire"])


def _cost_of(way: _Step) -> int:
    return way[0]


def read(words: tuple[str, ...], topic: Topic, data: Refdata) -> Reading:
    """How a topic reads the words: each word once, with the fewest left over, the longest phrases first."""
    every = [hits_at(words, at, topic, data) for at in range(len(words))]
    hits = _narrowed(words, _called_again(words, every), topic, data)
    cost, found, left = _best_way(words, hits, topic)
    values, said = dict[str, str](), dict[str, str]()
    for key, hit, _ in found:
        if key in topic.joined and key in values and hit.value not in values[key].split():
            values[key] += f" {hit.value}"
            said[key] += f" {hit.said}"
        values.setdefault(key, hit.value)
        said[key] = hit.said if hit.said.startswith(said.get(key, "")) else said[key]  # aluminium, and then its grade
    said = {key: said[key] for key in topic.slots if key in said}
    unit = values.pop(_UNIT, "")
    aside = tuple(word[1:] for word in left if word[0] == _LEFT_OUT)
    left = tuple(word for word in left if word[0] != _LEFT_OUT)
    kept = _not_said(left, values)
    cost -= (len(left) - len(kept)) * (_UNREAD - _CHATTER)
    other = _passed_over(words, hits, found, values, topic)
    kept, cost = (*kept, *other), cost + _UNREAD * len(other)
    cost += _MISSING * sum(need not in values for need in topic.needs)
    cost += _of_another(words, topic)
    return Reading(topic, values, said, kept, cost, unit=unit, aside=aside)


def _best_way(words: tuple[str, ...], hits: list[list[tuple[str, Hit]]], topic: Topic) -> _Step:
    """The cheapest way to read the words: what it costs, the hits that it takes with their places, what it leaves."""
    left_out = is_story if "part" in topic.slots else is_aside  # a place there is another part
    alone = [_by_itself(words, at, left_out) for at in range(len(words))]
    memo: dict[tuple[int, frozenset[tuple[str, str]]], _Step] = {}
    ends: _Step = 0, (), ()
    wanted = [wanted_at(words, at) for at in range(len(words))]
    signals = [topic.signal(words, at) for at in range(len(words))]

    def best(at: int, used: frozenset[tuple[str, str]]) -> _Step:
        """The cheapest way to read the words from a place on; of two alike the first."""
        if at >= len(words):
            return ends
        got = memo.get((at, used))
        if got is None:
            got = memo[at, used] = cheapest(at, used)
        return got

    def cheapest(at: int, used: frozenset[tuple[str, str]]) -> _Step:
        ways: list[_Step] = []
        taken = dict(used) if hits[at] or wanted[at] is not None else {}
        for key, hit in hits[at]:
            if key in taken and taken[key] != hit.value and key not in topic.joined:
                continue
            cost, found, left = best(at + hit.count, used | {(key, hit.value)})
            ways.append((cost + _HIT + hit.doubt, ((key, hit, at), *found), left))
        unit = wanted[at]
        if unit is not None and taken.get(_UNIT, unit.value) == unit.value:
            cost, found, left = best(at + unit.count, used | {(_UNIT, unit.value)})
            ways.append((cost + _SIGNAL, ((_UNIT, unit, at), *found), left))
        if signals[at]:
            cost, found, left = best(at + signals[at], used)
            ways.append((cost + _SIGNAL, found, left))
        if words[at] in TURNING:  # what it turns is not read for itself
            cost, found, left = best(at + 2, used)
            ways.append((cost + 2 * _UNREAD, found, (" ".join(words[at : at + 2]), *left)))
        else:
            cost, found, left = best(at + 1, used)
            price, is_left = alone[at]
            ways.append((cost + price, found, (is_left, *left) if is_left else left))
        return ways[0] if len(ways) == 1 else min(ways, key=_cost_of)

    return best(0, frozenset())


def _by_itself(words: tuple[str, ...], at: int, left_out: Callable[[str], bool]) -> tuple[int, str]:
    """What a word costs that is read as nothing, and what is left of it."""
    word = words[at]
    if word in CHATTER:
        return _CHATTER, ""
    if left_out(word) or (word in OF_A_THING and words[at + 1 : at + 2] and is_thing(words[at + 1])):
        return _ASIDE, f"{_LEFT_OUT}{word}"
    return _UNREAD, word


def _of_another(words: tuple[str, ...], topic: Topic) -> int:
    """What it costs a reading that a line does not ask for its topic, or asks for something else."""
    if topic.asks_for:
        return 0 if topic.is_meant(words) else _NOT_NAMED if topic.is_named else _NOT_ASKED
    asked = {after for one, after in pairwise(words) if one in _ASKING and after in _OTHERS}
    is_sized = not _SIZED.isdisjoint(words[:1]) and not _OF_WHAT.isdisjoint(words[1:2])  # a spanner for it: no torque
    is_other = any(one.removesuffix("s") not in topic.signals for one in asked)
    is_far = topic.noun == "heat" and any(
        words[at : at + 2] in _FAR and words[at + 2 : at + 3] not in _BY_HOW_MUCH for at in range(len(words))
    )
    return _NOT_NAMED if is_other or is_far or is_sized else 0


def _called_again(words: tuple[str, ...], hits: list[list[tuple[str, Hit]]]) -> list[list[tuple[str, Hit]]]:
    """The hits, where a part that was named in full is called by its last word: the sump plug, and then the plug, which
    by itself would be a spark plug.
    """
    named = {
        words[at + hit.count - 1]: hit
        for at, here in enumerate(hits)
        for key, hit in here
        if key == "part" and hit.count > 1 and not hit.doubt
    }
    if not named:
        return hits
    return [
        [
            (
                key,
                Hit(1, named[word].value, named[word].said)
                if key == "part" and hit.count == 1 and word in named
                else hit,
            )
            for key, hit in here
        ]
        for word, here in zip(words, hits, strict=True)
    ]


def _narrowed(
    words: tuple[str, ...], hits: list[list[tuple[str, Hit]]], topic: Topic, data: Refdata
) -> list[list[tuple[str, Hit]]]:
    """The hits, where a thing was said in general and elsewhere by its own name, which side by side are one: stainless,
    and then 304.
    """
    said: dict[str, list[tuple[int, Hit]]] = {}
    for at, here in enumerate(hits):
        for key, hit in here:
            if key not in topic.joined and not _is_turned(words, at):
                said.setdefault(key, []).append((at, hit))
    own: dict[tuple[int, str, str], Hit] = {}
    for key, found in said.items():
        if len({hit.value for _, hit in found}) < _LEAST_TWO:
            continue
        for (at, wide), (place, narrow) in permutations(found, 2):
            ends = sorted([(at, at + wide.count), (place, place + narrow.count)])
            if wide.value == narrow.value or ends[0][1] > ends[1][0]:
                continue
            said_wide, said_own = words[at : at + wide.count], words[place : place + narrow.count]
            if 1 < wide.count < narrow.count and said_own[-wide.count :] == said_wide:
                own[at, key, wide.value] = narrow  # the nylon fuel line, and then the fuel line
            if not _AND.isdisjoint(words[ends[0][1] : ends[1][0]]):
                continue
            plainly = tuple(wide.value.split())  # plated, and no grease on it: plated, dry
            for phrase in (said_own + said_wide, said_wide + said_own, said_own + plainly, plainly + said_own):
                one = _as_one(phrase, wide, narrow, topic.slots[key], data)
                if one is not None:
                    own[at, key, wide.value] = own[place, key, narrow.value] = one
    if not own:
        return hits
    return [
        [
            (key, Hit(hit.count, one.value, one.said) if (one := own.get((at, key, hit.value))) else hit)
            for key, hit in here
        ]
        for at, here in enumerate(hits)
    ]


def _is_turned(words: tuple[str, ...], at: int) -> bool:
    return at > 0 and words[at - 1] in TURNING


def _as_one(phrase: tuple[str, ...], wide: Hit, narrow: Hit, readers: Iterable[Reader], data: Refdata) -> Hit | None:
    """What an option takes a general name and an own one for, side by side: the own one, or both where the own one is
    a number: aluminium 5052.
    """
    is_number = re.fullmatch(_GRADE, narrow.value) is not None and not any(map(str.isdigit, wide.value))
    for hit in (hit for reader in readers for hit in reader.take(phrase, 0, data)):
        if hit.count == len(phrase) and not hit.doubt and (hit.value == narrow.value or is_number):
            return hit
    return None


def _passed_over(
    words: tuple[str, ...],
    hits: list[list[tuple[str, Hit]]],
    found: tuple[tuple[str, Hit, int], ...],
    values: dict[str, str],
    topic: Topic,
) -> tuple[str, ...]:
    """The words that are surely another value of an option that was read, and were taken for the topic's own: the tap
    drill, and the clearance hole.
    """
    if _AND.isdisjoint(words):
        return ()
    read_at = {at + n for _, hit, at in found for n in range(hit.count)}
    parted = [n for n, word in enumerate(words) if word in _AND]
    places = {key: at for key, _, at in found}
    return tuple(
        word
        for at, here in enumerate(hits)
        for key, hit in here
        if key in values and key not in topic.joined and not hit.doubt and hit.value != values[key]
        if read_at.isdisjoint(range(at, at + hit.count))
        if (hit.count > 1 and topic.signal(words, at) < hit.count) or words[at - 1] in _AND
        if any(min(at, places[key]) < n < max(at, places[key]) for n in parted)
        for word in words[at : at + hit.count]
    )


def _not_said(left: tuple[str, ...], values: dict[str, str]) -> tuple[str, ...]:
    """Of the words that were left those that stand in nothing that was read: ``hose`` beside a brake hose banjo
    bolt.
    """
    own = {
        w
        for text in values.values()
        if not denied(text.replace("stainless", ""))
        for w in re.findall("[a-z]{3,}", text.casefold())
    }
    own.discard("any")
    return tuple(word for word in left if word not in own and (len(word) < 5 or word.removesuffix("s") not in own))


def hits_at(words: tuple[str, ...], at: int, topic: Topic, data: Refdata) -> list[tuple[str, Hit]]:
    """What each option can take here; a word of chatter is never an option by itself (``an`` is no flare)."""
    return [
        (key, hit)
        for key, reader in topic.readers_at(words[at][:1])
        for hit in reader.take(words, at, data)
        if hit.count > 1 or words[at] not in CHATTER
    ]
