"""Physics rules of electric wire: what its gauge number says about diameter, area, resistance and current."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, printed, rest
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable

_INSULATION = re.compile(r"([0-9]+) degC insulation", re.ASCII)
_GAUGE = re.compile(r"AWG ([0-9]{1,2}|0{2,4}|[1-4]/0)", re.ASCII)


def gauge_number(cell: str) -> int | None:
    """The American wire gauge number of a size cell, ``00`` as -1; None when it is no gauge."""
    match = _GAUGE.fullmatch(cell)
    if match is None:
        return None
    text = match[1]
    if text.endswith("/0"):
        return 1 - int(text[0])
    return 1 - len(text) if set(text) == {"0"} else int(text)


def _diameter_m(gauge: int) -> float:
    return float(0.005 * 0.0254 * 92 ** ((36 - gauge) / 39))


# Times the value of the solid round gauge wire (ASTM B258: 0.005 in x 92^((36-n)/39); copper 10.371 ohm cmil/ft at 20
# degC).
# Stranded wire deviates by its strand count; tinned fine strands may have a fifth more resistance.
WIRE = {
    "conductor_diameter": (0.99, 1.25),
    "conductor_area": (0.8, 1.2),
    "resistance": (0.9, 1.25),
    "resistance_maximum": (0.9, 1.35),
}


def wire_agrees_with_its_gauge(facts: Facts) -> list[Fault]:
    """Diameter, area and resistance of a copper wire are those of its gauge number."""
    faults = []
    for row in facts.rows("lines/wire", *WIRE):
        gauge = gauge_number(row.cells["size"])
        if gauge is None or "copper" not in row.cells["item"]:
            continue
        diameter = _diameter_m(gauge)
        mils = (diameter / 0.0254e-3) ** 2
        wanted = {"conductor_diameter": diameter, "conductor_area": units.to_base(mils, "cmil")}.get(
            row.cells["quantity"], units.to_base(10371 / mils, "ohm/1000ft")
        )
        least, most = WIRE[row.cells["quantity"]]
        for column, number in facts.numbers(row).items():
            if not least * wanted <= number <= most * wanted:
                shown = f"{row.cells[column]} {row.cells['unit']}"
                found = f"{shown}, {units.from_base(wanted, row.cells['unit']):.4g} by the gauge number"
                faults.append(at_row(row, column, "wire_agrees_with_its_gauge", found, READ_AGAIN))
    return faults


# Amperes per square millimetre: bundles in an aircraft at height, the least; short boat wires of hot insulation, the
# most.
CURRENT_DENSITY = (1.0, 45.0)


def current_suits_its_wire(facts: Facts) -> list[Fault]:
    """The current in a wire is a likely density."""
    faults = []
    for row in facts.rows("lines/wire", "current_maximum", "fuse_rating_maximum", "breaker_rating_maximum"):
        gauge = gauge_number(row.cells["size"])
        if gauge is None:
            continue
        area = (_diameter_m(gauge) * 1000) ** 2 * 0.7853981633974483
        for column, number in facts.numbers(row).items():
            if not CURRENT_DENSITY[0] <= number / area <= CURRENT_DENSITY[1]:
                found = f"{row.cells[column]} {row.cells['unit']}, {number / area:.3g} A per mm2"
                faults.append(at_row(row, column, "current_suits_its_wire", found, READ_AGAIN))
    return faults


def current_rises_with_the_wire(facts: Facts) -> list[Fault]:
    """For one kind of wire, condition and source, a thicker wire carries no less."""
    faults = []
    rows = facts.rows("lines/wire", "current_maximum", "fuse_rating_maximum", "breaker_rating_maximum")
    for group in group_by(rows, lambda r: rest(r, "size")):
        placed = sorted(
            ((-g, r.line, r) for r in group if (g := gauge_number(r.cells["size"])) is not None), key=lambda p: p[:2]
        )
        for (g1, _, a), (g2, _, b) in pairwise(placed):
            if g1 < g2 and facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for {b.cells['size']}, under {printed(a)} for {a.cells['size']}"
                faults.append(at_row(b, column_of(b), "current_rises_with_the_wire", found, READ_AGAIN))
    return faults


def current_rises_with_the_insulation(facts: Facts) -> list[Fault]:
    """For one wire and source, insulation that bears more heat lets no less current through."""
    faults = []
    for group in group_by(facts.rows("lines/wire", "current_maximum"), lambda r: rest(r, "condition")):
        placed = sorted(
            ((float(m[1]), r.line, r) for r in group if (m := _INSULATION.fullmatch(r.cells["condition"]))),
            key=lambda p: p[:2],
        )
        for (_, _, a), (_, _, b) in pairwise(placed):
            if facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for {b.cells['condition']}, under {printed(a)} of line {a.line}"
                faults.append(at_row(b, column_of(b), "current_rises_with_the_insulation", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    wire_agrees_with_its_gauge,
    current_suits_its_wire,
    current_rises_with_the_wire,
    current_rises_with_the_insulation,
)
