"""The answer ``tyre``: what a size code says of a tyre: its diameter, its turns in a mile, its width."""

from __future__ import annotations

import math

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.tyre import by_size
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

# What may be asked of a size -> its quantity.
FACTS = {
    "diameter": "tyre_diameter",
    "revolutions": "tyre_revolutions",
    "circumference": "tyre_circumference",
    "width": "tyre_section_width",
}
VERBS = {
    "diameter": "DIAMETER",
    "revolutions": "TURNS A MILE",
    "circumference": "WAY ROUND",
    "width": "SECTION WIDTH",
}


def tyre(size: str, *, fact: str = "diameter", data: Refdata | None = None) -> Sheet:
    """What a tyre measures by its size.

    ``size`` its code (``205/55R16``, ``31x10.50R15``) or its outside diameter (``28 in``); ``fact`` what is asked:
    ``diameter``, ``revolutions``, ``circumference`` or ``width``.

    Returns a Sheet: the outside diameter of the new tyre, free of load, with all else that its size says; the decision
    is ``none`` where the size does not say the fact. Raises InputError for what is no size of a tyre, or no fact.

    >>> round(tyre("205/55R16").decision.figure.typical, 1)
    24.9
    """
    data = data or refdata()
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a tyre's size is called so", tuple(FACTS), "ask for one of these")
    found = by_size(size, data)
    asked = {"size": size, "fact": fact}
    figures = [found.below[-1], found.turns, *reversed(found.below[:-1])]
    if fact == "circumference":
        figures.insert(0, _way_round(found.below[-1], size, data))
    title = f"tyre {size}"
    if not all(_is_usual(f, data) for f in figures):
        said = did_you_mean(f"{size} makes a tyre that no car has", ())
        check = Check("size as typed", CANNOT_TELL, said, subject="size", bears=ASK)
        question = Question(FILL_IN, said, "size", (check.name,))
        return Sheet(title, asked, data, figures, [check], [], decision=none(VERBS[fact], said), questions=[question])
    wanted = next((f for f in figures if f.quantity == FACTS[fact]), None)
    if wanted is None:
        return Sheet(
            title, asked, data, figures, [], [], decision=none(VERBS[fact], f"The size {size} does not say it.")
        )
    ordered = [wanted, *(f for f in figures if f is not wanted)]
    if fact == "width":
        return Sheet(title, asked, data, ordered, [], [], decision=use(VERBS[fact], wanted))
    do = "New and free of load. Makers' tyres of one size differ by a few per cent, and a loaded tyre stands lower."
    return Sheet(title, asked, data, ordered, [], [], decision=use(VERBS[fact], wanted, do))


def _way_round(diameter: Figure, size: str, data: Refdata) -> Figure:
    """The way round a tyre, in the unit of its diameter."""
    number = math.pi * diameter.typical
    return derived(
        "tyre_circumference", "tyre_circumference", number, diameter.unit, (diameter,), data, key={"tyre": size}
    )


def _is_usual(figure: Figure, data: Refdata) -> bool:
    """Whether a tyre of a car measures so."""
    span = plausible_range(figure.quantity, data)
    return span is None or span[0] <= base(figure) <= span[1]
