"""How far the places of a run move when it is hot: from published growth or expansion and the distance that grows."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived
from gaugeblock.errors import LookupMiss
from gaugeblock.lookup import look_up_or_none
from gaugeblock.tables.load import canonical
from gaugeblock.value import Value, put
from gaugeblock.warmth import grown

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.exhaust.run.shape import Shape
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

_FROM_K = 293.15
_STATES = ("room", "not stated")


def material_of(typed: str, data: Refdata) -> str:
    """The steel that was typed, by the names of the growth tables; LookupMiss with the nearest."""
    said = " ".join(typed.casefold().split())
    for word, cell in data.words("exhaust", "material").items():
        if word.casefold() == said:
            return cell
    try:
        return canonical(data, "lines/expansion", "material", typed)
    except LookupMiss:
        return canonical(data, "lines/growth", "material", typed)


def density_of(material: str, data: Refdata) -> Figure | None:
    """The density of a steel; None where none is listed."""
    for state in _STATES:
        found = look_up_or_none("exhaust/materials", "density", data=data, material=material, state=state)
        if found is not None:
            return found
    return None


class Growth(Value):
    """The growth of a run: what is stated or the tables say of its steel, its temperature, its shape, its fixed point.

    ``cold`` is what it grows from, None for 20 degC; ``beside`` what the tables have where something is stated.
    """

    __slots__ = ("beside", "cold", "data", "fixed", "hot", "per", "shape", "unit")

    per: Figure
    hot: Figure
    fixed: Figure
    shape: Shape
    unit: str
    data: Refdata
    cold: Figure | None
    beside: tuple[Figure, ...]

    def __init__(
        self,
        per: Figure,
        hot: Figure,
        fixed: Figure,
        shape: Shape,
        unit: str,
        data: Refdata,
        cold: Figure | None = None,
        beside: tuple[Figure, ...] = (),
    ) -> None:
        put(self, "per", per)
        put(self, "cold", cold)
        put(self, "beside", beside)
        put(self, "hot", hot)
        put(self, "fixed", fixed)
        put(self, "shape", shape)
        put(self, "unit", unit)
        put(self, "data", data)

    @property
    def share(self) -> float:
        """How much longer each metre gets."""
        if self.per.quantity == "linear_growth":
            return base(self.per)
        return base(self.per) * (base(self.hot) - (_FROM_K if self.cold is None else base(self.cold)))

    def movement(self, what: str, at: Figure, conditions: str = "") -> Figure:
        """How far a place moves, straight away from the fixed point."""
        far = self.shape.apart(base(at), base(self.fixed))
        inputs = (at, self.fixed, *(self.shape.leaves or (self.shape.length,)))
        distance = derived(
            "run_distance", "run_distance", units.from_base(far, self.unit), self.unit, inputs, self.data, about=what
        )
        number = units.from_base(self.share * far, self.unit)
        rule = "run_movement_by_table" if self.per.quantity == "linear_growth" else "run_movement"
        rule = rule if self.cold is None else "run_movement_from"
        return derived(
            rule,
            "run_movement",
            number,
            self.unit,
            (self.per, distance, self.hot, *(() if self.cold is None else (self.cold,))),
            self.data,
            about=what,
            conditions=conditions or f"{what}, when hot and free to grow",
        )


def per_length(material: str, hot: Figure, data: Refdata, *, is_from: bool = False) -> Figure | None:
    """Published growth of a steel to a temperature, else its mean coefficient of expansion; None where neither is."""
    return grown.per_length(material, f"{units.significant(hot.typical, 6)} {hot.unit}", data, is_from=is_from)
