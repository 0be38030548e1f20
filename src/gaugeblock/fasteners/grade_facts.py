"""Grade: what a bolt of a grade or class is guaranteed to stand, and how its head is marked."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure

TABLE = "fasteners/grades"
# Where no size was said: an everyday bolt of the standard.
USUAL = {"SAE": "3/8 in", "ASTM": "3/8 in", "ISO": "10 mm"}
_STRENGTHS = {"tensile": "tensile_strength", "proof": "proof_strength", "yield": "yield_strength"}
_QUANTITIES = (*_STRENGTHS.values(), "head_marking")


def _topic() -> Topic:
    from gaugeblock.fasteners.strength_ask import STRENGTH

    return STRENGTH


@opens(_topic, "grade")
def grade(
    grade: str,
    *,
    size: str | None = None,
    thread: str | None = None,
    load: str | None = None,
    grip: str | None = None,
    shank: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a bolt of a grade or class is guaranteed to stand.

    ``grade`` ``SAE J429 5``, ``grade 8``, ``10.9``; ``size`` its diameter, ``3/8 in`` or ``10 mm``, which are taken and
    named where none is given, for large bolts of some grades are weaker; ``thread`` ``3/8-16`` or ``M10`` for its loads
    in place of its strengths, ``load`` the one that is asked: ``tensile``, which breaks it and is taken where none is
    given, ``proof``, ``clamp``, ``shear`` or ``stretch``, how much longer that clamp makes it over its ``grip``,
    ``60 mm``, with so much plain ``shank`` inside it, ``0 mm``. Without a thread ``load`` names the strength that is
    asked: ``tensile``, ``proof`` or ``yield``, which also of a thread is a strength.

    Returns a Sheet with tensile, proof and yield strength and the marks on the head, as far as the tables have
    them; its decision is the tensile strength, or ``none``; of a thread, its loads. Raises LookupMiss for what is no
    grade or no size of it, InputError for a load or a grip without its thread.

    >>> grade("grade 8").decision.figure.text
    '150'
    """
    data = data or refdata()
    standard, cell = keys.grade(grade, data)
    if thread is not None and load == "yield":  # a bolt is kept under its proof load: none at its yield is printed
        size, thread = f"{keys.thread(thread, data).diameter_m * 1000:.6g} mm", None
    if thread is not None:
        from gaugeblock.fasteners.bolt_load import STRETCH, TENSILE, bolt_load

        if size is not None:
            raise InputError(size, "size", "the thread says its diameter", (), "leave out the size, or the thread")
        if (grip or shank) is not None and load != STRETCH:
            why = "it changes how much a bolt stretches, and no load of it"
            raise InputError(str(grip or shank), "grip" if grip else "shank", why, (), "ask for --load stretch")
        typed = {"grade": grade, "thread": thread, "load": load, "grip": grip, "shank": shank}
        return bolt_load(standard, cell, thread, load or TENSILE, typed, data)
    if (grip or shank) is not None:
        why = "how much a bolt stretches hangs on its thread"
        raise InputError(str(grip or shank), "grip" if grip else "shank", why, (), "say the thread too: 3/8-16, M10")
    if load is not None and load != "shear" and load not in _STRENGTHS:
        raise InputError(load, "load", "a load hangs on the thread", (), "say the thread: 3/8-16, M10")
    at = size or next((usual for name, usual in USUAL.items() if standard.startswith(name)), USUAL["ISO"])
    figures = [f for q in _QUANTITIES if (f := _figure(q, standard, cell, at, data)) is not None]
    asked = {"grade": grade, "size": size}
    title = f"{standard} {cell}, a bolt of {at}"
    asks = _STRENGTHS.get(load or "", _QUANTITIES[0])
    verb = asks.replace("_", " ").upper()
    figures.sort(key=lambda f: f.quantity != asks)  # what is asked stands first
    wanted = next((f for f in figures if f.quantity == asks), None)
    if wanted is None:
        return Sheet(
            title, asked, data, figures, [], [], decision=none(verb, "Its standard has it. No table that was read has.")
        )
    if load == "shear":
        do = f"No table here has it. A designer takes 0.577 of the tensile strength, {wanted.text} {wanted.unit}."
        return Sheet(title, asked, data, figures, [], [], decision=none("SHEAR STRENGTH", do))
    return Sheet(title, asked, data, figures, [], [], decision=use(verb, wanted))


def _figure(quantity: str, standard: str, cell: str, size: str, data: Refdata) -> Figure | None:
    try:
        return lookup.look_up(TABLE, quantity, data=data, standard=standard, grade=cell, size=size)
    except LookupMiss:
        return None
