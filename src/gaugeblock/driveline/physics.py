"""Physics rules of steels: what hardness, ductility and composition say about one another."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, printed, shown
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from gaugeblock.tables.load import Row


def _specimens(facts: Facts, table: str) -> Iterator[dict[str, Row]]:
    """The rows of one key and source, by quantity."""
    for group in group_by(facts.rows(table), lambda r: (*r.key, r.cells["source"])):
        if len(group) > 1:
            yield {r.cells["quantity"]: r for r in group}


# Tensile strength in ksi over Brinell hardness: 0.45 to 0.53 in the conversion tables (ASTM A370). Bars of 1050
# quenched in
# water and tempered at 400 degF broke early, at 0.316; a case hardened by induction is harder than its bar, at 0.64.
KSI_A_BRINELL = (0.31, 0.66)


def brinell_agrees_with_tensile(facts: Facts) -> list[Fault]:
    """At one key and source, tensile strength over Brinell hardness is that of steel."""
    faults = []
    for by in _specimens(facts, "driveline/steels"):
        hardness = by.get("hardness_hb_typical")
        for quantity in ("tensile_strength", "tensile_strength_typical"):
            row = by.get(quantity)
            if row is None or hardness is None:
                continue
            ratio = units.from_base(facts.middle(row), "ksi") / units.from_base(facts.middle(hardness), "HB")
            if not KSI_A_BRINELL[0] <= ratio <= KSI_A_BRINELL[1]:
                found = f"{printed(hardness)} beside {quantity} {printed(row)} of line {row.line}"
                faults.append(at_row(hardness, column_of(hardness), "brinell_agrees_with_tensile", found, READ_AGAIN))
    return faults


# Tensile strength in ksi over (HRB - 9), which is the conversion of ASTM A370 from 55 to 90 HRB. A least hardness
# goes with a
# least strength; a greatest hardness leaves the least strength well below it.
KSI_A_ROCKWELL_B = {"hardness_hrb_minimum": (0.8, 1.25), "hardness_hrb_maximum": (0.64, 1.0)}
# The tubing standard asks for no more than 90 HRB, however strong the grade: drawn 4140 has 1.36 times the conversion.
CAPPED_HRB, CAPPED_SHARE = 90, 1.42


def rockwell_agrees_with_tensile(facts: Facts) -> list[Fault]:
    """At one key and source, a tube's tensile strength suits its Rockwell B hardness."""
    faults = []
    for by in _specimens(facts, "tubes/materials"):
        tensile = by.get("tensile_strength")
        for quantity, (least, most) in KSI_A_ROCKWELL_B.items():
            row = by.get(quantity)
            if row is None or tensile is None:
                continue
            hardness = units.from_base(facts.middle(row), "HRB")
            capped = quantity == "hardness_hrb_minimum" and hardness >= CAPPED_HRB
            strength = units.from_base(facts.middle(tensile), "ksi")  # a hardness of 9 or less goes with none
            if not least * (hardness - 9) <= strength <= (CAPPED_SHARE if capped else most) * (hardness - 9):
                found = f"{printed(row)} beside tensile strength {printed(tensile)} of line {tensile.line}"
                faults.append(at_row(row, column_of(row), "rockwell_agrees_with_tensile", found, READ_AGAIN))
    return faults


# Reduction of area over elongation in 2 in of a steel bar, which necks before it breaks.
NECKING = (1.4, 6.0)


def reduction_of_area_over_elongation(facts: Facts) -> list[Fault]:
    """At one key and source, a steel bar loses more area at the neck than it gains length."""
    faults = []
    for by in _specimens(facts, "driveline/steels"):
        for end in ("", "_typical"):
            length, area = by.get(f"elongation{end}"), by.get(f"reduction_of_area{end}")
            if length is None or area is None:
                continue
            if not NECKING[0] * facts.middle(length) <= facts.middle(area) <= NECKING[1] * facts.middle(length):
                found = f"{printed(area)} beside elongation {printed(length)} of line {length.line}"
                faults.append(at_row(area, column_of(area), "reduction_of_area_over_elongation", found, READ_AGAIN))
    return faults


# AISI and SAE number of a carbon or low alloy steel: two digits for the alloy, two for hundredths of a per cent of
# carbon.
_GRADE = re.compile(r"[1-9][0-9][BL]?([0-9]{2})(?:R?H|V)?", re.ASCII)


def carbon_agrees_with_its_grade_number(facts: Facts) -> list[Fault]:
    """The carbon of grade 4130 holds 0.30 %, to a hundredth: its last digits name it."""
    faults = []
    for row in facts.rows("driveline/steels", "mass_fraction_carbon"):
        match = _GRADE.fullmatch(row.cells["steel"])
        if match is None:
            continue
        named = int(match[1]) / 10000
        if not facts.low(row) - 0.00011 <= named <= facts.high(row) + 0.00011:
            found = f"{printed(row)} for grade {row.cells['steel']}"
            faults.append(at_row(row, column_of(row), "carbon_agrees_with_its_grade_number", found, READ_AGAIN))
    return faults


# Lowest share of the maximum that a minimum is: a mill holds carbon within a tenth, manganese and silicon within 0.43
# (0.15 to 0.35 % silicon; the wide ranges of the H steels).
LEAST_SHARE = {"mass_fraction_carbon": 0.5}
LEAST_SHARE_OF_OTHERS = 0.4


def composition_range_is_narrow(facts: Facts) -> list[Fault]:
    """The minimum of an alloying element is a good share of its maximum: of carbon, at least half."""
    faults = []
    for row in facts.rows("driveline/steels"):
        quantity, numbers = row.cells["quantity"], facts.numbers(row)
        if not quantity.startswith("mass_fraction_") or "low" not in numbers or "high" not in numbers:
            continue
        if numbers["low"] < LEAST_SHARE.get(quantity, LEAST_SHARE_OF_OTHERS) * numbers["high"]:
            found = f"{shown(row, 'low')} beside {shown(row, 'high')}"
            faults.append(at_row(row, "low", "composition_range_is_narrow", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    brinell_agrees_with_tensile,
    rockwell_agrees_with_tensile,
    reduction_of_area_over_elongation,
    carbon_agrees_with_its_grade_number,
    composition_range_is_narrow,
)
