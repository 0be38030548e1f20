"""The answer ``cope``: how deep a tube's end is coped to sit on another tube, and with which hole saw."""

from __future__ import annotations

from math import pi, radians

from gaugeblock import units
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.cope import cope_depth
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

VERB = "COPE DEPTH"
_SQUARE, _LEAST = 90, 15  # degrees: under that a hole saw runs off


def cope(od: str, onto: str, *, angle: str = "90 deg", data: Refdata | None = None) -> Sheet:
    """How deep the end of a tube is coped, from its longest point to its shortest along the tube, at its outside.

    ``od`` is the tube that is coped (``1-1/2 in``), ``onto`` the one that it sits on, no smaller; ``angle`` between
    their axes, 15 to 90 deg.

    Returns a Sheet. Raises InputError or UnitError for what cannot be read and for a tube that is larger than the one
    it sits on. Source: elementary geometry, two round tubes whose axes meet.

    >>> round(cope("1-1/2 in", "1-3/4 in").decision.figure.typical, 3)
    0.424
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"od": od, "onto": onto, "angle": angle}
    read = {k: read_positive(str(asked[k]), "length", k) for k in ("od", "onto")}
    turn = read_positive(angle, "angle", "angle")
    title = f"cope of {read['od'].text} onto {read['onto'].text} at {turn.text}"
    if not _LEAST <= turn.to("deg") <= _SQUARE + 1e-9:
        why = f"an angle between two tubes is {_LEAST} to {_SQUARE} deg"
        raise InputError(turn.text, "angle", why, (), "give the sharper angle between their axes")
    doubts = {
        key: did_you_mean(f"{measure.text} is no usual tube", ())
        for key, measure in read.items()
        if not is_plausible(measure, "outside_diameter", data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    own, other = (stated(read[k], "outside_diameter", k, data) for k in ("od", "onto"))
    if base(own) > base(other) * (1 + 1e-9):
        why = "larger than the tube it sits on: it would hang over"
        raise InputError(read["od"].text, "od", why, (), "cope the smaller tube onto the larger one")
    at = radians(turn.to("deg"))
    steps = [cope_depth(base(other) / 2, base(own) / 2, at, 0.0, pi * n / 720) for n in range(721)]
    unit = "in" if read["od"].unit in ("in", "ft") else "mm"
    number = units.from_base(max(steps) - min(steps), unit)
    given = [own, other, stated(turn, "bend_angle", "angle", data)]
    key = {k: str(v) for k, v in asked.items()}
    made = derived("cope_depth", "cope_depth", number, unit, given, data, key=key)
    saw = number_only(other, data)
    do = (
        f"From the longest point to the shortest, along the tube. The hole saw is of {saw}, the tube that it sits on,"
        f" and goes in at {turn.text}."
    )
    return Sheet(title, asked, data, [made, *given], [], (), decision=use(VERB, made, do))
