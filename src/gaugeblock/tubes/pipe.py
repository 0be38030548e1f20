"""Pipe: the true OD of a pipe size, its wall and bore."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.rules import rules_of

# What may be asked of a pipe -> its quantity.
TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

FACTS = {
    "outside diameter": "outside_diameter",
    "wall": "wall_thickness",
    "bore": "inside_diameter",
    "mass": "mass_per_length",
}


def pipe(
    nps: str,
    *,
    schedule: str | None = None,
    fact: str = "outside diameter",
    tube: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The true OD of a pipe size, its wall, bore and mass when the schedule is named.

    ``nps`` is the nominal size (``1 1/2``), ``schedule`` its wall (``40``).
    ``fact`` is what is asked first: ``outside diameter``, ``wall``, ``bore`` or ``mass``; ``tube`` the outside diameter
    of a tube (``48 mm``), of which is told how much it is off. Raises LookupMiss with the
    nearest sizes or schedules, InputError for no fact.

    >>> pipe("1 1/2", schedule="40").figures[0].text
    '1.9'
    """
    data = data or refdata()
    asked = {"nps": nps, "schedule": schedule, "fact": fact, "tube": tube}
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a pipe is called so", tuple(FACTS), "ask for one of these")
    nps = keys.pipe_size(nps)
    od = lookup.look_up("tubes/pipe_sizes", "outside_diameter", data=data, nps=nps)
    figures, checks = [od], []
    if schedule is None:
        names = lookup.choices("tubes/pipe_sizes", "schedule", data=data, nps=od.key["nps"])
        text = f"the schedule is not given: {', '.join(n for n in names if n != 'any')}"
        checks.append(Check("wall of the pipe", CANNOT_TELL, text, bears=INFORM))
    else:
        wall = lookup.look_up("tubes/pipe_sizes", "wall_thickness", data=data, nps=nps, schedule=schedule)
        bore = units.from_base(calc.bore(base(od), base(wall)), od.unit)
        figures += [
            wall,
            derived(
                "tube_bore",
                "inside_diameter",
                bore,
                od.unit,
                (od, wall),
                data,
                key=wall.key,
                conditions="by nominal sizes",
            ),
        ]
        mass = lookup.look_up_or_none("tubes/pipe_sizes", "mass_per_length", data=data, nps=nps, schedule=schedule)
        figures += [] if mass is None else [mass]
    cautions = rules_of(data, "pipe and tube", "pipe bender and tube")
    title = f"pipe {od.key['nps']}{f', schedule {schedule}' if schedule else ''}: not a {od.key['nps']} in tube"
    wanted = next((f for f in figures if f.quantity == FACTS[fact]), None)
    if wanted is None:
        do = f"The {fact} hangs on the schedule: name it." if schedule is None else f"No table has its {fact}."
        return Sheet(title, asked, data, figures, checks, cautions, decision=none("", do))
    do = "" if tube is None else _beside(tube, od)
    figures = [wanted, *(f for f in figures if f is not wanted)]
    return Sheet(title, asked, data, figures, checks, cautions, decision=use("", wanted, do))


def _beside(tube: str, od: Figure) -> str:
    """By how much a tube is larger or smaller than the pipe."""
    other = read_positive(tube, "length", "tube")
    off = units.to_base(float(other.value), other.unit) - base(od)
    if abs(off) < _ALIKE:
        return f"A tube of {other.text} is of the same outside diameter."
    by = " or ".join(f"{units.significant(units.from_base(abs(off), unit), 2)} {unit}" for unit in ("mm", "in"))
    is_far = abs(off) > _FAR
    then = " Its die does not fit the tube." if is_far else " Measure both before one goes into the other's die."
    return f"A tube of {other.text} is {by} {'larger' if off > 0 else 'smaller'}.{then}"


_ALIKE, _FAR = 5e-6, 1e-3  # m: the same by any calliper; more than any die gives way
