"""The least radius of a tube: the rows that answer, and the radius to the centre line that each comes to."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import moved_ends
from gaugeblock.tables.catalogue import VEHICLE_SERVICES
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tubes.bend.bent import CAGE, MINIMUMS, Bent
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure


class Minimum(Value):
    """A least radius: the row, the radius it comes to, and the ends to the centre line that such rows give, in m."""

    __slots__ = ("high_m", "low_m", "radius", "row")

    row: Figure
    radius: Figure
    low_m: float
    high_m: float

    def __init__(self, row: Figure, radius: Figure, low_m: float, high_m: float) -> None:
        put(self, "row", row)
        put(self, "radius", radius)
        put(self, "low_m", low_m)
        put(self, "high_m", high_m)

    @property
    def figures(self) -> list[Figure]:
        """The row, and the radius it comes to when the row is a ratio."""
        return [self.row] if self.radius is self.row else [self.row, self.radius]


def _minimum(row: Figure, tube: Bent) -> Minimum:
    low, high = lookup.spread(row)
    if row.quantity == "bend_ratio_minimum":
        od_m = float(tube.od_m)
        low_m, high_m = low * od_m, high * od_m
        scale = tube.length(tube.od_m)
        service = row.key["service"]
        radius = tube.derived(
            "radius_from_ratio",
            "bend_radius_minimum",
            row.typical * scale,
            tube.unit,
            (row, tube.od),
            ends=moved_ends(row, lambda end: end * scale),
            conditions=f"service: {service}; measured to: {row.key['measured_to']}",
            mark=row.text,
            service=service,
        )
    else:
        low_m, high_m = units.to_base(low, row.unit), units.to_base(high, row.unit)
        radius = row
    to = row.key["measured_to"]
    if to != "centre line":  # where the source does not say, it may be either: the ends lie half an OD apart
        half = float(tube.od_m) / 2
        low_m, high_m = low_m + (half if to == "inside" else 0.0), high_m + half
    return Minimum(row, radius, low_m, high_m)


def minimums(tube: Bent, service: str) -> list[Minimum]:
    """What is known of this tube under one service, the most specific first; rows of another service are left out."""
    data = tube.data
    table = data.table(MINIMUMS)
    products = (
        ["tube"]
        if service in (*VEHICLE_SERVICES, CAGE)
        else lookup.choices(MINIMUMS, "product", data=data, service=service)
    )
    found: list[Minimum] = []
    cells = {
        "family": tube.family,
        "od": tube.listed.od,
        "wall": tube.listed.wall,
        "method": tube.method,
        "service": service,
    }
    if tube.stock.material is not None and tube.stock.material.casefold() in table.column("material"):
        cells["material"] = tube.stock.material
    names = [k.name for k in table.keys]
    fits = [
        (names.index(column), wanted)
        for column, wanted in (
            ("product", products),
            ("service", (service, "any")),
            ("family", (tube.family, "any")),
            ("method", (tube.method, "any")),
        )
    ]
    named = names.index("product"), names.index("measured_to")
    for quantity in ("bend_radius_minimum", "bend_ratio_minimum"):
        rows = [r for r in table.by_quantity.get(quantity, ()) if all(r.key[at] in wanted for at, wanted in fits)]
        for product, measured_to in dict.fromkeys((r.key[named[0]], r.key[named[1]]) for r in rows):
            row = lookup.look_up_or_none(
                MINIMUMS, quantity, data=data, product=product, measured_to=measured_to, **cells
            )
            if row is not None:
                found.append(_minimum(row, tube))
    return sorted(
        found,
        key=lambda m: (m.row.key["wall"] == "any", m.row.key["od"] == "any", m.row.quantity == "bend_ratio_minimum"),
    )


def outside_list(tube: Bent, row: Figure) -> str:
    """Why a row for any wall of one OD does not reach this wall: it is outside those listed; blank when it is
    inside.
    """
    if row.key["wall"] != "any" or row.key["od"] == "any":
        return ""
    walls = [
        w
        for r in tube.data.table(MINIMUMS).of("bend_radius_minimum")
        if r["od"] == row.key["od"]
        and r["method"] == tube.method
        and r["service"] == row.key["service"]
        and (w := parse_interval(r["wall"])) is not None
        and w.low is not None
    ]
    if not walls:
        return ""
    low, high = min(walls, key=lambda w: w.low or 0), max(walls, key=lambda w: w.low or 0)
    if (low.low or 0) <= tube.wall_m <= (high.low or 0):
        return ""
    return f"a wall of {tube.key['wall']} is outside the walls listed for this OD, {low.text} to {high.text}"
