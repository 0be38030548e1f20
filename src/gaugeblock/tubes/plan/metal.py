"""The metal and section of a tube that is planned: its strengths, its bend, the wall that is left."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Bound, Check, at_least
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.calc.stick import set_angle_estimate
from gaugeblock.errors import LookupMiss
from gaugeblock.tubes import keys
from gaugeblock.tubes.bend import metal as bend_metal
from gaugeblock.tubes.bend.bent import OWN, Bent, Own
from gaugeblock.tubes.bend.sheet import bend_of
from gaugeblock.tubes.model import Tube
from gaugeblock.tubes.own import doubts_of_own
from gaugeblock.tubes.plan.found import Found
from gaugeblock.tubes.rules import rules_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.keys import Radius
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.tool import Tool
    from gaugeblock.units import Measure

RADIUS = "radius against the governing minimum"
OUTER = "outer wall left against the wall needed"
# Figures of the bend sheet that belong on a plan; strain and the like stay on the bend sheet.
_KEPT = (
    "bend_ratio",
    "bend_radius_minimum",
    "bend_ratio_minimum",
    "outer_wall",
    "wall_least",
    "minor_to_major_ratio_minimum",
)


class Metal(Value):
    """What is known of the tube's metal, and the sheet of its bend; ``bend`` is None for a straight tube."""

    __slots__ = ("bend", "modulus", "tensile", "tube", "weak")

    tube: Bent
    bend: Sheet | None
    weak: Figure | None
    tensile: Figure | None
    modulus: Figure | None

    def __init__(
        self, tube: Bent, bend: Sheet | None, weak: Figure | None, tensile: Figure | None, modulus: Figure | None
    ) -> None:
        put(self, "tube", tube)
        put(self, "bend", bend)
        put(self, "weak", weak)
        put(self, "tensile", tensile)
        put(self, "modulus", modulus)

    @property
    def od(self) -> float:
        """Outside diameter, m."""
        return float(self.tube.od_m)

    @property
    def wall(self) -> float:
        """Wall, m."""
        return float(self.tube.wall_m)

    @property
    def low_pa(self) -> float:
        """The least yield strength that fits, Pa; 0 when it is not known."""
        if self.weak is None:
            return 0.0
        return units.to_base(self.weak.low if self.weak.low is not None else self.weak.typical, self.weak.unit)

    @property
    def high_pa(self) -> float:
        """The greatest tensile strength that fits, Pa; 0 when it is not known."""
        if self.tensile is None:
            return 0.0
        high = self.tensile.high if self.tensile.high is not None else self.tensile.typical
        return units.to_base(high, self.tensile.unit)

    @property
    def modulus_pa(self) -> float:
        """Modulus of elasticity, Pa; 0 when it is not known."""
        return 0.0 if self.modulus is None else base(self.modulus)

    def set_angle(self, angle: float, radius: float) -> tuple[float, float, tuple[Figure, ...]] | None:
        """Lowest and highest estimate of the angle to set, rad, and what it is made from; None when that is not
        known.
        """
        if self.weak is None or self.tensile is None or self.modulus is None:
            return None
        try:
            low, high = set_angle_estimate(
                angle,
                radius=radius,
                od=self.od,
                wall=self.wall,
                yields=(self.low_pa, self.high_pa),
                modulus=self.modulus_pa,
            )
        except ValueError:  # the bend would be elastic: outside the formulas
            return None
        return low, high, (self.weak, self.tensile, self.modulus, self.tube.od, self.tube.wall)

    def figure(self, quantity: str) -> Figure | None:
        """A figure of the bend sheet."""
        figures = () if self.bend is None else self.bend.figures
        return next((f for f in figures if f.quantity == quantity), None)


def metal_of(given: Given, tool: Tool | None) -> tuple[Metal | None, Found]:
    """The metal of a tube, bent on its die when there is one; what is not known of it is open where it is bent."""
    tube = given.tube
    needed = ("wall", "material") if tool is None else ("wall", "material", "method")
    lost = [k for k in needed if not getattr(tube, k)]
    if lost:
        words = ", ".join(lost)
        asks = [Question(FILL_IN, f"Give the {k} of the tube.", k, (RADIUS,)) for k in lost]
        return None, _open(f"{words} not given", asks) if tool is not None else Found()
    try:
        return _memo(bent_of(given, None if tool is None else tool.typed.plain)), Found()
    except LookupMiss as miss:
        why = f"{miss.asked}: {miss.why}" + (f"; nearest: {', '.join(miss.nearest)}" if miss.nearest else "")
        key = "wall" if miss.where == "gauge" else miss.where if miss.where in Tube.keys else "material"
        return None, (
            _open(why, [Question(FILL_IN, f"{why}.", key, (RADIUS,))]) if tool is not None or key == "wall" else Found()
        )


def own_doubts(given: Given) -> list[Doubt]:
    """What is stated of the metal and is not plausible, by itself and beside the tables."""
    tube, data = given.tube, given.data
    own = _own(tube)
    if not own.text:
        return []
    tables: dict[str, Figure | None] = {}
    if tube.od is not None and tube.wall is not None and tube.material is not None:
        try:
            bent = bent_of(given, None)
            tables = {name: bend_metal.in_tables(bent, name) for name in OWN}
        except LookupMiss:  # a metal that the tables do not know
            pass
    return doubts_of_own(own, tables, data)


def _own(tube: Tube) -> Own:
    return Own(tube.yield_strength, tube.tensile_strength, tube.modulus, tube.shear_modulus)


def _open(why: str, asks: list[Question]) -> Found:
    return Found(checks=[Check(RADIUS, CANNOT_TELL, why, bears=ASK)], questions=asks)


def bent_of(given: Given, radius: Radius | None) -> Bent:
    """The tube as it is bent, straight without a radius; a metal that is not named is taken for steel."""
    tube, data = given.tube, given.data
    if tube.od is None or tube.wall is None:
        raise ValueError("a tube is known by its OD and wall")
    stock = keys.stock(tube.material or "steel", data, tube.product, tube.condition, tube.spec)
    wall = keys.wall_figure(tube.wall, data)
    maker, source = tube.maker_radius, tube.maker_source
    return Bent(
        tube.od,
        wall,
        stock,
        tube.method if radius else None,
        tube.service,
        data,
        radius=radius,
        maker=None if maker is None else keys.maker_radius_of(maker, source, data),
        tested=bend_metal.measured(tube.diameters, data) if len(tube.diameters) == 2 else (),
        own=_own(tube),
    )


def other_bends(given: Given, tool: Tool | None) -> Found:
    """Each other radius of the tube's own bends, judged as the die's."""
    if tool is None:
        return Found()
    checks = []
    for other in {keys.metres(b.radius): b.radius for b in given.tube.bends if b.radius is not None}.values():
        if keys.metres(other) == tool.typed.centre_m:
            continue
        radius = keys.radius_of(other, "centre line", given.od_m, given.data)
        metal = _memo(bent_of(given, radius))
        found = bend_found(metal, given, is_tested=bool(tool.tests)).checks
        checks += [c.replace(name=f"{c.name}, bend of {other}", case=f"bend of {other}") for c in found]
    return Found(checks=checks)


def _memo(bent: Bent) -> Metal:
    """The Metal of a tube, kept so that a tube planned again is not looked up again."""
    data = bent.data
    memo = ("tube metal", bent.stock, bent.radius, bent.maker, bent.tested, bent.own.text, *bent.key.values())
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = Metal(
            bent,
            None if bent.radius is None else bend_of(bent, None, {}),
            bend_metal.known(bent, "yield_strength"),
            bend_metal.known(bent, "tensile_strength"),
            bend_metal.modulus_of(bent),
        )
    return got  # type: ignore[return-value]


def bend_found(metal: Metal, given: Given, *, is_tested: bool) -> Found:
    """What the bend sheet says that belongs on a plan, the outer wall left, and what to measure at each bend.

    Once a test bend tells this lot's springback, nobody is told to make one.
    """
    sheet = metal.bend
    if sheet is None:
        return Found()
    figures = [f for f in sheet.figures if f.quantity in _KEPT]
    checks = [*sheet.checks, _wall_check(metal, given.tube.wall_needed, given)]
    learned = [c.text for c in rules_of(given.data, bend_metal.SPRINGBACK)] if is_tested else []
    cautions = [c for c in sheet.cautions if c.text not in learned]
    cautions += bend_metal.under_the_car(metal.tube)
    return Found(figures, checks, [_flattening(metal), *cautions], sheet.questions)


def _wall_check(metal: Metal, needed: Measure | str | None, given: Given) -> Check:
    """Outer wall left against the wall needed: predicted from the thinnest wall that may arrive, where known."""
    left = metal.figure("outer_wall")
    if left is None:
        return Check(OUTER, CANNOT_TELL, "the radius is not known, so the outer wall cannot be predicted")
    least = metal.figure("wall_least")
    value = left.typical * (1.0 if least is None else least.typical / metal.tube.wall.typical)
    arrives = "the nominal wall" if least is None else f"thinnest tube allowed, {least.typical:.3f} {least.unit}"
    text = f"wall at the outside of the bend: about {value:.3f} {left.unit} ({arrives})"
    got = Bound(value, left.unit, figure=left)
    if needed is None:
        return Check(OUTER, CANNOT_TELL, f"{text}. No needed wall was given", None, got, bears=INFORM)
    figure = keys.wall_figure(needed, given.data)
    if figure.basis == "stated":
        figure = stated(keys.measure(needed), "wall_needed", "wall needed", given.data)
    limit = Bound(units.from_base(base(figure), left.unit), left.unit, "min", figure)
    return at_least(OUTER, got, limit, f"{text}; {figure.text} {figure.unit} needed; measure the bend")


def _flattening(metal: Metal) -> Caution:
    """What to measure at each bend, and against which limit."""
    limit = metal.figure("minor_to_major_ratio_minimum")
    text = "At every bend measure the largest and the smallest diameter with a calliper and write both down"
    if limit is None:
        text += "; no flattening limit is on record for this tube and service."
        return Caution(text, "note", (), "calculated")
    tube = metal.tube
    smallest = limit.typical * float(tube.od_m / units.factor(tube.unit))
    said = f"{text}: smallest over largest is {limit.text} or more (service {limit.key['service']}, {limit.source})"
    said += f", which is {smallest:.3f} {tube.unit} where the largest is the OD."
    return Caution(said, "note", (limit.id,), limit.source)
