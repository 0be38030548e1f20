"""The metal and section of a tube that is planned: its bend sheet, strengths, springback range, wall, crush."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, Bound, Check, at_least
from gaugeblock.calc.stick import set_angle_estimate
from gaugeblock.tubes import keys as tube_keys
from gaugeblock.tubes.bend import metal as tube_bend_metal
from gaugeblock.tubes.bend.bent import Bent
from gaugeblock.tubes.bend.sheet import bend

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# Figures of the bend sheet that belong on a plan; strain and the like stay on the bend sheet.
_KEPT = (
    "bend_ratio",
    "bend_radius_minimum",
    "bend_ratio_minimum",
    "outer_wall",
    "wall_least",
    "minor_to_major_ratio_minimum",
)


class Metal:
    """What is known of the tube's metal, for one radius; made once for one question."""

    __slots__ = ("high_pa", "low_pa", "modulus", "od", "sheet", "tensile", "tube", "wall", "weak")

    def __init__(
        self, *, od: str, wall: str, material: str, method: str, radius: str, service: str, product: str | None,
        condition: str | None, spec: str | None, die: str | None, data: Refdata,
    ) -> None:  # fmt: skip
        self.sheet: Sheet = bend(
            od=od, wall=wall, material=material, method=method, radius=radius, service=service, product=product,
            condition=condition, spec=spec, die=die, data=data,
        )  # fmt: skip
        self.tube = Bent(od, wall, tube_keys.stock(material, data, product, condition, spec), method, service, data)
        self.od, self.wall = float(self.tube.od_m), float(self.tube.wall_m)
        self.weak = tube_bend_metal.known(self.tube, "yield_strength")
        self.tensile = tube_bend_metal.known(self.tube, "tensile_strength")
        self.modulus = lookup.look_up_or_none("tubes/materials", "modulus", data=data, family=self.tube.family)
        self.low_pa = self.high_pa = 0.0
        if self.weak is not None:
            self.low_pa = units.to_base(
                self.weak.low if self.weak.low is not None else self.weak.typical, self.weak.unit
            )
        if self.tensile is not None:
            high = self.tensile.high if self.tensile.high is not None else self.tensile.typical
            self.high_pa = units.to_base(high, self.tensile.unit)

    @property
    def modulus_pa(self) -> float:
        """Modulus of elasticity, Pa; 0 when it is not known."""
        return 0.0 if self.modulus is None else units.to_base(self.modulus.typical, self.modulus.unit)

    def set_angle(self, angle: float, radius: float) -> tuple[float, float, tuple[Figure, ...]] | None:
        """Lowest and highest estimate of the angle to set, rad, and what it is made from; None when that is not known."""
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

    @property
    def figures(self) -> list[Figure]:
        """Those figures of the bend sheet that a plan prints."""
        return [f for f in self.sheet.figures if f.quantity in _KEPT]

    def wall_check(self, needed: str | None) -> Check:
        """Outer wall left against the wall needed: predicted from the thinnest wall that may arrive, where that is known."""
        name = "outer wall left against the wall needed"
        left = next((f for f in self.sheet.figures if f.quantity == "outer_wall"), None)
        if left is None:
            return Check(name, CANNOT_TELL, "the radius is not known, so the outer wall cannot be predicted")
        least = next((f for f in self.sheet.figures if f.quantity == "wall_least"), None)
        share = 1.0 if least is None else least.typical / self.tube.wall.typical
        value = left.typical * share
        text = f"{value:.3f} {left.unit} predicted at the outside of the bend"
        text += (
            f" (from the thinnest that may arrive, {least.typical:.3f} {least.unit})"
            if least is not None
            else " (from the nominal wall)"
        )
        if not needed:
            return Check(
                name, CANNOT_TELL, f"{text}; the wall needed is not given", None, Bound(value, left.unit, figure=left)
            )
        asked = units.parse_measure(needed, "length", "wall needed")
        figure = tube_keys.asked("wall needed", "wall_needed", asked)
        limit = Bound(float(asked.value * units.factor(asked.unit) / units.factor(left.unit)), left.unit, "min", figure)
        return at_least(
            name, Bound(value, left.unit, figure=left), limit, f"{text}, {asked.text} needed; measure the bend"
        )

    def flattening(self) -> Caution:
        """What to measure at each bend, and against which limit."""
        limit = next((f for f in self.sheet.figures if f.quantity == "minor_to_major_ratio_minimum"), None)
        text = "At every bend measure the largest and the smallest diameter with a calliper and write both down"
        if limit is None:
            return Caution(
                f"{text}; no flattening limit is on record for this tube and service.", "note", (), "calculated"
            )
        smallest = limit.typical * float(self.tube.od_m / units.factor(self.tube.unit))
        said = f"{text}: smallest over largest is {limit.text} or more (service {limit.key['service']}, {limit.source})"
        return Caution(
            f"{said}, which is {smallest:.3f} {self.tube.unit} where the largest is the OD.",
            "note",
            (limit.id,),
            limit.source,
        )


def metal_of(keys: dict[str, str | None], data: Refdata) -> Metal:
    """The Metal of some typed keys, kept so that a tube planned again is not looked up again."""
    memo = ("tube metal", *sorted((k, v) for k, v in keys.items() if v is not None))
    got = data.memo.get(memo)
    if got is None:
        got = data.memo[memo] = Metal(**keys, data=data)  # type: ignore[arg-type]
    return got  # type: ignore[return-value]
