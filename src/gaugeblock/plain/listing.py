"""A line that no answer reads whole, and every word of which stands in the tables: the rows that have them all.

Nothing is left out for it that could change a number: a word that no row has, or one that turns another, and the line
is refused as it was. A word for a measure (pressure, depth) holds for the figures shown, not for the name of a part.
"""

from __future__ import annotations

import re
from itertools import combinations, pairwise

from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.found import Found, Listed
    from gaugeblock.tables.load import Refdata

# Rows of more keys than these are no answer: the line says too little.
MOST = 40
_LEAST = 2  # words
# Words that ask for a figure and say nothing of the thing.
_ASKING = frozenset(
    ["spec", "figure", "rating", "rated", "carry", "hold", "handle", "take", "run", "fluid", "insulation"]
)
# What any fastener is called; of a torque it is the part, of a fact it says no more.
_FASTENER = frozenset(["bolt", "screw", "fastener"])
_LONG = {
    "rev": "rpm",
    "limit": "maximum",
    "max": "maximum",
    "min": "minimum",
    "most": "maximum",
    "least": "minimum",
    "biggest": "maximum",
    "temp": "temperature",
    "hot": "temperature",
    "tight": "torque",
    "amp": "current",
    "volt": "voltage",
    "pound": "mass",
    "weight": "mass",
    "heavy": "mass",
    "weigh": "mass",
    "thick": "thickness",
    "wide": "width",
    "long": "length",
    "deep": "depth",
    "apart": "spacing",
    "od": "outside diameter",
    "id": "inside diameter",
}
_SAID = """
pressure temperature torque mass length width diameter angle speed current voltage hardness strength area ratio force
load flow capacity preload backlash spacing radius fuse point maximum minimum
"""
# What is measured -> what of it stands in the name of a quantity.
_MEASURES = {
    "size": ("size", "diameter", "width", "thickness", "across"),
    "depth": ("depth", "engagement"),
    "clearance": ("clearance", "gap"),
    "gap": ("gap", "clearance"),
    "thickness": ("thickness", "wall"),
    **{word: (word,) for word in _SAID.split()},
}
_EMISSIVITY = "emissivity"
_MOST_SAID = 5  # words of a surface
# How a surface is called, and how the tables have it.
_SURFACES = {
    "rusty": "rusted",
    "oxidized": "oxidised",
    "shiny": "polished",
    "aluminum": "aluminium",
    "dull": "oxidised",
}
# A number of these is what somebody has, and no name of a row.
_LOADS = frozenset(
    ["a", "amp", "amps", "ampere", "amperes", "w", "watt", "watts", "hp", "bhp", "kw", "rpm", "mph", "kph"]
)
# What has its own answer, with checks that a bare number would leave out.
_ASKED_ALONE = ("fasteners/torques",)


def listed(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rows whose key, names or quantities have every word of a line; None for a word that none has."""
    if any(one[:1].isdigit() and unit in _LOADS for one, unit in pairwise(words)):
        return None  # 105 amps is no insulation of 105 degC
    if not TURNING.isdisjoint(words):
        return _of_another_metal(words, data)
    found = _listed(words, data) or _of_a_surface(words, data)
    less = tuple(word for word in words if not is_aside(word))
    if found is not None or len(less) == len(words):
        return found
    found = _listed(less, data)
    if found is not None:
        left = " ".join(word for word in words if is_aside(word))
        return found.replace(asked=f"{found.asked} (left out: {left})")
    return found


def _of_another_metal(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rows of a line that denies another metal than the one it names: alloy, not steel."""
    metals = data.words("fasteners", "material")
    at = next((n for n, word in enumerate(words[:-1]) if word == "not"), -1)
    denied = metals.get(words[at + 1], "") if at >= 0 else ""
    rest = (*words[: max(at, 0)], *words[at + 2 :])
    if not denied or not TURNING.isdisjoint(rest) or not {metals[w] for w in rest if w in metals} - {denied}:
        return None
    found = listed(rest, data)
    if found is None or any(denied in entry.label.casefold() for entry, _ in found.groups):
        return None
    return found.replace(asked=f"{found.asked} (left out: not {words[at + 1]})")


def _of_a_surface(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The emissivities of the surface that a longer line names, by the words that stand in their keys; what is left
    out is said.
    """
    if _EMISSIVITY not in words:
        return None
    keys = [row.key for row in data.table("lines/emissivity").rows]
    known = {word for key in keys for cell in key[:2] for word in re.findall("[a-z]{4,}", cell.casefold())}
    metals = {word for key in keys for word in key[0].casefold().split()}
    kept = [word for word in dict.fromkeys(_SURFACES.get(word, word) for word in words) if word in known][:_MOST_SAID]
    for count in range(len(kept), 0, -1):
        for some in combinations(kept, count):
            found = None if metals.isdisjoint(some) else _listed((_EMISSIVITY, *some), data)
            if found is not None:
                rest = [word for word in words if word not in (_EMISSIVITY, *some) and _SURFACES.get(word) not in some]
                left = " ".join(word for word in rest if word not in CHATTER)
                return found.replace(asked=f"{found.asked} (left out: {left})")
    return None


def _listed(words: tuple[str, ...], data: Refdata) -> Found | None:
    said = [_singular(w) for w in words if w not in CHATTER]
    wanted = [part for w in said for part in _LONG.get(w, w).split() if part not in _ASKING]
    measures = [w for w in wanted if w in _MEASURES]
    if "torque" not in measures:
        wanted = [w for w in wanted if w not in _FASTENER]
    things = [w for w in wanted if w not in _MEASURES]
    if len(wanted) < _LEAST or not any(len(w) > 2 and w.replace("-", "").isalpha() for w in things):
        return None
    from gaugeblock.finding import find
    from gaugeblock.found import Found

    found = find(" ".join(things), data=data, named=True, whole=True)
    groups: list[tuple[Listed, list[Figure]]] = []
    for entry, figures in found.groups:
        if entry.table in _ASKED_ALONE:
            return None
        kept = [f for f in figures if all(_is_of(f, w, data) for w in measures)]
        if kept or (entry.rule is not None and all(f" {w}" in _says(entry) for w in measures)):
            groups.append((entry, kept))
    if not any(figures for _, figures in groups) or len(groups) > MOST:
        return None
    return Found(" ".join(wanted), groups, 0, [], data)


def _says(entry: Listed) -> str:
    """The name of its table, the topic, subject and statement of a rule, as plain text."""
    from gaugeblock.shelf import plain

    rule = entry.rule or {"statement": ""}
    return plain(f"{entry.table.replace('/', ' ')} {entry.text} {rule['statement']}")


def _is_of(figure: Figure, measure: str, data: Refdata) -> bool:
    """Whether a figure is of a measure, by the name of its quantity."""
    name = f"{figure.quantity.replace('_', ' ')} {data.quantity(figure.quantity)['words']}"
    return any(piece in name for piece in _MEASURES[measure])


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.isalpha() and word[-1] == "s" and word[-2] not in "isu" else word
