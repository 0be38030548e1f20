"""Why a line was not read whole, in the reader's words: what is in the way, what is near it, what to do."""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.answer.opening import spoken
from gaugeblock.errors import InputError
from gaugeblock.plain.chatter import CHATTER, TURNING
from gaugeblock.tables.catalogue import DOMAINS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

_MOST_NEAR, _ALIKE = 5, 0.8
_UNITS = frozenset(["in", "inch", "inches", "mm", "ft", "foot", "feet", "deg", "degf", "degc", "f", "c"])
# Units that are tried on a number that has none, and so many of them may fit.
_TRIED = ("mph", "km/h", "degF", "degC", "in", "mm", "ft", "lbf*ft", "N*m", "V", "A", "deg", "rpm", "psi", "bar", "hp")
_MOST_UNITS = 3
_HAS_UNIT = frozenset(
    [
        "rpm",
        "revs",
        "amps",
        "amp",
        "volts",
        "volt",
        "degrees",
        "deg",
        "percent",
        "psi",
        "bar",
        "hp",
        "inch",
        "inches",
        "feet",
        "foot",
        "mm",
        "lbs",
        "ft",
    ]
)
# Words that say what is asked of a thing, not which thing it is.
_ASKING = frozenset(
    ["torque", "temp", "temperature", "tight", "max", "min", "size", "spec", "pressure", "figure", "limit"]
)
# Without one of these a bare number beside amps and metres is no heat of the air.
_WARM = "air ambient bay bonnet degrees deg engine heat heats hood hot summer temp temps temperature warm weather"
_OF_HEAT = frozenset(_WARM.split())
_NUMBER = re.compile(r"[#m]?[0-9./-]+(?:x[0-9.]+)?(?:f|c|in|mm|\")?", re.ASCII)


def not_understood(question: str, words: tuple[str, ...], reading: Reading, as_said: str, data: Refdata) -> InputError:
    """The refusal of a line of which words are left; it names each."""
    left = ", ".join(f'"{word}"' for word in dict.fromkeys(reading.unread))
    turns = [w for w in reading.unread if w.split()[0] in TURNING]
    twice = _twice(words, reading, data)
    bare = next((n for n, w in pairwise(words) if w == "degrees" and _NUMBER.fullmatch(n)), "")
    if turns and bare in reading.unread and all(w.startswith("or ") for w in turns):
        why, do = f"not understood: {left}; {bare} degrees of what", "say whether it is degF or degC"
    elif turns:
        why = f"not understood: {left}; it may turn the answer round, so nothing is answered"
        do = "say what it is, not what it is not"
    elif twice and len(reading.unread) == 1:
        key, word, other = twice
        why = f'not understood: "{word}" beside {other}: of the {spoken(key)} there can be one'
        do = "ask for one of them"
    elif (without := without_unit(words, reading, data)) is not None:
        number, fits = without
        why = f'not understood: {left}; "{number}" has no unit' if len(reading.unread) > 1 else f"{number} of what"
        do = f"say its unit: {' or '.join(f'{number} {unit}' for unit in fits)}"
        missing = [spoken(need) for need in reading.topic.needs if need not in reading.values]
        do += f"; say the {' and the '.join(missing)} too" if missing else ""
    elif bare and bare in reading.unread:
        why, do = f"not understood: {bare} degrees of what", "say whether it is degF or degC"
    else:
        why = f"not understood: {left}"
        do = _elsewhere(words, reading.topic, data) or "say it in other words, or leave it out if it changes nothing"
    lacks = [spoken(need) for need in reading.topic.needs if need not in reading.values]
    if lacks and reading.topic.is_meant(words) and "say the" not in do:
        do = f"say the {' and the '.join(lacks)} too; {do}"
    where = f"read as {as_said}" if reading.values else ""
    return InputError(question, where, why, lambda: _near(words, reading, data), do)


def without_unit(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[str, list[str]] | None:
    """A number that was left because it has no unit, and the units with which the topic would read it."""
    for at, number in enumerate(words):
        if number not in reading.unread or not re.fullmatch(r"[0-9]+(?:\.[0-9]+)?", number):
            continue
        if words[at + 1 : at + 2] and words[at + 1] in _HAS_UNIT:
            continue
        led: list[str] = []  # with the word before it: "at 250"
        bare: list[str] = []
        for unit in _TRIED:
            said = (*words[: at + 1], unit.casefold(), *words[at + 1 :])
            takes = [reader for key, own in reading.topic.slots.items() if key not in reading.values for reader in own]
            for start, fits in ((at - 1, led), (at, bare)):
                hits = (hit for reader in takes for hit in reader.take(said, start, data)) if start >= 0 else ()
                if any(hit.value == f"{number} {unit}" for hit in hits):
                    fits.append(unit)
        fits = led or bare
        if "degF" in fits:  # of a hose a bare number is how hot it is, before it is a pressure
            fits = [unit for unit in fits if unit not in ("psi", "bar")]
        if "degF" in fits and "air" in reading.topic.slots and _OF_HEAT.isdisjoint(words):
            continue
        if 1 < len(fits) <= _MOST_UNITS:
            return number, fits
    return None


def not_said(question: str, words: tuple[str, ...], reading: Reading, as_said: str, data: Refdata) -> InputError:
    """The refusal of a line that lacks what its answer needs."""
    missing = [need for need in reading.topic.needs if need not in reading.values]
    named = [w for w in words if w not in CHATTER and w not in _UNITS and not _NUMBER.fullmatch(w)]
    named = named or [w for w in words if w.isalpha()] * CHATTER.issuperset(words)
    is_named = bool(reading.mended) or any(
        word not in CHATTER and reading.topic.signal(words, at) for at, word in enumerate(words)
    )
    if not reading.values and len(missing) == len(reading.topic.needs) and not is_named:
        said = f'nothing in "{" ".join(words[:8])}" has a figure' if named else ""
        why = f"{said}: the {' or the '.join(map(spoken, missing))} was not said".removeprefix(": ")
        do = (
            _elsewhere(words, reading.topic, data)
            or "name a thread, a part, a tube, a fluid, a steel or a wire, and its size"
        )
        return InputError(question, "", why, (), do)
    what = " and the ".join(map(spoken, missing))
    is_measure_alone = all(re.fullmatch("[0-9./ -]+ (?:in|mm|ft)", v) for v in reading.values.values())
    if is_measure_alone and len(reading.values) == 1 and len(named) <= 1:
        why = f"the {what} was not said, nor what of it is asked"
        do = "say what it is of: a shaft and its steel, a tube and its wall, a bolt and its grade"
        return InputError(question, "", why, (), do)
    is_asked = reading.topic.asks_again(words)
    is_sure = is_asked or (
        bool(reading.values) and reading.topic.is_meant(words)
    )  # what is lacking helps more than another way
    other = "" if is_sure else _elsewhere(words, reading.topic, data)
    do, verb = other or f"say the {what}", "was" if len(missing) == 1 else "were"
    return InputError(question, f"read as {as_said}", f"the {what} {verb} not said", (), do)


def _twice(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[str, str, str] | None:
    """A word that was left because its option was said already: option, word, what was said."""
    for at, word in enumerate(words):
        if word not in reading.unread:
            continue
        for key, readers in reading.topic.slots.items():
            if key not in reading.values:
                continue
            for reader in readers:
                if any(hit.doubt < 2 and hit.value != reading.values[key] for hit in reader.take(words, at, data)):
                    return key, word, reading.said[key]
    return None


def _elsewhere(words: tuple[str, ...], topic: Topic, data: Refdata) -> str:
    """Where the tables have what this line is about, though no answer is for it: ``tap drill``."""
    wanted = [w for w in words if w not in CHATTER and w not in TURNING]
    if not wanted or len(wanted) > _MOST_NEAR or all(topic.signal((w,), 0) or w in _ASKING for w in wanted):
        return ""
    from gaugeblock.finding import is_there

    if len(wanted) > 2 and not is_there(wanted, data):  # without the one word that no table has
        fewer = (wanted[:n] + wanted[n + 1 :] for n in range(len(wanted)))
        wanted = next((some for some in fewer if is_there(some, data)), wanted)
    is_known = is_there(wanted, data)
    return f"`gaugeblock find {' '.join(wanted)}` shows what the tables have of it" if is_known else ""


def _near(words: tuple[str, ...], reading: Reading, data: Refdata) -> list[str]:
    """Phrases of the topic that are near in meaning to what was left, with the words that stand round it."""
    from gaugeblock.tables.near import nearest

    known: dict[str, str] = {}
    for readers in reading.topic.slots.values():
        for reader in readers:
            known.update((p, c) for p, c in reader.phrases(data).items() if c and not re.search("[0-9]", p))
    singular = {p: c for p, c in known.items() if not (p.endswith("s") and p[:-1] in known)}
    left = [word for text in reading.unread for word in text.split() if word not in TURNING]
    related, barred = _relations(reading.topic, left, data)
    found = list(related)
    for run in _runs(words, reading.unread):
        near = nearest(run, singular, 2 * _MOST_NEAR)
        found += [n for n in near if not set(n.split()) <= set(words) and _shares(n, left)]
    found = [cell.casefold() if (cell := known.get(n, n)).casefold() in known else n for n in found]
    by_cell = {known.get(n, n): n for n in reversed(found)}
    kept = [n for n in found if by_cell[known.get(n, n)] == n and known.get(n, n) not in barred]
    return list(dict.fromkeys(kept))[:_MOST_NEAR]


def _relations(topic: Topic, left: list[str], data: Refdata) -> tuple[list[str], set[str]]:
    """What the words that were left are related to, and the opposite of, in the options of the topic."""
    related: list[str] = []
    barred: set[str] = set()
    for domain in DOMAINS:
        for key in topic.slots:
            near, far = (data.words(domain, f"{relation} {key}") for relation in ("related", "opposite"))
            related += [near[word] for word in left if word in near]
            barred.update(far[word] for word in left if word in far)
    return [cell for cell in dict.fromkeys(related) if cell not in barred], barred


def _shares(phrase: str, left: list[str]) -> bool:
    """Whether a phrase has one of the words that were left, or nearly: what was understood makes nothing near."""
    from difflib import SequenceMatcher

    return any(SequenceMatcher(None, a, b).ratio() >= _ALIKE for a in left for b in phrase.split())


def _runs(words: tuple[str, ...], unread: tuple[str, ...]) -> list[str]:
    """Each stretch of words with something in it that was not understood, between numbers and small talk."""
    runs: list[list[str]] = [[]]
    for word in words:
        if word in CHATTER or word in TURNING or word in _ASKING or _NUMBER.fullmatch(word):
            runs.append([])
        else:
            runs[-1].append(word)
    left = {w for text in unread for w in text.split()}
    return [" ".join(run) for run in runs if left.intersection(run)]
