"""From what must be cleared to marks on a straight stick: the plan of one tube."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_most
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Typed, moves_of, moves_words
from gaugeblock.calc import clearance as space
from gaugeblock.calc import path as paths
from gaugeblock.calc.stick import Die, lay_out
from gaugeblock.drawing.lengths import TAPES, tape
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import Refdata, nearest, refdata
from gaugeblock.tubes import keys as tube_keys
from gaugeblock.tubes.plan import marks
from gaugeblock.tubes.plan import refusal as refusals
from gaugeblock.tubes.plan.keys import Missing, Shape, shape_kind, shape_of
from gaugeblock.tubes.plan.planned import Plan

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.figure import Figure

NAME = refusals.NAME


def plan(
    keys: Mapping[str, Any], *, die: Mapping[str, Any] | None = None, stock_length: str | None = None, draw: bool = False,
    data: Refdata | None = None,
) -> Sheet:  # fmt: skip
    """The plan of one tube: marks on a straight stick, whether the bends are allowed, whether it clears and carries.

    Parameters: ``keys`` as a ``[[tubes]]`` item of a job has them, all text as people type it: ``name``, ``od``, ``wall``,
    ``material``, ``method``, ``radius`` (or the die's), one shape of ``clear``, ``single``, ``offset``, ``kick_up``, ``saddle``,
    ``template``, ``bends`` with ``end``, ``points``; ``marks_from``, ``trim``, ``reads``, ``place``, ``obstacles``, ``gap``,
    ``moves``, ``collars``, ``removal``, ``load``, ``bolts``, ``wall_needed``. ``die`` as an item of ``[[shop.dies]]``.
    ``stock_length`` as it is bought; ``draw`` adds the drawings.

    Returns a Sheet: cut length first, then straight, turn, bend, arc, mark and angle to set of each bend. A shape that does
    not fit the die has no marks: its check is ``not ok`` with the smallest rise and the largest radius that would work.
    Raises InputError and UnitError for what cannot be read.
    Source of the arcs: NAVEDTRA 14119, bend allowance; what follows is geometry (formulas.csv names each rule).

    >>> sheet = plan({"od": "1 in", "radius": "3 in", "offset": {"rise": "6 in", "angle": "30 deg", "before": "4 in", "after": "4 in"}})
    >>> sheet.figures[0].quantity, round(sheet.figures[0].typical, 3)  # 8 + 12 - 4 x 3 tan(15 deg) + 2 x 3 x pi / 6
    ('cut_length', 21.534)
    """
    return work_out(keys, die=die, stock_length=stock_length, draw=draw, data=data).sheet


def work_out(
    keys: Mapping[str, Any], *, die: Mapping[str, Any] | None = None, stock_length: str | None = None, draw: bool = False,
    data: Refdata | None = None,
) -> Plan:  # fmt: skip
    """As ``plan``, with the numbers behind the Sheet."""
    data = data or refdata()
    name = keys.get("name") or "tube"
    word = keys.get("reads") or ("mm" if (keys.get("od") or "").rstrip().endswith("mm") else "1/32 in")
    if word not in TAPES:
        raise InputError(word, "reads", "not a tape", nearest(word, list(TAPES)) or TAPES, "use one of these")
    datum = keys.get("marks_from") or "start"
    if datum not in marks.DATUMS:
        raise InputError(datum, "marks from", "not a datum", tuple(marks.DATUMS), "use one of these")
    asked: dict[str, str | None] = {k: _text(v) for k, v in keys.items() if v}
    if die and die.get("name"):
        asked["die"] = die["name"]
    sheet = Sheet(_title(name, keys, die), asked, data, [], [], [])
    made = Plan(name, sheet, tape(word), datum)
    typed = Typed(name, data)
    if not keys.get("od"):
        sheet.checks.append(Check(NAME, CANNOT_TELL, "od not given"))
        return made
    measure = tube_keys.outside_diameter(keys["od"], data)
    made.od = float(measure.value * units.factor(measure.unit))
    od = tube_keys.asked("od", "tube_od", measure)
    radius = _radius(keys, die, made, typed)
    if radius is None:
        sheet.checks.append(
            Check(NAME, CANNOT_TELL, "no centre-line radius: name a die that has one, or give the radius")
        )
        return made
    made.radius = radius
    die_figures = _die(keys, die or {}, made, typed, units.to_base(radius.typical, radius.unit))
    _metal(keys, made, radius, die)
    try:
        made.shape = _shape(keys, made, typed)
    except Missing as lost:
        sheet.checks.append(Check(NAME, CANNOT_TELL, f"{', '.join(lost.keys)} not given"))
    except (ValueError, InputError) as refusal:
        if isinstance(refusal, InputError):
            raise
        refusals.refused(made, refusal, refusals.with_grip(keys, made))
    if made.shape is not None and made.shape.stick is not None:
        round_it = _round_it(keys, made, typed)
        _stick(keys, made, typed, die_figures, od)
        _rest(keys, made, typed, stock_length, round_it)
    if made.metal is not None:
        known = {f.id for f in sheet.figures}
        sheet.figures += [f for f in made.metal.figures if f.id not in known]
        sheet.checks += made.metal.sheet.checks
        sheet.checks.append(made.metal.wall_check(keys.get("wall_needed")))
        sheet.cautions.append(made.metal.flattening())
        sheet.cautions += made.metal.sheet.cautions
    if draw and made.layout is not None:
        from gaugeblock.tubes.plan.drawings import drawings

        sheet.drawings = drawings(made, keys)
    return made


def _shape(keys: Mapping[str, Any], made: Plan, typed: Typed) -> Shape:
    """The shape; over a narrow thing the flat is drawn out to the straight that the die needs, which only adds gap."""
    if keys.get("clear") and made.die.between and shape_kind(keys) == "clear":
        try:
            return shape_of(keys, typed, radius=made.die.radius, od=made.od, needed=made.die.between)
        except paths.TooTightError:
            typed.figures = [f for f in typed.figures if not f.locator.startswith(("clear ", "place ", "tube moves"))]
    return shape_of(keys, typed, radius=made.die.radius, od=made.od, needed=0.0)


def _text(value: Any) -> str:
    """A typed key as one line of text."""
    if isinstance(value, dict):
        return ", ".join(f"{k} {_text(v)}" for k, v in value.items() if v)
    if isinstance(value, list | tuple):
        return (
            "; ".join(_text(v) for v in value)
            if any(isinstance(v, dict | list | tuple) for v in value)
            else " ".join(map(str, value))
        )
    return str(value)


def _title(name: str, keys: Mapping[str, Any], die: Mapping[str, Any] | None) -> str:
    size = " x ".join(keys[k] for k in ("od", "wall") if keys.get(k))
    with_die = f"die {die['name']}".replace("die die", "die") if die and die.get("name") else ""
    return ": ".join(t for t in (name, ", ".join(p for p in (size, keys.get("material"), with_die) if p)) if t)


def _radius(keys: Mapping[str, Any], die: Mapping[str, Any] | None, made: Plan, typed: Typed) -> Figure | None:
    """The centre-line radius of the bends: the tube's own, or its die's; derived when it was measured to the inside."""
    from fractions import Fraction

    text, where = keys.get("radius"), "radius"
    if not text and die and die.get("radius"):
        text, where = die["radius"], f"die {die.get('name', '')} radius"
    if not text:
        return None
    figure, centre, to = tube_keys.radius(text, None, Fraction(made.od).limit_denominator(10**9), made.sheet.data)
    own = figure.replace(
        id=f"asked:{made.name}|{where}:{figure.text} {figure.unit}", locator=where, key={"tube": made.name}
    )
    typed.figures.append(own)
    if to == "inside":
        return made.make("centre_line_from_inside", "centre_line_radius", float(centre), (own,))
    return own


def _die(keys: Mapping[str, Any], die: Mapping[str, Any], made: Plan, typed: Typed, radius: float) -> dict[str, Any]:
    """The die in SI, with the Figures of what is known of it."""
    got: dict[str, Any] = {"mark": None, "grip": None, "between": None}
    values = {"mark": 0.0, "grip": 0.0}
    for key, name, quantity, least in (
        ("mark", "start_mark", "start_mark_offset", None), ("grip", "grip", "grip_length", 0), ("between", "between", "grip_length", 0),
    ):  # fmt: skip
        if die.get(name):
            values[key], got[key] = typed.figure(die[name], f"die {name.replace('_', ' ')}", "length", quantity, least)
    got["between"] = got["between"] or got["grip"]
    first = len(typed.figures)
    metal = " ".join(keys[k] for k in ("material", "product", "condition", "spec") if keys.get(k))
    tests = marks.tests_of(die.get("test_bends") or (), typed, metal, keys.get("wall"))
    if die.get("test_bends") and not tests:
        text = "none of the die's test bends is complete and of this material and wall: they are not used"
        made.sheet.cautions.append(Caution(text, "damage", (), "calculated"))
    got["tests"] = tuple(typed.figures[first:])
    made.die = Die(radius, values["mark"], values["grip"], values.get("between"), tests)
    if die.get("od") and keys.get("od"):
        same = units.parse_measure(die["od"], "length", "die od")
        if abs(float(same.value * units.factor(same.unit)) - made.od) > 1e-6:
            made.sheet.checks.append(
                Check(
                    "die fits the tube",
                    NOT_OK,
                    f"the die is for {die['od']}, the tube is {keys['od']}: use a die of the tube's own OD",
                )
            )
    return got


def _metal(keys: Mapping[str, Any], made: Plan, radius: Figure, die: Mapping[str, Any] | None) -> None:
    """The bend sheet of this tube; what is not known of the metal is an open question."""
    lost = [k for k in ("wall", "material", "method") if not keys.get(k)]
    name = "radius against the governing minimum"
    if lost:
        made.sheet.checks.append(Check(name, CANNOT_TELL, f"{', '.join(lost)} not given"))
        return
    from gaugeblock.tubes.plan.metal import metal_of

    asked = {k: keys.get(k) for k in ("od", "wall", "material", "method", "product", "condition", "spec")}
    asked |= {
        "radius": f"{radius.typical!r} {radius.unit}" if radius.basis == "derived" else f"{radius.text} {radius.unit}"
    }
    asked |= {"service": keys.get("service") or "vehicle", "die": die.get("name") if die else None}
    try:
        made.metal = metal_of(asked, made.sheet.data)
    except LookupMiss as miss:
        near = f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else ""
        made.sheet.checks.append(Check(name, CANNOT_TELL, f"{miss.asked}: {miss.why}{near}"))


def _stick(keys: Mapping[str, Any], made: Plan, typed: Typed, die: Mapping[str, Any], od: Figure) -> None:
    """Everything that is marked, set, turned and cut."""
    shape, make, sheet, radius = made.shape, made.make, made.sheet, made.radius
    if shape is None or shape.stick is None or radius is None:
        return
    stick = shape.stick
    trim = keys.get("trim") or {}
    first = len(typed.figures)
    ends = [typed.number(trim[k], f"trim {k}", "length", "trim") if trim.get(k) else 0.0 for k in ("start", "end")]
    trims = (ends[0], ends[1])
    trim_figures = tuple(typed.figures[first:])
    layout = made.layout = lay_out(stick, made.die, trims=trims, datum=made.datum, step=made.tape.step)
    made.line = shape.line()
    leaves = (*shape.leaves, radius, *([od] if shape.kind == "clear" else []))
    rows = marks.stick_figures(shape, stick, make, radius)
    made.cut = marks.cut_figure(layout, rows, trim_figures, leaves, make)
    sheet.figures.append(made.cut)
    mark_inputs = (
        *leaves,
        *([die["mark"]] if die["mark"] is not None else []),
        *(trim_figures if made.datum != "centre" else ()),
    )
    at = marks.mark_figures(layout, mark_inputs, made.datum, make)
    angles = [next(f for f in row if f.quantity == "bend_angle") for row in rows[:-1]]
    made.settings, checks = marks.settings(stick, made.die, die["tests"], angles, made.metal, make)
    for n, row in enumerate(rows, 1):
        sheet.figures += row
        if n in at:
            sheet.figures.append(at[n])
        if n <= len(made.settings) and (found := made.settings[n - 1].figure) is not None:
            sheet.figures.append(found)
    seam = marks.seam_figure(stick, tuple(angles), make)
    if seam is not None:
        made.seam = seam[0]
        sheet.figures.append(seam[1])
    sheet.figures += marks.rounding(layout, made.die, made.settings, made.cut, make)
    sheet.checks.append(Check(NAME, OK, f"{len(stick.bends)} bends, every straight is there"))
    sheet.checks += checks
    if stick.bends and die["mark"] is None:
        text = "the die's start-mark offset is not given: the marks are the starts of the bends themselves; measure how far the die's mark stands from there"
        sheet.checks.append(Check("start mark of the die", CANNOT_TELL, text))
    grips = {"grip": die["grip"], "between": die["between"]}
    hint = refusals.hint(made, keys) if die["between"] is not None else ""
    sheet.checks += marks.grip_checks(stick, made.die, grips, trims, hint, make)
    zero = layout.datum + trims[0]
    said = f"Order of bends: {marks.order_words(layout)}. Marks are from {marks.DATUMS[made.datum]}"
    said += f", {made.tape.reads(zero)} from the START end of the blank" if made.datum == "centre" else ""
    sheet.cautions.append(
        Caution(f"{said}. Clockwise is as seen looking along the tube from START.", "note", (), "calculated")
    )
    if not keys.get("marks_from"):
        sheet.cautions.append(Caution("Assumed: marks from START (marks_from is not given).", "note", (), "calculated"))


def _round_it(keys: Mapping[str, Any], made: Plan, typed: Typed) -> tuple[Figure, ...]:
    """What stands round the tube, read before it is marked: an apex may have to be moved for it. Its typed figures."""
    shape = made.shape
    if shape is None or made.radius is None:
        return ()
    asked = typed.figure(keys["gap"], "gap", "length", "gap_asked")[1] if keys.get("gap") else None
    moved = moves_of(keys.get("moves"), typed, "tube moves")
    first = len(typed.figures)
    collars = _collars(keys, typed)
    own = tuple(typed.figures[first:])
    made.tube = space.Tube(made.name, shape.line(), made.od / 2, collars, moved)
    if shape.cleared is None and not keys.get("obstacles"):
        return own
    from gaugeblock.tubes.plan.space import things_of

    made.things = things_of(keys, shape, typed, asked)
    if shape.cleared is None and made.things:
        from gaugeblock.tubes.plan.regain import regain

        step = made.tape.step
        shape.regained = regain(shape, made.tube, made.things, radius=made.die.radius, step=step)
        for r in shape.regained:
            thing = next(t for t in made.things if t.body.name == r.name)
            shape.leaves = tuple(dict.fromkeys((*shape.leaves, *thing.leaves, r.asked)))
        made.tube = space.Tube(made.name, shape.line(), made.od / 2, collars, moved)
    return own


def _rest(
    keys: Mapping[str, Any], made: Plan, typed: Typed, stock_length: str | None, round_it: tuple[Figure, ...]
) -> None:
    """Stock, clearance, load and bolts."""
    shape, sheet, make, line = made.shape, made.sheet, made.make, made.line
    if shape is None or line is None or made.layout is None or made.radius is None or made.cut is None:
        return
    _stock(made, typed, stock_length)
    leaves = tuple({f.id: f for f in (*shape.leaves, made.radius, *round_it)}.values())
    if made.tube is None:
        return
    for at, _, _ in made.tube.collars:
        if at > line.length:
            text = f"a collar at {made.tape.reads(at)} lies off the tube, which is {made.tape.reads(line.length)} along its centre line"
            sheet.checks.append(Check("collars", NOT_OK, text))
    if shape.cleared is not None or keys.get("obstacles"):
        from gaugeblock.tubes.plan import space as clear

        figures, cautions = clear.corner_figures(shape, made.tube, made.things, leaves, make)
        sheet.figures += figures
        more, checks = clear.clearance(made.tube, moves_words(keys.get("moves")), made.things, leaves, make)
        sheet.figures += more
        sheet.checks += checks
        sheet.cautions += [*cautions, _frame_of_reference(keys, shape)]
        if shape.cleared is not None:
            text = "Assumed: what is cleared runs on square to the tube."
            sheet.cautions.append(Caution(text, "note", (), "calculated"))
    else:
        sheet.cautions.append(
            Caution(
                "Clearance was not asked: give what stands round the tube (obstacles) and the gap.",
                "note",
                (),
                "calculated",
            )
        )
    if keys.get("removal"):
        from gaugeblock.tubes.plan.space import removal_check

        figure, check = removal_check(keys["removal"], made.tube, typed, make)
        sheet.figures.append(figure)
        sheet.checks.append(check)
    force = None
    if keys.get("load") or keys.get("bolts"):
        from gaugeblock.tubes.plan import load

        for key in ("load", "bolts"):
            if not keys.get(key):
                continue
            if key == "load":
                got = load.carries(keys["load"], shape, line, made.metal, typed, make)
                force = got.force
            else:
                got = load.bolts(keys["bolts"], made.metal, force, typed, make)
            sheet.figures += got.figures
            sheet.checks += got.checks
            sheet.cautions += got.cautions
    if not keys.get("load"):
        sheet.cautions.append(Caution("Whether it carries was not asked: give its load.", "note", (), "calculated"))


def _collars(keys: Mapping[str, Any], typed: Typed) -> list[tuple[float, float, float]]:
    if not keys.get("collars"):
        return []
    from gaugeblock.tubes.plan.space import collars_of

    return collars_of(keys["collars"], typed, "collar")


def _frame_of_reference(keys: Mapping[str, Any], shape: Shape) -> Caution:
    if shape.is_placed:
        datum = keys.get("datum")
        said = f"the datum: {datum}" if datum else "a datum that is not stated in words (datum)"
        return Caution(f"Places are rearward, right and up of {said}.", "note", (), "calculated")
    return Caution(
        "Assumed: the tube starts at the datum, runs to the right, its first bend goes up (place is not given).",
        "note",
        (),
        "calculated",
    )


def _stock(made: Plan, typed: Typed, stock_length: str | None) -> None:
    name, layout, cut = "stock length", made.layout, made.cut
    if layout is None or cut is None:
        return
    if not stock_length:
        made.sheet.checks.append(
            Check(name, CANNOT_TELL, f"the stock length is not given; {made.tape.reads(layout.cut_rounded)} is cut")
        )
        return
    metres, figure = typed.figure(stock_length, "shop stock length", "length", "stock_length")
    limit = Bound(units.from_base(metres, made.tape.unit), made.tape.unit, figure=figure)
    text = f"{made.tape.reads(layout.cut_rounded)} is cut from {stock_length}"
    made.sheet.checks.append(at_most(name, Bound(cut.typical, made.tape.unit, figure=cut), limit, text))
