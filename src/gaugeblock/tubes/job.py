"""``[[tubes]]``: what the keys of a tube say of each other."""

from collections.abc import Iterator
from typing import Any

from gaugeblock.job.checks import Fault, dies_of, folded, given, names, tables
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Path
from gaugeblock.job.values import is_blank, shown
from gaugeblock.tubes.model import SHAPES, Tube
from gaugeblock.tubes.starter import STARTER

__all__ = ["KINDS", "Tube"]

_POOL = 100  # names among which a near one is sought
_AXES = {"forward": 0, "rearward": 0, "left": 1, "right": 1, "up": 2, "down": 2}


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    yield from _shape(path, item)
    yield from _obstacles(path, item)
    die = item.get("die")
    if not isinstance(die, str) or is_blank(die):
        return
    if given(item, ("radius",)):
        why = "both a die and a radius are given"
        yield Fault((*path, "radius"), why, "give the die, or the radius", (*path, "die"))
    named = dies_of(job)
    known = {folded(name): name for name in named}
    if folded(die) not in known:
        from difflib import get_close_matches

        names = [shown(name) for name in list(known.values())[:_POOL]]
        near = tuple(get_close_matches(die[:80], names, n=5, cutoff=0.4) or names)
        why = f"{shown(die)}: no die of this name in [[shop.dies]]"
        yield Fault((*path, "die"), why, "use the name of a die, or add the die", (), near)


def _shape(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    """One shape a tube, and each shape in itself."""
    shapes = [key for key in SHAPES if item.get(key)]
    for key in shapes[1:]:
        why = f"both {shapes[0]} and {key} give the shape"
        yield Fault((*path, key), why, "keep one of them", (*path, shapes[0]))
    for key, pair in (
        ("kick_up", ("flat", "width")),
        ("clear", ("width", "od")),
        ("clear", ("width", "spacing")),
    ):
        table = item.get(key)
        if isinstance(table, dict) and len(given(table, pair)) == 2:
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
    measured = item.get("diameters")
    if isinstance(measured, list) and len(measured) != 2:
        why = f"{len(measured)} diameters; two are measured at a bend"
        yield Fault((*path, "diameters"), why, "give the largest and the smallest")
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
    yield from names(item, path, "obstacles")
    for where, thing in tables(item, path, "obstacles"):
        kinds = [key for key in ("points", "box", "plane") if thing.get(key)]
        if len(kinds) != 1:
            why = "neither points nor box nor plane" if not kinds else f"both {kinds[0]} and {kinds[1]}"
            yield Fault((*where, kinds[1]) if kinds else where, why, "give one: a pipe's points, a box or a plane")
        elif kinds == ["points"]:
            yield from _enough(where, thing["points"], "points", True)
            if not given(thing, ("od",)):
                yield Fault((*where, "points"), "a pipe without its od", 'add od = "2-1/2 in"')
            if isinstance(thing["points"], list) and len(thing["points"]) > 2 and not given(thing, ("radius",)):
                yield Fault((*where, "points"), "a bent pipe without its radius", "add the radius of its bends")
        else:
            for key in given(thing, ("od", "radius", "collars")):
                yield Fault(
                    (*where, key), f"belongs to a pipe, not to a {kinds[0]}", "leave it out", (*where, kinds[0])
                )


KINDS = {"tubes": Kind(Tube, faults, STARTER)}
