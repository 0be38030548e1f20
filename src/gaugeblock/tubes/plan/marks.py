"""From a stick to Figures: cut length, straights, turns, bends, marks, angles to set, seam, what rounding does."""

from __future__ import annotations

from math import degrees

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, OK, Check
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.bodies import Typed
from gaugeblock.calc import path as paths
from gaugeblock.calc import stick as sticks
from gaugeblock.tubes.plan.angles import HALF_DEGREE, settings_of
from gaugeblock.tubes.plan.found import Found
from gaugeblock.tubes.plan.grip import BETWEEN, ENDS, grip_checks
from gaugeblock.tubes.plan.places import apexes, smallest_rises
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Stick
    from gaugeblock.calc.stick import Die, Layout, Mark
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.angles import Setting
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.making import Make
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.shape import Shape
    from gaugeblock.tubes.plan.tool import Tool

NAME = "shape and marks"
START_MARK = "start mark of the die"
DATUMS = {
    "start": "the START end of the blank",
    "end": "the END of the blank",
    "centre": "the centre line of the finished tube",
}


class Marks(Value):
    """The marks of one tube: where they go, the length to cut, what to set at each bend, where the seam goes."""

    __slots__ = ("cut", "found", "layout", "seam", "settings")

    layout: Layout
    cut: Figure
    settings: tuple[Setting, ...]
    seam: float | None
    found: Found

    def __init__(
        self, layout: Layout, cut: Figure, settings: tuple[Setting, ...], seam: float | None, found: Found
    ) -> None:
        put(self, "layout", layout)
        put(self, "cut", cut)
        put(self, "settings", settings)
        put(self, "seam", seam)
        put(self, "found", found)


def marks_of(given: Given, shape: Shape, tool: Tool | None, metal: Metal | None, hint: str) -> Marks:
    """Everything that is marked, set, turned and cut; a straight tube has no tool."""
    stick, make, tape = shape.stick, given.make, given.tape
    die = sticks.Die(0.0) if tool is None else tool.die
    trims, trim_figures = _trims(given)
    layout = sticks.lay_out(stick, die, trims=trims, datum=given.datum, step=tape.step)
    leaves = (*shape.leaves, *([tool.radius] if tool is not None else []))
    leaves += (given.od,) if shape.kind == "clear" and given.od is not None else ()
    rows = stick_figures(shape, stick, make, None if tool is None else tool.radius)
    cut = cut_figure(layout, rows, trim_figures, make)
    mark = () if tool is None or tool.mark is None else (tool.mark,)
    at = mark_figures(layout, (*leaves, *mark, *(trim_figures if given.datum != "centre" else ())), given.datum, make)
    angles = [next(f for f in row if f.quantity == "bend_angle") for row in rows[:-1]]
    arcs = [next(f for f in row if f.quantity == "developed_length") for row in rows[:-1]]
    settings, angle_found = settings_of(stick, tool, arcs, metal, make)
    figures = [cut]
    for n, row in enumerate(rows, 1):
        figures += [*row, *([at[n]] if n in at else [])]
        setting = settings[n - 1].figure if n <= len(settings) else None
        figures += [] if setting is None else [setting]
    seam = seam_figure(stick, tuple(angles), make)
    figures += [] if seam is None else [seam[1]]
    figures += [*apexes(stick, rows, make), *smallest_rises(given, tool)]
    figures += rounding(layout, die, settings, cut, make, given.datum == "centre") if stick.bends else []
    start = _start_mark(stick, tool)
    checks = [
        Check(NAME, OK, _whole(stick)),
        *angle_found.checks,
        *start.checks,
        *([] if tool is None else grip_checks(stick, tool, trims, hint, given)),
    ]
    questions = (*angle_found.questions, *start.questions, *_grip_question(checks))
    found = Found(figures, checks, _said(given, layout, trims), questions)
    return Marks(layout, cut, tuple(settings), None if seam is None else seam[0], found)


def _whole(stick: Stick) -> str:
    count = len(stick.bends)
    if not count:
        return "shape complete: straight, no bends"
    return f"shape complete: {count} bend{'s' if count > 1 else ''}, all straights given"


def _trims(given: Given) -> tuple[tuple[float, float], tuple[Figure, ...]]:
    typed, trim = Typed(given.name, given.data), given.tube.trim
    ends = [
        typed.number(t, f"trim {k}", "length", "trim") if t else 0.0
        for k, t in (("start", trim.start if trim else None), ("end", trim.end if trim else None))
    ]
    return (ends[0], ends[1]), tuple(typed.figures)


def _start_mark(stick: Stick, tool: Tool | None) -> Found:
    """Where the die's own mark stands is measured; until then the marks are the starts of the bends."""
    if not stick.bends or tool is None or tool.mark is not None:
        return Found()
    text = "the die's start-mark offset is not given: the marks are the starts of the bends themselves"
    ask = "Measure how far the die's mark stands from the start of the bend."
    check = Check(START_MARK, CANNOT_TELL, text, bears=INFORM)
    return Found(checks=[check], questions=[Question(MEASURE, ask, "shop.dies.start_mark", (START_MARK,))])


def _grip_question(checks: Sequence[Check]) -> list[Question]:
    open_ = tuple(c.name for c in checks if c.name in (ENDS, BETWEEN) and c.result == CANNOT_TELL)
    ask = "Measure the straight that the die grips."
    return [Question(MEASURE, ask, "shop.dies.grip", open_)] if open_ else []


def _said(given: Given, layout: Layout, trims: tuple[float, float]) -> list[Caution]:
    """The order of the bends, and what the marks are from."""
    if not layout.marks:
        return []
    zero = layout.datum + trims[0]
    said = f"Order of bends: {order_words(layout)}. Marks are from {DATUMS[given.datum]}"
    said += f", {given.tape.reads(zero)} from the START end of the blank" if given.datum == "centre" else ""
    said += ". Clockwise is as seen looking along the tube from START."
    out = [Caution(said, "note", (), "calculated")]
    if not given.tube.marks_from:
        out.append(Caution("Assumed: marks from START (marks_from is not given).", "note", (), "calculated"))
    return out


def stick_figures(shape: Shape, stick: Stick, make: Make, radius: Figure | None) -> list[list[Figure]]:
    """Straight, turn, bend and arc of each bend, then the last straight: one list a bend, and one for the end."""
    angles = [_angle(shape, make, n, b.angle) for n, b in enumerate(stick.bends, 1)]
    straights = [
        _straight(shape, make, n, metres, (*angles[max(0, n - 2) : n], *(() if radius is None else (radius,))))
        for n, metres in enumerate(stick.straights, 1)
    ]
    rows = []
    for n, (b, angle) in enumerate(zip(stick.bends, angles, strict=True), 1):
        row = [straights[n - 1]]
        if n > 1:
            row.append(_turn(shape, make, n, b.turn))
        own = _typed(shape, n, "radius") or radius
        arc = (angle,) if own is None else (own, angle)
        words = f"arc of bend {n}"
        made = make.length("developed_length", "developed_length", b.arc, arc, bend=str(n), conditions=words)
        rows.append([*row, angle, made])
    return [*rows, [straights[-1]]]


def _typed(shape: Shape, n: int, key: str) -> Figure | None:
    """What was typed of a bend; of the place after the last bend its straight."""
    return shape.given[n - 1].get(key) if shape.given else None


def _turn(shape: Shape, make: Make, n: int, turn: float) -> Figure:
    typed = _typed(shape, n, "turn")
    if typed is not None:
        return typed
    words = f"before bend {n}, clockwise as seen from START"
    inputs = shape.inputs("tube_turn", n)
    return make("rotation_between_bends", "tube_turn", turn, inputs, unit="deg", bend=str(n), conditions=words)


def _angle(shape: Shape, make: Make, n: int, angle: float) -> Figure:
    typed = _typed(shape, n, "angle")
    if typed is not None:
        return typed
    inputs = shape.inputs("bend_angle", n)
    return make("bend_angle_from_points", "bend_angle", angle, inputs, unit="deg", bend=str(n), conditions=f"bend {n}")


def _straight(shape: Shape, make: Make, n: int, metres: float, beside: tuple[Figure, ...]) -> Figure:
    """A straight as typed, else between its apexes less the setbacks of the bends beside it."""
    typed = _typed(shape, n, "straight")
    if typed is not None:
        return typed
    points = shape.points or ()
    apart = paths.norm(paths.subtract(points[n], points[n - 1]))
    apexes = make("apex_distance", "apex_distance", apart, shape.inputs("straight", n), bend=str(n))
    words = f"straight {n}"
    return make.length("straight_between_bends", "straight", metres, (apexes, *beside), bend=str(n), conditions=words)


def cut_figure(layout: Layout, rows: Sequence[Sequence[Figure]], trims: tuple[Figure, ...], make: Make) -> Figure:
    """The length of the blank: straights and arcs, trim in it."""
    along = tuple(f for row in rows for f in row if f.quantity in ("straight", "developed_length"))
    words = "no trim" if not trims else "trim in it"
    return make.length("tube_cut_length", "cut_length", layout.cut_length, (*along, *trims), conditions=words)


def mark_figures(layout: Layout, inputs: tuple[Figure, ...], datum: str, make: Make) -> dict[int, Figure]:
    """Start-of-bend marks from the datum, by bend; each printed from its own exact place."""
    out = {}
    for m in layout.marks:
        side = "start" if m.position < 0 else "end"
        words = (
            f"bend {m.number}, from {DATUMS[datum]}, towards {side.upper()}; the bend goes to"
            f" {'END' if m.goes > 0 else 'START'}"
        )
        out[m.number] = make.length(
            "bend_mark", "bend_mark", abs(m.position), inputs, bend=str(m.number), conditions=words, towards=side
        )
    return out


def rounding(layout: Layout, die: Die, sets: Sequence[Setting], cut: Figure, make: Make, outward: bool) -> list[Figure]:
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
    words = (
        f"marks to {make.tape.word}, angles and turns to 1/2 deg; each rounded from its own exact place, so errors do"
        " not add up along the stick"
    )
    if marked is not None:
        shift = sticks.shape_shift(stick, marked)
        out.append(
            make("rounding_shift", "rounding_effect", shift, (cut,), conditions=f"this stick as marked: {words}")
        )
    bound = sticks.rounding_bound(
        stick,
        step,
        2 * HALF_DEGREE if odd_angle else 0.0,
        2 * HALF_DEGREE if odd_turn else 0.0,
        outward=outward,
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


def seam_figure(stick: Stick, inputs: tuple[Figure, ...], make: Make) -> tuple[float, Figure] | None:
    """Where the weld seam goes round the tube."""
    if not stick.bends:
        return None
    at, clear = sticks.seam_line(stick.lines)
    words = (
        f"clockwise from the inside of bend 1 as seen from START; {degrees(clear):.0f} deg clear of every inside and"
        " outside line"
    )
    return at, make("seam_line", "seam_position", at, inputs, unit="deg", conditions=words)
