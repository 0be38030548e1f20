"""Gauge: the wall of a gauge number."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.rules import rules_of

_LENGTH = r"[0-9.] ?(?:in|inch|mm)$"
_TABLE = "tubes/gauges"
_NEAR = 0.2  # of a wall: one that is further from every gauge has none

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic


def _gauge_topic() -> Topic:
    from gaugeblock.tubes.gauge_ask import GAUGE

    return GAUGE


@opens(_gauge_topic, "number")
def gauge(number: str, *, system: str | None = None, data: Refdata | None = None) -> Sheet:
    """The wall that a gauge number means in one system; the other systems' walls are told beside it.

    ``number`` ``16``, ``16 ga`` or ``16 BWG``; or a wall (``.120 in``), of which the nearest gauge is told; ``system``
    ``BWG``, ``sheet steel`` ...
    Raises Ambiguous with every system's wall when none is named, LookupMiss for a number no table has or a wall that
    is thinner or thicker than all of them.

    >>> gauge("16 BWG").figures[0].text
    '0.065'
    """
    data = data or refdata()
    cell = None if system is None else canonical(data, "tubes/gauges", "system", system)
    if re.search(_LENGTH, number):
        return _nearest(number, cell, {"number": number, "system": system}, data)
    wall = keys.gauge_wall(number, cell, data)
    alike = [
        lookup.figure_of(r, data)
        for r in data.table("tubes/gauges").of("wall_thickness")
        if r["gauge"] == wall.key["gauge"] and r["system"] != wall.key["system"] and not r["standing"]
    ]
    cautions = rules_of(data, "gauge numbers")
    if alike:
        told = "; ".join(f"{f.text} {f.unit} {f.key['system']}" for f in alike)
        cautions.append(Caution(f"The same number elsewhere: {told}.", "damage", tuple(f.id for f in alike), "refdata"))
    title = f"gauge {wall.key['gauge']}, {wall.key['system']}"
    return Sheet(title, {"number": number, "system": system}, data, [wall], [], cautions, decision=use("", wall))


def _nearest(typed: str, system: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The gauge whose wall is nearest to one that was given, and by how much it is off."""
    rows = [r for r in data.table(_TABLE).of("wall_thickness") if not r["standing"]]
    if system is None:
        every = tuple(dict.fromkeys(r["system"] for r in rows))
        raise Ambiguous(typed, "system", "each system has its own gauge for a wall", every, "name the system")
    given = keys.size(typed, "number", "tube_wall", data)
    wanted = given.to("m")
    walls = [lookup.figure_of(r, data) for r in rows if r["system"] == system]
    wall = min(walls, key=lambda f: abs(base(f) - wanted))
    off = base(wall) - wanted
    if abs(off) > _NEAR * wanted:
        span = [f"{f.text} {f.unit}" for f in (min(walls, key=base), max(walls, key=base))]
        raise LookupMiss(typed, system, "no gauge of it is near that wall", span, "give the wall itself")
    is_same = abs(off) < 1e-9
    by = units.significant(units.from_base(abs(off), given.unit), 2)
    do = "" if is_same else f"It is {by} {given.unit} {'thicker' if off > 0 else 'thinner'} than {given.text}."
    title = f"gauge nearest to {given.text}, {system}: {wall.key['gauge']}"
    cautions = rules_of(data, "gauge numbers")
    return Sheet(title, asked, data, [wall], [], cautions, decision=use(f"{wall.key['gauge']} GAUGE", wall, do))
