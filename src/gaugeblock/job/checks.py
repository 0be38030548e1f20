"""What one key of a job says about another: names twice, dies that are not there, two ways of saying one thing.

Most work on the values as TOML gives them, so that these faults are told together with those of single keys.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from gaugeblock.job.locate import Path
from gaugeblock.job.values import is_blank, shown
from gaugeblock.units import Measure, dimension

if TYPE_CHECKING:
    from gaugeblock.job.kind import Kind
    from gaugeblock.job.model import Job

ITEMS_LIMIT = 1000


class Fault:
    """A fault found at ``path``; ``other`` is the path it clashes with, if any."""

    __slots__ = ("do", "nearest", "other", "path", "why")

    def __init__(self, path: Path, why: str, do: str, other: Path = (), nearest: tuple[str, ...] = ()) -> None:
        self.path = path
        self.why = why
        self.do = do
        self.other = other
        self.nearest = nearest


def no_faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    """Of a table whose keys may stand beside each other as they will."""
    del path, item, job
    yield from ()


def check(data: dict[str, Any], job: Job, kinds: Mapping[str, Kind]) -> Iterator[Fault]:
    """Every fault between the keys of a job, in no set order; ``job`` is what was read of ``data``."""
    shop = data.get("shop")
    dies = {"dies": shop.get("dies")} if isinstance(shop, dict) else {}
    yield from names(dies, ("shop",), "dies")
    for table in kinds:
        yield from names(data, (), table)
    for table, kind in kinds.items():
        for path, item in tables(data, (), table):
            yield from kind.faults(path, item, data)
            if kind.clashes is not None:
                yield from kind.clashes(path, getattr(job, table)[path[-1]])


def dies_of(data: dict[str, Any]) -> list[str]:
    """The names of the shop's dies."""
    shop = data.get("shop")
    dies = {"dies": shop.get("dies")} if isinstance(shop, dict) else {}
    return [die["name"] for _, die in tables(dies, (), "dies") if isinstance(die.get("name"), str)]


def tables(data: dict[str, Any], base: Path, key: str) -> Iterator[tuple[Path, dict[str, Any]]]:
    """The tables of a list of tables with their paths; anything else is passed over."""
    found = data.get(key)
    for index, item in enumerate(found if isinstance(found, list) else ()):
        if isinstance(item, dict):
            yield (*base, key, index), item


def folded(name: str) -> str:
    """A name as two names are compared: blanks and capitals aside."""
    return " ".join(name.split()).casefold()


def given(item: dict[str, Any], keys: tuple[str, ...]) -> list[str]:
    """Those of ``keys`` that an item gives."""
    return [key for key in keys if key in item and not is_blank(item[key])]


def names(data: dict[str, Any], base: Path, key: str) -> Iterator[Fault]:
    """Names of a list of tables that are given twice."""
    first: dict[str, Path] = {}
    for path, item in tables(data, base, key):
        name = item.get("name")
        if not isinstance(name, str) or is_blank(name):
            continue
        before = first.setdefault(folded(name), path)
        if before != path:
            why = f"{shown(name)}: this name is given twice"
            yield Fault((*path, "name"), why, "give each item its own name", before)


def rising(path: Path, figure: Mapping[str, Measure | None]) -> Iterator[Fault]:
    """Low, value and high of a maker's figure by key, in this order: one dimension, rising."""
    got = [(key, m) for key, m in figure.items() if m is not None]
    for (low, a), (high, b) in pairwise(got):
        if dimension(a.unit) != dimension(b.unit):
            yield Fault((*path, high), f"of another dimension than {low}", "give both in units of one dimension")
        elif a.to(b.unit) > float(b.value):
            yield Fault((*path, high), f"{high} is below {low}", "correct the one or the other", (*path, low))
