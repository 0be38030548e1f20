"""From what must be cleared to marks on a straight stick: the plan of one tube."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Bound, Check, at_most
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Typed
from gaugeblock.calc import path as paths
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes.bend.metal import own_figures
from gaugeblock.tubes.doubt import doubts_of
from gaugeblock.tubes.model import Tube
from gaugeblock.tubes.plan import refusal as refusals
from gaugeblock.tubes.plan.around import around_of
from gaugeblock.tubes.plan.decide import decision_of
from gaugeblock.tubes.plan.found import Found, joined
from gaugeblock.tubes.plan.given import Given
from gaugeblock.tubes.plan.marks import NAME, marks_of
from gaugeblock.tubes.plan.metal import bend_found, metal_of, other_bends, own_doubts
from gaugeblock.tubes.plan.planned import Plan
from gaugeblock.tubes.plan.read import die_of, tube_of
from gaugeblock.tubes.plan.section import is_asked, section_found
from gaugeblock.tubes.plan.shape import Die, Missing, Shape, is_straight, shape_of
from gaugeblock.tubes.plan.tool import tool_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.answer.drawing import Drawing
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.plan.around import Around
    from gaugeblock.tubes.plan.marks import Marks
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.tool import Tool


def plan(
    tube: Mapping[str, Any],
    *,
    die: Mapping[str, Any] | None = None,
    stock_length: str | None = None,
    draw: bool = False,
    data: Refdata | None = None,
) -> Sheet:
    """The plan of one tube: marks on a straight stick, whether the bends are allowed, whether it clears and carries.

    Parameters: ``tube`` with the keys of a ``[[tubes]]`` item of a job, all measures text with their unit:
    ``name``, ``od``,
    ``wall``, ``material``, ``method``, ``radius`` (or the die's), one shape of ``clear``, ``single``, ``offset``,
    ``kick_up``,
    ``saddle``, ``template``, ``bends`` with ``end``, ``points``; ``marks_from``, ``trim``, ``reads``, ``place``,
    ``obstacles``,
    ``gap``, ``moves``, ``collars``, ``removal``, ``load``, ``bolts``, ``wall_needed``; of its metal ``yield_strength``,
    ``tensile_strength``, ``modulus``, ``shear_modulus``; ``section`` (``length``, ``torque``) is a straight piece that
    is twisted. ``die`` as an item of
    ``[[shop.dies]]``. ``stock_length`` as it is bought; ``draw`` adds the drawings.

    Returns a Sheet: its decision is the length to cut. The figures are the cut length, then straight, turn, bend, arc,
    mark and angle to set of each bend (``sheet.figure("bend_mark")``; of bend 2 the one whose ``key["bend"]`` is
    ``2``).
    What must not be done stops, and gives no marks: a shape that does not fit the die has instead the smallest rise and
    the largest radius that would work. Raises InputError for a key that is not known, is missing or cannot be read.
    Source of the arcs: NAVEDTRA 14119, bend allowance; what follows is geometry (formulas.csv names each rule).

    >>> offset = {"rise": "6 in", "angle": "30 deg", "before": "4 in", "after": "4 in"}
    >>> sheet = plan({"od": "1 in", "radius": "3 in", "offset": offset})
    >>> sheet.figures[0].quantity, round(sheet.figures[0].typical, 3)  # 8 + 12 - 4 x 3 tan(15 deg) + 2 x 3 x pi / 6
    ('cut_length', 21.534)
    """
    return work_out(tube, die=die, stock_length=stock_length, draw=draw, data=data).sheet


def work_out(
    tube: Mapping[str, Any],
    *,
    die: Mapping[str, Any] | None = None,
    stock_length: str | None = None,
    draw: bool = False,
    data: Refdata | None = None,
) -> Plan:
    """As ``plan``, with the stages behind the Sheet."""
    data = data or refdata()
    stock = None if not stock_length else units.parse_measure(stock_length, "length", "shop stock length")
    made_die = None if die is None else die_of(die)
    return plan_of(Given(tube_of(tube, die, data), made_die, stock, data), draw=draw)


def plan_of(given: Given, *, draw: bool = False) -> Plan:
    """The plan of a tube: shape, what stands round it, marks, clearance, load, each from the one before."""
    doubts = _doubts(given)
    first = [Found(checks=[d.check for d in doubts], questions=[d.question for d in doubts])]
    if given.od is None:
        return _unknown(given, first, "od not given", "od", "Give the outside diameter of the tube.")
    tool = None if is_straight(given.tube) else tool_of(given)
    if tool is None and not is_straight(given.tube):
        why = "no centre-line radius: name a die that has one, or give the radius"
        return _unknown(given, first, why, "radius", "Give the centre-line radius of the die.")
    metal, open_metal = metal_of(given, tool)
    first += [] if metal is None else [Found(own_figures(metal.tube))]
    first += [Found(), open_metal] if tool is None else [Found((), tool.checks, tool.cautions), open_metal]
    bend = (
        Found()
        if metal is None
        else joined(
            [bend_found(metal, given, is_tested=tool is not None and bool(tool.tests)), other_bends(given, tool)]
        )
    )
    try:
        shape = _shape(given, tool)
    except Missing as lost:
        words = ", ".join(lost.keys)
        check = Check(NAME, CANNOT_TELL, f"{words} not given", bears=ASK)
        ask = Question(FILL_IN, f"Give {words} of the tube.", key_of(lost.keys[0]), (NAME,))
        found = joined([*first, Found(checks=[check], questions=[ask]), bend])
        return Plan(given, _sheet(given, found, None), tool, metal)
    except InputError:
        raise
    except ValueError as refusal:
        refused = Found() if tool is None else refusals.refused(given, tool, refusal)
        return Plan(given, _sheet(given, joined([refused, *first, bend]), None), tool, metal)
    around = around_of(given, shape)
    if shape.cleared is None and around.things and tool is not None:
        from gaugeblock.tubes.plan.regain import regained

        shape = regained(shape, around, radius=tool.die.radius, step=given.tape.step)
        around = around.along(shape)
    return _whole(given, tool, metal, shape, around, doubts, (first, bend), draw=draw)


def _doubts(given: Given) -> tuple[Doubt, ...]:
    """What was given and is not plausible, by itself and beside the tables."""
    return (*doubts_of(given), *own_doubts(given))


def _whole(
    given: Given,
    tool: Tool | None,
    metal: Metal | None,
    shape: Shape,
    around: Around,
    doubts: tuple[Doubt, ...],
    found: tuple[list[Found], Found],
    *,
    draw: bool,
) -> Plan:
    """The plan of a tube whose shape is known."""
    marks = marks_of(given, shape, tool, metal, refusals.hint(given, tool))
    radius = () if tool is None else (tool.radius,)
    first, bend = found
    section = section_found(given, marks.cut, doubts)
    stages = [
        *first,
        *([section] if is_asked(given) else []),
        marks.found,
        _stock(given, marks),
        _clear(given, shape, around, radius),
        _carries(given, shape, metal, doubts),
        bend,
        *([] if is_asked(given) else [section]),
    ]
    whole = joined(stages)
    made = Plan(given, _sheet(given, whole, marks), tool, metal, shape, around, marks)
    if not draw:
        return made
    from gaugeblock.tubes.plan.drawings import drawings

    shown, more = drawings(made)
    return made.replace(sheet=_sheet(given, joined([whole, more]), marks, shown))


def _clear(given: Given, shape: Shape, around: Around, radius: tuple[Figure, ...]) -> Found:
    """Whether the tube clears what stands round it; its stage is loaded where there is something to clear."""
    if around.things or around.tube.collars or given.tube.removal is not None:
        from gaugeblock.tubes.plan.clearance import clearance_of

        return clearance_of(given, shape, around, radius)
    text = "Clearance was not asked: give what stands round the tube (obstacles) and the gap."
    return Found(cautions=[Caution(text, "note", (), "calculated")])


def _carries(given: Given, shape: Shape, metal: Metal | None, doubts: tuple[Doubt, ...]) -> Found:
    """Whether the tube carries its load and its bolts; the stages are loaded where these are given."""
    force, stages = None, []
    if given.tube.load is not None:
        from gaugeblock.tubes.plan.load import carried

        load = carried(given, given.tube.load, shape, metal, doubts)
        force = load.force
        stages.append(load.found)
    if given.tube.bolts is not None:
        from gaugeblock.tubes.plan.bolts import bolted

        stages.append(bolted(given, given.tube.bolts, metal, force))
    if given.tube.load is None:
        text = "Whether it carries was not asked: give its load."
        stages.append(Found(cautions=[Caution(text, "note", (), "calculated")]))
    return joined(stages)


def _sheet(given: Given, found: Found, marks: Marks | None, drawings: list[Drawing] | None = None) -> Sheet:
    """The Sheet of all stages: made once, with what it comes to."""
    figures = {f.id: f for f in found.figures}
    questions = list(dict.fromkeys(found.questions))
    decision = decision_of(given, found, _doubts(given), None if marks is None else marks.cut)
    if decision.kind in ("stop", "none"):  # what must not be done, or is not known, gives no marks
        figures = {k: f for k, f in figures.items() if f.quantity not in ("bend_mark", "bend_angle_set")}
    return Sheet(
        given.title,
        given.asked,
        given.data,
        list(figures.values()),
        list(found.checks),
        list(found.cautions),
        drawings,
        decision,
        questions,
    )


def _unknown(given: Given, first: list[Found], why: str, key: str, ask: str) -> Plan:
    """A tube of which too little is known."""
    found = Found(checks=[Check(NAME, CANNOT_TELL, why, bears=ASK)], questions=[Question(FILL_IN, ask, key, (NAME,))])
    return Plan(given, _sheet(given, joined([*first, found]), None))


def refused_plan(given: Given, error: InputError) -> Plan:
    """A tube whose numbers cannot be together: what is wrong is its question."""
    check = Check(NAME, CANNOT_TELL, str(error), bears=ASK)
    found = Found(checks=[check], questions=[Question(FILL_IN, f"{error}.", key_of(error.where), (NAME,))])
    return Plan(given, _sheet(given, found, None))


def key_of(where: str) -> str:
    """The key of a tube that a place of it stands under: ``bends`` of bend 2, ``offset.rise`` of itself, else its
    points.
    """
    first = where.removeprefix("tube ").partition(" ")[0]
    if first.partition(".")[0] in Tube.keys:
        return first
    return "bends" if first == "bend" else "obstacles" if first not in ("a", "place") else "points"


def _shape(given: Given, tool: Tool | None) -> Shape:
    """The shape; over a narrow thing the flat is drawn out to the straight that the die needs, which only adds gap."""
    od = float(given.od_m)
    radius = 0.0 if tool is None else tool.die.radius
    if tool is not None and given.tube.clear is not None and tool.die.between:
        try:
            return shape_of(given.tube, Typed(given.name, given.data), Die(radius, od, tool.die.between))
        except paths.TooTightError:
            pass
    return shape_of(given.tube, Typed(given.name, given.data), Die(radius, od))


def _stock(given: Given, marks: Marks) -> Found:
    """Whether the tube as it is bought is long enough."""
    name, tape, cut = "stock length", given.tape, marks.cut
    if given.stock_length is None:
        why = f"the stock length is not given; {tape.reads(marks.layout.cut_length)} is cut"
        return Found(checks=[Check(name, CANNOT_TELL, why, bears=INFORM)])
    typed = Typed(given.name, given.data)
    metres, figure = typed.figure(given.stock_length, "shop stock length", "length", "stock_length")
    limit = Bound(units.from_base(metres, tape.unit), tape.unit, figure=figure)
    text = f"{tape.reads(marks.layout.cut_length)} is cut from {given.stock_length}"
    return Found(checks=[at_most(name, Bound(cut.typical, tape.unit, figure=cut), limit, text)])
