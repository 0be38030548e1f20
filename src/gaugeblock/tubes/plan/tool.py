"""The die that a tube is bent on, as numbers with their Figures: radius, start mark, grips, test bends."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import INFORM, NOT_OK, OK, Check
from gaugeblock.answer.making import base
from gaugeblock.bodies import Typed
from gaugeblock.calc.stick import Die
from gaugeblock.errors import LookupMiss
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tubes import keys
from gaugeblock.tubes.doubt import sprung_wrongly
from gaugeblock.tubes.sizes import held_by, listed
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.figure import Figure
    from gaugeblock.job.model import TestBend
    from gaugeblock.tubes.keys import Radius
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.units import Measure


class Tool(Value):
    """The die in SI, and the Figures of what is known of it; ``radius`` to the centre line, as derived or as typed."""

    __slots__ = ("between", "cautions", "checks", "die", "grip", "mark", "radius", "tests", "typed")

    die: Die
    radius: Figure
    typed: Radius
    mark: Figure | None
    grip: Figure | None
    between: Figure | None
    tests: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]

    def __init__(
        self,
        die: Die,
        radius: Figure,
        typed: Radius,
        mark: Figure | None,
        grip: Figure | None,
        between: Figure | None,
        tests: tuple[Figure, ...] = (),
        checks: tuple[Check, ...] = (),
        cautions: tuple[Caution, ...] = (),
    ) -> None:
        put(self, "die", die)
        put(self, "radius", radius)
        put(self, "typed", typed)
        put(self, "mark", mark)
        put(self, "grip", grip)
        put(self, "between", between)
        put(self, "tests", tests)
        put(self, "checks", checks)
        put(self, "cautions", cautions)


def tool_of(given: Given) -> Tool | None:
    """The die of a tube; None where neither the tube nor its die gives a radius."""
    radius = _radius(given)
    if radius is None:
        return None
    centre = radius.typed
    if radius.measured_to == "inside":
        inputs = (radius.typed, *(() if given.od is None else (given.od,)))
        centre = given.make("centre_line_from_inside", "centre_line_radius", float(radius.centre_m), inputs)
    typed, die = Typed(given.name, given.data), given.die

    def known(name: str, quantity: str, least: int | None) -> tuple[float, Figure | None]:
        value = None if die is None else getattr(die, name)
        return typed.figure(value, f"die {name.replace('_', ' ')}", "length", quantity, least) if value else (0.0, None)

    mark, mark_figure = known("start_mark", "start_mark_offset", None)
    grip, grip_figure = known("grip", "grip_length", 0)
    between, between_figure = known("between", "grip_length", 0)
    first = len(typed.figures)
    rows = () if die is None else die.test_bends
    tests = _tests(rows, typed, given)
    return Tool(
        Die(base(centre), mark, grip, between if between_figure is not None else None, tests),
        centre,
        radius,
        mark_figure,
        grip_figure,
        between_figure or grip_figure,
        tuple(typed.figures[first:]),
        tuple(_fits(given)),
        () if tests or not rows else (_unused(),),
    )


def _unused() -> Caution:
    text = "none of the die's test bends is complete, plausible and of this material and wall: they are not used"
    return Caution(text, "damage", (), "calculated")


def _fits(given: Given) -> list[Check]:
    """Whether the die is of the tube's own diameter."""
    die, od = given.die, given.tube.od
    if die is None or die.od is None or od is None:
        return []
    name, of_die, of_tube = "die fits the tube", keys.metres(die.od), keys.metres(od)
    if abs(float(of_die - of_tube)) <= 1e-6:
        return []
    spec = _held(of_die, given)
    if spec:
        why = f"the die is for {die.od}; a tube of that size to {spec} may measure {od}"
        return [Check(name, OK, why, bears=INFORM)]
    why = f"the die is for {die.od}, the tube is {od}: use a die of the tube's own OD"
    return [Check(name, NOT_OK, why)]


def _held(of_die: Fraction, given: Given) -> str:
    """The standard whose tolerance lets a tube of the die's size measure what was read; blank where none does."""
    tube, data = given.tube, given.data
    if tube.material is None:
        return ""
    try:
        stock = keys.stock(tube.material, data, tube.product, tube.condition, tube.spec)
    except LookupMiss:  # a metal that the tables do not know
        return ""
    return held_by(of_die, given.od_m, stock, data)


def _radius(given: Given) -> Radius | None:
    """The radius of the bends: the tube's own, or its die's."""
    tube, die = given.tube, given.die
    measure, where, to = tube.radius, "radius", tube.measured_to or "centre line"
    if measure is None and die is not None and die.radius is not None:
        measure, where, to = die.radius, f"die {die.name or ''} radius", "centre line"
    return None if measure is None else keys.radius_of(measure, to, given.od_m, given.data, where, given.name)


def _tests(rows: tuple[TestBend, ...], typed: Typed, given: Given) -> list[tuple[float, float]]:
    """Test bends (set, got) whose material, where they name one, is in the words of this tube's, and of its wall."""
    tube = given.tube
    words = " ".join(w for w in (tube.material, tube.product, tube.condition, tube.spec) if w)
    known = set(words.casefold().split())
    out = []
    for n, row in enumerate(rows, 1):
        if row.pulled is None or row.released is None or not _is_of(row, known, given):
            continue
        if sprung_wrongly(row.pulled, row.released):  # which is asked about
            continue
        out.append(
            (
                typed.number(row.pulled, f"die test bend {n} set", "angle", "bend_angle_set"),
                typed.number(row.released, f"die test bend {n} got", "angle", "bend_angle_got"),
            )
        )
    return out


def _is_of(row: TestBend, known: set[str], given: Given) -> bool:
    if known and row.material and not known.issuperset(row.material.casefold().split()):
        return False
    wall = given.tube.wall
    if row.wall is None or wall is None:
        return True
    try:
        return _bought(row.wall, given) == _bought(wall, given)
    except LookupMiss:  # a gauge number or a metal that the tables do not know
        return False


def _bought(wall: Measure | str, given: Given) -> Fraction:
    """The wall as it was bought, m: what was measured within the tolerance of a listed wall is that wall."""
    tube, data = given.tube, given.data
    figure = keys.wall_figure(wall, data)
    read = units.parse_number(figure.text) * units.factor(figure.unit)
    if tube.material is None or tube.od is None:
        return read
    stock = keys.stock(tube.material, data, tube.product, tube.condition, tube.spec)
    as_read = f"{figure.text} {figure.unit}"
    size = listed(tube.od.text, given.od_m, as_read, read, stock, data)
    cell = None if size.wall == as_read else parse_interval(size.wall)
    return read if cell is None or cell.low is None else cell.low
