"""The preheat that a welding code asks for, by the carbon of a plain carbon steel and its thickness."""

from __future__ import annotations

from gaugeblock import lookup

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.steels import Steel
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

_TABLE = "driveline/preheat"
_MUCH = 0.30  # % of carbon, the table's
_THICK = 0.0254  # m, the table's
# An alloying element of this much and more makes it no plain carbon steel: its preheat is a procedure's.
_ALLOYED = {"chromium": 0.30, "molybdenum": 0.08, "nickel": 0.40, "vanadium": 0.02}


def preheat(steel: Steel, thickness: Measure | None, data: Refdata) -> list[Figure]:
    """The least preheat of the code; [] for an alloy steel, or where carbon or thickness is not known."""
    parts = {r["quantity"].removeprefix("mass_fraction_"): lookup.figure_of(r, data) for r in steel.composition}
    carbon = parts.get("carbon")
    if carbon is None or thickness is None:
        return []
    if any(name in parts and parts[name].typical >= most for name, most in _ALLOYED.items()):
        return []
    high = carbon.high if carbon.high is not None else carbon.typical
    if high > _MUCH:
        group, size = "carbon steel over 0.30 % carbon", thickness.text
        # the code lets a thin one go cold; its carbon equivalent says otherwise, and nothing is printed
        if thickness.to("m") <= _THICK:
            return []
    else:
        group, size = "carbon steel, all other", "any"
    found = lookup.look_up_or_none(_TABLE, "preheat_temperature_minimum", data=data, steel=group, thickness=size)
    if found is None:
        return []
    said = "by a ship repair code; none of it makes welding a hardened shaft right"
    return [found.replace(conditions=f"{found.conditions}; {said}" if found.conditions else said)]
