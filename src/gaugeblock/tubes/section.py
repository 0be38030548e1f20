"""Section: area, second moment, section modulus and mass of a round tube, and what brings it to yield."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.bend.bent import OWN, Bent
from gaugeblock.tubes.bend.metal import in_tables, known, own_figures
from gaugeblock.tubes.doubt import beside, doubt_of
from gaugeblock.tubes.own import doubts_of_own, read_own

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.keys import Stock
    from gaugeblock.units import Measure

# What of the section a builder works with stands first.
_FIRST = (
    "section_modulus",
    "tube_twist",
    "tube_mass",
    "moment_at_yield",
    "mass_per_length",
    "second_moment",
    "section_area",
)
FACTS = {
    "section modulus": ("section_modulus",),
    "mass": ("tube_mass", "mass_per_length"),
    "second moment": ("second_moment",),
    "area": ("section_area",),
}
MASS, YIELD, TWIST = "mass of the tube", "bending that it takes", "twist of the tube"


def section(
    *,
    od: str,
    wall: str,
    material: str | None = None,
    length: str | None = None,
    torque: str | None = None,
    product: str | None = None,
    condition: str | None = None,
    spec: str | None = None,
    yield_strength: str | None = None,
    tensile_strength: str | None = None,
    modulus: str | None = None,
    shear_modulus: str | None = None,
    fact: str = "section modulus",
    data: Refdata | None = None,
) -> Sheet:
    """Area, second moment and section modulus of a round tube, its mass, and the bending that brings it to yield.

    Parameters are text as people write them: ``od`` ``1-3/4 in``, ``wall`` ``.120 in`` or ``11 BWG``; ``material``
    ``1020 DOM`` (``product``, ``condition`` and ``spec`` tell one ``1020`` from another) gives density and strength, in
    whose place stand its own ``yield_strength`` (``62 ksi``, measured ``62 ksi by tensile test on 2026-11-20``),
    ``tensile_strength`` and ``modulus``; ``length`` gives the mass of the piece, and with ``torque`` and
    ``shear_modulus`` its twist. Elastic; welds, holes and bends are not in it.

    Returns a Sheet whose decision is the ``fact``: ``section modulus``, ``mass`` (which needs a material), ``second
    moment`` or ``area``. Raises LookupMiss with the nearest keys, InputError or
    UnitError for what cannot be read. Source: elementary beam theory.

    >>> round(section(od="1-3/4 in", wall=".120 in").decision.figure.typical, 4)
    0.2345
    """
    data = data or refdata()
    asked = {
        "od": od,
        "wall": wall,
        "material": material,
        "length": length,
        "torque": torque,
        "product": product,
        "condition": condition,
        "spec": spec,
        "yield_strength": yield_strength,
        "tensile_strength": tensile_strength,
        "modulus": modulus,
        "shear_modulus": shear_modulus,
        "fact": fact,
    }
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a section is called so", tuple(FACTS), "ask for one of these")
    size = keys.outside_diameter(od, data)
    stock = keys.stock(material or "steel", data, product, condition, spec)
    tube = Bent(size, keys.wall(wall, data), stock, None, "vehicle", data, own=read_own(asked))
    doubts = _doubts(tube, size, is_named=material is not None)
    long = None if length is None else stated(read_positive(length, "length", "length"), "length", "length", data)
    twisting = None
    if torque is not None:
        twisting = stated(read_positive(torque, "torque", "torque"), "load_torque", "torque", data)
    found = section_of(tube, long, twisting, long, is_named=material is not None)
    title = f"{tube.key['od']} x {tube.key['wall']} {stock.label if material else 'tube'}: section"
    checks = [*(d.check for d in doubts), *found.checks]
    questions = [*(d.question for d in doubts), *found.questions]
    wanted = next((f for q in FACTS[fact] for f in found.figures if f.quantity == q), None)
    if doubts or wanted is None:
        do = doubts[0].text if doubts else f"The {fact} hangs on the metal: name it."
        decision = none("", do)
    else:
        decision = use("", wanted)
    figures = [*([wanted] if wanted is not None else []), *(f for f in found.figures if f is not wanted)]
    return Sheet(title, asked, data, figures, checks, (), decision=decision, questions=questions)


def section_of(
    tube: Bent, piece: Figure | None, torque: Figure | None, long: Figure | None, *, is_named: bool
) -> Gathered:
    """The section of a tube: of its ``piece`` the mass, of a torque the twist of what is ``long``.

    ``is_named`` says whether the metal was named: only then it has a mass, and a bending that it takes.
    """
    area, second, stiff = _shape(tube)[1:]
    found = Gathered([stiff, second, area])
    if is_named:
        _mass(tube, area, piece, found)
    if is_named or tube.own.yield_strength is not None:
        _yield(tube, stiff, found)
    if torque is not None:
        _twist(tube, second, (torque, long, tube.own.figure("shear_modulus", tube.data)), found)
    told = {f.id for f in found.figures}
    found.figures += [f for f in own_figures(tube) if f.id not in told]
    found.figures.sort(key=lambda f: _FIRST.index(f.quantity) if f.quantity in _FIRST else len(_FIRST))
    return found


class Gathered:
    """Figures, checks and questions as they are gathered."""

    __slots__ = ("checks", "figures", "questions")

    def __init__(self, figures: list[Figure]) -> None:
        self.figures = figures
        self.checks: list[Check] = []
        self.questions: list[Question] = []

    def lacks(self, name: str, why: str, ask: str, key: str) -> None:
        """What is not known, and the question that closes it."""
        self.checks.append(Check(name, CANNOT_TELL, why, bears=INFORM))
        self.questions.append(Question(FILL_IN, ask, key, (name,)))


def _doubts(tube: Bent, od: Measure, *, is_named: bool) -> list[Doubt]:
    """What of the size and the metal is not plausible."""
    wall = tube.wall
    typed = None
    if wall.basis == "stated":
        typed = units.Measure(units.parse_number(wall.text), wall.unit, f"{wall.text} {wall.unit}")
    pairs = [("od", "tube_od", od), *([("wall", "tube_wall", typed)] if typed is not None else [])]
    found = [d for key, quantity, m in pairs if (d := doubt_of(key, quantity, m, tube.data)) is not None]
    found = found or beside(od, typed, None, "")
    tables = {name: in_tables(tube, name) for name in OWN} if is_named else {}
    return [*found, *doubts_of_own(tube.own, tables, tube.data)]


def _shape(tube: Bent) -> tuple[Figure, Figure, Figure, Figure]:
    """Bore, area, second moment and section modulus."""
    od, bore = float(tube.od_m), float(tube.od_m - 2 * tube.wall_m)
    inch = tube.unit == "in"
    square, fourth, cube = ("in**2", "in**4", "in**3") if inch else ("mm**2", "mm**4", "mm**3")
    inside = tube.derived("tube_bore", "inside_diameter", tube.length(bore), tube.unit, (tube.od, tube.wall))
    both = (tube.od, inside)
    area = tube.derived("tube_area", "section_area", units.from_base(calc.area(od, bore), square), square, both)
    number = units.from_base(calc.second_moment(od, bore), fourth)
    second = tube.derived("tube_second_moment", "second_moment", number, fourth, both)
    number = units.from_base(calc.section_modulus(od, bore), cube)
    stiff = tube.derived("tube_section_modulus", "section_modulus", number, cube, (second, tube.od))
    return inside, area, second, stiff


def density_of(stock: Stock, data: Refdata) -> Figure | None:
    """The density of a tube's metal: its grade's where one is on record, else its family's."""
    asked = {"family": stock.family, **({"material": stock.material} if stock.material else {})}
    return lookup.look_up_or_none("tubes/materials", "density", data=data, **asked)


def _mass(tube: Bent, area: Figure, long: Figure | None, found: Gathered) -> None:
    """Mass of a foot or a metre, and of the piece."""
    density = density_of(tube.stock, tube.data)
    if density is None:
        found.lacks(MASS, f"no density of {tube.family} is on record", "Weigh a piece of the tube.", "material")
        return
    unit, pound = ("lb/ft", "lb") if tube.unit == "in" else ("kg/m", "kg")
    per_m = base(density) * base(area)
    per = tube.derived("tube_mass_per_length", "mass_per_length", units.from_base(per_m, unit), unit, (density, area))
    found.figures += [per]
    if long is not None:
        number = units.from_base(per_m * base(long), pound)
        mark = f"{long.text} {long.unit}"
        found.figures.append(tube.derived("tube_mass", "tube_mass", number, pound, (per, long), mark=mark))
    found.figures.append(density)


def _yield(tube: Bent, stiff: Figure, found: Gathered) -> None:
    """The bending moment at which the outermost metal yields, by the least yield strength that fits."""
    weak = known(tube, "yield_strength")
    if weak is None:
        why = "the yield strength of this metal is not known"
        found.lacks(
            YIELD, why, "Name the grade and condition of the tube, or state its yield strength.", "yield_strength"
        )
        return
    unit = "lbf*ft" if tube.unit == "in" else "N*m"
    least = units.to_base(weak.low if weak.low is not None else weak.typical, weak.unit)
    number, words = units.from_base(least * base(stiff), unit), "no welds, holes or bends in it"
    made = tube.derived("tube_moment_at_yield", "moment_at_yield", number, unit, (weak, stiff), conditions=words)
    table = in_tables(tube, "yield_strength") if weak.basis in ("stated", "measured") else None
    found.figures += [made, weak, *([] if table is None else [table])]


def _twist(tube: Bent, second: Figure, given: tuple[Figure, Figure | None, Figure | None], found: Gathered) -> None:
    """How far a torque twists the piece."""
    torque, long, shear = given
    if long is None:
        found.lacks(TWIST, "the length is not given", "Give the length that twists.", "length")
    if shear is None:
        found.lacks(TWIST, "the shear modulus is not given", "State the shear modulus of the metal.", "shear_modulus")
    if long is None or shear is None:
        return
    radians = base(torque) * base(long) / (base(shear) * 2 * base(second))
    mark, number = f"{torque.text} {torque.unit}|{long.text} {long.unit}", units.from_base(radians, "deg")
    inputs = (torque, long, shear, second)
    found.figures += [tube.derived("tube_twist", "tube_twist", number, "deg", inputs, mark=mark), *given[:1], shear]
