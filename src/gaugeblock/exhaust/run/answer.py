"""The answer ``exhaust_run``: how far a run grows, what its hangers carry, what its fixed point takes."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base, read_positive, stated, stated_known
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.exhaust.run import judging
from gaugeblock.exhaust.run.fixing import KINDS as FLEXIBLE
from gaugeblock.exhaust.run.fixing import Fixing, fixing
from gaugeblock.exhaust.run.given import Flex, Hanger, Mass, Run, at_places, place
from gaugeblock.exhaust.run.growing import Growth, density_of, material_of, per_length
from gaugeblock.exhaust.run.hanging import Hung, hung, loads, pipe_mass, whole_mass
from gaugeblock.exhaust.run.shape import Shape
from gaugeblock.exhaust.statements import cautions
from gaugeblock.known import parse_known
from gaugeblock.listed import items
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import Measure, parse_measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.exhaust.warming import Warmed
    from gaugeblock.figure import Figure

VERB = "LET IT GROW"
_EXAMPLE = "17.3 um/(m*K)"
_READ = {"od": "tube_od", "wall": "tube_wall", "hot": "run_temperature", "fixed": "run_place"}
_SUBJECTS = ("carbon monoxide", "fire", "flexible exhaust section", "bellows thrust")


class Worked(Value):
    """What was worked out of a run; None where too little is known."""

    __slots__ = ("end", "fixing", "growth", "hung", "mass", "pipe", "shape", "warm")

    shape: Shape
    growth: Growth | None
    end: Figure | None
    pipe: Figure | None
    mass: Figure | None
    hung: tuple[Hung, ...]
    fixing: Fixing
    warm: tuple[tuple[str, Warmed], ...]

    def __init__(
        self,
        shape: Shape,
        growth: Growth | None,
        end: Figure | None,
        pipe: Figure | None,
        mass: Figure | None,
        hung: Sequence[Hung],
        fixing: Fixing,
        warm: Sequence[tuple[str, Warmed]] = (),
    ) -> None:
        put(self, "shape", shape)
        put(self, "growth", growth)
        put(self, "end", end)
        put(self, "pipe", pipe)
        put(self, "mass", mass)
        put(self, "hung", tuple(hung))
        put(self, "fixing", fixing)
        put(self, "warm", tuple(warm))


def exhaust_run(
    length: str,
    od: str,
    wall: str,
    material: str,
    *,
    hot: str | None = None,
    fixed: str | None = None,
    hangers: str | None = None,
    hanger_length: str | None = None,
    hanger_limit: str | None = None,
    masses: str | None = None,
    flex: str | None = None,
    flex_kind: str | None = None,
    travel: str | None = None,
    rate: str | None = None,
    area: str | None = None,
    pressure: str | None = None,
    expansion: str | None = None,
    cold_end: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How far an exhaust run grows, what each hanger carries, and what its fixed point takes.

    Parameters are text as people write them: ``length`` along the middle line (``9 ft``), ``od``, ``wall`` and
    ``material`` of the pipe; ``hot`` the metal at its hottest (``1000 degF``); ``fixed`` the place of the fixed point
    from the front end (``6 in``); ``hangers`` their places (``20 in, 60 in, 100 in``), ``hanger_length`` from pin to
    pin and ``hanger_limit`` what one may carry; ``masses`` what hangs on it (``12 lb at 80 in``); ``flex`` the
    flexible section (``6 in at 2 in``), its ``flex_kind`` (``hose``, ``bellows``), ``travel``, ``rate`` and ``area``;
    ``pressure`` in the pipe; ``expansion`` of its metal in place of the tables' (``17.3 um/(m*K)``, measured
    ``... by TOOL on 2026-11-20``), ``cold_end`` what it grows from (else 20 degC), typed or measured.

    Returns a Sheet: the movement of the far end first. A run with bends, drawn, is in a job (``[[exhausts]]``).

    Raises InputError, LookupMiss or UnitError for what cannot be read.

    >>> exhaust_run("100 in", "2-1/2 in", ".065 in", "mild steel", hot="1000 degF", fixed="0 in").decision.kind
    'ask'
    """
    data = data or refdata()
    asked = {k: v for k, v in locals().items() if k != "data"}
    run = Run(
        read_positive(od, "length", "od"),
        read_positive(wall, "length", "wall"),
        material,
        length=read_positive(length, "length", "length"),
        hot=None if hot is None else parse_measure(hot, "temperature", "hot"),
        expansion=None if expansion is None else parse_known(expansion, "thermal expansion", "expansion", _EXAMPLE),
        cold_end=None if cold_end is None else parse_known(cold_end, "temperature", "cold end", "10 degC"),
        fixed=None if fixed is None else place(fixed, "fixed"),
        flex=_flex(flex, flex_kind, travel, rate, area),
        pressure=_given(pressure, "stress", "pressure"),
        hangers=_hangers(hangers, hanger_length, hanger_limit),
        masses=[
            Mass("part", place(at, "masses"), read_positive(mass, "mass", "masses"))
            for mass, at in (at_places(masses, "masses") if masses else ())
        ],
    )
    shape = Shape(stated(run.length, "run_length", "length", data))  # type: ignore[arg-type]
    return judged(run, shape, asked, data)


def _given(typed: str | None, dim: str, where: str) -> Measure | None:
    return None if typed is None else read_positive(typed, dim, where)


def _hangers(places: str | None, length: str | None, limit: str | None) -> list[Hanger]:
    long, most = _given(length, "length", "hanger length"), _given(limit, "force", "hanger limit")
    return [Hanger(place(p, "hangers"), long, most) for p in items(places or "", "hangers") if p]


def _flex(flex: str | None, kind: str | None, travel: str | None, rate: str | None, area: str | None) -> Flex | None:
    if kind is not None and kind not in FLEXIBLE:
        raise InputError(kind[:60], "flex kind", "no kind of flexible section", tuple(FLEXIBLE), "use one of these")
    measures = _given(travel, "length", "travel"), _given(rate, "stiffness", "rate"), _given(area, "area", "area")
    if flex is None:
        return None
    (long, at), *more = at_places(flex, "flex")
    if more:
        raise InputError(flex[:60], "flex", "more than one flexible section", (), "give the one nearest the engine")
    return Flex(
        place(at, "flex"),
        read_positive(long, "length", "flex"),
        kind,
        *measures,
    )


def judged(run: Run, shape: Shape, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``exhaust_run``, of a run that was read and its shape."""
    return whole(run, shape, asked, data)[0]


def whole(run: Run, shape: Shape, asked: dict[str, str | None], data: Refdata) -> tuple[Sheet, Worked | None]:
    """The sheet of a run, and what was worked out of it; None where something of it is doubtful."""
    title = f"exhaust run of {shape.length.text or f'{shape.length.typical:.4g}'} {shape.length.unit}, {run.material}"
    read = {k: stated(m, q, k, data) for k, q in _READ.items() if (m := getattr(run, k)) is not None}
    if run.cold_end is not None:
        read["cold_end"] = stated_known(run.cold_end, "cold_end", "cold_end", data)
    odd = [*_odd(run, shape, data)]
    if odd:
        checks = [Check(f"{q.key} as typed", CANNOT_TELL, q.text, bears=ASK) for q in odd]
        decision = none(VERB, odd[0].text)
        figures = [*read.values(), shape.length]
        return Sheet(title, asked, data, figures, checks, [], decision=decision, questions=odd), None
    found = _worked(run, shape, read, data)
    if any(gap.heat for gap in run.gaps):
        found = found.replace(warm=judging.warm_of(run, found, data))
    checks, questions = judging.judged(run, found, data)
    decision = _decided(found, checks)
    figures = [*decision.figures, *_figures(found), shape.length, *read.values()]
    bounds = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    listed = list({f.id: f for f in (*figures, *bounds)}.values())
    subjects = _SUBJECTS if run.flex is not None else _SUBJECTS[:2]
    told = cautions(data, ("exhaust",), (*subjects, "fixed point"))
    told += next(([*warm.cautions] for _, warm in found.warm if warm.cautions), [])
    return Sheet(title, asked, data, listed, checks, told, decision=decision, questions=questions), found


def _odd(run: Run, shape: Shape, data: Refdata) -> list[Question]:
    """What is not plausible, or does not lie on the run."""
    out = []
    for measure, quantity, key in judging.typed(run):
        if not is_plausible(measure, quantity, data):
            span = plausible_range(quantity, data)
            meant = other_readings(measure, *span) if span else ()
            out.append(Question(FILL_IN, did_you_mean(f"{measure.text} is no usual {key} of an exhaust", meant), key))
    end = base(shape.length)
    for measure, key in judging.places(run):
        if measure.to("m") > end * (1 + 1e-9):
            said = f"{measure.text} is not on the run: it is {units.significant(shape.length.typical, 4)}"
            out.append(Question(FILL_IN, f"{said} {shape.length.unit} long. Measure it from the front end.", key))
    return [Question(q.kind, q.text, q.key, (f"{q.key} as typed",)) for q in {q.key: q for q in reversed(out)}.values()]


def _worked(run: Run, shape: Shape, read: dict[str, Figure], data: Refdata) -> Worked:
    material = material_of(run.material, data)
    unit = "mm" if run.od.unit == "mm" else "in"
    growth = end = pipe = mass = None
    if "hot" in read and "fixed" in read:
        cold = read.get("cold_end")
        own = None
        if run.expansion is not None:
            own = stated_known(run.expansion, "expansion_coefficient", "expansion", data)
        table = per_length(material, read["hot"], data, is_from=cold is not None or own is not None)
        per = own or table
        if per is not None:
            beside = tuple(f for f in (own, table) if f is not None and own is not None)
            growth = Growth(per, read["hot"], read["fixed"], shape, unit, data, cold, beside)
            size = units.from_base(base(shape.length), unit)
            text = f"{units.significant(size, 12)} {unit}"
            last = stated(parse_measure(text, "length"), "run_place", "far end", data)
            end = growth.movement("far end", last)
    density = density_of(material, data)
    parts = [stated(m.mass, "part_mass", f"mass {n}", data, key={"part": m.what}) for n, m in enumerate(run.masses, 1)]
    carried: list[Hung] = []
    if density is not None:
        pipe = pipe_mass(read, density, shape, "kg" if unit == "mm" else "lb", data)
        mass = whole_mass(pipe, parts, data)
        force = loads(run, read, pipe, parts, shape, data)
        carried = hung(run, read, force, growth, data)
    return Worked(shape, growth, end, pipe, mass, carried, fixing(run, growth, carried, data))


def _figures(found: Worked) -> list[Figure]:
    each = [f for h in found.hung for f in (h.load, h.movement, h.swing, h.pull, h.length, h.limit)]
    fixed = (found.fixing.takes, found.fixing.travel, found.fixing.force, *found.fixing.parts)
    beside = () if found.growth is None else found.growth.beside
    warm = [f for _, one in found.warm for f in one.figures]
    every = (found.end, *beside, found.mass, *fixed, *each, found.pipe, *warm)
    return [f for f in every if f is not None]


def _decided(found: Worked, checks: list[Check]) -> Decision:
    """The far end's movement; what stops or asks says so."""
    stops = [c for c in checks if c.stops]
    asks = [c for c in checks if c.asks]
    if stops:
        bounds = [b.figure for c in stops for b in (c.required, c.actual) if b is not None and b.figure is not None]
        shown = [Candidate(f, "", "required" if n == 0 else "found") for n, f in enumerate(bounds[:2])]
        return stop(VERB, shown, [c.name for c in stops], f"{capital(stops[0].reason)}.")
    if found.end is None:
        first = asks[0].reason if asks else "too little is known"
        return none(VERB, f"{capital(first)}.")
    if asks:
        shown = [Candidate(found.end, "it is free behind the fixed point", "the far end moves so far")]
        return ask(VERB, shown, [c.name for c in asks], f"{capital(asks[0].reason)}.")
    return use(VERB, found.end, "The far end moves so far: leave it free, and room to every neighbour.")
