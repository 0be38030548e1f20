"""A tube with the bend asked of it: what its sheet and the sheet of its metal both reckon with."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer import making
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.catalogue import SERVICES, VEHICLE_SERVICES
from gaugeblock.tables.load import canonical
from gaugeblock.tubes import keys
from gaugeblock.tubes.sizes import Listed, listed
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.answer.making import Ends
    from gaugeblock.figure import Figure
    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.keys import Radius, Stock
    from gaugeblock.units import Measure

CAGE = "vehicle safety cage"
OWN = ("yield_strength", "tensile_strength", "modulus", "shear_modulus")
MINIMUMS = "tubes/bend_minimums"
_LEAST_CAGE_M = 0.019  # m: no cage is made of less; a line's tube is not held against a cage's rules


class Own(Value):
    """What is stated of a tube's metal: each a Known, or None."""

    __slots__ = OWN

    yield_strength: Known | None
    tensile_strength: Known | None
    modulus: Known | None
    shear_modulus: Known | None

    def __init__(
        self,
        yield_strength: Known | None = None,
        tensile_strength: Known | None = None,
        modulus: Known | None = None,
        shear_modulus: Known | None = None,
    ) -> None:
        put(self, "yield_strength", yield_strength)
        put(self, "tensile_strength", tensile_strength)
        put(self, "modulus", modulus)
        put(self, "shear_modulus", shear_modulus)

    def figure(self, quantity: str, data: Refdata) -> Figure | None:
        """What is stated of a quantity as a Figure; None where nothing is."""
        known = getattr(self, quantity, None)
        return None if known is None else making.stated_known(known, quantity, quantity.replace("_", " "), data)

    @property
    def text(self) -> str:
        """All of it in one line; blank where nothing is stated."""
        return ", ".join(f"{n} {k}" for n in OWN if (k := getattr(self, n)) is not None)


class Bent(Value):
    """A tube, and the radius it is bent to where one is given: Figures, exact metres, its key cells.

    ``od``, ``wall`` as typed; ``method`` blank for a tube that is not bent; ``radius`` as typed and ``centre`` to the
    centre line; ``listed`` the size it was bought as; ``tested`` what the shop measured at a bend made so;
    ``maker`` the bender maker's least radius; ``own`` what is stated of its metal.
    """

    __slots__ = (
        "centre",
        "clr_m",
        "data",
        "key",
        "listed",
        "maker",
        "method",
        "od",
        "od_m",
        "own",
        "radius",
        "service",
        "stock",
        "tested",
        "unit",
        "wall",
        "wall_m",
    )

    data: Refdata
    od: Figure
    od_m: Fraction
    wall: Figure
    wall_m: Fraction
    stock: Stock
    method: str
    service: str
    unit: str
    key: dict[str, str]
    listed: Listed
    radius: Figure | None
    centre: Figure | None
    clr_m: Fraction | None
    maker: Figure | None
    tested: tuple[Figure, ...]
    own: Own

    def __init__(
        self,
        od: Measure,
        wall: Figure,
        stock: Stock,
        method: str | None,
        service: str,
        data: Refdata,
        *,
        radius: Radius | None = None,
        maker: Figure | None = None,
        tested: tuple[Figure, ...] = (),
        own: Own | None = None,
    ) -> None:
        put(self, "data", data)
        put(self, "own", own or Own())
        put(self, "od", making.stated(od, "tube_od", "od", data))
        put(self, "od_m", keys.metres(od))
        put(self, "wall", wall)
        put(self, "wall_m", units.parse_number(wall.text) * units.factor(wall.unit))
        if self.wall_m * 2 >= self.od_m:
            raise InputError(
                f"{wall.text} {wall.unit}", "wall", "is half the OD or more: no bore is left", (), "measure the wall"
            )
        put(self, "stock", stock)
        put(self, "method", canonical(data, MINIMUMS, "method", method) if method else "")
        put(self, "service", service)
        put(self, "unit", "mm" if od.unit in ("mm", "m", "um") else "in")
        key = {
            "family": stock.family,
            "od": f"{self.od.text} {self.od.unit}",
            "wall": f"{wall.text} {wall.unit}",
            "method": self.method,
            "service": self.service,
        }
        put(self, "key", key)
        put(self, "listed", listed(key["od"], self.od_m, key["wall"], self.wall_m, stock, data))
        put(self, "radius", None if radius is None else radius.typed)
        put(self, "clr_m", None if radius is None else radius.centre_m)
        put(self, "maker", maker)
        put(self, "tested", tested)
        put(self, "centre", self._centre(radius))

    def _centre(self, radius: Radius | None) -> Figure | None:
        if radius is None or radius.measured_to == "centre line":
            return self.radius
        rule, quantity = "centre_line_from_inside", "centre_line_radius"
        return self.derived(rule, quantity, self.length(radius.centre_m), self.unit, (radius.typed, self.od))

    @property
    def family(self) -> str:
        """The family of its metal."""
        return self.stock.family

    @property
    def may_be_a_cage(self) -> bool:
        """Whether the rules of a cage stand beside this tube."""
        return self.service == CAGE or (self.service in VEHICLE_SERVICES and float(self.od_m) >= _LEAST_CAGE_M)

    def derived(
        self,
        rule: str,
        quantity: str,
        value: float | None,
        unit: str,
        inputs: tuple[Figure, ...],
        *,
        ends: Ends = (None, None),
        conditions: str = "",
        mark: str = "",
        service: str = "",
    ) -> Figure:
        """A derived Figure of this tube; ``mark`` tells two of one quantity apart, ``service`` whose rule it is."""
        bend = "" if self.radius is None else f"R {self.radius.text} {self.radius.unit}"
        about = "|".join(t for t in (bend, mark) if t)
        return making.derived(
            rule,
            quantity,
            value,
            unit,
            inputs,
            self.data,
            about=about,
            ends=ends,
            key={**self.key, "service": service} if service else self.key,
            conditions=conditions,
        )

    def length(self, metres: Fraction | float) -> float:
        """Metres in the unit the OD was given in."""
        if isinstance(metres, float):
            return units.from_base(metres, self.unit)
        return float(metres / units.factor(self.unit))


def service_of(typed: str, data: Refdata) -> str:
    """The service that was typed; LookupMiss names the nearest."""
    folded = typed.casefold()
    cell = data.words("tubes", "service").get(folded, folded)
    if cell not in SERVICES or cell == "any":
        from gaugeblock.tables.near import of_these

        near = of_these(typed, SERVICES[1:])
        raise LookupMiss(typed, "service", "not a service", near, "use one of these")
    return cell
