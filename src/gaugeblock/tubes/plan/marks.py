"""From a stick to Figures: cut length, straights, turns, bends, marks, angles to set, seam, what rounding does."""

from __future__ import annotations

from math import degrees, pi

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.calc import stick as sticks
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.bodies import Typed
    from gaugeblock.calc.path import Stick
    from gaugeblock.calc.stick import Die, Layout, Mark
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.plan.keys import Shape
    from gaugeblock.tubes.plan.metal import Metal

HALF_DEGREE = pi / 360
DATUMS = {
    "start": "the START end of the blank",
    "end": "the END of the blank",
    "centre": "the centre line of the finished tube",
}


class Maker:
    """Makes the derived Figures of one tube; SI in, the shop's unit out; ``bend`` tells figures of one quantity apart."""

    __slots__ = ("data", "name", "tape")

    def __init__(self, name: str, tape: Tape, data: Refdata) -> None:
        self.name = name
        self.tape = tape
        self.data = data

    def __call__(
        self,
        rule: str,
        quantity: str,
        value: float | None,
        inputs: tuple[Figure, ...],
        *,
        unit: str | None = None,
        bend: str = "",
        low: float | None = None,
        high: float | None = None,
        conditions: str = "",
        text: str = "",
        towards: str = "",
    ) -> Figure:
        unit = unit or self.tape.unit
        keys = {"tube": self.name, **({"bend": bend} if bend else {}), **({"towards": towards} if towards else {})}

        def out(v: float | None) -> float | None:
            return None if v is None else units.from_base(v, unit)

        return Figure(
            f"derived:{rule}:{'|'.join(keys.values())}:{quantity}@{self.data.release}", quantity, out(value), unit, low=out(low),
            high=out(high), side=self.data.quantity(quantity)["side"], basis="derived", rule=self.data.rule(rule), inputs=inputs,
            since=self.data.release, key=keys, conditions=conditions, text=text,
        )  # fmt: skip

    def length(
        self, rule: str, quantity: str, metres: float, inputs: tuple[Figure, ...], *, bend: str = "", conditions: str = "",
        towards: str = "",
    ) -> Figure:  # fmt: skip
        """A length that is marked: printed on the tape's step, the exact value kept and told."""
        exact = f"exactly {units.significant(units.from_base(metres, self.tape.unit), 6)} {self.tape.unit}"
        return self(
            rule, quantity, metres, inputs, bend=bend, text=self.tape.number(metres),
            conditions=f"{conditions}; {exact}" if conditions else exact, towards=towards,
        )  # fmt: skip


class Setting:
    """What to set for one bend: its text, the Figure behind it, the angle in rad when it is one angle."""

    __slots__ = ("angle", "exact", "figure", "text")

    def __init__(
        self, text: str, figure: Figure | None, angle: float | None = None, exact: float | None = None
    ) -> None:
        self.text = text
        self.figure = figure
        self.angle = angle
        self.exact = exact


def stick_figures(shape: Shape, stick: Stick, make: Maker, radius: Figure) -> list[list[Figure]]:
    """Straight, turn, bend and arc of each bend, then the last straight: one list a bend, and one for the end."""
    rows = []
    for n, b in enumerate(stick.bends, 1):
        given = shape.given[n - 1] if shape.given else {}
        row = [given.get("straight") or _straight(shape, make, n, b.straight, radius)]
        if n > 1:
            row.append(
                given.get("turn")
                or make(
                    "rotation_between_bends", "tube_turn", b.turn, shape.inputs("tube_turn", n), unit="deg", bend=str(n),
                    conditions=f"before bend {n}, clockwise as seen from START",
                )
            )  # fmt: skip
        angle = given.get("angle") or make(
            "bend_angle_from_points", "bend_angle", b.angle, shape.inputs("bend_angle", n), unit="deg", bend=str(n),
            conditions=f"bend {n}",
        )  # fmt: skip
        row.append(angle)
        own = given.get("radius") or radius
        row.append(
            make.length(
                "developed_length", "developed_length", b.arc, (own, angle), bend=str(n), conditions=f"arc of bend {n}"
            )
        )
        rows.append(row)
    given = shape.given[-1] if shape.given else {}
    rows.append([given.get("straight") or _straight(shape, make, len(rows) + 1, stick.end, radius)])
    return rows


def _straight(shape: Shape, make: Maker, n: int, metres: float, radius: Figure) -> Figure:
    inputs = (*shape.inputs("straight", n), radius)
    return make.length("straight_between_bends", "straight", metres, inputs, bend=str(n), conditions=f"straight {n}")


def cut_figure(
    layout: Layout, rows: Sequence[Sequence[Figure]], trims: tuple[Figure, ...], leaves: tuple[Figure, ...], make: Maker
) -> Figure:
    """The length of the blank, trim in it."""
    typed = tuple(f for row in rows for f in row if f.quantity == "straight" and f.basis != "derived")
    inputs = (*(typed or leaves), *trims)
    seen = {f.id: f for f in (*inputs, *(f for f in leaves if f not in inputs))}
    words = "no trim" if not trims else "trim in it"
    return make.length("tube_cut_length", "cut_length", layout.cut_length, tuple(seen.values()), conditions=words)


def mark_figures(layout: Layout, inputs: tuple[Figure, ...], datum: str, make: Maker) -> dict[int, Figure]:
    """Start-of-bend marks from the datum, by bend; each printed from its own exact place."""
    out = {}
    for m in layout.marks:
        side = "start" if m.position < 0 else "end"
        words = f"bend {m.number}, from {DATUMS[datum]}, towards {side.upper()}; the bend goes to {'END' if m.goes > 0 else 'START'}"
        out[m.number] = make.length(
            "bend_mark", "bend_mark", abs(m.position), inputs, bend=str(m.number), conditions=words, towards=side
        )
    return out


def tests_of(
    rows: Sequence[Mapping[str, Any]], typed: Typed, material: str | None, wall: str | None
) -> list[tuple[float, float]]:
    """Test bends (set, got) whose material, where they name one, is in the words of this tube's, and of its wall."""
    known = set((material or "").casefold().split())
    out = []
    for n, row in enumerate(rows, 1):
        if not row.get("pulled") or not row.get("released"):
            continue
        if known and row.get("material") and not known.issuperset(row["material"].casefold().split()):
            continue
        if row.get("wall") and wall and _length(row["wall"]) != _length(wall):
            continue
        out.append(
            (
                typed.number(row["pulled"], f"die test bend {n} set", "angle", "bend_angle_set"),
                typed.number(row["released"], f"die test bend {n} got", "angle", "bend_angle_got"),
            )
        )
    return out


def _length(text: str) -> object:
    try:
        got = units.parse_measure(text, "length")
    except ValueError:  # a gauge number
        return text
    return got.value * units.factor(got.unit)


def settings(
    stick: Stick, die: Die, tests: tuple[Figure, ...], angles: Sequence[Figure], metal: Metal | None, make: Maker
) -> tuple[list[Setting], list[Check]]:
    """The angle to set for each bend: from test bends, else a range by the published springback formulas, said to be one."""
    out, checks, why = [], [], ""
    for n, (b, angle) in enumerate(zip(stick.bends, angles, strict=True), 1):
        exact = None
        if die.tests:
            try:
                exact = sticks.set_angle(b.angle, die.tests)
            except ValueError as error:  # outside the tests, or tests that do not rise together
                why = f"bend {n}: {error}"
        if exact is not None:
            rounded = sticks.round_to(exact, HALF_DEGREE)
            figure = make(
                "angle_set_from_tests", "bend_angle_set", exact, (angle, *tests), unit="deg", bend=str(n),
                text=degrees_text(exact).removesuffix(" deg"), conditions=f"bend {n}, from test bends",
            )  # fmt: skip
            out.append(Setting(degrees_text(exact), figure, rounded, exact))
            continue
        got = None if metal is None else metal.set_angle(b.angle, b.radius)
        if got is None:
            out.append(Setting("test first", None))
            continue
        low, high, inputs = got
        figure = make(
            "angle_set_estimate", "bend_angle_set", None, (angle, *inputs), unit="deg", bend=str(n), low=low, high=high,
            conditions=f"bend {n}: AN ESTIMATE by formula, not a setting; bend a test piece",
        )  # fmt: skip
        ends = [degrees_text(a).removesuffix(" deg") for a in (low, high)]
        out.append(Setting(f"{ends[0]} to {ends[1]} deg?" if ends[0] != ends[1] else f"about {ends[0]} deg?", figure))
    if stick.bends and any(s.angle is None for s in out):
        known = any(s.figure is not None for s in out)
        reason = why or "no test bend of this tube on this die (angle set, angle got)"
        reason += (
            "; the range by formula is an estimate"
            if known
            else "; no estimate either: the strengths of this metal are not known"
        )
        checks.append(
            Check("angle to set", CANNOT_TELL, f"{reason}. Bend a test piece of this lot and give both its angles")
        )
    elif stick.bends:
        checks.append(
            Check("angle to set", OK, f"from {len(die.tests)} test bend{'s' if len(die.tests) > 1 else ''} on this die")
        )
    return out, checks


def rounding(layout: Layout, die: Die, sets: Sequence[Setting], cut: Figure, make: Maker) -> list[Figure]:
    """How far the shape as marked is from the shape asked for, and the worst it could be at these steps."""
    stick = layout.stick
    angles = [
        b.angle + ((s.angle - s.exact) if s.angle is not None and s.exact is not None else 0.0)
        for b, s in zip(stick.bends, sets, strict=True)
    ]
    turns = [sticks.round_to(b.turn, HALF_DEGREE) for b in stick.bends]
    odd_angle = any(s.exact is not None and abs((s.angle or 0.0) - s.exact) > 1e-9 for s in sets)
    odd_turn = any(abs(t - b.turn) > 1e-9 for t, b in zip(turns, stick.bends, strict=True))
    step = make.tape.step
    out = []
    try:
        marked = sticks.as_marked(layout, die, angles, turns)
    except ValueError:
        marked = None
    words = f"marks to {make.tape.word}, angles and turns to 1/2 deg; each rounded from its own exact place, so errors do not add up along the stick"
    if marked is not None:
        shift = sticks.shape_shift(stick, marked)
        out.append(
            make("rounding_shift", "rounding_effect", shift, (cut,), conditions=f"this stick as marked: {words}")
        )
    bound = sticks.rounding_bound(
        stick, step, 2 * HALF_DEGREE if odd_angle else 0.0, 2 * HALF_DEGREE if odd_turn else 0.0
    )
    what = "marks" if all(s.exact is not None for s in sets) else "marks; the angles to set are not known yet"
    what += (", angles" if odd_angle else "") + (", turns" if odd_turn else "")
    out.append(
        make(
            "rounding_bound",
            "rounding_effect",
            bound,
            (cut,),
            conditions=f"the worst at these steps ({what}): no point is further off",
        )
    )
    return out


def grip_checks(
    stick: Stick, die: Die, figures: Mapping[str, Figure | None], trims: tuple[float, float], hint: str, make: Maker
) -> list[Check]:
    """Every straight against the grip of the die: the ends with their trim, and between bends."""
    if not stick.bends:
        return []
    tape, out = make.tape, []
    for where, key in (("end", "grip"), ("between", "between")):
        name = "straight at the ends against the grip" if where == "end" else "straight between bends against the grip"
        figure = figures.get(key)
        rows = [g for g in sticks.grips(stick, die, trims) if (g.where == "between") == (where == "between")]
        if not rows:
            continue
        worst = min(rows, key=lambda g: g.available - g.needed)
        least = tape.reads(worst.available)
        at = f"straight {worst.number}" + (" with its trim" if where == "end" else "")
        if figure is None:
            out.append(
                Check(
                    name,
                    CANNOT_TELL,
                    f"the grip of the die is not given; the shortest, {at}, is {least}: measure the die",
                )
            )
            continue
        need = Bound(units.from_base(worst.needed, tape.unit), tape.unit, "min", figure)
        got = Bound(units.from_base(worst.available, tape.unit), tape.unit)
        text = f"{at} is {least}, {tape.reads(worst.needed)} needed"
        if worst.short:
            more = (
                f": {tape.reads(worst.short)} more trim there, cut off after bending" if where == "end" else f": {hint}"
            )
            out.append(Check(name, NOT_OK, text + more, need, got))
        else:
            margin = (worst.available - worst.needed) / worst.needed if worst.needed else None
            out.append(Check(name, OK, text, need, got, margin))
    return out


def order_words(layout: Layout) -> str:
    """The order of the bends in words."""
    if not layout.marks:
        return "no bends"
    by_number: dict[int, Mark] = {m.number: m for m in layout.marks}
    parts: list[str] = []
    before = None
    for n in layout.order:
        goes = by_number[n].goes
        if before is not None and goes != before:
            parts.append("swap ends")
        parts.append(f"bend {n}")
        before = goes
    return ", ".join(parts)


def seam_figure(stick: Stick, inputs: tuple[Figure, ...], make: Maker) -> tuple[float, Figure] | None:
    """Where the weld seam goes round the tube."""
    if not stick.bends:
        return None
    at, clear = sticks.seam_line(stick.lines)
    words = f"clockwise from the inside of bend 1 as seen from START; {degrees(clear):.0f} deg clear of every inside and outside line"
    return at, make("seam_line", "seam_position", at, inputs, unit="deg", conditions=words)
