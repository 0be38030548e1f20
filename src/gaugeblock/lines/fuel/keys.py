"""What is asked of one fuel supply, read once."""

from __future__ import annotations

from gaugeblock.errors import GaugeblockError
from gaugeblock.lines.given import Given, choice_of, count_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.units import Measure

FUELS = {
    "gasoline": ("petrol", "gas", "e10", "pump gas", "premium"),
    "diesel": ("diesel no. 2", "derv"),
    "E85": ("e85", "flex fuel"),
    "methanol": ("alcohol", "m100"),
    "ethanol": ("e100",),
}
BOOST, NATURAL = "boost", "no boost"
BOOSTS = {
    BOOST: ("boosted", "turbo", "turbocharged", "supercharged", "blown", "yes"),
    NATURAL: ("naturally aspirated", "natural", "na", "n/a", "none", "no"),
}
CARBURETTOR, INJECTION = "carburettor", "injection"
SYSTEMS = {
    CARBURETTOR: ("carburetor", "carb", "carbs", "carburettors", "carburetors"),
    INJECTION: ("efi", "fuel injection", "port injection", "injected"),
}
TUBE, HOSE = "drawn tube", "rubber hose"
LINES = {TUBE: ("tube", "hard line", "steel tube", "copper-nickel tube"), HOSE: ("hose", "rubber", "rubber line")}
MEASURES = {
    "power": ("power", "engine_power"),
    "consumption": ("specific consumption", "specific_fuel_consumption"),
    "density": ("density", "fuel_density"),
    "viscosity": ("kinematic viscosity", "kinematic_viscosity"),
    "reserve": ("ratio", "flow_reserve"),
    "pump": ("volume flow", "pump_flow"),
    "length": ("length", "line_length"),
    "bore": ("length", "line_bore"),
    "loss": ("stress", "line_loss_maximum"),
    "return_length": ("length", "line_length"),
    "return_bore": ("length", "line_bore"),
    "return_loss": ("stress", "line_loss_maximum"),
    "pressure": ("stress", "fuel_pressure"),
    "filter": ("length", "filter_rating"),
    "filter_flow": ("volume flow", "filter_flow"),
    "rated": ("stress", "working_pressure_maximum"),
    "injector": ("volume flow", "injector_flow"),
    "duty": ("ratio", "injector_duty"),
}
# What one injector passes is printed by volume or by mass.
_BY_MASS = {"injector": ("mass flow", "injector_mass_flow")}
WORDS = ("fuel", "boost", "system", "line")
ALL = ("power", "fuel", "boost", "consumption", "system", *tuple(MEASURES)[2:], "injectors", "line")


class Supply(Value):
    """One fuel supply: what of it was typed, and what kind of fuel, engine, system and line it is."""

    __slots__ = ("boost", "fuel", "given", "injectors", "is_assumed", "line", "system")

    given: Given
    injectors: Measure | None
    fuel: str
    is_assumed: bool
    boost: str | None
    system: str | None
    line: str | None

    def __init__(self, asked: Mapping[str, str | None]) -> None:
        """Raises InputError or UnitError for what cannot be read."""
        put(self, "given", Given(asked, _kinds(asked.get("injector")), zero=("reserve",)))
        put(self, "injectors", count_of(asked.get("injectors"), "injectors"))
        put(self, "fuel", choice_of(asked.get("fuel"), "fuel", FUELS) or "gasoline")
        put(self, "is_assumed", not asked.get("fuel"))
        put(self, "boost", choice_of(asked.get("boost"), "boost", BOOSTS))
        put(self, "system", choice_of(asked.get("system"), "system", SYSTEMS))
        put(self, "line", choice_of(asked.get("line"), "line", LINES))


def _kinds(injector: str | None) -> dict[str, tuple[str, str]]:
    """The measures, what one injector passes by volume or by mass as it was typed."""
    try:
        Given({"injector": injector}, _BY_MASS)
    except GaugeblockError:
        return MEASURES
    return MEASURES | _BY_MASS if injector else MEASURES
