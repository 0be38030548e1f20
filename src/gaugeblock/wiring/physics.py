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

    from gaugeblock.tables.load import Row

_INSULATION = re.compile(r"([0-9]+) degC insulation", re.ASCII)
_GAUGE = re.compile(r"AWG ([0-9]{1,2}|0{2,4}|[1-4]/0)", re.ASCII)
_SAE = re.compile(r"SAE ([0-9]{1,2}|[1-4]/0)", re.ASCII)
_SYSTEM = re.compile(r"[0-9]+ V ")
_METRIC = re.compile(r"([0-9.]+) mm2", re.ASCII)


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
    for row in facts.rows("wiring/wire", *WIRE):
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


# Times 17.241 ohm mm2/km over the nominal area: strands and tin add up to a quarter.
METRIC = (1.0, 1.25)
# Times the area of the gauge: an SAE number holds 3 to 12 % less copper than AWG.
SAE_AREA = (0.85, 1.0)


def metric_wire_agrees_with_its_area(facts: Facts) -> list[Fault]:
    """The greatest resistance of a metric conductor is that of its copper, and a little more."""
    faults = []
    for row in facts.rows("wiring/wire", "resistance_maximum"):
        match = _METRIC.fullmatch(row.cells["size"])
        if match is None:
            continue
        wanted = 17.241 / float(match[1])
        for column, number in facts.numbers(row).items():
            got = units.from_base(number, "ohm/km")
            if not METRIC[0] * wanted <= got <= METRIC[1] * wanted:
                found = f"{row.cells[column]} {row.cells['unit']}, {wanted:.4g} ohm/km by its area"
                faults.append(at_row(row, column, "metric_wire_agrees_with_its_area", found, READ_AGAIN))
    return faults


def sae_wire_has_less_copper(facts: Facts) -> list[Fault]:
    """The metal of an SAE number is a little less than that of the gauge."""
    faults = []
    for row in facts.rows("wiring/wire", "conductor_area"):
        match = _SAE.fullmatch(row.cells["size"])
        gauge = gauge_number(f"AWG {match[1]}") if match is not None else None
        if gauge is None:
            continue
        wanted = units.to_base((_diameter_m(gauge) / 0.0254e-3) ** 2, "cmil")
        for column, number in facts.numbers(row).items():
            if not SAE_AREA[0] * wanted <= number <= SAE_AREA[1] * wanted:
                found = f"{row.cells[column]} cmil, {units.from_base(wanted, 'cmil'):.0f} by the gauge number"
                faults.append(at_row(row, column, "sae_wire_has_less_copper", found, READ_AGAIN))
    return faults


def resistance_rises_with_heat(facts: Facts) -> list[Fault]:
    """A factor to 20 degC falls as the wire is hotter, near 254.5/(234.5 + t)."""
    faults = []
    for row in facts.rows("wiring/wire", "resistance_to_reference_factor"):
        celsius = float(row.cells["condition"].split()[0])
        for column, number in facts.numbers(row).items():
            if abs(number - 254.5 / (234.5 + celsius)) > 0.005:
                faults.append(at_row(row, column, "resistance_rises_with_heat", row.cells[column], READ_AGAIN))
    return faults


def a_fuse_opens_sooner_the_more_it_carries(facts: Facts) -> list[Fault]:
    """For one fuse and rating, a greater share of its rating opens it no later."""
    faults = []
    rows = [r for r in facts.rows("wiring/fuses", "opening_time", "opening_time_maximum") if r.cells["load"] != "any"]
    for group in group_by(rows, lambda r: (r.cells["fuse"], r.cells["rating"], r.cells["source"])):
        placed = sorted(group, key=lambda r: float(r.cells["load"].split()[0]))
        for a, b in pairwise(placed):
            if max(facts.numbers(b).values()) > max(facts.numbers(a).values()):
                found = f"{printed(b)} at {b.cells['load']}, over {printed(a)} at {a.cells['load']}"
                faults.append(at_row(b, column_of(b), "a_fuse_opens_sooner_the_more_it_carries", found, READ_AGAIN))
    return faults


def a_higher_voltage_may_lose_no_less(facts: Facts) -> list[Fault]:
    """For one part and source, the circuit of more volts is allowed no less drop."""
    faults = []
    rows = [r for r in facts.rows("wiring/limits", "voltage_drop_maximum") if _SYSTEM.match(r.cells["subject"])]

    def rest_of(row: Row) -> tuple[str, ...]:
        return _SYSTEM.sub("", row.cells["subject"]), row.cells["case"], row.cells["service"], row.cells["source"]

    for group in group_by(rows, rest_of):
        placed = sorted(group, key=lambda r: float(r.cells["subject"].split()[0]))
        for a, b in pairwise(placed):
            if facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} at {b.cells['subject']}, under {printed(a)} at {a.cells['subject']}"
                faults.append(at_row(b, column_of(b), "a_higher_voltage_may_lose_no_less", found, READ_AGAIN))
    return faults


def a_thicker_crimp_holds_more(facts: Facts) -> list[Fault]:
    """For one kind of crimp and source, a thicker wire is pulled out by no less."""
    faults = []
    for group in group_by(facts.rows("wiring/crimps", "pull_out_force_minimum"), lambda r: rest(r, "size")):
        placed = sorted((-g, r.line, r) for r in group if (g := gauge_number(r.cells["size"])) is not None)
        for (_, _, a), (_, _, b) in pairwise(placed):
            if facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for {b.cells['size']}, under {printed(a)} for {a.cells['size']}"
                faults.append(at_row(b, column_of(b), "a_thicker_crimp_holds_more", found, READ_AGAIN))
    return faults


# Amperes per square millimetre: bundles in an aircraft at height, the least; short boat wires of hot insulation, the
# most.
CURRENT_DENSITY = (1.0, 45.0)


def current_suits_its_wire(facts: Facts) -> list[Fault]:
    """The current in a wire is a likely density."""
    faults = []
    for row in facts.rows("wiring/wire", "current_maximum", "fuse_rating_maximum", "breaker_rating_maximum"):
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
    rows = facts.rows("wiring/wire", "current_maximum", "fuse_rating_maximum", "breaker_rating_maximum")
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
    for group in group_by(facts.rows("wiring/wire", "current_maximum"), lambda r: rest(r, "condition")):
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
    metric_wire_agrees_with_its_area,
    sae_wire_has_less_copper,
    resistance_rises_with_heat,
    a_fuse_opens_sooner_the_more_it_carries,
    a_higher_voltage_may_lose_no_less,
    a_thicker_crimp_holds_more,
    current_suits_its_wire,
    current_rises_with_the_wire,
    current_rises_with_the_insulation,
)
