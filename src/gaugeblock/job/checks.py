"""What one key of a job says about another: names twice, dies that are not there, two ways of saying one thing.

Works on the values as TOML gives them, so that these faults are told together with those of single keys.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from gaugeblock.errors import InputError
from gaugeblock.job.locate import Path
from gaugeblock.job.values import NAME_LIMIT, is_blank, shown, unit_of
from gaugeblock.units import Measure, dimension, parse_measure, split_quantity

ITEMS_LIMIT = 1000
_POOL = 100  # names among which a near one is sought
_EITHER = "give part and size, or thread and grade"
_PARTS = ("size", "seat", "material")
_SHAPES = ("clear", "single", "offset", "kick_up", "saddle", "template", "bends", "points")
_AXES = {"forward": 0, "rearward": 0, "left": 1, "right": 1, "up": 2, "down": 2}
_SHAFT = ("steel", "treatment", "temper", "diameter", "length", "torque")
_SETUP = ("axle", "component", "step", "wear", "as_found", "as_left", "maker")


class Fault:
    """A fault found at ``path``; ``other`` is the path it clashes with, if any."""

    __slots__ = ("do", "nearest", "other", "path", "why")

    def __init__(self, path: Path, why: str, do: str, other: Path = (), nearest: tuple[str, ...] = ()) -> None:
        self.path = path
        self.why = why
        self.do = do
        self.other = other
        self.nearest = nearest


def check(data: dict[str, Any]) -> Iterator[Fault]:
    """Every fault between the keys of a job, in no set order."""
    shop = data.get("shop")
    dies = {"dies": shop.get("dies")} if isinstance(shop, dict) else {}
    yield from _names(dies, ("shop",), "dies")
    for domain in ("fasteners", "tubes", "lines", "driveline"):
        yield from _names(data, (), domain)
    for path, item in tables(data, (), "fasteners"):
        yield from _fastener(path, item)
    named = [die["name"] for _, die in tables(dies, (), "dies") if isinstance(die.get("name"), str)]
    known = {_folded(name): name for name in named}
    for path, item in tables(data, (), "tubes"):
        yield from _tube(path, item, known)
    for path, item in tables(data, (), "driveline"):
        yield from _driveline(path, item)


def tables(data: dict[str, Any], base: Path, key: str) -> Iterator[tuple[Path, dict[str, Any]]]:
    """The tables of a list of tables with their paths; anything else is passed over."""
    found = data.get(key)
    for index, item in enumerate(found if isinstance(found, list) else ()):
        if isinstance(item, dict):
            yield (*base, key, index), item


def _folded(name: str) -> str:
    return " ".join(name.split()).casefold()


def _given(item: dict[str, Any], keys: tuple[str, ...]) -> list[str]:
    return [key for key in keys if key in item and not is_blank(item[key])]


def _names(data: dict[str, Any], base: Path, key: str) -> Iterator[Fault]:
    first: dict[str, Path] = {}
    for path, item in tables(data, base, key):
        name = item.get("name")
        if not isinstance(name, str) or is_blank(name):
            continue
        before = first.setdefault(_folded(name), path)
        if before != path:
            why = f"{shown(name)}: this name is given twice"
            yield Fault((*path, "name"), why, "give each item its own name", before)


def _fastener(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    threaded = _given(item, ("thread", "grade"))
    if threaded and _given(item, ("part",)):
        for key in threaded:
            yield Fault((*path, key), "a part has its own figure and takes no thread or grade", _EITHER)
    elif threaded:
        for key in _given(item, _PARTS):
            yield Fault((*path, key), "belongs to a part; this item gives a thread or a grade", _EITHER)
    yield from _passes(path, item.get("passes"))
    yield from _order((*path, "maker"), item.get("maker"), "torque")


def _passes(path: Path, passes: object) -> Iterator[Fault]:
    before = 0.0
    for index, text in enumerate(passes if isinstance(passes, list) else ()):
        now = _measure(text)
        if now is None or now.unit != "%":
            return
        if float(now.value) <= before:
            why = "not more than the pass before it"
            yield Fault((*path, "passes", index), why, "write the passes in rising order")
        before = float(now.value)


def _tube(path: Path, item: dict[str, Any], known: dict[str, str]) -> Iterator[Fault]:
    yield from _shape(path, item)
    yield from _obstacles(path, item)
    die = item.get("die")
    if not isinstance(die, str) or is_blank(die):
        return
    if _given(item, ("radius",)):
        why = "both a die and a radius are given"
        yield Fault((*path, "radius"), why, "give the die, or the radius", (*path, "die"))
    if _folded(die) not in known:
        from difflib import get_close_matches

        names = [shown(name) for name in list(known.values())[:_POOL]]
        near = tuple(get_close_matches(die[:80], names, n=5, cutoff=0.4) or names)
        why = f"{shown(die)}: no die of this name in [[shop.dies]]"
        yield Fault((*path, "die"), why, "use the name of a die, or add the die", (), near)


def _shape(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    """One shape a tube, and each shape in itself."""
    shapes = [key for key in _SHAPES if item.get(key)]
    for key in shapes[1:]:
        why = f"both {shapes[0]} and {key} give the shape"
        yield Fault((*path, key), why, "keep one of them", (*path, shapes[0]))
    for key, pair in (("kick_up", ("flat", "width")), ("clear", ("width", "od"))):
        table = item.get(key)
        if isinstance(table, dict) and len(_given(table, pair)) == 2:
            why = f"both {pair[0]} and {pair[1]} are given"
            yield Fault((*path, key, pair[1]), why, f"give the {pair[0]}, or the {pair[1]}", (*path, key, pair[0]))
    rod = item.get("template")
    if isinstance(rod, dict):
        count = {k: len(rod[k]) for k in ("lengths", "angles", "turns") if isinstance(rod.get(k), list)}
        angles = count.get("angles")
        for key, more in (("lengths", 1), ("turns", 0)):
            if angles is not None and key in count and count[key] != angles + more:
                why = f"{count[key]} {key} for {angles} angles"
                do = "a template has one turn a bend, and one length more than bends"
                yield Fault((*path, "template", key), why, do, (*path, "template", "angles"))
    yield from _enough(path, item.get("points"), "points", item.get("points") is not None)
    place = item.get("place")
    ways = [_AXES.get(str(place.get(k))) for k in ("runs", "bends")] if isinstance(place, dict) else [None]
    if ways[0] is not None and ways[0] == ways[-1]:
        do = "give a direction across the tube"
        yield Fault((*path, "place", "bends"), "lies along the tube", do, (*path, "place", "runs"))


def _enough(path: Path, points: object, key: str, is_asked: bool) -> Iterator[Fault]:
    if is_asked and isinstance(points, list) and len(points) < 2:
        yield Fault((*path, key), f"{len(points)} of them; a path has two points at least", "give its points in order")


def _obstacles(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    """What an obstacle is: a pipe with its diameter, a box, or a plane."""
    yield from _names(item, path, "obstacles")
    for where, thing in tables(item, path, "obstacles"):
        kinds = [key for key in ("points", "box", "plane") if thing.get(key)]
        if len(kinds) != 1:
            why = "neither points nor box nor plane" if not kinds else f"both {kinds[0]} and {kinds[1]}"
            yield Fault((*where, kinds[1]) if kinds else where, why, "give one: a pipe's points, a box or a plane")
        elif kinds == ["points"]:
            yield from _enough(where, thing["points"], "points", True)
            if not _given(thing, ("od",)):
                yield Fault((*where, "points"), "a pipe without its od", 'add od = "2-1/2 in"')
            if isinstance(thing["points"], list) and len(thing["points"]) > 2 and not _given(thing, ("radius",)):
                yield Fault((*where, "points"), "a bent pipe without its radius", "add the radius of its bends")
        else:
            for key in _given(thing, ("od", "radius", "collars")):
                yield Fault(
                    (*where, key), f"belongs to a pipe, not to a {kinds[0]}", "leave it out", (*where, kinds[0])
                )


def _driveline(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    kind = item.get("kind")
    wrong = {"shaft": _SETUP, "setup": _SHAFT}.get(kind if isinstance(kind, str) else "", ())
    for key in _given(item, wrong):
        yield Fault((*path, key), f"does not belong to a {kind}", "move it to an item of its own", (*path, "kind"))
    yield from _order((*path, "maker"), item.get("maker"), "value")


def _order(path: Path, maker: object, middle: str) -> Iterator[Fault]:
    """low, value and high of a maker's figure: one dimension, rising."""
    if not isinstance(maker, dict):
        return
    got = [(key, m) for key in ("low", middle, "high") if (m := _measure(maker.get(key))) is not None]
    for (low, a), (high, b) in pairwise(got):
        if dimension(a.unit) != dimension(b.unit):
            yield Fault((*path, high), f"of another dimension than {low}", "give both in units of one dimension")
        elif a.to(b.unit) > float(b.value):
            yield Fault((*path, high), f"{high} is below {low}", "correct the one or the other", (*path, low))


def _measure(text: object) -> Measure | None:
    """A measure of whatever dimension its unit has; None when it is none, which its own check tells."""
    if not isinstance(text, str) or len(text) > NAME_LIMIT:
        return None
    unit = unit_of(split_quantity(text)[1])
    try:
        return parse_measure(text, dimension(unit)) if unit else None
    except InputError:
        return None
