"""A line that no figure answers, and every word of which stands in one rule: what the rules say of it.

A word stands there whole, in another form of itself (mix, mixed, mixing), or under the name that the tables have for
it. A rule is shown in full with its source, so that nothing is left out for the reader.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise
from math import log

from gaugeblock.plain.chatter import CHATTER, PLACE, STORY, TURNING, is_aside, is_story
from gaugeblock.plain.unnamed import TORQUE

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.found import Found
    from gaugeblock.shelf import Entry
    from gaugeblock.tables.load import Refdata

MOST = 6  # rules
_LEAST = 2  # things said
_LONGEST = 4  # words of a name
_STEEL = 4  # digits of a steel or an aluminium
_SHARE, _AS_NEAR = 0.6, 0.1  # of the words, each by how rare it is
_LEAST_NEAR, _MOST_NEAR = 3, 3  # words; rules
_SHORTEST = 3  # letters of a word that has other forms
_TERMINALS = frozenset(["30", "85", "86", "87", "87a"])
# What a load draws, which no rule of relays hangs on but by its own limit.
_DRAWN = re.compile(r"[0-9.]+(?:a|amps?|w|watts?)?|amps?|watts?")
_BRITISH = {"bsf": "bsf", "bsw": "bsw", "whitworth": "bsw", "whit": "bsw", "ba": "ba"}
_OF_BA = re.compile("[0-9]{1,2}ba")
_DRILLING = frozenset(["drill", "drills", "drilled", "tap", "tapping", "tapped", "hole"])
# Of what no rule of a British thread says anything.
_OF_NO_RULE = TORQUE | {"flats", "spanner", "wrench", "hexagon", "hex", "head", "jaw", "socket"}
_NAME = re.compile(r"[^0-9]+|(?!m[0-9]|v[0-9]|grade|class|sch|gauge)[a-z]+[ -]?[0-9][a-z0-9.]*")  # dot 4, gl-5; no size
_NUMBERED = frozenset(["dot", "gl", "gl-", "grade", "class", "sae", "type", "no", "number", "an"])
_PLACES = PLACE | STORY | {"front", "left", "right", "side", "where"}
_ENDS = ("ings", "ing", "ed", "es", "s", "e", "ies", "y")
_WORD = re.compile(r"[a-z]+|[a-z0-9][a-z0-9./%+-]*")
# Words that say the same of a rule.
_SAME = (
    "beside near close next",
    "fix repair mend patch",
    "pipe line tube tubing",
    "petrol gasoline gas fuel",
    "retorque recheck check retighten again",
    "ground earth",
    "reuse reused renewed new used",
    "nyloc nylock nylok nylon",
    "threadlock threadlocker",
    "trunk boot",
    "combine together mix",
    "crush sealing",
    "exhaust header manifold",
    "temp temperature hot heat degf",
    "where place position location sits",
    "order first last",
    "inspection test",
    "least minimum min smallest",
    "injected injection injector efi",
)
_ALIKE: dict[str, set[str]] = {}
for _group in _SAME:
    for _word in _group.split():
        _ALIKE.setdefault(_word, set()).update(_group.split())
# Words that ask for a rule and say nothing of the thing; and words that say nothing of a number, and much of a place.
_ASKING = frozenset(
    [
        "safe",
        "left",
        "ok",
        "okay",
        "legal",
        "allowed",
        "rule",
        "rules",
        "law",
        "matter",
        "matters",
        "fluid",
        "old",
        "both",
        "set",
        "go",
        "hold",
        "run",
        "way",
        "put",
        "regular",
        "max",
        "maximum",
        "or",
    ]
)
_OF_AGE = frozenset(["how", "year", "years", "month", "months", "too"])
_SAYING = frozenset(["where", "trunk", "front", "side", "running", "once", "garage"])
# Where a thing is, behind all that is said of it.
_PLACE = re.compile(r"(?: (?:on|in|at|of|from|under|behind) (?:the|my|an?|this|that|it)(?: [a-z-]+){0,3})+$")
_UNITS = frozenset(["in", "inch", "inches", "mm", "ft", "feet", "foot", "deg", "degree", "psi", "bar", "amp", "volt"])
_MAY = {(can, who) for can in ("can", "should", "may", "do", "must") for who in ("i", "you", "we")} | {("is", "it")}
# What words.csv has that is wider than what was said, or another thing.
_ELSE = ("opposite ", "related ", "maker of ", "kind of ", "family", "product", "system", "standard", "place", "method")


def asks_no_figure(words: tuple[str, ...]) -> bool:
    """Whether a line asks for a place, or whether something may be done, and not for a figure."""
    has_figures = any(char.isdigit() for word in words for char in word.removeprefix("o2"))
    return ("where" in words and not has_figures) or words[:2] in _MAY


def ruled(words: tuple[str, ...], data: Refdata, *, whole: bool = False) -> Found | None:
    """The rules that have every word of a line; where none has, those that have all but the place at its end, which is
    said. None where none has, or more do than a person reads; and where it has to be ``whole`` and a word is left.
    """
    found = _having(words, data)
    if found is not None or whole:
        if found is not None and "old" in words and not _is_asked_of_age(words):
            return found.replace(asked=f"{found.asked} (left out: old)")
        return found
    about = _subject(words)
    if about:  # whatever is told round it
        found = _having(about, data)
        if found is not None:
            rest = [word for word in words if word not in about and word not in CHATTER]
            return found.replace(asked=f"{found.asked} (left out: {' '.join(rest)})")
        return found
    line = " ".join(words)
    place = _PLACE.search(line)
    less = tuple(line[: place.start()].split()) if place is not None else words
    for fewer in (less, tuple(word for word in less if not is_aside(word))):
        found = _having(fewer, data) if fewer != words else None
        if found is not None:
            left = [*(w for w in less if w not in fewer), *words[len(less) :]]
            return found.replace(asked=f"{found.asked} (left out: {' '.join(left)})")
    return None


def _is_asked_of_age(words: tuple[str, ...]) -> bool:
    """Whether a line asks how old a thing may be, or says by how many years it is."""
    return any(after == "old" and before in _OF_AGE for before, after in pairwise(words))


def _subject(words: tuple[str, ...]) -> tuple[str, ...]:
    """What a line is about that the rules alone have: the terminals of a relay, a British thread."""
    if "relay" in words and (len(_TERMINALS & {*words}) >= _LEAST or "87a" in words):
        return ("relay", "terminals", *sorted(_TERMINALS & {*words}))
    if not {"relay", "relays"}.isdisjoint(words) and any(map(_DRAWN.fullmatch, words)):
        return tuple(word for word in words if not _DRAWN.fullmatch(word))
    series = next((_BRITISH.get(word, word) for word in words if word in _BRITISH or _OF_BA.fullmatch(word)), "")
    if not series or _OF_NO_RULE & {*words}:
        return ()
    drill = ("tap", "drill") if _DRILLING & {*words} else ("threads", "per", "inch") if series in ("bsf", "bsw") else ()
    return ("british", series, *drill)


def nearest(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that have most of a line, by how rare each word is in all rules: what they lack is told. None for a
    line
    that is turned, or of which no rule has enough.

    A number or a grade stands in a rule by chance: the words alone have to reach the share too. A place counts
    where the
    rule has it.
    """
    if not (TURNING - {"or"}).isdisjoint(words):
        return None
    from gaugeblock.finding import rules
    from gaugeblock.found import Found

    entries = [(one, _stems(f"{one.text} {one.rule['statement'].casefold()}")) for one in rules(data) if one.rule]
    wanted = list(_things(tuple(word for word in words if not is_story(word)), data))
    holding = [(said, [any(one <= held for one in ways) for _, held in entries]) for said, ways in wanted]
    rare = {said: log(len(entries) / (sum(has) + 0.5)) for said, has in holding}
    named = {said for said, _ in wanted if said not in _UNITS and _NAME.fullmatch(said)}
    found: list[tuple[float, int, Entry]] = []
    for at, (entry, _) in enumerate(entries):
        had = {said for said, has in holding if has[at]}
        counted = {said for said, _ in wanted if said in had or said not in _PLACES}
        shares = [
            sum(rare[w] for w in had & own) / max(1e-9, sum(rare[w] for w in counted & own)) for own in (named, counted)
        ]
        is_most = len(had & named) > len(counted & named) / 2
        if len(had & named) >= _LEAST_NEAR and min(shares) >= _SHARE and is_most:
            found.append((-min(shares), at, entry))
    if not found:
        return None
    found.sort(key=lambda one: one[:2])
    near = [one for one in found if one[0] <= found[0][0] + _AS_NEAR][:_MOST_NEAR]
    lacking = [said for said, has in holding if not any(has[at] for _, at, _ in near)]
    if any(words[n + 1 : n + 2] and words[n + 1] in lacking for n, word in enumerate(words) if word in _NUMBERED):
        return None  # a class that none of them has
    asked = " ".join(said for said, _ in wanted if said not in lacking)
    asked += f" (not in them: {', '.join(lacking)})" if lacking else ""
    return Found(asked, [(entry, []) for *_, entry in near], 0, [], data)


def _having(words: tuple[str, ...], data: Refdata) -> Found | None:
    if not (TURNING - {"or"}).isdisjoint(words):
        return None
    wanted = list(_things(words, data))
    if sum(_is_name(said) for said, _ in wanted) < _LEAST:
        return None
    from gaugeblock.finding import rules
    from gaugeblock.found import Found

    found: list[tuple[bool, int, Entry]] = []
    for entry in rules(data):
        text = f"{entry.text} {entry.rule['statement'].casefold()}" if entry.rule is not None else entry.text
        if not all(any(all(map(text.__contains__, one)) for one in ways) for _, ways in wanted):
            continue  # a stem is how its word begins
        held, about = _stems(text), _stems(entry.text)
        if all(any(one <= held for one in ways) for _, ways in wanted):
            named = sum(any(one <= about for one in ways) for said, ways in wanted if _is_name(said))
            if named:
                found.append((entry.is_other, -named, entry))
    if not 0 < len(found) <= MOST:
        return None
    found.sort(key=lambda one: one[:2])  # a car's own, then what it is about
    return Found(" ".join(said for said, _ in wanted), [(entry, []) for *_, entry in found], 0, [], data)


def _is_name(said: str) -> bool:
    """Whether it names a thing: a word that is no unit, or the four digits of a steel."""
    return (said not in _UNITS and any(map(str.isalpha, said))) or (len(said) == _STEEL and said.isdigit())


def _things(words: tuple[str, ...], data: Refdata) -> Iterator[tuple[str, list[set[str]]]]:
    """Each thing that is said, and the sets of stems that it may stand as: its own, or those of what it is called."""
    at = 0
    while at < len(words):
        for end in range(min(len(words), at + _LONGEST), at + 1, -1):
            phrase = " ".join(words[at:end])
            cells = _cells(phrase, data)
            if cells:
                yield phrase, [_stems(text.casefold()) for text in (phrase, *cells)]
                at = end
                break
        else:
            word = words[at]
            at += 1
            if word in _SAYING or (word not in CHATTER and word not in _ASKING):
                cells = set() if any(map(str.isdigit, word)) else _cells(word, data)
                firsts = {cell.partition(",")[0] for cell in cells}  # coolant, of what follows a comma
                yield word, [_stems(text.casefold()) for text in (*_ALIKE.get(word, {word}), *cells, *firsts)]


def _cells(phrase: str, data: Refdata) -> set[str]:
    """The cells that people call by this phrase, or by its singular."""
    names = (phrase, phrase.removesuffix("s"))
    lines = data.words_with(names[1])
    return {line[3] for line in lines if line[1].casefold() in names and not line[2].startswith(_ELSE)}


def _stems(text: str) -> set[str]:
    """The stem of each word; ``u-bolt`` is two."""
    return {_stem(word) for word in _WORD.findall(text)}


@lru_cache(4096)
def _stem(word: str) -> str:
    """What all forms of a word share: mix, mixed; run, running; size, sizing."""
    word = word.rstrip("./-%")
    if not word.isalpha():
        return word
    for end in _ENDS:
        if word.endswith(end) and len(word) - len(end) >= _SHORTEST:
            word = word.removesuffix(end)
            break
    return word[:-1] if len(word) > _SHORTEST and word[-1] == word[-2] else word
