"""The answer ``sheet``: what a piece of sheet weighs."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.section import density_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

VERB = "WEIGHS"
_SIZE = re.compile(r"(?P<a>.+?) ?(?:(?<![a-z])|(?<=ft)|(?<=in)|(?<=mm))(?:x|by)(?![a-z]) ?(?P<b>.+)")
# The metal of a sheet -> the system that its gauge numbers are of.
_SYSTEMS = {"stainless steel": "stainless sheet", "aluminum alloy": "AWG", "steel": "manufacturers standard sheet"}


def sheet(
    size: str, thickness: str, material: str = "mild steel", *, system: str | None = None, data: Refdata | None = None
) -> Sheet:
    """What a piece of sheet weighs.

    ``size`` its two sides (``4 ft x 8 ft``); ``thickness`` ``0.075 in``, or a gauge number (``14``, ``14 ga``) of the
    ``system`` that is usual for the ``material`` (``mild steel``, ``304``, ``aluminium``) or is named.

    Returns a Sheet whose decision is the mass. Raises InputError, UnitError or LookupMiss for what cannot be read.
    Source: geometry, and the density of the table of tubes.

    >>> round(sheet("4 ft x 8 ft", "14 ga").decision.figure.typical)
    98
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"size": size, "thickness": thickness, "material": material, "system": system}
    sides = _sides(size)
    stock = keys.stock(material, data)
    wall = thickness_of(thickness, stock.family, system, data)
    title = f"sheet of {stock.label}, {' x '.join(side.text for side in sides)}, {thickness}"
    odd = next((side for side in sides if not is_plausible(side, "sheet_side", data)), None)
    if odd is not None:
        said = did_you_mean(f"{odd.text} is no usual side of a sheet", ())
        return questioned(title, asked, {"size": said}, VERB, data, [wall])
    density = density_of(stock, data)
    if density is None:
        do = f"No density of {stock.label} is on record: weigh a piece."
        return Sheet(title, asked, data, [wall], [], [], decision=none(VERB, do))
    long, wide = (stated(side, "sheet_side", f"side {n}", data) for n, side in enumerate(sides, 1))
    unit = "lb" if sides[0].unit in ("in", "ft") else "kg"
    kilos = base(long) * base(wide) * base(wall) * base(density)
    key = {"size": size, "thickness": thickness, "material": stock.label}
    inputs = (long, wide, wall, density)
    number = units.from_base(kilos, unit)
    mass = derived("sheet_mass", "sheet_mass", number, unit, inputs, data, key=key, text=units.significant(number, 3))
    do = f"{wall.text} {wall.unit} thick. Mills roll sheet some per cent thicker or thinner."
    return Sheet(title, asked, data, [mass, wall, density, long, wide], [], [], decision=use(VERB, mass, do))


def _sides(size: str) -> list[Measure]:
    """The two sides of ``4 ft x 8 ft``; where the first has no unit it has that of the second, feet where
    neither has."""
    found = _SIZE.fullmatch(" ".join(size.casefold().replace("'", " ft").split()))
    if found is None:
        raise InputError(size, "size", "no two sides", (), "write them as 4 ft x 8 ft")
    first, second = found["a"].strip(), found["b"].strip()
    if re.fullmatch(r"[0-9./ ]+", second):
        second = f"{second} {first.split()[-1] if re.search('[a-z]', first) else 'ft'}"
    if re.fullmatch(r"[0-9./ ]+", first):
        first = f"{first} {second.split()[-1]}"
    return [read_positive(side, "length", "size") for side in (first, second)]


def thickness_of(thickness: str, family: str, system: str | None, data: Refdata) -> Figure:
    """The thickness as stated, or that of a gauge number."""
    text = thickness.casefold().strip()
    if re.fullmatch(r"[0-9]{1,3} ?(?:ga|gage|gauge|g)?", text):
        named = system or _SYSTEMS.get(family)
        cell = None if named is None else canonical(data, "tubes/gauges", "system", named)
        return keys.gauge_wall(re.sub("[a-z ]", "", text), cell, data)
    if system is not None:
        why = "a gauge number has a system, a thickness has none"
        raise InputError(system, "system", why, (), "give the gauge number, or leave the system out")
    return stated(keys.size(thickness, "thickness", "wall_thickness", data), "wall_thickness", "thickness", data)
