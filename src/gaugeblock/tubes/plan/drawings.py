"""The drawings of a planned tube: finished, the marked stick, and paper at full size to wrap round it."""

from __future__ import annotations

from math import degrees

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, Check
from gaugeblock.answer.drawing import Drawing
from gaugeblock.calc import clearance as space
from gaugeblock.calc.path import Arc, Line, chords, cross, dot, norm, subtract
from gaugeblock.drawing import paper, stick_drawing, tube_drawing
from gaugeblock.tubes.plan.bench import datum_words

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.calc.path import Vector
    from gaugeblock.tubes.plan.planned import Plan
    from gaugeblock.tubes.plan.space import Thing

_SIDES = (
    ("FROM THE REAR", (1.0, 0.0, 0.0)), ("FROM THE FRONT", (-1.0, 0.0, 0.0)), ("FROM THE RIGHT", (0.0, 1.0, 0.0)),
    ("FROM THE LEFT", (0.0, -1.0, 0.0)), ("FROM ABOVE", (0.0, 0.0, 1.0)), ("FROM BELOW", (0.0, 0.0, -1.0)),
)  # fmt: skip
_DRAWN = 1.6  # a pipe or box that runs on is drawn so many of its own widths each way
_DATUM = {"start": "START END", "end": "END", "centre": "CENTRE LINE"}


def _seen_from(way: Vector, other: str) -> str:
    return next((name for name, axis in _SIDES if dot(axis, way) > 1 - 1e-9), other)


def views(plan: Plan) -> tuple[Vector, Vector, tuple[str, str]]:
    """Right and up of the first view, and what both views are seen from."""
    if plan.line is None:
        raise ValueError("the tube has no path")
    right, up = tube_drawing.true_plane(plan.line)
    if up[2] < -1e-6:  # what is up in the vehicle is up on paper
        up = (-up[0], -up[1], -up[2])
    arcs = [p for p in plan.line.parts if isinstance(p, Arc) and p.angle > 0]
    is_flat = all(abs(dot(cross(a.out, a.ahead), up)) < 1e-6 for a in arcs)
    names = ("TRUE SHAPE", "FROM ITS EDGE") if is_flat else ("ONE VIEW (the tube is not flat)", "SQUARE TO IT")
    return right, up, (_seen_from(cross(right, up), names[0]), _seen_from(up, names[1]))


def obstacles(
    plan: Plan, right: Vector, up: Vector
) -> tuple[list[tube_drawing.Obstacle], list[tube_drawing.Pipe], list[str]]:
    """What must be cleared as it is drawn: square to the view, askew; and the names of what has no shape there (planes)."""
    ahead = cross(right, up)
    out: list[tube_drawing.Obstacle] = []
    askew: list[tube_drawing.Pipe] = []
    left: list[str] = []
    if plan.line is None:
        return out, askew, left
    for thing in plan.things:
        body = thing.body
        if isinstance(body, space.Tube):
            part = body.path.parts[0]
            if len(body.path.parts) == 1 and isinstance(part, Line) and abs(dot(part.direction, ahead)) > 0.999:
                across = min(part.length / 2, 2 * _DRAWN * body.radius)
                level = dot(subtract(plan.line.parts[0].at(0.0), part.start), ahead) / dot(part.direction, ahead)
                middle = part.at(min(max(level, 0.0), part.length))  # where it crosses the plane of the view
                out.append(
                    tube_drawing.Obstacle(
                        body.name, middle, (body.radius, body.radius), across, round=True, gap=gap_words(plan, thing)
                    )
                )
            else:
                askew.append(_askew(plan, thing, body))
        elif isinstance(body, space.Box):
            half = [
                sum(h * abs(dot(a, way)) for a, h in zip(body.axes, body.half, strict=True))
                for way in (right, up, ahead)
            ]
            out.append(
                tube_drawing.Obstacle(
                    body.name,
                    body.centre,
                    (half[0], half[1]),
                    min(half[2], _DRAWN * max(half[:2])),
                    gap=gap_words(plan, thing),
                )
            )
        else:
            left.append(body.name)
    return out, askew, left


def _askew(plan: Plan, thing: Thing, body: space.Tube) -> tube_drawing.Pipe:
    """The piece of a pipe that is drawn: from where it is nearest, so far each way as shows which way it runs."""
    if plan.line is None:
        raise ValueError("the tube has no path")
    steps, length = 120, body.path.length
    along = [body.path.at(length * i / steps) for i in range(steps + 1)]
    tube = chords(plan.line, plan.od / 5)
    apart, at, near = min(
        ((norm(subtract(p, q)), i, q) for i, p in enumerate(along) for q in tube), key=lambda row: row[:2]
    )
    reach = max(2.5 * plan.od, 3.0 * body.radius, 1.5 * apart)
    first, last = (length * at / steps + sign * reach for sign in (-1, 1))
    first, last = max(first, 0.0), min(last, length)
    piece = [body.path.at(first + (last - first) * i / 60) for i in range(61)]
    return tube_drawing.Pipe(body.name, piece, body.radius, along[at], near, gap_words(plan, thing))


def gap_words(plan: Plan, thing: Thing) -> str:
    """The gaps of the sheet from one thing: at rest, after movement, and what was asked."""
    found = {f.key.get("bend"): f for f in plan.sheet.figures if f.quantity == "surface_gap"}
    parts = []
    for key, what in ((thing.body.name, "gap {}"), (f"{thing.body.name} moved", "{} after movement")):
        figure = found.get(key)
        if figure is not None:
            parts.append(what.format(plan.tape.short(units.to_base(figure.typical, figure.unit))))
    if thing.asked is not None:
        parts.append(f"{plan.tape.short(units.to_base(thing.asked.typical, thing.asked.unit))} asked")
    return "; ".join(parts)


def finished(plan: Plan) -> str:
    """The finished tube in two views with what it must clear."""
    right, up, names = views(plan)
    shown, askew, left = obstacles(plan, right, up)
    words = {t.body.name: gap_words(plan, t).replace("; ", ", ") for t in plan.things}
    notes = [f"not drawn: {name}, {words[name]}" for name in left]
    if plan.line is None or plan.shape is None or plan.shape.stick is None:
        raise ValueError("the tube has no path")
    return tube_drawing.finished(
        plan.line, plan.od, title=plan.name, right=right, up=up, names=names, reads=plan.tape.short,
        turns=[b.turn for b in plan.shape.stick.bends], obstacles=shown, pipes=askew, notes=notes,
    )  # fmt: skip


def stick(plan: Plan) -> str:
    """The straight stick with its marks."""
    if plan.layout is None:
        raise ValueError("the tube has no marks")
    notes = []
    if any("?" in s.text or s.angle is None for s in plan.settings):
        notes.append("SET with a question mark, or none: bend a test piece of this tube first and write the angle in.")
    if plan.datum == "centre":
        notes.append(f"Centre line: {datum_words(plan).split(', ', 1)[1]}.")
    return stick_drawing.stick(
        plan.layout, plan.od, title=f"{plan.name}: the stick", set_to=[s.text for s in plan.settings], reads=plan.tape.reads,
        datum=_DATUM[plan.datum], seam=plan.seam, notes=notes,
    )  # fmt: skip


def wraps(plan: Plan, keys: Mapping[str, Any]) -> list[Drawing]:
    """Pages at full size: the strip with the turn lines, and the copes and mitres that were asked for."""
    out: list[Drawing] = []
    layout = plan.layout
    if layout is None:
        return out
    lines = [(str(n), line) for n, line in enumerate(layout.stick.lines, 1)]
    if plan.seam is not None:
        lines.append(("S", plan.seam))
    pages = paper.wrap_strip(plan.od, lines, title=f"{plan.name}: wrap strip", reads=plan.tape.reads)
    out += [Drawing(f"{plan.name}: wrap strip, full size", p, "landscape") for p in pages]

    def si(text: str, dim: str) -> float:
        got = units.parse_measure(text, dim)
        return units.to_base(float(got.value), got.unit)

    for row in keys.get("copes") or ():
        if plan.metal is None:
            text = "the wall or the metal is not known: no template"
            plan.sheet.checks.append(Check(f"cope of the {row['end'].upper()}", CANNOT_TELL, text))
            continue
        try:
            pages = paper.cope_template(
                header_od=si(row["onto"], "length"), od=plan.od, wall=plan.metal.wall, angle=si(row["angle"], "angle"),
                offset=si(row["offset"], "length") if row.get("offset") else 0.0,
                title=f"{plan.name}: cope of the {row['end'].upper()}", reads=plan.tape.reads,
            )  # fmt: skip
        except ValueError as error:
            plan.sheet.checks.append(Check(f"cope of the {row['end'].upper()}", NOT_OK, str(error)))
            continue
        out += [Drawing(f"{plan.name}: cope, full size", p, "landscape") for p in pages]
    for row in keys.get("mitres") or ():
        angle = si(row["angle"], "angle")
        kind = "pie cuts" if row.get("radius") else "mitre"
        title = f"{plan.name}: {kind}, {degrees(angle):.4g} deg"
        try:
            if row.get("radius"):
                pages = paper.pie_template(
                    plan.od,
                    si(row["radius"], "length"),
                    angle,
                    int(row.get("joints") or 0),
                    title=title,
                    reads=plan.tape.reads,
                )
            else:
                pages = paper.mitre_template(plan.od, angle, title=title, reads=plan.tape.reads)
        except ValueError as error:
            plan.sheet.checks.append(Check(f"{kind}, {degrees(angle):.4g} deg", NOT_OK, str(error)))
            continue
        out += [Drawing(f"{title}, full size", p, "landscape") for p in pages]
    return out


def drawings(plan: Plan, keys: Mapping[str, Any]) -> list[Drawing]:
    """Every drawing of the tube, each a whole page."""
    out = [
        Drawing(f"{plan.name}: finished tube", finished(plan), "landscape"),
        Drawing(f"{plan.name}: the stick", stick(plan), "landscape"),
    ]
    return [*out, *wraps(plan, keys)]
