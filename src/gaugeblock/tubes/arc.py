"""Arc: how much tube a bend takes up, where it starts, and what to cut for it with its straight legs."""

from __future__ import annotations

from math import radians

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.listed import items
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

_TURN = 360  # degrees
_NO_CORNER = 170  # degrees: towards a U the corner runs away
_SQUARE = 90
_LEGS = 2
_MOST_LEGS = 7
FACTS = ("length", "setback", "start", "gain")
_NAMES = {"radius": "centre_line_radius", "angle": "bend_angle"}


def arc(
    radius: str,
    angle: str,
    *,
    legs: str | None = None,
    corner: str | None = None,
    bends: str | None = None,
    fact: str = "length",
    data: Refdata | None = None,
) -> Sheet:
    """How much of a straight tube a bend takes up: its arc at the centre line.

    ``radius`` to the centre line (``5-1/2 in``); ``angle`` that the tube turns, over 0 to 360 deg (``90 deg``);
    ``legs`` the straights on either side, each to where the bend starts (``20 in, 20 in``), or ``corner`` the same to
    the corner, where their centre lines cross; of several equal bends every straight in order, a hoop of two is
    ``18 in, 40 in, 18 in``; ``bends`` how many there are, where no legs say it; ``fact`` what is wanted first:
    ``length``, ``setback``, ``start`` or ``gain``, which is what the tube is shorter than its two legs to the corner.

    Returns a Sheet whose decision is the developed length, with two legs or more the length to cut, with one leg to the
    corner
    where the bend starts; or the ``fact``. Raises InputError or UnitError for what cannot be read. Source: NAVEDTRA
    14119, bend allowance; the tube keeps its length at the centre line.

    >>> round(arc("5-1/2 in", "90 deg").decision.figure.typical, 2)
    8.64
    >>> round(arc("6 in", "90 deg", legs="20 in, 20 in").decision.figure.typical, 2)
    49.42
    >>> round(arc("6 in", "90 deg", corner="20 in").decision.figure.typical, 6)
    14.0
    """
    data = data or refdata()
    asked = {"radius": radius, "angle": angle, "legs": legs, "corner": corner, "bends": bends, "fact": fact}
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a bend is called so", FACTS, "ask for one of these")
    if legs is not None and corner is not None:
        raise InputError(corner, "corner", "legs to where the bend starts were given too", (), "give one of the two")
    straights, to_corner = _straights(legs, "legs", data), _straights(corner, "corner", data)
    count = _count(bends, max(len(straights), len(to_corner)))
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
    if to_corner:
        straights = _before_the_bend(to_corner, beside, title, data)
    if fact == "gain":
        return _with_gain(title, asked, [made, *beside, *given], data)
    if fact == "setback":
        return _with_setback(title, asked, [made, *beside, *given], data)
    start = straights[0] if straights and (fact == "start" or (to_corner and len(straights) < _LEGS)) else None
    if start is not None:
        do = "From the end of the tube to where the bend starts. Your die may want its mark before that."
        figures = [start, made, *beside, *given]
        return Sheet(f"{title}, corner {corner}", asked, data, figures, [], (), decision=use("BEND STARTS", start, do))
    if fact == "start":
        raise InputError(fact, "fact", "no leg was given", (), 'give the leg to the corner: --corner "20 in"')
    if straights or count > 1:
        return _to_cut(made, (*beside, *given), straights, count, asked, data)
    do = "From the first tangent to the last, at the centre line. What the bender must hold on either side comes to it."
    return Sheet(title, asked, data, [made, *beside, *given], [], (), decision=use("LENGTH IN THE BEND", made, do))


def _with_setback(title: str, asked: dict[str, str | None], figures: list[Figure], data: Refdata) -> Sheet:
    """The Sheet of the setback, where the bend makes a corner."""
    found = next((f for f in figures if f.quantity == "setback"), None)
    if found is None:
        do = f"A bend of {_NO_CORNER} deg and more makes no corner, and so has no setback. Use its length."
        return Sheet(title, asked, data, figures, [], (), decision=none("", do))
    do = "From where the bend starts to the corner of the two centre lines. Take it from the leg to mark the start."
    turned = units.from_base(base(next(f for f in figures if f.quantity == "bend_angle")), "deg")
    if turned > _SQUARE + 1e-9:
        do += f" The tube turns {turned:g} deg; its legs then stand {_SQUARE * 2 - turned:g} deg apart."
    figures = [found, *(f for f in figures if f is not found)]
    return Sheet(title, asked, data, figures, [], (), decision=use("SETBACK", found, do))


def _with_gain(title: str, asked: dict[str, str | None], figures: list[Figure], data: Refdata) -> Sheet:
    """The Sheet of what the bend takes less than its legs to the corner, where it makes a corner."""
    back = next((f for f in figures if f.quantity == "setback"), None)
    if back is None:
        do = f"A bend of {_NO_CORNER} deg and more makes no corner, and so has no gain. Use its length."
        return Sheet(title, asked, data, figures, [], (), decision=none("", do))
    arc = figures[0]
    given = tuple(next(f for f in figures if f.quantity == name) for name in _NAMES.values())
    number = units.from_base(calc.bend_gain(base(given[0]), base(given[1])), arc.unit)
    found = derived("bend_gain", "bend_gain", number, arc.unit, given, data, key=arc.key)
    do = "Add both legs to the corner of the two centre lines, take this off, and cut the tube so long."
    return Sheet(title, asked, data, [found, *figures], [], (), decision=use("TAKE OFF", found, do))


def _before_the_bend(
    corners: tuple[Figure, ...], setback: list[Figure], title: str, data: Refdata
) -> tuple[Figure, ...]:
    """The straight that each leg to the corner leaves before the bend starts."""
    if not setback:
        why = f"a bend of {_NO_CORNER} deg and more makes no corner"
        raise InputError(title, "corner", why, (), "give the legs to where the bend starts")
    back, made = setback[0], []
    for n, leg in enumerate(corners, 1):
        ends = 2 if 1 < n < len(corners) else 1  # between two bends it loses both setbacks
        left = base(leg) - ends * base(back)
        if left < 0:
            short = (
                f"the bend starts {units.significant(back.typical, 3)} {back.unit} before"
                f" {'each' if ends > 1 else 'the'} corner"
            )
            raise InputError(f"{leg.text} {leg.unit}", "corner", short, (), "take a longer leg or a smaller radius")
        number, key = units.from_base(left, back.unit), {**back.key, "corner": f"{leg.text} {leg.unit}"}
        text = f"leg {n}, to where the bend starts"
        inputs = (leg, back)
        made.append(
            derived("straight_between_bends", "straight", number, back.unit, inputs, data, key=key, conditions=text)
        )
    return tuple(made)


def _setback(turned: float, unit: str, given: tuple[Figure, ...], key: dict[str, str], data: Refdata) -> list[Figure]:
    """From the start of the bend to the corner that its straights would make; none of a bend that makes no corner."""
    if turned >= _NO_CORNER:
        return []
    exact = units.from_base(calc.setback(base(given[0]), radians(turned)), unit)
    conditions = "from where the bend starts to the corner of the two centre lines"
    return [derived("setback_tube", "setback", exact, unit, given, data, key=key, conditions=conditions)]


def _straights(legs: str | None, name: str, data: Refdata) -> tuple[Figure, ...]:
    """The straights of a bend or of several, in order, as given under a name; InputError for none or too many."""
    if legs is None:
        return ()
    texts = [text for text in items(legs, name) if text]
    if not 0 < len(texts) <= _MOST_LEGS:
        why = f"one bend has one or two, and {_MOST_LEGS} are the most"
        raise InputError(legs[:60] or "(blank)", name, why, (), 'write them as "20 in, 12 in"')
    quantity = "straight" if name == "legs" else "apex_distance"
    return tuple(
        stated(keys.size(text, name, quantity, data), quantity, f"leg {n}", data) for n, text in enumerate(texts, 1)
    )


def _count(bends: str | None, legs: int) -> int:
    """How many equal bends there are; InputError where the straights say another number."""
    of_legs = legs - 1 if legs > _LEGS else 1
    if bends is None:
        return of_legs
    count = units.whole_number(bends)
    if count is None or not 0 < count < _MOST_LEGS:
        raise InputError(bends, "bends", "not a number of bends", (), f"give a whole number, up to {_MOST_LEGS - 1}")
    if legs and count != of_legs:
        why = f"{legs} straights have {of_legs} bend{'s' if of_legs > 1 else ''} between them"
        raise InputError(bends, "bends", why, (), "give every straight, with those between two bends")
    return count


def _to_cut(
    bend: Figure,
    given: tuple[Figure, ...],
    straights: tuple[Figure, ...],
    count: int,
    asked: dict[str, str | None],
    data: Refdata,
) -> Sheet:
    """The Sheet of the length to cut: the straight legs and the arc of each bend."""
    arcs = (bend,) * count
    length = units.from_base(sum(map(base, (*straights, *arcs))), bend.unit)
    corner = asked["corner"]
    each = (corner or asked["legs"] or "none").split(", ")
    text = " and ".join([", ".join(each[:-1]), each[-1]] if len(each) > 1 else each)
    made = derived(
        "tube_cut_length",
        "cut_length",
        length,
        bend.unit,
        (*straights, *arcs),
        data,
        key={**bend.key, "legs": asked["legs"] or (f"{corner} to the corner" if corner else f"none, {count} bends")},
        conditions=f"legs of {text} to {'the corner' if corner else 'where the bend starts'}, and "
        + ("the arc between them" if count == 1 else f"the arcs of {count} bends"),
    )
    if not straights:
        do = "The arcs of all the bends, at the centre line; the straights come to it."
        title = f"{count} bends of {bend.key['angle']} on a {bend.key['radius']} radius"
        return Sheet(title, asked, data, [made, bend, *given], [], (), decision=use("LENGTH IN THE BENDS", made, do))
    do = "Nothing is in it to trim, or for the bender to hold: add what yours needs."
    if corner:
        start = straights[0]
        do = f"The bend starts {number_only(start, data)} from the end of the first leg. {do}"
    many = "bend" if count == 1 else f"{count} bends"
    title = f"{many} of {bend.key['angle']} on a {bend.key['radius']} radius, legs {text}"
    title += " to the corner" if corner else ""
    return Sheet(title, asked, data, [made, bend, *straights, *given], [], (), decision=use("CUT", made, do))
