"""What passes between a hot part, the line beside it and the air: view factor, film coefficient, heat loss."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import heat

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.estimate import Estimate

_AIR = ("thermal_conductivity", "kinematic_viscosity", "prandtl_number")


def views_of(worst: Estimate, line: Figure) -> list[Figure]:
    """The figures behind an estimate at its likely inputs; ``line`` is the temperature that it gives."""
    found = [_view(worst), *_film(worst, line), _heat_loss(worst)]
    return [f for f in found if f is not None]


def _view(worst: Estimate) -> Figure | None:
    """The view factor from the line to the hot part; none where a sleeve or a shield changes what they see."""
    b = worst.beside
    if "sleeve" in b.inputs or b.shield != "none":
        return None
    own, hot, gap = (b.inputs[n] for n in ("line diameter", "hot diameter", "gap"))
    value = heat.view_factor_cylinders(base(own) / 2, base(hot) / 2, base(gap))
    words = "from the line to the hot part; the rest of its view is surroundings"
    return derived("view_factor_of_line", "view_factor", value, "1", (own, hot, gap), b.data, conditions=words)


def _film(worst: Estimate, line: Figure) -> list[Figure]:
    """The film coefficient that is stated, and the one of the correlations; the latter alone where none is."""
    b = worst.beside
    stated = [b.inputs["film"]] if "film" in b.inputs else []
    if "sleeve" in b.inputs or b.flows or b.shield != "none":
        return stated
    air = b.inputs["air"]
    inside = _air_at((base(line) + base(air)) / 2, b.data)
    if inside is None:
        return stated
    speed = b.inputs.get("speed") if worst.case == "driving" else None
    own = b.inputs["line diameter"]
    k, nu, pr = map(base, inside)
    ra = heat.rayleigh(base(line) - base(air), (base(line) + base(air)) / 2, base(own), nu, pr)
    number = heat.nusselt_natural(ra, pr)
    if speed is not None and base(speed) > 0:
        number = max(number, heat.nusselt_forced(base(speed) * base(own) / nu, pr))
    inputs = (line, air, own, *([speed] if speed is not None else []), *inside)
    made = derived(
        "line_film_coefficient",
        "film_coefficient",
        number * k / base(own),
        "W/(m**2*K)",
        inputs,
        b.data,
        about=line.id,
        key={"case": worst.case},
        conditions=f"of the line, {worst.case}, likely inputs",
    )
    return [*stated, made]


def _heat_loss(worst: Estimate) -> Figure | None:
    """What a metre of the hot part gives off in still air; none where its air is outside the tables."""
    b = worst.beside
    hot, own, finish, air = (b.inputs[n] for n in ("hot temperature", "hot diameter", "hot finish", "air"))
    film = (base(hot) + base(air)) / 2
    inside = _air_at(film, b.data) if b.air.covers(film) else None
    if inside is None:
        return None
    k, nu, pr = map(base, inside)
    diameter = base(own)
    h = heat.nusselt_natural(heat.rayleigh(base(hot) - base(air), film, diameter, nu, pr), pr) * k / diameter
    shines = base(finish) * (heat.emissive_power(base(hot)) - heat.emissive_power(base(air)))
    value = heat.PI * diameter * (shines + h * (base(hot) - base(air)))
    return derived(
        "hot_part_heat_loss",
        "heat_loss",
        value,
        "W/m",
        (own, finish, hot, air, *inside),
        b.data,
        about=f"{hot.id}|{air.id}",
        key={"case": worst.case},
        conditions="of the hot part in still air, likely inputs",
    )


def _air_at(kelvin: float, data: Refdata) -> tuple[Figure, ...] | None:
    """Conductivity, viscosity and Prandtl number of air at a temperature; None outside the tables."""
    at = f"{units.from_base(kelvin, 'degC'):.0f} degC"
    found = [lookup.look_up_or_none("lines/air", q, data=data, fluid="air", temperature=at) for q in _AIR]
    return None if any(f is None for f in found) else tuple(f for f in found if f is not None)
