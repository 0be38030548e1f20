"""Hole: what to drill for a tap, or for a bolt to pass."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tables.part import rows_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic

TABLE = "fasteners/holes"
VERB = "DRILL"
_CLEARANCE = "clearance"


def _hole_topic() -> Topic:
    from gaugeblock.fasteners.ask import HOLE

    return HOLE


def fits_of(thread: str, data: Refdata) -> list[str]:
    """The kinds of hole that are on record for a thread's cell: for its tap, and for a bolt to pass."""
    return list(dict.fromkeys(row["fit"] for row in rows_of(data, TABLE, thread) if not row["standing"]))


@opens(_hole_topic, "thread")
def hole(thread: str, *, fit: str | None = None, data: Refdata | None = None) -> Sheet:
    """The hole to drill for a thread.

    ``thread`` ``3/8-16`` or ``M8``; ``fit`` ``tap drill``, or ``close``, ``normal`` or ``free`` for a bolt to pass.

    Returns a Sheet; its decision is ``none`` for a thread of which no hole is on record. Raises Ambiguous with the
    holes there are when none is named, LookupMiss for what is no thread or no fit.

    >>> hole("M8", fit="tap drill").decision.figure.text
    '6.8'
    """
    data = data or refdata()
    found = keys.thread(thread, data)
    known = fits_of(found.cell, data)
    asked = {"thread": thread, "fit": fit}
    cell = None if fit is None else canonical(data, TABLE, "fit", fit)
    if not known:
        do = "No drill list that was read has this thread. The tap's maker has its drill."
        return Sheet(f"hole for {found.cell}", asked, data, [], [], [], decision=none(VERB, do))
    if cell is not None and cell not in known and cell.startswith(_CLEARANCE):
        known = [k for k in known if k.startswith(_CLEARANCE)] or known
        cell = None
    if cell is None or cell not in known:
        raise Ambiguous(found.cell, "fit", "which hole was not said", known, "name one of these")
    figure = lookup.look_up(TABLE, "hole_diameter", data=data, thread=found.cell, fit=cell)
    return Sheet(f"hole for {found.cell}, {cell}", asked, data, [figure], [], [], decision=use(VERB, figure))
