"""Real figures, damaged one way each in memory: the physics rule named sees it, and saw nothing before."""

from __future__ import annotations

import pytest

from gaugeblock import domains
from gaugeblock.tables import physics
from gaugeblock.tables.catalogue import TABLES, columns_of, refdata_folder
from gaugeblock.tables.facts import Facts
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import read_raw

Cells = dict[str, str]

NUT = {"part": "flare nut", "size": "1/4 in", "material": "steel", "quantity": "tightening_torque"}
STEEL = {"steel": "1050", "treatment": "hot rolled", "section": "18 to 32 mm", "source": "SHIG"}
TUBE = {"material": "1020", "product": "DOM tube", "condition": "as drawn", "source": "A513"}
TAPER = {"part": "spark plug", "size": "14 mm", "seat": "taper", "material": "aluminium", "source": "LSUAG"}
EXHAUST = {"item": "aluminised exhaust tube", "class": "409, type 1 coating"}

# table, cells that find the row, changed cells, rule
SLIPS: list[tuple[str, Cells, Cells, str]] = [
    ("driveline/steels", STEEL | {"quantity": "hardness_hb_typical"}, {"value": "79"}, "brinell_agrees_with_tensile"),
    (
        "driveline/steels",
        STEEL | {"quantity": "reduction_of_area"},
        {"value": "15"},
        "reduction_of_area_over_elongation",
    ),
    ("driveline/steels", STEEL | {"quantity": "elongation"}, {"value": "35"}, "reduction_of_area_over_elongation"),
    (
        "driveline/steels",
        {"steel": "1039", "quantity": "mass_fraction_carbon"},
        {"low": "0.04"},
        "composition_range_is_narrow",
    ),
    (
        "driveline/steels",
        {"steel": "1039", "quantity": "mass_fraction_carbon"},
        {"low": "0.47", "high": "0.54"},
        "carbon_agrees_with_its_grade_number",
    ),
    (
        "driveline/steels",
        {"steel": "1039", "quantity": "mass_fraction_sulfur"},
        {"high": "0.005"},
        "figure_in_its_range",
    ),
    (
        "driveline/steels",
        {"quantity": "shear_strength", "source": "MMPDS1"},
        {"value": "100"},
        "strength_shares_are_likely",
    ),
    (
        "driveline/steels",
        {"quantity": "shear_strength", "source": "MMPDS1"},
        {"value": "57"},
        "strength_shares_are_likely",
    ),
    ("tubes/materials", TUBE | {"quantity": "hardness_hrb_minimum"}, {"value": "60"}, "rockwell_agrees_with_tensile"),
    ("tubes/materials", TUBE | {"quantity": "hardness_hrb_minimum"}, {"value": "9"}, "rockwell_agrees_with_tensile"),
    ("tubes/materials", TUBE | {"quantity": "elongation"}, {"value": "50"}, "figure_near_its_peers"),
    ("tubes/materials", TUBE | {"quantity": "hardness_hrb_minimum"}, {"value": "8"}, "figure_near_its_peers"),
    ("tubes/sizes", {"quantity": "wall_tolerance", "wall": "0.065 in"}, {"low": "-0.02"}, "tolerance_is_a_small_share"),
    (
        "tubes/sizes",
        {"quantity": "wall_tolerance", "wall": "0.065 in"},
        {"high": "0.0002"},
        "tolerance_is_a_small_share",
    ),
    (
        "tubes/sizes",
        {"quantity": "od_tolerance", "od": "0.5 to 1.699 in"},
        {"low": "0.001"},
        "tolerance_is_a_small_share",
    ),
    ("tubes/sizes", {"quantity": "bore_minimum", "od": "1/4 in"}, {"value": "0.095"}, "bore_and_wall_suit_their_tube"),
    ("tubes/sizes", {"quantity": "wall_range", "wall": "0.065 in"}, {"high": "0.091"}, "bore_and_wall_suit_their_tube"),
    ("tubes/sizes", {"quantity": "second_moment_minimum"}, {"value": "6695"}, "frame_tube_minimums_agree"),
    (
        "fasteners/torques",
        {"condition": "oiled", "thread": "M10x1.5", "grade": "8.8"},
        {"value": "60"},
        "oiled_torque_is_below_dry",
    ),
    ("fasteners/part_torques", TAPER, {"high": "30"}, "softer_part_takes_no_more_torque"),
    ("fasteners/part_torques", TAPER, {"low": "70", "high": "150"}, "part_torque_suits_its_part"),
    ("fasteners/part_torques", NUT, {"low": "13.5"}, "line_nut_torque_suits_its_tube"),
    (
        "fasteners/part_torques",
        {"part": "brake tube nut", "basis": "common practice", "size": "not stated"},
        {"high": "19"},
        "habit_has_the_ends_of_its_manuals",
    ),
    (
        "fasteners/torques",
        {"quantity": "tightening_torque_minimum", "thread": "M24x3", "grade": "8.8", "condition": "dry"},
        {"value": "55"},
        "published_torque_is_under_proof",
    ),
    (
        "fasteners/part_torques",
        {"part": "wheel nut", "size": "1/2-20 UNF"},
        {"low": "65"},
        "part_torque_rises_with_size",
    ),
    (
        "lines/fuels",
        {"item": "gasoline", "quantity": "autoignition_temperature"},
        {"value": "1495"},
        "flash_below_ignition",
    ),
    ("lines/fuels", {"item": "ethanol", "quantity": "flash_point"}, {"value": "550"}, "flash_below_ignition"),
    ("lines/fluids", {"item": "power steering fluid"}, {"unit": "degC"}, "temperature_unit_is_that_of_its_source"),
    (
        "lines/materials",
        {"item": "stainless exhaust tube", "state": "continuous"},
        {"value": "875"},
        "short_duty_bears_no_less_heat",
    ),
    (
        "lines/materials",
        EXHAUST | {"quantity": "rust_protection_temperature_maximum"},
        {"value": "1600", "note": ""},
        "heat_limits_are_in_order",
    ),
    (
        "lines/materials",
        EXHAUST | {"quantity": "oxidation_temperature_maximum"},
        {"unit": "degC"},
        "figure_in_its_range",
    ),
    ("lines/emissivity", {"surface": "highly polished"}, {"high": "0.65"}, "emissivity_suits_its_surface"),
    (
        "lines/emissivity",
        {"material": "cast iron", "surface": "oxidised", "temperature": "100 degC"},
        {"value": "0.064"},
        "emissivity_suits_its_surface",
    ),
    (
        "lines/emissivity",
        {"surface": "typical, polished", "temperature": "726.85 degC"},
        {"value": "0.20"},
        "bright_metal_radiates_more_when_hot",
    ),
    (
        "lines/fluids",
        {"item": "DOT 4", "state": "wet", "quantity": "boiling_point_minimum"},
        {"value": "231"},
        "wet_fluid_boils_below_dry",
    ),
    (
        "wiring/wire",
        {"item": "boat copper wire", "size": "AWG 2", "condition": "105 degC insulation"},
        {"value": "170"},
        "current_rises_with_the_insulation",
    ),
    (
        "wiring/wire",
        {"item": "solid copper wire", "size": "AWG 4", "quantity": "conductor_diameter"},
        {"value": "0.18194"},  # that of the next number, AWG 5
        "wire_agrees_with_its_gauge",
    ),
    (
        "wiring/wire",
        {"item": "solid copper wire", "size": "AWG 4", "quantity": "resistance", "source": "AWGHP"},
        {"value": "0.3133"},
        "wire_agrees_with_its_gauge",
    ),
    (
        "wiring/wire",
        {"item": "copper conductor, class 5 and 6, plain", "size": "4 mm2"},
        {"value": "3.95"},
        "metric_wire_agrees_with_its_area",
    ),
    ("wiring/wire", {"item": "SAE cable", "size": "SAE 12"}, {"value": "8533"}, "sae_wire_has_less_copper"),
    (
        "wiring/wire",
        {"item": "copper conductor", "condition": "50 degC"},
        {"value": "0.983"},
        "resistance_rises_with_heat",
    ),
    (
        "wiring/fuses",
        {"fuse": "blade fuse, middle size", "load": "200 %"},
        {"high": "55"},
        "a_fuse_opens_sooner_the_more_it_carries",
    ),
    (
        "wiring/limits",
        {"subject": "12 V starting", "case": "each cable"},
        {"value": "0.02"},
        "a_higher_voltage_may_lose_no_less",
    ),
    ("wiring/crimps", {"size": "AWG 12"}, {"value": "131.5"}, "a_thicker_crimp_holds_more"),
    (
        "tubes/pipe_sizes",
        {"nps": "1", "schedule": "XXS", "quantity": "wall_thickness"},
        {"value": "0.330"},
        "xxs_wall_is_twice_xs",
    ),
    ("exhaust/pipe_power", {"od": "2 1/8 in"}, {"value": "140"}, "a_wider_pipe_takes_more_power"),
    (
        "exhaust/pipes",
        {"displacement": "over 350 to 400 in**3", "power": "over 350 to 400 hp", "layout": "single pipe"},
        {"value": "3"},
        "more_power_needs_no_less_pipe",
    ),
    (
        "exhaust/pipes",
        {"displacement": "150 to 200 in**3", "power": "over 50 to 100 hp", "layout": "two pipes"},
        {"value": "2.25"},
        "two_pipes_are_no_wider_than_one",
    ),
    ("exhaust/materials", {"state": "870 degC"}, {"value": "70"}, "a_hotter_steel_is_no_stronger"),
    ("lines/limits", {"subject": "vacuum brake reserve test"}, {"value": "500"}, "figure_in_its_range"),
    ("lines/clearances", {"subject": "LP-gas container to exhaust"}, {"value": "180"}, "figure_in_its_range"),
]


@pytest.fixture(scope="module")
def tables() -> dict[str, list[Row]]:
    faults: list[Fault] = []
    return {name: read_raw(refdata_folder(), name, columns_of(name), faults) for name in TABLES}


def told(tables: dict[str, list[Row]], name: str) -> set[str]:
    """The rules that find a fault in a table; a slip may show at the row beside it."""
    facts = Facts(tables)
    return {
        fault.rule
        for rule in (*physics.RULES, *domains.physics())
        for fault in rule(facts)
        if fault.file == f"{name}.csv"
    }


@pytest.mark.parametrize(("table", "wanted", "change", "rule"), SLIPS)
def test_a_slip_breaks_the_rule(
    tables: dict[str, list[Row]], table: str, wanted: Cells, change: Cells, rule: str
) -> None:
    row = next(r for r in tables[table] if not r.cells["until"] and all(r.cells[c] == v for c, v in wanted.items()))
    cells = row.cells | change
    assert cells != row.cells
    damaged = Row(row.table, row.line, tuple(cells), list(cells.values()), row.key)
    assert rule not in told(tables, table)
    after = {**tables, table: [damaged if r is row else r for r in tables[table]]}
    assert rule in told(after, table)


def test_every_rule_holds_for_the_tables_as_they_are(tables: dict[str, list[Row]]) -> None:
    facts = Facts(tables)
    assert [str(f) for rule in (*physics.RULES, *domains.physics()) for f in rule(facts)] == []
