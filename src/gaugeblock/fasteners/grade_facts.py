"""Grade: what a bolt of a grade or class is guaranteed to stand, and how its head is marked."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure

TABLE = "fasteners/grades"
VERB = "TENSILE STRENGTH"
# Where no size was said: an everyday bolt of the standard.
USUAL = {"SAE": "3/8 in", "ASTM": "3/8 in", "ISO": "10 mm"}
_QUANTITIES = ("tensile_strength", "proof_strength", "yield_strength", "head_marking")


def _topic() -> Topic:
    from gaugeblock.fasteners.thread_ask import STRENGTH

    return STRENGTH


@opens(_topic, "grade")
def grade(grade: str, *, size: str | None = None, data: Refdata | None = None) -> Sheet:
    """What a bolt of a grade or class is guaranteed to stand.

    ``grade`` ``SAE J429 5``, ``grade 8``, ``10.9``; ``size`` its diameter, ``3/8 in`` or ``10 mm``, which are taken and
    named where none is given, for large bolts of some grades are weaker.

    Returns a Sheet with tensile, proof and yield strength and the marks on the head, as far as the tables have
    them; its
    decision is the tensile strength, or ``none``. Raises LookupMiss for what is no grade or no size of it.

    >>> grade("grade 8").decision.figure.text
    '150'
    """
    data = data or refdata()
    standard, cell = keys.grade(grade, data)
    at = size or next((usual for name, usual in USUAL.items() if standard.startswith(name)), USUAL["ISO"])
    figures = [f for q in _QUANTITIES if (f := _figure(q, standard, cell, at, data)) is not None]
    asked = {"grade": grade, "size": size}
    title = f"{standard} {cell}, a bolt of {at}"
    wanted = next((f for f in figures if f.quantity == _QUANTITIES[0]), None)
    if wanted is None:
        return Sheet(
            title, asked, data, figures, [], [], decision=none(VERB, "Its standard has it. No table that was read has.")
        )
    return Sheet(title, asked, data, figures, [], [], decision=use(VERB, wanted))


def _figure(quantity: str, standard: str, cell: str, size: str, data: Refdata) -> Figure | None:
    try:
        return lookup.look_up(TABLE, quantity, data=data, standard=standard, grade=cell, size=size)
    except LookupMiss:
        return None
