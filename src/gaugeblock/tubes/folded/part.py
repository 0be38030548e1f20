"""Sheet bend: the flat length of a part bent of sheet, what comes off its outside legs, and its least inside radius."""

from __future__ import annotations

import re
from math import radians

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.listed import items
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.folded.least import least, thickness_doubt
from gaugeblock.tubes.folded.stock import TABLE, SheetStock, least_ratio, sheet_stock
from gaugeblock.tubes.rules import rules_of
from gaugeblock.tubes.sheet_metal import thickness_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

FACTS = ("flat length", "deduction", "allowance", "setback", "radius")
_VERBS = {
    "flat length": "CUT FLAT",
    "deduction": "TAKE OFF",
    "allowance": "LENGTH IN THE BEND",
    "setback": "SETBACK",
}
_MOST_TURN = 180  # degrees; a hem
_NO_CORNER = 170  # degrees: towards a hem the corner runs away
_SQUARE = 90
_WIDEST = 50  # thicknesses: a larger radius is rolled, and springs back far
_MOST_LEGS = 9
_TIMES = re.compile(r"(?P<n>[0-9./ -]*[0-9]|\.[0-9]+) ?(?:x|times)? ?(?:the |its )?(?:t|thick(?:ness(?:es)?)?)")
_STRIP = "Bend a test strip of the same sheet on the same tool where that matters"


class _Bend(Value):
    """What one bend is made of: its thickness, radius and angle as Figures, and the unit that is cut in."""

    __slots__ = ("angle", "key", "radius", "unit", "wall")

    angle: Figure
    key: dict[str, str]
    radius: Figure
    unit: str
    wall: Figure

    def __init__(self, wall: Figure, radius: Figure, angle: Figure, key: dict[str, str], unit: str) -> None:
        put(self, "wall", wall)
        put(self, "radius", radius)
        put(self, "angle", angle)
        put(self, "key", key)
        put(self, "unit", unit)

    @property
    def turned(self) -> float:
        """Its angle in radians."""
        return base(self.angle)


def sheet_bend(
    thickness: str,
    radius: str | None = None,
    angle: str | None = None,
    *,
    material: str | None = None,
    legs: str | None = None,
    k: str | None = None,
    fact: str | None = None,
    system: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The flat length of a part bent of sheet, or what comes off its two outside legs for each bend.

    ``thickness`` ``2 mm``, or a gauge number of the ``system`` that is usual for the ``material`` (``mild steel``,
    ``5052-H32``, ``304``) or is named; ``radius`` to the inside of the bend (``3 mm``, ``1.5 t``); ``angle`` that the
    sheet turns, over 0 to 180 deg, a right angle where it was not said; ``legs`` on the outside, in order (``50 mm,
    30 mm, 50 mm``); ``k`` the K factor of a test strip; ``fact`` what is wanted: ``flat length``, ``deduction``,
    ``allowance``, ``setback`` or ``radius``, the least that the metal takes.

    Returns a Sheet; it asks where something is not plausible. Raises InputError, UnitError or LookupMiss for what
    cannot be read. Source: the allowance of SMW, 0.01743 R + 0.0078 T a degree; setback of AMTA, ch. 4.

    >>> round(sheet_bend("0.050 in", "0.032 in").decision.figure.typical, 3)
    0.079
    """
    data = data or refdata()
    asked = {"thickness": thickness, "radius": radius, "angle": angle, "material": material, "legs": legs, "k": k}
    asked |= {"fact": fact, "system": system}
    if fact is not None and fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a bend in sheet is called so", FACTS, "ask for one of these")
    stock = None if material is None else sheet_stock(material, data)
    typed = angle or f"{_SQUARE} deg"
    turn = read_positive(f"{typed} deg" if re.fullmatch(r"[0-9.]+", typed.strip()) else typed, "angle", "angle")
    outside = _legs(legs, data)
    if k is not None:
        read_positive(k, "ratio", "k")
    wall = thickness_of(thickness, stock.family if stock else "", system, data)
    if fact == "radius":
        _alone({"radius": radius, "angle": angle, "legs": legs, "k": k})
        return least(stock, wall, asked, data)
    if radius is None:
        why = "what a bend takes hangs on its inside radius"
        raise Ambiguous(thickness, "radius", why, ("1 t", "1.5 t", "2 t"), "give the inside radius, as 3 mm or 1.5 t")
    inside = _radius(radius, wall, data)
    title = f"bend of {turn.text} in {thickness} {stock.label if stock else 'sheet'}, inside radius {radius}"
    doubts = _doubts(wall, inside, turn, k, data)
    if doubts:
        return questioned(title, asked, doubts, "", data, [wall, inside])
    key = {"thickness": thickness, "radius": radius, "angle": turn.text, **({"k": k} if k else {})}
    unit = "in" if (inside if base(inside) else wall).unit == "in" else "mm"
    bend = _Bend(wall, inside, stated(turn, "bend_angle", "angle", data), key, unit)
    return _told(title, asked, bend, stock, outside, data)


def _alone(others: dict[str, str | None]) -> None:
    """InputError for what a least radius does not hang on."""
    for key, given in others.items():
        if given is not None:
            why = "the least radius hangs on the metal and the thickness alone"
            raise InputError(given, key, why, (), "leave it out, or ask for another fact")


def _doubts(wall: Figure, inside: Figure, turn: units.Measure, k: str | None, data: Refdata) -> dict[str, str]:
    """What is hardly meant, key by key, with the question."""
    found = thickness_doubt(wall, data)
    if not found and base(inside) > _WIDEST * base(wall):
        said = f"An inside radius of {inside.text} {inside.unit} is over {_WIDEST} times the thickness"
        found["radius"] = did_you_mean(said, _in_other_unit(inside, wall))
    if turn.to("deg") > _MOST_TURN + 1e-9:
        found["angle"] = did_you_mean(f"A bend of {turn.text} turns past a hem, which is {_MOST_TURN} deg", ())
    low, high = plausible_range("k_factor", data) or (0.0, 1.0)
    if k is not None and not low <= float(units.parse_number(k, "k")) <= high:
        found["k"] = did_you_mean(f"A K factor of {k} is none: it is a share of the thickness, {low:g} to {high:g}", ())
    return found


def _in_other_unit(inside: Figure, wall: Figure) -> tuple[str, ...]:
    """The same number in millimetres for inches, where that is a radius of this sheet."""
    other = "mm" if inside.unit == "in" else "in"
    return (f"{inside.text} {other}",) if units.to_base(inside.typical, other) <= _WIDEST * base(wall) else ()


def _radius(typed: str, wall: Figure, data: Refdata) -> Figure:
    """The inside radius, as a length or in thicknesses of the sheet; none at all is a sharp bend."""
    times = _TIMES.fullmatch(" ".join(typed.casefold().split()))
    if times is None:
        bare = re.fullmatch(r"0+(?:\.0*)?", typed.strip())
        text = f"0 {wall.unit}" if bare else typed
        return stated(read_positive(text, "length", "radius", zero=True), "sheet_bend_radius", "radius", data)
    share = units.Measure(units.parse_number(times["n"], "radius"), "1", times["n"].strip())
    ratio = stated(share, "sheet_bend_ratio", "radius", data)
    number, key = ratio.typical * wall.typical, {"thickness": wall.text, "ratio": ratio.text}
    inputs = (ratio, wall)
    text = units.significant(number, 3)
    return derived("sheet_radius_of_ratio", "sheet_bend_radius", number, wall.unit, inputs, data, key=key, text=text)


def _legs(legs: str | None, data: Refdata) -> tuple[Figure, ...]:
    """The outside legs in order; a leg without a unit has that of the last."""
    if legs is None:
        return ()
    texts = [text for text in items(legs, "legs") if text]
    if not 1 < len(texts) <= _MOST_LEGS:
        why = f"a bent part has two legs or more, and {_MOST_LEGS} are the most"
        raise InputError(legs[:60] or "(blank)", "legs", why, (), 'write them as "50 mm, 30 mm, 50 mm"')
    _, unit = units.split_quantity(texts[-1])
    made = []
    for n, text in enumerate(texts, 1):
        number, own = units.split_quantity(text)
        leg = keys.length(text if own else f"{number} {unit}".strip(), "legs")
        if not is_plausible(leg, "sheet_leg", data):
            raise InputError(leg.text, "legs", "no usual leg of a bent part", (), "read it again, with its unit")
        made.append(stated(leg, "sheet_leg", f"leg {n}", data))
    return tuple(made)


def _told(
    title: str,
    asked: dict[str, str | None],
    bend: _Bend,
    stock: SheetStock | None,
    legs: tuple[Figure, ...],
    data: Refdata,
) -> Sheet:
    """The Sheet of a bend that is made: its allowance, setback and deduction, and the flat length of its legs."""
    took = _allowance(bend, asked["k"], data)
    wanted = asked["fact"] or ("flat length" if legs else "deduction")
    corner = bend.turned < radians(_NO_CORNER)
    if not corner and asked["fact"] is None and not legs:
        wanted = "allowance"
    figures = {"allowance": took, **(_at_the_corner(bend, took, legs, data) if corner else {})}
    shares = [] if asked["k"] or wanted == "setback" else _shares(stock, data)
    beside = [took.inputs[1]] if asked["k"] else []
    given = [*figures.values(), *shares, *beside, bend.wall, bend.radius, bend.angle, *legs]
    cautions = _cautions(bend, stock, data)
    if wanted == "flat length" and not legs:
        raise InputError(wanted, "fact", "no leg was given", (), 'give the outside legs: --legs "50 mm, 30 mm"')
    if wanted not in figures:
        do = f"A bend of {_NO_CORNER} deg and more makes no corner to measure legs to: lay it out by its length."
        return Sheet(title, asked, data, given, [], cautions, decision=none(_VERBS[wanted], do))
    made = figures[wanted]
    given = [made, *(f for f in given if f is not made)]
    do = _do(wanted, figures, bend, legs, data) + _apart(wanted, figures, bend, shares, legs, asked["k"])
    if asked["angle"] is None:
        do += " No angle was said: this is a right angle."
    return Sheet(title, asked, data, given, [], cautions, decision=use(_VERBS[wanted], made, do))


def _allowance(bend: _Bend, k: str | None, data: Refdata) -> Figure:
    """The length of sheet that the bend takes: by the K factor that was given, else by the rule for any metal."""
    r, t = base(bend.radius), base(bend.wall)
    if k is None:
        length = calc.bend_allowance_sheet(r, t, bend.turned)
        rule, inputs = "bend_allowance_sheet", [bend.radius, bend.wall, bend.angle]
    else:
        factor = stated(read_positive(k, "ratio", "k"), "k_factor", "k", data)
        length = calc.bend_allowance_k(r, t, factor.typical, bend.turned)
        rule, inputs = "bend_allowance_k", [bend.radius, factor, bend.wall, bend.angle]
    number = units.from_base(length, bend.unit)
    return derived(rule, "bend_allowance", number, bend.unit, inputs, data, key=bend.key)


def _at_the_corner(bend: _Bend, took: Figure, legs: tuple[Figure, ...], data: Refdata) -> dict[str, Figure]:
    """The setback and the deduction of a bend that makes a corner, and the flat length of the legs that there are."""
    number = units.from_base(calc.setback_sheet(base(bend.radius), base(bend.wall), bend.turned), bend.unit)
    given = (bend.radius, bend.wall, bend.angle)
    back = derived("setback_sheet", "sheet_setback", number, bend.unit, given, data, key=bend.key)
    less = 2 * back.typical - took.typical
    off = derived("bend_deduction", "bend_deduction", less, bend.unit, (back, took), data, key=bend.key)
    found = {"setback": back, "deduction": off}
    if legs:
        offs = (off,) * (len(legs) - 1)
        length = units.from_base(sum(map(base, legs)) - sum(map(base, offs)), bend.unit)
        _fits(legs, back)
        key = {**bend.key, "legs": ", ".join(f"{leg.text} {leg.unit}" for leg in legs)}
        inputs = (*legs, *offs)
        found["flat length"] = derived(
            "sheet_flat_length", "sheet_flat_length", length, bend.unit, inputs, data, key=key
        )
    return found


def _fits(legs: tuple[Figure, ...], back: Figure) -> None:
    """InputError for a leg that its bends use up."""
    for n, leg in enumerate(legs):
        ends = 2 if 0 < n < len(legs) - 1 else 1
        if base(leg) < ends * base(back) - 1e-9:
            short = units.significant(ends * back.typical, 3)
            why = f"its bend{'s' if ends > 1 else ''} alone take{'' if ends > 1 else 's'} {short} {back.unit} of it"
            do = "take a longer leg or a smaller radius; legs are measured on the outside"
            raise InputError(f"{leg.text} {leg.unit}", "legs", why, (), do)


def _shares(stock: SheetStock | None, data: Refdata) -> list[Figure]:
    """What handbooks say of a bend in this metal, in their own way; of a metal not named every one."""
    quantities = ("bend_share", "k_factor")
    if stock is not None:
        found = [lookup.look_up_or_none(TABLE, q, data=data, **stock.cells) for q in quantities]
        return [f for f in found if f is not None]
    rows = [r for q in quantities for r in data.table(TABLE).of(q)]
    return [lookup.figure_of(r, data) for r in rows if not r["standing"]]


def _lengths(bend: _Bend, shares: list[Figure]) -> list[float]:
    """The length in the bend by each handbook's figure, both ends of a range, in metres."""
    r, t = base(bend.radius), base(bend.wall)
    out = []
    for f in shares:
        ends = [e for e in (f.value, f.low, f.high) if e is not None]
        took = calc.bend_allowance_share if f.quantity == "bend_share" else calc.bend_allowance_k
        out += [took(r, t, e, bend.turned) for e in ends]
    return out


def _apart(
    wanted: str, figures: dict[str, Figure], bend: _Bend, shares: list[Figure], legs: tuple[Figure, ...], k: str | None
) -> str:
    """How far other handbook figures are from what was worked out, as a sentence; blank where nothing hangs on them."""
    if wanted == "setback":
        return ""
    if k is not None:
        return " It is by the K factor that you gave."
    lengths = _lengths(bend, shares)
    if not lengths:
        return f" No handbook figure of this metal is on record. {_STRIP}, and give its K factor."
    ends = [base(figures["allowance"]) - n for n in (max(lengths), min(lengths))]
    count = max(len(legs) - 1, 1) if wanted == "flat length" else 1
    sign = 1 if wanted == "deduction" else -1
    moved = sorted(base(figures[wanted]) + sign * count * end for end in ends)
    low, high = (_short(units.from_base(m, bend.unit), bend.unit) for m in moved)
    span = f"{low} {bend.unit}" if low == high else f"{low} to {high} {bend.unit}"
    return f" Other handbook figures come to {span}. {_STRIP}, and give its K factor."


def _short(number: float, unit: str) -> str:
    return f"{number:.3f}" if unit == "in" else f"{number:.1f}"


def _do(wanted: str, figures: dict[str, Figure], bend: _Bend, legs: tuple[Figure, ...], data: Refdata) -> str:
    """What is done with the number, in sentences."""
    took = number_only(figures["allowance"], data)
    if wanted == "allowance":
        return "Flat sheet between the two straight parts, for one bend."
    back, off = (number_only(figures[k], data) for k in ("setback", "deduction"))
    turned = units.from_base(bend.turned, "deg")
    apart = f" The sheet turns {turned:g} deg; its legs then stand {_MOST_TURN - turned:g} deg apart."
    apart = "" if abs(turned - _SQUARE) < 1e-9 else apart
    if wanted == "setback":
        return f"From where the bend starts to where the outside faces cross.{apart}"
    if wanted == "deduction":
        return f"Off the two outside legs together, for each bend; the bend itself takes {took}.{apart}"
    count = len(legs) - 1
    each = "the bend" if count == 1 else f"each of the {count} bends"
    return (
        f"Outside legs added, less {off} for {each}. The first bend starts {back} short of its corner, which is"
        f" {legs[0].text} {legs[0].unit} from the end.{apart}"
    )


def _cautions(bend: _Bend, stock: SheetStock | None, data: Refdata) -> list[Caution]:
    """That a radius is under the least of its metal; how the bend lies to the grain."""
    ratio = None if stock is None else least_ratio(stock, bend.wall, data)
    if ratio is None or base(bend.radius) >= ratio.typical * base(bend.wall) * (1 - 1e-6):
        return []
    least = units.significant(ratio.typical * bend.wall.typical, 3)
    what = f"{ratio.text} times the thickness, {least} {bend.wall.unit}"
    text = f"The least inside radius of {stock.label if stock else ''} is {what}: a tighter bend may crack."
    return [Caution(text, "damage", (ratio.id,), ratio.source or ratio.basis), *rules_of(data, "bend line and grain")]
