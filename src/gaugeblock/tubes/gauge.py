"""Gauge: the wall of a gauge number."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.rules import rules_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic


def _gauge_topic() -> Topic:
    from gaugeblock.tubes.ask import GAUGE

    return GAUGE


@opens(_gauge_topic, "number")
def gauge(number: str, *, system: str | None = None, data: Refdata | None = None) -> Sheet:
    """The wall that a gauge number means in one system; the other systems' walls are told beside it.

    ``number`` ``16``, ``16 ga`` or ``16 BWG``; ``system`` ``BWG``, ``sheet steel`` ...
    Raises Ambiguous with every system's wall when none is named, LookupMiss for a number no table has.

    >>> gauge("16 BWG").figures[0].text
    '0.065'
    """
    data = data or refdata()
    cell = None if system is None else canonical(data, "tubes/gauges", "system", system)
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
