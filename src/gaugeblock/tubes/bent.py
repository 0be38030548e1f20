"""A tube with the bend asked of it: what its sheet and the sheet of its metal both reckon with."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.catalogue import SERVICES, VEHICLE_SERVICES
from gaugeblock.tables.load import Refdata, canonical, nearest
from gaugeblock.tubes import keys as tube_keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.tubes.keys import Stock

CAGE = "vehicle safety cage"
MINIMUMS = "tubes/bend_minimums"
_LEAST_CAGE_M = 0.019  # m: no cage is made of less; a line's tube is not held against a cage's rules


class Bent:
    """A tube with the bend asked of it: measures in metres, the typed numbers as Figures, and its key."""

    __slots__ = (
        "angle",
        "clr_m",
        "data",
        "family",
        "key",
        "method",
        "od",
        "od_m",
        "radius",
        "service",
        "stock",
        "unit",
        "wall",
        "wall_m",
    )

    def __init__(self, od: str, wall: str, stock: Stock, method: str, service: str, data: Refdata) -> None:
        self.data = data
        measure = tube_keys.outside_diameter(od, data)
        self.od = tube_keys.asked("od", "tube_od", measure)
        self.od_m = measure.value * units.factor(measure.unit)
        self.wall = tube_keys.wall(wall, data)
        self.wall_m = units.parse_number(self.wall.text) * units.factor(self.wall.unit)
        if self.wall_m * 2 >= self.od_m:
            raise InputError(wall, "wall", "is half the OD or more: no bore is left", (), "measure the wall")
        self.stock = stock
        self.family = stock.family
        self.method = canonical(data, MINIMUMS, "method", method)
        self.service = _service(service, data)
        self.unit = "mm" if measure.unit in ("mm", "m", "um") else "in"
        self.radius: Figure | None = None
        self.angle: Figure | None = None
        self.clr_m: Fraction | None = None
        self.key = {
            "family": self.family, "od": f"{self.od.text} {self.od.unit}", "wall": f"{self.wall.text} {self.wall.unit}",
            "method": self.method, "service": self.service,
        }  # fmt: skip

    @property
    def may_be_a_cage(self) -> bool:
        """Whether the rules of a cage stand beside this tube."""
        return self.service == CAGE or (self.service in VEHICLE_SERVICES and float(self.od_m) >= _LEAST_CAGE_M)

    def derived(
        self, rule: str, quantity: str, value: float | None, unit: str, inputs: tuple[Figure, ...], *, low: float | None = None,
        high: float | None = None, side: str = "nominal", conditions: str = "", note: str = "", mark: str = "",
    ) -> Figure:  # fmt: skip
        """A derived Figure of this tube; ``mark`` tells two of one quantity apart."""
        bend = "" if self.radius is None else f"|R {self.radius.text} {self.radius.unit}"
        return Figure(
            f"derived:{rule}:{'|'.join(self.key.values())}{bend}{mark}:{quantity}@{self.data.release}", quantity, value, unit, low=low,
            high=high, side=side, basis="derived", rule=self.data.rule(rule), inputs=inputs, since=self.data.release, key=self.key,
            conditions=conditions, note=note,
        )  # fmt: skip

    def length(self, metres: Fraction | float) -> float:
        """Metres in the unit the OD was given in."""
        return (
            float(metres / units.factor(self.unit))
            if not isinstance(metres, float)
            else units.from_base(metres, self.unit)
        )


def _service(typed: str, data: Refdata) -> str:
    folded = typed.casefold()
    cell = data.words("tubes", "service").get(folded, folded)
    if cell not in SERVICES or cell == "any":
        raise LookupMiss(
            typed, "service", "not a service", nearest(typed, list(SERVICES[1:])) or SERVICES[1:], "use one of these"
        )
    return cell
