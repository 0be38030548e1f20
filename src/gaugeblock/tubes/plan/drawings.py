"""The drawings of a planned tube: finished, the marked stick, and paper at full size to wrap round it."""

from __future__ import annotations

from math import degrees

from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, Check
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.making import base
from gaugeblock.calc import clearance as space
from gaugeblock.calc.chords import chords
from gaugeblock.calc.path import Arc, Line, cross, dot, norm, subtract
from gaugeblock.drawing import obstacle, paper, stick_drawing, tube_drawing
from gaugeblock.tubes.plan.bench import datum_words
from gaugeblock.tubes.plan.found import Found
from gaugeblock.tubes.plan.order import order

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.tubes.model import Cope, Mitre
    from gaugeblock.tubes.plan.around import Thing
    from gaugeblock.tubes.plan.marks import Marks
    from gaugeblock.tubes.plan.planned import Plan

_SIDES = (
    ("FROM THE REAR", (1.0, 0.0, 0.0)),
    ("FROM THE FRONT", (-1.0, 0.0, 0.0)),
    ("FROM THE RIGHT", (0.0, 1.0, 0.0)),
    ("FROM THE LEFT", (0.0, -1.0, 0.0)),
    ("FROM ABOVE", (0.0, 0.0, 1.0)),
    ("FROM BELOW", (0.0, 0.0, -1.0)),
)
_DRAWN = 1.6  # a pipe or box that runs on is drawn so many of its own widths each way
_DATUM = {"start": "START END", "end": "END", "centre": "CENTRE LINE"}


def _seen_from(way: Vector, other: str) -> str:
    return next((name for name, axis in _SIDES if dot(axis, way) > 1 - 1e-9), other)


def views(line: Path) -> tuple[Vector, Vector, tuple[str, str]]:
    """Right and up of the first view, and what both views are seen from."""
    right, up = tube_drawing.true_plane(line)
    if up[2] < -1e-6:  # what is up in the vehicle is up on paper
        up = (-up[0], -up[1], -up[2])
    arcs = [p for p in line.parts if isinstance(p, Arc) and p.angle > 0]
    is_flat = all(abs(dot(cross(a.out, a.ahead), up)) < 1e-6 for a in arcs)
    names = ("TRUE SHAPE", "FROM ITS EDGE") if is_flat else ("ONE VIEW (the tube is not flat)", "SQUARE TO IT")
    return right, up, (_seen_from(cross(right, up), names[0]), _seen_from(up, names[1]))


Shown = tuple[list[obstacle.Obstacle], list[obstacle.Pipe], list[str]]


def obstacles(plan: Plan, line: Path, right: Vector, up: Vector) -> Shown:
    """What must be cleared as it is drawn: square to the view, askew; and the names of what has no shape (planes)."""
    ahead = cross(right, up)
    out: list[obstacle.Obstacle] = []
    askew: list[obstacle.Pipe] = []
    left: list[str] = []
    for thing in plan.around.things if plan.around is not None else ():
        body, gap = thing.body, gap_words(plan, thing)
        if isinstance(body, space.Tube):
            level = _level(body, line, ahead)
            if level is None:
                askew.append(_askew(plan, line, body, gap))
                continue
            across = min(body.path.length / 2, 2 * _DRAWN * body.radius)
            half = (body.radius, body.radius)
            out.append(obstacle.Obstacle(body.name, level, half, across, round=True, gap=gap))
        elif isinstance(body, space.Box):
            half3 = [
                sum(h * abs(dot(a, way)) for a, h in zip(body.axes, body.half, strict=True))
                for way in (right, up, ahead)
            ]
            deep = min(half3[2], _DRAWN * max(half3[:2]))
            out.append(obstacle.Obstacle(body.name, body.centre, (half3[0], half3[1]), deep, gap=gap))
        else:
            left.append(body.name)
    return out, askew, left


def _level(body: space.Tube, line: Path, ahead: Vector) -> Vector | None:
    """Where a straight pipe square to the view crosses its plane; None for another."""
    part = body.path.parts[0]
    if len(body.path.parts) != 1 or not isinstance(part, Line) or abs(dot(part.direction, ahead)) <= 0.999:
        return None
    level = dot(subtract(line.parts[0].at(0.0), part.start), ahead) / dot(part.direction, ahead)
    return part.at(min(max(level, 0.0), part.length))


def _askew(plan: Plan, line: Path, body: space.Tube, gap: str) -> obstacle.Pipe:
    """The piece of a pipe that is drawn: from where it is nearest, so far each way as shows which way it runs."""
    od = float(plan.given.od_m)
    steps, length = 120, body.path.length
    along = [body.path.at(length * i / steps) for i in range(steps + 1)]
    pairs = ((norm(subtract(p, q)), i, q) for i, p in enumerate(along) for q in chords(line, od / 5))
    apart, at, near = min(pairs, key=lambda row: row[:2])
    reach = max(2.5 * od, 3.0 * body.radius, 1.5 * apart)
    first, last = (length * at / steps + sign * reach for sign in (-1, 1))
    first, last = max(first, 0.0), min(last, length)
    piece = [body.path.at(first + (last - first) * i / 60) for i in range(61)]
    return obstacle.Pipe(body.name, piece, body.radius, along[at], near, gap)


def gap_words(plan: Plan, thing: Thing) -> str:
    """The gaps of the sheet from one thing: at rest, after movement, and what was wanted."""
    short = plan.given.tape.short
    found = {f.key.get("bend"): f for f in plan.sheet.figures if f.quantity == "surface_gap"}
    parts = []
    for key, what in ((thing.body.name, "gap {}"), (f"{thing.body.name} moved", "{} after movement")):
        figure = found.get(key)
        if figure is not None:
            parts.append(what.format(short(base(figure))))
    if thing.asked is not None:
        parts.append(f"{short(base(thing.asked))} wanted")
    return "; ".join(parts)


def finished(plan: Plan) -> str:
    """The finished tube in two views with what it must clear."""
    if plan.shape is None:
        raise ValueError("the tube has no shape")
    line = plan.shape.line
    right, up, names = views(line)
    shown, askew, left = obstacles(plan, line, right, up)
    words = {t.body.name: gap_words(plan, t).replace("; ", ", ") for t in (plan.around.things if plan.around else ())}
    notes = [f"not drawn: {name}, {words[name]}" for name in left]
    if plan.is_stopped:
        notes.insert(0, f"STOP: {plan.sheet.decision.do}")
    return tube_drawing.finished(
        line,
        float(plan.given.od_m),
        title=plan.name,
        right=right,
        up=up,
        names=names,
        reads=plan.given.tape.short,
        turns=[b.turn for b in plan.shape.stick.bends],
        obstacles=shown,
        pipes=askew,
        notes=notes,
    )


def alone(plan: Plan, width: float, height: float) -> str:
    """Both views in a room of so many mm, without what must be cleared: for who bends it."""
    if plan.shape is None:
        raise ValueError("the tube has no shape")
    line = plan.shape.line
    right, up, names = views(line)
    frame = tube_drawing.Frame(width, height, width, 4.0)
    od, reads = float(plan.given.od_m), plan.given.tape.short
    return tube_drawing.finished(line, od, title=plan.name, right=right, up=up, names=names, reads=reads, frame=frame)


def stick(plan: Plan, marks: Marks) -> str:
    """The straight stick with its marks."""
    notes = []
    if any(s.angle is None for s in marks.settings):
        notes.append("SET with a question mark, or none: bend a test piece of this tube first and write the angle in.")
    if plan.given.datum == "centre":
        notes.append(f"Centre line: {datum_words(plan).split(', ', 1)[1]}.")
    return stick_drawing.stick(
        marks.layout,
        float(plan.given.od_m),
        title=f"{plan.name}: the stick",
        set_to=[s.text for s in marks.settings],
        reads=plan.given.tape.reads,
        datum=_DATUM[plan.given.datum],
        seam=marks.seam,
        notes=notes,
    )


def wrap_strip(plan: Plan, marks: Marks) -> list[Drawing]:
    """The strip with the turn lines, at full size."""
    lines = [(str(n), line) for n, line in enumerate(marks.layout.stick.lines, 1)]
    lines += [] if marks.seam is None else [("S", marks.seam)]
    title, reads = f"{plan.name}: wrap strip", plan.given.tape.reads
    pages = paper.wrap_strip(float(plan.given.od_m), lines, title=title, reads=reads) if lines else []
    return [Drawing(f"{title}, full size", p, "landscape") for p in pages]


def cope(row: Cope, plan: Plan) -> tuple[list[Drawing], list[Check]]:
    """The paper that an end is coped by, at full size."""
    name = f"cope of the {row.end.upper()}"
    if plan.metal is None:
        return [], [Check(name, CANNOT_TELL, "the wall or the metal is not known: no template", bears=INFORM)]
    try:
        pages = paper.cope_template(
            header_od=row.onto.to("m"),
            od=float(plan.given.od_m),
            wall=plan.metal.wall,
            angle=row.angle.to("rad"),
            offset=row.offset.to("m") if row.offset else 0.0,
            title=f"{plan.name}: {name}",
            reads=plan.given.tape.reads,
        )
    except ValueError as error:
        return [], [Check(name, NOT_OK, str(error))]
    return [Drawing(f"{plan.name}: cope, full size", p, "landscape") for p in pages], []


def mitre(row: Mitre, plan: Plan) -> tuple[list[Drawing], list[Check]]:
    """The paper that a corner is cut by, at full size: one mitre, or pie cuts."""
    od, reads, angle = float(plan.given.od_m), plan.given.tape.reads, row.angle.to("rad")
    kind = f"{'pie cuts' if row.radius else 'mitre'}, {degrees(angle):.4g} deg"
    title = f"{plan.name}: {kind}"
    try:
        if row.radius is not None:
            pages = paper.pie_template(od, row.radius.to("m"), angle, row.joints or 0, title=title, reads=reads)
        else:
            pages = paper.mitre_template(od, angle, title=title, reads=reads)
    except ValueError as error:
        return [], [Check(kind, NOT_OK, str(error))]
    return [Drawing(f"{title}, full size", p, "landscape") for p in pages], []


def drawings(plan: Plan) -> tuple[list[Drawing], Found]:
    """Every drawing of the tube, each a whole page, and what could not be drawn; no marks of a tube that is stopped."""
    picture = finished(plan)
    shape = [Drawing(f"{plan.name}: finished tube", picture, "landscape")]
    marks = plan.bench
    if marks is None:
        return shape, Found()
    tube = plan.given.tube
    cut = [cope(row, plan) for row in tube.copes] + [mitre(row, plan) for row in tube.mitres]
    out = [*shape, Drawing(f"{plan.name}: the stick", stick(plan, marks), "landscape"), *wrap_strip(plan, marks)]
    out += [d for pages, _ in cut for d in pages]
    if plan.tool is not None:
        page = order(plan, marks, plan.tool, lambda width, height: alone(plan, width, height))
        out.append(Drawing(f"{plan.name}: order for a bending shop", page, "portrait"))
    return out, Found(checks=[c for _, checks in cut for c in checks])
