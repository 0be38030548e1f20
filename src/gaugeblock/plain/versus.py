"""Two things of one kind set against each other in a line: ``grade 5 vs grade 8``, ``stiffer, 2 x .095 or 1 3/4 x
.120``.
"""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.answer.decision import NONE
from gaugeblock.answer.opening import compared, of_things
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import read

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Set as AbstractSet

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

_MORE = (
    *("thicker", "thinner", "bigger", "smaller", "harder", "softer", "stronger", "weaker", "heavier", "lighter"),
    *("higher", "lower", "better", "worse"),
)
_SAME = ("thickness", "size", "strength", "weight", "hardness", "thing", "diameter")
_AGAINST = (
    *((*the, "same", *of, "as") for the in (("the",), ()) for of in (*((one,) for one in _SAME), ())),
    *((one, "than") for one in _MORE),
    ("as", "thick", "as"),
    ("as", "hard", "as"),
    ("vs",),
    ("versus",),
    ("compared", "to"),
    ("compared", "with"),
    ("compare", "to"),
    ("compare", "with"),
    ("against",),
    ("than",),
    ("as", "strong", "as"),
)
# With which two whole things are told apart: then an "or" sets them against each other too.
_OF_WHOLE = frozenset(
    [
        "stiffer",
        "stronger",
        "heavier",
        "lighter",
        "stiffest",
        "strongest",
        "heaviest",
        "lightest",
        "hotter",
        "cooler",
        "weigh",
        "weighs",
        "weight",
    ]
)
# The same of one quantity of either.
_TELLS_APART = _OF_WHOLE | {"higher", "lower", "better", "worse"}
# What says no more of either than that they are told apart.
_SAYS_NO_MORE = frozenset(["higher", "lower", "better", "worse", "both"])
# Units of a number that may be said of one of two alone.
_OF_NUMBERS = frozenset(["%", "percent", "psi", "mm", "gauge", "awg"])
_INSTEAD = (("instead", "of"), ("in", "place", "of"), ("rather", "than"))


# One pipe of a size or two of another.
_ONE, _TWO = frozenset(["single", "one"]), frozenset(["dual", "duals", "twin", "twins", "two"])


def tells_apart(words: tuple[str, ...]) -> bool:
    """Whether two whole things are told apart: the stiffer of two tubes, a single pipe or twin pipes."""
    if not _TELLS_APART.isdisjoint(words):
        return True
    return "or" in words and not _ONE.isdisjoint(words) and not _TWO.isdisjoint(words)


def parted(words: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    """What stands before and behind the word that sets two things against each other; None for no such word."""
    for mark in (*_AGAINST, *([("or",), *_INSTEAD] if tells_apart(words) else [])):
        for at in range(1, len(words) - len(mark)):
            if words[at : at + len(mark)] == mark:
                return words[:at], words[at + len(mark) :]
    return None


def side_by_side(words: tuple[str, ...], topics: list[Topic], data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of the one option in which the two differ, whatever else was said of either; None where they differ in
    more, where a word of either is not understood, or where one of them has no answer.
    """
    both = parted(_first_question(words))
    if both is None:
        return None
    halves = _halves(*both)
    told_apart, is_whole = tells_apart(words), not _OF_WHOLE.isdisjoint(words)
    found: list[tuple[int, Reading, Reading]] = []
    is_of_strength = not _OF_STRENGTH.isdisjoint(words)
    for topic in topics:
        if is_of_strength and topic.noun in _NO_STRENGTH:
            continue  # which of two is stronger, and not which is bent
        first, second = (read(half, topic, data) for half in halves)
        has_needs = told_apart or {*topic.needs} <= first.values.keys() | second.values.keys()
        if has_needs and not first.unread and not second.unread:
            found.append((first.cost + second.cost, first, second))
    for _, first, second in sorted(found, key=lambda one: one[0]):
        is_one = not told_apart or not is_whole or first.topic.noun == _METALS
        found_both = _apart(first, second, data) if is_one else None
        found_both = found_both or (_whole(first, second, data) if told_apart else None)
        if found_both is not None or not told_apart:
            return found_both
    return None


def _halves(first: tuple[str, ...], second: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is said of each, without what only tells that they are told apart; the second, a number alone, is of the one
    unit of the first: 70 percent antifreeze better than 50. What goes with both is read with either.
    """
    own, other = (tuple(word for word in half if word not in _SAYS_NO_MORE) for half in (first, second))
    units = [unit for number, unit in pairwise(own) if number.isdigit() and unit in _OF_NUMBERS]
    if other and other[0].isdigit() and len(units) == 1 and not {*other[1:2]} & _OF_NUMBERS:
        other = (other[0], units[0], *other[1:])
    numbers = [unit for number, unit in pairwise(other) if number.isdigit() and unit in _OF_NUMBERS]
    if len(own) == 1 and own[0].isdigit() and len(numbers) == 1:
        own = (own[0], numbers[0])
    return own, other


def told(read_as: str, unit: str, table: Table) -> Answer:
    """The Table; of two that what it shows does not tell apart, each answer whole: the same flow, what was given."""
    decisions = [line.sheet.decision for line in table.lines]
    shown = [tuple(f"{figure.text} {figure.unit}" for figure in one.figures) for one in decisions]
    is_given = all(
        len(texts) == 1 and texts[0] in " x ".join(line.key.values())
        for texts, line in zip(shown, table.lines, strict=True)
    )
    is_alike = len({(one.kind, *texts) for one, texts in zip(decisions, shown, strict=True)}) == 1
    is_told = len({one.do for one in decisions}) > 1
    if len(table.lines) != _TWO_THINGS or table.more or not (is_given or (is_alike and is_told)):
        return Answer(read_as, table, unit)
    first, second = (Answer(f"{read_as}: {' x '.join(line.key.values())}", line.sheet, unit) for line in table.lines)
    return first.replace(more=(second,))


def left_open(words: tuple[str, ...]) -> str:
    """What a line asks of the same two besides, which is not answered: ``; not answered: and which is heavier``."""
    rest = words[len(_first_question(words)) :]
    return f"; not answered: {' '.join(rest)}" if rest else ""


def _first_question(words: tuple[str, ...]) -> tuple[str, ...]:
    """The line without a second question of the same two: ``and which is heavier``."""
    for at in range(1, len(words) - 1):
        if words[at] == "and" and words[at + 1] in ("which", "what", "whats", "what's") and parted(words[:at]):
            return words[:at]
    return words


def _apart(first: Reading, second: Reading, data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of the one option in which two readings differ."""
    apart = [k for k in first.values if k in second.values and first.values[k] != second.values[k]]
    values, said = {**second.values, **first.values}, {**second.said, **first.said}
    if len(apart) != 1 or any(need not in values for need in first.topic.needs):
        return None
    names = f"{apart[0]}={first.values[apart[0]]}; {second.values[apart[0]]}"
    told = {k: v for k, v in said.items() if k != apart[0]}
    told[apart[0]] = f"{first.said[apart[0]]} and {second.said[apart[0]]}"
    try:
        table = compared(first.topic, values, said, names, data)
    except TypeError:  # what the answer cannot do without was not said
        return None
    table = _by_title(table.replace(beside=_BESIDE.get(first.topic.noun, ())), first.topic)
    return (first.replace(values=values, said=told), table) if len(table.lines) > 1 else None


def _by_title(table: Table, topic: Topic) -> Table:
    """The Table of two metals, each by the name under which it is on record: 5052 is 5052-O there."""
    if topic.noun != _METALS:
        return table
    return table.replace(
        lines=tuple(line.replace(key=dict.fromkeys(line.key, line.sheet.title)) for line in table.lines)
    )


def _whole(first: Reading, second: Reading, data: Refdata) -> tuple[Reading, Table] | None:
    """The Table of two things that were both said whole, a tube and another, in all in which they differ: what was said
    of one of them is meant of both where both can have it, else of that one.
    """
    both_have = first.values.keys() ^ second.values.keys()
    return _of_both(first, second, both_have, data) or _of_both(first, second, set(), data)


def _of_both(first: Reading, second: Reading, shared: AbstractSet[str], data: Refdata) -> tuple[Reading, Table] | None:
    asked = {k: v for k, v in {**second.values, **first.values}.items() if k in _ASKED or k in shared}
    both = [{**reading.values, **asked} for reading in (first, second)]
    if any(need not in values for need in first.topic.needs for values in both):
        return None
    both = [{**_usual(values, first.topic, data), **values} for values in both]
    apart = tuple(key for key in first.topic.slots if both[0].get(key) != both[1].get(key))
    if not apart:
        return None
    common = {key: value for key, value in both[0].items() if key not in apart}
    said = {**second.said, **first.said}
    told = {key: said.get(key, common[key]) for key in first.topic.slots if key in common}
    told.update({key: " and ".join(filter(None, (first.said.get(key), second.said.get(key)))) for key in apart})
    rows = [{key: values[key] for key in apart if key in values} for values in both]
    try:
        table = of_things(first.topic, common, told, rows, data).replace(beside=_BESIDE.get(first.topic.noun, ()))
    except (GaugeblockError, TypeError):  # refused, or what the answer cannot do without was not said
        return None
    table = _by_title(table, first.topic)
    has_figures = any(line.sheet.figures for line in table.lines) and all(
        line.sheet.figures or line.sheet.decision.kind == NONE for line in table.lines
    )
    return (first.replace(values=common, said=told), table) if has_figures else None


def _usual(values: dict[str, str], topic: Topic, data: Refdata) -> dict[str, str]:
    """What a shop has mostly of what was left open: its usual metal, the first treatment of a steel."""
    left = topic.opens(dict(values), data) if topic.opens is not None else None
    return left[1][0] if left is not None and left[1] else {}


_METALS = "strength"
_NO_STRENGTH = frozenset(["bend", "flare", "cope", "offset", "gauge", "growth", "length in a bend", "tube thread"])
_OF_STRENGTH = frozenset(["stronger", "weaker", "stiffer"])
_ASKED = ("fact",)
# What is told of each beside its first figure: what a bolt stands before it stretches.
_BESIDE = {"bolt grade": ("proof_strength",)}
_TWO_THINGS = 2
