"""The answer ``offset``: two equal bends that carry a tube over, or up and across, and how far apart they are."""

from __future__ import annotations

from math import cos, radians, sin

from gaugeblock import units
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

VERB = "BETWEEN BENDS"
_MOST = 90  # degrees: over a right angle it runs back
# What is typed -> dimension and quantity.
_READ = {
    "rise": ("length", "rise"),
    "across": ("length", "rise"),
    "angle": ("angle", "bend_angle"),
    "radius": ("length", "centre_line_radius"),
}


def offset(
    rise: str, angle: str, *, across: str | None = None, radius: str | None = None, data: Refdata | None = None
) -> Sheet:
    """How far apart the two equal bends of an offset are, along the tube.

    ``rise`` is how far the tube is carried over (``4 in``), ``across`` how far to the side besides (a rolling offset);
    ``angle`` of each bend, over 0 to 90 deg; ``radius`` of the die to the centre line, for the marks on the stick.

    Returns a Sheet: without a radius from corner to corner, where the straights meet; with one from the start of a
    bend to the start of the next, as it is marked. Raises InputError or UnitError for what cannot be read, and for
    bends that do not fit between. Source: the sine; the developed length as ``arc``.

    >>> round(offset("4 in", "30 deg").decision.figure.typical, 6)
    8.0
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"rise": rise, "across": across, "angle": angle, "radius": radius}
    read = {key: read_positive(typed, _READ[key][0], key) for key, typed in asked.items() if typed}
    title = f"offset of {read['rise'].text} with two bends of {read['angle'].text}"
    if read["angle"].to("deg") > _MOST + 1e-9:
        why = "an offset has bends of 90 deg at most"
        raise InputError(read["angle"].text, "angle", why, (), "give the angle of one bend")
    doubts = {
        key: did_you_mean(f"{measure.text} is no usual {key}", ())
        for key, measure in read.items()
        if not is_plausible(measure, _READ[key][1], data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    given = {key: stated(measure, _READ[key][1], key, data) for key, measure in read.items()}
    unit = "in" if read["rise"].unit in ("in", "ft") else "mm"
    turn, key = radians(read["angle"].to("deg")), {k: v for k, v in asked.items() if v}
    carried = [given["rise"], *([given["across"]] if across else [])]
    true = calc.rolling_offset(base(given["rise"]), base(given["across"])) if across else base(given["rise"])
    corners = calc.offset_distance(true, turn)
    rule = "offset_travel_rolling" if across else "offset_travel"
    said = "from corner to corner, where the straights would meet"
    travel = derived(
        rule,
        "offset_travel",
        units.from_base(corners, unit),
        unit,
        [*carried, given["angle"]],
        data,
        key=key,
        conditions=said,
    )
    ahead = units.from_base(corners * cos(turn), unit)
    run = derived("offset_run", "offset_run", ahead, unit, [travel, given["angle"]], data, key=key)
    if "radius" not in given:
        do = f"{capital(said)}. Say the die's radius for the marks on the stick."
        figures = [travel, run, *given.values()]
        return Sheet(title, asked, data, figures, [], (), decision=use(VERB, travel, do))
    back = calc.setback(base(given["radius"]), turn)
    straight = units.from_base(corners - 2 * back, unit)
    if straight < 0:
        least = units.significant(units.from_base(2 * back * sin(turn), unit), 3)
        why = f"the two bends run into one another: {least} {unit} or more is needed with this die"
        raise InputError(read["rise"].text, "rise", why, (), "use a smaller radius or a smaller angle")
    apart = corners - 2 * back + calc.developed_length(base(given["radius"]), turn)
    marks = derived(
        "offset_marks",
        "offset_marks",
        units.from_base(apart, unit),
        unit,
        [travel, given["radius"], given["angle"]],
        data,
        key=key,
        conditions="on the straight stick, from the start of one bend to the start of the next",
    )
    do = (
        f"On the straight stick, from the start of one bend to the start of the next; {units.significant(straight, 3)}"
        f" {unit} of it is straight. From corner to corner it is {number_only(travel, data)}. Springback is the die's."
    )
    return Sheet(title, asked, data, [marks, travel, run, *given.values()], [], (), decision=use(VERB, marks, do))
