"""Physics rules of heat: fuels and fluids that catch fire, parts that bear heat, surfaces that radiate it."""

from __future__ import annotations

import itertools
import re
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, order_of, printed, rest
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Row

# Each of a pair is below the other, whatever the source. Vapour reaches the lower flammable limit before it reaches one
# atmosphere, and lights at a spark long before it lights by itself; a closed heated vessel lights it before an open hot
# surface does, from which it drifts away.
_FIRE = (
    ("flash_point", "boiling_point"),
    ("flash_point", "autoignition_temperature"),
    ("flash_point", "hot_surface_ignition_temperature"),
    ("autoignition_temperature", "hot_surface_ignition_temperature"),
)


def flash_below_ignition(facts: Facts) -> list[Fault]:
    """Flash point < boiling point and self-ignition < ignition on an open hot surface, for one fuel or fluid."""
    faults = []
    for table in ("lines/fuels", "lines/fluids"):
        rows = facts.rows(table, *{q for pair in _FIRE for q in pair})
        for group in group_by(rows, lambda r: (r.cells["item"],)):
            for lower, upper in _FIRE:
                above = [r for r in group if r.cells["quantity"] == upper]
                if not above:
                    continue
                b = min(above, key=facts.low)
                for a in group:
                    if a.cells["quantity"] == lower and facts.high(a) >= facts.low(b):
                        found = f"{lower} {printed(a)}, not under {upper} {printed(b)} of line {b.line}"
                        faults.append(at_row(a, column_of(a), "flash_below_ignition", found, READ_AGAIN))
    return faults


# Grades whose oxide cracks off when they cool and grow it anew bear less heat when it comes and goes (AISI 3xx).
_SPALLS = re.compile(r"3[0-9]{2}")


def wet_fluid_boils_below_dry(facts: Facts) -> list[Fault]:
    """Brake fluid with water boils below the same fluid as received, in one source."""
    faults = []
    for group in group_by(facts.rows("lines/fluids", "boiling_point_minimum"), lambda r: rest(r, "state")):
        by = {r.cells["state"]: r for r in group}
        if "wet" in by and "dry" in by and facts.high(by["wet"]) >= facts.low(by["dry"]):
            found = f"{printed(by['wet'])}, not under {printed(by['dry'])} of line {by['dry'].line}"
            faults.append(at_row(by["wet"], column_of(by["wet"]), "wet_fluid_boils_below_dry", found, READ_AGAIN))
    return faults


def short_duty_bears_no_less_heat(facts: Facts) -> list[Fault]:
    """A rubber, plastic or ferritic exhaust tube bears no less heat for a while than for good."""
    faults = []
    rows = facts.rows("lines/materials", "temperature_maximum", "oxidation_temperature_maximum")
    for group in group_by(rows, lambda r: rest(r, "state")):
        by = {r.cells["state"]: r for r in group}
        a, b = by.get("continuous"), by.get("intermittent")
        if a is None or b is None or _SPALLS.match(a.cells["class"]):
            continue
        if facts.high(a) > facts.low(b):
            found = f"{printed(a)} continuous, over {printed(b)} intermittent on line {b.line}"
            faults.append(at_row(a, column_of(a), "short_duty_bears_no_less_heat", found, READ_AGAIN))
    return faults


# (the lower, the higher) of one item, class and state.
_LIMITS = (
    (
        "rust_protection_temperature_maximum",
        "oxidation_temperature_maximum",
    ),  # the coating reddens before the tube scales
    ("temperature_minimum", "temperature_maximum"),
)


def heat_limits_are_in_order(facts: Facts) -> list[Fault]:
    """A coating keeps rust off to a lower temperature than it keeps scale off; the coldest service is below the
    hottest.
    """
    faults = []
    rows = facts.rows("lines/materials", *{q for pair in _LIMITS for q in pair})
    for group in group_by(rows, lambda r: (*r.key, r.cells["source"])):
        by = {r.cells["quantity"]: r for r in group}
        for lower, upper in _LIMITS:
            a, b = by.get(lower), by.get(upper)
            if a is not None and b is not None and facts.high(a) >= facts.low(b):
                found = f"{lower} {printed(a)}, not under {upper} {printed(b)} of line {b.line}"
                faults.append(at_row(a, column_of(a), "heat_limits_are_in_order", found, READ_AGAIN))
    return faults


# Surfaces by what their name says; a metal that was polished and then oxidised is oxidised.
_OXIDISED = re.compile(r"(?<!un)oxidi[sz]ed|rust")
_BRIGHT = re.compile(r"polished|bright|unoxidised|burnished|cleaned")
# Total emissivity by kind of surface. Bright metals radiate a few per cent cold and a half near melting; paints
# nearly all.
EMISSIVITY = {"bright": (0.015, 0.6), "oxidised": (0.1, 1.0), "paint": (0.35, 1.0)}


def _surface(row: Row) -> str:
    if row.cells["material"] in ("lacquer", "paint", "enamel"):
        return "paint"
    text = row.cells["surface"]
    return "oxidised" if _OXIDISED.search(text) else "bright" if _BRIGHT.search(text) else ""


def emissivity_suits_its_surface(facts: Facts) -> list[Fault]:
    """A bright metal radiates little, an oxidised one more, paint nearly as a black body; one metal oxidised more
    than bright.
    """
    faults = []
    rows = facts.rows("lines/emissivity", "total_emissivity")
    for group in group_by(rows, lambda r: (r.cells["material"],)):
        by: dict[str, list[Row]] = {}
        for row in group:
            kind = _surface(row)
            by.setdefault(kind, []).append(row)
            least, most = EMISSIVITY.get(kind, (0.0, 1.0))
            if not least <= facts.low(row) <= facts.high(row) <= most:
                found = f"{printed(row)} for a surface that is {kind}"
                faults.append(at_row(row, column_of(row), "emissivity_suits_its_surface", found, READ_AGAIN))
        if "oxidised" in by and "bright" in by:
            # The dullest of the bright is near melting; half of all bright rows are the fair judge.
            bright = sorted(by["bright"], key=facts.high)
            judge = bright[(len(bright) - 1) // 2]
            for row in by["oxidised"]:
                if facts.low(row) <= facts.high(judge):
                    found = f"{printed(row)} oxidised, not over {printed(judge)} bright on line {judge.line}"
                    faults.append(at_row(row, column_of(row), "emissivity_suits_its_surface", found, READ_AGAIN))
    return faults


def bright_metal_radiates_more_when_hot(facts: Facts) -> list[Fault]:
    """A bright metal's emissivity does not fall with temperature: it goes with the metal's resistance."""
    faults = []
    rows = [r for r in facts.rows("lines/emissivity", "total_emissivity") if _surface(r) == "bright"]
    for group in group_by(rows, lambda r: rest(r, "temperature")):
        placed = sorted(
            ((o, r.line, r) for r in group if (o := order_of(r.cells["temperature"])) is not None), key=lambda p: p[:2]
        )
        for (o1, _, a), (o2, _, b) in itertools.pairwise(placed):
            if o1 < o2 and facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} at {b.cells['temperature']}, under {printed(a)} at {a.cells['temperature']}"
                faults.append(at_row(b, column_of(b), "bright_metal_radiates_more_when_hot", found, READ_AGAIN))
    return faults


def temperature_unit_is_that_of_its_source(facts: Facts) -> list[Fault]:
    """A source that gives one temperature quantity four times in degF or degC does not give it once in the other."""
    faults = []
    for table in facts.tables:
        rows = [r for r in facts.rows(table) if units.dimension(r.cells["unit"]) == "temperature" and r.cells["source"]]
        for group in group_by(rows, lambda r: (r.cells["quantity"], r.cells["source"])):
            marks = [r.cells["unit"] for r in group]
            for row, mark in zip(group, marks, strict=True):
                if len(marks) > 4 and marks.count(mark) == 1:
                    found = f"{mark!r} once in {len(marks)} rows of one source"
                    faults.append(at_row(row, "unit", "temperature_unit_is_that_of_its_source", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    flash_below_ignition,
    wet_fluid_boils_below_dry,
    short_duty_bears_no_less_heat,
    heat_limits_are_in_order,
    emissivity_suits_its_surface,
    bright_metal_radiates_more_when_hot,
    temperature_unit_is_that_of_its_source,
)
