"""Arc: how much tube a bend takes up, and what to cut for it with its straight legs."""

from __future__ import annotations

from math import radians

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

_TURN = 360  # degrees
_NO_CORNER = 170  # degrees: towards a U the corner runs away
_LEGS = 2
_NAMES = {"radius": "centre_line_radius", "angle": "bend_angle"}


def arc(radius: str, angle: str, *, legs: str | None = None, data: Refdata | None = None) -> Sheet:
    """How much of a straight tube a bend takes up: its arc at the centre line.

    ``radius`` to the centre line (``5-1/2 in``); ``angle`` that the tube turns, over 0 to 360 deg (``90 deg``);
    ``legs`` the straights on either side, each to where the bend starts (``20 in, 20 in``).

    Returns a Sheet whose decision is the developed length, with legs the length to cut. Raises InputError or UnitError
    for what cannot be read. Source: NAVEDTRA 14119, bend allowance; the tube keeps its length at the centre line.

    >>> round(arc("5-1/2 in", "90 deg").decision.figure.typical, 2)
    8.64
    >>> round(arc("6 in", "90 deg", legs="20 in, 20 in").decision.figure.typical, 2)
    49.42
    """
    data = data or refdata()
    asked = {"radius": radius, "angle": angle, "legs": legs}
    straights = _straights(legs, data)
    read = {
        "radius": keys.size(radius, "radius", _NAMES["radius"], data),
        "angle": read_positive(angle, "angle", "angle"),
    }
    turned = read["angle"].to("deg")
    if turned > _TURN:
        raise InputError(read["angle"].text, "angle", "a bend is over 0 to 360 deg", (), "give the angle that it turns")
    title = f"bend of {read['angle'].text} on a {read['radius'].text} radius"
    doubts = {
        name: did_you_mean(f"{measure.text} is no usual {name} of a bend", ())
        for name, measure in read.items()
        if not is_plausible(measure, _NAMES[name], data)
    }
    if doubts:
        checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=INFORM) for k, said in doubts.items()]
        questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
        decision = none("", next(iter(doubts.values())))
        return Sheet(title, asked, data, [], checks, (), decision=decision, questions=questions)
    given = tuple(stated(read[name], quantity, name, data) for name, quantity in _NAMES.items())
    length = calc.developed_length(
        units.to_base(float(read["radius"].value), read["radius"].unit), read["angle"].to("rad")
    )
    unit = "in" if read["radius"].unit in ("in", "ft") else "mm"
    key = {name: measure.text for name, measure in read.items()}
    conditions = "arc at the centre line"
    number = units.from_base(length, unit)
    made = derived("developed_length", "developed_length", number, unit, given, data, key=key, conditions=conditions)
    beside = _setback(turned, unit, given, key, data)
    if straights:
        return _to_cut(made, given, straights, asked, data)
    do = "From the first tangent to the last, at the centre line. What the bender must hold on either side comes to it."
    return Sheet(title, asked, data, [made, *beside, *given], [], (), decision=use("LENGTH IN THE BEND", made, do))


def _setback(turned: float, unit: str, given: tuple[Figure, ...], key: dict[str, str], data: Refdata) -> list[Figure]:
    """From the start of the bend to the corner that its straights would make; none of a bend that makes no corner."""
    if turned >= _NO_CORNER:
        return []
    exact = units.from_base(calc.setback(base(given[0]), radians(turned)), unit)
    conditions = "from where the bend starts to the corner of the two centre lines"
    return [derived("setback_tube", "setback", exact, unit, given, data, key=key, conditions=conditions)]


def _straights(legs: str | None, data: Refdata) -> tuple[Figure, ...]:
    """The straight legs of a bend, each to where the bend starts; InputError for more than two."""
    if legs is None:
        return ()
    texts = [text.strip() for text in legs.split(",") if text.strip()]
    if not 0 < len(texts) <= _LEGS:
        raise InputError(legs[:60] or "(blank)", "legs", "one bend has one or two", (), 'write them as "20 in, 12 in"')
    return tuple(
        stated(keys.size(text, "legs", "straight", data), "straight", f"leg {n}", data)
        for n, text in enumerate(texts, 1)
    )


def _to_cut(
    bend: Figure,
    given: tuple[Figure, ...],
    straights: tuple[Figure, ...],
    asked: dict[str, str | None],
    data: Refdata,
) -> Sheet:
    """The Sheet of the length to cut: the straight legs and the arc."""
    length = units.from_base(sum(map(base, (*straights, bend))), bend.unit)
    text = " and ".join(f"{one.text} {one.unit}" for one in straights)
    made = derived(
        "tube_cut_length",
        "cut_length",
        length,
        bend.unit,
        (*straights, bend),
        data,
        key={**bend.key, "legs": asked["legs"] or ""},
        conditions=f"legs of {text} to where the bend starts, and the arc between them",
    )
    do = "Nothing is in it to trim, or for the bender to hold: add what yours needs."
    title = f"bend of {bend.key['angle']} on a {bend.key['radius']} radius, legs {text}"
    return Sheet(title, asked, data, [made, bend, *straights, *given], [], (), decision=use("CUT", made, do))
