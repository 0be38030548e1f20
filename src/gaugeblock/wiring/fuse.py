"""The fuse of a circuit: the one that carries its load, and the largest that wire and connector allow."""

from __future__ import annotations

from gaugeblock.answer.making import base, derived, stated
from gaugeblock.lookup import look_up

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tables.row import Row
    from gaugeblock.wiring.conductor import Conductor
    from gaugeblock.wiring.keys import Circuit

FUSES = "wiring/fuses"
# Of its fuse a load that lasts takes no more than this: habit.
LASTING = 0.8
_SOURCE = ("distance of fuse from source", "at source impractical")


def fuse_for(of: Circuit, current: Figure, data: Refdata) -> Figure | None:
    """The fuse that was given, else the smallest that is made of which the load, should it last, takes no more than
    habit allows; for a load too large for that the smallest that carries it; None where none is listed.
    """
    if of.fuse is not None:
        return stated(of.fuse, "fuse_rating", "fuse", data)
    every = data.table(FUSES).by_quantity.get("fuse_rating", ())
    rows: list[Row] = []
    for share in (LASTING, 1.0):
        least = base(current) / share * (1 - 1e-9)
        rows = rows or [r for r in every if float(r.cells["value"]) >= least]
    if not rows:
        return None
    best = min(rows, key=lambda r: (float(r.cells["value"]), r.line))
    return look_up(FUSES, "fuse_rating", data=data, fuse=best.cells["fuse"], rating=best.cells["rating"], load="any")


def largest(wire: Conductor, of: Circuit, data: Refdata) -> tuple[Figure, ...]:
    """The largest fuse that wire and connector allow, and the connector's own current; none for a starter's cable."""
    if wire.allowed is None:
        return ()
    connector = stated(of.connector, "connector_current_maximum", "connector", data) if of.connector else None
    inputs = (wire.allowed,) if connector is None else (wire.allowed, connector)
    number = min(base(f) for f in inputs)
    key = wire.allowed.key
    made = derived("fuse_no_larger", "fuse_rating_maximum", number, "A", inputs, data, key=key)
    return (made,) if connector is None else (made, connector)


def distance(data: Refdata) -> Figure:
    """How far from the source a fuse may be, along the wire."""
    subject, case = _SOURCE
    return look_up("wiring/limits", "fuse_distance_maximum", data=data, subject=subject, case=case, service="marine")


def coil(data: Refdata) -> Figure:
    """What the coil of a usual relay draws: all that its switch and the wire to it carry."""
    return look_up("wiring/limits", "coil_current", data=data, subject="ISO relay coil, 12 V", case="any")
