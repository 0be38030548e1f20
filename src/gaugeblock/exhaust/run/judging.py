"""The checks of a run: is all given, does anything carry too much, swing too far, or touch when hot."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check, at_most
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.exhaust.hanger import habit as habit_of
from gaugeblock.exhaust.run.fixing import between
from gaugeblock.exhaust.run.hanging import begins
from gaugeblock.lookup import look_up

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.exhaust.run.answer import Worked
    from gaugeblock.exhaust.run.given import Gap, Run
    from gaugeblock.exhaust.run.hanging import Hung
    from gaugeblock.exhaust.warming import Warmed
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

    Told = tuple[list[Check], list[Question]]

LIMITS = "exhaust/limits"
_FRONT_M = 0.15  # the fixed point is the engine itself


def typed(run: Run) -> Iterator[tuple[Measure, str, str]]:
    """Every measure of a run with its quantity and the key that it was typed under."""
    yield run.od, "tube_od", "od"
    yield run.wall, "tube_wall", "wall"
    one = ((run.hot, "run_temperature", "hot"), (run.length, "run_length", "length"))
    for measure, quantity, key in (*one, (run.pressure, "design_pressure", "pressure")):
        if measure is not None:
            yield measure, quantity, key
    if run.expansion is not None:
        for end in dict.fromkeys((run.expansion.ends.low, run.expansion.ends.high)):
            yield end, "expansion_coefficient", "expansion"
    if run.cold_end is not None:
        for end in dict.fromkeys((run.cold_end.ends.low, run.cold_end.ends.high)):
            yield end, "cold_end", "cold_end"
    for hanger in run.hangers:
        for measure, quantity in ((hanger.length, "hanger_length"), (hanger.limit, "hanger_limit")):
            if measure is not None:
                yield measure, quantity, "hangers"
    for mass in run.masses:
        yield mass.mass, "part_mass", "masses"
    if run.flex is not None:
        flex = run.flex
        for measure, quantity in (
            (flex.length, "flexible_length"),
            (flex.travel, "bellows_travel"),
            (flex.rate, "spring_rate"),
            (flex.area, "bellows_area"),
        ):
            if measure is not None:
                yield measure, quantity, "flex"


def places(run: Run) -> Iterator[tuple[Measure, str]]:
    """Every place on a run with the key that it was typed under."""
    for hanger in run.hangers:
        yield hanger.at, "hangers"
    for mass in run.masses:
        yield mass.at, "masses"
    for gap in run.gaps:
        if gap.at is not None:
            yield gap.at, "gaps"
    if run.fixed is not None:
        yield run.fixed, "fixed"
    if run.flex is not None:
        yield run.flex.at, "flex"


def judged(run: Run, found: Worked, data: Refdata) -> Told:
    """All checks of a run, and what must be done to settle them."""
    checks: list[Check] = []
    questions: list[Question] = []
    for more, asks in (
        _growth(run, found),
        _hung(run, found, data),
        _spacing(run, data),
        _flexible(run, found, data),
        _fixed(found),
        _on_engine(run, found, data),
        *(_gap(gap, found, data, run) for gap in run.gaps),
    ):
        checks += more
        questions += asks
    for _, warm in found.warm:
        checks += warm.checks
        questions += warm.questions
    return checks, questions


def _asked(name: str, why: str, kind: str, text: str, key: str) -> Told:
    check = Check(name, CANNOT_TELL, why, bears=ASK)
    return [check], [Question(kind, text, key, (name,))]


def _growth(run: Run, found: Worked) -> Told:
    name = "growth"
    if run.fixed is None:
        why = "the place of the fixed point is not given"
        return _asked(name, why, FILL_IN, "Where is the run held so that it cannot move along?", "fixed")
    if run.hot is None:
        why = "how hot the metal gets is not given"
        return _asked(
            name, why, MEASURE, "Measure the metal of the run at its hottest, or fill in what to count on.", "hot"
        )
    if found.growth is None:
        why = f"no published growth of {run.material} to {run.hot.text} was found"
        return _asked(
            name, why, ASK_MAKER, f"Ask the tube maker how {run.material} grows to {run.hot.text}.", "material"
        )
    return [], []


def _hung(run: Run, found: Worked, data: Refdata) -> Told:
    if found.mass is None:
        why = f"no density of {run.material} is listed"
        return _asked("hangers", why, ASK_MAKER, f"Ask the tube maker for the mass of {run.material}.", "material")
    loads = [h for h in found.hung if h.load is not None]
    if not loads:
        why = "it hangs from fewer than two points behind the flexible section"
        return _asked(
            "hangers", why, FILL_IN, "Where do the hangers stand? Two at least, from the front end.", "hangers"
        )
    checks, questions = [_load(one, data) for one in loads], []
    if not run.masses:
        usual = look_up(LIMITS, "part_mass", data=data, subject="silencer of a car", case="any")
        why = (
            "the pipe alone is counted: nothing that hangs on it is given, and a silencer has"
            f" {number_only(usual, data)}"
        )
        checks.append(Check("what hangs on the run", CANNOT_TELL, f"{why} (HABIT, from memory)", bears=INFORM))
    lacking = [h for h in found.hung if h.name.startswith("hanger") and h.limit is None]
    if lacking:
        most = max((h.load for h in lacking if h.load is not None), key=base)
        why = f"what a hanger may carry is not given; the most loaded has {number_only(most, data)} at rest"
        more = _asked("what the hangers may carry", why, ASK_MAKER, f"Ask the maker of the hangers: {why}.", "hangers")
        checks += more[0]
        questions += more[1]
    more = _swings(found, data)
    return [*checks, *more[0]], [*questions, *more[1]]


def _load(one: Hung, data: Refdata) -> Check:
    """A support's load against what it may carry; one that would pull down carries nothing."""
    load = one.load
    if load is None:
        raise ValueError("a support without a load is not judged")
    actual = Bound(load.typical, load.unit, figure=load)
    name = f"load of {one.name}"
    if load.typical <= 0 and not one.name.startswith("hanger"):
        why = f"the run pushes up at the {one.name}, by {number_only(load, data).removeprefix('-')}"
        return Check(name, CANNOT_TELL, why, None, actual, subject=one.name, bears=INFORM)
    if load.typical <= 0:
        why = f"{one.name} carries nothing: the run lifts off it, and its neighbour has it all"
        return Check(name, NOT_OK, why, None, actual, subject=one.name, bears=ASK)
    if one.limit is None:
        return Check(name, OK, f"{one.name} carries {number_only(load, data)} at rest", None, actual, subject=one.name)
    most = units.from_base(base(one.limit), load.unit)
    said = f"{one.name} carries {number_only(load, data)}, it may carry {number_only(one.limit, data)}"
    return at_most(name, actual, Bound(most, load.unit, "max", one.limit), said, subject=one.name)


def _swings(found: Worked, data: Refdata) -> Told:
    """How far each hanger swings, against the habit."""
    limit = habit_of("swing", data)
    checks, questions = [], []
    for one in found.hung:
        if one.swing is None:
            continue
        said = (
            f"{one.name} swings {number_only(one.swing, data)} when hot, the habit is {number_only(limit, data)} at"
            " most"
        )
        actual = Bound(one.swing.typical, "deg", figure=one.swing)
        required = Bound(units.from_base(base(limit), "deg"), "deg", "max", limit)
        check = at_most(f"swing of {one.name}", actual, required, said, subject=one.name, bears=ASK)
        checks.append(check)
        if check.result != OK:
            text = f"Hang {one.name} on a longer rubber, or set it ahead when cold: {said}."
            questions.append(Question(FILL_IN, text, "hangers", (check.name,)))
    moved = [h for h in found.hung if h.movement is not None and h.length is None]
    if moved:
        why = "the length of the hangers is not given, so neither is their swing"
        more = _asked("swing of the hangers", why, MEASURE, "Measure the hangers from pin to pin.", "hangers")
        checks += more[0]
        questions += more[1]
    return checks, questions


def _spacing(run: Run, data: Refdata) -> Told:
    """The way from hanger to hanger and from the flexible section to the first, against the habits."""
    checks, questions = [], []
    habit = habit_of("spacing", data)
    unit = run.od.unit
    for n, (a, b) in enumerate(pairwise(run.hangers), 1):
        far = units.from_base(b.at.to("m") - a.at.to("m"), unit)
        most = units.from_base(units.to_base(habit.high or habit.typical, habit.unit), unit)
        pair = f"hangers {n} and {n + 1}"
        said = f"{pair} are {units.significant(far, 3)} {unit} apart, the habit is {number_only(habit, data, unit)}"
        check = at_most(f"spacing of {pair}", Bound(far, unit), Bound(most, unit, "max", habit), said, bears=ASK)
        checks.append(check)
        if check.result != OK:
            questions.append(Question(FILL_IN, f"Put a hanger between: {said}.", "hangers", (check.name,)))
    if run.hangers and run.flex is not None:
        limit = habit_of("first", data)
        far = units.from_base(run.hangers[0].at.to("m") - begins(run), unit)
        most = units.from_base(base(limit), unit)
        said = (
            f"the first hanger stands {units.significant(far, 3)} {unit} behind the flexible section, the habit is"
            f" {number_only(limit, data, unit)} at most"
        )
        check = at_most("first hanger", Bound(far, unit), Bound(most, unit, "max", limit), said, bears=ASK)
        checks.append(check)
        if check.result != OK:
            questions.append(Question(FILL_IN, f"Move the first hanger forward: {said}.", "hangers", (check.name,)))
    return checks, questions


def _flexible(run: Run, found: Worked, data: Refdata) -> Told:
    """Whether what grows between the engine and the fixed point has where to go."""
    name = "flexible section"
    if found.growth is None:
        return [], []
    fixed = found.growth.fixed
    takes, travel = found.fixing.takes, found.fixing.travel
    if base(fixed) > 1e-6 and not between(run, fixed):
        why = "nothing takes up what grows between the engine and the fixed point"
        text = "Put a flexible section or a sliding joint between engine and fixed point, or fix the run at the front."
        return _asked(name, why, FILL_IN, text, "flex")
    if takes is None:
        return [], []
    if travel is None:
        why = f"its travel is not given; it must take {number_only(takes, data)} and the engine's own movement"
        return _asked(name, why, ASK_MAKER, f"Ask the maker of the flexible section for its travel: {why}.", "flex")
    least = units.from_base(units.to_base(travel.least, travel.unit), takes.unit)
    both = [f"{number_only(f, data)} ({units.significant(1000 * base(f), 3)} mm)" for f in (takes, travel)]
    said = f"it must take {both[0]} and the engine's own movement, it has {both[1]}"
    bears = "stop" if travel.basis == "stated" else ASK
    check = at_most(
        name, Bound(takes.typical, takes.unit, figure=takes), Bound(least, takes.unit, "max", travel), said, bears=bears
    )
    if check.result == OK:
        return [check], []
    return [check], [Question(ASK_MAKER, f"Fit one with more travel: {said}.", "flex", (name,))]


def _fixed(found: Worked) -> Told:
    """What the force on the fixed point leaves out."""
    if found.growth is None:
        return [], []
    force, parts = found.fixing.force, {p.quantity for p in found.fixing.parts}
    lacks = []
    if found.fixing.takes is not None:
        lacks += [] if "spring_force" in parts else ["the spring rate of the flexible section"]
        lacks += [] if "pressure_thrust" in parts else ["its area and the pressure"]
    if force is None and not lacks:
        return [], []
    if not lacks:
        return [], []
    why = (
        f"{' and '.join(lacks)} {'are' if len(lacks) > 1 else 'is'} not given: the fixed point takes more than is said"
    )
    text = f"Ask the maker of the flexible section: {' and '.join(lacks)}."
    return _asked("fixed point", why, ASK_MAKER, text, "flex")


def _on_engine(run: Run, found: Worked, data: Refdata) -> Told:
    """What hangs on the engine and its mounts where no flexible section parts them; figures of other services
    inform.
    """
    front = next((h for h in found.hung if h.name == "fixed point" and base(h.at) < _FRONT_M), None)
    if run.flex is not None or front is None or front.load is None or front.load.typical <= 0:
        return [], []
    name = "weight on the engine mounts"
    limit = look_up(
        LIMITS,
        "hung_mass_maximum",
        data=data,
        subject="exhaust weight on the engine, hot",
        case="any",
        service="industrial",
    )
    said = (
        f"the engine and its mounts carry {number_only(front.load, data)} of the run; a guide for generator sets allows"
    )
    reason = f"{said} {number_only(limit, data)}, and for cars none was found"
    actual = Bound(front.load.typical, front.load.unit, figure=front.load)
    return [Check(name, CANNOT_TELL, reason, None, actual, bears=INFORM)], []


def _gap(gap: Gap, found: Worked, data: Refdata, run: Run) -> Told:
    """What is left of a gap when the run is hot, against rules and habits."""
    from gaugeblock.exhaust import gap as gaps

    known = gaps.neighbour(gap.to, run.jurisdiction, data)
    moved, left = movement_at(gap, found, data), left_of(gap, found, data)
    checks, questions = gaps.checked(known, left, data, "gaps")
    if not gap.heat and known.name in gaps.ROUND:
        checks.append(Check(f"temperature of the {known.name}", CANNOT_TELL, gaps.NO_HEAT, bears=INFORM))
    if moved is None:
        why = "how far the run moves there is not known"
        checks.append(Check(f"movement at the {known.name}", CANNOT_TELL, why, bears=INFORM))
    return checks, questions


def warm_of(run: Run, found: Worked, data: Refdata) -> list[tuple[str, Warmed]]:
    """How warm each neighbour gets of which something is known for that, by its name as typed."""
    from gaugeblock.exhaust import gap as gaps
    from gaugeblock.exhaust.warming import heat_of, warmed

    return [
        (
            gap.to,
            warmed(gaps.neighbour_of(gap.to), left_of(gap, found, data), heat_of(gap.heat, data), data, "gaps"),
        )
        for gap in run.gaps
        if gap.heat
    ]


def left_of(gap: Gap, found: Worked, data: Refdata) -> Figure:
    """What is left of a gap when the run is hot; the gap itself where its movement is not known."""
    from gaugeblock.exhaust import gap as gaps

    cold = stated(gap.gap, "gap", f"gap to the {gap.to}", data, key={"to": gap.to})
    moved = movement_at(gap, found, data)
    return gaps.hot_gap(cold, moved, gap.to, data) if moved is not None else cold


def movement_at(gap: Gap, found: Worked, data: Refdata) -> Figure | None:
    """How far the run moves where a neighbour stands; the most of all its places where that is not said."""
    if found.growth is None:
        return None
    if gap.at is None:
        front = [h.movement for h in found.hung if h.movement is not None]
        return max((f for f in (found.end, *front) if f is not None), key=base)
    at = stated(gap.at, "run_place", f"at the {gap.to}", data)
    return found.growth.movement(f"at the {gap.to}", at)
