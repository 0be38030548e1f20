"""Thread: its pitch, its diameters and the area that carries."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import InputError
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure

TABLE = "fasteners/threads"
# What may be asked of a thread -> the quantities that have it, the first there is.
FACTS = {
    "pitch": ("pitch", "threads_per_inch"),
    "stress area": ("tensile_stress_area",),
    "root area": ("minor_diameter_area",),
    "diameter": ("major_diameter",),
}
VERBS = {"pitch": "PITCH", "stress area": "STRESS AREA", "root area": "ROOT AREA", "diameter": "OUTSIDE DIAMETER"}


def _topic() -> Topic:
    from gaugeblock.fasteners.thread_ask import FACT

    return FACT


@opens(_topic, "thread")
def thread(thread: str, *, fact: str = "pitch", data: Refdata | None = None) -> Sheet:
    """The pitch of a thread, its diameter and the area that carries.

    ``thread`` ``3/8-16`` or ``M8``, which is coarse; ``fact`` what is asked: ``pitch``, ``stress area``, ``root area``
    or ``diameter``.

    Returns a Sheet whose other figures are all that the tables have of the thread; its decision is ``none`` where they
    lack the fact. Raises Ambiguous for a bare size in inches, LookupMiss for what is no thread, InputError for no fact.

    >>> thread("M10").decision.figure.text
    '1.5'
    """
    data = data or refdata()
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a thread is called so", tuple(FACTS), "ask for one of these")
    found = keys.thread(thread, data)
    asked = {"thread": thread, "fact": fact}
    figures = _figures(found.cell, data)
    wanted = next((f for q in FACTS[fact] for f in figures if f.quantity == q), None)
    title = f"thread {found.cell}"
    if wanted is None:
        do = f"No table that was read has the {fact} of {found.cell}."
        return Sheet(title, asked, data, figures, [], [], decision=none(VERBS[fact], do))
    verb = "THREADS PER INCH" if wanted.quantity == "threads_per_inch" else VERBS[fact]
    figures = [wanted, *(f for f in figures if f is not wanted)]
    return Sheet(title, asked, data, figures, [], [], decision=use(verb, wanted))


def _figures(cell: str, data: Refdata) -> list[Figure]:
    """All that the tables have of a thread."""
    quantities = dict.fromkeys(q for names in FACTS.values() for q in names)
    found = (lookup.look_up_or_none(TABLE, q, data=data, thread=cell) for q in quantities)
    return [f for f in found if f is not None]
