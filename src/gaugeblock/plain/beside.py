"""A line that no answer reads whole for what stands beside its question: a second question, a choice at its end, two
values of one option, a number without its unit.

What is not answered is told, word for word. Where a word of it is another value of what was read (``and oiled``),
nothing is answered, for it changes the figure.
"""

from __future__ import annotations

from gaugeblock.answer.opening import compared
from gaugeblock.answer.patterns import compiled
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside
from gaugeblock.plain.reading import Reading, read
from gaugeblock.plain.sayings import CORRECTED
from gaugeblock.plain.topics import topics

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table
    from gaugeblock.tables.load import Refdata

_JOINS = frozenset(["and", "or", "but", "then", "also"])
ASKS = frozenset(
    [
        "how",
        "what",
        "what's",
        "which",
        "where",
        "when",
        "why",
        "who",
        "do",
        "does",
        "did",
        "is",
        "am",
        "are",
        "can",
        "could",
        "should",
        "shall",
        "will",
        "would",
        "must",
        "may",
    ]
)
_COMPARES = frozenset(["same", "different", "difference", "than", "versus", "vs", "like"])
_MATES = (("stud", "nut"), ("nut", "stud", "bolt"), ("bolt", "nut"))
_LEAST_HEAD = 3  # words of a question
_MOST_CHOICE = 3  # words on either side of the "or" that ends a line
_BELONGS = frozenset(["of", "on", "in", "for", "from"])
_MOST_BETWEEN = 4  # words: of my rusty old
_ENGINE = frozenset(["engine", "motor"])  # on which most parts are that have no other place
_DEGREES = frozenset(["degrees", "degree", "deg"])
_EITHER = 2  # units
_SURE = 2  # the doubt from which a reader is no witness


def parted(words: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """A question and what stands behind it: the next question, or the choice in which it ends; the longest first."""
    for at in range(len(words) - 2, _LEAST_HEAD - 1, -1):
        if words[at] in _JOINS and words[at + 1] in ASKS:
            yield words[:at], words[at:]
        elif words[at] == "or" and at >= len(words) - 1 - _MOST_CHOICE:
            for back in range(1, min(_MOST_CHOICE, at - _LEAST_HEAD) + 1):
                if not _is_measured(words[at - back : at]):
                    yield words[: at - back], words[at - back :]


def _is_measured(words: tuple[str, ...]) -> bool:
    """Whether a number with its unit stands there: 300hp is no choice that a question can do without."""
    return any(word[0].isdigit() and word[-1].isalpha() for word in words)


def questions(words: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """As ``parted``, where nothing behind the question turns another word."""
    return ((head, rest) for head, rest in parted(words) if (TURNING - {"or"}).isdisjoint(rest))


def alone(
    words: tuple[str, ...], understood: Callable[[tuple[str, ...], Refdata], Reading], data: Refdata
) -> tuple[Reading, tuple[str, ...]] | None:
    """The question that is read whole without what stands behind it, and that. What it says besides of the same thing
    is said of both. None where there is no such one, or where a word behind it turns another or would change the
    answer.
    """
    for head, rest in questions(words):
        reading = understood(head, data)
        if reading.is_whole and reading.values and not reading.mended:
            more = _with(rest, reading, data)
            if more is not None:
                return more, rest
    return None


def of_the_same(words: tuple[str, ...], first: Reading, data: Refdata) -> Reading | None:
    """A second question about what the first was about: ``and how deep in cast iron``, of the thread that was said."""
    best: Reading | None = None
    least = (0, 0)  # of what was said so much as can be is meant
    is_condition = words[:2] == ("what", "if")  # which asks nothing else: what if it is cracked
    known, told = _by_other_names(first.values), _by_other_names(first.said)
    for topic in (topic for group in topics(words) for topic in group):
        missing = [need for need in topic.needs if need in known]
        reading = read(words, topic, data)
        if topic is first.topic or not missing or reading.unread or not (reading.values or topic.asks_for):
            continue
        if is_condition and not reading.values:
            continue
        if any(need not in known and need not in reading.values for need in topic.needs):
            continue
        cost = (-sum(key in topic.slots for key in known), reading.cost)
        if best is None or cost < least:
            least = cost
            missing += [key for key in ("into",) if key in known and key in topic.slots]
            said = {key: told[key] for key in missing}
            values = {key: known[key] for key in missing}
            best = reading.replace(values={**values, **reading.values}, said={**said, **reading.said})
    return best


def of_its_mate(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of a part and of its mate that was named behind an "and" by its last word: an exhaust manifold stud,
    and the nut.
    """
    part = reading.values["part"]
    first, last = part.rpartition(" ")[::2]
    kinds = next((kinds for kind, *kinds in _MATES if kind == last), [])
    known = {row["part"] for row in data.table("fasteners/part_torques").rows}
    behind = {w.removesuffix("s") for n, w in enumerate(words) if "and" in words[max(0, n - _MOST_BETWEEN) : n]}
    other = next((kind for kind in kinds if kind in behind and f"{first} {kind}" in known), "")
    if not other or not set(reading.unread) <= {"tight"}:
        return None
    told = {**reading.said, "part": f"{reading.said['part']} and {other}"}
    table = side_by_side(reading.topic, reading, told, f"part={part}; {first} {other}", data)
    return None if table is None else (reading.replace(said=told, unread=()), table)


def _by_other_names(values: Mapping[str, str]) -> dict[str, str]:
    """What was said of a part by the names that its options have of a plain bolt: its size a thread, its material what
    the thread goes into.
    """
    if "part" not in values:
        return {**values}
    names = {"size": "thread", "material": "into"}
    return {names.get(key, key): value for key, value in values.items()}


def of_its_place(words: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | None:
    """The line with a place that was said behind a part put before it: the drain plug of my axle is the axle drain
    plug. None where no part is called so.
    """
    if "part" not in reading.values or len(set(reading.unread)) != 1:
        return None
    at = words.index(reading.unread[0]) if reading.unread[0] in words else 0
    start = next((n for n in range(at - 1, max(-1, at - _MOST_BETWEEN), -1) if words[n] in _BELONGS), None)
    if start is None:
        return None
    rest = (*words[:start], *words[at + 1 :])
    for before in range(len(rest)):
        again = read((*rest[:before], words[at], *rest[before:]), reading.topic, data)
        if again.is_whole and again.values["part"] != reading.values["part"] and not again.aside:
            return again
    again = read(rest, reading.topic, data)
    return again.replace(aside=(*again.aside, words[at])) if words[at] in _ENGINE and again.is_whole else None


def _with(rest: tuple[str, ...], reading: Reading, data: Refdata) -> Reading | None:
    """The reading with what the words behind it say besides: into aluminium. None where one is another value of what
    was read, or a number.
    """
    if not _COMPARES.isdisjoint(rest):  # is british gauge the same: it says nothing of this gauge
        return reading
    values, said = dict(reading.values), dict(reading.said)
    for key, readers in reading.topic.slots.items():
        for at, word in enumerate(rest):
            is_small = word in CHATTER or is_aside(word)  # by itself, but not in the engine bay
            for hit in (hit for reader in readers for hit in reader.take(rest, at, data)):
                if is_small and hit.count == 1:
                    continue
                is_sure = hit.doubt < _SURE
                if hit.value == values.get(key) or not (is_sure or key == "into"):
                    continue
                if key in values or any(map(str.isdigit, hit.value)):
                    return None
                values[key], said[key] = hit.value, hit.said
    return reading.replace(values=values, said={key: said[key] for key in reading.topic.slots if key in said})


def corrected(
    words: tuple[str, ...], understood: Callable[[tuple[str, ...], Refdata], Reading], data: Refdata
) -> Reading | None:
    """The line with the value that took another back: ``800 degrees, no wait, it was 1000``; None where it is not one
    option's.
    """
    if words.count(CORRECTED) != 1:
        return None
    at = words.index(CORRECTED)
    put_right = _amount_put_right(words[:at], words[at + 1 :])
    if put_right is not None:
        reading = understood(put_right, data)
        if reading.is_whole and len(reading.values) > 1:
            return reading
    before, later = understood(words[:at], data), words[at + 1 :]
    if before.is_whole and len(before.values) > 1 and all(need in before.values for need in before.topic.needs):
        taken = [
            (key, hit.value, hit.said)
            for key in before.values
            for reader in before.topic.slots[key]
            for hit in reader.take(later, 0, data)
            if hit.count == len(later)
        ]
        if taken:
            key, value, said = _of_the_last(words[:at], taken, before, data)
            return before.replace(values={**before.values, key: value}, said={**before.said, key: said})
    for topic in (topic for group in topics(words) for topic in group):
        reading = read((*words[:at], *words[at + 1 :]), topic, data)
        if any(need not in reading.values for need in topic.needs):
            continue
        rest = (*words[:at], *words[at + 1 :])
        others = list(_others(rest, reading, data, at))
        other = _of_the_last(rest[:at], others, reading, data) if others else None
        if other is None and (older := _other(rest[:at], reading, data)) is not None:
            key = older[0]  # what was read is the later one already
            hits = [
                hit
                for n in range(at, len(rest))
                for reader in reading.topic.slots[key]
                for hit in reader.take(rest, n, data)
            ]
            if any(hit.value == reading.values[key] for hit in hits):
                return reading.replace(unread=())
        if other is not None:
            key, value, said = other
            return reading.replace(values={**reading.values, key: value}, said={**reading.said, key: said}, unread=())
    return None


def _amount_put_right(before: tuple[str, ...], later: tuple[str, ...]) -> tuple[str, ...] | None:
    """A line with a number in place of the last one of its unit, ``6 in radius die, no wait, 5 in``; in place of the
    last of all where neither has a unit, or the new one alone. None for what is no plain number.
    """
    if not later or not compiled(_AMOUNT).fullmatch(later[0]):
        return None
    if later[1:] and later[1][:1].isdigit():
        return None  # 1 3/4
    unit = later[1] if later[1:] and later[1].isalpha() else ""
    for at in range(len(before) - 1, -1, -1):
        if not compiled(_AMOUNT).fullmatch(before[at]):
            continue
        if at and "/" in before[at] and before[at - 1].isdigit():
            return None  # 1 1/2
        if unit and before[at + 1 : at + 2] == (unit,):
            return (*before[:at], later[0], *before[at + 1 :], *later[2:])
        if not unit or at == len(before) - 1:
            return (*before[:at], later[0], *before[at + 1 :], *later[1:])
    return None


_AMOUNT = r"-?[0-9]*\.?[0-9]+(?:/[0-9]+)?"


def twice(words: tuple[str, ...], data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of two values that were said of one option: ``grade 5 or grade 8``, ``tap drill and clearance
    hole``.
    """
    without = tuple(word for word in _as_one(words) if word != "or" and not (word == "both" and "and" in words))
    if (len(without) == len(words) and "and" not in words) or not TURNING.isdisjoint(without):
        return None
    every = [read(without, topic, data) for group in topics(words) for topic in group]
    has_part = "part" in min(every, key=lambda one: one.cost).values  # u-bolts are no plain bolts
    for reading in every:
        needs = (*reading.topic.needs, *(["part"] if has_part else []))
        if not reading.unread or any(need not in reading.values for need in needs):
            continue
        other = _other(without, reading, data)
        if other is None:
            continue
        key, value, said = other
        names = f"{key}={reading.values[key]}; {value}"
        told = {**reading.said, key: f"{reading.said[key]} and {said}"}
        table = side_by_side(reading.topic, reading, told, names, data)
        if table is not None:
            return reading.replace(said=told, unread=()), table
    return None


def side_by_side(topic: Topic, reading: Reading, told: dict[str, str], names: str, data: Refdata) -> Table | None:
    """The Table of the values of one option that ``names`` has; None where it has not two rows."""
    try:
        table = compared(topic, reading.values, told, names, data)
    except (GaugeblockError, KeyError, TypeError):  # or what it cannot do without is open too
        return None
    return table if len(table.lines) > 1 else None


def _as_one(words: tuple[str, ...]) -> tuple[str, ...]:
    """A second question for another value alone as a choice: ``and what for M10x1.5`` is or M10x1.5."""
    for at in range(_LEAST_HEAD, len(words) - _LEAST_HEAD):
        if words[at : at + 3] in (("and", "what", "for"), ("and", "what", "about"), ("and", "also", "for")):
            return (*words[:at], "or", *words[at + 3 :])
    return words


def _other(words: tuple[str, ...], reading: Reading, data: Refdata, start: int = 0) -> tuple[str, str, str] | None:
    """The option of which every word that was left is a second value, from a place on: option, value, how it is
    said.
    """
    return next(_others(words, reading, data, start), None)


def _others(words: tuple[str, ...], reading: Reading, data: Refdata, start: int = 0) -> Iterator[tuple[str, str, str]]:
    """Each option as of ``_other``."""
    left = set(reading.unread)
    for key in reading.values:
        for at in range(start, len(words)):
            for reader in reading.topic.slots.get(key, ()):
                for hit in reader.take(words, at, data):
                    if hit.value != reading.values[key] and left <= set(words[at : at + hit.count]):
                        yield key, hit.value, hit.said


def _of_the_last(
    words: tuple[str, ...], taken: Sequence[tuple[str, str, str]], reading: Reading, data: Refdata
) -> tuple[str, str, str]:
    """Of the options whose value may be taken back the one that was said last: the radius, and not the tube before
    it.
    """

    def place(key: str) -> int:
        return max(
            (
                at
                for at in range(len(words))
                for reader in reading.topic.slots[key]
                for hit in reader.take(words, at, data)
                if hit.value == reading.values[key]
            ),
            default=-1,
        )

    return max(taken, key=lambda one: place(one[0]))


def _bare_degrees(words: tuple[str, ...], reading: Reading) -> tuple[str, list[str]] | None:
    """A number of degrees that was left for want of its scale."""
    at = next((n for n, word in enumerate(words) if word in _DEGREES and n and words[n - 1] in reading.unread), 0)
    return (words[at - 1], ["degF", "degC"]) if at else None


def _is_count(words: tuple[str, ...], at: int) -> bool:
    """Whether a whole number says how many there are of what stands behind it: two cooling fans."""
    behind = words[at + 1 : at + 3]
    is_things = any(w.isalpha() and w.endswith("s") and len(w) > _SHORT for w in behind) and words[at].isdigit()
    return is_things and not (behind and behind[0] in (*_DEGREES, *_JOINS, *CHATTER))


_SHORT = 3


def in_either_unit(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of a number without its unit in each of the two that it may have: 70 is 70 mph or 70 km/h."""
    from gaugeblock.plain.refused import without_unit

    found = without_unit(words, reading, data) or _bare_degrees(words, reading)
    if found is None or not set(reading.unread) <= {found[0], *_DEGREES}:
        return None
    number, fits = found
    at = words.index(number)
    if _is_count(words, at):
        return None
    if words[at + 1 : at + 2] and words[at + 1] in _DEGREES:
        words = (*words[: at + 1], *words[at + 2 :])
    every = [read((*words[: at + 1], unit.casefold(), *words[at + 1 :]), reading.topic, data) for unit in fits]
    options = [tuple(way.values) for way in every]
    likely = max(options, key=options.count)  # 70 mph and 70 km/h are a speed, 70 rpm is another thing
    ways = [way for way in every if tuple(way.values) == likely]
    if len(ways) < _EITHER or not all(way.is_whole for way in ways):
        return None
    first = ways[0]
    apart = [key for key in first.values if any(way.values.get(key) != first.values[key] for way in ways)]
    if len(apart) != 1:
        return None
    key = apart[0]
    told = {**first.said, key: " or ".join(way.said[key] for way in ways)}
    names = f"{key}={'; '.join(way.values[key] for way in ways)}"
    table = side_by_side(reading.topic, first, told, names, data)
    return None if table is None else (first.replace(said=told), table)
