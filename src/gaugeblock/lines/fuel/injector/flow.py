"""The answer ``injector``: what an injector passes at another pressure, and by volume and mass."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import hydraulics as calc
from gaugeblock.errors import Ambiguous, InputError, UnitError
from gaugeblock.lines.fuel.demand import FUELS, STATES
from gaugeblock.lines.fuel.keys import FUELS as NAMES
from gaugeblock.lines.given import choice_of
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

VOLUME, MASS = ("volume flow", "injector_flow"), ("mass flow", "injector_mass_flow")
_PRESSURE = "injector_pressure"
_ACROSS = "Both pressures are across the injector: in the rail, over that in the manifold."
_PUMP = "A pump delivers less at more pressure: see that it still feeds all of them."


def injector(
    flow: str,
    *,
    rated: str | None = None,
    pressure: str | None = None,
    fuel: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What an injector passes held open, at another pressure, by volume and by mass.

    ``flow`` as its maker prints it (``24 lb/h``, ``240 cm**3/min``); ``rated`` the pressure that this is for
    (``43.5 psi``) and ``pressure`` the one that it gets (``39 psi``), both across the injector; ``fuel`` gasoline
    (default), diesel, E85, methanol, ethanol.

    Returns a Sheet whose decision is the flow at the new pressure, or without one the same flow by the other measure,
    with the ends that the density of the fuel leaves. What no injector passes is asked about. Raises Ambiguous where
    one of the two pressures is missing; InputError or UnitError for what cannot be read. Source: flow through a sharp
    hole goes as the root of the pressure across it; density of the fuel by the tables.

    >>> round(injector("24 lb/h", rated="43.5 psi", pressure="39 psi").decision.figure.typical, 1)
    22.7
    """
    data = data or refdata()
    asked = {"flow": flow, "rated": rated, "pressure": pressure, "fuel": fuel}
    measure, (_, quantity) = _read(flow)
    if (rated is None) != (pressure is None):
        lacks = "pressure" if pressure is None else "rated"
        what = "that it gets" if pressure is None else "that its flow is rated at"
        raise Ambiguous("injector", lacks, f"the pressure {what} was not said", (), "say both pressures")
    pressures = {
        key: read_positive(text, "stress", key) for key, text in (("rated", rated), ("pressure", pressure)) if text
    }
    title = f"injector, {measure.text}" + (f" at {rated}, now at {pressure}" if pressures else "")
    named = choice_of(fuel, "fuel", NAMES) or "gasoline"
    doubts = {
        key: did_you_mean(f"{one.text} is no usual {name.replace('_', ' ')}", ())
        for key, one, name in (("flow", measure, quantity), *((k, p, _PRESSURE) for k, p in pressures.items()))
        if not is_plausible(one, name, data)
    }
    if doubts:
        return questioned(title, asked, doubts, "PASSES", data)
    given = stated(measure, quantity, "flow", data)
    key = {name: text for name, text in asked.items() if text}
    figures, first = [given], given
    if pressures:
        ends = {name: stated(one, _PRESSURE, name, data) for name, one in pressures.items()}
        number = calc.orifice_flow(given.typical, base(ends["pressure"]), base(ends["rated"]))
        rule = f"{quantity}_of_pressure"
        inputs = (given, ends["pressure"], ends["rated"])
        first = derived(rule, quantity, number, given.unit, inputs, data, key=key)
        figures = [first, given, ends["pressure"], ends["rated"]]
    density = look_up(FUELS, "fuel_density", data=data, item=named, state=STATES.get(named, "any"))
    other = _other(first, density, key, data)
    figures = [*figures[:1], other, *figures[1:], density] if pressures else [other, given, density]
    do = _ACROSS if pressures else f"By the density of {named}, which is not one number."
    cautions = [Caution(_PUMP, "damage")] if pressures else []
    decision = use("PASSES", figures[0], do)
    return Sheet(title, asked, data, figures, [], cautions, decision=decision)


def _read(flow: str) -> tuple[Measure, tuple[str, str]]:
    """What was typed, by volume or by mass."""
    try:
        return read_positive(flow, VOLUME[0], "flow"), VOLUME
    except (InputError, UnitError) as error:
        try:
            return read_positive(flow, MASS[0], "flow"), MASS
        except (InputError, UnitError):
            raise error from None


def _other(of: Figure, density: Figure, key: dict[str, str], data: Refdata) -> Figure:
    """The same flow by mass where it is by volume, and by volume where it is by mass, from the least density to the
    greatest.
    """
    by_mass = of.quantity == MASS[1]
    rule, quantity, unit = (
        ("injector_volume_of_mass", VOLUME[1], "cm**3/min") if by_mass else ("injector_mass_of_volume", MASS[1], "lb/h")
    )
    if density.low is None or density.high is None:
        number = base(of) / base(density) if by_mass else base(of) * base(density)
        return derived(rule, quantity, units.from_base(number, unit), unit, (of, density), data, key=key)
    low, high = (units.to_base(end, density.unit) for end in (density.low, density.high))
    pair = (base(of) / high, base(of) / low) if by_mass else (base(of) * low, base(of) * high)
    ends = units.from_base(pair[0], unit), units.from_base(pair[1], unit)
    return derived(rule, quantity, None, unit, (of, density), data, key=key, ends=ends)
