"""Drill: the diameter of a twist drill by its number or its letter, and the drills that come nearest to a hole."""

from __future__ import annotations

import re
from fractions import Fraction
from math import ceil, floor

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    pass

TABLE, QUANTITY = "fasteners/drills", "drill_diameter"
_INCH, _MM = 0.0254, 0.001
_SAME = 2e-7  # m: a drill so near to a hole is the drill of it
# Drills are sold by the 64th of an inch to one inch, and by the tenth of a millimetre to 14 mm, then by the half.
_PARTS, _LARGEST_PART = 64, 1
_TENTHS, _FINE_MM, _COARSE_MM = 10, 14.0, 2
_MOST_MM = 32.0


def drill(name: str | None = None, *, size: str | None = None, data: Refdata | None = None) -> Sheet:
    """The diameter of a twist drill, or the drills that come nearest to a size.

    ``name`` a number or a letter, ``#7``, ``29``, ``Q``; or ``size`` a diameter, ``8.78 mm``, for the drills next to
    it.

    Returns a Sheet whose decision is the diameter, with the neighbours in fractions and millimetres in its sentence;
    of a size it is the next drill of the number and letter sizes, or ``none`` where it is larger or smaller than all of
    these. Raises LookupMiss for what is no drill, InputError where not one of both was given. Source of the diameters:
    ASME B94.11M as drill charts quote it; fractions go by the 64th of an inch and millimetres by the tenth, as sold.

    >>> drill("#7").decision.figure.text, drill("Q").decision.figure.text
    ('0.2010', '0.332')
    """
    data = data or refdata()
    asked = {"drill": name, "size": size}
    if (name is None) == (size is None):
        said = (
            "neither a drill nor a size was given"
            if name is None
            else f"{size} is asked too, and they are two questions"
        )
        raise InputError(name or "drill", "drill", said, (), "give one of both: #7, Q, or a size as 8.78 mm")
    if name is not None:
        cell = cell_of(name, data)
        figure = lookup.look_up(TABLE, QUANTITY, data=data, drill=cell)
        beside = (fraction_near(base(figure)), millimetres_near(base(figure)))
        do = f"Beside it: {'; '.join(one for one in beside if one)}."
        return Sheet(f"drill {called(cell)}", asked, data, [figure], [], [], decision=use("DIAMETER", figure, do))
    assert size is not None
    measure = read_positive(size, "length", "size")
    wanted = stated(measure, QUANTITY, "size", data)
    title = f"drills next to {measure.text}"
    do = f"{nearest(base(wanted), data)}."
    found = _named_near(base(wanted), data)
    if found is None:
        do = f"No number and no letter drill comes near it. {do}"
        return Sheet(title, asked, data, [wanted], [], [], decision=none("DIAMETER", do))
    figure = lookup.look_up(TABLE, QUANTITY, data=data, drill=found)
    return Sheet(title, asked, data, [figure, wanted], [], [], decision=use(called(found).upper(), figure, do))


def cell_of(name: str, data: Refdata) -> str:
    """The drill as its table has it: ``#7`` of ``7``, ``no 7`` and ``number 7``, ``Q`` of ``letter q``; LookupMiss for
    none.
    """
    cells = list(data.table(TABLE).column("drill").values())
    text = re.sub(r"^(?:number|no\.?|num\.?|letter|drill|#) ?", "", name.strip().casefold())
    cell = f"#{text}" if text.isdigit() else text.upper()
    if cell not in cells:
        raise LookupMiss(
            name, "drill", "no drill of this name", ("#1", "#80", "A", "Z"), "numbers go to 80, letters to Z"
        )
    return cell


def called(cell: str) -> str:
    """A drill as people call it: ``number 7``, ``letter Q``."""
    return f"number {cell[1:]}" if cell.startswith("#") else f"letter {cell}"


def nearest(metres: float, data: Refdata) -> str:
    """The drills that come nearest to a hole, those in inches the nearest first, in a sentence without its stop:
    ``Drills next to it: letter Q (0.332 in); 21/64 in (0.3281 in); 8.4 or 8.5 mm``.
    """
    name = _named_near(metres, data)
    inches = []
    if name is not None:
        size = _size_of(name, data)
        inches.append((abs(size - metres), f"{called(name)} ({_inches(size)})"))
    if fraction_near(metres):
        inches.append((abs(_part(metres) * _INCH - metres), fraction_near(metres)))
    told = (*(said for _, said in sorted(inches)), millimetres_near(metres))
    return f"Drills next to it: {'; '.join(one for one in told if one)}"


def _named_near(metres: float, data: Refdata) -> str | None:
    """The nearest of the number and letter drills; None beyond the ends of them."""
    sizes = {row["drill"]: _size_of(row["drill"], data) for row in data.table(TABLE).of(QUANTITY)}
    if not min(sizes.values()) - _SAME <= metres <= max(sizes.values()) + _SAME:
        return None
    return min(sizes, key=lambda cell: abs(sizes[cell] - metres))


def _size_of(cell: str, data: Refdata) -> float:
    return base(lookup.look_up(TABLE, QUANTITY, data=data, drill=cell))


def fraction_near(metres: float) -> str:
    """The nearest 64th of an inch, with its decimals; blank over an inch, or where it is not near."""
    part = _part(metres)
    return f"{part} in ({_inches(float(part) * _INCH)})" if 0 < part <= _LARGEST_PART else ""


def _part(metres: float) -> Fraction:
    """So many 64ths of an inch, the nearest."""
    return Fraction(round(metres / _INCH * _PARTS), _PARTS)


def millimetres_near(metres: float) -> str:
    """The next smaller and larger drill in millimetres, or the one that it is."""
    mm = metres / _MM
    if mm > _MOST_MM:
        return ""
    steps = _TENTHS if mm < _FINE_MM else _COARSE_MM
    low, high = floor(mm * steps + 1e-6) / steps, ceil(mm * steps - 1e-6) / steps
    return f"{low:g} mm" if low == high else f"{low:g} or {high:g} mm"


def _inches(metres: float) -> str:
    return f"{metres / _INCH:.4f}".rstrip("0") + " in"
