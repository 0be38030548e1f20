"""Items of ``[[exhausts]]`` -> Items: their sheets, drawings and cards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from gaugeblock import units
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.making import base
from gaugeblock.answer.open_sheet import Task
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Drawn, Typed
from gaugeblock.calc import path as paths
from gaugeblock.drawing import run_drawing
from gaugeblock.drawing.lengths import tape
from gaugeblock.errors import GaugeblockError, InputError, Problem
from gaugeblock.exhaust.job import PIPE, SMALL, Exhaust, ExhaustGap
from gaugeblock.exhaust.run import answer as run_answer
from gaugeblock.exhaust.run.answer import Worked
from gaugeblock.exhaust.run.given import Flex, Gap, Hanger, Mass, Run
from gaugeblock.exhaust.run.hanging import Hung
from gaugeblock.exhaust.run.judging import left_of
from gaugeblock.exhaust.run.shape import Shape, drawn
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata
from gaugeblock.units import Measure, text_of

_PIPE = ("power", "displacement", "speed", "pipes", "gas", "back_pressure")
_RUN = (
    *("length", "od", "wall", "material", "hot", "expansion", "cold_end", "fixed", "pressure"),
    *("hot_finish", "air", "soak_air", "jurisdiction"),
)
# For the heat of a neighbour: keys of its gap, and of the run.
_OF_GAP = ("od", "finish", "what", "state", "limit", "measured")
_OF_RUN = ("hot", "hot_finish", "air", "soak_air")
_BY = (Box("by, date", half=True), Box("checked by, date", half=True))


def problems(item: Exhaust, data: Refdata) -> Iterator[Problem]:
    """Nothing stops the job here: what the tables do not know of an item is that item's question."""
    yield from ()


def item(job: Exhaust, shop: Shop, data: Refdata) -> Item:
    """The Item of one exhaust that is made of no tubes of the job."""
    return item_of(job, shop, data, {})


def item_of(job: Exhaust, shop: Shop, data: Refdata, tubes: Mapping[str, Drawn]) -> Item:
    """The Item of one exhaust; ``tubes`` are those of the job whose shape is known, by name in lower case."""
    facts = [Row("where", job.where or ""), *_facts(job)]
    if job.kind == PIPE:
        return Item("exhaust", job.name, facts, _pipe_sheet(job, data), _pipe_card(job))
    if job.kind in SMALL:
        from gaugeblock.exhaust.tasks import small  # what a job does not have is not loaded

        return small(job, facts, data)
    sheet, found, run = _run_sheet(job, data, tubes)
    metric = shop.units == "metric"
    if found is not None and run is not None:
        sheet = sheet.replace(drawings=(*sheet.drawings, _drawing(job.name, run, found, metric, data)))
    return Item("exhaust", job.name, facts, sheet, _run_card(job, run, found, data))


def _facts(job: Exhaust) -> list[Row]:
    rows = [Row(k.replace("_", " "), str(getattr(job, k))) for k in (*_RUN, *_PIPE) if getattr(job, k) is not None]
    if job.tubes:
        rows.insert(0, Row("made of", ", ".join(job.tubes)))
    if job.notes:
        rows.append(Row("notes", job.notes))
    return rows


def _pipe_sheet(job: Exhaust, data: Refdata) -> Sheet:
    from gaugeblock.exhaust import pipe
    from gaugeblock.exhaust.keys import pipe_of

    asked: dict[str, str | None] = {k: getattr(job, k) for k in _PIPE}
    asked |= {k: text_of(getattr(job, k)) for k in ("od", "wall", "length")}
    task = Task(job.name, asked, pipe.VERB, pipe.SIZE, data)
    if not job.power:
        return task.missing(["power"])
    try:
        return pipe.judged(pipe_of(asked), asked, data)
    except GaugeblockError as error:
        return task.refused(error, {k: k for k in asked}, "power")


def _pipe_card(job: Exhaust) -> Card:
    what = ", ".join(t for t in (job.where, job.power, job.displacement) if t)
    return Card(what, boxes=[Box("pipe chosen"), *_BY], says=("exhaust_flow", "pipe_power_maximum"))


def _run_sheet(job: Exhaust, data: Refdata, tubes: Mapping[str, Drawn]) -> tuple[Sheet, Worked | None, Run | None]:
    asked: dict[str, str | None] = {k: text_of(getattr(job, k)) for k in _RUN}
    asked["tubes"] = ", ".join(job.tubes) or None
    task = Task(job.name, asked, run_answer.VERB, "exhaust run", data)
    try:
        known = [_tube(name, tubes) for name in job.tubes]
        size = {k: _same(job, k, known) for k in ("od", "wall", "material")}
        missing = [k for k, v in size.items() if v is None]
        if not (known or job.points or job.length):
            missing.append("length")
        if missing:
            return task.missing(missing), None, None
        run = _run(job, size)
        sheet, found = run_answer.whole(run, _shape(job, known, run, data), asked, data)
        return sheet, found, run
    except GaugeblockError as error:
        where = {k: k for k in Exhaust.keys}
        return task.refused(error, where, "tubes" if job.tubes else "length"), None, None


def _tube(name: str, tubes: Mapping[str, Drawn]) -> Drawn:
    found = tubes.get(name.casefold())
    if found is None:
        why = "no tube of this job by that name has a whole shape"
        raise InputError(name, "tubes", why, list(tubes)[:5], "draw the tube: its bends and straights, or its points")
    return found


def _same(job: Exhaust, key: str, tubes: list[Drawn]) -> Measure | str | None:
    """What the item says, else what its tubes say, if they agree."""
    own = getattr(job, key)
    if own is not None or not tubes:
        return own  # type: ignore[no-any-return]
    said = [getattr(t, key) for t in tubes]
    if any(str(s) != str(said[0]) for s in said):
        raise InputError(", ".join(map(str, said)), key, "the tubes of this run differ", (), f"give the run its {key}")
    return said[0]  # type: ignore[no-any-return]


def _run(job: Exhaust, size: dict[str, Measure | str | None]) -> Run:
    od, wall, material = size["od"], size["wall"], size["material"]
    if not isinstance(od, Measure) or not isinstance(wall, Measure):
        raise InputError(str(wall), "wall", "not a length", (), "give the wall as a length: .065 in")
    f = job.flex
    return Run(
        od,
        wall,
        str(material),
        hot=job.hot,
        expansion=job.expansion,
        cold_end=job.cold_end,
        length=job.length,
        fixed=job.fixed,
        flex=None if f is None else Flex(f.at, f.length, f.kind, f.travel, f.rate, f.area),
        pressure=job.pressure,
        hangers=[Hanger(h.at, h.length, h.limit) for h in job.hangers],
        masses=[Mass(m.what, m.at, m.mass) for m in job.masses],
        gaps=[Gap(g.to, g.gap, g.at, _heat(job, g, od)) for g in job.gaps],
        jurisdiction=job.jurisdiction,
    )


def _heat(job: Exhaust, gap: ExhaustGap, od: Measure) -> dict[str, str]:
    """What is known for the heat of a neighbour; nothing where nothing of its own was filled in."""
    own = {k: text for k in _OF_GAP if (text := text_of(getattr(gap, k)))}
    if not own:
        return {}
    run = {"pipe": od.text, **{k: text for k in _OF_RUN if (text := text_of(getattr(job, k)))}}
    return {**run, **own}


def _shape(job: Exhaust, tubes: list[Drawn], run: Run, data: Refdata) -> Shape:
    unit = "mm" if run.od.unit == "mm" else "in"
    if tubes:
        leaves = tuple(dict.fromkeys(f for t in tubes for f in t.leaves))
        return drawn([(t.name, t.line) for t in tubes], leaves, unit, data, is_placed=all(t.is_placed for t in tubes))
    typed = Typed(job.name, data)
    if not job.points:
        if job.length is None:
            raise InputError("length", "length", "not given", (), "give tubes, points or a length")
        return Shape(typed.figure(job.length, "length", "length", "run_length")[1])
    points = [typed.point(p, f"point {n}") for n, p in enumerate(job.points, 1)]
    bend = typed.number(job.radius, "radius", "length", "centre_line_radius") if job.radius else 0.0
    try:
        stick, pose = paths.from_points(points, bend)
    except ValueError as error:
        raise InputError(job.name, "points", str(error), (), "correct its points or its radius") from None
    return drawn([(job.name, paths.path(stick, pose))], typed.figures, unit, data, is_placed=True)


def _run_card(job: Exhaust, run: Run | None, found: Worked | None, data: Refdata) -> Card:
    what = ", ".join(t for t in (job.where, text_of(job.od), job.material, ", ".join(job.tubes)) if t)
    boxes = [Box("gaps checked hot"), *_BY]
    if run is None or found is None:
        return Card(what, boxes=boxes)
    notes = []
    if found.mass is not None:
        notes.append(f"the whole run is {number_only(found.mass, data)}")
    if found.fixing.force is not None:
        notes.append(f"the fixed point takes {number_only(found.fixing.force, data)} along the run")
    if found.fixing.takes is not None:
        notes.append(f"the flexible section takes up {number_only(found.fixing.takes, data)}")
    if run.gaps and found.end is not None:
        left = (f"{g.to} {number_only(left_of(g, found, data), data)}" for g in run.gaps)
        notes.append(f"gaps that are left hot: {', '.join(left)}")
    notes += [f"heat of the {to}: {warm.said}" for to, warm in found.warm if warm.said]
    return Card(
        what,
        "HOT" if found.end is not None else "",
        counted="run",
        order="fixed point first, then the hangers from the front; clamps last, nothing under strain",
        notes=notes,
        table=_table(run, found, data),
        boxes=boxes,
        says=("hanger_load", "run_movement", "hanger_swing", "hung_mass", "anchor_force", "gap_hot"),
    )


def _table(run: Run, found: Worked, data: Refdata) -> list[tuple[str, ...]]:
    """Each support: where, what it carries, how far it moves, its swing."""
    rows = [
        (
            one.name,
            number_only(one.at, data),
            _carries(one, data),
            number_only(one.movement, data) if one.movement is not None else "",
            number_only(one.swing, data) if one.swing is not None else "",
        )
        for one in found.hung
    ]
    return [("HOLDS AT", "ALONG THE PIPE", "CARRIES", "MOVES HOT", "SWINGS"), *rows] if rows else []


def _carries(one: Hung, data: Refdata) -> str:
    """What a support carries; up where the run pushes up at it."""
    if one.load is None:
        return ""
    said = number_only(one.load, data)
    return f"up {said.removeprefix('-')}" if said.startswith("-") else said


def _drawing(name: str, run: Run, found: Worked, metric: bool, data: Refdata) -> Drawing:
    reads = tape("mm" if metric else "1/32 in")
    marks = [
        run_drawing.Mark("hanger", base(h.at), _hanger_words(h, data)) for h in found.hung if h.name != "fixed point"
    ]
    if run.fixed is not None:
        marks.append(run_drawing.Mark("fixed", run.fixed.to("m"), f"fixed {run.fixed.text}"))
    if run.flex is not None:
        length = run.flex.length.to("m") if run.flex.length is not None else 0.0
        marks.append(run_drawing.Mark("flex", run.flex.at.to("m"), "flex", length))
    marks += [run_drawing.Mark("mass", m.at.to("m"), f"{m.what} {m.mass.text}") for m in run.masses]
    marks += [run_drawing.Mark("gap", g.at.to("m"), f"{g.to} {g.gap.text}") for g in run.gaps if g.at is not None]
    grows = number_only(found.end, data) if found.end is not None else ""
    long = base(found.shape.length)
    svg = run_drawing.drawing(
        name, long, found.shape.line, marks, grows, reads.short(long), is_placed=found.shape.is_placed
    )
    return Drawing(f"{name}: fixed point, hangers, growth and gaps", svg, wide=True)


def _hanger_words(one: Hung, data: Refdata) -> str:
    load = _carries(one, data) or "____"
    return f"{one.name.removeprefix('hanger ')}: {units.significant(one.at.typical, 4)} {one.at.unit}, {load}"
